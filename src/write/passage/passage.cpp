#include "write/passage/passage.hpp"

#include "fingerturn/report.hpp"
#include "text/utf8.hpp"
#include "text/wrap.hpp"
#include "write/shared/note_words.hpp"

#include <algorithm>
#include <deque>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include <fmt/core.h>

/// The passage notation (docs/notation.md), written so that reading it gives an equal score.
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

std::string note_text(const Note& note) {
  std::string text = to_string(note.pitch);
  if (note.finger) {
    text += ':' + finger_words(written_fingers(note), note.suggested);
  }
  if (note.lasts) text += '=' + value_words(*note.lasts);
  return note.tied ? text + '~' : text;
}

std::string_view ornament_sign(Ornament ornament) {
  return ornament == Ornament::trill ? "tr" : "trem";
}

std::string notes_text(const Event& event) {
  if (event.is_rest()) return "r";
  std::string text;
  for (std::size_t i = 0; i < event.notes.size(); ++i) {
    if (i > 0) text += '+';
    text += note_text(event.notes[i]);
  }
  return text;
}

/// What a hand plays in one bar, and whether a bar line closes it.
struct BarText {
  std::int32_t bar = 0;
  std::string text;
  bool closed = false;
};

/// Writes a line bar by bar; the note value runs on from bar to bar.
class LineWriter {
 public:
  explicit LineWriter(const Line& line) : line_(line) {}

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
  std::size_t next_bar_line_ = 0;
  std::optional<Fraction> value_;
  BarText* last_bar_ = nullptr;
};

/// A header line. A text that would open a comment or break the line is kept from doing so.
std::string header_line(std::string_view name, std::string_view text) {
  constexpr std::string_view kBlankThatOpensNoComment = "\xC2\xA0";
  const std::string shown = printable(text);
  std::string safe;
  safe.reserve(shown.size());
  for (std::size_t at = 0; at < shown.size(); ++at) {
    const bool blank = shown[at] == ' ' || shown[at] == '\t';
    if (blank && at + 1 < shown.size() && shown[at + 1] == '#') {
      safe += kBlankThatOpensNoComment;
    } else {
      safe += shown[at];
    }
  }
  const bool opens_comment = safe.starts_with('#');
  return fmt::format("{}:{}{}\n", name, safe.empty() || opens_comment ? "" : " ", safe);
}

std::string tempo_text(const Tempo& tempo) {
  if (tempo.beat_unit == Fraction{1, 4}) return fmt::format("{}", tempo.per_minute);
  return fmt::format("{} = {}", value_words(tempo.beat_unit), tempo.per_minute);
}

/// Lays the bars of a passage out in lines of notes, both hands in step.
class PassageWriter {
 public:
  explicit PassageWriter(const Passage& passage) : passage_(passage) {
    for (const Line& line : passage.lines) hands_.push_back({line.hand, LineWriter(line).write()});
    for (const HandText& hand : hands_) {
      for (const BarText& bar : hand.bars) bars_.push_back(bar.bar);
    }
    std::sort(bars_.begin(), bars_.end());
    bars_.erase(std::unique(bars_.begin(), bars_.end()), bars_.end());
  }

  /// `comments` are lines to stand above the notes.
  std::string write(bool is_first, std::string_view comments) {
    // The first passage needs no header line to begin, if notes follow that begin it.
    if (!is_first || !passage_.title.empty() || hands_.empty()) {
      out_ += header_line("passage", passage_.title);
    }
    write_head();
    out_ += comments;
    for (const std::int32_t bar : bars_) {
      write_changes(bar);
      add_bar(bar);
    }
    flush();
    return std::move(out_);
  }

 private:
  struct HandText {
    Hand hand = Hand::right;
    std::deque<BarText> bars;
    std::size_t next_bar = 0;      ///< the place in `bars` of the first that is not written yet
    std::string pending = {};      ///< the line of notes that is being filled
    std::int32_t natural_bar = 1;  ///< the number the reader would give to the next bar

