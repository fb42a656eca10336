#include "fingerturn/rule.hpp"
#include "hand/keyboard.hpp"
#include "hand/misplaced_finger.hpp"
#include "hand/spans.hpp"
#include "rules/arm/arc.hpp"
#include "rules/arm/carry.hpp"
#include "rules/arm/depth.hpp"
#include "rules/places.hpp"
#include "rules/tempo.hpp"
#include "rules/together.hpp"
#include "rules/turn/crossing.hpp"
#include "rules/turn/first_note.hpp"
#include "rules/turn/gesture.hpp"
#include "rules/turn/held_key.hpp"
#include "rules/turn/kind.hpp"
#include "rules/turn/level.hpp"
#include "rules/turn/missing_finger.hpp"
#include "rules/turn/same_finger.hpp"
#include "rules/turn/side.hpp"
#include "rules/watch/chord_fingers.hpp"
#include "rules/watch/curl.hpp"
#include "rules/watch/finger_moved.hpp"
#include "rules/watch/hands.hpp"
#include "rules/watch/leap.hpp"
#include "rules/watch/span_watch.hpp"

#include <array>
#include <string_view>
#include <vector>

namespace fingerturn {
namespace {

/// All rules, in the order in which `explain` and docs/rules.md give them.
constexpr std::array kRules{
    kEventRule,
    kGestureRule,
    kSideRule,
    kSideChangesRule,
    kSideStaysRule,
    kFirstNoteRule,
    kFirstNoteAloneRule,
    kLevelRule,
    kRolledChordRule,
    kOrnamentRule,
    kDoubleNoteRule,
    kSameFingerRule,
    kSilentChangeRule,
    kMissingFingerRule,
    kAfterMissingRule,
    kHeldKeyRule,
    kThumbUnderRule,
    kFingerOverThumbRule,
    kFingerCrossingRule,
    kKeyboardRule,
    kCarryRule,
    kInAndOutRule,
    kArcRule,
    kTogetherRule,
    kOneFingerTwiceRule,
    kCrossedInChordRule,
    kReversedInChordRule,
    kMisplacedFingerRule,
    kReachRule,
    kStretchRule,
    kTwistRule,
    kLeapRule,
    kQuickLeapRule,
    kCurlRule,
    kFingerMovedRule,
    kHandsRule,
    kSwingRateRule,
    kFullSwingTempoRule,
    kSwingSizeRule,
    kPlacesRule,
};

}  // namespace

std::span<const Rule> rules() noexcept { return kRules; }

const Rule* find_rule(std::string_view id) noexcept {
  for (const Rule& rule : kRules) {
    if (rule.id == id) return &rule;
  }
  return nullptr;
}

std::vector<const Rule*> rules_of_section(std::string_view section) {
  std::vector<const Rule*> found;
  for (const Rule& rule : kRules) {
    const bool in_chapter = !section.empty() && rule.section.starts_with(section) &&
                            rule.section.substr(section.size()).starts_with('.');
    if (rule.section == section || in_chapter) found.push_back(&rule);
  }
  return found;
}

}  // namespace fingerturn
