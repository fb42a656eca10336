#pragma once

#include "expect.hpp"
#include "fingerturn/fingerturn.hpp"
#include "well_formed.hpp"

#include <string>

/// What holds of the plan for any score.
namespace fingerturn::properties {

inline void expect_plan(const Score& score, const PracticeMemory* since = nullptr) {
  const AnalysedScore analysed("fuzz", score);
  const PracticePlan plan = plan_practice(analysed, {.minutes = 25, .since = since});
  int minutes = plan.places.empty() ? 25 : plan.rest_minutes;
  for (const PlannedPlace& place : plan.places) minutes += place.minutes.value_or(0);
  expect(minutes == 25, "all minutes are shared");
  const std::string json = write_practice_json(analysed, plan);
  const PracticeMemoryResult memory = read_practice(Source("plan.json", json));
  expect(memory.ok(), "a plan is read again");
  expect(memory.memory.places.size() == plan.places.size(), "all of its places are");
  expect(!write_practice_text(analysed, plan, {}).empty(), "a plan is told");
  expect(!write_practice_markdown(analysed, plan).empty(), "a plan is written in Markdown");
  expect(is_xml(write_practice_html(analysed, plan)), "a page is well-formed");
  const std::string passages = write_practice_passages(analysed, plan);
  expect(read_notation(Source("plan.passage", passages)).ok(), "what is to be played is read");
  const std::string music = write_practice_musicxml(analysed, plan);
  expect(music.empty() || is_xml(music), "a score of it is well-formed");
}

}  // namespace fingerturn::properties
