#include "fingerturn/read.hpp"
#include "read/notation/cures.hpp"
#include "read/notation/header.hpp"
#include "read/notation/key.hpp"
#include "read/notation/lexer.hpp"
#include "read/notation/note.hpp"
#include "read/notation/passage_builder.hpp"
#include "read/notation/value.hpp"
#include "read/reporter.hpp"
#include "text/utf8.hpp"
#include "text/words.hpp"

#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include <fmt/core.h>

namespace fingerturn {
namespace {

/// Reports a byte that does not belong in a text; true where there was one.
bool report_bad_byte(TextPiece piece, Reporter& reporter) {
  const std::optional<BadByte> bad = find_bad_byte(piece.text);
  if (!bad) return false;
  const auto byte = static_cast<unsigned char>(piece.text[bad->offset]);
  const auto value =
      static_cast<std::uint32_t>(first_code_point(piece.text.substr(bad->offset)).value);
  const Span span = span_at(piece.begin + bad->offset, bad->bytes);
  if (bad->control) {
    reporter.report("control-character", span,
                    fmt::format("expected text, found the control character 0x{:02X}", value));
  } else {
    reporter.report("not-utf8", span, fmt::format("expected UTF-8, found the byte 0x{:02X}", byte),
                    "save the file as UTF-8");
  }
  return true;
}

/// Whether a word begins as a line of notes does.
bool is_hand_prefix(std::string_view word) {
  const std::optional<HeaderLine> header = header_of({word, 0});
  return header &&
         (header->name == HeaderName::right_hand || header->name == HeaderName::left_hand);
}

/// Goes through the lines of a source in their order.
class NotationReader {
 public:
  explicit NotationReader(const Source& source) : source_(source) {}

  ReadResult read() {
    if (!is_notation()) return {{}, reporter_.take(), {}};
    for (std::size_t number = 1; number <= source_.line_count(); ++number) {
      const TextPiece line{source_.line_text(number), source_.line_start(number)};
      const TextPiece before_comment = without_comment(line);
      const std::optional<TextPiece> comment = comment_in(line.from(before_comment.text.size()));
      if (comment) add_comment(comment->text);
      const TextPiece said = trimmed(before_comment);
      // A comment alone ends no paragraph, as an empty line does.
      if (!comment || !said.text.empty()) read_line(said);
    }
    if (builder_) hand_over_comments();
    finish_passage();
    if (score_.passages.empty() && reporter_.errors() == 0) {
      reporter_.report("no-notes", {}, "expected a passage, found none in this file");
    }
    return {std::move(score_), reporter_.take(), {}};
  }

 private:
  /// Whether the source may be notation at all; if not, one message says so instead of many.
  bool is_notation() {
    const std::string_view text = source_.text();
    if (text.size() > kLargestNotation) {
      reporter_.report(
          "too-large", {},
          fmt::format("expected at most {} bytes, found {}", kLargestNotation, text.size()),
          "divide the passages among several files");
    } else if (text.starts_with("\xFF\xFE") || text.starts_with("\xFE\xFF")) {
      reporter_.report("not-utf8", span_at(0, 2), "expected UTF-8, found UTF-16",
                       "save the file as UTF-8");
    } else if (source_.line_text(1).starts_with("<")) {
      reporter_.report("not-notation", span_at(source_.line_start(1), 1),
                       "expected passage notation, found XML");
    } else {
      return true;
    }
    return false;
  }

  PassageBuilder& builder(Span place) {
    if (!builder_) {
      builder_.emplace(place);
      hand_over_comments();
    }
    return *builder_;
  }

  void finish_passage() {
    if (builder_) score_.passages.push_back(builder_->finish(reporter_));
    builder_.reset();
    title_given_ = false;
  }

  void add_comment(std::string_view text) {
    if (comments_) {
      *comments_ += '\n';
    } else {
      comments_.emplace();
    }
    *comments_ += text;
  }

  /// Comments that stand above a line belong to its passage.
  void hand_over_comments() {
    if (comments_) builder_->add_comment(*std::exchange(comments_, std::nullopt));
  }

