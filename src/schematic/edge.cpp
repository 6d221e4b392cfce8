#include "schematic/edge.hpp"

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <cstdlib>
#include <utility>

namespace latchwork::inline v0::schematics {
namespace {

constexpr double hair_mm = 1e-6;
constexpr int quick_rows = 2;  // several at once are made where the yarn is, at one side every second row

/// Adds a corner, in place of the last one where that lies on the line to it.
void add_corner(std::vector<OutlinePoint>& corners, const OutlinePoint& next) {
  const std::size_t count = corners.size();
  if (count > 0 && corners.back() == next) return;
  if (count > 1) {
    const OutlinePoint& a = corners[count - 2];
    const OutlinePoint& b = corners[count - 1];
    const double turn = (b.x_mm - a.x_mm) * (next.y_mm - b.y_mm) - (b.y_mm - a.y_mm) * (next.x_mm - b.x_mm);
    if (std::abs(turn) < hair_mm && b.y_mm > a.y_mm) corners.pop_back();
  }
  corners.push_back(next);
}

/// A step that a slope passes: at a height, between two places.
struct Gate {
  OutlinePoint middle;
  double half_mm = 0;
  double row_mm = 0;  ///< a step may stand a row, or an even row, from where the slope has it, since rows are whole

  /// `open` is how much of it may be passed, about its middle.
  bool lets_pass(const OutlinePoint& from, const OutlinePoint& to, double open) const {
    const auto at = [&](double y) {
      const double share = std::clamp((y - from.y_mm) / (to.y_mm - from.y_mm), 0.0, 1.0);
      return from.x_mm + share * (to.x_mm - from.x_mm) - middle.x_mm;
    };
    const double low = at(middle.y_mm - row_mm);
    const double high = at(middle.y_mm + row_mm);
    return std::min(low, high) <= open * half_mm + hair_mm && std::max(low, high) >= -open * half_mm - hair_mm;
  }
};

/// From a corner that is drawn already to the next one, through the gates between them.
void add_slope(std::vector<OutlinePoint>& corners, const std::vector<Gate>& gates, const OutlinePoint& to) {
  struct Part {
    OutlinePoint from, to;
    std::size_t first = 0, end = 0;  ///< gates
  };
  if (corners.empty()) {
    corners.push_back(to);
    return;
  }
  std::vector<Part> open{{corners.back(), to, 0, gates.size()}};
  while (!open.empty()) {
    const Part part = open.back();
    open.pop_back();
    const double x = part.to.x_mm - part.from.x_mm;
    const double y = part.to.y_mm - part.from.y_mm;
    const auto begin = gates.begin() + static_cast<std::ptrdiff_t>(part.first);
    const auto end = gates.begin() + static_cast<std::ptrdiff_t>(part.end);
    // One line from end to end is a slope. What is bent anyway is a curve, which wants more corners.
    const double open_share = part.first == 0 && part.end == gates.size() ? 1 : 0.5;
    const bool passes = y < hair_mm || std::all_of(begin, end, [&](const Gate& gate) {
                          return gate.lets_pass(part.from, part.to, open_share);
                        });
    auto worst = end;
    double furthest = 0;
    for (auto gate = begin; !passes && gate != end; ++gate) {
      // A gate beside an end of the line has that for its corner.
      if (gate->middle.y_mm < part.from.y_mm + hair_mm || gate->middle.y_mm > part.to.y_mm - hair_mm) continue;
      const double off = std::abs(x * (gate->middle.y_mm - part.from.y_mm) - y * (gate->middle.x_mm - part.from.x_mm));
      if (off <= furthest) continue;
      furthest = off;
      worst = gate;
    }
    if (worst == end) {
      add_corner(corners, part.to);
      continue;
    }
    const auto index = static_cast<std::size_t>(worst - gates.begin());
    open.push_back({worst->middle, part.to, index + 1, part.end});
    open.push_back({part.from, worst->middle, part.first, index});
  }
}

/// Which runs stand upright and which steps are of a slope.
class Reading {
 public:
  explicit Reading(const std::vector<EdgeRun>& runs) : runs_(runs), sloped_(runs.size(), 0), upright_(runs.size(), 0) {
    for (std::size_t i = 0; i + 1 < runs.size(); ++i) sloped_[i] = may_slope(i) ? 1 : 0;
    for (std::size_t i = 0; i < runs.size(); ++i) upright_[i] = stands(i) ? 1 : 0;
    // One stitch between two upright parts is a step, not a slope.
    for (std::size_t i = 0; i + 1 < runs.size(); ++i) {
      if (sloped(i) && ends(i) && ends(i + 1)) lone_.push_back(i);
    }
    for (const std::size_t i : lone_) sloped_[i] = 0;
    for (const std::size_t i : lone_) upright_[i] = upright_[i + 1] = 1;
  }

