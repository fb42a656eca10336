#pragma once

#include "fingerturn/analysed.hpp"
#include "fingerturn/fraction.hpp"
#include "fingerturn/pitch.hpp"
#include "fingerturn/source.hpp"

#include <cstddef>
#include <memory>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

/// Where something happens in music: what is looked for is said event by event (docs/find.md), or
/// is a figure.
///
///     const FindPatternResult doubles = parse_find_pattern("LH: double x5+");
///     const Finder finder(*doubles.pattern);
///     for (const FoundPlace& place : finder.in(analysed, &source)) std::cout << place.count <<
///     '\n';
namespace fingerturn {

/// How a single note, or the lowest of several, lies from that of the event before.
struct WantedMove {
  std::optional<int> letters{};    ///< between them, 0 or above
  std::optional<int> semitones{};  ///< the same
  std::optional<int> way{};        ///< 1 for up, -1 for down

  friend bool operator==(const WantedMove&, const WantedMove&) = default;
};

/// What is looked for in one event: all that is said here must hold of it. A default one is any.
struct WantedEvent {
  std::optional<Rotation> rotation{};
  std::optional<Direction> turn{};
  std::optional<Side> side{};
  std::optional<Crossing> crossing{};
  bool passes = false;  ///< with any crossing
  /// The striking finger of each note, the lowest first, none for any; empty for whatever notes.
  std::vector<std::optional<Finger>> fingers{};
  std::optional<int> notes{};       ///< how many are struck; 3 for three or more
  std::optional<KeyColour> keys{};  ///< of all that is struck
  std::optional<InOut> in_out{};
  WantedMove move{};
  /// The letters from the lowest struck note up to each other one.
  std::optional<std::vector<int>> shape{};
  /// The MIDI note numbers that are struck, the lowest first.
  std::vector<int> midi{};
  /// The time since the event before, against the time from the one before that to it.
  std::optional<Fraction> pace{};
  std::vector<std::string_view> rules{};  ///< ids: each decided there, or found something
  bool hands_differ = false;              ///< one hand is single there and the other double

  friend bool operator==(const WantedEvent&, const WantedEvent&) = default;
};

/// Events in a row, so many times.
struct WantedRun {
  std::vector<WantedEvent> events;
  int times = 1;
  bool or_more = false;

  friend bool operator==(const WantedRun&, const WantedRun&) = default;
};

/// What is looked for in the lines of a hand.
struct FindPattern {
  std::optional<Hand> hand{};  ///< none for either
  std::vector<WantedRun> runs;

  friend bool operator==(const FindPattern&, const FindPattern&) = default;
};

/// As many events as a pattern may ask for in a row, its repetitions counted.
inline constexpr std::size_t kMostWantedEvents = 500;

struct FindPatternResult {
  std::optional<FindPattern> pattern;
  std::string problem;  ///< "column 8: expected ..., found ...", where there is none

  [[nodiscard]] bool ok() const noexcept { return pattern.has_value(); }
};

/// Reads "double x5+", "LH: 4 5 4", "thumb-under,black", "(up-third down) x3" and the like
/// (docs/find.md). Any bytes may come in.
FindPatternResult parse_find_pattern(std::string_view text);

/// A word of the patterns, and what it asks for. The texts live as long as the program.
struct FindWord {
  std::string_view word;
  std::string_view meaning;
};
/// The words that stand for themselves, in the order of docs/find.md; beside them are fingers,
/// intervals and rules.
std::vector<FindWord> find_words();

/// How closely a place must be like a figure.
struct Likeness {
  bool any_fingers = false;  ///< whatever fingers the figure has
  bool same_keys = false;    ///< not transposed
};

/// What is like the one line of a score: its intervals by their letters, its rhythm where values
/// are known, and its fingers where it has them. It is looked for in the lines of its hand.
FindPatternResult pattern_like(const Score& figure, const Likeness& likeness = {});

/// A place that was found.
struct FoundPlace {
  std::size_t passage = 0;
  std::size_t line = 0;
  std::size_t first = 0;       ///< its first event, among those that are struck, from 0
  std::size_t count = 0;       ///< how many events it has; 1 or more
  MusicalPlace where;          ///< of the first event
  std::optional<Place> place;  ///< the same in the text that was read; none where it was packed

  friend bool operator==(const FoundPlace&, const FoundPlace&) = default;
};

/// Looks for a pattern, in time that grows as the music does. One may be used by several threads at
/// a time.
class Finder {
 public:
  /// A pattern that was parsed, or is within kMostWantedEvents; of another, nothing is found.
  explicit Finder(FindPattern pattern);
  ~Finder();
  Finder(Finder&& other) noexcept;
  Finder& operator=(Finder&& other) noexcept;
  Finder(const Finder&) = delete;
  Finder& operator=(const Finder&) = delete;

  /// All places, in the order of the text that the score was read from; null where that was packed,
  /// and places in it say nothing to anybody. Each begins after the one before it in its line has
  /// ended, as early as it can, and goes on for as long as it can.
  [[nodiscard]] std::vector<FoundPlace> in(const AnalysedScore& score, const Source* text) const;
  /// Whether its pattern is looked for in the lines of a hand.
  [[nodiscard]] bool looks_at(Hand hand) const noexcept;

 private:
  struct Machine;
  std::unique_ptr<Machine> machine_;
};

/// How often a pattern was found in a file, and how much of it that is.
struct FoundCounts {
  std::string source;  ///< the name of the file
  std::string error;   ///< why it could not be read; else empty
  std::size_t places = 0;
  std::size_t found = 0;   ///< events in these places
  std::size_t events = 0;  ///< events of the lines that were looked at

  [[nodiscard]] bool ok() const noexcept { return error.empty(); }
};

FoundCounts count_found(const AnalysedScore& score, const Finder& finder,
                        std::span<const FoundPlace> places);

/// The same of all files.
struct AllFound {
  std::size_t read = 0;
  std::size_t failed = 0;
  std::size_t with_places = 0;  ///< files in which there are some
  std::size_t places = 0;
  std::size_t found = 0;
  std::size_t events = 0;

  void add(const FoundCounts& file) noexcept;
};

/// How the lines of places look.
struct FoundStyle {
  std::optional<int>
      columns{};  ///< longer lines are continued, indented; none for lines of any length
  std::optional<int> around{};  ///< below each place its bars in the passage notation, and so many
                                ///< before and after
};

/// A line for each place:
///
///     etude.musicxml:88:7: bar 4, left hand, beat 2: C3:5 double left, G3:1 double right
std::string write_found(const AnalysedScore& score, std::span<const FoundPlace> places,
                        const FoundStyle& style);
/// How many places there are in each file that has any; `ranked` by how much of the file they are,
/// the most first.
std::string write_found_counts(std::span<const FoundCounts> files, bool ranked);
/// What all comes to, with the caution; nothing where nothing was found.
std::string write_found_sum(const AllFound& all, int columns);

/// Lines of JSON for each place of a file, for one that could not be read, and the one at the end
/// for all; docs/find.schema.json describes them.
std::string write_found_jsonl(const AnalysedScore& score, std::span<const FoundPlace> places);
std::string write_found_jsonl(const FoundCounts& failed);
std::string write_found_jsonl(const AllFound& all);

}  // namespace fingerturn
