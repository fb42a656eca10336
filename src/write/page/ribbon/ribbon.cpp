#include "write/page/ribbon/ribbon.hpp"

#include "write/page/ribbon/labels.hpp"
#include "write/shared/note_words.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <optional>
#include <string>

namespace fingerturn {
namespace {

constexpr double kDigitBelow = 0.36;  // from the middle of a digit to its foot, in its size
constexpr double kSwing = 2.6;
constexpr double kMiddle = kRibbonHeight / 2;
constexpr double kBowBend = 1.1;

double height_of(std::optional<Direction> play) {
  if (!play) return kMiddle;
  return *play == Direction::right ? 0 : kRibbonHeight;
}

struct Fingers {
  std::vector<std::string> words;  ///< of what is struck, lowest first
  bool suggested = true;
};

/// What a node shows of an event.
struct Node {
  const AnalysedEvent event;
  Fingers fingers;
  std::optional<Direction> play;
  double x = 0;

  [[nodiscard]] double y() const { return height_of(play); }
  [[nodiscard]] bool is_level() const { return event.found.rotation == Rotation::level; }
};

Fingers fingers_of(const AnalysedLine& line, const AnalysedEvent& event) {
  constexpr std::size_t kLongest = 5;
  Fingers fingers;
  for (const Note& note : event.written.notes) {
    if (note.held) continue;
    std::string words =
        finger_words(fingers_on_key(line.written(), event.found.event, note), false);
    std::ranges::replace(words, '>', '-');
    if (words.size() > kLongest) words = words.substr(0, 3) + "..";
    fingers.words.push_back(std::move(words));
    fingers.suggested = fingers.suggested && note.suggested && note.finger;
  }
  return fingers;
}

Node node_of(const AnalysedLine& line, std::size_t number, double x) {
  const AnalysedEvent event = line[number];
  std::optional<Direction> play;
  if (event.found.side) play = direction_of(line.hand(), *event.found.side);
  return {event, fingers_of(line, event), play, x};
}

std::string joined(const std::vector<std::string>& words) {
  std::string all;
  for (const std::string& word : words) {
    if (!all.empty()) all += ' ';
    all += word;
  }
  return all;
}

/// Half the width of a node without its ring.
double half_width(const Node& node) {
  constexpr double kInset = 0.55;
  if (!node.is_level()) {
    return std::max(kNodeRadius, text_width(joined(node.fingers.words), kFingerSize) / 2 + kInset);
  }
  double widest = 0;
  for (const std::string& word : node.fingers.words) {
    widest = std::max(widest, text_width(word, kFingerSize));
  }
  return std::max(kNodeRadius, widest / 2 + kInset);
}

InkStyle style_of(Rotation rotation) {
  switch (rotation) {
    case Rotation::preparatory:
      return InkStyle::corners;
    case Rotation::single_rotation:
      return InkStyle::single;
    case Rotation::double_rotation:
      return InkStyle::filled;
    case Rotation::level:
      return InkStyle::level;
    case Rotation::undetermined:
      break;
  }
  return InkStyle::open;
}

InkStyle finger_style(const Node& node) {
  const bool filled = node.event.found.rotation == Rotation::double_rotation;
  if (node.fingers.suggested) {
    return filled ? InkStyle::suggested_on_filled : InkStyle::suggested;
  }
  return filled ? InkStyle::on_filled : InkStyle::strong;
}

Ink finger_ink(const Node& node, std::string words, double y) {
  return text_ink(
      InkKind::finger,
      {std::move(words), {node.x, y + kDigitBelow * kFingerSize}, kFingerSize, Anchor::middle},
      finger_style(node));
}

/// A chord that is struck level reaches over both lines, its fingers as the keys lie.
void draw_level(const Node& node, Inks& inks) {
  constexpr double kStep = 1.5;
  const double half = half_width(node);
  const double stack = kStep * static_cast<double>(node.fingers.words.size() - 1) / 2;
  const double reach = kNodeRadius + std::max(kMiddle, stack);
  inks.push_back(plate_ink(InkKind::node,
                           {node.x - half, kMiddle - reach, node.x + half, kMiddle + reach}, half,
                           InkStyle::level));
  double y = kMiddle + stack;
  for (const std::string& word : node.fingers.words) {
    inks.push_back(finger_ink(node, word, y));
    y -= kStep;
  }
}

void draw_node(const Node& node, Inks& inks) {
  if (node.is_level()) return draw_level(node, inks);
  const double half = half_width(node);
  const double y = node.y();
  const auto plate = [&](double reach) {
    return Box{node.x - half - reach, y - kNodeRadius - reach, node.x + half + reach,
               y + kNodeRadius + reach};
  };
  const InkStyle style = style_of(node.event.found.rotation);
  if (style == InkStyle::filled) {
    inks.push_back(
        plate_ink(InkKind::node, plate(kRing / 2), kNodeRadius + kRing / 2, InkStyle::ring));
    inks.push_back(plate_ink(InkKind::node, plate(-kRing / 2), kNodeRadius - kRing / 2, style));
  } else {
    inks.push_back(plate_ink(InkKind::node, plate(0),
                             style == InkStyle::corners ? kNodeCorner : kNodeRadius, style));
  }
  inks.push_back(finger_ink(node, joined(node.fingers.words), y));
}

void draw_turn(double x, double y, Inks& inks) {
  inks.push_back(plate_ink(InkKind::turn,
                           {x - kTurnRadius, y - kTurnRadius, x + kTurnRadius, y + kTurnRadius},
                           kTurnRadius, InkStyle::prepare));
}

/// What leads into a node: where the forearm was, and since when.
struct Before {
  double x = 0;
  double y = 0;
  double edge = 0;  ///< where the node there ends
};

/// Where the forearm turns on its way into a double: half way. After a silent change it turns on
/// the line of the node before, and clear of that.
double turn_between(const Before& before, double begin, const Node& node) {
  constexpr double kAir = kTurnRadius + 0.3;
  const double middle = (begin + node.x) / 2;
  if (before.y == node.y()) return middle;
  return std::max(middle, std::min(before.edge + kAir, node.x - kTurnRadius));
}

void draw_flat(double from, double to, double y, Inks& inks) {
  if (to <= from) return;
  Ink ink = line_ink(InkKind::swing, {from, y}, {to, y}, 0.3);
  ink.style = InkStyle::play;
  inks.push_back(std::move(ink));
}

/// A swing out first, then into the node; the forearm turns half way.
void draw_back_and_play(const Node& node, Point from, double turn_x, Inks& inks) {
  const double turn_y = height_of(node.event.found.prepare);
  inks.push_back(swing_ink(from, {turn_x, turn_y}, InkStyle::prepare));
  inks.push_back(swing_ink({turn_x, turn_y}, {node.x, node.y()}, InkStyle::play));
  draw_turn(turn_x, turn_y, inks);
}

void draw_swing_into(const Node& node, const std::optional<Before>& before, Inks& inks) {
  if (!node.play) return;
  if (!before) {
    constexpr double kLead = 2.1;
    const double turn = node.event.found.rotation == Rotation::double_rotation ? 1.3 : 1.5;
    if (node.event.found.prepare) {
      draw_back_and_play(node, {node.x - kLead, kMiddle}, node.x - turn, inks);
    }
    return;
  }
  const bool doubled = node.event.found.prepare.has_value();
  const double begin = std::max(before->x, node.x - (doubled ? kDoubleSwing : kSwing));
  draw_flat(before->x, begin, before->y, inks);
  if (doubled) {
    draw_back_and_play(node, {begin, before->y}, turn_between(*before, begin, node), inks);
  } else {
    inks.push_back(swing_ink({begin, before->y}, {node.x, node.y()}, InkStyle::play));
  }
}

/// Whether the swing into an event comes from the event before it.
bool leads_on(const AnalysedLine& line, std::size_t number) {
  if (number == 0 || number >= line.size()) return false;
  const EventAnalysis& before = line[number - 1].found;
  const EventAnalysis& now = line[number].found;
  return now.side && before.side && before.gesture == now.gesture;
}

void draw_bow(const Crossing crossing, double from, double to, Inks& inks) {
  constexpr double kAir = 0.35;
  const double top = kRibbonHeight + kNodeRadius + kAir;
  const auto bow = [&](double y, double bend) {
    inks.push_back(bow_ink(InkKind::bow, {from, y}, {to, y}, bend));
  };
  if (crossing != Crossing::finger_over_thumb) bow(top, kBowBend);
  if (crossing != Crossing::thumb_under) bow(top + kBowBend, -kBowBend);
}

class RibbonDrawing {
 public:
  RibbonDrawing(const AnalysedLine& line, const RibbonPart& part, const WatchNumbers& watch)
      : line_(line), part_(part), watch_(watch) {}

