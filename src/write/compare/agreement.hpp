#pragma once

#include "fingerturn/compare.hpp"

#include <array>
#include <string>
#include <string_view>
#include <vector>

namespace fingerturn {

/// A row of the table of agreement: a hand or a bar of it, then how many events are compared, and
/// in what share of them all have the same fingers and the same turns.
using AgreementRow = std::array<std::string, 4>;

/// What stands above the columns.
inline constexpr std::array<std::string_view, 4> kAgreementHead{"agreement", "events", "fingers",
                                                                "turns"};

/// The rows of a hand: all of it, then its bars that do not agree in all.
std::vector<AgreementRow> agreement_rows(const HandComparison& hand);

/// The table for all hands.
std::string agreement_table(const Comparison& comparison, const TextStyle& style);

}  // namespace fingerturn
