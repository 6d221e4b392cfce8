#include <algorithm>
#include <cmath>
#include <map>
#include <string>
#include <tuple>
#include <vector>

#include "catch.hpp"
#include "latchwork/fit.hpp"
#include "latchwork/size.hpp"
#include "random.hpp"

using namespace latchwork;
using latchwork_test::Random;

namespace {

const char* const textures[] = {"a", "b", "c"};

Swatch random_swatch(Random& random) {
  std::vector<Measurement> measurements;
  for (const char* texture : textures) {
    for (int place = random.between(1, 3); place > 0; --place) {
      measurements.push_back({texture, Counted::stitches, random.between(10, 400) / 10.0, 100, ""});
      measurements.push_back({texture, Counted::rows, random.between(10, 600) / 10.0, 100, ""});
    }
  }
  return Swatch(measurements);
}

Strip random_strip(Random& random, int most_columns) {
  return {"s", textures[random.between(0, 2)], Grid(1, random.between(1, most_columns))};
}

FitRequest random_request(Random& random) {
  FitRequest out;
  // Now and then so far off that the error in one direction drowns the other: then ties decide.
  out.width_mm = random.one_in(4) ? random.between(1, 3) : random.between(1, 400);
  out.height_mm = random.one_in(4) ? random.between(1, 3) : random.between(1, 400);
  for (int i = random.between(1, 3); i > 0; --i) out.repeat.push_back(random_strip(random, 4));
  for (int i = random.between(0, 2); i > 0; --i) out.closing.push_back(random_strip(random, 4));
  if (random.one_in(2)) out.edge = random_strip(random, 1);
  out.edge_least = random.between(0, 2);
  out.edge_most = out.edge_least + random.between(0, 3);
  out.repeats_least = random.between(1, 3);
  out.repeats_most = out.repeats_least + random.between(0, 6);
  out.rows_step = random.one_in(4) ? random.between(1, 40) : random.between(40, 4000);
  out.rows_extra = random.one_in(3) ? 0 : random.between(1, 200);
  if (random.one_in(3)) out.needles = random.between(1, 60);
  out.most = random.one_in(3) ? 1 : random.between(1, 40);
  return out;
}

// What size() gives, without a panel: columns by texture, and from them width and width-weighted mean height.
class Measure {
 public:
  Measure(const FitRequest& request, const Swatch& swatch) : request_(request), swatch_(swatch) {}

  void columns(int repeats, int edge) {
    parts_.clear();
    width = 0;
    std::map<std::string, int> columns;
    for (const Strip& strip : request_.repeat) columns[strip.texture] += repeats * strip.grid.columns();
    for (const Strip& strip : request_.closing) columns[strip.texture] += strip.grid.columns();
    if (edge > 0) columns[request_.edge->texture] += 2 * edge;
    for (const auto& [texture, count] : columns) {
      const Gauge gauge = swatch_.gauge(texture);
      parts_.push_back({count * 100.0 / gauge.stitches.per_10cm, gauge.rows.per_10cm});
      width += parts_.back().width;
    }
  }

  double height(int rows) const {
    double weighted = 0;
    double least = 1e300;
    double greatest = 0;
    for (const Part& part : parts_) {
      const double height = rows * 100.0 / part.rows_per_10cm;
      weighted += part.width * height;
      least = std::min(least, height);
      greatest = std::max(greatest, height);
    }
    return std::min(std::max(weighted / width, least), greatest);
  }

  double width = 0;

