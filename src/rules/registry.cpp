#include "fingerturn/rule.hpp"
#include "rules/arc.hpp"
#include "rules/carry.hpp"
#include "rules/chord_fingers.hpp"
#include "rules/crossing.hpp"
#include "rules/curl.hpp"
#include "rules/depth.hpp"
#include "rules/finger_moved.hpp"
#include "rules/finger_spans.hpp"
#include "rules/first_note.hpp"
#include "rules/gesture.hpp"
#include "rules/keyboard.hpp"
#include "rules/kind.hpp"
#include "rules/level.hpp"
#include "rules/missing_finger.hpp"
#include "rules/same_finger.hpp"
#include "rules/side.hpp"
#include "rules/span_watch.hpp"
#include "rules/tempo.hpp"
#include "rules/together.hpp"

#include <array>

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
    kDoubleNoteRule,
    kSameFingerRule,
    kSilentChangeRule,
    kMissingFingerRule,
    kAfterMissingRule,
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
    kReachRule,
    kStretchRule,
    kTwistRule,
    kLeapRule,
    kCurlRule,
    kFingerMovedRule,
    kSwingRateRule,
    kFullSwingTempoRule,
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
