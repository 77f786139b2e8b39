#include "cli/written_file.h"

#include <ostream>

#include "core/text.h"

namespace pantile::cli {

void printWrote(std::ostream& out, const std::filesystem::path& file) {
    out << "Wrote " << core::visibleText(file.string()) << '\n';
}

}  // namespace pantile::cli
