#include "tasks/in_order.h"

#include <atomic>
#include <chrono>
#include <thread>

#include "support/matchers.h"

namespace pantile::tasks {
namespace {

using core::ErrorKind;
using core::Result;

TEST(InOrder, HandsResultsOverInTheirOrder) {
    const auto work = [](std::int64_t i) {
        std::this_thread::sleep_for(std::chrono::milliseconds(i % 3));
        return i * i;
    };
    std::vector<std::int64_t> taken;
    const auto take = [&](std::int64_t i, std::int64_t result) -> Result<void> {
        EXPECT_EQ(result, i * i);
        taken.push_back(i);
        return {};
    };
    EXPECT_THAT(inOrder<std::int64_t>(50, work, take), tests::isOk());
    ASSERT_EQ(taken.size(), 50U);
    EXPECT_TRUE(std::is_sorted(taken.begin(), taken.end()));
    EXPECT_THAT(inOrder<std::int64_t>(0, work, take), tests::isOk());
    EXPECT_EQ(taken.size(), 50U);
}

TEST(InOrder, StopsAtTheFirstError) {
    std::atomic<int> begun = 0;
    const auto work = [&](std::int64_t i) {
        ++begun;
        return i;
    };
    const auto take = [](std::int64_t i, std::int64_t) -> Result<void> {
        if (i < 5) return {};
        return core::Error{ErrorKind::Cancelled, "enough", ""};
    };
    EXPECT_THAT(inOrder<std::int64_t>(1000000, work, take),
                tests::failsWith(ErrorKind::Cancelled, "enough"));
    EXPECT_LE(begun, 6 + static_cast<int>(std::max(std::thread::hardware_concurrency(), 1U)) + 1);
}

}  // namespace
}  // namespace pantile::tasks
