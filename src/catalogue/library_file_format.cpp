#include "catalogue/library_file_format.h"

#include <array>

namespace pantile::catalogue {
namespace {

using enum ColumnKind;

constexpr bool kNull = true;

constexpr std::array kPaletteColumns = {
    FileColumn{"id", "id", Id},
    FileColumn{"colours", "colours", Colours},
    FileColumn{"transparent", "transparent", Number, kNull},
};

constexpr std::array kPictureColumns = {
    FileColumn{"id", "id", Id},
    FileColumn{"palette", "palette_id", Id},
    FileColumn{"seam", "seam", Number, kNull},
    FileColumn{"cells", "body", Cells},
};

constexpr std::array kTextureColumns = {
    FileColumn{"id", "id", Id},
    FileColumn{"picture", "content_id", Id},
    FileColumn{"title", "title", Text},
    FileColumn{"author", "author", Text},
    FileColumn{"licence", "licence", Text},
    FileColumn{"source", "source", Text},
    FileColumn{"note", "note", Text},
    FileColumn{"added", "added_at", Time},
    FileColumn{"changed", "changed_at", Time},
    FileColumn{"removed", "removed_at", Time, kNull},
    FileColumn{"revision", "revision", Id},
    FileColumn{"stars", "stars", Number},
};

constexpr std::array kRevisionColumns = {
    FileColumn{"texture", "texture_id", Id},
    FileColumn{"revision", "number", Id},
    FileColumn{"at", "at", Time},
    FileColumn{"what", "kind", Number},
    FileColumn{"title", "title", Text, kNull},
    FileColumn{"author", "author", Text, kNull},
    FileColumn{"licence", "licence", Text, kNull},
    FileColumn{"source", "source", Text, kNull},
    FileColumn{"note", "note", Text, kNull},
    FileColumn{"tags", "tags", Text, kNull},
    FileColumn{"was_removed", "was_removed", Number, kNull},
    FileColumn{"picture", "content_id", Id, kNull},
    FileColumn{"stars", "stars", Number, kNull},
};

constexpr std::array kEstimateColumns = {
    FileColumn{"texture", "texture_id", Id},
    FileColumn{"draw_ms", "draw_ms", Number},
    FileColumn{"load_bytes", "load_bytes", Number},
    FileColumn{"settings", "profile_key", Text},
};

constexpr std::array kTagColumns = {
    FileColumn{"id", "id", Id},
    FileColumn{"name", "name", Text},
};

constexpr std::array kTextureTagColumns = {
    FileColumn{"texture", "texture_id", Id},
    FileColumn{"tag", "tag_id", Id},
};

constexpr std::array kShelfColumns = {
    FileColumn{"id", "id", Id},
    FileColumn{"name", "name", Text},
    FileColumn{"position", "position", Number},
};

constexpr std::array kShelfTextureColumns = {
    FileColumn{"shelf", "shelf_id", Id},
    FileColumn{"texture", "texture_id", Id},
    FileColumn{"position", "position", Number},
};

constexpr std::array kPaletteNameColumns = {
    FileColumn{"name", "name", Text},
    FileColumn{"palette", "palette_id", Id},
};

constexpr std::array kCanvasColumns = {
    FileColumn{"id", "id", Id},
    FileColumn{"name", "name", Text},
    FileColumn{"width", "width"},
    FileColumn{"height", "height"},
    FileColumn{"palette", "palette_id", Id, kNull},
    FileColumn{"colours", "free_colours"},
    FileColumn{"pen", "pen_model"},
    FileColumn{"pen_turns", "pen_turns"},
    FileColumn{"pen_covers", "pen_covers"},
    FileColumn{"pen_leaving", "pen_leaving"},
    FileColumn{"grid_x", "grid_x"},
    FileColumn{"grid_y", "grid_y"},
    FileColumn{"cell_pitch", "cell_pitch"},
    FileColumn{"bar_x", "swatch_x"},
    FileColumn{"bar_y", "swatch_y"},
    FileColumn{"swatch_pitch", "swatch_pitch"},
    FileColumn{"swatches_per_column", "swatches_per_column"},
    FileColumn{"fill_x", "fill_x", Number, kNull},
    FileColumn{"fill_y", "fill_y", Number, kNull},
};

constexpr std::array kBoardColumns = {
    FileColumn{"id", "id", Id},
    FileColumn{"name", "name", Text},
    FileColumn{"description", "description", Text},
    FileColumn{"memory", "memory"},
    FileColumn{"slots", "slots"},
    FileColumn{"bytes", "bytes"},
    FileColumn{"report_ms", "report_interval_ms"},
    FileColumn{"step_up", "max_step_up"},
    FileColumn{"step_down", "max_step_down"},
    FileColumn{"press_ms", "press_ms"},
    FileColumn{"release_ms", "release_ms"},
    FileColumn{"settle_ms", "settle_ms"},
    FileColumn{"display_width", "display_width"},
    FileColumn{"display_height", "display_height"},
};

constexpr std::array kLoadColumns = {
    FileColumn{"id", "id", Id},
    FileColumn{"name", "name", Text},
    FileColumn{"board", "board_id", Id},
    FileColumn{"made", "made_at", Time},
};

constexpr std::array kLoadSlotColumns = {
    FileColumn{"load", "load_id", Id},
    FileColumn{"slot", "slot"},
    FileColumn{"texture", "texture_id", Id},
};

constexpr std::array kLoadWritingColumns = {
    FileColumn{"id", "id", Id},         FileColumn{"load", "load_id", Id},
    FileColumn{"at", "at", Time},       FileColumn{"into", "place", Text},
    FileColumn{"board", "board", Text},
};

constexpr std::array kLoadCanvasColumns = {
    FileColumn{"load", "load_id", Id},
    FileColumn{"canvas", "canvas_id", Id},
};

constexpr std::array kTagAliasColumns = {
    FileColumn{"word", "alias", Text},
    FileColumn{"tag", "tag", Text},
};

constexpr std::array kSearchColumns = {
    FileColumn{"id", "id", Id},         FileColumn{"name", "name", Text},
    FileColumn{"query", "query", Text}, FileColumn{"sort", "sort", Text},
    FileColumn{"position", "position"},
};

constexpr std::array<FileSection, 18> kSections = {{
    {SectionKind::Palettes, "palettes", "palettes", "id", kPaletteColumns},
    {SectionKind::Pictures, "pictures", "contents", "id", kPictureColumns},
    {SectionKind::Textures, "textures", "textures", "id", kTextureColumns},
    {SectionKind::Revisions, "revisions", "revisions", "texture_id, number", kRevisionColumns},
    {SectionKind::Estimates, "estimates", "estimates", "texture_id", kEstimateColumns},
    {SectionKind::Tags, "tags", "tags", "id", kTagColumns},
    {SectionKind::TextureTags, "texture_tags", "texture_tags", "texture_id, tag_id",
     kTextureTagColumns},
    {SectionKind::Shelves, "shelves", "shelves", "id", kShelfColumns},
    {SectionKind::ShelfTextures, "shelf_textures", "shelf_textures", "shelf_id, texture_id",
     kShelfTextureColumns},
    {SectionKind::PaletteNames, "palette_names", "palette_names", "name", kPaletteNameColumns},
    {SectionKind::Canvases, "canvases", "canvases", "id", kCanvasColumns},
    {SectionKind::Boards, "boards", "boards", "id", kBoardColumns},
    {SectionKind::Loads, "loads", "loads", "id", kLoadColumns},
    {SectionKind::LoadSlots, "load_slots", "load_slots", "load_id, slot", kLoadSlotColumns},
    {SectionKind::LoadWritings, "load_writings", "load_writings", "id", kLoadWritingColumns},
    {SectionKind::LoadCanvases, "load_canvases", "load_canvases", "load_id", kLoadCanvasColumns, 2},
    {SectionKind::TagAliases, "tag_aliases", "tag_aliases", "alias", kTagAliasColumns},
    {SectionKind::Searches, "searches", "searches", "id", kSearchColumns},
}};

}  // namespace

std::span<const FileSection> libraryFileSections() {
    return kSections;
}

}  // namespace pantile::catalogue
