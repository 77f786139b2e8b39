#include "catalogue/salvage.h"

#include <algorithm>
#include <string>
#include <string_view>
#include <system_error>

#include <sqlite3.h>

#include "catalogue/actions.h"
#include "catalogue/boards.h"
#include "catalogue/canvases.h"
#include "catalogue/contents.h"
#include "catalogue/edit.h"
#include "catalogue/file_copy.h"
#include "catalogue/history.h"
#include "catalogue/loads.h"
#include "catalogue/migrations.h"
#include "catalogue/names.h"
#include "catalogue/palettes.h"
#include "catalogue/rescue_file.h"
#include "catalogue/rescue_rows.h"
#include "catalogue/revisions.h"
#include "catalogue/seal.h"
#include "catalogue/sql_functions.h"
#include "catalogue/statement.h"
#include "core/counted.h"
#include "core/text.h"
#include "core/texture.h"

namespace pantile::catalogue {
namespace {

namespace fs = std::filesystem;
using core::Result;
using core::TextureId;

std::string named(TextureId id) {
    return "texture " + std::to_string(id.value);
}

/// The steps that work on rows, before the new file is opened as a library.
class RowSalvage {
public:
    RowSalvage(Connection& connection, std::vector<Problem>& lost)
        : m_connection(connection), m_lost(lost) {}

    Result<void> run(const fs::path& copy) {
        PANTILE_RETURN_IF_ERROR(m_connection.setCheckpointOnClose(false));
        PANTILE_RETURN_IF_ERROR(bearDamagedSchema(true));
        PANTILE_RETURN_IF_ERROR(catalogue::run(m_connection, "ATTACH ?1 AS damaged",
                                               {std::string_view(copy.native())}));
        PANTILE_RETURN_IF_ERROR(checkIsOurs());
        const std::int64_t version = versionOfDamaged();
        const auto steps = embeddedMigrations().first(static_cast<std::size_t>(version));
        PANTILE_RETURN_IF_ERROR(migrate(m_connection, steps));
        PANTILE_RETURN_IF_ERROR(m_connection.execute("PRAGMA foreign_keys=OFF"));
        PANTILE_RETURN_IF_ERROR(copyRows());
        PANTILE_RETURN_IF_ERROR(m_connection.execute("DETACH damaged; PRAGMA synchronous=FULL"));
        PANTILE_RETURN_IF_ERROR(bearDamagedSchema(false));
        PANTILE_RETURN_IF_ERROR(dropWhatIsBroken());
        PANTILE_ASSIGN_OR_RETURN(const auto report, migrate(m_connection, embeddedMigrations()));
        std::error_code ignored;
        if (report.backup) fs::remove(*report.backup, ignored);
        return {};
    }

private:
    void lose(const std::string& where, const std::string& what) {
        m_lost.push_back({where, core::visibleText(what)});
    }

    /// Tables that SQLite still knows can then be read, although it does not know all.
    Result<void> bearDamagedSchema(bool on) {  // NOLINT: an on-off switch of SQLite
        sqlite3_db_config(m_connection.handle(), SQLITE_DBCONFIG_DEFENSIVE, on ? 0 : 1, nullptr);
        return m_connection.execute(on ? "PRAGMA writable_schema=ON"
                                       : "PRAGMA writable_schema=OFF");
    }

    /// What can be read and holds only other tables was never a library, whatever its header says.
    Result<void> checkIsOurs() {
        constexpr std::string_view kCountTables =
            "SELECT count(*) FROM damaged.sqlite_schema WHERE type = 'table'";
        const auto all = m_connection.number(kCountTables);
        const auto ours = m_connection.number(std::string(kCountTables) +
                                              " AND name IN ('contents', 'textures')");
        if (!all || !ours || *all == 0 || *ours > 0) return {};
        return core::Error{core::ErrorKind::InvalidInput, "this SQLite file is no Pantile library",
                           "choose another file with --library"};
    }