  Inks draw() {
    for (const double y : {0.0, kRibbonHeight}) {
      inks_.push_back(line_ink(InkKind::ribbon_line, {part_.begin, y}, {part_.end, y}, 0.1));
    }
    std::vector<Node> nodes;
    for (const RibbonNode& node : part_.nodes) {
      nodes.push_back(node_of(line_, node.number, node.x));
    }
    for (std::size_t i = 0; i < nodes.size(); ++i) {
      const std::size_t number = part_.nodes[i].number;
      draw_swing_into(nodes[i], before(nodes, i, number), inks_);
      add_bow(nodes, i);
      draw_way_out(nodes, i);
    }
    for (const Node& node : nodes) draw_node(node, inks_);
    add_labels(nodes);
    return std::move(inks_);
  }

 private:
  /// What leads into a node: the node before it, or where the forearm was in the system before.
  [[nodiscard]] std::optional<Before> before(const std::vector<Node>& nodes, std::size_t i,
                                             std::size_t number) const {
    if (!leads_on(line_, number)) return std::nullopt;
    if (follows(i)) return before_at(nodes[i - 1]);
    const double begin =
        i > 0 ? std::max(nodes[i].x - kLead, before_at(nodes[i - 1]).edge) : part_.way_in;
    return Before{begin, node_of(line_, number - 1, 0).y(), begin};
  }

