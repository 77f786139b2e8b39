#include "catalogue/id_list.h"

#include <set>
#include <string>

#include "catalogue/statement.h"

namespace pantile::catalogue {

using core::Error;
using core::ErrorKind;
using core::Result;
using core::TextureId;

Error noSuchTexture(TextureId id) {
    return {ErrorKind::NotFound, "there is no texture " + std::to_string(id.value),
            "find shows which there are"};
}

Result<std::vector<TextureId>> knownIds(Connection& connection, std::span<const TextureId> ids) {
    PANTILE_ASSIGN_OR_RETURN(
        Statement exists, Statement::prepare(connection, "SELECT 1 FROM textures WHERE id = ?1"));
    std::vector<TextureId> known;
    std::set<std::int64_t> seen;
    for (const TextureId id : ids) {
        if (!seen.insert(id.value).second) continue;
        PANTILE_RETURN_IF_ERROR(exists.bind({id.value}));
        PANTILE_ASSIGN_OR_RETURN(const bool found, exists.step());
        if (!found) return noSuchTexture(id);
        known.push_back(id);
    }
    return known;
}

std::vector<TextureId> idsIn(std::span<const std::int64_t> numbers) {
    std::vector<TextureId> ids;
    ids.reserve(numbers.size());
    for (const std::int64_t number : numbers) ids.push_back({number});
    return ids;
}

}  // namespace pantile::catalogue
