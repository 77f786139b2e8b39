#include "picture/alike_colours.h"

#include <algorithm>
#include <limits>

namespace pantile::picture {
namespace {

constexpr std::size_t kMostGroups = 256;
constexpr double kWorthOfAColour = 17;  // about 3 ln n for the 256 cells of small art
constexpr double kOneColour = 2.8;      // means no further apart are taken for one
constexpr int kRegroupings = 4;

double squaredDistance(const NoisyColour& p, const NoisyColour& q) {
    double sum = 0;
    for (std::size_t i = 0; i < p.size(); ++i) sum += (p.at(i) - q.at(i)) * (p.at(i) - q.at(i));
    return sum;
}

struct Group {
    NoisyColour sum{};
    double count = 0;
    NoisyColour mean{};

    void add(const NoisyColour& colours, double howMany) {
        count += howMany;
        for (std::size_t i = 0; i < sum.size(); ++i) {
            sum.at(i) += colours.at(i);
            mean.at(i) = sum.at(i) / count;
        }
    }
};

using Groups = std::vector<Group>;

std::size_t nearest(const Groups& groups, const NoisyColour& colour) {
    std::size_t best = 0;
    double least = std::numeric_limits<double>::infinity();
    for (std::size_t i = 0; i < groups.size(); ++i) {
        const double distance = squaredDistance(groups[i].mean, colour);
        if (distance < least) {
            least = distance;
            best = i;
        }
    }
    return best;
}

// Groups no wider than `radius`, in order of appearance; empty if there would be too many.
Groups smallGroups(const std::vector<NoisyColour>& colours, double radius) {
    Groups groups;
    for (const NoisyColour& colour : colours) {
        const std::size_t best = nearest(groups, colour);
        if (!groups.empty() && squaredDistance(groups[best].mean, colour) < radius * radius) {
            groups[best].add(colour, 1);
            continue;
        }
        if (groups.size() == kMostGroups) return {};
        groups.emplace_back().add(colour, 1);
    }
    return groups;
}

// Noise about one colour, cut in two, has halves 1.6 errors apart however many there are of it.
double costOfJoining(const Group& p, const Group& q) {
    const double squared = squaredDistance(p.mean, q.mean);
    return std::min(p.count * q.count / (p.count + q.count) * squared,
                    kWorthOfAColour * squared / (kOneColour * kOneColour));
}

bool joinNearest(Groups& groups) {
    double least = kWorthOfAColour;
    std::size_t first = 0;
    std::size_t second = 0;
    for (std::size_t i = 0; i < groups.size(); ++i) {
        for (std::size_t j = i + 1; j < groups.size(); ++j) {
            const double cost = costOfJoining(groups[i], groups[j]);
            if (cost < least) {
                least = cost;
                first = i;
                second = j;
            }
        }
    }
    if (second == 0) return false;
    groups[first].add(groups[second].sum, groups[second].count);
    groups.erase(groups.begin() + static_cast<std::ptrdiff_t>(second));
    return true;
}

Groups regrouped(const Groups& groups, const std::vector<NoisyColour>& colours) {
    Groups anew(groups.size());
    for (const NoisyColour& colour : colours) anew[nearest(groups, colour)].add(colour, 1);
    std::erase_if(anew, [](const Group& group) { return group.count == 0; });
    return anew;
}

}  // namespace

std::vector<NoisyColour> gatherAlike(const std::vector<NoisyColour>& colours) {
    Groups groups;
    for (double radius = 1; groups.empty() && !colours.empty(); radius *= 1.5)
        groups = smallGroups(colours, radius);
    while (joinNearest(groups)) {
    }
    for (int round = 0; round < kRegroupings; ++round) groups = regrouped(groups, colours);
    std::vector<NoisyColour> means;
    means.reserve(colours.size());
    for (const NoisyColour& colour : colours) means.push_back(groups[nearest(groups, colour)].mean);
    return means;
}

}  // namespace pantile::picture
