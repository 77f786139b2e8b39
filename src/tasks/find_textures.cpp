#include "tasks/find_textures.h"

#include <algorithm>
#include <map>
#include <span>

#include "catalogue/shelves.h"
#include "tasks/look_alikes.h"

namespace pantile::tasks {

using core::Result;
using core::TextureId;

namespace {

/// Fills in what each `like:` of the query finds.
Result<void> answerLikes(catalogue::Library& library, catalogue::QueryNode& node,
                         const core::Progress& progress) {
    auto* const like = std::get_if<catalogue::LikeFilter>(&node.filter);
    if (node.kind == catalogue::QueryNode::Kind::Match && like != nullptr) {
        PANTILE_ASSIGN_OR_RETURN(const auto alike,
                                 similarTo(library, like->id, like->within, progress));
        like->found.emplace();
        for (const LookAlike& one : alike) like->found->push_back(one.id);
    }
    for (catalogue::QueryNode& part : node.parts) {
        PANTILE_RETURN_IF_ERROR(answerLikes(library, part, progress));
    }
    return {};
}

}  // namespace

Result<catalogue::FoundTextures> findTextures(catalogue::Library& library, catalogue::Query query,
                                              const catalogue::FindOptions& options,
                                              const core::Progress& progress) {
    PANTILE_RETURN_IF_ERROR(answerLikes(library, query.root, progress));
    return catalogue::findTextures(library, query, options);
}

Result<std::vector<TextureId>> findIds(catalogue::Library& library, catalogue::Query query,
                                       const catalogue::FindOptions& options,
                                       const core::Progress& progress) {
    PANTILE_RETURN_IF_ERROR(answerLikes(library, query.root, progress));
    return catalogue::findIds(library, query, options);
}

std::optional<std::string> shelfAsked(const catalogue::Query& query) {
    using Kind = catalogue::QueryNode::Kind;
    const std::span<const catalogue::QueryNode> parts =
        query.root.kind == Kind::AllOf ? std::span<const catalogue::QueryNode>(query.root.parts)
                                       : std::span<const catalogue::QueryNode>(&query.root, 1);
    std::optional<std::string> shelf;
    for (const catalogue::QueryNode& part : parts) {
        const auto* const name = std::get_if<catalogue::NameFilter>(&part.filter);
        const bool asks = part.kind == Kind::Match && name != nullptr &&
                          name->kind == catalogue::NameFilter::Kind::Shelf && !name->name.empty();
        if (!asks) continue;
        if (shelf) return std::nullopt;
        shelf = name->name;
    }
    return shelf;
}

Result<std::vector<TextureId>> findInOrder(catalogue::Library& library,
                                           const catalogue::Query& query,
                                           const core::Progress& progress) {
    catalogue::FindOptions byId;
    byId.sort.field = catalogue::SortField::Id;
    PANTILE_ASSIGN_OR_RETURN(std::vector<TextureId> found, findIds(library, query, byId, progress));
    const auto asked = shelfAsked(query);
    if (!asked) return found;
    const std::string folded = library.folding().fold(*asked);
    PANTILE_ASSIGN_OR_RETURN(const auto shelves, catalogue::listShelves(library));
    for (const catalogue::Shelf& shelf : shelves) {
        if (library.folding().fold(shelf.name) != folded) continue;
        PANTILE_ASSIGN_OR_RETURN(const auto onShelf,
                                 catalogue::texturesOnShelf(library, shelf.name));
        std::map<TextureId, std::size_t> places;
        for (const TextureId id : onShelf) places.emplace(id, places.size());
        // Removed ones have no place there, and come last.
        std::stable_sort(found.begin(), found.end(), [&](TextureId a, TextureId b) {
            const auto placeOf = [&](TextureId id) {
                const auto place = places.find(id);
                return place == places.end() ? places.size() : place->second;
            };
            return placeOf(a) < placeOf(b);
        });
        return found;
    }
    return found;
}

}  // namespace pantile::tasks
