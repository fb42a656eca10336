#include "catch.hpp"
#include "fingerturn/rule.hpp"
#include "rules/case_file.hpp"
#include "rules/case_run.hpp"

#include <set>
#include <string>
#include <string_view>
#include <vector>

namespace fingerturn {
namespace {

using Failures = std::vector<std::string>;

TEST_CASE("the cases of the rules hold", "[rules][cases]") {
  const CaseFile file = read_case_folder("cases", Collection::rules);
  REQUIRE(file.faults == Failures{});
  for (const Case& each : file.cases) CHECK(failures_of(each) == Failures{});
}

TEST_CASE("every rule is the outcome of a case or shown by one", "[rules][cases]") {
  std::set<std::string> met;
  for (const Case& each : read_case_folder("cases", Collection::rules).cases) {
    for (const EventAnalysis& entry : run_case(each).analysis.events) {
      met.insert(std::string(entry.rule));
    }
    for (const std::string& id : words_of_row(each.row("shows"))) met.insert(id);
  }
  std::set<std::string> registered;
  for (const Rule& rule : rules()) registered.insert(std::string(rule.id));
  CHECK(met == registered);
}

/// A case that is as it should be.
constexpr std::string_view kSound =
    "case: two fingers\n"
    "source: common practice, no source\n"
    "notes: hand: left / C4:1 | D:2\n"
    "kinds: preparatory | single\n"
    "play: right left\n"
    "reason 2: 1 to 2 is something else\n";

std::string replaced(std::string text, std::string_view from, std::string_view to) {
  return text.replace(text.find(from), from.size(), to);
}

Failures faults_of(const std::string& text) {
  return read_cases("trial.cases", text, Collection::rules).faults;
}

TEST_CASE("a file of cases is refused with its place and the reason", "[rules][cases]") {
  const std::string sound(kSound);
  CHECK(faults_of(sound) == Failures{});
  CHECK(faults_of("") == Failures{"trial.cases: no cases"});
  CHECK(faults_of(replaced(sound, "source: common practice, no source\n", "")) ==
        Failures{"trial.cases:1: no row \"source\""});
  CHECK(faults_of(replaced(sound, "play: right left\n", "")) ==
        Failures{"trial.cases:1: no row \"play\""});
  CHECK(faults_of(replaced(sound, "case:", "case of:")) ==
        Failures{"trial.cases:1: unknown row \"case of\"", "trial.cases:2: no row \"case\""});
  CHECK(faults_of(replaced(sound, "reason 2", "reason two")) ==
        Failures{"trial.cases:6: unknown row \"reason two\""});
  CHECK(faults_of(sound + "play: right left\n") ==
        Failures{"trial.cases:7: a second row \"play\""});
  CHECK(faults_of(sound + "play\n") ==
        Failures{"trial.cases:7: expected a name, a colon and a value"});
  CHECK(faults_of(sound + "prepare:\n") == Failures{"trial.cases:7: nothing after \"prepare\""});
  CHECK(faults_of(sound + "\n  left\n") ==
        Failures{"trial.cases:8: goes on with a row, but there is none above it"});
  CHECK(faults_of(sound + "\n" + sound) ==
        Failures{"trial.cases:8: a second case with this title"});
  CHECK(faults_of(sound + "keys: 60\n") ==
        Failures{"trial.cases:1: row \"keys\" in a case with notes"});
  CHECK(faults_of(sound + "author: somebody\n") ==
        Failures{"trial.cases:1: row \"author\" in a case of a rule"});
}

/// How the first case of a text fails.
Failures failures_in(const std::string& text) {
  const CaseFile file = read_cases("trial.cases", text, Collection::rules);
  REQUIRE(file.faults == Failures{});
  return failures_of(file.cases.at(0));
}

TEST_CASE("a case that does not hold says what was expected and what was found", "[rules][cases]") {
  const std::string holds = replaced(
      std::string(kSound), "1 to 2 is something else",
      "1 to 2 steps toward the fifth, 2 passing over\n  the thumb, so the left forearm turns "
      "left; the side changes: single.");
  CHECK(failures_in(holds) == Failures{});
  CHECK(failures_in(std::string(kSound)) ==
        Failures{"trial.cases:1: reason 2\n"
                 "  expected 1 to 2 is something else\n"
                 "  found    1 to 2 steps toward the fifth, 2 passing over the thumb, so the left "
                 "forearm turns left; the side changes: single."});
  CHECK(failures_in(replaced(holds, "right left", "right")) ==
        Failures{"trial.cases:1: play\n  expected right\n  found    right left"});
  CHECK(failures_in(replaced(holds, "preparatory | single", "| preparatory single")) ==
        Failures{"trial.cases:1: kinds\n"
                 "  expected bars end after 0\n"
                 "  found    bars end after 1"});
  CHECK(failures_in(replaced(holds, "reason 2", "reason 3")) ==
        Failures{"trial.cases:1: reason 3: there is no such event"});
  CHECK(failures_in(holds + "shows: nothing-at-all\n") ==
        Failures{"trial.cases:1: shows nothing-at-all, which is no rule"});
}

TEST_CASE("notes that cannot be read as the case wants them are a failure", "[rules][cases]") {
  const std::string sound(kSound);
  const std::string plain = sound.substr(0, sound.find("reason"));
  REQUIRE(failures_in(plain) == Failures{});
  const std::string tied = replaced(plain, "D:2", "D:2~");
  CHECK(failures_in(tied).size() == 1);
  CHECK(failures_in(tied + "warnings: tie-to-nothing\n") == Failures{});
  CHECK(failures_in(plain + "warnings: tie-to-nothing\n").size() == 1);
  CHECK(failures_in(replaced(plain, "D:2", "D:6"))[0].find("[finger-range]") != std::string::npos);
  CHECK(failures_in(replaced(plain, "C4:1 | D:2", "C4:1 / RH: C5:1"))[0] ==
        "trial.cases:1: expected one passage for one hand");
}

TEST_CASE("every row of a case is held against the analysis", "[rules][cases]") {
  const std::string sound(kSound);
  const std::string complete = sound.substr(0, sound.find("reason")) +
                               "prepare: left -\nswings: 2 1\ncrossing: - finger-over-thumb\n"
                               "rules: first-note side-changes\nbasis: rule rule\n";
  CHECK(failures_in(complete) == Failures{});
  for (const std::string row :
       {"kinds", "play", "prepare", "swings", "crossing", "rules", "basis"}) {
    const std::size_t begin = complete.find("\n" + row + ": ") + 1;
    std::string broken = complete;
    broken.replace(begin, broken.find('\n', begin) - begin, row + ": otherwise -");
    const Failures failures = failures_in(broken);
    REQUIRE(failures.size() == 1);
    CHECK(failures[0].starts_with("trial.cases:1: " + row + "\n  expected otherwise -\n"));
  }
}

}  // namespace
}  // namespace fingerturn
