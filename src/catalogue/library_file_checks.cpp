#include "catalogue/library_file_checks.h"

#include "catalogue/boards.h"
#include "catalogue/canvases.h"
#include "catalogue/loads.h"
#include "catalogue/query_parser.h"
#include "catalogue/sort_key.h"
#include "catalogue/tag_list.h"
#include "catalogue/texture_row.h"
#include "core/canvas.h"
#include "core/range_check.h"
#include "core/text.h"
#include "core/texture.h"

namespace pantile::catalogue {
namespace {

using core::Result;

/// Of a texture or a revision; what is null counts as empty.
core::TextureText wordsOf(const FileRecord& record) {
    core::TextureText text;
    text.title = record.text("title");
    text.author = record.text("author");
    text.licence = record.text("licence");
    text.source = record.text("source");
    text.note = record.text("note");
    return text;
}

Result<void> checkTextureRecord(const FileRecord& record) {
    PANTILE_RETURN_IF_ERROR(core::checkRange("the stars", record.number("stars"), 0, kMostStars));
    return core::checkTextureText(wordsOf(record));
}

Result<void> checkRevisionRecord(const FileRecord& record) {
    core::TextureText text = wordsOf(record);
    text.tags = splitTags(record.text("tags"));
    PANTILE_RETURN_IF_ERROR(core::checkTextureText(text));
    PANTILE_RETURN_IF_ERROR(core::checkRange("the stars", record.number("stars"), 0, kMostStars));
    return core::checkRange("'was_removed'", record.number("was_removed"), 0, 1);
}

Result<void> checkEstimateRecord(const FileRecord& record) {
    PANTILE_RETURN_IF_ERROR(
        core::checkRange("'draw_ms'", record.number("draw_ms"), 0, kMaxJsonNumber));
    PANTILE_RETURN_IF_ERROR(
        core::checkRange("'load_bytes'", record.number("load_bytes"), 0, kMaxJsonNumber));
    return core::checkText(record.text("settings"), {"settings", kMaxProfileKeyCharacters});
}

Result<void> checkSearchRecord(const FileRecord& record) {
    PANTILE_RETURN_IF_ERROR(core::checkName("saved search name", record.text("name")));
    PANTILE_RETURN_IF_ERROR(parseQuery(record.text("query")));
    PANTILE_RETURN_IF_ERROR(parseSortKey(record.text("sort")));
    return {};
}

Result<void> checkAliasRecord(const Library& library, const FileRecord& record) {
    const std::string word = record.text("word");
    PANTILE_RETURN_IF_ERROR(core::checkTag(word));
    PANTILE_RETURN_IF_ERROR(core::checkTag(record.text("tag")));
    if (library.folding().fold(word) == word) return {};
    return core::Error{core::ErrorKind::InvalidInput, "'" + core::excerpt(word) + "' is not folded",
                       "write other words for tags in small letters, without accents"};
}

Result<void> checkWritingRecord(const FileRecord& record) {
    PANTILE_RETURN_IF_ERROR(core::checkText(record.text("into"), {"into", kMaxPlaceCharacters}));
    return core::checkName("board name", record.text("board"));
}

}  // namespace

Result<void> checkRecord(const Library& library, const FileRecord& record) {
    switch (record.section().kind) {
        case SectionKind::Textures:
            return checkTextureRecord(record);
        case SectionKind::Revisions:
            return checkRevisionRecord(record);
        case SectionKind::Estimates:
            return checkEstimateRecord(record);
        case SectionKind::Tags:
            return core::checkTag(record.text("name"));
        case SectionKind::Shelves:
            return core::checkName("shelf name", record.text("name"));
        case SectionKind::PaletteNames:
            return core::checkName("palette name", record.text("name"));
        case SectionKind::Canvases:
            return core::checkName("canvas name", record.text("name"));
        case SectionKind::Boards:
            return core::checkName("board name", record.text("name"));
        case SectionKind::Loads:
            return core::checkName("load name", record.text("name"));
        case SectionKind::LoadSlots:
            return core::checkRange("the slot", record.number("slot"), 0, core::kMaxBoardSlots - 1);
        case SectionKind::LoadWritings:
            return checkWritingRecord(record);
        case SectionKind::TagAliases:
            return checkAliasRecord(library, record);
        case SectionKind::Searches:
            return checkSearchRecord(record);
        case SectionKind::Palettes:
        case SectionKind::Pictures:
        case SectionKind::TextureTags:
        case SectionKind::ShelfTextures:
        case SectionKind::LoadCanvases:
            return {};
    }
    return {};
}

Result<void> checkStoredRecord(Library& library, const FileRecord& record) {
    if (record.section().kind == SectionKind::Canvases) {
        PANTILE_RETURN_IF_ERROR(readCanvas(library, record.text("name")));
    }
    if (record.section().kind == SectionKind::Boards) {
        PANTILE_RETURN_IF_ERROR(readBoard(library, record.text("name")));
    }
    return {};
}

}  // namespace pantile::catalogue
