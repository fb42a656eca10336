#include "read/musicxml/hands.hpp"

#include "read/musicxml/bar_list.hpp"
#include "read/musicxml/hand_choice.hpp"

#include <utility>

namespace fingerturn {
namespace {

std::string clef_words(ClefSign clef) {
  switch (clef) {
    case ClefSign::g:
      return "G clef";
    case ClefSign::f:
      return "F clef";
    case ClefSign::c:
      return "C clef";
    case ClefSign::percussion:
    case ClefSign::none:
      break;
  }
  return "lack of a clef";
}

/// What was decided other than by the staff.
void add_remarks(HandsByOther other, std::vector<std::string>& remarks) {
  const auto add = [&remarks](const char* words, std::vector<std::int32_t> bars) {
    if (!bars.empty()) remarks.push_back(words + (" in " + bar_list(std::move(bars)) + "."));
  };
  add("A voice on both staves stays with its own hand", std::move(other.visits));
  add("The hand is the one that the score names", std::move(other.signs));
  add("What no hand reaches is divided between the two", std::move(other.reaches));
}

std::vector<std::string> by_staves(WrittenPart& part) {
  std::vector<std::string> remarks{
      part.staff_count > 2 ? "The first staff was taken as the right hand, the others as the left."
                           : "The upper staff was taken as the right hand, the lower as the left."};
  add_remarks(choose_hands(part, std::nullopt), remarks);
  return remarks;
}

std::vector<std::string> by_clef(WrittenPart& part, ClefSign clef) {
  const Hand hand = clef == ClefSign::f ? Hand::left : Hand::right;
  std::vector<std::string> remarks{"The one staff was taken as the " + to_string(hand) +
                                   " hand, by its " + clef_words(clef) +
                                   "; --hand takes it as the other."};
  add_remarks(choose_hands(part, hand), remarks);
  return remarks;
}

}  // namespace

std::vector<std::string> give_hands(WrittenPart& part, const PartInfo& info,
                                    std::optional<Hand> given) {
  if (part.staff_count > 1) return by_staves(part);
  if (!given) return by_clef(part, info.clef);
  for (WrittenNote& note : part.notes) note.hand = *given;
  return {"The one staff was taken as the " + to_string(*given) + " hand, as asked."};
}

std::vector<std::string> give_hand(WrittenPart& part, Hand hand) {
  std::vector<std::string> remarks;
  add_remarks(choose_hands(part, hand), remarks);
  return remarks;
}

}  // namespace fingerturn
