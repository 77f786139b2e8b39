#include "desktop/theme/theme.h"

#include "core/colour_spaces.h"
#include "desktop/theme/contrast.h"

namespace pantile::desktop {

using core::OkLch;
using core::Rgb8;

namespace {

// The six base colours.
constexpr OkLch kPaper{0.97, 0.01, 85};
constexpr OkLch kInk{0.25, 0.02, 260};
constexpr OkLch kSlate{0.45, 0.03, 250};
constexpr OkLch kTerracotta{0.58, 0.14, 40};
constexpr OkLch kMoss{0.55, 0.09, 145};
constexpr OkLch kOchre{0.75, 0.13, 80};

Rgb8 toRgb(const OkLch& colour) {
    return core::toRgb8(core::toLinear(core::toOkLab(colour)));
}

// The colour moved in lightness by so much towards the text: darker by day, lighter by night.
OkLch towardsText(OkLch colour, double step, Shade shade) {
    colour.l += shade == Shade::Light ? -step : step;
    return colour;
}

// Moved by the least number of hundredths that brings it to `least` against all of `behind`.
Rgb8 standingOut(OkLch colour, std::initializer_list<Rgb8> behind, double least, Shade shade) {
    constexpr double kStep = 0.01;
    const auto isEnough = [&](Rgb8 candidate) {
        for (const Rgb8 each : behind) {
            if (contrastRatio(candidate, each) < least) return false;
        }
        return true;
    };
    while (!isEnough(toRgb(colour)) && colour.l > 0 && colour.l < 1)
        colour = towardsText(colour, kStep, shade);
    return toRgb(colour);
}

}  // namespace

Theme makeTheme(Shade shade) {
    const bool light = shade == Shade::Light;
    const OkLch ground = light ? kPaper : kInk;
    const OkLch text = light ? kInk : kPaper;

    Theme theme;
    theme.shade = shade;
    theme.ground = toRgb(ground);
    theme.field = toRgb(towardsText(ground, light ? -0.02 : -0.04, shade));
    theme.bench = toRgb(towardsText(ground, 0.03, shade));
    theme.hover = toRgb(towardsText(ground, 0.04, shade));
    theme.selection = toRgb({towardsText(ground, 0.09, shade).l, kSlate.c, kSlate.h});
    theme.text = toRgb(text);
    const auto grounds = {theme.ground, theme.field, theme.bench, theme.hover, theme.selection};
    theme.quietText = standingOut(towardsText(ground, 0.45, shade), grounds, kTextContrast, shade);
    theme.hairline = toRgb(towardsText(ground, 0.10, shade));
    theme.edge = standingOut(towardsText(ground, 0.30, shade), grounds, kMarkContrast, shade);
    theme.structure = standingOut(kSlate, grounds, kMarkContrast, shade);
    // Text lies on terracotta, so it goes darker in either shade until paper can be read on it.
    theme.onNext = toRgb(kPaper);
    theme.next = standingOut(kTerracotta, {theme.onNext}, kTextContrast, Shade::Light);
    theme.nextPressed = standingOut(towardsText(kTerracotta, 0.14, Shade::Light), {theme.onNext},
                                    kTextContrast, Shade::Light);
    theme.over = standingOut(kTerracotta, grounds, kMarkContrast, shade);
    theme.onMark = toRgb(kPaper);
    theme.done = standingOut(kMoss, {theme.onMark}, kTextContrast, Shade::Light);
    theme.caution = toRgb(kOchre);
    theme.onCaution = toRgb(kInk);
    theme.hatchGround = toRgb(towardsText(ground, 0.02, shade));
    theme.hatch = toRgb(towardsText(ground, 0.18, shade));
    return theme;
}

std::vector<ColourPair> pairsOf(const Theme& t) {
    return {
        {"text on the window", t.text, t.ground, kTextContrast},
        {"text in a field", t.text, t.field, kTextContrast},
        {"text on the bench", t.text, t.bench, kTextContrast},
        {"text on what is selected", t.text, t.selection, kTextContrast},
        {"text under the pointer", t.text, t.hover, kTextContrast},
        {"quiet text on the window", t.quietText, t.ground, kTextContrast},
        {"quiet text in a field", t.quietText, t.field, kTextContrast},
        {"quiet text on the bench", t.quietText, t.bench, kTextContrast},
        {"quiet text on what is selected", t.quietText, t.selection, kTextContrast},
        {"quiet text under the pointer", t.quietText, t.hover, kTextContrast},
        {"text on the next thing", t.onNext, t.next, kTextContrast},
        {"text on the next thing, pressed", t.onNext, t.nextPressed, kTextContrast},
        {"the sign for done", t.onMark, t.done, kTextContrast},
        {"the sign for caution", t.onCaution, t.caution, kTextContrast},
        {"the edge of a field on the window", t.edge, t.ground, kMarkContrast},
        {"the edge of a field on the bench", t.edge, t.bench, kMarkContrast},
        {"the edge of a field on its inside", t.edge, t.field, kMarkContrast},
        {"what is past a limit on the window", t.over, t.ground, kMarkContrast},
        {"what is past a limit beside a bar's ground", t.over, t.selection, kMarkContrast},
        {"the mark of focus on the window", t.structure, t.ground, kMarkContrast},
        {"the mark of focus on the bench", t.structure, t.bench, kMarkContrast},
        {"the mark of focus in a field", t.structure, t.field, kMarkContrast},
        {"the mark of focus on what is selected", t.structure, t.selection, kMarkContrast},
        {"the mark of focus under the pointer", t.structure, t.hover, kMarkContrast},
    };
}

}  // namespace pantile::desktop
