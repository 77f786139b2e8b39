#pragma once

// What the tests of codes share: seeded random textures, and the frozen vectors of
// tests/data/codes.

#include <algorithm>
#include <array>
#include <filesystem>
#include <fstream>
#include <iomanip>
#include <map>
#include <sstream>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include <gtest/gtest.h>

#include "codec/armour.h"
#include "codec/text_code.h"
#include "support/random.h"

namespace pantile::tests {

inline std::vector<std::uint8_t> randomBytes(Random& random, std::size_t size) {
    std::vector<std::uint8_t> bytes(size);
    for (auto& byte : bytes) byte = static_cast<std::uint8_t>(random.next());
    return bytes;
}

inline core::Palette randomPalette(Random& random, int colours) {
    std::vector<core::Rgb8> list;
    for (int i = 0; i < colours; ++i) {
        const auto part = [&] { return static_cast<std::uint8_t>(random.between(0, 255)); };
        list.push_back({part(), part(), part()});
    }
    std::optional<core::PaletteIndex> transparent;
    if (random.between(0, 2) == 0) {
        transparent = static_cast<core::PaletteIndex>(random.between(0, colours - 1));
    }
    return *core::Palette::create(std::move(list), transparent);
}

/// Cells in runs of a random mean length, so that every method has its turn.
inline core::Grid randomGrid(Random& random, core::Size size, int colours) {
    const int longest = 1 << random.between(0, 9);
    std::vector<core::PaletteIndex> cells;
    const auto wanted =
        static_cast<std::size_t>(size.width) * static_cast<std::size_t>(size.height);
    while (cells.size() < wanted) {
        const auto length = static_cast<std::size_t>(random.between(1, longest));
        const auto colour = static_cast<core::PaletteIndex>(random.between(0, colours - 1));
        cells.insert(cells.end(), std::min(length, wanted - cells.size()), colour);
    }
    return *core::Grid::create(size.width, size.height, std::move(cells));
}

inline core::TextureText randomWords(Random& random) {
    constexpr std::array<std::string_view, 6> kWords = {"kelp",  "wet-sand", "Näss",
                                                        "brass", "帆",       "🪸"};
    const auto word = [&] {
        return std::string(kWords[static_cast<std::size_t>(random.between(0, 5))]);
    };
    core::TextureText text;
    if (random.between(0, 1) == 1) text.title = word() + " " + word();
    if (random.between(0, 3) == 1) text.author = word() + " studio";
    if (random.between(0, 3) == 1) text.licence = "CC0-1.0";
    for (int tags = random.between(0, 3); tags > 0; --tags) text.tags.push_back(word());
    return text;
}

inline core::Texture randomTexture(Random& random, core::Size size, int colours) {
    // One after the other: compilers differ in which argument they work out first.
    core::TextureText words = randomWords(random);
    core::Palette palette = randomPalette(random, colours);
    return *core::Texture::create(randomGrid(random, size, colours), std::move(palette),
                                  std::move(words));
}

inline core::Texture randomTexture(Random& random) {
    const core::Size size{random.between(1, 24), random.between(1, 24)};
    return randomTexture(random, size, random.between(2, 20));
}

/// A code of about the most usual size: 16x16 cells in 12 colours, some ten lines.
inline core::Texture usualTexture(std::uint64_t seed) {
    Random random(seed);
    return randomTexture(random, {16, 16}, 12);
}

/// 24x12 cells without any order, so that their code has many lines.
inline core::Texture noisyTexture() {
    Random random(77);
    std::vector<core::PaletteIndex> cells;
    for (int i = 0; i < 288; ++i) {
        cells.push_back(static_cast<core::PaletteIndex>(random.between(0, 11)));
    }
    return *core::Texture::create(*core::Grid::create(24, 12, std::move(cells)),
                                  randomPalette(random, 12));
}

inline std::string codeOf(const core::Texture& texture, const codec::EncodeOptions& options = {}) {
    return codec::encodeTextCode(texture, options)->text;
}

inline std::vector<std::string> linesOf(const std::string& text) {
    std::vector<std::string> lines;
    std::istringstream stream(text);
    for (std::string line; std::getline(stream, line);) lines.push_back(line);
    return lines;
}

inline std::string joined(const std::vector<std::string>& parts, std::string_view between) {
    std::string text;
    for (std::size_t i = 0; i < parts.size(); ++i) {
        if (i > 0) text += between;
        text += parts[i];
    }
    return text;
}

/// A frozen vector: what tests/data/codes/<name>.txt says.
struct CodeVector {
    std::string name;
    core::Texture texture;
    codec::EncodeOptions options;
    std::string method;
    std::vector<std::uint8_t> bytes;
    std::string code;
    std::string parts;  ///< The same in parts, one behind the other; or empty.
};

/// The fields of a vector file by name; those of several lines joined by line feeds.
inline std::map<std::string, std::string> readFields(const std::filesystem::path& path) {
    std::ifstream file(path);
    std::map<std::string, std::string> fields;
    std::string key;
    for (std::string line; std::getline(file, line);) {
        if (line.starts_with('#')) continue;
        const std::size_t colon = line.find(':');
        if (colon == std::string::npos) {
            fields[key] += (fields[key].empty() ? "" : "\n") + line;
        } else {
            key = line.substr(0, colon);
            fields[key] = line.size() > colon + 2 ? line.substr(colon + 2) : "";
        }
    }
    return fields;
}

inline CodeVector readCodeVector(const std::filesystem::path& path) {
    std::map<std::string, std::string> fields = readFields(path);
    const auto numbers = [&](const std::string& field, int base) {
        std::vector<std::uint8_t> list;
        std::istringstream stream(fields[field]);
        for (std::string word; stream >> word;) {
            list.push_back(static_cast<std::uint8_t>(std::stoi(word, nullptr, base)));
        }
        return list;
    };
    const auto words = [&](const std::string& field) {
        std::vector<std::string> list;
        std::istringstream stream(fields[field]);
        for (std::string word; stream >> word;) list.push_back(word);
        return list;
    };
    std::vector<core::Rgb8> colours;
    for (const std::string& hex : words("palette")) colours.push_back(*core::parseHexColour(hex));
    std::optional<core::PaletteIndex> transparent;
    if (fields["transparent"] != "none") transparent = numbers("transparent", 10).at(0);
    const std::vector<std::string> size = words("size");
    core::TextureText text;
    text.title = fields["title"];
    text.author = fields["author"];
    text.licence = fields["licence"];
    text.tags = words("tags");
    codec::EncodeOptions options;
    if (fields["method"] == "plain runs") options.method = codec::MethodChoice::PlainRunsOnly;
    if (fields["palette-form"] == "by-fingerprint") {
        options.palette = codec::PaletteForm::ByFingerprint;
    }
    return {
        path.stem().string(),
        *core::Texture::create(
            *core::Grid::create(std::stoi(size.at(0)), std::stoi(size.at(1)), numbers("cells", 10)),
            *core::Palette::create(std::move(colours), transparent), std::move(text)),
        options,
        fields["method"],
        numbers("bytes", 16),
        fields["code"],
        fields["parts"]};
}

/// The text of a vector file for the texture at `place` of a container, as readCodeVector takes it.
inline std::string codeVectorText(const core::Texture& texture, const codec::EncodeOptions& options,
                                  const codec::Container& container, std::size_t place) {
    const core::TextureText& words = texture.text();
    const core::Palette& palette = texture.palette();
    std::ostringstream text;
    text << "place: " << place << "\ntitle: " << words.title << "\nauthor: " << words.author
         << "\nlicence: " << words.licence << "\ntags:";
    for (const std::string& tag : words.tags) text << ' ' << tag;
    text << "\nsize: " << texture.grid().width() << ' ' << texture.grid().height() << "\npalette:";
    for (const core::Rgb8 colour : palette.colours()) text << ' ' << core::toHex(colour);
    const auto transparent = palette.transparent();
    text << "\ntransparent: " << (transparent ? std::to_string(*transparent) : "none")
         << "\npalette-form: "
         << (options.palette == codec::PaletteForm::Inside ? "inside" : "by-fingerprint")
         << "\nmethod: " << codec::methodName(container.method) << "\ncells:\n";
    for (const core::PaletteIndex cell : texture.grid().cells()) text << int{cell} << ' ';
    text << "\nbytes:\n" << std::hex << std::setfill('0');
    for (const std::uint8_t byte : container.bytes) text << std::setw(2) << int{byte} << ' ';
    text << "\ncode:\n" << *codec::armoured(container.bytes) << '\n';
    return text.str();
}

/// The same for a code of one texture.
inline std::string codeVectorText(const core::Texture& texture,
                                  const codec::EncodeOptions& options) {
    return codeVectorText(texture, options, codec::packContents(texture, options), 0);
}

/// The vector files of a folder of tests/data, by name. Fails the test if there are none.
inline std::vector<std::filesystem::path> vectorFiles(const std::string& folder) {
    std::vector<std::filesystem::path> paths;
    for (const auto& entry : std::filesystem::directory_iterator(PANTILE_TEST_DATA "/" + folder)) {
        if (entry.path().extension() == ".txt") paths.push_back(entry.path());
    }
    std::sort(paths.begin(), paths.end());
    EXPECT_FALSE(paths.empty());
    return paths;
}

/// All frozen vectors, by name.
inline std::vector<CodeVector> readCodeVectors() {
    std::vector<CodeVector> vectors;
    for (const auto& path : vectorFiles("codes")) vectors.push_back(readCodeVector(path));
    return vectors;
}

}  // namespace pantile::tests
