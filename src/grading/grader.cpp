#include "grading/grader.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <string>
#include <tuple>
#include <utility>

#include "latchwork/error.hpp"

namespace latchwork::inline v0::grading {
namespace {

constexpr double no_bound = std::numeric_limits<double>::infinity();
constexpr int listed_first = 300;

/// The candidates of one construction in each size, the best of them.
struct Lists {
  std::vector<Candidates> sizes;
  std::vector<int> most;  // how many were asked for

  bool whole(std::size_t size) const { return sizes[size].size() < static_cast<std::size_t>(most[size]); }
  double worst(std::size_t size) const { return sizes[size].back().error; }

  /// No choice with a candidate that is not listed has a lesser greatest error than this, nor any choice at all.
  double floor() const {
    double unlisted = no_bound;
    double least = 0;
    for (std::size_t i = 0; i < sizes.size(); ++i) {
      if (!whole(i)) unlisted = std::min(unlisted, worst(i));
      least = std::max(least, sizes[i].front().error);
    }
    return std::max(unlisted, least);
  }
};

struct Construction {
  int panels = 1;
  int edge = 0;
  double floor = no_bound;  // of what was not looked at
};

class Grader {
 public:
  Grader(const GradeRequest& request, const Swatch& swatch, const Order& order, Progressing& fits,
         fitting::Budget& budget, bool counted, fitting::Loosened loosened)
      : request_(request),
        swatch_(swatch),
        order_(order),
        fits_(fits),
        budget_(budget),
        counted_(counted),
        loosened_(loosened) {}

  Graded run() && {
    const FitRequest& design = request_.design;
    const int edge_least = design.edge ? design.edge_least : 0;
    const int edge_most = design.edge ? design.edge_most : 0;
    for (int panels = design.panels_least; panels <= design.panels_most; ++panels) {
      for (int edge = edge_least; edge <= edge_most; ++edge) {
        if (fitting::can_be_sewn(design, panels)) {
          constructions_.push_back({panels, edge});
        } else if (counted_) {
          fits_.passed_over(request_.sizes.size());
        }
      }
    }
    for (std::size_t i = 0; i < constructions_.size(); ++i) {
      const std::optional<Lists> lists = first_look(constructions_[i]);
      if (!lists) continue;
      choose(*lists, i);
      constructions_[i].floor = lists->floor();
    }
    for (std::size_t i = 0; i < constructions_.size(); ++i) {
      if (undecided(constructions_[i].floor)) look_deeper(i);
    }
    return std::move(best_);
  }

 private:
  // Whether what is off so far or more may still be better than the best, or be the only choice.
  bool undecided(double floor) const { return floor < no_bound && floor <= best_.greatest; }

  FitResult list(const Construction& construction, std::size_t size, int most, const FitOptions& options) const {
    FitRequest alike = request_.design;
    alike.panels_least = alike.panels_most = construction.panels;
    alike.edge_least = alike.edge_most = construction.edge;
    alike.most = most;
    return fit_size(request_, size, std::move(alike), swatch_, options, loosened_, false);
  }

  std::optional<Lists> first_look(const Construction& construction) {
    Lists out;
    const std::size_t count = request_.sizes.size();
    for (std::size_t i = 0; i < count; ++i) {
      out.sizes.push_back(list(construction, i, listed_first, counted_ ? fits_.next() : fits_.still()).candidates);
      out.most.push_back(listed_first);
      if (!out.sizes.back().empty()) continue;
      if (counted_) fits_.passed_over(count - i - 1);
      return std::nullopt;
    }
    return out;
  }

  void choose(const Lists& lists, std::size_t construction) {
    const std::optional<Choice> choice = best_choice(lists.sizes, order_, budget_, best_.complete);
    if (!choice) return;
    // Of equal choices the first construction's, whichever was looked at first.
    if (std::tie(choice->greatest, choice->sum, construction) >= std::tie(best_.greatest, best_.sum, chosen_)) return;
    chosen_ = construction;
    best_.greatest = choice->greatest;
    best_.sum = choice->sum;
    best_.candidates.clear();
    for (std::size_t i = 0; i < lists.sizes.size(); ++i) best_.candidates.push_back(lists.sizes[i][choice->of[i]]);
  }

