// Learns the weights of src/codec/start_values.cpp from open art and prints them. They are frozen
// with the format; this shows where they come from.
// usage: learn_start_values FOLDER [ROUNDS]    FOLDER: the half 'train' of what open_art.py made

#include <array>
#include <cmath>
#include <cstdio>
#include <cstdlib>
#include <filesystem>
#include <vector>

#include "art.h"
#include "codec/bit_coder.h"
#include "codec/grid_model.h"

namespace {

using namespace pantile;

constexpr std::size_t kInputs = codec::GridMixer::kInputs;
using Row = std::array<double, kInputs>;
using Rows = std::array<std::vector<Row>, codec::kGridChoosers>;
constexpr std::size_t kShared = codec::kGridChoosers - 1;  // Its choices share one row.

codec::GridMixer::StartWeights rounded(const Rows& rows) {
    codec::GridMixer::StartWeights weights;
    for (std::size_t chooser = 0; chooser < weights.size(); ++chooser) {
        for (std::size_t choice = 0; choice < codec::kGridChoices[chooser]; ++choice) {
            codec::GridMixer::Weights row{};
            const Row& from = rows[chooser][chooser == kShared ? 0 : choice];
            for (std::size_t i = 0; i < kInputs; ++i) {
                row[i] = static_cast<codec::Weight>(std::lround(from[i]));
            }
            weights[chooser].push_back(row);
        }
    }
    return weights;
}

/// Moves `rows` a part of the way to what the mixer had learned when a texture ended.
void follow(Rows& rows, const codec::GridMixer::StartWeights& start,
            const codec::GridMixer::StartWeights& end, double part) {
    for (std::size_t chooser = 0; chooser < start.size(); ++chooser) {
        std::vector<std::size_t> moved;
        for (std::size_t choice = 0; choice < start[chooser].size(); ++choice) {
            if (start[chooser][choice] != end[chooser][choice]) moved.push_back(choice);
        }
        const double share = chooser == kShared ? part / static_cast<double>(moved.size()) : part;
        for (const std::size_t choice : moved) {
            Row& row = rows[chooser][chooser == kShared ? 0 : choice];
            for (std::size_t i = 0; i < kInputs; ++i) {
                row[i] += share * (end[chooser][choice][i] - start[chooser][choice][i]);
            }
        }
    }
}

void shuffle(std::vector<core::Texture>& textures) {
    std::uint32_t seed = 1;
    for (std::size_t i = textures.size(); i > 1; --i) {
        seed = seed * 1664525U + 1013904223U;
        std::swap(textures[i - 1], textures[(seed >> 8U) % i]);
    }
}

void learn(Rows& rows, const std::vector<core::Texture>& textures, double part) {
    double bytes = 0;
    for (const core::Texture& texture : textures) {
        const auto start = rounded(rows);
        codec::GridModel model(texture.grid().cellCount(), start);
        codec::BitCoder coder;
        const auto cells = texture.grid().cells();
        std::vector<core::PaletteIndex> copy(cells.begin(), cells.end());
        model.code(coder, texture.grid().size(), texture.palette(), 0, copy);
        bytes += static_cast<double>(coder.finish().size());
        follow(rows, start, model.mixer().weights(), part);
    }
    std::fprintf(stderr, "mean bytes of cells: %.2f\n",
                 bytes / static_cast<double>(textures.size()));
}

}  // namespace

int main(int count, char** arguments) {
    if (count < 2) {
        std::puts("usage: learn_start_values FOLDER [ROUNDS]");
        return 2;
    }
    std::vector<core::Texture> textures;
    for (const std::filesystem::path& folder : bench::foldersIn(arguments[1])) {
        for (core::Texture& texture : bench::texturesIn(folder)) {
            textures.push_back(std::move(texture));
        }
    }
    shuffle(textures);
    Rows rows;
    for (std::size_t chooser = 0; chooser < rows.size(); ++chooser) {
        Row row{};
        row.fill(codec::kWeightOne * 0.13);
        row.back() = 0;
        rows[chooser].assign(chooser == kShared ? 1 : codec::kGridChoices[chooser], row);
    }
    const int rounds = count > 2 ? std::atoi(arguments[2]) : 3;
    for (int round = 0; round < rounds; ++round) learn(rows, textures, 1.0 / (8 << round));
    for (const auto& list : rows) {
        for (const Row& row : list) {
            for (const double weight : row)
                std::printf("%ld, ", std::lround(64 * weight / codec::kWeightOne));
            std::puts("");
        }
    }
    return 0;
}
