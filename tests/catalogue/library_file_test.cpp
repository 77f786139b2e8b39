#include <set>
#include <string>
#include <vector>

#include "catalogue/boards.h"
#include "catalogue/canvases.h"
#include "catalogue/integrity.h"
#include "catalogue/library_file_format.h"
#include "catalogue/library_file_reader.h"
#include "catalogue/library_file_writer.h"
#include "catalogue/library_fixture.h"
#include "catalogue/loads.h"
#include "catalogue/palettes.h"
#include "catalogue/rescue_rows.h"
#include "catalogue/searches.h"
#include "catalogue/shelves.h"
#include "catalogue/statement.h"
#include "catalogue/tags.h"

namespace pantile::catalogue {
namespace {

using core::ErrorKind;
using tests::failsWith;
using tests::isOk;

std::string written(const Library& library) {
    std::string text;
    EXPECT_THAT(writeLibraryFile(library,
                                 [&](std::string_view piece) {
                                     text += piece;
                                     return core::Result<void>();
                                 }),
                isOk());
    return text;
}

ByteSource sourceOf(std::string text) {
    return [text = std::move(text), at = std::size_t{0}](
               char* into, std::size_t most) mutable -> core::Result<std::size_t> {
        const std::size_t count = text.copy(into, most, at);
        at += count;
        return count;
    };
}

class LibraryFileTest : public tests::LibraryTest {
protected:
    /// One of everything.
    void fill() {
        core::TextureText text = tests::titled("Wet \"sand\" \\ Küste", {"shore", "stone/wet"});
        text.note = "two\nlines";
        const core::TextureId first = add(tests::textureOf(1, text));
        const core::TextureId second = add(tests::textureOf(2, tests::titled("Kelp")));
        const core::TextureId gone = add(tests::textureOf(3, tests::titled("Foam", {"draft"})));
        EXPECT_THAT(removeTextures(library(), {&gone, 1}), isOk());
        EXPECT_THAT(purgeRemoved(library(), {&gone, 1}), isOk());
        EXPECT_THAT(removeTextures(library(), {&second, 1}), isOk());
        const core::Texture other = tests::textureOf(9);
        EXPECT_THAT(setContent(library(), first, other.grid(), other.palette()), isOk());
        EXPECT_THAT(setEstimate(library(), first, {1200, 340, "Quay card"}), isOk());
        EXPECT_THAT(setSeam(library(), first, 130), isOk());
        EXPECT_THAT(putOnShelf(library(), {&first, 1}, "Pier"), isOk());
        EXPECT_THAT(addTagAlias(library(), "strand", "shore"), isOk());
        EXPECT_THAT(saveSearch(library(), {"found", "tag:shore", "title"}), isOk());
        EXPECT_THAT(addPalette(library(), "dusk", tests::paletteOf(4, 7, 2)), isOk());
        core::Canvas canvas;
        canvas.name = "Quay";
        canvas.size = {16, 16};
        canvas.geometry = core::CanvasGeometry::beside(canvas.size);
        canvas.palette = tests::paletteOf(4, 7, 2);
        EXPECT_THAT(addCanvas(library(), canvas), isOk());
        core::Board board;
        board.name = "Quay board";
        EXPECT_THAT(addBoard(library(), board), isOk());
        StoredLoad load;
        load.name = "evening";
        load.board = board.name;
        load.slots = {second, first};
        load.canvas = canvas.name;
        EXPECT_THAT(addLoad(library(), load), isOk());
        EXPECT_THAT(noteLoadWritten(library(), "evening", "/media/card"), isOk());
    }

    /// What comes of the text in a new library.
    core::Result<std::int64_t> read(const std::string& text) {
        m_other.reset();
        std::filesystem::remove(folder() / "other.db");
        auto other = Library::open(folder() / "other.db", tests::plainOptions());
        EXPECT_THAT(other, isOk());
        m_other = std::make_unique<Library>(*std::move(other));
        return readLibraryFile(*m_other, sourceOf(text));
    }