    /// Where it cannot be told, the newest.
    std::int64_t versionOfDamaged() {
        const auto version = m_connection.number("PRAGMA damaged.user_version");
        const std::int64_t newest = embeddedMigrations().back().version;
        return version && *version >= 1 && *version <= newest ? *version : newest;
    }

    Result<void> copyRows() {
        // Inside a transaction SQLite writes nothing more after it met damage, so each statement is
        // one of its own; the file is worth nothing before it is whole.
        PANTILE_RETURN_IF_ERROR(
            m_connection.execute("PRAGMA main.synchronous=OFF; PRAGMA main.journal_mode=MEMORY"));
        for (const RescuedTable& table : rescuedTables()) {
            PANTILE_RETURN_IF_ERROR(rescueRows(m_connection, table, m_lost));
        }
        keepIdsUsed();
        compareSeals();
        return {};
    }

    // So that ids of purged textures are not given again, where that can be read.
    void keepIdsUsed() {
        constexpr std::string_view kBelow = "1000000";
        (void)m_connection.execute(
            "UPDATE main.sqlite_sequence SET seq = d.seq FROM damaged.sqlite_sequence d WHERE "
            "d.name = sqlite_sequence.name AND d.seq BETWEEN sqlite_sequence.seq AND "
            "sqlite_sequence.seq + " +
            std::string(kBelow));
    }

    /// What was read without a complaint may still not be what was written.
    void compareSeals() {
        const auto changed =
            allTexts(m_connection,
                     "SELECT sealed.name FROM main.sealed LEFT JOIN damaged.seals s ON s.name = "
                     "sealed.name WHERE s.sum IS NOT sealed.sum AND sealed.name NOT IN "
                     "('actions', 'action_changes')");
        if (!changed) return;
        for (const std::string& table : *changed) {
            lose("table " + table, "not all in it is what was written");
        }
    }

    Result<void> dropWhatIsBroken() {
        PANTILE_ASSIGN_OR_RETURN(Transaction transaction, Transaction::begin(m_connection));
        PANTILE_RETURN_IF_ERROR(dropBrokenPictures());
        PANTILE_RETURN_IF_ERROR(dropBrokenTags());
        PANTILE_RETURN_IF_ERROR(dropWhatPointsNowhere());
        PANTILE_RETURN_IF_ERROR(listMissingLooks());
        return transaction.commit();
    }

    /// Looks are worked out anew when they are next needed; older versions know none.
    Result<void> listMissingLooks() {
        PANTILE_ASSIGN_OR_RETURN(
            const std::int64_t tables,
            m_connection.number("SELECT count(*) FROM sqlite_schema WHERE name = 'looks_missing'"));
        if (tables == 0) return {};
        PANTILE_RETURN_IF_ERROR(
            catalogue::run(m_connection, "INSERT INTO looks_missing SELECT id FROM contents"));
        return {};
    }

    Result<void> dropBrokenPictures() {
        PANTILE_ASSIGN_OR_RETURN(const auto ids,
                                 allNumbers(m_connection, "SELECT id FROM contents"));
        for (const std::int64_t id : ids) {
            const auto content = loadContent(m_connection, id);
            if (content && core::Texture::create(content->grid, content->palette)) continue;
            PANTILE_RETURN_IF_ERROR(
                catalogue::run(m_connection, "DELETE FROM contents WHERE id = ?1", {id}));
        }
        PANTILE_ASSIGN_OR_RETURN(const auto lostTextures,
                                 allNumbers(m_connection,
                                            "SELECT id FROM textures WHERE content_id NOT IN "
                                            "(SELECT id FROM contents)"));
        for (const std::int64_t id : lostTextures) {
            PANTILE_ASSIGN_OR_RETURN(
                const auto titles,
                allTexts(m_connection, "SELECT title FROM textures WHERE id = ?1", {id}));
            lose(named({id}), "its picture is lost, and so is '" + titles.front() + "'");
        }
        return {};
    }

