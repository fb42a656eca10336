#include "fingering/cost_memo.hpp"

namespace fingerturn {
namespace {

void add_number(std::string& looks, std::int32_t number) {
  for (int i = 0; i < 2; ++i) {
    looks += static_cast<char>(number & 0xFF);
    number >>= 8;
  }
}

/// All of a grip that costs and choices go by, its keys as they lie from another key. What is usual
/// there counts in a grip alone, which is not remembered.
void add_looks(std::string& looks, const Grip& grip, const GripKey& from) {
  looks += static_cast<char>(grip.count);
  looks += static_cast<char>((grip.opens ? 4 : 0) + (grip.slow ? 2 : 0) + (grip.quick ? 1 : 0));
  for (std::size_t i = 0; i < grip.count; ++i) {
    const GripKey& key = grip.keys.at(i);
    add_number(looks, key.across - from.across);
    add_number(looks, key.place - from.place);
    looks += static_cast<char>((key.black ? 2 : 0) + (key.struck ? 1 : 0));
    looks += static_cast<char>(key.given * 8 + key.changed_to);
    looks += static_cast<char>(key.held_from);
  }
}

}  // namespace

template <typename Count>
const std::vector<std::int64_t>& CostMemo::remembered(Table& table, std::size_t first,
                                                      std::size_t last, const Count& count) {
  constexpr std::size_t kMost = 4096;
  constexpr std::size_t kTried = 1024;
  // Where hardly anything looks the same again, looking costs more than counting.
  if (table.asked >= kTried && table.known * 2 < table.asked) {
    table.unremembered = count();
    return table.unremembered;
  }
  ++table.asked;
  looks_.clear();
  for (std::size_t grip = first; grip <= last; ++grip) {
    add_looks(looks_, costs_.grip(grip), costs_.grip(first).keys[0]);
  }
  const auto known = table.counted.find(looks_);
  if (known != table.counted.end()) {
    ++table.known;
    return known->second;
  }
  if (table.counted.size() >= kMost) table.counted.clear();
  return table.counted.emplace(looks_, count()).first->second;
}

const std::vector<std::int64_t>& CostMemo::step(std::size_t grip) {
  return remembered(steps_, grip - 1, grip, [&] {
    std::vector<std::int64_t> counted;
    for (std::size_t m = 0; m < costs_.choice_count(grip - 1); ++m) {
      for (std::size_t c = 0; c < costs_.choice_count(grip); ++c) {
        counted.push_back(costs_.step(grip, m, c));
      }
    }
    return counted;
  });
}

const std::vector<std::int64_t>& CostMemo::over_two(std::size_t grip) {
  return remembered(over_two_, grip - 2, grip, [&] {
    std::vector<std::int64_t> counted;
    for (std::size_t f = 0; f < costs_.choice_count(grip - 2); ++f) {
      for (std::size_t c = 0; c < costs_.choice_count(grip); ++c) {
        counted.push_back(costs_.over_two(grip, f, c));
      }
    }
    return counted;
  });
}

const std::vector<std::int64_t>& CostMemo::three(std::size_t grip) {
  return remembered(threes_, grip - 2, grip, [&] {
    std::vector<std::int64_t> counted;
    for (std::size_t f = 0; f < costs_.choice_count(grip - 2); ++f) {
      for (std::size_t m = 0; m < costs_.choice_count(grip - 1); ++m) {
        for (std::size_t c = 0; c < costs_.choice_count(grip); ++c) {
          counted.push_back(costs_.three(grip, f, m, c));
        }
      }
    }
    return counted;
  });
}

}  // namespace fingerturn
