#include "codec/number_list.h"

namespace pantile::codec {

void NumberList::add(std::size_t first, std::size_t last) {
    if (last < first) return;
    m_count += last - first + 1;
    if (!m_runs.empty() && m_runs.back().last + 1 == first) {
        m_runs.back().last = last;
    } else {
        m_runs.push_back({first, last});
    }
}

std::string NumberList::told() const {
    constexpr std::size_t kMostEntries = 5;
    std::vector<std::string> entries;
    std::size_t left = m_count;
    for (const Run& run : m_runs) {
        if (entries.size() == kMostEntries) break;
        entries.push_back(std::to_string(run.first));
        if (run.last > run.first) entries.back() += " to " + std::to_string(run.last);
        left -= run.last - run.first + 1;
    }
    if (left > 0) entries.push_back(std::to_string(left) + " more");
    std::string text;
    for (std::size_t i = 0; i < entries.size(); ++i) {
        if (i > 0) text += i + 1 == entries.size() ? " and " : ", ";
        text += entries[i];
    }
    return text;
}

}  // namespace pantile::codec
