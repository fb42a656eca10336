#include "write/text/legend.hpp"

#include "write/shared/used.hpp"

#include <array>
#include <cstddef>
#include <optional>

#include <fmt/format.h>

namespace fingerturn {
namespace {

std::string rotation_words(const Used& used) {
  static constexpr std::array<std::string_view, 5> kMeanings{
      "prep = preparatory, the first of a gesture, with a swing of its own before it",
      "single = the side changes, the note before has prepared it",
      "double = the side stays, the forearm swings back first",
      "level = both sides of the hand go down together, no turn",
      "? = undetermined, a finger is missing"};
  std::vector<std::string_view> parts;
  for (std::size_t i = 0; i < kMeanings.size(); ++i) {
    if (used.has(kRotations[i])) parts.emplace_back(kMeanings[i]);
  }
  return fmt::format("{}", fmt::join(parts, "; "));
}

std::string crossing_words(const Used& used) {
  static constexpr std::array<std::string_view, 3> kMeanings{
      "under = the thumb passes under", "over = the finger passes over the thumb",
      "cross = one finger passes another"};
  std::vector<std::string_view> parts;
  for (std::size_t i = 0; i < kMeanings.size(); ++i) {
    if (used.has(kCrossings[i])) parts.emplace_back(kMeanings[i]);
  }
  return fmt::format("{}", fmt::join(parts, "; "));
}

std::string note_sign_words(const Used& used) {
  std::vector<std::string_view> parts;
  if (used.graces) parts.emplace_back("^ = grace note");
  if (used.held) parts.emplace_back("~ = held over");
  if (used.rolled) parts.emplace_back("/ = rolled into the next");
  if (used.trills) parts.emplace_back("tr = trill, after the stroke the sides alternate");
  if (used.tremolos) parts.emplace_back("trem = tremolo, after the stroke the sides alternate");
  if (used.rests) parts.emplace_back("r = rest");
  if (used.breaths) parts.emplace_back("comma = breath");
  return fmt::format("{}", fmt::join(parts, "; "));
}

std::string finger_sign_words(const Used& used) {
  std::vector<std::string_view> parts;
  if (used.changes) parts.emplace_back("4>1 = changed on the held key");
  if (used.suggestions) parts.emplace_back("2? = suggested");
  if (used.has(Rotation::undetermined)) {
    parts.emplace_back("? = missing");
  }
  return fmt::format("{}", fmt::join(parts, "; "));
}

void add_sides(const Used& used, std::vector<LegendEntry>& entries) {
  entries.push_back({"prepare", "the way the forearm swings first, out of which it plays"});
  std::string play = "the way the forearm turns to play the note";
  if (used.turning_changes) play += "; in brackets, the way a change of finger then turns it";
  entries.push_back({"play", std::move(play)});
  if (used.has_open_sides()) entries.push_back({"", "? = not known"});
  entries.push_back({"forearm",
                     "sup = supination, toward the fifth finger; pron = pronation, toward the "
                     "thumb"});
}

std::vector<LegendEntry> entries_for(const Used& used) {
  std::vector<LegendEntry> entries{{"note", note_sign_words(used)},
                                   {"finger", finger_sign_words(used)},
                                   {"rotation", rotation_words(used)}};
  if (used.has_sides()) add_sides(used, entries);
  entries.push_back({"crossing", crossing_words(used)});
  if (used.pinned) {
    entries.push_back(
        {"held", "the finger, or the key, that stays down; no swing around it is full"});
  }
  if (used.carries) {
    entries.push_back(
        {"carry", "the way the arm carries the hand, and how many white keys (our model)"});
  }
  if (used.moves) {
    entries.push_back({"depth", "in = further in between the black keys; out = back (our model)"});
  }
  std::erase_if(entries, [](const LegendEntry& entry) { return entry.words.empty(); });
  return entries;
}

}  // namespace

std::vector<LegendEntry> legend_of(const AnalysedScore& analysed) {
  return entries_for(used_in(analysed));
}

std::vector<LegendEntry> legend_of(const Used& used) { return entries_for(used); }

std::vector<LegendEntry> legend_of(std::span<const AnalysedPassage> passages) {
  Used used;
  for (const AnalysedPassage& passage : passages) {
    for (const AnalysedLine line : passage) used.see(line, {});
  }
  return entries_for(used);
}

}  // namespace fingerturn
