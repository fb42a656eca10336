#pragma once

/// The whole library: text to score to analysis to report.
///
///     using namespace fingerturn;
///     Source source("warmup.passage", "C4:1 D:2 E:3 F:1");
///     ReadResult read = read_notation(source);
///     if (!read.ok()) return fail(render(source, read.diagnostics));
///     const AnalysedScore analysed(source.name(), read.score);
///     print(write_text(analysed, {}));
///
/// What allocates nothing is noexcept; all else can throw std::bad_alloc, and nothing else.

#include "fingerturn/analysed.hpp"
#include "fingerturn/analysis.hpp"
#include "fingerturn/check.hpp"
#include "fingerturn/compare.hpp"
#include "fingerturn/diagnostic.hpp"
#include "fingerturn/diagnostic_code.hpp"
#include "fingerturn/excerpt.hpp"
#include "fingerturn/find.hpp"
#include "fingerturn/finger_setting.hpp"
#include "fingerturn/fingering.hpp"
#include "fingerturn/fingers_back.hpp"
#include "fingerturn/fraction.hpp"
#include "fingerturn/key_signature.hpp"
#include "fingerturn/pitch.hpp"
#include "fingerturn/places.hpp"
#include "fingerturn/practice.hpp"
#include "fingerturn/read.hpp"
#include "fingerturn/report.hpp"
#include "fingerturn/rule.hpp"
#include "fingerturn/scale.hpp"
#include "fingerturn/score.hpp"
#include "fingerturn/source.hpp"
#include "fingerturn/transpose.hpp"
#include "fingerturn/version.hpp"
#include "fingerturn/why.hpp"