    /// What the hand plays in a bar that comes next; null where it plays nothing there.
    [[nodiscard]] const BarText* text_of(std::int32_t bar) const {
      const bool is_next = next_bar < bars.size() && bars[next_bar].bar == bar;
      return is_next ? &bars[next_bar] : nullptr;
    }
  };

  void write_head() {
    if (!passage_.composer.empty()) out_ += header_line("composer", passage_.composer);
    if (!passage_.source.empty()) out_ += header_line("source", passage_.source);
    if (passage_.reach_semitones) {
      out_ += header_line("reach", std::to_string(*passage_.reach_semitones));
    }
    if (hands_.size() == 1 && hands_.front().hand == Hand::left) out_ += "hand: left\n";
  }

  /// The header lines that must stand before a bar.
  void write_changes(std::int32_t bar) {
    std::string lines;
    if (needs_number(bar)) {
      lines += header_line("bar", std::to_string(bar));
      for (HandText& hand : hands_) hand.natural_bar = bar;
    }
    if (const Meter* meter = change_at(passage_.meters, next_meter_, bar)) {
      lines += header_line("meter", to_string(*meter));
    }
    if (const Tempo* tempo = change_at(passage_.tempos, next_tempo_, bar)) {
      lines += header_line("tempo", tempo_text(*tempo));
    }
    if (lines.empty()) return;
    flush();
    out_ += lines;
  }

  /// The change that falls on a bar; `next` goes past it. Bars are asked for in rising order.
  template <typename Value>
  static const Value* change_at(const std::vector<FromBar<Value>>& changes, std::size_t& next,
                                std::int32_t bar) {
    const Value* found = nullptr;
    for (; next < changes.size() && changes[next].bar <= bar; ++next) found = &changes[next].value;
    return found;
  }

  [[nodiscard]] bool needs_number(std::int32_t bar) const {
    return std::any_of(hands_.begin(), hands_.end(), [bar](const HandText& hand) {
      return hand.text_of(bar) != nullptr && hand.natural_bar != bar;
    });
  }

  void add_bar(std::int32_t bar) {
    constexpr std::size_t kLineLength = 76;  // and "RH: " before it
    const bool full = std::any_of(hands_.begin(), hands_.end(), [bar](const HandText& hand) {
      const BarText* text = hand.text_of(bar);
      return text != nullptr && !hand.pending.empty() &&
             hand.pending.size() + 1 + text->text.size() > kLineLength;
    });
    if (full) flush();
    for (HandText& hand : hands_) {
      const BarText* text = hand.text_of(bar);
      if (text == nullptr) continue;
      if (!hand.pending.empty()) hand.pending += ' ';
      hand.pending += text->text;
      if (text->closed) hand.natural_bar = bar + 1;
      ++hand.next_bar;
    }
  }

  void flush() {
    for (HandText& hand : hands_) {
      if (hand.pending.empty()) continue;
      if (hands_.size() > 1) out_ += hand.hand == Hand::right ? "RH: " : "LH: ";
      out_ += hand.pending + '\n';
      hand.pending.clear();
    }
  }

  const Passage& passage_;
  std::vector<HandText> hands_;
  std::vector<std::int32_t> bars_;
  std::size_t next_meter_ = 0;
  std::size_t next_tempo_ = 0;
  std::string out_;
};

}  // namespace

std::string comment_lines(std::string_view text) {
  constexpr int kColumns = 76;
  const std::string lines = wrapped("", text, kColumns);
  std::string out;
  for (std::size_t begin = 0; begin < lines.size();) {
    const std::size_t end = lines.find('\n', begin) + 1;
    out += "# " + lines.substr(begin, end - begin);
    begin = end;
  }
  return out;
}

std::string write_passage(const Score& score) { return write_passage(score, {}); }

std::string write_passage(const Score& score, std::span<const std::string> comments) {
  std::string out;
  for (std::size_t p = 0; p < score.passages.size(); ++p) {
    const bool is_first = out.empty();
    if (!is_first) out += '\n';
    out += PassageWriter(score.passages[p]).write(is_first, p < comments.size() ? comments[p] : "");
  }
  return out;
}

}  // namespace fingerturn
