#include "instructions/fold.hpp"

#include <algorithm>

namespace latchwork::inline v0::writing {
namespace {

constexpr std::size_t longest_run = 64;
// Letters that a repeat takes: its line, and a row counter reading for each stop made again.
constexpr std::size_t repeat_line = 85;
constexpr std::size_t reading = 12;

/// How many times the run of `count` stops from `first` stands there, each time the same rows further up.
std::size_t times_of(std::span<const StopWork> stops, std::size_t first, std::size_t count, int period) {
  std::size_t at = first + count;
  while (at < stops.size() && stops[at].work == stops[at - count].work &&
         stops[at].row - stops[at - count].row == period) {
    ++at;
  }
  return (at - first) / count;
}

}  // namespace

std::vector<Fold> folded(std::span<const StopWork> stops) {
  std::vector<Fold> folds;
  for (std::size_t first = 0; first < stops.size();) {
    Fold best{.first = first};
    std::size_t most_saved = 0;
    for (std::size_t count = 1; count <= longest_run && first + 2 * count <= stops.size(); ++count) {
      const int period = stops[first + count].row - stops[first].row;
      const std::size_t times = times_of(stops, first, count, period);
      std::size_t letters = 0;
      for (std::size_t i = first; i < first + count; ++i) letters += stops[i].letters;
      const std::size_t told = (times - 1) * letters;
      const std::size_t spent = times > 1 ? repeat_line + (times - 1) * count * reading : 0;
      const std::size_t saved = told > spent ? told - spent : 0;
      if (saved > most_saved) {
        most_saved = saved;
        best = {.first = first, .count = count, .times = times, .period = period};
      }
    }
    first += best.count * best.times;
    folds.push_back(best);
  }
  return folds;
}

}  // namespace latchwork::inline v0::writing
