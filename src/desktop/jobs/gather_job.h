#pragma once

// What came by drop, paste or file dialog, and the work that adds it to the library.

#include <filesystem>
#include <optional>
#include <vector>

#include <QImage>
#include <QStringList>

#include "core/progress.h"
#include "core/result.h"
#include "tasks/gather.h"

class QMimeData;

namespace pantile::desktop {

struct GatherRequest {
    std::vector<tasks::GatherInput> inputs;
    QImage picture;  ///< One that comes from no file; null if there is none.
};

/// Takes files and folders, else a picture, else text. Nothing if there is none of them.
std::optional<GatherRequest> gatherRequest(const QMimeData& data);

/// Whether gatherRequest gives something, without copying it: for a drag that passes over.
bool canGather(const QMimeData& data);

GatherRequest gatherRequest(const QStringList& paths);

/// A text in which codes may stand.
GatherRequest gatherText(const QString& text);

/// Errors: as tasks::gather.
core::Result<tasks::GatherReport> runGather(const std::filesystem::path& libraryPath,
                                            GatherRequest request, const core::Progress& progress);

}  // namespace pantile::desktop
