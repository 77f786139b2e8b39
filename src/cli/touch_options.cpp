#include "cli/touch_options.h"

#include <algorithm>
#include <array>
#include <cstdint>
#include <limits>
#include <optional>
#include <string>
#include <string_view>
#include <utility>

#include "cli/number_list.h"
#include "core/grid.h"
#include "core/palette.h"
#include "picture/path.h"

namespace pantile::cli {
namespace {

using core::Error;
using core::ErrorKind;
using core::PaletteIndex;
using core::Point;
using core::Result;
using picture::Neighbours;

constexpr int kLastColour = core::kMaxPaletteColours - 1;

// One option as it is read: what was set by those before it, and the steps up to it.
struct TouchReader {
    std::optional<PaletteIndex> colour;
    tasks::Pen pen;
    Neighbours neighbours = Neighbours::Four;
    std::uint64_t seed = picture::NoiseOptions().seed;
    int overlap = picture::HealOptions().overlap;
    std::vector<tasks::TouchStep> steps;

    std::string_view option;
    std::string_view placeholder;
    std::string value;

    Result<std::vector<int>> numbers(std::size_t fewest, std::size_t most, int least,
                                     int greatest) const {
        return parseNumberList(option, value, {fewest, most, least, greatest, placeholder});
    }

    /// Places one after the other: X,Y,X,Y.
    Result<std::vector<Point>> places(std::size_t fewest, std::size_t most) const {
        PANTILE_ASSIGN_OR_RETURN(
            const auto list,
            numbers(2 * fewest, 2 * most, -picture::kMaxCoordinate, picture::kMaxCoordinate));
        if (list.size() % 2 != 0) {
            return Error{ErrorKind::Usage, std::string(option) + " has a column without its row",
                         "write " + std::string(option) + " " + std::string(placeholder)};
        }
        std::vector<Point> places;
        for (std::size_t i = 0; i < list.size(); i += 2) places.push_back({list[i], list[i + 1]});
        return places;
    }

    Result<std::vector<PaletteIndex>> colours(std::size_t count) const {
        PANTILE_ASSIGN_OR_RETURN(const auto list, numbers(count, count, 0, kLastColour));
        return std::vector<PaletteIndex>(list.begin(), list.end());
    }

    Result<PaletteIndex> chosenColour() const {
        if (colour) return *colour;
        return Error{ErrorKind::Usage, "no colour was chosen before " + std::string(option),
                     "write --colour N in front of it; 'pantile show' lists the palette"};
    }

    Result<tasks::Pen> chosenPen() const {
        PANTILE_ASSIGN_OR_RETURN(const PaletteIndex chosen, chosenColour());
        tasks::Pen chosenPen = pen;
        chosenPen.colour = chosen;
        return chosenPen;
    }

