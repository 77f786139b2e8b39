#include "catalogue/contents.h"

#include <bit>
#include <string>
#include <vector>

#include "catalogue/painted_colours.h"
#include "catalogue/sqlite_error.h"
#include "catalogue/statement.h"
#include "codec/grid_form.h"
#include "core/texture.h"

namespace pantile::catalogue {
namespace {

using core::Error;
using core::Grid;
using core::Palette;
using core::Result;

std::vector<std::uint8_t> colourBytes(const Palette& palette) {
    std::vector<std::uint8_t> bytes;
    for (const core::Rgb8 colour : palette.colours()) {
        bytes.insert(bytes.end(), {colour.r, colour.g, colour.b});
    }
    return bytes;
}

std::optional<std::int64_t> storedTransparent(const Palette& palette) {
    if (!palette.transparent()) return std::nullopt;
    return *palette.transparent();
}

Error corruptPalette(std::int64_t id) {
    return corruptError("palette " + std::to_string(id) + " of the library");
}

Error corruptContent(std::int64_t id) {
    return corruptError("grid " + std::to_string(id) + " of the library");
}

Result<Palette> paletteFrom(const std::vector<std::uint8_t>& bytes,
                            std::optional<std::int64_t> transparent) {
    std::vector<core::Rgb8> colours;
    for (std::size_t i = 0; i + 2 < bytes.size(); i += 3) {
        colours.push_back({bytes[i], bytes[i + 1], bytes[i + 2]});
    }
    if (bytes.size() % 3 != 0 || (transparent && (*transparent < 0 || *transparent > 255))) {
        return corruptError("a palette");
    }
    std::optional<core::PaletteIndex> index;
    if (transparent) index = static_cast<core::PaletteIndex>(*transparent);
    return Palette::create(std::move(colours), index);
}

Result<Grid> unpacked(Statement& row, int methodColumn, core::Size size, int paletteSize) {
    const int method = row.smallInteger(methodColumn);
    const std::vector<std::uint8_t> body = row.blob(methodColumn + 1);
    PANTILE_RETURN_IF_ERROR(row.columnCheck());
    if (method < 0 || method > 255) return corruptError("the method of a grid");
    return codec::unpackGrid(static_cast<codec::Method>(method), body, size, paletteSize);
}

}  // namespace

std::int64_t storedFingerprint(core::Fingerprint fingerprint) {
    return std::bit_cast<std::int64_t>(fingerprint.value);
}

Result<std::optional<std::int64_t>> findPaletteId(Connection& connection, const Palette& palette) {
    return findNumber(connection,
                      "SELECT id FROM palettes WHERE fingerprint = ?1 AND colours = ?2 AND "
                      "transparent IS ?3",
                      {storedFingerprint(palette.fingerprint()), colourBytes(palette),
                       orNull(storedTransparent(palette))});
}

Result<std::int64_t> insertPalette(Connection& connection, const Palette& palette,
                                   std::optional<std::int64_t> id) {
    PANTILE_RETURN_IF_ERROR(run(connection,
                                "INSERT INTO palettes (id, fingerprint, colours, transparent) "
                                "VALUES (?1, ?2, ?3, ?4)",
                                {orNull(id), storedFingerprint(palette.fingerprint()),
                                 colourBytes(palette), orNull(storedTransparent(palette))}));
    return connection.lastInsertedId();
}

Result<std::int64_t> storePalette(Connection& connection, const Palette& palette) {
    PANTILE_ASSIGN_OR_RETURN(const auto known, findPaletteId(connection, palette));
    if (known) return *known;
    return insertPalette(connection, palette);
}

Result<Palette> loadPalette(Connection& connection, std::int64_t paletteId) {
    PANTILE_ASSIGN_OR_RETURN(
        Statement row,
        Statement::prepare(connection,
                           "SELECT fingerprint, colours, transparent FROM palettes WHERE id = ?1",
                           {paletteId}));
    PANTILE_ASSIGN_OR_RETURN(const bool found, row.step());
    if (!found) return corruptPalette(paletteId);
    const std::int64_t fingerprint = row.integer(0);
    Result<Palette> palette = paletteFrom(row.blob(1), row.integerOrNull(2));
    PANTILE_RETURN_IF_ERROR(row.columnCheck());
    if (!palette || storedFingerprint(palette->fingerprint()) != fingerprint) {
        return corruptPalette(paletteId);
    }
    return palette;
}

Result<std::optional<std::int64_t>> findContentId(Connection& connection, const Grid& grid,
                                                  const Palette& palette) {
    using Found = std::optional<std::int64_t>;
    PANTILE_ASSIGN_OR_RETURN(const auto paletteId, findPaletteId(connection, palette));
    if (!paletteId) return Found();
    PANTILE_ASSIGN_OR_RETURN(
        Statement row,
        // Left to itself, SQLite goes through all contents of a palette, for the order of their
        // ids.
        Statement::prepare(connection,
                           "SELECT id, method, body FROM contents INDEXED BY "
                           "contents_by_fingerprint WHERE fingerprint = ?1 AND palette_id = ?2 "
                           "AND width = ?3 AND height = ?4 ORDER BY id",
                           {storedFingerprint(core::contentFingerprint(grid, palette)), *paletteId,
                            grid.width(), grid.height()}));
    for (;;) {
        PANTILE_ASSIGN_OR_RETURN(const bool more, row.step());
        if (!more) return Found();
        const std::int64_t id = row.integer(0);
        // The cells are compared and not the bytes, which may be packed differently by another
        // version. One that is damaged is equal to nothing.
        const Result<Grid> stored = unpacked(row, 1, grid.size(), palette.size());
        if (stored && *stored == grid) return Found(id);
    }
}

Result<std::int64_t> insertContent(Connection& connection, const core::Texture& texture,
                                   std::int64_t paletteId, std::optional<std::int64_t> id) {
    const Grid& grid = texture.grid();
    const codec::GridForm form = codec::packGrid(grid, texture.palette().size());
    const PaintedColours painted = paintedColours(grid, texture.palette());
    PANTILE_RETURN_IF_ERROR(
        run(connection,
            "INSERT INTO contents (id, fingerprint, width, height, palette_id, colours, method, "
            "body, used, tone) VALUES (?1, ?2, ?3, ?4, ?5, ?6, ?7, ?8, ?9, ?10)",
            {orNull(id), storedFingerprint(texture.contentFingerprint()), grid.width(),
             grid.height(), paletteId, texture.coloursUsed(),
             static_cast<std::int64_t>(form.method), form.bytes, painted.used, painted.tone}));
    const std::int64_t inserted = connection.lastInsertedId();
    PANTILE_RETURN_IF_ERROR(run(connection, "INSERT INTO looks_missing VALUES (?1)", {inserted}));
    return inserted;
}

Result<std::int64_t> storeContent(Connection& connection, const Grid& grid,
                                  const Palette& palette) {
    PANTILE_ASSIGN_OR_RETURN(const auto known, findContentId(connection, grid, palette));
    if (known) return *known;
    PANTILE_ASSIGN_OR_RETURN(const core::Texture texture, core::Texture::create(grid, palette));
    PANTILE_ASSIGN_OR_RETURN(const std::int64_t paletteId, storePalette(connection, palette));
    return insertContent(connection, texture, paletteId);
}

Result<Content> loadContent(Connection& connection, std::int64_t contentId) {
    PANTILE_ASSIGN_OR_RETURN(
        Statement row,
        Statement::prepare(connection,
                           "SELECT fingerprint, width, height, palette_id, method, body "
                           "FROM contents WHERE id = ?1",
                           {contentId}));
    PANTILE_ASSIGN_OR_RETURN(const bool found, row.step());
    if (!found) return corruptContent(contentId);
    const std::int64_t fingerprint = row.integer(0);
    const core::Size size{row.smallInteger(1), row.smallInteger(2)};
    PANTILE_ASSIGN_OR_RETURN(Palette palette, loadPalette(connection, row.integer(3)));
    Result<Grid> grid = unpacked(row, 4, size, palette.size());
    if (!grid || storedFingerprint(core::contentFingerprint(*grid, palette)) != fingerprint) {
        return corruptContent(contentId);
    }
    return Content{*std::move(grid), std::move(palette)};
}

Result<void> describeContent(Connection& connection, std::int64_t contentId) {
    const Result<Content> content = loadContent(connection, contentId);
    if (!content && content.error().kind != core::ErrorKind::Corrupt) return content.error();
    const PaintedColours painted =
        content ? paintedColours(content->grid, content->palette) : PaintedColours{};
    PANTILE_RETURN_IF_ERROR(run(connection,
                                "UPDATE contents SET used = ?2, tone = ?3 WHERE id = ?1",
                                {contentId, painted.used, painted.tone}));
    return {};
}

Result<void> dropUnusedPalettes(Connection& connection) {
    PANTILE_RETURN_IF_ERROR(
        run(connection,
            "DELETE FROM palettes WHERE NOT EXISTS (SELECT 1 FROM contents WHERE palette_id = "
            "palettes.id) AND NOT EXISTS (SELECT 1 FROM canvases WHERE palette_id = palettes.id) "
            "AND NOT EXISTS (SELECT 1 FROM palette_names WHERE palette_id = palettes.id)"));
    return {};
}

Result<void> dropUnusedContents(Connection& connection) {
    PANTILE_RETURN_IF_ERROR(
        run(connection,
            "DELETE FROM contents WHERE NOT EXISTS (SELECT 1 FROM textures WHERE "
            "content_id = contents.id) AND NOT EXISTS (SELECT 1 FROM revisions WHERE "
            "content_id = contents.id)"));
    return dropUnusedPalettes(connection);
}

}  // namespace pantile::catalogue
