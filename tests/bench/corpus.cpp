#include "corpus.hpp"

#include "fingering/line_fingering.hpp"
#include "fingerturn/fingering.hpp"
#include "fingerturn/read.hpp"

#include <cstddef>
#include <fstream>
#include <iostream>
#include <iterator>
#include <random>
#include <utility>

namespace fingerturn::bench {
namespace {

Met met_in_line(const Line& printed, const Line& shown, const Weights& weights) {
  const Line suggested = with_fingering(shown, finger_line(shown, weights, {}).front());
  Met met;
  for (std::size_t e = 0; e < printed.events.size(); ++e) {
    for (std::size_t n = 0; n < printed.events[e].notes.size(); ++n) {
      const Note& truth = printed.events[e].notes[n];
      if (!is_printed(truth) || shown.events[e].notes[n].finger) continue;
      ++met.hidden;
      met.met += suggested.events[e].notes[n].finger == truth.finger ? 1 : 0;
    }
  }
  return met;
}

}  // namespace

std::vector<Piece> read_corpus(const std::vector<std::string>& paths) {
  std::vector<Piece> pieces;
  for (const std::string& path : paths) {
    std::ifstream file(path, std::ios::binary);
    const Source source(path, std::string(std::istreambuf_iterator<char>(file), {}));
    ReadResult result = read(source);
    if (!file || !result.ok()) {
      std::cerr << path << ": cannot be read\n";
      continue;
    }
    std::string name = path.substr(path.rfind('/') + 1);
    std::string composer = name.substr(0, name.find('-'));
    pieces.push_back({std::move(name), std::move(composer), std::move(result.score)});
  }
  return pieces;
}

bool is_printed(const Note& note) noexcept { return note.finger && !note.held; }

Line with_printed(Line line, const std::function<bool()>& keep) {
  for (Event& event : line.events) {
    for (Note& note : event.notes) {
      if (is_printed(note) && keep()) continue;
      note.finger.reset();
      note.changes_to.clear();
      note.suggested = false;
    }
  }
  return line;
}

Met& Met::operator+=(const Met& other) noexcept {
  met += other.met;
  hidden += other.hidden;
  return *this;
}

double Met::percent() const noexcept {
  return hidden == 0 ? 0 : 100.0 * static_cast<double>(met) / static_cast<double>(hidden);
}

Met met_with_none(const Piece& piece, const Weights& weights) {
  Met met;
  for (const Passage& passage : piece.score.passages) {
    for (const Line& line : passage.lines) {
      met += met_in_line(line, with_printed(line, [] { return false; }), weights);
    }
  }
  return met;
}

Met met_with_half(const Piece& piece, const Weights& weights) {
  constexpr unsigned kSeeds = 5;
  Met met;
  for (unsigned seed = 1; seed <= kSeeds; ++seed) {
    std::mt19937 random(seed);
    for (const Passage& passage : piece.score.passages) {
      for (const Line& line : passage.lines) {
        met +=
            met_in_line(line, with_printed(line, [&random] { return random() % 2 == 0; }), weights);
      }
    }
  }
  return met;
}

}  // namespace fingerturn::bench