 private:
  struct Part {
    double width;
    double rows_per_10cm;
  };
  const FitRequest& request_;
  const Swatch& swatch_;
  std::vector<Part> parts_;
};

// All combinations, one by one, ranked as fit.hpp says.
std::vector<FitCandidate> brute_force(const FitRequest& request, const Swatch& swatch) {
  std::vector<FitCandidate> out;
  Measure measure(request, swatch);
  int repeat = 0;
  int closing = 0;
  for (const Strip& strip : request.repeat) repeat += strip.grid.columns();
  for (const Strip& strip : request.closing) closing += strip.grid.columns();
  for (int repeats = request.repeats_least; repeats <= request.repeats_most; ++repeats) {
    for (int edge = request.edge ? request.edge_least : 0; edge <= (request.edge ? request.edge_most : 0); ++edge) {
      const int columns = repeats * repeat + closing + 2 * edge;
      if (request.needles > 0 && columns > request.needles) continue;
      measure.columns(repeats, edge);
      const double width_part = (measure.width - request.width_mm) / request.width_mm;
      for (int rows = request.rows_extra; rows <= Grid::max_side; rows += request.rows_step) {
        if (rows == 0) continue;
        const double height = measure.height(rows);
        const double height_part = (height - request.height_mm) / request.height_mm;
        const double error = std::sqrt(width_part * width_part + height_part * height_part);
        out.push_back({repeats, edge, columns, rows, measure.width, height, measure.width - request.width_mm,
                       height - request.height_mm, std::round(error / 1e-12) * 1e-12});
      }
    }
  }
  std::sort(out.begin(), out.end(), [](const FitCandidate& a, const FitCandidate& b) {
    return std::tie(a.error, a.columns, a.rows, a.edge_columns) < std::tie(b.error, b.columns, b.rows, b.edge_columns);
  });
  if (out.size() > static_cast<std::size_t>(request.most)) out.resize(static_cast<std::size_t>(request.most));
  return out;
}

}  // namespace

TEST_CASE("fit equals a plain brute force over every combination", "[fit][property]") {
  std::size_t candidates = 0;
  for (std::uint64_t seed = 1; seed <= 120; ++seed) {
    CAPTURE(seed);
    Random random(seed);
    const Swatch swatch = random_swatch(random);
    const FitRequest request = random_request(random);
    const std::vector<FitCandidate> got = fit(request, swatch);
    CHECK(got == brute_force(request, swatch));
    candidates += got.size();
  }
  CHECK(candidates > 1000);
}

TEST_CASE("where the error of the width drowns that of the height, the fewest rows come first", "[fit][property]") {
  // A width a million times the target: hundreds of heights round theirs have one error after rounding.
  const Swatch swatch({{"a", Counted::stitches, 0.1, 100, ""}, {"a", Counted::rows, 40, 100, ""}});
  FitRequest request;
  request.width_mm = 1;
  request.height_mm = 100'000;
  request.repeat = {{"s", "a", Grid(1, 1)}};
  request.repeats_least = 1000;
  request.repeats_most = 1001;
  for (const int most : {1, 2, 50, 3000}) {
    CAPTURE(most);
    request.most = most;
    const std::vector<FitCandidate> got = fit(request, swatch);
    CHECK(got == brute_force(request, swatch));
    CHECK(got.front().rows < 39'900);  // 40000 rows meet the height exactly, and rank no higher
  }
}

TEST_CASE("the panel of every candidate is built with its numbers and measures its figures", "[fit][property]") {
  std::size_t built = 0;
  for (std::uint64_t seed = 1; seed <= 100; ++seed) {
    CAPTURE(seed);
    Random random(seed);
    const Swatch swatch = random_swatch(random);
    FitRequest request = random_request(random);
    request.rows_step = random.between(1, 12);
    for (const FitCandidate& candidate : fit(request, swatch)) {
      if (candidate.rows > 300) continue;  // only to save time
      const Panel panel = fitted(request, candidate);
      CHECK(panel.grid().columns() == candidate.columns);
      CHECK(panel.grid().rows() == candidate.rows);
      const Size sized = size(panel, swatch);
      CHECK(sized.width_mm == candidate.width_mm);
      CHECK(sized.height_mm == candidate.height_mm);
      ++built;
    }
  }
  CHECK(built > 500);
}
