#pragma once

#include <cstddef>
#include <set>
#include <string>
#include <vector>

#include <pugixml.hpp>

namespace fingerturn::tests {

/// A score of which one or two things can be made to stand any number of times: each element, its
/// attributes, and the text in it.
class GrowingScore {
 public:
  /// `backwards`: the children of each element stand in the opposite order, so that what is looked
  /// for is found last instead of first.
  GrowingScore(const std::string& text, bool backwards);

  [[nodiscard]] std::size_t things() const { return things_.size(); }
  [[nodiscard]] std::string name(std::size_t thing) const;
  /// The score with each thing as often as its place in `times` says; those past its end stand
  /// once.
  struct Many {
    std::size_t thing = 0;
    std::size_t times = 1;
  };
  /// The score with so many of two things, or of one that is named twice.
  [[nodiscard]] std::string text(Many one, Many other) const;

  /// The names of all elements and attributes in it.
  [[nodiscard]] std::set<std::string> names() const;

 private:
  enum class Way {
    again,       ///< the element
    renamed,     ///< the element, each time with an id and voices of its own
    attributes,  ///< other attributes before its own
    blanks,      ///< blanks around its text
    letters,     ///< letters behind its text
    value        ///< letters behind the value of an attribute, wherever it stands
  };
  struct Thing {
    Way way = Way::again;
    std::size_t element = 0;  ///< its place in the order in which elements open
    std::string value;
  };

  void add_things(pugi::xml_node element, std::size_t place);
  static void grow(const std::vector<pugi::xml_node>& elements, const Thing& thing,
                   std::size_t times);

  pugi::xml_document score_;
  std::vector<Thing> things_;
};

}  // namespace fingerturn::tests
