#include "tasks/sample_library.h"

#include <QCoreApplication>
#include <QDir>
#include <QStandardPaths>

namespace pantile::tasks {

namespace {

const QString kSamplesBelowData = QStringLiteral("pantile/samples");

std::optional<std::filesystem::path> folderAt(const QString& path) {
    if (path.isEmpty() || !QDir(path).exists()) return std::nullopt;
    return std::filesystem::path(QDir::cleanPath(path).toStdString());
}

}  // namespace

std::optional<std::filesystem::path> samplesFolder() {
    const QString named = qEnvironmentVariable("PANTILE_SAMPLES");
    if (!named.isEmpty()) return folderAt(named);
    const QDir programs(QCoreApplication::applicationDirPath());
    const auto beside =
        folderAt(programs.filePath(QStringLiteral("../share/") + kSamplesBelowData));
    if (beside) return beside;
    return folderAt(QStandardPaths::locate(QStandardPaths::GenericDataLocation, kSamplesBelowData,
                                           QStandardPaths::LocateDirectory));
}

GatherOptions sampleOptions() {
    GatherOptions options;
    options.author = "Tidewrack demo";
    options.licence = "CC0-1.0";
    options.tags = {"sample"};
    return options;
}

}  // namespace pantile::tasks
