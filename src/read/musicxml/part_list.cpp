#include "read/musicxml/part_list.hpp"

#include "read/musicxml/element.hpp"
#include "read/musicxml/text.hpp"
#include "text/words.hpp"

#include <algorithm>
#include <array>
#include <map>
#include <string_view>

#include <fmt/core.h>

namespace fingerturn {
namespace {

/// Names of keyboard instruments in the languages in which scores are often printed.
constexpr std::array<std::string_view, 18> kKeyboardNames{
    "piano", "klavier", "clavier", "keyboard", "harpsichord", "cembalo",
    "clav",  "organ",   "orgel",   "orgue",    "celesta",     "harmonium",
    "pno",   "tasten",  "spinet",  "virginal", "manual",      "tangent"};

bool is_keyboard_name(std::string_view name) {
  const std::string lower = lower_case(name);
  return std::any_of(kKeyboardNames.begin(), kKeyboardNames.end(), [&](std::string_view known) {
    return lower.find(known) != std::string::npos;
  });
}

/// General MIDI 1: programs 1 to 8 are pianos, 17 to 21 organs; channel 10 is percussion.
bool is_keyboard_program(int program) {
  return (program >= 1 && program <= 8) || (program >= 17 && program <= 21);
}

void look_at_instruments(pugi::xml_node score_part, PartInfo& part) {
  constexpr int kPercussionChannel = 10;
  for (const pugi::xml_node instrument : score_part.children("score-instrument")) {
    const std::string_view sound = text_of(instrument.child("instrument-sound"));
    if (sound.starts_with("keyboard.")) part.keyboard = true;
    if (sound.starts_with("drum.") || sound.starts_with("metal.")) part.percussion = true;
    if (!sound.empty() && !sound.starts_with("keyboard.")) part.other = true;
  }
  for (const pugi::xml_node midi : score_part.children("midi-instrument")) {
    const auto channel = whole_number<int>(text_of(midi.child("midi-channel")));
    const auto program = whole_number<int>(text_of(midi.child("midi-program")));
    if (channel == kPercussionChannel) part.percussion = true;
    if (program && is_keyboard_program(*program)) part.keyboard = true;
    if (program && !is_keyboard_program(*program)) part.other = true;
  }
}

PartInfo part_info(pugi::xml_node score_part, std::size_t number) {
  PartInfo part;
  part.number = number;
  part.name = line_of_text(text_of(score_part.child("part-name")));
  look_at_instruments(score_part, part);
  if (is_keyboard_name(part.name)) part.keyboard = true;
  if (part.keyboard) part.other = false;
  return part;
}

ClefSign clef_sign(std::string_view sign) {
  if (sign == "G") return ClefSign::g;
  if (sign == "F") return ClefSign::f;
  if (sign == "C") return ClefSign::c;
  return sign == "percussion" ? ClefSign::percussion : ClefSign::none;
}

/// Looks for staves and clef in the first measures; they stand in the first that has attributes.
void look_at_first_measures(PartInfo& part) {
  constexpr std::size_t kFirstMeasures = 4;
  for (std::size_t i = 0; i < std::min(kFirstMeasures, part.measures.size()); ++i) {
    for (const pugi::xml_node attributes : part.measures[i].music.children("attributes")) {
      const auto staves = whole_number<std::uint32_t>(text_of(attributes.child("staves")));
      part.staves = std::max(part.staves, staves.value_or(1));
      const pugi::xml_node clef = attributes.child("clef");
      if (part.clef == ClefSign::none && !clef.empty())
        part.clef = clef_sign(text_of(clef.child("sign")));
    }
  }
  if (part.clef == ClefSign::percussion && part.staves == 1) part.percussion = true;
}

class PartCollector {
 public:
  explicit PartCollector(pugi::xml_node score) {
    for (const pugi::xml_node entry : score.child("part-list").children("score-part")) {
      place_of(entry.attribute("id").value(), entry);
    }
    if (std::string_view(score.name()) == "score-timewise") {
      add_by_measures(score);
    } else {
      add_by_parts(score);
    }
  }

  std::vector<PartInfo> take() {
    std::erase_if(parts_, [](const PartInfo& part) { return part.measures.empty(); });
    for (PartInfo& part : parts_) look_at_first_measures(part);
    return std::move(parts_);
  }

 private:
  // What is said once, of a part for all its measures or of a measure for all its parts, is looked
  // up once.
  void add_by_parts(pugi::xml_node score) {
    for (const pugi::xml_node part : score.children("part")) {
      const auto measures = part.children("measure");
      if (measures.begin() == measures.end()) continue;
      PartInfo& info = parts_[place_of(part.attribute("id").value(), {})];
      for (const pugi::xml_node measure : measures) {
        info.measures.push_back({measure, number_of(measure)});
      }
    }
  }

  void add_by_measures(pugi::xml_node score) {
    for (const pugi::xml_node measure : score.children("measure")) {
      const PrintedNumber number = number_of(measure);
      for (const pugi::xml_node part : measure.children("part")) {
        parts_[place_of(part.attribute("id").value(), {})].measures.push_back({part, number});
      }
    }
  }

  static PrintedNumber number_of(pugi::xml_node measure) {
    return printed_number(measure.attribute("number").value());
  }

  std::size_t place_of(std::string_view id, pugi::xml_node entry) {
    const auto [found, is_new] = places_.try_emplace(id, parts_.size());
    if (is_new) parts_.push_back(part_info(entry, parts_.size() + 1));
    return found->second;
  }

