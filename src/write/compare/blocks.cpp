#include "write/compare/blocks.hpp"

#include "text/numbers.hpp"
#include "write/shared/note_words.hpp"

#include <unordered_map>
#include <utility>

#include <fmt/core.h>

namespace fingerturn {
namespace {

std::string fingers_words(const Line& line, std::size_t place) {
  std::string words;
  for (const Note& note : line.events[place].notes) {
    if (note.held) continue;
    words += (words.empty() ? "" : "+") +
             finger_words(fingers_on_key(line, place, note), note.suggested);
  }
  return words;
}

Parts parts_of(const AnalysedLine& line, std::size_t number, const Signs& signs) {
  const auto [event, entry] = line[number];
  const ShownEvent shown{&event, entry.event, &entry};
  const auto cell = [&](Row row) { return row_cell(row, shown, line, signs); };
  const Cell fingers{fingers_words(line.written(), entry.event)};
  // One question mark says that nothing is known.
  if (entry.rotation == Rotation::undetermined && !entry.side) {
    return {fingers, cell(Row::rotation), Cell{}, Cell{}};
  }
  return {fingers, cell(Row::rotation), cell(Row::play), cell(Row::crossing)};
}

/// Gathers what is said, bar by bar.
class Blocks {
 public:
  Blocks(const HandComparison& hand, const Signs& signs) : hand_(hand), signs_(signs) {}

  std::vector<Block> gather() {
    auto differing = hand_.differing.begin();
    auto number = hand_.compared.begin();
    for (const BarAgreement& in_bar : hand_.agreement) {
      Block block{{in_bar.bar, in_bar.bar}, {}};
      for (std::size_t event = 0; event < in_bar.agreement.events; ++event, ++number) {
        const bool differs = differing != hand_.differing.end() && differing->number == *number;
        add(differs ? &*differing++ : nullptr, block.entries);
      }
      const bool nothing_differs = block.entries.size() == 1 && block.entries[0].alike > 0;
      if (nothing_differs) block.entries.clear();
      put(std::move(block));
    }
    return std::move(blocks_);
  }

 private:
  void add(const DifferingEvent* event, std::vector<Entry>& entries) const {
    if (event != nullptr) {
      entries.push_back(entry_for(hand_, *event, signs_));
    } else if (!entries.empty() && entries.back().alike > 0) {
      ++entries.back().alike;
    } else {
      entries.push_back({1, "", "", {}});
    }
  }

  /// Adds a block, or lengthens the one before where the same is to be said.
  void put(Block block) {
    const std::int32_t bar = block.bars.first;
    if (!block.entries.empty() && block.entries == last_) {
      block.entries.clear();
      block.as_in = last_bar_;
    } else if (!block.entries.empty()) {
      last_ = block.entries;
      last_bar_ = bar;
    }
    const bool continues = !blocks_.empty() && block.entries.empty() &&
                           blocks_.back().entries.empty() && blocks_.back().as_in == block.as_in;
    if (continues) {
      blocks_.back().bars.last = bar;
    } else {
      blocks_.push_back(std::move(block));
    }
  }

  const HandComparison& hand_;
  const Signs& signs_;
  std::vector<Block> blocks_;
  std::vector<Entry> last_;
  std::int32_t last_bar_ = 0;
};

/// What two ways to play have in common where they are the same one; a finger that is suggested is
/// no other than one given.
std::string way_of(const Parts& parts) {
  std::string way = parts[0].text;
  if (way.size() > 1) std::erase(way, '?');
  for (std::size_t part = 1; part < kParts; ++part) {
    way += fmt::format("\n{} {}", static_cast<int>(parts[part].emphasis), parts[part].text);
  }
  return way;
}

}  // namespace

Entry entry_for(const HandComparison& hand, const DifferingEvent& event, const Signs& signs) {
  Entry entry;
  if (event.beat) entry.beat = beat_text(*event.beat);
  entry.notes = struck_notes_words(hand.lines.front()[event.number].written);
  for (const AnalysedLine& line : hand.lines) {
    entry.played.push_back(parts_of(line, event.number, signs));
  }
  return entry;
}

std::vector<Block> blocks_of(const HandComparison& hand, const Signs& signs) {
  return Blocks(hand, signs).gather();
}

std::string way_words(const Parts& parts) {
  std::string words;
  for (const Cell& part : parts) {
    if (!part.text.empty()) words += (words.empty() ? "" : " ") + part.text;
  }
  return words;
}

std::string alike_words(std::size_t count) { return fmt::format("{} the same", count); }

std::string whole_bar_words(const Block& block) {
  return block.as_in ? fmt::format("as in bar {}", *block.as_in) : "the same";
}

std::vector<Group> groups_of(const Entry& entry) {
  std::vector<Group> groups;
  std::unordered_map<std::string, std::size_t> numbers;  // of the groups by their ways
  for (std::size_t i = 0; i < entry.played.size(); ++i) {
    const auto [found, is_new] = numbers.try_emplace(way_of(entry.played[i]), groups.size());
    if (is_new) {
      groups.push_back({fingering_label(i), &entry.played[i]});
    } else {
      groups[found->second].labels += ' ' + fingering_label(i);
    }
  }
  return groups;
}

}  // namespace fingerturn
