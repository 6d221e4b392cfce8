#pragma once

#include <cstddef>
#include <limits>
#include <optional>
#include <vector>

#include "fit/budget.hpp"
#include "grading/choice.hpp"
#include "latchwork/grading.hpp"

namespace latchwork::inline v0::grading {

/// Shares out what is told: to so many fits, one after another.
class Progressing {
 public:
  Progressing(const FitOptions& options, double fits) : options_(options), fits_(fits) {}
  FitOptions next();
  /// For work beyond the fits that were counted: the share stands still.
  FitOptions still();
  /// These are not done.
  void passed_over(std::size_t fits) { done_ += static_cast<double>(fits); }
  /// Tells that all is done.
  void end();

 private:
  FitOptions telling(double done, double each);

  const FitOptions& options_;
  double fits_;
  double done_ = 0;
};

/// At most so many fits, constructions times sizes.
inline constexpr std::int64_t most_fits = 1000;
std::int64_t edges_of(const FitRequest& design);
std::int64_t panels_of(const FitRequest& design);

/// The design with the targets of one size.
FitRequest design_for(const GradeSize& size, FitRequest design);
/// fit() of one size; what it refuses is named by the field of the request that it came from.
FitResult fit_size(const GradeRequest& request, std::size_t index, FitRequest of, const Swatch& swatch,
                   const FitOptions& options, fitting::Loosened loosened, bool with_nearest);

/// The best choice of a candidate for each size.
struct Graded {
  std::vector<FitCandidate> candidates;  ///< one for each size, or none
  double greatest = std::numeric_limits<double>::infinity();
  double sum = std::numeric_limits<double>::infinity();
  bool complete = true;
};

/// Looks through all constructions of a request, of most_fits fits or fewer. `counted`: `fits` counts a fit of each.
/// @throws Error as grade() on the first look; on later ones what takes too much work makes the answer incomplete.
Graded best_of_constructions(const GradeRequest& request, const Swatch& swatch, const Order& order, Progressing& fits,
                             fitting::Budget& budget, bool counted, fitting::Loosened loosened = {});

}  // namespace latchwork::inline v0::grading
