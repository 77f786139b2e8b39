#include "drawing/pen_tour.h"

#include <algorithm>
#include <utility>

#include "drawing/greedy_links.h"

namespace pantile::drawing {
namespace {

constexpr Node kLongestSegment = 6;   ///< Nodes that Or-opt moves at once.
constexpr Node kLongestStretch = 30;  ///< Nodes in each of the two stretches that a kick swaps.
constexpr Node kLeastToKick = 4;

}  // namespace

PenTour::PenTour(Links links, std::vector<std::int64_t> fromSwatch,
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

void PenTour::beginGreedily() {
    const Node start = m_links.count();
    m_tour = greedyPath(m_links, [this](Node node) { return m_fromSwatch[node]; });
    m_tour.insert(m_tour.begin(), {start + 1, start});
    for (Node place = 0; place < m_size; ++place) m_place[m_tour[place]] = place;
    measure();
}

void PenTour::measure() {
    m_ms = 0;
    for (const Node node : m_tour) {
        const std::int64_t ms = link(node, after(node));
        m_ms += isForced(ms) ? ms + Links::kForced : ms;
    }
}

std::vector<Node> PenTour::order() const {
    const Node start = m_links.count();
    const bool backwards = after(start) == start + 1;
    std::vector<Node> order;
    order.reserve(start);
    Node node = next(start, backwards);
    for (; node != start + 1; node = next(node, backwards)) order.push_back(node);
    return order;
}

void PenTour::relink(Links links, std::vector<std::int64_t> toNext) {
    m_links = std::move(links);
    m_toNext = std::move(toNext);
    measure();
    enqueueAll();
    optimise();
}

/// Turns round the tour between two places, or all the rest of it, whichever is shorter: as a cycle
/// that is the same.
void PenTour::reverse(Node first, Node last) {
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

void PenTour::exchange(Node a, Node b, Node c, Node d) {
    if (after(a) == b) {
        reverse(m_place[b], m_place[c]);
    } else {
        reverse(m_place[a], m_place[d]);
    }
    if (m_logging) m_log.push_back({a, b, c, d});
}

void PenTour::undo() {
    m_logging = false;
    while (!m_log.empty()) {
        const Reversal last = m_log.back();
        m_log.pop_back();
        exchange(last.a, last.c, last.b, last.d);
    }
}

void PenTour::enqueue(Node a) {
    if (a >= m_links.count() || m_queued[a] != 0) return;
    m_queued[a] = 1;
    m_queue.push_back(a);
}

void PenTour::enqueueAll() {
    for (Node node = m_links.count(); node > 0; --node) enqueue(node - 1);
}

void PenTour::optimise() {
    while (!m_queue.empty()) {
        const Node node = m_queue.back();
        m_queue.pop_back();
        m_queued[node] = 0;
        while (const std::int64_t gain = improveAt(node)) m_ms -= gain;
    }
}

/// Makes the first change found at a node that gains, and tells how much; 0 if there is none.
std::int64_t PenTour::improveAt(Node a) {
    for (const bool backwards : {false, true}) {
        if (const std::int64_t gain = tryTwoOpt(a, backwards)) return gain;
    }
    for (const bool backwards : {false, true}) {
        if (const std::int64_t gain = tryOrOpt(a, backwards)) return gain;
    }
    return 0;
}

std::int64_t PenTour::tryTwoOpt(Node a, bool backwards) {
    const Node b = next(a, !backwards);
    const std::int64_t freed = link(a, b);
    for (const Links::Neighbour& near : m_links.neighbours(a)) {
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
std::int64_t PenTour::tryOrOpt(Node a, bool backwards) {
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

std::int64_t PenTour::tryPlaces(Node first, Node last, Node cellsMoved, bool backwards,
                                std::int64_t freed) {
    const Node p = next(first, !backwards);
    const Node q = next(last, backwards);
    for (const Links::Neighbour& near : m_links.neighbours(first)) {
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
void PenTour::moveSegment(Node p, Node first, Node last, Node q, Node c, Node d) {
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

bool PenTour::kick(core::SplitMix64& numbers) {
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

}  // namespace pantile::drawing
