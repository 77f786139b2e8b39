// plan_drawing.h, faster_settings.h and drawing_frames.h: plans of a library's textures, what they
// are compared with, and the files that show them.

#include "tasks/plan_drawing.h"

#include <algorithm>

#include "catalogue/canvases.h"
#include "image_files/read_image.h"
#include "tasks/drawing_frames.h"
#include "tasks/library_fixture.h"

namespace pantile::tasks {
namespace {

using core::ErrorKind;
using tests::failsWith;
using tests::isOk;

class PlanStored : public tests::LibraryFixture {
protected:
    PlanStored() : m_id(add(texture(1))) {}

    ComparedDrawing planned(const PlanOptions& options = {}) const {
        auto compared = planStored(m_library, m_id, options);
        EXPECT_THAT(compared, isOk());
        return *std::move(compared);
    }

    core::TextureId m_id;
};

const FasterSetting* settingOf(const ComparedDrawing& compared, std::string_view words) {
    const auto found = std::find_if(
        compared.faster.begin(), compared.faster.end(),
        [&](const auto& each) { return each.setting.find(words) != std::string::npos; });
    return found == compared.faster.end() ? nullptr : &*found;
}

TEST_F(PlanStored, SaysWhatFasterSettingsSave) {
    const ComparedDrawing compared = planned();
    const std::int64_t ms = compared.planned.plan.milliseconds;
    std::int64_t saved = ms;
    for (const FasterSetting& each : compared.faster) {
        EXPECT_GT(each.savesMs, 0) << each.setting;
        EXPECT_EQ(each.savesMs, ms - each.milliseconds) << each.setting;
        EXPECT_LE(each.savesMs, saved) << "the most first";
        saved = each.savesMs;
    }
    for (const char* words : {"quick timing", "1 ms", "presses and releases of 16 ms", "aslant",
                              "lines", "reports land"}) {
        EXPECT_NE(settingOf(compared, words), nullptr) << words;
    }
    // What it says is what a board with that setting takes.
    core::Board quick = compared.planned.board;
    quick.timing = core::PointerTiming::quick();
    const auto again = planTexture(texture(1), compared.planned.canvas, quick);
    EXPECT_EQ(settingOf(compared, "quick")->milliseconds, again->plan.milliseconds);
    EXPECT_EQ(settingOf(compared, "quick")->how, "board set flash-32k --timing quick");
}

TEST_F(PlanStored, OffersTheSameInFewerBytes) {
    const ComparedDrawing compared = planned();
    ASSERT_FALSE(compared.variants.empty());
    const board::TextureVariant& fast = compared.variants.front();
    EXPECT_EQ(fast.plan, compared.planned.plan);
    EXPECT_EQ(fast.bytes, compared.planned.bytes);
    // Noise takes fewer bytes by runs.
    core::Grid grid = *core::Grid::filled(16, 16, 0);
    tests::Random random(3);
    for (int i = 0; i < 150; ++i) {
        grid.set(random.between(0, 15), random.between(0, 15),
                 static_cast<core::PaletteIndex>(random.between(0, 3)));
    }
    const auto noisy = planTexture(
        *core::Texture::create(
            grid, *core::Palette::create({{0, 0, 0}, {9, 9, 9}, {80, 9, 9}, {9, 80, 9}})),
        compared.planned.canvas, compared.planned.board);
    ASSERT_THAT(noisy, isOk());
    const auto variants = drawingVariants(*noisy, "Foam");
    ASSERT_THAT(variants, isOk());
    ASSERT_GE(variants->size(), 2U);
    EXPECT_LT(variants->back().bytes, noisy->bytes);
    EXPECT_GT(variants->back().plan.milliseconds, noisy->plan.milliseconds);
}

TEST_F(PlanStored, SaysNothingOfWhatIsSetAlready) {
    core::Canvas canvas = catalogue::readCanvas(m_library, "cells-16").value();
    canvas.name = "the maker's own";
    canvas.penModel = core::PenModel::Diagonals;
    canvas.rules.covers = false;
    ASSERT_THAT(catalogue::addCanvas(m_library, canvas), isOk());
    const ComparedDrawing compared = planned({canvas.name, "", {}, false});
    EXPECT_EQ(settingOf(compared, "aslant"), nullptr);
    EXPECT_EQ(settingOf(compared, "turn corners"), nullptr);
    const FasterSetting* covering = settingOf(compared, "cover one another");
    ASSERT_NE(covering, nullptr);
    EXPECT_EQ(covering->how, "canvas set 'the maker'\\''s own' --pen-covers yes");
}

TEST_F(PlanStored, ProvesTheStrongBoundIfAsked) {
    const ComparedDrawing cheap = planned();
    EXPECT_EQ(cheap.bound, BoundKind::Cheap);
    PlanOptions options;
    options.prove = true;
    const ComparedDrawing strong = planned(options);
    EXPECT_EQ(strong.bound, BoundKind::Strong);
    EXPECT_GT(strong.boundMs, cheap.boundMs);
    EXPECT_LE(strong.boundMs, strong.planned.plan.milliseconds);
    EXPECT_EQ(strong.planned.plan, cheap.planned.plan);
}

TEST_F(PlanStored, PlansWithinABudget) {
    PlanOptions options;
    options.budgetMs = 0;
    const std::int64_t first = planned(options).planned.plan.milliseconds;
    options.budgetMs = 20;
    const ComparedDrawing more = planned(options);
    EXPECT_LE(more.planned.plan.milliseconds, first);
    EXPECT_EQ(planned(options).planned.plan, more.planned.plan);
}

TEST_F(PlanStored, StopsWhenAsked) {
    std::stop_source source;
    source.request_stop();
    EXPECT_THAT(planStored(m_library, m_id, {}, {source.get_token(), {}}),
                failsWith(ErrorKind::Cancelled, "stopped"));
}

TEST_F(PlanStored, WritesItsPictureAndReplacesNoneUnasked) {
    const ComparedDrawing compared = planned();
    const std::string file = path("plan.svg");
    ASSERT_THAT(writePlanPicture(compared, file, IfExists::Refuse), isOk());
    const std::string text = *readFile(file, 1 << 20);
    EXPECT_EQ(text.substr(0, 4), "<svg");
    EXPECT_NE(text.find("Tile 1"), std::string::npos);
    EXPECT_THAT(writePlanPicture(compared, file, IfExists::Refuse),
                failsWith(ErrorKind::AlreadyExists, "plan.svg"));
    EXPECT_THAT(writePlanPicture(compared, file, IfExists::Replace), isOk());
}

TEST_F(PlanStored, WritesFramesFromNothingToTheTexture) {
    const ComparedDrawing compared = planned();
    const auto files = writeFrames(compared.planned, path("film"), {100, IfExists::Refuse});
    ASSERT_THAT(files, isOk());
    const auto expected = (compared.planned.plan.milliseconds + 99) / 100 + 1;
    ASSERT_EQ(std::ssize(*files), expected);
    EXPECT_EQ(files->front().filename(), "frame-0000.png");
    const auto pixelsOf = [](const std::filesystem::path& file) {
        return image_files::readImageFile(file).value().pixels;
    };
    constexpr int kFactor = 32;  // 256 pixels for 8 cells.
    std::size_t before = 0;
    for (const auto& file : *files) {
        const core::Pixels pixels = pixelsOf(file);
        ASSERT_EQ(pixels.size, (core::Size{256, 256}));
        const auto painted = static_cast<std::size_t>(
            std::count_if(pixels.pixels.begin(), pixels.pixels.end(),
                          [](const core::Rgba8& pixel) { return pixel.a == 255; }));
        EXPECT_GE(painted, before);
        before = painted;
        if (file == files->front()) {
            EXPECT_EQ(painted, 0U);
        }
    }
    const core::Pixels last = pixelsOf(files->back());
    const FittedTexture& fitted = compared.planned.fitted;
    for (int y = 0; y < 8; ++y) {
        for (int x = 0; x < 8; ++x) {
            EXPECT_EQ(last.at(x * kFactor + 31, y * kFactor).rgb(),
                      fitted.palette[fitted.grid.at(x, y)]);
        }
    }
    EXPECT_THAT(writeFrames(compared.planned, path("film"), {100, IfExists::Refuse}),
                failsWith(ErrorKind::AlreadyExists, "frame-0000.png"));
    EXPECT_THAT(writeFrames(compared.planned, path("film"), {1, IfExists::Replace}),
                failsWith(ErrorKind::TooLarge, "at most 1000"));
    EXPECT_LE(writeFrames(compared.planned, path("usual"), {})->size(), 102U);
}

}  // namespace
}  // namespace pantile::tasks
