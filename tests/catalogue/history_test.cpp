#include "catalogue/history.h"

#include <map>

#include "catalogue/edit.h"
#include "catalogue/integrity.h"
#include "catalogue/library_fixture.h"
#include "catalogue/reader.h"

namespace pantile::catalogue {
namespace {

using core::ErrorKind;
using core::TextureId;
using tests::failsWith;
using tests::isOk;
using tests::LibraryTest;
using tests::Random;
using tests::textureOf;
using tests::titled;
using tests::withTitle;
using HistoryTest = LibraryTest;

TEST_F(HistoryTest, TellsWhatWasThereBeforeEachChange) {
    const TextureId id = add(textureOf(1, titled("Buoy", {"red"})));
    now += 60;
    ASSERT_THAT(setText(library(), {{id}}, withTitle("Bell buoy")), isOk());
    const std::vector<std::string> tags = {"brass"};
    ASSERT_THAT(changeTags(library(), {{id}}, tags, {}), isOk());
    ASSERT_THAT(removeTextures(library(), {{id}}), isOk());
    const auto revisions = history(library(), id);
    ASSERT_THAT(revisions, isOk());
    ASSERT_EQ(revisions->size(), 4U);
    EXPECT_EQ((*revisions)[0].kind, RevisionKind::Added);
    EXPECT_EQ((*revisions)[0].at, now - 60);
    EXPECT_EQ((*revisions)[0].before, RevisionBefore{});
    EXPECT_EQ((*revisions)[1].kind, RevisionKind::Text);
    EXPECT_EQ((*revisions)[1].at, now);
    EXPECT_EQ((*revisions)[1].before.title, "Buoy");
    EXPECT_FALSE((*revisions)[1].before.tags);
    EXPECT_EQ((*revisions)[2].kind, RevisionKind::Tags);
    EXPECT_EQ((*revisions)[2].before.tags, (std::vector<std::string>{"red"}));
    EXPECT_EQ((*revisions)[3].kind, RevisionKind::Removed);
    EXPECT_EQ((*revisions)[3].before.removed, false);
}

TEST_F(HistoryTest, TheWayBackIsARevisionItself) {
    const TextureId id = add(textureOf(1, titled("Buoy")));
    ASSERT_THAT(setText(library(), {{id}}, withTitle("Bell buoy")), isOk());
    EXPECT_EQ(revertTexture(library(), id, 1).value(), 1);
    EXPECT_EQ(readTexture(library(), id)->row.title, "Buoy");
    EXPECT_EQ(readTexture(library(), id)->row.revision, 3);
    EXPECT_EQ(revertTexture(library(), id, 2).value(), 1);
    EXPECT_EQ(readTexture(library(), id)->row.title, "Bell buoy");
    EXPECT_EQ(revertTexture(library(), id, 4).value(), 0);
}

TEST_F(HistoryTest, RefusesARevisionThatIsNotThere) {
    const TextureId id = add(textureOf(1));
    EXPECT_THAT(revertTexture(library(), id, 0), failsWith(ErrorKind::NotFound, "revision 0"));
    const auto refused = revertTexture(library(), id, 2);
    EXPECT_THAT(refused, failsWith(ErrorKind::NotFound, "revision 2"));
    EXPECT_EQ(refused.error().hint, "it has revisions 1 to 1");
    EXPECT_THAT(revertTexture(library(), {9}, 1), failsWith(ErrorKind::NotFound, "texture 9"));
    EXPECT_THAT(history(library(), {9}), failsWith(ErrorKind::NotFound, "texture 9"));
}

TEST_F(HistoryTest, ThePictureOfAnotherTextureCannotBeTakenBack) {
    const TextureId id = add(textureOf(1));
    const core::Texture other = textureOf(2);
    ASSERT_THAT(setContent(library(), id, other.grid(), other.palette()), isOk());
    const TextureId newcomer = add(textureOf(1));
    EXPECT_NE(newcomer, id);
    EXPECT_THAT(revertTexture(library(), id, 1), failsWith(ErrorKind::AlreadyExists, "texture 2"));
}

// A model in memory: for each texture, its state after every revision.
struct State {
    std::string title;
    std::vector<std::string> tags;
    std::uint64_t picture = 0;
    bool removed = false;
    bool operator==(const State&) const = default;
};

class Model {
public:
    std::map<std::int64_t, std::vector<State>> textures;

