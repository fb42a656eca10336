#include "write/page/ribbon/keys.hpp"

#include "hand/keyboard.hpp"

#include <algorithm>
#include <cmath>
#include <string>

namespace fingerturn {
namespace {

constexpr double kWhite = 1.5;  // the width of a white key
constexpr double kWhiteLength = 5.2;
constexpr double kBlack = 1.05;
constexpr double kBlackLength = 3;
constexpr double kAboveEdge = 0.55;    // from the foot of a digit to the end of its key
constexpr std::size_t kMostKeys = 29;  // what a hand can lie over: two octaves and a third

/// The middle of a key, in white keys from A0.
double place_of(int midi) { return static_cast<double>(place_of_key(midi)) / kQuartersInKey; }

bool is_known(const Event& event) {
  return std::ranges::all_of(event.notes,
                             [](const Note& note) { return note.held || note.finger; });
}

/// Adds the fingers of an event; false where one of them is elsewhere, or its key is taken.
bool add_fingers(const Event& event, FingersOnKeys& fingers) {
  for (const Note& note : event.notes) {
    if (note.held) continue;
    const int key = midi_number(note.pitch);
    for (const auto& [taken, finger] : fingers) {
      if ((taken == key) != (finger == *note.finger)) return false;
    }
    fingers.emplace(key, *note.finger);
  }
  return true;
}

class KeyRow {
 public:
  explicit KeyRow(const FingersOnKeys& fingers) : fingers_(fingers) {
    first_ = fingers.begin()->first;
    last_ = fingers.rbegin()->first;
    if (is_black_key(first_)) --first_;
    if (is_black_key(last_)) ++last_;
  }

  Inks draw() const {
    Inks inks;
    for (const bool black : {false, true}) {
      for (int key = first_; key <= last_; ++key) {
        if (is_black_key(key) == black) draw_key(key, inks);
      }
    }
    return inks;
  }

 private:
  void draw_key(int key, Inks& inks) const {
    const bool black = is_black_key(key);
    const double middle = (place_of(key) - place_of(first_) + 0.5) * kWhite;
    const double half = (black ? kBlack : kWhite) / 2;
    const double length = black ? kBlackLength : kWhiteLength;
    inks.push_back(plate_ink(InkKind::key, {middle - half, 0, middle + half, length}, 0,
                             black ? InkStyle::black_key : InkStyle::white_key));
    const auto finger = fingers_.find(key);
    if (finger == fingers_.end()) return;
    inks.push_back(text_ink(InkKind::key,
                            {std::to_string(finger->second),
                             {middle, length - kAboveEdge},
                             kFingerSize,
                             Anchor::middle},
                            black ? InkStyle::on_black_key : InkStyle::on_white_key));
  }

  const FingersOnKeys& fingers_;
  int first_ = 0;
  int last_ = 0;
};

}  // namespace

FingersOnKeys fingers_on_keys(const AnalysedLine& line, std::size_t number) {
  FingersOnKeys fingers;
  for (std::size_t i = number; i < line.size(); ++i) {
    FingersOnKeys more = fingers;
    if (!is_known(line[i].written) || !add_fingers(line[i].written, more)) break;
    if (more.rbegin()->first - more.begin()->first >= static_cast<int>(kMostKeys)) break;
    fingers = std::move(more);
    constexpr std::size_t kFingers = 5;
    if (fingers.size() == kFingers) break;
  }
  return fingers;
}

bool takes_place(const AnalysedLine& line, std::size_t number) {
  constexpr double kFar = 4;  // white keys
  if (!is_known(line[number].written)) return false;
  if (std::abs(line[number].found.carry.value_or(0)) >= kFar) return true;
  return number == 0 || (number > 0 && !is_known(line[number - 1].written) &&
                         line[number].found.gesture != line[number - 1].found.gesture);
}

Inks draw_keys(const FingersOnKeys& fingers) {
  return fingers.empty() ? Inks() : KeyRow(fingers).draw();
}

}  // namespace fingerturn
