#pragma once

// PenTour: the order in which a layer's runs are drawn, made short by local search.
// Authority: docs/drawing.md section 5.

#include <cstdint>
#include <utility>
#include <vector>

#include "core/split_mix.h"
#include "drawing/links.h"

namespace pantile::drawing {

/// A cycle through all nodes of `links` and through the layer's beginning and end, which are next
/// to one another in it. Units: milliseconds.
class PenTour {
public:
    /// Shape: `fromSwatch` and `toNext` have an entry for each node: what it takes to come from the
    /// layer's swatch and press there, and to go on to the next layer's swatch.
    /// Source: greedy edges, then 2-opt and Or-opt over neighbour lists with a queue of nodes whose
    /// links changed; J. Bentley, 'Fast algorithms for geometric traveling salesman problems',
    /// ORSA Journal on Computing 4(4), 1992.
    PenTour(Links links, std::vector<std::int64_t> fromSwatch, std::vector<std::int64_t> toNext);

    /// From the click on the swatch to the next swatch, without either pick.
    std::int64_t milliseconds() const { return m_ms; }

    const Links& links() const { return m_links; }

    /// The nodes in drawing order.
    std::vector<Node> order() const;

    /// Other costs between the same nodes; the order stays, and is made shorter where it can be.
    void relink(Links links, std::vector<std::int64_t> toNext);

    /// Swaps two neighbouring stretches of the order somewhere, makes it short again, and keeps
    /// that unless it is longer. Whether it is shorter.
    /// Source: O. Martin, S. Otto, E. Felten, 'Large-step Markov chains for the traveling salesman
    /// problem', Complex Systems 5, 1991; kept local, as in section 5.
    bool kick(core::SplitMix64& numbers);

private:
    /// One reversal: links a-b and c-d became a-c and b-d.
    struct Reversal {
        Node a, b, c, d;
    };

    std::int64_t link(Node a, Node b) const {
        const Node cells = m_links.count();
        if (a < cells && b < cells) return m_links.between(a, b);
        if (a > b) std::swap(a, b);
        if (a >= cells) return -Links::kForced;
        return b == cells ? m_fromSwatch[a] : m_toNext[a];
    }

    static bool isForced(std::int64_t ms) { return ms < -Links::kForced / 2; }

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

    Links m_links;
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

}  // namespace pantile::drawing
