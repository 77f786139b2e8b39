// make_blue_noise: prints the ranks of the blue-noise mask, for src/picture/blue_noise.cpp.

#include <cstdio>

#include "picture/void_and_cluster.h"

int main() {
    const auto ranks = pantile::tests::VoidAndCluster(pantile::tests::kBlueNoiseSide,
                                                      pantile::tests::kBlueNoiseSeed)
                           .ranks();
    for (std::size_t i = 0; i < ranks.size(); ++i)
        std::printf("%d,%c", ranks[i], i % 16 == 15 ? '\n' : ' ');
}
