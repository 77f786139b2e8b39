#include "catalogue/integrity.h"

#include <algorithm>

#include "catalogue/canvases.h"
#include "catalogue/edit.h"
#include "catalogue/library_fixture.h"
#include "catalogue/reader.h"

namespace pantile::catalogue {
namespace {

using core::ErrorKind;
using tests::failsWith;
using tests::isOk;
using tests::LibraryTest;
using tests::textureOf;
using tests::titled;

class IntegrityTest : public LibraryTest {
protected:
    void SetUp() override {
        for (std::uint64_t seed = 1; seed <= 3; ++seed) add(textureOf(seed, titled("t", {"x"})));
        core::Canvas canvas;
        canvas.name = "Quay";
        canvas.size = {16, 16};
        ASSERT_THAT(addCanvas(library(), canvas), isOk());
    }

    CheckReport check() {
        auto report = checkLibrary(library());
        EXPECT_THAT(report, isOk());
        return report ? *report : CheckReport{};
    }
};

TEST_F(IntegrityTest, FindsNothingInASoundLibrary) {
    ASSERT_THAT(removeTextures(library(), {{core::TextureId{2}}}), isOk());
    const CheckReport report = check();
    EXPECT_TRUE(report.ok);
    EXPECT_EQ(report.textures, 3);
    EXPECT_TRUE(report.problems.empty());
}

TEST_F(IntegrityTest, FindsForgeriesAndNamesTheirPlace) {
    const std::vector<std::pair<std::string, std::string>> forgeries = {
        {"UPDATE contents SET body = zeroblob(length(body)) WHERE id = 2", "texture 2"},
        {"UPDATE contents SET colours = colours - 1 WHERE id = 3", "texture 3"},
        {"UPDATE contents SET height = 15 WHERE id = 1", "texture 1"},
        {"UPDATE palettes SET fingerprint = 0", "palette 1"},
        {"UPDATE textures SET title = char(8238) WHERE id = 1", "texture 1"},
        {"UPDATE textures SET revision = 9 WHERE id = 1", "texture 1"},
        {"DELETE FROM revisions WHERE texture_id = 3", "texture 3"},
        {"UPDATE revisions SET kind = 70 WHERE texture_id = 3", "texture 3"},
        {"UPDATE canvases SET free_colours = 1", "canvas 'Quay'"},
        {"CREATE TRIGGER t AFTER INSERT ON tags BEGIN DELETE FROM textures; END", "file"},
    };
    for (const auto& [sql, where] : forgeries) {
        const auto transaction = library().begin();
        forge(sql);
        const CheckReport report = check();
        EXPECT_FALSE(report.ok) << sql;
        const auto named =
            std::count_if(report.problems.begin(), report.problems.end(),
                          [&, place = where](const Problem& p) { return p.where == place; });
        EXPECT_GT(named, 0) << sql;
    }
    EXPECT_TRUE(check().ok);
}

// Nothing but its seal knows what a note of old said, or who wrote a load where.
TEST_F(IntegrityTest, FindsWhatOnlySealsVouchFor) {
    ASSERT_THAT(setText(library(), {{core::TextureId{1}}}, tests::withTitle("Kelp")), isOk());
    for (const std::string change :
         {"revisions SET title = 'T' WHERE number = 2", "textures SET title = 'KELP' WHERE id = 1",
          "canvases SET grid_x = grid_x + 1", "textures SET note = 'At low tide' WHERE id = 2"}) {
        const std::string table = change.substr(0, change.find(' '));
        const auto transaction = library().begin();
        forge("DROP TRIGGER seal_changed_" + table);
        forge("UPDATE " + change);
        const CheckReport report = check();
        const auto named =
            std::count_if(report.problems.begin(), report.problems.end(),
                          [&](const Problem& p) { return p.where == "table " + table; });
        EXPECT_EQ(named, 1) << change;
    }
    EXPECT_TRUE(check().ok);
}

TEST_F(IntegrityTest, FindsReferencesToNothing) {
    forge("PRAGMA foreign_keys=OFF; DELETE FROM tags");
    const CheckReport report = check();
    ASSERT_FALSE(report.ok);
    EXPECT_NE(report.problems.front().what.find("missing tags"), std::string::npos);
}

// One changed byte in a grid passes SQLite's own check; the fingerprint finds every one.
TEST_F(IntegrityTest, FindsEverySingleByteChangedInAGrid) {
    const auto size = library().connection().number("SELECT length(body) FROM contents WHERE id=1");
    ASSERT_GT(*size, 20);
    for (std::int64_t at = 1; at <= *size; at += 7) {
        const auto transaction = library().begin();
        const std::string place = std::to_string(at);
        forge("UPDATE contents SET body = CAST(substr(body, 1, " + place +
              " - 1) || CASE WHEN substr(body, " + place +
              ", 1) = x'3c' THEN x'c3' ELSE x'3c' END || substr(body, " + place +
              " + 1) AS BLOB) WHERE id = 1");
        EXPECT_EQ(
            library().connection().number("SELECT length(body) FROM contents WHERE id=1").value(),
            *size);
        EXPECT_FALSE(check().ok) << "byte " << at;
    }
}

// Damage to the file at random: never a crash, never a texture that is not what was added.
TEST_F(IntegrityTest, NeverGivesAWrongPictureFromADamagedFile) {
    close();
    const std::string sound = tests::readBytes(path());
    tests::Random random(20260101);
    int refused = 0;
    for (int round = 0; round < 300; ++round) {
        std::string bytes = sound;
        const auto place =
            static_cast<std::size_t>(random.between(100, static_cast<int>(bytes.size()) - 1));
        bytes[place] = static_cast<char>(bytes[place] ^ random.between(1, 255));
        tests::writeBytes(path(), bytes);
        auto opened = Library::open(path(), options());
        if (!opened) {
            ++refused;
            continue;
        }
        for (std::uint64_t seed = 1; seed <= 3; ++seed) {
            const auto record = readTexture(*opened, {static_cast<std::int64_t>(seed)});
            if (record) {
                EXPECT_EQ(record->texture.grid(), textureOf(seed).grid()) << "byte " << place;
            } else {
                ++refused;
            }
        }
        (void)checkLibrary(*opened);
    }
    EXPECT_GT(refused, 0);
    tests::writeBytes(path(), sound);
}

TEST_F(IntegrityTest, StopsWhenAsked) {
    std::stop_source source;
    core::Progress progress;
    progress.stop = source.get_token();
    std::int64_t told = 0;
    progress.report = [&](std::int64_t, std::int64_t total, std::string_view) {
        EXPECT_GT(total, 0);
        if (++told == 2) source.request_stop();
    };
    EXPECT_THAT(checkLibrary(library(), progress), failsWith(ErrorKind::Cancelled, "stopped"));
}

}  // namespace
}  // namespace pantile::catalogue
