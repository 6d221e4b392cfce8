#include "latchwork/fit.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <map>
#include <string>
#include <string_view>
#include <tuple>
#include <utility>

#include "gauge/gauges.hpp"
#include "size/measure.hpp"
#include "text/words.hpp"

namespace latchwork::inline v0 {
namespace {

using Count = std::int64_t;  // products of two sides pass int

constexpr double least_target_mm = 1;
constexpr double most_target_mm = 1'000'000;
constexpr int most_candidates = 10'000;

[[noreturn]] void refuse(std::string_view field, const std::string& message) {
  Place place;
  place.field = field;
  throw Error(ErrorCode::bad_argument, place, message);
}

void require(std::string_view field, int value, int least, int most) {
  if (value < least || value > most) {
    refuse(field, fmt::format("{} is {}; it must be {}..{}", field, value, least, most));
  }
}

void require_target(std::string_view field, double value) {
  if (!(value >= least_target_mm && value <= most_target_mm)) {
    refuse(field, fmt::format("{} is {}; it must be {}..{} mm", field, value, least_target_mm, most_target_mm));
  }
}

void require_request(const FitRequest& request) {
  require_target("width_mm", request.width_mm);
  require_target("height_mm", request.height_mm);
  if (request.repeat.empty()) refuse("repeat", "repeat has no strips; it must have one or more");
  if (request.edge && request.edge->grid.columns() != 1) {
    refuse("edge", fmt::format("edge is {} columns wide; it must be 1", request.edge->grid.columns()));
  }
  require("edge_least", request.edge_least, 0, Grid::max_side);
  require("edge_most", request.edge_most, request.edge_least, Grid::max_side);
  require("repeats_least", request.repeats_least, 1, Grid::max_side);
  require("repeats_most", request.repeats_most, request.repeats_least, Grid::max_side);
  require("rows_step", request.rows_step, 1, Grid::max_side);
  require("rows_extra", request.rows_extra, 0, Grid::max_side);
  if (request.needles < 0) refuse("needles", fmt::format("needles is {}; it must be 0 or more", request.needles));
  require("most", request.most, 1, most_candidates);
}

Count columns_of(const std::vector<Strip>& strips) {
  Count columns = 0;
  for (const Strip& strip : strips) columns += strip.grid.columns();
  return columns;
}

/// The error of a candidate, and the order of the ranking. Rounding makes ties of what differs by rounding only.
double rank_error(double width_error, double height_error) {
  constexpr double unit = 1e-12;
  return std::round(std::sqrt(width_error * width_error + height_error * height_error) / unit) * unit;
}

bool ranks_before(const FitCandidate& a, const FitCandidate& b) {
  return std::tie(a.error, a.columns, a.rows, a.edge_columns) < std::tie(b.error, b.columns, b.rows, b.edge_columns);
}

/// The best candidates so far: a heap with the worst of them on top.
class Ranking {
 public:
  explicit Ranking(int most) : most_(static_cast<std::size_t>(most)) {}

  /// False when nothing with this error or a greater one can be among the best any more.
  bool open(double error) const { return heap_.size() < most_ || error <= heap_.front().error; }

  void offer(const FitCandidate& candidate) {
    if (heap_.size() == most_) {
      if (!ranks_before(candidate, heap_.front())) return;
      std::pop_heap(heap_.begin(), heap_.end(), ranks_before);
      heap_.pop_back();
    }
    heap_.push_back(candidate);
    std::push_heap(heap_.begin(), heap_.end(), ranks_before);
  }

  std::vector<FitCandidate> sorted() && {
    std::sort_heap(heap_.begin(), heap_.end(), ranks_before);
    return std::move(heap_);
  }

