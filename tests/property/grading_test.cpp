#include "latchwork/grading.hpp"

#include <algorithm>
#include <limits>
#include <string>
#include <vector>

#include "catch.hpp"
#include "random.hpp"

namespace grading_test {

using namespace latchwork;
using latchwork_test::Random;

namespace {

/// By the words of grading.hpp: every way to choose from the candidates, looked at in turn.
struct BruteForce {
  const GradeRequest& request;
  std::vector<std::vector<FitCandidate>> lists;  // of one construction
  std::vector<FitCandidate> chosen{};
  double greatest = std::numeric_limits<double>::infinity();
  double sum = greatest;

  static int sign(double a, double b) { return a < b ? 1 : a > b ? -1 : 0; }

  static bool goes(int growth, int one, int other) {
    if (growth > 0) return one <= other;
    if (growth < 0) return one >= other;
    return one == other;
  }

  bool together(const FitCandidate& before, std::size_t first, const FitCandidate& after, std::size_t second) const {
    const GradeSize& a = request.sizes[first];
    const GradeSize& b = request.sizes[second];
    for (std::size_t group = 0; group < before.times.size(); ++group) {
      if (!goes(sign(a.width_mm, b.width_mm), before.times[group], after.times[group])) return false;
    }
    return goes(sign(a.height_mm, b.height_mm), before.rows, after.rows);
  }

  bool goes_with_all(const std::vector<FitCandidate>& before, const FitCandidate& after) const {
    for (std::size_t i = 0; i < before.size(); ++i) {
      if (!together(before[i], i, after, before.size())) return false;
    }
    return true;
  }

  void choose(std::size_t size, double worst, double total) {
    if (size == lists.size()) {
      if (worst < greatest || (worst == greatest && total < sum - 1e-15)) {
        greatest = worst;
        sum = total;
      }
      return;
    }
    for (const FitCandidate& candidate : lists[size]) {
      if (std::max(worst, candidate.error) > greatest) break;  // they are ranked by error
      if (!goes_with_all(chosen, candidate)) continue;
      chosen.push_back(candidate);
      choose(size + 1, std::max(worst, candidate.error), total + candidate.error);
      chosen.pop_back();
    }
  }
};

GradeRequest random_request(Random& random) {
  GradeRequest request;
  const bool bound = random.one_in(2);  // else all combinations are candidates, far more than are listed at first
  for (int i = random.between(1, 2); i > 0; --i) {
    const int least = random.between(0, 2);
    request.design.groups.push_back({{Strip{"s", random.one_in(2) ? "a" : "b", Grid(1, random.between(2, 9))}},
                                     least,
                                     least + random.between(0, bound ? 2 : 4)});
  }
  request.design.edge = Strip{"e", "a", Grid(1, 1)};
  request.design.edge_least = random.between(1, 2);
  request.design.edge_most = request.design.edge_least + random.between(0, 1);
  request.design.rows_step = random.between(bound ? 20 : 2000, bound ? 60 : 5000);
  request.design.panels_most = random.between(1, 2);
  if (bound) request.design.tolerance_percent = random.between(10, 60);
  for (int i = random.between(2, 4); i > 0; --i) {
    request.sizes.push_back({std::to_string(i), static_cast<double>(random.between(30, 140)), 0,
                             static_cast<double>(random.between(60, 200)), 0});
  }
  return request;
}

FitRequest sized(const FitRequest& design, const GradeSize& size) {
  FitRequest out = design;
  out.width_mm = size.width_mm;
  out.height_mm = size.height_mm;
  return out;
}

Swatch random_swatch(Random& random) {
  std::vector<Measurement> out;
  for (const char* const texture : {"a", "b"}) {
    out.push_back({texture, Counted::stitches, static_cast<double>(random.between(15, 35)), 100, ""});
    out.push_back({texture, Counted::rows, static_cast<double>(random.between(25, 50)), 100, ""});
  }
  return Swatch(out);
}

}  // namespace

TEST_CASE("a grading is the best of all ways to choose from all combinations", "[grading][property]") {
  int graded = 0;
  int together = 0;
  int none = 0;
  for (std::uint64_t seed = 1; seed <= 300; ++seed) {
    CAPTURE(seed);
    Random random(seed);
    const Swatch swatch = random_swatch(random);
    const GradeRequest request = random_request(random);
    const Grading grading = grade(request, swatch);
    CHECK(grading.complete);
    double greatest = std::numeric_limits<double>::infinity();
    double sum = greatest;
    bool every_size = true;
    for (const GradeSize& size : request.sizes) {
      every_size = every_size && !fit(sized(request.design, size), swatch).candidates.empty();
    }
    CHECK(every_size == (grading.missing == -1));
    if (!every_size) {
      ++none;
      continue;
    }
    for (int panels = 1; panels <= request.design.panels_most; ++panels) {
      for (int edge = request.design.edge_least; edge <= request.design.edge_most; ++edge) {
        BruteForce all{request, {}};
        for (const GradeSize& size : request.sizes) {
          FitRequest alike = sized(request.design, size);
          alike.panels_least = alike.panels_most = panels;
          alike.edge_least = alike.edge_most = edge;
          alike.most = FitRequest::max_candidates;  // all there are: fit_brute_force_test holds them against the words
          all.lists.push_back(fit(alike, swatch).candidates);
          REQUIRE(all.lists.back().size() < FitRequest::max_candidates);
        }
        all.choose(0, 0, 0);
        if (all.greatest < greatest || (all.greatest == greatest && all.sum < sum)) {
          greatest = all.greatest;
          sum = all.sum;
        }
      }
    }
    CHECK(grading.candidates.empty() == (greatest == std::numeric_limits<double>::infinity()));
    const BruteForce rule{request, {}};
    std::vector<FitCandidate> before;
    if (grading.candidates.empty()) {
      // What would go together if a bound gave, and does: sizes without a tolerance always do.
      ++together;
      REQUIRE(grading.nearest.size() == request.sizes.size());
      bool gives = false;
      for (const FitNearest& each : grading.nearest) {
        CHECK(rule.goes_with_all(before, each.candidate));
        gives = gives || !each.gives.empty();
        before.push_back(each.candidate);
      }
      CHECK(gives);
      continue;
    }
    ++graded;
    CHECK(grading.nearest.empty());
    double worst = 0;
    double total = 0;
    for (const FitCandidate& candidate : grading.candidates) {
      worst = std::max(worst, candidate.error);
      total += candidate.error;
      CHECK(candidate.panels == grading.candidates[0].panels);
      CHECK(candidate.edge_columns == grading.candidates[0].edge_columns);
      CHECK(rule.goes_with_all(before, candidate));
      before.push_back(candidate);
    }
    CHECK(worst == greatest);
    CHECK(total == latchwork_test::Approx(sum).margin(1e-12));
  }
  CHECK(graded > 60);
  CHECK(together > 3);
  CHECK(none > 10);
}

}  // namespace grading_test
