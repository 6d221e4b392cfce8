#include "instructions/along.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cstdlib>

#include "instructions/words.hpp"
#include "latchwork/machine.hpp"
#include "text/words.hpp"

namespace latchwork::inline v0::writing {
namespace {

constexpr std::size_t longest_period = 64;
constexpr std::size_t fewest_times = 3;
constexpr std::size_t told_beside = 48;  // letters of "17 x [], each 11 needles further right, to R87", nearly

/// Whether the second piece is the first one, so many places further on.
bool is_moved(const OnNeedles& first, const OnNeedles& second, int step) {
  return first.work == second.work &&
         std::equal(first.needles.begin(), first.needles.end(), second.needles.begin(), second.needles.end(),
                    [step](int a, int b) { return place_of(a) + step == place_of(b); });
}

Along longest(std::span<const OnNeedles> pieces, std::size_t first, std::size_t period) {
  Along out{first, period, 1, place_of(pieces[first + period].needles[0]) - place_of(pieces[first].needles[0])};
  std::size_t end = first + period;
  while (out.step != 0 && end < pieces.size() && is_moved(pieces[end - period], pieces[end], out.step)) ++end;
  out.times = (end - first) / period;
  return out;
}

std::size_t letters_saved(std::span<const OnNeedles> pieces, const Along& along) {
  std::size_t letters = 0;
  for (std::size_t i = along.first + along.period; i < along.first + along.period * along.times; ++i) {
    letters += pieces[i].words.size() + 3;
  }
  return letters > told_beside ? letters - told_beside : 0;
}

}  // namespace

std::vector<Along> along_the_bed(std::span<const OnNeedles> pieces) {
  std::vector<Along> out;
  for (std::size_t at = 0; at < pieces.size();) {
    Along best{at, 1, 1, 0};
    std::size_t saved = 0;
    for (std::size_t period = 1; period <= longest_period && at + period * fewest_times <= pieces.size(); ++period) {
      const Along along = longest(pieces, at, period);
      if (along.times < fewest_times) continue;
      const std::size_t saves = letters_saved(pieces, along);
      if (saves <= saved) continue;
      saved = saves;
      best = along;
    }
    at += best.period * best.times;
    out.push_back(best);
  }
  return out;
}

std::string along_words(std::span<const OnNeedles> pieces, const Along& along, const std::string& once) {
  if (along.times == 1) return once;
  const OnNeedles& last = pieces[along.first + along.period * along.times - 1];
  return fmt::format("{} x [{}], {}, to {}", along.times, once, along_step(along), needle_name(last.needles.back()));
}

std::string along_step(const Along& along) {
  return fmt::format("each {} further {}", count_of(std::abs(along.step), "needle"), along.step > 0 ? "right" : "left");
}

}  // namespace latchwork::inline v0::writing
