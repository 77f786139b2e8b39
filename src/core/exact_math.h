#pragma once

// Roots made of + - * / alone. IEEE 754 rounds those the same everywhere, where the C library's pow
// and cbrt differ in the last bit; so a picture becomes the same cells on every machine.

namespace pantile::core {

/// Within 2 units in the last place. Errors: none; defined for every finite value.
double cubeRoot(double value);

/// Within 2 units in the last place, for value >= 0.
double fifthRoot(double value);

}  // namespace pantile::core
