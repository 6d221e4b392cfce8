// The panels that a shaped piece is knitted of.
#include <algorithm>
#include <cmath>
#include <limits>
#include <string>
#include <utility>
#include <vector>

#include "brief_folder.hpp"
#include "catch.hpp"
#include "latchwork/article_fit.hpp"
#include "latchwork/brief.hpp"
#include "latchwork/motif.hpp"
#include "latchwork/shaping.hpp"
#include "latchwork/size.hpp"
#include "text.hpp"

namespace fitted_piece_test {

using namespace latchwork;
using latchwork_test::Approx;
using latchwork_test::example;
using latchwork_test::Folder;
using latchwork_test::holds;
using latchwork_test::put;
using latchwork_test::refused;
using latchwork_test::refused_field;

namespace {

// A stitch of stockinette is 4 mm wide and 2.5 mm high, one of the rib 8 mm and 5 mm.
Swatch swatch() {
  return Swatch({{"stockinette", Counted::stitches, 25, 100, ""},
                 {"stockinette", Counted::rows, 40, 100, ""},
                 {"rib", Counted::stitches, 25, 200, ""},
                 {"rib", Counted::rows, 40, 200, ""}});
}

TargetPiece piece(double width, double length, std::vector<TargetPoint> shape) {
  TargetPiece out;
  out.name = "sleeve";
  out.width_least_mm = out.width_greatest_mm = width;
  out.length_least_mm = out.length_greatest_mm = length;
  out.shape = std::move(shape);
  return out;
}
TargetPoint at(double height, double width) {
  return {height, height, width, width};
}

FitRequest design(std::vector<Strip> strips, int panels = 1) {
  FitRequest out;
  out.groups = {FitGroup{std::move(strips), 1, 1}};
  out.edge = Strip{"edge", "stockinette", Grid(1, 1)};
  out.edge_least = 1;
  out.edge_most = 60;
  out.panels_least = out.panels_most = panels;
  return out;
}

FitCandidate candidate(const FitRequest& of, int edge_columns, int rows) {
  FitCandidate out;
  out.panels = of.panels_most;
  out.times = {1};
  out.edge_columns = edge_columns;
  out.columns = 2 * edge_columns;
  for (const Strip& strip : of.groups[0].strips) out.columns += strip.grid.columns();
  out.rows = rows;
  return out;
}

double width_mm(const Grid& grid, int row, const std::vector<double>& columns_mm) {
  double out = 0;
  for (int column = 0; column < grid.columns(); ++column) {
    if (grid.at(row, column) != Cell::none) out += columns_mm[static_cast<std::size_t>(column)];
  }
  return out;
}

}  // namespace

TEST_CASE("a shape is cut at the heights that the rows have in it", "[article][shaping][size]") {
  // Rib at both sides pulls the rows up as long as it is there: DOMAIN's mean height, weighted by widths.
  const FitRequest wanted = design({{"rib", "rib", Grid(1, 10)}, stockinette(20), {"rib", "rib", Grid(1, 10)}});
  FitCandidate made = candidate(wanted, 1, 120);
  const TargetPiece sleeve = piece(248, 340, {at(120, 248), at(340, 60)});
  const Panel panel = fitted_piece(sleeve, wanted, made, swatch());
  const Grid& grid = panel.grid();
  REQUIRE(grid.rows() == 120);
  std::vector<double> columns_mm(static_cast<std::size_t>(grid.columns()), 4);
  std::fill_n(columns_mm.begin() + 1, 10, 8.0);
  std::fill_n(columns_mm.end() - 11, 10, 8.0);
  double top = 0;
  std::vector<double> middles;
  for (int row = 1; row <= grid.rows(); ++row) {
    double width = 0;
    double weighted = 0;
    for (int column = 0; column < grid.columns(); ++column) {
      if (grid.at(row, column) == Cell::none) continue;
      const double mm = columns_mm[static_cast<std::size_t>(column)];
      width += mm;
      weighted += mm * (mm == 4 ? 2.5 : 5);
    }
    middles.push_back(top + weighted / width / 2);
    top += weighted / width;
  }
  const double straight = 120 * (2 * 80 * 5 + 88 * 2.5) / 248;
  CHECK(top < straight - 50);  // so that heights of the straight panel would not do
  CHECK(size(panel, swatch()).height_mm == Approx(top));
  for (int row = 1; row <= grid.rows(); ++row) {
    const double middle = middles[static_cast<std::size_t>(row) - 1];
    const double asked = middle <= 120 ? 248 : 248 - (middle - 120) / (top - 120) * (248 - 60);
    INFO("row " << row);
    // The point at the piece's length is at the panel's last row. Half a stitch at each side, of 8 mm at most.
    CHECK(std::abs(width_mm(grid, row, columns_mm) - asked) <= 8 + 1e-6);
  }
}

TEST_CASE("a straight piece is the fitted panel itself", "[article][shaping]") {
  const FitRequest wanted = design({rope(2, 2, 4, Lean::right)});
  const FitCandidate made = candidate(wanted, 4, 20);
  const TargetPiece straight = piece(48, 50, {});
  CHECK(fitted_piece(straight, wanted, made, Swatch()) == fitted(piece_request(straight, wanted), made));
}

TEST_CASE("of a piece sewn of two panels each has the piece's edge at its own side", "[article][shaping]") {
  FitRequest wanted = design({stockinette(10)}, 2);
  wanted.seam_left = wanted.seam_right = 1;
  const FitCandidate made = candidate(wanted, 10, 80);  // 30 columns each, 28 between the seams
  TargetPiece body = piece(224, 200, {at(200, 120)});
  body.left = body.right = EdgeUse::seamed;
  const Panel left = fitted_piece(body, wanted, made, swatch(), 0);
  const Panel right = fitted_piece(body, wanted, made, swatch(), 1);
  const std::vector<RowSpan> rows = outline_of(left.grid()).rows;
  CHECK(rows.front().first == 0);
  // 224 mm to 120 mm: 13 stitches at each side, half of one less in the middle of the last row.
  CHECK(rows.back().first == 13);
  CHECK(std::ranges::all_of(rows, [](const RowSpan& row) { return row.last == 29; }));
  CHECK(outline_of(right.grid()) == outline_of(left.grid().mirrored()));
  CHECK_THROWS_MATCHES(fitted_piece(body, wanted, made, swatch(), 2), Error,
                       refused_field(ErrorCode::bad_argument, "panel"));
}

TEST_CASE("between the outer panels of a piece the others stay whole", "[article][shaping]") {
  const FitRequest wanted = design({stockinette(10)}, 3);
  const FitCandidate made = candidate(wanted, 10, 80);
  const TargetPiece body = piece(3 * 30 * 4 - 4 * 4, 200, {at(200, 240)});
  const Panel middle = fitted_piece(body, wanted, made, swatch(), 1);
  CHECK(middle == fitted(piece_request(body, wanted), made, 1));
  CHECK(outline_of(fitted_piece(body, wanted, made, swatch(), 0).grid()).rows.back().first > 0);
}

TEST_CASE("an outer panel that is narrower than what its edge is to lose is refused, not left a stitch wide",
          "[article][shaping][error]") {
  FitRequest wanted = design({stockinette(10)}, 3);
  wanted.seam_left = wanted.seam_right = 1;
  const FitCandidate made = candidate(wanted, 10, 80);  // 28 columns between the seams, 112 mm
  TargetPiece cape = piece(336, 200, {at(200, 150)});
  cape.left = cape.right = EdgeUse::seamed;
  CHECK(outline_of(fitted_piece(cape, wanted, made, swatch(), 0).grid()).rows.back().first > 20);
  for (const double top : {112.0, 60.0}) {
    cape.shape = {at(200, top)};
    for (const int outer : {0, 2}) {
      try {
        fitted_piece(cape, wanted, made, swatch(), outer);
        FAIL("it was cut to " << top);
      } catch (const Error& error) {
        CHECK(error.code() == ErrorCode::bad_argument);
        CHECK(error.place().field == "outline");
        CHECK(error.place().row > 0);
      }
    }
  }
}

TEST_CASE("a candidate that fits by its tolerance is cut to the piece's shape, too", "[article][shaping]") {
  TargetPiece cape = piece(200, 100, {at(100, 400)});
  FitRequest wanted = design({stockinette(10)});
  wanted.edge_most = 40;
  wanted.groups[0].most = 1;
  wanted.rows_step = 8;
  wanted.tolerance_percent = 10;
  int narrower = 0;
  for (const FitCandidate& each : fit_piece(cape, wanted, swatch()).candidates) {
    const Panel cut = fitted_piece(cape, wanted, each, swatch());
    CHECK(cut.grid().columns() == each.columns);
    narrower += each.width_error_mm < -5 ? 1 : 0;
  }
  CHECK(narrower > 0);
}

TEST_CASE("a piece whose edge cuts a crossing is refused, or knitted plain there", "[article][shaping][error]") {
  FitRequest wanted = design({rope(2, 2, 4, Lean::right)});
  wanted.substitutes = {{"rope 2/2 every 4", "stockinette"}};
  const FitCandidate made = candidate(wanted, 2, 40);
  const TargetPiece tip = piece(32, 100, {at(100, 8)});
  Place cut;
  cut.row = 34;
  cut.column = 2;
  cut.field = "outline";
  CHECK_THROWS_MATCHES(fitted_piece(tip, wanted, made, swatch()), Error, refused(ErrorCode::crossing_cut, cut));
  const Panel plain = fitted_piece(tip, wanted, made, swatch(), 0, 1, {.edge_stitches = 1, .cut = CutWork::knit});
  CHECK(plain.grid().crossings().size() < fitted(piece_request(tip, wanted), made).grid().crossings().size());
  // By the design's substitutes: without them there is no measure.
  wanted.substitutes.clear();
  CHECK_THROWS_MATCHES(fitted_piece(tip, wanted, made, swatch()), Error,
                       refused_field(ErrorCode::no_gauge, "rope 2/2 every 4"));
}

TEST_CASE("a brief's shaped piece is planned, knitted and written in its shape", "[brief][article][shaping]") {
  const Brief brief = read_brief(example("lantern-sleeve").string());
  const Job job = run(brief);
  const ArticleJob& article = job.article.value();
  REQUIRE(article.works.size() == 1);
  CHECK(article.works[0].fits);
  CHECK(article.works[0].panels == 2);
  CHECK(article.works[0].verification.verified);
  REQUIRE(article.panels.size() == 1);
  const Brief own = fitted_brief(brief, job, 0);
  const Size made =
      size(own.panel, brief.swatch,
           {.state = {}, .substitutes = {}, .seam_left = 1, .seam_right = 1, .seam_bottom = 0, .seam_top = 1});
  CHECK(std::abs(made.cast_on.width_mm - 200) <= 4);
  CHECK(std::abs(made.width_mm - 320) <= 4);
  CHECK(verify(own.panel.grid(), article.works[0].plan).verified);
  CHECK(run(own).plan == article.works[0].plan);
  const Folder folder("shaped-brief");
  write_brief(own, folder.path.string());
  CHECK(read_brief(folder.path.string()) == own);
  CHECK(holds(summary(brief, job), "; then cut to its shape: "));
}

TEST_CASE("fits whose shape would cut a crossing are passed over, and where each does none is made",
          "[brief][article][shaping]") {
  const Folder folder("cut-sleeve");
  std::filesystem::copy(example("lantern-sleeve"), folder.path, std::filesystem::copy_options::recursive);
  const auto shape = [&](int top) {
    put(folder.path / "sleeve.json",
        R"({"format": "latchwork-article", "version": 1, "name": "tip", "pieces": [{"name": "tip",
            "width": {"least_mm": 196, "greatest_mm": 204}, "length": {"least_mm": 300, "greatest_mm": 308},
            "shape": [{"height": {"least_mm": 300, "greatest_mm": 308}, "width": {"least_mm": )" +
            std::to_string(top) + R"(, "greatest_mm": )" + std::to_string(top + 4) + "}}]}]}");
  };
  shape(2);
  const Brief tip = read_brief(folder.path.string());
  const Job none = run(tip);
  REQUIRE_FALSE(none.article.value().fit.pieces[0].fit.candidates.empty());
  CHECK_FALSE(none.article->works[0].fits);
  CHECK(none.article->panels.empty());
  CHECK(none.article->times.total_ms == 0);
  CHECK(std::ranges::any_of(none.article->notes, [](const std::string& note) { return holds(note, "'tip'"); }));
  CHECK(holds(summary(tip, none), "; its shape cannot be cut: "));
  shape(60);
  const Brief wide = read_brief(folder.path.string());
  CHECK(run(wide).article->works[0].fits);
}

TEST_CASE("a candidate whose error is no number is refused by that field", "[article][error]") {
  const FitRequest wanted = design({stockinette(10)});
  FitCandidate made = candidate(wanted, 10, 80);
  made.width_error_mm = std::numeric_limits<double>::quiet_NaN();
  CHECK_THROWS_MATCHES(fitted_piece(piece(120, 200, {at(200, 80)}), wanted, made, swatch()), Error,
                       refused_field(ErrorCode::bad_argument, "width_error_mm"));
}

}  // namespace fitted_piece_test
