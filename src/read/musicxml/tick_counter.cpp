#include "read/musicxml/tick_counter.hpp"

#include "read/musicxml/element.hpp"

#include <algorithm>
#include <array>

namespace fingerturn {
namespace {

/// The finest ticks of a quarter note, and the most quarter notes that a measure may hold: so the
/// time of a whole score stays within 64 bits.
constexpr Ticks kFinestTicks = 1'000'000;
constexpr Ticks kLongestMeasure = 10'000;

/// A decimal number, 0 or above, of at most nine digits before the point and three after it.
std::optional<Fraction> decimal(std::string_view text) {
  constexpr std::size_t kMostDigits = 9;
  constexpr std::array<std::int64_t, 4> kPowers{1, 10, 100, 1000};
  const std::size_t point = text.find('.');
  std::string_view whole = text.substr(0, point);
  std::string_view part = point == std::string_view::npos ? "" : text.substr(point + 1);
  while (part.ends_with('0')) part.remove_suffix(1);
  if (whole.size() > kMostDigits || part.size() >= kPowers.size()) return std::nullopt;
  const auto above = whole_number<std::int64_t>(whole);
  const auto below = part.empty() ? 0 : whole_number<std::int64_t>(part);
  if (!above || !below || *above < 0 || *below < 0 || whole.starts_with('-')) return std::nullopt;
  const std::int64_t power = kPowers.at(part.size());
  return reduced(*above * power + *below, power);
}

void refine_part(WrittenPart& part, Ticks factor) {
  part.ticks_per_quarter *= factor;
  for (WrittenMeasure& measure : part.measures) {
    measure.bar_tick *= factor;
    measure.length *= factor;
  }
  refine_ticks(part.notes, factor);
}

}  // namespace

void refine_ticks(std::vector<WrittenNote>& notes, Ticks factor) {
  for (WrittenNote& note : notes) {
    note.tick *= factor;
    note.duration *= factor;
  }
}

bool TickCounter::refine(Ticks factor) {
  if (part_.ticks_per_quarter > kFinestTicks / factor) return false;
  refine_part(part_, factor);
  now_ *= factor;
  note_ *= factor;
  furthest_ *= factor;
  last_text_ = {};
  return true;
}

bool TickCounter::set_divisions(std::string_view text) {
  const std::optional<Fraction> divisions = decimal(text);
  if (!divisions || divisions->numerator == 0 || divisions->numerator > kFinestTicks) return false;
  divisions_ = *divisions;
  last_text_ = {};
  return count("1").has_value();
}

std::optional<Ticks> TickCounter::of(std::string_view text) {
  if (!text.empty() && text == last_text_) return last_ticks_;
  const std::optional<Ticks> ticks = count(text);
  if (ticks) {
    last_text_ = text;
    last_ticks_ = *ticks;
  }
  return ticks;
}

std::optional<Ticks> TickCounter::count(std::string_view text) {
  const std::optional<Fraction> duration = decimal(text);
  if (!duration) return std::nullopt;
  // In quarter notes, then in ticks.
  const Ticks above = duration->numerator * divisions_.denominator;
  const Ticks below = duration->denominator * divisions_.numerator;
  const std::optional<Fraction> quarters = reduced(above, below);
  return quarters ? count_quarters(*quarters) : std::nullopt;
}

std::optional<Ticks> TickCounter::count_quarters(Fraction quarters) {
  const std::optional<Fraction> step = reduced(part_.ticks_per_quarter, quarters.denominator);
  if (!step) return std::nullopt;
  if (step->denominator != 1 && !refine(step->denominator)) return std::nullopt;
  if (quarters.numerator > kLongestMeasure * quarters.denominator) return std::nullopt;
  return quarters.numerator * (part_.ticks_per_quarter / quarters.denominator);
}

std::optional<Ticks> TickCounter::of_value(Fraction value) {
  const std::optional<Fraction> quarters = product(value, {4, 1});
  return quarters ? count_quarters(*quarters) : std::nullopt;
}

bool TickCounter::move(Ticks ticks) {
  const Ticks longest = kLongestMeasure * part_.ticks_per_quarter;
  if (now_ + ticks > longest) return false;
  now_ = std::max<Ticks>(now_ + ticks, 0);
  furthest_ = std::max(furthest_, now_);
  return true;
}

}  // namespace fingerturn
