#pragma once

// What runs off the window's thread to write, verify and print loads, and to tell what was written.

#include <filesystem>
#include <string>

#include <QString>
#include <QStringList>

#include "core/progress.h"
#include "core/result.h"
#include "tasks/write_load.h"

namespace pantile::desktop {

struct WriteRequest {
    std::filesystem::path libraryPath;
    std::string load;
    std::filesystem::path folder;
    tasks::WriteOptions options;
};

/// What to say of it: one sentence, and a line for each file or slot.
struct WriteAnswer {
    bool isRight = true;
    QString words;
    QStringList lines;
};

/// Errors: as tasks::writeStoredLoad.
core::Result<WriteAnswer> writeLoad(const WriteRequest& request, const core::Progress& progress);

/// Errors: as tasks::verifyLoadFile.
core::Result<WriteAnswer> verifyLoad(const std::filesystem::path& path,
                                     const core::Progress& progress);

/// Errors: as tasks::printSlots.
core::Result<WriteAnswer> printSheet(const WriteRequest& request, const core::Progress& progress);

/// What was written when, for which board, and what lies in its slots: a line each, newest first,
/// at most kMostWritten.
core::Result<QStringList> readWritten(const std::filesystem::path& libraryPath);

inline constexpr std::size_t kMostWritten = 50;

}  // namespace pantile::desktop
