#include "catalogue/looks.h"

#include <algorithm>
#include <map>

#include "catalogue/id_list.h"
#include "catalogue/statement.h"

namespace pantile::catalogue {
namespace {

using core::Result;
using core::TextureId;

/// The table holds to the ranges.
LookFigures figuresIn(Statement& statement, int column) {
    LookFigures look;
    look.shape = static_cast<std::uint32_t>(statement.integer(column));
    for (std::uint8_t& mean : look.means)
        mean = static_cast<std::uint8_t>(statement.integer(++column));
    const auto lights = statement.blob(++column);
    std::copy_n(lights.begin(), std::min(lights.size(), look.lights.size()), look.lights.begin());
    return look;
}

}  // namespace

Result<std::vector<MissingLook>> missingLooks(const Library& library, std::int64_t afterContent,
                                              std::int64_t most) {
    PANTILE_ASSIGN_OR_RETURN(
        Statement statement,
        Statement::prepare(library.connection(),
                           "SELECT m.content_id, t.id FROM looks_missing m CROSS JOIN textures t "
                           "ON t.content_id = m.content_id WHERE m.content_id > ?1 "
                           "ORDER BY m.content_id LIMIT ?2",
                           {afterContent, most}));
    std::vector<MissingLook> missing;
    for (;;) {
        PANTILE_ASSIGN_OR_RETURN(const bool more, statement.step());
        if (!more) return missing;
        missing.push_back({statement.integer(0), TextureId{statement.integer(1)}});
    }
}

Result<void> storeLook(Library& library, TextureId id, const LookFigures& look) {
    const auto& means = look.means;
    PANTILE_ASSIGN_OR_RETURN(
        const std::int64_t stored,
        run(library.connection(),
            "INSERT OR REPLACE INTO looks SELECT content_id, ?2, ?3, ?4, ?5, ?6, ?7 FROM textures "
            "WHERE id = ?1",
            {id.value, std::int64_t{look.shape}, std::int64_t{means[0]}, std::int64_t{means[1]},
             std::int64_t{means[2]}, std::int64_t{means[3]},
             std::span<const std::uint8_t>(look.lights)}));
    return stored > 0 ? Result<void>() : noSuchTexture(id);
}

Result<std::optional<LookFigures>> readLook(const Library& library, TextureId id) {
    PANTILE_ASSIGN_OR_RETURN(
        Statement statement,
        Statement::prepare(library.connection(),
                           "SELECT shape, lightness, green_to_red, blue_to_yellow, unpainted, "
                           "lights FROM looks WHERE content_id = "
                           "(SELECT content_id FROM textures WHERE id = ?1)",
                           {id.value}));
    PANTILE_ASSIGN_OR_RETURN(const bool found, statement.step());
    if (!found) return std::optional<LookFigures>();
    const LookFigures look = figuresIn(statement, 0);
    PANTILE_RETURN_IF_ERROR(statement.columnCheck());
    return std::optional(look);
}

Result<std::vector<TextureId>> texturesOfShape(const Library& library, std::uint32_t shape) {
    PANTILE_ASSIGN_OR_RETURN(
        const auto numbers,
        allNumbers(library.connection(),
                   "SELECT t.id FROM looks l JOIN textures t ON t.content_id = l.content_id "
                   "WHERE l.shape = ?1 AND t.removed_at IS NULL ORDER BY t.id",
                   {std::int64_t{shape}}));
    return idsIn(numbers);
}

Result<std::vector<ContentLook>> looksWithin(const Library& library, const MeanRanges& ranges) {
    const auto& [least, most] = ranges;
    PANTILE_ASSIGN_OR_RETURN(
        Statement statement,
        Statement::prepare(
            library.connection(),
            "SELECT content_id, shape, lightness, green_to_red, blue_to_yellow, unpainted, lights "
            "FROM looks WHERE lightness BETWEEN ?1 AND ?2 AND green_to_red BETWEEN ?3 AND ?4 AND "
            "blue_to_yellow BETWEEN ?5 AND ?6 AND unpainted BETWEEN ?7 AND ?8 ORDER BY content_id",
            {std::int64_t{least[0]}, std::int64_t{most[0]}, std::int64_t{least[1]},
             std::int64_t{most[1]}, std::int64_t{least[2]}, std::int64_t{most[2]},
             std::int64_t{least[3]}, std::int64_t{most[3]}}));
    std::vector<ContentLook> looks;
    for (;;) {
        PANTILE_ASSIGN_OR_RETURN(const bool more, statement.step());
        if (!more) return looks;
        looks.push_back({statement.integer(0), figuresIn(statement, 1)});
    }
}

Result<std::optional<PresentTexture>> textureOfContent(const Library& library,
                                                       std::int64_t contentId) {
    PANTILE_ASSIGN_OR_RETURN(
        Statement statement,
        Statement::prepare(library.connection(),
                           "SELECT t.id, c.width, c.height FROM textures t JOIN contents c ON "
                           "c.id = t.content_id WHERE c.id = ?1 AND t.removed_at IS NULL",
                           {contentId}));
    PANTILE_ASSIGN_OR_RETURN(const bool found, statement.step());
    if (!found) return std::optional<PresentTexture>();
    const PresentTexture texture{TextureId{statement.integer(0)},
                                 {statement.smallInteger(1), statement.smallInteger(2)}};
    PANTILE_RETURN_IF_ERROR(statement.columnCheck());
    return std::optional(texture);
}

Result<std::vector<std::vector<TextureId>>> sharedShapes(const Library& library) {
    PANTILE_ASSIGN_OR_RETURN(
        Statement statement,
        Statement::prepare(
            library.connection(),
            "SELECT l.shape, t.id FROM looks l JOIN textures t ON t.content_id = l.content_id "
            "WHERE t.removed_at IS NULL AND l.shape IN "
            "(SELECT shape FROM looks GROUP BY shape HAVING count(*) > 1) ORDER BY t.id"));
    std::map<std::int64_t, std::vector<TextureId>> byShape;
    for (;;) {
        PANTILE_ASSIGN_OR_RETURN(const bool more, statement.step());
        if (!more) break;
        byShape[statement.integer(0)].push_back({statement.integer(1)});
    }
    std::vector<std::vector<TextureId>> groups;
    for (auto& [shape, ids] : byShape) {
        if (ids.size() > 1) groups.push_back(std::move(ids));
    }
    std::sort(groups.begin(), groups.end());
    return groups;
}

}  // namespace pantile::catalogue
