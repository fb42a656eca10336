#pragma once

#include "fingerturn/analysed.hpp"
#include "fingerturn/diagnostic_code.hpp"
#include "fingerturn/score.hpp"
#include "fingerturn/source.hpp"

#include <cstdint>
#include <functional>
#include <span>
#include <string>
#include <string_view>

/// Writers: each takes finished results and returns text, or hands it on as it is made. They
/// compute nothing of their own, and the same input gives the same bytes. All text is UTF-8 and,
/// but for MusicXML, ends with a line feed.
///
///     const AnalysedScore analysed("warmup.passage", read.score);
///     std::cout << write_text(analysed, TextStyle{.columns = 60});
namespace fingerturn {

/// Takes a report piece by piece as it is made, so that a long one is nowhere whole. What it throws
/// passes through the writer.
using TextSink = std::function<void(std::string_view)>;

/// How the text report looks.
struct TextStyle {
  int columns = 80;       ///< the width to keep to; less than kFewestColumns counts as that
  bool ascii = false;     ///< no character beyond ASCII except in titles
  bool detail = false;    ///< each event's reason
  bool cues = false;      ///< each event in a short line for practising
  bool trace = false;     ///< the swing as a small drawing, instead of its directions in signs
  bool colour = false;    ///< terminal colours
  bool brief = false;     ///< without the legend, and the caution in one sentence
  bool few_rows = false;  ///< below the fingers the kind, the way to play, and what passes
};
inline constexpr int kFewestColumns = 32;

/// What study notes in Markdown say beside the tables.
struct MarkdownStyle {
  bool detail = false;  ///< each event's reason
  bool cues = false;    ///< each event in a short line for practising
};

/// What the music on a page shows beside the notes and the swings.
struct MusicStyle {
  /// At the first place of a hand and after far moves, the keys where it lies with its fingers.
  bool keys = false;
};

/// How a page looks.
struct PageStyle {
  bool unfolded = false;  ///< the folds with a cue for every note are open, and so are printed
  bool detail = false;    ///< and there each event's reason
  /// The file with the contents of the folder that the page lies in, to which it leads back; empty
  /// where there is none.
  std::string index{};
  MusicStyle music{};
};

/// The paper that sheets of music are for; each has a margin of 12 mm.
enum class Paper : std::uint8_t { a4, a4_landscape, letter, letter_landscape };
/// How sheets of music look.
struct SheetStyle {
  Paper paper = Paper::a4;
  MusicStyle music{};
};

/// The caution that stands in every report.
std::string_view caution() noexcept;
/// The same in one sentence, for brief ones.
std::string_view brief_caution() noexcept;

/// The report for the music stand.
std::string write_text(const AnalysedScore& analysed, const TextStyle& style);
void write_text(const AnalysedScore& analysed, const TextStyle& style, const TextSink& sink);
/// A page to hand out: HTML with all that it needs in it, without scripts, for screens of any width
/// and for print. Several passages get a contents list.
std::string write_html(const AnalysedScore& analysed, const PageStyle& style = {});
void write_html(const AnalysedScore& analysed, const PageStyle& style, const TextSink& sink);
/// The music of a page, with the ribbons of the swings, on sheets of paper below one another: SVG
/// 1.1, without scripts, with text as text.
std::string write_svg(const AnalysedScore& analysed, const SheetStyle& style = {});
void write_svg(const AnalysedScore& analysed, const SheetStyle& style, const TextSink& sink);
/// Notes to keep in Markdown (CommonMark with tables): a table for each line of bars.
std::string write_markdown(const AnalysedScore& analysed, const MarkdownStyle& style);
void write_markdown(const AnalysedScore& analysed, const MarkdownStyle& style,
                    const TextSink& sink);

/// A page of a folder: the name of its file and what it is about.
struct PageLink {
  std::string file_name;
  std::string title;
  std::string detail{};  ///< what is in it, in a few words
};
/// What the index of a folder shows: links to pages, or the pictures themselves.
enum class IndexOf : std::uint8_t { pages, pictures };
/// The contents of a folder of pages, as a page itself.
std::string write_html_index(std::span<const PageLink> links, IndexOf what);
std::string write_markdown_index(std::span<const PageLink> links);

/// One JSON document, described by docs/analysis.schema.json.
std::string write_json(const AnalysedScore& analysed);
void write_json(const AnalysedScore& analysed, const TextSink& sink);
/// A JSON document of one line for each passage, of the same form.
std::string write_jsonl(const AnalysedScore& analysed);
void write_jsonl(const AnalysedScore& analysed, const TextSink& sink);
/// The passage notation: reading it back gives an equal score.
std::string write_passage(const Score& score);

/// How the marks in a MusicXML score look.
struct MusicXmlStyle {
  bool words = false;  ///< words such as "double left" instead of arrows
  bool signs = true;   ///< false, in a new score: the music and its fingers alone
};
/// A MusicXML score with its analysis: a lyric line of signs under the notes and a legend with the
/// caution at the foot of the first page. `original` is the UTF-8 text that the score was read
/// from, to which the spans of its notes lead. Every byte of it stays but the marks of an earlier
/// run, so that writing twice is writing once; a note whose span fits no `<note>` gets no sign. The
/// text ends as the original does.
std::string write_musicxml(const Source& original, const AnalysedScore& analysed,
                           const MusicXmlStyle& style);
/// A new MusicXML score (score-partwise, 4.0) of the one passage of a score, with the same marks:
/// one part, a staff for each hand. Only the bars that are shown are in it. Empty where there is a
/// `musicxml_problem`.
std::string write_musicxml(const AnalysedScore& analysed, const MusicXmlStyle& style);
/// The same of the music alone, with its fingers.
std::string write_musicxml(const Score& score);
/// Why a score cannot be written as a new MusicXML score, for a person, without a line feed at its
/// end: it has several passages or none, or not all its note values are known. Else empty.
std::string musicxml_problem(const Score& score);
/// The text without the marks that write_musicxml made: what it made them from, byte for byte.
std::string without_own_marks(std::string_view musicxml);

/// A rule, or the list of all rules, for the terminal, `columns` wide.
std::string write_rule(const Rule& rule, int columns);
std::string write_rule_list(int columns);
/// All rules as the page docs/rules.md.
std::string write_rules_page();
/// The same of the messages that a reader can give: docs/messages.md.
std::string write_message(const DiagnosticCode& code, int columns);
std::string write_message_list(int columns);
std::string write_messages_page();

}  // namespace fingerturn
