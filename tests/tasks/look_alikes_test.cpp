#include "tasks/look_alikes.h"

#include <filesystem>
#include <stop_token>

#include "catalogue/edit.h"
#include "catalogue/query_parser.h"
#include "picture/resize.h"
#include "picture/transform.h"
#include "tasks/find_textures.h"
#include "tasks/gather.h"
#include "tasks/library_fixture.h"

namespace pantile::tasks {
namespace {

using core::ErrorKind;
using core::TextureId;
using tests::failsWith;
using tests::isOk;

class LookAlikes : public tests::LibraryFixture {
protected:
    static core::Texture with(const core::Grid& grid, const core::Texture& of) {
        return *core::Texture::create(grid, of.palette(), of.text());
    }

    static core::Texture mirroredTexture(int seed) {
        const core::Texture original = texture(seed);
        return with(picture::mirrored(original.grid(), picture::Mirror::LeftRight), original);
    }

    /// One cell of 64 in another colour.
    static core::Texture touchedTexture(int seed) {
        const core::Texture original = texture(seed);
        core::Grid grid = original.grid();
        grid.set(3, 3, static_cast<core::PaletteIndex>((grid.at(3, 3) + 1) % 4));
        return with(grid, original);
    }

    static std::vector<std::int64_t> idsOf(const std::vector<LookAlike>& list) {
        std::vector<std::int64_t> ids;
        for (const LookAlike& alike : list) ids.push_back(alike.id.value);
        return ids;
    }
};

TEST_F(LookAlikes, AreFoundWithWhatWasDone) {
    const TextureId first = add(texture(1));
    add(texture(2));
    const TextureId mirrored = add(mirroredTexture(1));
    const TextureId touched = add(touchedTexture(1));

    const auto same = similarTo(m_library, first, 0);
    ASSERT_THAT(same, isOk());
    ASSERT_EQ(same->size(), 1U);
    EXPECT_EQ(same->front().id, mirrored);
    EXPECT_EQ(same->front().how, "mirrored left to right");
    EXPECT_EQ(same->front().title, "Tile 1");

    const auto near = similarTo(m_library, first, 5);
    ASSERT_THAT(near, isOk());
    EXPECT_EQ(idsOf(*near), (std::vector{mirrored.value, touched.value}));
    EXPECT_GT(near->back().distance, 0);
    EXPECT_EQ(near->back().how, "nearly the same: 1 of 64 cells differs");
}

TEST_F(LookAlikes, ComeInGroups) {
    const TextureId first = add(texture(1));
    const TextureId second = add(texture(2));
    const TextureId mirrored = add(mirroredTexture(1));
    const TextureId touched = add(touchedTexture(2));
    const auto exact = findDuplicates(m_library, 0);
    ASSERT_THAT(exact, isOk());
    ASSERT_EQ(exact->size(), 1U);
    EXPECT_EQ(idsOf(exact->front()), (std::vector{first.value, mirrored.value}));
    EXPECT_EQ(exact->front().front().how, "");
    const auto near = findDuplicates(m_library, 5);
    ASSERT_THAT(near, isOk());
    ASSERT_EQ(near->size(), 2U);
    EXPECT_EQ(idsOf(near->back()), (std::vector{second.value, touched.value}));
}

TEST_F(LookAlikes, LeaveRemovedTexturesOut) {
    const TextureId first = add(texture(1));
    const TextureId mirrored = add(mirroredTexture(1));
    ASSERT_THAT(catalogue::removeTextures(m_library, {{mirrored}}), isOk());
    EXPECT_TRUE(similarTo(m_library, first, 100)->empty());
    EXPECT_EQ(idsOf(*similarTo(m_library, mirrored, 0)), (std::vector{first.value}));
    EXPECT_TRUE(findDuplicates(m_library, 100)->empty());
}

TEST_F(LookAlikes, FollowThePicture) {
    const TextureId first = add(texture(1));
    const TextureId other = add(mirroredTexture(1));
    ASSERT_EQ(similarTo(m_library, first, 0)->size(), 1U);
    const core::Texture changed = texture(9);
    ASSERT_THAT(catalogue::setContent(m_library, other, changed.grid(), changed.palette()), isOk());
    EXPECT_TRUE(similarTo(m_library, first, 0)->empty());
}

TEST_F(LookAlikes, AreSearchedFor) {
    const TextureId first = add(texture(1));
    const TextureId second = add(texture(2));
    const TextureId mirrored = add(mirroredTexture(1));
    const TextureId touched = add(touchedTexture(1));
    const auto found = [&](const std::string& text) {
        const auto query = catalogue::parseQuery(text);
        EXPECT_THAT(query, isOk());
        catalogue::FindOptions byId;
        byId.sort.field = catalogue::SortField::Id;
        return findIds(m_library, *query, byId).value();
    };
    using Ids = std::vector<TextureId>;
    EXPECT_EQ(found("like:1"), (Ids{mirrored, touched}));
    EXPECT_EQ(found("like:1~0"), (Ids{mirrored}));
    EXPECT_EQ(found("-like:1"), (Ids{first, second}));
    EXPECT_EQ(found("(like:1~0 | id:2) -like:2"), (Ids{second, mirrored}));
    EXPECT_EQ(findTextures(m_library, *catalogue::parseQuery("like:4"))->total, 2);
    EXPECT_THAT(findIds(m_library, *catalogue::parseQuery("like:99")),
                failsWith(ErrorKind::NotFound, "99"));
    EXPECT_THAT(catalogue::findIds(m_library, *catalogue::parseQuery("like:1")),
                failsWith(ErrorKind::Internal, "not looked up"));
}

TEST_F(LookAlikes, AreSaidWhenATextureIsAdded) {
    ASSERT_THAT(gather(m_library,
                       {{write("kelp.csv", "# palette #1b2631 #f2efe4\n0,1,1\n0,0,1\n"), {}}}, {}),
                isOk());
    const auto report =
        gather(m_library,
               {{write("mirror.csv", "# palette #1b2631 #f2efe4\n1,1,0\n1,0,0\n"), {}},
                {write("other.csv", "# palette #1b2631 #f2efe4\n1,1,1\n1,0,1\n"), {}}},
               {});
    ASSERT_THAT(report, isOk());
    ASSERT_EQ(report->added.size(), 2U);
    ASSERT_TRUE(report->added[0].alike);
    EXPECT_EQ(report->added[0].alike->id.value, 1);
    EXPECT_EQ(report->added[0].alike->how, "mirrored left to right");
    EXPECT_FALSE(report->added[1].alike);
}

TEST_F(LookAlikes, RefuseWhatTheyCannotTake) {
    const TextureId first = add(texture(1));
    EXPECT_THAT(similarTo(m_library, TextureId{9}, 0), failsWith(ErrorKind::NotFound, "9"));
    EXPECT_THAT(similarTo(m_library, first, 101), failsWith(ErrorKind::InvalidInput, "distance"));
    EXPECT_THAT(findDuplicates(m_library, -1), failsWith(ErrorKind::InvalidInput, "distance"));
    std::stop_source source;
    source.request_stop();
    EXPECT_THAT(findDuplicates(m_library, 0, {source.get_token(), {}}),
                failsWith(ErrorKind::Cancelled, "stopped"));
}

}  // namespace
}  // namespace pantile::tasks
