#include "write/musicxml/places.hpp"

#include "fingerturn/read.hpp"
#include "write/musicxml/scan.hpp"

#include <algorithm>
#include <charconv>
#include <limits>
#include <string>
#include <system_error>
#include <unordered_map>

namespace fingerturn {
namespace {

std::uint32_t offset(std::size_t place) { return static_cast<std::uint32_t>(place); }

/// The line that a lyric's number names: its last digits, so that "verse2" is line 2 too. A lyric
/// without a number is the first line.
std::int32_t line_of_lyric(std::optional<std::string_view> number) {
  constexpr std::size_t kMostDigits = 6;
  if (!number) return 1;
  const std::size_t last_other = number->find_last_not_of("0123456789");
  const std::string_view digits =
      last_other == std::string_view::npos ? *number : number->substr(last_other + 1);
  std::int32_t line = 0;
  if (digits.empty() || digits.size() > kMostDigits) return 0;
  std::from_chars(digits.data(), digits.data() + digits.size(), line);
  return line;
}

/// Without the blanks around it, which another program may have put there.
std::string_view without_blanks(std::string_view text) {
  while (!text.empty() && is_xml_blank(text.front())) text.remove_prefix(1);
  while (!text.empty() && is_xml_blank(text.back())) text.remove_suffix(1);
  return text;
}

std::int32_t staff_number(std::string_view text) {
  text = without_blanks(text);
  std::int32_t staff = 0;
  const auto [stop, problem] = std::from_chars(text.data(), text.data() + text.size(), staff);
  return problem == std::errc{} && staff > 0 ? staff : 1;
}

/// An element that is open.
struct OpenElement {
  std::string_view name;
  std::size_t begin = 0;
  std::size_t inside = 0;  ///< where its opening tag ends
  bool ours = false;
};

/// Goes through the tags and keeps only what is open of three levels: the bar of a part (a
/// `measure` in a `part`, or the other way round in a score-timewise), its children, theirs.
class PlaceFinder {
 public:
  explicit PlaceFinder(std::string_view text) : text_(text) {}

  std::optional<MusicXmlPlaces> find() {
    XmlScan scan(text_);
    while (const std::optional<XmlTag> tag = scan.next()) {
      if (tag->kind != XmlTagKind::closing) open(*tag);
      if (tag->kind != XmlTagKind::opening) close(*tag);
    }
    if (scan.broken()) return std::nullopt;
    return std::move(places_);
  }

 private:
  void open(const XmlTag& tag) {
    ++level_;
    if (level_ == 1) {
      end_in_score_ = tag.end;
      if (tag.name == "score-timewise") bar_element_ = "part";
    }
    if (bar_level_ == 0) {
      open_around_bars(tag);
    } else if (level_ == bar_level_ + 1) {
      open_in_bar(tag);
    } else if (level_ == bar_level_ + 2) {
      open_in_child(tag);
    } else {
      open_further_in(tag);
    }
  }

  void open_around_bars(const XmlTag& tag) {
    if (level_ == 2) open_in_score(tag);
    if (level_ == 3 && tag.name == "credit-words") {
      credit_.ours |= attribute_of(tag, "xml:lang") == kLegendLanguage;
    }
    if (tag.name == "part") part_ = part_of(attribute_of(tag, "id").value_or(""));
    if (tag.name != bar_element_) return;
    if (places_.parts.empty()) part_ = part_of("");
    bar_level_ = level_;
    first_in_bar_ = places_.notes.size();
    credit_ = {};  // what has music in it is none of ours
  }

  void open_in_score(const XmlTag& tag) {
    credit_ = {tag.name, tag.begin, tag.end, false};
    const bool is_music = tag.name == "part-list" || tag.name == "part" || tag.name == "measure";
    if (!is_music || places_.legend) return;
    places_.legend = InsertionPlace{offset(end_in_score_), blanks_before(tag.begin)};
  }

  /// The credits of the score, whose legend is ours.
  void close_in_score(const XmlTag& tag) {
    const bool ours = credit_.name == "credit" && credit_.ours;
    if (ours) add_own_mark(credit_.begin, tag.end);
    if (!ours) end_in_score_ = tag.end;
  }

  void open_in_bar(const XmlTag& tag) {
    child_ = {tag.name, tag.begin, tag.end, false};
    if (tag.name != "note") return;
    note_ = {};
    note_.begin = offset(tag.begin);
    note_.part = part_;
    note_.carrier = offset(places_.notes.size());
    note_.notations = note_.lyric = {offset(tag.end), {}};
    before_lyrics_ = true;
    after_lyrics_ = false;
  }

  void open_in_child(const XmlTag& tag) {
    grandchild_ = {tag.name, tag.begin, tag.end, false};
    if (child_.name != "note") return;
    if (tag.name == "chord" && note_.carrier > first_in_bar_) {
      note_.carrier = places_.notes.back().carrier;
    }
    if (tag.name != "lyric") return;
    grandchild_.ours = attribute_of(tag, "name") == kLyricName;
    std::int32_t& highest = places_.parts[part_].highest_lyric;
    if (!grandchild_.ours) highest = std::max(highest, line_of_lyric(attribute_of(tag, "number")));
  }

  void open_further_in(const XmlTag& tag) {
    if (child_.name == "direction" && tag.name == "words") {
      child_.ours |= attribute_of(tag, "xml:lang") == kLegendLanguage;
    }
    if (is_level(tag)) level_begin_ = tag.end;
    if (is_fingering(tag)) {
      fingering_ =
          attribute_of(tag, "alternate") == "yes" ? std::nullopt : std::optional(tag.begin);
    }
  }

