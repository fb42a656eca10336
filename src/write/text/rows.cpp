#include "write/text/rows.hpp"

#include "text/cells.hpp"
#include "write/shared/note_words.hpp"

#include <algorithm>
#include <cmath>
#include <span>
#include <utility>

#include <fmt/core.h>

namespace fingerturn {
namespace {

constexpr std::string_view kRest = "r";
constexpr std::string_view kHeld = "~";

Cell prepare_cell(const EventAnalysis& entry, const Signs& signs) {
  if (entry.prepare) return {std::string(sign_of(*entry.prepare, signs)), Emphasis::plain};
  const bool unprepared =
      entry.rotation == Rotation::single_rotation || entry.rotation == Rotation::level;
  if (unprepared) return {std::string(signs.nothing), Emphasis::faint};
  return {"?", Emphasis::open};
}

/// "→", or where a silent change turns the forearm after it "→(←)".
Cell play_cell(const EventAnalysis& entry, Hand hand, const Signs& signs) {
  const auto sign = [&](Side side) { return sign_of(direction_of(hand, side), signs); };
  if (entry.side) {
    std::string play(sign(*entry.side));
    if (entry.change) play += fmt::format("({})", sign(*entry.change));
    return {std::move(play), Emphasis::plain};
  }
  if (entry.rotation == Rotation::level) return {std::string(signs.nothing), Emphasis::faint};
  return {"?", Emphasis::open};
}

Cell forearm_cell(const EventAnalysis& entry) {
  if (!entry.side) return {};
  return {*entry.side == Side::toward_fifth ? "sup" : "pron", Emphasis::plain};
}

/// The fingers that hold keys down, or the keys where the fingers are not known.
Cell held_cell(std::span<const HeldKey> held) {
  std::string words;
  for (const HeldKey& key : held) {
    words += words.empty() ? "" : "+";
    words += key.finger ? std::to_string(*key.finger) : to_string(key.pitch);
  }
  return {words, Emphasis::plain};
}

std::string_view ornament_words(Ornament ornament) {
  switch (ornament) {
    case Ornament::trill:
      return " tr";
    case Ornament::tremolo:
      return " trem";
    case Ornament::none:
      break;
  }
  return {};
}

/// The way and how many white keys; nothing where the hand stays.
Cell carry_cell(const EventAnalysis& entry, const Signs& signs) {
  const double carry = entry.carry.value_or(0);
  if (carry == 0) return {};
  const Direction direction = carry > 0 ? Direction::right : Direction::left;
  return {fmt::format("{}{}", sign_of(direction, signs), std::abs(carry)), Emphasis::plain};
}

}  // namespace

std::string_view label_of(Row row) noexcept {
  switch (row) {
    case Row::rotation:
      return "rotation";
    case Row::prepare:
      return "prepare";
    case Row::play:
      return "play";
    case Row::forearm:
      return "forearm";
    case Row::crossing:
      return "crossing";
    case Row::held:
      return "held";
    case Row::carry:
      return "carry";
    case Row::depth:
      break;
  }
  return "depth";
}

bool says_something(const Cell& cell) noexcept { return !cell.text.empty() && cell.text != "?"; }

std::vector<std::string> note_cells(const ShownEvent& shown) {
  const Event& event = *shown.event;
  std::vector<std::string> cells;
  if (event.is_rest()) cells.emplace_back(kRest);
  if (!event.is_rest() && event.struck_count() == 0) cells.emplace_back(kHeld);
  for (auto note = event.notes.rbegin(); note != event.notes.rend(); ++note) {
    if (!note->held) cells.push_back((event.grace ? "^" : "") + to_string(note->pitch));
  }
  if (event.rolls_on) cells.back() += '/';
  cells.back() += ornament_words(event.ornament);
  if (event.breath_after) cells.back() += ',';
  return cells;
}

std::vector<std::string> finger_cells(const ShownEvent& shown, const Line& line) {
  std::vector<std::string> cells;
  const std::vector<Note>& notes = shown.event->notes;
  for (auto note = notes.rbegin(); note != notes.rend(); ++note) {
    if (note->held) continue;
    cells.push_back(finger_words(fingers_on_key(line, shown.place, *note), note->suggested));
  }
  return cells;
}

Cell row_cell(Row row, const ShownEvent& shown, const AnalysedLine& line, const Signs& signs) {
  if (shown.entry == nullptr) return {};
  const EventAnalysis& entry = *shown.entry;
  switch (row) {
    case Row::rotation:
      return {std::string(short_name_of(entry.rotation)), emphasis_of(entry.rotation)};
    case Row::prepare:
      return prepare_cell(entry, signs);
    case Row::play:
      return play_cell(entry, line.hand(), signs);
    case Row::forearm:
      return forearm_cell(entry);
    case Row::crossing:
      return {std::string(short_name_of(entry.crossing)), Emphasis::strong};
    case Row::held:
      return held_cell(line.held_at(shown.place));
    case Row::carry:
      return carry_cell(entry, signs);
    case Row::depth:
      break;
  }
  return {entry.in_out ? std::string(name_of(*entry.in_out)) : "", Emphasis::plain};
}

std::size_t width_of(const ShownEvent& shown, const AnalysedLine& line) {
  std::size_t width = 2;  // room for a rest or a held note to stand apart from its neighbours
  for (const std::string& cell : note_cells(shown)) width = std::max(width, cell.size());
  for (const std::string& cell : finger_cells(shown, line.written()))
    width = std::max(width, cell.size());
  for (const Row row : kRows) {
    const Cell cell = row_cell(row, shown, line, kUnicodeSigns);
    width = std::max(width, count_cells(cell.text));
  }
  return width;
}

}  // namespace fingerturn
