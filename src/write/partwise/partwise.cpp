#include "write/partwise/partwise.hpp"

#include "write/notated/bars.hpp"
#include "write/partwise/bar_signs.hpp"
#include "write/partwise/chords.hpp"
#include "write/partwise/head.hpp"
#include "write/partwise/signatures.hpp"

#include <algorithm>
#include <cstdlib>
#include <numeric>
#include <utility>

namespace fingerturn {
namespace {

/// The fewest divisions of a quarter in which every written time is a whole number: a first walk
/// through the bars.
Divisions divisions_of(const AnalysedPassage& passage) {
  NotatedBars bars(passage, lines_of(passage));
  const Ticks whole = bars.ticks_in_whole().value_or(4);
  Ticks common = whole / 4;
  while (const std::optional<NotatedBar> bar = bars.next()) {
    common = std::gcd(common, bar->length);
    for (const NotatedHand& hand : bar->hands) {
      for (const NotatedVoice& voice : hand.voices) {
        for (const NotatedChord& chord : voice) {
          common = std::gcd(std::gcd(common, chord.onset), chord.length);
        }
      }
    }
  }
  return {whole, common};
}

/// Whether the first bar is an upbeat, whose number is not counted.
bool is_upbeat(const NotatedBar& bar, Ticks ticks_in_whole) {
  return bar.meter && bar.length < bar.meter->beats * (ticks_in_whole / bar.meter->beat_type);
}

class PartWriter {
 public:
  explicit PartWriter(const AnalysedPassage& passage)
      : passage_(&passage.written()),
        bars_(passage, lines_of(passage)),
        divisions_(divisions_of(passage)),
        signatures_(*passage_, bars_.lines(), divisions_.of_quarter()),
        chords_(divisions_, xml_) {}

  PartwiseScore write() {
    xml_.add_line(R"(<?xml version="1.0" encoding="UTF-8"?>)");
    xml_.add_line(
        "<!DOCTYPE score-partwise PUBLIC \"-//Recordare//DTD MusicXML 4.0 Partwise//EN\" "
        "\"http://www.musicxml.org/dtds/partwise.dtd\">");
    xml_.open("score-partwise version=\"4.0\"");
    add_head(*passage_, xml_);
    xml_.open("part id=\"P1\"");
    for (bool is_first = true; const std::optional<NotatedBar> bar = bars_.next();
         is_first = false) {
      add_bar(*bar, is_first);
    }
    xml_.close();
    xml_.close();
    return {xml_.take(), chords_.take_offsets()};
  }

 private:
  void add_bar(const NotatedBar& bar, bool is_first) {
    const bool is_short = is_first && is_upbeat(bar, divisions_.ticks_in_whole);
    xml_.open(fmt::format("measure number=\"{}\"{}", bar.bar, is_short ? " implicit=\"yes\"" : ""));
    add_left_bar_line(bar, is_first, xml_);
    signatures_.add(bar, xml_);
    now_ = 0;
    for (std::size_t hand = 0; hand < bar.hands.size(); ++hand) add_hand(bar, hand);
    add_right_bar_line(bar, xml_);
    xml_.close();
  }

  /// The voices of the first staff are 1 and 2, those of the second 5 and 6: what editors expect,
  /// who keep four for each staff.
  void add_hand(const NotatedBar& bar, std::size_t number) {
    constexpr std::size_t kVoicesOfStaff = 4;
    const NotatedHand& hand = bar.hands[number];
    VoicePlace place{&bars_.lines()[number].written(), bar.start, bar.length,
                     kVoicesOfStaff * number + 1, bar.hands.size() > 1 ? number + 1 : 0};
    NotatedVoice first = hand.voices[0];
    if (!hand.has_two_voices()) fill(first, bar.length);
    add_voice(first, place);
    ++place.voice;
    if (hand.has_two_voices()) add_voice(hand.voices[1], place);
  }

  /// A hand that has less than the bar rests to its end.
  void fill(NotatedVoice& voice, Ticks length) const {
    Ticks end = 0;
    for (const NotatedChord& chord : voice) end = std::max(end, chord.onset + chord.length);
    if (end >= length) return;
    NotatedChord rest{.onset = end, .length = length - end};
    const std::optional<Fraction> time = reduced(rest.length, divisions_.ticks_in_whole);
    const std::vector<NoteValue> values = time ? values_of(*time) : std::vector<NoteValue>();
    if (end == 0 || values.empty()) return voice.push_back(rest);
    for (const NoteValue& value : values) {
      rest.value = value;
      rest.length = in_ticks(length_of(value), divisions_.ticks_in_whole);
      voice.push_back(rest);
      rest.onset += rest.length;
    }
  }

  void add_voice(const NotatedVoice& voice, const VoicePlace& place) {
    go_to(0, place);
    for (std::size_t i = 0; i < voice.size(); ++i) {
      go_to(voice[i].onset, place);
      chords_.add(voice, i, place);
      now_ += voice[i].length;
    }
  }

  void go_to(Ticks onset, const VoicePlace& place) {
    if (onset == now_) return;
    xml_.open(onset < now_ ? "backup" : "forward");
    xml_.add("duration", divisions_.of(std::abs(onset - now_)));
    if (onset > now_) {
      xml_.add("voice", place.voice);
      if (place.staff > 0) xml_.add("staff", place.staff);
    }
    xml_.close();
    now_ = onset;
  }

  const Passage* passage_;
  NotatedBars bars_;
  Divisions divisions_;
  XmlText xml_;
  Signatures signatures_;
  ChordWriter chords_;
  Ticks now_ = 0;  ///< up to where the bar at hand is written
};

}  // namespace

PartwiseScore partwise_score(const AnalysedPassage& passage) { return PartWriter(passage).write(); }

}  // namespace fingerturn
