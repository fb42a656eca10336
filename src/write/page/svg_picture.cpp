#include "write/page/svg_picture.hpp"

#include "text/escape.hpp"
#include "write/page/svg_frame.hpp"

#include <fmt/core.h>

namespace fingerturn {

void add_picture(std::string& out, const PictureOf& of, HandDrawer& drawer, std::string_view place,
                 std::size_t id) {
  const HandPicture& picture = drawer.picture();
  const int begin = of.part.layout.begin_of(of.piece);
  const int end = of.part.layout.end_of(of.piece);
  out += fmt::format(
      R"(<svg class="swing" role="img" aria-labelledby="t{0} d{0}"{1} viewBox="{2} 0 {3} {4}">)",
      id, place, begin, end - begin, lanes::height(picture.lanes()));
  out += fmt::format(R"(<title id="t{0}">Swing of the {1} forearm, bar {2}</title>)", id,
                     to_string(picture.hand()), of.piece.bar);
  out += fmt::format(R"(<desc id="d{0}">{1}</desc>)", id,
                     escaped_markup(words_of_piece(of.part, of.line, of.piece)));
  drawer.add(out, {static_cast<double>(begin), static_cast<double>(end)});
  add_bar_lines(out, picture, of.part.layout, of.piece);
  out += "</svg>";
}

void add_sample(std::string& out, const LegendSample& sample, std::string_view place) {
  out += fmt::format(R"(<svg class="swing" aria-hidden="true"{} viewBox="0 0 {} {}">)", place,
                     kSampleWidth, sample_height(sample));
  draw_marks(out, {sample.marks, 0, sample.marks.size()}, sample.lanes, {0, kSampleWidth});
  out += "</svg>";
}

double sample_height(const LegendSample& sample) noexcept {
  constexpr double kMargin = 4;
  return lanes::kBandEnd + kMargin + (sample.lanes.crossings ? lanes::kCrossingHeight : 0);
}

std::string bar_words(const Piece& piece) {
  return fmt::format(fmt::runtime(piece.goes_on ? "(bar {})" : "bar {}"), piece.bar);
}

}  // namespace fingerturn
