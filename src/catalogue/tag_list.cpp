#include "catalogue/tag_list.h"

#include "catalogue/statement.h"

namespace pantile::catalogue {

using core::Result;

Result<std::vector<std::string>> loadTags(Connection& connection, core::TextureId id) {
    return allTexts(connection,
                    "SELECT name FROM texture_tags JOIN tags ON tags.id = tag_id "
                    "WHERE texture_id = ?1 ORDER BY name",
                    {id.value});
}

Result<void> storeTags(Connection& connection, core::TextureId id,
                       const std::vector<std::string>& tags) {
    PANTILE_RETURN_IF_ERROR(
        run(connection, "DELETE FROM texture_tags WHERE texture_id = ?1", {id.value}));
    for (const std::string& tag : tags) {
        PANTILE_RETURN_IF_ERROR(
            run(connection, "INSERT INTO tags (name) VALUES (?1) ON CONFLICT DO NOTHING", {tag}));
        PANTILE_RETURN_IF_ERROR(run(connection,
                                    "INSERT INTO texture_tags (texture_id, tag_id) "
                                    "SELECT ?1, id FROM tags WHERE name = ?2",
                                    {id.value, tag}));
    }
    return {};
}

Result<void> dropUnusedTags(Connection& connection) {
    PANTILE_RETURN_IF_ERROR(run(connection,
                                "DELETE FROM tags WHERE NOT EXISTS (SELECT 1 FROM texture_tags "
                                "WHERE tag_id = tags.id)"));
    return {};
}

}  // namespace pantile::catalogue
