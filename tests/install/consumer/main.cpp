#include <iostream>

#include <fingerturn/fingerturn.hpp>

int main() {
  const fingerturn::Source source("scale.passage", "C4:1 D:2 E:3 F:1");
  const fingerturn::ReadResult read = fingerturn::read_notation(source);
  if (!read.ok()) return 1;
  const fingerturn::Analysis analysis = fingerturn::analyse(read.score);
  for (const auto& event : analysis.passages.at(0).lines.at(0).events) {
    std::cout << fingerturn::name_of(event.rotation) << '\n';
  }
}
