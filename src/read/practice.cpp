#include "fingerturn/practice.hpp"

#include "fingerturn/read.hpp"
#include "read/json_members.hpp"
#include "read/reporter.hpp"
#include "text/utf8.hpp"

#include <algorithm>
#include <cstddef>
#include <optional>
#include <string>
#include <string_view>
#include <utility>

#include <fmt/format.h>
#include <nlohmann/json.hpp>

namespace fingerturn {
namespace {

using Json = nlohmann::json;

/// Where the text stops being JSON. Bytes are counted from 1.
std::string syntax_problem(const Source& source, std::size_t byte) {
  const std::size_t at = byte > 0 ? byte - 1 : 0;
  const Place place = source.place_of(at);
  const std::string_view rest = source.text().substr(std::min(at, source.text().size()));
  const std::string found = printable(rest.substr(0, rest.find_first_of("\r\n")));
  return fmt::format(
      "{}:{}: expected a plan in JSON, as practice --format json writes it, found {}", place.line,
      place.column, quoted(std::string_view(found)));
}

class PlanReader {
 public:
  PracticeMemoryResult read(const Json& plan) {
    const Json* places = member_of(plan, "places");
    if (text_in(member_of(plan, "format")) != "fingerturn-practice" || places == nullptr ||
        !places->is_array()) {
      problem_ = "1:1: expected a plan, as practice --format json writes it, found other JSON";
    } else if (whole(member_of(plan, "version"), 1, 1) != 1) {
      problem_ = "1:1: expected version 1 of a plan, found another";
    } else {
      for (const Json& place : *places) add_place(place);
    }
    if (!problem_.empty()) memory_ = {};
    return {std::move(memory_), std::move(problem_)};
  }

 private:
  static std::optional<std::int32_t> whole(const Json* value, std::int32_t least,
                                           std::int32_t most) {
    if (value == nullptr || !value->is_number_unsigned()) return std::nullopt;
    const auto number = value->get<std::uint64_t>();
    if (number < static_cast<std::uint64_t>(least) || number > static_cast<std::uint64_t>(most)) {
      return std::nullopt;
    }
    return static_cast<std::int32_t>(number);
  }

  void expect(std::string_view what) {
    if (problem_.empty()) {
      problem_ = fmt::format("1:1: expected {} in place {} of the plan, found none", what,
                             memory_.places.size() + 1);
    }
  }

  std::vector<std::string> texts(const Json& place, const char* name) {
    std::vector<std::string> all;
    const Json* list = member_of(place, name);
    const bool is_list =
        list != nullptr && list->is_array() &&
        std::ranges::all_of(*list, [](const Json& each) { return each.is_string(); });
    if (!is_list) {
      expect(fmt::format(R"(a list of texts "{}")", name));
      return all;
    }
    for (const Json& each : *list) all.push_back(each.get<std::string>());
    return all;
  }

  static double tempo_now(const Json& place) {
    const Json* now = member_of(place, "now");
    const Json* tempo = now == nullptr ? nullptr : member_of(*now, "quarters_per_minute");
    return tempo != nullptr && tempo->is_number() ? tempo->get<double>() : 0;
  }

  void add_place(const Json& place) {
    RememberedPlace known;
    const auto passage = whole(member_of(place, "passage"), 1, kHighestBar);
    const auto first = whole(member_of(place, "first_bar"), 0, kHighestBar);
    const auto last = whole(member_of(place, "last_bar"), 0, kHighestBar);
    const Json* done = member_of(place, "done");
    known.notes = texts(place, "notes");
    known.fingers = texts(place, "fingers");
    if (!passage) expect(R"(the number of a "passage")");
    if (!first || !last) expect(R"(the numbers "first_bar" and "last_bar")");
    if (known.notes.size() != known.fingers.size()) expect("a finger for each of the notes");
    if (done == nullptr || !done->is_boolean()) expect(R"("done", true or false,)");
    if (!problem_.empty()) return;
    known.passage = static_cast<std::size_t>(*passage) - 1;
    known.bars = {*first, *last};
    known.tempo_now = tempo_now(place);
    known.done = done->get<bool>();
    memory_.places.push_back(std::move(known));
  }

  PracticeMemory memory_;
  std::string problem_;
};

}  // namespace

PracticeMemoryResult read_practice(const Source& source) {
  if (source.text().size() > kLargestNotation) {
    return {{},
            fmt::format("1:1: expected at most {} bytes, found {}", kLargestNotation,
                        source.text().size())};
  }
  try {
    return PlanReader().read(Json::parse(source.text()));
  } catch (const Json::parse_error& error) {
    return {{}, syntax_problem(source, error.byte)};
  } catch (const Json::exception&) {
    return {{}, "1:1: expected a plan in JSON, found numbers beyond its range"};
  }
}

}  // namespace fingerturn
