#include "fingerturn/read.hpp"
#include "read/musicxml/bar_list.hpp"
#include "read/musicxml/container.hpp"
#include "read/musicxml/element.hpp"
#include "read/musicxml/fingering.hpp"
#include "read/musicxml/hand_line.hpp"
#include "read/musicxml/hands.hpp"
#include "read/musicxml/part_list.hpp"
#include "read/musicxml/place.hpp"
#include "read/musicxml/score_signs.hpp"
#include "read/musicxml/text.hpp"
#include "read/musicxml/tick_counter.hpp"
#include "read/musicxml/ties_to_nothing.hpp"
#include "score/ties.hpp"
#include "score/timeline.hpp"

#include <algorithm>
#include <array>
#include <iterator>
#include <limits>
#include <map>
#include <new>
#include <numeric>
#include <utility>

#include <fmt/core.h>

namespace fingerturn {
namespace {

/// The parts of one player in one piece: their notes with the hands that play them.
struct HandNotes {
  std::array<std::vector<WrittenNote>, 2> by_hand;
  std::vector<WrittenMeasure> measures;
  std::vector<FromMeasure<Meter>> meters;
  std::vector<FromMeasure<Tempo>> tempos;
  std::vector<FromMeasure<KeySignature>> keys;
  std::vector<FromMeasure<std::string>> words;
  Ticks ticks_per_quarter = 1;
};

/// Where a measure stands in its bar is not counted anew: all that asks for it has been told, and
/// in a bar of very many measures it would not fit.
void refine_lengths(std::vector<WrittenMeasure>& measures, Ticks factor) {
  for (WrittenMeasure& measure : measures) measure.length *= factor;
}

/// The measures of two parts stand together, each as long as the longer.
void join_measures(std::vector<WrittenMeasure>& measures, std::vector<WrittenMeasure> others) {
  const std::size_t both = std::min(measures.size(), others.size());
  for (std::size_t i = 0; i < both; ++i) {
    measures[i].length = std::max(measures[i].length, others[i].length);
  }
  if (others.size() <= both) return;
  std::copy(measures.begin(), measures.end(), others.begin());
  measures = std::move(others);
  // The other part may have counted otherwise up to here.
  for (std::size_t i = std::max<std::size_t>(both, 1); i < measures.size(); ++i) {
    const std::int32_t before = measures[i - 1].bar;
    WrittenMeasure& measure = measures[i];
    measure.bar = measure.continues_bar ? before : std::max(measure.bar, before + 1);
  }
}

/// Where both parts change in a measure, the first counts.
template <typename Value>
void join_changes(std::vector<FromMeasure<Value>>& changes,
                  const std::vector<FromMeasure<Value>>& others) {
  std::vector<FromMeasure<Value>> joined;
  std::set_union(changes.begin(), changes.end(), others.begin(), others.end(),
                 std::back_inserter(joined),
                 [](const FromMeasure<Value>& left, const FromMeasure<Value>& right) {
                   return left.measure < right.measure;
                 });
  changes = std::move(joined);
}

template <typename Value>
std::vector<FromBar<Value>> by_bars(const std::vector<FromMeasure<Value>>& changes,
                                    const std::vector<WrittenMeasure>& measures) {
  std::vector<FromBar<Value>> in_bars;
  in_bars.reserve(changes.size());
  for (const auto& change : changes) {
    in_bars.push_back({measures[change.measure].bar, change.value});
  }
  return in_bars;
}

/// Whether the time from the first measure to the end of the last, in ticks, stays within 64 bits.
bool can_be_counted(const std::vector<WrittenMeasure>& measures) {
  // Half of what there is leaves room to add the length of a note.
  constexpr Ticks kMostTicks = std::numeric_limits<Ticks>::max() / 2;
  Ticks time = 0;
  for (const WrittenMeasure& measure : measures) {
    if (measure.length > kMostTicks - time) return false;
    time += measure.length;
  }
  return true;
}

/// What a score says of the piece, which is that of each of its passages.
struct PieceNames {
  std::string title;
  std::string composer;
  std::string source;
};

std::string title_of(pugi::xml_node score) {
  const std::string work = line_of_text(text_of(score.child("work").child("work-title")));
  std::string movement = line_of_text(text_of(score.child("movement-title")));
  if (work.empty() || work == movement) return movement;
  return movement.empty() ? work : work + ", " + movement;
}

std::string composer_in(pugi::xml_node identification) {
  for (const pugi::xml_node creator : identification.children("creator")) {
    if (std::string_view(creator.attribute("type").value()) == "composer") {
      return line_of_text(text_of(creator));
    }
  }
  return {};
}

PieceNames names_of_piece(pugi::xml_node score) {
  const pugi::xml_node identification = score.child("identification");
  return {title_of(score), composer_in(identification),
          line_of_text(text_of(identification.child("source")))};
}

class MusicXmlReader {
 public:
  MusicXmlReader(pugi::xml_node score, const ReadOptions& options, Reporter& reporter)
      : options_(options),
        reporter_(reporter),
        piece_(names_of_piece(score)),
        parts_(parts_of(score)) {}

