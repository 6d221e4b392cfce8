#include "latchwork/spacing.hpp"

#include <fmt/format.h>

#include <string_view>

#include "error/refuse.hpp"
#include "latchwork/error.hpp"
#include "text/words.hpp"

namespace latchwork::inline v0 {
namespace {

/// How many units of `step` each gap may be laid out on.
int steps_of(int length, int events, SpacingEnds ends, int step) {
  if (length < 1 || length > max_spacing)
    refuse("length", fmt::format("length is {}; it must be 1..{}", length, max_spacing));
  if (step < 1 || step > length) refuse("step", fmt::format("step is {}; it must be 1..{} here", step, length));
  if (ends > SpacingEnds::half_ends) {
    refuse("ends",
           fmt::format("ends is {}; it must be 0 (in the round), 1 (flat) or 2 (half ends)", static_cast<int>(ends)));
  }
  const int steps = length / step;
  const int most = ends == SpacingEnds::in_the_round ? steps : steps - 1;
  if (events < 1 || events > most) {
    refuse("events",
           most < 1 ? fmt::format("events is {}; none fits into {} without standing on an edge", events, length)
                    : fmt::format("events is {}; it must be 1..{}, since {} go into {}", events, most, most, length));
  }
  return steps;
}

}  // namespace

Spacing spaced_evenly(int length, int events, SpacingEnds ends, int step) {
  const int steps = steps_of(length, events, ends, step);
  const std::int64_t n = steps;
  const std::int64_t gaps = ends == SpacingEnds::flat ? events + 1 : events;
  // Where event i = 1, 2, ... stands, in steps.
  const auto place = [&](std::int64_t i) {
    if (ends == SpacingEnds::in_the_round) return i * n / gaps;
    if (ends == SpacingEnds::flat) return (2 * i * n + gaps) / (2 * gaps);
    return ((2 * i - 1) * n + gaps) / (2 * gaps);
  };
  Spacing out;
  out.length = length;
  out.events = events;
  out.ends = ends;
  out.step = step;
  out.every = static_cast<int>(n / gaps) * step;
  out.longer_times = static_cast<int>(n % gaps);
  out.times = static_cast<int>(gaps) - out.longer_times;
  out.rest = length - steps * step;
  out.gaps.reserve(static_cast<std::size_t>(events) + 1);
  out.positions.reserve(static_cast<std::size_t>(events));
  int before = 0;
  for (int i = 1; i <= events; ++i) {
    const int at = static_cast<int>(place(i)) * step;
    out.gaps.push_back(at - before);
    out.positions.push_back(at);
    before = at;
  }
  if (ends != SpacingEnds::in_the_round) out.gaps.push_back(steps * step - before);
  return out;
}

std::string spacing_text(const Spacing& spacing, Counted counted) {
  if (counted > Counted::rows) {
    refuse("counted", fmt::format("counted is {}; it must be 0 (stitches) or 1 (rows)", static_cast<int>(counted)));
  }
  const auto in_range = [](const char* field, int value) {
    if (value >= 0 && value <= max_spacing) return;
    refuse(field, fmt::format("{} is {}; it must be 0..{}", field, value, max_spacing));
  };
  in_range("every", spacing.every);
  in_range("step", spacing.step);
  const bool stitches = counted == Counted::stitches;
  const std::string_view thing = stitches ? "stitch" : "row";
  const auto many = [&](int count) { return count_of(count, thing, stitches ? "es" : "s"); };
  const bool flat = spacing.ends == SpacingEnds::flat;

  // The gaps between events of one piece: with half ends the one that is cut in two is none of them.
  int times[2] = {spacing.times, spacing.longer_times};
  if (spacing.ends == SpacingEnds::half_ends && spacing.gaps.size() > 1) {
    times[0] = times[1] = 0;
    for (std::size_t i = 1; i + 1 < spacing.gaps.size(); ++i) ++times[spacing.gaps[i] == spacing.every ? 0 : 1];
  }
  std::vector<std::string> parts;
  for (int longer = 0; longer < 2; ++longer) {
    if (times[longer] == 0) continue;
    const int gap = spacing.every + longer * spacing.step;
    parts.push_back(flat ? fmt::format("{} of {}", count_of(times[longer], "gap"), many(gap))
                         : fmt::format("{} {}", every_words(gap, thing), count_of(times[longer], "time")));
  }
  std::string out = joined(parts);
  if (spacing.ends == SpacingEnds::half_ends && spacing.gaps.size() > 1) {
    out = fmt::format("after {}{}{}; {} after the last", many(spacing.gaps.front()), out.empty() ? "" : ", then ", out,
                      many(spacing.gaps.back()));
  }
  if (spacing.rest > 0) out += fmt::format("; {} over", many(spacing.rest));
  return out;
}

}  // namespace latchwork::inline v0
