#include "tasks/gather.h"

#include <fstream>
#include <sys/stat.h>
#include <thread>

#include "catalogue/canvases.h"
#include "catalogue/edit.h"
#include "catalogue/palettes.h"
#include "catalogue/shelves.h"
#include "codec/text_code.h"
#include "image_files/write_png.h"
#include "picture/strays.h"
#include "tasks/library_fixture.h"

namespace pantile::tasks {
namespace {

using core::ErrorKind;
using tests::failsWith;
using tests::isOk;

class Gather : public tests::LibraryFixture {
protected:
    std::string writePng(const std::string& name, const core::Texture& source) const {
        const auto png = image_files::encodePng(source.grid(), source.palette());
        EXPECT_THAT(png, isOk());
        return write(name, std::string(png->begin(), png->end()));
    }

    std::string writePng(const std::string& name, const core::Pixels& pixels) const {
        const auto png = image_files::encodePng(pixels);
        EXPECT_THAT(png, isOk());
        return write(name, std::string(png->begin(), png->end()));
    }

    GatherReport gatherAll(const std::vector<std::string>& paths,
                           const GatherOptions& options = {}) {
        std::vector<GatherInput> inputs;
        for (const std::string& each : paths) inputs.push_back({each, std::nullopt});
        const auto report = gather(m_library, inputs, options);
        EXPECT_THAT(report, isOk());
        return *report;
    }

