#include "fingerturn/check.hpp"
#include "read/json_members.hpp"

#include <cmath>
#include <cstdint>
#include <string>
#include <string_view>
#include <utility>

#include <fmt/format.h>
#include <nlohmann/json.hpp>

/// A line of JSON as docs/check.schema.json describes it.
namespace fingerturn {
namespace {

using CheckJson = nlohmann::json;

/// Puts members into what they stand for, and remembers the first that is not as it should be.
class CheckLineReader {
 public:
  CheckLineResult read(const CheckJson& line) {
    if (text_in(member_of(line, "format")) != "fingerturn-check") {
      return {std::nullopt, "expected a line as check --format jsonl writes it"};
    }
    int version = 0;
    read_count(line, "version", version);
    if (version != 1) return {std::nullopt, "expected a line of version 1 of a check"};
    const CheckJson* source = member_of(line, "source");
    const bool is_of_all = source != nullptr && source->is_null();
    if (is_of_all) return {};
    FileCheck check;
    read_text(line, "source", check.file.source);
    if (const CheckJson* error = member_of(line, "error"); error == nullptr || !error->is_null()) {
      read_text(line, "error", check.file.error);
    } else {
      read_counts(line, check.file.counts);
      read_places(line, check);
    }
    if (!wrong_.empty()) {
      return {std::nullopt, fmt::format("expected a line as check --format jsonl writes it, found "
                                        "none with the \"{}\" that it has",
                                        wrong_)};
    }
    return {std::move(check), {}};
  }

 private:
  void fail(std::string_view name) {
    if (wrong_.empty()) wrong_ = name;
  }

  void read_text(const CheckJson& object, const char* name, std::string& text) {
    text = text_in(member_of(object, name));
    if (text.empty()) fail(name);
  }

  /// A whole number that the type can hold.
  template <typename Number>
  void read_count(const CheckJson& object, const char* name, Number& number) {
    const CheckJson* value = member_of(object, name);
    const bool is_count = value != nullptr && value->is_number_unsigned();
    const std::uint64_t count = is_count ? value->get<std::uint64_t>() : 0;
    if (!is_count || !std::in_range<Number>(count)) return fail(name);
    number = static_cast<Number>(count);
  }

  void read_counts(const CheckJson& line, CheckCounts& counts) {
    read_count(line, "passages", counts.passages);
    read_count(line, "events", counts.events);
    read_count(line, "fingered", counts.fingered);
    read_count(line, "preparatory", counts.preparatory);
    read_count(line, "single", counts.single_rotations);
    read_count(line, "double", counts.double_rotations);
    read_count(line, "level", counts.level_events);
    read_count(line, "undetermined", counts.undetermined);
    read_count(line, "crossings", counts.crossings);
    const CheckJson* watch = member_of(line, "watch");
    if (watch == nullptr || !watch->is_object()) return fail("watch");
    read_count(*watch, "info", counts.watch.info);
    read_count(*watch, "caution", counts.watch.caution);
    read_count(*watch, "strain", counts.watch.strain);
  }

  void read_places(const CheckJson& line, FileCheck& check) {
    const std::string_view told_by = text_in(member_of(line, "told_by"));
    check.placing = told_by == "bar" ? Placing::bar_and_beat : Placing::line_and_column;
    if (const CheckJson* titles = member_of(line, "titles"); titles != nullptr) {
      read_titles(*titles, check.titles);
    }
    const CheckJson* findings = member_of(line, "findings");
    if (findings == nullptr || !findings->is_array()) return fail("findings");
    for (const CheckJson& finding : *findings) {
      read_finding(finding, check.titles.size(), check.findings.emplace_back());
    }
  }

  void read_titles(const CheckJson& list, std::vector<std::string>& titles) {
    if (!list.is_array()) return fail("titles");
    for (const CheckJson& title : list) {
      if (!title.is_string()) return fail("titles");
      titles.push_back(title.get<std::string>());
    }
  }

  void read_finding(const CheckJson& json, std::size_t passages, PlacedFinding& finding) {
    if (!json.is_object()) return fail("findings");
    read_text(json, "code", finding.code);
    read_text(json, "message", finding.message);
    read_level(json, finding.level);
    read_count(json, "line", finding.place.line);
    read_count(json, "column", finding.place.column);
    MusicalPlace& where = finding.where;
    if (has_value(json, "passage")) {
      read_count(json, "passage", where.passage.emplace());
      const bool is_there = *where.passage > 0 && (passages == 0 || *where.passage <= passages);
      if (!is_there) return fail("passage");
      --*where.passage;
    }
    if (has_value(json, "bar")) read_count(json, "bar", where.bar.emplace());
    if (has_value(json, "beat")) read_beat(json, where.beat.emplace());
    if (has_value(json, "hand")) read_hand(json, where.hand.emplace());
  }

  static bool has_value(const CheckJson& object, const char* name) {
    const CheckJson* value = member_of(object, name);
    return value != nullptr && !value->is_null();
  }

  void read_level(const CheckJson& finding, WatchLevel& level) {
    const std::string_view word = text_in(member_of(finding, "level"));
    if (word != "info" && word != "caution" && word != "strain") return fail("level");
    level = word == "info"      ? WatchLevel::info
            : word == "caution" ? WatchLevel::caution
                                : WatchLevel::strain;
  }

  void read_hand(const CheckJson& finding, Hand& hand) {
    const std::string_view word = text_in(member_of(finding, "hand"));
    if (word != to_string(Hand::right) && word != to_string(Hand::left)) return fail("hand");
    hand = word == to_string(Hand::right) ? Hand::right : Hand::left;
  }

  /// Beats are written with three decimals at most.
  void read_beat(const CheckJson& finding, Fraction& beat) {
    constexpr std::int64_t kDecimals = 1000;
    constexpr double kMostBeats = 1e12;
    const CheckJson& value = *member_of(finding, "beat");
    const double number = value.is_number() ? value.get<double>() : 0;
    if (!(number >= 1 && number <= kMostBeats)) return fail("beat");
    beat = reduced(std::llround(number * static_cast<double>(kDecimals)), kDecimals)
               .value_or(Fraction{1, 1});
  }

  std::string wrong_;  ///< the name of the first member that is not as it should be
};

}  // namespace

CheckLineResult read_check_line(std::string_view line) {
  return CheckLineReader().read(CheckJson::parse(line, nullptr, false));
}

}  // namespace fingerturn
