#pragma once

// A library as one text, so that two can be compared wholly.

#include <filesystem>
#include <string>

#include "catalogue/connection.h"
#include "core/result.h"

namespace pantile::tests {

/// Every row of every table in the order of its values, except how the index of words is laid out,
/// which `check` compares with the words.
core::Result<std::string> wholeLibrary(catalogue::Connection& connection);

/// Every row of the tables that are not worked out from others.
core::Result<std::string> keptRows(catalogue::Connection& connection);

/// Opens the file as the program does. What `check` finds is part of the text.
core::Result<std::string> wholeLibrary(const std::filesystem::path& path);

/// The same without what actions are undone by, which a mended library begins anew.
core::Result<std::string> rescuedLibrary(const std::filesystem::path& path);

/// Copies a library that is closed, or was left by a killed program, with its side files.
void copyLibrary(const std::filesystem::path& from, const std::filesystem::path& to);

/// A library of an old version in a new file, from tests/data/libraries.
void makeOldLibrary(const std::filesystem::path& path, int version);

}  // namespace pantile::tests
