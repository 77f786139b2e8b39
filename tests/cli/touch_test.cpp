// The commands touch and seams, through runCli.

#include "support/cli_runner.h"

namespace pantile::cli {
namespace {

using tests::CliAnswer;

class Touch : public ::testing::Test {
protected:
    Touch() {
        m_cli.writeText("buoy.csv",
                        "# palette #1b2631 #f2efe4 #b5532d #4f6f52\n"
                        "0,0,0,0\n0,2,2,0\n0,2,2,0\n0,0,0,3\n");
        EXPECT_EQ(m_cli.run({"add", m_cli.path("buoy.csv"), "--title", "Buoy"}).exitCode, 0);
    }

    /// touch 1 with these words.
    CliAnswer touch(std::vector<std::string> words) const {
        words.insert(words.begin(), {"touch", "1"});
        return m_cli.runJson(std::move(words));
    }

    QJsonObject shown() const { return m_cli.runJson({"show", "1"}).json(); }

    std::string cells() const {
        return QJsonDocument(shown()["cells"].toArray())
            .toJson(QJsonDocument::Compact)
            .toStdString();
    }

    tests::CliRunner m_cli;
};

TEST_F(Touch, SaysWhatBecameOfTheTexture) {
    const CliAnswer answer = touch({"--colour", "1", "--line", "0,0,3,0", "--shift", "0,1"});
    ASSERT_EQ(answer.exitCode, 0) << answer.err;
    const QJsonObject json = answer.json();
    EXPECT_EQ(json["id"].toInt(), 1);
    EXPECT_EQ(json["revision"].toInt(), 2);
    // What came round from below, the row of foam, no cell of the third row, three of the last.
    EXPECT_EQ(json["changed"].toInt(), 1 + 4 + 0 + 3);
    EXPECT_EQ(json["width"].toInt(), 4);
    EXPECT_EQ(json["height"].toInt(), 4);
    EXPECT_EQ(cells(), "[[0,0,0,3],[1,1,1,1],[0,2,2,0],[0,2,2,0]]");
    EXPECT_EQ(m_cli.run({"touch", "1", "--crop", "0,1,3,3"}).out,
              "12 cells of texture 1 changed; it has 4x3 cells, revision 3.\n");
}

TEST_F(Touch, RevertTakesItBack) {
    const std::string before = cells();
    ASSERT_EQ(touch({"--colour", "3", "--filled-ellipse", "0,0,3,3", "--enlarge", "5"}).exitCode,
              0);
    EXPECT_NE(cells(), before);
    EXPECT_EQ(m_cli.run({"revert", "1", "1"}).exitCode, 0);
    EXPECT_EQ(cells(), before);
    const QJsonArray revisions = m_cli.runJson({"history", "1"}).json()["revisions"].toArray();
    ASSERT_EQ(revisions.size(), 3);
    EXPECT_EQ(revisions[1].toObject()["what"].toString(), QStringLiteral("content"));
}

TEST_F(Touch, RecoloursToANamedPalette) {
    m_cli.writeText("storm.txt", "#000000\n#ffffff\n");
    ASSERT_EQ(m_cli.run({"palette", "add", m_cli.path("storm.txt"), "--name", "storm"}).exitCode,
              0);
    ASSERT_EQ(touch({"--recolour", "storm", "--swap", "0,1"}).exitCode, 0);
    EXPECT_EQ(shown()["palette"].toArray().size(), 2);
    const CliAnswer typo = touch({"--recolour", "strom"});
    EXPECT_EQ(typo.exitCode, 1);
    EXPECT_NE(typo.out.find("storm"), std::string::npos) << typo.out;
}

TEST_F(Touch, RefusesAndLeavesTheTextureAsItWas) {
    const std::string before = m_cli.runJson({"show", "1"}).out;
    const std::vector<std::pair<std::vector<std::string>, int>> cases = {
        {{}, 2},
        {{"--colour", "1"}, 2},
        {{"--line", "0,0"}, 2},
        {{"--colour", "1", "--line", "0,0,kelp,1"}, 2},
        {{"--colour", "1", "--lien", "0,0"}, 2},
        {{"2", "--swap", "0,1"}, 2},
        {{"--swap", "0,1", "--colour", "4", "--line", "0,0"}, 1},
        {{"--swap", "0,1", "--crop", "0,0,4,3"}, 1},
        {{"--swap", "0,1", "--enlarge", "65"}, 1},
        {{"--swap", "0,1", "--noise", "101,0,1"}, 1},
        {{"--swap", "0,1", "--overlap", "3", "--heal-seams", "both"}, 1},
        {{"--swap", "0,1", "--recolour", ""}, 2},
    };
    for (const auto& [words, exitCode] : cases) {
        const CliAnswer answer = touch(words);
        EXPECT_EQ(answer.exitCode, exitCode) << answer.out;
        const QJsonObject error = answer.json()["error"].toObject();
        EXPECT_NE(error["message"].toString(), QString());
        EXPECT_NE(error["hint"].toString(), QString()) << answer.out;
        EXPECT_EQ(m_cli.runJson({"show", "1"}).out, before);
    }
    EXPECT_NE(touch({"--lien", "0,0"}).out.find("did you mean --line?"), std::string::npos);
    EXPECT_NE(touch({"--swap", "0,1", "--crop", "0,0,4,3"}).out.find("--crop 0,0,4,3"),
              std::string::npos);
    EXPECT_EQ(m_cli.run({"touch", "kelp", "--swap", "0,1"}).exitCode, 2);
    EXPECT_EQ(m_cli.run({"touch", "999", "--swap", "0,1"}).exitCode, 1);
}

TEST_F(Touch, SeamsGivesNumbersAndAPicture) {
    const QJsonObject json = m_cli.runJson({"seams", "1"}).json();
    EXPECT_EQ(json["id"].toInt(), 1);
    for (const char* seam : {"vertical", "horizontal"}) {
        const QJsonObject numbers = json[QLatin1String(seam)].toObject();
        EXPECT_GT(numbers["ratio"].toDouble(), 0) << seam;
        EXPECT_GT(numbers["inside"].toDouble(), 0) << seam;
        EXPECT_GT(numbers["across"].toDouble(), 0) << seam;
    }
    EXPECT_TRUE(json["picture"].isNull());
    const std::string png = m_cli.path("seams.png");
    const CliAnswer answer = m_cli.run({"seams", "1", "--picture", png, "--enlarge", "2"});
    EXPECT_EQ(answer.exitCode, 0) << answer.err;
    EXPECT_NE(answer.out.find("Wrote " + png), std::string::npos) << answer.out;
    EXPECT_EQ(m_cli.readText(png).substr(1, 3), "PNG");
    EXPECT_EQ(m_cli.run({"seams", "1", "--picture", png}).exitCode, 1);
    EXPECT_EQ(m_cli.run({"seams", "1", "--picture", png, "--replace"}).exitCode, 0);
    EXPECT_EQ(m_cli.run({"seams", "1", "--enlarge", "65"}).exitCode, 2);
    EXPECT_EQ(m_cli.run({"seams"}).exitCode, 2);
    EXPECT_EQ(m_cli.run({"seams", "999"}).exitCode, 1);
    EXPECT_EQ(shown()["revision"].toInt(), 1);
}

TEST_F(Touch, SeamsOfAPlainTextureAreAsSmoothAsItsInside) {
    ASSERT_EQ(touch({"--colour", "1", "--filled-rectangle", "0,0,3,3"}).exitCode, 0);
    EXPECT_EQ(m_cli.run({"seams", "1"}).out,
              "Seams of texture 1; 1 is as smooth as its inside:\n"
              "  left to right   1.00  (across it 0.00, inside 0.00)\n"
              "  top to bottom   1.00  (across it 0.00, inside 0.00)\n");
}

}  // namespace
}  // namespace pantile::cli
