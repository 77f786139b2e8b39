#pragma once

// Codes for a decoder in another language that was written from docs/code-format.md, not from our
// sources: tests/outside/code_decoder.py.

#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <string>
#include <vector>

#include "codec/code_support.h"
#include "codec/parts.h"

namespace pantile::tests {

/// What that decoder says with these arguments: 0 if it agrees.
inline int decoderStatus(const std::string& arguments) {
    const std::string command =
        "python3 '" PANTILE_SOURCE_DIR "/tests/outside/code_decoder.py' " + arguments;
    return std::system(command.c_str());
}

/// The same for the vectors in a folder.
inline int decoderStatusOf(const std::filesystem::path& folder) {
    return decoderStatus("'" + folder.string() + "'/*.txt");
}

/// Random textures of all methods and palette forms, each also in parts.
inline void writeRandomCodes(const std::filesystem::path& folder, Random& random, int textures) {
    for (int i = 0; i < textures; ++i) {
        const core::Texture texture = randomTexture(random);
        const codec::EncodeOptions options{
            i % 3 == 0 ? codec::MethodChoice::PlainRunsOnly : codec::MethodChoice::Shortest,
            i % 5 == 0 ? codec::PaletteForm::ByFingerprint : codec::PaletteForm::Inside};
        std::ofstream file(folder / (std::to_string(i) + ".txt"));
        file << codeVectorText(texture, options) << "parts:\n";
        const auto parts = static_cast<std::size_t>(random.between(2, 9));
        const auto bytes = codec::packContents(texture, options).bytes;
        const auto codes = codec::armouredParts(bytes, parts);
        for (const std::string& code : codes.value()) file << code << '\n';
    }
}

/// Random sets of two to five textures, some of which share a palette.
inline void writeRandomSets(const std::filesystem::path& folder, Random& random, int sets) {
    for (int i = 0; i < sets; ++i) {
        std::vector<core::Texture> textures;
        const core::Palette palette = randomPalette(random, 9);
        for (int count = random.between(2, 5); count > 0; --count) {
            const core::Size size{random.between(1, 12), random.between(1, 12)};
            core::Grid grid = randomGrid(random, size, 9);
            const bool sharesPalette = random.between(0, 2) > 0;
            textures.push_back(*core::Texture::create(
                std::move(grid), sharesPalette ? palette : randomPalette(random, 9),
                randomWords(random)));
        }
        const codec::EncodeOptions options;
        const codec::Container container = codec::packSet(textures, options).value();
        for (std::size_t place = 0; place < textures.size(); ++place) {
            std::ofstream file(folder /
                               ("set" + std::to_string(i) + "-" + std::to_string(place) + ".txt"));
            file << codeVectorText(textures[place], options, container, place);
        }
    }
}

}  // namespace pantile::tests
