#include "cli/options/player.hpp"

#include "cli/options/value.hpp"
#include "fingerturn/score.hpp"

namespace fingerturn::cli {
namespace {

/// Lets the tempos pass that the notation takes.
CLI::Validator plausible_tempo() {
  const auto check = [](const std::string& text) {
    const std::optional<double> tempo = number_in<double>(text);
    return tempo && is_plausible_tempo(*tempo)
               ? std::string()
               : fmt::format("expected quarter notes a minute, from 1 to 2000, found \"{}\"", text);
  };
  return {check, ""};
}

}  // namespace

void add_player(CLI::App& command, AnalyseOptions& player) {
  command
      .add_option("--tempo", player.quarters_per_minute,
                  "Take this tempo, in quarter notes a minute, instead of the written ones")
      ->check(plausible_tempo())
      ->type_name("N");
  command
      .add_option("--reach", player.reach_semitones,
                  "Fit the watch list to a hand that takes this interval with 1-5 in comfort, in "
                  "semitones")
      ->check(number_from(kSmallestReach, kWidestReach))
      ->type_name("N");
}

}  // namespace fingerturn::cli
