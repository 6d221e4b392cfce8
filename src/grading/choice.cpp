#include "grading/choice.hpp"

#include <algorithm>
#include <limits>
#include <numeric>
#include <set>

namespace latchwork::inline v0::grading {
namespace {

using fitting::Budget;
using fitting::Count;

constexpr double never = std::numeric_limits<double>::infinity();
constexpr Count most_steps = 20'000'000;  // of one search, so that a hopeless limit leaves work for the next

double twice_the_middle(double least, double most) {
  return least + (most == 0 ? least : most);
}

std::int8_t growth(double one, double other) {
  return static_cast<std::int8_t>(one < other ? 1 : one > other ? -1 : 0);
}

bool goes_with(int growth, int before, int after) {
  return (growth < 0 || before <= after) && (growth > 0 || before >= after);
}

/// Searches the choices none of whose errors passes a limit. Neighbours in the order of widths are looked at first,
/// from the last size down: what that comes to is exact where heights go with widths, and else bounds what is left to
/// do.
class Search {
 public:
  Search(const std::vector<Candidates>& sizes, const Order& order, Budget& budget)
      : sizes_(sizes), order_(order), budget_(budget) {}

  /// The least that the greatest error can be, as far as neighbours tell; infinite where none go together.
  double least_greatest() {
    look_on(never, [](double own, double rest) { return std::max(own, rest); });
    return ranked_.front().empty() ? never : to_go_.front()[ranked_.front().front()];
  }

  /// The least sum under the limit; with `any`, the first choice that goes together.
  std::optional<Choice> run(double limit, bool any) {
    look_on(limit, [](double own, double rest) { return own + rest; });
    best_.reset();
    any_ = any;
    steps_ = most_steps;
    chosen_.assign(sizes_.size(), 0);
    descend(0, 0);
    return best_;
  }

  bool gave_up() const { return gave_up_; }

 private:
  std::size_t size_at(std::size_t place) const { return order_.by_width()[place]; }

  bool spent() {
    if (steps_ > 0 && !budget_.spent()) return false;
    gave_up_ = true;
    return true;
  }

  bool takes(std::size_t place, std::size_t candidate, std::size_t other, std::size_t its) {
    budget_.take(1);
    --steps_;
    const std::size_t size = size_at(place);
    const std::size_t next = size_at(other);
    return order_.takes(size, sizes_[size][candidate], next, sizes_[next][its]);
  }

  // What each candidate and the rest after it come to, at least; candidates from the least up, without the hopeless.
  template <class Add>
  void look_on(double limit, const Add& add) {
    const std::size_t count = sizes_.size();
    steps_ = std::numeric_limits<Count>::max();
    to_go_.assign(count, {});
    ranked_.assign(count, {});
    for (std::size_t place = count; place-- > 0;) {
      const Candidates& here = sizes_[size_at(place)];
      to_go_[place].assign(here.size(), never);
      for (std::size_t c = 0; c < here.size() && !spent(); ++c) {
        if (here[c].error > limit) continue;
        double rest = place + 1 == count ? 0 : never;
        if (place + 1 < count) {
          for (const std::size_t next : ranked_[place + 1]) {
            if (!takes(place, c, place + 1, next)) continue;
            rest = to_go_[place + 1][next];
            break;  // those after it come to as much or more
          }
        }
        if (rest == never) continue;
        to_go_[place][c] = add(here[c].error, rest);
        ranked_[place].push_back(c);
      }
      std::stable_sort(ranked_[place].begin(), ranked_[place].end(),
                       [&](std::size_t a, std::size_t b) { return to_go_[place][a] < to_go_[place][b]; });
    }
  }

  void descend(std::size_t place, double sum) {
    if (place == sizes_.size()) {
      Choice found;
      found.sum = sum;
      found.of.resize(sizes_.size());
      for (std::size_t i = 0; i < place; ++i) {
        found.of[size_at(i)] = chosen_[i];
        found.greatest = std::max(found.greatest, sizes_[size_at(i)][chosen_[i]].error);
      }
      best_ = std::move(found);
      return;
    }
    const Candidates& here = sizes_[size_at(place)];
    for (const std::size_t c : ranked_[place]) {
      if (best_ && (any_ || sum + to_go_[place][c] >= best_->sum)) return;
      if (spent()) return;
      bool together = true;
      for (std::size_t before = 0; before < place && together; ++before) {
        together = takes(before, chosen_[before], place, c);
      }
      if (!together) continue;
      chosen_[place] = c;
      descend(place + 1, sum + here[c].error);
    }
  }

  const std::vector<Candidates>& sizes_;
  const Order& order_;
  Budget& budget_;
  std::vector<std::vector<double>> to_go_;        // by place in the order, then candidate
  std::vector<std::vector<std::size_t>> ranked_;  // likewise
  std::vector<std::size_t> chosen_;               // by place
  std::optional<Choice> best_;
  bool any_ = false;
  bool gave_up_ = false;
  Count steps_ = 0;
};

}  // namespace

Order::Order(const std::vector<GradeSize>& sizes) : growth_(sizes.size()), by_width_(sizes.size()) {
  const auto width = [&](std::size_t i) { return twice_the_middle(sizes[i].width_mm, sizes[i].width_most_mm); };
  const auto height = [&](std::size_t i) { return twice_the_middle(sizes[i].height_mm, sizes[i].height_most_mm); };
  for (std::size_t i = 0; i < sizes.size(); ++i) {
    growth_[i].reserve(sizes.size());
    for (std::size_t k = 0; k < sizes.size(); ++k) {
      growth_[i].push_back({growth(width(i), width(k)), growth(height(i), height(k))});
    }
  }
  std::iota(by_width_.begin(), by_width_.end(), std::size_t{0});
  std::stable_sort(by_width_.begin(), by_width_.end(), [&](std::size_t a, std::size_t b) {
    return width(a) != width(b) ? width(a) < width(b) : height(a) < height(b);
  });
}

bool Order::takes(std::size_t size, const FitCandidate& a, std::size_t other, const FitCandidate& b) const {
  const Growth& to = growth_[size][other];
  if (!goes_with(to.higher, a.rows, b.rows)) return false;
  for (std::size_t group = 0; group < a.times.size(); ++group) {
    if (!goes_with(to.wider, a.times[group], b.times[group])) return false;
  }
  return true;
}

std::optional<Choice> best_choice(const std::vector<Candidates>& sizes, const Order& order, Budget& budget,
                                  bool& proven) {
  Search search(sizes, order, budget);
  const double least = search.least_greatest();
  std::optional<Choice> best;
  if (least < never) {
    best = search.run(least, false);
    if (!best) {
      // Heights that do not go with widths forbid what neighbours allow: the least limit that does, by halving.
      std::set<double> errors;
      for (const Candidates& candidates : sizes) {
        for (const FitCandidate& candidate : candidates) {
          if (candidate.error > least) errors.insert(candidate.error);
        }
      }
      const std::vector<double> limits(errors.begin(), errors.end());
      std::size_t low = 0;
      std::size_t high = limits.size();
      while (low < high) {
        const std::size_t middle = low + (high - low) / 2;
        std::optional<Choice> found = search.run(limits[middle], true);
        if (found) {
          best = std::move(found);
          high = middle;
        } else {
          low = middle + 1;
        }
      }
      if (best) {
        std::optional<Choice> found = search.run(best->greatest, false);
        if (found) best = std::move(found);
      }
    }
  }
  if (search.gave_up()) proven = false;
  return best;
}

}  // namespace latchwork::inline v0::grading
