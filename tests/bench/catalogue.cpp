// catalogue: how fast a large library is. It makes one from a seed, adds to it, opens it, and asks
// it queries of every kind, each beside the bare SQL statements for the same question. It prints
// figures and decides nothing.
//   catalogue FILE [textures [TEXT [alone]]]
// A FILE that is there already is measured as it is; with TEXT, only queries that hold it; alone,
// without the bare SQL, which takes minutes for a large library. Times are those of the processor,
// so that other programs do not count.

#include <algorithm>
#include <array>
#include <cstdint>
#include <cstdio>
#include <cstdlib>
#include <ctime>
#include <filesystem>
#include <functional>
#include <string>
#include <vector>

#include "catalogue/boards.h"
#include "catalogue/loads.h"
#include "catalogue/query_parser.h"
#include "catalogue/reader.h"
#include "catalogue/shelves.h"
#include "catalogue/statement.h"
#include "catalogue/writer.h"
#include "core/texture.h"
#include "support/random.h"
#include "tasks/library_place.h"

namespace pantile {
namespace {

using catalogue::Library;
using tests::Random;

constexpr int kTags = 400;
constexpr int kWords = 4000;
constexpr int kSharedPalettes = 60;
constexpr int kBatch = 500;
constexpr int kRuns = 7;
constexpr std::int64_t kRows = 200;

double seconds() {
    return static_cast<double>(std::clock()) / CLOCKS_PER_SEC;
}

double wallSeconds() {
    timespec now{};
    clock_gettime(CLOCK_MONOTONIC, &now);
    return static_cast<double>(now.tv_sec) + static_cast<double>(now.tv_nsec) * 1e-9;
}

template <typename T>
T valueOf(core::Result<T> result) {
    if (result) return *std::move(result);
    std::fprintf(stderr, "%s\n", result.error().message.c_str());
    std::exit(1);
}

void check(const core::Result<void>& result) {
    if (result) return;
    std::fprintf(stderr, "%s\n", result.error().message.c_str());
    std::exit(1);
}

/// The lower numbers are the frequent ones, as with words and tags of people: the k-th is about
/// 1/k as frequent as the first.
int frequent(Random& random, int count) {
    const double share = static_cast<double>(random.next() >> 11U) / 9007199254740992.0;
    int low = 0;
    double power = 1;
    for (; power * 2 <= count; power *= 2) ++low;
    const double doublings = share * (low + 1);
    const int whole = static_cast<int>(doublings);
    const int begin = 1 << whole;
    const int number = begin - 1 + random.between(0, begin - 1);
    return std::min(number, count - 1);
}

std::string word(int number) {
    constexpr std::array<const char*, 20> kParts = {"ba",  "ke",  "lo",  "mi",  "nu",  "ra",  "si",
                                                    "te",  "vo",  "ga",  "ped", "rin", "sto", "dun",
                                                    "mar", "fel", "kor", "lis", "tam", "hol"};
    constexpr std::array<const char*, 6> kKnown = {"kelp", "sand", "slate", "rope", "buoy", "quay"};
    const auto at = static_cast<std::size_t>(number);
    if (number % 50 == 7 && at / 50 < kKnown.size()) return kKnown[at / 50];
    std::string text = kParts[at % 20];
    text += kParts[at / 20 % 20];
    if (at >= 400) text += kParts[at / 400 % 20];
    return text;
}

std::string tag(int number) {
    return number % 5 == 4 ? "stone/" + word(number) : word(number);
}

core::Palette palette(std::uint64_t seed) {
    Random random(seed);
    std::vector<core::Rgb8> colours;
    for (int i = 0; i < 16; ++i) {
        const std::uint64_t bits = random.next();
        colours.push_back({static_cast<std::uint8_t>(bits), static_cast<std::uint8_t>(bits >> 8U),
                           static_cast<std::uint8_t>(bits >> 16U)});
    }
    return valueOf(core::Palette::create(std::move(colours)));
}

/// Smooth patches with some grain, in a few colours.
core::Grid picture(Random& random) {
    const int side = std::array{16, 32, 32, 32, 48}[static_cast<std::size_t>(random.between(0, 4))];
    const int colours = random.between(4, 16);
    std::array<int, 81> corners{};
    for (int& corner : corners) corner = random.between(0, colours * 64 - 1);
    std::vector<core::PaletteIndex> cells;
    for (int y = 0; y < side; ++y) {
        for (int x = 0; x < side; ++x) {
            const int column = x * 8 / side;
            const int row = y * 8 / side;
            const int dx = x * 8 % side;
            const auto at = [&](int c, int r) {
                return corners[static_cast<std::size_t>(r * 9 + c)];
            };
            const int smooth = (at(column, row) * (side - dx) + at(column + 1, row) * dx) / side;
            const int level = std::clamp(smooth + random.between(-12, 12), 0, colours * 64 - 1);
            cells.push_back(static_cast<core::PaletteIndex>(level / 64));
        }
    }
    return valueOf(core::Grid::create(side, side, std::move(cells)));
}

core::Texture texture(std::uint64_t seed) {
    Random random(seed * 977 + 3);
    core::TextureText text;
    for (int i = random.between(1, 3); i > 0; --i) {
        text.title += (text.title.empty() ? "" : " ") + word(frequent(random, kWords));
    }
    text.title.front() = static_cast<char>(text.title.front() - 'a' + 'A');
    text.author = "Maker " + word(frequent(random, 300));
    text.licence = std::array{"CC0", "CC-BY 4.0", "CC-BY-SA 4.0", ""}[random.next() % 4];
    text.source = word(frequent(random, kWords)) + "-" + std::to_string(seed) + ".png";
    if (random.between(0, 4) == 0) {
        for (int i = 0; i < 8; ++i) text.note += word(frequent(random, kWords)) + " ";
        text.note.pop_back();
    }
    while (text.tags.size() < 5) {
        text.tags.push_back(tag(frequent(random, kTags)));
        core::normaliseTags(text.tags);
    }
    const bool shared = random.between(0, 9) < 7;
    const std::uint64_t number =
        shared ? static_cast<std::uint64_t>(random.between(0, kSharedPalettes - 1)) : seed + 1000;
    return valueOf(core::Texture::create(picture(random), palette(number), std::move(text)));
}

std::int64_t contentBytes(const core::Texture& texture) {
    const core::TextureText& text = texture.text();
    std::size_t bytes = text.title.size() + text.author.size() + text.licence.size() +
                        text.source.size() + text.note.size();
    for (const std::string& one : text.tags) bytes += one.size();
    return static_cast<std::int64_t>(bytes);
}

void describe(Library& library, core::TextureId id, Random& random) {
    check(catalogue::setSeam(library, id, random.between(80, 300)));
    check(catalogue::setEstimate(
        library, id, {random.between(2000, 400000), random.between(60, 1500), "cells"}));
}

template <typename Work>
void inOneTransaction(Library& library, Work work) {
    auto transaction = valueOf(library.begin());
    work();
    check(transaction.commit());
}

void fill(const std::filesystem::path& path, int count) {
    Library library = valueOf(tasks::openLibrary(path, tasks::Purpose::Change));
    Random random(11);
    std::int64_t words = 0;
    double adding = 0;
    double addingWall = 0;
    double describing = 0;
    for (int begin = 0; begin < count; begin += kBatch) {
        std::vector<core::Texture> batch;
        for (int i = begin; i < std::min(begin + kBatch, count); ++i) {
            batch.push_back(texture(static_cast<std::uint64_t>(i)));
            words += contentBytes(batch.back());
        }
        std::vector<core::TextureId> ids;
        const double before = seconds();
        const double beforeWall = wallSeconds();
        inOneTransaction(library, [&] {
            for (const core::Texture& one : batch)
                ids.push_back(valueOf(catalogue::addTexture(library, one)).id);
        });
        const double added = seconds();
        adding += added - before;
        addingWall += wallSeconds() - beforeWall;
        inOneTransaction(library, [&] {
            for (const core::TextureId id : ids) describe(library, id, random);
        });
        describing += seconds() - added;
    }
    std::printf(
        "adding, %d in a transaction: %.0f a second of processor, %.0f of the clock; seams "
        "and costs: %.0f\n",
        kBatch, count / adding, count / addingWall, count / describing);
    auto transaction = valueOf(library.begin());
    for (int i = 0; i < 40; ++i) {
        std::vector<core::TextureId> ids;
        for (int k = 0; k < 20; ++k) ids.push_back({random.between(1, count)});
        valueOf(catalogue::putOnShelf(library, ids, "Shelf " + word(i)));
    }
    std::vector<core::TextureId> slots;
    for (int k = 0; k < 8; ++k) slots.push_back({1 + k * (count / 8)});
    const std::string board = valueOf(catalogue::listBoards(library)).front().name;
    check(catalogue::addLoad(library, {"Night", board, slots, 0, {}}));
    valueOf(catalogue::run(library.connection(), "UPDATE textures SET stars = id % 7 % 6"));
    check(transaction.commit());
    const std::int64_t bodies =
        valueOf(library.connection().number("SELECT sum(length(body)) FROM contents"));
    const std::int64_t palettes =
        valueOf(library.connection().number("SELECT sum(length(colours)) FROM palettes"));
    check(library.connection().execute("PRAGMA wal_checkpoint(TRUNCATE)"));
    const auto file = static_cast<double>(std::filesystem::file_size(path));
    const auto content = static_cast<double>(bodies + palettes + words);
    std::printf(
        "file: %.0f bytes a texture, stored content %.0f (pictures %.0f, words and tags "
        "%.0f, palettes %.0f), %.2f times\n",
        file / count, content / count, static_cast<double>(bodies) / count,
        static_cast<double>(words) / count, static_cast<double>(palettes) / count, file / content);
}

struct Question {
    std::string query;
    std::string sort;
    std::string condition;  ///< The same in SQL by hand, over textures t, contents c, estimates e.
    std::string order;
};

const std::string kTagged =
    "t.id IN (SELECT texture_id FROM texture_tags JOIN tags ON tags.id = tag_id WHERE ";

std::string fieldHolding(const std::string& field, const std::string& text) {
    return "t." + field + " LIKE '%" + text + "%'";
}

std::string holding(const std::string& text) {
    std::string condition = "(";
    for (const char* field : {"title", "author", "licence", "source", "note"})
        condition += fieldHolding(field, text) + " OR ";
    return condition + kTagged + "name LIKE '%" + text + "%'))";
}

std::vector<Question> questions() {
    const std::string newest = "t.id DESC";
    return {
        {"all", "relevance", "1", newest},
        {"all", "title", "1", "t.title COLLATE NOCASE, t.id"},
        {"all", "added", "1", "t.added_at DESC, t.id DESC"},
        {"all", "draw", "1", "e.draw_ms IS NULL, e.draw_ms, t.id"},
        {"all", "colour", "1", "c.tone, t.id"},
        {"kelp", "relevance", holding("kelp"), newest},
        {"slate", "title", holding("slate"), "t.title COLLATE NOCASE, t.id"},
        {"ba", "relevance", holding("ba"), newest},
        {"kelp rope", "relevance", holding("kelp") + " AND " + holding("rope"), newest},
        {"kelp | rope", "relevance", "(" + holding("kelp") + " OR " + holding("rope") + ")",
         newest},
        {"sand -slate", "relevance", holding("sand") + " AND NOT " + holding("slate"), newest},
        {"\"maker ba\"", "relevance", holding("maker ba"), newest},
        {"tag:kelp", "relevance", kTagged + "folded = 'kelp')", newest},
        {"tag:stone", "relevance",
         kTagged + "folded = 'stone' OR (folded > 'stone/' AND folded < 'stone0'))", newest},
        {"tag:bake -tag:sand", "added",
         kTagged + "folded = 'bake') AND NOT " + kTagged + "folded = 'sand')",
         "t.added_at DESC, t.id DESC"},
        {"shelf:\"shelf kelp\"", "relevance",
         "t.id IN (SELECT texture_id FROM shelf_textures JOIN shelves ON shelves.id = shelf_id "
         "WHERE name = 'shelf kelp')",
         newest},
        {"author:kelp", "relevance", fieldHolding("author", "kelp"), newest},
        {"licence:cc-by-sa", "relevance", fieldHolding("licence", "cc-by-sa"), newest},
        {"palette:\"\" width:48", "relevance",
         "c.palette_id NOT IN (SELECT palette_id FROM palette_names) AND c.width = 48", newest},
        {"canvas:cells-32", "relevance", "c.width <= 32 AND c.height <= 32 AND c.colours <= 16",
         newest},
        {"on:night", "relevance",
         "t.id IN (SELECT texture_id FROM load_slots JOIN loads ON loads.id = load_id WHERE name = "
         "'night')",
         newest},
        {"size:32x32", "relevance", "c.width = 32 AND c.height = 32", newest},
        {"width<=32 colours<=8", "size", "c.width <= 32 AND c.colours <= 8",
         "c.width * c.height, t.id"},
        {"bytes<100", "bytes", "e.load_bytes < 100", "e.load_bytes, t.id"},
        {"draw<2m", "draw", "e.draw_ms < 120000", "e.draw_ms, t.id"},
        {"stars>=3", "stars", "t.stars >= 3", "t.stars DESC, t.id DESC"},
        {"added>2025-01", "changed", "t.added_at >= 1738368000", "t.changed_at DESC, t.id DESC"},
        {"is:seamless", "relevance", "c.seam <= 125", newest},
        {"is:removed", "relevance", "t.removed_at IS NOT NULL", newest},
        {"is:seamless stars>=4 tag:kelp", "title",
         "c.seam <= 125 AND t.stars >= 4 AND " + kTagged + "folded = 'kelp')",
         "t.title COLLATE NOCASE, t.id"},
        // SQLite has no way to ask for these two by itself.
        {"colour:#aabbcc~10", "relevance", "", ""},
        {"colour:#aabbcc~3 tag:stone", "relevance", "", ""},
    };
}

template <typename Work>
std::vector<double> timesOf(Work work) {
    std::vector<double> times;
    for (int i = 0; i < kRuns; ++i) {
        const double before = seconds();
        work();
        times.push_back((seconds() - before) * 1000);
    }
    std::sort(times.begin(), times.end());
    return times;
}

std::int64_t stepThrough(Library& library, const std::string& sql) {
    auto statement = valueOf(catalogue::Statement::prepare(library.connection(), sql));
    std::int64_t read = 0;
    while (valueOf(statement.step())) {
        for (int column = 0; column < 8; ++column) {
            read += static_cast<std::int64_t>(statement.textOrNull(column).value_or("").size());
        }
    }
    return read;
}

void bareSql(Library& library, const Question& question) {
    const std::string from =
        " FROM textures t JOIN contents c ON c.id = t.content_id LEFT JOIN estimates e ON "
        "e.texture_id = t.id WHERE " +
        question.condition + (question.query == "is:removed" ? "" : " AND t.removed_at IS NULL");
    valueOf(library.connection().number("SELECT count(*)" + from));
    stepThrough(library,
                "SELECT t.title, t.author, t.licence, t.source, t.note, "
                "c.width || 'x' || c.height || ' ' || c.colours || ' ' || t.stars || ' ' || "
                "t.added_at || ' ' || t.changed_at || ' ' || t.revision || ' ' || "
                "ifnull(e.draw_ms || e.load_bytes || e.profile_key, ''), "
                "(SELECT group_concat(name, ' ') FROM texture_tags JOIN tags ON tags.id = tag_id "
                "WHERE texture_id = t.id), "
                "(SELECT group_concat(name, ' ') FROM shelf_textures JOIN shelves ON shelves.id = "
                "shelf_id WHERE texture_id = t.id)" +
                    from + " ORDER BY " + question.order + " LIMIT " + std::to_string(kRows));
}

double part(const std::vector<double>& sorted, double share) {
    return sorted[static_cast<std::size_t>(share * static_cast<double>(sorted.size() - 1))];
}

void ask(Library& library, const std::string& text, bool alone) {
    std::vector<double> all;
    std::printf("%-32s %-10s %8s %9s %9s %9s %6s\n", "query", "sort", "total", "median", "worst",
                "bare SQL", "times");
    for (const Question& question : questions()) {
        if (question.query.find(text) == std::string::npos) continue;
        catalogue::FindOptions options;
        options.sort = valueOf(catalogue::parseSortKey(question.sort));
        options.limit = kRows;
        std::int64_t total = 0;
        const auto times = timesOf([&] {
            const auto query = valueOf(catalogue::parseQuery(question.query));
            total = valueOf(catalogue::findTextures(library, query, options)).total;
        });
        all.insert(all.end(), times.begin(), times.end());
        std::printf("%-32s %-10s %8lld %6.2f ms %6.2f ms", question.query.c_str(),
                    question.sort.c_str(), static_cast<long long>(total), part(times, 0.5),
                    times.back());
        if (!alone && !question.condition.empty()) {
            const auto bare = timesOf([&] { bareSql(library, question); });
            std::printf(" %6.2f ms %6.2f", part(bare, 0.5), part(times, 0.5) / part(bare, 0.5));
        }
        std::printf("\n");
    }
    if (all.empty()) return;
    std::sort(all.begin(), all.end());
    std::printf("all queries: median %.2f ms, p99 %.2f ms\n", part(all, 0.5), part(all, 0.99));
}

}  // namespace

int bench(const std::filesystem::path& path, int count, const std::string& text, bool alone) {
    if (!std::filesystem::exists(path)) fill(path, count);
    const auto opening = timesOf([&] { valueOf(tasks::openLibrary(path, tasks::Purpose::Look)); });
    std::printf("opening: median %.2f ms\n", part(opening, 0.5));
    Library library = valueOf(tasks::openLibrary(path, tasks::Purpose::Look));
    ask(library, text, alone);
    return 0;
}

}  // namespace pantile

int main(int count, char** words) {
    if (count < 2) {
        std::fprintf(stderr, "catalogue FILE [textures [TEXT [alone]]]\n");
        return 2;
    }
    return pantile::bench(words[1], count > 2 ? std::atoi(words[2]) : 100000,
                          count > 3 ? words[3] : "", count > 4);
}
