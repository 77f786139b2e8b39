// Damaged libraries of every published version. The first byte of the input says which; each four
// behind it change one byte of its file, or cut it off. It is brought forward and checked, or
// refused and left as it was.

#include <algorithm>
#include <array>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <optional>
#include <string>
#include <utility>
#include <vector>

#include "catalogue/connection.h"
#include "catalogue/integrity.h"
#include "catalogue/reader.h"
#include "fuzz/empty_library.h"
#include "fuzz/targets.h"

namespace pantile::fuzz {
namespace {

namespace fs = std::filesystem;

constexpr std::size_t kVersions = 8;
constexpr std::size_t kBytesOfAChange = 4;
constexpr std::size_t kMostChanges = 64;
constexpr std::uint8_t kCut = 0x80;  // In the first byte of a change, above its place.

std::string contentsOf(const fs::path& path) {
    std::ifstream file(path, std::ios::binary);
    return {std::istreambuf_iterator<char>(file), {}};
}

/// Without what SQLite notes in the file's head when the journal changes its kind, which happens
/// before the tables are read: bytes 18 and 19, and counters of changes (SQLite, 'Database File
/// Format', 1.3).
std::string withoutJournalNotes(std::string file) {
    constexpr std::size_t kHeadBytes = 100;
    if (file.size() < kHeadBytes) return file;
    for (const auto& [begin, length] : {std::pair{18U, 2U}, {24U, 4U}, {92U, 8U}})
        file.replace(begin, length, length, '\0');
    return file;
}

void emptyFolder(const fs::path& folder) {
    for (const auto& entry : fs::directory_iterator(folder)) fs::remove_all(entry.path());
}

/// The file that the SQL of that version makes.
const std::string& libraryOf(std::size_t version, const fs::path& folder) {
    static std::array<std::optional<std::string>, kVersions + 1> files;
    if (files[version]) return *files[version];
    const fs::path path = folder / "made.db";
    const std::string sql = contentsOf(fs::path(PANTILE_TEST_DATA) / "libraries" /
                                       ("version-" + std::to_string(version) + ".sql"));
    {
        const auto connection = catalogue::Connection::open(
            path, catalogue::FileMode::ReadWriteOrCreate, std::chrono::milliseconds(0));
        require(connection.has_value() &&
                    (*connection)->execute("PRAGMA foreign_keys=OFF;" + sql).has_value(),
                "a library of that version can be made");
    }
    files[version] = contentsOf(path);
    require(!files[version]->empty(), "a library of that version is a file");
    return *files[version];
}

std::string damaged(std::string file, Bytes changes) {
    for (std::size_t i = 0; i < kMostChanges && changes.size() >= kBytesOfAChange; ++i) {
        const std::size_t place =
            (std::size_t{changes[0]} % kCut << 16U) + (std::size_t{changes[1]} << 8U) + changes[2];
        if (file.empty()) break;
        if (changes[0] >= kCut) {
            file.resize(place % file.size());
        } else {
            file[place % file.size()] = static_cast<char>(changes[3]);
        }
        changes = changes.subspan(kBytesOfAChange);
    }
    return file;
}

void requireMeaning(const core::Error& error) {
    require(!error.message.empty() && !error.hint.empty(),
            "an error says what is wrong and what to do");
    require(error.kind != core::ErrorKind::Internal, "damage is no fault of the program");
}

void tryOpened(const catalogue::Library& library) {
    const auto report = catalogue::checkLibrary(library);
    if (!report) return requireMeaning(report.error());
    const auto found = catalogue::findTextures(library, {});
    if (!found) {
        requireMeaning(found.error());
        require(!report->ok, "a sound library can be searched");
        return;
    }
    for (const catalogue::TextureRow& row : found->rows) {
        const auto texture = catalogue::readTexture(library, row.id);
        if (texture) continue;
        requireMeaning(texture.error());
        require(!report->ok, "every texture of a sound library can be read");
    }
}

}  // namespace

void tryOldLibrary(Bytes input) {
    static const ScratchFolder folder;
    emptyFolder(folder.path());
    if (input.empty()) return;
    const std::string file =
        damaged(libraryOf(1 + input[0] % kVersions, folder.path()), input.subspan(1));
    emptyFolder(folder.path());
    const fs::path path = folder.path() / "library.db";
    std::ofstream(path, std::ios::binary) << file;
    catalogue::OpenOptions options;
    options.folding = {"as it is", [](std::string_view text) { return std::string(text); }};
    options.create = catalogue::OpenOptions::Create::Never;
    options.busyTimeout = std::chrono::milliseconds(0);
    options.now = [] { return std::int64_t{1767268800}; };
    const auto library = catalogue::Library::open(path, options);
    if (library) return tryOpened(*library);
    requireMeaning(library.error());
    require(withoutJournalNotes(contentsOf(path)) == withoutJournalNotes(file),
            "what is refused stays as it was");
}

}  // namespace pantile::fuzz
