#include "write/json/parts.hpp"

#include <fmt/format.h>

namespace fingerturn {

std::string text_or_null(std::string_view text) { return text.empty() ? "null" : json_text(text); }

void add_totals(std::string& out, const Totals& totals) {
  out += fmt::format(
      R"({{"events":{},"preparatory":{},"single":{},"double":{},"level":{},"undetermined":{},)"
      R"("swings":{},"crossings":{},"longest_double_run":{},"carried":)",
      totals.events, totals.preparatory, totals.single_rotations, totals.double_rotations,
      totals.level, totals.undetermined, totals.swings, totals.crossings,
      totals.longest_double_run);
  add_decimal(out, totals.carried);
  out += R"(,"largest_carry":)";
  add_decimal(out, totals.largest_carry);
  out += fmt::format(R"(,"moves_in":{},"moves_out":{},"arcs":{},"full_swing_tempo":)",
                     totals.moves_in, totals.moves_out, totals.arcs);
  add_decimal_or_null(out, totals.full_swing_tempo);
  out += '}';
}

}  // namespace fingerturn
