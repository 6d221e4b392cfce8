#include <fmt/format.h>

#include <algorithm>
#include <cstdlib>
#include <string>
#include <utility>
#include <vector>

#include "latchwork/shaping.hpp"
#include "shaping/check.hpp"
#include "spacing/even.hpp"
#include "text/words.hpp"

namespace latchwork::inline v0 {
namespace {

/// "decrease 1", "bind off 3", "increase 1", "cast on 3".
std::string deed(int stitches) {
  const int count = std::abs(stitches);
  if (count == 1) return stitches > 0 ? "decrease 1" : "increase 1";
  return fmt::format("{} {}", stitches > 0 ? "bind off" : "cast on", count);
}

std::string deeds(const ShapingStep& step) {
  if (step.left == step.right) return deed(step.left) + " at each side";
  std::vector<std::string> parts;
  if (step.left != 0) parts.push_back(deed(step.left) + " at the left edge");
  if (step.right != 0) parts.push_back(deed(step.right) + " at the right edge");
  return joined(parts);
}

bool alike(const ShapingStep& a, const ShapingStep& b) {
  return a.left == b.left && a.right == b.right;
}

/// Past the last step of those from `first` on that are told together: alike, their gaps of one length, or of two that
/// are as near to each other as whole rows (or even rows) allow.
std::size_t end_of_run(const std::vector<ShapingStep>& steps, std::size_t first) {
  std::size_t end = first + 1;
  int least = 0;
  int most = 0;
  while (end < steps.size() && alike(steps[first], steps[end])) {
    const int gap = steps[end].row - steps[end - 1].row;
    if (end == first + 1) least = most = gap;
    const bool one_length = least == most;
    const int apart = least % 2 == 0 && gap % 2 == 0 ? 2 : 1;
    if (gap != least && gap != most && !(one_length && std::abs(gap - least) <= apart)) break;
    least = std::min(least, gap);
    most = std::max(most, gap);
    ++end;
  }
  return end;
}

std::string run_words(const std::vector<ShapingStep>& steps, std::size_t first, std::size_t end) {
  std::string out = fmt::format("RC {}: {}", steps[first].row, deeds(steps[first]));
  if (end == first + 1) return out;
  std::vector<int> gaps;
  std::vector<std::string> rows;
  gaps.reserve(end - first);
  rows.reserve(end - first);
  for (std::size_t i = first + 1; i < end; ++i) {
    gaps.push_back(steps[i].row - steps[i - 1].row);
    rows.push_back(fmt::to_string(steps[i].row));
  }
  const auto [least, most] = std::minmax_element(gaps.begin(), gaps.end());
  const auto shorter = std::count(gaps.begin(), gaps.end(), *least);
  out += fmt::format(", then {} {}", every_words(*least, "row"), count_of(shorter, "time"));
  if (*least == *most) return out;
  return out + fmt::format(", {} {}{}: RC {}", every_words(*most, "row"),
                           count_of(static_cast<std::int64_t>(gaps.size()) - shorter, "time"),
                           spread_evenly(gaps) ? ", spread evenly" : "", joined(rows));
}

/// The line of each run, from step `first` up to `end`.
void tell(const std::vector<ShapingStep>& steps, std::size_t first, std::size_t end, const char* before,
          std::vector<std::string>& lines) {
  while (first < end) {
    const std::size_t past = std::min(end_of_run(steps, first), end);
    lines.push_back(before + run_words(steps, first, past) + ".\n");
    first = past;
  }
}

/// The lines of neighbouring steps: both edges row by row, or each edge by itself where that is shorter. The edge that
/// begins first is told first; the other's lines say that they do not wait for it.
std::vector<std::string> lines_of(const std::vector<ShapingStep>& steps, std::size_t first, std::size_t end) {
  std::vector<std::string> together;
  tell(steps, first, end, "", together);
  std::vector<ShapingStep> left;
  std::vector<ShapingStep> right;
  for (std::size_t i = first; i < end; ++i) {
    if (steps[i].left != 0) left.push_back({steps[i].row, steps[i].left, 0});
    if (steps[i].right != 0) right.push_back({steps[i].row, 0, steps[i].right});
  }
  if (left.empty() || right.empty()) return together;
  if (right.front().row < left.front().row) left.swap(right);
  std::vector<std::string> apart;
  tell(left, 0, left.size(), "", apart);
  tell(right, 0, right.size(), "Meanwhile, ", apart);
  return apart.size() < together.size() ? apart : together;
}

}  // namespace

std::vector<ShapingStep> shaping_steps(const Outline& outline) {
  shaping::check(outline);
  std::vector<ShapingStep> steps;
  for (std::size_t i = 1; i < outline.rows.size(); ++i) {
    const RowSpan& below = outline.rows[i - 1];
    const RowSpan& above = outline.rows[i];
    if (below == above) continue;
    steps.push_back({static_cast<int>(i), above.first - below.first, below.last - above.last});
  }
  return steps;
}

std::string outline_text(const Outline& outline) {
  const std::vector<ShapingStep> steps = shaping_steps(outline);
  const RowSpan& bottom = outline.rows.front();
  const RowSpan& top = outline.rows.back();
  std::string out = fmt::format("Begin with {}, {}.\n", count_of(bottom.last - bottom.first + 1, "stitch", "es"),
                                run_of("column", bottom.first, bottom.last));
  // A run of both edges is one line as it stands: the steps between such runs may be shorter edge by edge.
  std::size_t told = 0;
  for (std::size_t first = 0; first < steps.size();) {
    const std::size_t end = end_of_run(steps, first);
    if (end > first + 1 && steps[first].left != 0 && steps[first].right != 0) {
      for (const std::string& line : lines_of(steps, told, first)) out += line;
      out += run_words(steps, first, end) + ".\n";
      told = end;
    }
    first = end;
  }
  for (const std::string& line : lines_of(steps, told, steps.size())) out += line;
  out += fmt::format("RC {}: {}, {}.", outline.rows.size(), count_of(top.last - top.first + 1, "stitch", "es"),
                     run_of("column", top.first, top.last));
  return out;
}

}  // namespace latchwork::inline v0
