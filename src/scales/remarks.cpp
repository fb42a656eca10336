#include "scales/remarks.hpp"

#include "scales/fingers.hpp"
#include "scales/kinds.hpp"

#include <algorithm>
#include <string_view>

#include <fmt/core.h>

namespace fingerturn {
namespace {

std::string source_of(const ScaleTask& task) {
  const bool chromatic = task.name.kind == ScaleKind::chromatic;
  if (task.options.notes == ScaleNotes::octaves) {
    return "Octaves have 1-5 on white keys and 1-4 on black ones (common practice, no source).";
  }
  if (task.options.notes == ScaleNotes::thirds) {
    return chromatic ? "Fingers by our convention: 1-3 with the thumb on a white key, 2-4 in place "
                       "of a thumb on a black one, 3-5 where white follows white."
                     : "Fingers by our convention: thirds in groups of three and twice two, 3-5 "
                       "once an octave, the thumb on as few black keys as that allows.";
  }
  if (task.options.notes == ScaleNotes::sixths) {
    return "Fingers by our convention: 1-4 and 2-5 in turn, the thumb on as few black keys as that "
           "allows.";
  }
  if (task.options.inversion > 0) {
    return "Fingers by common practice, no source: the thumb on the outermost note at its side, or "
           "else on the next white key.";
  }
  return fmt::format("Fingers from memory after {}.", source_of_fingers(task.name.kind));
}

bool any_falls(std::span<const HandTask> hands) {
  return std::any_of(hands.begin(), hands.end(), [](const HandTask& hand) { return hand.falls(); });
}

bool begins_on_third(const ScaleTask& task, const HandTask& hand) {
  return task.options.inversion == 0 && hand.first_note != 0;
}

/// What other handbooks have for the kind that rises and for the one that falls; each once.
std::vector<std::string_view> others_of(const HandTask& task) {
  std::vector<std::string_view> all;
  if (task.notes != ScaleNotes::single || task.first_note != 0) return all;
  const auto add = [&](ScaleKind kind) {
    const std::string_view others = other_fingers({task.name.tonic, kind}, task.hand);
    if (!others.empty() && (all.empty() || all.back() != others)) all.push_back(others);
  };
  if (task.rises()) add(task.name.kind);
  if (task.falls()) add(falling_kind(task.name.kind));
  return all;
}

}  // namespace

std::vector<std::string> remarks_of(const ScaleTask& task, std::span<const HandTask> hands) {
  std::vector<std::string> remarks{source_of(task)};
  if (task.name.kind == ScaleKind::melodic_minor && any_falls(hands)) {
    remarks.emplace_back("Falling, it has the notes and fingers of the natural minor.");
  }
  for (const HandTask& hand : hands) {
    if (begins_on_third(task, hand)) {
      remarks.push_back(
          fmt::format("The {} hand begins on the third; each of its notes has the "
                      "finger that it has from the keynote.",
                      to_string(hand.hand)));
    }
    for (const std::string_view others : others_of(hand)) {
      remarks.push_back(
          fmt::format("In the {} hand {} (from memory).", to_string(hand.hand), others));
    }
  }
  return remarks;
}

}  // namespace fingerturn
