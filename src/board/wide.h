#pragma once

// Wide: a whole number of 128 bits with a sign, also on machines of 32 bits.

#ifndef __SIZEOF_INT128__
#include <boost/multiprecision/cpp_int.hpp>
#endif

namespace pantile::board {

#ifdef __SIZEOF_INT128__
__extension__ using Wide = __int128;
#else
using Wide = boost::multiprecision::int128_t;
#endif

}  // namespace pantile::board
