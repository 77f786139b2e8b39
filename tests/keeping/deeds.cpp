#include "keeping/deeds.h"

#include <array>
#include <string>
#include <vector>

#include "catalogue/boards.h"
#include "catalogue/canvases.h"
#include "catalogue/edit.h"
#include "catalogue/history.h"
#include "catalogue/library_fixture.h"
#include "catalogue/loads.h"
#include "catalogue/palettes.h"
#include "catalogue/query_parser.h"
#include "catalogue/reader.h"
#include "catalogue/searches.h"
#include "catalogue/shelves.h"
#include "catalogue/tags.h"
#include "catalogue/writer.h"
#include "tasks/write_load.h"

namespace pantile::tests {
namespace {

using catalogue::Library;
using core::Result;
using core::TextureId;
using Ids = std::vector<TextureId>;

constexpr std::array<std::string_view, 8> kWords = {"kelp", "Slate",       "rope",  "lamp glass",
                                                    "Boje", "Küstennebel", "brass", "wet sand"};
constexpr std::array<std::string_view, 6> kTags = {"shore",       "stone/slate", "stone/wet",
                                                   "night/lamps", "rope",        "draft"};
constexpr std::string_view kBoard = "Quay board";
constexpr core::Size kSize{4, 4};

template <typename List>
std::string oneOf(const List& list, Random& random) {
    return std::string(list[random.next() % list.size()]);
}

std::string numbered(std::string_view word, Random& random) {
    return std::string(word) + " " + std::to_string(random.between(1, 4));
}

core::Texture someTexture(Random& random) {
    core::TextureText text = titled(oneOf(kWords, random), {oneOf(kTags, random)});
    text.author = oneOf(kWords, random);
    text.note = numbered("seen at low tide", random);
    return textureOf(random.next(), std::move(text), kSize, 4);
}

/// Some of the textures that a query finds.
Result<Ids> some(const Library& library, Random& random, std::string_view query) {
    PANTILE_ASSIGN_OR_RETURN(const auto parsed, catalogue::parseQuery(query));
    catalogue::FindOptions options;
    options.sort.field = catalogue::SortField::Id;
    PANTILE_ASSIGN_OR_RETURN(const Ids all, catalogue::findIds(library, parsed, options));
    if (all.empty()) return core::Error{core::ErrorKind::NotFound, "there is no texture", ""};
    Ids ids;
    for (int i = random.between(1, 3); i > 0; --i) ids.push_back(all[random.next() % all.size()]);
    return ids;
}

Result<void> asDone(const Result<std::int64_t>& changed) {
    PANTILE_RETURN_IF_ERROR(changed);
    return {};
}

Result<void> add(Library& library, Random& random) {
    PANTILE_RETURN_IF_ERROR(catalogue::addTexture(library, someTexture(random)));
    return {};
}

Result<void> addSeveral(Library& library, Random& random) {
    PANTILE_ASSIGN_OR_RETURN(auto transaction, library.begin());
    for (int i = random.between(2, 5); i > 0; --i) PANTILE_RETURN_IF_ERROR(add(library, random));
    return transaction.commit();
}

Result<void> setText(Library& library, Random& random) {
    PANTILE_ASSIGN_OR_RETURN(const Ids ids, some(library, random, "all"));
    catalogue::TextPatch patch;
    patch.title = numbered(oneOf(kWords, random), random);
    if (random.between(0, 1) == 0) patch.note = numbered("rain", random);
    if (random.between(0, 1) == 0) patch.stars = random.between(0, 5);
    return asDone(catalogue::setText(library, ids, patch));
}

Result<void> tag(Library& library, Random& random) {
    PANTILE_ASSIGN_OR_RETURN(const Ids ids, some(library, random, "all"));
    const std::vector<std::string> on = {oneOf(kTags, random), oneOf(kTags, random)};
    const std::vector<std::string> off = {oneOf(kTags, random)};
    return asDone(catalogue::changeTags(library, ids, on, off));
}

Result<void> touchUp(Library& library, Random& random) {
    PANTILE_ASSIGN_OR_RETURN(const Ids ids, some(library, random, "all"));
    const core::Texture fresh = someTexture(random);
    return asDone(catalogue::setContent(library, ids.front(), fresh.grid(), fresh.palette()));
}

Result<void> remove(Library& library, Random& random) {
    PANTILE_ASSIGN_OR_RETURN(const Ids ids, some(library, random, "all"));
    return asDone(catalogue::removeTextures(library, ids));
}

Result<void> recover(Library& library, Random& random) {
    PANTILE_ASSIGN_OR_RETURN(const Ids ids, some(library, random, "is:removed"));
    return asDone(catalogue::recoverTextures(library, ids));
}

Result<void> revert(Library& library, Random& random) {
    PANTILE_ASSIGN_OR_RETURN(const Ids ids, some(library, random, "all"));
    PANTILE_ASSIGN_OR_RETURN(const auto revisions, catalogue::history(library, ids.front()));
    const int number = random.between(1, static_cast<int>(revisions.size()));
    return asDone(catalogue::revertTexture(library, ids.front(), number));
}

Result<void> purge(Library& library, Random& random) {
    PANTILE_ASSIGN_OR_RETURN(const Ids ids, some(library, random, "is:removed"));
    return asDone(catalogue::purgeRemoved(library, ids));
}

Result<void> shelve(Library& library, Random& random) {
    PANTILE_ASSIGN_OR_RETURN(const Ids ids, some(library, random, "all"));
    return asDone(catalogue::putOnShelf(library, ids, numbered("pier", random)));
}

Result<void> placeOnShelf(Library& library, Random& random) {
    PANTILE_ASSIGN_OR_RETURN(const Ids ids, some(library, random, "all"));
    return catalogue::placeOnShelf(library, ids, numbered("pier", random), random.between(1, 3));
}

Result<void> deleteShelf(Library& library, Random& random) {
    return catalogue::deleteShelf(library, numbered("pier", random));
}

Result<void> renameTag(Library& library, Random& random) {
    return asDone(catalogue::renameTag(library, oneOf(kTags, random),
                                       "tide/" + std::to_string(random.between(1, 9))));
}

Result<void> mergeTag(Library& library, Random& random) {
    return asDone(catalogue::mergeTag(library, oneOf(kTags, random), oneOf(kTags, random)));
}

Result<void> addAlias(Library& library, Random& random) {
    return catalogue::addTagAlias(library, "word" + std::to_string(random.between(1, 9)),
                                  oneOf(kTags, random));
}

Result<void> makeLoad(Library& library, Random& random) {
    PANTILE_ASSIGN_OR_RETURN(const Ids ids, some(library, random, "all"));
    catalogue::StoredLoad load;
    load.name = numbered("evening", random);
    load.board = kBoard;
    load.slots = ids;
    PANTILE_ASSIGN_OR_RETURN(const auto canvases, catalogue::listCanvases(library));
    if (!canvases.empty() && random.between(0, 1) == 1) load.canvas = canvases.front().name;
    return catalogue::addLoad(library, load);
}

Result<void> writeLoad(Library& library, Random& random) {
    tasks::WriteOptions options;
    options.form = tasks::LoadForm::Card;
    options.ifExists = tasks::IfExists::Replace;
    PANTILE_RETURN_IF_ERROR(tasks::writeStoredLoad(library, numbered("evening", random),
                                                   library.path().parent_path() / "card", options));
    return {};
}

Result<void> removeLoad(Library& library, Random& random) {
    return catalogue::removeLoad(library, numbered("evening", random));
}

Result<void> saveSearch(Library& library, Random& random) {
    return catalogue::saveSearch(
        library, {numbered("found", random), "tag:" + oneOf(kTags, random), "title"});
}

Result<void> namePalette(Library& library, Random& random) {
    return catalogue::addPalette(library, numbered("dusk", random),
                                 paletteOf(4, random.between(0, 9)));
}

Result<void> setCanvas(Library& library, Random& random) {
    PANTILE_ASSIGN_OR_RETURN(core::Canvas canvas, catalogue::readCanvas(library, "Quay"));
    canvas.freeColours = random.between(4, 16);
    return catalogue::setCanvas(library, canvas);
}

Result<void> estimate(Library& library, Random& random) {
    PANTILE_ASSIGN_OR_RETURN(const Ids ids, some(library, random, "all"));
    PANTILE_RETURN_IF_ERROR(catalogue::setSeam(library, ids.front(), random.between(0, 500)));
    return {};
}

constexpr std::array<Deed, 22> kDeeds = {{
    {"add", add},
    {"add several", addSeveral},
    {"set text", setText},
    {"tag", tag},
    {"touch up", touchUp},
    {"remove", remove},
    {"recover", recover},
    {"revert", revert},
    {"purge", purge},
    {"shelve", shelve},
    {"place on shelf", placeOnShelf},
    {"delete shelf", deleteShelf},
    {"rename tag", renameTag},
    {"merge tag", mergeTag},
    {"add alias", addAlias},
    {"make load", makeLoad},
    {"write load", writeLoad},
    {"remove load", removeLoad},
    {"save search", saveSearch},
    {"name palette", namePalette},
    {"set canvas", setCanvas},
    {"measure seam", estimate},
}};

}  // namespace

std::span<const Deed> deeds() {
    return kDeeds;
}

catalogue::OpenOptions deedOptions(const std::int64_t& number) {
    catalogue::OpenOptions options = plainOptions();
    options.now = [&number] { return kFirstNow + number; };
    return options;
}

Result<void> doDeed(Library& library, std::uint64_t seed, std::int64_t number) {
    Random random((seed << 32U) + static_cast<std::uint64_t>(number));
    // Half of all that is done is adding and tagging.
    const std::size_t chosen = random.next() % (2 * kDeeds.size());
    const Deed& deed = chosen < kDeeds.size() ? kDeeds[chosen] : kDeeds[chosen % 4];
    return deed.act(library, random);
}

bool isRefusal(const core::Error& error) {
    using core::ErrorKind;
    return error.kind == ErrorKind::NotFound || error.kind == ErrorKind::AlreadyExists ||
           error.kind == ErrorKind::InvalidInput || error.kind == ErrorKind::DoesNotFit;
}

Result<void> prepareForDeeds(Library& library) {
    PANTILE_ASSIGN_OR_RETURN(auto transaction, library.begin());
    core::Board board;
    board.name = kBoard;
    PANTILE_RETURN_IF_ERROR(catalogue::addBoard(library, board));
    core::Canvas canvas;
    canvas.name = "Quay";
    canvas.size = kSize;
    canvas.geometry = core::CanvasGeometry::beside(kSize);
    PANTILE_RETURN_IF_ERROR(catalogue::addCanvas(library, canvas));
    return transaction.commit();
}

void makeUsedLibrary(const std::filesystem::path& path) {
    constexpr std::uint64_t kSeed = 7;
    constexpr std::int64_t kMany = 100;
    std::int64_t number = 0;
    auto library = Library::open(path, deedOptions(number));
    ASSERT_THAT(library, isOk());
    ASSERT_THAT(prepareForDeeds(*library), isOk());
    while (++number < kMany) {
        const auto done = doDeed(*library, kSeed, number);
        ASSERT_TRUE(done || isRefusal(done.error())) << ::testing::PrintToString(done.error());
    }
    Random random(kSeed);
    ASSERT_THAT(remove(*library, random), isOk());
}

}  // namespace pantile::tests
