#include "growth/growing_score.hpp"

#include <algorithm>
#include <sstream>
#include <stdexcept>
#include <string_view>
#include <utility>

namespace fingerturn::tests {
namespace {

void add_elements(pugi::xml_node parent, std::vector<pugi::xml_node>& elements) {
  for (const pugi::xml_node child : parent) {
    if (child.type() != pugi::node_element) continue;
    elements.push_back(child);
    add_elements(child, elements);
  }
}

/// All elements, in the order in which they open.
std::vector<pugi::xml_node> elements_of(const pugi::xml_document& score) {
  std::vector<pugi::xml_node> elements{score.document_element()};
  add_elements(elements.front(), elements);
  return elements;
}

void turn_around(pugi::xml_node element) {
  std::vector<pugi::xml_node> children(element.begin(), element.end());
  for (pugi::xml_node child : children) {
    element.prepend_move(child);
    turn_around(child);
  }
}

bool is_leaf(pugi::xml_node element) { return !element.text().empty(); }

bool has_name_of_its_own(pugi::xml_node element) {
  return !element.attribute("id").empty() || !element.select_nodes(".//voice").empty();
}

void rename(pugi::xml_node element, std::size_t number) {
  const std::string ending = "-" + std::to_string(number);
  if (pugi::xml_attribute id = element.attribute("id")) id = (id.value() + ending).c_str();
  for (const pugi::xpath_node& voice : element.select_nodes(".//voice")) {
    voice.node().text() = (voice.node().text().get() + ending).c_str();
  }
}

void lengthen_value(const std::vector<pugi::xml_node>& elements, std::string_view value,
                    std::size_t times) {
  for (const pugi::xml_node element : elements) {
    for (pugi::xml_attribute attribute : element.attributes()) {
      if (attribute.value() != value) continue;
      attribute = (std::string(value) + std::string(times - 1, 'x')).c_str();
    }
  }
}

}  // namespace

GrowingScore::GrowingScore(const std::string& text, bool backwards) {
  if (!score_.load_string(text.c_str())) throw std::runtime_error("no XML");
  if (backwards) turn_around(score_.document_element());
  std::set<std::string> paths;
  const std::vector<pugi::xml_node> elements = elements_of(score_);
  // The score itself stands once.
  for (std::size_t i = 1; i < elements.size(); ++i) {
    const pugi::xml_node element = elements[i];
    if (paths.insert(element.path()).second) {
      add_things(element, i);
    } else if (std::string_view(element.name()) == "note") {
      things_.push_back({Way::again, i, {}});  // no two are alike
    }
  }
}

void GrowingScore::add_things(pugi::xml_node element, std::size_t place) {
  things_.push_back({Way::again, place, {}});
  if (has_name_of_its_own(element)) things_.push_back({Way::renamed, place, {}});
  things_.push_back({Way::attributes, place, {}});
  for (const Way way : {Way::blanks, Way::letters}) {
    if (is_leaf(element)) things_.push_back({way, place, {}});
  }
  for (const pugi::xml_attribute attribute : element.attributes()) {
    things_.push_back({Way::value, place, attribute.value()});
  }
}

std::string GrowingScore::name(std::size_t thing) const {
  const Thing& named = things_[thing];
  const pugi::xml_node element = elements_of(score_)[named.element];
  std::string path = element.path();
  switch (named.way) {
    case Way::again:
      return path;
    case Way::renamed:
      return path + ", each with its own name";
    case Way::attributes:
      return path + ", its attributes";
    case Way::blanks:
      return path + ", blanks around its text";
    case Way::letters:
      return path + ", its text";
    case Way::value:
      return path + ", the value " + named.value;
  }
  return path;
}

void GrowingScore::grow(const std::vector<pugi::xml_node>& elements, const Thing& thing,
                        std::size_t times) {
  pugi::xml_node element = elements[thing.element];
  const std::string text = element.text().get();
  switch (thing.way) {
    case Way::again:
    case Way::renamed:
      for (std::size_t i = 1; i < times; ++i) {
        const pugi::xml_node copy = element.parent().insert_copy_after(element, element);
        if (thing.way == Way::renamed) rename(copy, i);
      }
      return;
    case Way::attributes:
      for (std::size_t i = 1; i < times; ++i) {
        element.prepend_attribute(("a" + std::to_string(i)).c_str()) = "";
      }
      return;
    case Way::blanks: {
      const std::string blanks(times - 1, ' ');
      element.text() = (blanks + text + blanks).c_str();
      return;
    }
    case Way::letters:
      element.text() = (text + std::string(times - 1, 'x')).c_str();
      return;
    case Way::value:
      return lengthen_value(elements, thing.value, times);
  }
}

std::string GrowingScore::text(Many one, Many other) const {
  pugi::xml_document score;
  score.reset(score_);
  const std::vector<pugi::xml_node> elements = elements_of(score);
  // Whole elements first and the outer before the inner, so that one alone of many copies has many
  // of the other thing.
  const auto order = [this](const Many& many) {
    const Thing& thing = things_[many.thing];
    return std::pair(thing.way != Way::again && thing.way != Way::renamed, thing.element);
  };
  if (order(other) < order(one)) std::swap(one, other);
  grow(elements, things_[one.thing], one.times);
  grow(elements, things_[other.thing], other.times);
  std::ostringstream text;
  score.save(text, "", pugi::format_raw);
  return text.str();
}

std::set<std::string> GrowingScore::names() const {
  std::set<std::string> names;
  for (const pugi::xml_node element : elements_of(score_)) {
    names.insert(element.name());
    for (const pugi::xml_attribute attribute : element.attributes()) names.insert(attribute.name());
  }
  return names;
}

}  // namespace fingerturn::tests