    State& change(std::int64_t id) {
        auto& states = textures.at(id);
        states.push_back(states.back());
        return states.back();
    }

    /// Forgets the newest state again if it is no other than the one before.
    std::int64_t settle(std::int64_t id) {
        auto& states = textures.at(id);
        if (states.back() != states[states.size() - 2]) return 1;
        states.pop_back();
        return 0;
    }

    bool isTaken(std::uint64_t picture, std::int64_t butNot) const {
        for (const auto& [id, states] : textures) {
            if (id != butNot && states.back().picture == picture) return true;
        }
        return false;
    }
};

class RandomEdits : public HistoryTest {
protected:
    void addOne() {
        State state{"t" + std::to_string(random.between(0, 4)), {"a"}, ++pictures, false};
        const TextureId id = add(textureOf(state.picture, titled(state.title, state.tags)));
        model.textures[id.value].push_back(state);
    }

    void editOne() {
        const std::int64_t id = random.between(1, static_cast<int>(model.textures.size()));
        const std::vector<TextureId> ids = {{id}};
        State& state = model.change(id);
        core::Result<std::int64_t> changed = std::int64_t{0};
        switch (random.between(0, 5)) {
            case 0:
                state.title = "t" + std::to_string(random.between(0, 4));
                changed = setText(library(), ids, withTitle(state.title));
                break;
            case 1: {
                const std::vector<std::string> tags = {
                    std::string(1, static_cast<char>(random.between('a', 'e')))};
                changed = changeTags(library(), ids, tags, state.tags);
                state.tags = tags;
                break;
            }
            case 2:
                state.removed = true;
                changed = removeTextures(library(), ids);
                break;
            case 3:
                state.removed = false;
                changed = recoverTextures(library(), ids);
                break;
            case 4: {
                state.picture = ++pictures;
                const core::Texture fresh = textureOf(state.picture);
                changed = setContent(library(), {id}, fresh.grid(), fresh.palette());
                break;
            }
            default: {
                const auto latest = static_cast<int>(model.textures.at(id).size()) - 1;
                const int number = random.between(1, latest);
                state = model.textures.at(id)[static_cast<std::size_t>(number) - 1];
                changed = revertTexture(library(), {id}, number);
                break;
            }
        }
        ASSERT_FALSE(model.isTaken(state.picture, id));
        ASSERT_THAT(changed, isOk());
        EXPECT_EQ(*changed, model.settle(id));
    }

    void expectSame() {
        for (const auto& [id, states] : model.textures) {
            const auto record = readTexture(library(), {id});
            ASSERT_THAT(record, isOk());
            const State& expected = states.back();
            EXPECT_EQ(record->row.title, expected.title);
            EXPECT_EQ(record->row.tags, expected.tags);
            EXPECT_EQ(record->row.removed, expected.removed);
            EXPECT_EQ(record->row.revision, static_cast<int>(states.size()));
            EXPECT_EQ(record->texture.grid(), textureOf(expected.picture).grid());
        }
    }

    Random random{0};
    Model model;
    std::uint64_t pictures = 0;
};

TEST_F(RandomEdits, KeepLibraryAndModelEqual) {
    for (std::uint64_t seed = 1; seed <= 4; ++seed) {
        SCOPED_TRACE("seed " + std::to_string(seed));
        random = Random(seed);
        for (int step = 0; step < 150; ++step) {
            ++now;
            if (model.textures.size() < 5 || random.between(0, 9) == 0) {
                addOne();
            } else {
                editOne();
            }
            if (HasFatalFailure()) return;
            if (step % 50 == 49) open();
        }
        expectSame();
        const auto report = checkLibrary(library());
        ASSERT_THAT(report, isOk());
        EXPECT_TRUE(report->ok) << report->problems.front().where << report->problems.front().what;
    }
}

}  // namespace
}  // namespace pantile::catalogue
