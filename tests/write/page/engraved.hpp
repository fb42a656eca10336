#pragma once

#include "write/page/music.hpp"

#include <string>
#include <vector>

/// Music as it is set, for tests to look at.
namespace fingerturn::tests {

/// All systems of a score, one passage and part after another.
std::vector<System> systems_of(const AnalysedScore& analysed, double width = kSheetWidth);

/// The same with several ribbons for each hand.
std::vector<System> systems_of(const AnalysedPassage& passage, const RibbonsOfHands& hands,
                               double width = kSheetWidth);

/// The inks of a kind, of all systems.
Inks of_kind(const std::vector<System>& systems, InkKind kind);
/// The inks of a kind in a style.
Inks of_kind(const std::vector<System>& systems, InkKind kind, InkStyle style);

/// The words of inks, in their order.
std::vector<std::string> words_in(const Inks& inks);

/// The name of a kind, for messages.
std::string name_of(InkKind kind);

}  // namespace fingerturn::tests
