#include "grading/nearest.hpp"

#include <algorithm>
#include <functional>
#include <utility>

#include "fit/nearest.hpp"
#include "latchwork/error.hpp"

namespace latchwork::inline v0::grading {
namespace {

/// Grades under one loosened bound at a time, and keeps the best.
class Loosening {
 public:
  Loosening(const GradeRequest& request, const Swatch& swatch, const Order& order, Progressing& fits,
            fitting::Budget& budget)
      : request_(request), swatch_(swatch), order_(order), fits_(fits), budget_(budget) {}

  void try_all() {
    const FitRequest& design = request_.design;
    if (design.tolerance_percent) loosen_tolerances();
    for (std::size_t group = 0; group < design.groups.size(); ++group) {
      if (design.groups[group].as_group >= 0) continue;  // goes with its first
      once([group](FitRequest& of) {
        of.groups[group].least = std::min(of.groups[group].least, 1);
        of.groups[group].most = Grid::max_side;
      });
    }
    if (design.edge) {
      // Without one a group would be bare outside.
      const int lowest = fitting::bare_outside(design) ? 1 : 0;
      widen(&FitRequest::edge_least, &FitRequest::edge_most, lowest, Grid::max_side);
    }
    if (design.rows_step > 1 || design.rows_extra > 0) {
      once([](FitRequest& of) {
        of.rows_step = 1;
        of.rows_extra = 0;
      });
    }
    widen(&FitRequest::panels_least, &FitRequest::panels_most, 1, FitRequest::max_panels);
    if (design.needles > 0) once([](FitRequest& of) { of.needles = 0; });
  }

  Graded take() && { return std::move(best_); }

 private:
  // Which of them has to give is told by trying each alone; both at once only where neither is enough.
  void loosen_tolerances() {
    const auto as_it_is = [](FitRequest&) {};
    const bool width = once(as_it_is, {.width = true, .height = false});
    const bool height = once(as_it_is, {.width = false, .height = true});
    if (!width && !height) once(as_it_is, {.width = true, .height = true});
  }

  bool once(const std::function<void(FitRequest&)>& loosen, fitting::Loosened loosened = {}) {
    GradeRequest loose = request_;
    loosen(loose.design);
    const std::int64_t fits = edges_of(loose.design) * panels_of(loose.design) * std::ssize(loose.sizes);
    if (fits > most_fits) return false;
    if (budget_.spent()) {
      best_.complete = false;
      return false;
    }
    try {
      Graded found = best_of_constructions(loose, swatch_, order_, fits_, budget_, false, loosened);
      best_.complete = best_.complete && found.complete;
      if (found.candidates.empty()) return false;
      if (found.greatest >= best_.greatest) return true;
      found.complete = best_.complete;
      best_ = std::move(found);
      return true;
    } catch (const Error& error) {
      if (error.code() != ErrorCode::too_large && error.code() != ErrorCode::bad_argument) throw;
      best_.complete = false;  // it takes too much work, or no panel can be made so
      return false;
    }
  }

  // One further each way, two, four, until something goes together or all is allowed.
  void widen(int FitRequest::*least, int FitRequest::*most, int lowest, int highest) {
    const int from = request_.design.*least;
    const int to = request_.design.*most;
    for (int by = 1; by < 2 * highest; by *= 2) {
      const int low = std::min(from, std::max(lowest, from - by));
      const int high = std::min(highest, to + by);
      const std::int64_t fits_each = 1 + (std::int64_t{high} - low);
      const bool found = once([&](FitRequest& of) {
        of.*least = low;
        of.*most = high;
      });
      if (found || fits_each * std::ssize(request_.sizes) > most_fits || (low == lowest && high == highest)) return;
    }
  }

  const GradeRequest& request_;
  const Swatch& swatch_;
  const Order& order_;
  Progressing& fits_;
  fitting::Budget& budget_;
  Graded best_;
};

}  // namespace

std::vector<FitNearest> nearest_together(const GradeRequest& request, const Swatch& swatch, const Order& order,
                                         Progressing& fits, fitting::Budget& budget, bool& complete) {
  Loosening loosening(request, swatch, order, fits, budget);
  loosening.try_all();
  Graded best = std::move(loosening).take();
  complete = best.complete;
  std::vector<FitNearest> out;
  for (std::size_t i = 0; i < best.candidates.size(); ++i) {
    FitNearest each;
    each.gives = fitting::gives_of(design_for(request.sizes[i], request.design), best.candidates[i]);
    each.candidate = std::move(best.candidates[i]);
    out.push_back(std::move(each));
  }
  return out;
}

}  // namespace latchwork::inline v0::grading
