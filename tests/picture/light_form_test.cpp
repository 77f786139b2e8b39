#include "picture/light_form.h"

#include <cmath>

#include <gtest/gtest.h>

#include "core/colour_difference.h"
#include "support/random.h"

namespace pantile::picture {
namespace {

using core::LinearRgb;

// Against the formula itself, which is checked on its published pairs.
TEST(LightForm, IsNearCiede2000) {
    tests::Random random(5);
    double off = 0;
    int count = 0;
    for (int i = 0; i < 5000; ++i) {
        const auto light = [&random] { return random.between(0, 1000) / 1000.0; };
        const LinearRgb p{light() * light(), light() * light(), light() * light()};
        const LinearRgb q{p.r * (0.8 + 0.4 * light()), p.g * (0.8 + 0.4 * light()),
                          p.b * (0.8 + 0.4 * light())};
        const double exact =
            core::ciede2000(core::toLab(core::toXyz(p)), core::toLab(core::toXyz(q)));
        if (exact < 0.5) continue;
        const double near = std::sqrt(differenceForm(curved(p), curved(q)).square(p - q));
        EXPECT_NEAR(near / exact, 1, 0.25) << p.r << ' ' << p.g << ' ' << p.b;
        off += std::abs(near / exact - 1);
        ++count;
    }
    EXPECT_LT(off / count, 0.01);
}

TEST(LightForm, MultipliesAsAMatrix) {
    LightForm form;
    form.addSquare({1, 2, 3}, 2);
    form.addSquare({0, 1, -1}, 0.5);
    const LinearRgb d{0.5, -1, 0.25};
    // (0.5 - 2 + 0.75)² * 2 + (-1 - 0.25)² / 2
    EXPECT_DOUBLE_EQ(form.square(d), 0.75 * 0.75 * 2 + 1.25 * 1.25 / 2);
    EXPECT_DOUBLE_EQ(dot(d, form.times(d)), form.square(d));
}

}  // namespace
}  // namespace pantile::picture
