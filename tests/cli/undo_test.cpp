#include "support/cli_runner.h"
#include "support/matchers.h"

namespace pantile::tests {
namespace {

class UndoCli : public ::testing::Test {
protected:
    void addTwo() const {
        const CliAnswer added =
            m_cli.run({"add", m_cli.writeGrid("one.csv", 1), m_cli.writeGrid("two.csv", 2)});
        ASSERT_EQ(added.exitCode, 0) << added.err;
    }

    std::string found(const std::string& query) const {
        std::string ids;
        for (const auto& texture :
             m_cli.runJson({"find", query, "--sort", "id"}).json()["textures"].toArray()) {
            ids += std::to_string(texture.toObject()["id"].toInt()) + " ";
        }
        return ids;
    }

    CliRunner m_cli;
};

TEST_F(UndoCli, TakesBackTheLastActionAndDoesItAgain) {
    addTwo();
    ASSERT_EQ(m_cli.run({"tag", "all", "+foam"}).exitCode, 0);
    ASSERT_EQ(m_cli.run({"tags", "rename", "foam", "froth"}).exitCode, 0);
    const CliAnswer undone = m_cli.run({"undo"});
    EXPECT_EQ(undone.exitCode, 0) << undone.err;
    EXPECT_NE(undone.out.find("Undid: Rename tag 'foam' to 'froth'"), std::string::npos);
    EXPECT_EQ(found("tag:foam"), "1 2 ");
    const QJsonArray redone = m_cli.runJson({"redo"}).json()["redone"].toArray();
    ASSERT_EQ(redone.size(), 1);
    EXPECT_EQ(redone[0].toObject()["what"].toString(),
              QStringLiteral("Rename tag 'foam' to 'froth'"));
    EXPECT_EQ(found("tag:froth"), "1 2 ");
}

TEST_F(UndoCli, TakesSeveralBackAndSaysWhereItEnds) {
    addTwo();
    ASSERT_EQ(m_cli.run({"shelf", "put", "Pier", "1"}).exitCode, 0);
    const CliAnswer all = m_cli.run({"undo", "9"});
    EXPECT_EQ(all.exitCode, 1);
    EXPECT_NE(all.out.find("Undid: Add 2 files"), std::string::npos) << all.out;
    EXPECT_NE(all.err.find("nothing to undo"), std::string::npos) << all.err;
    EXPECT_EQ(found("is:removed"), "1 2 ") << "what was added stays recoverable";
    EXPECT_EQ(m_cli.run({"redo", "2"}).exitCode, 0);
    EXPECT_EQ(found("shelf:Pier"), "1 ");
}

TEST_F(UndoCli, JsonSaysWhyItStopped) {
    addTwo();
    const CliAnswer all = m_cli.runJson({"undo", "9"});
    EXPECT_EQ(all.exitCode, 1);
    EXPECT_EQ(all.json()["undone"].toArray().size(), 1);
    EXPECT_EQ(all.json()["error"].toObject()["kind"].toString(), QStringLiteral("not-found"));
    EXPECT_FALSE(m_cli.runJson({"redo", "1"}).json().contains(QLatin1String("error")));
}

TEST_F(UndoCli, HistoryListsActionsAndRevisions) {
    addTwo();
    ASSERT_EQ(m_cli.run({"remove", "2"}).exitCode, 0);
    ASSERT_EQ(m_cli.run({"undo"}).exitCode, 0);
    const QJsonArray actions = m_cli.runJson({"history"}).json()["actions"].toArray();
    ASSERT_EQ(actions.size(), 2);
    EXPECT_EQ(actions[0].toObject()["what"].toString(), QStringLiteral("Remove texture 2"));
    EXPECT_EQ(actions[0].toObject()["state"].toString(), QStringLiteral("undone"));
    EXPECT_EQ(actions[1].toObject()["state"].toString(), QStringLiteral("done"));
    EXPECT_EQ(m_cli.runJson({"history", "--limit", "1"}).json()["actions"].toArray().size(), 1);
    EXPECT_EQ(m_cli.runJson({"history", "2"}).json()["revisions"].toArray().size(), 1);
    EXPECT_EQ(m_cli.run({"history", "--limit", "0"}).exitCode, 2);
}

TEST_F(UndoCli, EndsAtAPurge) {
    addTwo();
    ASSERT_EQ(m_cli.run({"remove", "2"}).exitCode, 0);
    ASSERT_EQ(m_cli.run({"purge", "--for-good"}).exitCode, 0);
    const CliAnswer undone = m_cli.runJson({"undo"});
    EXPECT_EQ(undone.exitCode, 1);
    EXPECT_NE(undone.out.find("cannot be undone"), std::string::npos) << undone.out;
    EXPECT_EQ(
        m_cli.runJson({"history"}).json()["actions"].toArray()[0].toObject()["state"].toString(),
        QStringLiteral("for good"));
}

TEST_F(UndoCli, RefusesWhatIsNoCount) {
    for (const char* word : {"x", "0", "-1", "1000", "1.5"}) {
        EXPECT_EQ(m_cli.run({"undo", word}).exitCode, 2) << word;
    }
    EXPECT_EQ(m_cli.run({"redo", "1", "2"}).exitCode, 2);
    EXPECT_EQ(m_cli.run({"undo"}).exitCode, 1) << "nothing was done";
}

/// What textures cost hangs on the canvas.
TEST_F(UndoCli, BringsDrawingTimesInLine) {
    addTwo();
    const auto cost = [&] {
        return m_cli.runJson({"show", "1"}).json()["draw_seconds"].toDouble();
    };
    const double before = cost();
    ASSERT_EQ(m_cli.run({"canvas", "set", "cells-16", "--bar-at", "3000,8"}).exitCode, 0);
    const double other = cost();
    EXPECT_NE(other, before);
    ASSERT_EQ(m_cli.run({"undo"}).exitCode, 0);
    EXPECT_EQ(cost(), before);
    const auto listed = m_cli.runJson({"find"}).json()["textures"].toArray();
    EXPECT_EQ(listed.last().toObject()["draw_seconds"].toDouble(), before);
    ASSERT_EQ(m_cli.run({"redo"}).exitCode, 0);
    EXPECT_EQ(cost(), other);
}

TEST_F(UndoCli, OfATouchUpBringsThePictureAndItsCostBack) {
    addTwo();
    const std::string before = m_cli.run({"show", "1"}).out;
    ASSERT_EQ(m_cli.run({"touch", "1", "--colour", "1", "--line", "0,0,3,3"}).exitCode, 0);
    EXPECT_NE(m_cli.run({"show", "1"}).out, before);
    ASSERT_EQ(m_cli.run({"undo"}).exitCode, 0);
    EXPECT_EQ(m_cli.run({"show", "1"}).out, before);
    EXPECT_EQ(m_cli.run({"check"}).exitCode, 0);
}

}  // namespace
}  // namespace pantile::tests