    core::Texture stored(core::TextureId id) const {
        return catalogue::readTexture(m_library, id)->texture;
    }
};

TEST_F(Gather, AnIndexedPngKeepsPaletteOrderAndIndices) {
    const core::Texture source = texture(1, 16);
    const GatherReport report = gatherAll({writePng("wet-sand_2.png", source)});
    ASSERT_EQ(report.added.size(), 1U);
    EXPECT_EQ(report.added[0].title, "wet sand 2");
    EXPECT_EQ(stored(report.added[0].id).grid(), source.grid());
    EXPECT_EQ(stored(report.added[0].id).palette(), source.palette());
    EXPECT_EQ(stored(report.added[0].id).text().source, "wet-sand_2.png");
}

TEST_F(Gather, NeverStoresTheSameTextureTwice) {
    const std::string file = writePng("a.png", texture(1));
    const GatherReport first = gatherAll({file});
    const GatherReport second = gatherAll({file, writePng("b.png", texture(1))});
    EXPECT_TRUE(second.added.empty());
    ASSERT_EQ(second.known.size(), 2U);
    EXPECT_EQ(second.known[0].id, first.added[0].id);
    EXPECT_EQ(textureCount(), 1);
}

TEST_F(Gather, WordsOfTheOptionsGoOntoPictures) {
    GatherOptions options;
    options.title = "Shingle";
    options.author = "Mara Quill";
    options.licence = "CC0-1.0";
    options.source = "the beach";
    options.tags = {"stone", "shore"};
    options.shelf = "Shore";
    const GatherReport report = gatherAll({writePng("a.png", texture(3))}, options);
    ASSERT_EQ(report.added.size(), 1U);
    const core::TextureText text = stored(report.added[0].id).text();
    EXPECT_EQ(text.title, "Shingle");
    EXPECT_EQ(text.author, "Mara Quill");
    EXPECT_EQ(text.source, "the beach");
    EXPECT_EQ(text.tags, (std::vector<std::string>{"shore", "stone"}));
    EXPECT_EQ(*catalogue::texturesOnShelf(m_library, "Shore"), std::vector{report.added[0].id});
}

TEST_F(Gather, ACodeKeepsItsOwnAuthorAndLicence) {
    const auto code = codec::encodeTextCode(texture(4));
    ASSERT_THAT(code, isOk());
    GatherOptions options;
    options.author = "Somebody Else";
    options.licence = "all rights reserved";
    options.tags = {"from-forum"};
    const GatherReport report =
        gatherAll({write("thread.txt", "Look:\n\n" + code->text + "\n\nNice!\n")}, options);
    ASSERT_EQ(report.added.size(), 1U);
    const core::TextureText text = stored(report.added[0].id).text();
    EXPECT_EQ(text.author, "Mara Quill");
    EXPECT_EQ(text.licence, "CC0-1.0");
    EXPECT_EQ(text.tags, (std::vector<std::string>{"from-forum", "tile"}));
}

TEST_F(Gather, TakesManyCodesFromOneTextAndNamesTheDamagedOne) {
    std::string thread;
    for (int seed = 10; seed < 13; ++seed) {
        std::string code = codec::encodeTextCode(texture(seed))->text;
        if (seed == 11) code[20] = code[20] == 'x' ? 'y' : 'x';
        if (seed == 11) code[10] = code[10] == 'x' ? 'y' : 'x';
        if (seed == 12) code[20] = code[20] == 'x' ? 'y' : 'x';
        thread += "Friend " + std::to_string(seed) + " writes:\n" + code + "\n\n";
    }
    const GatherReport report = gatherAll({write("thread.txt", thread)});
    ASSERT_EQ(report.added.size(), 2U);
    EXPECT_TRUE(report.added[0].repairs.empty());
    EXPECT_EQ(report.added[1].repairs.size(), 1U);
    ASSERT_EQ(report.refused.size(), 1U);
    EXPECT_NE(report.refused[0].error.message.find("of the text"), std::string::npos);
    EXPECT_NE(report.refused[0].error.message.find("ask for line 1 again"), std::string::npos);
}

TEST_F(Gather, ReadsAFolderThroughAndPassesOverWhatIsNotForUs) {
    writePng("in/a.png", texture(1));
    writePng("in/deep/b.png", texture(2));
    write("in/readme.txt", "nothing of ours\n");
    write("in/contents.csv", "file,title\na.png,A\n");
    const GatherReport report = gatherAll({path("in")});
    EXPECT_EQ(report.added.size(), 2U);
    EXPECT_TRUE(report.refused.empty());
    EXPECT_EQ(report.passedOver, 2);
}

// To open its files would let go of SQLite's locks.
TEST_F(Gather, NeverReadsTheLibraryItself) {
    writePng("a.png", texture(1));
    const std::string file = m_library.path().string();
    ASSERT_TRUE(std::filesystem::exists(file + "-wal"));
    const GatherReport folder = gatherAll({m_library.path().parent_path().string()});
    EXPECT_EQ(folder.added.size(), 1U);
    EXPECT_THAT(folder.refused, ::testing::IsEmpty());
    EXPECT_EQ(folder.passedOver, 3) << "the file, its log and the index of that";
    for (const char* part : {"", "-wal", "-shm"}) {
        const GatherReport named = gatherAll({file + part});
        ASSERT_EQ(named.refused.size(), 1U);
        EXPECT_EQ(named.refused[0].error.message, "it is the library itself");
    }
}

TEST_F(Gather, RefusesANamedFileThatHoldsNothing) {
    const GatherReport report =
        gatherAll({write("readme.txt", "nothing of ours\n"), path("none.png")});
    ASSERT_EQ(report.refused.size(), 2U);
    EXPECT_EQ(report.refused[0].error.kind, ErrorKind::NotFound);
    EXPECT_NE(report.refused[1].error.message.find("no picture, grid or code"), std::string::npos);
    EXPECT_EQ(textureCount(), 0);
}

TEST_F(Gather, MakesALargePictureCoverTheUsualGrid) {
    core::Pixels pixels{{200, 100}, std::vector<core::Rgba8>(20000, core::Rgba8{10, 20, 30, 255})};
    for (int x = 0; x < 100; ++x) {
        for (int y = 0; y < 100; ++y) pixels.at(x, y) = {200, 100, 50, 255};
    }
    const GatherReport report = gatherAll({writePng("big.png", pixels)});
    ASSERT_EQ(report.added.size(), 1U);
    EXPECT_EQ(report.added[0].size, (core::Size{64, 64}));
    EXPECT_LE(report.added[0].colours, 16);
}

// Kelp and buoys in 16x16 cells, each `factor` pixels wide and high.
core::Pixels enlargedArt(int factor) {
    const std::array<core::Rgba8, 4> colours{
        {{20, 28, 46, 255}, {51, 78, 35, 255}, {214, 65, 41, 255}, {239, 247, 249, 255}}};
    core::Pixels pixels{{16 * factor, 16 * factor}, {}};
    for (int y = 0; y < 16 * factor; ++y) {
        for (int x = 0; x < 16 * factor; ++x) {
            const int column = x / factor;
            const int row = y / factor;
            pixels.pixels.push_back(
                colours.at(static_cast<std::size_t>((column * column + 3 * row * column) / 5 % 4)));
        }
    }
    return pixels;
}

// From dark blue to light yellow.
core::Pixels slope(int side) {
    core::Pixels pixels{{side, side}, {}};
    for (int y = 0; y < side; ++y) {
        for (int x = 0; x < side; ++x) {
            const auto light = static_cast<std::uint8_t>((x + y) * 255 / (2 * side - 2));
            const auto blue = static_cast<std::uint8_t>(90 + x * 60 / side);
            pixels.pixels.push_back({light, light, blue, 255});
        }
    }
    return pixels;
}

TEST_F(Gather, TakesEnlargedArtBackUnlessToldToKeepIt) {
    const std::string file = writePng("buoy.png", enlargedArt(6));
    const GatherReport taken = gatherAll({file});
    ASSERT_EQ(taken.added.size(), 1U);
    EXPECT_EQ(taken.added[0].size, (core::Size{16, 16}));
    EXPECT_EQ(taken.added[0].enlargement, 6);
    const GatherReport small = gatherAll({writePng("small.png", enlargedArt(1))});
    EXPECT_EQ(small.known.size(), 1U);  // the very same texture

    GatherOptions options;
    options.pictures.enlarged = Enlarged::Keep;
    const GatherReport kept = gatherAll({file}, options);
    ASSERT_EQ(kept.added.size(), 1U);
    EXPECT_EQ(kept.added[0].size, (core::Size{64, 64}));
    EXPECT_EQ(kept.added[0].enlargement, std::nullopt);
}

TEST_F(Gather, LeavesAnIndexedPictureThatFitsAsItIs) {
    picture::ConvertOptions exact;
    exact.fit = picture::Fit::Exact;
    const auto converted = picture::convertPicture({enlargedArt(2), std::nullopt}, exact);
    ASSERT_THAT(converted, isOk());
    const auto png = image_files::encodePng(converted->grid, converted->palette);
    ASSERT_THAT(png, isOk());
    const GatherReport report =
        gatherAll({write("kelp.png", std::string(png->begin(), png->end()))});
    ASSERT_EQ(report.added.size(), 1U);
    EXPECT_EQ(report.added[0].size, (core::Size{32, 32}));
}

TEST_F(Gather, CutsLaysAndAdjustsAsTheSettingsSay) {
    core::Pixels pixels{{8, 4}, {}};
    for (int i = 0; i < 32; ++i) {
        const auto level = static_cast<std::uint8_t>(i % 8 * 30);
        pixels.pixels.push_back({level, level, level, static_cast<std::uint8_t>(i < 8 ? 0 : 255)});
    }
    GatherOptions options;
    options.pictures.part = picture::Rectangle{{2, 0}, {3, 2}};
    options.pictures.background = core::Rgb8{1, 2, 3};
    options.pictures.adjustments.levels = true;
    const GatherReport report = gatherAll({writePng("shingle.png", pixels)}, options);
    ASSERT_EQ(report.added.size(), 1U);
    const core::Texture texture = stored(report.added[0].id);
    ASSERT_EQ(texture.grid().size(), (core::Size{3, 2}));
    const auto colourAt = [&texture](int x, int y) {
        return texture.palette().colours()[texture.grid().at(x, y)];
    };
    EXPECT_EQ(colourAt(1, 0), (core::Rgb8{1, 2, 3}));
    EXPECT_EQ(colourAt(0, 1), (core::Rgb8{0, 0, 0}));  // 60, the darkest
    EXPECT_EQ(colourAt(2, 1), (core::Rgb8{255, 255, 255}));
}

TEST_F(Gather, RefusesAPartThatAPictureDoesNotHave) {
    GatherOptions options;
    options.pictures.part = picture::Rectangle{{90, 0}, {9, 9}};
    const GatherReport report = gatherAll({writePng("buoy.png", enlargedArt(6))}, options);
    ASSERT_EQ(report.refused.size(), 1U);
    EXPECT_THAT(report.refused[0].error.message, ::testing::HasSubstr("not inside"));
}

TEST_F(Gather, MakesPicturesFitACanvasWithAFixedPalette) {
    core::Canvas canvas;
    canvas.name = "quay";
    canvas.size = {8, 8};
    canvas.palette = *core::Palette::create({{0, 0, 0}, {255, 255, 255}, {181, 83, 45}});
    canvas.geometry = core::CanvasGeometry::beside(canvas.size);
    ASSERT_THAT(catalogue::addCanvas(m_library, canvas), isOk());
    core::Pixels pixels{{16, 16}, std::vector<core::Rgba8>(256, core::Rgba8{190, 90, 40, 255})};
    GatherOptions options;
    options.canvas = "quay";
    const GatherReport opaque = gatherAll({writePng("rust.png", pixels)}, options);
    ASSERT_EQ(opaque.added.size(), 1U);
    EXPECT_EQ(stored(opaque.added[0].id).palette(), *canvas.palette);
    EXPECT_EQ(stored(opaque.added[0].id).grid(), *core::Grid::filled(8, 8, 2));

    for (int x = 0; x < 16; ++x) {
        for (int y = 0; y < 8; ++y) pixels.at(x, y).a = 0;
    }
    const GatherReport open = gatherAll({writePng("half.png", pixels)}, options);
    ASSERT_EQ(open.added.size(), 1U);
    const core::Texture half = stored(open.added[0].id);
    EXPECT_EQ(half.palette().transparent(), 3);
    EXPECT_EQ(half.grid().at(0, 0), 3);
    EXPECT_EQ(half.grid().at(0, 7), 2);
}

TEST_F(Gather, PinsColoursAndMergesThoseThatLookAlike) {
    core::Pixels pixels{{3, 1}, {{10, 10, 10, 255}, {200, 0, 0, 255}, {202, 2, 1, 255}}};
    GatherOptions options;
    options.pictures.pinned = {{242, 239, 228}, {202, 2, 1}};
    options.pictures.mergeWithin = 200;
    const GatherReport report = gatherAll({writePng("buoys.png", pixels)}, options);
    ASSERT_EQ(report.added.size(), 1U);
    const core::Texture made = stored(report.added[0].id);
    EXPECT_EQ(made.palette(), *core::Palette::create({{242, 239, 228}, {202, 2, 1}, {10, 10, 10}}));
    EXPECT_EQ(made.grid(), *core::Grid::create(3, 1, {2, 1, 1}));
}

TEST_F(Gather, AGridNeedsAPaletteFromSomewhere) {
    const std::string bare = write("bare.csv", "0,1\n1,0\n");
    const GatherReport refused = gatherAll({bare});
    ASSERT_EQ(refused.refused.size(), 1U);
    EXPECT_NE(refused.refused[0].error.message.find("has no palette"), std::string::npos);
    const GatherReport added =
        gatherAll({write("own.csv", "# palette #000000 #ffffff\n0,1\n1,0\n")});
    ASSERT_EQ(added.added.size(), 1U);
    EXPECT_EQ(added.added[0].title, "own");
}

TEST_F(Gather, ARemovedTextureComesBack) {
    const std::string file = writePng("a.png", texture(1));
    const core::TextureId id = gatherAll({file}).added[0].id;
    ASSERT_THAT(catalogue::removeTextures(m_library, std::span(&id, 1)), isOk());
    const GatherReport again = gatherAll({file});
    ASSERT_EQ(again.added.size(), 1U);
    EXPECT_TRUE(again.added[0].recovered);
    EXPECT_EQ(again.added[0].id, id);
}

TEST_F(Gather, BadWordsAreRefusedBeforeAnythingIsRead) {
    GatherOptions options;
    options.title = "red\u202efig";
    const std::vector<GatherInput> inputs = {{writePng("a.png", texture(1)), std::nullopt}};
    EXPECT_THAT(gather(m_library, inputs, options), failsWith(ErrorKind::InvalidInput, "\\u202e"));
    options.title = std::string(10000, 'x');
    EXPECT_THAT(gather(m_library, inputs, options), failsWith(ErrorKind::TooLarge, "10000"));
    options = {};
    options.canvas = "nowhere";
    EXPECT_THAT(gather(m_library, inputs, options), failsWith(ErrorKind::NotFound, "nowhere"));
    EXPECT_EQ(textureCount(), 0);
}

TEST_F(Gather, StopsBetweenTwoFilesAndKeepsWhatIsDone) {
    writePng("in/a.png", texture(1));
    writePng("in/b.png", texture(2));
    writePng("in/c.png", texture(3));
    std::stop_source stop;
    core::Progress progress{stop.get_token(),
                            [&](std::int64_t done, std::int64_t, std::string_view) {
                                if (done == 1) stop.request_stop();
                            }};
    const auto report = gather(m_library, {{path("in"), std::nullopt}}, {}, progress);
    ASSERT_THAT(report, isOk());
    ASSERT_TRUE(report->stopped.has_value());
    EXPECT_EQ(report->stopped->kind, ErrorKind::Cancelled);
    EXPECT_EQ(textureCount(), std::ssize(report->added));
    EXPECT_EQ(textureCount(), 1);
}

TEST_F(Gather, StopsAtOnceWithAnErrorIfNothingIsDone) {
    writePng("in/a.png", texture(1));
    std::stop_source stop;
    stop.request_stop();
    EXPECT_THAT(gather(m_library, {{path("in"), std::nullopt}}, {}, {stop.get_token(), {}}),
                failsWith(ErrorKind::Cancelled, "stopped"));
}

// The pages of a library that may not grow stand for a disk that is full.
TEST_F(Gather, SaysWhatWasAddedBeforeTheDiskWasFull) {
    std::vector<GatherInput> inputs;
    for (int i = 0; i < 60; ++i) {
        inputs.push_back({writePng("in/" + std::to_string(i) + ".png", texture(i)), std::nullopt});
    }
    const auto pages = m_library.connection().number("PRAGMA page_count");
    ASSERT_THAT(pages, isOk());
    // More room until at least one texture has it.
    for (int room = 1; textureCount() == 0; ++room) {
        const std::string limit = std::to_string(*pages + room);
        ASSERT_THAT(m_library.connection().number("PRAGMA max_page_count=" + limit), isOk());
        const auto report = gather(m_library, inputs, {});
        if (!report) {
            EXPECT_THAT(report, failsWith(ErrorKind::Io, "full"));
            EXPECT_EQ(textureCount(), 0);
            continue;
        }
        ASSERT_TRUE(report->stopped.has_value());
        EXPECT_NE(report->stopped->message.find("full"), std::string::npos);
        EXPECT_LT(std::ssize(report->added), 60);
        EXPECT_EQ(textureCount(), std::ssize(report->added));
    }
}

TEST_F(Gather, ReadsAPipeOnce) {
    const std::string png = writePng("a.png", texture(1));
    const std::string pipe = path("pipe");
    ASSERT_EQ(mkfifo(pipe.c_str(), 0600), 0);
    std::thread writer([&] {
        std::ofstream(pipe, std::ios::binary) << std::ifstream(png, std::ios::binary).rdbuf();
    });
    const GatherReport report = gatherAll({pipe});
    writer.join();
    EXPECT_EQ(report.added.size(), 1U);
    EXPECT_TRUE(report.refused.empty());
}

TEST_F(Gather, NamesWhatShouldBeAPictureAndIsNone) {
    write("in/empty.png", "");
    write("in/words.txt", "the tide is out");
    const GatherReport report = gatherAll({path("in")});
    ASSERT_EQ(report.refused.size(), 1U);
    EXPECT_NE(report.refused.front().path.find("empty.png"), std::string::npos);
    EXPECT_EQ(report.passedOver, 1);
}

TEST_F(Gather, SaysWhatMayBeGivenInPlaceOfWhatIsNotTaken) {
    const std::string library = write("other.db", "SQLite format 3 and so on");
    const std::string texture = write("1.json", "{\"id\":1,\"cells\":[[0,1]]}");
    const GatherReport report = gatherAll({library, texture});
    ASSERT_EQ(report.refused.size(), 2U);
    EXPECT_NE(report.refused[0].error.hint.find("export all --as json"), std::string::npos);
    EXPECT_NE(report.refused[1].error.hint.find("a texture as JSON"), std::string::npos);
}

TEST_F(Gather, SaysWhyNoCanvasTakesATexture) {
    const std::string code = codec::encodeTextCode(texture(1, 80))->text;
    const GatherReport report = gatherAll({write("large.txt", code)});
    ASSERT_EQ(report.added.size(), 1U);
    EXPECT_FALSE(report.added[0].estimate.has_value());
    EXPECT_NE(report.added[0].undrawable.find("80x80 cells"), std::string::npos)
        << report.added[0].undrawable;
}

TEST_F(Gather, AKnownTextureIsToldByTheTitleThatItHas) {
    gatherAll({writePng("shingle.png", texture(1))});
    const GatherReport report = gatherAll({writePng("pebbles.png", texture(1))});
    ASSERT_EQ(report.known.size(), 1U);
    EXPECT_EQ(report.known.front().title, "shingle");
}

TEST_F(Gather, TakesManyPicturesInTheirOrder) {
    std::vector<std::string> names;
    std::vector<std::string> paths;
    for (int i = 10; i < 50; ++i) {
        names.push_back("kelp " + std::to_string(i));
        paths.push_back(writePng(names.back() + ".png", texture(i)));
    }
    std::int64_t told = -1;
    const core::Progress progress{{}, [&](std::int64_t done, std::int64_t total, std::string_view) {
                                      EXPECT_GE(done, told);
                                      EXPECT_EQ(total, 40);
                                      told = done;
                                  }};
    std::vector<GatherInput> inputs;
    for (const std::string& each : paths) inputs.push_back({each, std::nullopt});
    const auto report = gather(m_library, inputs, {}, progress);
    ASSERT_THAT(report, isOk());
    std::vector<std::string> titles;
    for (const GatheredTexture& texture : report->added) titles.push_back(texture.title);
    EXPECT_EQ(titles, names);
    EXPECT_EQ(told, 40);
}

TEST_F(Gather, TellsWhatAConversionCosts) {
    const std::string file = writePng("slope.png", slope(90));
    GatherOptions options;
    options.pictures.colours = 4;
    options.pictures.dither = picture::Dither::FloydSteinberg;
    const GatheredTexture dithered = gatherAll({file}, options).added.at(0);
    options.pictures.dither = picture::Dither::None;
    const GatheredTexture flat = gatherAll({file}, options).added.at(0);
    ASSERT_TRUE(dithered.difference && flat.difference && dithered.estimate && flat.estimate);
    EXPECT_LT(dithered.difference->perceived, flat.difference->perceived);
    EXPECT_GT(dithered.difference->plain, dithered.difference->perceived);
    EXPECT_GT(dithered.estimate->drawMs, flat.estimate->drawMs);
    EXPECT_GT(dithered.estimate->loadBytes, flat.estimate->loadBytes);
    EXPECT_EQ(dithered.savedMs, 0);

    const GatheredTexture kept = gatherAll({writePng("a.png", texture(1, 16))}).added.at(0);
    EXPECT_FALSE(kept.difference) << "nothing was mapped";
    EXPECT_TRUE(kept.estimate);
}

TEST_F(Gather, SimplifyingTakesTimeOffTheDrawing) {
    const std::string file = writePng("slope.png", slope(90));
    GatherOptions options;
    options.pictures.colours = 8;
    options.pictures.dither = picture::Dither::FloydSteinberg;
    const GatheredTexture full = gatherAll({file}, options).added.at(0);
    options.pictures.simplify = 20;
    const GatheredTexture simple = gatherAll({file}, options).added.at(0);
    ASSERT_TRUE(full.estimate && simple.estimate);
    EXPECT_GT(simple.savedMs, 0);
    EXPECT_EQ(simple.estimate->drawMs + simple.savedMs, full.estimate->drawMs);
    EXPECT_GT(simple.difference->perceived, full.difference->perceived) << "of what is stored";
    options.pictures.simplify = picture::kMaxSimplifyLevel + 1;
    const GatherReport refused = gatherAll({file}, options);
    ASSERT_EQ(refused.refused.size(), 1U);
    EXPECT_THAT(refused.refused[0].error.message, ::testing::HasSubstr("level"));
}

TEST_F(Gather, NotesWhatDrawingCosts) {
    const core::TextureId id = gatherAll({writePng("a.png", texture(1, 16))}).added[0].id;
    const auto record = catalogue::readTexture(m_library, id);
    ASSERT_TRUE(record->row.estimate.has_value());
    EXPECT_GT(record->row.estimate->drawMs, 0);
    EXPECT_GT(record->row.estimate->loadBytes, 0);
}

TEST_F(Gather, ACodeWithoutItsPaletteFindsItInTheLibrary) {
    const core::Texture source = texture(21);
    codec::EncodeOptions byName;
    byName.palette = codec::PaletteForm::ByFingerprint;
    const std::string thread = write("thread.txt", codec::encodeTextCode(source, byName)->text);
    EXPECT_EQ(gatherAll({thread}).refused.size(), 1U);
    ASSERT_THAT(catalogue::addPalette(m_library, "shore", source.palette()), isOk());
    const GatherReport report = gatherAll({thread});
    ASSERT_EQ(report.added.size(), 1U);
    EXPECT_EQ(stored(report.added[0].id).palette(), source.palette());
}

}  // namespace
}  // namespace pantile::tasks
