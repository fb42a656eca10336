#include "text/cells.hpp"

#include "catch.hpp"

#include <array>
#include <clocale>
#include <string>
#include <thread>
#include <vector>

using namespace fingerturn;

namespace {

constexpr std::string_view kMoonlight = "\u6708\u5149";  // two letters of Chinese

/// Makes a locale that of this thread.
class InLocale {
 public:
  explicit InLocale(const char* name)
      : locale_(newlocale(LC_ALL_MASK, name, locale_t{})), before_(uselocale(locale_)) {
    REQUIRE(locale_ != locale_t{});
  }
  ~InLocale() {
    uselocale(before_);
    freelocale(locale_);
  }
  InLocale(const InLocale&) = delete;
  InLocale& operator=(const InLocale&) = delete;

 private:
  locale_t locale_;
  locale_t before_;
};

}  // namespace

TEST_CASE("letters are as wide as a terminal shows them (Unicode, UAX 11)") {
  CHECK(count_cells("") == 0);
  CHECK(count_cells("bar 1") == 5);
  CHECK(count_cells(kMoonlight) == 4);
  CHECK(count_cells("\uB2EC\uBE5B") == 4);              // Korean
  CHECK(count_cells("\u3064\u304D") == 4);              // Japanese
  CHECK(count_cells("\uFF21") == 2);                    // a full-width Latin letter
  CHECK(count_cells("\u00E9") == 1);                    // one letter with its accent,
  CHECK(count_cells("e\u0301") == 1);                   // and a letter with a mark set on it
  CHECK(count_cells("\u041B\u0443\u043D\u0430") == 4);  // Russian
  CHECK(count_cells("B\u266D3 F\u266F4") == 7);
  CHECK(count_cells("\u2190 \u21D2 \u25CB \u250A \u2571 \u2502") == 11);  // signs of the reports
}

TEST_CASE("what cannot be shown takes one cell, as the sign that stands for it") {
  CHECK(count_cells("\xFF") == 1);
  CHECK(count_cells("\xE2\x99") == 2);
  CHECK(count_cells("\x1B[m") == 3);
  CHECK(count_cells("\u0080") == 1);
  CHECK(count_cells("\uFFFD") == 1);
}

TEST_CASE("a text is cut where it is wide enough, and between letters") {
  CHECK(first_cells("bar 12", 5) == "bar 1");
  CHECK(first_cells("bar", 5) == "bar");
  CHECK(first_cells("bar", 0).empty());
  CHECK(first_cells(kMoonlight, 3) == kMoonlight.substr(0, 3));
  CHECK(first_cells(kMoonlight, 1).empty());
  CHECK(first_cells("xe\u0301\u0323y", 2) == "xe\u0301\u0323");
  CHECK(first_cells("abcde\u0301", 5) == "abcde\u0301");
}

TEST_CASE("widths are the same in every locale, which stays what it was") {
  for (const char* name : {"C", "POSIX", "C.UTF-8"}) {
    CAPTURE(name);
    const InLocale locale(name);
    const locale_t before = uselocale(locale_t{});
    CHECK(count_cells(kMoonlight) == 4);
    CHECK(first_cells(kMoonlight, 3) == kMoonlight.substr(0, 3));
    CHECK(uselocale(locale_t{}) == before);
  }
}

TEST_CASE("threads count cells at the same time") {
  constexpr std::size_t kThreads = 4;
  std::array<std::size_t, kThreads> sums{};
  {
    std::vector<std::jthread> threads;
    threads.reserve(kThreads);
    for (std::size_t& sum : sums) {
      threads.emplace_back([&sum] {
        for (int i = 0; i < 2000; ++i) sum += count_cells(kMoonlight);
      });
    }
  }
  for (const std::size_t sum : sums) CHECK(sum == 8000);
}
