#include "fingerturn/read.hpp"
#include "read/musicxml/container.hpp"
#include "read/musicxml/element.hpp"
#include "read/musicxml/fingering.hpp"
#include "read/musicxml/hand_line.hpp"
#include "read/musicxml/hands.hpp"
#include "read/musicxml/part_list.hpp"
#include "read/musicxml/place.hpp"
#include "read/musicxml/text.hpp"
#include "read/musicxml/tick_counter.hpp"
#include "score/ties.hpp"
#include "score/timeline.hpp"

#include <algorithm>
#include <array>
#include <limits>
#include <numeric>
#include <utility>

#include <fmt/core.h>

namespace fingerturn {
namespace {

/// The parts of one player in one piece: their notes with the hands that play them.
struct HandNotes {
  std::array<std::vector<WrittenNote>, 2> by_hand;
  std::vector<WrittenMeasure> measures;
  Ticks ticks_per_quarter = 1;
};

/// The measures of two parts stand together, each as long as the longer.
void join_measures(std::vector<WrittenMeasure>& measures,
                   const std::vector<WrittenMeasure>& others) {
  for (std::size_t i = 0; i < others.size(); ++i) {
    if (i >= measures.size()) {
      measures.push_back(others[i]);
      continue;
    }
    measures[i].length = std::max(measures[i].length, others[i].length);
    if (!measures[i].meter) measures[i].meter = others[i].meter;
    if (!measures[i].tempo) measures[i].tempo = others[i].tempo;
  }
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

std::string title_of(pugi::xml_node score) {
  const std::string work = line_of_text(text_of(score.child("work").child("work-title")));
  std::string movement = line_of_text(text_of(score.child("movement-title")));
  if (work.empty() || work == movement) return movement;
  return movement.empty() ? work : work + ", " + movement;
}

std::string composer_of(pugi::xml_node score) {
  for (const pugi::xml_node creator : score.child("identification").children("creator")) {
    if (std::string_view(creator.attribute("type").value()) == "composer") {
      return line_of_text(text_of(creator));
    }
  }
  return {};
}

class MusicXmlReader {
 public:
  MusicXmlReader(pugi::xml_node score, const ReadOptions& options, Reporter& reporter)
      : score_(score), options_(options), reporter_(reporter), parts_(parts_of(score)) {}

  Score read() {
    Score score;
    const std::vector<ChosenParts> chosen = choose_parts(parts_, options_, reporter_);
    for (const ChosenParts& parts : chosen) {
      reporter_.start_passage(score.passages.size());
      score.passages.push_back(read_passage(parts, chosen.size() > 1));
    }
    const bool empty = std::all_of(score.passages.begin(), score.passages.end(),
                                   [](const Passage& passage) { return passage.lines.empty(); });
    if (empty && reporter_.errors() == 0) {
      reporter_.report("no-notes", {}, "expected notes for a keyboard in this score, found none");
    }
    return score;
  }

 private:
  Passage read_passage(const ChosenParts& chosen, bool one_of_several) {
    Passage passage;
    passage.title = title_of(score_);
    const std::string& name = parts_[chosen.parts.front()].name;
    if (one_of_several && !name.empty()) {
      passage.title += passage.title.empty() ? name : " (" + name + ")";
    }
    passage.composer = composer_of(score_);
    passage.source = line_of_text(text_of(score_.child("identification").child("source")));
    passage.remarks = chosen.remarks;
    HandNotes notes = read_parts(chosen, passage);
    add_changes(notes.measures, passage);
    for (const Hand hand : {Hand::right, Hand::left}) add_line(hand, notes, passage);
    settle_changes(passage);
    return passage;
  }

  HandNotes read_parts(const ChosenParts& chosen, Passage& passage) {
    HandNotes all;
    for (std::size_t i = 0; i < chosen.parts.size(); ++i) {
      const PartInfo& info = parts_[chosen.parts[i]];
      WrittenPart part = read_part(info.measures, reporter_);
      VoiceHands hands = hands_of(part, info, options_.hand);
      if (chosen.parts.size() > 1) {
        hands.of_voice.assign(part.voices.size(), i == 0 ? Hand::right : Hand::left);
      } else if (!part.notes.empty()) {
        passage.remarks.insert(passage.remarks.begin(), hands.remark);
      }
      add_part(std::move(part), hands, all);
    }
    return all;
  }

  void add_part(WrittenPart part, const VoiceHands& hands, HandNotes& all) {
    const auto hand_of = [&hands](const WrittenNote& note) { return hands.of(note); };
    settle_fingers(part, hand_of);
    for (NoteProblem& problem : part.problems) {
      const WrittenNote& note = part.notes[problem.note];
      reporter_.report(problem.code, problem.span, musical_place(part, note, hand_of(note)),
                       std::move(problem.message));
    }
    const std::array<Ticks, 2> ticks{all.ticks_per_quarter, part.ticks_per_quarter};
    const Ticks common = std::lcm(part.ticks_per_quarter, all.ticks_per_quarter);
    refine_ticks(part, common / part.ticks_per_quarter);
    for (auto& notes : all.by_hand) refine_ticks(notes, common / all.ticks_per_quarter);
    for (WrittenMeasure& measure : all.measures) measure.length *= common / all.ticks_per_quarter;
    all.ticks_per_quarter = common;
    for (WrittenNote& note : part.notes) {
      all.by_hand.at(static_cast<std::size_t>(hand_of(note))).push_back(std::move(note));
    }
    join_measures(all.measures, part.measures);
    if (can_be_counted(all.measures)) return;
    reporter_.report(
        "musicxml-time", part.measures.front().span,
        fmt::format("expected parts whose times can be counted together exactly, found "
                    "quarter notes in {} and in {} divisions",
                    ticks[0], ticks[1]));
    all = {};
  }

  void add_line(Hand hand, HandNotes& notes, Passage& passage) {
    auto& of_hand = notes.by_hand.at(static_cast<std::size_t>(hand));
    if (of_hand.empty()) return;
    Line line = line_of_notes(hand, std::move(of_hand), notes.measures, notes.ticks_per_quarter);
    report_ties(line, resolve_ties(line));
    passage.lines.push_back(std::move(line));
  }

  void report_ties(const Line& line, const std::vector<Span>& to_nothing) {
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
      MusicalPlace where;
      where.hand = line.hand;
      where.bar = found->second;
      reporter_.report("tie-to-nothing", span, where,
                       "expected another note on this key for the tie to lead to, found none "
                       "before a rest or the end");
    }
  }

  static void add_changes(const std::vector<WrittenMeasure>& measures, Passage& passage) {
    for (const WrittenMeasure& measure : measures) {
      if (measure.meter) passage.meters.push_back({measure.bar, *measure.meter});
      if (measure.tempo) passage.tempos.push_back({measure.bar, *measure.tempo});
    }
  }

  pugi::xml_node score_;
  const ReadOptions& options_;
  Reporter& reporter_;
  std::vector<PartInfo> parts_;
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
