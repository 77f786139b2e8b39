#include "board/texture_variants.h"

#include <gtest/gtest.h>

#include "board/load_reader.h"
#include "board/load_writer.h"
#include "board/random_load.h"
#include "drawing/planner.h"
#include "drawing/replay.h"
#include "support/matchers.h"

namespace pantile::board {
namespace {

using tests::isOk;

void expectFrontier(const std::vector<TextureVariant>& variants, const std::string& trace) {
    ASSERT_FALSE(variants.empty()) << trace;
    EXPECT_LE(variants.size(), 4U) << trace;
    for (std::size_t i = 1; i < variants.size(); ++i) {
        EXPECT_GT(variants[i].plan.milliseconds, variants[i - 1].plan.milliseconds) << trace;
        EXPECT_LT(variants[i].bytes, variants[i - 1].bytes) << trace;
    }
}

/// Each variant as a slot of a load, which has to replay to the texture.
void expectAllDraw(const LoadSlot& slot, const core::PointerTiming& timing,
                   const std::vector<TextureVariant>& variants, const std::string& trace) {
    Load load{"Groyne", timing, {}};
    for (const TextureVariant& variant : variants) {
        load.slots.push_back(slot);
        load.slots.back().plan = variant.plan;
    }
    const auto bytes = writeLoad(load, tests::roomyBoard());
    ASSERT_THAT(bytes, isOk()) << trace;
    const auto verified = verifyLoad(*bytes);
    ASSERT_THAT(verified, isOk()) << trace;
    for (std::size_t i = 0; i < variants.size(); ++i) {
        EXPECT_EQ(verified->slots[i].fault, "") << trace << ", variant " << i;
        EXPECT_EQ(verified->slots[i].painted, slot.grid) << trace << ", variant " << i;
        EXPECT_EQ(verified->slots[i].milliseconds, variants[i].plan.milliseconds) << trace;
        EXPECT_EQ(verified->slots[i].bytes, variants[i].bytes) << trace;
    }
}

TEST(TextureVariants, OfRandomPlansPaintTheSame) {
    std::size_t most = 0;
    for (std::uint64_t seed = 1; seed <= 150; ++seed) {
        tests::Random random(seed);
        const core::PointerTiming timing = tests::randomTiming(random);
        const LoadSlot slot = tests::randomSlot(random, timing);
        const auto variants = variantsOf(slot, timing);
        ASSERT_THAT(variants, isOk()) << "seed " << seed;
        const std::string trace = "seed " + std::to_string(seed);
        expectFrontier(*variants, trace);
        expectAllDraw(slot, timing, *variants, trace);
        most = std::max(most, variants->size());
    }
    EXPECT_GT(most, 2U);
}

core::Canvas canvasOf(core::Size size, core::PenModel pen) {
    core::Canvas canvas;
    canvas.name = "slipway";
    canvas.size = size;
    canvas.penModel = pen;
    canvas.geometry = core::CanvasGeometry::beside(size);
    return canvas;
}

LoadSlot plannedSlot(const drawing::DrawingRequest& request) {
    std::vector<core::Rgb8> colours(16);
    for (std::size_t i = 0; i < colours.size(); ++i) {
        colours[i].r = static_cast<std::uint8_t>(i);
    }
    return {"Shingle", request.grid, *core::Palette::create(std::move(colours)), request.canvas,
            drawing::planDrawing(request).value()};
}

TEST(TextureVariants, OfPlansTakeFewerBytesForMoreTime) {
    for (int pen = 0; pen < 4; ++pen) {
        tests::Random random(static_cast<std::uint64_t>(pen) + 1);
        core::Grid grid = *core::Grid::filled(24, 24, 0);
        for (int y = 0; y < 24; ++y) {
            for (int x = 0; x < 24; ++x) {
                grid.set(x, y, static_cast<core::PaletteIndex>((x + y) / 8 + random.between(0, 2)));
            }
        }
        core::PointerTiming timing = core::PointerTiming::careful();
        if (pen >= 2) timing.maxStepDown = 127;
        const drawing::DrawingRequest request = {
            grid, std::nullopt, canvasOf(grid.size(), static_cast<core::PenModel>(pen)), timing};
        const LoadSlot slot = plannedSlot(request);
        const auto variants = variantsOf(slot, timing);
        ASSERT_THAT(variants, isOk());
        const std::string trace = "pen " + std::to_string(pen);
        expectFrontier(*variants, trace);
        expectAllDraw(slot, timing, *variants, trace);
        ASSERT_GE(variants->size(), 3U) << trace;
        for (const TextureVariant& variant : *variants) {
            EXPECT_THAT(drawing::provePlan(variant.plan, request), isOk()) << trace;
        }
        EXPECT_EQ(variants->front().kind, VariantKind::Fast) << trace;
        EXPECT_EQ(variants->front().plan, slot.plan) << trace;
        EXPECT_NE(variants->back().kind, VariantKind::Fast) << trace;
        EXPECT_LT(variants->back().bytes * 20, variants->front().bytes * 19) << trace;
        // The same again.
        const auto again = variantsOf(slot, timing);
        ASSERT_EQ(again->size(), variants->size());
        for (std::size_t i = 0; i < again->size(); ++i) {
            EXPECT_EQ((*again)[i].plan, (*variants)[i].plan) << trace;
        }
    }
}

TEST(TextureVariants, AreOneWhereRunsSaveNothing) {
    const core::Grid grid = *core::Grid::filled(6, 1, 3);
    const core::PointerTiming timing = core::PointerTiming::quick();
    const LoadSlot slot = plannedSlot(
        {grid, std::nullopt, canvasOf(grid.size(), core::PenModel::WholeCells), timing});
    const auto variants = variantsOf(slot, timing);
    ASSERT_THAT(variants, isOk());
    ASSERT_EQ(variants->size(), 1U);
    EXPECT_EQ(variants->front().kind, VariantKind::Fast);
}

TEST(TextureVariants, DropAPlanThatRunsBeat) {
    // Cell by cell from right to left, where one drag does.
    const core::Grid grid = *core::Grid::filled(9, 1, 3);
    const core::PointerTiming timing = core::PointerTiming::quick();
    LoadSlot slot = plannedSlot(
        {grid, std::nullopt, canvasOf(grid.size(), core::PenModel::WholeCells), timing});
    std::vector<drawing::Stroke> clicks;
    for (int x = 8; x >= 0; --x) clicks.push_back({3, {{x, 0}}});
    slot.plan = drawing::timedPlan(std::move(clicks), drawing::TimeModel(slot.canvas, timing));
    const auto variants = variantsOf(slot, timing);
    ASSERT_THAT(variants, isOk());
    ASSERT_EQ(variants->size(), 1U);
    EXPECT_EQ(variants->front().kind, VariantKind::Runs);
    EXPECT_EQ(variants->front().plan.lifts, 1);
}

TEST(TextureVariants, AreNotMadeOfAPlanThatCannotBeWritten) {
    tests::Random random(1);
    LoadSlot slot = tests::randomSlot(random, {});
    slot.plan.strokes.front().path = {{-1, 0}};
    EXPECT_THAT(variantsOf(slot, {}), tests::failsWith(core::ErrorKind::InvalidInput, "leaves"));
}

TEST(TextureVariants, HaveNames) {
    EXPECT_EQ(variantName(VariantKind::Fast), "fast");
    EXPECT_EQ(variantName(VariantKind::Compact), "compact");
    EXPECT_EQ(variantName(VariantKind::Runs), "runs");
}

}  // namespace
}  // namespace pantile::board
