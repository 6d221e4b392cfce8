#include "latchwork/article.hpp"

#include <string>

#include "catch.hpp"
#include "latchwork/quantity.hpp"
#include "reference.hpp"

// Sizes, rules and cautions of the articles that come with the library.

using namespace latchwork;
using latchwork_test::meets_reference;
using latchwork_test::reference;
using latchwork_test::reference_source;

namespace {

const SizeList& list_of(const Article& article, const std::string& name) {
  for (const SizeList& list : article.lists) {
    if (list.name == name) return list;
  }
  throw std::runtime_error("no list " + name);
}

}  // namespace

TEST_CASE("Craft Yarn Council's body sizes", "[reference][article]") {
  const Article garment = built_in_article("straight garment pieces");
  INFO(reference_source("CY-10"));
  const SizeList& baby = list_of(garment, "CYC baby");
  CHECK(baby.mark == Mark::from_memory);
  const auto& cm = reference("CY-10").at("expected");
  REQUIRE(baby.sizes.size() == cm.size());
  for (std::size_t i = 0; i < cm.size(); ++i) {
    CHECK(meets_reference("CY-10", baby.sizes[i].measures.at(0).least_mm / 10, cm[i].get<double>()));
  }
  INFO(reference_source("CY-11"));
  const SizeList& woman = list_of(garment, "CYC woman");
  const auto& upper = reference("CY-11").at("expected");
  REQUIRE(woman.sizes.size() == upper.size());
  for (std::size_t i = 0; i < upper.size(); ++i) {
    CHECK(meets_reference("CY-11", woman.sizes[i].measures.at(0).greatest_mm / 10, upper[i].get<double>()));
  }
}

TEST_CASE("inserts 2 in larger than the cover", "[reference][article]") {
  INFO(reference_source("SZ-13"));
  const Article cushion = built_in_article("cushion cover");
  ArticleChoices choices;
  choices.rule = "insert 2 in larger";
  choices.closure = "seam";
  const auto& covers = reference("SZ-13").at("inputs").at("cover_in");
  for (std::size_t i = 0; i < covers.size(); ++i) {
    const double mm = length_of(covers[i].get<double>(), LengthUnit::inch).mm;
    choices.measures = {{"width", mm, mm, ""}, {"height", mm, mm, ""}};
    const double insert = targets(cushion, choices).filling.at(0).least_mm;
    CHECK(insert == latchwork_test::Approx(25.4 * reference("SZ-13").at("expected")[i].get<double>()).epsilon(1e-12));
  }
}

TEST_CASE("cords on children's clothes: the stricter of 3 in and 75 mm", "[reference][article]") {
  INFO(reference_source("SF-01"));
  CHECK(meets_reference("SF-01", length_of(3, LengthUnit::inch).mm));
  bool told = false;
  for (const Caution& caution : built_in_article("straight garment pieces").cautions) {
    told = told || caution.text.find("at most 75 mm") != std::string::npos;
  }
  CHECK(told);
}
