#include "cli/in_order.hpp"

#include "catch.hpp"

#include <atomic>
#include <chrono>
#include <cstddef>
#include <random>
#include <stdexcept>
#include <string>
#include <thread>
#include <vector>

using fingerturn::cli::in_order;

namespace {

std::vector<std::size_t> numbers_to(std::size_t count) {
  std::vector<std::size_t> numbers(count);
  for (std::size_t i = 0; i < count; ++i) numbers[i] = i;
  return numbers;
}

}  // namespace

TEST_CASE("results are taken in their order, whatever the number of jobs and whoever is slow") {
  for (const std::size_t jobs : {1U, 2U, 3U, 8U, 50U}) {
    for (const std::size_t count : {0U, 1U, 2U, 7U, 300U}) {
      CAPTURE(jobs, count);
      std::vector<std::size_t> taken;
      const auto make = [](std::size_t number) {
        std::minstd_rand chance(static_cast<unsigned>(number));
        std::this_thread::sleep_for(std::chrono::microseconds(chance() % 200));
        return number;
      };
      in_order(count, jobs, make, [&](std::size_t number) { taken.push_back(number); });
      CHECK(taken == numbers_to(count));
    }
  }
}

TEST_CASE("nobody works far ahead of a slow result") {
  constexpr std::size_t kJobs = 3;
  std::atomic<std::size_t> begun = 0;
  std::atomic<std::size_t> begun_while_waiting = 0;
  const auto make = [&](std::size_t number) {
    ++begun;
    if (number == 0) {
      std::this_thread::sleep_for(std::chrono::milliseconds(50));
      begun_while_waiting = begun.load();
    }
    return number;
  };
  std::size_t taken = 0;
  in_order(1000, kJobs, make, [&](std::size_t) { ++taken; });
  CHECK(taken == 1000);
  CHECK(begun_while_waiting >= 1);
  CHECK(begun_while_waiting <= 4 * kJobs);
}

TEST_CASE("what making throws reaches the caller, and all threads have ended") {
  for (const std::size_t jobs : {1U, 4U}) {
    CAPTURE(jobs);
    std::atomic<int> working = 0;
    const auto make = [&](std::size_t number) {
      ++working;
      if (number == 20) {
        --working;
        throw std::runtime_error("broken");
      }
      --working;
      return number;
    };
    std::vector<std::size_t> taken;
    const auto take = [&](std::size_t number) { taken.push_back(number); };
    CHECK_THROWS_WITH(in_order(1000, jobs, make, take), "broken");
    CHECK(working == 0);
    CHECK(taken.size() <= 20);
    CHECK(taken == numbers_to(taken.size()));
  }
}

TEST_CASE("what taking throws ends the work") {
  for (const std::size_t jobs : {1U, 4U}) {
    CAPTURE(jobs);
    std::atomic<std::size_t> begun = 0;
    const auto make = [&](std::size_t number) {
      ++begun;
      return std::to_string(number);
    };
    const auto take = [](const std::string& text) {
      if (text == "10") throw std::runtime_error("full");
    };
    CHECK_THROWS_WITH(in_order(100000, jobs, make, take), "full");
    CHECK(begun >= 11);
    CHECK(begun <= 11 + 4 * jobs);
  }
}
