#include "write/page/staff/bars_in_system.hpp"

#include <cstddef>

namespace fingerturn {
namespace {

double ticks_of(const BarsInSystem& system, const BarMoment& at) {
  return to_double(at.time) * static_cast<double>(system.ticks.value_or(0));
}

/// When a part of a bar ends that goes on in the next system.
double end_of_part(const BarsInSystem& system, const MeasuredBar& bar) {
  if (bar.moments.empty()) return 0;
  const Moment& last = bar.moments.back();
  const auto whole = static_cast<double>(system.ticks.value_or(0));
  return static_cast<double>(last.onset) + last.length * whole;
}

bool comes_before(const BarsInSystem& system, const MeasuredBar& bar, const BarMoment& at) {
  if (at.bar != bar.bar->bar) return at.bar < bar.bar->bar;
  return bar.goes_on && !bar.moments.empty() &&
         ticks_of(system, at) < static_cast<double>(bar.moments.front().onset);
}

bool comes_after(const BarsInSystem& system, const MeasuredBar& bar, const BarMoment& at) {
  if (at.bar != bar.bar->bar) return at.bar > bar.bar->bar;
  return !bar.ends && ticks_of(system, at) >= end_of_part(system, bar);
}

/// Between the moments before and after it, as much further as it is later.
double x_in_bar(const BarsInSystem& system, std::size_t number, double ticks) {
  const MeasuredBar& bar = system.bars[number];
  const SpacedBar& places = system.places[number];
  double from = number == 0 ? system.first : places.begin;
  double since = 0;
  for (std::size_t i = 0; i < bar.moments.size(); ++i) {
    const auto onset = static_cast<double>(bar.moments[i].onset);
    if (bar.moments[i].grace) continue;
    if (onset > ticks) {
      return onset > since ? from + (places.moments[i] - from) * (ticks - since) / (onset - since)
                           : places.moments[i];
    }
    from = places.moments[i];
    since = onset;
  }
  const double end = bar.ends ? static_cast<double>(bar.bar->length) : end_of_part(system, bar);
  return end > since ? from + (places.end - from) * (ticks - since) / (end - since) : from;
}

}  // namespace

bool is_before(const BarsInSystem& system, const BarMoment& at) {
  return comes_before(system, system.bars.front(), at);
}

bool is_after(const BarsInSystem& system, const BarMoment& at) {
  return comes_after(system, system.bars.back(), at);
}

std::optional<PlaceInSystem> place_of(const BarsInSystem& system, const BarMoment& at) {
  if (!system.ticks) return std::nullopt;
  for (std::size_t i = 0; i < system.bars.size(); ++i) {
    const MeasuredBar& bar = system.bars[i];
    if (bar.again) continue;
    if (comes_before(system, bar, at) || comes_after(system, bar, at)) continue;
    return PlaceInSystem{i, x_in_bar(system, i, ticks_of(system, at))};
  }
  return std::nullopt;
}

}  // namespace fingerturn
