#include "board/set_climb.h"

#include <algorithm>
#include <array>
#include <cstddef>
#include <span>

namespace pantile::board {
namespace {

class Climber {
public:
    Climber(const SetProblem& problem, const Selection& preferred, Selection chosen)
        : m_problem(problem),
          m_preferred(preferred),
          m_chosen(std::move(chosen)),
          m_room(roomLeft(problem, m_chosen)) {}

    Selection climb() && {
        while (goesOn() && pass()) {
        }
        return std::move(m_chosen);
    }

private:
    static constexpr std::int64_t kMostTrials = 20'000'000;

    /// One piece, and the way that it goes.
    struct Change {
        std::uint32_t piece = 0;
        std::int32_t way = kOut;
    };

    bool goesOn() const { return m_trials < kMostTrials; }

    bool isIn(const Bundle& bundle) const { return m_chosen[bundle.pieces.front()] != kOut; }

    bool pass() {
        bool better = false;
        for (const Bundle& bundle : m_problem.bundles) {
            if (!goesOn()) return false;
            if (isIn(bundle)) {
                better |= tryOut(bundle);
                if (isIn(bundle)) better |= tryOtherWays(bundle);
            } else {
                better |= tryIn(bundle, nullptr) || tryInstead(bundle);
            }
        }
        return better;
    }

    bool tryOut(const Bundle& bundle) {
        m_changes.clear();
        addOut(bundle);
        return !bundle.required && apply();
    }

    bool tryInstead(const Bundle& in) {
        for (const Bundle& out : m_problem.bundles) {
            if (out.required || !isIn(out)) continue;
            if (tryIn(in, &out)) return true;
        }
        return false;
    }

    /// A piece alone is tried in each of its ways, a larger bundle in the preferred ones.
    bool tryIn(const Bundle& in, const Bundle* out) {
        if (in.pieces.size() > 1) return tryInPreferred(in, out);
        const std::uint32_t piece = in.pieces.front();
        for (std::uint32_t way = m_problem.firstWay[piece]; way < m_problem.firstWay[piece + 1];
             ++way) {
            m_changes.assign(1, {piece, static_cast<std::int32_t>(way)});
            if (out != nullptr) addOut(*out);
            if (apply()) return true;
        }
        return false;
    }

    bool tryInPreferred(const Bundle& in, const Bundle* out) {
        m_changes.clear();
        for (const std::uint32_t piece : in.pieces)
            m_changes.push_back({piece, m_preferred[piece]});
        if (out != nullptr) addOut(*out);
        return apply();
    }

    void addOut(const Bundle& bundle) {
        for (const std::uint32_t piece : bundle.pieces) m_changes.push_back({piece, kOut});
    }

    bool tryOtherWays(const Bundle& bundle) {
        bool better = false;
        for (const std::uint32_t piece : bundle.pieces) {
            const std::uint32_t end = m_problem.firstWay[piece + 1];
            for (std::uint32_t way = m_problem.firstWay[piece]; way < end; ++way) {
                const Change change{piece, static_cast<std::int32_t>(way)};
                if (m_chosen[piece] == change.way) continue;
                m_changes.assign(1, change);
                better |= apply() || tryWithOtherWay(change);
            }
        }
        return better;
    }

    /// Lets another piece that is in change its way too: one gives the room that the other takes.
    bool tryWithOtherWay(const Change& change) {
        for (std::uint32_t other = 0; other < m_chosen.size(); ++other) {
            if (other == change.piece || m_chosen[other] == kOut) continue;
            const std::uint32_t end = m_problem.firstWay[other + 1];
            for (std::uint32_t way = m_problem.firstWay[other]; way < end; ++way) {
                if (m_chosen[other] == static_cast<std::int32_t>(way)) continue;
                m_changes.assign({change, {other, static_cast<std::int32_t>(way)}});
                if (apply()) return true;
            }
        }
        return false;
    }

    /// Makes the changes if they are allowed and raise the value.
    bool apply() {
        ++m_trials;
        Wide gain = 0;
        for (const Change& change : m_changes) {
            gain += valueIn(change.way) - valueIn(m_chosen[change.piece]);
        }
        if (gain <= 0) return false;
        for (std::size_t k = 0; k < m_room.size(); ++k) {
            if (m_room[k] - moreUse(k) < 0) return false;
        }
        for (std::size_t k = 0; k < m_room.size(); ++k) m_room[k] -= moreUse(k);
        for (const Change& change : m_changes) m_chosen[change.piece] = change.way;
        return true;
    }

    Wide valueIn(std::int32_t way) const {
        return way == kOut ? 0 : m_problem.value[static_cast<std::size_t>(way)];
    }

    std::int64_t useIn(std::size_t k, std::int32_t way) const {
        return way == kOut ? 0 : m_problem.limits[k].use[static_cast<std::size_t>(way)];
    }

    std::int64_t moreUse(std::size_t k) const {
        std::int64_t more = 0;
        for (const Change& change : m_changes) {
            more += useIn(k, change.way) - useIn(k, m_chosen[change.piece]);
        }
        return more;
    }

    const SetProblem& m_problem;
    const Selection& m_preferred;
    Selection m_chosen;
    std::vector<std::int64_t> m_room;
    std::vector<Change> m_changes;
    std::int64_t m_trials = 0;
};

}  // namespace

Selection climbed(const SetProblem& problem, const Selection& preferred, Selection chosen) {
    return Climber(problem, preferred, std::move(chosen)).climb();
}

}  // namespace pantile::board
