#include "tasks/share_codes.h"

#include <string>
#include <utility>

#include "catalogue/palettes.h"
#include "catalogue/reader.h"

namespace pantile::tasks {

using core::Result;

namespace {

/// How many textures there are, or the title of the only one, and author and licence where all have
/// the same.
Credit commonCredit(const std::vector<core::Texture>& textures) {
    const core::TextureText& first = textures.front().text();
    Credit credit{std::to_string(textures.size()) + " textures", first.author, first.licence,
                  textures.size()};
    if (textures.size() == 1) credit.title = first.title;
    for (const core::Texture& texture : textures) {
        if (texture.text().author != credit.author) credit.author.clear();
        if (texture.text().licence != credit.licence) credit.licence.clear();
    }
    return credit;
}

Result<SharedCode> withPosts(std::vector<core::TextureId> ids, Credit credit, codec::TextCode code,
                             const PostOptions& options) {
    PANTILE_ASSIGN_OR_RETURN(std::vector<std::string> posts,
                             codePosts(code.container, credit, options));
    return SharedCode{std::move(ids), std::move(credit), std::move(code), std::move(posts)};
}

}  // namespace

Result<std::vector<SharedCode>> makeCodes(const catalogue::Library& library,
                                          const std::vector<core::TextureId>& ids,
                                          const ShareOptions& options,
                                          const core::Progress& progress) {
    std::vector<SharedCode> codes;
    for (const core::TextureId id : ids) {
        if (progress.stopRequested()) return core::stoppedError();
        progress.tell(std::ssize(codes), std::ssize(ids), "");
        PANTILE_ASSIGN_OR_RETURN(const catalogue::TextureRecord record,
                                 catalogue::readTexture(library, id));
        PANTILE_ASSIGN_OR_RETURN(codec::TextCode code,
                                 codec::encodeTextCode(record.texture, options.code));
        Credit credit{record.row.title, record.row.author, record.row.licence, 1};
        PANTILE_ASSIGN_OR_RETURN(
            SharedCode shared, withPosts({id}, std::move(credit), std::move(code), options.posts));
        codes.push_back(std::move(shared));
    }
    progress.tell(std::ssize(ids), std::ssize(ids), "");
    return codes;
}

Result<SharedCode> makeSetCode(const catalogue::Library& library,
                               const std::vector<core::TextureId>& ids,
                               const ShareOptions& options) {
    std::vector<core::Texture> textures;
    for (const core::TextureId id : ids) {
        PANTILE_ASSIGN_OR_RETURN(catalogue::TextureRecord record,
                                 catalogue::readTexture(library, id));
        textures.push_back(std::move(record.texture));
    }
    PANTILE_ASSIGN_OR_RETURN(codec::TextCode code, codec::encodeSetCode(textures, options.code));
    return withPosts(ids, commonCredit(textures), std::move(code), options.posts);
}

codec::PaletteLookup paletteLookup(const catalogue::Library& library) {
    return [&library](core::Fingerprint fingerprint) -> std::optional<core::Palette> {
        const auto palette = catalogue::findPalette(library, fingerprint);
        return palette ? *palette : std::nullopt;
    };
}

}  // namespace pantile::tasks
