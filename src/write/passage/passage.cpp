#include "write/passage/passage.hpp"

#include "fingerturn/report.hpp"
#include "text/utf8.hpp"
#include "text/wrap.hpp"
#include "write/passage/bar_text.hpp"
#include "write/shared/note_words.hpp"

#include <algorithm>
#include <deque>
#include <limits>
#include <string>
#include <string_view>
#include <vector>

#include <fmt/core.h>

/// The passage notation (docs/notation.md), written so that reading it gives an equal score.
namespace fingerturn {
namespace {

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

/// A comment as it was typed, line by line.
std::string typed_comment(std::string_view text) {
  std::string lines;
  while (true) {
    const std::size_t end = std::min(text.find('\n'), text.size());
    const std::string line = printable(text.substr(0, end));
    lines += line.empty() ? "#\n" : "# " + line + '\n';
    if (end == text.size()) return lines;
    text.remove_prefix(end + 1);
  }
}

std::string tempo_text(const Tempo& tempo) {
  if (tempo.beat_unit == Fraction{1, 4}) return fmt::format("{}", tempo.per_minute);
  return fmt::format("{} = {}", value_words(tempo.beat_unit), tempo.per_minute);
}

/// Lays the bars of a passage out in lines of notes, both hands in step.
class PassageWriter {
 public:
  explicit PassageWriter(const Passage& passage) : passage_(passage) {
    for (const Line& line : passage.lines) {
      hands_.push_back({line.hand, bar_texts(line, passage.keys)});
    }
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
    out_ += words_before(std::numeric_limits<std::int32_t>::max());
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
    if (const KeySignature* key = change_at(passage_.keys, next_key_, bar)) {
      lines += header_line("key", to_string(*key));
    }
    lines += words_before(bar);
    if (lines.empty()) return;
    flush();
    out_ += lines;
  }

  /// The comments and notes that stand before a bar and are not written yet.
  std::string words_before(std::int32_t bar) {
    std::string lines;
    const auto& comments = passage_.comments;
    for (; next_comment_ < comments.size() && comments[next_comment_].bar <= bar; ++next_comment_) {
      lines += typed_comment(comments[next_comment_].value);
    }
    const auto& notes = passage_.notes;
    for (; next_note_ < notes.size() && notes[next_note_].bar <= bar; ++next_note_) {
      lines += header_line("note", notes[next_note_].value);
    }
    return lines;
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
  std::size_t next_key_ = 0;
  std::size_t next_comment_ = 0;
  std::size_t next_note_ = 0;
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
