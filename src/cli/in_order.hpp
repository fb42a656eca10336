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

/// Threads that have ended when this has.
class Threads {
 public:
  Threads() = default;
  ~Threads() {
    for (std::thread& thread : threads_) thread.join();
  }
  Threads(const Threads&) = delete;
  Threads& operator=(const Threads&) = delete;

  /// False where the system gives no more threads.
  template <typename Work>
  bool start(const Work& work) {
    try {
      threads_.emplace_back(work);
    } catch (const std::system_error&) {
      return false;
    }
    return true;
  }

 private:
  std::vector<std::thread> threads_;
};

/// Calls `take(make(n))` for each n from 0 to `count` - 1, in this order. Up to `jobs` threads do
/// the making, and only a few results for each of them wait to be taken.
template <typename Make, typename Take>
void in_order(std::size_t count, std::size_t jobs, const Make& make, const Take& take) {
  using Result = decltype(make(std::size_t{}));
  constexpr std::size_t kRoomForEach = 4;
  InOrder<Result> results(count, kRoomForEach * jobs);
  const auto work = [&] { results.work(make); };
  Threads threads;
  std::size_t started = 0;
  while (jobs > 1 && started < jobs && threads.start(work)) ++started;
  try {
    for (std::size_t number = 0; number < count; ++number) {
      take(started == 0 ? make(number) : results.take());
    }
  } catch (...) {
    results.stop();
    throw;
  }
}

}  // namespace fingerturn::cli
