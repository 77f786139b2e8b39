// Library files from anywhere: refused, or taken into a library that `check` finds nothing in and
// that writes a file from which it comes back.

#include <algorithm>
#include <string>

#include "catalogue/integrity.h"
#include "catalogue/library_file_reader.h"
#include "catalogue/library_file_writer.h"
#include "fuzz/empty_library.h"
#include "fuzz/targets.h"

namespace pantile::fuzz {
namespace {

catalogue::ByteSource sourceOf(std::string_view text) {
    return [text](char* into, std::size_t most) mutable -> core::Result<std::size_t> {
        const std::size_t count = text.copy(into, most);
        text.remove_prefix(count);
        return count;
    };
}

std::string fileOf(const catalogue::Library& library) {
    std::string text;
    const auto written = catalogue::writeLibraryFile(library, [&](std::string_view piece) {
        text += piece;
        return core::Result<void>();
    });
    require(written.has_value(), "what was taken can be written");
    return text;
}

}  // namespace

/// Undone in the end, so that the next input finds the library empty.
void tryLibraryFile(Bytes input) {
    const std::string_view text = asText(input);
    static catalogue::Library library = emptyLibrary("first");
    const auto transaction = library.begin();
    require(transaction.has_value(), "an empty library can be written");
    if (!catalogue::readLibraryFile(library, sourceOf(text))) {
        require(catalogue::holdsNoRecords(library).value(), "nothing is taken of what is refused");
        return;
    }
    require(catalogue::checkLibrary(library)->ok, "what is taken is sound");
    const std::string file = fileOf(library);
    static catalogue::Library other = emptyLibrary("second");
    const auto back = other.begin();
    require(catalogue::readLibraryFile(other, sourceOf(file)).has_value(), "it can be read back");
    require(fileOf(other) == file, "it comes back equal");
}

}  // namespace pantile::fuzz
