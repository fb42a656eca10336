#pragma once

#include "read/reporter.hpp"

#include <cstddef>
#include <cstdint>
#include <vector>

namespace fingerturn {

/// Collects the ties of a score that lead to nothing. Few are reported each; where a notation
/// program wrote very many, they are one message.
class TiesToNothing {
 public:
  void start_passage(std::size_t passage) { passage_ = passage; }
  void note(Span span, Hand hand, std::int32_t bar);
  void report(Reporter& reporter) const;

 private:
  struct Tie {
    Span span;
    Hand hand = Hand::right;
    std::int32_t bar = 0;
    std::size_t passage = 0;
  };
  static void report_each(const std::vector<Tie>& ties, Reporter& reporter);

  std::vector<Tie> ties_;
  std::size_t passage_ = 0;
};

}  // namespace fingerturn
