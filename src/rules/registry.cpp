#include "fingerturn/rule.hpp"
#include "rules/chord_fingers.hpp"
#include "rules/crossing.hpp"
#include "rules/first_note.hpp"
#include "rules/gesture.hpp"
#include "rules/kind.hpp"
#include "rules/level.hpp"
#include "rules/missing_finger.hpp"
#include "rules/same_finger.hpp"
#include "rules/side.hpp"

#include <array>

namespace fingerturn {
namespace {

/// All rules, in the order in which `explain` and docs/rules.md give them.
constexpr std::array kRules{
    kEventRule,          kGestureRule,        kSideRule,
    kSideChangesRule,    kSideStaysRule,      kFirstNoteRule,
    kFirstNoteAloneRule, kLevelRule,          kDoubleNoteRule,
    kSameFingerRule,     kSilentChangeRule,   kMissingFingerRule,
    kAfterMissingRule,   kThumbUnderRule,     kFingerOverThumbRule,
    kFingerCrossingRule, kOneFingerTwiceRule, kCrossedInChordRule,
};

}  // namespace

std::span<const Rule> rules() noexcept { return kRules; }

const Rule* find_rule(std::string_view id) noexcept {
  for (const Rule& rule : kRules) {
    if (rule.id == id) return &rule;
  }
  return nullptr;
}

}  // namespace fingerturn