  static Before before_at(const Node& node) {
    const double ring = node.event.found.rotation == Rotation::double_rotation ? kRing / 2 : 0;
    return {node.x, node.y(), node.x + half_width(node) + ring};
  }

  /// Whether a node is that of the next event after the node before it.
  [[nodiscard]] bool follows(std::size_t i) const {
    return i > 0 && part_.nodes[i - 1].number + 1 == part_.nodes[i].number;
  }

  /// Where what comes next stands elsewhere, the forearm stays where it is.
  void draw_way_out(const std::vector<Node>& nodes, std::size_t i) {
    const bool is_last = i + 1 == nodes.size();
    if ((!is_last && follows(i + 1)) || !leads_on(line_, part_.nodes[i].number + 1)) return;
    const double end =
        is_last ? part_.way_out : std::min(nodes[i].x + kLead, nodes[i + 1].x - kLead);
    draw_flat(nodes[i].x, end, nodes[i].y(), inks_);
  }

  void add_bow(const std::vector<Node>& nodes, std::size_t i) {
    constexpr double kHalfBow = 3;
    const Crossing crossing = nodes[i].event.found.crossing;
    if (crossing == Crossing::none) return;
    draw_bow(crossing, follows(i) ? nodes[i - 1].x : nodes[i].x - kHalfBow, nodes[i].x, inks_);
  }

  void add_labels(const std::vector<Node>& nodes) {
    std::vector<RibbonLabel> labels;
    for (const Node& node : nodes) {
      append_labels(node.event.found, node.x, watch_, labels);
    }
    draw_labels(labels, line_.hand() == Hand::right, part_.end, inks_);
  }

  /// How far the flat line reaches that leads to what stands elsewhere.
  static constexpr double kLead = 4.5;

  const AnalysedLine& line_;
  const RibbonPart& part_;
  const WatchNumbers& watch_;
  Inks inks_;
};

}  // namespace

NodeRoom room_of(const AnalysedLine& line, std::size_t number) {
  const Node node = node_of(line, number, 0);
  const double half = half_width(node);
  switch (node.event.found.rotation) {
    case Rotation::preparatory:
      return {half + 1.2, half + 0.1};
    case Rotation::double_rotation:
      return {half + 0.75, half + kRing / 2};
    case Rotation::single_rotation:
      return {half + 0.5, half + 0.1};
    case Rotation::level:
    case Rotation::undetermined:
      break;
  }
  return {half + 0.25, half + 0.1};
}

Inks draw_ribbon(const AnalysedLine& line, const RibbonPart& part, const WatchNumbers& watch) {
  return RibbonDrawing(line, part, watch).draw();
}

}  // namespace fingerturn
