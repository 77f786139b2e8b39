#pragma once

// Unkept work: what was made of a texture and is not in the library yet lies in a file beside it,
// so that a program that dies loses none of it.

#include <filesystem>
#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "catalogue/library.h"
#include "core/ids.h"
#include "core/result.h"
#include "core/texture.h"

class QLockFile;

namespace pantile::tasks {

struct UnkeptWork {
    core::TextureId id;
    core::Texture before;  ///< As it was in the library.
    core::Texture after;
};

/// One program's own file for the texture it has under work: LIBRARY.work-1, or the next number
/// that no running program holds.
class WorkFile {
public:
    /// Errors: Io if the folder lets no file be made; Busy if very many programs hold one.
    static core::Result<WorkFile> claim(const std::filesystem::path& libraryPath);

    WorkFile(WorkFile&&) noexcept;
    WorkFile& operator=(WorkFile&&) noexcept;
    WorkFile(const WorkFile&) = delete;
    WorkFile& operator=(const WorkFile&) = delete;
    ~WorkFile();

    /// In the place of what was saved before. Errors: Io.
    core::Result<void> save(const UnkeptWork& work) const;

    /// Nothing is left to be kept. Errors: Io.
    core::Result<void> clear() const;

private:
    WorkFile(std::filesystem::path path, std::unique_ptr<QLockFile> lock);

    std::filesystem::path m_path;
    std::unique_ptr<QLockFile> m_lock;
};

struct KeptWork {
    core::TextureId id;  ///< Where it is now.
    /// The library had another texture there by now, or none: it is one of its own.
    bool isBeside = false;
};

/// Keeps `after` as a revision of the texture; if that is not `before` any more, was removed or
/// is not there, as a texture of its own, so that nothing is lost.
/// Errors: AlreadyExists if another texture has that picture; Busy, Io, Corrupt.
core::Result<KeptWork> keepWork(catalogue::Library& library, const UnkeptWork& work);

/// What became of the file of a program that died.
struct RecoveredWork {
    std::string title;
    std::optional<KeptWork> kept;  ///< None if the library had it already, or it is damaged.
    /// Where a damaged file lies now; it is not looked at again.
    std::filesystem::path damaged = {};
};

/// Whether any program left or holds a file with work.
bool isWorkBeside(const std::filesystem::path& libraryPath);

/// Keeps in the library what programs left that are not running any more, and removes their files
/// then. Errors: Io, Busy, Corrupt of the library; the files stay then.
core::Result<std::vector<RecoveredWork>> recoverWork(catalogue::Library& library);

}  // namespace pantile::tasks
