#include "catalogue/library_file_writer.h"

#include <cstdint>
#include <string>

#include "catalogue/contents.h"
#include "catalogue/json_text.h"
#include "catalogue/library_file_format.h"
#include "catalogue/sqlite_error.h"
#include "catalogue/statement.h"
#include "core/text.h"

namespace pantile::catalogue {
namespace {

using core::Result;

constexpr std::size_t kPieceBytes = 65536;

void appendMember(std::string& out, std::string_view name) {
    appendJsonText(out, name);
    out += ':';
}

void appendColours(std::string& out, const core::Palette& palette) {
    out += '[';
    for (const core::Rgb8 colour : palette.colours()) {
        if (out.back() != '[') out += ',';
        appendJsonText(out, core::toHex(colour));
    }
    out += ']';
}

void appendCells(std::string& out, const core::Grid& grid) {
    out += '[';
    for (int y = 0; y < grid.height(); ++y) {
        out += y == 0 ? "[" : ",[";
        for (int x = 0; x < grid.width(); ++x) {
            if (x > 0) out += ',';
            out += std::to_string(grid.at(x, y));
        }
        out += ']';
    }
    out += ']';
}

class FileWriter {
public:
    FileWriter(const Library& library, const TextSink& sink, const core::Progress& progress)
        : m_connection(library.connection()), m_sink(sink), m_progress(progress) {}

    Result<void> run() {
        PANTILE_ASSIGN_OR_RETURN(const Transaction moment, Transaction::beginReading(m_connection));
        PANTILE_RETURN_IF_ERROR(countRecords());
        PANTILE_ASSIGN_OR_RETURN(
            const std::int64_t last,
            m_connection.number(
                "SELECT ifnull(max(seq), 0) FROM sqlite_sequence WHERE name = 'textures'"));
        m_out = "{\n";
        appendMember(m_out, kLibraryFileMark);
        m_out += std::to_string(kLibraryFileVersion) + ",\n";
        appendMember(m_out, kLastTexture);
        m_out += std::to_string(last);
        for (const FileSection& section : libraryFileSections()) {
            PANTILE_RETURN_IF_ERROR(writeSection(section));
        }
        m_out += "\n}\n";
        return m_sink(m_out);
    }

private:
    Result<void> countRecords() {
        for (const FileSection& section : libraryFileSections()) {
            PANTILE_ASSIGN_OR_RETURN(
                const std::int64_t count,
                m_connection.number("SELECT count(*) FROM " + std::string(section.table)));
            m_total += count;
        }
        return {};
    }

    static std::string selecting(const FileSection& section) {
        std::string sql;
        for (const FileColumn& column : section.columns) {
            sql += (sql.empty() ? "SELECT " : ", ") + std::string(column.column);
        }
        return sql + " FROM " + std::string(section.table) + " ORDER BY " +
               std::string(section.order);
    }

    Result<void> writeSection(const FileSection& section) {
        m_out += ",\n";
        appendMember(m_out, section.name);
        m_out += '[';
        PANTILE_ASSIGN_OR_RETURN(Statement row,
                                 Statement::prepare(m_connection, selecting(section)));
        for (bool isFirst = true;; isFirst = false) {
            PANTILE_ASSIGN_OR_RETURN(const bool more, row.step());
            if (!more) break;
            if (m_progress.stopRequested()) return core::stoppedError();
            m_progress.tell(m_done++, m_total, section.name);
            m_out += isFirst ? "\n{" : ",\n{";
            PANTILE_RETURN_IF_ERROR(writeRecord(section, row));
            m_out += '}';
            PANTILE_RETURN_IF_ERROR(handOver());
        }
        m_out += ']';
        return {};
    }

    Result<void> writeRecord(const FileSection& section, Statement& row) {
        for (std::size_t i = 0; i < section.columns.size(); ++i) {
            if (i > 0) m_out += ',';
            appendMember(m_out, section.columns[i].name);
            PANTILE_RETURN_IF_ERROR(writeValue(section, row, static_cast<int>(i)));
        }
        return row.columnCheck();
    }

    Result<void> writeValue(const FileSection& section, Statement& row, int i) {
        const FileColumn& column = section.columns[static_cast<std::size_t>(i)];
        if (column.mayBeNull && row.isNull(i)) {
            m_out += "null";
        } else if (column.kind == ColumnKind::Colours) {
            PANTILE_ASSIGN_OR_RETURN(const core::Palette palette,
                                     loadPalette(m_connection, row.integer(0)));
            appendColours(m_out, palette);
        } else if (column.kind == ColumnKind::Cells) {
            PANTILE_ASSIGN_OR_RETURN(const Content content,
                                     loadContent(m_connection, row.integer(0)));
            appendCells(m_out, content.grid);
        } else if (column.kind == ColumnKind::Text) {
            const std::string text = row.text(i);
            if (!core::isValidUtf8(text)) {
                return corruptError("a text of the table " + std::string(section.table));
            }
            appendJsonText(m_out, text);
        } else {
            m_out += std::to_string(row.integer(i));
        }
        return {};
    }

    Result<void> handOver() {
        if (m_out.size() < kPieceBytes) return {};
        PANTILE_RETURN_IF_ERROR(m_sink(m_out));
        m_out.clear();
        return {};
    }

    Connection& m_connection;
    const TextSink& m_sink;
    const core::Progress& m_progress;
    std::string m_out;
    std::int64_t m_done = 0;
    std::int64_t m_total = 0;
};

}  // namespace

Result<void> writeLibraryFile(const Library& library, const TextSink& sink,
                              const core::Progress& progress) {
    return FileWriter(library, sink, progress).run();
}

}  // namespace pantile::catalogue
