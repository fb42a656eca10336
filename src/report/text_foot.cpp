#include "report/text_foot.hpp"

#include "model/utf8.hpp"
#include "model/wrap.hpp"
#include "report/cues.hpp"
#include "report/note_words.hpp"
#include "report/signs.hpp"
#include "report/text_grid.hpp"

#include <algorithm>
#include <array>
#include <string_view>
#include <vector>

#include <fmt/format.h>

namespace fingerturn {
namespace {

std::string counted(std::size_t count, std::string_view one, std::string_view many) {
  return fmt::format("{} {}", count, count == 1 ? one : many);
}

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

void see_line(const Line& line, const LineAnalysis& analysis, const std::optional<BarRange>& bars,
              Seen& seen) {
  for (std::size_t place = 0; place < line.events.size(); ++place) {
    if (!bars || bars->contains(line.events[place].bar)) see_event(line, place, seen);
  }
  for (const EventAnalysis& entry : analysis.events) {
    seen.rotations.at(static_cast<std::size_t>(entry.rotation)) = true;
    seen.crossings.at(static_cast<std::size_t>(entry.crossing)) = true;
    seen.carries |= entry.carry.value_or(0) != 0;
    seen.depths |= entry.in_out.has_value();
    seen.sides |= entry.side.has_value();
    seen.open_sides |= !entry.side && entry.rotation != Rotation::level;
  }
}

Seen seen_in(const Report& report) {
  Seen seen;
  for (std::size_t p = 0; p < report.score.passages.size(); ++p) {
    const Passage& passage = report.score.passages[p];
    for (std::size_t l = 0; l < passage.lines.size(); ++l) {
      see_line(passage.lines[l], report.analysis.passages[p].lines[l], report.analysis.bars, seen);
    }
  }
  return seen;
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

std::string carried_words(const Totals& totals) {
  const std::string_view keys = totals.carried == 1 ? "key" : "keys";
  if (totals.carried == totals.largest_carry) {
    return fmt::format("carried {} white {}", totals.carried, keys);
  }
  return fmt::format("carried {} white {}, at most {} at once", totals.carried, keys,
                     totals.largest_carry);
}

/// The room that the names of the events take beside their reasons.
std::size_t width_for_events(const Line& line, const LineAnalysis& analysis,
                             const TextStyle& style) {
  constexpr std::size_t kPartOfLine = 4;
  const std::size_t widest = static_cast<std::size_t>(style.columns) / kPartOfLine;
  std::size_t width = 0;
  for (const EventAnalysis& found : analysis.events) {
    const std::size_t length = event_words(line, found.event).size();
    if (length <= widest) width = std::max(width, length);
  }
  return width;
}

/// An event with a sentence beside it, or below it where the event's name is too long.
std::string sentence_text(const std::string& event, std::size_t width, std::string_view sentence,
                          const TextStyle& style) {
  if (event.size() <= width) {
    return wrapped("  " + padded(event, width) + "  ", sentence, style.columns);
  }
  return "  " + event + '\n' + wrapped(std::string(width + 4, ' '), sentence, style.columns);
}

/// What is said of one event under --detail and --cues.
std::vector<std::string> sentences_of(const EventAnalysis& found, Hand hand,
                                      const TextStyle& style) {
  std::vector<std::string> sentences;
  if (style.cues) sentences.push_back(cue_of(found, hand));
  if (style.detail) sentences.push_back(found.reason);
  return sentences;
}

}  // namespace

std::string labelled(std::string_view label, std::string_view words, const TextStyle& style) {
  if (words.empty()) return {};
  const std::string opening = padded(label, kLabelWidth);
  return emphasised(opening, Emphasis::faint, style.colour) +
         wrapped(opening, words, style.columns).substr(opening.size());
}

std::string totals_text(const LineAnalysis& analysis, const TextStyle& style) {
  const Totals& totals = analysis.totals;
  std::vector<std::string> parts{counted(totals.events, "event", "events")};
  const auto add = [&parts](std::size_t count, std::string_view one, std::string_view many) {
    if (count > 0) parts.push_back(counted(count, one, many));
  };
  add(totals.preparatory, "preparatory", "preparatory");
  add(totals.single_rotations, "single", "single");
  add(totals.double_rotations, "double", "double");
  add(totals.level, "level", "level");
  add(totals.undetermined, "undetermined", "undetermined");
  add(totals.swings, "swing", "swings");
  add(totals.crossings, "crossing", "crossings");
  if (totals.longest_double_run > 1) {
    parts.push_back(fmt::format("longest run of doubles {}", totals.longest_double_run));
  }
  if (totals.carried > 0) parts.push_back(carried_words(totals));
  add(totals.moves_in, "move in", "moves in");
  add(totals.moves_out, "move out", "moves out");
  if (totals.arcs > 1) parts.push_back(fmt::format("{} arcs", totals.arcs));
  std::string text;
  for (const std::string& part : parts) text += (text.empty() ? "" : ", ") + part;
  return labelled(to_string(analysis.hand), text, style);
}

std::string reasons_text(const Line& line, const LineAnalysis& analysis, const TextStyle& style) {
  const std::size_t width = width_for_events(line, analysis, style);
  std::string text;
  std::optional<std::int32_t> bar;
  for (const EventAnalysis& found : analysis.events) {
    const Event& event = line.events[found.event];
    if (bar != event.bar) {
      bar = event.bar;
      text += emphasised(fmt::format("{} hand, bar {}", to_string(line.hand), event.bar),
                         Emphasis::strong, style.colour) +
              '\n';
    }
    std::string name = event_words(line, found.event);
    for (const std::string& sentence : sentences_of(found, line.hand, style)) {
      text += sentence_text(name, width, sentence, style);
      name.clear();
    }
  }
  return text;
}

std::string legend_text(const Report& report, const TextStyle& style) {
  const Seen seen = seen_in(report);
  std::string text = labelled("note", note_sign_words(seen), style);
  text += labelled("finger", finger_sign_words(seen), style);
  text += labelled("rotation", rotation_words(seen), style);
  if (seen.sides) {
    text += labelled("prepare", "the way the forearm swings first, out of which it plays", style);
    text += labelled("play", "the way the forearm turns to play the note", style);
    if (seen.open_sides) text += labelled("", "? = not known", style);
    text += labelled("forearm",
                     "sup = supination, toward the fifth finger; pron = pronation, toward "
                     "the thumb",
                     style);
  }
  text += labelled("crossing", crossing_words(seen), style);
  if (seen.carries) {
    text += labelled(
        "carry", "the way the arm carries the hand, and how many white keys (our model)", style);
  }
  if (seen.depths) {
    text +=
        labelled("depth", "in = further in between the black keys; out = back (our model)", style);
  }
  return text;
}

}  // namespace fingerturn
