#pragma once

// TourSearch: short tours by local search, whatever their links cost; PenTour: the order in which a
// layer's runs are drawn. Authority: docs/drawing.md section 5.

#include <algorithm>
#include <cstdint>
#include <utility>
#include <vector>

#include "core/split_mix.h"
#include "drawing/greedy_links.h"
#include "drawing/links.h"

namespace pantile::drawing {

/// A cycle through all nodes of `links` and through the layer's beginning and end, which are next
/// to one another in it. Units: milliseconds.
template <typename Table>
class TourSearch {
public:
    /// Shape: `fromSwatch` and `toNext` have an entry for each node: what it takes to come from the
    /// layer's swatch and press there, and to go on to the next layer's swatch.
    /// Source: greedy edges, then 2-opt and Or-opt over neighbour lists with a queue of nodes whose
    /// links changed; J. Bentley, 'Fast algorithms for geometric traveling salesman problems',
    /// ORSA Journal on Computing 4(4), 1992.
    TourSearch(Table links, std::vector<std::int64_t> fromSwatch, std::vector<std::int64_t> toNext);

    /// From the click on the swatch to the next swatch, without either pick.
    std::int64_t milliseconds() const { return m_ms; }

    const Table& links() const { return m_links; }

    /// The nodes in drawing order.
    std::vector<Node> order() const;

    /// Other costs between the same nodes; the order stays, and is made shorter where it can be.
    void relink(Table links, std::vector<std::int64_t> toNext);

    /// Swaps two neighbouring stretches of the order somewhere, makes it short again, and keeps
    /// that unless it is longer. Whether it is shorter.
    /// Source: O. Martin, S. Otto, E. Felten, 'Large-step Markov chains for the traveling salesman
    /// problem', Complex Systems 5, 1991; kept local, as in section 5.
    bool kick(core::SplitMix64& numbers);

private:
    static constexpr Node kLongestSegment = 6;  ///< Nodes that Or-opt moves at once.
    static constexpr Node kLongestStretch =
        30;  ///< Nodes in each of the two stretches that a kick swaps.
    static constexpr Node kLeastToKick = 4;

    /// One reversal: links a-b and c-d became a-c and b-d.
    struct Reversal {
        Node a, b, c, d;
    };

    std::int64_t link(Node a, Node b) const {
        const Node cells = m_links.count();
        if (a < cells && b < cells) return m_links.between(a, b);
        if (a > b) std::swap(a, b);
        if (a >= cells) return -Table::kForced;
        return b == cells ? m_fromSwatch[a] : m_toNext[a];
    }

    static bool isForced(std::int64_t ms) { return ms < -Table::kForced / 2; }

    Node after(Node a) const {
        const Node place = m_place[a] + 1;
        return m_tour[place == m_size ? 0 : place];
    }

    Node before(Node a) const { return m_tour[(m_place[a] == 0 ? m_size : m_place[a]) - 1]; }

    Node next(Node a, bool backwards) const { return backwards ? before(a) : after(a); }

    void beginGreedily();
    void measure();
    void reverse(Node first, Node last);
    void exchange(Node a, Node b, Node c, Node d);
    void undo();
    void enqueue(Node a);
    void enqueueAll();
    void optimise();
    std::int64_t improveAt(Node a);
    std::int64_t tryTwoOpt(Node a, bool backwards);
    std::int64_t tryOrOpt(Node a, bool backwards);
    std::int64_t tryPlaces(Node first, Node last, Node cellsMoved, bool backwards,
                           std::int64_t freed);
    void moveSegment(Node p, Node first, Node last, Node q, Node c, Node d);

