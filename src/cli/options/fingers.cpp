#include "cli/options/fingers.hpp"

#include "cli/options/notes.hpp"
#include "cli/options/value.hpp"
#include "fingerturn/fingering.hpp"

#include <cstddef>
#include <cstdint>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

namespace fingerturn::cli {
namespace {

/// "4-5"; throws where a text names no two fingers.
FingerPair pair_in(const std::string& text) {
  const auto is_finger = [](char letter) { return '1' <= letter && letter <= '5'; };
  if (text.size() == 3 && is_finger(text[0]) && text[1] == '-' && is_finger(text[2]) &&
      text[0] != text[2]) {
    return {static_cast<Finger>(text[0] - '0'), static_cast<Finger>(text[2] - '0')};
  }
  throw CLI::ValidationError("--avoid",
                             fmt::format("expected two fingers as in 4-5, found \"{}\"", text));
}

/// "3:2.5"; throws where a text names no bar and beat.
BeatInBar moment_in(const std::string& text) {
  const std::size_t colon = text.find(':');
  const auto bar = number_in<std::int32_t>(std::string_view(text).substr(0, colon));
  const auto beat = colon == std::string::npos
                        ? std::optional(1.0)
                        : number_in<double>(std::string_view(text).substr(colon + 1));
  if (bar && beat && *bar >= 0 && *beat >= 1) return {*bar, *beat};
  throw CLI::ValidationError(
      "--why", fmt::format("expected a bar and a beat as in 3:2.5, found \"{}\"", text));
}

}  // namespace

void add_suggest(CLI::App& command, bool& suggest) {
  command.add_flag("--suggest", suggest,
                   "Fill in missing fingers first; what is filled in is marked with ?");
}

void add_alternatives(CLI::App& command, int& alternatives) {
  command
      .add_option("--alternatives", alternatives,
                  "Give this many fingerings of each passage, the easiest first")
      ->check(number_from(1, static_cast<int>(kMostFingerings)))
      ->type_name("N");
}

void add_wishes(CLI::App& command, FingerOptions& fingers) {
  command
      .add_option_function<std::vector<std::string>>(
          "--avoid",
          [&fingers](const std::vector<std::string>& texts) {
            for (const std::string& text : texts) fingers.wishes.avoid.push_back(pair_in(text));
          },
          "Do not suggest these two fingers one after the other, as in 4-5, where there is "
          "another way; may be given more than once")
      ->type_name("A-B")
      ->expected(1)
      ->take_all();
  command.add_flag("--prefer-thumb-on-white", fingers.wishes.thumb_on_white,
                   "Suggest the thumb on black keys only where all else is much harder");
  add_bars(command, "--keep", fingers.kept,
           "Keep what is suggested (?) in these bars of the input, and find it anew elsewhere");
}

void add_why(CLI::App& command, std::optional<BeatInBar>& why) {
  command
      .add_option_function<std::string>(
          "--why", [&why](const std::string& text) { why = moment_in(text); },
          "Instead of a report, say what decided between the fingers at this bar and beat, as in "
          "3:2.5, and others; as text or json")
      ->type_name("BAR:BEAT");
}

void add_from(CLI::App& command, FingerOptions& fingers) {
  CLI::Option* from = command
                          .add_option("--from", fingers.from,
                                      "Instead of a report, put the fingers of this passage, such "
                                      "as an edited excerpt, into the MusicXML score")
                          ->type_name("PASSAGE");
  command
      .add_flag("--replace", fingers.replace,
                "In the place of fingers that differ, too; each is named")
      ->needs(from);
}

void add_settings(CLI::App& command, std::vector<FingerSetting>& settings) {
  command
      .add_option_function<std::vector<std::string>>(
          "--set",
          [&settings](const std::vector<std::string>& texts) {
            for (const std::string& text : texts) {
              FingerSettingResult setting = parse_finger_setting(text);
              if (!setting.value) throw CLI::ValidationError("--set", setting.problem);
              settings.push_back(std::move(*setting.value));
            }
          },
          "Try other fingers, as in 'RH 4:1.5=1' for bar 4, beat 1.5, or '3:1=1+3+5' for a chord "
          "from its lowest note up; may be given more than once")
      ->type_name("PLACE=FINGERS")
      ->expected(1)
      ->take_all();
}

}  // namespace fingerturn::cli
