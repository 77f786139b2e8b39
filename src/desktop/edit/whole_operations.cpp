#include "desktop/edit/whole_operations.h"

#include <QtGlobal>

namespace pantile::desktop {

namespace {

using core::PaletteIndex;
using tasks::TouchOperation;

constexpr auto kMostSide = core::kMaxGridSide;

Question number(const char* words, int least, int most, int usual) {
    return {words, AnswerKind::Number, least, most, usual, {}};
}

Question colour(const char* words, int usual) {
    return {words, AnswerKind::Colour, 0, 0, usual, {}};
}

Question choice(const char* words, std::vector<const char*> choices) {
    return {words, AnswerKind::Choice, 0, 0, 0, std::move(choices)};
}

PaletteIndex index(const Answers& answers, std::size_t question) {
    return static_cast<PaletteIndex>(answers.numbers[question]);
}

picture::Neighbours neighbours(int answer) {
    return answer == 0 ? picture::Neighbours::Four : picture::Neighbours::Eight;
}

Question corners() {
    return choice(QT_TRANSLATE_NOOP("operations", "Beside"),
                  {QT_TRANSLATE_NOOP("operations", "sides"),
                   QT_TRANSLATE_NOOP("operations", "sides and corners")});
}

void addOrder(std::vector<WholeOperation>& table) {
    table.push_back({QT_TRANSLATE_NOOP("operations", "Mirror"),
                     {choice(QT_TRANSLATE_NOOP("operations", "Direction"),
                             {QT_TRANSLATE_NOOP("operations", "left to right"),
                              QT_TRANSLATE_NOOP("operations", "top to bottom")})},
                     [](const Answers& a) -> TouchOperation {
                         return tasks::MirrorCells{static_cast<picture::Mirror>(a.numbers[0])};
                     }});
    table.push_back({QT_TRANSLATE_NOOP("operations", "Turn"),
                     {choice(QT_TRANSLATE_NOOP("operations", "Clockwise by"),
                             {QT_TRANSLATE_NOOP("operations", "a quarter"),
                              QT_TRANSLATE_NOOP("operations", "half"),
                              QT_TRANSLATE_NOOP("operations", "three quarters")})},
                     [](const Answers& a) -> TouchOperation {
                         return tasks::TurnCells{static_cast<picture::Turn>(a.numbers[0])};
                     }});
    table.push_back({QT_TRANSLATE_NOOP("operations", "Shift around"),
                     {number(QT_TRANSLATE_NOOP("operations", "Right"), -kMostSide, kMostSide, 0),
                      number(QT_TRANSLATE_NOOP("operations", "Down"), -kMostSide, kMostSide, 0)},
                     [](const Answers& a) -> TouchOperation {
                         return tasks::ShiftCells{{a.numbers[0], a.numbers[1]}};
                     }});
}

void addColours(std::vector<WholeOperation>& table) {
    table.push_back({QT_TRANSLATE_NOOP("operations", "Replace a colour"),
                     {colour(QT_TRANSLATE_NOOP("operations", "Colour"), 0),
                      colour(QT_TRANSLATE_NOOP("operations", "By"), 1)},
                     [](const Answers& a) -> TouchOperation {
                         return tasks::ReplaceColour{index(a, 0), index(a, 1)};
                     }});
    table.push_back({QT_TRANSLATE_NOOP("operations", "Swap two colours"),
                     {colour(QT_TRANSLATE_NOOP("operations", "One"), 0),
                      colour(QT_TRANSLATE_NOOP("operations", "Other"), 1)},
                     [](const Answers& a) -> TouchOperation {
                         return tasks::SwapColours{index(a, 0), index(a, 1)};
                     }});
    table.push_back(
        {QT_TRANSLATE_NOOP("operations", "Fewer colours"),
         {number(QT_TRANSLATE_NOOP("operations", "At most"), 2,
                 static_cast<int>(core::kMaxPaletteColours), 8)},
         [](const Answers& a) -> TouchOperation { return tasks::ReduceColours{a.numbers[0]}; }});
    table.push_back(
        {QT_TRANSLATE_NOOP("operations", "Recolour"),
         {{QT_TRANSLATE_NOOP("operations", "Palette"), AnswerKind::Palette, 0, 0, 0, {}}},
         [](const Answers& a) -> TouchOperation { return tasks::Recolour{a.palette}; }});
    table.push_back({QT_TRANSLATE_NOOP("operations", "Outline"),
                     {colour(QT_TRANSLATE_NOOP("operations", "In"), 0),
                      colour(QT_TRANSLATE_NOOP("operations", "Background"), 1), corners()},
                     [](const Answers& a) -> TouchOperation {
                         tasks::Pen pen;
                         pen.colour = index(a, 0);
                         return tasks::DrawOutline{index(a, 1), neighbours(a.numbers[2]), pen};
                     }});
    table.push_back({QT_TRANSLATE_NOOP("operations", "Noise of two colours"),
                     {colour(QT_TRANSLATE_NOOP("operations", "One"), 0),
                      colour(QT_TRANSLATE_NOOP("operations", "Other"), 1),
                      number(QT_TRANSLATE_NOOP("operations", "Percent of cells"), 0, 100, 50),
                      number(QT_TRANSLATE_NOOP("operations", "Seed"), 1, 1000000, 1)},
                     [](const Answers& a) -> TouchOperation {
                         return tasks::AddNoise{{{index(a, 0), index(a, 1)},
                                                 a.numbers[2],
                                                 static_cast<std::uint64_t>(a.numbers[3])}};
                     }});
}

void addMending(std::vector<WholeOperation>& table) {
    table.push_back(
        {QT_TRANSLATE_NOOP("operations", "Heal seams"),
         {choice(QT_TRANSLATE_NOOP("operations", "Which"),
                 {QT_TRANSLATE_NOOP("operations", "left and right"),
                  QT_TRANSLATE_NOOP("operations", "top and bottom"),
                  QT_TRANSLATE_NOOP("operations", "both")}),
          number(QT_TRANSLATE_NOOP("operations", "Overlap (0: an eighth)"), 0, kMostSide / 2, 0)},
         [](const Answers& a) -> TouchOperation {
             return tasks::HealSeams{
                 {static_cast<picture::HealedSeams>(a.numbers[0]), a.numbers[1]}};
         }});
    table.push_back({QT_TRANSLATE_NOOP("operations", "Remove strays"),
                     {number(QT_TRANSLATE_NOOP("operations", "Of at most so many cells"), 1,
                             picture::kMaxStraySize, 1),
                      corners()},
                     [](const Answers& a) -> TouchOperation {
                         return tasks::RemoveStrays{{a.numbers[0], neighbours(a.numbers[1])}};
                     }});
    table.push_back(
        {QT_TRANSLATE_NOOP("operations", "Simplify for quicker drawing"),
         {number(QT_TRANSLATE_NOOP("operations", "Level"), 0, picture::kMaxSimplifyLevel, 8)},
         [](const Answers& a) -> TouchOperation { return tasks::Simplify{a.numbers[0]}; }});
}

void addSizes(std::vector<WholeOperation>& table) {
    const auto margin = [](const char* words) { return number(words, 0, kMostSide - 1, 0); };
    table.push_back(
        {QT_TRANSLATE_NOOP("operations", "Enlarge"),
         {number(QT_TRANSLATE_NOOP("operations", "Times"), 2, kMostSide, 2)},
         [](const Answers& a) -> TouchOperation { return tasks::Enlarge{a.numbers[0]}; }});
    table.push_back(
        {QT_TRANSLATE_NOOP("operations", "Shrink"),
         {number(QT_TRANSLATE_NOOP("operations", "Times"), 2, kMostSide, 2)},
         [](const Answers& a) -> TouchOperation { return tasks::Shrink{a.numbers[0]}; }});
    table.push_back({QT_TRANSLATE_NOOP("operations", "Extend"),
                     {margin(QT_TRANSLATE_NOOP("operations", "Left")),
                      margin(QT_TRANSLATE_NOOP("operations", "Top")),
                      margin(QT_TRANSLATE_NOOP("operations", "Right")),
                      margin(QT_TRANSLATE_NOOP("operations", "Bottom")),
                      colour(QT_TRANSLATE_NOOP("operations", "In"), 0)},
                     [](const Answers& a) -> TouchOperation {
                         return tasks::Extend{
                             {a.numbers[0], a.numbers[1], a.numbers[2], a.numbers[3]}, index(a, 4)};
                     }});
}

std::vector<WholeOperation> makeWholeOperations() {
    std::vector<WholeOperation> table;
    addOrder(table);
    addMending(table);
    addColours(table);
    addSizes(table);
    return table;
}

}  // namespace

std::span<const WholeOperation> wholeOperations() {
    static const std::vector<WholeOperation> table = makeWholeOperations();
    return table;
}

}  // namespace pantile::desktop