  Score read() {
    Score score;
    std::vector<ChosenParts> chosen = choose_parts(parts_, options_, reporter_);
    for (ChosenParts& parts : chosen) {
      reporter_.start_passage(score.passages.size());
      ties_.start_passage(score.passages.size());
      score.passages.push_back(read_passage(std::move(parts), chosen.size() > 1));
    }
    ties_.report(reporter_);
    const bool empty = std::all_of(score.passages.begin(), score.passages.end(),
                                   [](const Passage& passage) { return passage.lines.empty(); });
    if (empty && reporter_.errors() == 0) {
      reporter_.report("no-notes", {}, "expected notes for a keyboard in this score, found none");
    }
    return score;
  }

 private:
  Passage read_passage(ChosenParts chosen, bool one_of_several) {
    Passage passage;
    passage.title = piece_.title;
    const std::string& name = parts_[chosen.parts.front()].name;
    if (one_of_several && !name.empty()) {
      passage.title += passage.title.empty() ? name : " (" + name + ")";
    }
    passage.composer = piece_.composer;
    passage.source = piece_.source;
    passage.remarks = std::move(chosen.remarks);
    HandNotes notes = read_parts(chosen.parts, passage);
    passage.meters = by_bars(notes.meters, notes.measures);
    passage.tempos = by_bars(notes.tempos, notes.measures);
    passage.keys = by_bars(notes.keys, notes.measures);
    passage.notes = by_bars(notes.words, notes.measures);
    for (const Hand hand : {Hand::right, Hand::left}) add_line(hand, notes, passage);
    settle_changes(passage);
    return passage;
  }

  HandNotes read_parts(const std::vector<std::size_t>& chosen, Passage& passage) {
    HandNotes all;
    for (std::size_t i = 0; i < chosen.size(); ++i) {
      const PartInfo& info = parts_[chosen[i]];
      WrittenPart part = read_part(info.measures, reporter_);
      if (chosen.size() > 1) {
        std::vector<std::string> remarks = give_hand(part, i == 0 ? Hand::right : Hand::left);
        std::move(remarks.begin(), remarks.end(), std::back_inserter(passage.remarks));
      } else {
        std::vector<std::string> remarks = give_hands(part, info, options_.hand);
        if (!part.notes.empty()) {
          passage.remarks.insert(passage.remarks.begin(), remarks.begin(), remarks.end());
        }
      }
      remark_ornaments(part, passage);
      if (i == 0) {
        passage.signs = std::move(part.signs);
      } else {
        add_signs(std::move(part.signs), Hand::left, passage.signs);
      }
      add_part(std::move(part), all);
    }
    return all;
  }

  /// "Of some ornaments only the note is read: mordent in bar 3, turn in bars 5 and 7."
  static void remark_ornaments(const WrittenPart& part, Passage& passage) {
    std::map<std::string_view, std::vector<std::int32_t>> bars;
    for (const OrnamentLeftOut& ornament : part.ornaments_left_out) {
      bars[ornament.name].push_back(ornament.bar);
    }
    std::string words;
    for (auto& [name, in_bars] : bars) {
      words +=
          fmt::format("{} {} in {}", words.empty() ? "" : ",", name, bar_list(std::move(in_bars)));
    }
    if (!words.empty()) {
      passage.remarks.push_back("Of some ornaments only the note is read:" + words + ".");
    }
  }

  void add_part(WrittenPart part, HandNotes& all) {
    settle_fingers(part);
    for (NoteProblem& problem : part.problems) {
      const WrittenNote& note = part.notes[problem.note];
      reporter_.report(problem.code, problem.span, musical_place(part, note, note.hand),
                       std::move(problem.message));
    }
    const std::array<Ticks, 2> ticks{all.ticks_per_quarter, part.ticks_per_quarter};
    const Ticks common = std::lcm(part.ticks_per_quarter, all.ticks_per_quarter);
    refine_ticks(part.notes, common / part.ticks_per_quarter);
    refine_lengths(part.measures, common / part.ticks_per_quarter);
    for (auto& notes : all.by_hand) refine_ticks(notes, common / all.ticks_per_quarter);
    refine_lengths(all.measures, common / all.ticks_per_quarter);
    all.ticks_per_quarter = common;
    add_notes(part.notes, all);
    const Span begin = part.measures.front().span;
    join_measures(all.measures, std::move(part.measures));
    join_changes(all.meters, part.meters);
    join_changes(all.tempos, part.tempos);
    join_changes(all.keys, part.keys);
    join_changes(all.words, part.words);
    if (can_be_counted(all.measures)) return;
    reporter_.report(
        "musicxml-time", begin,
        fmt::format("expected parts whose times can be counted together exactly, found "
                    "quarter notes in {} and in {} divisions",
                    ticks[0], ticks[1]));
    all = {};
  }

