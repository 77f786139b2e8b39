#include "tasks/library_file.h"

#include <algorithm>
#include <array>
#include <fstream>
#include <memory>

#include "board/profile.h"
#include "catalogue/boards.h"
#include "catalogue/canvases.h"
#include "catalogue/file_copy.h"
#include "catalogue/library_file_format.h"
#include "catalogue/library_file_reader.h"
#include "catalogue/library_file_writer.h"
#include "catalogue/reader.h"
#include "tasks/library_place.h"

namespace pantile::tasks {

using core::Result;

namespace fs = std::filesystem;

namespace {

template <typename Profile>
bool sameByName(std::vector<Profile> found, std::vector<Profile> shipped) {
    const auto byName = [](const Profile& a, const Profile& b) { return a.name < b.name; };
    std::sort(found.begin(), found.end(), byName);
    std::sort(shipped.begin(), shipped.end(), byName);
    return found == shipped;
}

}  // namespace

bool isLibraryFile(std::string_view beginning) {
    constexpr std::string_view kMark = "\xEF\xBB\xBF";
    if (beginning.starts_with(kMark)) beginning.remove_prefix(kMark.size());
    const auto skipTo = [&](std::string_view what) {
        beginning.remove_prefix(std::min(beginning.find_first_not_of(" \t\r\n"), beginning.size()));
        if (!beginning.starts_with(what)) return false;
        beginning.remove_prefix(what.size());
        return true;
    };
    return skipTo("{") && skipTo('"' + std::string(catalogue::kLibraryFileMark) + '"') &&
           skipTo(":");
}

bool isLibraryFileAt(const fs::path& path) {
    std::array<char, kLibraryFileHeadBytes> head{};
    std::ifstream file(path, std::ios::binary);
    file.read(head.data(), head.size());
    return isLibraryFile({head.data(), static_cast<std::size_t>(file.gcount())});
}

catalogue::ByteSource fileSource(const fs::path& path) {
    // Shared by the copies that std::function may make of the lambda.
    const auto file = std::make_shared<std::ifstream>(path, std::ios::binary);
    return [file, path](char* into, std::size_t most) -> Result<std::size_t> {
        file->read(into, static_cast<std::streamsize>(most));
        if (file->bad() || (!file->is_open())) {
            return core::Error{core::ErrorKind::Io, path.string() + " cannot be read",
                               "look at its rights"};
        }
        return static_cast<std::size_t>(file->gcount());
    };
}

catalogue::ByteSource textSource(std::string_view text) {
    return [text](char* into, std::size_t most) mutable -> Result<std::size_t> {
        const std::size_t count = text.copy(into, most);
        text.remove_prefix(count);
        return count;
    };
}

Result<fs::path> exportLibrary(const catalogue::Library& library, const fs::path& folder,
                               IfExists ifExists, const core::Progress& progress) {
    PANTILE_RETURN_IF_ERROR(makeFolder(folder));
    fs::path path = folder / kLibraryFileName;
    PANTILE_RETURN_IF_ERROR(writeFile(path, ifExists, [&](const catalogue::TextSink& sink) {
        return catalogue::writeLibraryFile(library, sink, progress);
    }));
    return path;
}

Result<bool> isNewLibrary(const catalogue::Library& library) {
    PANTILE_ASSIGN_OR_RETURN(const bool isEmpty, catalogue::holdsNoRecords(library));
    if (!isEmpty) return false;
    PANTILE_ASSIGN_OR_RETURN(auto canvases, catalogue::listCanvases(library));
    PANTILE_ASSIGN_OR_RETURN(auto boards, catalogue::listBoards(library));
    return sameByName(std::move(canvases), board::shippedCanvases()) &&
           sameByName(std::move(boards), board::shippedBoards());
}

Result<void> forEachFiledTexture(const catalogue::Library& library, catalogue::ByteSource source,
                                 const std::function<Result<void>(const FiledTexture&)>& take,
                                 const core::Progress& progress) {
    const catalogue::TemporaryFile beside(catalogue::freeNameBeside(library.path(), "intake"));
    PANTILE_ASSIGN_OR_RETURN(catalogue::Library filed,
                             catalogue::Library::open(beside.path(), openOptions(Purpose::Change)));
    PANTILE_RETURN_IF_ERROR(catalogue::readLibraryFile(filed, std::move(source), progress));
    catalogue::FindOptions byId;
    byId.sort.field = catalogue::SortField::Id;
    PANTILE_ASSIGN_OR_RETURN(const auto ids, catalogue::findIds(filed, {}, byId));
    std::int64_t done = 0;
    for (const core::TextureId id : ids) {
        if (progress.stopRequested()) return core::stoppedError();
        progress.tell(done++, std::ssize(ids), "textures");
        PANTILE_ASSIGN_OR_RETURN(const auto record, catalogue::readTexture(filed, id));
        PANTILE_RETURN_IF_ERROR(take({record.texture, record.row.stars, record.row.shelves}));
    }
    return {};
}

}  // namespace pantile::tasks
