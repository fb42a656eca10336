#include "read/notation/note.hpp"

#include "read/notation/cures.hpp"
#include "read/notation/octave_question.hpp"
#include "read/notation/value.hpp"
#include "score/spelling.hpp"

#include <algorithm>
#include <string>
#include <string_view>
#include <utility>

#include <fmt/core.h>

namespace fingerturn {
namespace {

bool is_digit(char c) { return c >= '0' && c <= '9'; }

/// Reads one note of a word from the front of `rest`. Each step reports its own mistake and then
/// gives up the note.
class NoteReader {
 public:
  NoteReader(TextPiece word, NotesBefore& before, Reporter& reporter)
      : word_(word), rest_(word), before_(before), reporter_(reporter) {}

  std::optional<Note> read() {
    Note note;
    note.span = word_.span();
    const std::optional<Pitch> last = before_.pitch;
    const bool whole =
        read_pitch(note.pitch) && read_fingers(note) && read_length(note) && read_tie(note);
    if (!whole) return std::nullopt;
    if (octave_left_out_) ask_for_octave(note, *last, word_, before_, reporter_);
    before_.earlier = last;
    before_.finger = note.changes_to.empty() ? note.finger : std::optional(note.changes_to.back());
    return note;
  }

 private:
  [[nodiscard]] char next() const { return rest_.text.empty() ? '\0' : rest_.text.front(); }
  void skip(std::size_t bytes) { rest_ = rest_.from(bytes); }
  /// What is wrong here, to the end of the note.
  [[nodiscard]] TextPiece here() const { return rest_.text.empty() ? word_ : rest_; }

  bool fail(KnownCode code, TextPiece place, const std::string& expected, std::string hint) {
    reporter_.report(code, place.span(),
                     fmt::format("expected {}, found {}", expected, quoted(place.text)),
                     std::move(hint));
    return false;
  }

  bool read_pitch(Pitch& pitch) {
    const std::optional<Step> step = step_of_letter(next());
    const std::string_view name = letters_of(rest_.text);
    if (is_named_by_syllable(rest_.text)) {
      if (!before_.pitch) before_.pitch = Pitch{};
      return fail("note", word_, "a note as in F#4:1 or Bb3:2", cure_for_word(rest_.text));
    }
    if (const std::string here = named_in_german(name); !here.empty()) {
      if (!before_.pitch) before_.pitch = Pitch{};  // told once, without a word on octaves after it
      return fail("note", word_, "a note as in F#4:1 or Bb3:2",
                  fmt::format("the note called {} in German is {} here", name, here));
    }
    if (!step) return fail_letter();
    skip(1);
    const AccidentalPrefix accidental = read_accidental(rest_.text);
    skip(accidental.bytes);
    if (read_accidental(rest_.text).bytes > 0) {
      return fail("accidental", word_, "one accidental", "use #, b, ##, x, bb or n");
    }
    const bool has_sign = accidental.bytes > 0;
    pitch = {*step, has_sign ? accidental.alter : alter_in_key(before_.key, *step), 0};
    if (!read_octave(pitch)) return false;
    if (has_sign) {
      before_.signs.write(pitch, before_.bar);
    } else if (const auto earlier = before_.signs.other_than(pitch, before_.bar)) {
      ask_for_sign(pitch, *earlier);
    }
    return true;
  }

  /// Who wrote a sign in the bar may think that it holds on, as it does in print.
  void ask_for_sign(Pitch pitch, std::int8_t earlier) {
    std::int32_t& asked = before_.asked.at(static_cast<std::size_t>(pitch.step));
    if (asked == before_.bar) return;
    asked = before_.bar;
    const std::string letter(1, kStepLetters[static_cast<std::size_t>(pitch.step)]);
    reporter_.report(
        "sign", word_.span(),
        fmt::format("expected a sign after {0}, as {0}{1} stands earlier in this bar, found none",
                    letter, accidental_text(earlier)),
        fmt::format("a sign holds for its own note only, so this is read as {0}{1}; write {0}{1} "
                    "or {0}{2}",
                    letter, accidental_text(pitch.alter), accidental_text(earlier)));
  }

  bool fail_letter() {
    const bool is_h = next() == 'H' || next() == 'h';
    const std::string_view after = rest_.text.substr(1);
    const bool german = is_h && (after.empty() || is_digit(after.front()) || after.front() == ':' ||
                                 after.front() == '~');
    std::string cure = german ? std::string(kGermanH) : cure_for_word(rest_.text);
    if (cure.empty()) cure = "a note is a letter, its octave and a finger, as in C4:1 or Bb3:2";
    return fail("note", word_, "a note from A to G", std::move(cure));
  }

