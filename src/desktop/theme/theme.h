#pragma once

// Theme: every colour of the window, made by rule in OKLCH from six base colours.

#include <vector>

#include "core/colour.h"

namespace pantile::desktop {

enum class Shade { Light, Dark };

/// Each name is a use, not a colour.
struct Theme {
    Shade shade = Shade::Light;

    core::Rgb8 ground;     ///< The window: paper by day, ink by night.
    core::Rgb8 field;      ///< Where something can be typed or chosen.
    core::Rgb8 bench;      ///< The side on which the chosen texture lies.
    core::Rgb8 selection;  ///< Behind what is selected.
    core::Rgb8 hover;      ///< Behind what the pointer is on.
    core::Rgb8 text;
    core::Rgb8 quietText;  ///< Figures and labels.
    core::Rgb8 hairline;   ///< Parts areas that would be told apart without it too.
    core::Rgb8 edge;       ///< Around fields and buttons.
    core::Rgb8 structure;  ///< Slate: marks of selection and focus, bars.
    core::Rgb8 next;       ///< Terracotta: the one thing to do next.
    core::Rgb8 nextPressed;
    core::Rgb8 onNext;     ///< Text on either.
    core::Rgb8 over;       ///< Terracotta: what is past a limit.
    core::Rgb8 done;       ///< Moss, behind a mark.
    core::Rgb8 caution;    ///< Ochre, behind a mark.
    core::Rgb8 onMark;     ///< The sign on done.
    core::Rgb8 onCaution;  ///< The sign on caution.
    core::Rgb8 hatch;      ///< Lines where cells are left unpainted.
    core::Rgb8 hatchGround;
};

Theme makeTheme(Shade shade);

/// Two colours of a theme that meet, and the contrast that they need.
struct ColourPair {
    const char* what;
    core::Rgb8 front;
    core::Rgb8 behind;
    double least;
};

/// Every pair in which one colour has to be made out against another. The style sheet and the
/// painting code use no others.
std::vector<ColourPair> pairsOf(const Theme& theme);

}  // namespace pantile::desktop
