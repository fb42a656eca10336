#include "write/partwise/head.hpp"

namespace fingerturn {
namespace {

void add_identification(const Passage& passage, XmlText& xml) {
  xml.open("identification");
  if (!passage.composer.empty()) xml.add("creator type=\"composer\"", passage.composer);
  xml.open("encoding");
  xml.add("software", "fingerturn");
  xml.close();
  if (!passage.source.empty()) xml.add("source", passage.source);
  xml.close();
}

}  // namespace

void add_head(const Passage& passage, XmlText& xml) {
  if (!passage.title.empty()) xml.add("movement-title", passage.title);
  add_identification(passage, xml);
  xml.open("part-list");
  xml.open("score-part id=\"P1\"");
  xml.add("part-name", "Piano");
  xml.open("score-instrument id=\"P1-I1\"");
  xml.add("instrument-name", "Piano");
  xml.add("instrument-sound", "keyboard.piano");
  xml.close();
  xml.close();
  xml.close();
}

}  // namespace fingerturn
