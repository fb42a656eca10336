#include "write/passage/bar_text.hpp"

#include "score/keys.hpp"
#include "score/spelling.hpp"
#include "write/shared/note_words.hpp"

#include <cstddef>
#include <optional>
#include <string_view>

namespace fingerturn {
namespace {

std::string_view bar_line_sign(BarLineStyle style) {
  switch (style) {
    case BarLineStyle::single:
      return "|";
    case BarLineStyle::double_bar:
      return "||";
    case BarLineStyle::repeat_start:
      return "|:";
    case BarLineStyle::repeat_end:
      return ":|";
    case BarLineStyle::repeat_both:
      break;
  }
  return ":|:";
}

std::string_view ornament_sign(Ornament ornament) {
  return ornament == Ornament::trill ? "tr" : "trem";
}

/// Writes a line bar by bar; the note value runs on from bar to bar.
class LineWriter {
 public:
  LineWriter(const Line& line, const std::vector<FromBar<KeySignature>>& keys)
      : line_(line), keys_(keys) {}

  /// The bars in their order.
  std::deque<BarText> write() {
    std::deque<BarText> bars;
    for (std::size_t i = 0; i < line_.events.size(); ++i) {
      const Event& event = line_.events[i];
      if (bars.empty() || bars.back().bar != event.bar) bars.push_back({event.bar, {}, false});
      BarText& bar = bars.back();
      add_bar_line(i, bar);
      add_event(i, bar.text);
      last_bar_ = &bar;
    }
    if (last_bar_ != nullptr) close_last_bar(line_.events.size());
    return bars;
  }

 private:
  static void add_word(std::string& text, std::string_view word) {
    if (!text.empty()) text += ' ';
    text += word;
  }

  /// A pitch with the sign that it needs in the key and after the signs of its bar.
  std::string pitch_text(Pitch pitch, std::int32_t bar) {
    for (; next_key_ < keys_.size() && keys_[next_key_].bar <= bar; ++next_key_) {
      key_ = keys_[next_key_].value;
    }
    const bool said_by_key = alter_in_key(key_, pitch.step) == pitch.alter;
    const bool without_sign = said_by_key && !signs_.other_than(pitch, bar);
    if (!without_sign) signs_.write(pitch, bar);
    return std::string(1, kStepLetters[static_cast<std::size_t>(pitch.step)]) +
           (without_sign ? "" : accidental_text(pitch.alter)) + std::to_string(pitch.octave);
  }

  std::string note_text(const Note& note, std::int32_t bar) {
    std::string text = pitch_text(note.pitch, bar);
    if (note.finger) text += ':' + finger_words(written_fingers(note), note.suggested);
    if (note.lasts) text += '=' + value_words(*note.lasts);
    return note.tied ? text + '~' : text;
  }

  std::string notes_text(const Event& event) {
    if (event.is_rest()) return "r";
    std::string text;
    for (const Note& note : event.notes) {
      if (!text.empty()) text += '+';
      text += note_text(note, event.bar);
    }
    return text;
  }

  void add_event(std::size_t place, std::string& text) {
    const Event& event = line_.events[place];
    const bool is_rolled_into = place > 0 && line_.events[place - 1].rolls_on;
    if (is_rolled_into) {
      text += '/' + notes_text(event);
    } else {
      add_value(place, text);
      add_word(text, (event.grace ? "^" : "") + notes_text(event));
    }
    if (event.ornament != Ornament::none) add_word(text, ornament_sign(event.ornament));
    if (event.breath_after) add_word(text, ",");
  }

  void add_value(std::size_t place, std::string& text) {
    const std::optional<Fraction> value = value_at(place);
    if (!value || value == value_) return;
    value_ = value;
    add_word(text, value_words(*value_));
  }

  /// The value that is written before an event; a rolled chord has that of its last note.
  [[nodiscard]] std::optional<Fraction> value_at(std::size_t place) const {
    while (line_.events[place].rolls_on && place + 1 < line_.events.size()) ++place;
    return line_.events[place].grace ? value_around(place) : line_.events[place].duration;
  }

  /// The note value that holds at a grace note, which has none of its own: before the first value
  /// in the line it is that of the next note.
  [[nodiscard]] std::optional<Fraction> value_around(std::size_t place) const {
    if (value_ || !line_.events[place].duration) return value_;
    for (; place < line_.events.size(); ++place) {
      const Event& event = line_.events[place];
      if (!event.grace && !event.rolls_on) return event.duration;
    }
    return Fraction{1, 4};
  }

  /// The bar line before an event. It closes the bar before; at the very beginning it opens.
  void add_bar_line(std::size_t event, BarText& bar) {
    if (last_bar_ == nullptr) {
      if (const BarLine* found = bar_line_before(event)) {
        add_word(bar.text, bar_line_sign(found->style));
      }
    } else if (last_bar_ != &bar && !close_last_bar(event)) {
      add_word(last_bar_->text, "|");
      last_bar_->closed = true;
    }
  }

  bool close_last_bar(std::size_t event) {
    const BarLine* found = bar_line_before(event);
    if (found == nullptr) return false;
    add_word(last_bar_->text, bar_line_sign(found->style));
    last_bar_->closed = true;
    return true;
  }

  const BarLine* bar_line_before(std::size_t event) {
    while (next_bar_line_ < line_.bar_lines.size() &&
           line_.bar_lines[next_bar_line_].before_event < event) {
      ++next_bar_line_;
    }
    if (next_bar_line_ == line_.bar_lines.size()) return nullptr;
    const BarLine& found = line_.bar_lines[next_bar_line_];
    return found.before_event == event ? &found : nullptr;
  }

  const Line& line_;
  const std::vector<FromBar<KeySignature>>& keys_;
  std::size_t next_key_ = 0;
  KeySignature key_;
  SignsInBar signs_;
  std::size_t next_bar_line_ = 0;
  std::optional<Fraction> value_;
  BarText* last_bar_ = nullptr;
};

}  // namespace

std::deque<BarText> bar_texts(const Line& line, const std::vector<FromBar<KeySignature>>& keys) {
  return LineWriter(line, keys).write();
}

}  // namespace fingerturn
