#include "read/musicxml/score_signs.hpp"

#include "read/musicxml/element.hpp"
#include "read/musicxml/text.hpp"

#include <algorithm>
#include <cstddef>
#include <iterator>
#include <string>
#include <utility>

namespace fingerturn {
namespace {

/// The letters of which dynamics are made, from "pppppp" to "sfffz".
bool is_dynamic(std::string_view letters) {
  constexpr std::size_t kMostLetters = 6;
  return !letters.empty() && letters.size() <= kMostLetters &&
         letters.find_first_not_of("pmfrsz") == std::string_view::npos;
}

std::string numbers_of(pugi::xml_node ending) {
  constexpr std::size_t kLongest = 12;
  std::string numbers = line_of_text(text_of(ending));
  if (numbers.empty()) numbers = line_of_text(ending.attribute("number").value()) + ".";
  return numbers.size() <= kLongest ? numbers : std::string();
}

template <typename Sign>
void add_all(std::vector<Sign>& more, std::vector<Sign>& signs) {
  signs.insert(signs.end(), std::make_move_iterator(more.begin()),
               std::make_move_iterator(more.end()));
}

}  // namespace

void ScoreSignReader::read_direction(pugi::xml_node direction, const BarMoment& at, Hand hand) {
  for (const pugi::xml_node type : direction.children("direction-type")) {
    for (const pugi::xml_node child : type) {
      const std::string_view element = child.name();
      if (element == "dynamics") read_dynamics(child, at, hand);
      if (element == "wedge") read_wedge(child, at, hand);
    }
  }
}

void ScoreSignReader::read_dynamics(pugi::xml_node dynamics, const BarMoment& at, Hand hand) {
  for (const pugi::xml_node child : dynamics) {
    const std::string_view element = child.name();
    const std::string_view letters = element == "other-dynamics" ? text_of(child) : element;
    if (is_dynamic(letters) && !is_crowded(at))
      signs_.dynamics.push_back({at, hand, std::string(letters)});
  }
}

/// Nobody reads more at one moment.
bool ScoreSignReader::is_crowded(const BarMoment& at) const {
  constexpr std::size_t kMostAtOnce = 4;
  const std::vector<Dynamic>& dynamics = signs_.dynamics;
  return dynamics.size() >= kMostAtOnce && dynamics[dynamics.size() - kMostAtOnce].at == at;
}

void ScoreSignReader::read_wedge(pugi::xml_node wedge, const BarMoment& at, Hand hand) {
  const auto number = whole_number<std::size_t>(wedge.attribute("number").value()).value_or(1);
  if (number < 1 || number > kMostOpen) return;
  std::optional<Hairpin>& open = open_.at(number - 1);
  const std::string_view type = wedge.attribute("type").value();
  if (type == "crescendo" || type == "diminuendo") {
    open = Hairpin{at, at, hand, type == "crescendo"};
  } else if (type == "stop" && open) {
    open->to = at;
    if (open->from < open->to) signs_.hairpins.push_back(*open);
    open.reset();
  }
}

void ScoreSignReader::read_bar_line(pugi::xml_node bar_line, std::int32_t bar) {
  for (const pugi::xml_node ending : bar_line.children("ending")) {
    const std::string_view type = ending.attribute("type").value();
    if (type == "start") {
      begin_ending(ending, bar);
    } else if (ending_) {
      ending_->last_bar = bar;
      ending_->is_open = type != "stop";
      signs_.endings.push_back(*std::exchange(ending_, std::nullopt));
    }
  }
}

/// One that has no end, or begins where another still goes on, is none.
void ScoreSignReader::begin_ending(pugi::xml_node ending, std::int32_t bar) {
  ending_.reset();
  if (!signs_.endings.empty() && signs_.endings.back().last_bar >= bar) return;
  ending_ = RepeatEnding{bar, bar, numbers_of(ending), false};
}

void sort_signs(ScoreSigns& signs) {
  std::ranges::stable_sort(signs.dynamics, {}, &Dynamic::at);
  std::ranges::stable_sort(signs.hairpins, {}, &Hairpin::from);
  std::ranges::stable_sort(signs.rest_fermatas, {}, &RestFermata::at);
}

void add_signs(ScoreSigns more, Hand hand, ScoreSigns& signs) {
  for (Dynamic& dynamic : more.dynamics) dynamic.hand = hand;
  for (Hairpin& hairpin : more.hairpins) hairpin.hand = hand;
  for (RestFermata& fermata : more.rest_fermatas) fermata.hand = hand;
  add_all(more.dynamics, signs.dynamics);
  add_all(more.hairpins, signs.hairpins);
  add_all(more.rest_fermatas, signs.rest_fermatas);
  if (signs.endings.empty()) signs.endings = std::move(more.endings);
  sort_signs(signs);
}

}  // namespace fingerturn
