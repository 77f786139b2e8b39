#pragma once

// Roots, powers and a sine made of + - * / alone. IEEE 754 rounds those the same everywhere, where
// the C library's pow, cbrt and sin differ in the last bit; so a picture becomes the same cells on
// every machine.

namespace pantile::core {

/// Within 2 units in the last place. Errors: none; defined for every finite value.
double cubeRoot(double value);

/// Within 2 units in the last place, for value >= 0.
double fifthRoot(double value);

/// base to the power of exponent, within a relative 1e-13, for base >= 0 and exponent in
/// 0.01..100; 0 for bases below 1e-300.
double power(double base, double exponent);

/// sin(pi x), within 1e-15, for |x| up to 2^52.
double sinPi(double x);

}  // namespace pantile::core
