#pragma once

// The tour that local search begins with: shortest links first.

#include <algorithm>
#include <array>
#include <cstdint>
#include <functional>
#include <limits>
#include <map>
#include <numeric>
#include <utility>
#include <vector>

#include "drawing/links.h"

namespace pantile::drawing {
namespace greedy {

/// Paths that grow together.
class Pieces {
public:
    explicit Pieces(Node count)
        : m_parents(count), m_links(count, {kNoNode, kNoNode}), m_degrees(count) {
        std::iota(m_parents.begin(), m_parents.end(), Node{0});
    }

    bool canJoin(Node a, Node b) {
        return m_degrees[a] < 2 && m_degrees[b] < 2 && rootOf(a) != rootOf(b);
    }

    void join(Node a, Node b) {
        m_links[a][m_degrees[a]++] = b;
        m_links[b][m_degrees[b]++] = a;
        m_parents[rootOf(a)] = rootOf(b);
    }

    std::vector<Node> ends() const {
        std::vector<Node> ends;
        for (Node node = 0; node < m_degrees.size(); ++node) {
            if (m_degrees[node] < 2) ends.push_back(node);
        }
        return ends;
    }

    /// Appends the piece that begins at `end` to `path`.
    void walk(Node end, std::vector<Node>& path) const {
        Node from = kNoNode;
        for (Node node = end; node != kNoNode;) {
            path.push_back(node);
            const Node on = m_links[node][0] == from ? m_links[node][1] : m_links[node][0];
            from = node;
            node = on;
        }
    }

private:
    Node rootOf(Node node) {
        while (m_parents[node] != node) {
            m_parents[node] = m_parents[m_parents[node]];
            node = m_parents[node];
        }
        return node;
    }

    std::vector<Node> m_parents;
    std::vector<std::array<Node, 2>> m_links;
    std::vector<std::uint8_t> m_degrees;
};

/// Two nodes that a link may join, by what it takes: shortest first.
/// Shape: of a cost in the order of the nodes. Costs are few beside the links, so that a list for
/// each of them is quicker than to sort all links.
template <typename Table>
std::map<std::int64_t, std::vector<std::pair<Node, Node>>> linksByCost(const Table& links) {
    std::map<std::int64_t, std::vector<std::pair<Node, Node>>> byCost;
    for (Node a = 0; a < links.count(); ++a) {
        for (const auto& near : links.neighbours(a)) byCost[near.ms].emplace_back(a, near.node);
    }
    return byCost;
}

template <typename Table>
void joinPieces(const Table& links, Pieces& pieces) {
    for (Node a = 0; a < links.count(); ++a) {
        const Node b = links.partner(a);
        if (b != kNoNode && b > a) pieces.join(a, b);
    }
    for (const auto& [ms, pairs] : linksByCost(links)) {
        for (const auto& [a, b] : pairs) {
            if (pieces.canJoin(a, b)) pieces.join(a, b);
        }
    }
}

/// Takes the node of least cost that is not drawn yet out of `ends`; kNoNode if there is none.
template <typename Cost>
Node takeNearest(std::vector<Node>& ends, const std::vector<std::uint8_t>& drawn, Cost cost) {
    std::erase_if(ends, [&](Node end) { return drawn[end] != 0; });
    Node best = kNoNode;
    std::int64_t least = std::numeric_limits<std::int64_t>::max();
    for (const Node end : ends) {
        const std::int64_t ms = cost(end);
        if (ms >= least) continue;
        least = ms;
        best = end;
    }
    return best;
}

}  // namespace greedy

/// A path through all nodes of `links`, the forced links in it: links are taken from the shortest
/// on as long as they join ends of different pieces, then the pieces are joined, always on to the
/// nearest end, first the one for which `first` is least.
/// Cost: links x log links, and the square of the pieces left.
template <typename Table>
std::vector<Node> greedyPath(const Table& links, const std::function<std::int64_t(Node)>& first) {
    greedy::Pieces pieces(links.count());
    greedy::joinPieces(links, pieces);
    std::vector<Node> ends = pieces.ends();
    std::vector<std::uint8_t> drawn(links.count());
    std::vector<Node> path;
    path.reserve(links.count());
    Node end = greedy::takeNearest(ends, drawn, first);
    while (end != kNoNode) {
        const std::size_t known = path.size();
        pieces.walk(end, path);
        for (std::size_t i = known; i < path.size(); ++i) drawn[path[i]] = 1;
        const Node last = path.back();
        end =
            greedy::takeNearest(ends, drawn, [&](Node node) { return links.between(last, node); });
    }
    return path;
}

}  // namespace pantile::drawing
