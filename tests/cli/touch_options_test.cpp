#include "cli/touch_options.h"

#include <string>

#include "support/matchers.h"

namespace pantile::cli {
namespace {

using core::ErrorKind;
using tests::failsWith;
using tests::isOk;

core::Result<std::vector<tasks::TouchStep>> steps(const std::vector<std::string>& words) {
    PANTILE_ASSIGN_OR_RETURN(const auto arguments, Arguments::parse(words, touchOptionSpecs()));
    return touchSteps(arguments.inOrder());
}

template <typename Operation>
Operation only(const std::vector<std::string>& words) {
    const auto read = steps(words);
    EXPECT_THAT(read, isOk());
    if (!read) return {};
    EXPECT_EQ(read->size(), 1U);
    return std::get<Operation>(read->front().operation);
}

TEST(TouchOptions, SettingsHoldFromWhereTheyStand) {
    const auto read = steps({"--colour", "3", "--line", "0,0", "--colour=2", "--brush", "4",
                             "--brush-shape", "round", "--symmetry", "8", "--only", "1", "--line",
                             "1,2,3,4", "--only", "all", "--line", "5,5"});
    ASSERT_THAT(read, isOk());
    ASSERT_EQ(read->size(), 3U);
    const auto& first = std::get<tasks::DrawLine>((*read)[0].operation);
    EXPECT_EQ(first.corners, (std::vector<core::Point>{{0, 0}}));
    EXPECT_EQ(first.pen.colour, 3);
    EXPECT_EQ(first.pen.brush, picture::Brush());
    EXPECT_EQ(first.pen.symmetry, picture::Symmetry::None);
    EXPECT_EQ(first.pen.only, std::nullopt);
    const auto& second = std::get<tasks::DrawLine>((*read)[1].operation);
    EXPECT_EQ(second.corners, (std::vector<core::Point>{{1, 2}, {3, 4}}));
    EXPECT_EQ(second.pen.colour, 2);
    EXPECT_EQ(second.pen.brush, (picture::Brush{4, picture::BrushShape::Round}));
    EXPECT_EQ(second.pen.symmetry, picture::Symmetry::Eight);
    EXPECT_EQ(second.pen.only, 1);
    EXPECT_EQ(std::get<tasks::DrawLine>((*read)[2].operation).pen.only, std::nullopt);
    EXPECT_EQ((*read)[1].name, "--line 1,2,3,4");
}

TEST(TouchOptions, ShapesTakeTheirPlacesInOrder) {
    const auto curve = only<tasks::DrawCurve>({"--colour", "1", "--curve", "1,2,-3,4,5,6"});
    EXPECT_EQ(curve.from, (core::Point{1, 2}));
    EXPECT_EQ(curve.through, (core::Point{-3, 4}));
    EXPECT_EQ(curve.to, (core::Point{5, 6}));
    const auto rectangle = only<tasks::DrawRectangle>({"--colour", "1", "--rectangle", "1,2,3,4"});
    EXPECT_EQ(rectangle.corner, (core::Point{1, 2}));
    EXPECT_EQ(rectangle.opposite, (core::Point{3, 4}));
    EXPECT_EQ(rectangle.interior, tasks::Interior::Empty);
    EXPECT_EQ(
        only<tasks::DrawRectangle>({"--colour", "1", "--filled-rectangle", "1,2,3,4"}).interior,
        tasks::Interior::Filled);
    EXPECT_EQ(only<tasks::DrawEllipse>({"--colour", "1", "--ellipse", "1,2,3,4"}).interior,
              tasks::Interior::Empty);
    EXPECT_EQ(only<tasks::DrawEllipse>({"--colour", "1", "--filled-ellipse", "1,2,3,4"}).interior,
              tasks::Interior::Filled);
}

TEST(TouchOptions, FillsAndColours) {
    using picture::Neighbours;
    EXPECT_EQ(only<tasks::Fill>({"--colour", "1", "--fill", "2,3"}).neighbours, Neighbours::Four);
    const auto fill = only<tasks::Fill>({"--neighbours", "8", "--colour", "1", "--fill", "2,3"});
    EXPECT_EQ(fill.neighbours, Neighbours::Eight);
    EXPECT_EQ(fill.at, (core::Point{2, 3}));
    EXPECT_EQ(only<tasks::FillAlike>({"--colour", "1", "--fill-alike", "2,3"}).at,
              (core::Point{2, 3}));
    const auto outline =
        only<tasks::DrawOutline>({"--colour", "1", "--neighbours", "8", "--outline", "2"});
    EXPECT_EQ(outline.background, 2);
    EXPECT_EQ(outline.neighbours, Neighbours::Eight);
    const auto gradient =
        only<tasks::DrawGradient>({"--only", "4", "--gradient", "0,-1,8,9,3,2,3"});
    EXPECT_EQ(gradient.gradient.from, (core::Point{0, -1}));
    EXPECT_EQ(gradient.gradient.to, (core::Point{8, 9}));
    EXPECT_EQ(gradient.gradient.colours, (std::vector<core::PaletteIndex>{3, 2, 3}));
    EXPECT_EQ(gradient.only, 4);
    EXPECT_EQ(only<tasks::ReplaceColour>({"--replace", "1,2"}).to, 2);
    EXPECT_EQ(only<tasks::SwapColours>({"--swap", "1,2"}).one, 1);
}

TEST(TouchOptions, CellsAndSizes) {
    using picture::Turn;
    EXPECT_EQ(only<tasks::MirrorCells>({"--mirror", "top-bottom"}).mirror,
              picture::Mirror::TopBottom);
    EXPECT_EQ(only<tasks::TurnCells>({"--turn", "90"}).turn, Turn::Quarter);
    EXPECT_EQ(only<tasks::TurnCells>({"--turn", "180"}).turn, Turn::Half);
    EXPECT_EQ(only<tasks::TurnCells>({"--turn", "270"}).turn, Turn::ThreeQuarters);
    EXPECT_EQ(only<tasks::ShiftCells>({"--shift", "-1,2"}).by, (core::Point{-1, 2}));
    EXPECT_EQ(only<tasks::Crop>({"--crop", "1,2,3,4"}).opposite, (core::Point{3, 4}));
    const auto extend = only<tasks::Extend>({"--colour", "9", "--extend", "1,2,3,4"});
    EXPECT_EQ(extend.margins.left, 1);
    EXPECT_EQ(extend.margins.top, 2);
    EXPECT_EQ(extend.margins.right, 3);
    EXPECT_EQ(extend.margins.bottom, 4);
    EXPECT_EQ(extend.colour, 9);
    EXPECT_EQ(only<tasks::Enlarge>({"--enlarge", "4"}).factor, 4);
    EXPECT_EQ(only<tasks::Shrink>({"--shrink", "4"}).factor, 4);
}

TEST(TouchOptions, NoiseSeamsAndPalettes) {
    const auto noise = only<tasks::AddNoise>({"--seed", "77", "--noise", "30,1,2,4"}).options;
    EXPECT_EQ(noise.percent, 30);
    EXPECT_EQ(noise.seed, 77U);
    EXPECT_EQ(noise.colours, (std::vector<core::PaletteIndex>{1, 2, 4}));
    EXPECT_EQ(only<tasks::AddNoise>({"--noise", "30,1,2"}).options.seed, 1U);
    const auto heal = only<tasks::HealSeams>({"--overlap", "3", "--heal-seams", "vertical"});
    EXPECT_EQ(heal.options.seams, picture::HealedSeams::Vertical);
    EXPECT_EQ(heal.options.overlap, 3);
    EXPECT_EQ(only<tasks::HealSeams>({"--heal-seams", "both"}).options.overlap, 0);
    const auto strays =
        only<tasks::RemoveStrays>({"--neighbours", "8", "--remove-strays", "65536"});
    EXPECT_EQ(strays.options.largest, 65536);
    EXPECT_EQ(strays.options.neighbours, picture::Neighbours::Eight);
    EXPECT_EQ(only<tasks::Simplify>({"--simplify", "12"}).level, 12);
    EXPECT_EQ(only<tasks::Recolour>({"--recolour", "storm, late"}).palette, "storm, late");
    EXPECT_EQ(only<tasks::ReduceColours>({"--reduce-colours", "5"}).count, 5);
}

TEST(TouchOptions, PaintingNeedsAColourInFront) {
    for (const char* option : {"--line", "--fill", "--fill-alike"}) {
        EXPECT_THAT(
            steps({option, "0,0", "--colour", "1"}),
            failsWith(ErrorKind::Usage, std::string("no colour was chosen before ") + option));
    }
    EXPECT_THAT(steps({"--extend", "1,1,1,1"}), failsWith(ErrorKind::Usage, "--extend"));
    EXPECT_THAT(steps({"--outline", "0"}), failsWith(ErrorKind::Usage, "--outline"));
}

TEST(TouchOptions, SomethingHasToBeDone) {
    EXPECT_THAT(steps({}), failsWith(ErrorKind::Usage, "nothing to do"));
    EXPECT_THAT(steps({"--colour", "1", "--brush", "2"}),
                failsWith(ErrorKind::Usage, "nothing to do"));
}

// No option takes garbage; and what each takes at most is all that it takes.
TEST(TouchOptions, EveryOptionRefusesGarbage) {
    for (const OptionSpec& spec : touchOptionSpecs()) {
        if (spec.name == "--recolour") continue;  // Any text may be a name.
        for (const char* bad : {"", "kelp", ",", "1,", "0x1", "1.5", "99999999999999999999",
                                "-99999999999999999999", "1,2,3,4,5,6,7,kelp", "NaN", "\xff"}) {
            const auto read =
                steps({"--colour", "1", std::string(spec.name) + "=" + bad, "--swap", "0,1"});
            ASSERT_FALSE(read.has_value()) << spec.name << " " << bad;
            EXPECT_EQ(read.error().kind, ErrorKind::Usage) << spec.name << " " << bad;
            EXPECT_NE(read.error().message.find(spec.name), std::string::npos)
                << read.error().message;
        }
        EXPECT_EQ(steps({std::string(spec.name)}).error().kind, ErrorKind::Usage) << "no value";
    }
}

TEST(TouchOptions, NumbersOutOfRangeAreNamed) {
    const std::vector<std::pair<std::string, std::string>> cases = {
        {"--colour", "256"},
        {"--colour", "-1"},
        {"--brush", "0"},
        {"--brush", "17"},
        {"--symmetry", "2"},
        {"--neighbours", "6"},
        {"--only", "256"},
        {"--line", "4097,0"},
        {"--line", "1,2,3"},
        {"--curve", "0,0,1,1"},
        {"--rectangle", "0,0"},
        {"--ellipse", "0,0,1,1,2,2"},
        {"--fill", "0,-4097"},
        {"--outline", "256"},
        {"--gradient", "0,0,1,1,2"},
        {"--gradient", "0,0,1,1,2,256"},
        {"--gradient", "0,0,1,1,2,-1"},
        {"--replace", "1,2,3"},
        {"--swap", "1"},
        {"--mirror", "left"},
        {"--turn", "45"},
        {"--shift", "1"},
        {"--crop", "1,2,3"},
        {"--extend", "-1,0,0,0"},
        {"--extend", "257,0,0,0"},
        {"--enlarge", "0"},
        {"--enlarge", "257"},
        {"--shrink", "0"},
        {"--seed", "-1"},
        {"--noise", "50,1"},
        {"--noise", "50,1,256"},
        {"--overlap", "129"},
        {"--heal-seams", "yes"},
        {"--remove-strays", "0"},
        {"--remove-strays", "65537"},
        {"--simplify", "1001"},
        {"--reduce-colours", "1"},
        {"--reduce-colours", "257"},
    };
    for (const auto& [option, value] : cases)
        EXPECT_THAT(steps({"--colour", "1", option + "=" + value, "--swap", "0,1"}),
                    failsWith(ErrorKind::Usage, option))
            << option << " " << value;
    std::string places = "0,0";
    for (std::size_t i = 0; i < tasks::kMaxCorners; ++i) places += ",0,0";
    EXPECT_THAT(steps({"--colour", "1", "--line", places}), failsWith(ErrorKind::Usage, "--line"));
}

}  // namespace
}  // namespace pantile::cli
