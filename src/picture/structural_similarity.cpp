#include "picture/structural_similarity.h"

#include <array>
#include <cassert>
#include <cstddef>
#include <vector>

#include "picture/eye_blur.h"

namespace pantile::picture {
namespace {

constexpr int kWindow = 11;
constexpr double kC1 = (0.01 * 255) * (0.01 * 255);
constexpr double kC2 = (0.03 * 255) * (0.03 * 255);

// The eye's Gaussian has the same sigma and reaches one cell further to both sides.
static_assert(kEyeSigma == 1.5 && 2 * kEyeReach + 1 == kWindow + 2);

std::array<double, kWindow> windowWeights() {
    const auto wider = eyeWeights();
    std::array<double, kWindow> weights{};
    double sum = 0;
    for (std::size_t i = 0; i < weights.size(); ++i) sum += weights[i] = wider[i + 1];
    for (double& weight : weights) weight /= sum;
    return weights;
}

std::vector<std::optional<double>> brightness(const CellColours& picture) {
    std::vector<std::optional<double>> values;
    values.reserve(picture.cells.size());
    for (const auto& cell : picture.cells) {
        if (!cell) {
            values.emplace_back();
            continue;
        }
        const core::Rgb8 colour = core::toRgb8(*cell);
        values.emplace_back(0.299 * colour.r + 0.587 * colour.g + 0.114 * colour.b);
    }
    return values;
}

// Weighted means of two brightnesses, their squares and their product over one window.
struct Moments {
    double p = 0;
    double q = 0;
    double pp = 0;
    double qq = 0;
    double pq = 0;

    void add(double atP, double atQ, double weight) {
        p += weight * atP;
        q += weight * atQ;
        pp += weight * atP * atP;
        qq += weight * atQ * atQ;
        pq += weight * atP * atQ;
    }

    double similarity() const {
        const double spread = (pp - p * p) + (qq - q * q);
        return (2 * p * q + kC1) * (2 * (pq - p * q) + kC2) /
               ((p * p + q * q + kC1) * (spread + kC2));
    }
};

class Windows {
public:
    Windows(const CellColours& wanted, const CellColours& shown)
        : m_weights(windowWeights()),
          m_wanted(brightness(wanted)),
          m_shown(brightness(shown)),
          m_width(static_cast<std::size_t>(wanted.size.width)) {}

    // Of the window with its top left cell at (left, top).
    std::optional<double> similarity(int left, int top) const {
        Moments moments;
        for (std::size_t y = 0; y < kWindow; ++y) {
            for (std::size_t x = 0; x < kWindow; ++x) {
                const std::size_t cell = (static_cast<std::size_t>(top) + y) * m_width +
                                         static_cast<std::size_t>(left) + x;
                if (!m_wanted[cell] || !m_shown[cell]) return std::nullopt;
                moments.add(*m_wanted[cell], *m_shown[cell], m_weights[x] * m_weights[y]);
            }
        }
        return moments.similarity();
    }

private:
    std::array<double, kWindow> m_weights;
    std::vector<std::optional<double>> m_wanted;
    std::vector<std::optional<double>> m_shown;
    std::size_t m_width;
};

}  // namespace

std::optional<double> structuralSimilarity(const CellColours& wanted, const CellColours& shown) {
    assert(wanted.size == shown.size);
    const Windows windows(wanted, shown);
    double sum = 0;
    int count = 0;
    for (int top = 0; top + kWindow <= wanted.size.height; ++top) {
        for (int left = 0; left + kWindow <= wanted.size.width; ++left) {
            if (const auto similarity = windows.similarity(left, top)) {
                sum += *similarity;
                ++count;
            }
        }
    }
    return count > 0 ? std::optional(sum / count) : std::nullopt;
}

}  // namespace pantile::picture
