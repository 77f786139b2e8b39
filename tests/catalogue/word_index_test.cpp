// The index of words and the facts keep in step with the textures, whatever changes them.

#include "catalogue/word_index.h"

#include "catalogue/history.h"
#include "catalogue/integrity.h"
#include "catalogue/library_fixture.h"
#include "catalogue/query_parser.h"
#include "catalogue/reader.h"

namespace pantile::catalogue {
namespace {

using core::TextureId;
using tests::isOk;
using tests::LibraryTest;
using tests::textureOf;
using tests::titled;

class WordIndexTest : public LibraryTest {
protected:
    std::int64_t count(std::string_view query) {
        return findTextures(library(), parseQuery(query).value())->total;
    }

    void expectSound(const std::string& after) {
        EXPECT_EQ(checkLibrary(library())->problems, std::vector<Problem>{}) << after;
    }

    void changeAtRandom(tests::Random& random, std::uint64_t step) {
        const TextureId id{random.between(1, 6)};
        const std::vector<std::string> words = {"kelp", "Ébène", "rope net", "砂", ""};
        const auto word = [&] { return words[static_cast<std::size_t>(random.between(0, 4))]; };
        TextPatch patch;
        switch (random.between(0, 6)) {
            case 0:
                add(textureOf(step + 100, titled(word(), {"tag" + std::to_string(step % 3)})));
                return;
            case 1:
                patch.title = word();
                patch.note = word();
                patch.stars = static_cast<int>(step % 6);
                (void)setText(library(), {&id, 1}, patch);
                return;
            case 2:
                (void)removeTextures(library(), {&id, 1});
                return;
            case 3:
                (void)purgeRemoved(library(), {&id, 1});
                return;
            case 4:
                (void)setContent(library(), id, textureOf(step + 900).grid(), tests::paletteOf(8));
                return;
            case 5:
                (void)setEstimate(library(), id, {static_cast<std::int64_t>(step), 7, "k"});
                return;
            default:
                (void)revertTexture(library(), id, 1);
        }
    }
};

TEST_F(WordIndexTest, FollowsEveryChange) {
    tests::Random random(31);
    for (std::uint64_t seed = 1; seed <= 6; ++seed) add(textureOf(seed, titled("wet sand")));
    for (std::uint64_t step = 0; step < 120; ++step) {
        changeAtRandom(random, step);
        if (step % 10 == 9) expectSound("step " + std::to_string(step));
    }
}

// What is changed and not yet committed is found too; what is undone is not, whatever was written
// into the index in between.
TEST_F(WordIndexTest, FollowsTransactionsInOneAnother) {
    const TextureId first = add(textureOf(1, titled("kelp")));
    {
        auto outer = library().begin();
        ASSERT_THAT(setText(library(), {&first, 1}, tests::withTitle("rope")), isOk());
        {
            const auto inner = library().begin();
            ASSERT_THAT(setText(library(), {&first, 1}, tests::withTitle("sand")), isOk());
            EXPECT_EQ(count("sand"), 1);
            EXPECT_EQ(count("rope"), 0);
        }
        EXPECT_EQ(count("sand"), 0);
        EXPECT_EQ(count("rope"), 1);
        add(textureOf(2, titled("rope")));
        EXPECT_EQ(count("rope"), 2);
        ASSERT_THAT(outer->commit(), isOk());
    }
    EXPECT_EQ(count("rope"), 2);
    expectSound("committing");
    {
        const auto undone = library().begin();
        add(textureOf(3, titled("slate")));
        ASSERT_THAT(setText(library(), {&first, 1}, tests::withTitle("slate")), isOk());
        EXPECT_EQ(count("slate"), 2);
    }
    EXPECT_EQ(count("slate"), 0);
    expectSound("undoing");
}

TEST_F(WordIndexTest, IsMadeAnewByAnotherFolding) {
    add(textureOf(1, titled("Ébène", {"Été"})));
    close();
    OpenOptions other = options();
    other.folding = {"shouting", [](std::string_view text) {
                         std::string folded(text);
                         for (char& c : folded) c = c == 'b' ? 'p' : c;
                         return folded;
                     }};
    {
        OpenOptions reading = other;
        reading.access = OpenOptions::Access::ReadOnly;
        EXPECT_THAT(Library::open(path(), reading),
                    tests::failsWith(core::ErrorKind::Unsupported, "indexed anew"));
        const auto opened = Library::open(path(), other);
        ASSERT_THAT(opened, isOk());
        const auto total = [&](std::string_view query) {
            return findTextures(*opened, parseQuery(query).value())->total;
        };
        EXPECT_EQ(total("pène"), 1);
        EXPECT_EQ(total("ebene"), 0);
        EXPECT_EQ(total("tag:Été"), 1);
        EXPECT_EQ(total("tag:ete"), 0);
        EXPECT_TRUE(checkLibrary(*opened)->ok);
    }
    open();
    EXPECT_EQ(count("ebene"), 1);
    EXPECT_EQ(count("tag:ete"), 1);
    expectSound("folding anew");
}

TEST_F(WordIndexTest, NeedsAFolding) {
    OpenOptions none = options();
    none.folding = {};
    EXPECT_THAT(Library::open(path(), none),
                tests::failsWith(core::ErrorKind::Internal, "fold text"));
}

// Triggers see what changes, not those who change it.
TEST_F(WordIndexTest, FollowsBareSql) {
    add(textureOf(1, titled("Wet sand")));
    const auto transaction = library().begin();
    forge("UPDATE textures SET title = 'Rope', stars = 4");
    EXPECT_EQ(count("rope stars:4"), 1);
    EXPECT_EQ(count("sand"), 0);
}

TEST_F(WordIndexTest, IsNotBelievedWhenForged) {
    add(textureOf(1, titled("Wet sand", {"kelp"})));
    for (const char* sql :
         {"UPDATE word_pages SET words = x'6E6574'", "UPDATE word_pages SET page = -1",
          "INSERT INTO word_pages (page, words) VALUES (7, x'6E6574FF')", "DELETE FROM word_pages",
          "DELETE FROM fact_pages", "UPDATE fact_pages SET id = id + 1",
          "UPDATE fact_pages SET numbers = x'00' WHERE id = 0",
          "UPDATE fact_pages SET numbers = (SELECT numbers FROM fact_pages WHERE id = 4 << 56) "
          "WHERE "
          "id = 1 << 56",
          "INSERT INTO fact_pages SELECT id + 7, numbers FROM fact_pages WHERE id = 0",
          "DELETE FROM fact_pages WHERE id = 1 << 56", "UPDATE tags SET folded = 'help'",
          "UPDATE contents SET tone = tone + 1", "UPDATE contents SET used = x'01'"}) {
        const auto transaction = library().begin();
        forge(sql);
        EXPECT_FALSE(checkLibrary(library())->ok) << sql;
    }
    expectSound("taking it back");
}

}  // namespace
}  // namespace pantile::catalogue
