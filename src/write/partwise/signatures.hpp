#pragma once

#include "fingerturn/score.hpp"
#include "write/notated/bars.hpp"
#include "write/partwise/clefs.hpp"
#include "write/partwise/xml_text.hpp"

#include <cstddef>

namespace fingerturn {

/// Writes what stands at the beginning of bars: key, meter, clefs, and above them the tempo and the
/// words of notes.
class Signatures {
 public:
  Signatures(const Passage& passage, const SharedLines& lines, Ticks divisions);

  void add(const NotatedBar& bar, XmlText& xml);

 private:
  void add_attributes(const NotatedBar& bar, XmlText& xml);
  void add_clef(std::size_t staff, Clef clef, XmlText& xml) const;
  void add_words(const NotatedBar& bar, XmlText& xml) const;

  const Passage* passage_;
  Ticks divisions_;
  std::size_t staves_;
  Clefs clefs_;
  bool is_first_ = true;
  const Tempo* tempo_ = nullptr;
};

}  // namespace fingerturn
