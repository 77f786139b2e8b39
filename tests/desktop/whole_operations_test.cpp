#include "desktop/edit/whole_operations.h"

#include <algorithm>
#include <set>

#include <gtest/gtest.h>

#include "library_fixture.h"
#include "support/matchers.h"

namespace pantile::desktop {
namespace {

using tasks::TouchOperation;

const std::string kPaletteName = "dusk";

core::Result<core::Palette> lookUp(const std::string& name) {
    EXPECT_EQ(name, kPaletteName);
    return core::Palette::create({{10, 10, 30}, {200, 120, 80}, {90, 140, 90}});
}

Answers answersTo(const WholeOperation& operation, int Question::*which) {
    Answers answers{{}, kPaletteName};
    for (const Question& question : operation.questions)
        answers.numbers.push_back(question.kind == AnswerKind::Number ? question.*which
                                                                      : question.usual);
    return answers;
}

const WholeOperation& named(const std::string& words) {
    const auto table = wholeOperations();
    return *std::find_if(table.begin(), table.end(),
                         [&](const WholeOperation& each) { return words == each.words; });
}

TEST(WholeOperations, WorkWithWhatIsOfferedAtFirst) {
    const core::Texture texture = tests::smallTexture("kelp", 11);
    std::set<std::string> seen;
    for (const WholeOperation& each : wholeOperations()) {
        EXPECT_TRUE(seen.insert(each.words).second) << each.words << " stands twice";
        const auto done =
            tasks::touched(texture, each.make(answersTo(each, &Question::usual)), lookUp);
        EXPECT_THAT(done, tests::isOk()) << each.words;
    }
}

TEST(WholeOperations, AskForNothingThatWouldBreakThem) {
    const core::Texture texture = tests::smallTexture("kelp", 11);
    for (const WholeOperation& each : wholeOperations()) {
        for (const auto which : {&Question::least, &Question::most}) {
            const auto done = tasks::touched(texture, each.make(answersTo(each, which)), lookUp);
            if (done) continue;
            EXPECT_EQ(done.error().kind, core::ErrorKind::InvalidInput) << each.words;
            EXPECT_FALSE(done.error().message.empty()) << each.words;
        }
    }
}

TEST(WholeOperations, HaveEveryOperationThatNeedsNoPlace) {
    std::set<std::size_t> made;
    for (const WholeOperation& each : wholeOperations())
        made.insert(each.make(answersTo(each, &Question::usual)).index());
    const std::vector<TouchOperation> atPlaces = {
        tasks::DrawLine{}, tasks::DrawCurve{}, tasks::DrawRectangle{}, tasks::DrawEllipse{},
        tasks::Fill{},     tasks::FillAlike{}, tasks::DrawGradient{},  tasks::Crop{},
    };
    for (const TouchOperation& each : atPlaces) made.insert(each.index());
    EXPECT_EQ(made.size(), std::variant_size_v<TouchOperation>);
}

TEST(WholeOperations, GiveAnswersToTheFieldsTheyAreFor) {
    const auto extend = std::get<tasks::Extend>(named("Extend").make({{1, 2, 3, 4, 5}, {}}));
    EXPECT_EQ(extend.margins.left, 1);
    EXPECT_EQ(extend.margins.top, 2);
    EXPECT_EQ(extend.margins.right, 3);
    EXPECT_EQ(extend.margins.bottom, 4);
    EXPECT_EQ(extend.colour, 5);
    const auto noise =
        std::get<tasks::AddNoise>(named("Noise of two colours").make({{3, 1, 40, 7}, {}}));
    EXPECT_EQ(noise.options.colours, (std::vector<core::PaletteIndex>{3, 1}));
    EXPECT_EQ(noise.options.percent, 40);
    EXPECT_EQ(noise.options.seed, 7U);
    const auto outline = std::get<tasks::DrawOutline>(named("Outline").make({{4, 2, 1}, {}}));
    EXPECT_EQ(outline.pen.colour, 4);
    EXPECT_EQ(outline.background, 2);
    EXPECT_EQ(outline.neighbours, picture::Neighbours::Eight);
    EXPECT_EQ(std::get<tasks::Recolour>(named("Recolour").make({{0}, "dusk"})).palette, "dusk");
    const auto turn = std::get<tasks::TurnCells>(named("Turn").make({{2}, {}}));
    EXPECT_EQ(turn.turn, picture::Turn::ThreeQuarters);
}

}  // namespace
}  // namespace pantile::desktop
