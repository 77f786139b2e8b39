// What queries find, told by the files in tests/data/queries: a small library, and queries with the
// ids they find.

#include "catalogue/query_matcher.h"

#include <algorithm>
#include <iterator>
#include <map>
#include <sstream>

#include "catalogue/boards.h"
#include "catalogue/canvases.h"
#include "catalogue/edit.h"
#include "catalogue/library_fixture.h"
#include "catalogue/loads.h"
#include "catalogue/palettes.h"
#include "catalogue/query_parser.h"
#include "catalogue/reader.h"
#include "catalogue/shelves.h"

namespace pantile::catalogue {
namespace {

namespace fs = std::filesystem;
using core::TextureId;
using tests::isOk;
using tests::LibraryTest;

const fs::path kQueries = fs::path(PANTILE_TEST_DATA) / "queries";

std::vector<std::string> linesOf(const fs::path& path) {
    std::ifstream file(path);
    std::vector<std::string> lines;
    for (std::string line; std::getline(file, line);) {
        if (!line.empty() && line.front() != '#') lines.push_back(line);
    }
    EXPECT_FALSE(lines.empty()) << path;
    return lines;
}

std::vector<std::string> words(const std::string& text) {
    std::istringstream stream(text);
    return {std::istream_iterator<std::string>(stream), std::istream_iterator<std::string>()};
}

/// One line of library.txt: the fields of a texture, "name=value" with "; " between.
class LibraryLine {
public:
    explicit LibraryLine(const std::string& line) {
        std::istringstream stream(line);
        for (std::string field; std::getline(stream, field, ';');) {
            const std::size_t begin = field.find_first_not_of(' ');
            const std::size_t equals = field.find('=');
            m_fields[field.substr(begin, equals - begin)] = field.substr(equals + 1);
        }
    }

    std::string text(const std::string& name) const {
        const auto found = m_fields.find(name);
        return found == m_fields.end() ? "" : found->second;
    }

    int number(const std::string& name) const { return std::stoi(text(name)); }

    bool has(const std::string& name) const { return m_fields.contains(name); }

private:
    std::map<std::string, std::string> m_fields;
};

class QueryFiles : public LibraryTest {
protected:
    void SetUp() override {
        std::uint64_t seed = 0;
        for (const std::string& line : linesOf(kQueries / "library.txt")) {
            ++seed;
            addLine(LibraryLine(line), seed);
            if (HasFatalFailure()) return;
        }
        addCanvases();
        addLoads();
    }

    void addCanvases() {
        core::Canvas quay;
        quay.name = "Quay";
        quay.size = {32, 32};
        quay.freeColours = 8;
        ASSERT_THAT(addCanvas(library(), quay), isOk());
        core::Canvas fixed;
        fixed.name = "Lamp room";
        fixed.size = {64, 64};
        fixed.palette = tests::paletteOf(16, 5);
        ASSERT_THAT(addCanvas(library(), fixed), isOk());
    }

    void addLoads() {
        core::Board board;
        board.name = "Pier";
        ASSERT_THAT(addBoard(library(), board), isOk());
        ASSERT_THAT(addLoad(library(), {"Night", "Pier", {{2}, {5}}, 0, {}}), isOk());
        ASSERT_THAT(addLoad(library(), {"Day", "Pier", {{1}, {2}}, 0, {}}), isOk());
    }

    // Every palette entry is used: the first cells hold one of each.
    core::Texture picture(const LibraryLine& line, core::TextureText text) {
        const int colours = line.number("colours");
        const int width = line.number("width");
        const int height = line.number("height");
        std::vector<core::PaletteIndex> cells;
        for (int i = 0; i < width * height; ++i) {
            cells.push_back(static_cast<core::PaletteIndex>(i % colours));
        }
        cells.back() = 0;
        auto grid = *core::Grid::create(width, height, std::move(cells));
        return *core::Texture::create(std::move(grid), tests::paletteOf(colours, line.number("id")),
                                      std::move(text));
    }

