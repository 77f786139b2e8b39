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
    QImage picture;       ///< One that comes from no file; null if there is none.
    bool isLink = false;  ///< Nothing but the address of something elsewhere; we fetch nothing.
    tasks::GatherOptions options;
};

/// Takes files and folders, else a picture, be it in the text of a web page, else text. Nothing if
/// there is none of them.
std::optional<GatherRequest> gatherRequest(const QMimeData& data);

/// Whether gatherRequest gives something, without copying it: for a drag that passes over.
bool canGather(const QMimeData& data);

GatherRequest gatherRequest(const QStringList& paths);

/// A text in which codes may stand.
GatherRequest gatherText(const QString& text);

/// The picture as the bytes of a file with a name. Errors: Internal.
core::Result<tasks::GatherInput> pictureInput(const QImage& picture);

/// Errors: as tasks::gather.
core::Result<tasks::GatherReport> runGather(const std::filesystem::path& libraryPath,
                                            GatherRequest request, const core::Progress& progress);

}  // namespace pantile::desktop
