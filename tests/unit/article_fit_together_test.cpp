// Pieces that are sewn to each other: one row count, one way to tell what bars it.
#include <set>
#include <string>
#include <vector>

#include "article_fit/together.hpp"
#include "catch.hpp"
#include "latchwork/motif.hpp"

using namespace latchwork;

namespace {

Swatch swatch() {
  return Swatch({{"stockinette", Counted::stitches, 28, 100, ""},
                 {"stockinette", Counted::rows, 40, 100, ""},
                 {"rope 2/2 every 6", Counted::stitches, 36, 100, ""},
                 {"rope 2/2 every 6", Counted::rows, 42, 100, ""},
                 {"garter 1/1", Counted::stitches, 26, 100, ""},
                 {"garter 1/1", Counted::rows, 56, 100, ""}});
}

Panel panel() {
  const Strip edge{"edge", "stockinette", Grid(1, 1)};
  const std::vector<Strip> strips{edge, stockinette(4), rope(2, 2, 6, Lean::left), garter(1, 1, 6), edge};
  return join_strips("runner", 60, strips);
}

/// Three across: the panel in the middle has a seam on either side, so that its best row count is another.
ArticleRequest three_across() {
  ArticleRequest out;
  out.choices.measures = {{"width", 1170, 1170, ""}, {"height", 1575, 1575, ""}};
  out.choices.counts = {{"across", 3}, {"up", 1}};
  out.groups = {{1, 2, 1, 40}, {3, 3, 0, 10}};
  out.edge = 0;
  out.design.edge_least = 1;
  out.design.edge_most = 6;
  out.design.rows_step = 6;
  out.design.tolerance_percent = 3;
  out.design.seam_left = out.design.seam_right = 1;
  out.design.needles = 200;
  return out;
}

ArticleFit found_by(const ArticleRequest& request) {
  return fit_article(built_in_article("blanket of panels"), request, panel(), swatch());
}

std::set<int> row_counts(const ArticleFit& found) {
  std::set<int> out;
  for (const PieceFit& piece : found.pieces) out.insert(piece.fit.candidates.at(0).rows);
  return out;
}

}  // namespace

TEST_CASE("panels sewn side by side get one row count and the same repeats", "[article][fit]") {
  int unlike = 0;
  for (int width = 900; width <= 1400; width += 50) {
    CAPTURE(width);
    ArticleRequest wanted = three_across();
    wanted.choices.measures[0] = {"width", static_cast<double>(width), static_cast<double>(width), ""};
    const ArticleFit found = found_by(wanted);
    REQUIRE(found.pieces.size() == 3);
    CHECK(found.message.empty());
    CHECK(row_counts(found).size() == 1);
    const FitRequest design = panel_design(wanted, panel());
    std::set<int> apart;
    for (const PieceFit& piece : found.pieces) {
      CHECK(piece.fit.candidates.at(0).times == found.pieces[0].fit.candidates[0].times);
      CHECK(piece.fit.candidates.size() == 10);
      apart.insert(fit_piece(piece.target, design, swatch()).candidates.at(0).rows);
    }
    if (apart.size() > 1) ++unlike;
  }
  CHECK(unlike > 0);
}

TEST_CASE("pieces that fit by themselves and do not go together are told, and none is fitted", "[article][fit]") {
  ArticleRequest wanted = three_across();
  // No edge to make up for the seam: what fits the panels with one seam does not fit the one with two.
  wanted.design.edge_most = 1;
  wanted.groups = {{1, 2, 1, 40}};
  wanted.design.seam_left = wanted.design.seam_right = 6;
  wanted.design.tolerance_percent = 1.5;
  int told = 0;
  for (int width = 600; width <= 1400; width += 25) {
    wanted.choices.measures[0] = {"width", static_cast<double>(width), static_cast<double>(width), ""};
    const ArticleFit found = found_by(wanted);
    if (found.message.empty()) continue;
    ++told;
    CAPTURE(width);
    CHECK(found.message.find("'panel, left' (by itself ") != std::string::npos);
    CHECK(found.message.find("'panel, middle' (by itself ") != std::string::npos);
    CHECK(found.message.find("nothing goes together") != std::string::npos);
    for (const PieceFit& piece : found.pieces) CHECK(piece.fit.candidates.empty());
  }
  CHECK(told > 0);
}

TEST_CASE("what was not looked at is told", "[article][fit]") {
  const ArticleRequest wanted = three_across();
  ArticleFit apart = found_by(wanted);
  std::vector<FitRequest> requests;
  for (PieceFit& piece : apart.pieces) {
    requests.push_back(piece_request(piece.target, panel_design(wanted, panel())));
    piece.fit = fit(requests.back(), swatch());
  }
  std::vector<PieceFit> pieces = apart.pieces;
  const std::string few = choose_together(requests, pieces, swatch(), {}, 1);
  CHECK(few.find("only the first 1 of each were looked at") != std::string::npos);
  pieces = apart.pieces;
  CHECK(choose_together(requests, pieces, swatch()).empty());
  CHECK(pieces == found_by(wanted).pieces);
}

TEST_CASE("findings are of the candidate that is chosen", "[article][fit]") {
  const ArticleRequest wanted = three_across();
  const ArticleFit found = found_by(wanted);
  for (const PieceFit& piece : found.pieces) {
    FitRequest only = piece_request(piece.target, panel_design(wanted, panel()));
    const FitCandidate& best = piece.fit.candidates.at(0);
    for (std::size_t i = 0; i < best.times.size(); ++i) only.groups[i].least = only.groups[i].most = best.times[i];
    only.edge_least = only.edge_most = best.edge_columns;
    only.rows_extra = best.rows;
    only.rows_step = Grid::max_side;
    CHECK(fit(only, swatch()).findings == piece.fit.findings);
  }
}
