// All combinations, written down from the words of fit.hpp and size.hpp, against fit(). Where the vertical repeat
// begins has a file of its own, fit_start_test.cpp.
#include <algorithm>
#include <bit>
#include <cmath>
#include <cstdint>
#include <functional>
#include <initializer_list>
#include <map>
#include <numeric>
#include <optional>
#include <string>
#include <tuple>
#include <utility>
#include <vector>

#include "catch.hpp"
#include "fit_swatch.hpp"
#include "how_many.hpp"
#include "latchwork/fit.hpp"
#include "latchwork/size.hpp"
#include "random.hpp"

namespace fit_brute_force_test {

using namespace latchwork;
using latchwork_test::Approx;
using latchwork_test::fit_swatch;
using latchwork_test::fit_texture;
using latchwork_test::how_many;
using latchwork_test::Random;

namespace {

Strip random_strip(Random& random, int most_columns) {
  return {"s", fit_texture(random), Grid(1, random.between(1, most_columns))};
}

double random_half(Random& random, int most) {
  return random.one_in(2) ? 0 : random.between(0, 2 * most) / 2.0;
}

// Of the combinations a search has to do with; the limits of grids are in the unit test.
struct Caps {
  int columns = 0;
  int rows = 0;
  int panels = 0;
};

FitRequest random_request(Random& random) {
  FitRequest out;
  // Now and then so far off that the error in one direction drowns the other: then ties decide.
  out.width_mm = random.one_in(4) ? random.between(1, 3) : random.between(20, 120);
  out.height_mm = random.one_in(4) ? random.between(1, 3) : random.between(20, 90);
  if (random.one_in(2)) out.width_most_mm = out.width_mm + random.between(0, 40);
  if (random.one_in(2)) out.height_most_mm = out.height_mm + random.between(0, 20);
  for (int groups = random.between(1, 3); groups > 0; --groups) {
    FitGroup& group = out.groups.emplace_back();
    for (int i = random.between(1, 3); i > 0; --i) group.strips.push_back(random_strip(random, 3));
    group.least = random.between(0, 2);
    group.most = group.least + random.between(0, 3);
    const int earlier = static_cast<int>(out.groups.size()) - 2;
    if (earlier >= 0 && random.one_in(3)) group.as_group = random.between(0, earlier);
  }
  if (random.one_in(2)) {
    out.edge = random_strip(random, 1);
    out.edge_least = random.between(0, 2);
    out.edge_most = out.edge_least + random.between(0, 3);
  }
  out.panels_least = random.one_in(2) ? 1 : random.between(1, 3);
  out.panels_most = out.panels_least + random.between(0, 3);
  out.seam_stitches = random.between(0, 2) / 2.0;
  out.rows_step = random.between(1, 20);
  out.rows_extra = random.one_in(3) ? 0 : random.between(1, 20);
  if (!out.edge && out.panels_least > 1) out.seam_stitches = 0;  // else it is refused
  if (random.one_in(3)) out.needles = random.between(1, 40);
  out.most = random.one_in(3) ? 1 : random.between(1, 12);
  if (random.one_in(3)) out.tolerance_percent = random.between(0, 30);
  out.seam_left = random_half(random, 3);
  out.seam_right = random_half(random, 3);
  out.seam_bottom = random_half(random, 2);
  out.seam_top = random_half(random, 2);
  return out;
}

// The request's bounds, some of them loosened as fit.hpp says.
struct Bounds {
  bool width = true;   // whether the tolerance holds
  bool height = true;  // likewise
  std::vector<std::pair<int, int>> times;
  int edge_least = 0, edge_most = 0;
  int panels_least = 1, panels_most = 1;
  int rows_step = 1, rows_extra = 0;
  int needles = 0;
};

Bounds bounds_of(const FitRequest& request) {
  Bounds out;
  for (const FitGroup& group : request.groups) out.times.emplace_back(group.least, group.most);
  if (request.edge) {
    out.edge_least = request.edge_least;
    out.edge_most = request.edge_most;
  }
  out.panels_least = request.panels_least;
  out.panels_most = request.panels_most;
  out.rows_step = request.rows_step;
  out.rows_extra = request.rows_extra;
  out.needles = request.needles;
  return out;
}

int columns_of(const FitGroup& group) {
  return std::accumulate(group.strips.begin(), group.strips.end(), 0,
                         [](int sum, const Strip& strip) { return sum + strip.grid.columns(); });
}

// One panel between its seams: its columns laid out one by one, those in the seams left out.
class Sewn {
 public:
  Sewn(const std::vector<std::string>& columns, const Swatch& swatch, double seam_left, double seam_right) {
    std::map<std::string, double> counts;
    const double end = static_cast<double>(columns.size()) - seam_right;
    for (std::size_t i = 0; i < columns.size(); ++i) {
      const double low = std::max(static_cast<double>(i), seam_left);
      const double high = std::min(static_cast<double>(i + 1), end);
      if (high > low) counts[columns[i]] += high - low;
    }
    for (const auto& [texture, count] : counts) {
      const Gauge gauge = swatch.gauge(texture);
      parts_.emplace_back(count * 100 / gauge.stitches.per_10cm, gauge.rows.per_10cm);
      width += parts_.back().first;
    }
  }

