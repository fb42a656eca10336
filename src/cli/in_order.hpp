#pragma once

#include <condition_variable>
#include <cstddef>
#include <exception>
#include <mutex>
#include <optional>
#include <system_error>
#include <thread>
#include <utility>
#include <vector>

namespace fingerturn::cli {

/// Results that several threads make and one takes in their order. At most `room` of them are in
/// work or waiting to be taken, however long one of them takes.
template <typename Result>
class InOrder {
 public:
  InOrder(std::size_t count, std::size_t room) : count_(count), waiting_(room) {}

  /// Works at one number after another until there are none left.
  template <typename Work>
  void work(const Work& make) noexcept {
    while (const std::optional<std::size_t> number = next_number()) {
      try {
        put(*number, make(*number));
      } catch (...) {
        fail(std::current_exception());
      }
    }
  }

  /// Waits for the next result; throws what making one threw.
  Result take() {
    std::unique_lock lock(mutex_);
    std::optional<Result>& place = waiting_[taken_ % waiting_.size()];
    changed_.wait(lock, [&] { return place.has_value() || problem_; });
    if (problem_) std::rethrow_exception(problem_);
    Result result = std::move(*place);
    place.reset();
    ++taken_;
    changed_.notify_all();
    return result;
  }

  /// No number is begun after this.
  void stop() noexcept {
    const std::lock_guard lock(mutex_);
    count_ = 0;
    changed_.notify_all();
  }

 private:
  std::optional<std::size_t> next_number() {
    std::unique_lock lock(mutex_);
    changed_.wait(lock, [&] { return begun_ >= count_ || begun_ < taken_ + waiting_.size(); });
    if (begun_ >= count_) return std::nullopt;
    return begun_++;
  }

  void put(std::size_t number, Result result) {
    const std::lock_guard lock(mutex_);
    waiting_[number % waiting_.size()] = std::move(result);
    changed_.notify_all();
  }

  void fail(std::exception_ptr problem) noexcept {
    const std::lock_guard lock(mutex_);
    problem_ = std::move(problem);
    count_ = 0;
    changed_.notify_all();
  }

  std::size_t count_;
  std::vector<std::optional<Result>> waiting_;  ///< number n waits in place n modulo its size
  std::size_t begun_ = 0;
  std::size_t taken_ = 0;
  std::exception_ptr problem_;
  std::mutex mutex_;
  std::condition_variable changed_;
};

/// Begins `jobs` threads; fewer where the system gives no more.
template <typename Work>
void begin_threads(std::vector<std::jthread>& threads, std::size_t jobs, const Work& work) {
  try {
    while (threads.size() < jobs) threads.emplace_back(work);
  } catch (const std::system_error&) {
    // Those that have begun do the work; where there are none, the caller does it.
  }
}

/// Calls `take(make(n))` for each n from 0 to `count` - 1, in this order. Up to `jobs` threads do
/// the making, and only a few results for each of them wait to be taken.
template <typename Make, typename Take>
void in_order(std::size_t count, std::size_t jobs, const Make& make, const Take& take) {
  using Result = decltype(make(std::size_t{}));
  constexpr std::size_t kRoomForEach = 4;
  InOrder<Result> results(count, kRoomForEach * jobs);
  std::vector<std::jthread> threads;
  try {
    if (jobs > 1) begin_threads(threads, jobs, [&] { results.work(make); });
    for (std::size_t number = 0; number < count; ++number) {
      take(threads.empty() ? make(number) : results.take());
    }
  } catch (...) {
    results.stop();
    throw;
  }
}

}  // namespace fingerturn::cli