  /// A `<fingering>` in the `<technical>` of a note's `<notations>`.
  [[nodiscard]] bool is_fingering(const XmlTag& tag) const {
    return level_ == bar_level_ + 4 && child_.name == "note" && grandchild_.name == "notations" &&
           tag.name == "fingering";
  }

  void close_fingering(const XmlTag& tag) {
    if (!is_fingering(tag) || !fingering_) return;
    places_.fingerings.push_back(
        {offset(places_.notes.size()), {offset(*fingering_), offset(tag.end)}});
    fingering_.reset();
  }

  /// The `<level>` of a note's `<notations>`.
  [[nodiscard]] bool is_level(const XmlTag& tag) const {
    return level_ == bar_level_ + 3 && child_.name == "note" && grandchild_.name == "notations" &&
           tag.name == "level";
  }

  void close(const XmlTag& tag) {
    if (level_ == 0) return;
    if (bar_level_ != 0) {
      if (is_level(tag) && tag.begin >= level_begin_) {
        grandchild_.ours |= without_blanks(text_.substr(level_begin_, tag.begin - level_begin_))
                                .starts_with(kSuggestionLevel);
      }
      close_fingering(tag);
      if (level_ == bar_level_ + 2) close_in_child(tag);
      if (level_ == bar_level_ + 1) close_in_bar(tag);
      if (level_ == bar_level_) bar_level_ = 0;
    }
    if (level_ == 2) close_in_score(tag);
    --level_;
  }

  void close_in_child(const XmlTag& tag) {
    if (child_.name != "note") return;
    if (grandchild_.ours) {
      add_own_mark(grandchild_.begin, tag.end);
      std::vector<FingeringInText>& fingerings = places_.fingerings;
      while (!fingerings.empty() && fingerings.back().span.begin >= grandchild_.begin) {
        fingerings.pop_back();
      }
      return;
    }
    if (grandchild_.name == "staff" && tag.begin >= grandchild_.inside) {
      note_.staff = staff_number(text_.substr(grandchild_.inside, tag.begin - grandchild_.inside));
    }
    after_lyrics_ |= grandchild_.name == "play" || grandchild_.name == "listen";
    before_lyrics_ &= !after_lyrics_ && grandchild_.name != "lyric";
    if (before_lyrics_) note_.notations = {offset(tag.end), blanks_before(grandchild_.begin)};
    if (!after_lyrics_) note_.lyric = {offset(tag.end), blanks_before(grandchild_.begin)};
  }

  void close_in_bar(const XmlTag& tag) {
    if (child_.ours) {
      add_own_mark(child_.begin, tag.end);
      return;
    }
    if (child_.name == "note" && tag.kind == XmlTagKind::closing) places_.notes.push_back(note_);
  }

  void add_own_mark(std::size_t begin, std::size_t end) {
    while (begin > 0 && is_xml_blank(text_[begin - 1])) --begin;
    places_.own_marks.push_back({offset(begin), offset(end)});
  }

  /// From the last line break in blanks on, or all of them where there is none.
  [[nodiscard]] Span last_line_of_blanks(std::size_t begin, std::size_t end) const {
    const std::string_view blanks = text_.substr(begin, end - begin);
    const std::size_t line_break = blanks.find_last_of("\r\n");
    if (line_break != std::string_view::npos) {
      begin += line_break;
      if (line_break > 0 && blanks.substr(line_break - 1, 2) == "\r\n") --begin;
    }
    return {offset(begin), offset(end)};
  }

  [[nodiscard]] Span blanks_before(std::size_t place) const {
    std::size_t begin = place;
    while (begin > 0 && is_xml_blank(text_[begin - 1])) --begin;
    return last_line_of_blanks(begin, place);
  }

  std::uint32_t part_of(std::string_view id) {
    const auto [found, is_new] = part_numbers_.try_emplace(id, offset(places_.parts.size()));
    if (is_new) places_.parts.emplace_back();
    return found->second;
  }

  std::string_view text_;
  MusicXmlPlaces places_;
  std::unordered_map<std::string_view, std::uint32_t> part_numbers_;
  std::string_view bar_element_ = "measure";
  std::size_t level_ = 0;      ///< how many elements are open
  std::size_t bar_level_ = 0;  ///< the level of the bar that is open; 0 for none
  std::uint32_t part_ = 0;
  std::size_t first_in_bar_ = 0;          ///< the place that the first note of the bar has
  bool before_lyrics_ = true;             ///< no lyric of the note has come, nor what follows it
  std::optional<std::size_t> fingering_;  ///< where the `<fingering>` that is open begins
  std::size_t level_begin_ = 0;           ///< where the text of the last `<level>` begins
  bool after_lyrics_ = false;             ///< what follows a note's lyrics has come
  std::size_t end_in_score_ = 0;          ///< where the last element of the score, or its tag, ends
  OpenElement credit_;                    ///< an element of the score
  OpenElement child_;
  OpenElement grandchild_;
  NoteInText note_;
};

}  // namespace

std::optional<MusicXmlPlaces> find_places(std::string_view musicxml) {
  // Spans hold 32 bits.
  if (musicxml.size() > std::numeric_limits<std::uint32_t>::max()) return std::nullopt;
  return PlaceFinder(musicxml).find();
}

}  // namespace fingerturn
