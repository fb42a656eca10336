#include "cli/options/player.hpp"

#include "cli/options/value.hpp"
#include "fingerturn/fingering.hpp"
#include "fingerturn/score.hpp"

#include <string>
#include <string_view>

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

constexpr std::string_view kSmall = "small";

/// Lets a small hand pass, and the reaches that the notation takes.
CLI::Validator plausible_reach() {
  const auto check = [](const std::string& text) {
    const std::optional<int> reach = number_in<int>(text);
    return text == kSmall || (reach && kSmallestReach <= *reach && *reach <= kWidestReach)
               ? std::string()
               : fmt::format("expected semitones, from {} to {}, or small, found \"{}\"",
                             kSmallestReach, kWidestReach, text);
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
  const auto take_reach = [&player](const std::string& text) {
    player.reach_semitones = text == kSmall ? kSmallHandReach : number_in<int>(text);
  };
  command
      .add_option_function<std::string>(
          "--reach", take_reach,
          "Fit the watch list and suggested fingers to a hand that takes this interval with 1-5 in "
          "comfort, in semitones; small is 10")
      ->check(plausible_reach())
      ->type_name("N|small");
}

}  // namespace fingerturn::cli