  static void add_notes(std::vector<WrittenNote>& notes, HandNotes& all) {
    for (const Hand hand : {Hand::right, Hand::left}) {
      auto& of_hand = all.by_hand.at(static_cast<std::size_t>(hand));
      const auto more = std::ranges::count(notes, hand, &WrittenNote::hand);
      of_hand.reserve(of_hand.size() + static_cast<std::size_t>(more));
    }
    for (WrittenNote& note : notes) {
      all.by_hand.at(static_cast<std::size_t>(note.hand)).push_back(std::move(note));
    }
  }

  void add_line(Hand hand, HandNotes& notes, Passage& passage) {
    auto& of_hand = notes.by_hand.at(static_cast<std::size_t>(hand));
    if (of_hand.empty()) return;
    Line line = line_of_notes(hand, std::move(of_hand), notes.measures, notes.ticks_per_quarter);
    note_ties(line, resolve_ties(line));
    // A sign on a tied continuation goes on from the stroke before.
    for (Event& event : line.events) {
      if (event.struck_count() == 0) event.ornament = Ornament::none;
    }
    passage.lines.push_back(std::move(line));
  }

  void note_ties(const Line& line, const std::vector<Span>& to_nothing) {
    if (to_nothing.empty()) return;
    std::vector<std::pair<std::uint32_t, std::int32_t>> bars;
    for (const Event& event : line.events) {
      for (const Note& note : event.notes) {
        if (note.tied) bars.emplace_back(note.span.begin, event.bar);
      }
    }
    std::sort(bars.begin(), bars.end());
    for (const Span span : to_nothing) {
      const auto found = std::lower_bound(bars.begin(), bars.end(), std::pair(span.begin, 0));
      ties_.note(span, line.hand, found->second);
    }
  }

  const ReadOptions& options_;
  Reporter& reporter_;
  PieceNames piece_;
  std::vector<PartInfo> parts_;
  TiesToNothing ties_;
};

/// Reports XML that is not well formed.
void report_xml(const pugi::xml_parse_result& result, std::string_view text, Reporter& reporter) {
  const std::size_t at = std::min<std::size_t>(
      static_cast<std::size_t>(std::max<std::ptrdiff_t>(0, result.offset)), text.size());
  std::string found = result.description();
  if (!found.empty() && found.front() >= 'A' && found.front() <= 'Z') {
    found.front() = static_cast<char>(found.front() - 'A' + 'a');
  }
  reporter.report("xml", span_at(at, at < text.size() ? 1 : 0),
                  "expected well-formed XML, found: " + found);
}

/// The text of an element is kept in the element itself, which saves a node for most of them.
constexpr unsigned int kParsing =
    pugi::parse_minimal | pugi::parse_escapes | pugi::parse_cdata | pugi::parse_embed_pcdata;

Score read_text(std::string_view text, const ReadOptions& options, Reporter& reporter) {
  // The document is built inside a copy of the text, and gone before the score is looked at.
  std::string buffer(text);
  pugi::xml_document document;
  const pugi::xml_parse_result result =
      document.load_buffer_inplace(buffer.data(), buffer.size(), kParsing, pugi::encoding_utf8);
  if (result.status == pugi::status_out_of_memory) throw std::bad_alloc();
  if (!result) {
    report_xml(result, text, reporter);
    return {};
  }
  const pugi::xml_node score = document.document_element();
  const std::string_view name = score.name();
  if (name == "score-partwise" || name == "score-timewise") {
    return MusicXmlReader(score, options, reporter).read();
  }
  reporter.report(
      "musicxml", span_of(score),
      fmt::format("expected a MusicXML score, score-partwise or score-timewise, found {}",
                  quoted(name)));
  return {};
}

bool fits(std::size_t size, Reporter& reporter) {
  if (size <= kLargestMusicXml) return true;
  reporter.report("too-large", {},
                  fmt::format("expected at most {} bytes, found {}", kLargestMusicXml, size));
  return false;
}

}  // namespace

ReadResult read_musicxml(const Source& source, const ReadOptions& options) {
  ReadResult result;
  Reporter reporter(&DiagnosticCode::in_musicxml);
  if (!fits(source.text().size(), reporter)) return {{}, reporter.take(), {}};
  std::string_view bytes = source.text();
  std::optional<std::string> text;
  if (form_of(source) == SourceForm::packed_musicxml) {
    text = unpack_mxl(bytes, reporter);
    if (!text) return {{}, reporter.take(), {}};
    bytes = *text;
  }
  if (auto transcoded = transcoded_xml(bytes, reporter)) text = std::move(transcoded);
  if (text) result.unpacked.emplace(source.name(), std::move(*text));
  if (reporter.errors() == 0) {
    result.score = read_text(text_read(result, source).text(), options, reporter);
  }
  result.diagnostics = reporter.take();
  return result;
}

}  // namespace fingerturn
