#include "catalogue/integrity.h"

#include <algorithm>

#include "catalogue/actions.h"
#include "catalogue/boards.h"
#include "catalogue/canvases.h"
#include "catalogue/contents.h"
#include "catalogue/fact_index.h"
#include "catalogue/index_changes.h"
#include "catalogue/loads.h"
#include "catalogue/migrations.h"
#include "catalogue/names.h"
#include "catalogue/painted_colours.h"
#include "catalogue/palettes.h"
#include "catalogue/revisions.h"
#include "catalogue/seal.h"
#include "catalogue/statement.h"
#include "catalogue/word_index.h"
#include "core/text.h"

namespace pantile::catalogue {
namespace {

using core::Error;
using core::ErrorKind;
using core::Result;
using core::TextureId;

class Check {
public:
    Check(const Library& library, const core::Progress& progress)
        : m_library(library), m_connection(library.connection()), m_progress(progress) {}

    Result<CheckReport> run() {
        PANTILE_RETURN_IF_ERROR(m_connection.indexChanges().write(m_connection));
        PANTILE_ASSIGN_OR_RETURN(const Transaction moment, Transaction::beginReading(m_connection));
        using Part = Result<void> (Check::*)();
        for (const Part part :
             {&Check::checkFile, &Check::checkReferences, &Check::checkTables,
              &Check::checkPalettes, &Check::checkContents, &Check::checkTextures,
              &Check::checkFacts, &Check::checkWords, &Check::checkLooks, &Check::checkNamed,
              &Check::checkUndo, &Check::checkSeals, &Check::checkNamesInIndexes}) {
            PANTILE_RETURN_IF_ERROR(note("library", (this->*part)()));
        }
        m_report.ok = m_report.problems.empty();
        return std::move(m_report);
    }

private:
    // The same damage may stand in the way of several parts.
    void add(const std::string& where, const std::string& what) {
        const Problem problem{where, core::visibleText(what)};
        auto& problems = m_report.problems;
        if (std::find(problems.begin(), problems.end(), problem) == problems.end())
            problems.push_back(problem);
    }

    /// Damage becomes a problem of the report; what has nothing to do with it stays an error.
    template <typename T>
    Result<void> note(const std::string& where, const Result<T>& result) {
        if (result) return {};
        const Error& error = result.error();
        const bool passesOn = error.kind == ErrorKind::Busy || error.kind == ErrorKind::Cancelled ||
                              error.kind == ErrorKind::Io;
        if (passesOn) return error;
        add(where, error.message);
        return {};
    }

    Result<void> checkFile() {
        PANTILE_ASSIGN_OR_RETURN(const auto lines,
                                 allTexts(m_connection, "PRAGMA integrity_check"));
        for (const std::string& line : lines) {
            if (line != "ok") add("file", line);
        }
        return {};
    }

    Result<void> checkReferences() {
        PANTILE_ASSIGN_OR_RETURN(
            const auto lines,
            allTexts(m_connection,
                     "SELECT \"table\" || ' row ' || ifnull(rowid, '?') || ' points to a missing ' "
                     "|| parent FROM pragma_foreign_key_check"));
        for (const std::string& line : lines) add("file", line);
        return {};
    }

    // A trigger or another constraint would make a forged library behave otherwise.
    Result<void> checkTables() {
        constexpr std::string_view kTables =
            "SELECT type || ' ' || name || ': ' || ifnull(sql, '') FROM sqlite_schema "
            "WHERE name NOT LIKE 'sqlite_stat%' ORDER BY 1";
        PANTILE_ASSIGN_OR_RETURN(const auto fresh, Connection::inMemory());
        PANTILE_RETURN_IF_ERROR(migrate(*fresh, embeddedMigrations()));
        PANTILE_ASSIGN_OR_RETURN(const auto expected, allTexts(*fresh, kTables));
        PANTILE_ASSIGN_OR_RETURN(const auto found, allTexts(m_connection, kTables));
        if (expected != found) add("file", "the tables are not those of this version");
        return {};
    }

    /// Calls `one` with every id that `sql` gives.
    template <typename One>
    Result<void> forEachId(std::string_view sql, std::string_view what, One one) {
        PANTILE_ASSIGN_OR_RETURN(const auto ids, allNumbers(m_connection, sql));
        const auto total = static_cast<std::int64_t>(ids.size());
        std::int64_t done = 0;
        for (const std::int64_t id : ids) {
            if (m_progress.stopRequested()) {
                return Error{ErrorKind::Cancelled, "the check was stopped", ""};
            }
            m_progress.tell(done++, total, what);
            PANTILE_RETURN_IF_ERROR(one(id));
        }
        return {};
    }

    Result<void> checkPalettes() {
        return forEachId("SELECT id FROM palettes ORDER BY id", "palettes", [&](std::int64_t id) {
            return note("palette " + std::to_string(id), loadPalette(m_connection, id));
        });
    }

    // Where a texture has it, the texture is named; else it is part of a history.
    Result<std::string> ownerOf(std::int64_t contentId) {
        PANTILE_ASSIGN_OR_RETURN(
            const auto texture,
            findNumber(m_connection, "SELECT id FROM textures WHERE content_id = ?1", {contentId}));
        if (texture) return "texture " + std::to_string(*texture);
        return "earlier picture " + std::to_string(contentId);
    }

    Result<void> checkContents() {
        return forEachId("SELECT id FROM contents ORDER BY id", "pictures",
                         [&](std::int64_t id) { return checkContent(id); });
    }

