// write_load.h: from textures to files that are proven to draw them.

#include "catalogue/loads.h"

#include <algorithm>

#include "board/header_export.h"
#include "board/load_reader.h"
#include "board/small_picture.h"
#include "catalogue/boards.h"
#include "catalogue/canvases.h"
#include "catalogue/edit.h"
#include "tasks/files.h"
#include "tasks/load_costs.h"
#include "tasks/pier_fixture.h"
#include "tasks/write_load.h"

namespace pantile::tasks {
namespace {

using core::ErrorKind;
using tests::failsWith;
using tests::isOk;

namespace fs = std::filesystem;

class Loads : public tests::PierFixture {
protected:
    void storeLoad(const std::string& name, const std::vector<core::TextureId>& ids) {
        catalogue::StoredLoad load;
        load.name = name;
        load.board = "pier";
        load.slots = ids;
        ASSERT_THAT(catalogue::addLoad(m_library, load), isOk());
    }
};

TEST_F(Loads, BothFormsAreWrittenAndProven) {
    storeLoad("evening", {m_ids[3], m_ids[0]});
    WriteOptions options;
    options.form = LoadForm::Both;
    const auto written = writeStoredLoad(m_library, "evening", path("out"), options);
    ASSERT_THAT(written, isOk());
    EXPECT_EQ(written->files,
              (std::vector<fs::path>{path("out/evening/load.bin"), path("out/evening/contents.txt"),
                                     path("out/evening.h")}));
    for (const std::string& file :
         {path("out/evening"), path("out/evening/load.bin"), path("out/evening.h")}) {
        const auto verified = verifyLoadFile(file);
        ASSERT_THAT(verified, isOk());
        EXPECT_TRUE(verified->verified());
        ASSERT_EQ(verified->slots.size(), 2U);
        EXPECT_EQ(verified->slots[0].painted, texture(4).grid());
        EXPECT_EQ(verified->slots[1].painted, texture(1).grid());
    }
    EXPECT_EQ(fs::file_size(path("out/evening/load.bin")),
              static_cast<std::uintmax_t>(written->choice.bytes));
    ASSERT_EQ(catalogue::readLoad(m_library, "evening")->writings.size(), 1U);
}

// The toolkit's own geometry counts, not that of a smaller canvas that takes the texture as well.
TEST_F(Loads, AreWrittenForTheCanvasThatTheyWereMadeFor) {
    core::Canvas own;
    own.name = "own toolkit";
    own.size = {64, 64};
    own.geometry = core::CanvasGeometry::beside(own.size);
    own.geometry.gridCentre = {100, 60};
    own.geometry.swatchCentre.x += 100;
    ASSERT_THAT(catalogue::addCanvas(m_library, own), isOk());
    catalogue::StoredLoad load;
    load.name = "evening";
    load.board = "pier";
    load.slots = {m_ids[0]};
    load.canvas = "own toolkit";
    ASSERT_THAT(catalogue::addLoad(m_library, load), isOk());
    const auto written = writeStoredLoad(m_library, "evening", path("out"), {});
    ASSERT_THAT(written, isOk());
    const std::string bytes = readFile(path("out/evening.h"), 1U << 20U).value();
    const auto read = board::readLoad(*board::readHeader(bytes));
    ASSERT_THAT(read, isOk());
    EXPECT_EQ(read->slots[0].canvas.geometry.gridCentre, (core::Point{100, 60}));
    KnownCosts known;
    const auto costs = loadCosts(m_library, "pier", "own toolkit", load.slots, known);
    ASSERT_THAT(costs, isOk());
    EXPECT_EQ(costs->bytes, written->choice.bytes);
    EXPECT_EQ(costs->milliseconds, written->choice.milliseconds);
}

TEST_F(Loads, ABoardWithADisplayGetsSmallPictures) {
    const std::int64_t without = takeAll(m_library, {m_ids[0]}, m_options).value().bytes;
    core::Board board = catalogue::readBoard(m_library, "pier").value();
    board.display = {4, 6};
    ASSERT_THAT(catalogue::setBoard(m_library, board), isOk());
    storeLoad("evening", {m_ids[0]});
    const auto written = writeStoredLoad(m_library, "evening", path("out"), {LoadForm::Card, {}});
    ASSERT_THAT(written, isOk());
    EXPECT_EQ(written->choice.bytes, without + 4 * 4) << "8 x 8 cells in 4 x 6 are 4 x 4";
    const std::string file = *readFile(path("out/evening/load.bin"), 100000);
    EXPECT_EQ(static_cast<std::int64_t>(file.size()), written->choice.bytes);
    const auto read =
        board::readLoad(std::span(reinterpret_cast<const std::uint8_t*>(file.data()), file.size()));
    ASSERT_THAT(read, isOk());
    EXPECT_EQ(read->slots[0].picture, board::smallPicture(texture(1).grid(), {4, 6}));
}

TEST_F(Loads, TheFormFollowsTheBoardsMemory) {
    storeLoad("evening", {m_ids[0]});
    const auto header = writeStoredLoad(m_library, "evening", path("out"), {});
    ASSERT_THAT(header, isOk());
    EXPECT_EQ(header->files, std::vector<fs::path>{path("out/evening.h")});
}

TEST_F(Loads, TheOneInAFolderIsVerified) {
    storeLoad("evening", {m_ids[0]});
    EXPECT_THAT(verifyLoadFile(m_folder.path()),
                failsWith(ErrorKind::NotFound, "no load lies in the folder"));
    ASSERT_THAT(writeStoredLoad(m_library, "evening", path("out"), {LoadForm::Card, {}}), isOk());
    write("out/notes.txt", "nothing");
    EXPECT_TRUE(verifyLoadFile(path("out")).value().verified());
    ASSERT_THAT(writeStoredLoad(m_library, "evening", path("alone"), {}), isOk());
    EXPECT_TRUE(verifyLoadFile(path("alone")).value().verified());
    ASSERT_THAT(writeStoredLoad(m_library, "evening", path("out"), {}), isOk());
    const auto several = verifyLoadFile(path("out"));
    ASSERT_THAT(several, failsWith(ErrorKind::InvalidInput, "several loads lie in the folder"));
    EXPECT_EQ(several.error().hint,
              "give one of them: " + path("out/evening") + ", " + path("out/evening.h"));
}

TEST_F(Loads, AreWrittenForTheCanvasThatIsNamed) {
    core::Canvas own;
    own.name = "own";
    own.size = {64, 64};
    own.geometry = core::CanvasGeometry::beside(own.size);
    own.geometry.cellPitch = 5;
    ASSERT_THAT(catalogue::addCanvas(m_library, own), isOk());
    storeLoad("evening", {m_ids[0]});
    const auto usual = writeStoredLoad(m_library, "evening", path("usual"), {LoadForm::Card, {}});
    ASSERT_THAT(usual, isOk());
    EXPECT_EQ(usual->choice.slots[0].slot.canvas.name, "cells-16");
    WriteOptions options{LoadForm::Card, {}, "own"};
    const auto written = writeStoredLoad(m_library, "evening", path("out"), options);
    ASSERT_THAT(written, isOk());
    EXPECT_EQ(written->choice.slots[0].slot.canvas, own);
    EXPECT_NE(readFile(path("out/evening/contents.txt"), 100000)->find(" on the canvas own, "),
              std::string::npos);
    EXPECT_NE(*readFile(path("out/evening/load.bin"), 100000),
              *readFile(path("usual/evening/load.bin"), 100000));
    options.canvas = "won";
    EXPECT_THAT(writeStoredLoad(m_library, "evening", path("new"), options),
                failsWith(ErrorKind::NotFound, "won"));
}

TEST_F(Loads, TheContentsNameAuthorAndLicence) {
    catalogue::TextPatch patch;
    patch.author = "";
    patch.licence = "CC0-1.0";
    ASSERT_THAT(catalogue::setText(m_library, {{m_ids[1]}}, patch), isOk());
    patch.licence = "";
    ASSERT_THAT(catalogue::setText(m_library, {{m_ids[2]}}, patch), isOk());
    storeLoad("evening", {m_ids[0], m_ids[1], m_ids[2]});
    ASSERT_THAT(writeStoredLoad(m_library, "evening", path("out"), {LoadForm::Card, {}}), isOk());
    const std::string contents = *readFile(path("out/evening/contents.txt"), 100000);
    EXPECT_NE(contents.find(" bytes, by Mara Quill, CC0-1.0\nSlot 2: Tile 2, "), std::string::npos)
        << contents;
    EXPECT_NE(contents.find(" bytes, licence CC0-1.0\nSlot 3: Tile 3, "), std::string::npos)
        << contents;
    EXPECT_NE(contents.find(" bytes\n\n"), std::string::npos) << contents;
}

TEST_F(Loads, EveryDamagedByteOfTheWrittenFileIsFound) {
    storeLoad("evening", {m_ids[0]});
    WriteOptions options;
    options.form = LoadForm::Card;
    ASSERT_THAT(writeStoredLoad(m_library, "evening", path("out"), options), isOk());
    const std::string whole = *readFile(path("out/evening/load.bin"), 100000);
    for (std::size_t i = 0; i < whole.size(); i += 7) {
        std::string damaged = whole;
        damaged[i] = static_cast<char>(damaged[i] ^ 0x10);
        ASSERT_THAT(writeFile(path("damaged.bin"), damaged, IfExists::Replace), isOk());
        const auto verified = verifyLoadFile(path("damaged.bin"));
        EXPECT_FALSE(verified && verified->verified()) << "byte " << i;
    }
}

TEST_F(Loads, TheDamagedSlotIsNamedInBothForms) {
    storeLoad("evening", {m_ids[0], m_ids[1], m_ids[2]});
    WriteOptions options;
    options.form = LoadForm::Both;
    ASSERT_THAT(writeStoredLoad(m_library, "evening", path("out"), options), isOk());
    std::string card = *readFile(path("out/evening/load.bin"), 100000);
    card[card.size() - 6] = static_cast<char>(card[card.size() - 6] ^ 1);
    ASSERT_THAT(writeFile(path("damaged.bin"), card, IfExists::Refuse), isOk());
    // The same byte of the header: the last but five.
    std::string header = *readFile(path("out/evening.h"), 200000);
    std::size_t byte = std::string::npos;
    for (int i = 0; i < 6; ++i) byte = header.rfind("0x", byte - 1);
    header[byte + 3] = header[byte + 3] == '0' ? '1' : '0';
    ASSERT_THAT(writeFile(path("damaged.h"), header, IfExists::Refuse), isOk());

    for (const std::string& file : {path("damaged.bin"), path("damaged.h")}) {
        const auto verified = verifyLoadFile(file);
        ASSERT_THAT(verified, isOk()) << file;
        ASSERT_EQ(verified->slots.size(), 3U);
        EXPECT_TRUE(verified->slots[0].verified());
        EXPECT_TRUE(verified->slots[1].verified());
        EXPECT_EQ(verified->slots[2].title, "Tile 3");
        EXPECT_NE(verified->slots[2].fault.find("damaged"), std::string::npos) << file;
    }
}

TEST_F(Loads, NothingIsReplacedSilently) {
    storeLoad("evening", {m_ids[0]});
    write("out/evening.h", "mine");
    EXPECT_THAT(writeStoredLoad(m_library, "evening", path("out"), {}),
                failsWith(ErrorKind::AlreadyExists, "evening.h"));
    EXPECT_EQ(*readFile(path("out/evening.h"), 100), "mine");
    EXPECT_TRUE(catalogue::readLoad(m_library, "evening")->writings.empty());
    WriteOptions options;
    options.ifExists = IfExists::Replace;
    EXPECT_THAT(writeStoredLoad(m_library, "evening", path("out"), options), isOk());
}

TEST_F(Loads, AHostileNameStaysInTheFolder) {
    storeLoad("../../etc/cron */", {m_ids[0]});
    const auto written = writeStoredLoad(m_library, "../../etc/cron */", path("out"), {});
    ASSERT_THAT(written, isOk());
    EXPECT_EQ(written->files.front().parent_path(), path("out"));
}

}  // namespace
}  // namespace pantile::tasks
