#include "tasks/library_place.h"

#include <pwd.h>
#include <unistd.h>

#include <QStandardPaths>
#include <QString>

#include "board/profile.h"
#include "catalogue/actions.h"
#include "catalogue/boards.h"
#include "catalogue/canvases.h"
#include "tasks/seam_measure.h"
#include "tasks/text_folding.h"

namespace pantile::tasks {

using catalogue::Library;
using catalogue::OpenOptions;
using core::Result;

namespace {

// The shipped profiles of a new library, all or none of them.
Result<void> fillNewLibrary(Library& library) {
    const catalogue::NoAction asShipped(library);
    PANTILE_ASSIGN_OR_RETURN(catalogue::Transaction transaction, library.begin());
    for (const core::Canvas& canvas : board::shippedCanvases()) {
        PANTILE_RETURN_IF_ERROR(catalogue::addCanvas(library, canvas));
    }
    for (const core::Board& profile : board::shippedBoards()) {
        PANTILE_RETURN_IF_ERROR(catalogue::addBoard(library, profile));
    }
    return transaction.commit();
}

}  // namespace

std::string defaultLibraryPath() {
    const QString named = qEnvironmentVariable("PANTILE_LIBRARY");
    if (!named.isEmpty()) return named.toStdString();
    QString data = QStandardPaths::writableLocation(QStandardPaths::GenericDataLocation);
    const passwd* const account = getpwuid(getuid());
    const bool isPlaced =
        !qEnvironmentVariableIsEmpty("HOME") || !qEnvironmentVariableIsEmpty("XDG_DATA_HOME");
    if (!isPlaced && account != nullptr)
        data = QString::fromLocal8Bit(account->pw_dir) + QStringLiteral("/.local/share");
    return (data + QStringLiteral("/pantile/library.db")).toStdString();
}

OpenOptions openOptions(Purpose purpose) {
    OpenOptions options;
    options.folding = unicodeFolding();
    if (purpose == Purpose::Look) options.access = OpenOptions::Access::WhatTheFileAllows;
    return options;
}

Result<Library> openLibrary(const std::filesystem::path& path, Purpose purpose) {
    PANTILE_ASSIGN_OR_RETURN(Library library, Library::open(path, openOptions(purpose)));
    if (library.wasCreated()) PANTILE_RETURN_IF_ERROR(fillNewLibrary(library));
    if (!library.isReadOnly()) {
        const auto measured = measureMissingSeams(library);
        // While another program writes, they wait for the next time.
        const bool waits = !measured && measured.error().kind == core::ErrorKind::Busy;
        if (!waits) PANTILE_RETURN_IF_ERROR(measured);
    }
    return library;
}

}  // namespace pantile::tasks
