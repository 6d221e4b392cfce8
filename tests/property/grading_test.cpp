#include "latchwork/grading.hpp"

#include <algorithm>
#include <limits>
#include <vector>

#include "catch.hpp"
#include "random.hpp"

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

  bool may_follow(const FitCandidate& before, const FitCandidate& after, std::size_t size) const {
    const GradeSize& a = request.sizes[size - 1];
    const GradeSize& b = request.sizes[size];
    const int wider = sign(a.width_mm, b.width_mm);
    const int higher = sign(a.height_mm, b.height_mm);
    const auto goes = [](int growth, int one, int other) {
      if (growth > 0) return one <= other;
      if (growth < 0) return one >= other;
      return one == other;
    };
    for (std::size_t group = 0; group < before.times.size(); ++group) {
      if (!goes(wider, before.times[group], after.times[group])) return false;
    }
    return goes(higher, before.rows, after.rows);
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
      if (size > 0 && !may_follow(chosen.back(), candidate, size)) continue;
      chosen.push_back(candidate);
      choose(size + 1, std::max(worst, candidate.error), total + candidate.error);
      chosen.pop_back();
    }
  }
};

}  // namespace

TEST_CASE("a grading is the best of all that may be chosen from the sizes' candidates", "[grading][property]") {
  int graded = 0;
  int none = 0;
  for (std::uint64_t seed = 1; seed <= 150; ++seed) {
    CAPTURE(seed);
    Random random(seed);
    const Swatch swatch({{"a", Counted::stitches, static_cast<double>(random.between(15, 35)), 100, ""},
                         {"a", Counted::rows, static_cast<double>(random.between(25, 50)), 100, ""}});
    GradeRequest request;
    for (int i = random.between(1, 2); i > 0; --i) {
      const int least = random.between(0, 2);
      request.design.groups.push_back(
          {{Strip{"s", "a", Grid(1, random.between(2, 9))}}, least, least + random.between(0, 2)});
    }
    request.design.edge = Strip{"e", "a", Grid(1, 1)};
    request.design.edge_least = random.between(1, 2);
    request.design.edge_most = request.design.edge_least + random.between(0, 1);
    request.design.rows_step = random.between(20, 60);
    request.design.panels_most = random.between(1, 2);
    request.design.tolerance_percent = random.between(10, 60);
    for (int i = random.between(2, 3); i > 0; --i) {
      request.sizes.push_back(
          {"size", static_cast<double>(random.between(30, 140)), 0, static_cast<double>(random.between(60, 200)), 0});
    }
    const Grading grading = grade(request, swatch);
    double greatest = std::numeric_limits<double>::infinity();
    double sum = greatest;
    bool every_size = true;
    for (const GradeSize& size : request.sizes) {
      FitRequest alone = request.design;
      alone.width_mm = size.width_mm;
      alone.height_mm = size.height_mm;
      every_size = every_size && !fit(alone, swatch).candidates.empty();
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
          FitRequest alike = request.design;
          alike.panels_least = alike.panels_most = panels;
          alike.edge_least = alike.edge_most = edge;
          alike.width_mm = size.width_mm;
          alike.height_mm = size.height_mm;
          alike.most = 300;
          all.lists.push_back(fit(alike, swatch).candidates);
        }
        all.choose(0, 0, 0);
        if (all.greatest < greatest || (all.greatest == greatest && all.sum < sum)) {
          greatest = all.greatest;
          sum = all.sum;
        }
      }
    }
    CHECK(grading.candidates.empty() == (greatest == std::numeric_limits<double>::infinity()));
    if (grading.candidates.empty()) {
      ++none;
      continue;
    }
    ++graded;
    double worst = 0;
    double total = 0;
    for (std::size_t i = 0; i < grading.candidates.size(); ++i) {
      worst = std::max(worst, grading.candidates[i].error);
      total += grading.candidates[i].error;
      CHECK(grading.candidates[i].panels == grading.candidates[0].panels);
      CHECK(grading.candidates[i].edge_columns == grading.candidates[0].edge_columns);
      const BruteForce rule{request, {}};
      if (i > 0) CHECK(rule.may_follow(grading.candidates[i - 1], grading.candidates[i], i));
    }
    CHECK(worst == greatest);
    CHECK(total == latchwork_test::Approx(sum).margin(1e-12));
  }
  CHECK(graded > 40);
  CHECK(none > 10);
}
