#include "catalogue/index_changes.h"

#include <vector>

#include <sqlite3.h>

#include "catalogue/fact_index.h"
#include "catalogue/word_index.h"

namespace pantile::catalogue {
namespace {

void outdateTexture(sqlite3_context* context, int /*count*/, sqlite3_value** values) {
    static_cast<IndexChanges*>(sqlite3_user_data(context))->note(sqlite3_value_int64(*values));
    sqlite3_result_null(context);
}

}  // namespace

void IndexChanges::takeBack() {
    m_unwritten.merge(m_written);
    m_written.clear();
}

void IndexChanges::clear() {
    m_unwritten.clear();
    m_written.clear();
}

core::Result<void> IndexChanges::write(Connection& connection) {
    if (m_unwritten.empty()) return {};
    const std::vector<std::int64_t> ids(m_unwritten.begin(), m_unwritten.end());
    PANTILE_RETURN_IF_ERROR(writeWords(connection, ids));
    PANTILE_RETURN_IF_ERROR(writeFacts(connection, ids));
    m_written.merge(m_unwritten);
    m_unwritten.clear();
    return {};
}

core::Result<void> addOutdateFunction(Connection& connection, IndexChanges& changes) {
    const int code = sqlite3_create_function_v2(connection.handle(), "outdate_texture", 1,
                                                SQLITE_UTF8 | SQLITE_INNOCUOUS, &changes,
                                                outdateTexture, nullptr, nullptr, nullptr);
    if (code != SQLITE_OK) return connection.error(code);
    return {};
}

}  // namespace pantile::catalogue
