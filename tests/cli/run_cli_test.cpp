// Each command through runCli, in the test's own process. Field names are the contract of
// docs/command-line.md.

#include <filesystem>

#include "codec/armour.h"
#include "support/cli_runner.h"

namespace pantile::cli {
namespace {

using tests::CliAnswer;

QString text(const QJsonValue& value) {
    return value.toString();
}

class Cli : public ::testing::Test {
protected:
    CliAnswer run(std::vector<std::string> words, const std::string& input = {}) const {
        return m_cli.run(std::move(words), input);
    }

    CliAnswer json(std::vector<std::string> words, const std::string& input = {}) const {
        return m_cli.runJson(std::move(words), input);
    }

    /// Adds `count` grids, tile-1 and so on, with ids from 1.
    void addTiles(int count) const {
        for (int seed = 1; seed <= count; ++seed) {
            const std::string name = "tile-" + std::to_string(seed) + ".csv";
            const CliAnswer answer =
                run({"add", m_cli.writeGrid(name, seed, 8), "--author", "Mara Quill", "--licence",
                     "CC0-1.0", "--tag", seed % 2 == 1 ? "odd" : "even"});
            ASSERT_EQ(answer.exitCode, 0) << answer.err;
        }
    }

    /// Adds a grid whose code is far too long for a short post; its id is one more.
    void addLongTile() const {
        std::string grid =
            "# title Shingle [wet] @mara\n# palette #1b2631 #f2efe4 #b5532d #335577\n";
        unsigned state = 7;
        for (int cell = 1; cell <= 24 * 24; ++cell) {
            state = state * 1664525U + 1013904223U;
            grid += std::to_string(state >> 30U) + (cell % 24 == 0 ? "\n" : ",");
        }
        m_cli.writeText("long.csv", grid);
        const CliAnswer answer = run({"add", m_cli.path("long.csv"), "--author", "Mara Quill"});
        ASSERT_EQ(answer.exitCode, 0) << answer.err;
    }

