#include "write/musicxml/marking.hpp"

#include "catch.hpp"
#include "fingerturn/read.hpp"

#include <algorithm>

namespace fingerturn::tests {
namespace {

constexpr std::size_t kNowhere = std::string_view::npos;

/// What stands between two texts, from `begin` on; empty where they do not.
std::string_view between(std::string_view text, std::string_view before, std::string_view after) {
  const std::size_t found = text.find(before);
  if (found == kNowhere) return {};
  const std::size_t begin = found + before.size();
  const std::size_t end = text.find(after, begin);
  return end == kNowhere ? std::string_view{} : text.substr(begin, end - begin);
}

/// The offsets of all `<note` tags, and their elements' texts.
std::vector<Span> notes_of(std::string_view musicxml) {
  std::vector<Span> notes;
  std::size_t place = musicxml.find("<note");
  while (place != kNowhere) {
    const std::size_t end = std::min(musicxml.find("</note>", place), musicxml.size());
    notes.push_back({static_cast<std::uint32_t>(place), static_cast<std::uint32_t>(end)});
    place = musicxml.find("<note>", end);
  }
  return notes;
}

std::string_view text_of(std::string_view text, Span span) {
  return text.substr(span.begin, span.end - span.begin);
}

}  // namespace

Score score_at(std::string_view musicxml, const std::string& notation) {
  std::vector<Span> places = notes_of(musicxml);
  const auto silent = [&](Span note) {
    return text_of(musicxml, note).find("<pitch>") == kNowhere;
  };
  places.erase(std::remove_if(places.begin(), places.end(), silent), places.end());
  const Source source("notes.passage", notation);
  ReadResult read = read_notation(source);
  REQUIRE(render(source, read.diagnostics) == "");
  auto place = places.begin();
  for (Passage& passage : read.score.passages) {
    for (Line& line : passage.lines) {
      for (Event& event : line.events) {
        for (Note& note : event.notes) {
          REQUIRE(place != places.end());
          note.span = {place->begin, place->begin + 5};
          ++place;
        }
      }
    }
  }
  REQUIRE(place == places.end());
  return read.score;
}

std::string marked(const std::string& musicxml, const std::string& notation,
                   const MusicXmlStyle& style) {
  const Score score = score_at(musicxml, notation);
  return write_musicxml(Source("score.musicxml", musicxml), AnalysedScore("score.musicxml", score),
                        style);
}

std::vector<std::string> signs_under(std::string_view musicxml) {
  std::vector<std::string> signs;
  for (const Span note : notes_of(musicxml)) {
    std::string sign;
    std::string_view rest = text_of(musicxml, note);
    for (std::size_t at = rest.find("<lyric "); at != kNowhere; at = rest.find("<lyric ")) {
      rest.remove_prefix(at + 1);
      const std::string_view lyric = rest.substr(0, rest.find("</lyric>"));
      if (lyric.find("name=\"fingerturn\"") == kNowhere) continue;
      if (!sign.empty()) sign += ' ';
      sign += between(lyric, "number=\"", "\"");
      sign += ':';
      sign += between(lyric, "<text>", "</text>");
    }
    signs.push_back(sign);
  }
  return signs;
}

std::string legend_in(std::string_view musicxml) {
  const std::string_view rest =
      between(musicxml, "<credit-words xml:lang=\"en-x-forearm\"", "</credit-words>");
  return std::string(rest.substr(std::min(rest.find('>') + 1, rest.size())));
}

std::string partwise(const std::vector<std::string>& bars) {
  std::string text =
      "<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n"
      "<score-partwise version=\"3.0\">\n"
      "<part-list><score-part id=\"P1\"><part-name>Piano</part-name></score-part></part-list>\n"
      "<part id=\"P1\">\n";
  for (std::size_t i = 0; i < bars.size(); ++i) {
    text += "<measure number=\"" + std::to_string(i + 1) + "\">\n" + bars[i] + "</measure>\n";
  }
  return text + "</part>\n</score-partwise>\n";
}

std::string quarter(std::string_view key, std::string_view more) {
  const bool chord = key.front() == '+';
  const std::string pitch(key.substr(chord ? 1 : 0));
  return std::string("<note>") + (chord ? "<chord/>" : "") + "<pitch><step>" + pitch.substr(0, 1) +
         "</step><octave>" + pitch.substr(1) +
         "</octave></pitch><duration>1</duration><type>quarter</type>" + std::string(more) +
         "</note>\n";
}

std::size_t count_of(std::string_view text, std::string_view part) {
  std::size_t count = 0;
  for (std::size_t at = text.find(part); at != kNowhere; at = text.find(part, at + 1)) ++count;
  return count;
}

}  // namespace fingerturn::tests
