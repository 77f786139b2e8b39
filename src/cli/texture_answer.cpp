#include "cli/texture_answer.h"

#include <ostream>

namespace pantile::cli {

void printRepairs(std::ostream& out, const std::vector<std::string>& repairs) {
    for (const std::string& repair : repairs) out << "  put right: " << repair << '\n';
}

Table textureTable(std::span<const catalogue::TextureRow> rows) {
    Table table({{"id", Align::Right},
                 {"title"},
                 {"cells", Align::Right},
                 {"colours", Align::Right},
                 {"drawing", Align::Right},
                 {"bytes", Align::Right},
                 {"tags"}});
    for (const catalogue::TextureRow& row : rows) {
        std::string tags;
        for (const std::string& tag : row.tags) tags += (tags.empty() ? "" : " ") + tag;
        table.addRow({std::to_string(row.id.value), row.title.empty() ? "(no title)" : row.title,
                      std::to_string(row.size.width) + "x" + std::to_string(row.size.height),
                      std::to_string(row.colours),
                      row.estimate ? spokenTime(row.estimate->drawMs) : "-",
                      row.estimate ? std::to_string(row.estimate->loadBytes) : "-", tags});
    }
    return table;
}

}  // namespace pantile::cli