  /// From run i to the next.
  bool sloped(std::size_t i) const { return sloped_[i] != 0; }
  /// Its lower end is a corner; its upper one.
  bool corner_low(std::size_t i) const { return upright_[i] != 0 || i == 0 || !sloped(i - 1); }
  bool corner_high(std::size_t i) const { return upright_[i] != 0 || i + 1 == runs_.size() || !sloped(i); }

 private:
  int step(std::size_t i) const { return runs_[i + 1].edge - runs_[i].edge; }
  bool has_step(std::size_t i) const { return i + 1 < runs_.size() && !runs_[i + 1].shifted; }

  /// Two steps of several stitches belong together.
  bool quick(std::size_t i, std::size_t run) const {
    if (!has_step(i) || !has_step(i + 1) || runs_[run].rows > quick_rows) return false;
    const int a = step(i);
    const int b = step(i + 1);
    return (a > 0) == (b > 0) && std::abs(a) <= 2 * std::abs(b) && std::abs(b) <= 2 * std::abs(a);
  }

  bool may_slope(std::size_t i) const {
    if (!has_step(i)) return false;
    return std::abs(step(i)) == 1 || quick(i, i + 1) || (i > 0 && quick(i - 1, i));
  }

  /// A slope ends at this run, or turns.
  bool ends(std::size_t i) const {
    if (i == 0 || i + 1 == runs_.size() || !sloped(i - 1) || !sloped(i)) return true;
    return upright_[i] != 0;
  }

  bool stands(std::size_t i) const {
    const bool below = i > 0 && sloped(i - 1);
    const bool above = i + 1 < runs_.size() && sloped(i);
    // Beside several at once only few rows are of the slope: a line over more would leave the cloth by stitches.
    const bool several = (below && std::abs(step(i - 1)) > 1) || (above && std::abs(step(i)) > 1);
    if (several && runs_[i].rows > quick_rows) return true;
    if (below && above) {
      return (step(i - 1) > 0) != (step(i) > 0) || runs_[i].rows > runs_[i - 1].rows + runs_[i + 1].rows;
    }
    if (!below && !above) return true;
    // Spread evenly, the rows before the first step are an interval or one more; on even rows two more.
    const int beside = above ? runs_[i + 1].rows : runs_[i - 1].rows;
    const int spare = beside % 2 == 0 && runs_[i].rows % 2 == 0 ? 2 : 1;
    return runs_[i].rows > beside + spare;
  }

  const std::vector<EdgeRun>& runs_;
  std::vector<char> sloped_;
  std::vector<char> upright_;
  std::vector<std::size_t> lone_;
};

}  // namespace

std::vector<OutlinePoint> stepped_edge(const std::vector<EdgeRun>& runs) {
  std::vector<OutlinePoint> out;
  out.reserve(2 * runs.size());
  for (const EdgeRun& run : runs) {
    add_corner(out, {run.x_mm, run.low_mm});
    add_corner(out, {run.x_mm, run.high_mm});
  }
  return out;
}

DrawnEdge drawn_edge(const std::vector<EdgeRun>& runs, const std::vector<double>& fixed_mm) {
  DrawnEdge out;
  if (runs.empty()) return out;
  const Reading reading(runs);
  std::vector<Gate> gates;
  const auto corner = [&](double x, double y) {
    add_slope(out.corners, gates, {x, y});
    gates.clear();
  };
  auto fixed = fixed_mm.begin();
  for (std::size_t i = 0; i < runs.size(); ++i) {
    const EdgeRun& run = runs[i];
    if (reading.corner_low(i)) corner(run.x_mm, run.low_mm);
    for (; fixed != fixed_mm.end() && *fixed < run.high_mm - hair_mm; ++fixed) {
      if (*fixed > run.low_mm - hair_mm) corner(run.x_mm, *fixed);
    }
    if (reading.corner_high(i)) corner(run.x_mm, run.high_mm);
    if (i + 1 == runs.size() || !reading.sloped(i)) continue;
    const EdgeRun& next = runs[i + 1];
    const double row = std::min((run.high_mm - run.low_mm) / run.rows, (next.high_mm - next.low_mm) / next.rows);
    const int spare = run.rows % 2 == 0 && next.rows % 2 == 0 ? 2 : 1;
    gates.push_back({{(run.x_mm + next.x_mm) / 2, run.high_mm}, std::abs(next.x_mm - run.x_mm) / 2, spare * row});
  }
  const auto shaped = [](const EdgeRun& a, const EdgeRun& b) { return a.edge != b.edge; };
  const auto first = std::adjacent_find(runs.begin(), runs.end(), shaped);
  if (first == runs.end()) return out;
  out.shaped = true;
  const auto last = std::adjacent_find(runs.rbegin(), runs.rend(), shaped);
  if (reading.corner_high(static_cast<std::size_t>(first - runs.begin()))) out.first_shaping_mm = first->high_mm;
  if (reading.corner_low(static_cast<std::size_t>(runs.rend() - last) - 1)) out.last_shaping_mm = last->low_mm;
  return out;
}

}  // namespace latchwork::inline v0::schematics
