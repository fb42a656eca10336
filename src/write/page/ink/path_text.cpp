#include "write/page/ink/path_text.hpp"

#include <cmath>
#include <cstdlib>

#include <fmt/format.h>

namespace fingerturn {
namespace {

void add_hundredths(std::string& out, Hundredths length) {
  if (length < 0) out += '-';
  const Hundredths size = std::abs(length);
  const Hundredths fraction = size % 100;
  if (size >= 100 || fraction == 0) {
    const fmt::format_int whole(size / 100);
    out.append(whole.data(), whole.size());
  }
  if (fraction == 0) return;
  out += '.';
  out += static_cast<char>('0' + fraction / 10);
  if (fraction % 10 != 0) out += static_cast<char>('0' + fraction % 10);
}

}  // namespace

Hundredths hundredths(double length) noexcept { return std::llround(length * 100); }

void add_length(std::string& out, double length) { add_hundredths(out, hundredths(length)); }

void add_attribute(std::string& out, std::string_view name, double length) {
  out += ' ';
  out += name;
  out += "=\"";
  add_length(out, length);
  out += '"';
}

PathText::Place PathText::place_of(Point point) noexcept {
  return {hundredths(point.x), hundredths(point.y)};
}

void PathText::add(char letter, Hundredths length) {
  out_ += letter;
  add_hundredths(out_, length);
}

/// A number after another; its sign parts them where it has one.
void PathText::add_next(Hundredths length) {
  if (length >= 0) out_ += ' ';
  add_hundredths(out_, length);
}

void PathText::move_to(Point point) {
  const Place to = place_of(point);
  if (begun_ && to.x == at_.x && to.y == at_.y) return;
  add('M', to.x);
  add_next(to.y);
  at_ = to;
  begun_ = true;
}

void PathText::line_to(Point point) {
  const Place to = place_of(point);
  if (to.y == at_.y) {
    add('h', to.x - at_.x);
  } else if (to.x == at_.x) {
    add('v', to.y - at_.y);
  } else {
    add('l', to.x - at_.x);
    add_next(to.y - at_.y);
  }
  at_ = to;
}

void PathText::curve_to(Point first, Point second, Point point) {
  const Place to = place_of(point);
  const Place begin = place_of(first);
  add('c', begin.x - at_.x);
  add_next(begin.y - at_.y);
  for (const Place& place : {place_of(second), to}) {
    add_next(place.x - at_.x);
    add_next(place.y - at_.y);
  }
  at_ = to;
}

void PathText::close() {
  out_ += 'z';
  begun_ = false;
}

}  // namespace fingerturn
