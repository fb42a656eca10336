#include "fingerturn/fingerturn.hpp"

#include <array>
#include <string>
#include <string_view>

#include <benchmark/benchmark.h>
#include <malloc.h>

/// Time for each note at each stage of the way from text to report, at three sizes. What a stage
/// costs for a note should not depend on how many there are.
namespace {

using namespace fingerturn;

/// A passage of so many notes: scales up and down with handbook fingers, now and then a double
/// note, a rest and a missing finger, in bars of eight.
std::string passage_of(std::int64_t notes) {
  constexpr std::array<std::string_view, 16> kFigure{
      "C4:1", "D4:2", "E4:3",      "F4:1", "G4:2", "A4:3", "B4:4", "C5:5",
      "B4:4", "A4:3", "G4:2+B4:4", "F4:1", "E4:3", "D4",   "C4:1", "r"};
  std::string text = "passage: bench\nmeter: 4/4\ntempo: 96\n1/8\n";
  std::int64_t written = 0;
  for (std::size_t i = 0; written < notes; ++i) {
    const std::string_view word = kFigure.at(i % kFigure.size());
    text += word;
    text += i % 8 == 7 ? " |\n" : " ";
    if (word != "r") ++written;
  }
  return text;
}

void count_notes(benchmark::State& state) {
  state.SetItemsProcessed(state.iterations() * state.range(0));
}

void read(benchmark::State& state) {
  const Source source("bench", passage_of(state.range(0)));
  for (auto unused : state) benchmark::DoNotOptimize(read_notation(source));
  count_notes(state);
}

void analyse_score(benchmark::State& state) {
  const Source source("bench", passage_of(state.range(0)));
  const Score score = read_notation(source).score;
  for (auto unused : state) benchmark::DoNotOptimize(analyse(score));
  count_notes(state);
}

template <typename Writer>
void write(benchmark::State& state, const Writer& writer) {
  const Source source("bench", passage_of(state.range(0)));
  const AnalysedScore analysed(source.name(), read_notation(source).score);
  for (auto unused : state) benchmark::DoNotOptimize(writer(analysed));
  count_notes(state);
}

/// Handed on piece by piece, as by the program; a million notes as one text are half a gigabyte.
std::size_t length_as_jsonl(const AnalysedScore& analysed) {
  std::size_t bytes = 0;
  write_jsonl(analysed, [&bytes](std::string_view piece) { bytes += piece.size(); });
  return bytes;
}

void write_as_jsonl(benchmark::State& state) { write(state, length_as_jsonl); }
void write_as_text(benchmark::State& state) {
  write(state, [](const AnalysedScore& analysed) { return write_text(analysed, {}); });
}
void write_as_html(benchmark::State& state) {
  write(state, [](const AnalysedScore& analysed) { return write_html(analysed); });
}
void write_as_svg(benchmark::State& state) {
  write(state, [](const AnalysedScore& analysed) { return write_svg(analysed); });
}
void write_as_markdown(benchmark::State& state) {
  write(state, [](const AnalysedScore& analysed) { return write_markdown(analysed, {}); });
}
void write_as_passage(benchmark::State& state) {
  write(state, [](const AnalysedScore& analysed) { return write_passage(analysed.written()); });
}

void end_to_end(benchmark::State& state) {
  const std::string text = passage_of(state.range(0));
  for (auto unused : state) {
    const Source source("bench", text);
    const AnalysedScore analysed(source.name(), read_notation(source).score);
    benchmark::DoNotOptimize(length_as_jsonl(analysed));
  }
  count_notes(state);
}

/// The key with this MIDI note number, black keys as sharps.
Pitch pitch_on(int midi) {
  constexpr std::array<std::string_view, 12> kNames{"C",  "C#", "D",  "D#", "E",  "F",
                                                    "F#", "G",  "G#", "A",  "A#", "B"};
  const auto name = kNames.at(static_cast<std::size_t>(midi % 12));
  return *parse_pitch(std::string(name) + std::to_string(midi / 12 - 1));
}

/// Lines without any finger: notes of one to four at a time, along a scale and across leaps.
Score bare_score(std::int64_t notes, int together) {
  constexpr std::array<int, 8> kSteps{2, 2, 1, 2, -5, 4, 3, -9};
  Passage passage;
  Line& line = passage.lines.emplace_back();
  int key = 60;
  for (std::int64_t written = 0; written < notes; written += together) {
    Event& event = line.events.emplace_back();
    for (int i = 0; i < together; ++i) {
      Note& note = event.notes.emplace_back();
      note.pitch = pitch_on(key + 3 * i);
    }
    key += kSteps.at(line.events.size() % kSteps.size());
  }
  return {{std::move(passage)}};
}

void suggest_fingers(benchmark::State& state, int together) {
  const Score score = bare_score(state.range(0), together);
  for (auto unused : state) benchmark::DoNotOptimize(suggest(score));
  count_notes(state);
}

void suggest_notes(benchmark::State& state) { suggest_fingers(state, 1); }
void suggest_doubles(benchmark::State& state) { suggest_fingers(state, 2); }
void suggest_chords(benchmark::State& state) { suggest_fingers(state, 3); }
void suggest_thick(benchmark::State& state) { suggest_fingers(state, 4); }

void sizes(benchmark::internal::Benchmark* bench) {
  bench->Arg(1000)->Arg(10000)->Arg(100000)->Unit(benchmark::kMicrosecond);
}

BENCHMARK(read)->Apply(sizes)->Arg(1000000);
BENCHMARK(analyse_score)->Apply(sizes)->Arg(1000000);
BENCHMARK(write_as_jsonl)->Apply(sizes)->Arg(1000000);
BENCHMARK(write_as_text)->Apply(sizes);
BENCHMARK(write_as_html)->Apply(sizes);
BENCHMARK(write_as_svg)->Apply(sizes);
BENCHMARK(write_as_markdown)->Apply(sizes);
BENCHMARK(write_as_passage)->Apply(sizes);
BENCHMARK(suggest_notes)->Apply(sizes);
BENCHMARK(suggest_doubles)->Apply(sizes);
BENCHMARK(suggest_chords)->Apply(sizes);
BENCHMARK(suggest_thick)->Apply(sizes);
BENCHMARK(end_to_end)->Apply(sizes)->Arg(1000000);

}  // namespace

int main(int count, char** words) {
  // Memory stays with the process from one round to the next. Else large results get fresh pages
  // from the kernel in every round, which costs more than writing them; a run of the program pays
  // for its pages once, and `run` measures that as well.
  constexpr int kLargestBlock = 1 << 30;
  mallopt(M_MMAP_THRESHOLD, kLargestBlock);
  mallopt(M_TRIM_THRESHOLD, kLargestBlock);
  mallopt(M_TOP_PAD, kLargestBlock / 4);
  benchmark::Initialize(&count, words);
  benchmark::RunSpecifiedBenchmarks();
}
