#include "tasks/find_textures.h"

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

}  // namespace pantile::tasks
