#include "fuzz/picture_seeds.h"

#include <array>
#include <fstream>
#include <string>
#include <string_view>

#include "image_files/libjpeg_pictures.h"
#include "image_files/qt_pictures.h"

namespace pantile::fuzz {
namespace {

namespace fs = std::filesystem;

constexpr std::array<std::string_view, 6> kDrawings{
    R"svg(<svg xmlns="http://www.w3.org/2000/svg" width="16" height="24"><rect width="9" height="5" fill="#b5532d"/></svg>)svg",
    R"svg(<?xml version="1.0"?><!-- buoy --><svg viewBox="0 0 40 20"><circle cx="9" cy="9" r="5" stroke="red"/></svg>)svg",
    R"svg(<svg width="2cm" height="1cm"><path d="M1 1 L9 2 C3 4 5 6 7 8 Q1 2 3 4 A5 3 0 1 1 9 9 z" stroke-width="3"/></svg>)svg",
    R"svg(<svg xmlns:xlink="http://www.w3.org/1999/xlink"><defs><g id="k"><polygon points="0,0 9,3 2,8"/></g></defs><use xlink:href="#k" transform="rotate(30) scale(2,3)"/></svg>)svg",
    R"svg(<svg><linearGradient id="s"><stop offset="0" stop-color="#222"/><stop offset="1"/></linearGradient><ellipse rx="50" ry="9" fill="url(#s)" opacity=".5"/></svg>)svg",
    R"svg(<svg><style>.r{fill:#2f6f5e;stroke-linejoin:round}</style><g class="r"><line x2="9" y2="7"/><polyline points="1 2 3 9"/></g></svg>)svg",
};

void write(const fs::path& file, std::string_view bytes) {
    fs::create_directories(file.parent_path());
    std::ofstream(file, std::ios::binary) << bytes;
}

}  // namespace

void writePictureSeeds(const fs::path& into) {
    for (std::size_t i = 0; i < kDrawings.size(); ++i)
        write(into / "svg" / std::to_string(i), kDrawings.at(i));
    for (const int across : {1, 2}) {
        for (const int down : {1, 2}) {
            for (const bool progressive : {false, true}) {
                const auto bytes = image_files::writtenByLibjpeg(image_files::redAboveBlue(20, 24),
                                                                 {across, down, progressive});
                write(into / "jpeg" /
                          (std::to_string(across) + std::to_string(down) +
                           (progressive ? "-progressive" : "")),
                      {reinterpret_cast<const char*>(bytes.data()), bytes.size()});
            }
        }
    }
}

}  // namespace pantile::fuzz
