#pragma once

// Textures as JSON, by the field names of docs/command-line.md.

#include <cstdint>
#include <string>

#include <QJsonArray>
#include <QJsonObject>

#include "catalogue/texture_row.h"
#include "core/grid.h"
#include "core/palette.h"

namespace pantile::tasks {

QJsonObject textureJson(const catalogue::TextureRow& row);

/// "palette" and "transparent" of the contract, put into `object`.
void addPaletteJson(QJsonObject& object, const core::Palette& palette);

/// The rows of indices, from the top.
QJsonArray cellsJson(const core::Grid& grid);

/// All of a texture: words, palette and cells.
QJsonObject textureJson(const catalogue::TextureRecord& record);

/// "2026-11-25T09:40:00Z".
std::string utcTime(std::int64_t unixSeconds);

}  // namespace pantile::tasks
