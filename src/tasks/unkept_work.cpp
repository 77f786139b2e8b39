#include "tasks/unkept_work.h"

#include <charconv>
#include <utility>

#include <QLockFile>
#include <QString>

#include "catalogue/reader.h"
#include "codec/text_code.h"
#include "tasks/files.h"
#include "tasks/touch_up.h"

namespace pantile::tasks {

using core::Error;
using core::ErrorKind;
using core::Result;

namespace fs = std::filesystem;

namespace {

constexpr int kMostFiles = 64;
constexpr std::uint64_t kMostBytes = std::uint64_t{4} << 20U;  // Two of the largest textures.
constexpr std::string_view kFirstLine = "Pantile: not kept yet. Texture ";

fs::path workPath(const fs::path& library, int number) {
    return library.string() + ".work-" + std::to_string(number);
}

/// None if a running program holds it.
std::unique_ptr<QLockFile> lockFor(const fs::path& path) {
    auto lock = std::make_unique<QLockFile>(QString::fromStdString(path.string() + ".lock"));
    lock->setStaleLockTime(0);  // Only if its program is gone.
    return lock->tryLock() ? std::move(lock) : nullptr;
}

Result<std::string> fileText(const UnkeptWork& work) {
    PANTILE_ASSIGN_OR_RETURN(const auto before, codec::encodeTextCode(work.before));
    PANTILE_ASSIGN_OR_RETURN(const auto after, codec::encodeTextCode(work.after));
    return std::string(kFirstLine) + std::to_string(work.id.value) + "\n\n" + before.text + "\n\n" +
           after.text + '\n';
}

/// Nothing if it is damaged in any way.
std::optional<UnkeptWork> workIn(std::string_view text) {
    if (!text.starts_with(kFirstLine)) return std::nullopt;
    text.remove_prefix(kFirstLine.size());
    core::TextureId id;
    const auto number = std::from_chars(text.data(), text.data() + text.size(), id.value);
    if (number.ec != std::errc() || id.value <= 0) return std::nullopt;
    const codec::Harvest codes = codec::harvestCodes(text);
    if (codes.found.size() != 2 || !codes.damaged.empty()) return std::nullopt;
    return UnkeptWork{id, codes.found[0].texture, codes.found[1].texture};
}

/// What lies there is not the library's any more, nor anybody's but the person's.
Result<fs::path> putAside(const fs::path& path) {
    const fs::path aside = path.string() + ".damaged";
    std::error_code problem;
    fs::rename(path, aside, problem);
    if (problem) {
        return Error{ErrorKind::Io, path.string() + " cannot be renamed: " + problem.message(),
                     "remove it by hand"};
    }
    return aside;
}

Result<RecoveredWork> recoverOne(catalogue::Library& library, const fs::path& path) {
    const auto text = readFile(path, kMostBytes);
    if (!text && text.error().kind != ErrorKind::TooLarge) return text.error();
    const auto work = text ? workIn(*text) : std::nullopt;
    RecoveredWork recovered;
    if (!work) {
        PANTILE_ASSIGN_OR_RETURN(recovered.damaged, putAside(path));
        return recovered;
    }
    recovered.title = work->after.text().title;
    auto kept = keepWork(library, *work);
    if (kept) {
        recovered.kept = *kept;
    } else if (kept.error().kind != ErrorKind::AlreadyExists) {
        return kept.error();
    }
    std::error_code problem;
    fs::remove(path, problem);
    return recovered;
}

}  // namespace

WorkFile::WorkFile(fs::path path, std::unique_ptr<QLockFile> lock)
    : m_path(std::move(path)), m_lock(std::move(lock)) {}

WorkFile::WorkFile(WorkFile&&) noexcept = default;
WorkFile& WorkFile::operator=(WorkFile&&) noexcept = default;
WorkFile::~WorkFile() = default;

Result<WorkFile> WorkFile::claim(const fs::path& libraryPath) {
    for (int number = 1; number <= kMostFiles; ++number) {
        const fs::path path = workPath(libraryPath, number);
        auto lock = lockFor(path);
        std::error_code problem;
        // What a dead program left there is recovered at the next start.
        if (lock != nullptr && !fs::exists(path, problem)) return WorkFile(path, std::move(lock));
    }
    return Error{ErrorKind::Busy,
                 "no file for unkept work can be made beside " + libraryPath.string(),
                 "see whether its folder can be written to"};
}

Result<void> WorkFile::save(const UnkeptWork& work) const {
    PANTILE_ASSIGN_OR_RETURN(const std::string text, fileText(work));
    return writeFile(m_path, text, IfExists::Replace);
}

Result<void> WorkFile::clear() const {
    std::error_code problem;
    fs::remove(m_path, problem);
    if (!problem) return {};
    return Error{ErrorKind::Io, m_path.string() + " cannot be removed: " + problem.message(),
                 "remove it by hand"};
}

Result<KeptWork> keepWork(catalogue::Library& library, const UnkeptWork& work) {
    const auto record = catalogue::readTexture(library, work.id);
    if (record && !record->row.removed) {
        const auto kept = keepTouched(library, work.id, work.before, work.after);
        if (kept) return KeptWork{work.id, false};
        if (kept.error().kind != ErrorKind::Busy) return kept.error();
    } else if (!record && record.error().kind != ErrorKind::NotFound) {
        return record.error();
    }
    PANTILE_ASSIGN_OR_RETURN(const auto beside, keepBeside(library, work.after));
    return KeptWork{beside, true};
}

bool isWorkBeside(const fs::path& libraryPath) {
    std::error_code problem;
    for (int number = 1; number <= kMostFiles; ++number) {
        if (fs::exists(workPath(libraryPath, number), problem)) return true;
    }
    return false;
}

Result<std::vector<RecoveredWork>> recoverWork(catalogue::Library& library) {
    std::vector<RecoveredWork> all;
    for (int number = 1; number <= kMostFiles; ++number) {
        const fs::path path = workPath(library.path(), number);
        if (std::error_code problem; !fs::exists(path, problem)) continue;
        const auto lock = lockFor(path);
        if (lock == nullptr) continue;
        PANTILE_ASSIGN_OR_RETURN(RecoveredWork recovered, recoverOne(library, path));
        all.push_back(std::move(recovered));
    }
    return all;
}

}  // namespace pantile::tasks
