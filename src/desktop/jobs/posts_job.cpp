#include "desktop/jobs/posts_job.h"

#include <QCoreApplication>
#include <QLocale>

#include "desktop/texts.h"
#include "tasks/library_place.h"

namespace pantile::desktop {

using core::Result;

namespace {

Result<std::vector<tasks::SharedCode>> sharedCodes(const PostsRequest& request,
                                                   const core::Progress& progress) {
    PANTILE_ASSIGN_OR_RETURN(const catalogue::Library library,
                             tasks::openLibrary(request.libraryPath, tasks::Purpose::Look));
    if (!request.asSet || request.ids.size() < 2)
        return tasks::makeCodes(library, request.ids, request.options, progress);
    PANTILE_ASSIGN_OR_RETURN(tasks::SharedCode set,
                             tasks::makeSetCode(library, request.ids, request.options));
    return std::vector{std::move(set)};
}

QString postName(const tasks::SharedCode& code, std::size_t number) {
    const QString whole = code.ids.size() > 1
                              ? counted("posts", "%1 texture", "%1 textures", std::ssize(code.ids))
                              : shownTitle(code.credit.title);
    if (code.posts.size() == 1) return whole;
    return QCoreApplication::translate("posts", "%1, part %2 of %3")
        .arg(whole)
        .arg(number)
        .arg(code.posts.size());
}

}  // namespace

Result<Posts> makePosts(const PostsRequest& request, const core::Progress& progress) {
    PANTILE_ASSIGN_OR_RETURN(const auto codes, sharedCodes(request, progress));
    Posts posts;
    for (const tasks::SharedCode& code : codes) {
        posts.bytes += static_cast<std::int64_t>(code.code.bytes);
        for (std::size_t i = 0; i < code.posts.size(); ++i) {
            const auto length = static_cast<std::int64_t>(tasks::postLength(code.posts[i]));
            posts.characters += length;
            posts.posts.push_back({QStringLiteral("%1 · %2").arg(
                                       postName(code, i + 1),
                                       counted("posts", "%1 character", "%1 characters", length)),
                                   fromUtf8(code.posts[i])});
        }
    }
    return posts;
}

}  // namespace pantile::desktop