  bool read_octave(Pitch& pitch) {
    std::size_t length = next() == '-' ? 1 : 0;
    while (length < rest_.text.size() && is_digit(rest_.text[length])) ++length;
    const std::string_view digits = rest_.text.substr(0, length);
    skip(length);
    if (digits.empty()) {
      if (!take_nearest_octave(pitch)) return false;
    } else if (digits.size() == 1 && is_digit(digits.front())) {
      pitch.octave = static_cast<std::int8_t>(digits.front() - '0');
    } else {
      return fail_range();
    }
    if (!on_the_piano(pitch)) return fail_range();
    before_.pitch = pitch;
    return true;
  }

  bool fail_range() {
    return fail("pitch-range", word_, "a pitch from A0 to C8", "C4 is middle C");
  }

  bool take_nearest_octave(Pitch& pitch) {
    if (!before_.pitch) {
      const std::string letter(word_.text.substr(0, word_.text.size() - rest_.text.size()));
      const char finger = finger_meant(rest_.text);
      fail("octave", word_, "an octave number with the first pitch of a hand",
           fmt::format("write {0}4{1} for the {0} at or above middle C{2}", letter,
                       finger == '\0' ? "" : fmt::format(":{}", finger),
                       finger == '\0' ? "" : "; the finger stands after a colon"));
      // From here on the octaves are counted from somewhere, so that one slip is told once.
      before_.pitch = Pitch{pitch.step, pitch.alter, 4};
      return false;
    }
    octave_left_out_ = true;
    constexpr int kMostLetterSteps = 3;
    pitch.octave = before_.pitch->octave;
    const int steps = letter_position(pitch) - letter_position(*before_.pitch);
    if (steps > kMostLetterSteps) --pitch.octave;
    if (steps < -kMostLetterSteps) ++pitch.octave;
    return true;
  }

  bool read_fingers(Note& note) {
    if (next() != ':') return true;
    skip(1);
    if (next() == '?') {
      skip(1);
      return true;
    }
    Finger finger = 0;
    if (!read_finger(finger)) return false;
    note.finger = finger;
    while (next() == '>') {
      skip(1);
      const Finger before = finger;
      const TextPiece place = here();
      if (!read_finger(finger)) return false;
      if (finger == before) warn_of_same_finger(place.part(0, 1));
      note.changes_to.push_back(finger);
    }
    note.suggested = next() == '?';
    if (note.suggested) skip(1);
    return true;
  }

  bool read_finger(Finger& finger) {
    std::size_t length = 0;
    while (length < rest_.text.size() && is_digit(rest_.text[length])) ++length;
    const TextPiece found = length == 0 ? here() : rest_.part(0, length);
    const bool in_range = length == 1 && found.text.front() >= '1' && found.text.front() <= '5';
    if (!in_range) return fail_finger(found, length);
    finger = static_cast<Finger>(found.text.front() - '0');
    skip(1);
    return true;
  }

  void warn_of_same_finger(TextPiece place) {
    reporter_.report(
        "same-finger", place.span(),
        fmt::format("expected a change to another finger, found {} again", place.text));
  }

  bool fail_finger(TextPiece found, std::size_t digits) {
    std::string hint = "write one digit after the colon, as in F:4, or :? where it is not known";
    const bool two_fingers =
        digits == 2 && found.text.find_first_of("06789") == std::string_view::npos;
    if (two_fingers) {
      hint = fmt::format("write a silent change of finger as {}>{}", found.text[0], found.text[1]);
    }
    if (rest_.text.empty()) {
      reporter_.report(
          "finger-range", word_.span(),
          fmt::format("expected a finger from 1 to 5 after {}, found nothing", quoted(word_.text)),
          std::move(hint));
      return false;
    }
    return fail("finger-range", found, "a finger from 1 to 5", std::move(hint));
  }

  /// How long the key stays down, where that is longer than the word's value: C3:5=1/2.
  bool read_length(Note& note) {
    if (next() != '=') return true;
    skip(1);
    const std::size_t length = std::min(rest_.text.find('~'), rest_.text.size());
    if (length == 0) return fail("note-value", word_, "a note value after =", kLengthHint);
    note.lasts = read_note_value(rest_.part(0, length), reporter_);
    skip(length);
    return note.lasts.has_value();
  }