    void addLine(const LibraryLine& line, std::uint64_t expectedId) {
        core::TextureText text{line.text("title"),  line.text("author"), line.text("licence"),
                               line.text("source"), line.text("note"),   words(line.text("tags"))};
        const auto added = parsedDay(line.text("added"));
        now = added;
        const core::Texture texture = picture(line, text);
        const TextureId id = add(texture);
        ASSERT_EQ(id.value, static_cast<std::int64_t>(expectedId));
        ASSERT_EQ(id.value, line.number("id"));
        for (const std::string& shelf : words(line.text("shelves"))) {
            ASSERT_THAT(putOnShelf(library(), {{id}}, shelf), isOk());
        }
        if (line.has("palette")) {
            ASSERT_THAT(addPalette(library(), line.text("palette"), texture.palette()), isOk());
        }
        if (line.has("draw-ms")) {
            ASSERT_THAT(
                setEstimate(library(), id, {line.number("draw-ms"), line.number("bytes"), "k"}),
                isOk());
        }
        if (line.has("stars")) {
            TextPatch patch;
            patch.stars = line.number("stars");
            ASSERT_THAT(setText(library(), {{id}}, patch), isOk());
        }
        if (line.has("seam")) {
            ASSERT_THAT(setSeam(library(), id, line.number("seam")), isOk());
        }
        if (line.text("removed") == "yes") {
            ASSERT_THAT(removeTextures(library(), {{id}}), isOk());
        }
    }

    /// Noon of a day of January 2026, in UTC.
    static std::int64_t parsedDay(const std::string& day) {
        EXPECT_EQ(day.substr(0, 8), "2026-01-") << day;
        return tests::kFirstNow + (std::stoi(day.substr(8)) - 1) * 86400;
    }

    /// What is asked may end with " by " and a sort key; else it is by id.
    std::string answer(const std::string& asked) {
        const std::size_t by = asked.rfind(" by ");
        const std::string query = asked.substr(0, by);
        const auto parsed = parseQuery(query);
        if (!parsed) return "error " + parsed.error().message;
        FindOptions options;
        options.sort = *parseSortKey(by == std::string::npos ? "id" : asked.substr(by + 4));
        const auto found = findTextures(library(), *parsed, options);
        EXPECT_THAT(found, isOk()) << query;
        if (!found) return "";
        EXPECT_EQ(found->total, static_cast<std::int64_t>(found->rows.size()));
        std::string ids;
        for (const TextureRow& row : found->rows) {
            ids += (ids.empty() ? "" : " ") + std::to_string(row.id.value);
        }
        return ids.empty() ? "nothing" : ids;
    }
};

TEST_F(QueryFiles, FindWhatTheySay) {
    int queries = 0;
    for (const auto& entry : fs::directory_iterator(kQueries)) {
        if (entry.path().filename() == "library.txt") continue;
        for (const std::string& line : linesOf(entry.path())) {
            const std::size_t arrow = line.rfind(" => ");
            ASSERT_NE(arrow, std::string::npos) << line;
            const std::string query = line.substr(0, arrow);
            EXPECT_EQ(answer(query), line.substr(arrow + 4)) << entry.path() << ": " << query;
            ++queries;
        }
    }
    EXPECT_GT(queries, 60);
}

// A query with every limit used to the full still runs.
TEST_F(QueryFiles, TheLargestQueryRuns) {
    std::string query;
    for (int i = 0; i < 32; ++i) query += "-(kelp -(a | ";
    EXPECT_FALSE(parseQuery(query));
    query = std::string(32, '(') + "kelp";
    for (int i = 0; i < 30; ++i) query += " | -tag:x)";
    query += "))";
    for (int i = 0; i < 150; ++i) query += " -w" + std::to_string(i);
    const auto parsed = parseQuery(query);
    ASSERT_THAT(parsed, isOk());
    EXPECT_THAT(findTextures(library(), *parsed), isOk());
}

// Text that would mean something in SQL is text.
TEST_F(QueryFiles, TakeEveryValueAsItIs) {
    for (const char* query : {"\"'; DROP TABLE textures; --\"", "tag:\"' OR 1=1 --\"", "o'brien",
                              "shelf:\"a;b\"", "palette:\"?2\"", "on:\"') OR ('1'='1\"",
                              "canvas:\"x' OR '1'='1\"", "author:\"%\"", "note:\"_\""}) {
        EXPECT_EQ(answer(query), "nothing") << query;
    }
    EXPECT_NE(answer(""), "nothing");
}

}  // namespace
}  // namespace pantile::catalogue
