#include "catalogue/library_file_reader.h"

#include <string>
#include <vector>

#include "catalogue/actions.h"
#include "catalogue/contents.h"
#include "catalogue/integrity.h"
#include "catalogue/library_file_checks.h"
#include "catalogue/library_file_format.h"
#include "catalogue/library_file_record.h"
#include "catalogue/statement.h"
#include "core/text.h"
#include "core/texture.h"

namespace pantile::catalogue {
namespace {

using core::Error;
using core::ErrorKind;
using core::Result;

BoundValue boundOf(const JsonValue& value) {
    if (const auto* const number = std::get_if<std::int64_t>(&value)) return *number;
    if (const auto* const text = std::get_if<std::string>(&value)) return std::string_view(*text);
    return {};
}

/// "INSERT INTO shelves (id, name, position) VALUES (?1, ?2, ?3)"
std::string inserting(const FileSection& section) {
    std::string columns;
    std::string values;
    for (std::size_t i = 0; i < section.columns.size(); ++i) {
        columns += (i == 0 ? "" : ", ") + std::string(section.columns[i].column);
        values += (i == 0 ? "?" : ", ?") + std::to_string(i + 1);
    }
    // What older libraries worked out later is worked out at once.
    if (section.kind == SectionKind::Tags) {
        columns += ", folded";
        values += ", fold(?2)";
    }
    return "INSERT INTO " + std::string(section.table) + " (" + columns + ") VALUES (" + values +
           ")";
}

class FileIntake {
public:
    FileIntake(Library& library, ByteSource source, const core::Progress& progress)
        : m_library(library),
          m_connection(library.connection()),
          m_json(std::move(source)),
          m_progress(progress) {}

    Result<std::int64_t> run() {
        // Undoing begins anew behind it.
        const NoAction taken(m_library);
        PANTILE_ASSIGN_OR_RETURN(Transaction transaction, m_library.begin());
        PANTILE_RETURN_IF_ERROR(makeRoom());
        PANTILE_RETURN_IF_ERROR(forgetActions(m_library));
        PANTILE_RETURN_IF_ERROR(m_json.openObject());
        PANTILE_RETURN_IF_ERROR(readHead());
        for (const FileSection& section : libraryFileSections()) {
            if (section.since <= m_version) PANTILE_RETURN_IF_ERROR(readSection(section));
        }
        PANTILE_ASSIGN_OR_RETURN(const auto more, m_json.nextMember());
        if (more) return m_json.errorHere("'" + core::excerpt(*more) + "' is not known here");
        PANTILE_RETURN_IF_ERROR(m_json.end());
        PANTILE_RETURN_IF_ERROR(keepLastId());
        PANTILE_ASSIGN_OR_RETURN(const std::int64_t textures, checkAll());
        PANTILE_RETURN_IF_ERROR(transaction.commit());
        return textures;
    }

private:
    Result<void> makeRoom() {
        PANTILE_ASSIGN_OR_RETURN(const bool isEmpty, holdsNoRecords(m_library));
        if (!isEmpty) {
            return Error{ErrorKind::AlreadyExists, "the library holds something already",
                         "name a new library with --library"};
        }
        PANTILE_RETURN_IF_ERROR(m_connection.execute("DELETE FROM canvases; DELETE FROM boards"));
        return dropUnusedPalettes(m_connection);
    }

    Result<void> expectMember(std::string_view expected) {
        PANTILE_ASSIGN_OR_RETURN(const auto name, m_json.nextMember());
        if (name == expected) return {};
        const std::string found =
            name ? "'" + core::excerpt(*name) + "' stands" : std::string("nothing more stands");
        return m_json.errorHere(found + " where '" + std::string(expected) + "' has to stand",
                                "docs/library-file.md lists what stands in such a file, in order");
    }

    Result<void> readHead() {
        PANTILE_RETURN_IF_ERROR(expectMember(kLibraryFileMark));
        PANTILE_ASSIGN_OR_RETURN(m_version, m_json.number());
        if (m_version < 1) return m_json.errorHere("there is no such version of the format");
        if (m_version > kLibraryFileVersion) {
            return Error{ErrorKind::Unsupported,
                         "the file has version " + std::to_string(m_version) +
                             ", and this program knows versions up to " +
                             std::to_string(kLibraryFileVersion),
                         "use a newer version of this program"};
        }
        PANTILE_RETURN_IF_ERROR(expectMember(kLastTexture));
        PANTILE_ASSIGN_OR_RETURN(m_lastId, m_json.number());
        if (m_lastId < 0) return m_json.errorHere("no texture has an id below 1");
        return {};
    }

    Result<void> readSection(const FileSection& section) {
        PANTILE_RETURN_IF_ERROR(expectMember(section.name));
        PANTILE_RETURN_IF_ERROR(m_json.openList());
        const std::string insert = inserting(section);
        for (std::int64_t done = 0;; ++done) {
            PANTILE_ASSIGN_OR_RETURN(const bool more, m_json.nextElement());
            if (!more) return {};
            if (m_progress.stopRequested()) return core::stoppedError();
            m_progress.tell(done, 0, section.name);
            PANTILE_ASSIGN_OR_RETURN(const FileRecord record, FileRecord::read(m_json, section));
            Result<void> stored = checkRecord(m_library, record);
            if (stored) stored = store(record, insert);
            if (stored) stored = checkStoredRecord(m_library, record);
            if (!stored) return refusal(record, stored.error());
        }
    }

    /// What the library refuses is a fault of the file.
    static Error refusal(const FileRecord& record, Error error) {
        if (error.kind == ErrorKind::Internal || error.kind == ErrorKind::Corrupt) {
            error.kind = ErrorKind::InvalidInput;
            error.hint = "docs/library-file.md says what fits there";
        }
        return error.at("line " + std::to_string(record.line()) + ", " +
                        std::string(record.section().name));
    }

