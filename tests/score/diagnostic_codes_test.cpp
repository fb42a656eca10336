#include "catch.hpp"
#include "fingerturn/diagnostic_code.hpp"

#include <algorithm>
#include <regex>
#include <set>
#include <string>
#include <string_view>

/// The table of what the readers can say, from which explanations and docs/messages.md are made.
namespace fingerturn {
namespace {

TEST_CASE("every code has an id of its own, and the ids are in order") {
  const std::regex words("[a-z0-9]+(-[a-z0-9]+)*");
  std::string_view before;
  for (const DiagnosticCode& code : diagnostic_codes()) {
    INFO(code.id);
    CHECK(std::regex_match(std::string(code.id), words));
    CHECK(code.id > before);
    before = code.id;
  }
}

TEST_CASE("every code is titled and worded, and comes up in one form at least") {
  REQUIRE_FALSE(diagnostic_codes().empty());
  std::set<std::string_view> titles;
  for (const DiagnosticCode& code : diagnostic_codes()) {
    INFO(code.id);
    CHECK((code.in_notation || code.in_musicxml));
    CHECK_FALSE(code.title.empty());
    CHECK(titles.insert(code.title).second);
    CHECK(code.meaning.size() > code.title.size());
    CHECK(code.meaning.ends_with('.'));
    CHECK(code.cure.ends_with('.'));
    CHECK_FALSE(code.outcome.ends_with('.'));
  }
}

TEST_CASE("a code is found by its id, and nothing else finds one") {
  for (const DiagnosticCode& code : diagnostic_codes()) {
    INFO(code.id);
    CHECK(find_diagnostic_code(code.id) == &code);
    CHECK(find_diagnostic_code(code.title) == nullptr);
    CHECK(find_diagnostic_code(std::string(code.id) + ' ') == nullptr);
    CHECK(find_diagnostic_code(code.id.substr(0, code.id.size() - 1)) == nullptr);
  }
  CHECK(find_diagnostic_code("") == nullptr);
}

}  // namespace
}  // namespace fingerturn
