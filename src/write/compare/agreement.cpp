#include "write/compare/agreement.hpp"

#include "text/numbers.hpp"
#include "text/wrap.hpp"
#include "write/text/signs.hpp"

#include <fmt/core.h>

namespace fingerturn {
namespace {

AgreementRow row_of(std::string label, const Agreement& agreement) {
  return {std::move(label), std::to_string(agreement.events),
          share_text(agreement.fingers, agreement.events),
          share_text(agreement.turns, agreement.events)};
}

}  // namespace

std::vector<AgreementRow> agreement_rows(const HandComparison& hand) {
  std::vector<AgreementRow> rows{row_of(to_string(hand.hand) + " hand", hand.in_all())};
  for (const BarAgreement& in_bar : hand.agreement) {
    if (in_bar.agreement.is_full()) continue;
    rows.push_back(row_of(fmt::format("bar {}", in_bar.bar), in_bar.agreement));
  }
  return rows;
}

std::string agreement_table(const Comparison& comparison, const TextStyle& style) {
  const auto line = [](const auto& cells) {
    return fmt::format("{:<11}{:>6}{:>8}{:>6}", cells[0], cells[1], cells[2], cells[3]);
  };
  std::string text = '\n' + emphasised(line(kAgreementHead), Emphasis::strong, style.colour) + '\n';
  for (const HandComparison& hand : comparison.hands) {
    for (const AgreementRow& row : agreement_rows(hand)) text += line(row) + '\n';
  }
  return text;
}

}  // namespace fingerturn
