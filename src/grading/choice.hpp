#pragma once

#include <cstddef>
#include <cstdint>
#include <optional>
#include <vector>

#include "fit/budget.hpp"
#include "latchwork/grading.hpp"

namespace latchwork::inline v0::grading {

using Candidates = std::vector<FitCandidate>;

/// How sizes stand to each other, every one to every other.
class Order {
 public:
  explicit Order(const std::vector<GradeSize>& sizes);

  /// Whether these candidates of two sizes may stand beside each other.
  bool takes(std::size_t size, const FitCandidate& a, std::size_t other, const FitCandidate& b) const;
  /// The sizes from the narrowest up, so that neighbours in it settle the times of all.
  const std::vector<std::size_t>& by_width() const { return by_width_; }

 private:
  struct Growth {
    std::int8_t wider = 0;  // -1, 0, 1: how the second stands to the first
    std::int8_t higher = 0;
  };
  std::vector<std::vector<Growth>> growth_;
  std::vector<std::size_t> by_width_;
};

/// One candidate for each size, by index.
struct Choice {
  double greatest = 0;
  double sum = 0;
  std::vector<std::size_t> of;
};

/// The choice whose greatest error is least, of these that of the least sum; nothing where none go together. Each
/// comparison of two candidates takes one part of the budget. `proven` turns false where not all were looked at.
std::optional<Choice> best_choice(const std::vector<Candidates>& sizes, const Order& order, fitting::Budget& budget,
                                  bool& proven);

}  // namespace latchwork::inline v0::grading
