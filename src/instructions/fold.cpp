#include "instructions/fold.hpp"

#include <algorithm>
#include <limits>

namespace latchwork::inline v0::writing {
namespace {

constexpr std::size_t farthest = 256;
// What a repeat takes, in letters: its line and the way back to lines above, which is more than the line, and a row
// counter reading for each stop, which tells whose work it is where several are repeated.
constexpr std::size_t repeat_line = 150;
constexpr std::size_t reading = 12;
constexpr std::size_t reading_as = 18;

/// The cheapest way to write the stops up to one that ends in a repeat of those so many stops before.
struct Run {
  std::size_t letters = std::numeric_limits<std::size_t>::max();  ///< none
  std::size_t first = 0;                                          ///< of the stops repeated in it
};

/// The last part of the cheapest way to write the stops up to one.
struct Best {
  std::size_t letters = 0;
  std::size_t first = 0;
  std::size_t back = 0;
};

/// The fewest letters; some stops may only be told.
std::vector<Fold> shortest(std::span<const StopWork> stops, const std::vector<bool>& only_told) {
  std::vector<Best> best(stops.size() + 1);
  std::vector<Run> runs(std::min(farthest, stops.size()) + 1);  // by how far back
  for (std::size_t at = 0; at < stops.size(); ++at) {
    Best next{.letters = best[at].letters + stops[at].letters, .first = at};
    for (std::size_t back = 1; back < runs.size() && back <= at; ++back) {
      Run& run = runs[back];
      if (only_told[at] || stops[at].work != stops[at - back].work) {
        run = {};
        continue;
      }
      const std::size_t begun = best[at].letters + repeat_line;
      if (begun < run.letters) run = {.letters = begun, .first = at};
      run.letters += back == 1 ? reading : reading_as;
      if (run.letters < next.letters) next = {.letters = run.letters, .first = run.first, .back = back};
    }
    best[at + 1] = next;
  }
  std::vector<Fold> folds;
  for (std::size_t end = stops.size(); end > 0; end = folds.back().first) {
    folds.push_back({.first = best[end].first, .count = end - best[end].first, .back = best[end].back});
  }
  std::reverse(folds.begin(), folds.end());
  return folds;
}

/// Whether the stops that a repeat names are told one after another, or are all one; `told` being of those before it.
bool in_order(const Fold& fold, const std::vector<std::size_t>& told) {
  const std::size_t from = fold.first - fold.back;
  bool rising = true;
  bool one = true;
  for (std::size_t i = 1; i < std::min(fold.back, fold.count); ++i) {
    rising = rising && told[from + i] == told[from] + i;
    one = one && told[from + i] == told[from];
  }
  return rising || one;
}

void append_told(std::vector<std::size_t>& told, const Fold& fold) {
  for (std::size_t stop = fold.first; stop < fold.first + fold.count; ++stop) {
    told.push_back(fold.back == 0 ? stop : told[stop - fold.back]);
  }
}

}  // namespace

std::vector<Fold> folded(std::span<const StopWork> stops) {
  constexpr int rounds = 16;
  std::vector<bool> only_told(stops.size(), false);
  std::vector<Fold> folds;
  for (int round = 0; round < rounds; ++round) {
    folds = shortest(stops, only_told);
    bool settled = true;
    std::vector<std::size_t> told;
    for (const Fold& fold : folds) {
      if (fold.back > 0 && !in_order(fold, told)) {
        settled = false;
        // What it repeats has to be told.
        for (std::size_t i = fold.first - fold.back; i < fold.first; ++i) only_told[i] = true;
      }
      append_told(told, fold);
    }
    if (settled) return folds;
  }
  std::vector<std::size_t> told;
  for (Fold& fold : folds) {
    if (fold.back > 0 && !in_order(fold, told)) fold.back = 0;
    append_told(told, fold);
  }
  return folds;
}

std::vector<std::size_t> told_by(const std::vector<Fold>& folds) {
  std::vector<std::size_t> told;
  for (const Fold& fold : folds) append_told(told, fold);
  return told;
}

}  // namespace latchwork::inline v0::writing
