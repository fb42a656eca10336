#pragma once

#include "fingering/choices.hpp"
#include "fingering/costs.hpp"
#include "fingering/fitted_weights.hpp"
#include "fingering/grips.hpp"
#include "fingerturn/score.hpp"
#include "hand/spans.hpp"

#include <cstddef>
#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

namespace fingerturn {

/// The grips of a line with all that is usual there: figures, and groups that come again, as if
/// what is given were what was found.
std::vector<Grip> marked_grips(const Line& line, const SpanTable& spans);

/// A line with all that the search for its fingers works on.
struct LineTask {
  explicit LineTask(const Line& line, const Model& model = kFitted)
      : spans(std::nullopt),
        grips(marked_grips(line, spans)),
        choices(grips, spans),
        costs(FingerTask{grips, choices, spans, model.weights, model.tables}) {}
  ~LineTask() = default;
  LineTask(const LineTask&) = delete;
  LineTask& operator=(const LineTask&) = delete;

  SpanTable spans;
  std::vector<Grip> grips;
  Choices choices;
  LineCosts costs;
};

/// The difficulty of a path, added up grip by grip.
std::int64_t difficulty_of(const LineCosts& costs, const std::vector<std::uint8_t>& path);

/// The first line of a passage in the notation, which must be without errors.
Line line_written(std::string_view notation);

/// The fingers of all notes, the lowest of an event first: "1 2 35", "." where one is missing.
std::string fingers_of(const Line& line);

/// The fingers of what is struck, the lowest note first; 0 where one is missing.
std::vector<Finger> struck_fingers(const Event& event);

/// The line with its easiest fingers.
Line completed(const Line& line);

/// The line without any finger.
Line without_fingers(Line line);

}  // namespace fingerturn
