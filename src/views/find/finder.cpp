#include "fingerturn/find.hpp"
#include "score/place_counter.hpp"
#include "score/struck_notes.hpp"
#include "score/timeline.hpp"
#include "views/find/seen_line.hpp"

#include <algorithm>
#include <utility>

#include <fmt/core.h>
#include <re2/re2.h>

/// Each event becomes a letter that says which of the wanted events it is; a regular expression
/// over these letters then finds the places, in time that grows as the text does.
namespace fingerturn {
namespace {

/// A letter is some bytes, each of which tells of seven wanted events. Only the first byte of a
/// letter has the highest bit, so that nothing is found between two letters.
constexpr std::size_t kBitsInByte = 7;
constexpr unsigned kFirstByte = 0x80;

/// What a byte of a letter must be, as a class of the expression: one with this bit, or any.
std::string byte_class(bool is_first, std::optional<std::size_t> bit) {
  const unsigned lowest = is_first ? kFirstByte : 0;
  const unsigned many = bit ? 1U << *bit : kFirstByte;  // that follow one another
  std::string bytes;
  for (unsigned begin = bit ? many : 0; begin < kFirstByte; begin += 2 * many) {
    bytes += fmt::format("\\x{:02x}-\\x{:02x}", lowest + begin, lowest + begin + many - 1);
  }
  return '[' + bytes + ']';
}

/// Where the first note that an event strikes is written.
std::size_t beginning_of(const Event& event) {
  std::size_t begin = event.span.end;
  for (const Note* note : struck_notes(event)) {
    begin = std::min<std::size_t>(begin, note->span.begin);
  }
  return begin;
}

/// Places with where they begin in the text, as offsets.
std::vector<FoundPlace> in_order_of_text(std::vector<std::pair<std::size_t, FoundPlace>> found,
                                         const Source* text) {
  std::ranges::stable_sort(found, {}, &std::pair<std::size_t, FoundPlace>::first);
  std::optional<PlaceCounter> counter;
  if (text != nullptr) counter.emplace(*text);
  std::vector<FoundPlace> places;
  for (auto& [offset, place] : found) {
    if (counter) place.place = counter->at(offset);
    places.push_back(place);
  }
  return places;
}

RE2::Options machine_options() {
  constexpr std::int64_t kMostMemory = std::int64_t{256} << 20U;
  RE2::Options options(RE2::Latin1);
  options.set_max_mem(kMostMemory);
  options.set_log_errors(false);
  options.set_longest_match(true);
  return options;
}

}  // namespace

struct Finder::Machine {
  explicit Machine(FindPattern wanted)
      : pattern(std::move(wanted)),
        events(distinct_events()),
        expression(expression_text(), machine_options()) {}

  [[nodiscard]] std::vector<WantedEvent> distinct_events() const {
    std::vector<WantedEvent> distinct;
    for (const WantedRun& run : pattern.runs) {
      for (const WantedEvent& event : run.events) {
        if (std::ranges::find(distinct, event) == distinct.end()) distinct.push_back(event);
      }
    }
    return distinct;
  }

  [[nodiscard]] std::size_t letter_size() const {
    return (events.size() + kBitsInByte - 1) / kBitsInByte;
  }

  [[nodiscard]] std::string letter_class(const WantedEvent& wanted) const {
    const auto number =
        static_cast<std::size_t>(std::ranges::find(events, wanted) - events.begin());
    std::string classes;
    for (std::size_t byte = 0; byte < letter_size(); ++byte) {
      const bool tells = byte == number / kBitsInByte;
      classes += byte_class(byte == 0, tells ? std::optional(number % kBitsInByte) : std::nullopt);
    }
    return classes;
  }

  [[nodiscard]] std::string expression_text() const {
    std::string text = "(";
    for (const WantedRun& run : pattern.runs) {
      text += "(?:";
      for (const WantedEvent& event : run.events) text += letter_class(event);
      text += fmt::format("){{{}{}}}", run.times, run.or_more ? "," : "");
    }
    return text + ')';
  }

  void add_letter(const SeenLine& line, std::size_t number, std::string& text) const {
    const std::size_t begin = text.size();
    text.resize(begin + letter_size(), '\0');
    text[begin] = static_cast<char>(kFirstByte);
    for (std::size_t event = 0; event < events.size(); ++event) {
      if (!line.shows(events[event], number)) continue;
      char& byte = text[begin + event / kBitsInByte];
      byte = static_cast<char>(static_cast<unsigned char>(byte) | 1U << event % kBitsInByte);
    }
  }

  /// Calls `take(first, count)` for each place in a line, in events.
  template <typename Take>
  void find_in(const AnalysedPassage& passage, const AnalysedLine& line, const Take& take) const {
    if (events.empty() || !expression.ok()) return;
    const SeenLine seen(passage, line);
    std::string text;
    for (std::size_t number = 0; number < line.size(); ++number) add_letter(seen, number, text);
    re2::StringPiece found;
    for (std::size_t at = 0; expression.Match(text, at, text.size(), RE2::UNANCHORED, &found, 1);) {
      const auto begin = static_cast<std::size_t>(found.data() - text.data());
      take(begin / letter_size(), found.size() / letter_size());
      at = begin + found.size();
    }
  }

  FindPattern pattern;
  std::vector<WantedEvent> events;  ///< those that are wanted, each once
  RE2 expression;
};

Finder::Finder(FindPattern pattern) : machine_(std::make_unique<Machine>(std::move(pattern))) {}
Finder::~Finder() = default;
Finder::Finder(Finder&&) noexcept = default;
Finder& Finder::operator=(Finder&&) noexcept = default;

bool Finder::looks_at(Hand hand) const noexcept {
  return !machine_->pattern.hand || *machine_->pattern.hand == hand;
}

std::vector<FoundPlace> Finder::in(const AnalysedScore& score, const Source* text) const {
  std::vector<std::pair<std::size_t, FoundPlace>> found;
  for (std::size_t p = 0; p < score.size(); ++p) {
    for (std::size_t l = 0; l < score[p].size(); ++l) {
      const AnalysedLine line = score[p][l];
      if (!looks_at(line.hand())) continue;
      const std::vector<std::size_t> beginnings = bar_beginnings(line.written());
      machine_->find_in(score[p], line, [&](std::size_t first, std::size_t count) {
        const auto& [written, entry] = line[first];
        const auto beat = beat_of(score[p].written(), line.written(), entry.event, beginnings);
        found.emplace_back(beginning_of(written),
                           FoundPlace{p, l, first, count, {p, line.hand(), written.bar, beat}, {}});
      });
    }
  }
  return in_order_of_text(std::move(found), text);
}

FoundCounts count_found(const AnalysedScore& score, const Finder& finder,
                        std::span<const FoundPlace> places) {
  FoundCounts counts;
  counts.source = score.name();
  counts.places = places.size();
  for (const FoundPlace& place : places) counts.found += place.count;
  for (const AnalysedPassage passage : score) {
    for (const AnalysedLine line : passage) {
      if (finder.looks_at(line.hand())) counts.events += line.size();
    }
  }
  return counts;
}

void AllFound::add(const FoundCounts& file) noexcept {
  ++(file.ok() ? read : failed);
  with_places += file.places > 0 ? 1 : 0;
  places += file.places;
  found += file.found;
  events += file.events;
}

}  // namespace fingerturn