  /// Ordered: names can be chosen so that a table by hashes takes quadratic time.
  std::map<std::string_view, std::size_t> places_;
  std::vector<PartInfo> parts_;
};

/// "Piano (part 2)", or "part 2" where it has no name.
std::string part_words(const PartInfo& part) {
  const std::string number = "part " + std::to_string(part.number);
  return part.name.empty() ? number : part.name + " (" + number + ")";
}

bool names_both_hands(std::string_view upper, std::string_view lower) {
  const std::string first = lower_case(upper);
  const std::string second = lower_case(lower);
  const bool words =
      first.find("right") != std::string::npos && second.find("left") != std::string::npos;
  return words || (first == "rh" && second == "lh") || (first == "r.h." && second == "l.h.");
}

/// Whether two parts, one after the other, are the two hands of one player.
bool are_two_hands(const std::vector<PartInfo>& parts, std::size_t upper) {
  if (upper + 1 >= parts.size()) return false;
  const PartInfo& first = parts[upper];
  const PartInfo& second = parts[upper + 1];
  if (first.staves != 1 || second.staves != 1) return false;
  if (first.percussion || second.percussion || first.other || second.other) return false;
  if (names_both_hands(first.name, second.name)) return true;
  if (first.keyboard && second.keyboard) return true;
  const bool alike = first.name == second.name || first.name.empty() || second.name.empty();
  return parts.size() == 2 && alike && first.clef != ClefSign::f && second.clef == ClefSign::f;
}

ChosenParts two_hands(const std::vector<PartInfo>& parts, std::size_t upper) {
  return {{upper, upper + 1},
          {"The upper of two staves, " + part_words(parts[upper]) +
           ", was taken as the right hand, the lower, " + part_words(parts[upper + 1]) +
           ", as the left."}};
}

std::vector<ChosenParts> keyboard_parts(const std::vector<PartInfo>& parts) {
  std::vector<ChosenParts> chosen;
  for (std::size_t i = 0; i < parts.size(); ++i) {
    if (are_two_hands(parts, i)) {
      chosen.push_back(two_hands(parts, i++));
    } else if (parts[i].keyboard && !parts[i].percussion) {
      chosen.push_back({{i}, {}});
    }
  }
  return chosen;
}

/// Where nothing says what is for keyboard: the parts on two staves, else the first with a clef
/// for pitches.
std::vector<ChosenParts> likely_parts(const std::vector<PartInfo>& parts) {
  std::vector<ChosenParts> chosen;
  for (std::size_t i = 0; i < parts.size(); ++i) {
    const bool grand_staff = parts[i].staves > 1 && !parts[i].percussion && !parts[i].other;
    if (grand_staff) chosen.push_back({{i}, {}});
  }
  const auto pitched = std::find_if(parts.begin(), parts.end(),
                                    [](const PartInfo& part) { return !part.percussion; });
  if (chosen.empty() && pitched != parts.end()) {
    ChosenParts first{{static_cast<std::size_t>(pitched - parts.begin())}, {}};
    if (parts.size() > 1) {
      first.remarks.emplace_back(
          "Nothing says which part is for a keyboard; the first was taken. "
          "--part chooses another.");
    }
    chosen.push_back(std::move(first));
  }
  return chosen;
}

void remark_on_the_rest(const std::vector<PartInfo>& parts, std::vector<ChosenParts>& chosen) {
  constexpr std::size_t kMostNamed = 6;
  std::vector<bool> taken(parts.size(), false);
  for (const ChosenParts& each : chosen) {
    for (const std::size_t part : each.parts) taken[part] = true;
  }
  std::string names;
  std::size_t left_out = 0;
  for (std::size_t i = 0; i < parts.size(); ++i) {
    if (taken[i] || ++left_out > kMostNamed) continue;
    names += (names.empty() ? "" : ", ") + part_words(parts[i]);
    if (parts[i].percussion) names += " for percussion";
  }
  if (left_out > kMostNamed) names += " and others";
  if (left_out == 0) return;
  for (ChosenParts& each : chosen) each.remarks.push_back("Left out: " + names + ".");
}

}  // namespace

std::vector<PartInfo> parts_of(pugi::xml_node score) { return PartCollector(score).take(); }

std::vector<ChosenParts> choose_parts(const std::vector<PartInfo>& parts,
                                      const ReadOptions& options, Reporter& reporter) {
  if (options.part) {
    const auto found = std::find_if(parts.begin(), parts.end(), [&](const PartInfo& part) {
      return part.number == static_cast<std::size_t>(*options.part);
    });
    if (found != parts.end()) return {{{static_cast<std::size_t>(found - parts.begin())}, {}}};
    reporter.report("musicxml-part", {},
                    "expected the number of a part with music, found none of the number " +
                        std::to_string(*options.part),
                    "the parts are numbered from 1 in the order of the score");
    return {};
  }
  std::vector<ChosenParts> chosen = keyboard_parts(parts);
  if (chosen.empty()) chosen = likely_parts(parts);
  if (chosen.size() > kMostKeyboards) {
    reporter.report("too-large", {},
                    fmt::format("expected a score for at most {} keyboards, found {}",
                                kMostKeyboards, chosen.size()),
                    "--part reads one part alone");
    return {};
  }
  remark_on_the_rest(parts, chosen);
  return chosen;
}

}  // namespace fingerturn
