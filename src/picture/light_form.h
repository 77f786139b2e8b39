#pragma once

// Squared lengths of differences in linear light, for searches that need the effect of a small
// change at once. See docs/conversion.md section 7.3.

#include "core/colour_spaces.h"

namespace pantile::picture {

inline core::LinearRgb operator-(const core::LinearRgb& p, const core::LinearRgb& q) {
    return {p.r - q.r, p.g - q.g, p.b - q.b};
}

inline double dot(const core::LinearRgb& p, const core::LinearRgb& q) {
    return p.r * q.r + p.g * q.g + p.b * q.b;
}

/// A symmetric matrix of 3 x 3: the square of a difference d is d' * form * d.
struct LightForm {
    double rr = 0;
    double rg = 0;
    double rb = 0;
    double gg = 0;
    double gb = 0;
    double bb = 0;

    void add(const LightForm& other, double weight) {
        rr += weight * other.rr;
        rg += weight * other.rg;
        rb += weight * other.rb;
        gg += weight * other.gg;
        gb += weight * other.gb;
        bb += weight * other.bb;
    }

    /// Adds the square of `along`'s product with the difference.
    void addSquare(const core::LinearRgb& along, double weight) {
        add({along.r * along.r, along.r * along.g, along.r * along.b, along.g * along.g,
             along.g * along.b, along.b * along.b},
            weight);
    }

    core::LinearRgb times(const core::LinearRgb& d) const {
        return {rr * d.r + rg * d.g + rb * d.b, rg * d.r + gg * d.g + gb * d.b,
                rb * d.r + gb * d.g + bb * d.b};
    }

    double square(const core::LinearRgb& d) const {
        return rr * d.r * d.r + gg * d.g * d.g + bb * d.b * d.b +
               2 * (rg * d.r * d.g + rb * d.r * d.b + gb * d.g * d.b);
    }
};

/// A colour with the values of CIELAB's curve, which cost most of a difference.
struct CurvedColour {
    core::LinearRgb light;
    core::Xyz relative;  ///< To the white.
    core::Xyz curve;     ///< CIELAB's curve at `relative`.
};

CurvedColour curved(const core::LinearRgb& light);

/// The form whose square at p - q is that of the difference between p and q, and near it about so:
/// CIEDE2000 with CIELAB as a straight line from p to q; within a twentieth as a rule.
/// Source: as core/colour_difference.h; of correctly rounded operations alone.
LightForm differenceForm(const CurvedColour& p, const CurvedColour& q);

}  // namespace pantile::picture
