#include "fingerturn/practice.hpp"

#include "catch.hpp"

#include <string>
#include <vector>

/// An earlier plan in JSON, as a person may have edited it.
namespace fingerturn {
namespace {

std::string plan_with(const std::string& place) {
  return R"({"format":"fingerturn-practice","version":1,"places":[)" + place + "]}";
}

constexpr const char* kPlace =
    R"({"passage":2,"first_bar":3,"last_bar":4,"notes":["R C4"],"fingers":["1"],)"
    R"("now":{"quarters_per_minute":72.5},"done":true})";

std::string problem_of(const std::string& text) {
  const PracticeMemoryResult result = read_practice(Source("plan.json", text));
  CHECK(result.ok() == result.problem.empty());
  CHECK((result.ok() || result.memory.places.empty()));
  return result.problem;
}

std::string without(std::string text, const std::string& part) {
  const std::size_t at = text.find(part);
  REQUIRE(at != std::string::npos);
  return text.erase(at, part.size());
}

}  // namespace

TEST_CASE("a plan is read as it was written", "[read][practice]") {
  const PracticeMemoryResult result = read_practice(Source("plan.json", plan_with(kPlace)));
  REQUIRE(result.problem == "");
  REQUIRE(result.memory.places.size() == 1);
  const RememberedPlace& place = result.memory.places[0];
  CHECK(place.passage == 1);
  CHECK(place.bars == BarRange{3, 4});
  CHECK(place.notes == std::vector<std::string>{"R C4"});
  CHECK(place.fingers == std::vector<std::string>{"1"});
  CHECK(place.tempo_now == 72.5);
  CHECK(place.done);
  CHECK(problem_of(plan_with("")) == "");
}

TEST_CASE("what is no plan is refused with what was expected", "[read][practice]") {
  struct Refused {
    std::string text;
    std::string problem;
  };
  const std::string place = kPlace;
  const std::vector<Refused> all{
      {"", "1:1: expected a plan in JSON, as practice --format json writes it, found nothing"},
      {"{\n \"format\": x",
       "2:12: expected a plan in JSON, as practice --format json writes it, "
       "found \"x\""},
      {"[1]", "1:1: expected a plan, as practice --format json writes it, found other JSON"},
      {R"({"format":"fingerturn-analysis","places":[]})",
       "1:1: expected a plan, as practice --format json writes it, found other JSON"},
      {R"({"format":"fingerturn-practice","version":1})",
       "1:1: expected a plan, as practice --format json writes it, found other JSON"},
      {R"({"format":"fingerturn-practice","version":2,"places":[]})",
       "1:1: expected version 1 of a plan, found another"},
      {"1e999", "1:1: expected a plan in JSON, found numbers beyond its range"},
      {plan_with("7"),
       "1:1: expected a list of texts \"notes\" in place 1 of the plan, found none"},
      {plan_with(without(place, R"("passage":2,)")),
       "1:1: expected the number of a \"passage\" in place 1 of the plan, found none"},
      {plan_with(place + "," + without(place, R"("first_bar":3,)")),
       "1:1: expected the numbers \"first_bar\" and \"last_bar\" in place 2 of the plan, found "
       "none"},
      {plan_with(without(place, "\"1\"")),
       "1:1: expected a finger for each of the notes in place 1 of the plan, found none"},
      {plan_with(without(place, R"(,"done":true)")),
       "1:1: expected \"done\", true or false, in place 1 of the plan, found none"},
  };
  for (const Refused& refused : all) {
    INFO(refused.text);
    CHECK(problem_of(refused.text) == refused.problem);
  }
  // Deep nesting ends neither the stack nor the program.
  CHECK(problem_of(std::string(200'000, '[')).starts_with("1:200001: expected a plan in JSON"));
  CHECK(problem_of("\xff\xfe").starts_with("1:1: expected a plan in JSON"));
}

}  // namespace fingerturn