    Result<void> checkContent(std::int64_t id) {
        PANTILE_ASSIGN_OR_RETURN(const std::string where, ownerOf(id));
        const Result<Content> content = loadContent(m_connection, id);
        if (!content) return note(where, content);
        const auto texture = core::Texture::create(content->grid, content->palette);
        PANTILE_ASSIGN_OR_RETURN(
            const auto colours,
            findNumber(m_connection, "SELECT colours FROM contents WHERE id = ?1", {id}));
        if (texture && colours != texture->coloursUsed()) {
            add(where, "its number of colours is wrong");
        }
        const PaintedColours painted = paintedColours(content->grid, content->palette);
        PANTILE_ASSIGN_OR_RETURN(
            const auto described,
            findNumber(m_connection, "SELECT used IS ?2 AND tone IS ?3 FROM contents WHERE id = ?1",
                       {id, painted.used, painted.tone}));
        if (described != 1) add(where, "the colours that it is found by are wrong");
        return note(where, texture);
    }

    Result<void> checkTextures() {
        return forEachId("SELECT id FROM textures ORDER BY id", "textures", [&](std::int64_t id) {
            ++m_report.textures;
            return note("texture " + std::to_string(id), checkTexture({id}));
        });
    }

    Result<void> checkTexture(TextureId id) {
        const std::string where = "texture " + std::to_string(id.value);
        PANTILE_ASSIGN_OR_RETURN(const TextureState state, loadState(m_connection, id));
        PANTILE_RETURN_IF_ERROR(note(where, core::checkTextureText(state.text)));
        PANTILE_ASSIGN_OR_RETURN(
            const auto latest,
            findNumber(m_connection, "SELECT revision FROM textures WHERE id = ?1", {id.value}));
        const auto revisions = loadRevisions(m_connection, id);
        if (!revisions) {
            add(where, "its history is missing or damaged");
            return {};
        }
        int expected = 0;
        for (const Revision& revision : *revisions) {
            if (revision.number != ++expected) {
                add(where, "its history lacks revision " + std::to_string(expected));
                return {};
            }
        }
        if (latest != expected) add(where, "its history does not end at its latest revision");
        return {};
    }

    Result<void> checkFacts() {
        PANTILE_ASSIGN_OR_RETURN(const bool isCurrent,
                                 isFoldedBy(m_connection, m_library.folding()));
        if (!isCurrent) return {};  // They are made anew once the library may be written.
        PANTILE_ASSIGN_OR_RETURN(const auto wrong, wrongFacts(m_connection));
        for (const std::int64_t id : wrong) {
            add("texture " + std::to_string(id), "what it is found by is not what it is");
        }
        return {};
    }

    Result<void> checkLooks() {
        PANTILE_ASSIGN_OR_RETURN(
            const auto wrong,
            m_connection.number("SELECT count(*) FROM contents c WHERE EXISTS (SELECT 1 FROM looks "
                                "WHERE content_id = c.id) = EXISTS (SELECT 1 FROM looks_missing "
                                "WHERE content_id = c.id)"));
        if (wrong > 0) add("file", "some pictures are never found as look-alikes");
        return {};
    }

    Result<void> checkWords() {
        PANTILE_ASSIGN_OR_RETURN(const bool isCurrent,
                                 isFoldedBy(m_connection, m_library.folding()));
        if (!isCurrent) return {};  // It is made anew once the library may be written.
        PANTILE_ASSIGN_OR_RETURN(const bool sound, indexIsSound(m_connection));
        if (!sound) add("file", "the index of words does not hold the words that there are");
        return {};
    }

    Result<void> checkUndo() { return note("actions", checkActions(m_connection)); }

    template <typename Read>
    Result<void> checkEach(const NamedTable& table, Read read) {
        PANTILE_ASSIGN_OR_RETURN(const auto names, allNames(m_connection, table));
        for (const std::string& name : names) {
            PANTILE_RETURN_IF_ERROR(
                note(std::string(table.what) + " '" + core::visibleText(name) + "'",
                     read(m_library, name)));
        }
        return {};
    }

    Result<void> checkNamed() {
        PANTILE_RETURN_IF_ERROR(checkEach(kCanvases, readCanvas));
        PANTILE_RETURN_IF_ERROR(checkEach(kBoards, readBoard));
        PANTILE_RETURN_IF_ERROR(checkEach(kLoads, readLoad));
        return checkEach(kPaletteNames, readPalette);
    }

    Result<void> checkSeals() {
        PANTILE_ASSIGN_OR_RETURN(const auto broken, brokenSeals(m_connection));
        for (const std::string& table : broken) {
            add("table " + table, "something in it is not what was written");
        }
        return {};
    }

    // Where letter case does not count, SQLite's check takes other letters in an index for the
    // same.
    Result<void> checkNamesInIndexes() {
        for (const NamedTable& table : {kShelves, kSearches, kCanvases, kBoards, kLoads}) {
            const std::string name(table.table);
            PANTILE_ASSIGN_OR_RETURN(
                const auto different,
                m_connection.number(
                    "SELECT count(*) FROM " + name +
                    " AS t NOT INDEXED WHERE NOT EXISTS (SELECT 1 FROM " + name +
                    " AS i INDEXED BY sqlite_autoindex_" + name +
                    "_1 WHERE i.name = t.name AND i.name = t.name COLLATE BINARY)"));
            if (different > 0) add("table " + name, "its index holds other names");
        }
        return {};
    }

    const Library& m_library;
    Connection& m_connection;
    const core::Progress& m_progress;
    CheckReport m_report;
};

}  // namespace

Result<CheckReport> checkLibrary(const Library& library, const core::Progress& progress) {
    return Check(library, progress).run();
}

}  // namespace pantile::catalogue