  bool read_tie(Note& note) {
    note.tied = next() == '~';
    if (note.tied) skip(1);
    if (rest_.text.empty()) return true;
    std::string hint = "put a blank between notes";
    if (note.tied && next() == ':') hint = "write the finger before the tie, as in C4:1~";
    if (next() == '-' && note.finger) hint = "write a silent change of finger as 4>1";
    if (next() == ':' && note.finger && !note.tied) hint = kOneFinger;
    if (std::string cure = cure_for_finger(word_.text, rest_.text); !note.finger && !cure.empty()) {
      hint = std::move(cure);
    }
    if (next() == '?') hint = "a finger that is not known is :?, a suggested one is :2?";
    return fail("note-end", rest_, "the end of the note", std::move(hint));
  }

  static constexpr const char* kOneFinger =
      "a note has one colon and one finger, as in G:2; a silent change is 2>3";
  static constexpr const char* kLengthHint =
      "a key that stays down is written as in C3:5=1/2, here for a half note";

  TextPiece word_;
  TextPiece rest_;
  bool octave_left_out_ = false;
  NotesBefore& before_;
  Reporter& reporter_;
};

/// A hand strikes a key once: of notes on the same key the first counts. `notes` are in the order
/// of their keys.
void keep_one_on_each_key(std::vector<Note>& notes, Reporter& reporter) {
  const auto same_key = [&reporter](const Note& kept, const Note& again) {
    if (midi_number(kept.pitch) != midi_number(again.pitch)) return false;
    reporter.report(
        "same-key", again.span,
        fmt::format("expected each key once in a chord, found {} again", to_string(again.pitch)));
    return true;
  };
  notes.erase(std::unique(notes.begin(), notes.end(), same_key), notes.end());
}

/// Where the part of a word ends that stands before a sign; signs in note values join nothing.
std::size_t part_end(std::string_view word, char sign) {
  for (std::size_t i = 0; i < word.size(); ++i) {
    const bool in_value = i + 1 < word.size() && is_digit(word[i + 1]) && sign == '/';
    if (word[i] == sign && !in_value) return i;
  }
  return std::string_view::npos;
}

/// Goes through the parts of a word that are joined by a sign.
template <typename Each>
void for_each_part(TextPiece word, char sign, const Each& each) {
  for (std::size_t end = 0; end != std::string_view::npos;) {
    end = part_end(word.text, sign);
    each(word.part(0, end));
    if (end != std::string_view::npos) word = word.from(end + 1);
  }
}

bool has_empty_member(TextPiece chord) {
  bool found = false;
  for_each_part(chord, '+', [&](TextPiece member) { found |= member.text.empty(); });
  return found;
}

void report_empty_member(TextPiece word, Reporter& reporter) {
  const bool chord = word.text.find('+') != std::string_view::npos;
  const bool rolled = word.text.find('/') != std::string_view::npos;
  reporter.report("note", word.span(),
                  fmt::format("expected a note {}, found {}",
                              rolled  ? "at both sides of /"
                              : chord ? "at both sides of +"
                                      : "after ^",
                              quoted(word.text)),
                  rolled  ? "the notes of a rolled chord are joined by /, as in C4:1/E4:3/G4:5"
                  : chord ? "the notes of a chord are joined by +, as in C4:1+E4:3"
                          : "a grace note is written as in ^D5:3 C5:2");
}

/// Notes that are struck together; none where one of them is not understood.
std::vector<Note> read_chord(TextPiece chord, NotesBefore& before, Reporter& reporter) {
  std::vector<Note> notes;
  bool whole = true;
  for_each_part(chord, '+', [&](TextPiece member) {
    if (std::optional<Note> note = NoteReader(member, before, reporter).read()) {
      notes.push_back(std::move(*note));
    } else {
      before.finger.reset();
      whole = false;
    }
    before.same_word = true;
  });
  if (!whole) return {};
  if (notes.size() == 1) return notes;  // as mostly; sorting would take memory even so
  std::stable_sort(notes.begin(), notes.end(), [](const Note& left, const Note& right) {
    return midi_number(left.pitch) < midi_number(right.pitch);
  });
  keep_one_on_each_key(notes, reporter);
  return notes;
}

}  // namespace

std::optional<NoteWord> read_note_word(TextPiece word, NotesBefore& before, Reporter& reporter) {
  NoteWord read;
  read.grace = word.text.starts_with('^');
  bool whole = true;
  bool has_empty = false;
  before.same_word = false;
  for_each_part(read.grace ? word.from(1) : word, '/', [&](TextPiece chord) {
    has_empty = has_empty || has_empty_member(chord);
    if (has_empty) return;
    read.struck.push_back(read_chord(chord, before, reporter));
    whole = whole && !read.struck.back().empty();
  });
  if (has_empty) report_empty_member(word, reporter);
  return whole && !has_empty ? std::optional(std::move(read)) : std::nullopt;
}

}  // namespace fingerturn