    Result<void> store(const FileRecord& record, const std::string& insert) {
        switch (record.section().kind) {
            case SectionKind::Palettes:
                return storePaletteOf(record);
            case SectionKind::Pictures:
                return storePictureOf(record);
            default:
                return insertRow(record, insert);
        }
    }

    Result<void> insertRow(const FileRecord& record, const std::string& insert) {
        PANTILE_ASSIGN_OR_RETURN(Statement statement, Statement::prepare(m_connection, insert));
        std::vector<BoundValue> values;
        for (std::size_t i = 0; i < record.section().columns.size(); ++i) {
            values.push_back(boundOf(record.value(i)));
        }
        PANTILE_RETURN_IF_ERROR(statement.bind(values));
        PANTILE_RETURN_IF_ERROR(statement.run());
        return {};
    }

    Result<void> storePaletteOf(const FileRecord& record) {
        std::optional<core::PaletteIndex> transparent;
        if (const auto index = record.numberOrNull("transparent")) {
            if (*index < 0 || *index > 255) {
                return Error{ErrorKind::InvalidInput,
                             std::to_string(*index) + " is no index of the palette", ""};
            }
            transparent = static_cast<core::PaletteIndex>(*index);
        }
        PANTILE_ASSIGN_OR_RETURN(const core::Palette palette,
                                 core::Palette::create(record.colours(), transparent));
        PANTILE_ASSIGN_OR_RETURN(const auto same, findPaletteId(m_connection, palette));
        if (same) return standsTwice("palette", *same);
        PANTILE_RETURN_IF_ERROR(insertPalette(m_connection, palette, record.number("id")));
        return {};
    }

    Result<void> storePictureOf(const FileRecord& record) {
        const std::int64_t paletteId = record.number("palette");
        PANTILE_ASSIGN_OR_RETURN(const core::Palette palette, loadPalette(m_connection, paletteId));
        PANTILE_ASSIGN_OR_RETURN(const core::Texture texture,
                                 core::Texture::create(record.grid(), palette));
        PANTILE_ASSIGN_OR_RETURN(const auto same,
                                 findContentId(m_connection, record.grid(), palette));
        if (same) return standsTwice("picture", *same);
        const std::int64_t id = record.number("id");
        PANTILE_RETURN_IF_ERROR(insertContent(m_connection, texture, paletteId, id));
        PANTILE_RETURN_IF_ERROR(catalogue::run(m_connection,
                                               "UPDATE contents SET seam = ?2 WHERE id = ?1",
                                               {id, orNull(record.numberOrNull("seam"))}));
        return {};
    }

    static Error standsTwice(std::string_view what, std::int64_t id) {
        return {ErrorKind::InvalidInput,
                "it is the same as " + std::string(what) + " " + std::to_string(id),
                "give each one once, and let others point to it"};
    }

    /// Ids of textures that were purged are not given again.
    Result<void> keepLastId() {
        PANTILE_ASSIGN_OR_RETURN(
            const std::int64_t known,
            m_connection.number(
                "SELECT ifnull(max(seq), 0) FROM sqlite_sequence WHERE name = 'textures'"));
        const std::int64_t last = std::max(known, m_lastId);
        PANTILE_RETURN_IF_ERROR(
            m_connection.execute("DELETE FROM sqlite_sequence WHERE name = 'textures'"));
        if (last == 0) return {};
        PANTILE_RETURN_IF_ERROR(catalogue::run(
            m_connection, "INSERT INTO sqlite_sequence (name, seq) VALUES ('textures', ?1)",
            {last}));
        return {};
    }

    Result<void> checkSlots() {
        PANTILE_ASSIGN_OR_RETURN(
            const auto broken,
            allTexts(m_connection,
                     "SELECT name FROM loads WHERE (SELECT count(*) FROM load_slots WHERE load_id "
                     "= id) <> (SELECT ifnull(max(slot) + 1, 0) FROM load_slots WHERE load_id = "
                     "id)"));
        if (broken.empty()) return {};
        return Error{ErrorKind::InvalidInput,
                     "the load '" + core::excerpt(broken.front()) + "' has a gap between its slots",
                     "number the slots from 0"};
    }

    /// What rows have to be together.
    Result<std::int64_t> checkAll() {
        PANTILE_RETURN_IF_ERROR(checkSlots());
        PANTILE_ASSIGN_OR_RETURN(const CheckReport report, checkLibrary(m_library, m_progress));
        if (report.ok) return report.textures;
        const Problem& problem = report.problems.front();
        return Error{ErrorKind::InvalidInput, problem.where + ": " + problem.what,
                     "its records do not fit one another; docs/library-file.md says how they do"};
    }

    Library& m_library;
    Connection& m_connection;
    JsonReader m_json;
    const core::Progress& m_progress;
    std::int64_t m_version = 0;  // Of the file.
    std::int64_t m_lastId = 0;
};

}  // namespace

Result<bool> holdsNoRecords(const Library& library) {
    for (const FileSection& section : libraryFileSections()) {
        const bool mayBeThere = section.kind == SectionKind::Palettes ||
                                section.kind == SectionKind::Canvases ||
                                section.kind == SectionKind::Boards;
        if (mayBeThere) continue;
        PANTILE_ASSIGN_OR_RETURN(const std::int64_t rows,
                                 library.connection().number("SELECT EXISTS (SELECT 1 FROM " +
                                                             std::string(section.table) + ")"));
        if (rows != 0) return false;
    }
    return true;
}

Result<std::int64_t> readLibraryFile(Library& library, ByteSource source,
                                     const core::Progress& progress) {
    return FileIntake(library, std::move(source), progress).run();
}

}  // namespace pantile::catalogue
