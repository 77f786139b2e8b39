#include "tasks/write_load.h"

#include <algorithm>

#include "board/cautions.h"
#include "board/header_export.h"
#include "board/load_writer.h"
#include "catalogue/loads.h"
#include "core/duration.h"
#include "core/text.h"
#include "tasks/bytes.h"

namespace pantile::tasks {

using core::Error;
using core::ErrorKind;
using core::Result;

namespace fs = std::filesystem;

namespace {

constexpr std::string_view kCardFile = "load.bin";
constexpr std::string_view kContentsFile = "contents.txt";
// A header spells each byte in five characters, and the largest board has 2^30 bytes.
constexpr std::uint64_t kMaxLoadFileBytes = std::uint64_t{6} << 30U;

struct LoadFile {
    fs::path path;
    Bytes bytes;
};

std::string contentsText(const std::string& name, const Choice& choice) {
    std::string text = "Load " + name + " for the board " + choice.board.name + "\n\n";
    for (std::size_t i = 0; i < choice.slots.size(); ++i) {
        const ChosenSlot& slot = choice.slots[i];
        text += "Slot " + std::to_string(i + 1) + ": " + core::visibleText(slot.slot.title) + ", " +
                std::to_string(slot.slot.grid.width()) + "x" +
                std::to_string(slot.slot.grid.height()) + " cells, on the canvas " +
                core::visibleText(slot.slot.canvas.name) + ", " +
                core::spokenTime(slot.milliseconds) + ", " + std::to_string(slot.bytes) + " bytes";
        if (const std::string credit = slot.credit(); !credit.empty()) text += ", " + credit;
        text += "\n";
    }
    text += "\n" + std::string(board::kCautionsHeading) + ":\n";
    for (const std::string_view caution : board::cautions())
        text += "- " + std::string(caution) + "\n";
    return text;
}

std::vector<LoadFile> filesOf(const std::string& name, const Choice& choice, const Bytes& load,
                              const fs::path& folder, LoadForm form) {
    const bool usual = form == LoadForm::AsMemory;
    const bool onCard = choice.board.memory == core::BoardMemory::Card;
    const bool card = form == LoadForm::Card || form == LoadForm::Both || (usual && onCard);
    const bool header = form == LoadForm::Header || form == LoadForm::Both || (usual && !onCard);
    const std::string safeName = core::safeFileName(name);
    std::vector<LoadFile> files;
    if (card) {
        files.push_back({folder / safeName / kCardFile, load});
        files.push_back({folder / safeName / kContentsFile, bytesOf(contentsText(name, choice))});
    }
    if (header) {
        std::vector<std::string> titles;
        for (const ChosenSlot& slot : choice.slots) titles.push_back(slot.slot.title);
        files.push_back(
            {folder / (safeName + ".h"), bytesOf(board::writeHeader(load, name, titles))});
    }
    return files;
}

// Compares what the written file draws with what it should, cell by cell.
Result<void> proveFile(const fs::path& path, const Choice& choice, const core::Progress& progress) {
    PANTILE_ASSIGN_OR_RETURN(const board::VerifiedLoad verified, verifyLoadFile(path, progress));
    const Error wrong{ErrorKind::Internal, path.string() + " does not draw what it should",
                      "please report this: it is a fault of Pantile"};
    if (verified.slots.size() != choice.slots.size()) return wrong;
    for (std::size_t i = 0; i < choice.slots.size(); ++i) {
        const board::VerifiedSlot& slot = verified.slots[i];
        if (!slot.verified() || slot.painted != choice.slots[i].slot.grid) return wrong;
    }
    return {};
}

Result<void> writeFiles(const std::vector<LoadFile>& files, IfExists ifExists) {
    std::vector<fs::path> paths;
    paths.reserve(files.size());
    for (const LoadFile& file : files) paths.push_back(file.path);
    PANTILE_RETURN_IF_ERROR(checkFree(paths, ifExists));
    const auto writeOne = [&](const LoadFile& file) -> Result<void> {
        PANTILE_RETURN_IF_ERROR(makeFolder(file.path.parent_path()));
        return writeFile(file.path, file.bytes, ifExists);
    };
    for (std::size_t i = 0; i < files.size(); ++i) {
        const auto written = writeOne(files[i]);
        if (written) continue;
        // A part of a load is of no use, and would stand in the way of the next try.
        std::error_code ignored;
        for (std::size_t j = 0; j < i && ifExists == IfExists::Refuse; ++j)
            fs::remove(files[j].path, ignored);
        return written;
    }
    return {};
}

}  // namespace

Result<WrittenLoad> writeChoice(const std::string& name, Choice choice, const fs::path& folder,
                                const WriteOptions& options, const core::Progress& progress) {
    board::Load load{name, choice.board.timing, {}};
    for (const ChosenSlot& slot : choice.slots) load.slots.push_back(slot.slot);
    PANTILE_ASSIGN_OR_RETURN(const Bytes bytes, board::writeLoad(load, choice.board));

    const std::vector<LoadFile> files = filesOf(name, choice, bytes, folder, options.form);
    PANTILE_RETURN_IF_ERROR(writeFiles(files, options.ifExists));
    WrittenLoad written{name, std::move(choice), {}};
    for (const LoadFile& file : files) {
        written.files.push_back(file.path);
        if (file.path.filename() == kContentsFile) continue;
        PANTILE_RETURN_IF_ERROR(proveFile(file.path, written.choice, {progress.stop, {}}));
    }
    return written;
}

Result<WrittenLoad> writeStoredLoad(catalogue::Library& library, const std::string& name,
                                    const fs::path& folder, const WriteOptions& options,
                                    const core::Progress& progress) {
    PANTILE_ASSIGN_OR_RETURN(const catalogue::StoredLoad stored,
                             catalogue::readLoad(library, name));
    ChooseOptions choose;
    choose.board = stored.board;
    choose.canvas = options.canvas.empty() ? stored.canvas : options.canvas;
    PANTILE_ASSIGN_OR_RETURN(Choice choice, takeAll(library, stored.slots, choose, progress));
    PANTILE_ASSIGN_OR_RETURN(WrittenLoad written, writeChoice(stored.name, std::move(choice),
                                                              folder, options, progress));
    PANTILE_RETURN_IF_ERROR(catalogue::noteLoadWritten(
        library, stored.name, core::cleanedText(fs::absolute(folder).string(), {"place", 1000})));
    return written;
}

namespace {

/// What in the folder may be a load, sorted: headers and folders of cards.
std::vector<fs::path> loadsIn(const fs::path& folder) {
    std::vector<fs::path> found;
    std::error_code problem;
    for (fs::directory_iterator at(folder, problem), end; !problem && at != end;
         at.increment(problem)) {
        std::error_code ignored;
        const bool isCard = fs::is_regular_file(at->path() / kCardFile, ignored);
        if (isCard || at->path().extension() == ".h") found.push_back(at->path());
    }
    std::sort(found.begin(), found.end());
    return found;
}

/// The file of the load that a path means: itself, a card's load.bin, or the one in a folder.
/// Errors: NotFound; InvalidInput if the folder holds several.
Result<fs::path> loadFileAt(const fs::path& path) {
    std::error_code problem;
    if (!fs::is_directory(path, problem)) return path;
    if (fs::exists(path / kCardFile, problem)) return path / kCardFile;
    const std::vector<fs::path> found = loadsIn(path);
    if (found.empty()) {
        return Error{ErrorKind::NotFound, "no load lies in the folder " + path.string(),
                     "give the folder or the header that 'load write' made"};
    }
    if (found.size() == 1) return loadFileAt(found.front());
    constexpr std::size_t kMostNamed = 8;
    std::string names;
    for (std::size_t i = 0; i < std::min(found.size(), kMostNamed); ++i)
        names += (i == 0 ? "" : ", ") + found[i].string();
    return Error{ErrorKind::InvalidInput, "several loads lie in the folder " + path.string(),
                 "give one of them: " + names + (found.size() > kMostNamed ? " and others" : "")};
}

}  // namespace

Result<board::VerifiedLoad> verifyLoadFile(const fs::path& path, const core::Progress& progress) {
    PANTILE_ASSIGN_OR_RETURN(const fs::path file, loadFileAt(path));
    PANTILE_ASSIGN_OR_RETURN(const std::string contents, readFile(file, kMaxLoadFileBytes));
    Bytes bytes = bytesOf(contents);
    if (board::looksLikeHeader(bytes)) {
        auto fromHeader = board::readHeader(contents);
        if (!fromHeader) return fromHeader.error().at(file.string());
        bytes = *std::move(fromHeader);
    }
    auto verified = board::verifyLoad(bytes, progress);
    if (!verified) return verified.error().at(file.string());
    return verified;
}

}  // namespace pantile::tasks
