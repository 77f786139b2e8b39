// variants_bench: per class of art, timing and pen model, the variants of plans: mean seconds and
// mean bytes of scripts, from the quickest to the one with the fewest bytes (where a texture has
// fewer variants, its last counts again). Every variant is replayed. It decides nothing.
//   variants_bench FOLDER [pictures per class]
// FOLDER holds a folder of indexed pictures for each class, as open_art.py makes them.

#include <algorithm>
#include <array>
#include <cstdio>
#include <cstdlib>
#include <string>
#include <vector>

#include "bench/art.h"
#include "board/texture_variants.h"
#include "drawing/planner.h"
#include "drawing/replay.h"
#include "drawing/requests.h"

namespace pantile {
namespace {

struct VariantSetting {
    const char* name;
    core::PointerTiming timing;
    core::PenModel pen;
};

std::vector<VariantSetting> variantSettings() {
    const auto careful = core::PointerTiming::careful();
    const auto quick = core::PointerTiming::quick();
    core::PointerTiming longSteps = quick;
    longSteps.maxStepDown = 127;
    return {{"careful", careful, core::PenModel::WholeCells},
            {"quick", quick, core::PenModel::WholeCells},
            {"quick diagonals", quick, core::PenModel::Diagonals},
            {"quick lines", longSteps, core::PenModel::Lines},
            {"quick jumps", longSteps, core::PenModel::Sampled}};
}

constexpr std::size_t kColumns = 4;

struct Sums {
    std::array<double, kColumns> seconds{};
    std::array<double, kColumns> bytes{};
    int wrong = 0;
};

void addOne(const core::Texture& texture, const VariantSetting& setting, Sums& sums) {
    const core::Canvas canvas = tests::canvasFor(texture.grid().size(), 256, setting.pen);
    const drawing::DrawingRequest request = {texture.grid(), texture.palette().transparent(),
                                             canvas, setting.timing};
    const board::LoadSlot slot = {"kelp", texture.grid(), texture.palette(), canvas,
                                  drawing::planDrawing(request).value()};
    const auto variants = board::variantsOf(slot, setting.timing).value();
    const int besidesScript = 96 + 3 * texture.palette().size();
    for (std::size_t i = 0; i < kColumns; ++i) {
        const board::TextureVariant& variant = variants[std::min(i, variants.size() - 1)];
        sums.seconds[i] += static_cast<double>(variant.plan.milliseconds) / 1000;
        sums.bytes[i] += static_cast<double>(variant.bytes - besidesScript);
        if (!drawing::provePlan(variant.plan, request)) ++sums.wrong;
    }
}

void measureVariants(const std::string& name, const std::vector<core::Texture>& textures) {
    for (const VariantSetting& setting : variantSettings()) {
        Sums sums;
        for (const core::Texture& texture : textures) addOne(texture, setting, sums);
        const auto count = static_cast<double>(textures.size());
        std::printf("%-13s %-15s", name.c_str(), setting.name);
        for (std::size_t i = 0; i < kColumns; ++i) {
            std::printf(" | %5.0f B %5.1f s", sums.bytes[i] / count, sums.seconds[i] / count);
        }
        std::printf(" | %d wrong\n", sums.wrong);
        std::fflush(stdout);
    }
}

}  // namespace
}  // namespace pantile

int main(int argc, char** argv) {
    if (argc < 2) {
        std::fprintf(stderr, "usage: variants_bench FOLDER [pictures per class]\n");
        return 2;
    }
    const std::size_t most = argc > 2 ? std::strtoul(argv[2], nullptr, 10) : 12;
    for (const std::filesystem::path& folder : pantile::bench::foldersIn(argv[1])) {
        pantile::measureVariants(folder.filename().string(),
                                 pantile::bench::spread(pantile::bench::texturesIn(folder), most));
    }
    return 0;
}
