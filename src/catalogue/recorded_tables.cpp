#include "catalogue/recorded_tables.h"

#include <array>

namespace pantile::catalogue {
namespace {

constexpr std::array<RecordedTable, 17> kTables = {{
    {"palettes", 1, 4, "id, fingerprint, colours, transparent"},
    {"contents", 1, 7,
     "id, fingerprint, width, height, palette_id, colours, method, body, used, tone, "
     "seam"},
    {"textures", 1, 12,
     "id, content_id, title, author, licence, source, note, added_at, changed_at, "
     "removed_at, revision, stars"},
    {"revisions", 2, 13,
     "texture_id, number, at, kind, title, author, licence, source, note, tags, "
     "was_removed, content_id, stars"},
    {"tags", 1, 2, "id, name, folded"},
    {"texture_tags", 2, 2, "texture_id, tag_id"},
    {"shelves", 1, 3, "id, name, position"},
    {"shelf_textures", 2, 3, "shelf_id, texture_id, position"},
    {"palette_names", 1, 2, "name, palette_id"},
    {"canvases", 1, 19,
     "id, name, width, height, palette_id, free_colours, pen_model, grid_x, grid_y, "
     "cell_pitch, swatch_x, swatch_y, swatch_pitch, swatches_per_column, pen_turns, "
     "pen_covers, pen_leaving, fill_x, fill_y"},
    {"boards", 1, 14,
     "id, name, description, memory, slots, bytes, report_interval_ms, max_step_up, "
     "max_step_down, press_ms, release_ms, settle_ms, display_width, display_height"},
    {"loads", 1, 4, "id, name, board_id, made_at"},
    {"load_slots", 2, 3, "load_id, slot, texture_id"},
    {"load_writings", 1, 5, "id, load_id, at, place, board"},
    {"tag_aliases", 1, 2, "alias, tag"},
    {"searches", 1, 5, "id, name, query, sort, position"},
    {"load_canvases", 1, 2, "load_id, canvas_id"},
}};

}  // namespace

std::span<const RecordedTable> recordedTables() {
    return kTables;
}

std::optional<std::size_t> recordedTableNamed(std::string_view name) {
    for (std::size_t i = 0; i < kTables.size(); ++i) {
        if (kTables[i].name == name) return i;
    }
    return std::nullopt;
}

std::string_view columnName(const RecordedTable& table, std::size_t column) {
    constexpr std::string_view kBetween = ", ";
    std::string_view rest = table.names;
    for (; column > 0; --column) rest.remove_prefix(rest.find(kBetween) + kBetween.size());
    return rest.substr(0, rest.find(','));
}

}  // namespace pantile::catalogue