  double height(double rows) const {
    double weighted = 0;
    double least = 1e300;
    double greatest = 0;
    for (const auto& [w, rows_per_10cm] : parts_) {
      const double h = rows * 100 / rows_per_10cm;
      weighted += w * h;
      least = std::min(least, h);
      greatest = std::max(greatest, h);
    }
    return std::clamp(weighted / width, least, greatest);
  }

  double width = 0;

 private:
  std::vector<std::pair<double, double>> parts_;
};

double distance(double mm, double least, double most) {
  return mm < least ? mm - least : std::max(mm - most, 0.0);
}

// The first of the groups that a group is tied to, itself where it is free.
std::size_t first_of(const FitRequest& request, std::size_t group) {
  while (request.groups[group].as_group >= 0) group = static_cast<std::size_t>(request.groups[group].as_group);
  return group;
}

class BruteForce {
 public:
  BruteForce(const FitRequest& request, const Swatch& swatch, Caps caps)
      : request_(request),
        swatch_(swatch),
        caps_(caps),
        width_most_(request.width_most_mm == 0 ? request.width_mm : request.width_most_mm),
        height_most_(request.height_most_mm == 0 ? request.height_mm : request.height_most_mm) {}

  // In any order.
  const std::vector<FitCandidate>& all(const Bounds& bounds) {
    found_.clear();
    times_.assign(bounds.times.size(), 0);
    try_times(bounds, 0);
    return found_;
  }

  std::vector<FitCandidate> ranked(const Bounds& bounds) {
    all(bounds);
    std::sort(found_.begin(), found_.end(), [](const FitCandidate& a, const FitCandidate& b) {
      return std::tie(a.error, a.panels, a.columns, a.rows, a.edge_columns, a.times) <
             std::tie(b.error, b.panels, b.columns, b.rows, b.edge_columns, b.times);
    });
    return found_;
  }

 private:
  void try_times(const Bounds& bounds, std::size_t group) {
    if (group < times_.size()) {
      const std::size_t first = first_of(request_, group);
      if (first != group) {
        times_[group] = times_[first];
        try_times(bounds, group + 1);
        times_[group] = 0;
        return;
      }
      for (int n = bounds.times[group].first; n <= bounds.times[group].second; ++n) {
        times_[group] = n;
        try_times(bounds, group + 1);
      }
      times_[group] = 0;
      return;
    }
    for (int edge = bounds.edge_least; edge <= bounds.edge_most; ++edge) try_columns(bounds, edge);
  }

