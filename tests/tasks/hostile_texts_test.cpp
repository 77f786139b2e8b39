// Hostile words through every way out of the library but the terminal (tests/cli) and the window,
// the printed page and Markdown (tests/desktop): each file is read by a reader of its format.

#include "support/hostile_texts.h"

#include <array>
#include <cstdio>
#include <regex>

#include "board/header_export.h"
#include "catalogue/loads.h"
#include "codec/harvest.h"
#include "core/text.h"
#include "drawing/plan_picture.h"
#include "drawing/planner.h"
#include "tasks/code_posts.h"
#include "tasks/export_textures.h"
#include "tasks/grid_csv.h"
#include "tasks/library_file.h"
#include "tasks/pier_fixture.h"
#include "tasks/write_load.h"

namespace pantile::tasks {
namespace {

using tests::HostileText;
using tests::isOk;

namespace fs = std::filesystem;

struct Heard {
    std::string output;
    int status = -1;
};

Heard heardFrom(const std::string& command) {
    FILE* const pipe = popen((command + " 2>&1").c_str(), "r");
    if (pipe == nullptr) return {};
    Heard heard;
    std::array<char, 4096> block{};
    for (std::size_t count = 0; (count = fread(block.data(), 1, block.size(), pipe)) > 0;)
        heard.output.append(block.data(), count);
    heard.status = pclose(pipe);
    return heard;
}

/// What Python prints after the lines of `program`, to which the files are sys.argv[1:].
std::string pythonOn(const std::vector<fs::path>& files, const std::string& program) {
    std::string command = "PYTHONIOENCODING=utf-8 python3 -c 'import sys\n" + program + "'";
    for (const fs::path& file : files) command += " '" + file.string() + "'";
    const Heard heard = heardFrom(command);
    EXPECT_EQ(heard.status, 0) << heard.output;
    return heard.output;
}

/// A texture for each text, with it as title, author and twice in its note, and a load of each.
class HostileTexts : public tests::PierFixture {
protected:
    HostileTexts() {
        auto change = m_library.begin();
        for (std::size_t i = 0; i < texts().size(); ++i) {
            m_named.push_back(named(static_cast<int>(i), texts()[i].text));
            m_added.push_back(add(m_named.back()));
        }
        EXPECT_THAT(change->commit(), isOk());
    }

    static const std::vector<HostileText>& texts() { return tests::hostileTexts(); }

    static core::Texture named(int seed, const std::string& title) {
        const core::Texture plain = texture(100 + seed);
        core::TextureText words = plain.text();
        words.title = title;
        words.author = title;
        words.note = title + "\n" + title;
        return *core::Texture::create(plain.grid(), plain.palette(), words);
    }

    /// Shape: a file for each text, in their order.
    std::vector<fs::path> exported(ExportForm form) const {
        ExportOptions options;
        options.form = form;
        const auto files = exportTextures(m_library, m_added, path("out"), options);
        EXPECT_THAT(files, isOk());
        return files ? *files : std::vector<fs::path>(texts().size());
    }

    static std::string contentsOf(const fs::path& file) {
        const auto contents = readFile(file, 1U << 24U);
        return contents ? *contents : "";
    }

    struct CardAndHeader {
        fs::path bin, contents, header;
    };

    /// A load for each text, of its name and with its texture, in a folder of its own.
    std::vector<CardAndHeader> writtenLoads() {
        WriteOptions options;
        options.form = LoadForm::Both;
        std::vector<CardAndHeader> loads;
        for (std::size_t i = 0; i < texts().size(); ++i) {
            catalogue::StoredLoad load;
            // A load's name is shorter than a title may be.
            load.name = core::cleanedText(texts()[i].text, {"name", 60});
            load.board = "pier";
            load.slots = {m_added[i]};
            EXPECT_THAT(catalogue::addLoad(m_library, load), isOk());
            const auto written =
                writeStoredLoad(m_library, load.name, path("out/" + texts()[i].name), options);
            EXPECT_THAT(written, isOk()) << texts()[i].name;
            if (written) loads.push_back({written->files[0], written->files[1], written->files[2]});
        }
        loads.resize(texts().size());
        return loads;
    }

