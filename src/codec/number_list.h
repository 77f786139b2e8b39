#pragma once

#include <cstddef>
#include <string>
#include <vector>

namespace pantile::codec {

/// Whole numbers, each once and rising, as the runs that they make.
class NumberList {
public:
    /// Adds first..last, which must lie behind all that is there; nothing if last < first.
    void add(std::size_t first, std::size_t last);

    void add(std::size_t number) { add(number, number); }

    std::size_t count() const { return m_count; }

    /// "3", "3 and 5", "1, 3 to 5 and 9"; after a few runs "and 12 more".
    std::string told() const;

private:
    struct Run {
        std::size_t first;
        std::size_t last;
    };

    std::vector<Run> m_runs;
    std::size_t m_count = 0;
};

}  // namespace pantile::codec
