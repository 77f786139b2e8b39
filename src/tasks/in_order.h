#pragma once

// Work on many things on all cores, whose results are taken one by one in their order.

#include <algorithm>
#include <cstdint>
#include <deque>
#include <functional>
#include <future>
#include <thread>

#include "core/result.h"

namespace pantile::tasks {

/// Calls work(0) to work(count - 1), several at once on threads of their own, and take(i, work(i))
/// one after the other on this thread. Results that wait are no more than there are cores, and one.
/// Errors: those of `take`, behind which nothing is begun; what has begun is waited for.
template <typename T>
core::Result<void> inOrder(std::int64_t count, const std::function<T(std::int64_t)>& work,
                           const std::function<core::Result<void>(std::int64_t, T)>& take) {
    const std::size_t most = std::max(std::thread::hardware_concurrency(), 1U) + 1;
    std::deque<std::future<T>> begun;
    std::int64_t next = 0;
    for (std::int64_t i = 0; i < count; ++i) {
        for (; next < count && begun.size() < most; ++next)
            begun.push_back(std::async(std::launch::async, work, next));
        T result = begun.front().get();
        begun.pop_front();
        PANTILE_RETURN_IF_ERROR(take(i, std::move(result)));
    }
    return {};
}

}  // namespace pantile::tasks