    Result<void> add(tasks::TouchOperation operation) {
        steps.push_back({std::move(operation), std::string(option) + " " + std::string(value)});
        return {};
    }
};

template <std::size_t N, typename T>
Result<void> readChoice(const TouchReader& reader, const std::array<Choice<T>, N>& choices,
                        T& field) {
    PANTILE_ASSIGN_OR_RETURN(field, parseChoice(reader.option, reader.value, choices));
    return {};
}

Result<void> readColour(TouchReader& reader) {
    PANTILE_ASSIGN_OR_RETURN(const auto list, reader.colours(1));
    reader.colour = list.front();
    return {};
}

Result<void> readBrush(TouchReader& reader) {
    PANTILE_ASSIGN_OR_RETURN(const auto list, reader.numbers(1, 1, 1, picture::kMaxBrushSize));
    reader.pen.brush.size = list.front();
    return {};
}

Result<void> readBrushShape(TouchReader& reader) {
    using picture::BrushShape;
    constexpr std::array<Choice<BrushShape>, 2> kShapes = {
        {{"square", BrushShape::Square}, {"round", BrushShape::Round}}};
    return readChoice(reader, kShapes, reader.pen.brush.shape);
}

Result<void> readSymmetry(TouchReader& reader) {
    using picture::Symmetry;
    constexpr std::array<Choice<Symmetry>, 5> kSymmetries = {{{"none", Symmetry::None},
                                                              {"left-right", Symmetry::LeftRight},
                                                              {"top-bottom", Symmetry::TopBottom},
                                                              {"4", Symmetry::Four},
                                                              {"8", Symmetry::Eight}}};
    return readChoice(reader, kSymmetries, reader.pen.symmetry);
}

Result<void> readNeighbours(TouchReader& reader) {
    constexpr std::array<Choice<Neighbours>, 2> kNeighbours = {
        {{"4", Neighbours::Four}, {"8", Neighbours::Eight}}};
    return readChoice(reader, kNeighbours, reader.neighbours);
}

Result<void> readOnly(TouchReader& reader) {
    reader.pen.only.reset();
    if (reader.value == "all") return {};
    PANTILE_ASSIGN_OR_RETURN(const auto list, reader.colours(1));
    reader.pen.only = list.front();
    return {};
}

Result<void> readLine(TouchReader& reader) {
    PANTILE_ASSIGN_OR_RETURN(auto places, reader.places(1, tasks::kMaxCorners));
    PANTILE_ASSIGN_OR_RETURN(const auto pen, reader.chosenPen());
    return reader.add(tasks::DrawLine{std::move(places), pen});
}

Result<void> readCurve(TouchReader& reader) {
    PANTILE_ASSIGN_OR_RETURN(const auto places, reader.places(3, 3));
    PANTILE_ASSIGN_OR_RETURN(const auto pen, reader.chosenPen());
    return reader.add(tasks::DrawCurve{places[0], places[1], places[2], pen});
}

template <typename Shape, tasks::Interior kInterior>
Result<void> readShape(TouchReader& reader) {
    PANTILE_ASSIGN_OR_RETURN(const auto places, reader.places(2, 2));
    PANTILE_ASSIGN_OR_RETURN(const auto pen, reader.chosenPen());
    return reader.add(Shape{places[0], places[1], kInterior, pen});
}

Result<void> readFill(TouchReader& reader) {
    PANTILE_ASSIGN_OR_RETURN(const auto places, reader.places(1, 1));
    PANTILE_ASSIGN_OR_RETURN(const auto pen, reader.chosenPen());
    return reader.add(tasks::Fill{places[0], reader.neighbours, pen});
}

Result<void> readFillAlike(TouchReader& reader) {
    PANTILE_ASSIGN_OR_RETURN(const auto places, reader.places(1, 1));
    PANTILE_ASSIGN_OR_RETURN(const auto pen, reader.chosenPen());
    return reader.add(tasks::FillAlike{places[0], pen});
}

Result<void> readOutline(TouchReader& reader) {
    PANTILE_ASSIGN_OR_RETURN(const auto background, reader.colours(1));
    PANTILE_ASSIGN_OR_RETURN(const auto pen, reader.chosenPen());
    return reader.add(tasks::DrawOutline{background.front(), reader.neighbours, pen});
}

Result<void> readGradient(TouchReader& reader) {
    constexpr std::size_t kPlaces = 4;  // numbers of them, before the colours
    PANTILE_ASSIGN_OR_RETURN(const auto list,
                             reader.numbers(kPlaces + 2, kPlaces + core::kMaxPaletteColours,
                                            -picture::kMaxCoordinate, picture::kMaxCoordinate));
    picture::Gradient gradient{{list[0], list[1]}, {list[2], list[3]}, {}};
    for (std::size_t i = kPlaces; i < list.size(); ++i) {
        if (list[i] < 0 || list[i] > kLastColour) {
            return Error{
                ErrorKind::Usage,
                std::string(reader.option) + " cannot have the colour " + std::to_string(list[i]),
                "after two places give colours from 0 to " + std::to_string(kLastColour)};
        }
        gradient.colours.push_back(static_cast<PaletteIndex>(list[i]));
    }
    return reader.add(tasks::DrawGradient{std::move(gradient), reader.pen.only});
}

template <typename Change>
Result<void> readTwoColours(TouchReader& reader) {
    PANTILE_ASSIGN_OR_RETURN(const auto list, reader.colours(2));
    return reader.add(Change{list[0], list[1]});
}

Result<void> readMirror(TouchReader& reader) {
    using picture::Mirror;
    constexpr std::array<Choice<Mirror>, 2> kMirrors = {
        {{"left-right", Mirror::LeftRight}, {"top-bottom", Mirror::TopBottom}}};
    PANTILE_ASSIGN_OR_RETURN(const Mirror mirror,
                             parseChoice(reader.option, reader.value, kMirrors));
    return reader.add(tasks::MirrorCells{mirror});
}

Result<void> readTurn(TouchReader& reader) {
    using picture::Turn;
    constexpr std::array<Choice<Turn>, 3> kTurns = {
        {{"90", Turn::Quarter}, {"180", Turn::Half}, {"270", Turn::ThreeQuarters}}};
    PANTILE_ASSIGN_OR_RETURN(const Turn turn, parseChoice(reader.option, reader.value, kTurns));
    return reader.add(tasks::TurnCells{turn});
}

Result<void> readShift(TouchReader& reader) {
    PANTILE_ASSIGN_OR_RETURN(const auto places, reader.places(1, 1));
    return reader.add(tasks::ShiftCells{places[0]});
}

Result<void> readCrop(TouchReader& reader) {
    PANTILE_ASSIGN_OR_RETURN(const auto places, reader.places(2, 2));
    return reader.add(tasks::Crop{places[0], places[1]});
}

Result<void> readExtend(TouchReader& reader) {
    PANTILE_ASSIGN_OR_RETURN(const auto list, reader.numbers(4, 4, 0, core::kMaxGridSide));
    PANTILE_ASSIGN_OR_RETURN(const PaletteIndex colour, reader.chosenColour());
    return reader.add(tasks::Extend{{list[0], list[1], list[2], list[3]}, colour});
}

template <typename Resize>
Result<void> readFactor(TouchReader& reader) {
    PANTILE_ASSIGN_OR_RETURN(const auto list, reader.numbers(1, 1, 1, core::kMaxGridSide));
    return reader.add(Resize{list.front()});
}

Result<void> readSeed(TouchReader& reader) {
    PANTILE_ASSIGN_OR_RETURN(
        const long long seed,
        parseNumber(reader.option, reader.value, 0, std::numeric_limits<long long>::max()));
    reader.seed = static_cast<std::uint64_t>(seed);
    return {};
}

Result<void> readNoise(TouchReader& reader) {
    PANTILE_ASSIGN_OR_RETURN(const auto list,
                             reader.numbers(3, 1 + core::kMaxPaletteColours, 0, kLastColour));
    picture::NoiseOptions options;
    options.percent = list.front();
    options.colours.assign(list.begin() + 1, list.end());
    options.seed = reader.seed;
    return reader.add(tasks::AddNoise{std::move(options)});
}

Result<void> readOverlap(TouchReader& reader) {
    PANTILE_ASSIGN_OR_RETURN(const auto list, reader.numbers(1, 1, 0, core::kMaxGridSide / 2));
    reader.overlap = list.front();
    return {};
}

Result<void> readHealSeams(TouchReader& reader) {
    using picture::HealedSeams;
    constexpr std::array<Choice<HealedSeams>, 3> kSeams = {{{"vertical", HealedSeams::Vertical},
                                                            {"horizontal", HealedSeams::Horizontal},
                                                            {"both", HealedSeams::Both}}};
    PANTILE_ASSIGN_OR_RETURN(const HealedSeams seams,
                             parseChoice(reader.option, reader.value, kSeams));
    return reader.add(tasks::HealSeams{{seams, reader.overlap}});
}

Result<void> readRemoveStrays(TouchReader& reader) {
    PANTILE_ASSIGN_OR_RETURN(const auto list, reader.numbers(1, 1, 1, picture::kMaxStraySize));
    return reader.add(tasks::RemoveStrays{{list.front(), reader.neighbours}});
}

Result<void> readSimplify(TouchReader& reader) {
    PANTILE_ASSIGN_OR_RETURN(const auto list, reader.numbers(1, 1, 0, picture::kMaxSimplifyLevel));
    return reader.add(tasks::Simplify{list.front()});
}

Result<void> readRecolour(TouchReader& reader) {
    return reader.add(tasks::Recolour{reader.value});
}

Result<void> readReduceColours(TouchReader& reader) {
    PANTILE_ASSIGN_OR_RETURN(
        const auto list, reader.numbers(1, 1, core::kMinPaletteColours, core::kMaxPaletteColours));
    return reader.add(tasks::ReduceColours{list.front()});
}

struct TouchOption {
    std::string_view name;
    std::string_view placeholder;
    std::string_view help;
    Result<void> (*read)(TouchReader&);
};

using tasks::DrawEllipse;
using tasks::DrawRectangle;
using tasks::Interior;

// In the order of the help: first what holds for all that follow, then the operations.
constexpr std::array kTouchOptions = {
    TouchOption{"--colour", "N", "paint with this colour of the palette from here on", readColour},
    TouchOption{"--brush", "N", "and with a brush of 1 to 16 cells", readBrush},
    TouchOption{"--brush-shape", "square|round", "of this shape", readBrushShape},
    TouchOption{"--symmetry", "none|left-right|top-bottom|4|8",
                "and again in the mirrored places; 8 on squares alone", readSymmetry},
    TouchOption{"--only", "N|all", "but over cells of this colour alone", readOnly},
    TouchOption{"--neighbours", "4|8", "fill, outline and strays over sides alone, or corners too",
                readNeighbours},
    TouchOption{"--line", "X,Y,X,Y,...", "a line from place to place; one place is a dot",
                readLine},
    TouchOption{"--curve", "X,Y,X,Y,X,Y", "a curve from the first place through the second",
                readCurve},
    TouchOption{"--rectangle", "X,Y,X,Y", "a rectangle's border, by opposite corners",
                readShape<DrawRectangle, Interior::Empty>},
    TouchOption{"--filled-rectangle", "X,Y,X,Y", "a rectangle",
                readShape<DrawRectangle, Interior::Filled>},
    TouchOption{"--ellipse", "X,Y,X,Y", "the border of the ellipse in that rectangle",
                readShape<DrawEllipse, Interior::Empty>},
    TouchOption{"--filled-ellipse", "X,Y,X,Y", "the ellipse",
                readShape<DrawEllipse, Interior::Filled>},
    TouchOption{"--fill", "X,Y", "the connected cells of the colour at a place", readFill},
    TouchOption{"--fill-alike", "X,Y", "all cells of the colour at a place", readFillAlike},
    TouchOption{"--outline", "N", "the cells of colour N beside any other colour", readOutline},
    TouchOption{"--gradient", "X,Y,X,Y,N,N,...", "dithered from place to place through colours",
                readGradient},
    TouchOption{"--replace", "N,N", "the second colour wherever the first is",
                readTwoColours<tasks::ReplaceColour>},
    TouchOption{"--swap", "N,N", "each of two colours where the other is",
                readTwoColours<tasks::SwapColours>},
    TouchOption{"--mirror", "left-right|top-bottom", "mirror all cells", readMirror},
    TouchOption{"--turn", "90|180|270", "turn all cells clockwise", readTurn},
    TouchOption{"--shift", "X,Y", "move right and down; what leaves comes in opposite", readShift},
    TouchOption{"--crop", "X,Y,X,Y", "keep the part between opposite corners", readCrop},
    TouchOption{"--extend", "LEFT,TOP,RIGHT,BOTTOM", "add so many columns and rows of the colour",
                readExtend},
    TouchOption{"--enlarge", "N", "every cell becomes N x N cells", readFactor<tasks::Enlarge>},
    TouchOption{"--shrink", "N", "every N x N cells become one: the commonest colour",
                readFactor<tasks::Shrink>},
    TouchOption{"--seed", "N", "start the noise that follows with this number, else with 1",
                readSeed},
    TouchOption{"--noise", "PERCENT,N,N,...", "mix so much of the cells of these colours",
                readNoise},
    TouchOption{"--overlap", "N", "heal at most N cells on each side; 0 is an eighth of the side",
                readOverlap},
    TouchOption{"--heal-seams", "vertical|horizontal|both", "make it repeat without a visible seam",
                readHealSeams},
    TouchOption{"--remove-strays", "N", "patches of at most N cells take the colour around them",
                readRemoveStrays},
    TouchOption{"--simplify", "LEVEL", "small patches that differ little take it, 0 to 1000",
                readSimplify},
    TouchOption{"--recolour", "PALETTE", "the nearest colours of a palette of the library",
                readRecolour},
    TouchOption{"--reduce-colours", "N", "keep at most N of its colours", readReduceColours},
};

Result<void> readOption(TouchReader& reader, const GivenOption& given) {
    const auto option =
        std::find_if(kTouchOptions.begin(), kTouchOptions.end(),
                     [&](const TouchOption& each) { return each.name == given.name; });
    reader.option = option->name;
    reader.placeholder = option->placeholder;
    reader.value = given.value;
    return option->read(reader);
}

}  // namespace

std::vector<OptionSpec> touchOptionSpecs() {
    std::vector<OptionSpec> specs;
    specs.reserve(kTouchOptions.size());
    for (const TouchOption& option : kTouchOptions)
        specs.push_back({option.name, OptionKind::Repeated, option.placeholder, option.help});
    return specs;
}

Result<std::vector<tasks::TouchStep>> touchSteps(std::span<const GivenOption> options) {
    TouchReader reader;
    for (const GivenOption& option : options) PANTILE_RETURN_IF_ERROR(readOption(reader, option));
    if (!reader.steps.empty()) return std::move(reader.steps);
    return Error{ErrorKind::Usage, "nothing to do was given",
                 "write for example --colour 1 --line 0,0,7,7"};
}

}  // namespace pantile::cli
