// unkept_work.h: what a program that dies leaves is kept at the next start.

#include "tasks/unkept_work.h"

#include <csignal>
#include <sys/wait.h>
#include <unistd.h>

#include <gmock/gmock.h>

#include "catalogue/edit.h"
#include "catalogue/history.h"
#include "tasks/library_fixture.h"

namespace pantile::tasks {
namespace {

using core::TextureId;
using ::testing::IsEmpty;
using ::testing::SizeIs;
using tests::isOk;

namespace fs = std::filesystem;

class UnkeptWorkTest : public tests::LibraryFixture {
protected:
    UnkeptWork workOn(TextureId of, int seed) const {
        return {of, catalogue::readTexture(m_library, of)->texture, texture(seed)};
    }

    /// As a program would that is killed then.
    void saveAndDie(const UnkeptWork& work) const {
        const pid_t child = fork();
        ASSERT_GE(child, 0);
        if (child == 0) {
            const auto file = WorkFile::claim(m_library.path());
            const bool isSaved = file && file->save(work);
            kill(getpid(), isSaved ? SIGKILL : SIGTERM);
        }
        int status = 0;
        ASSERT_EQ(waitpid(child, &status, 0), child);
        ASSERT_TRUE(WIFSIGNALED(status) && WTERMSIG(status) == SIGKILL);
    }

    std::vector<RecoveredWork> recover() {
        auto recovered = recoverWork(m_library);
        EXPECT_THAT(recovered, isOk());
        return *std::move(recovered);
    }

    const core::Grid grid(TextureId of) const {
        return catalogue::readTexture(m_library, of)->texture.grid();
    }

    std::string file(int number = 1) const {
        return path("library.db.work-" + std::to_string(number));
    }

    TextureId id = add(texture(1));
};

TEST_F(UnkeptWorkTest, OfADeadProgramBecomesARevision) {
    saveAndDie(workOn(id, 2));
    ASSERT_TRUE(fs::exists(file()));
    EXPECT_TRUE(isWorkBeside(m_library.path()));
    const auto recovered = recover();
    ASSERT_THAT(recovered, SizeIs(1));
    EXPECT_EQ(recovered[0].kept->id, id);
    EXPECT_FALSE(recovered[0].kept->isBeside);
    EXPECT_EQ(grid(id), texture(2).grid());
    EXPECT_THAT(*catalogue::history(m_library, id), SizeIs(2));
    EXPECT_FALSE(isWorkBeside(m_library.path()));
    EXPECT_THAT(recover(), IsEmpty());
}

TEST_F(UnkeptWorkTest, OfARunningProgramIsLeftAlone) {
    const auto mine = WorkFile::claim(m_library.path());
    ASSERT_THAT(mine, isOk());
    ASSERT_THAT(mine->save(workOn(id, 2)), isOk());
    EXPECT_THAT(recover(), IsEmpty());
    // A second program has a file of its own.
    saveAndDie(workOn(id, 3));
    EXPECT_TRUE(fs::exists(file(2)));
    EXPECT_THAT(recover(), SizeIs(1));
    EXPECT_EQ(grid(id), texture(3).grid());
    EXPECT_TRUE(fs::exists(file()));
    ASSERT_THAT(mine->clear(), isOk());
    EXPECT_FALSE(fs::exists(file()));
}

TEST_F(UnkeptWorkTest, StandsBesideWhatOthersChangedMeanwhile) {
    const UnkeptWork work = workOn(id, 2);
    saveAndDie(work);
    ASSERT_THAT(keepWork(m_library, workOn(id, 3)), isOk());
    auto recovered = recover();
    ASSERT_THAT(recovered, SizeIs(1));
    EXPECT_TRUE(recovered[0].kept->isBeside);
    EXPECT_EQ(grid(id), texture(3).grid());
    EXPECT_EQ(grid(recovered[0].kept->id), texture(2).grid());

    saveAndDie(workOn(id, 4));
    ASSERT_THAT(catalogue::removeTextures(m_library, std::span(&id, 1)), isOk());
    recovered = recover();
    ASSERT_THAT(recovered, SizeIs(1));
    EXPECT_EQ(grid(recovered[0].kept->id), texture(4).grid());
}

TEST_F(UnkeptWorkTest, ThatTheLibraryHasAlreadyIsNotKeptTwice) {
    const UnkeptWork work = workOn(id, 2);
    saveAndDie(work);
    const TextureId other = add(texture(2));
    const auto recovered = recover();
    ASSERT_THAT(recovered, SizeIs(1));
    EXPECT_FALSE(recovered[0].kept);
    EXPECT_EQ(grid(other), texture(2).grid());
    EXPECT_EQ(textureCount(), 2);
    EXPECT_FALSE(isWorkBeside(m_library.path()));
}

TEST_F(UnkeptWorkTest, EveryDamageIsPutAsideAndTheLibraryStaysAsItIs) {
    saveAndDie(workOn(id, 2));
    const std::string whole = *readFile(file(), 1U << 20U);
    const auto damaged = [&](const std::string& text) {
        fs::remove(file() + ".damaged");
        ASSERT_THAT(writeFile(file(), text, IfExists::Replace), isOk());
        const auto recovered = recover();
        ASSERT_THAT(recovered, SizeIs(1));
        EXPECT_FALSE(recovered[0].kept);
        EXPECT_EQ(recovered[0].damaged, file() + ".damaged");
        EXPECT_EQ(*readFile(file() + ".damaged", 1U << 23U), text);
        EXPECT_EQ(grid(id), texture(1).grid());
    };
    damaged("");
    damaged("driftwood");
    damaged(whole.substr(0, whole.size() / 2));
    damaged(whole.substr(0, whole.size() * 3 / 4));
    damaged("x" + whole);
    std::string other = whole;
    other.replace(other.find("Texture 1"), 9, "Texture -");
    damaged(other);
    damaged(std::string(5U << 20U, 'x'));
}

TEST_F(UnkeptWorkTest, AFolderThatTakesNoFileIsTold) {
    const auto refused = WorkFile::claim(path("nowhere/library.db"));
    EXPECT_FALSE(refused);
    EXPECT_FALSE(isWorkBeside(path("nowhere/library.db")));
}

}  // namespace
}  // namespace pantile::tasks