 private:
  std::size_t most_;
  std::vector<FitCandidate> heap_;
};

/// Searches all combinations, and passes over only those that cannot rank. It rests on this: with everything else
/// fixed, width never falls as edge columns grow, and height never falls as rows grow, in doubles as in numbers. So
/// errors only grow on the way out from the target in either direction.
class Search {
 public:
  Search(const FitRequest& request, const Gauges& gauges)
      : request_(request),
        ranking_(request.most),
        repeat_columns_(columns_of(request.repeat)),
        closing_columns_(columns_of(request.closing)),
        edge_least_(request.edge ? request.edge_least : 0),
        edge_most_(request.edge ? request.edge_most : 0),
        columns_most_(request.needles > 0 ? std::min<Count>(request.needles, Grid::max_side) : Grid::max_side) {
    std::map<std::string_view, Shares> shares;
    const auto add = [&](const Strip& strip, Count Shares::*share) {
      const Gauge& gauge = gauges.of(strip.texture);
      Shares& of = shares[gauge.texture];
      of.gauge = &gauge;
      of.*share += strip.grid.columns();
    };
    for (const Strip& strip : request.repeat) add(strip, &Shares::repeat);
    for (const Strip& strip : request.closing) add(strip, &Shares::closing);
    if (edge_most_ > 0) add(*request.edge, &Shares::edge);
    for (const auto& [texture, of] : shares) shares_.push_back(of);
    textures_.resize(shares_.size());
  }

  std::vector<FitCandidate> run() && {
    for (Count repeats = request_.repeats_least; repeats <= request_.repeats_most; ++repeats) {
      const Count room = columns_most_ - repeats * repeat_columns_ - closing_columns_;
      const Count edge_most = std::min<Count>(edge_most_, room < 0 ? -1 : room / 2);
      if (edge_most < edge_least_) break;  // more repeats leave less room
      search_edges(repeats, edge_most);
    }
    return std::move(ranking_).sorted();
  }

 private:
  struct Shares {
    const Gauge* gauge = nullptr;
    Count repeat = 0;
    Count closing = 0;
    Count edge = 0;
  };

  // Outward from the edge width that meets the target, while the width alone is not too far off.
  void search_edges(Count repeats, Count edge_most) {
    Count wide = edge_least_;  // the first that is not narrower than the target
    for (Count end = edge_most + 1; wide < end;) {
      const Count middle = wide + (end - wide) / 2;
      measure(repeats, middle);
      if (width_ < request_.width_mm) {
        wide = middle + 1;
      } else {
        end = middle;
      }
    }
    for (Count edge = wide; edge <= edge_most && try_edge(repeats, edge); ++edge) {
    }
    for (Count edge = wide - 1; edge >= edge_least_ && try_edge(repeats, edge); --edge) {
    }
  }

  bool try_edge(Count repeats, Count edge) {
    measure(repeats, edge);
    if (!ranking_.open(rank_error(width_error_, 0))) return false;
    search_rows(static_cast<int>(repeats), static_cast<int>(edge));
    return true;
  }

  void measure(Count repeats, Count edge) {
    columns_ = repeats * repeat_columns_ + closing_columns_ + 2 * edge;
    for (std::size_t i = 0; i < shares_.size(); ++i) {
      const Shares& of = shares_[i];
      textures_[i] = {of.gauge, static_cast<double>(repeats * of.repeat + of.closing + 2 * edge * of.edge)};
    }
    width_ = band_width_mm(textures_);
    width_error_ = (width_ - request_.width_mm) / request_.width_mm;
  }

  Count rows(Count step) const { return request_.rows_extra + step * request_.rows_step; }
  double height(Count step) const { return band_height_mm(textures_, static_cast<double>(rows(step))); }
  double error(Count step) const {
    return rank_error(width_error_, (height(step) - request_.height_mm) / request_.height_mm);
  }

