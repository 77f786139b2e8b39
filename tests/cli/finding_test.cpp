// The commands find, tags, search and shelf, through runCli.

#include "support/cli_runner.h"

namespace pantile::cli {
namespace {

using tests::CliAnswer;

class Finding : public ::testing::Test {
protected:
    Finding() {
        for (int seed = 1; seed <= 3; ++seed) {
            const std::string grid = m_cli.writeGrid("tile-" + std::to_string(seed) + ".csv", seed);
            const std::string tag = seed == 3 ? "kelp" : "stone/slate";
            EXPECT_EQ(m_cli.run({"add", grid, "--tag", tag}).exitCode, 0);
        }
    }

    CliAnswer run(std::vector<std::string> words) const { return m_cli.run(std::move(words)); }

    CliAnswer json(std::vector<std::string> words) const { return m_cli.runJson(std::move(words)); }

    int total(const std::string& query) const {
        return json({"find", query}).json()["total"].toInt();
    }

    tests::CliRunner m_cli;
};

TEST_F(Finding, StarsAreSetFoundAndTakenBack) {
    EXPECT_EQ(json({"set", "1", "2", "--stars", "4"}).json()["changed"].toInt(), 2);
    EXPECT_EQ(json({"show", "1"}).json()["stars"].toInt(), 4);
    EXPECT_EQ(total("stars>=4"), 2);
    EXPECT_EQ(run({"set", "1", "--stars", "6"}).exitCode, 2);
    const QJsonObject before =
        json({"history", "1"}).json()["revisions"].toArray()[1].toObject()["before"].toObject();
    EXPECT_TRUE(before.contains(QLatin1String("stars")));
    EXPECT_EQ(before["stars"].toInt(-1), 0);
    EXPECT_EQ(run({"revert", "1", "1"}).exitCode, 0);
    EXPECT_EQ(total("stars>=4"), 1);
}

TEST_F(Finding, ATagInOtherLettersIsTheSame) {
    EXPECT_EQ(run({"tag", "1", "+KELP", "+New"}).exitCode, 0);
    EXPECT_EQ(run({"tag", "2", "+new"}).exitCode, 0);
    EXPECT_EQ(json({"tags", "list"}).jsonList().size(), 3);
    EXPECT_EQ(total("tag:new"), 2);
    EXPECT_EQ(run({"tag", "1", "-NEW"}).out, "1 texture changed.\n");
    const CliAnswer odd = run({"tag", "1", "+a//b"});
    EXPECT_EQ(odd.exitCode, 2);
    EXPECT_NE(odd.err.find("one of its levels is empty"), std::string::npos) << odd.err;
}

TEST_F(Finding, SlipsInTagsAndQueriesAreRemarked) {
    const CliAnswer dropped = run({"tag", "1", "-klep"});
    EXPECT_EQ(dropped.exitCode, 0);
    EXPECT_EQ(dropped.out, "0 textures changed.\n");
    EXPECT_EQ(dropped.err, "there is no tag 'klep'; did you mean 'kelp'?\n");
    EXPECT_EQ(run({"--quiet", "tag", "1", "-klep"}).err, "");
    EXPECT_EQ(run({"tag", "1", "-kelp"}).err, "") << "it is there, if not on this texture";

    const CliAnswer found = run({"find", "tag:klep"});
    EXPECT_EQ(found.exitCode, 0);
    EXPECT_EQ(found.out, "0 textures.\n");
    EXPECT_EQ(found.err, "there is no tag 'klep'; did you mean 'kelp'?\n");
    EXPECT_EQ(run({"find", "tag:kelp OR tag:stone"}).err,
              "'OR' is searched for as text; write | between the two\n");
    EXPECT_EQ(run({"find", "tag:kelp"}).err, "");
    const CliAnswer refused = run({"set", "tag:klep", "--title", "x"});
    EXPECT_EQ(refused.exitCode, 1);
    EXPECT_NE(refused.err.find("did you mean 'kelp'?"), std::string::npos) << refused.err;
}

TEST_F(Finding, IdsThatStandTogetherAreExplained) {
    for (const char* word : {"1-5", "1,2,3", "1..3"}) {
        const CliAnswer answer = run({"remove", word});
        EXPECT_EQ(answer.exitCode, 1);
        EXPECT_NE(answer.err.find("ids stand with blanks between them: 1 2 3"), std::string::npos)
            << answer.err;
    }
    EXPECT_EQ(total("id>=1 id<=3"), 3) << "as the hint says";
}

TEST_F(Finding, WordsAreTrimmedAndKnownTexturesAreFiled) {
    EXPECT_EQ(run({"set", "1", "--title", "   Wet sand ", "--author", " Mara "}).exitCode, 0);
    EXPECT_EQ(json({"show", "1"}).json()["title"].toString(), QStringLiteral("Wet sand"));
    EXPECT_EQ(json({"show", "1"}).json()["author"].toString(), QStringLiteral("Mara"));
    const std::string grid = m_cli.path("tile-1.csv");
    const CliAnswer known = run({"add", grid, "--tag", "few", "--shelf", "Pier"});
    EXPECT_EQ(known.exitCode, 0);
    EXPECT_NE(known.out.find("; tags and shelf put on\n"), std::string::npos) << known.out;
    EXPECT_EQ(total("tag:few shelf:pier tag:stone/slate"), 1);
    const QJsonObject again = json({"add", grid, "--tag", "few", "--shelf", "Pier"})
                                  .json()["known"]
                                  .toArray()[0]
                                  .toObject();
    EXPECT_FALSE(again["filed"].toBool(true)) << "it had them";
    const std::string fresh = m_cli.writeGrid("new.csv", 9);
    EXPECT_EQ(run({"add", fresh, "--title", "  New  ", "--tag", "few/"}).exitCode, 1);
    EXPECT_EQ(run({"add", fresh, "--title", "  New  "}).exitCode, 0);
    EXPECT_EQ(total("title:new"), 1);
    EXPECT_EQ(json({"show", "4"}).json()["title"].toString(), QStringLiteral("New"));
}

TEST_F(Finding, AnswersNameThePlaceThatCameOut) {
    EXPECT_EQ(run({"shelf", "put", "s1", "1"}).exitCode, 0);
    EXPECT_EQ(run({"shelf", "put", "s1", "2", "--at", "99"}).out,
              "1 texture put at place 2 of s1.\n");
    EXPECT_EQ(run({"shelf", "put", "s2", "2"}).exitCode, 0);
    EXPECT_EQ(run({"shelf", "place", "s1", "99"}).out, "Shelf s1 is number 2 of 2 now.\n");
}

TEST_F(Finding, TheOrderOfAShelfIsKept) {
    const auto idsOf = [](const QJsonArray& textures) {
        std::string ids;
        for (const auto& texture : textures)
            ids += std::to_string(texture.toObject()["id"].toInteger()) + " ";
        return ids;
    };
    EXPECT_EQ(run({"shelf", "put", "Pier", "3", "1", "2"}).exitCode, 0);
    EXPECT_EQ(run({"shelf", "put", "Quay", "2"}).exitCode, 0);
    const auto found = [&](std::vector<std::string> words) {
        return idsOf(json(std::move(words)).json()["textures"].toArray());
    };
    EXPECT_EQ(found({"find", "shelf:pier", "--sort", "shelf"}), "3 1 2 ");
    EXPECT_EQ(found({"find", "shelf:pier -id:1", "--sort", "shelf"}), "3 2 ");
    EXPECT_EQ(found({"find", "shelf:pier", "--sort", "shelf", "--offset", "1", "--limit", "1"}),
              "1 ");
    EXPECT_EQ(found({"find", "shelf:pier", "--sort", "shelf", "--offset", "9"}), "");
    EXPECT_EQ(run({"find", "--sort", "shelf"}).exitCode, 2);
    EXPECT_EQ(run({"find", "shelf:pier shelf:quay", "--sort", "shelf"}).exitCode, 2);
    EXPECT_EQ(run({"find", "shelf:pier | shelf:quay", "--sort", "shelf"}).exitCode, 2);
    EXPECT_EQ(idsOf(json({"load", "make", "eve", "shelf:pier", "--board", "flash-32k"})
                        .json()["slots"]
                        .toArray()),
              "3 1 2 ");
    EXPECT_EQ(idsOf(json({"load", "make", "dawn", "tag:kelp | tag:stone", "--board", "flash-32k"})
                        .json()["slots"]
                        .toArray()),
              "1 2 3 ");
}

TEST_F(Finding, ALoadTellsOfItsCanvasAndOfRemovedTextures) {
    const CliAnswer made =
        run({"load", "make", "eve", "1", "2", "--board", "flash-32k", "--canvas", "cells-32"});
    EXPECT_NE(made.out.find("  cells-32  "), std::string::npos) << made.out;
    EXPECT_EQ(json({"load", "show", "eve"}).json()["canvas"].toString(),
              QStringLiteral("cells-32"));
    EXPECT_NE(run({"load", "show", "eve"}).out.find("the canvas cells-32"), std::string::npos);
    EXPECT_NE(run({"load", "write", "eve", "--into", m_cli.path("own")}).out.find("  cells-32  "),
              std::string::npos);
    EXPECT_EQ(run({"remove", "1"}).exitCode, 0);
    EXPECT_NE(run({"load", "show", "eve"}).out.find("removed"), std::string::npos);
    const QJsonArray textures = json({"load", "show", "eve"}).json()["textures"].toArray();
    EXPECT_TRUE(textures[0].toObject()["removed"].toBool());
    EXPECT_FALSE(textures[1].toObject()["removed"].toBool(true));
    const CliAnswer written =
        run({"load", "write", "eve", "--into", m_cli.path("out"), "--canvas", "cells-64"});
    EXPECT_NE(written.out.find("  cells-64  "), std::string::npos) << written.out;
    EXPECT_EQ(written.err,
              "Texture 1 was removed, and the load draws it still; 'pantile recover 1' brings it "
              "back.\n");
}

TEST_F(Finding, ContradictionsAndSlipsAreRefused) {
    const CliAnswer both = run({"tag", "all", "+x", "-x"});
    EXPECT_EQ(both.exitCode, 2);
    EXPECT_NE(both.err.find("'x' stands with + and with -"), std::string::npos) << both.err;
    EXPECT_NE(run({"duplicates", "12"}).err.find("'similar 12' for those like texture 12"),
              std::string::npos);
}

TEST_F(Finding, UndoNamesWhatChanged) {
    EXPECT_EQ(run({"tag", "1", "+x"}).exitCode, 0);
    EXPECT_EQ(run({"tag", "all", "+x"}).out, "2 textures changed.\n");
    EXPECT_NE(run({"undo"}).out.find("Undid: Change the tags of 2 textures"), std::string::npos);
    EXPECT_EQ(run({"shelf", "put", "s", "1"}).exitCode, 0);
    EXPECT_EQ(run({"shelf", "put", "s", "all"}).out, "2 textures put on s.\n");
    EXPECT_NE(run({"undo"}).out.find("Put 2 textures on shelf 's'"), std::string::npos);
    EXPECT_EQ(run({"shelf", "remove", "s"}).exitCode, 0);
    EXPECT_NE(run({"undo"}).out.find("Remove shelf 's'"), std::string::npos);
}

TEST_F(Finding, TagsAreListedRenamedMergedAndRemoved) {
    EXPECT_EQ(total("tag:stone"), 2);
    const QJsonArray tags = json({"tags", "list"}).jsonList();
    ASSERT_EQ(tags.size(), 2);
    EXPECT_EQ(tags[1].toObject()["name"].toString(), QStringLiteral("stone/slate"));
    EXPECT_EQ(tags[1].toObject()["textures"].toInt(), 2);
    EXPECT_EQ(json({"tags", "list", "SL"}).jsonList().size(), 1);
    EXPECT_EQ(run({"tags", "rename", "stone/slate", "rock"}).out,
              "Tag stone/slate is now rock; 2 textures changed.\n");
    EXPECT_EQ(json({"tags", "merge", "kelp", "rock"}).json()["changed"].toInt(), 1);
    EXPECT_EQ(total("tag:rock"), 3);
    EXPECT_EQ(json({"tags", "remove", "rock"}).json()["changed"].toInt(), 3);
    EXPECT_EQ(json({"tags", "list"}).jsonList().size(), 0);
    EXPECT_EQ(run({"tags", "remove", "rock"}).exitCode, 1);
    EXPECT_EQ(run({"tags", "rename", "rock"}).exitCode, 2);
}

TEST_F(Finding, TagsHaveOtherWords) {
    EXPECT_EQ(run({"tags", "alias", "seaweed", "kelp"}).out,
              "seaweed stands for the tag kelp now.\n");
    EXPECT_EQ(total("tag:Seaweed"), 1);
    EXPECT_EQ(run({"tag", "1", "+seaweed"}).exitCode, 0);
    EXPECT_EQ(total("tag:kelp"), 2);
    const QJsonObject kelp = json({"tags", "list", "sea"}).jsonList()[0].toObject();
    EXPECT_EQ(kelp["aliases"].toArray()[0].toString(), QStringLiteral("seaweed"));
    EXPECT_NE(run({"tags", "list"}).out.find("seaweed"), std::string::npos);
    EXPECT_EQ(run({"tags", "unalias", "seaweed"}).exitCode, 0);
    EXPECT_EQ(total("tag:seaweed"), 0);
}

TEST_F(Finding, SearchesAreSavedAndAsked) {
    EXPECT_EQ(run({"search", "save", "Slates", "tag:stone", "--sort", "-id"}).out,
              "Search Slates saved.\n");
    const QJsonObject found = json({"find", "--saved", "slates"}).json();
    EXPECT_EQ(found["total"].toInt(), 2);
    EXPECT_EQ(found["textures"].toArray()[0].toObject()["id"].toInt(), 2);
    const QJsonObject other = json({"find", "--saved", "slates", "--sort", "id"}).json();
    EXPECT_EQ(other["textures"].toArray()[0].toObject()["id"].toInt(), 1);
    EXPECT_EQ(run({"find", "kelp", "--saved", "slates"}).exitCode, 2);
    EXPECT_EQ(run({"find", "--saved", "slate"}).exitCode, 1);
    EXPECT_EQ(run({"search", "save", "Bad", "(kelp"}).exitCode, 2);
    EXPECT_EQ(run({"search", "rename", "slates", "Stones"}).exitCode, 0);
    const QJsonObject saved = json({"search", "list"}).jsonList()[0].toObject();
    EXPECT_EQ(saved["name"].toString(), QStringLiteral("Stones"));
    EXPECT_EQ(saved["query"].toString(), QStringLiteral("tag:stone"));
    EXPECT_EQ(saved["sort"].toString(), QStringLiteral("-id"));
    EXPECT_EQ(run({"search", "remove", "stones"}).exitCode, 0);
    EXPECT_EQ(run({"search", "list"}).out.find("Stones"), std::string::npos);
}

TEST_F(Finding, ShelvesAreOrdered) {
    EXPECT_EQ(run({"shelf", "put", "Shore", "all"}).exitCode, 0);
    EXPECT_EQ(run({"shelf", "put", "Rocks", "1"}).exitCode, 0);
    EXPECT_EQ(run({"shelf", "place", "Rocks", "1"}).exitCode, 0);
    EXPECT_EQ(json({"shelf", "list"}).jsonList()[0].toObject()["name"].toString(),
              QStringLiteral("Rocks"));
    EXPECT_EQ(json({"shelf", "put", "Shore", "3", "--at", "1"}).json()["changed"].toInt(), 1);
    EXPECT_EQ(run({"shelf", "place", "Rocks", "none"}).exitCode, 2);
}

TEST_F(Finding, SeamsAreMeasuredWhenTexturesAreAdded) {
    m_cli.writeText("plain.csv", "# palette #1b2631 #f2efe4\n0,0\n0,0\n");
    EXPECT_EQ(run({"add", m_cli.path("plain.csv")}).exitCode, 0);
    m_cli.writeText("ramp.csv",
                    "# palette #000000 #404040 #808080 #c0c0c0\n0,1,2,3\n0,1,2,3\n0,1,2,3\n");
    EXPECT_EQ(run({"add", m_cli.path("ramp.csv")}).exitCode, 0);
    EXPECT_EQ(total("is:seamless id:4"), 1);
    EXPECT_EQ(total("is:seamless id:5"), 0);
}

}  // namespace
}  // namespace pantile::cli