  /// Comments right above a title belong to it; an empty line between leaves them where they are.
  void end_paragraph() {
    if (builder_) hand_over_comments();
  }

  void read_line(TextPiece line) {
    if (line.text.empty()) return end_paragraph();
    const std::optional<HeaderLine> header = header_of(line);
    if (builder_ && !(header && header->name == HeaderName::passage)) hand_over_comments();
    if (!header) {
      read_notes(line);
    } else if (!report_bad_byte(header->value, reporter_)) {
      read_header(*header, line);
    }
  }

  void read_header(const HeaderLine& header, TextPiece line) {
    const TextPiece value = header.value;
    switch (header.name) {
      case HeaderName::passage:
        return start_passage(value, line);
      case HeaderName::composer:
        return set_text(&Passage::composer, header, line);
      case HeaderName::source:
        return set_text(&Passage::source, header, line);
      case HeaderName::hand:
        return read_hand(value, line);
      case HeaderName::meter:
        if (const auto meter = read_meter(value, reporter_)) builder(line.span()).set_meter(*meter);
        return;
      case HeaderName::tempo:
        if (const auto tempo = read_tempo(value, reporter_)) builder(line.span()).set_tempo(*tempo);
        return;
      case HeaderName::bar:
        return read_bar_number(value, line);
      case HeaderName::reach:
        return read_reach(header, line);
      case HeaderName::key:
        if (const auto key = read_key(value, reporter_)) builder(line.span()).set_key(*key);
        return;
      case HeaderName::note:
        return read_note(header, line);
      case HeaderName::right_hand:
      case HeaderName::left_hand: {
        const bool right = header.name == HeaderName::right_hand;
        builder(line.span()).choose_hand(right ? Hand::right : Hand::left);
        return read_tokens(value);
      }
      case HeaderName::unknown:
        return report_unknown_header(header);
    }
  }

  void start_passage(TextPiece title, TextPiece line) {
    // Headers that stand above the first title belong to that passage.
    if (builder_ && (title_given_ || builder_->has_events())) finish_passage();
    builder(line.span()).passage().title = std::string(title.text);
    title_given_ = true;
  }

  void set_text(std::string Passage::*text, const HeaderLine& header, TextPiece line) {
    std::string& held = builder(line.span()).passage().*text;
    if (!held.empty()) warn_of_repetition(header);
    held = std::string(header.value.text);
  }

  void read_note(const HeaderLine& header, TextPiece line) {
    if (!header.value.text.empty()) {
      return builder(line.span()).add_note(std::string(header.value.text));
    }
    reporter_.report(
        "header", header.written_name.span(),
        fmt::format("expected words after {}:, found nothing", header.written_name.text),
        "a note stays with the bar below it, as in note: keep the wrist loose");
  }

  void warn_of_repetition(const HeaderLine& header) {
    reporter_.report(
        "repeated-header", header.written_name.span(),
        fmt::format("expected {} once in a passage", quoted(header.written_name.text)));
  }

  void read_hand(TextPiece value, TextPiece line) {
    const std::string hand = lower_case(value.text);
    if (hand == "right" || hand == "left") {
      return builder(line.span()).choose_hand(hand == "right" ? Hand::right : Hand::left);
    }
    reporter_.report("hand", value.text.empty() ? line.span() : value.span(),
                     fmt::format("expected right or left, found {}", quoted(value.text)),
                     "for both hands begin the lines of notes with RH: and LH:");
  }

  void read_bar_number(TextPiece value, TextPiece line) {
    if (const auto bar = read_number(value, 0, kHighestBar, "a bar number", reporter_)) {
      builder(line.span()).number_next_bar(*bar, value.span(), reporter_);
    }
  }

  void read_reach(const HeaderLine& header, TextPiece line) {
    const auto reach = read_number(header.value, kSmallestReach, kWidestReach,
                                   "the widest interval of 1-5 in semitones", reporter_);
    if (!reach) return;
    std::optional<int>& held = builder(line.span()).passage().reach_semitones;
    if (held) warn_of_repetition(header);
    held = reach;
  }

