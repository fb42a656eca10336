#include "views/find/words.hpp"

#include "fingerturn/rule.hpp"
#include "text/utf8.hpp"
#include "text/words.hpp"
#include "views/interval_names.hpp"

#include <algorithm>
#include <array>
#include <iterator>
#include <utility>

#include <fmt/format.h>

namespace fingerturn {
namespace {

/// A word that stands for itself.
struct PlainWord {
  std::string_view word;
  std::string_view meaning;
  WantedEvent wanted;
};

const std::vector<PlainWord>& plain_words() {
  static const std::vector<PlainWord> kWords{
      {".", "anything", {}},
      {"preparatory", "the kind of turn", {.rotation = Rotation::preparatory}},
      {"single", "the kind of turn", {.rotation = Rotation::single_rotation}},
      {"double", "the kind of turn", {.rotation = Rotation::double_rotation}},
      {"level", "the kind of turn", {.rotation = Rotation::level}},
      {"undetermined", "the kind of turn", {.rotation = Rotation::undetermined}},
      {"left", "the turn, as the player sees it", {.turn = Direction::left}},
      {"right", "the turn, as the player sees it", {.turn = Direction::right}},
      {"toward-thumb", "the side of the hand that goes down", {.side = Side::toward_thumb}},
      {"toward-fifth", "the side of the hand that goes down", {.side = Side::toward_fifth}},
      {"thumb-under", "what passes", {.crossing = Crossing::thumb_under}},
      {"finger-over-thumb", "what passes", {.crossing = Crossing::finger_over_thumb}},
      {"finger-crossing", "what passes", {.crossing = Crossing::finger_crossing}},
      {"passing", "any of these three", {.passes = true}},
      {"in", "the hand goes in between the black keys, or comes out", {.in_out = InOut::in}},
      {"out", "the hand goes in between the black keys, or comes out", {.in_out = InOut::out}},
      {"white", "the colour of all keys that are struck", {.keys = KeyColour::white}},
      {"black", "the colour of all keys that are struck", {.keys = KeyColour::black}},
      {"note", "how much is struck: one note, two, or three and more", {.notes = 1}},
      {"double-note", "how much is struck: one note, two, or three and more", {.notes = 2}},
      {"chord", "how much is struck: one note, two, or three and more", {.notes = 3}},
      {"up", "how the lowest note lies from that before", {.move = {.way = 1}}},
      {"down", "how the lowest note lies from that before", {.move = {.way = -1}}},
      {"same-key", "how the lowest note lies from that before", {.move = {.semitones = 0}}},
      {"hands-differ", "one hand is single there and the other double", {.hands_differ = true}},
  };
  return kWords;
}

/// Joins what two words ask for in one thing; false where nothing can be both.
template <typename Value>
bool join(const std::optional<Value>& other, std::optional<Value>& wanted) {
  if (!other) return true;
  if (wanted && *wanted != *other) return false;
  wanted = other;
  return true;
}

bool join(const WantedMove& other, WantedMove& wanted) {
  return join(other.letters, wanted.letters) && join(other.semitones, wanted.semitones) &&
         join(other.way, wanted.way);
}

/// Joins what two words ask for; false where nothing can be both.
bool join(const WantedEvent& other, WantedEvent& wanted) {
  if (!other.fingers.empty()) {
    if (!wanted.fingers.empty() && wanted.fingers != other.fingers) return false;
    wanted.fingers = other.fingers;
  }
  wanted.passes |= other.passes;
  wanted.hands_differ |= other.hands_differ;
  wanted.rules.insert(wanted.rules.end(), other.rules.begin(), other.rules.end());
  return join(other.rotation, wanted.rotation) && join(other.turn, wanted.turn) &&
         join(other.side, wanted.side) && join(other.crossing, wanted.crossing) &&
         join(other.notes, wanted.notes) && join(other.keys, wanted.keys) &&
         join(other.in_out, wanted.in_out) && join(other.move, wanted.move) &&
         join(other.shape, wanted.shape);
}

/// "4", "1+3+5", "1+.+5"; none where it is anything else.
std::optional<WantedEvent> fingers_in(std::string_view word) {
  if (word.empty()) return std::nullopt;
  WantedEvent wanted;
  for (std::size_t at = 0; at < word.size(); at += 2) {
    const bool is_finger = word[at] >= '0' + kThumb && word[at] <= '0' + kFifth;
    const bool goes_on = at + 1 < word.size();
    if (!is_finger && word[at] != '.') return std::nullopt;
    if (goes_on && (word[at + 1] != '+' || at + 2 == word.size())) return std::nullopt;
    wanted.fingers.push_back(is_finger ? std::optional(static_cast<Finger>(word[at] - '0'))
                                       : std::nullopt);
  }
  return wanted;
}

/// Takes a word and its hyphen away from the beginning of a text; false where it is not there.
bool take_word(std::string_view& text, std::string_view word) {
  if (!text.starts_with(word) || !text.substr(word.size()).starts_with('-')) return false;
  text.remove_prefix(word.size() + 1);
  return true;
}

/// "third", "up-third", "down-minor-third".
std::optional<WantedEvent> move_in(std::string_view word) {
  WantedMove move;
  if (take_word(word, "up")) {
    move.way = 1;
  } else if (take_word(word, "down")) {
    move.way = -1;
  }
  const std::size_t hyphen = word.find('-');
  const bool has_quality = hyphen != std::string_view::npos;
  const auto letters = letters_of_interval(has_quality ? word.substr(hyphen + 1) : word);
  if (!letters) return std::nullopt;
  move.letters = letters;
  if (has_quality) {
    move.semitones = semitones_of_interval(word.substr(0, hyphen), *letters);
    if (!move.semitones) return std::nullopt;
  }
  return WantedEvent{.move = move};
}

/// "thirds", of double notes.
std::optional<WantedEvent> double_notes_in(std::string_view word) {
  if (!word.ends_with('s')) return std::nullopt;
  const auto letters = letters_of_interval(word.substr(0, word.size() - 1));
  if (!letters || *letters == 0) return std::nullopt;
  return WantedEvent{.shape = std::vector{*letters}};
}

std::optional<WantedEvent> meaning_of(std::string_view word) {
  const auto plain = std::ranges::find(plain_words(), word, &PlainWord::word);
  if (plain != plain_words().end()) return plain->wanted;
  if (auto fingers = fingers_in(word)) return fingers;
  if (auto move = move_in(word)) return move;
  if (auto shape = double_notes_in(word)) return shape;
  const Rule* rule = find_rule(word);
  return rule != nullptr ? std::optional(WantedEvent{.rules = {rule->id}}) : std::nullopt;
}

std::string hint_for(std::string_view word) {
  std::vector<std::string_view> known;
  for (const PlainWord& plain : plain_words()) known.push_back(plain.word);
  std::ranges::copy(kIntervalNumbers, std::back_inserter(known));
  for (const Rule& rule : rules()) known.push_back(rule.id);
  const std::string_view nearest = nearest_word(word, known);
  return nearest.empty() ? "fingerturn find --help lists them"
                         : fmt::format("did you mean \"{}\"?", nearest);
}

}  // namespace

std::vector<FindWord> find_words() {
  std::vector<FindWord> words;
  for (const PlainWord& plain : plain_words()) {
    words.push_back({plain.word, plain.meaning});
  }
  return words;
}

std::string add_word(std::string_view word, WantedEvent& wanted) {
  constexpr std::size_t kMostShown = 40;
  const std::string shown = printable(word.substr(0, kMostShown));
  const std::optional<WantedEvent> meaning = meaning_of(word);
  if (!meaning) {
    return fmt::format(
        "expected a word of the reports, fingers, an interval or a rule, found "
        "\"{}\"; {}",
        shown, hint_for(word));
  }
  if (join(*meaning, wanted)) return {};
  return fmt::format(
      "expected words that can hold of one event, and \"{}\" cannot with those "
      "before it; leave a blank between events",
      shown);
}

}  // namespace fingerturn
