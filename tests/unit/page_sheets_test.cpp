#include <algorithm>
#include <cstdio>
#include <string>
#include <tuple>
#include <vector>

#include "catch.hpp"
#include "latchwork/brief.hpp"
#include "text.hpp"

using namespace latchwork;
using latchwork_test::holds;

namespace {

/// A sheet of a chart on the page.
struct Printed {
  int from = 0;
  int last = 0;
  double row_mm = 0;  ///< on paper
  bool across = false;
};

/// A4 is 210 mm x 297 mm (ISO 216); margins of 12 mm and a heading leave 186 x 250, or laid across 273 x 163.
std::vector<Printed> sheets_of(const std::string& page, const std::string& id, int rows) {
  std::vector<Printed> sheets;
  std::size_t at = page.find("id=\"" + id + "\"");
  REQUIRE(at != std::string::npos);
  while (sheets.empty() || sheets.back().last < rows) {
    at = page.find("<svg ", at);
    REQUIRE(at != std::string::npos);
    const std::size_t section = page.rfind("<section", at);
    Printed sheet{.from = 1, .last = rows, .across = page.compare(section, 28, "<section class=\"picture wide") == 0};
    double width = 0;
    double height = 0;
    REQUIRE(std::sscanf(page.c_str() + page.find("viewBox=", at), "viewBox=\"0 0 %lf %lf\"", &width, &height) == 2);
    sheet.row_mm = 16 * (sheet.across ? std::min(273 / width, 163 / height) : std::min(186 / width, 250 / height));
    const std::size_t title = page.find("<title>", at);
    const std::string words = page.substr(title, page.find("</title>", title) - title);
    if (holds(words, ", rows ")) {
      REQUIRE(std::sscanf(words.c_str() + words.find(", rows "), ", rows %d to %d", &sheet.from, &sheet.last) == 2);
    }
    CHECK(sheet.from == (sheets.empty() ? 1 : sheets.back().last + 1));
    sheets.push_back(sheet);
    ++at;
  }
  return sheets;
}

Brief sampler() {
  return read_brief(LATCHWORK_EXAMPLES_DIR "/briefs/sampler");
}

Brief with_panel(const Panel& panel) {
  Brief brief = sampler();
  brief.panel = panel;
  return brief;
}

}  // namespace

TEST_CASE("a chart that a page cannot hold comes in sheets that it can, both sides cut at the same rows",
          "[brief][chart]") {
  const Brief plain = sampler();
  const std::string texture = plain.swatch.textures().front();
  const auto [columns, rows] = GENERATE(table<int, int>({{11, 504}, {60, 336}, {80, 300}, {150, 300}, {190, 140}}));
  INFO(columns << " x " << rows);
  const Brief brief = with_panel(Panel("tall", Strip{"tall", texture, Grid(rows, columns)}));
  const std::string page = page_html(brief, run(brief));
  const auto back = sheets_of(page, "operator", rows);
  const auto front = sheets_of(page, "right-side", rows);
  REQUIRE(back.size() == front.size());
  CHECK(back.size() > 1);
  for (std::size_t i = 0; i < back.size(); ++i) {
    INFO("sheet " << i + 1 << ", row " << back[i].row_mm << " mm");
    CHECK(back[i].from == front[i].from);
    CHECK(back[i].from % 2 == 1);  // the carriage stands on one side at the foot of each
    CHECK(back[i].across == (columns > 80));
    // Lower than 2 mm only where the width wants it: cells and margins of this gauge are 2.1 rows wide, or less.
    CHECK(back[i].row_mm >= std::min(1.999, (back[i].across ? 273 : 186) / (columns * 2.1)));
  }
  // Not more sheets than it takes: half as many rows again would not have had their height.
  if (columns <= 80) CHECK(back.front().row_mm < 2 * 1.5);
  CHECK(holds(page, ", sheet " + std::to_string(back.size()) + " of " + std::to_string(back.size()) + "</h2>"));
}

TEST_CASE("sheets of many bands stay legible, whatever their names", "[brief][chart]") {
  const std::string texture = sampler().swatch.textures().front();
  std::vector<Band> bands;
  for (int i = 0; i < 300; ++i) {
    bands.push_back({.row = 1 + 2 * i,
                     .rows = 2,
                     .strips = {{.name = "a longer strip name " + std::to_string(i),
                                 .texture = texture,
                                 .column = 0,
                                 .columns = 12,
                                 .repeat_rows = 2}}});
  }
  const Brief brief = with_panel(Panel("bands", Grid(600, 12), bands));
  for (const Printed& sheet : sheets_of(page_html(brief, run(brief)), "operator", 600)) CHECK(sheet.row_mm > 2);
}
