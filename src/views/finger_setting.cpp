#include "fingerturn/finger_setting.hpp"

#include "score/timeline.hpp"
#include "text/numbers.hpp"
#include "text/utf8.hpp"
#include "text/words.hpp"

#include <cstdint>
#include <utility>

#include <fmt/format.h>

namespace fingerturn {
namespace {

constexpr std::string_view kForm =
    "expected a hand where it is needed, a bar, a beat and fingers, as in \"RH 4:1.5=1\" or "
    "\"3:1=1+3+5\"";
constexpr std::size_t kMostLetters = 40;

FingerSettingResult refused(std::string_view text) {
  const std::string shown = printable(text.substr(0, kMostLetters));
  return {std::nullopt, fmt::format("{}, found \"{}\"", kForm, shown)};
}

/// Takes what stands before a sign away from a text; all of it where the sign is not there.
std::string_view take_up_to(std::string_view& text, char sign) {
  const std::size_t at = text.find(sign);
  const std::string_view part = text.substr(0, at);
  text.remove_prefix(at == std::string_view::npos ? text.size() : at + 1);
  return part;
}

std::optional<BeatInBar> moment_in(std::string_view text) {
  const std::string_view bar_text = take_up_to(text, ':');
  const auto bar = number_in<std::int32_t>(bar_text);
  const auto beat = number_in<double>(text);
  const bool is_moment = bar && beat && *bar >= 0 && *bar <= kHighestBar && *beat >= 1;
  return is_moment ? std::optional(BeatInBar{*bar, *beat}) : std::nullopt;
}

/// "2>1", or "?" for none.
std::optional<std::vector<Finger>> fingers_of_note(std::string_view text) {
  std::vector<Finger> fingers;
  if (text == "?") return fingers;
  while (true) {
    const bool several = text.find('>') != std::string_view::npos;
    const auto finger = number_in<unsigned>(take_up_to(text, '>'));
    if (!finger || *finger < kThumb || *finger > kFifth) return std::nullopt;
    fingers.push_back(static_cast<Finger>(*finger));
    if (!several) return fingers;
  }
}

/// A hand at the beginning, "RH " or "LH ", which is taken away.
std::optional<Hand> take_hand(std::string_view& text) {
  const std::string word = lower_case(text.substr(0, 3));
  if (word != "rh " && word != "lh ") return std::nullopt;
  text.remove_prefix(3);
  return word == "rh " ? Hand::right : Hand::left;
}

class Setter {
 public:
  explicit Setter(Passage& passage) : passage_(passage) {}

  /// Why it cannot be set; empty where it is.
  std::string set(const FingerSetting& setting) {
    std::vector<std::pair<Line*, std::size_t>> found;
    for (Line& line : passage_.lines) {
      if (setting.hand && line.hand != *setting.hand) continue;
      if (const auto at = struck_at(passage_, line, setting.moment)) {
        found.emplace_back(&line, at->event);
      }
    }
    const std::string place =
        fmt::format("bar {}, beat {}", setting.moment.bar, setting.moment.beat);
    if (found.empty()) {
      return fmt::format(
          "{}: nothing is struck there{}; beats are known where there are a meter and note values",
          place, setting.hand ? " by the " + to_string(*setting.hand) + " hand" : "");
    }
    if (found.size() > 1) {
      return fmt::format("{}: both hands strike something there; begin with RH or LH", place);
    }
    return set(found.front().first->events[found.front().second], setting, place);
  }

 private:
  static std::string set(Event& event, const FingerSetting& setting, const std::string& place) {
    if (event.struck_count() != setting.fingers.size()) {
      const std::size_t notes = event.struck_count();
      return fmt::format("{}: {} note{} struck there, and {} finger{} given", place, notes,
                         notes == 1 ? " is" : "s are", setting.fingers.size(),
                         setting.fingers.size() == 1 ? " is" : "s are");
    }
    auto fingers = setting.fingers.begin();
    for (Note& note : event.notes) {
      if (note.held) continue;
      note.suggested = false;
      note.finger.reset();
      note.changes_to.clear();
      if (!fingers->empty()) {
        note.finger = fingers->front();
        note.changes_to.assign(fingers->begin() + 1, fingers->end());
      }
      ++fingers;
    }
    return {};
  }

  Passage& passage_;
};

}  // namespace

FingerSettingResult parse_finger_setting(std::string_view text) {
  std::string_view rest = text;
  FingerSetting setting;
  setting.hand = take_hand(rest);
  const std::string_view moment_text = take_up_to(rest, '=');
  const std::optional<BeatInBar> moment = moment_in(moment_text);
  if (!moment || rest.empty()) return refused(text);
  setting.moment = *moment;
  while (true) {
    const bool several = rest.find('+') != std::string_view::npos;
    const auto fingers = fingers_of_note(take_up_to(rest, '+'));
    if (!fingers) return refused(text);
    setting.fingers.push_back(*fingers);
    if (!several) break;
  }
  return {std::move(setting), {}};
}

FingersSet set_fingers(Score score, std::span<const FingerSetting> settings) {
  if (score.passages.size() != 1) {
    std::string problem =
        fmt::format("fingers are tried in one passage, and there are {}", score.passages.size());
    return {std::move(score), std::move(problem)};
  }
  Score tried = score;
  Setter setter(tried.passages.front());
  for (const FingerSetting& setting : settings) {
    if (std::string problem = setter.set(setting); !problem.empty()) {
      return {std::move(score), std::move(problem)};
    }
  }
  return {std::move(tried), {}};
}

}  // namespace fingerturn
