#pragma once

// Loads: a named choice kept in the library, the files written from it, and the proof of them.

#include <filesystem>
#include <string>
#include <vector>

#include "board/load_reader.h"
#include "catalogue/library.h"
#include "core/progress.h"
#include "core/result.h"
#include "tasks/choose_for_board.h"
#include "tasks/files.h"

namespace pantile::tasks {

enum class LoadForm {
    AsMemory,  ///< Card or header, as the board's memory asks.
    Card,
    Header,
    Both,
};

struct WriteOptions {
    LoadForm form = LoadForm::AsMemory;
    IfExists ifExists = IfExists::Refuse;
    std::string canvas = {};  ///< In place of the one that the load was made for.
};

struct WrittenLoad {
    std::string name;
    Choice choice;  ///< What lies in the slots.
    std::vector<std::filesystem::path> files;
};

/// Writes the files of a choice into `folder`, reads them back and proves by replay that every slot
/// draws its texture. A card is a folder named after the load, with load.bin and contents.txt; a
/// header is one .h file. Errors: DoesNotFit if the choice does not fit its board; AlreadyExists;
/// Io; Internal if the proof fails; Cancelled.
core::Result<WrittenLoad> writeChoice(const std::string& name, Choice choice,
                                      const std::filesystem::path& folder,
                                      const WriteOptions& options,
                                      const core::Progress& progress = {});

/// Plans the textures of a stored load, writes and proves its files, and notes the writing in the
/// library. Errors: NotFound; DoesNotFit if the textures do not fit the board (any more); as
/// writeChoice.
core::Result<WrittenLoad> writeStoredLoad(catalogue::Library& library, const std::string& name,
                                          const std::filesystem::path& folder,
                                          const WriteOptions& options,
                                          const core::Progress& progress = {});

/// Reads a written load (a card's folder or load.bin, a header, or a folder in which only one of
/// those lies), and replays every slot.
/// Errors: NotFound, Io, TooLarge; InvalidInput for a folder with several, naming them; Corrupt,
/// ChecksumMismatch or Unsupported as board::readLoad.
core::Result<board::VerifiedLoad> verifyLoadFile(const std::filesystem::path& path,
                                                 const core::Progress& progress = {});

}  // namespace pantile::tasks