    Result<void> dropBrokenTags() {
        PANTILE_ASSIGN_OR_RETURN(const auto names, allTexts(m_connection, "SELECT name FROM tags"));
        for (const std::string& name : names) {
            if (core::checkTag(name)) continue;
            lose("tag '" + core::visibleText(name) + "'", "it is damaged");
            PANTILE_RETURN_IF_ERROR(catalogue::run(m_connection, "DELETE FROM tags WHERE name = ?1",
                                                   {std::string_view(name)}));
        }
        return {};
    }

    /// Rows that point to what is lost go too, and those that point to these.
    Result<void> dropWhatPointsNowhere() {
        PANTILE_ASSIGN_OR_RETURN(
            const auto drops,
            allTexts(m_connection,
                     "SELECT 'DELETE FROM ' || t.name || ' WHERE ' || f.\"from\" || ' IS NOT NULL "
                     "AND ' || f.\"from\" || ' NOT IN (SELECT id FROM ' || f.\"table\" || ')' "
                     "FROM sqlite_schema t, pragma_foreign_key_list(t.name) f "
                     "WHERE t.type = 'table'"));
        for (bool isDone = false; !isDone;) {
            isDone = true;
            for (const std::string& drop : drops) {
                PANTILE_ASSIGN_OR_RETURN(const auto dropped, catalogue::run(m_connection, drop));
                if (dropped == 0) continue;
                isDone = false;
                noteDropped(drop, dropped);
            }
        }
        return {};
    }

    void noteDropped(const std::string& drop, std::int64_t rows) {
        constexpr std::string_view kVerb = "DELETE FROM ";
        const std::string table =
            drop.substr(kVerb.size(), drop.find(' ', kVerb.size()) - kVerb.size());
        const auto derived = derivedTables();
        if (std::find(derived.begin(), derived.end(), table) != derived.end()) return;
        lose("table " + table, core::counted(rows, "row", "rows") + " belonged to what is lost");
    }

    Connection& m_connection;
    std::vector<Problem>& m_lost;
};

/// The steps that put right what rows say together.
class LibrarySalvage {
public:
    LibrarySalvage(Library& library, std::vector<Problem>& lost)
        : m_library(library), m_connection(library.connection()), m_lost(lost) {}

    Result<std::int64_t> run() {
        const NoAction mending(m_library);
        PANTILE_ASSIGN_OR_RETURN(const auto ids,
                                 allNumbers(m_connection, "SELECT id FROM textures ORDER BY id"));
        for (const std::int64_t id : ids) {
            PANTILE_RETURN_IF_ERROR(mendHistory({id}));
            PANTILE_RETURN_IF_ERROR(mendText({id}));
        }
        PANTILE_RETURN_IF_ERROR(dropUnreadable(kLoads, readLoad, removeLoad));
        PANTILE_RETURN_IF_ERROR(dropUnreadable(kCanvases, readCanvas, removeCanvas));
        PANTILE_RETURN_IF_ERROR(dropUnreadable(kPaletteNames, readPalette, removePalette));
        PANTILE_ASSIGN_OR_RETURN(const CheckReport report, checkLibrary(m_library));
        m_lost.insert(m_lost.end(), report.problems.begin(), report.problems.end());
        return std::ssize(ids);
    }

private:
    Result<void> mendHistory(TextureId id) {
        PANTILE_ASSIGN_OR_RETURN(
            const auto latest,
            findNumber(m_connection, "SELECT revision FROM textures WHERE id = ?1", {id.value}));
        const auto revisions = loadRevisions(m_connection, id);
        bool isWhole = revisions && std::ssize(*revisions) == latest;
        for (std::size_t i = 0; isWhole && i < revisions->size(); ++i) {
            isWhole = (*revisions)[i].number == static_cast<int>(i) + 1;
        }
        if (isWhole) return {};
        m_lost.push_back({named(id), "its history is lost"});
        PANTILE_ASSIGN_OR_RETURN(Transaction transaction, m_library.begin());
        PANTILE_RETURN_IF_ERROR(catalogue::run(
            m_connection, "DELETE FROM revisions WHERE texture_id = ?1", {id.value}));
        PANTILE_RETURN_IF_ERROR(catalogue::run(
            m_connection,
            "INSERT INTO revisions (texture_id, number, at, kind) SELECT id, 1, added_at, ?2 FROM "
            "textures WHERE id = ?1",
            {id.value, static_cast<std::int64_t>(RevisionKind::Added)}));
        PANTILE_RETURN_IF_ERROR(catalogue::run(
            m_connection, "UPDATE textures SET revision = 1 WHERE id = ?1", {id.value}));
        return transaction.commit();
    }

