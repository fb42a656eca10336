#include "score/timeline.hpp"
#include "text/numbers.hpp"
#include "write/excerpt/changed_comments.hpp"
#include "write/passage/passage.hpp"
#include "write/shared/note_words.hpp"

#include <span>
#include <string_view>

#include <fmt/core.h>

namespace fingerturn {
namespace {

using Changed = std::span<const ChangedTurn>;

/// A passage of the score and what was cut out of it.
struct Cut {
  const Passage& whole;
  const Passage& here;

  [[nodiscard]] const Line& line_of(Hand hand) const { return *line_of_hand(whole, hand); }
  [[nodiscard]] const Line& line_here(Hand hand) const { return *line_of_hand(here, hand); }
};

/// "at the beginning of bar 5", "on beat 2.5 of bar 5" or "as number 3 in bar 5".
std::string place_words(const Passage& passage, const Line& line, std::size_t event) {
  const std::vector<std::size_t> beginnings = bar_beginnings(line);
  const std::size_t begin = bar_beginning(beginnings, event);
  const std::int32_t bar = line.events[event].bar;
  if (event == begin) return fmt::format("at the beginning of bar {}", bar);
  const std::optional<Fraction> beat = beat_of(passage, line, event, beginnings);
  if (beat) return fmt::format("on beat {} of bar {}", beat_text(*beat), bar);
  return fmt::format("as number {} in bar {}", event - begin + 1, bar);
}

std::string_view crossing_words(Crossing crossing) {
  switch (crossing) {
    case Crossing::thumb_under:
      return ", the thumb passing under";
    case Crossing::finger_over_thumb:
      return ", passing over the thumb";
    case Crossing::finger_crossing:
      return ", the fingers crossing";
    case Crossing::none:
      break;
  }
  return "";
}

/// "double, swinging right and turning left, the thumb passing under"
std::string turn_words(const EventAnalysis& entry, Hand hand) {
  std::string words(name_of(entry.rotation));
  if (entry.prepare) words += fmt::format(", swinging {} and", name_of(*entry.prepare));
  if (entry.side) {
    words += fmt::format("{} turning {}", entry.prepare ? "" : ",",
                         name_of(direction_of(hand, *entry.side)));
  }
  return words + std::string(crossing_words(entry.crossing));
}

/// What came before it in the score, or decided it otherwise. Only a single is prepared by it.
std::string cause_words(const ChangedTurn& changed, const Line& line) {
  if (!changed.after) return ", for what follows there";
  const bool prepared = changed.in_score->rotation == Rotation::single_rotation;
  return fmt::format(", {} {} in bar {}", prepared ? "prepared by" : "after",
                     event_words(line, *changed.after), line.events[*changed.after].bar);
}

/// The notes and their place: "C5:5 at the beginning of bar 5, left hand,".
std::string subject_words(const Cut& cut, const ChangedTurn& changed) {
  const Line& line = cut.line_of(changed.hand);
  const std::string notes = changed.in_score
                                ? event_words(line, changed.event_in_score)
                                : event_words(cut.line_here(changed.hand), changed.here.event);
  const std::string hand =
      cut.here.lines.size() > 1 ? fmt::format(", {} hand,", to_string(line.hand)) : "";
  return fmt::format("In the score {} {}{}", notes,
                     place_words(cut.whole, line, changed.event_in_score), hand);
}

/// What it is in the excerpt: "Here it is double, ..." or, where a tie is cut, "Here C5:1+E5:3
/// ...".
std::string here_words(const Cut& cut, const ChangedTurn& changed, bool several) {
  const Line& line = cut.line_here(changed.hand);
  const std::string turn = turn_words(changed.here, line.hand);
  const std::string notes = event_words(line, changed.here.event);
  const bool tie_is_cut = notes != event_words(cut.line_of(changed.hand), changed.event_in_score);
  if (tie_is_cut) return fmt::format("Here {} is struck: {}.", notes, turn);
  return fmt::format("Here {} {}.", several ? "they are" : "it is", turn);
}

/// One sentence for events one after another that change in the same way.
std::string sentence_of(const Cut& cut, Changed run) {
  const ChangedTurn& first = run.front();
  std::string words = subject_words(cut, first);
  if (!first.in_score) {
    return words + " is held over from before. " + here_words(cut, first, false);
  }
  const Line& line = cut.line_of(first.hand);
  std::string after = " is";
  if (run.size() == 2) after = " and the next are";
  if (run.size() > 2) after = fmt::format(" and the {} after it are", run.size() - 1);
  return fmt::format("{}{} {}{}. {}", words, after, turn_words(*first.in_score, line.hand),
                     cause_words(first, line), here_words(cut, first, run.size() > 1));
}

bool turns_alike(const EventAnalysis& one, const EventAnalysis& other) {
  return one.rotation == other.rotation && one.side == other.side && one.crossing == other.crossing;
}

/// Whether a change follows another at the next event and is of the same kind.
bool continues(const ChangedTurn& before, const ChangedTurn& changed) {
  return before.hand == changed.hand && before.here.index + 1 == changed.here.index &&
         before.in_score && changed.in_score && turns_alike(*before.in_score, *changed.in_score) &&
         turns_alike(before.here, changed.here);
}

}  // namespace

std::string changed_comments(const Passage& whole, const Passage& here,
                             std::span<const ChangedTurn> changed) {
  const Cut cut{whole, here};
  std::string out;
  for (std::size_t begin = 0, end = 0; begin < changed.size(); begin = end) {
    end = begin + 1;
    while (end < changed.size() && continues(changed[end - 1], changed[end])) ++end;
    out += comment_lines(sentence_of(cut, changed.subspan(begin, end - begin)));
  }
  return out;
}

std::string write_excerpt(const Score& score, const Excerpt& excerpt) {
  std::vector<std::string> comments;
  for (std::size_t p = 0; p < excerpt.passages.size(); ++p) {
    const PassageExcerpt& passage = excerpt.passages[p];
    comments.push_back(
        changed_comments(score.passages[passage.of], excerpt.score.passages[p], passage.changed));
  }
  return write_passage(excerpt.score, comments);
}

}  // namespace fingerturn
