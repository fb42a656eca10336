#include "catch.hpp"
#include "rules/case_file.hpp"
#include "rules/case_run.hpp"

#include <set>
#include <string>
#include <string_view>
#include <vector>

/// Facts and exercises that were published, each with its author, title, year and place.
namespace fingerturn {
namespace {

using Failures = std::vector<std::string>;

TEST_CASE("the published cases hold", "[rules][published]") {
  const CaseFile file = read_case_folder("published", Collection::published);
  REQUIRE(file.faults == Failures{});
  for (const Case& each : file.cases) CHECK(failures_of(each) == Failures{});
}

TEST_CASE("at least four published exercises are analysed whole", "[rules][published]") {
  std::set<std::string> exercises;
  for (const Case& each : read_case_folder("published", Collection::published).cases) {
    if (!each.has("number")) continue;
    exercises.insert(std::string(each.row("title")) + " " + std::string(each.row("number")));
    const CaseResult result = run_case(each);
    CHECK(result.analysis.totals.events >= 15);
    CHECK(result.analysis.totals.undetermined == 0);
  }
  CHECK(exercises.size() >= 4);
}

constexpr std::string_view kSound =
    "case: two fingers\n"
    "author: Somebody\n"
    "title: A Book of Exercises\n"
    "number: 1\n"
    "year: 1900\n"
    "place: bar 1\n"
    "quoted: from memory\n"
    "notes: C4:1 D:2\n"
    "kinds: preparatory single\n"
    "play: left right\n";

std::string replaced(std::string text, std::string_view from, std::string_view to) {
  return text.replace(text.find(from), from.size(), to);
}

std::string without_row(std::string text, const std::string& name) {
  const std::size_t begin = text.find("\n" + name + ":") + 1;
  return text.erase(begin, text.find('\n', begin) + 1 - begin);
}

Failures faults_of(const std::string& text) {
  return read_cases("trial.cases", text, Collection::published).faults;
}

TEST_CASE("a published case without author, title, year, place or quoted is refused",
          "[rules][published]") {
  const std::string sound(kSound);
  REQUIRE(faults_of(sound) == Failures{});
  CHECK(faults_of(without_row(sound, "number")) == Failures{});
  for (const std::string name : {"author", "title", "year", "place", "quoted"}) {
    CHECK(faults_of(without_row(sound, name)) ==
          Failures{"trial.cases:1: no row \"" + name + "\""});
    CHECK(faults_of(replaced(sound, name + ": ", name + ":\n# ")).at(0).find("nothing after") !=
          std::string::npos);
  }
}

TEST_CASE("year and quoted say what they must", "[rules][published]") {
  const std::string sound(kSound);
  CHECK(faults_of(replaced(sound, "1900", "long ago")) ==
        Failures{"trial.cases:1: expected a year"});
  CHECK(faults_of(replaced(sound, "1900", "190")) == Failures{"trial.cases:1: expected a year"});
  CHECK(faults_of(replaced(sound, "from memory", "exactly")) ==
        Failures{"trial.cases:1: quoted is \"read\", \"through a digest\" or \"from memory\""});
  CHECK(faults_of(replaced(sound, "from memory", "read")) == Failures{});
  CHECK(faults_of(replaced(sound, "from memory", "through a digest")) == Failures{});
}

TEST_CASE("only common practice may stand there without a publication", "[rules][published]") {
  const std::string plain =
      "case: two fingers\n"
      "source: common practice, no source\n"
      "notes: C4:1 D:2\n"
      "kinds: preparatory single\n"
      "play: left right\n";
  CHECK(faults_of(plain) == Failures{});
  CHECK(faults_of(plain + "author: Somebody\n") ==
        Failures{"trial.cases:1: row \"author\" in a case with no source"});
  CHECK(faults_of(replaced(plain, "common practice, no source", "a book")) ==
        Failures{"trial.cases:1: a published case has author, title, year, place and quoted in "
                 "place of a source"});
}

}  // namespace
}  // namespace fingerturn