    /// Damaged characters become blanks; that is a revision.
    Result<void> mendText(TextureId id) {
        PANTILE_ASSIGN_OR_RETURN(const TextureState state, loadState(m_connection, id));
        const core::TextureText& text = state.text;
        if (core::checkTextureText(text)) return {};
        m_lost.push_back({named(id), "some characters of its words are lost"});
        TextPatch patch;
        patch.title = core::cleanedText(text.title, {"title", core::kMaxTitleCharacters});
        patch.author = core::cleanedText(text.author, {"author", core::kMaxAuthorCharacters});
        patch.licence = core::cleanedText(text.licence, {"licence", core::kMaxLicenceCharacters});
        patch.source = core::cleanedText(text.source, {"source", core::kMaxSourceCharacters});
        patch.note = core::cleanedText(
            text.note, {"note", core::kMaxNoteCharacters, core::LineBreaks::Allowed});
        PANTILE_RETURN_IF_ERROR(setText(m_library, {&id, 1}, patch));
        return {};
    }

    template <typename Read, typename Remove>
    Result<void> dropUnreadable(const NamedTable& table, Read read, Remove remove) {
        PANTILE_ASSIGN_OR_RETURN(const auto names, allNames(m_connection, table));
        for (const std::string& name : names) {
            if (read(m_library, name)) continue;
            m_lost.push_back(
                {std::string(table.what) + " '" + core::visibleText(name) + "'", "it is lost"});
            PANTILE_RETURN_IF_ERROR(remove(m_library, name));
        }
        return {};
    }

    Library& m_library;
    Connection& m_connection;
    std::vector<Problem>& m_lost;
};

Result<void> salvageRows(const fs::path& damaged, const fs::path& part, const TextFolding& folding,
                         std::vector<Problem>& lost) {
    const TemporaryFile copy(fs::path(part.string() + ".damaged"));
    PANTILE_RETURN_IF_ERROR(copyToReadFrom(damaged, copy.path()));
    PANTILE_ASSIGN_OR_RETURN(
        const auto connection,
        Connection::open(part, FileMode::ReadWriteOrCreate, std::chrono::milliseconds(0)));
    PANTILE_RETURN_IF_ERROR(addSqlFunctions(*connection, folding));
    return RowSalvage(*connection, lost).run(copy.path());
}

}  // namespace

Result<SalvageReport> salvageLibrary(const fs::path& damaged, const fs::path& fresh,
                                     const OpenOptions& options) {
    PANTILE_RETURN_IF_ERROR(checkIsFree(fresh));
    SalvageReport report;
    const TemporaryFile part(fs::path(fresh.string() + ".part"));
    PANTILE_RETURN_IF_ERROR(salvageRows(damaged, part.path(), options.folding, report.lost));
    {
        PANTILE_ASSIGN_OR_RETURN(Library library, Library::open(part.path(), options));
        PANTILE_ASSIGN_OR_RETURN(report.textures, LibrarySalvage(library, report.lost).run());
    }
    PANTILE_RETURN_IF_ERROR(moveToNewName(part.path(), fresh));
    return report;
}

}  // namespace pantile::catalogue
