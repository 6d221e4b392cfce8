#include "latchwork/article.hpp"

#include <cmath>
#include <cstdint>
#include <string>

#include "catch.hpp"
#include "random_article.hpp"

namespace article_test {

using namespace latchwork_test;

namespace {

constexpr std::uint64_t rounds = 300;

void check_range(double least, double greatest) {
  CHECK(std::isfinite(least));
  CHECK(least <= greatest);
  CHECK(greatest <= 1e5);
}

}  // namespace

TEST_CASE("what is written is read back equal: articles", "[file][article][property]") {
  for (std::uint64_t seed = 1; seed <= rounds; ++seed) {
    CAPTURE(seed);
    Random random(seed);
    const Article article = any_article(random);
    const std::string text = write(article);
    REQUIRE(read_article(text) == article);
    CHECK(write(read_article(text)) == text);
  }
}

TEST_CASE("what is written is read back equal: choices of an article", "[file][article][property]") {
  for (std::uint64_t seed = 1; seed <= rounds; ++seed) {
    CAPTURE(seed);
    Random random(seed);
    const ArticleRequest request = any_article_request(random);
    const std::string text = write(request);
    REQUIRE(read_article_request(text) == request);
    CHECK(write(read_article_request(text)) == text);
  }
}

TEST_CASE("any article comes to ranges that are ranges, or to a choice that does not fit it", "[article][property]") {
  int made = 0;
  int refused = 0;
  for (std::uint64_t seed = 1; seed <= rounds; ++seed) {
    CAPTURE(seed);
    Random random(seed);
    Article article = any_article(random);
    for (ArticlePiece& piece : article.pieces) {  // else hardly any would come out with a size
      if (random.one_in(8)) continue;
      piece.width = {{{"width", 1}}, 0, 0, piece.width.over};
      piece.length = {{{article.measures[1], 1}}, 0, 0, {}};
      piece.shape.clear();
      piece.times.clear();
      piece.count = 1;
    }
    for (Closure& closure : article.closures) {  // nor with a lap that its pieces have room for
      if (!random.one_in(4)) closure.overlap_least_mm = closure.overlap_greatest_mm = 0;
    }
    if (random.one_in(2)) article.seams.clear();
    try {
      const Targets out = targets(article, any_choices(article, random));
      ++made;
      for (const TargetPiece& piece : out.pieces) {
        check_range(piece.width_least_mm, piece.width_greatest_mm);
        check_range(piece.length_least_mm, piece.length_greatest_mm);
        CHECK(piece.width_least_mm >= 1);
        CHECK(piece.length_least_mm >= 1);
        CHECK(piece.count >= 1);
      }
      double least = 0;
      for (const TargetSeam& seam : out.seams) {
        check_range(seam.least_mm, seam.greatest_mm);
        least += seam.count * seam.least_mm;
      }
      CHECK(out.seam_least_mm == Approx(least));
    } catch (const Error& error) {
      ++refused;
      CHECK(error.code() == ErrorCode::bad_argument);
      CHECK(error.place().field.starts_with("choices."));
    }
  }
  CHECK(made > 40);
  CHECK(refused > 40);
}

}  // namespace article_test
