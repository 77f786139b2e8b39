#include "catalogue/palettes.h"

#include "catalogue/actions.h"
#include "catalogue/contents.h"
#include "catalogue/names.h"
#include "catalogue/statement.h"

namespace pantile::catalogue {
namespace {

using core::Palette;
using core::Result;

Result<NamedPalette> loadNamed(Connection& connection, std::string_view name) {
    PANTILE_ASSIGN_OR_RETURN(const std::int64_t id, idOfName(connection, kPaletteNames, name));
    PANTILE_ASSIGN_OR_RETURN(Palette palette, loadPalette(connection, id));
    PANTILE_ASSIGN_OR_RETURN(
        const auto names,
        allTexts(connection, "SELECT name FROM palette_names WHERE name = ?1", {name}));
    return NamedPalette{names.front(), std::move(palette)};
}

}  // namespace

Result<std::vector<NamedPalette>> listPalettes(const Library& library) {
    Connection& connection = library.connection();
    PANTILE_ASSIGN_OR_RETURN(const Transaction moment, Transaction::beginReading(connection));
    PANTILE_ASSIGN_OR_RETURN(const auto names, allNames(connection, kPaletteNames));
    std::vector<NamedPalette> palettes;
    for (const std::string& name : names) {
        PANTILE_ASSIGN_OR_RETURN(NamedPalette palette, loadNamed(connection, name));
        palettes.push_back(std::move(palette));
    }
    return palettes;
}

Result<NamedPalette> readPalette(const Library& library, std::string_view name) {
    PANTILE_ASSIGN_OR_RETURN(const Transaction moment,
                             Transaction::beginReading(library.connection()));
    return loadNamed(library.connection(), name);
}

Result<void> addPalette(Library& library, std::string_view name, const Palette& palette) {
    Connection& connection = library.connection();
    PANTILE_ASSIGN_OR_RETURN(Transaction transaction, library.begin());
    nameAction(library, "Add palette " + nameInWords(name));
    PANTILE_RETURN_IF_ERROR(checkNewName(connection, kPaletteNames, name));
    PANTILE_ASSIGN_OR_RETURN(const std::int64_t id, storePalette(connection, palette));
    PANTILE_RETURN_IF_ERROR(run(
        connection, "INSERT INTO palette_names (name, palette_id) VALUES (?1, ?2)", {name, id}));
    return transaction.commit();
}

Result<void> changePalette(Library& library, std::string_view name, const NamedPalette& palette) {
    Connection& connection = library.connection();
    PANTILE_ASSIGN_OR_RETURN(Transaction transaction, library.begin());
    PANTILE_ASSIGN_OR_RETURN(const NamedPalette before, loadNamed(connection, name));
    if (before == palette) return {};
    nameAction(library, before.palette == palette.palette
                            ? "Rename palette " + nameInWords(before.name) + " to " +
                                  nameInWords(palette.name)
                            : "Change palette " + nameInWords(before.name));
    // A name is the row's key, so that another one makes another row.
    PANTILE_RETURN_IF_ERROR(run(connection, "DELETE FROM palette_names WHERE name = ?1", {name}));
    PANTILE_RETURN_IF_ERROR(addPalette(library, palette.name, palette.palette));
    PANTILE_RETURN_IF_ERROR(dropUnusedPalettes(connection));
    return transaction.commit();
}

Result<void> removePalette(Library& library, std::string_view name) {
    Connection& connection = library.connection();
    PANTILE_ASSIGN_OR_RETURN(Transaction transaction, library.begin());
    nameAction(library, "Remove palette " + nameInWords(name));
    PANTILE_RETURN_IF_ERROR(idOfName(connection, kPaletteNames, name));
    PANTILE_RETURN_IF_ERROR(run(connection, "DELETE FROM palette_names WHERE name = ?1", {name}));
    PANTILE_RETURN_IF_ERROR(dropUnusedPalettes(connection));
    return transaction.commit();
}

Result<std::optional<Palette>> findPalette(const Library& library, core::Fingerprint fingerprint) {
    using Found = std::optional<Palette>;
    Connection& connection = library.connection();
    PANTILE_ASSIGN_OR_RETURN(const Transaction moment, Transaction::beginReading(connection));
    PANTILE_ASSIGN_OR_RETURN(
        const auto id,
        findNumber(connection, "SELECT id FROM palettes WHERE fingerprint = ?1 ORDER BY id",
                   {storedFingerprint(fingerprint)}));
    if (!id) return Found();
    PANTILE_ASSIGN_OR_RETURN(Palette palette, loadPalette(connection, *id));
    return Found(std::move(palette));
}

}  // namespace pantile::catalogue