    tests::CliRunner m_cli;
};

TEST_F(Cli, AddSaysWhatWasAddedKnownAndRefused) {
    const std::string grid = m_cli.writeGrid("wet-sand.csv", 1);
    m_cli.writeText("notes.txt", "nothing here");
    const QJsonObject first = json({"add", grid, "--tag", "sand"}).json();
    ASSERT_EQ(first["added"].toArray().size(), 1);
    const QJsonObject added = first["added"].toArray()[0].toObject();
    EXPECT_EQ(added["id"].toInteger(), 1);
    EXPECT_EQ(text(added["title"]), QStringLiteral("wet sand"));
    EXPECT_EQ(added["width"].toInt(), 4);
    EXPECT_EQ(added["height"].toInt(), 4);
    EXPECT_EQ(text(added["path"]).toStdString(), grid);

    const CliAnswer again = json({"add", grid, m_cli.path("notes.txt")});
    EXPECT_EQ(again.exitCode, 1);
    EXPECT_EQ(again.json()["known"].toArray()[0].toObject()["id"].toInteger(), 1);
    EXPECT_EQ(again.json()["refused"].toArray().size(), 1);
    EXPECT_NE(text(again.json()["refused"].toArray()[0].toObject()["reason"]), QString());
}

TEST_F(Cli, AddTakesStandardInput) {
    const CliAnswer answer =
        run({"add", "-", "--title", "From a pipe"}, "# palette #000000 #ffffff\n0,1\n1,0\n");
    EXPECT_EQ(answer.exitCode, 0) << answer.err;
    EXPECT_NE(answer.out.find("Added 1  From a pipe, 2x2, 2 colours"), std::string::npos)
        << answer.out;
}

TEST_F(Cli, AddTakesEnlargedArtBackAndSaysSo) {
    std::string rows;
    for (int y = 0; y < 16; ++y) {
        std::string row;
        for (int x = 0; x < 16; ++x)
            row += "<rect x='" + std::to_string(x) + "' y='" + std::to_string(y) +
                   "' width='1' height='1' fill='" + ((x * x + y * x) % 3 == 0 ? "#226" : "#fc4") +
                   "'/>";
        rows += row;
    }
    m_cli.writeText("buoy.svg", "<svg xmlns='http://www.w3.org/2000/svg' viewBox='0 0 16 16'>" +
                                    rows + "</svg>");
    const CliAnswer answer = run({"add", m_cli.path("buoy.svg")});
    if (answer.err.find("installation") != std::string::npos)
        GTEST_SKIP() << "Debian's package libqt6svg6 is not installed";
    EXPECT_EQ(answer.exitCode, 0) << answer.err;
    EXPECT_THAT(answer.out, ::testing::HasSubstr("buoy, 16x16, 2 colours"));
    EXPECT_THAT(answer.out, ::testing::HasSubstr("enlarged 64 times; --enlarged keep"));
    const QJsonObject kept =
        json({"add", m_cli.path("buoy.svg"), "--enlarged", "keep", "--scale", "lanczos"}).json();
    ASSERT_EQ(kept["added"].toArray().size(), 1);
    EXPECT_EQ(kept["added"][0]["width"].toInt(), 64);
    EXPECT_TRUE(kept["added"][0]["enlarged"].isNull());
}

TEST_F(Cli, AddRefusesBadPictureOptions) {
    const std::vector<std::pair<std::string, std::string>> bad{
        {"--part", "1,2,3"},       {"--part", "1,2,3,"},     {"--part", "1,2,3,4,5"},
        {"--part", "-1,2,3,4"},    {"--anchor", "middle"},   {"--enlarged", "yes"},
        {"--background", "blue"},  {"--gamma", "0"},         {"--brightness", "101"},
        {"--contrast", "-101"},    {"--saturation", "much"}, {"--sharpen", "-1"},
        {"--alpha-threshold", "0"}};
    for (const auto& [option, value] : bad) {
        const CliAnswer answer = run({"add", "any.png", option, value});
        EXPECT_EQ(answer.exitCode, 2) << option << ' ' << value << answer.out;
    }
}

TEST_F(Cli, FindGivesTotalsAndFieldsOfTheContract) {
    addTiles(3);
    const QJsonObject all = json({"find", "--limit", "2", "--sort", "title"}).json();
    EXPECT_EQ(all["total"].toInt(), 3);
    ASSERT_EQ(all["textures"].toArray().size(), 2);
    const QJsonObject first = all["textures"].toArray()[0].toObject();
    for (const char* field : {"id", "title", "width", "height", "colours", "tags", "shelves",
                              "author", "licence", "added", "draw_seconds", "load_bytes"}) {
        EXPECT_TRUE(first.contains(QLatin1String(field))) << field;
    }
    EXPECT_EQ(text(first["title"]), QStringLiteral("tile 1"));
    EXPECT_GT(first["draw_seconds"].toDouble(), 0);
    EXPECT_EQ(json({"find", "tag:odd"}).json()["total"].toInt(), 2);
    EXPECT_EQ(json({"find", "tag:none"}).json()["total"].toInt(), 0);
    EXPECT_NE(run({"find", "tag:even"}).out.find("tile 2"), std::string::npos);
}

TEST_F(Cli, ShowGivesPaletteAndCells) {
    addTiles(1);
    const QJsonObject shown = json({"show", "1"}).json();
    EXPECT_EQ(shown["palette"].toArray().size(), 4);
    EXPECT_EQ(text(shown["palette"].toArray()[0]), QStringLiteral("#1b2631"));
    EXPECT_TRUE(shown["transparent"].isNull());
    ASSERT_EQ(shown["cells"].toArray().size(), 8);
    EXPECT_EQ(shown["cells"].toArray()[0].toArray().size(), 8);
    const std::string out = run({"show", "1"}).out;
    EXPECT_NE(out.find("author    Mara Quill"), std::string::npos) << out;
    EXPECT_EQ(out.find('\x1b'), std::string::npos);
}

TEST_F(Cli, SetTagAndHistoryAndRevert) {
    addTiles(2);
    EXPECT_EQ(json({"set", "1", "--title", "Kelp", "--note", "from the north shore"})
                  .json()["changed"]
                  .toInt(),
              1);
    EXPECT_EQ(json({"tag", "1", "2", "+shore", "-odd"}).json()["changed"].toInt(), 2);
    EXPECT_EQ(json({"find", "tag:shore"}).json()["total"].toInt(), 2);
    EXPECT_EQ(json({"find", "tag:odd"}).json()["total"].toInt(), 0);
    const QJsonArray revisions = json({"history", "1"}).json()["revisions"].toArray();
    EXPECT_EQ(revisions.size(), 3);
    EXPECT_EQ(json({"revert", "1", "1"}).json()["changed"].toInt(), 1);
    EXPECT_EQ(text(json({"show", "1"}).json()["title"]), QStringLiteral("tile 1"));
    EXPECT_EQ(json({"find", "tag:odd"}).json()["total"].toInt(), 1);
}

TEST_F(Cli, RemovedTexturesStayUntilPurge) {
    addTiles(3);
    EXPECT_EQ(json({"remove", "tag:odd"}).json()["changed"].toInt(), 2);
    EXPECT_EQ(json({"find"}).json()["total"].toInt(), 1);
    EXPECT_EQ(json({"recover", "1"}).json()["changed"].toInt(), 1);
    EXPECT_EQ(json({"find"}).json()["total"].toInt(), 2);
    EXPECT_EQ(run({"purge"}).exitCode, 2);
    EXPECT_EQ(json({"purge", "--for-good"}).json()["changed"].toInt(), 1);
    EXPECT_EQ(run({"show", "3"}).exitCode, 1);
}

TEST_F(Cli, ShelvesAreFilledAndEmptied) {
    addTiles(3);
    EXPECT_EQ(run({"shelf", "put", "Shore", "tag:odd"}).out, "2 textures put on Shore.\n");
    EXPECT_EQ(json({"shelf", "list"}).jsonList()[0].toObject()["textures"].toInt(), 2);
    EXPECT_EQ(json({"find", "shelf:Shore"}).json()["total"].toInt(), 2);
    EXPECT_EQ(run({"shelf", "take", "Shore", "1"}).exitCode, 0);
    EXPECT_EQ(run({"shelf", "rename", "Shore", "Beach"}).exitCode, 0);
    EXPECT_EQ(run({"shelf", "remove", "Beach"}).exitCode, 0);
    EXPECT_EQ(json({"shelf", "list"}).jsonList().size(), 0);
    EXPECT_EQ(json({"find"}).json()["total"].toInt(), 3);
}

TEST_F(Cli, CodesAreReadBackAndAddedElsewhere) {
    addTiles(2);
    const QJsonArray codes = json({"code", "all"}).json()["codes"].toArray();
    ASSERT_EQ(codes.size(), 2);
    const QJsonObject first = codes[0].toObject();
    EXPECT_EQ(first["characters"].toInt(), text(first["code"]).size());
    EXPECT_EQ(first["parts"].toArray()[0], first["code"]);
    EXPECT_GT(first["bytes"].toInt(), 0);
    EXPECT_TRUE(text(first["method"]).endsWith(QStringLiteral("runs")));

    const CliAnswer printed = run({"code", "all"});
    const CliAnswer read = json({"read", "-"}, printed.out);
    EXPECT_EQ(read.exitCode, 0) << read.out;
    const QJsonArray textures = read.json()["textures"].toArray();
    ASSERT_EQ(textures.size(), 2);
    for (const char* field : {"title", "author", "licence", "tags", "width", "height", "palette",
                              "transparent", "cells", "repaired"}) {
        EXPECT_TRUE(textures[0].toObject().contains(QLatin1String(field))) << field;
    }
    const tests::CliRunner friendsLibrary;
    EXPECT_EQ(friendsLibrary.runJson({"add", "-"}, printed.out).json()["added"].toArray().size(),
              2);
    EXPECT_EQ(json({"add", "-"}, printed.out).json()["known"].toArray().size(), 2);
}

TEST_F(Cli, ReadNamesWhatIsDamaged) {
    addTiles(1);
    std::string code =
        text(json({"code", "1"}).json()["codes"].toArray()[0].toObject()["code"]).toStdString();
    code[8] = code[8] == 'x' ? 'y' : 'x';
    code[12] = code[12] == 'x' ? 'y' : 'x';
    const CliAnswer answer = json({"read"}, "Hello\n\n" + code + "\n");
    EXPECT_EQ(answer.exitCode, 1);
    EXPECT_EQ(answer.json()["textures"].toArray().size(), 0);
    ASSERT_EQ(answer.json()["damaged"].toArray().size(), 1);
    EXPECT_TRUE(text(answer.json()["damaged"].toArray()[0].toObject()["where"])
                    .contains(QStringLiteral("line 3")));
    EXPECT_EQ(json({"find"}).json()["total"].toInt(), 1);
}

TEST_F(Cli, ReadAndAddSayWhatTheyPutRight) {
    addTiles(1);
    std::string code =
        text(json({"code", "1"}).json()["codes"].toArray()[0].toObject()["code"]).toStdString();
    const char right = code[12];
    code[12] = code[12] == 'x' ? 'y' : 'x';
    const std::string what = std::string("line 1, letter 13: ") + code[12] + " read as " + right;
    const CliAnswer answer = json({"read"}, code);
    EXPECT_EQ(answer.exitCode, 0);
    const QJsonObject found = answer.json()["textures"].toArray()[0].toObject();
    EXPECT_EQ(found["repaired"].toInt(), 1);
    EXPECT_EQ(text(found["repairs"].toArray()[0]).toStdString(), what);
    EXPECT_NE(run({"read"}, code).out.find("\n  put right: " + what + "\n"), std::string::npos);
    EXPECT_NE(run({"add", "-"}, code).out.find("\n  put right: " + what + "\n"), std::string::npos);
}

TEST_F(Cli, NewerCodesAreKeptAsText) {
    const std::string code = *codec::armoured(std::vector<std::uint8_t>(40, 9));
    std::string quoted = "> " + code;
    quoted.replace(quoted.find('\n'), 1, "\n> ");
    const CliAnswer read = json({"read"}, quoted);
    EXPECT_EQ(read.exitCode, 1);
    const QJsonObject damaged = read.json()["damaged"].toArray()[0].toObject();
    EXPECT_EQ(text(damaged["text"]).toStdString(), code);
    EXPECT_TRUE(text(damaged["reason"]).contains(QStringLiteral("made by a newer Pantile")));
    EXPECT_NE(run({"read"}, quoted)
                  .out.find("keep the text of the code, and get a newer Pantile "
                            "to read it\n" +
                            code + "\n"),
              std::string::npos);
    const CliAnswer added = run({"add", "-"}, quoted);
    EXPECT_EQ(added.exitCode, 1);
    EXPECT_NE(added.err.find("made by a newer Pantile"), std::string::npos);
    EXPECT_NE(added.err.find("'pantile read' prints the text of the code"), std::string::npos);
    const QJsonObject refused =
        json({"add", "-"}, quoted).json()["refused"].toArray()[0].toObject();
    EXPECT_EQ(text(refused["text"]).toStdString(), code);
}

TEST_F(Cli, CodesAreCutIntoPartsAndFramed) {
    addTiles(1);
    addLongTile();
    for (const std::string syntax : {"", "plain", "chat", "markdown", "bbcode"}) {
        std::vector<std::string> words = {"code", "all", "--limit", "160"};
        if (!syntax.empty()) words.insert(words.end(), {"--for", syntax});
        std::string posts;
        for (const auto& code : json(words).json()["codes"].toArray()) {
            const QJsonArray parts = code.toObject()["parts"].toArray();
            EXPECT_GT(parts.size(), code.toObject()["id"].toInt() == 2 ? 1 : 0);
            for (const auto& part : parts) {
                EXPECT_LE(text(part).size(), 160) << syntax;
                posts = text(part).toStdString() + "\n\n" + posts;
            }
        }
        EXPECT_EQ(json({"read"}, posts).json()["textures"].toArray().size(), 2) << syntax;
        EXPECT_EQ(json({"read"}, run(words).out).json()["textures"].toArray().size(), 2) << syntax;
        EXPECT_EQ(json({"add", "-"}, posts).json()["known"].toArray().size(), 2) << syntax;
    }
    EXPECT_EQ(run({"code", "1", "--limit", "159"}).exitCode, 2);
    EXPECT_EQ(run({"code", "1", "--limit", "many"}).exitCode, 2);
    EXPECT_EQ(run({"code", "1", "--for", "smoke-signals"}).exitCode, 2);
}

TEST_F(Cli, ReadNamesPartsThatAreMissing) {
    addLongTile();
    const QJsonArray parts = json({"code", "1", "--limit", "300"})
                                 .json()["codes"]
                                 .toArray()[0]
                                 .toObject()["parts"]
                                 .toArray();
    ASSERT_GE(parts.size(), 2);
    std::string some;
    for (const auto& part : parts) {
        if (part != parts[1]) some += text(part).toStdString() + "\n";
    }
    const CliAnswer answer = run({"read"}, some);
    EXPECT_EQ(answer.exitCode, 1);
    const std::string of = " of " + std::to_string(parts.size());
    EXPECT_NE(answer.out.find("part 2" + of + " is missing; ask for it"), std::string::npos)
        << answer.out;
}

TEST_F(Cli, ReadWritesPictures) {
    addTiles(1);
    const std::string code = run({"code", "1"}).out;
    const CliAnswer answer = run({"read", "-", "--png-into", m_cli.path("out")}, code);
    EXPECT_EQ(answer.exitCode, 0) << answer.err;
    EXPECT_TRUE(std::filesystem::exists(m_cli.path("out/line-2-tile-1.png"))) << answer.out;
    EXPECT_EQ(run({"read", "-", "--png-into", m_cli.path("out")}, code).exitCode, 1);
    EXPECT_EQ(run({"read", "-", "--png-into", m_cli.path("out"), "--replace"}, code).exitCode, 0);
}

TEST_F(Cli, ReadNeedsNoLibraryAndMakesNone) {
    EXPECT_EQ(run({"read"}, "no codes").exitCode, 0);
    EXPECT_FALSE(std::filesystem::exists(m_cli.libraryPath()));
}

TEST_F(Cli, ExportWritesEachForm) {
    addTiles(2);
    for (const char* form : {"png", "csv", "json", "text", "sheet"}) {
        const CliAnswer answer =
            json({"export", "1", "2", "--as", form, "--into", m_cli.path(form)});
        EXPECT_EQ(answer.exitCode, 0) << answer.err;
        const QJsonArray files = answer.json()["files"].toArray();
        EXPECT_EQ(files.size(), std::string(form) == "sheet" ? 1 : 2);
        for (const auto& file : files)
            EXPECT_TRUE(std::filesystem::exists(text(file).toStdString()));
    }
}

TEST_F(Cli, ACalibrationRenewsTheDrawingTimes) {
    run({"add", m_cli.writeGrid("kelp.csv", 1, 16), "--title", "Kelp"});
    const CliAnswer answer =
        run({"canvas", "calibrate", "cells-16", "--near", "2,1", "--far", "10,9"});
    EXPECT_EQ(answer.exitCode, 0) << answer.err;
    EXPECT_NE(answer.err.find("drawing time of 1 texture anew"), std::string::npos) << answer.err;
    const auto kept = json({"show", "1"}).json()["draw_seconds"].toDouble();
    EXPECT_EQ(kept, json({"plan", "1"}).json()["seconds"].toDouble());
}

TEST_F(Cli, CanvasesAreCalibratedByADrawing) {
    const auto written = run(
        {"canvas", "calibrate", "cells-64", "--board", "flash-32k", "--into", m_cli.path("out")});
    EXPECT_EQ(written.exitCode, 0) << written.err;
    EXPECT_TRUE(std::filesystem::exists(m_cli.path("out") + "/calibration.h"));
    EXPECT_NE(written.out.find("acts as a mouse"), std::string::npos);
    EXPECT_NE(written.out.find("--near"), std::string::npos);
    const QJsonObject canvas =
        json({"canvas", "calibrate", "cells-64", "--near", "2,1", "--far", "34,33"})
            .jsonList()[0]
            .toObject();
    EXPECT_EQ(canvas["cell_pitch"].toInt(), 10);
    EXPECT_EQ(json({"canvas", "show", "cells-64"}).jsonList()[0].toObject(), canvas);
    EXPECT_EQ(run({"canvas", "calibrate", "cells-64"}).exitCode, 2);
    EXPECT_EQ(run({"canvas", "calibrate", "cells-64", "--near", "2", "--far", "3,4"}).exitCode, 2);
    EXPECT_EQ(run({"canvas", "calibrate", "cells-64", "--into", m_cli.path("out")}).exitCode, 2);
    EXPECT_EQ(run({"canvas", "calibrate", "cells-64", "--near", "2,2", "--far", "50,20"}).exitCode,
              1);
}

TEST_F(Cli, PalettesCanvasesAndBoardsAreKept) {
    m_cli.writeText("quay.txt", "#1b2631\n#f2efe4\n#b5532d\n");
    const QJsonObject palette =
        json({"palette", "add", m_cli.path("quay.txt")}).jsonList()[0].toObject();
    EXPECT_EQ(text(palette["name"]), QStringLiteral("quay"));
    EXPECT_EQ(palette["colours"].toArray().size(), 3);
    EXPECT_EQ(json({"palette", "list"}).jsonList().size(), 1);

    const QJsonObject canvas =
        json({"canvas", "add", "quay", "--width", "48", "--height", "32", "--palette", "quay"})
            .jsonList()[0]
            .toObject();
    EXPECT_EQ(canvas["width"].toInt(), 48);
    EXPECT_EQ(canvas["palette"].toArray().size(), 3);
    EXPECT_EQ(json({"canvas", "set", "quay", "--pen", "lines", "--grid-at", "100,60"})
                  .jsonList()[0]
                  .toObject()["grid_at"]
                  .toArray(),
              (QJsonArray{100, 60}));
    EXPECT_EQ(json({"canvas", "list"}).jsonList().size(), 4);
    EXPECT_EQ(run({"canvas", "remove", "quay"}).exitCode, 0);

    const QJsonObject board =
        json({"board", "add", "pier", "--slots", "3", "--bytes", "4000", "--timing", "quick"})
            .jsonList()[0]
            .toObject();
    EXPECT_EQ(board["slots"].toInt(), 3);
    EXPECT_TRUE(board["display"].isNull());
    EXPECT_EQ(json({"board", "set", "pier", "--display", "96x64"})
                  .jsonList()[0]
                  .toObject()["display"]
                  .toArray(),
              (QJsonArray{96, 64}));
    EXPECT_EQ(run({"board", "set", "pier", "--display", "200x64"}).exitCode, 2);
    EXPECT_EQ(run({"board", "set", "pier", "--display", "large"}).exitCode, 2);
    EXPECT_TRUE(json({"board", "set", "pier", "--display", "none"})
                    .jsonList()[0]
                    .toObject()["display"]
                    .isNull());
    EXPECT_EQ(board["bytes"].toInt(), 4000);
    EXPECT_EQ(board["press_ms"].toInt(), 16);
    EXPECT_EQ(
        json({"board", "set", "pier", "--slots", "4"}).jsonList()[0].toObject()["slots"].toInt(),
        4);
    EXPECT_EQ(run({"board", "add", "pier", "--slots", "3", "--bytes", "4000"}).exitCode, 1);
    EXPECT_EQ(run({"palette", "remove", "quay"}).exitCode, 0);
}

TEST_F(Cli, HelpExplainsWordsBehindACommand) {
    EXPECT_EQ(run({"help", "load", "make"}).out, run({"help", "load"}).out);
    EXPECT_EQ(run({"help", "load", "kelp"}).exitCode, 2);
    EXPECT_EQ(run({"help", "find", "me"}).exitCode, 2);
    EXPECT_EQ(run({"help", "load", "make", "x"}).exitCode, 2);
}

TEST_F(Cli, PaletteListCountsThem) {
    const CliAnswer none = run({"palette", "list"});
    EXPECT_EQ(none.out, "0 palettes.\n");
    EXPECT_NE(none.err.find("pantile palette add FILE"), std::string::npos) << none.err;
    EXPECT_EQ(json({"palette", "list"}).jsonList().size(), 0);
    m_cli.writeText("quay.txt", "#102030\n#405060\n");
    ASSERT_EQ(run({"palette", "add", m_cli.path("quay.txt")}).exitCode, 0);
    EXPECT_NE(run({"palette", "list"}).out.find("\n1 palette.\n"), std::string::npos);
}

TEST_F(Cli, ASetOfOneIsThatTexture) {
    addTiles(2);
    const std::string one = run({"code", "1", "--set", "--for", "chat"}).out;
    EXPECT_EQ(one.find("Texture tile"), 0U) << one;
    const std::string two = run({"code", "1", "2", "--set", "--for", "chat"}).out;
    EXPECT_EQ(two.find("2 textures, by Mara Quill"), 0U) << two;
}

TEST_F(Cli, BoardSaysWhichIsTheUsualOneNow) {
    const CliAnswer removed = run({"board", "remove", "flash-32k"});
    EXPECT_EQ(removed.exitCode, 0);
    EXPECT_NE(removed.err.find("The usual board is now 'card-64'"), std::string::npos)
        << removed.err;
    EXPECT_EQ(run({"board", "remove", "linux-255"}).err.find("usual"), std::string::npos);
    EXPECT_NE(run({"board", "add", "a", "--slots", "1", "--bytes", "640"}).err.find("now 'a'"),
              std::string::npos);
    ASSERT_EQ(run({"board", "remove", "card-64"}).exitCode, 0);
    EXPECT_NE(run({"board", "remove", "a"}).err.find("There is no board now"), std::string::npos);
}

TEST_F(Cli, CanvasKeepsItsPaletteBarBesideTheGrid) {
    const auto barOf = [&](std::vector<std::string> words) {
        return json(std::move(words)).jsonList()[0].toObject()["bar_at"].toArray();
    };
    EXPECT_EQ(barOf({"canvas", "add", "tiny", "--width", "16", "--height", "16", "--colours", "8",
                     "--grid-at", "10,10", "--pitch", "12"}),
              (QJsonArray{228, 12}));
    EXPECT_EQ(barOf({"canvas", "set", "tiny", "--pitch", "20"}), (QJsonArray{352, 8}));
    for (const std::string verb : {"add", "set"}) {
        const std::string name = verb == "add" ? "other" : "tiny";
        const CliAnswer refused = run({"canvas", verb, name, "--width", "16", "--height", "16",
                                       "--pitch", "20", "--bar-at", "160,8"});
        EXPECT_EQ(refused.exitCode, 1);
        EXPECT_NE(refused.err.find("the swatch of colour 0 lies over the canvas's grid"),
                  std::string::npos)
            << refused.err;
        EXPECT_NE(refused.err.find("--bar-at X,Y"), std::string::npos) << refused.err;
    }
    EXPECT_EQ(run({"canvas", "show", "other"}).exitCode, 1);
    EXPECT_EQ(barOf({"canvas", "show", "tiny"}), (QJsonArray{352, 8}));
}

TEST_F(Cli, PlanForetellsAndProves) {
    addTiles(1);
    const QJsonObject plan = json({"plan", "1", "--strokes"}).json();
    EXPECT_TRUE(plan["verified"].toBool());
    EXPECT_LE(plan["bound_seconds"].toDouble(), plan["seconds"].toDouble());
    EXPECT_LE(plan["seconds"].toDouble(), plan["by_row_seconds"].toDouble());
    EXPECT_EQ(plan["strokes_list"].toArray().size(), plan["strokes"].toInt());
    EXPECT_EQ(plan["lifts"].toInt(), plan["strokes"].toInt());
    const QJsonObject found = json({"find"}).json()["textures"].toArray()[0].toObject();
    EXPECT_EQ(found["draw_seconds"], plan["seconds"]);
    EXPECT_EQ(found["load_bytes"], plan["bytes"]);
}

TEST_F(Cli, PlanSaysWhatWouldBeFaster) {
    addTiles(1);
    const QJsonObject plan = json({"plan", "1"}).json();
    const QJsonArray frontier = plan["frontier"].toArray();
    ASSERT_FALSE(frontier.isEmpty());
    EXPECT_EQ(frontier[0]["variant"], "fast");
    EXPECT_EQ(frontier[0]["seconds"], plan["seconds"]);
    EXPECT_EQ(frontier[0]["bytes"], plan["bytes"]);
    const QJsonArray faster = plan["faster"].toArray();
    ASSERT_GE(faster.size(), 4);
    for (const auto& each : faster) {
        const QJsonObject setting = each.toObject();
        EXPECT_GT(setting["saves"].toDouble(), 0);
        EXPECT_NEAR(setting["seconds"].toDouble() + setting["saves"].toDouble(),
                    plan["seconds"].toDouble(), 0.002);
        EXPECT_FALSE(text(setting["setting"]).isEmpty());
    }
    EXPECT_EQ(text(plan["bound"]), QStringLiteral("cheap"));
    EXPECT_TRUE(plan["fill"].isNull());
    const std::string said = run({"plan", "1"}).out;
    EXPECT_NE(said.find("With reports every 1 ms it would take"), std::string::npos) << said;
    EXPECT_NE(said.find("only a calibration tells"), std::string::npos);
    EXPECT_NE(said.find("(the cheap bound)"), std::string::npos);
}

TEST_F(Cli, PlanProvesTheStrongBoundAndKeepsToABudget) {
    addTiles(1);
    const QJsonObject cheap = json({"plan", "1"}).json();
    const QJsonObject strong = json({"plan", "1", "--prove", "--budget-ms", "5"}).json();
    EXPECT_EQ(text(strong["bound"]), QStringLiteral("strong"));
    EXPECT_GT(strong["bound_seconds"].toDouble(), cheap["bound_seconds"].toDouble());
    EXPECT_LE(strong["bound_seconds"].toDouble(), strong["seconds"].toDouble());
    EXPECT_EQ(json({"plan", "1", "--budget-ms", "5"}).json()["seconds"], strong["seconds"]);
}

TEST_F(Cli, PlanWritesPicturesAndReplacesNoneUnasked) {
    addTiles(1);
    const std::string svg = m_cli.path("plan.svg");
    const std::string film = m_cli.path("film");
    const CliAnswer answer =
        json({"plan", "1", "--svg", svg, "--frames", film, "--frame-seconds", "0.5"});
    ASSERT_EQ(answer.exitCode, 0) << answer.out;
    const QJsonArray files = answer.json()["files"].toArray();
    ASSERT_GE(files.size(), 4);
    for (const auto& file : files) {
        EXPECT_TRUE(std::filesystem::exists(text(file).toStdString())) << text(file).toStdString();
    }
    EXPECT_EQ(m_cli.readText(svg).substr(0, 4), "<svg");
    EXPECT_EQ(run({"plan", "1", "--svg", svg}).exitCode, 1);
    EXPECT_EQ(run({"plan", "1", "--frames", film}).exitCode, 1);
    const CliAnswer again = run({"plan", "1", "--svg", svg, "--frames", film, "--replace"});
    EXPECT_EQ(again.exitCode, 0) << again.err;
    EXPECT_NE(again.out.find("Wrote the picture of the plan"), std::string::npos);
}

TEST_F(Cli, CanvasesKeepPenRulesAndTheFillButton) {
    const auto first = [&](std::vector<std::string> words) {
        return json(std::move(words)).jsonList()[0].toObject();
    };
    const QJsonObject usual = first({"canvas", "show", "cells-16"});
    EXPECT_TRUE(usual["pen_turns"].toBool() && usual["pen_covers"].toBool());
    EXPECT_EQ(text(usual["pen_leaving"]), QStringLiteral("refused"));
    EXPECT_TRUE(usual.contains("fill_at") && usual["fill_at"].isNull());
    const QJsonObject set = first({"canvas", "set", "cells-16", "--pen-turns", "no", "--pen-covers",
                                   "no", "--pen-leaving", "undone", "--fill-at", "300,200"});
    EXPECT_EQ(first({"canvas", "show", "cells-16"}), set);
    EXPECT_FALSE(set["pen_turns"].toBool() || set["pen_covers"].toBool());
    EXPECT_EQ(text(set["pen_leaving"]), QStringLiteral("undone"));
    EXPECT_EQ(set["fill_at"].toArray(), (QJsonArray{300, 200}));
    const std::string table = run({"canvas", "show", "cells-16"}).out;
    EXPECT_NE(table.find("no turns, no covering, undone outside"), std::string::npos) << table;
    EXPECT_NE(table.find("300,200"), std::string::npos);
    EXPECT_TRUE(first({"canvas", "set", "cells-16", "--fill-at", "none"})["fill_at"].isNull());
}

TEST_F(Cli, PlansAndDrawingTimesFollowTheCanvas) {
    m_cli.writeText("calm.csv", "# palette #1b2631 #f2efe4\n" + std::string("0,0,0,0,0,0,0,0\n") +
                                    "0,0,0,1,0,0,0,0\n0,0,0,0,0,0,0,0\n0,0,0,0,0,0,0,0\n" +
                                    "0,0,0,0,0,0,0,0\n0,0,0,0,0,0,0,0\n");
    ASSERT_EQ(run({"add", m_cli.path("calm.csv")}).exitCode, 0);
    const auto drawSeconds = [&]() -> QJsonValue {
        return json({"find"}).json()["textures"].toArray()[0].toObject()["draw_seconds"];
    };
    const double before = drawSeconds().toDouble();
    ASSERT_EQ(run({"canvas", "add", "calm", "--width", "8", "--height", "6", "--fill-at", "104,300",
                   "--pen-turns", "no"})
                  .exitCode,
              0);
    const QJsonObject plan = json({"plan", "1", "--strokes"}).json();
    EXPECT_EQ(plan["fill"].toInt(-1), 0);
    EXPECT_EQ(plan["strokes"].toInt(), 1);
    EXPECT_EQ(drawSeconds(), plan["seconds"]);
    EXPECT_NE(drawSeconds().toDouble(), before);
    ASSERT_EQ(run({"load", "make", "calm", "1", "--board", "flash-32k"}).exitCode, 0);
    const CliAnswer written = json({"load", "write", "calm", "--into", m_cli.path("out")});
    EXPECT_EQ(written.exitCode, 0) << written.out;
    EXPECT_TRUE(written.json()["verified"].toBool());
    ASSERT_EQ(run({"canvas", "remove", "calm"}).exitCode, 0);
    EXPECT_EQ(drawSeconds().toDouble(), before);
    const CliAnswer quick = run({"board", "set", "flash-32k", "--timing", "quick"});
    EXPECT_NE(quick.err.find("drawing time of 1 texture anew"), std::string::npos) << quick.err;
    EXPECT_LT(drawSeconds().toDouble(), before);
    ASSERT_EQ(run({"touch", "1", "--colour", "1", "--line", "7,5,7,5"}).exitCode, 0);
    const double touched = drawSeconds().toDouble();
    ASSERT_EQ(run({"revert", "1", "1"}).exitCode, 0);
    EXPECT_NE(drawSeconds().toDouble(), touched);
    EXPECT_EQ(json({"show", "1"}).json()["draw_seconds"], drawSeconds());
}

TEST_F(Cli, FitMakeWriteAndVerifyALoad) {
    addTiles(4);
    ASSERT_EQ(run({"board", "add", "pier", "--slots", "2", "--bytes", "4000"}).exitCode, 0);
    const QJsonObject fit =
        json({"fit", "all", "--board", "pier", "--worth", "2=9", "--must", "3"}).json();
    const QJsonObject load = fit["loads"].toArray()[0].toObject();
    EXPECT_EQ(load["slots"].toInt(), 2);
    EXPECT_EQ(load["worth"].toInt(), 12);
    EXPECT_EQ(fit["left_out"].toArray().size(), 2);
    EXPECT_TRUE(fit["proven_best"].toBool());

    EXPECT_EQ(run({"load", "make", "evening", "all", "--board", "pier"}).exitCode, 1);
    const CliAnswer made =
        json({"load", "make", "evening", "all", "--board", "pier", "--best", "--worth", "2=9"});
    ASSERT_EQ(made.exitCode, 0) << made.err;
    const CliAnswer written =
        json({"load", "write", "evening", "--into", m_cli.path("out"), "--as", "both"});
    ASSERT_EQ(written.exitCode, 0) << written.err;
    EXPECT_TRUE(written.json()["verified"].toBool());
    EXPECT_EQ(written.json()["files"].toArray().size(), 3);
    for (const char* file : {"out/evening", "out/evening.h"}) {
        const CliAnswer verified = json({"load", "verify", m_cli.path(file)});
        EXPECT_EQ(verified.exitCode, 0) << verified.out;
        EXPECT_TRUE(verified.json()["verified"].toBool());
        EXPECT_EQ(verified.json()["slots"].toArray().size(), 2);
    }
    EXPECT_EQ(json({"load", "list"}).jsonList().size(), 1);
    EXPECT_EQ(json({"load", "show", "evening"}).json()["written"].toArray().size(), 1);
    EXPECT_NE(run({"load", "write", "evening", "--into", m_cli.path("out"), "--replace"})
                  .out.find("mouse"),
              std::string::npos);
    EXPECT_EQ(run({"load", "remove", "evening"}).exitCode, 0);
}

TEST_F(Cli, FitSplitsAllOverLoads) {
    addTiles(5);
    ASSERT_EQ(run({"board", "add", "pier", "--slots", "2", "--bytes", "4000"}).exitCode, 0);
    const QJsonObject split =
        json({"fit", "all", "--board", "pier", "--loads", "--never", "2", "--worth", "4=9"}).json();
    ASSERT_EQ(split["loads"].toArray().size(), 2);
    EXPECT_TRUE(split["proven_best"].toBool());
    EXPECT_EQ(split["fewest"].toInt(), 2);
    const QJsonObject first = split["loads"].toArray()[0].toObject();
    EXPECT_EQ(first["worth"].toInt(), 12);
    EXPECT_EQ(first["slots"].toInt(), 2);
    EXPECT_EQ(first["textures"].toArray()[1].toObject()["slot"].toInt(), 2);
    const QJsonObject left = split["left_out"].toArray()[0].toObject();
    EXPECT_EQ(left["id"].toInt(), 2);
    EXPECT_EQ(left["reason"].toString(), "you said that it is never to be in");
    const CliAnswer text = run({"fit", "all", "--board", "pier", "--loads"});
    EXPECT_NE(text.out.find("Load 3:\n"), std::string::npos) << text.out;
    EXPECT_NE(text.out.find("3 loads, proven fewest.\n"), std::string::npos) << text.out;

    const CliAnswer made = json({"load", "make", "evening", "all", "--board", "pier", "--loads"});
    ASSERT_EQ(made.exitCode, 0) << made.out;
    EXPECT_EQ(made.json()["made"].toArray()[2].toString(), "evening 3");
    EXPECT_EQ(json({"load", "list"}).jsonList().size(), 3);
    EXPECT_EQ(run({"load", "make", "evening", "all", "--board", "pier", "--loads"}).exitCode, 1);
}

TEST_F(Cli, FitSaysWhatWouldLetATextureIn) {
    addTiles(3);
    ASSERT_EQ(run({"board", "add", "pier", "--slots", "2", "--bytes", "4000"}).exitCode, 0);
    const QJsonObject fit = json({"fit", "all", "--board", "pier", "--worth", "1=9", "--worth",
                                  "2=5", "--worth", "3=1"})
                                .json();
    EXPECT_EQ(fit["worth_bound"].toInt(), 14);
    const QJsonObject left = fit["left_out"].toArray()[0].toObject();
    EXPECT_EQ(left["id"].toInt(), 3);
    EXPECT_EQ(left["take_out"].toArray()[0].toInt(), 2);
    EXPECT_EQ(left["more"].toObject()["slots"].toInt(), 1);
    EXPECT_EQ(left["more"].toObject()["bytes"].toInt(-1), 0);
    EXPECT_TRUE(left["change"].toString().startsWith("It fits in place of 2 "));
    const CliAnswer text = run({"fit", "all", "--board", "pier", "--worth", "3=1"});
    EXPECT_NE(text.out.find("slots. It fits in place of "), std::string::npos) << text.out;
}

TEST_F(Cli, LoadHistoryTellsWhatIsOnWhichBoard) {
    addTiles(3);
    for (const char* board : {"pier", "quay"}) {
        ASSERT_EQ(run({"board", "add", board, "--slots", "2", "--bytes", "4000"}).exitCode, 0);
        ASSERT_EQ(run({"load", "make", board, "3", "1", "--board", board}).exitCode, 0);
    }
    EXPECT_TRUE(json({"load", "history"}).jsonList().isEmpty());
    ASSERT_EQ(run({"load", "write", "quay", "--into", m_cli.path("out")}).exitCode, 0);
    const QJsonArray all = json({"load", "history"}).jsonList();
    ASSERT_EQ(all.size(), 1);
    const QJsonObject written = all[0].toObject();
    EXPECT_EQ(written["load"].toString(), "quay");
    EXPECT_EQ(written["board"].toString(), "quay");
    EXPECT_TRUE(written["into"].toString().endsWith("/out"));
    const QJsonObject slot = written["textures"].toArray()[0].toObject();
    EXPECT_EQ(slot["slot"].toInt(), 1);
    EXPECT_EQ(slot["id"].toInt(), 3);
    EXPECT_FALSE(slot["changed_since"].toBool(true));
    EXPECT_TRUE(json({"load", "history", "--board", "pier"}).jsonList().isEmpty());
    EXPECT_EQ(run({"load", "history", "--board", "peer"}).exitCode, 1);
    EXPECT_NE(run({"load", "history", "--board", "quay"}).out.find("1 load written."),
              std::string::npos);
    const CliAnswer shown = run({"load", "show", "quay"});
    EXPECT_NE(shown.out.find("quay, for quay:\nslot  id  title"), std::string::npos) << shown.out;
    EXPECT_EQ(json({"load", "show", "quay"}).json()["textures"].toArray().size(), 2);
}

TEST_F(Cli, CheckBackupAndRestore) {
    addTiles(2);
    const QJsonObject check = json({"check"}).json();
    EXPECT_TRUE(check["ok"].toBool());
    EXPECT_EQ(check["textures"].toInt(), 2);
    EXPECT_EQ(check["problems"].toArray().size(), 0);
    ASSERT_EQ(run({"backup", m_cli.path("copy.db")}).exitCode, 0);
    EXPECT_EQ(run({"backup", m_cli.path("copy.db")}).exitCode, 1);
    ASSERT_EQ(run({"set", "1", "--title", "changed"}).exitCode, 0);
    ASSERT_EQ(run({"restore", m_cli.path("copy.db")}).exitCode, 0);
    EXPECT_EQ(text(json({"show", "1"}).json()["title"]), QStringLiteral("tile 1"));
}

TEST_F(Cli, RepairSavesWhatCanBeReadAndSaysWhatCannot) {
    addTiles(2);
    const QJsonObject sound = json({"check", "--repair", m_cli.path("saved.db")}).json();
    EXPECT_TRUE(sound["ok"].toBool());
    EXPECT_EQ(sound["textures"].toInt(), 2);
    EXPECT_EQ(run({"check", "--repair", m_cli.path("saved.db")}).exitCode, 1);
    std::string bytes = m_cli.readText(m_cli.libraryPath());
    const std::size_t title = bytes.find("tile 2");
    ASSERT_NE(title, std::string::npos);
    bytes.replace(0, 15, "something else ");
    bytes.replace(title, 6, "tIle 2");
    m_cli.writeText("library.db", bytes);
    EXPECT_EQ(run({"check"}).exitCode, 1);
    const CliAnswer repair = run({"check", "--repair", m_cli.path("again.db")});
    EXPECT_NE(repair.out.find("2 textures saved"), std::string::npos) << repair.out;
    ASSERT_EQ(run({"restore", m_cli.path("again.db")}).exitCode, 0);
    EXPECT_EQ(json({"find"}).json()["total"].toInt(), 2);
}

TEST_F(Cli, HelpKnowsEveryCommand) {
    const CliAnswer overview = m_cli.runBare({"help"});
    EXPECT_EQ(overview.exitCode, 0);
    const std::string page =
        m_cli.readText(std::string(PANTILE_SOURCE_DIR) + "/docs/command-line.md");
    for (const Command& command : allCommands()) {
        const std::string name(command.name);
        EXPECT_NE(overview.out.find("  " + name + " "), std::string::npos) << name;
        EXPECT_NE(page.find("`" + name), std::string::npos)
            << name << " is not in docs/command-line.md";
        const CliAnswer help = m_cli.runBare({"help", name});
        EXPECT_EQ(help.exitCode, 0);
        EXPECT_NE(help.out.find("pantile " + name), std::string::npos);
        EXPECT_EQ(m_cli.runBare({name, "--help"}).out, help.out);
        for (const OptionSpec& option : command.options) {
            EXPECT_NE(help.out.find(std::string(option.name)), std::string::npos) << option.name;
        }
    }
    EXPECT_EQ(m_cli.runBare({"--version"}).out, "pantile 0.1.0\n");
}

TEST_F(Cli, OneCodeHoldsASet) {
    addTiles(3);
    const CliAnswer one = json({"code", "all"});
    const CliAnswer set = json({"code", "all", "--set"});
    ASSERT_EQ(set.exitCode, 0) << set.err;
    const QJsonArray codes = set.json()["codes"].toArray();
    ASSERT_EQ(codes.size(), 1);
    const QJsonObject code = codes[0].toObject();
    EXPECT_TRUE(code["id"].isNull());
    EXPECT_EQ(code["ids"].toArray().size(), 3);
    EXPECT_EQ(text(code["method"]), QStringLiteral("modelled runs"));
    int oneByOne = 0;
    const QJsonArray singles = one.json()["codes"].toArray();
    for (const QJsonValue& each : singles) {
        oneByOne += each.toObject()["bytes"].toInt();
    }
    EXPECT_LT(code["bytes"].toInt(), oneByOne);

    const CliAnswer posts = run({"code", "all", "--set", "--for", "markdown", "--limit", "160"});
    EXPECT_NE(posts.out.find("3 textures"), std::string::npos) << posts.out;
    const CliAnswer read = json({"read"}, posts.out);
    EXPECT_EQ(read.json()["textures"].toArray().size(), 3);
    EXPECT_TRUE(read.json()["damaged"].toArray().isEmpty());
}

TEST_F(Cli, ASetHasNoPlainRuns) {
    addTiles(2);
    const CliAnswer answer = run({"code", "all", "--set", "--plain-runs"});
    EXPECT_EQ(answer.exitCode, 1);
    EXPECT_NE(answer.err.find("plain runs hold one texture"), std::string::npos) << answer.err;
}

}  // namespace
}  // namespace pantile::cli