  void try_columns(const Bounds& bounds, int edge) {
    std::vector<std::string> columns;
    if (edge > 0) columns.insert(columns.end(), static_cast<std::size_t>(edge), request_.edge->texture);
    for (std::size_t i = 0; i < times_.size(); ++i) {
      for (int n = 0; n < times_[i]; ++n) {
        for (const Strip& strip : request_.groups[i].strips) {
          columns.insert(columns.end(), static_cast<std::size_t>(strip.grid.columns()), strip.texture);
        }
      }
    }
    if (edge > 0) columns.insert(columns.end(), static_cast<std::size_t>(edge), request_.edge->texture);
    const int count = static_cast<int>(columns.size());
    if (count == 0 || count > caps_.columns || (bounds.needles > 0 && count > bounds.needles)) return;

    const double seam = request_.seam_stitches;
    for (int panels = bounds.panels_least; panels <= bounds.panels_most; ++panels) {
      if (panels > 1 && edge < seam) continue;
      const Sewn left(columns, swatch_, request_.seam_left, panels == 1 ? request_.seam_right : seam);
      const Sewn inner(columns, swatch_, seam, seam);
      const Sewn right(columns, swatch_, request_.seam_right, seam);  // as it is seen mirrored back
      if (left.width == 0 || (panels > 1 && right.width == 0) || (panels > 2 && inner.width == 0)) continue;
      FitCandidate out;
      out.panels = panels;
      out.times = times_;
      out.edge_columns = edge;
      out.columns = count;
      out.width_mm = left.width;
      if (panels > 2) out.width_mm += (panels - 2) * inner.width;
      if (panels > 1) out.width_mm += right.width;
      for (int rows = bounds.rows_extra; rows <= caps_.rows; rows += bounds.rows_step) {
        const double between = rows - request_.seam_bottom - request_.seam_top;
        if (between <= 0) continue;
        out.rows = rows;
        out.height_mm = left.height(between);
        if (panels > 1) {
          double weighted = left.width * out.height_mm;
          double least = std::min(out.height_mm, right.height(between));
          double greatest = std::max(out.height_mm, right.height(between));
          if (panels > 2) {
            weighted += (panels - 2) * (inner.width * inner.height(between));
            least = std::min(least, inner.height(between));
            greatest = std::max(greatest, inner.height(between));
          }
          weighted += right.width * right.height(between);
          out.height_mm = std::clamp(weighted / out.width_mm, least, greatest);
        }
        offer(bounds, out);
      }
    }
  }

  void offer(const Bounds& bounds, FitCandidate out) {
    const double width_end = out.width_mm < request_.width_mm ? request_.width_mm : width_most_;
    const double height_end = out.height_mm < request_.height_mm ? request_.height_mm : height_most_;
    out.width_error_mm = distance(out.width_mm, request_.width_mm, width_most_);
    out.height_error_mm = distance(out.height_mm, request_.height_mm, height_most_);
    out.width_error_percent = 100 * out.width_error_mm / width_end;
    out.height_error_percent = 100 * out.height_error_mm / height_end;
    if (request_.tolerance_percent) {
      if (bounds.width && std::abs(out.width_error_percent) > *request_.tolerance_percent) return;
      if (bounds.height && std::abs(out.height_error_percent) > *request_.tolerance_percent) return;
    }
    const double width_error = out.width_error_mm / width_end;
    const double height_error = out.height_error_mm / height_end;
    out.error = std::round(std::sqrt(width_error * width_error + height_error * height_error) / 1e-12) * 1e-12;
    found_.push_back(out);
  }

