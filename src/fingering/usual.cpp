#include "fingering/usual.hpp"

#include <cstddef>
#include <string>
#include <utility>

#include <fmt/core.h>

namespace fingerturn {
namespace {

/// What a path takes over: the fingers of figures and those that are given elsewhere.
class UsualInPath {
 public:
  UsualInPath(const Line& line, const FingerTask& task, const Path& path)
      : line_(line), task_(task), path_(path) {}

  std::vector<UsualFingers> found(std::span<const Figure> figures) {
    std::size_t begin = 0;
    for (const Figure& figure : figures) {
      if (!is_taken(figure)) continue;
      add_printed(begin, figure.begin);
      add(figure.begin, figure.end, words_of(figure, line_, task_.grips));
      begin = figure.end;
    }
    add_printed(begin, task_.grips.size());
    return std::move(usual_);
  }

 private:
  [[nodiscard]] const Choice& choice(std::size_t at) const {
    return task_.choices.of(at)[path_.choices[at]];
  }

  [[nodiscard]] bool is_taken(const Figure& figure) const {
    for (std::size_t at = figure.begin; at < figure.end; ++at) {
      const std::size_t keys = figure.far_fingers.empty() ? 1 : 2;
      for (std::size_t i = 0; i < keys; ++i) {
        if (choice(at).strikes.at(i) != task_.grips[at].keys.at(i).habit) return false;
      }
    }
    return true;
  }

  /// Whether a finger of a grip is one that is given where its group comes again.
  [[nodiscard]] bool is_printed(std::size_t at) const {
    const Grip& grip = task_.grips[at];
    for (std::size_t i = 0; i < grip.count; ++i) {
      const Finger printed = grip.keys.at(i).printed;
      if (printed != 0 && printed == choice(at).strikes.at(i)) return true;
    }
    return false;
  }

  void add_printed(std::size_t begin, std::size_t end) {
    for (std::size_t at = begin; at < end; ++at) {
      if (!is_printed(at)) continue;
      const Event& source = line_.events[task_.grips[task_.grips[at].printed_at].event];
      add(at, at + 1, fmt::format("as given in bar {}", source.bar));
    }
  }

  void add(std::size_t begin, std::size_t end, std::string words) {
    usual_.push_back({task_.grips[begin].event, task_.grips[end - 1].event, std::move(words)});
  }

  const Line& line_;
  const FingerTask& task_;
  const Path& path_;
  std::vector<UsualFingers> usual_;
};

}  // namespace

std::vector<UsualFingers> usual_in(const Line& line, const FingerTask& task, const Path& path,
                                   std::span<const Figure> figures) {
  return UsualInPath(line, task, path).found(figures);
}

}  // namespace fingerturn
