#include "fingerturn/fraction.hpp"

#include "catch.hpp"

#include <cstdint>
#include <limits>
#include <optional>
#include <string>

using namespace fingerturn;

namespace {

constexpr std::int64_t kLargest = std::numeric_limits<std::int64_t>::max();
constexpr std::int64_t kSmallest = std::numeric_limits<std::int64_t>::min();

std::string text_of(const std::optional<Fraction>& fraction) {
  return fraction ? to_string(*fraction) : "nothing";
}

}  // namespace

TEST_CASE("a fraction is reduced to lowest terms") {
  struct Case {
    std::int64_t numerator;
    std::int64_t denominator;
    const char* expected;
  };
  const Case c =
      GENERATE(Case{6, 48, "1/8"}, Case{1, 8, "1/8"}, Case{0, 5, "0"}, Case{0, -5, "0"},
               Case{8, 4, "2"}, Case{-6, 48, "-1/8"}, Case{6, -48, "-1/8"}, Case{-6, -48, "1/8"},
               Case{12, 12, "1"}, Case{1, 0, "nothing"}, Case{0, 0, "nothing"});
  CAPTURE(c.numerator, c.denominator);
  CHECK(text_of(reduced(c.numerator, c.denominator)) == c.expected);
}

TEST_CASE("a fraction at the edge of 64 bits is exact or nothing") {
  CHECK(text_of(reduced(kLargest, kLargest)) == "1");
  CHECK(text_of(reduced(kLargest, 1)) == std::to_string(kLargest));
  CHECK(text_of(reduced(1, kLargest)) == "1/" + std::to_string(kLargest));
  CHECK(text_of(reduced(kSmallest, kSmallest)) == "1");
  CHECK(text_of(reduced(kSmallest, 2)) == std::to_string(kSmallest / 2));
  CHECK_FALSE(reduced(kSmallest, -1).has_value());
  CHECK_FALSE(reduced(1, kSmallest).has_value());
}

TEST_CASE("fractions are added exactly and in lowest terms") {
  struct Case {
    Fraction left;
    Fraction right;
    const char* expected;
  };
  const Case c =
      GENERATE(Case{{1, 8}, {1, 12}, "5/24"}, Case{{1, 4}, {1, 4}, "1/2"},
               Case{{1, 2}, {1, 2}, "1"}, Case{{0, 1}, {3, 16}, "3/16"}, Case{{1, 3}, {-1, 3}, "0"},
               Case{{1, 6}, {1, 10}, "4/15"}, Case{{-1, 4}, {1, 8}, "-1/8"});
  CAPTURE(to_string(c.left), to_string(c.right));
  CHECK(text_of(sum(c.left, c.right)) == c.expected);
  CHECK(sum(c.right, c.left) == sum(c.left, c.right));
}

TEST_CASE("twelve triplet eighths are exactly one whole note") {
  std::optional<Fraction> time = Fraction{};
  for (int i = 0; i < 12; ++i) time = sum(*time, {1, 12});
  CHECK(text_of(time) == "1");
}

TEST_CASE("a sum that 64 bits cannot hold is nothing") {
  CHECK_FALSE(sum({kLargest, 1}, {1, 1}).has_value());
  CHECK_FALSE(sum({-kLargest, 1}, {-1, 1}).has_value());
  CHECK_FALSE(sum({1, kLargest}, {1, kLargest - 1}).has_value());
  // The middle of the sum is beyond 64 bits, the result is not.
  CHECK(text_of(sum({1, kLargest}, {kLargest - 1, kLargest})) == "1");
  CHECK(text_of(sum({kLargest, 1}, {-kLargest, 1})) == "0");
}

TEST_CASE("fractions are multiplied exactly, or there is nothing") {
  CHECK(text_of(product({1, 8}, {3, 2})) == "3/16");
  CHECK(text_of(product({1, 4}, {7, 4})) == "7/16");
  CHECK(text_of(product({1, 8}, {2, 3})) == "1/12");
  CHECK(text_of(product({0, 1}, {5, 7})) == "0");
  CHECK(text_of(product({-1, 2}, {-2, 1})) == "1");
  CHECK(text_of(product({kLargest, 2}, {2, kLargest})) == "1");
  CHECK_FALSE(product({kLargest, 1}, {2, 1}).has_value());
  CHECK_FALSE(product({1, kLargest}, {1, 2}).has_value());
}

TEST_CASE("fractions are compared by their value, however large") {
  CHECK(Fraction{1, 3} < Fraction{1, 2});
  CHECK(Fraction{-1, 2} < Fraction{-1, 3});
  CHECK(Fraction{2, 1} > Fraction{3, 2});
  CHECK((Fraction{1, 2} <=> Fraction{1, 2}) == std::strong_ordering::equal);
  CHECK(Fraction{kLargest - 1, kLargest} < Fraction{1, 1});
  CHECK(Fraction{kLargest, kLargest - 1} > Fraction{kLargest - 1, kLargest});
}

TEST_CASE("a fraction is printed with a stroke only where it needs one") {
  CHECK(to_string(Fraction{1, 8}) == "1/8");
  CHECK(to_string(Fraction{-3, 2}) == "-3/2");
  CHECK(to_string(Fraction{2, 1}) == "2");
  CHECK(to_string(Fraction{}) == "0");
}

TEST_CASE("a fraction has its value as a floating point number") {
  CHECK(to_double({1, 8}) == 0.125);
  CHECK(to_double({-7, 4}) == -1.75);
  CHECK(to_double({1, 3}) == Approx(0.333333333333));
}
