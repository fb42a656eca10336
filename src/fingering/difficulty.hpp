#pragma once

#include "fingering/choices.hpp"
#include "fingering/grips.hpp"
#include "fingering/terms.hpp"
#include "hand/spans.hpp"

namespace fingerturn {

/// A grip as it is fingered.
struct Fingered {
  const Grip& grip;
  const Choice& choice;
};

/// What is difficult in one grip alone.
void add_grip(Fingered at, const SpanTable& spans, Tally& tally) noexcept;

/// What is difficult in going from one grip to the next.
void add_step(Fingered from, Fingered to, const SpanTable& spans, Tally& tally) noexcept;

/// What is difficult in the first and last of three grips, whatever the middle one is.
void add_over_two(Fingered first, Fingered last, Tally& tally) noexcept;

/// What is difficult in three single notes one after another.
void add_three(Fingered first, Fingered middle, Fingered last, const SpanTable& spans,
               Tally& tally) noexcept;

/// Whether the terms of three grips are counted: no rest parts them.
bool belong_together(const Grip& middle, const Grip& last) noexcept;
bool are_single(const Grip& first, const Grip& middle, const Grip& last) noexcept;

}  // namespace fingerturn