    Library& other() { return *m_other; }

private:
    std::unique_ptr<Library> m_other;
};

/// Every column that is not worked out from others has its place in the file.
TEST_F(LibraryFileTest, KnowsEveryColumnOfEveryTable) {
    const std::set<std::string> workedOut = {
        "palettes.fingerprint", "contents.fingerprint", "contents.width",
        "contents.height",      "contents.colours",     "contents.method",
        "contents.used",        "contents.tone",        "tags.folded"};
    std::set<std::string> expected;
    for (const RescuedTable& table : rescuedTables()) {
        const auto columns = allTexts(library().connection(),
                                      "SELECT name FROM pragma_table_info(?1)", {table.name});
        for (const std::string& column : *columns) {
            const std::string name = std::string(table.name) + "." + column;
            if (!workedOut.contains(name)) expected.insert(name);
        }
    }
    std::set<std::string> known;
    for (const FileSection& section : libraryFileSections()) {
        for (const FileColumn& column : section.columns) {
            known.insert(std::string(section.table) + "." + std::string(column.column));
        }
    }
    EXPECT_EQ(known, expected);
}

TEST_F(LibraryFileTest, ComesBackEqual) {
    fill();
    const std::string text = written(library());
    EXPECT_EQ(written(library()), text);
    EXPECT_EQ(*read(text), 2);
    EXPECT_EQ(written(other()), text);
    for (const RescuedTable& table : rescuedTables()) {
        const std::string name(table.name);
        EXPECT_GT(*library().connection().number("SELECT count(*) FROM " + name), 0) << name;
        ASSERT_THAT(run(library().connection(), "ATTACH ?1 AS other",
                        {std::string_view((folder() / "other.db").native())}),
                    isOk());
        EXPECT_EQ(
            *library().connection().number("SELECT count(*) FROM (SELECT * FROM main." + name +
                                           " EXCEPT SELECT * FROM other." + name + ")"),
            0)
            << name;
        ASSERT_THAT(library().connection().execute("DETACH other"), isOk());
    }
    EXPECT_TRUE(checkLibrary(other())->ok);
    // The id of the purged texture is not given again.
    EXPECT_EQ(addTexture(other(), tests::textureOf(40))->id.value, 4);
}

TEST_F(LibraryFileTest, OfAnEmptyLibraryIsEmpty) {
    const std::string text = written(library());
    EXPECT_EQ(*read(text), 0);
    EXPECT_EQ(written(other()), text);
    EXPECT_TRUE(*holdsNoRecords(other()));
}

TEST_F(LibraryFileTest, GoesIntoNoLibraryThatHoldsSomething) {
    fill();
    const std::string text = written(library());
    EXPECT_THAT(readLibraryFile(library(), sourceOf(text)),
                failsWith(ErrorKind::AlreadyExists, "holds something"));
    EXPECT_EQ(written(library()), text);
}

struct Damage {
    std::string from;
    std::string to;
    std::string message;
};

TEST_F(LibraryFileTest, SaysWhatIsWrongWhereAndTakesNothing) {
    fill();
    const std::string text = written(library());
    const std::vector<Damage> damages = {
        {"pantile_library", "pantile_librari", "line 2, column 19: 'pantile_librari' stands"},
        {"\"pantile_library\":2", "\"pantile_library\":0", "no such version"},
        {"\"pantile_library\":2", "\"pantile_library\":\"1\"", "a whole number has to stand"},
        {"\"last_texture\":3", "\"last_texture\":-3", "no texture has an id below 1"},
        {"\"palettes\":", "\"pallets\":", "line 4, column 11: 'pallets' stands where 'palettes'"},
        {"#000", "#00g", "'#00g"},
        {"\"transparent\":2", "\"transparent\":4", "palettes: "},
        {"\"transparent\":2", "\"transparent\":256", "256 is no index"},
        {"\"transparent\":2", "\"transparent\":true", "'t' stands"},
        {"\"transparent\":null", "\"transparent\":null,\"transparent\":null", "stands twice"},
        {"\"transparent\":null", "\"opaque\":null", "palettes have no 'opaque'"},
        {",\"transparent\":null", "", "no 'transparent'"},
        {"\"cells\":[[", "\"cells\":[[256,", "a cell is 256"},
        {"\"cells\":[[", "\"cells\":[[0,", "row 1 has 16 cells, and row 0 has 17"},
        {"\"cells\":[[", "\"cells\":[[[", "'[' stands where a whole number"},
        {"\"cells\":[[", "\"cells\":[[200],[", "row 1 has 16 cells, and row 0 has 1"},
        {"{\"id\":1,\"picture\":", "{\"id\":0,\"picture\":",
         "'id' has to be a whole number from 1"},
        {"\"added\":1767268800", "\"added\":-1", "'added' has to be a time"},
        {"\"added\":1767268800", "\"added\":253402300800", "'added' has to be a time"},
        {"\"title\":\"Kelp\"", "\"title\":7", "'title' has to be a text"},
        {"\"title\":\"Kelp\"", "\"title\":\"a\\nb\"", "textures: "},
        {"\"stars\":0", "\"stars\":6", "stars"},
        {"\"picture\":3,\"title\"", "\"picture\":99,\"title\"", "textures: "},
        {"\"what\":1", "\"what\":99", "texture 1"},
        {"\"revision\":2,\"at\"", "\"revision\":7,\"at\"", "texture"},
        {"\"tags\":[\n{\"id\":1,\"name\":\"shore\"}", "\"tags\":[\n{\"id\":1,\"name\":\"a b\"}",
         "tags: "},
        {"\"word\":\"strand\"", "\"word\":\"Strand\"", "'Strand' is not folded"},
        {"\"query\":\"tag:shore\"", "\"query\":\"tag:(\"", "searches: "},
        {"\"sort\":\"title\"", "\"sort\":\"smell\"", "searches: "},
        {"\"slot\":0", "\"slot\":3", "a gap between its slots"},
        {"\"slot\":0", "\"slot\":255", "the slot"},
        {"\"pen\":0", "\"pen\":9", "canvases: "},
        {"\"memory\":0", "\"memory\":9", "boards: "},
        {"\"into\":\"/media/card\"", "\"into\":\"/media\\u202ecard\"", "load_writings: "},
        {"\"position\":1}]\n}\n", "\"position\":1}\n],\"more\":1}", "'more' is not known here"},
        {"\"position\":1}]\n}\n", "\"position\":1}\n]\n", "the file ends"},
    };
    for (const Damage& damage : damages) {
        std::string bad = text;
        const std::size_t at = bad.find(damage.from);
        if (at == bad.npos) {
            ADD_FAILURE() << "nothing to damage: " << damage.from;
            continue;
        }
        bad.replace(at, damage.from.size(), damage.to);
        const auto taken = read(bad);
        EXPECT_THAT(taken, failsWith(ErrorKind::InvalidInput, damage.message)) << damage.to;
        EXPECT_TRUE(*holdsNoRecords(other())) << damage.to;
    }
}

TEST_F(LibraryFileTest, RefusesANewerVersion) {
    EXPECT_THAT(read("{\"pantile_library\":3,"), failsWith(ErrorKind::Unsupported, "version 3"));
}

/// However much of it is there: refused, and nothing taken.
TEST_F(LibraryFileTest, RefusesEveryTruncation) {
    fill();
    const std::string text = written(library());
    for (std::size_t length = 0; length + 3 < text.size(); length += 97) {
        EXPECT_FALSE(read(text.substr(0, length))) << length;
        EXPECT_TRUE(*holdsNoRecords(other())) << length;
    }
}

TEST_F(LibraryFileTest, RefusesTheSamePictureUnderTwoIds) {
    fill();
    std::string text = written(library());
    const std::size_t begin = text.find("{\"id\":1,\"palette\"");
    std::string picture = text.substr(begin, text.find('\n', begin) - begin);
    text.insert(begin, picture.replace(6, 1, "77") + "\n");
    EXPECT_THAT(read(text), failsWith(ErrorKind::InvalidInput, "the same as picture 77"));
}

TEST_F(LibraryFileTest, OfADamagedLibraryIsNotWritten) {
    fill();
    forge("UPDATE contents SET body = zeroblob(4) WHERE id = 1");
    EXPECT_THAT(writeLibraryFile(library(), [](std::string_view) { return core::Result<void>(); }),
                failsWith(ErrorKind::Corrupt, "grid 1"));
}

}  // namespace
}  // namespace pantile::catalogue