  // Offers the `most` best row counts for the measured columns, or all that can still rank.
  void search_rows(int repeats, int edge) {
    const Count rows_most = std::min<Count>(Grid::max_side, Grid::max_cells / columns_);
    const Count first = request_.rows_extra > 0 ? 0 : 1;
    if (rows(first) > rows_most) return;
    const Count last = (rows_most - request_.rows_extra) / request_.rows_step;

    Count high = first;  // the first that is not lower than the target
    for (Count end = last + 1; high < end;) {
      const Count middle = high + (end - high) / 2;
      if (height(middle) < request_.height_mm) {
        high = middle + 1;
      } else {
        end = middle;
      }
    }

    // Outward both ways, the lesser error first. Where the width's error is great, many heights have one error after
    // rounding: of such a run below the target the lowest rows rank first, so it is offered from its far end.
    Count low = high - 1;
    int left = request_.most;
    while (left > 0 && (low >= first || high <= last)) {
      const bool below = high > last || (low >= first && error(low) <= error(high));
      const double level = error(below ? low : high);
      if (!ranking_.open(level)) return;
      if (!below) {
        offer(repeats, edge, high++, level);
        --left;
        continue;
      }
      const Count run = first_of_run(first, low, level);
      for (Count step = run; step <= low && left > 0; ++step, --left) offer(repeats, edge, step, level);
      low = run - 1;
    }
  }

  // The lowest step from `first` to `low` with this error; errors never grow on the way up to `low`.
  Count first_of_run(Count first, Count low, double level) const {
    for (Count end = low; first < end;) {
      const Count middle = first + (end - first) / 2;
      if (error(middle) > level) {
        first = middle + 1;
      } else {
        end = middle;
      }
    }
    return first;
  }

  void offer(int repeats, int edge, Count step, double level) {
    const double high = height(step);
    ranking_.offer({repeats, edge, static_cast<int>(columns_), static_cast<int>(rows(step)), width_, high,
                    width_ - request_.width_mm, high - request_.height_mm, level});
  }

  const FitRequest& request_;
  Ranking ranking_;
  std::vector<Shares> shares_;  // by texture name, as size() takes them
  Count repeat_columns_;
  Count closing_columns_;
  Count edge_least_;
  Count edge_most_;
  Count columns_most_;

  // Of the combination being measured.
  std::vector<TextureColumns> textures_;
  Count columns_ = 0;
  double width_ = 0;
  double width_error_ = 0;
};

}  // namespace

std::vector<FitCandidate> fit(const FitRequest& request, const Swatch& swatch) {
  require_request(request);
  const Gauges gauges(swatch);
  return Search(request, gauges).run();
}

Panel fitted(const FitRequest& request, const FitCandidate& candidate) {
  require_request(request);
  require("repeats", candidate.repeats, request.repeats_least, request.repeats_most);
  require("edge_columns", candidate.edge_columns, request.edge ? request.edge_least : 0,
          request.edge ? request.edge_most : 0);
  const Count columns = candidate.repeats * columns_of(request.repeat) + columns_of(request.closing) +
                        2 * static_cast<Count>(candidate.edge_columns);
  if (columns != candidate.columns) {
    refuse("columns", fmt::format("columns is {}; {} repeats and {} edge columns a side make {}", candidate.columns,
                                  candidate.repeats, candidate.edge_columns, columns));
  }
  require("rows", candidate.rows, std::max(1, request.rows_extra), Grid::max_side);
  if ((candidate.rows - request.rows_extra) % request.rows_step != 0) {
    refuse("rows", fmt::format("rows is {}; it must be {} and a multiple of {}", candidate.rows, request.rows_extra,
                               request.rows_step));
  }

  // An edge is one column wide, so its mirror image is itself.
  std::optional<Strip> edge;
  if (candidate.edge_columns > 0) edge = request.edge->repeated_across(candidate.edge_columns);
  std::vector<Strip> strips;
  if (edge) strips.push_back(*edge);
  for (int i = 0; i < candidate.repeats; ++i) {
    strips.insert(strips.end(), request.repeat.begin(), request.repeat.end());
  }
  strips.insert(strips.end(), request.closing.begin(), request.closing.end());
  if (edge) strips.push_back(*edge);
  return join_strips(fmt::format("{}, {} a side, {}", count_of(candidate.repeats, "repeat"),
                                 count_of(candidate.edge_columns, "edge column"), count_of(candidate.rows, "row")),
                     candidate.rows, strips);
}

}  // namespace latchwork::inline v0
