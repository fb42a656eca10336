#include "read/notation/value.hpp"

#include <charconv>
#include <cstdint>
#include <string_view>
#include <system_error>

#include <fmt/core.h>

namespace fingerturn {
namespace {

/// The numbers in a note value: as large as those of a value that two parts of a score, each
/// divided as finely as is read, can make together.
constexpr std::int64_t kLargestNumber = 999'999'999'999'999'999;
constexpr Fraction kLongestValue{999999, 1};  // in whole notes

/// Takes a whole number of one to eighteen digits off the front of a text.
std::optional<std::int64_t> take_number(std::string_view& text) {
  constexpr std::size_t kMostDigits = 18;
  std::int64_t number = 0;
  const char* const end = text.data() + text.size();
  if (text.empty() || text.front() < '0' || text.front() > '9') return std::nullopt;
  const auto [stop, problem] = std::from_chars(text.data(), end, number);
  const auto length = static_cast<std::size_t>(stop - text.data());
  if (problem != std::errc{} || length > kMostDigits) return std::nullopt;
  text.remove_prefix(length);
  return number;
}

struct Ratio {
  std::int64_t above = 0;
  std::int64_t below = 0;
};

/// Takes "above/below", both above zero, off the front of a text.
std::optional<Ratio> take_ratio(std::string_view& text) {
  const std::optional<std::int64_t> above = take_number(text);
  if (!above || *above == 0 || !text.starts_with('/')) return std::nullopt;
  text.remove_prefix(1);
  const std::optional<std::int64_t> below = take_number(text);
  if (!below || *below == 0) return std::nullopt;
  return Ratio{*above, *below};
}

/// What dots or a triplet sign make of a value; nothing for any other ending.
std::optional<Fraction> factor_of(std::string_view ending) {
  if (ending.empty()) return Fraction{1, 1};
  if (ending == ".") return Fraction{3, 2};
  if (ending == "..") return Fraction{7, 4};
  if (ending == "t") return Fraction{2, 3};
  return std::nullopt;
}

std::optional<Fraction> value_of(std::string_view text) {
  const std::optional<Ratio> ratio = take_ratio(text);
  if (!ratio) return std::nullopt;
  const std::optional<Fraction> factor = factor_of(text);
  if (!factor) return std::nullopt;
  const std::optional<Fraction> value = product(*reduced(ratio->above, ratio->below), *factor);
  // What cannot be written as one fraction again is refused.
  const bool writable =
      value && value->numerator <= kLargestNumber && value->denominator <= kLargestNumber;
  return writable && *value <= kLongestValue ? value : std::nullopt;
}

std::optional<Meter> meter_of(Ratio ratio) {
  constexpr std::int64_t kAboveAllMeters = 1000;
  if (ratio.above >= kAboveAllMeters || ratio.below >= kAboveAllMeters) return std::nullopt;
  const Meter meter{static_cast<int>(ratio.above), static_cast<int>(ratio.below)};
  return is_plausible(meter) ? std::optional(meter) : std::nullopt;
}

/// Beats are counted, not measured: a unit of stranger numbers is a slip.
bool can_be_counted_in(Fraction unit) {
  constexpr std::int64_t kLargest = 999999;
  return unit.numerator <= kLargest && unit.denominator <= kLargest;
}

std::optional<double> decimal_of(std::string_view text) {
  double number = 0;
  const char* const end = text.data() + text.size();
  const auto [stop, problem] = std::from_chars(text.data(), end, number, std::chars_format::fixed);
  if (problem != std::errc{} || stop != end) return std::nullopt;
  return number;
}

}  // namespace

std::optional<Fraction> read_note_value(TextPiece word, Reporter& reporter) {
  if (const std::optional<Fraction> value = value_of(word.text)) return value;
  const bool is_finger = word.text.size() == 1 && word.text >= "1" && word.text <= "5";
  reporter.report(
      "note-value", word.span(), fmt::format("expected a note value, found {}", quoted(word.text)),
      is_finger ? "a finger stands with its note, as in C4:1, and a value is written as in 1/4"
                : "an eighth is 1/8, a dotted one 1/8., one of a triplet 1/8t, a whole "
                  "note 1/1");
  return std::nullopt;
}

std::optional<Meter> read_meter(TextPiece value, Reporter& reporter) {
  std::string_view text = value.text;
  if (const std::optional<Ratio> ratio = take_ratio(text); ratio && text.empty()) {
    if (const std::optional<Meter> meter = meter_of(*ratio)) return meter;
  }
  reporter.report("meter", value.span(),
                  fmt::format("expected a time signature, found {}", quoted(value.text)),
                  "write beats and beat value, as in 4/4 or 6/8");
  return std::nullopt;
}

std::optional<Tempo> read_tempo(TextPiece value, Reporter& reporter) {
  Tempo tempo;
  TextPiece number = value;
  const std::size_t equals = value.text.find('=');
  if (equals != std::string_view::npos) {
    const std::optional<Fraction> unit = read_note_value(trimmed(value.part(0, equals)), reporter);
    if (!unit) return std::nullopt;
    tempo.beat_unit = *unit;
    number = trimmed(value.from(equals + 1));
  }
  const std::optional<double> per_minute = decimal_of(number.text);
  if (per_minute && is_plausible_tempo(*per_minute) && can_be_counted_in(tempo.beat_unit)) {
    tempo.per_minute = *per_minute;
    return tempo;
  }
  reporter.report("tempo", value.span(),
                  fmt::format("expected a tempo from 1 to 2000, found {}", quoted(value.text)),
                  "write quarter notes a minute, as in 72, or 1/8 = 144");
  return std::nullopt;
}

std::optional<int> read_number(TextPiece value, int least, int most, std::string_view what,
                               Reporter& reporter) {
  std::string_view text = value.text;
  const std::optional<std::int64_t> number = take_number(text);
  if (number && text.empty() && *number >= least && *number <= most) {
    return static_cast<int>(*number);
  }
  reporter.report(
      "number", value.span(),
      fmt::format("expected {} from {} to {}, found {}", what, least, most, quoted(value.text)));
  return std::nullopt;
}

}  // namespace fingerturn