  const FitRequest& request_;
  const Swatch& swatch_;
  Caps caps_;
  double width_most_;
  double height_most_;
  std::vector<int> times_;
  std::vector<FitCandidate> found_;
};

// One bound of FitResult::nearest, and how it is loosened.
struct Loose {
  FitBound bound;
  int group;
  std::function<void(Bounds&)> by;
};

std::vector<Loose> loosened(const FitRequest& request, Caps caps) {
  std::vector<Loose> out;
  if (request.tolerance_percent) {
    out.push_back({FitBound::width, -1, [](Bounds& b) { b.width = false; }});
    out.push_back({FitBound::height, -1, [](Bounds& b) { b.height = false; }});
  }
  for (std::size_t i = 0; i < request.groups.size(); ++i) {
    if (first_of(request, i) != i) continue;
    const int most = caps.columns / columns_of(request.groups[i]);
    out.push_back({FitBound::times, static_cast<int>(i), [=](Bounds& b) {
                     b.times[i] = {std::min(b.times[i].first, 1), most};
                   }});
  }
  if (request.edge) {
    out.push_back({FitBound::edge_columns, -1, [=](Bounds& b) {
                     b.edge_least = 0;
                     b.edge_most = caps.columns / 2;
                   }});
  }
  if (request.rows_step > 1 || request.rows_extra > 0) {
    out.push_back({FitBound::rows, -1, [](Bounds& b) { b.rows_extra = 0, b.rows_step = 1; }});
  }
  out.push_back({FitBound::panels, -1, [=](Bounds& b) {
                   b.panels_least = 1;
                   b.panels_most = caps.panels;
                 }});
  if (request.needles > 0) out.push_back({FitBound::needles, -1, [](Bounds& b) { b.needles = 0; }});
  return out;
}

// What is left out of the comparison with brute force.
FitCandidate without_start(FitCandidate candidate) {
  candidate.start_row = 1;
  candidate.imbalance_rows = 0;
  candidate.open_ends = false;
  return candidate;
}

std::vector<FitCandidate> without_starts(std::vector<FitCandidate> candidates) {
  for (FitCandidate& each : candidates) each = without_start(each);
  return candidates;
}

// How far the bound gives that gives most, in millionths, by the words of FitResult::nearest.
std::int64_t far_of(const FitRequest& request, const FitCandidate& of) {
  constexpr std::int64_t whole = 1'000'000;
  std::int64_t out = 0;
  const auto count = [&](std::int64_t value, std::int64_t least, std::int64_t most) {
    const std::int64_t limit = value < least ? least : most;
    const std::int64_t off = value < least ? least - value : value - most;
    const std::int64_t allowed = limit == 0 ? 1 : limit;
    if (off > 0) out = std::max(out, off * whole / allowed + (off * whole % allowed > 0 ? 1 : 0));
  };
  for (std::size_t i = 0; i < of.times.size(); ++i) {
    const FitGroup& group = request.groups[first_of(request, i)];
    count(of.times[i], group.least, group.most);
  }
  if (request.edge) count(of.edge_columns, request.edge_least, request.edge_most);
  count(of.panels, request.panels_least, request.panels_most);
  if (request.needles > 0) count(of.columns, 0, request.needles);
  const int rest = of.rows - request.rows_extra;
  if (rest < 0 || rest % request.rows_step != 0) out = std::max(out, whole);
  const double tolerance = request.tolerance_percent.value_or(0);
  for (const double percent : {of.width_error_percent, of.height_error_percent}) {
    const double share = (std::abs(percent) - tolerance) / std::max(tolerance, 1.0);
    if (share > 0) out = std::max(out, static_cast<std::int64_t>(std::ceil(share * 1e6)));
  }
  return out;
}

void check_measured(const FitRequest& request, const FitCandidate& candidate, const Swatch& swatch) {
  const SizeOptions options{.seam_left = request.seam_left,
                            .seam_right = request.seam_right,
                            .seam_bottom = request.seam_bottom,
                            .seam_top = request.seam_top};
  if (candidate.panels == 1) {
    const Size whole = size(fitted(request, candidate), swatch, options);
    CHECK(whole.width_mm == candidate.width_mm);
    CHECK(whole.height_mm == candidate.height_mm);
    return;
  }
  double width = 0;
  double weighted = 0;
  for (int i = 0; i < candidate.panels; ++i) {
    SizeOptions sewn = options;
    if (i > 0) sewn.seam_left = request.seam_stitches;
    if (i < candidate.panels - 1) sewn.seam_right = request.seam_stitches;
    const Size one = size(fitted(request, candidate, i), swatch, sewn);
    width += one.width_mm;
    weighted += one.width_mm * one.height_mm;
  }
  CHECK(width == Approx(candidate.width_mm).epsilon(1e-12));
  CHECK(weighted / width == Approx(candidate.height_mm).epsilon(1e-12));
}

}  // namespace

TEST_CASE("fit finds what trying all combinations finds, and measures as size() does", "[fit][property][long]") {
  Random random(20);
  int fitting = 0;
  for (int seed = 0; seed < 400; ++seed) {
    INFO("case " << seed);
    const Swatch swatch = fit_swatch(random);
    const FitRequest request = random_request(random);
    // More rows only come into it when fewer candidates than asked for come before them.
    const Caps caps{Grid::max_side, 400, FitRequest::max_panels};
    std::vector<FitCandidate> expected = BruteForce(request, swatch, caps).ranked(bounds_of(request));
    if (expected.size() > static_cast<std::size_t>(request.most))
      expected.resize(static_cast<std::size_t>(request.most));
    const FitResult found = fit(request, swatch);
    REQUIRE(without_starts(found.candidates) == expected);
    if (!found.candidates.empty()) {
      ++fitting;
      check_measured(request, found.candidates[0], swatch);
    }
  }
  CHECK(fitting > 200);
  CHECK(fitting < 400);
}

TEST_CASE("what is nearest gives least of all combinations under as few bounds loosened", "[fit][property]") {
  Random random(21);
  struct Best {
    unsigned bounds;
    std::int64_t far;  // of the bound that gives most
    FitCandidate candidate;
    std::int64_t in_all() const { return far * std::popcount(bounds); }
    auto rank() const {
      const FitCandidate& of = candidate;
      return std::tuple(in_all(), std::popcount(bounds), of.error, of.panels, of.columns, of.rows, of.edge_columns,
                        of.times);
    }
  };
  int cases = 0;
  int together = 0;  // cases of two bounds or more at least
  int mixed = 0;     // one bound beside two or more
  const int count = how_many(8);
  while (cases < count) {
    const Swatch swatch = fit_swatch(random);
    FitRequest request = random_request(random);
    request.groups.resize(std::min<std::size_t>(request.groups.size(), 2));
    request.width_mm = request.width_most_mm = random.between(20, 36);
    request.height_mm = request.height_most_mm = random.between(20, 36);
    request.needles = random.one_in(3) ? 0 : random.between(1, 12);
    if (!random.one_in(3)) request.tolerance_percent = random.between(0, 3);
    const FitResult found = fit(request, swatch);
    if (!found.candidates.empty()) {
      CHECK(found.nearest.empty());
      continue;
    }
    // What is off by more than the target's own measure is not reached by these caps.
    const bool far = std::any_of(found.nearest.begin(), found.nearest.end(),
                                 [](const FitNearest& each) { return each.candidate.error >= 1; });
    if (far) continue;
    // Twice as wide and high as any that could come first: 36 mm are 15 columns and 22 rows of the finest.
    const Caps caps{36, 50, 36};
    BruteForce brute(request, swatch, caps);
    const std::vector<Loose> loose = loosened(request, caps);
    std::vector<Best> best;
    for (int size = 1; size <= 2 || (best.size() < 3 && size <= std::ssize(loose)); ++size) {
      for (unsigned bounds = 0; bounds < 1U << loose.size(); ++bounds) {
        if (std::popcount(bounds) != size) continue;
        Bounds under = bounds_of(request);
        for (std::size_t i = 0; i < loose.size(); ++i) {
          if ((bounds >> i & 1U) != 0) loose[i].by(under);
        }
        std::optional<Best> least;
        for (const FitCandidate& each : brute.all(under)) {
          const std::int64_t gives = far_of(request, each);
          if (least && gives > least->far) continue;
          Best here{bounds, gives, each};
          if (!least || here.rank() < least->rank()) least = std::move(here);
        }
        if (!least) continue;
        const bool parts_do = std::any_of(best.begin(), best.end(), [&](const Best& each) {
          return (each.bounds & bounds) == each.bounds && each.in_all() <= least->in_all();
        });
        if (!parts_do) best.push_back(*least);
      }
    }
    std::sort(best.begin(), best.end(), [](const Best& a, const Best& b) { return a.rank() < b.rank(); });
    const auto fewest = std::min_element(best.begin(), best.end(), [](const Best& a, const Best& b) {
      return std::popcount(a.bounds) < std::popcount(b.bounds);
    });
    const int least = fewest == best.end() ? 0 : std::popcount(fewest->bounds);
    INFO("case " << cases << ", " << least << " bounds at least");
    CHECK(found.nearest_complete);
    REQUIRE(found.nearest.size() == 3);
    for (std::size_t i = best.size(); i < found.nearest.size(); ++i) {  // that fill the list up
      CHECK_FALSE(found.nearest[i].gives.empty());
      for (std::size_t k = 0; k < i; ++k) CHECK(found.nearest[i].candidate != found.nearest[k].candidate);
      check_measured(request, found.nearest[i].candidate, swatch);
    }
    for (std::size_t i = 0; i < std::min(best.size(), found.nearest.size()); ++i) {
      // What gives is what was loosened.
      unsigned bounds = 0;
      for (const FitGive& each : found.nearest[i].gives) {
        CHECK_FALSE(each.words.empty());
        CHECK(std::abs(each.value - each.limit) > 0);
        for (std::size_t k = 0; k < loose.size(); ++k) {
          if (loose[k].bound == each.bound && loose[k].group == each.group) bounds |= 1U << k;
        }
      }
      CHECK(bounds == best[i].bounds);
      CHECK(without_start(found.nearest[i].candidate) == best[i].candidate);
      check_measured(request, found.nearest[i].candidate, swatch);
      mixed += std::popcount(bounds) > least ? 1 : 0;
    }
    ++cases;
    together += least > 1 ? 1 : 0;
  }
  if (count < 8) return;
  CHECK(together > 0);
  CHECK(mixed > 0);
}

TEST_CASE("wherever there are three combinations three are told as near, of however odd a request", "[fit][property]") {
  Random random(23);
  const auto odd = [&](int most, std::initializer_list<int> others) {
    return random.one_in(3) ? *(others.begin() + random.between(0, static_cast<int>(others.size()) - 1))
                            : random.between(1, most);
  };
  int told = 0;
  const int count = how_many(16);
  for (int i = 0; told < count; ++i) {
    const Swatch swatch = fit_swatch(random);
    FitRequest request = random_request(random);
    request.width_mm = request.width_most_mm = odd(60, {1, 500, 100'000, 1'000'000});
    request.height_mm = request.height_most_mm = odd(60, {1, 500, 100'000, 1'000'000});
    for (FitGroup& group : request.groups) {
      if (random.one_in(3)) group.strips[0] = {"s", group.strips[0].texture, Grid(1, odd(5, {50, 700, 30'000}))};
      if (random.one_in(3)) group.least = group.most = odd(3, {10, 1000, 60'000});
    }
    request.rows_step = odd(20, {1000, 40'000, Grid::max_side});
    request.rows_extra = random.one_in(2) ? 0 : odd(20, {1000, Grid::max_side - 1, Grid::max_side});
    if (random.one_in(2)) request.needles = odd(40, {1, 200});
    request.seam_left = random.one_in(4) ? odd(3, {1000}) : 0;
    request.seam_top = random.one_in(4) ? odd(3, {1000}) : 0;
    FitResult found;
    try {
      found = fit(request, swatch);
    } catch (const Error& error) {  // so many of one group, or panels, that not even the search is done
      CHECK(error.code() == ErrorCode::too_large);
      continue;
    }
    if (!found.candidates.empty()) continue;
    INFO("case " << i);
    // With every bound loosened there are as many rows as one likes: three of them for a panel that leaves a width.
    Bounds none = bounds_of(request);
    const Caps caps{Grid::max_side, static_cast<int>(request.seam_bottom + request.seam_top) + 4, 1};
    for (const Loose& loose : loosened(request, caps)) loose.by(none);
    int wide = 0;  // columns of the narrowest that leaves a width: nothing once each may stand once or not at all
    for (std::size_t g = 0; g < request.groups.size(); ++g) {
      const std::size_t first = first_of(request, g);
      const int times = std::max(std::min(request.groups[first].least, 1), 0);
      none.times[g] = {times, times};
      wide += times * columns_of(request.groups[g]);
    }
    const int taken = static_cast<int>(request.seam_left + request.seam_right);
    none.edge_least = none.edge_most = request.edge ? taken / 2 + 1 : 0;
    const bool may = wide + 2 * none.edge_most <= Grid::max_side;
    const std::vector<FitCandidate> there =
        may ? BruteForce(request, swatch, caps).ranked(none) : std::vector<FitCandidate>{};
    if (there.size() < 3) continue;
    ++told;
    REQUIRE(found.nearest.size() == 3);
    for (std::size_t a = 0; a < 3; ++a) {
      CHECK_FALSE(found.nearest[a].gives.empty());
      for (std::size_t b = 0; b < a; ++b) CHECK(found.nearest[a].candidate != found.nearest[b].candidate);
    }
  }
}

}  // namespace fit_brute_force_test