    std::vector<core::Texture> m_named;
    std::vector<core::TextureId> m_added;
};

std::string linesOf(const std::vector<HostileText>& texts) {
    std::string lines;
    for (const HostileText& hostile : texts) lines += hostile.text + "\n";
    return lines;
}

// Spreadsheets take a field for a formula that begins with one of = + - @ (common practice, no
// source), whatever separates the fields where they were set up. RFC 4180 says how they are quoted.
TEST_F(HostileTexts, NoFieldOfACsvIsAFormula) {
    const std::vector<fs::path> files = exported(ExportForm::Csv);
    EXPECT_EQ(pythonOn(files,
                       "import csv\n"
                       "for file in sys.argv[1:]:\n"
                       "    for separator in \",;\\t\":\n"
                       "        with open(file, newline=\"\", encoding=\"utf-8\") as text:\n"
                       "            for row in csv.reader(text, delimiter=separator):\n"
                       "                for field in row:\n"
                       "                    if field.strip()[:1] in list(\"=+-@\"):\n"
                       "                        print(file, repr(separator), field)\n"),
              "");
    for (std::size_t i = 0; i < files.size(); ++i) {
        const auto back = parseGridCsv(contentsOf(files[i]));
        ASSERT_THAT(back, isOk()) << texts()[i].name;
        EXPECT_EQ(back->title, texts()[i].text);
        EXPECT_EQ(back->grid, m_named[i].grid());
        EXPECT_EQ(back->palette, m_named[i].palette());
    }
}

TEST_F(HostileTexts, JsonSaysThemAsTheyAre) {
    EXPECT_EQ(pythonOn(exported(ExportForm::Json),
                       "import json\n"
                       "for file in sys.argv[1:]:\n"
                       "    one = json.load(open(file, encoding=\"utf-8\"))\n"
                       "    title = one[\"title\"]\n"
                       "    assert one[\"note\"] == title + \"\\n\" + title, file\n"
                       "    assert one[\"author\"] == title and len(one[\"cells\"]) == 8, file\n"
                       "    print(title)\n"),
              linesOf(texts()));
}

TEST_F(HostileTexts, TheLibraryFileSaysThemAsTheyAre) {
    const auto file = exportLibrary(m_library, path("whole"), IfExists::Refuse);
    ASSERT_THAT(file, isOk());
    const std::string heard = pythonOn({*file},
                                       "import json\n"
                                       "def texts(part):\n"
                                       "    if isinstance(part, str): yield part\n"
                                       "    if isinstance(part, dict): part = part.values()\n"
                                       "    if not isinstance(part, str | int | float | None):\n"
                                       "        for inner in part: yield from texts(inner)\n"
                                       "whole = json.load(open(sys.argv[1], encoding=\"utf-8\"))\n"
                                       "for text in texts(whole): print(text)");
    for (const HostileText& hostile : texts()) {
        EXPECT_NE(("\n" + heard).find("\n" + hostile.text + "\n"), std::string::npos)
            << hostile.name;
    }
    std::string back;
    EXPECT_THAT(forEachFiledTexture(m_library, fileSource(*file),
                                    [&](const FiledTexture& filed) -> core::Result<void> {
                                        back += filed.texture.text().title + "\n";
                                        return {};
                                    }),
                isOk());
    EXPECT_TRUE(back.ends_with("\n" + linesOf(texts())));
}

// C99, with the trigraphs of 5.2.1.1 and the joined lines of 5.1.1.2; every warning is an error.
TEST_F(HostileTexts, AHeaderIsTheSameToACompiler) {
    std::string program;
    for (const CardAndHeader& load : writtenLoads()) {
        const auto bytes = board::readHeader(contentsOf(load.header));
        ASSERT_THAT(bytes, isOk()) << load.header;
        EXPECT_TRUE(verifyLoadFile(load.header)->verified());
        const std::string name = "load_" + load.header.parent_path().filename().string();
        program += "#undef PANTILE_LOAD_H\n#undef PANTILE_LOAD_BYTES\n#define pantile_load " +
                   name + "\n#include \"" + load.header.string() +
                   "\"\n#undef pantile_load\nint (*of_" + name + ")[sizeof " + name +
                   " == " + std::to_string(bytes->size()) + " ? 1 : -1];\n";
    }
    const Heard heard =
        heardFrom("cc -std=c99 -trigraphs -Wall -Wextra -Wcomment -Werror -fsyntax-only '" +
                  write("program.c", program) + "'");
    EXPECT_EQ(heard.status, 0) << heard.output;
}

TEST_F(HostileTexts, TheContentsOfACardKeepTheirLines) {
    const std::vector<CardAndHeader> loads = writtenLoads();
    for (std::size_t i = 0; i < loads.size(); ++i) {
        const std::string contents = contentsOf(loads[i].contents);
        EXPECT_TRUE(tests::isHarmlessOnTerminal(contents)) << contents;
        EXPECT_NE(contents.find("\n\nSlot 1: " + texts()[i].text + ", 8x8 cells, on the canvas "),
                  std::string::npos)
            << contents;
    }
}

// The XML parser of Python's library; SVG is XML.
TEST_F(HostileTexts, AnSvgHoldsThemAsText) {
    std::vector<fs::path> files;
    for (const core::Texture& one : m_named) {
        core::Canvas canvas;
        canvas.name = one.text().title;
        canvas.size = one.grid().size();
        canvas.freeColours = 4;
        canvas.geometry = core::CanvasGeometry::beside(canvas.size);
        const auto plan = drawing::planDrawing({one.grid(), std::nullopt, canvas, {}});
        ASSERT_THAT(plan, isOk());
        files.emplace_back(
            write(std::to_string(files.size()) + ".svg",
                  drawing::planSvg(*plan, {one.text().title, one.grid(), one.palette(), canvas})));
    }
    EXPECT_EQ(
        pythonOn(files,
                 "import xml.etree.ElementTree as tree\n"
                 "space = \"{http://www.w3.org/2000/svg}\"\n"
                 "for file in sys.argv[1:]:\n"
                 "    top = tree.parse(file).getroot()\n"
                 "    kinds = {one.tag.replace(space, \"\") for one in top.iter()}\n"
                 "    assert kinds <= set(\"svg title rect g path circle text\".split()), file\n"
                 "    print(top.find(space + \"title\").text)\n"),
        linesOf(texts()));
}

// Windows: 'Naming Files, Paths, and Namespaces' (from memory): the forbidden characters, the
// reserved names with their raised digits, and no dot or blank at the end. Linux and macOS: no '/',
// no NUL, at most 255 bytes, of which a file that is being written takes seven more.
void expectGoodOnAllSystems(const fs::path& file) {
    const std::string name = file.filename().string();
    EXPECT_TRUE(fs::exists(file)) << file;
    EXPECT_FALSE(std::regex_search(name, std::regex(R"([<>:"/\\|?*]|[. ]$|^[.-]|^ )"))) << name;
    const std::regex devices("^(con|prn|aux|nul|(com|lpt)([0-9]|\u00B9|\u00B2|\u00B3))(\\..*)?$",
                             std::regex::icase);
    EXPECT_FALSE(std::regex_search(name, devices)) << name;
    EXPECT_TRUE(tests::isHarmlessOnTerminal(name)) << name;
}

TEST_F(HostileTexts, FileNamesAreGoodOnAllSystems) {
    for (const fs::path& file : exported(ExportForm::Png)) {
        EXPECT_EQ(file.parent_path(), fs::path(path("out")));
        expectGoodOnAllSystems(file);
    }
    const std::vector<CardAndHeader> loads = writtenLoads();
    for (std::size_t i = 0; i < loads.size(); ++i) {
        const fs::path folder = path("out/" + texts()[i].name);
        EXPECT_EQ(loads[i].bin.parent_path().parent_path(), folder);
        EXPECT_EQ(loads[i].header.parent_path(), folder);
        expectGoodOnAllSystems(loads[i].bin.parent_path());
        expectGoodOnAllSystems(loads[i].header);
    }
    constexpr std::size_t kLongestId = 19;
    constexpr std::size_t kDash = 1;
    const std::size_t ending = std::string(".json.XXXXXX").size();
    for (const HostileText& hostile : texts()) {
        EXPECT_LE(kLongestId + kDash + core::safeFileName(hostile.text).size() + ending, 255U);
    }
}

// No two readers of BBCode agree (common practice, no source): so no bracket in front of the code
// may open anything, and no words may look like an address or a mention.
TEST_F(HostileTexts, NothingInFrontOfACodeIsBbcode) {
    const std::vector<std::uint8_t> container(20, 1);
    for (const HostileText& hostile : texts()) {
        const auto posts = codePosts(container, {hostile.text, hostile.text, hostile.text},
                                     {PostSyntax::Bbcode, std::nullopt});
        ASSERT_THAT(posts, isOk());
        const std::string& post = posts->front();
        EXPECT_EQ(post.find("[code]"), post.rfind("[code]"));
        EXPECT_TRUE(post.ends_with("\n[/code]"));
        const std::string words = post.substr(0, post.find("[code]"));
        const std::regex markup(R"(\[/?[A-Za-z*]|https?:/|www\.[a-z]|\w@\w|@everyone)");
        EXPECT_FALSE(std::regex_search(words, markup)) << words;
        EXPECT_EQ(std::count(words.begin(), words.end(), '\n'), 1) << words;
    }
}

TEST_F(HostileTexts, CodesBringThemBack) {
    const std::vector<fs::path> files = exported(ExportForm::Text);
    for (std::size_t i = 0; i < files.size(); ++i) {
        const codec::Harvest harvest = codec::harvestCodes(contentsOf(files[i]));
        ASSERT_EQ(harvest.found.size(), 1U) << texts()[i].name;
        EXPECT_EQ(harvest.found[0].texture.text().title, texts()[i].text);
        EXPECT_EQ(harvest.found[0].texture.text().author, texts()[i].text);
    }
}

TEST(RefusedTexts, AreNoWordsOfATexture) {
    const core::Grid grid = core::Grid::create(2, 2, std::vector<core::PaletteIndex>(4)).value();
    const core::Palette palette = core::Palette::create({{27, 38, 49}, {242, 239, 228}}).value();
    for (const HostileText& refused : tests::refusedTexts()) {
        SCOPED_TRACE(refused.name);
        for (std::string core::TextureText::*const field :
             {&core::TextureText::title, &core::TextureText::author, &core::TextureText::licence,
              &core::TextureText::source}) {
            core::TextureText words;
            words.*field = refused.text;
            EXPECT_FALSE(core::Texture::create(grid, palette, words).has_value());
        }
        EXPECT_FALSE(core::checkTag(refused.text).has_value());
        EXPECT_FALSE(core::checkName("shelf", refused.text).has_value());
        core::TextureText noted;
        noted.note = refused.text;
        EXPECT_EQ(core::Texture::create(grid, palette, noted).has_value(),
                  refused.name == "NewLine");
    }
}

// What is in a library by a foreign hand is made visible on the ways out that take any text.
TEST(RefusedTexts, AreMadeVisibleOnTheWaysOut) {
    const std::vector<std::uint8_t> load(20, 1);
    for (const auto& [name, text] : tests::refusedTexts()) {
        SCOPED_TRACE(name);
        const std::string header = board::writeHeader(load, text, std::vector<std::string>{text});
        EXPECT_TRUE(tests::isHarmlessOnTerminal(header));
        EXPECT_EQ(board::readHeader(header).value(), load);
        for (const PostSyntax syntax :
             {PostSyntax::Plain, PostSyntax::Chat, PostSyntax::Markdown, PostSyntax::Bbcode}) {
            const auto posts = codePosts(load, {text, text, text}, {syntax, std::nullopt});
            EXPECT_TRUE(tests::isHarmlessOnTerminal(posts->front())) << posts->front();
        }
        const std::string file = core::safeFileName(text);
        EXPECT_TRUE(tests::isHarmlessOnTerminal(file) && file.find('\n') == std::string::npos);
    }
}

}  // namespace
}  // namespace pantile::tasks