  void look_deeper(std::size_t index) {
    const Construction& construction = constructions_[index];
    Lists lists;
    lists.sizes.resize(request_.sizes.size());
    lists.most.assign(request_.sizes.size(), listed_first);
    try {
      for (bool first = true;; first = false) {
        bool longer = false;
        for (std::size_t i = 0; i < lists.sizes.size(); ++i) {
          if (!first && (lists.whole(i) || !undecided(lists.worst(i)))) continue;
          const int most = std::min(2 * lists.most[i], FitRequest::max_candidates);
          if (most == lists.most[i]) continue;
          lists.most[i] = most;
          lists.sizes[i] = list(construction, i, most, fits_.still()).candidates;
          longer = true;
        }
        if (!longer) break;
        choose(lists, index);
        if (!undecided(lists.floor())) return;
        if (budget_.spent()) break;
      }
    } catch (const Error& error) {
      if (error.code() != ErrorCode::too_large) throw;
      best_.complete = false;
      return;
    }
    for (std::size_t i = 0; i < lists.sizes.size(); ++i) {
      if (!lists.whole(i) && undecided(lists.worst(i))) best_.complete = false;
    }
  }

  const GradeRequest& request_;
  const Swatch& swatch_;
  const Order& order_;
  Progressing& fits_;
  fitting::Budget& budget_;
  bool counted_;
  fitting::Loosened loosened_;
  std::vector<Construction> constructions_;
  std::size_t chosen_ = 0;
  Graded best_;
};

}  // namespace

FitOptions Progressing::telling(double done, double each) {
  FitOptions out;
  out.stop = options_.stop;
  if (options_.progress) {
    out.progress = [this, done, each](const Progress& part) {
      Progress told = part;
      told.share = std::min(1.0, (done + each * part.share) / fits_);
      options_.progress(told);
    };
  }
  return out;
}

FitOptions Progressing::next() {
  const double done = done_;
  done_ += 1;
  return telling(done, 1);
}

FitOptions Progressing::still() {
  return telling(done_, 0);
}

void Progressing::end() {
  if (options_.progress) options_.progress({.bound_ms = 0, .best_ms = 0, .share = 1});
}

std::int64_t edges_of(const FitRequest& design) {
  return design.edge ? std::int64_t{design.edge_most} - design.edge_least + 1 : 1;
}

std::int64_t panels_of(const FitRequest& design) {
  return std::int64_t{design.panels_most} - design.panels_least + 1;
}

FitRequest design_for(const GradeSize& size, FitRequest design) {
  design.width_mm = size.width_mm;
  design.width_most_mm = size.width_most_mm;
  design.height_mm = size.height_mm;
  design.height_most_mm = size.height_most_mm;
  return design;
}

FitResult fit_size(const GradeRequest& request, std::size_t index, FitRequest of, const Swatch& swatch,
                   const FitOptions& options, fitting::Loosened loosened, bool with_nearest) {
  try {
    return fitting::fit_within(design_for(request.sizes[index], std::move(of)), swatch, fitting::whole_budget, options,
                               loosened, with_nearest);
  } catch (const Error& error) {
    if (error.code() != ErrorCode::bad_argument && error.code() != ErrorCode::too_large) throw;
    Place place = error.place();
    const bool target = place.field.starts_with("width") || place.field.starts_with("height");
    const std::string owner = target ? fmt::format("sizes[{}].", index) : std::string("design.");
    place.field = owner + place.field;
    throw Error(error.code(), place, owner + error.what());
  }
}

Graded best_of_constructions(const GradeRequest& request, const Swatch& swatch, const Order& order, Progressing& fits,
                             fitting::Budget& budget, bool counted, fitting::Loosened loosened) {
  return Grader(request, swatch, order, fits, budget, counted, loosened).run();
}

}  // namespace latchwork::inline v0::grading
