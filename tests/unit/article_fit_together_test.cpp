// Pieces that are sewn to each other: one row count, one way to tell what bars it.
#include <set>
#include <string>
#include <vector>

#include "article_fit/together.hpp"
#include "catch.hpp"
#include "latchwork/motif.hpp"

namespace article_fit_together_test {

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

/// Two pieces alike, 214 x 100 mm.
Article front_and_back() {
  Article pair;
  pair.name = "pair";
  for (const char* name : {"front", "back"}) {
    ArticlePiece piece;
    piece.name = name;
    piece.width.least_mm = piece.width.greatest_mm = 214;
    piece.length.least_mm = piece.length.greatest_mm = 100;
    pair.pieces.push_back(piece);
  }
  return pair;
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
  std::vector<FitRequest> of_one = requests;
  for (std::size_t i = 0; i < pieces.size(); ++i) {
    of_one[i].most = 1;
    pieces[i].fit = fit(of_one[i], swatch());
  }
  const std::string few = choose_together(of_one, pieces, swatch(), {}, 1);
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

TEST_CASE("pieces go together by what fits each, where more would be too much work to look at", "[article][fit]") {
  // Sixty strips that repeat together only after 37 x 41 x 43 rows: 64 candidates' starts are too many, five's are not.
  std::vector<Strip> strips;
  for (int i = 0; i < 20; ++i) {
    for (const int repeat : {37, 41, 43}) strips.push_back({"a", "stockinette", Grid(repeat, 1)});
  }
  Article pair = front_and_back();
  pair.pieces[0].left = EdgeUse::seamed;
  ArticleRequest wanted;
  wanted.groups = {{0, 59, 1, 100}};
  wanted.design.seam_left = 1;
  wanted.design.vary_start = true;
  wanted.design.most = 5;
  const ArticleFit found = fit_article(pair, wanted, join_strips("p", 60, strips), swatch());
  REQUIRE(found.pieces.size() == 2);
  for (const PieceFit& piece : found.pieces) CHECK_FALSE(piece.fit.candidates.empty());
  CHECK(row_counts(found).size() == 1);
}

TEST_CASE("a fit of an article whose pieces are alike tells its share to the end", "[article][fit]") {
  const Article pair = front_and_back();
  ArticleRequest wanted;
  wanted.groups = {{0, 0, 1, 100}};
  double last = 0;
  FitOptions options;
  options.progress = [&](const Progress& progress) {
    CHECK(progress.share >= last);
    last = progress.share;
  };
  fit_article(pair, wanted, Panel("p", stockinette(4)), swatch(), options);
  CHECK(last == 1);
}

TEST_CASE("a panel that ends within a repeat is no design, for where it repeats is not in it",
          "[article][fit][error]") {
  ArticleRequest wanted;
  wanted.groups = {{0, 0, 1, 9}};
  const Panel cut = join_strips("p", 5, std::vector<Strip>{rope(2, 2, 8, Lean::right)});
  CHECK_THROWS_MATCHES(panel_design(wanted, cut), Error,
                       latchwork_test::refused_field(ErrorCode::bad_argument, "groups[0]"));
}

}  // namespace article_fit_together_test
