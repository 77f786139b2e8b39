#pragma once

// Painting: the larger pictures, each a function from a place to a colour in linear light, sampled
// four times a pixel. Places and sizes are in units of which the picture is 640 wide and 480 high.

#include <functional>
#include <string_view>

#include "core/colour_spaces.h"
#include "core/pixels.h"
#include "draw/field.h"

namespace pantile::sample_art {

using Light = core::LinearRgb;

inline constexpr core::Size kPictureSize{512, 384};

/// A colour written "#rrggbb", in linear light. Errors: none; the text must be well formed.
Light lightOf(std::string_view hex);

/// `share` 0..1 of the way from one colour to the other, in linear light.
Light blend(const Light& from, const Light& to, double share);

Light dimmed(const Light& light, double factor);

Light added(const Light& light, const Light& glow, double strength);

/// Smooth noise that does not repeat, 0..1; x and y in knots.
double cloud(double x, double y, int layers, std::uint64_t seed);

/// How far (x, y) is from the line between two places.
double distanceToLine(double x, double y, Place from, Place to);

/// 1 inside a shape, 0 outside, a soft edge of `softness` units; `distance` is negative inside.
double cover(double distance, double softness = 1.0);

core::Pixels paintPicture(const std::function<Light(double x, double y)>& colourAt);

}  // namespace pantile::sample_art
