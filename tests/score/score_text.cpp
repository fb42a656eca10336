#include "score/score_text.hpp"

#include <string_view>

#include <fmt/format.h>

namespace fingerturn::tests {
namespace {

std::string fraction_text(const std::optional<Fraction>& fraction) {
  return fraction ? to_string(*fraction) : "?";
}

std::string note_text(const Note& note) {
  std::string text = to_string(note.pitch);
  if (note.finger) text += fmt::format(":{}", *note.finger);
  for (const Finger finger : note.changes_to) text += fmt::format(">{}", finger);
  for (const Finger finger : note.alternatives) text += fmt::format("/{}", finger);
  if (note.suggested) text += '?';
  if (note.lasts) text += "=" + to_string(*note.lasts);
  if (note.held) text = "(" + text + ")";
  return note.tied ? text + '~' : text;
}

std::string event_text(const Event& event) {
  std::string notes = event.is_rest() ? "r" : "";
  for (const Note& note : event.notes) notes += (notes.empty() ? "" : "+") + note_text(note);
  if (event.rolls_on) notes += " /";
  if (event.ornament == Ornament::trill) notes += " tr";
  if (event.ornament == Ornament::tremolo) notes += " trem";
  return fmt::format("{}  {}  {}  {}{}{}\n", event.bar, fraction_text(event.onset),
                     fraction_text(event.duration), event.grace ? "^" : "", notes,
                     event.breath_after ? " ," : "");
}

std::string_view bar_line_text(BarLineStyle style) {
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

std::string passage_text(const Passage& passage) {
  std::string text = fmt::format("passage \"{}\"\n", passage.title);
  if (!passage.composer.empty()) text += fmt::format("composer \"{}\"\n", passage.composer);
  if (!passage.source.empty()) text += fmt::format("source \"{}\"\n", passage.source);
  if (passage.reach_semitones) text += fmt::format("reach {}\n", *passage.reach_semitones);
  for (const auto& meter : passage.meters) {
    text += fmt::format("meter {} from bar {}\n", to_string(meter.value), meter.bar);
  }
  for (const auto& tempo : passage.tempos) {
    text += fmt::format("tempo {} = {} from bar {}\n", to_string(tempo.value.beat_unit),
                        tempo.value.per_minute, tempo.bar);
  }
  for (const auto& key : passage.keys) {
    text += fmt::format("key {} from bar {}\n", to_string(key.value), key.bar);
  }
  for (const auto& note : passage.notes) {
    text += fmt::format("note \"{}\" before bar {}\n", note.value, note.bar);
  }
  for (const std::string& remark : passage.remarks) text += fmt::format("remark {}\n", remark);
  for (const Line& line : passage.lines) text += line_text(line);
  return text;
}

}  // namespace

std::string line_text(const Line& line) {
  std::string text = to_string(line.hand) + " hand\n";
  auto bar_line = line.bar_lines.begin();
  for (std::size_t place = 0; place <= line.events.size(); ++place) {
    for (; bar_line != line.bar_lines.end() && bar_line->before_event == place; ++bar_line) {
      text += fmt::format("{}\n", bar_line_text(bar_line->style));
    }
    if (place < line.events.size()) text += event_text(line.events[place]);
  }
  for (; bar_line != line.bar_lines.end(); ++bar_line) {
    text += fmt::format("{} out of place\n", bar_line_text(bar_line->style));
  }
  return text;
}

std::string score_text(const Score& score) {
  std::string text;
  for (const Passage& passage : score.passages) text += passage_text(passage);
  return text;
}

}  // namespace fingerturn::tests
