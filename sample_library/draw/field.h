#pragma once

// Field: one number for each cell of a texture that repeats in both directions, and the noises and
// scattered stones that fill it.

#include <cstddef>
#include <cstdint>
#include <vector>

#include "draw/chance.h"

namespace pantile::sample_art {

class Field {
public:
    Field(int width, int height)
        : m_width(width),
          m_height(height),
          m_values(static_cast<std::size_t>(width) * static_cast<std::size_t>(height)) {}

    int width() const { return m_width; }

    int height() const { return m_height; }

    /// Column and row wrap round.
    double at(int x, int y) const { return m_values[offset(x, y)]; }

    double& at(int x, int y) { return m_values[offset(x, y)]; }

private:
    std::size_t offset(int x, int y) const {
        return static_cast<std::size_t>(wrapped(y, m_height)) * static_cast<std::size_t>(m_width) +
               static_cast<std::size_t>(wrapped(x, m_width));
    }

    int m_width;
    int m_height;
    std::vector<double> m_values;
};

/// Shape: knots across and down, over the whole field; each at least 1.
struct NoiseGrain {
    int across = 4;
    int down = 4;
};

/// Smooth value noise, 0..1, without a seam.
Field smoothNoise(int width, int height, NoiseGrain grain, std::uint64_t seed);

/// `layers` smooth noises, each twice as fine and half as strong as the one before; 0..1.
Field layeredNoise(int width, int height, NoiseGrain grain, int layers, std::uint64_t seed);

/// How much a surface of height `heights` faces the light from the top left; 0 when flat.
double slopeToLight(const Field& heights, int x, int y);

struct Place {
    double x = 0;
    double y = 0;
};

/// About `count` places spread evenly over a sheet that repeats.
std::vector<Place> spreadPlaces(int width, int height, int count, std::uint64_t seed);

/// Where a cell lies in the mosaic of the nearest places.
struct StoneSpot {
    std::size_t stone = 0;  ///< The nearest place.
    double dx = 0;          ///< From that place to the cell.
    double dy = 0;
    double distance = 0;
    double toEdge = 0;  ///< To the border with the nearest neighbour stone; 0 on it.
};

/// Units: cells, measured around the wrap. `stretch` above 1 makes stones that much wider than
/// tall.
StoneSpot nearestStone(const std::vector<Place>& places, int width, int height, double x, double y,
                       double stretch = 1.0);

}  // namespace pantile::sample_art