  void report_unknown_header(const HeaderLine& header) {
    reporter_.report(
        "header", header.written_name.span(),
        fmt::format("expected notes or a header line, found {}", quoted(header.written_name.text)),
        cure_for_name(header.written_name.text));
  }

  /// A line of notes, or one that only seems to be.
  void read_notes(TextPiece line) {
    const TextPiece name{letters_of(line.text), line.begin};
    if (std::string cure = cure_for_colon(line); !cure.empty()) {
      reporter_.report("header", name.span(),
                       fmt::format("expected a colon after {}, found none", quoted(name.text)),
                       std::move(cure));
      const HeaderName header = header_named(name.text);
      if (header == HeaderName::right_hand || header == HeaderName::left_hand) {
        builder(line.span())
            .choose_hand(header == HeaderName::right_hand ? Hand::right : Hand::left);
        read_tokens(line.from(name.text.size()));
      }
    } else {
      read_tokens(line);
    }
  }

  void read_tokens(TextPiece line) {
    if (is_line_of_fingers(line)) {
      return reporter_.report("note-value", line.span(), "expected notes, found a line of fingers",
                              "each finger stands with its note, as in C4:1 D:2 E:3");
    }
    while (const std::optional<Token> token = next_token(line)) {
      if (token->kind == TokenKind::word && report_bad_byte(token->piece, reporter_)) continue;
      read_token(*token);
    }
  }

  void read_token(const Token& token) {
    PassageBuilder& passage = builder(token.piece.span());
    switch (token.kind) {
      case TokenKind::bar_line:
        return passage.add_bar_line(token.style);
      case TokenKind::breath:
        return passage.add_breath();
      case TokenKind::word:
        return read_word(token.piece, passage);
    }
  }

  void read_word(TextPiece word, PassageBuilder& passage) {
    const char first = word.text.front();
    if (is_hand_prefix(word.text)) {
      reporter_.report("hand-place", word.span(),
                       fmt::format("expected notes of the same hand, found {}", quoted(word.text)),
                       "RH: and LH: stand at the beginning of a line");
    } else if (first >= '0' && first <= '9') {
      if (const auto value = read_note_value(word, reporter_)) passage.current().value = value;
    } else if ((first == 'r' || first == 'R') && !is_named_by_syllable(word.text)) {
      read_rest(word, passage);
    } else if (const std::optional<Ornament> ornament = ornament_of(word.text)) {
      add_ornament(*ornament, word, passage);
    } else if (auto notes = read_note_word(word, passage.before_next_note(), reporter_)) {
      passage.add_notes(std::move(notes->struck), notes->grace, word.span());
    }
  }

  static std::optional<Ornament> ornament_of(std::string_view word) {
    if (word == "tr") return Ornament::trill;
    return word == "trem" ? std::optional(Ornament::tremolo) : std::nullopt;
  }

  void add_ornament(Ornament ornament, TextPiece word, PassageBuilder& passage) {
    if (passage.add_ornament(ornament)) return;
    reporter_.report(
        "ornament", word.span(),
        fmt::format("expected a note before the sign {}, found none", quoted(word.text)),
        "the sign stands behind its note, as in D5:3 tr");
  }

  void read_rest(TextPiece word, PassageBuilder& passage) {
    if (word.text.size() == 1) return passage.add_rest(word.span());
    reporter_.report("rest", word.span(),
                     fmt::format("expected a rest, r, found {}", quoted(word.text)),
                     word.text[1] == ':' ? "a rest has no finger"
                                         : "the value of a rest stands before it, as in 1/4 r");
  }

  const Source& source_;
  Reporter reporter_{&DiagnosticCode::in_notation};
  Score score_;
  std::optional<PassageBuilder> builder_;
  bool title_given_ = false;
  std::optional<std::string> comments_;  ///< lines above the next that says something
};

}  // namespace

ReadResult read_notation(const Source& source) { return NotationReader(source).read(); }

}  // namespace fingerturn
