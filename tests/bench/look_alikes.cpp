// look_alikes: how well look-alikes are found, how fast, and what keeping looks costs. It prints
// figures and decides nothing.
//   look_alikes art FOLDER [distance...]   open art (open_art.py) and stated edits of it: how many
//                                          of them `similar` finds, and how many others
//   look_alikes library FILE               times in a large library (catalogue); first it works
//                                          out the looks that FILE has none of
//   look_alikes cost                       what a look takes of an addition
// Times are those of the processor, so that other programs do not count.

#include "tasks/look_alikes.h"

#include <algorithm>
#include <array>
#include <cstdio>
#include <cstdlib>
#include <cstring>
#include <ctime>
#include <filesystem>
#include <functional>
#include <map>
#include <numeric>
#include <set>
#include <string>
#include <vector>

#include "art.h"
#include "catalogue/looks.h"
#include "catalogue/query_parser.h"
#include "catalogue/writer.h"
#include "picture/look.h"
#include "picture/orientation.h"
#include "picture/resize.h"
#include "picture/transform.h"
#include "support/random.h"
#include "support/temporary_folder.h"
#include "tasks/find_textures.h"
#include "tasks/library_place.h"

namespace pantile {
namespace {

using core::Grid;
using core::PaletteIndex;
using core::Texture;
using core::TextureId;
using tests::Random;

double seconds() {
    return static_cast<double>(std::clock()) / CLOCKS_PER_SEC;
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

// ---- Edits, each as the table names it.

Texture with(const Texture& texture, const Grid& grid) {
    return valueOf(Texture::create(grid, texture.palette()));
}

Texture turned(const Texture& texture, Random& random) {
    const int way = random.between(1, 7);  // Never as it is.
    return with(texture, picture::oriented(texture.grid(),
                                           picture::kOrientations[static_cast<std::size_t>(way)]));
}

Texture shifted(const Texture& texture, Random& random) {
    const Grid& grid = texture.grid();
    return with(texture, picture::shifted(grid, {random.between(1, grid.width() - 1),
                                                 random.between(1, grid.height() - 1)}));
}

Texture enlarged(const Texture& texture, Random& random) {
    const int most = core::kMaxGridSide / std::max(texture.grid().width(), texture.grid().height());
    return with(texture,
                valueOf(picture::scaledUp(texture.grid(), random.between(2, std::min(4, most)))));
}

/// Every colour another one, no two the same.
Texture recoloured(const Texture& texture, Random& random) {
    std::set<core::Rgb8> colours;
    while (std::ssize(colours) < texture.palette().size()) {
        const std::uint64_t bits = random.next();
        colours.insert({static_cast<std::uint8_t>(bits), static_cast<std::uint8_t>(bits >> 8U),
                        static_cast<std::uint8_t>(bits >> 16U)});
    }
    std::vector<core::Rgb8> order(colours.begin(), colours.end());
    for (std::size_t i = order.size(); i > 1; --i)
        std::swap(order[i - 1], order[random.next() % i]);
    return valueOf(Texture::create(
        texture.grid(),
        valueOf(core::Palette::create(std::move(order), texture.palette().transparent()))));
}

/// Every channel of every colour by up to six levels.
Texture tinted(const Texture& texture, Random& random) {
    std::vector<core::Rgb8> colours;
    const auto moved = [&](std::uint8_t channel) {
        return static_cast<std::uint8_t>(std::clamp(channel + random.between(-6, 6), 0, 255));
    };
    for (const core::Rgb8 colour : texture.palette().colours())
        colours.push_back({moved(colour.r), moved(colour.g), moved(colour.b)});
    return valueOf(Texture::create(
        texture.grid(),
        valueOf(core::Palette::create(std::move(colours), texture.palette().transparent()))));
}

/// One cell in 50, and one at least, takes the index of another.
Texture touched(const Texture& texture, Random& random) {
    Grid grid = texture.grid();
    const auto cell = [&] {
        return core::Point{random.between(0, grid.width() - 1),
                           random.between(0, grid.height() - 1)};
    };
    for (std::size_t left = std::max<std::size_t>(1, grid.cellCount() / 50); left > 0; --left) {
        const core::Point to = cell();
        grid.set(to.x, to.y, grid.at(cell()));
    }
    return with(texture, grid);
}

/// A line of a third of the width in one colour of the picture.
Texture struck(const Texture& texture, Random& random) {
    Grid grid = texture.grid();
    const int length = std::max(1, grid.width() / 3);
    const int y = random.between(0, grid.height() - 1);
    const int from = random.between(0, grid.width() - length);
    const PaletteIndex index =
        grid.at(random.between(0, grid.width() - 1), random.between(0, grid.height() - 1));
    for (int x = from; x < from + length; ++x) grid.set(x, y, index);
    return with(texture, grid);
}

struct Edit {
    const char* name;
    std::function<Texture(const Texture&, Random&)> apply;
};

std::vector<Edit> edits() {
    return {
        {"mirrored or turned", turned},
        {"shifted", shifted},
        {"enlarged", enlarged},
        {"recoloured", recoloured},
        {"all of these together",
         [](const Texture& texture, Random& random) {
             return enlarged(shifted(turned(recoloured(texture, random), random), random), random);
         }},
        {"colours moved a little", tinted},
        {"1 cell in 50 changed", touched},
        {"struck through", struck},
        {"struck through, mirrored or turned",
         [](const Texture& texture, Random& random) {
             return turned(struck(texture, random), random);
         }},
        {"1 cell in 50 changed, enlarged",
         [](const Texture& texture, Random& random) {
             return enlarged(touched(texture, random), random);
         }},
        {"1 cell in 50 changed, colours moved",
         [](const Texture& texture, Random& random) {
             return tinted(touched(texture, random), random);
         }},
    };
}

// ---- Originals that are edits of one another already, found without looks.

/// The colour of every cell as a number; unpainted is -1.
std::vector<int> colourNumbers(const Texture& texture, const Grid& grid) {
    std::vector<int> numbers;
    for (const PaletteIndex index : grid.cells()) {
        const core::Rgb8 colour = texture.palette()[index];
        const bool unpainted = texture.palette().transparent() == index;
        numbers.push_back(unpainted ? -1 : colour.r << 16U | colour.g << 8U | colour.b);
    }
    return numbers;
}

/// Whether in one orientation three quarters of the cells are the same, of those that are painted
/// in one of them or both.
bool shareCells(const Texture& p, const Texture& q) {
    const std::vector<int> cells = colourNumbers(q, q.grid());
    for (const picture::Orientation orientation : picture::kOrientations) {
        const Grid grid = picture::oriented(p.grid(), orientation);
        if (grid.size() != q.grid().size()) continue;
        const std::vector<int> turnedCells = colourNumbers(p, grid);
        std::size_t same = 0;
        std::size_t painted = 0;
        for (std::size_t i = 0; i < cells.size(); ++i) {
            if (turnedCells[i] < 0 && cells[i] < 0) continue;
            ++painted;
            same += turnedCells[i] == cells[i] ? 1U : 0U;
        }
        if (same * 4 >= painted * 3) return true;
    }
    return false;
}

/// How often each colour is used, most first: the same for all edits but changed cells.
std::vector<int> useCounts(const Texture& texture) {
    std::map<int, int> uses;
    for (const int number : colourNumbers(texture, texture.grid())) ++uses[number];
    std::vector<int> counts;
    for (const auto& [number, count] : uses) counts.push_back(count);
    std::sort(counts.rbegin(), counts.rend());
    return counts;
}

/// Whether `p`, shifted, is `q` but for other colours, one to one. Both are of `size`.
bool pairOneToOne(const std::vector<int>& p, const std::vector<int>& q, core::Size size,
                  core::Point by) {
    std::map<int, int> there;
    std::map<int, int> back;
    for (int y = 0; y < size.height; ++y) {
        for (int x = 0; x < size.width; ++x) {
            const int from = (y + by.y) % size.height * size.width + (x + by.x) % size.width;
            const int mine = p[static_cast<std::size_t>(from)];
            const int theirs = q[static_cast<std::size_t>(y * size.width + x)];
            if (there.try_emplace(mine, theirs).first->second != theirs) return false;
            if (back.try_emplace(theirs, mine).first->second != mine) return false;
        }
    }
    return true;
}

/// Every orientation with every shift, colours one to one.
bool areOneShape(const Texture& p, const Texture& q) {
    const std::vector<int> cells = colourNumbers(q, q.grid());
    const core::Size size = q.grid().size();
    for (const picture::Orientation orientation : picture::kOrientations) {
        const Grid grid = picture::oriented(p.grid(), orientation);
        if (grid.size() != size) continue;
        const std::vector<int> turnedCells = colourNumbers(p, grid);
        for (int y = 0; y < size.height; ++y) {
            for (int x = 0; x < size.width; ++x) {
                if (pairOneToOne(turnedCells, cells, size, {x, y})) return true;
            }
        }
    }
    return false;
}

/// For each original the first one to which it belongs.
std::vector<std::size_t> familiesOf(const std::vector<Texture>& originals) {
    std::vector<std::size_t> family(originals.size());
    std::iota(family.begin(), family.end(), std::size_t{0});
    std::vector<std::vector<int>> counts;
    for (const Texture& texture : originals) counts.push_back(useCounts(texture));
    for (std::size_t i = 0; i < originals.size(); ++i) {
        for (std::size_t k = 0; k < i; ++k) {
            if (family[i] == family[k]) continue;
            const bool related =
                shareCells(originals[i], originals[k]) ||
                (counts[i] == counts[k] && areOneShape(originals[i], originals[k]));
            if (!related) continue;
            const std::size_t from = std::max(family[i], family[k]);
            const std::size_t to = std::min(family[i], family[k]);
            std::replace(family.begin(), family.end(), from, to);
        }
    }
    return family;
}

// ---- How well.

struct Labelled {
    std::size_t original = 0;
    std::size_t family = 0;
    int edit = -1;  ///< -1: an original.
};

struct Score {
    int found = 0;
    int expected = 0;
};

class LabelledSet {
public:
    LabelledSet()
        : m_library(
              valueOf(tasks::openLibrary(m_folder.path() / "library.db", tasks::Purpose::Change))) {
    }

    void add(const Texture& texture, const Labelled& label) {
        const auto added = valueOf(catalogue::addTexture(m_library, texture));
        // An edit that changed nothing, or came out as another did.
        if (added.outcome != catalogue::AddedTexture::Outcome::Added) return;
        m_labels[added.id] = label;
    }

    void report(int within) {
        std::vector<Score> scores(edits().size());
        Score originals;
        int wrong = 0;
        int right = 0;
        for (const auto& [id, label] : m_labels) {
            if (label.edit >= 0) continue;
            std::map<TextureId, tasks::LookAlike> found;
            for (auto& alike : valueOf(tasks::similarTo(m_library, id, within)))
                found.emplace(alike.id, alike);
            for (const auto& [other, alike] : found) {
                const bool belongs = m_labels.at(other).family == label.family;
                belongs ? ++right : ++wrong;
                if (!belongs && std::getenv("NAME_WRONG") != nullptr)
                    std::printf("  %lld %lld edit %d: %d %s\n", static_cast<long long>(id.value),
                                static_cast<long long>(other.value), m_labels.at(other).edit,
                                alike.distance, alike.how.c_str());
            }
            for (const auto& [other, its] : m_labels) {
                if (its.family != label.family || other == id) continue;
                // Edits of a relation are not asked for: they are two steps away.
                if (its.edit >= 0 && its.original != label.original) continue;
                Score& score =
                    its.edit < 0 ? originals : scores[static_cast<std::size_t>(its.edit)];
                ++score.expected;
                if (found.contains(other)) ++score.found;
            }
        }
        print(within, scores, originals, right, wrong);
    }

private:
    void print(int within, const std::vector<Score>& scores, const Score& originals, int right,
               int wrong) const {
        std::printf("distance %d\n", within);
        const auto line = [](const char* name, const Score& score) {
            std::printf("  %-40s %5d of %5d  %.4f\n", name, score.found, score.expected,
                        static_cast<double>(score.found) / std::max(1, score.expected));
        };
        Score all;
        for (std::size_t i = 0; i < scores.size(); ++i) {
            line(edits()[i].name, scores[i]);
            all.found += scores[i].found;
            all.expected += scores[i].expected;
        }
        line("recall", all);
        line("(originals of one family)", originals);
        line("precision", {right, right + wrong});
    }

    tests::TemporaryFolder m_folder;
    catalogue::Library m_library;
    std::map<TextureId, Labelled> m_labels;
};

int measureArt(const std::filesystem::path& folder, const std::vector<int>& distances) {
    std::vector<Texture> originals;
    // Dithered ones are the paintings again, by an edit that is none of those.
    for (const char* name : {"art-16", "tiles-32", "sprites-32", "art-64", "paintings-64"}) {
        for (const Texture& texture : bench::texturesIn(folder / name))
            originals.push_back(texture);
    }
    const std::vector<std::size_t> families = familiesOf(originals);
    LabelledSet set;
    Random random(2026);
    for (std::size_t i = 0; i < originals.size(); ++i) {
        set.add(originals[i], {i, families[i], -1});
        for (std::size_t k = 0; k < edits().size(); ++k)
            set.add(edits()[k].apply(originals[i], random), {i, families[i], static_cast<int>(k)});
    }
    const std::set<std::size_t> distinct(families.begin(), families.end());
    std::printf("%zu originals of %zu families\n", originals.size(), distinct.size());
    for (const int within : distances) {
        set.report(within);
    }
    return 0;
}

// ---- How fast.

void printTimes(const char* what, std::vector<double> milliseconds, double found) {
    std::sort(milliseconds.begin(), milliseconds.end());
    const auto part = [&](double share) {
        return milliseconds[static_cast<std::size_t>(share *
                                                     static_cast<double>(milliseconds.size() - 1))];
    };
    std::printf("%-28s median %7.2f ms, p99 %7.2f ms, worst %7.2f ms, %.1f found\n", what,
                part(0.5), part(0.99), milliseconds.back(),
                found / static_cast<double>(milliseconds.size()));
}

template <typename Work>
void timeEach(const char* what, const std::vector<TextureId>& ids, Work work) {
    std::vector<double> times;
    double found = 0;
    for (const TextureId id : ids) {
        const double before = seconds();
        found += static_cast<double>(work(id));
        times.push_back((seconds() - before) * 1000);
    }
    printTimes(what, std::move(times), found);
}

int measureLibrary(const std::filesystem::path& path) {
    auto library = valueOf(tasks::openLibrary(path, tasks::Purpose::Change));
    const auto missing = valueOf(catalogue::missingLooks(library, 0, 1'000'000'000));
    const double before = seconds();
    check(tasks::workOutLooks(library));
    if (!missing.empty()) {
        std::printf("looks of %zu textures worked out: %.1f s\n", missing.size(),
                    seconds() - before);
    }
    const auto all = valueOf(catalogue::findIds(library, valueOf(catalogue::parseQuery(""))));
    Random random(5);
    std::vector<TextureId> ids;
    for (int i = 0; i < 50; ++i) ids.push_back(all[random.next() % all.size()]);
    const std::vector<TextureId> few(ids.begin(), ids.begin() + 5);
    for (const int within : {0, catalogue::kUsualLikeness, 4}) {
        // Far ones are many to read.
        const auto& asked = within > catalogue::kUsualLikeness ? few : ids;
        timeEach(("similar --within " + std::to_string(within)).c_str(), asked, [&](TextureId id) {
            return valueOf(tasks::similarTo(library, id, within)).size();
        });
    }
    timeEach("find like:ID", ids, [&](TextureId id) {
        const auto query = valueOf(catalogue::parseQuery("like:" + std::to_string(id.value)));
        return valueOf(tasks::findTextures(library, query)).rows.size();
    });
    timeEach("what one added came from", ids, [&](TextureId id) {
        const auto found = valueOf(tasks::cameFrom(library, {&id, 1}, catalogue::kUsualLikeness));
        return found.front().has_value() ? 1U : 0U;
    });
    std::vector<TextureId> newest(all.begin(), all.begin() + std::min(1000L, std::ssize(all)));
    const double start = seconds();
    valueOf(tasks::cameFrom(library, newest, catalogue::kUsualLikeness));
    std::printf("what %zu added came from: %.1f microseconds each\n", newest.size(),
                (seconds() - start) * 1e6 / static_cast<double>(newest.size()));
    const double duplicates = seconds();
    const auto groups = valueOf(tasks::findDuplicates(library, 0));
    std::printf("duplicates: %.0f ms, %zu groups\n", (seconds() - duplicates) * 1000,
                groups.size());
    return 0;
}

// ---- What it costs.

Texture noise(int side, Random& random) {
    std::vector<PaletteIndex> cells(static_cast<std::size_t>(side * side));
    for (PaletteIndex& cell : cells) cell = static_cast<PaletteIndex>(random.between(0, 15));
    std::vector<core::Rgb8> colours;
    for (int i = 0; i < 16; ++i)
        colours.push_back(
            {static_cast<std::uint8_t>(i * 16), 90, static_cast<std::uint8_t>(200 - i)});
    return valueOf(Texture::create(valueOf(Grid::create(side, side, std::move(cells))),
                                   valueOf(core::Palette::create(std::move(colours)))));
}

int measureCost() {
    constexpr int kCount = 4000;
    Random random(9);
    for (const int side : {16, 32, 64}) {
        std::vector<Texture> textures;
        for (int i = 0; i < kCount; ++i) textures.push_back(noise(side, random));
        const double before = seconds();
        std::uint32_t sum = 0;
        for (const Texture& texture : textures)
            sum += picture::lookOf(texture.grid(), texture.palette()).shape;
        const double working = seconds() - before;

        const tests::TemporaryFolder folder;
        auto library =
            valueOf(tasks::openLibrary(folder.path() / "library.db", tasks::Purpose::Change));
        double adding = 0;
        double keeping = 0;
        for (int begin = 0; begin < kCount; begin += 500) {
            auto transaction = valueOf(library.begin());
            for (int i = begin; i < begin + 500; ++i) {
                const Texture& texture = textures[static_cast<std::size_t>(i)];
                const double start = seconds();
                const TextureId id = valueOf(catalogue::addTexture(library, texture)).id;
                const double added = seconds();
                check(tasks::noteLook(library, id, texture));
                keeping += seconds() - added;
                adding += added - start;
            }
            check(transaction.commit());
        }
        std::printf(
            "%dx%d: a look takes %.1f us, with keeping it %.1f us; adding the texture %.1f "
            "us (%u)\n",
            side, side, working * 1e6 / kCount, keeping * 1e6 / kCount, adding * 1e6 / kCount,
            sum % 10);
    }
    return 0;
}

}  // namespace

int lookAlikes(int count, char** words) {
    std::setvbuf(stdout, nullptr, _IOLBF, BUFSIZ);
    if (count > 2 && std::strcmp(words[1], "art") == 0) {
        std::vector<int> distances;
        for (int i = 3; i < count; ++i) distances.push_back(std::atoi(words[i]));
        if (distances.empty()) distances.push_back(catalogue::kUsualLikeness);
        return measureArt(words[2], distances);
    }
    if (count == 3 && std::strcmp(words[1], "library") == 0) return measureLibrary(words[2]);
    if (count == 2 && std::strcmp(words[1], "cost") == 0) return measureCost();
    std::fprintf(stderr, "look_alikes art FOLDER [distance...] | library FILE | cost\n");
    return 2;
}

}  // namespace pantile

int main(int count, char** words) {
    return pantile::lookAlikes(count, words);
}
