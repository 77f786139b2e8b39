#include "catalogue/backup.h"

#include <string>
#include <system_error>

#include "catalogue/file_copy.h"
#include "catalogue/integrity.h"
#include "catalogue/open_files.h"
#include "core/counted.h"

namespace pantile::catalogue {
namespace {

namespace fs = std::filesystem;
using core::Error;
using core::ErrorKind;
using core::Result;

Result<void> renameFile(const fs::path& from, const fs::path& to) {
    std::error_code failure;
    fs::rename(from, to, failure);
    if (!failure) return {};
    return Error{ErrorKind::Io, to.string() + " cannot be written: " + failure.message(),
                 "check the path, and that you may write to its folder"};
}

Result<Library> openBackup(const fs::path& path, const TextFolding& folding) {
    OpenOptions options;
    options.folding = folding;
    options.create = OpenOptions::Create::Never;
    options.access = OpenOptions::Access::ReadOnly;
    auto backup = Library::open(path, options);
    if (!backup && backup.error().kind == ErrorKind::NotFound) {
        return Error{ErrorKind::NotFound, "there is no backup at " + path.string(),
                     "check the spelling of its path"};
    }
    if (!backup) return backup.error();
    PANTILE_ASSIGN_OR_RETURN(const CheckReport report, checkLibrary(*backup));
    if (report.ok) return backup;
    const Problem& first = report.problems.front();
    return Error{ErrorKind::Corrupt,
                 "the backup is damaged in " +
                     core::counted(std::ssize(report.problems), "place", "places") + ", first " +
                     first.where + ": " + first.what,
                 "use another backup"}
        .at(path.string());
}

/// Moves a file that cannot be opened, and its side files, out of the way.
Result<fs::path> moveAside(const fs::path& path) {
    fs::path kept = freeNameBeside(path, "before-restore");
    const fs::path log = path.string() + "-wal";
    std::error_code ignored;
    fs::remove(path.string() + "-shm", ignored);  // Made anew from the log.
    const bool holdsNothing = fs::file_size(log, ignored) == 0;
    if (holdsNothing) fs::remove(log, ignored);
    if (fs::exists(log)) PANTILE_RETURN_IF_ERROR(renameFile(log, kept.string() + "-wal"));
    PANTILE_RETURN_IF_ERROR(renameFile(path, kept));
    return kept;
}

/// Puts the backup in place of a library that opens, page by page in one transaction, so that other
/// programs see either the one or the other.
Result<fs::path> replaceContent(Library& present, Library& backup) {
    fs::path kept = freeNameBeside(present.path(), "before-restore");
    PANTILE_RETURN_IF_ERROR(copyToNewFile(present.connection(), kept));
    PANTILE_RETURN_IF_ERROR(copyDatabase(backup.connection(), present.connection()));
    return kept;
}

Result<fs::path> restoreOver(const fs::path& path, Library& backup, const OpenOptions& options) {
    OpenOptions never = options;
    never.create = OpenOptions::Create::Never;
    never.access = OpenOptions::Access::ReadWrite;
    PANTILE_ASSIGN_OR_RETURN(Library present, Library::open(path, never));
    return replaceContent(present, backup);
}

Result<fs::path> restoreInto(const fs::path& path, Library& backup, const OpenOptions& options) {
    Result<fs::path> kept = restoreOver(path, backup, options);
    if (kept) return kept;
    const ErrorKind kind = kept.error().kind;
    const bool isBeyondUse = kind == ErrorKind::Corrupt || kind == ErrorKind::InvalidInput;
    if (isBeyondUse && fs::is_regular_file(path)) {
        kept = moveAside(path);
    } else if (kind == ErrorKind::NotFound) {
        kept = fs::path();
    }
    PANTILE_RETURN_IF_ERROR(kept);
    PANTILE_RETURN_IF_ERROR(copyToNewFile(backup.connection(), path));
    return kept;
}

}  // namespace

Result<void> backupTo(const Library& library, const fs::path& path, Overwrite overwrite) {
    if (isPartOf(path, library.path())) {
        return Error{ErrorKind::InvalidInput, path.string() + " is the library itself",
                     "choose another name for the backup"};
    }
    if (overwrite == Overwrite::Never || !fs::exists(path)) {
        return copyToNewFile(library.connection(), path);
    }
    // The old file goes only once the new one is whole.
    const fs::path fresh = freeNameBeside(path, "new");
    PANTILE_RETURN_IF_ERROR(copyToNewFile(library.connection(), fresh));
    return renameFile(fresh, path);
}

Result<RestoreReport> restoreLibrary(const fs::path& library, const fs::path& backup,
                                     const OpenOptions& options) {
    if (isPartOf(backup, library)) {
        return Error{ErrorKind::InvalidInput, backup.string() + " is the library itself",
                     "give the path of a backup"};
    }
    PANTILE_ASSIGN_OR_RETURN(Library source, openBackup(backup, options.folding));
    RestoreReport report;
    PANTILE_ASSIGN_OR_RETURN(report.kept, restoreInto(library, source, options));
    PANTILE_ASSIGN_OR_RETURN(const Library restored, Library::open(library, options));
    PANTILE_ASSIGN_OR_RETURN(report.textures,
                             restored.connection().number("SELECT count(*) FROM textures"));
    return report;
}

}  // namespace pantile::catalogue
