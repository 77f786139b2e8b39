// Single bytes and single pages of a library changed at random: it may refuse, and `check` may say
// what is wrong; it never crashes, and never answers wrongly while `check` is content.

#include <algorithm>
#include <cstdio>
#include <filesystem>
#include <map>
#include <string>

#include <gtest/gtest.h>

#include "catalogue/integrity.h"
#include "catalogue/library.h"
#include "keeping/answers.h"
#include "keeping/deeds.h"
#include "keeping/rounds.h"
#include "support/matchers.h"
#include "support/random.h"
#include "support/temporary_folder.h"
#include "tasks/files.h"
#include "tasks/text_folding.h"

namespace pantile::tests {
namespace {

namespace fs = std::filesystem;
using catalogue::Library;

constexpr std::size_t kPage = 4096;
constexpr std::uint64_t kMostBytes = 1 << 26;

class DamageTest : public ::testing::Test {
protected:
    void SetUp() override {
        makeUsedLibrary(path());
        m_lastId = open()->connection().number("SELECT max(id) FROM textures").value();
        m_right = answersOf(*open(), m_lastId);
        m_sound = tasks::readFile(path(), kMostBytes).value();
        ASSERT_EQ(m_sound.size() % kPage, 0U);
    }

    fs::path path() const { return m_folder.path() / "library.db"; }

    core::Result<Library> open() const {
        const std::int64_t number = 1000;
        return Library::open(path(), deedOptions(number));
    }

    void write(const std::string& bytes) const {
        for (const char* suffix : {"-wal", "-shm"}) fs::remove(path().string() + suffix);
        ASSERT_THAT(tasks::writeFile(path(), bytes, tasks::IfExists::Replace), isOk());
    }

    /// One byte changed, or one page: made empty, random, or another page's.
    std::string damaged(Random& random) {
        std::string bytes = m_sound;
        const auto anyPlace = [&] { return random.next() % bytes.size(); };
        const auto anyPage = [&] { return random.next() % (bytes.size() / kPage) * kPage; };
        const int kind = random.between(0, 9);
        if (kind < 7) {
            const std::size_t place = anyPlace();
            bytes[place] = static_cast<char>(bytes[place] ^ random.between(1, 255));
            m_damage = "byte " + std::to_string(place);
            return bytes;
        }
        const std::size_t page = anyPage();
        m_damage = "page " + std::to_string(page / kPage + 1);
        const auto begin = bytes.begin() + static_cast<std::ptrdiff_t>(page);
        const auto end = begin + kPage;
        if (kind == 7) std::fill(begin, end, '\0');
        if (kind == 8) std::generate(begin, end, [&] { return static_cast<char>(random.next()); });
        if (kind == 9) {
            const std::size_t other = anyPage();
            m_damage += " from page " + std::to_string(other / kPage + 1);
            std::copy_n(m_sound.begin() + static_cast<std::ptrdiff_t>(other), kPage, begin);
        }
        return bytes;
    }

    void judge() {
        const auto opened = open();
        if (!opened) {
            ++m_refused;
            return;
        }
        const auto answers = answersOf(*opened, m_lastId);
        const auto report = catalogue::checkLibrary(*opened);
        const bool isTold = !report || !report->ok;
        if (isTold) ++m_told;
        for (std::size_t i = 0; i < answers.size(); ++i) {
            if (answers[i].text == m_right[i].text) continue;
            if (!answers[i].text) ++m_errors;
            if (answers[i].text && !isTold) {
                ADD_FAILURE() << m_damage << ": " << answers[i].question << '\n'
                              << *answers[i].text << '\n'
                              << m_right[i].text.value_or("an error");
                return;
            }
        }
    }

    TemporaryFolder m_folder;
    std::string m_sound;
    std::string m_damage;
    std::vector<Answer> m_right;
    std::int64_t m_lastId = 0;
    int m_refused = 0;
    int m_told = 0;
    std::int64_t m_errors = 0;
};

TEST_F(DamageTest, IsNeverSilent) {
    const int all = rounds(12, 10'000);
    Random random(20261126);
    for (int i = 0; i < all; ++i) {
        write(damaged(random));
        judge();
    }
    std::printf(
        "%d damages to %zu bytes: %d refused at opening, %d found by check, %lld answers "
        "refused\n",
        all, m_sound.size(), m_refused, m_told, static_cast<long long>(m_errors));
}

}  // namespace
}  // namespace pantile::tests
