// The tour search against published instances with known optimum: tests/data/references/tsp.csv
// names the source of each. Distances by TSPLIB 95, section 2.

#include <algorithm>
#include <cmath>
#include <sstream>
#include <string>

#include <gtest/gtest.h>

#include "drawing/tour_search.h"
#include "support/csv.h"

namespace pantile::drawing {
namespace {

using Matrix = std::vector<std::vector<std::int64_t>>;

std::vector<double> numbers(std::string text) {
    std::replace(text.begin(), text.end(), ';', ' ');
    std::istringstream in(text);
    std::vector<double> values;
    for (double value = 0; in >> value;) values.push_back(value);
    return values;
}

/// Degrees and minutes as in 37.52, to radians, with the constant that the page gives.
double radians(double degreesAndMinutes) {
    constexpr double kPi = 3.141592;
    const double degrees = std::trunc(degreesAndMinutes);
    return kPi * (degrees + 5.0 * (degreesAndMinutes - degrees) / 3.0) / 180.0;
}

std::int64_t geographical(double x1, double y1, double x2, double y2) {
    constexpr double kRadius = 6378.388;
    const double q1 = std::cos(radians(y1) - radians(y2));
    const double q2 = std::cos(radians(x1) - radians(x2));
    const double q3 = std::cos(radians(x1) + radians(x2));
    return static_cast<std::int64_t>(
        kRadius * std::acos(0.5 * ((1.0 + q1) * q2 - (1.0 - q1) * q3)) + 1.0);
}

std::int64_t distance(const std::string& type, double x1, double y1, double x2, double y2) {
    if (type == "GEO") return geographical(x1, y1, x2, y2);
    const double square = (x1 - x2) * (x1 - x2) + (y1 - y2) * (y1 - y2);
    if (type == "EUC_2D") return static_cast<std::int64_t>(std::sqrt(square) + 0.5);
    return static_cast<std::int64_t>(std::ceil(std::sqrt(square / 10.0)));
}

Matrix matrixOf(const tests::CsvRow& row) {
    const auto count = static_cast<std::size_t>(std::stoi(row.at(1)));
    const std::vector<double> values = numbers(row.at(6));
    Matrix matrix(count, std::vector<std::int64_t>(count));
    std::size_t next = 0;
    for (std::size_t i = 0; i < count; ++i) {
        for (std::size_t j = 0; j <= i; ++j) {
            matrix[i][j] = row.at(2).starts_with("EXPLICIT")
                               ? static_cast<std::int64_t>(values.at(next++))
                               : distance(row.at(2), values.at(2 * i), values.at(2 * i + 1),
                                          values.at(2 * j), values.at(2 * j + 1));
            matrix[j][i] = matrix[i][j];
        }
    }
    return matrix;
}

std::int64_t lengthOf(const std::vector<std::size_t>& tour, const Matrix& matrix) {
    std::int64_t total = matrix[tour.back()][tour.front()];
    for (std::size_t i = 1; i < tour.size(); ++i) total += matrix[tour[i - 1]][tour[i]];
    return total;
}

/// All cities but the first, which is the tour's beginning and end.
class CityTable {
public:
    static constexpr std::int64_t kForced = Links::kForced;

    struct Neighbour {
        Node node;
        std::int64_t ms;
    };

    explicit CityTable(const Matrix& matrix) : m_matrix(&matrix) {
        for (Node a = 0; a < count(); ++a) {
            auto& near = m_neighbours.emplace_back();
            for (Node b = 0; b < count(); ++b) {
                if (a != b) near.push_back({b, between(a, b)});
            }
            std::sort(near.begin(), near.end(),
                      [](const Neighbour& x, const Neighbour& y) { return x.ms < y.ms; });
            near.resize(std::min<std::size_t>(near.size(), 10));
        }
    }

    Node count() const { return static_cast<Node>(m_matrix->size() - 1); }

    Node partner(Node) const { return kNoNode; }

    const std::vector<Neighbour>& neighbours(Node node) const { return m_neighbours[node]; }

    std::int64_t between(Node a, Node b) const { return (*m_matrix)[a + 1][b + 1]; }

private:
    const Matrix* m_matrix;
    std::vector<std::vector<Neighbour>> m_neighbours;
};

TEST(TourSearch, ComesWithinFivePercentOfPublishedOptima) {
    int tried = 0;
    for (const auto& row : tests::readCsv(std::string(PANTILE_TEST_DATA) + "/references/tsp.csv")) {
        if (row.at(0) == "name") continue;
        const Matrix matrix = matrixOf(row);
        std::vector<std::size_t> published;
        for (const double city : numbers(row.at(5))) {
            published.push_back(static_cast<std::size_t>(city) - 1);
        }
        const std::int64_t optimum = std::stoll(row.at(3));
        ASSERT_EQ(lengthOf(published, matrix), optimum) << row.at(0);
        std::vector<std::int64_t> ends(matrix.front().begin() + 1, matrix.front().end());
        TourSearch<CityTable> search(CityTable(matrix), ends, ends);
        EXPECT_LE(search.milliseconds(), optimum + optimum * 15 / 100) << row.at(0);
        core::SplitMix64 numbers(1);
        for (std::size_t i = 0; i < 20 * matrix.size(); ++i) search.kick(numbers);
        std::vector<std::size_t> tour{0};
        for (const Node node : search.order()) tour.push_back(node + 1);
        EXPECT_EQ(lengthOf(tour, matrix), search.milliseconds()) << row.at(0);
        EXPECT_GE(search.milliseconds(), optimum) << row.at(0);
        EXPECT_LE(search.milliseconds(), optimum + optimum * 5 / 100) << row.at(0);
        RecordProperty(row.at(0), static_cast<int>(search.milliseconds()));
        ++tried;
    }
    EXPECT_EQ(tried, 6);
}

}  // namespace
}  // namespace pantile::drawing
