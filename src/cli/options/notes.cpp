#include "cli/options/notes.hpp"

#include "cli/options/value.hpp"

#include <cstddef>
#include <cstdint>
#include <string_view>

namespace fingerturn::cli {
namespace {

constexpr int kMostPassages = 1000000;

std::optional<std::int32_t> bar_number(std::string_view text) {
  const std::optional<std::int32_t> number = number_in<std::int32_t>(text);
  return number && *number >= 0 ? number : std::nullopt;
}

/// "5-8", or "5" for one bar; the last may come before the first.
std::optional<BarRange> bar_range(std::string_view text) {
  const std::size_t dash = text.find('-');
  const std::optional<std::int32_t> first = bar_number(text.substr(0, dash));
  const std::optional<std::int32_t> last =
      dash == std::string_view::npos ? first : bar_number(text.substr(dash + 1));
  return first && last ? std::optional(BarRange{*first, *last}) : std::nullopt;
}

/// Throws where a text names no bars.
BarRange bars_in(const std::string& option, const std::string& text) {
  const std::optional<BarRange> bars = bar_range(text);
  if (!bars) {
    throw CLI::ValidationError(option,
                               fmt::format("expected bars as in 5-8 or 5, found \"{}\"", text));
  }
  if (bars->first > bars->last) {
    throw CLI::ValidationError(
        option, fmt::format("expected the first bar before the last, as in {}-{}, found \"{}\"",
                            bars->last, bars->first, text));
  }
  return *bars;
}

}  // namespace

void add_hand(CLI::App& command, std::optional<Hand>& hand, const std::string& description) {
  add_choice(command, "--hand",
             {{"both", std::nullopt}, {"left", Hand::left}, {"right", Hand::right}}, hand,
             description);
}

CLI::Option* add_bars(CLI::App& command, const std::string& name, std::optional<BarRange>& bars,
                      const std::string& description) {
  const auto take = [name, &bars](const std::string& text) { bars = bars_in(name, text); };
  return command.add_option_function<std::string>(name, take, description)->type_name("FIRST-LAST");
}

void add_transposition(CLI::App& command, ChosenNotes& notes) {
  CLI::Option* to =
      command
          .add_option_function<std::string>(
              "--transpose",
              [&notes](const std::string& text) {
                TranspositionResult by = parse_transposition(text);
                if (!by.value) throw CLI::ValidationError("--transpose", by.problem);
                notes.transposition = by.value;
              },
              "Take it in another key with the same fingers: 'up a minor third', 'down 2' "
              "semitones, 'to E-flat'")
          ->type_name("INTERVAL");
  command.add_flag("--all-keys", notes.all_keys, "Take it in all twelve keys, one after another")
      ->excludes(to);
}

void add_passage_and_part(CLI::App& command, ChosenNotes& notes) {
  command.add_option("--passage", notes.passage, "Take the passage of this number only, from 1")
      ->check(number_from(1, kMostPassages))
      ->type_name("N");
  command
      .add_option("--part", notes.part,
                  "Of a MusicXML score take the part of this number only, from 1; else those for "
                  "keyboard")
      ->check(number_from(1, kMostPassages))
      ->type_name("N");
}

void add_chosen_notes(CLI::App& command, ChosenNotes& notes) {
  add_hand(command, notes.hand,
           "Show this hand only; a MusicXML part of one staff is taken as this hand's");
  add_bars(command, "--bars", notes.bars,
           "Show these bars only, as in 5-8; what the bars before prepare still counts");
  add_passage_and_part(command, notes);
}

}  // namespace fingerturn::cli