    Table m_links;
    std::vector<std::int64_t> m_fromSwatch;
    std::vector<std::int64_t> m_toNext;
    Node m_size;  ///< Nodes with the beginning and the end.
    std::vector<Node> m_tour;
    std::vector<Node> m_place;  ///< By node, where it stands in the tour.
    std::int64_t m_ms = 0;
    std::vector<Node> m_queue;
    std::vector<std::uint8_t> m_queued;
    std::vector<Reversal> m_log;
    bool m_logging = false;
};

template <typename Table>
TourSearch<Table>::TourSearch(Table links, std::vector<std::int64_t> fromSwatch,
                              std::vector<std::int64_t> toNext)
    : m_links(std::move(links)),
      m_fromSwatch(std::move(fromSwatch)),
      m_toNext(std::move(toNext)),
      m_size(m_links.count() + 2),
      m_place(m_size),
      m_queued(m_size) {
    beginGreedily();
    enqueueAll();
    optimise();
}

template <typename Table>
void TourSearch<Table>::beginGreedily() {
    const Node start = m_links.count();
    m_tour = greedyPath(m_links, [this](Node node) { return m_fromSwatch[node]; });
    m_tour.insert(m_tour.begin(), {start + 1, start});
    for (Node place = 0; place < m_size; ++place) m_place[m_tour[place]] = place;
    measure();
}

template <typename Table>
void TourSearch<Table>::measure() {
    m_ms = 0;
    for (const Node node : m_tour) {
        const std::int64_t ms = link(node, after(node));
        m_ms += isForced(ms) ? ms + Table::kForced : ms;
    }
}

template <typename Table>
std::vector<Node> TourSearch<Table>::order() const {
    const Node start = m_links.count();
    const bool backwards = after(start) == start + 1;
    std::vector<Node> order;
    order.reserve(start);
    Node node = next(start, backwards);
    for (; node != start + 1; node = next(node, backwards)) order.push_back(node);
    return order;
}

template <typename Table>
void TourSearch<Table>::relink(Table links, std::vector<std::int64_t> toNext) {
    m_links = std::move(links);
    m_toNext = std::move(toNext);
    measure();
    enqueueAll();
    optimise();
}

/// Turns round the tour between two places, or all the rest of it, whichever is shorter: as a cycle
/// that is the same.
template <typename Table>
void TourSearch<Table>::reverse(Node first, Node last) {
    Node length = (last >= first ? last - first : last + m_size - first) + 1;
    if (2 * length > m_size) {
        const Node rest = first;
        first = last + 1 == m_size ? 0 : last + 1;
        last = rest == 0 ? m_size - 1 : rest - 1;
        length = m_size - length;
    }
    for (length /= 2; length > 0; --length) {
        std::swap(m_tour[first], m_tour[last]);
        m_place[m_tour[first]] = first;
        m_place[m_tour[last]] = last;
        first = first + 1 == m_size ? 0 : first + 1;
        last = last == 0 ? m_size - 1 : last - 1;
    }
}

template <typename Table>
void TourSearch<Table>::exchange(Node a, Node b, Node c, Node d) {
    if (after(a) == b) {
        reverse(m_place[b], m_place[c]);
    } else {
        reverse(m_place[a], m_place[d]);
    }
    if (m_logging) m_log.push_back({a, b, c, d});
}

template <typename Table>
void TourSearch<Table>::undo() {
    m_logging = false;
    while (!m_log.empty()) {
        const Reversal last = m_log.back();
        m_log.pop_back();
        exchange(last.a, last.c, last.b, last.d);
    }
}

template <typename Table>
void TourSearch<Table>::enqueue(Node a) {
    if (a >= m_links.count() || m_queued[a] != 0) return;
    m_queued[a] = 1;
    m_queue.push_back(a);
}

template <typename Table>
void TourSearch<Table>::enqueueAll() {
    for (Node node = m_links.count(); node > 0; --node) enqueue(node - 1);
}

template <typename Table>
void TourSearch<Table>::optimise() {
    while (!m_queue.empty()) {
        const Node node = m_queue.back();
        m_queue.pop_back();
        m_queued[node] = 0;
        while (const std::int64_t gain = improveAt(node)) m_ms -= gain;
    }
}

/// Makes the first change found at a node that gains, and tells how much; 0 if there is none.
template <typename Table>
std::int64_t TourSearch<Table>::improveAt(Node a) {
    for (const bool backwards : {false, true}) {
        if (const std::int64_t gain = tryTwoOpt(a, backwards)) return gain;
    }
    for (const bool backwards : {false, true}) {
        if (const std::int64_t gain = tryOrOpt(a, backwards)) return gain;
    }
    return 0;
}

template <typename Table>
std::int64_t TourSearch<Table>::tryTwoOpt(Node a, bool backwards) {
    const Node b = next(a, !backwards);
    const std::int64_t freed = link(a, b);
    for (const auto& near : m_links.neighbours(a)) {
        if (near.ms >= freed) break;
        const Node c = near.node;
        const Node d = next(c, !backwards);
        const std::int64_t gain = freed - near.ms + link(c, d) - link(b, d);
        if (gain <= 0) continue;
        exchange(a, b, c, d);
        for (const Node node : {a, b, c, d}) enqueue(node);
        return gain;
    }
    return 0;
}

/// Segments that begin at a node and go on away from the link before it, moved so that the node is
/// joined to one of its neighbours.
template <typename Table>
std::int64_t TourSearch<Table>::tryOrOpt(Node a, bool backwards) {
    const Node p = next(a, !backwards);
    const std::int64_t before = link(p, a);
    if (isForced(before)) return 0;
    Node last = a;
    for (Node length = 1; length <= kLongestSegment; ++length) {
        if (length > 1) last = next(last, backwards);
        const Node q = next(last, backwards);
        if (last >= m_links.count() || q == p) return 0;
        const std::int64_t behind = link(last, q);
        if (isForced(behind)) continue;
        const std::int64_t freed = before + behind - link(p, q);
        if (freed <= 0) continue;
        if (const std::int64_t gain = tryPlaces(a, last, length, backwards, freed)) return gain;
    }
    return 0;
}

template <typename Table>
std::int64_t TourSearch<Table>::tryPlaces(Node first, Node last, Node cellsMoved, bool backwards,
                                          std::int64_t freed) {
    const Node p = next(first, !backwards);
    const Node q = next(last, backwards);
    for (const auto& near : m_links.neighbours(first)) {
        if (near.ms >= freed) break;
        const Node c = near.node;
        const Node from = backwards ? m_place[c] : m_place[first];
        const Node to = backwards ? m_place[first] : m_place[c];
        const bool inSegment = (to >= from ? to - from : to + m_size - from) < cellsMoved;
        if (inSegment) continue;
        for (const bool side : {false, true}) {
            const Node d = next(c, !side);
            if (c == p || d == p || (c == q && d == last)) continue;
            const std::int64_t broken = link(c, d);
            if (isForced(broken)) continue;
            const std::int64_t gain = freed + broken - near.ms - link(last, d);
            if (gain <= 0) continue;
            moveSegment(p, first, last, q, c, d);
            for (const Node node : {p, q, c, d, first, last}) enqueue(node);
            return gain;
        }
    }
    return 0;
}

/// Takes p-first..last-q out and puts it in as c-first..last-d, by reversals alone.
template <typename Table>
void TourSearch<Table>::moveSegment(Node p, Node first, Node last, Node q, Node c, Node d) {
    const bool forwards = after(p) == first;
    const bool cThenD = next(c, !forwards) == d;
    if (cThenD) {
        exchange(p, first, c, d);
        if (c != q) exchange(p, c, q, last);
        exchange(c, last, first, d);
    } else {
        exchange(p, first, d, c);
        if (d != q) exchange(p, d, q, last);
    }
}

template <typename Table>
bool TourSearch<Table>::kick(core::SplitMix64& numbers) {
    if (m_links.count() < kLeastToKick) return false;
    const Node longest = std::min(kLongestStretch, m_size / 3 - 1);
    const auto place = static_cast<Node>(numbers.below(m_size));
    const Node one = 1 + static_cast<Node>(numbers.below(longest));
    const Node both = one + 1 + static_cast<Node>(numbers.below(longest));
    const auto at = [&](Node steps) { return m_tour[(place + steps) % m_size]; };
    const Node a = at(0);
    const Node b = at(1);
    const Node c = at(one);
    const Node d = at(one + 1);
    const Node e = at(both);
    const Node f = at(both + 1);
    const std::int64_t ab = link(a, b);
    const std::int64_t cd = link(c, d);
    const std::int64_t ef = link(e, f);
    if (isForced(ab) || isForced(cd) || isForced(ef)) return false;
    const std::int64_t known = m_ms;
    m_ms += link(a, d) + link(e, b) + link(c, f) - ab - cd - ef;
    m_log.clear();
    m_logging = true;
    exchange(a, b, e, f);
    exchange(a, e, d, c);
    exchange(e, c, b, f);
    for (const Node node : {a, b, c, d, e, f}) enqueue(node);
    optimise();
    const std::int64_t reached = m_ms;
    if (reached > known) {
        undo();
        m_ms = known;
    }
    m_logging = false;
    m_log.clear();
    return reached < known;
}

using PenTour = TourSearch<Links>;

}  // namespace pantile::drawing
