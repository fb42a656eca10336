#include "growth/growth.hpp"

#include "catch.hpp"
#include "growth/work.hpp"
#include "text/utf8.hpp"

#include <cstring>
#include <numeric>
#include <sstream>
#include <string>
#include <string_view>
#include <vector>

#include <pugixml.hpp>

/// What the other tests of this folder rely on: that steps are counted wherever work is done, and
/// that growth with the square is told from growth in proportion.
using namespace fingerturn::tests;

namespace {

constexpr std::size_t kThousand = 1000;

std::uint64_t steps_of(const std::function<void()>& action) { return work_of(action).steps; }

/// A score of a thousand measures.
pugi::xml_document measures() {
  std::string text = "<part>";
  for (std::size_t i = 0; i < kThousand; ++i) text += "<measure/>";
  pugi::xml_document document;
  REQUIRE(document.load_string((text + "</part>").c_str()));
  return document;
}

}  // namespace

TEST_CASE("work: a step for each block of the readers' code") {
  const std::string text(kThousand, 'a');
  CHECK(steps_of([&text] { fingerturn::count_code_points(text); }) >= kThousand);
}

TEST_CASE("work: a step for each name that is compared in the search for an element") {
  const pugi::xml_document document = measures();
  const pugi::xml_node part = document.document_element();
  CHECK(steps_of([&part] { part.child("note"); }) >= kThousand);
  CHECK(steps_of([&part] { part.children("note"); }) >= kThousand);
}

TEST_CASE("work: a step for each attribute that is looked at in the search for one") {
  pugi::xml_document document;
  pugi::xml_node note = document.append_child("note");
  for (std::size_t i = 0; i < kThousand; ++i) note.append_attribute("number");
  CHECK(steps_of([&note] { note.attribute("type"); }) >= kThousand);
}

TEST_CASE("work: a step for each byte that is copied, compared, searched or measured") {
  const std::string text(kThousand, 'a');
  const std::string same = text;
  std::string copy(kThousand, ' ');
  std::size_t found = 0;
  CHECK(steps_of([&] { found = std::string_view(text).find('b'); }) >= kThousand);
  CHECK(found == std::string::npos);
  CHECK(steps_of([&] { found = text == same ? 1 : 0; }) >= kThousand);
  CHECK(found == 1);
  CHECK(steps_of([&] { found = std::string_view(text.c_str()).size(); }) >= kThousand);
  CHECK(found == kThousand);
  CHECK(steps_of([&] { copy.replace(0, kThousand, text); }) >= kThousand);
  CHECK(steps_of([&] { copy.erase(0, 1); }) >= kThousand - 1);
  CHECK(steps_of([&] { copy.insert(0, "bc"); }) >= kThousand - 1);
  CHECK(copy == "bc" + text.substr(1));
}

TEST_CASE("work: memory that is asked for, and the most that is held") {
  std::vector<std::vector<char>> blocks(1);
  const Work work = work_of([&blocks] {
    blocks[0] = std::vector<char>(10 * kThousand);
    std::vector<char>().swap(blocks[0]);
    blocks[0] = std::vector<char>(5 * kThousand);
  });
  CHECK(blocks[0].size() == 5 * kThousand);
  CHECK(work.steps >= 15 * kThousand);
  CHECK(work.most_bytes >= 10 * kThousand);
  CHECK(work.most_bytes < 15 * kThousand);
  CHECK(work_of([] { measures(); }).most_bytes >= 64 * kThousand);
}

TEST_CASE("work: the same each time") {
  const auto read = [] { measures(); };
  const Work first = work_of(read);
  const Work second = work_of(read);
  CHECK(first.steps == second.steps);
  CHECK(first.most_bytes == second.most_bytes);
}

TEST_CASE("growth: with the square is told from in proportion") {
  CHECK(grows_in_proportion([](std::uint64_t n) { return 1000000 + n; }));
  CHECK(grows_in_proportion(
      [](std::uint64_t n) { return n * static_cast<std::uint64_t>(8 + n / 1000); }));
  CHECK_FALSE(grows_in_proportion([](std::uint64_t n) { return 1000000 + n * n; }));
  // A step for each pair, beside a hundred for each.
  CHECK_FALSE(grows_in_proportion([](std::uint64_t n) { return 1000000 + 100 * n + n * n / 2; }));
}

TEST_CASE("growth: of two things each with each is told from each by itself") {
  const auto meet = [](const StepsOfTwo& steps) {
    return meet_in_proportion(steps, {steps(1, 1), steps(kTogether, 1), steps(1, kTogether)});
  };
  CHECK(meet([](std::uint64_t n, std::uint64_t m) { return 5000 + 100 * n + 2000 * m; }));
  CHECK(meet([](std::uint64_t n, std::uint64_t m) { return 5000 + 3000 * std::min(n, m); }));
  CHECK_FALSE(meet([](std::uint64_t n, std::uint64_t m) { return 5000 + 100 * n + n * m; }));
  CHECK_FALSE(meet([](std::uint64_t n, std::uint64_t m) { return 100 * std::min(n, m) + n * m; }));
}
