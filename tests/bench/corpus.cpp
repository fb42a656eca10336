#include "corpus.hpp"

#include "fingering/line_fingering.hpp"
#include "fingerturn/fingering.hpp"
#include "fingerturn/read.hpp"

#include <cstddef>
#include <fstream>
#include <iostream>
#include <iterator>
#include <random>
#include <string_view>
#include <utility>

namespace fingerturn::bench {
namespace {

bool is_set_aside(std::string_view name) noexcept {
  std::uint32_t sum = 2166136261U;
  for (const char letter : name) sum = (sum ^ static_cast<unsigned char>(letter)) * 16777619U;
  return sum % 5 == 0;
}

void add_met(const Line& printed, const Line& shown, const Model& model, MetByKind& by_kind) {
  const Line suggested = with_fingering(shown, finger_line(shown, model, {}).front());
  for (std::size_t e = 0; e < printed.events.size(); ++e) {
    for (std::size_t n = 0; n < printed.events[e].notes.size(); ++n) {
      const Note& truth = printed.events[e].notes[n];
      if (!is_printed(truth) || shown.events[e].notes[n].finger) continue;
      Met& met = by_kind.kinds.at(printed.hand == Hand::right ? 0 : 1)
                     .at(printed.events[e].struck_count() > 1 ? 1 : 0);
      ++met.hidden;
      met.met += suggested.events[e].notes[n].finger == truth.finger ? 1 : 0;
    }
  }
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
    const bool set_aside = is_set_aside(name);
    pieces.push_back({std::move(name), std::move(composer), set_aside, std::move(result.score)});
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

MetByKind& MetByKind::operator+=(const MetByKind& other) noexcept {
  for (std::size_t hand = 0; hand < kinds.size(); ++hand) {
    for (std::size_t kind = 0; kind < kinds[hand].size(); ++kind) {
      kinds[hand][kind] += other.kinds[hand][kind];
    }
  }
  return *this;
}

Met MetByKind::all() const noexcept {
  Met sum = of_hand(0);
  return sum += of_hand(1);
}

Met MetByKind::of_hand(std::size_t hand) const noexcept {
  Met sum = kinds[hand][0];
  return sum += kinds[hand][1];
}

Met MetByKind::of_kind(std::size_t kind) const noexcept {
  Met sum = kinds[0][kind];
  return sum += kinds[1][kind];
}

MetByKind met_with_none(const Piece& piece, const Model& model) {
  MetByKind met;
  for (const Passage& passage : piece.score.passages) {
    for (const Line& line : passage.lines) {
      add_met(line, with_printed(line, [] { return false; }), model, met);
    }
  }
  return met;
}

MetByKind met_with_half(const Piece& piece, const Model& model) {
  constexpr unsigned kSeeds = 5;
  MetByKind met;
  for (unsigned seed = 1; seed <= kSeeds; ++seed) {
    std::mt19937 random(seed);
    for (const Passage& passage : piece.score.passages) {
      for (const Line& line : passage.lines) {
        const auto at_random = [&random] { return random() % 2 == 0; };
        add_met(line, with_printed(line, at_random), model, met);
      }
    }
  }
  return met;
}

}  // namespace fingerturn::bench
