#include "tasks/files.h"

#include <QFile>
#include <QSaveFile>
#include <QString>

#include "catalogue/open_files.h"
#include "core/text.h"
#include "tasks/bytes.h"

namespace pantile::tasks {

using core::Error;
using core::ErrorKind;
using core::Result;

namespace {

/// Errors: InvalidInput for a path that is no UTF-8 text, or holds a NUL, which Qt cannot open.
Result<QString> qtPath(const std::filesystem::path& path) {
    const std::string text = path.string();
    if (core::isValidUtf8(text) && text.find('\0') == std::string::npos)
        return QString::fromStdString(text);
    return Error{ErrorKind::InvalidInput,
                 "the name '" + core::visibleText(text) + "' is not UTF-8 text",
                 "give the file or the folder another name"};
}

Error unreadable(const std::filesystem::path& path, const QFile& file) {
    return {ErrorKind::Io, path.string() + " cannot be read: " + file.errorString().toStdString(),
            "look at the rights of the file and of its folder"};
}

// What is wrong with the place of a file that cannot be made there.
Error unwritable(const std::filesystem::path& path, const QSaveFile& file) {
    const std::filesystem::path folder = path.parent_path();
    std::error_code problem;
    if (!folder.empty() && !std::filesystem::exists(folder, problem)) {
        return {ErrorKind::NotFound, "there is no folder " + folder.string(),
                "make it, or choose another place"};
    }
    return {ErrorKind::Io,
            path.string() + " cannot be written: " + file.errorString().toStdString(),
            "look at the folder's rights and at the room left on the disk"};
}

Error unwritten(const std::filesystem::path& path, const QSaveFile& file) {
    return {ErrorKind::Io, path.string() + " was not written: " + file.errorString().toStdString(),
            "look at the room left on the disk"};
}

/// Errors: InvalidInput for a file of a library that is open here.
Result<void> checkIsNoLibrary(const std::filesystem::path& path) {
    if (!catalogue::isPartOfAnOpenLibrary(path)) return {};
    return Error{ErrorKind::InvalidInput, path.string() + " belongs to the library that is open",
                 "give another file"};
}

}  // namespace

Result<void> checkFree(const std::vector<std::filesystem::path>& files, IfExists ifExists) {
    if (ifExists == IfExists::Replace) return {};
    for (const std::filesystem::path& file : files) {
        std::error_code problem;
        if (std::filesystem::exists(std::filesystem::symlink_status(file, problem))) {
            return Error{ErrorKind::AlreadyExists, file.string() + " is there already",
                         "choose another name or folder, or say --replace"};
        }
    }
    return {};
}

Result<void> writeFile(const std::filesystem::path& path, IfExists ifExists,
                       const std::function<Result<void>(const PieceSink&)>& produce) {
    PANTILE_RETURN_IF_ERROR(checkFree({path}, ifExists));
    PANTILE_RETURN_IF_ERROR(checkIsNoLibrary(path));
    PANTILE_ASSIGN_OR_RETURN(const QString name, qtPath(path));
    QSaveFile file(name);
    if (!file.open(QIODevice::WriteOnly)) return unwritable(path, file);
    const PieceSink write = [&](std::string_view piece) -> Result<void> {
        const auto size = static_cast<qint64>(piece.size());
        if (file.write(piece.data(), size) == size) return {};
        return unwritten(path, file);
    };
    PANTILE_RETURN_IF_ERROR(produce(write));
    // commit() does not look at what becomes of the last that is still in memory.
    if (!file.flush() || !file.commit()) return unwritten(path, file);
    return {};
}

Result<void> writeFile(const std::filesystem::path& path, std::span<const std::uint8_t> bytes,
                       IfExists ifExists) {
    return writeFile(path, ifExists, [bytes](const PieceSink& write) {
        return write({reinterpret_cast<const char*>(bytes.data()), bytes.size()});
    });
}

Result<void> writeFile(const std::filesystem::path& path, std::string_view text,
                       IfExists ifExists) {
    return writeFile(path, asBytes(text), ifExists);
}

Result<std::string> readFile(const std::filesystem::path& path, std::uint64_t mostBytes) {
    PANTILE_ASSIGN_OR_RETURN(const QString name, qtPath(path));
    QFile file(name);
    if (!file.exists()) {
        return Error{ErrorKind::NotFound, path.string() + " is not there",
                     "check the spelling of its path"};
    }
    std::error_code problem;
    if (std::filesystem::is_directory(path, problem)) {
        return Error{ErrorKind::InvalidInput, path.string() + " is a folder", "give a file"};
    }
    PANTILE_RETURN_IF_ERROR(checkIsNoLibrary(path));
    if (!file.open(QIODevice::ReadOnly)) return unreadable(path, file);
    const Error tooLarge{ErrorKind::TooLarge,
                         path.string() + " has more than " + std::to_string(mostBytes) + " bytes",
                         "give a smaller file"};
    if (static_cast<std::uint64_t>(file.size()) > mostBytes) return tooLarge;
    // Devices and pipes tell no size, so what is read is bounded as well. Block by block: Qt takes
    // the whole of what it is asked for as memory before it reads.
    constexpr qint64 kBlockBytes = qint64{1} << 20U;
    std::string bytes;
    for (QByteArray block = file.read(kBlockBytes); !block.isEmpty();
         block = file.read(kBlockBytes)) {
        bytes.append(block.constData(), static_cast<std::size_t>(block.size()));
        if (bytes.size() > mostBytes) return tooLarge;
    }
    if (file.error() != QFile::NoError) return unreadable(path, file);
    return bytes;
}

Result<void> makeFolder(const std::filesystem::path& folder) {
    PANTILE_RETURN_IF_ERROR(qtPath(folder));
    std::error_code problem;
    std::filesystem::create_directories(folder, problem);
    if (!problem && std::filesystem::is_directory(folder, problem)) return {};
    // The folder itself or one above it may be a file.
    for (std::filesystem::path above = folder; !above.empty(); above = above.parent_path()) {
        const auto status = std::filesystem::status(above, problem);
        if (std::filesystem::exists(status) && !std::filesystem::is_directory(status)) {
            return Error{ErrorKind::Io, above.string() + " is a file, not a folder",
                         "name a folder; it is made if it is not there"};
        }
        if (above == above.parent_path()) break;
    }
    return Error{ErrorKind::Io, "the folder " + folder.string() + " cannot be made",
                 "choose a place where you may write"};
}

}  // namespace pantile::tasks
