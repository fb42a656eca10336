#include "catch.hpp"
#include "fingerturn/report.hpp"
#include "fingerturn/rule.hpp"

#include <algorithm>
#include <fstream>
#include <iterator>
#include <set>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

/// The list of all rules, from which explanations and docs/rules.md are made.
namespace fingerturn {
namespace {

bool is_lower_case(char letter) { return letter >= 'a' && letter <= 'z'; }

/// Lower-case words joined by single hyphens.
bool is_identifier(std::string_view id) {
  if (id.empty() || id.front() == '-' || id.back() == '-') return false;
  if (id.find("--") != std::string_view::npos) return false;
  return std::all_of(id.begin(), id.end(),
                     [](char letter) { return letter == '-' || is_lower_case(letter); });
}

TEST_CASE("every rule has an id of its own, made of lower-case words and hyphens",
          "[rules][registry]") {
  std::set<std::string_view> ids;
  for (const Rule& rule : rules()) {
    INFO(rule.id);
    CHECK(is_identifier(rule.id));
    CHECK(ids.insert(rule.id).second);
  }
  CHECK(ids.size() == rules().size());
  CHECK_FALSE(rules().empty());
}

bool ends_a_sentence(std::string_view text) { return text.ends_with('.'); }

TEST_CASE("every rule is titled, worded and sourced", "[rules][registry]") {
  std::set<std::string_view> titles;
  for (const Rule& rule : rules()) {
    INFO(rule.id);
    CHECK_FALSE(rule.title.empty());
    CHECK(titles.insert(rule.title).second);
    CHECK(rule.words.size() > rule.title.size());
    CHECK(ends_a_sentence(rule.words));
    CHECK(ends_a_sentence(rule.sources));
  }
}

/// A book with its year, or one of the two phrases that say that there is none.
bool names_where_it_comes_from(std::string_view sources) {
  const bool published = sources.find("(19") != std::string_view::npos ||
                         sources.find("(20") != std::string_view::npos;
  const bool practice = sources.find("ommon practice, no source") != std::string_view::npos;
  const bool convention = sources.find("ur convention") != std::string_view::npos;
  return published || practice || convention;
}

TEST_CASE("every source is a book, common practice without one, or our convention",
          "[rules][registry]") {
  for (const Rule& rule : rules()) {
    INFO(rule.id << ": " << rule.sources);
    CHECK(names_where_it_comes_from(rule.sources));
  }
}

/// "2.10" as 2 and 10.
std::pair<int, int> section_number(std::string_view section) {
  const std::size_t point = section.find('.');
  REQUIRE(point != std::string_view::npos);
  return {std::stoi(std::string(section.substr(0, point))),
          std::stoi(std::string(section.substr(point + 1)))};
}

TEST_CASE("the sections of the rules stand in order", "[rules][registry]") {
  std::vector<std::pair<int, int>> sections;
  for (const Rule& rule : rules()) sections.push_back(section_number(rule.section));
  CHECK(std::is_sorted(sections.begin(), sections.end()));
}

TEST_CASE("a rule is found by its id", "[rules][registry]") {
  for (const Rule& rule : rules()) {
    const Rule* found = find_rule(rule.id);
    REQUIRE(found != nullptr);
    CHECK(found->id == rule.id);
    CHECK(found->words == rule.words);
  }
}

TEST_CASE("what is no id finds nothing", "[rules][registry]") {
  CHECK(find_rule("") == nullptr);
  CHECK(find_rule("no-such-rule") == nullptr);
  for (const Rule& rule : rules()) {
    const std::string id(rule.id);
    INFO(id);
    CHECK(find_rule(id + " ") == nullptr);
    CHECK(find_rule(" " + id) == nullptr);
    CHECK(find_rule(rule.section) == nullptr);
    CHECK(find_rule(rule.title) == nullptr);
    std::string capital = id;
    capital[0] = static_cast<char>(capital[0] - 'a' + 'A');
    CHECK(find_rule(capital) == nullptr);
    const std::string shorter = id.substr(0, id.size() - 1);
    CHECK(find_rule(shorter) == nullptr);
  }
}

TEST_CASE("docs/rules.md is the page that the rules make", "[rules][registry]") {
  // Made with: fingerturn explain --markdown > docs/rules.md
  std::ifstream stream(FINGERTURN_TESTS_DIR "/../docs/rules.md", std::ios::binary);
  REQUIRE(stream.good());
  const std::string page{std::istreambuf_iterator<char>(stream), {}};
  CHECK(page == write_rules_page());
}

}  // namespace
}  // namespace fingerturn
