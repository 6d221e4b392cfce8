// Which candidates of pieces that are sewn to each other are chosen together, written down from the words of
// article_fit.hpp over everything that fits each of them.
#include <algorithm>
#include <optional>
#include <set>
#include <string>
#include <utility>
#include <vector>

#include "catch.hpp"
#include "latchwork/article_fit.hpp"
#include "latchwork/motif.hpp"
#include "random.hpp"

namespace article_fit_together_test {

using namespace latchwork;
using latchwork_test::Random;

namespace {

Swatch random_swatch(Random& random) {
  std::vector<Measurement> measured;
  for (const char* texture : {"stockinette", "garter 1/1", "rope 1/1 every 4"}) {
    measured.push_back({texture, Counted::stitches, random.between(200, 300) / 10.0, 100, ""});
    measured.push_back({texture, Counted::rows, random.between(300, 420) / 10.0, 100, ""});
  }
  return Swatch(measured);
}

Panel small_panel() {
  const Strip edge{"edge", "stockinette", Grid(1, 1)};
  const std::vector<Strip> strips{edge, garter(1, 1, 2), rope(1, 1, 4, Lean::right), edge};
  return join_strips("front", 8, strips);
}

Extent of(int mm) {
  return {{}, static_cast<double>(mm), static_cast<double>(mm), {}};
}

EdgeUse edge(Random& random) {
  return random.one_in(2) ? EdgeUse::seamed : EdgeUse::free;
}

Article random_article(Random& random) {
  const int widths[] = {random.between(40, 70), random.between(40, 70)};
  const int lengths[] = {random.between(40, 90), random.between(40, 90)};
  Article out;
  out.name = "patchwork";
  for (int i = 0, pieces = random.between(2, 5); i < pieces; ++i) {
    ArticlePiece piece;
    piece.name = "patch " + std::to_string(i + 1);
    piece.width = of(widths[random.between(0, 1)]);
    piece.length = of(lengths[random.one_in(4) ? 1 : 0]);
    piece.left = edge(random);
    piece.right = edge(random);
    piece.lower = edge(random);
    piece.upper = edge(random);
    out.pieces.push_back(piece);
  }
  return out;
}

ArticleRequest random_request(Random& random) {
  ArticleRequest out;
  out.groups = {{1, 1, 0, random.between(1, 3)}, {2, 2, 1, random.between(2, 5)}};
  out.edge = 0;
  out.design.edge_least = 1;
  out.design.edge_most = random.between(1, 4);
  out.design.panels_most = random.between(1, 2);
  out.design.rows_step = random.between(1, 4);
  out.design.rows_extra = random.between(0, 3);
  out.design.tolerance_percent = random.between(2, 25);
  out.design.seam_left = out.design.seam_right = random.between(0, 2) / 2.0;
  out.design.seam_bottom = out.design.seam_top = random.between(0, 3);
  out.design.most = random.one_in(2) ? 1 : 5;
  return out;
}

/// Everything that fits a piece, ranked.
struct Fits {
  FitRequest request;
  std::vector<FitCandidate> all;
};

struct Chosen {
  std::vector<FitCandidate> each;
  double greatest = 0;
  double sum = 0;
};

Chosen chosen_of(std::vector<FitCandidate> each) {
  Chosen out;
  out.each = std::move(each);
  for (const FitCandidate& candidate : out.each) {
    out.greatest = std::max(out.greatest, candidate.error);
    out.sum += candidate.error;
  }
  return out;
}

/// "the panels and times with the least greatest error of all of them, then the least sum of their errors, then the
/// first in the ranking of the first piece"
std::optional<Chosen> of_one_width(const std::vector<const Fits*>& pieces, int rows) {
  std::optional<Chosen> best;
  for (const FitCandidate& first : pieces.front()->all) {  // in the ranking
    if (first.rows != rows) continue;
    std::vector<FitCandidate> each;
    for (const Fits* piece : pieces) {
      for (const FitCandidate& other : piece->all) {
        if (other.rows != rows || other.panels != first.panels || other.times != first.times) continue;
        each.push_back(other);
        break;
      }
    }
    if (each.size() < pieces.size()) continue;
    Chosen choice = chosen_of(std::move(each));
    const bool better =
        !best || choice.greatest < best->greatest || (choice.greatest == best->greatest && choice.sum < best->sum);
    if (better) best = std::move(choice);
  }
  return best;
}

/// For the pieces of one length: a candidate each, or nothing.
std::optional<std::vector<FitCandidate>> together(const std::vector<const Fits*>& pieces) {
  std::set<int> row_counts;
  for (const FitCandidate& candidate : pieces.front()->all) row_counts.insert(candidate.rows);
  std::optional<Chosen> best;
  for (const int rows : row_counts) {
    std::vector<FitCandidate> each(pieces.size());
    bool goes = true;
    for (std::size_t i = 0; i < pieces.size() && goes; ++i) {
      std::vector<const Fits*> alike;
      std::vector<std::size_t> at;
      for (std::size_t j = 0; j < pieces.size(); ++j) {
        if (pieces[j]->request.width_mm != pieces[i]->request.width_mm) continue;
        alike.push_back(pieces[j]);
        at.push_back(j);
      }
      const std::optional<Chosen> choice = of_one_width(alike, rows);
      goes = choice.has_value();
      for (std::size_t j = 0; goes && j < at.size(); ++j) each[at[j]] = choice->each[j];
    }
    if (!goes) continue;
    Chosen choice = chosen_of(std::move(each));
    const bool better =
        !best || choice.greatest < best->greatest || (choice.greatest == best->greatest && choice.sum < best->sum);
    if (better) best = std::move(choice);
  }
  if (!best) return std::nullopt;
  return best->each;
}

}  // namespace

TEST_CASE("pieces sewn to each other are chosen together as all their candidates say", "[article][fit][property]") {
  int unlike = 0;  // from what fits each by itself
  int together_not = 0;
  const Panel panel = small_panel();
  for (std::uint64_t seed = 1; seed <= 120; ++seed) {
    CAPTURE(seed);
    Random random(seed);
    const Swatch swatch = random_swatch(random);
    const Article article = random_article(random);
    const ArticleRequest request = random_request(random);
    const ArticleFit found = fit_article(article, request, panel, swatch);
    REQUIRE(found.pieces.size() == article.pieces.size());
    std::vector<Fits> kinds;
    std::vector<std::size_t> kind_of;
    for (const PieceFit& piece : found.pieces) {
      FitRequest own = piece_request(piece.target, panel_design(request, panel));
      own.most = FitRequest::max_candidates;
      const auto known =
          std::find_if(kinds.begin(), kinds.end(), [&](const Fits& kind) { return kind.request == own; });
      kind_of.push_back(static_cast<std::size_t>(known - kinds.begin()));
      if (known != kinds.end()) continue;
      std::vector<FitCandidate> all = fit(own, swatch).candidates;
      REQUIRE(all.size() < static_cast<std::size_t>(own.most));
      kinds.push_back({std::move(own), std::move(all)});
    }
    for (std::size_t i = 0; i < found.pieces.size(); ++i) {
      CAPTURE(i);
      const Fits& own = kinds[kind_of[i]];
      const std::vector<FitCandidate>& told = found.pieces[i].fit.candidates;
      if (own.all.empty()) {
        CHECK(told.empty());
        continue;
      }
      std::vector<const Fits*> of_length;
      std::size_t at = 0;
      for (const Fits& kind : kinds) {
        if (kind.all.empty() || kind.request.height_mm != own.request.height_mm) continue;
        if (&kind == &own) at = of_length.size();
        of_length.push_back(&kind);
      }
      const auto expected = together(of_length);
      if (!expected) {
        ++together_not;
        CHECK(told.empty());
        CHECK(found.message.find("nothing goes together") != std::string::npos);
        continue;
      }
      REQUIRE_FALSE(told.empty());
      CHECK(told.front() == (*expected)[at]);
      if (told.front() != own.all.front()) ++unlike;
      // The others follow as they are ranked, as many as were asked for.
      std::vector<FitCandidate> others = own.all;
      others.erase(std::find(others.begin(), others.end(), told.front()));
      others.resize(std::min(others.size(), static_cast<std::size_t>(request.design.most) - 1));
      CHECK(std::equal(told.begin() + 1, told.end(), others.begin(), others.end()));
    }
  }
  CHECK(unlike > 30);
  CHECK(together_not > 5);
}

}  // namespace article_fit_together_test
