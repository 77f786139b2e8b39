#include "fuzz/targets.h"

#include <cstdlib>
#include <iostream>
#include <utility>

namespace pantile::fuzz {
namespace {

constexpr std::pair<std::string_view, Target> kTargets[] = {
    {"armour", tryArmour},
    {"container", tryContainer},
    {"csv", tryCsv},
    {"grid", tryGrid},
    {"harvest", tryHarvest},
    {"jpeg", tryJpeg},
    {"library_file", tryLibraryFile},
    {"load", tryLoad},
    {"modelled", tryModelled},
    {"old_library", tryOldLibrary},
    {"palette", tryPalette},
    {"query", tryQuery},
    {"svg", trySvg},
    {"texture", tryTexture},
};

}  // namespace

Target targetNamed(std::string_view name) {
    for (const auto& [known, target] : kTargets) {
        if (known == name) return target;
    }
    std::cerr << "'" << name << "' is no target; there are";
    for (const auto& target : kTargets) std::cerr << ' ' << target.first;
    std::cerr << '\n';
    std::exit(2);
}

}  // namespace pantile::fuzz
