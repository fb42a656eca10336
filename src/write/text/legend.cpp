#include "write/text/legend.hpp"

#include <array>
#include <cstddef>
#include <optional>

namespace fingerturn {
namespace {

/// Which parts of the notation and of the analysis a report shows.
struct Seen {
  std::array<bool, 5> rotations{};
  std::array<bool, 4> crossings{};
  bool carries = false;
  bool depths = false;
  bool sides = false;
  bool open_sides = false;  ///< events that turn, though the side is not known
  bool rests = false;
  bool breaths = false;
  bool graces = false;
  bool held = false;
  bool changes = false;
  bool suggestions = false;
};

void see_event(const Line& line, std::size_t place, Seen& seen) {
  const Event& event = line.events[place];
  seen.rests |= event.is_rest();
  seen.breaths |= event.breath_after;
  seen.graces |= event.grace;
  seen.held |= !event.is_rest() && event.struck_count() == 0;
  for (const Note& note : event.notes) {
    if (note.held) continue;
    seen.suggestions |= note.suggested;
    seen.changes |= fingers_on_key(line, place, note).size() > 1;
  }
}

void see_line(const AnalysedLine& line, const std::optional<BarRange>& bars, Seen& seen) {
  const std::vector<Event>& events = line.written().events;
  for (std::size_t place = 0; place < events.size(); ++place) {
    if (!bars || bars->contains(events[place].bar)) see_event(line.written(), place, seen);
  }
  for (const EventAnalysis& entry : line.found().events) {
    seen.rotations.at(static_cast<std::size_t>(entry.rotation)) = true;
    seen.crossings.at(static_cast<std::size_t>(entry.crossing)) = true;
    seen.carries |= entry.carry.value_or(0) != 0;
    seen.depths |= entry.in_out.has_value();
    seen.sides |= entry.side.has_value();
    seen.open_sides |= !entry.side && entry.rotation != Rotation::level;
  }
}

std::string joined(const std::vector<std::string>& parts) {
  std::string text;
  for (const std::string& part : parts) text += (text.empty() ? "" : "; ") + part;
  return text;
}

std::string rotation_words(const Seen& seen) {
  static constexpr std::array<std::string_view, 5> kMeanings{
      "prep = preparatory, the first of a gesture, with a swing of its own before it",
      "single = the side changes, the note before has prepared it",
      "double = the side stays, the forearm swings back first",
      "level = both sides of the hand go down together, no turn",
      "? = undetermined, a finger is missing"};
  std::vector<std::string> parts;
  for (std::size_t i = 0; i < kMeanings.size(); ++i) {
    if (seen.rotations[i]) parts.emplace_back(kMeanings[i]);
  }
  return joined(parts);
}

std::string crossing_words(const Seen& seen) {
  static constexpr std::array<std::string_view, 3> kMeanings{
      "under = the thumb passes under", "over = the finger passes over the thumb",
      "cross = one finger passes another"};
  std::vector<std::string> parts;
  for (std::size_t i = 0; i < kMeanings.size(); ++i) {
    if (seen.crossings[i + 1]) parts.emplace_back(kMeanings[i]);
  }
  return joined(parts);
}

std::string note_sign_words(const Seen& seen) {
  std::vector<std::string> parts;
  if (seen.graces) parts.emplace_back("^ = grace note");
  if (seen.held) parts.emplace_back("~ = held over");
  if (seen.rests) parts.emplace_back("r = rest");
  if (seen.breaths) parts.emplace_back("comma = breath");
  return joined(parts);
}

std::string finger_sign_words(const Seen& seen) {
  std::vector<std::string> parts;
  if (seen.changes) parts.emplace_back("4>1 = changed on the held key");
  if (seen.suggestions) parts.emplace_back("2? = suggested");
  if (seen.rotations[static_cast<std::size_t>(Rotation::undetermined)]) {
    parts.emplace_back("? = missing");
  }
  return joined(parts);
}

void add_sides(const Seen& seen, std::vector<LegendEntry>& entries) {
  entries.push_back({"prepare", "the way the forearm swings first, out of which it plays"});
  entries.push_back({"play", "the way the forearm turns to play the note"});
  if (seen.open_sides) entries.push_back({"", "? = not known"});
  entries.push_back({"forearm",
                     "sup = supination, toward the fifth finger; pron = pronation, toward the "
                     "thumb"});
}

std::vector<LegendEntry> entries_for(const Seen& seen) {
  std::vector<LegendEntry> entries{{"note", note_sign_words(seen)},
                                   {"finger", finger_sign_words(seen)},
                                   {"rotation", rotation_words(seen)}};
  if (seen.sides) add_sides(seen, entries);
  entries.push_back({"crossing", crossing_words(seen)});
  if (seen.carries) {
    entries.push_back(
        {"carry", "the way the arm carries the hand, and how many white keys (our model)"});
  }
  if (seen.depths) {
    entries.push_back({"depth", "in = further in between the black keys; out = back (our model)"});
  }
  std::erase_if(entries, [](const LegendEntry& entry) { return entry.words.empty(); });
  return entries;
}

}  // namespace

std::vector<LegendEntry> legend_of(const AnalysedScore& analysed) {
  Seen seen;
  for (const AnalysedPassage passage : analysed) {
    for (const AnalysedLine line : passage) see_line(line, passage.found().bars, seen);
  }
  return entries_for(seen);
}

std::vector<LegendEntry> legend_of(std::span<const AnalysedPassage> passages) {
  Seen seen;
  for (const AnalysedPassage& passage : passages) {
    for (const AnalysedLine line : passage) see_line(line, std::nullopt, seen);
  }
  return entries_for(seen);
}

}  // namespace fingerturn
