#include "catch.hpp"
#include "fingerturn/compare.hpp"
#include "fingerturn/read.hpp"

#include <string>
#include <vector>

/// Which passages of several scores are compared with which.
namespace fingerturn {
namespace {

AnalysedScore score_of(const std::string& name, const std::string& text) {
  const ReadResult result = read_notation(Source(name, text));
  REQUIRE(result.ok());
  return AnalysedScore(name, result.score);
}

/// The title of each comparison with the names of what is compared in it.
std::vector<std::string> paired(const std::vector<AnalysedScore>& scores,
                                const AnalysedScore* suggestion = nullptr) {
  const PairedScores result = compare_scores(scores, suggestion);
  CHECK_FALSE(result.problem.has_value());
  std::vector<std::string> words;
  for (const Comparison& comparison : result.comparisons) {
    std::string& line = words.emplace_back(comparison.title + ":");
    for (const NamedPassage& passage : comparison.fingerings) line += " [" + passage.name + "]";
  }
  return words;
}

PairingProblem problem_of(const std::vector<AnalysedScore>& scores) {
  const PairedScores result = compare_scores(scores, nullptr);
  REQUIRE(result.problem.has_value());
  CHECK(result.comparisons.empty());
  return *result.problem;
}

using Words = std::vector<std::string>;
using Kind = PairingProblem::Kind;

const std::string kTwo = "passage: Etude, printed\nC4:1 D:2\npassage: Etude, mine\nC4:2 D:3";
const std::string kThree = "passage: a\nC4:1 D:2\npassage: b\nC4:2 D:3\npassage: c\nC4:1 D:3";

TEST_CASE("the passages of one score are compared with each other", "[pairing]") {
  CHECK(paired({score_of("two", kTwo)}) == Words{"Etude: [printed] [mine]"});
  CHECK(paired({score_of("three", kThree)}) == Words{"three: [a] [b] [c]"});
  CHECK(paired({score_of("bare", "passage:\nC4:1\npassage:\nC4:2")}) ==
        Words{"bare: [passage 1] [passage 2]"});
}

TEST_CASE("several scores are compared passage by passage", "[pairing]") {
  CHECK(paired({score_of("one", kTwo), score_of("other", kTwo)}) ==
        Words{"Etude, printed: [one] [other]", "Etude, mine: [one] [other]"});
}

TEST_CASE("a score of one passage stands beside all of another", "[pairing]") {
  CHECK(paired({score_of("mine", "C4:1 D:4"), score_of("three", kThree)}) ==
        Words{"mine: [mine] [a] [b] [c]"});
}

TEST_CASE("beside a suggestion one score is named by what is given in it", "[pairing]") {
  const AnalysedScore suggestion = score_of("suggested", "C4:1 D:2");
  CHECK(paired({score_of("mine", "C4:1 D:2")}, &suggestion) ==
        Words{"mine: [as given, a finger on every note] [suggested]"});
  CHECK(paired({score_of("mine", "C4:1 D:2?")}, &suggestion) ==
        Words{"mine: [as given, 1 of 2 fingers; the others suggested (?)] [suggested]"});
  CHECK(paired({score_of("a", "C4:1 D:2"), score_of("b", "C4:1 D:3")}, &suggestion) ==
        Words{"a: [a] [b] [suggested]"});
}

/// "title: [name] [name]" of each run of the same notes.
Words neighbours(const AnalysedScore& score) {
  Words words;
  for (const Comparison& comparison : compare_neighbours(score)) {
    std::string names = comparison.title + ':';
    for (const NamedPassage& each : comparison.fingerings) names += " [" + each.name + ']';
    words.push_back(std::move(names));
  }
  return words;
}

TEST_CASE("passages of the same notes that follow one another are compared", "[pairing]") {
  const std::string notation =
      "passage: Etude, first\nC4:1 D:2\npassage: Etude, second\nC4:2 D:3\n"
      "passage: Waltz\nE4:1\npassage: Etude, third\nC4:3 D:4";
  CHECK(neighbours(score_of("folder/all.passage", notation)) ==
        Words{"Etude: [first] [second]", "all: [Waltz]", "Etude: [third]"});
  CHECK(neighbours(AnalysedScore("empty", Score{})).empty());
}

TEST_CASE("what cannot be paired is named", "[pairing]") {
  const AnalysedScore one = score_of("one", "C4:1 D:2");
  const AnalysedScore three = score_of("three", kThree);
  CHECK(problem_of({one}).kind == Kind::one_passage);
  CHECK(problem_of({score_of("two", kTwo), three}).kind == Kind::counts_differ);
  CHECK(problem_of({score_of("two", kTwo), three}).score == 1);
  CHECK(problem_of({one, AnalysedScore("empty", Score{})}).kind == Kind::no_passage);
  CHECK(problem_of({one, AnalysedScore("empty", Score{})}).score == 1);
  const PairingProblem differ = problem_of({one, score_of("other", "C4:1 E:3")});
  CHECK(differ.kind == Kind::notes_differ);
  CHECK(differ.words == "bar 1, right hand: D4 in one, E4 in other");
}

}  // namespace
}  // namespace fingerturn
