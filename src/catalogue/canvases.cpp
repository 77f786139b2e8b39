#include "catalogue/canvases.h"

#include "catalogue/actions.h"
#include "catalogue/contents.h"
#include "catalogue/names.h"
#include "catalogue/sqlite_error.h"
#include "catalogue/statement.h"
#include "core/text.h"

namespace pantile::catalogue {
namespace {

using core::Canvas;
using core::Result;

/// False if what stands in the columns from `first` on is no choice that there is.
bool readRules(Statement& row, int first, core::PenRules& rules) {
    const int turns = row.smallInteger(first);
    const int covers = row.smallInteger(first + 1);
    const int leaving = row.smallInteger(first + 2);
    const auto isFlag = [](int value) { return value == 0 || value == 1; };
    if (!isFlag(turns) || !isFlag(covers) || !isFlag(leaving)) return false;
    rules = {turns == 1, covers == 1, static_cast<core::PenLeaving>(leaving)};
    return true;
}

/// False if one of the two columns alone is filled.
bool readFillButton(Statement& row, int first, core::CanvasGeometry& geometry) {
    if (row.isNull(first) != row.isNull(first + 1)) return false;
    if (row.isNull(first)) return true;
    geometry.fillButton = core::Point{row.smallInteger(first), row.smallInteger(first + 1)};
    return true;
}

Result<Canvas> loadCanvas(Connection& connection, std::int64_t id) {
    PANTILE_ASSIGN_OR_RETURN(
        Statement row,
        Statement::prepare(connection,
                           "SELECT name, width, height, palette_id, free_colours, pen_model, "
                           "grid_x, grid_y, cell_pitch, swatch_x, swatch_y, swatch_pitch, "
                           "swatches_per_column, pen_turns, pen_covers, pen_leaving, fill_x, "
                           "fill_y FROM canvases WHERE id = ?1",
                           {id}));
    PANTILE_ASSIGN_OR_RETURN(const bool found, row.step());
    if (!found) return corruptError("a canvas");
    Canvas canvas;
    canvas.name = row.text(0);
    canvas.size = {row.smallInteger(1), row.smallInteger(2)};
    const auto paletteId = row.integerOrNull(3);
    canvas.freeColours = row.smallInteger(4);
    const int penModel = row.smallInteger(5);
    canvas.geometry.gridCentre = {row.smallInteger(6), row.smallInteger(7)};
    canvas.geometry.cellPitch = row.smallInteger(8);
    canvas.geometry.swatchCentre = {row.smallInteger(9), row.smallInteger(10)};
    canvas.geometry.swatchPitch = row.smallInteger(11);
    canvas.geometry.swatchesPerColumn = row.smallInteger(12);
    const bool rulesKnown = readRules(row, 13, canvas.rules);
    const bool fillKnown = readFillButton(row, 16, canvas.geometry);
    PANTILE_RETURN_IF_ERROR(row.columnCheck());
    if (paletteId) {
        PANTILE_ASSIGN_OR_RETURN(canvas.palette, loadPalette(connection, *paletteId));
    }
    const bool isKnownPen = penModel >= 0 && penModel <= static_cast<int>(core::PenModel::Sampled);
    canvas.penModel = static_cast<core::PenModel>(isKnownPen ? penModel : 0);
    if (!isKnownPen || !rulesKnown || !fillKnown || !core::checkCanvas(canvas)) {
        return corruptError("the canvas '" + core::excerpt(canvas.name) + "'");
    }
    return canvas;
}

Result<void> storeCanvas(Connection& connection, const Canvas& canvas) {
    std::optional<std::int64_t> paletteId;
    if (canvas.palette) {
        PANTILE_ASSIGN_OR_RETURN(paletteId, storePalette(connection, *canvas.palette));
    }
    const core::CanvasGeometry& g = canvas.geometry;
    std::optional<std::int64_t> fillX;
    std::optional<std::int64_t> fillY;
    if (g.fillButton) {
        fillX = g.fillButton->x;
        fillY = g.fillButton->y;
    }
    PANTILE_RETURN_IF_ERROR(run(
        connection,
        "INSERT INTO canvases (name, width, height, palette_id, free_colours, pen_model, "
        "grid_x, grid_y, cell_pitch, swatch_x, swatch_y, swatch_pitch, swatches_per_column, "
        "pen_turns, pen_covers, pen_leaving, fill_x, fill_y) "
        "VALUES (?1, ?2, ?3, ?4, ?5, ?6, ?7, ?8, ?9, ?10, ?11, ?12, ?13, ?14, ?15, ?16, ?17, ?18) "
        "ON CONFLICT (name) DO UPDATE SET name = ?1, width = ?2, height = ?3, "
        "palette_id = ?4, free_colours = ?5, pen_model = ?6, grid_x = ?7, grid_y = ?8, "
        "cell_pitch = ?9, swatch_x = ?10, swatch_y = ?11, swatch_pitch = ?12, "
        "swatches_per_column = ?13, pen_turns = ?14, pen_covers = ?15, pen_leaving = ?16, "
        "fill_x = ?17, fill_y = ?18",
        {canvas.name, canvas.size.width, canvas.size.height, orNull(paletteId), canvas.freeColours,
         static_cast<std::int64_t>(canvas.penModel), g.gridCentre.x, g.gridCentre.y, g.cellPitch,
         g.swatchCentre.x, g.swatchCentre.y, g.swatchPitch, g.swatchesPerColumn,
         canvas.rules.turns ? 1 : 0, canvas.rules.covers ? 1 : 0,
         static_cast<std::int64_t>(canvas.rules.leaving), orNull(fillX), orNull(fillY)}));
    return dropUnusedPalettes(connection);
}

}  // namespace

Result<std::vector<Canvas>> listCanvases(const Library& library) {
    Connection& connection = library.connection();
    PANTILE_ASSIGN_OR_RETURN(const Transaction moment, Transaction::beginReading(connection));
    PANTILE_ASSIGN_OR_RETURN(
        const auto ids,
        allNumbers(connection, "SELECT id FROM canvases ORDER BY name COLLATE NOCASE"));
    std::vector<Canvas> canvases;
    for (const std::int64_t id : ids) {
        PANTILE_ASSIGN_OR_RETURN(Canvas canvas, loadCanvas(connection, id));
        canvases.push_back(std::move(canvas));
    }
    return canvases;
}

Result<Canvas> readCanvas(const Library& library, std::string_view name) {
    Connection& connection = library.connection();
    PANTILE_ASSIGN_OR_RETURN(const Transaction moment, Transaction::beginReading(connection));
    PANTILE_ASSIGN_OR_RETURN(const std::int64_t id, idOfName(connection, kCanvases, name));
    return loadCanvas(connection, id);
}

Result<void> addCanvas(Library& library, const Canvas& canvas) {
    Connection& connection = library.connection();
    PANTILE_RETURN_IF_ERROR(core::checkCanvas(canvas));
    PANTILE_ASSIGN_OR_RETURN(Transaction transaction, library.begin());
    nameAction(library, "Add canvas " + nameInWords(canvas.name));
    PANTILE_RETURN_IF_ERROR(checkNewName(connection, kCanvases, canvas.name));
    PANTILE_RETURN_IF_ERROR(storeCanvas(connection, canvas));
    return transaction.commit();
}

Result<void> setCanvas(Library& library, const Canvas& canvas) {
    Connection& connection = library.connection();
    PANTILE_RETURN_IF_ERROR(core::checkCanvas(canvas));
    PANTILE_ASSIGN_OR_RETURN(Transaction transaction, library.begin());
    nameAction(library, "Change canvas " + nameInWords(canvas.name));
    PANTILE_RETURN_IF_ERROR(idOfName(connection, kCanvases, canvas.name));
    PANTILE_RETURN_IF_ERROR(storeCanvas(connection, canvas));
    return transaction.commit();
}

Result<void> renameCanvas(Library& library, std::string_view name, std::string_view newName) {
    PANTILE_ASSIGN_OR_RETURN(Transaction transaction, library.begin());
    nameAction(library, "Rename canvas " + nameInWords(name) + " to " + nameInWords(newName));
    PANTILE_RETURN_IF_ERROR(renameIn(library.connection(), kCanvases, name, newName));
    return transaction.commit();
}

Result<void> removeCanvas(Library& library, std::string_view name) {
    Connection& connection = library.connection();
    PANTILE_ASSIGN_OR_RETURN(Transaction transaction, library.begin());
    nameAction(library, "Remove canvas " + nameInWords(name));
    PANTILE_ASSIGN_OR_RETURN(const std::int64_t id, idOfName(connection, kCanvases, name));
    PANTILE_ASSIGN_OR_RETURN(const auto loads,
                             allTexts(connection,
                                      "SELECT name FROM loads JOIN load_canvases ON load_id = id "
                                      "WHERE canvas_id = ?1 ORDER BY name",
                                      {id}));
    if (!loads.empty()) {
        return core::Error{core::ErrorKind::InvalidInput,
                           "the load '" + core::excerpt(loads.front()) + "' is for the canvas '" +
                               core::excerpt(name) + "'",
                           "remove the load first"};
    }
    PANTILE_RETURN_IF_ERROR(run(connection, "DELETE FROM canvases WHERE id = ?1", {id}));
    PANTILE_RETURN_IF_ERROR(dropUnusedPalettes(connection));
    return transaction.commit();
}

}  // namespace pantile::catalogue
