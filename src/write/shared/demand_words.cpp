#include "write/shared/demand_words.hpp"

#include <fmt/format.h>

namespace fingerturn {
namespace {

void add_worth(std::vector<std::string>& parts, std::size_t count, std::size_t points,
               DemandWorth worth) {
  if (worth == DemandWorth::told && count != points) parts.back() += fmt::format(" for {}", points);
}

/// "3 passings (1 quick)", "2 quick passings"
void add_passings(std::vector<std::string>& parts, const BarDemand& demand, DemandWorth worth) {
  if (demand.passings == 0) return;
  const bool all_quick = demand.quick_passings == demand.passings;
  parts.push_back(all_quick ? counted(demand.passings, "quick passing", "quick passings")
                            : counted(demand.passings, "passing", "passings"));
  if (!all_quick && demand.quick_passings > 0) {
    parts.back() += fmt::format(" ({} quick)", demand.quick_passings);
  }
  add_worth(parts, demand.passings, demand.passings + demand.quick_passings, worth);
}

}  // namespace

std::string counted(std::size_t count, std::string_view one, std::string_view many) {
  return fmt::format("{} {}", count, count == 1 ? one : many);
}

void add_counted(std::vector<std::string>& parts, std::size_t count, std::string_view one,
                 std::string_view many) {
  if (count > 0) parts.push_back(counted(count, one, many));
}

std::vector<std::string> demand_parts(const BarDemand& demand, DemandWorth worth) {
  std::vector<std::string> parts;
  add_counted(parts, demand.doubles, "double of a row", "doubles in rows");
  add_counted(parts, demand.held, "double over a held key", "doubles over held keys");
  add_passings(parts, demand, worth);
  add_counted(parts, demand.carries, "far or fast carry", "far or fast carries");
  add_counted(parts, demand.leaps, "leap", "leaps");
  if (demand.leaps > 0) add_worth(parts, demand.leaps, demand.leap_points, worth);
  add_counted(parts, demand.small_swings, "swing of less than 4/5", "swings of less than 4/5");
  add_counted(parts, demand.kinds_differ, "place where the hands differ",
              "places where the hands differ");
  add_counted(parts, demand.findings, "thing to watch", "things to watch");
  if (demand.findings > 0) add_worth(parts, demand.findings, demand.finding_points, worth);
  return parts;
}

}  // namespace fingerturn
