#pragma once

// The readers of bytes and texts from outside that are fuzzed. Each target hands an input to one of
// them, and ends the process if what must hold whatever the input does not.

#include <string_view>

#include "fuzz/checking.h"

namespace pantile::fuzz {

void tryArmour(Bytes input);
void tryContainer(Bytes input);
void tryCsv(Bytes input);
void tryGrid(Bytes input);
void tryHarvest(Bytes input);
void tryJpeg(Bytes input);
void tryLibraryFile(Bytes input);
void tryLoad(Bytes input);
void tryModelled(Bytes input);
void tryOldLibrary(Bytes input);
void tryPalette(Bytes input);
void tryQuery(Bytes input);
void trySvg(Bytes input);
void tryTexture(Bytes input);

using Target = void (*)(Bytes input);

/// The target of that name, such as `library_file`; ends the process, with all names, where there
/// is none.
Target targetNamed(std::string_view name);

}  // namespace pantile::fuzz
