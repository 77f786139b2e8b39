// Writes what the fuzzer begins with, a folder for each target: the frozen vectors of
// tests/data as each target takes them, texts in which their codes stand, loads, pictures and
// library files. usage: fuzz_seeds DATA-FOLDER INTO-FOLDER

#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <iostream>
#include <sstream>
#include <string>
#include <vector>

#include "codec/modelled_form.h"
#include "codec/text_code.h"
#include "fuzz/load_seeds.h"
#include "fuzz/picture_seeds.h"

namespace pantile::fuzz {
namespace {

namespace fs = std::filesystem;

void write(const fs::path& folder, const std::string& name, const std::string& bytes) {
    fs::create_directories(folder);
    std::ofstream(folder / name, std::ios::binary) << bytes;
}

std::string readFile(const fs::path& path) {
    std::ostringstream text;
    text << std::ifstream(path, std::ios::binary).rdbuf();
    return text.str();
}

/// The lines behind `heading`, up to the next line with a colon in it.
std::vector<std::string> linesBehind(const std::string& vector, const std::string& heading) {
    std::vector<std::string> lines;
    const std::size_t at = vector.find("\n" + heading + "\n");
    if (at == std::string::npos) return lines;
    std::istringstream text(vector.substr(at + heading.size() + 2));
    for (std::string line; std::getline(text, line) && line.find(':') == std::string::npos;) {
        lines.push_back(line);
    }
    return lines;
}

std::string bytesOf(const std::vector<std::string>& hexLines) {
    std::string bytes;
    for (const std::string& line : hexLines) {
        std::istringstream words(line);
        for (unsigned byte = 0; words >> std::hex >> byte;) bytes += static_cast<char>(byte);
    }
    return bytes;
}

std::string joined(const std::vector<std::string>& lines, const std::string& before,
                   const std::string& between) {
    std::string text;
    for (const std::string& line : lines) text += (text.empty() ? before : between + before) + line;
    return text;
}

/// As the armour target takes them: '0' for no check value to be added, then symbols as letters.
std::string symbolsOf(const std::vector<std::string>& lines) {
    std::string symbols = "0";
    for (std::size_t i = 0; i < lines.size(); ++i) {
        const std::size_t marks = i == 0 ? 2 : 1;
        const std::size_t behind = i + 1 == lines.size() ? 2 : 1;
        symbols += lines[i].substr(marks, lines[i].size() - marks - behind);
    }
    return symbols;
}

void writeGrids(const fs::path& folder, const std::string& name, const core::Texture& texture) {
    const core::Grid& grid = texture.grid();
    const int colours = texture.palette().size();
    std::string head;
    for (const int side : {grid.width(), grid.height(), colours})
        head += static_cast<char>(side - 1);
    for (const auto choice : {codec::MethodChoice::PlainRunsOnly, codec::MethodChoice::Shortest}) {
        const codec::GridForm form = codec::packGrid(grid, colours, choice);
        const auto method = static_cast<char>(form.method);
        write(folder, name + "-" + std::to_string(method),
              method + head + std::string(form.bytes.begin(), form.bytes.end()));
    }
}

void writeTexture(const fs::path& folder, const std::string& name, const core::Texture& texture) {
    const core::Grid& grid = texture.grid();
    const std::string& title = texture.text().title;
    std::string input;
    for (const int number : {grid.width() - 1, grid.height() - 1, texture.palette().size() - 2,
                             static_cast<int>(texture.palette().transparent().has_value()),
                             static_cast<int>(title.size())}) {
        input += static_cast<char>(number);
    }
    write(folder, name, input + title + std::string(grid.cells().begin(), grid.cells().end()));
}

void writeTexts(const fs::path& folder, const std::string& name,
                const std::vector<std::string>& lines) {
    const std::string code = joined(lines, "", "\n");
    write(folder, name, code);
    write(folder, name + "-quoted", "keeper wrote:\n" + joined(lines, "> > ", "\n") + "\nnice");
    write(folder, name + "-page", "<p>" + joined(lines, "", "<br/>\n") + "</p>&nbsp;&#120;");
    write(folder, name + "-escaped", "{\"text\":\"" + joined(lines, "", "\\n") + "\"}");
    write(folder, name + "-numbered", joined(lines, "12: ", "\r\n"));
    write(folder, name + "-twice", code + "\n" + code.substr(0, code.size() / 2) + "%0A" + code);
}

void writeSeeds(const fs::path& vectorPath, const fs::path& into) {
    const std::string vector = readFile(vectorPath);
    const std::string name = vectorPath.stem().string();
    const std::vector<std::string> code = linesBehind(vector, "code:");
    write(into / "armour", name, symbolsOf(code));
    const std::string bytes = bytesOf(linesBehind(vector, "bytes:"));
    const bool isModelled = bytes.front() == static_cast<char>(codec::kModelledForm);
    if (isModelled) {
        write(into / "modelled", name, bytes.substr(1));
    } else {
        write(into / "container", name, bytes);
    }
    const std::vector<std::string> parts = linesBehind(vector, "parts:");
    if (!parts.empty()) writeTexts(into / "harvest", name + "-parts", parts);
    writeTexts(into / "harvest", name, code);
    for (const codec::FoundCode& found : codec::harvestCodes(vector).found) {
        if (const auto modelled = codec::packModelled(std::vector{found.texture}, false)) {
            write(into / "modelled", name, std::string(modelled->begin() + 1, modelled->end()));
        }
        writeGrids(into / "grid", name, found.texture);
        writeTexture(into / "texture", name, found.texture);
    }
}

void writeLibraryFiles(const fs::path& folder, const fs::path& into) {
    for (const auto& entry : fs::directory_iterator(folder)) {
        write(into, entry.path().stem().string(), readFile(entry.path()));
    }
}

/// The questions of the tables of queries, and what people keep grids and palettes in.
void writeSmallTexts(const fs::path& queries, const fs::path& into) {
    for (const auto& entry : fs::directory_iterator(queries)) {
        std::istringstream lines(readFile(entry.path()));
        int number = 0;
        for (std::string line; std::getline(lines, line);) {
            const std::size_t end = line.find(" => ");
            if (end == std::string::npos || line.starts_with('#')) continue;
            write(into / "query", entry.path().stem().string() + std::to_string(++number),
                  line.substr(0, end));
        }
    }
    write(into / "csv", "commas",
          "# title Wet sand\n# palette #1b2631 #f2efe4\n# transparent 0\n0,1,1\n1,0,1\n");
    write(into / "csv", "semicolons",
          "\xEF\xBB\xBF\"# title Kelp; \"\"x\"\"\"\r\n# palette #1b2631 #b5532d\r\n0;1\r\n");
    write(into / "palette", "lines", "# Tidewrack\n#1b2631 transparent\n#f2efe4\n\n#b5532d\n");
}

/// Libraries of every version as they are, with a changed byte here and there, and cut off.
void writeOldLibraries(const fs::path& into) {
    for (int version = 0; version < 8; ++version) {
        const std::string number(1, static_cast<char>(version));
        const std::string name = "version-" + std::to_string(version + 1);
        write(into, name, number);
        for (const int place : {0x12, 0x3C, 0x64, 0x1004, 0x2010, 0x9008}) {
            const std::string change = {'\0', static_cast<char>(place >> 8),
                                        static_cast<char>(place), '\x07'};
            write(into, name + "-at-" + std::to_string(place), number + change);
        }
        write(into, name + "-cut", number + std::string("\x80\x20\x00\x00", 4));
    }
}

int writeAllSeeds(const fs::path& data, const fs::path& into) {
    int vectors = 0;
    for (const auto& entry : fs::directory_iterator(data / "codes")) {
        if (entry.path().extension() != ".txt") continue;
        writeSeeds(entry.path(), into);
        ++vectors;
    }
    // The harvest target puts a code where a byte 1 stands.
    write(into / "harvest", "whole-codes", "\x01 kelp\n\x01\n> \x01");
    writeLibraryFiles(data / "library_files", into / "library_file");
    writeSmallTexts(data / "queries", into);
    writeOldLibraries(into / "old_library");
    writeLoadSeeds(into);
    writePictureSeeds(into);
    std::cout << vectors << " vectors\n";
    return vectors == 0 ? EXIT_FAILURE : EXIT_SUCCESS;
}

}  // namespace
}  // namespace pantile::fuzz

int main(int argc, char** argv) {
    if (argc != 3) {
        std::cerr << "usage: fuzz_seeds DATA-FOLDER INTO-FOLDER\n";
        return 2;
    }
    return pantile::fuzz::writeAllSeeds(argv[1], argv[2]);
}
