#include "write/shared/passage_words.hpp"

#include "text/file_name.hpp"
#include "text/numbers.hpp"
#include "text/utf8.hpp"
#include "text/words.hpp"
#include "write/shared/demand_words.hpp"
#include "write/shared/note_words.hpp"
#include "write/text/signs.hpp"

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <cstdint>

#include <fmt/format.h>

namespace fingerturn {
namespace {

std::string hands_words(const Passage& passage) {
  if (passage.lines.empty()) return "no notes";
  if (passage.lines.size() > 1) return "both hands";
  return to_string(passage.lines.front().hand) + " hand";
}

std::string tempo_words(const Tempo& tempo) {
  return fmt::format("{} = {}", spoken_value(tempo.beat_unit), tempo.per_minute);
}

/// A bar and how often the kinds differ in it.
struct Places {
  std::int32_t bar = 0;
  std::size_t count = 0;
};

std::vector<Places> places_of(const Line& right, const Together& together) {
  std::vector<Places> places;
  for (const KindsDiffer& differ : together.kinds_differ) {
    const std::int32_t bar = right.events[differ.right_event].bar;
    if (places.empty() || places.back().bar != bar) places.push_back({bar, 0});
    ++places.back().count;
  }
  return places;
}

/// "in bars 1 (twice), 2 and 4": the first bars in which the kinds differ.
std::string places_words(const std::vector<Places>& places) {
  constexpr std::size_t kMostBars = 12;
  std::string words = places.size() == 1 ? "in bar" : "in bars";
  for (std::size_t i = 0; i < places.size() && i < kMostBars; ++i) {
    words += fmt::format("{} {}", i > 0 ? "," : "", places[i].bar);
    if (places[i].count > 1) words += fmt::format(" ({} times)", places[i].count);
  }
  if (places.size() > kMostBars) words += fmt::format(" and {} more", places.size() - kMostBars);
  return words;
}

std::string carried_words(const Totals& totals) {
  const std::string_view keys = totals.carried == 1 ? "key" : "keys";
  if (totals.carried == totals.largest_carry) {
    return fmt::format("carried {} white {}", totals.carried, keys);
  }
  return fmt::format("carried {} white {}, at most {} at once", totals.carried, keys,
                     totals.largest_carry);
}

/// "E4 in bar 2", with the hand where both play.
std::string place_words(const AnalysedPassage& passage, const AnalysedLine& line,
                        std::size_t place) {
  const Event& event = line.written().events[place];
  const std::string hand = passage.size() > 1 ? to_string(line.hand()) + " hand, " : "";
  return fmt::format("{}{} in bar {}", hand, struck_notes_words(event), event.bar);
}

/// The beat in which a passage's tempo is written, in whole notes; else a quarter.
Fraction written_beat(const AnalysedPassage& passage) {
  const bool as_written = !passage.found().quarters_per_minute && !passage.written().tempos.empty();
  return as_written ? passage.written().tempos.front().value.beat_unit : Fraction{1, 4};
}

/// " (left hand, E3 in bar 2; right hand up to 150)": the note that sets a passage's tempo of full
/// swings, and that of the other hand.
std::string setting_words(const AnalysedPassage& passage, double tempo) {
  std::string first;
  std::string others;
  for (const AnalysedLine line : passage) {
    const Totals& totals = line.found().totals;
    if (!totals.full_swing_tempo) continue;
    if (first.empty() && *totals.full_swing_tempo == tempo) {
      first = place_words(passage, line, totals.full_swing_event);
    } else {
      others += fmt::format("; {} hand up to {}", to_string(line.hand()),
                            in_written_beat(passage, *totals.full_swing_tempo));
    }
  }
  return first.empty() ? "" : fmt::format(" ({}{})", first, others);
}

/// "; at this tempo to 62 % of the full size at G4 in bar 3", where they do shrink.
std::string size_words(const AnalysedPassage& passage) {
  constexpr double kPercent = 100;
  std::optional<AnalysedLine> smallest;
  for (const AnalysedLine line : passage) {
    const std::optional<double>& size = line.found().totals.least_swing_size;
    if (size && (!smallest || *size < *smallest->found().totals.least_swing_size)) smallest = line;
  }
  if (!smallest || *smallest->found().totals.least_swing_size >= 1) return {};
  const Totals& totals = smallest->found().totals;
  return fmt::format(", here to {:.0f} % at {}", std::floor(*totals.least_swing_size * kPercent),
                     place_words(passage, *smallest, totals.least_swing_event));
}

/// What a bar asks, in words: "bar 3 with 5 points (4 doubles in rows, 1 passing)".
std::string bar_words(const BarDemand& demand) {
  return fmt::format("bar {} with {} points ({})", demand.bar, demand.points,
                     fmt::join(demand_parts(demand, DemandWorth::told), ", "));
}

void add_places(const AnalysedPassage& passage, std::vector<std::string>& sentences) {
  const std::vector<PracticePlace>& places = *passage.found().places;
  if (!std::ranges::all_of(passage.written().lines, &Line::is_fingered)) {
    sentences.emplace_back(
        "Fingers are missing, and what asks most may be there: --suggest fills them in.");
  }
  if (places.empty()) {
    sentences.emplace_back(
        "No bar stands out by what it asks, so no place is shown (fingerturn explain places).");
    return;
  }
  sentences.push_back(fmt::format(
      "Shown {} that ask{} most, with the bars around, by a sum of ours (fingerturn explain "
      "places):",
      places.size() == 1 ? "is the place" : fmt::format("are the {} places", places.size()),
      places.size() == 1 ? "s" : ""));
  for (const PracticePlace& place : places) {
    std::vector<std::string> asking;
    for (const BarDemand& demand : place.asking) asking.push_back(bar_words(demand));
    sentences.push_back(
        sentence_of(fmt::format("{} for {}", to_string(place.bars), fmt::join(asking, "; "))));
  }
}

}  // namespace

std::string in_written_beat(const AnalysedPassage& passage, double quarters_per_minute) {
  constexpr double kInWhole = 4;
  return tempo_not_above(quarters_per_minute / (kInWhole * to_double(written_beat(passage))));
}

std::string tempo_equation(const AnalysedPassage& passage, double quarters_per_minute) {
  return fmt::format("{} = {}", spoken_value(written_beat(passage)),
                     in_written_beat(passage, quarters_per_minute));
}

std::string_view caution() noexcept {
  return "This describes a way of moving at the piano and is no medical advice. Stop at pain, "
         "numbness or tingling. Learn rotation with a qualified teacher, and see a clinician about "
         "symptoms that stay. The swings are shown large so that they can be learned; at speed "
         "they shrink. The sound and the music come first.";
}

std::string_view brief_caution() noexcept {
  return "No medical advice: stop at pain, learn with a teacher, see clinicians.";
}

std::string_view title_of(const AnalysedScore& analysed, const Passage& passage) noexcept {
  return passage.title.empty() ? name_without_path(analysed.name()) : passage.title;
}

std::string_view title_of(const AnalysedScore& analysed) noexcept {
  if (analysed.size() != 1) return name_without_path(analysed.name());
  return title_of(analysed, analysed[0].written());
}

std::vector<std::string> head_parts(const AnalysedPassage& passage) {
  const Passage& written = passage.written();
  const PassageAnalysis& analysis = passage.found();
  std::vector<std::string> parts;
  if (!written.composer.empty()) parts.push_back(printable(written.composer));
  if (!written.source.empty()) parts.push_back(printable(written.source));
  parts.push_back(hands_words(written));
  if (!written.meters.empty()) parts.push_back(to_string(written.meters.front().value));
  if (analysis.quarters_per_minute) {
    parts.push_back(
        fmt::format("quarter = {}, as asked for", tempo_number(*analysis.quarters_per_minute)));
  } else if (!written.tempos.empty()) {
    parts.push_back(tempo_words(written.tempos.front().value));
  }
  if (analysis.reach_semitones) {
    parts.push_back(fmt::format("reach {} semitones", *analysis.reach_semitones));
  }
  if (analysis.bars) parts.push_back(to_string(*analysis.bars));
  return parts;
}

std::vector<std::string> opening_sentences(const AnalysedPassage& passage) {
  std::vector<std::string> sentences = passage.written().remarks;
  for (const FromBar<std::string>& note : passage.written().notes) {
    if (!passage.found().shows(note.bar)) continue;
    sentences.push_back(fmt::format("bar {}: {}", note.bar, note.value));
  }
  if (passage.found().places) add_places(passage, sentences);
  return sentences;
}

bool has_no_places(const AnalysedPassage& passage) noexcept {
  return passage.found().places && passage.found().places->empty();
}

std::string head_line(const AnalysedPassage& passage) {
  std::string line;
  for (const std::string& part : head_parts(passage)) {
    if (!line.empty()) line += kUnicodeSigns.between;
    line += part;
  }
  return line;
}

std::string totals_words(const Totals& totals) {
  std::vector<std::string> parts{counted(totals.events, "event", "events")};
  add_counted(parts, totals.preparatory, "preparatory", "preparatory");
  add_counted(parts, totals.single_rotations, "single", "single");
  add_counted(parts, totals.double_rotations, "double", "double");
  add_counted(parts, totals.level_events, "level", "level");
  add_counted(parts, totals.undetermined, "undetermined", "undetermined");
  add_counted(parts, totals.swings, "swing", "swings");
  add_counted(parts, totals.crossings, "crossing", "crossings");
  if (totals.longest_double_run > 1) {
    parts.push_back(fmt::format("longest run of doubles {}", totals.longest_double_run));
  }
  if (totals.carried > 0) parts.push_back(carried_words(totals));
  add_counted(parts, totals.moves_in, "move in", "moves in");
  add_counted(parts, totals.moves_out, "move out", "moves out");
  if (totals.arcs > 1) parts.push_back(fmt::format("{} arcs", totals.arcs));
  return fmt::format("{}", fmt::join(parts, ", "));
}

std::string full_swing_tempo_words(const AnalysedPassage& passage) {
  const std::optional<double>& tempo = passage.found().full_swing_tempo;
  if (!tempo) return {};
  return "full swings up to " + tempo_equation(passage, *tempo);
}

std::string full_swing_words(const AnalysedPassage& passage) {
  const std::string words = full_swing_tempo_words(passage);
  if (words.empty()) return {};
  return words + setting_words(passage, *passage.found().full_swing_tempo) +
         "; faster, they shrink" + size_words(passage);
}

std::string together_words(const AnalysedPassage& passage) {
  if (!passage.found().together || passage.found().together->onsets == 0) return {};
  const Line& right = passage.written().lines.front();
  const Together& together = *passage.found().together;
  std::string words = fmt::format(
      "of {} note{} struck together with a side in both hands, the forearms turn parallel at {} "
      "and contrary at {}",
      together.onsets, together.onsets == 1 ? "" : "s", together.parallel, together.contrary);
  if (together.kinds_differ.empty()) return words;
  return words + "; one hand is single and the other double " +
         places_words(places_of(right, together));
}

std::string_view hand_heading(Hand hand) noexcept {
  return hand == Hand::right ? "Right hand" : "Left hand";
}

std::string_view hands_apart_words() noexcept {
  return "Not all note values are known, so the hands stand one after the other and the notes "
         "evenly.";
}

}  // namespace fingerturn
