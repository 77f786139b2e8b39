#include "draw/sheet.h"

#include <algorithm>
#include <array>
#include <cassert>
#include <cmath>
#include <cstdlib>

namespace pantile::sample_art {

namespace {

/// The ordered pattern of 4x4 by the recursive rule of Bayer (1973).
constexpr std::array<std::array<int, 4>, 4> kBayer = {
    {{0, 8, 2, 10}, {12, 4, 14, 6}, {3, 11, 1, 9}, {15, 7, 13, 5}}};

Ink inkOf(char letter) {
    constexpr std::string_view kLetters = "NDGMWTBAYkKuUrRO_";
    const std::size_t index = kLetters.find(letter);
    assert(index != std::string_view::npos);
    return static_cast<Ink>(index);
}

}  // namespace

Ink Sheet::at(int x, int y) const {
    const int column = m_tiles == Tiles::No ? std::clamp(x, 0, m_side - 1) : wrapped(x, m_side);
    const int row = m_tiles == Tiles::Both ? wrapped(y, m_side) : std::clamp(y, 0, m_side - 1);
    return m_inks[offset(column, row)];
}

void Sheet::set(int x, int y, Ink ink) {
    if (m_tiles == Tiles::No && (x < 0 || x >= m_side)) return;
    if (m_tiles != Tiles::Both && (y < 0 || y >= m_side)) return;
    m_inks[offset(wrapped(x, m_side), wrapped(y, m_side))] = ink;
}

core::Grid Sheet::toGrid() const {
    std::vector<core::PaletteIndex> cells;
    cells.reserve(m_inks.size());
    for (const Ink ink : m_inks) cells.push_back(static_cast<core::PaletteIndex>(ink));
    return *core::Grid::create(m_side, m_side, std::move(cells));
}

Ink shade(std::span<const Ink> ramp, double value, core::Point cell, double dither) {
    const auto row = static_cast<std::size_t>(wrapped(cell.y, 4));
    const auto column = static_cast<std::size_t>(wrapped(cell.x, 4));
    const double threshold = (kBayer[row][column] + 0.5) / 16.0 - 0.5;
    const int last = static_cast<int>(ramp.size()) - 1;
    const int step = floorToInt(value * static_cast<double>(ramp.size()) + dither * threshold);
    return ramp[static_cast<std::size_t>(std::clamp(step, 0, last))];
}

Ink shade(Ramp ramp, double value, core::Point cell, double dither) {
    return shade(std::span<const Ink>(ramp.begin(), ramp.size()), value, cell, dither);
}

void paintCells(Sheet& sheet, const std::function<std::optional<Ink>(int x, int y)>& paint) {
    for (int y = 0; y < sheet.side(); ++y) {
        for (int x = 0; x < sheet.side(); ++x) {
            if (const auto ink = paint(x, y)) sheet.set(x, y, *ink);
        }
    }
}

void line(Sheet& sheet, core::Point from, core::Point to, Ink ink) {
    const int steps = std::max(std::abs(to.x - from.x), std::abs(to.y - from.y));
    if (steps == 0) sheet.set(from.x, from.y, ink);
    for (int i = 0; i <= steps && steps > 0; ++i) {
        const double share = static_cast<double>(i) / steps;
        sheet.set(floorToInt(mix(from.x, to.x, share) + 0.5),
                  floorToInt(mix(from.y, to.y, share) + 0.5), ink);
    }
}

void fillRectangle(Sheet& sheet, core::Point corner, core::Size size, Ink ink) {
    for (int y = 0; y < size.height; ++y)
        for (int x = 0; x < size.width; ++x) sheet.set(corner.x + x, corner.y + y, ink);
}

void disc(Sheet& sheet, Place centre, double radius, Ink ink) {
    ellipse(sheet, centre, {radius, radius}, ink);
}

void ellipse(Sheet& sheet, Place centre, Place radii, Ink ink) {
    for (int y = floorToInt(centre.y - radii.y); y <= floorToInt(centre.y + radii.y) + 1; ++y) {
        for (int x = floorToInt(centre.x - radii.x); x <= floorToInt(centre.x + radii.x) + 1; ++x) {
            const double u = (x - centre.x) / radii.x;
            const double v = (y - centre.y) / radii.y;
            if (u * u + v * v <= 1.0) sheet.set(x, y, ink);
        }
    }
}

void ball(Sheet& sheet, Place centre, double radius, std::span<const Ink> ramp) {
    for (int y = floorToInt(centre.y - radius); y <= floorToInt(centre.y + radius) + 1; ++y) {
        for (int x = floorToInt(centre.x - radius); x <= floorToInt(centre.x + radius) + 1; ++x) {
            const double u = (x - centre.x) / radius;
            const double v = (y - centre.y) / radius;
            const double inside = 1.0 - u * u - v * v;
            if (inside < 0.0) continue;
            const double lit = 0.18 + 0.45 * std::sqrt(inside) - 0.33 * (u + v);
            sheet.set(x, y, shade(ramp, lit, {x, y}, 0.0));
        }
    }
}

void drawRope(Sheet& sheet, const std::vector<Place>& path, double radius) {
    for (const Place& place : path) disc(sheet, place, radius + 0.9, Ink::Night);
    for (const Place& place : path) disc(sheet, place, radius, Ink::WetSand);
    for (const Place& place : path)
        sheet.set(floorToInt(place.x + 0.2), floorToInt(place.y - radius * 0.5 + 0.2),
                  Ink::DrySand);
    // A slanting furrow between strands every few cells.
    constexpr double kStrand = 3.0;
    double walked = 0.0;
    for (std::size_t i = 1; i < path.size(); ++i) {
        const double dx = path[i].x - path[i - 1].x;
        const double dy = path[i].y - path[i - 1].y;
        const double step = std::sqrt(dx * dx + dy * dy);
        if (step <= 0.0) continue;
        walked += step;
        if (walked < kStrand) continue;
        walked -= kStrand;
        const Place slant{(dy + 0.6 * dx) / step, (-dx + 0.6 * dy) / step};
        line(sheet,
             {floorToInt(path[i].x - slant.x * radius + 0.5),
              floorToInt(path[i].y - slant.y * radius + 0.5)},
             {floorToInt(path[i].x + slant.x * radius * 0.7 + 0.5),
              floorToInt(path[i].y + slant.y * radius * 0.7 + 0.5)},
             Ink::Bark);
    }
}

void stamp(Sheet& sheet, core::Point corner, std::initializer_list<std::string_view> rows) {
    int y = corner.y;
    for (const std::string_view row : rows) {
        int x = corner.x;
        for (const char letter : row) {
            if (letter != '.') sheet.set(x, y, inkOf(letter));
            ++x;
        }
        ++y;
    }
}

void outline(Sheet& sheet, Ink ink) {
    const Sheet before = sheet;
    paintCells(sheet, [&](int x, int y) -> std::optional<Ink> {
        if (before.at(x, y) != Ink::Clear) return std::nullopt;
        const bool touches = before.at(x - 1, y) != Ink::Clear ||
                             before.at(x + 1, y) != Ink::Clear ||
                             before.at(x, y - 1) != Ink::Clear || before.at(x, y + 1) != Ink::Clear;
        return touches ? std::optional<Ink>(ink) : std::nullopt;
    });
}

}  // namespace pantile::sample_art
