#include <string>
#include <utility>
#include <vector>

#include "catch.hpp"
#include "latchwork/file.hpp"
#include "latchwork/motif.hpp"

namespace file_panel_test {

using namespace latchwork;

namespace {

std::string panel_file(const std::string& parts) {
  return R"({"format": "latchwork-panel", "version": 1, "name": "sampler", "parts": [)" + parts + "]}";
}

/// The strip that a motif object gives, read as a part of its own height.
Strip strip_of(const std::string& motif, int rows) {
  const Panel panel = read_panel(panel_file(R"({"rows": )" + std::to_string(rows) + R"(, "strips": [)" + motif + "]}"));
  const StripSpan& span = panel.bands()[0].strips[0];
  CHECK(span.repeat_rows == rows);
  return {span.name, span.texture, panel.grid()};
}

}  // namespace

TEST_CASE("a motif object gives the strip of the function it names", "[file][motif]") {
  const std::vector<std::pair<std::string, Strip>> cases = {
      {R"({"motif": "stockinette"})", stockinette()},
      {R"({"motif": "stockinette", "columns": 5})", stockinette(5)},
      {R"({"motif": "reverse", "columns": 2})", reverse(2)},
      {R"({"motif": "garter"})", garter()},
      {R"({"motif": "garter", "knit_rows": 2, "purl_rows": 3, "columns": 4})", garter(2, 3, 4)},
      {R"({"motif": "moss"})", moss()},
      {R"({"motif": "moss", "columns": 3})", moss(3)},
      {R"({"motif": "basket"})", basket()},
      {R"({"motif": "basket", "block_columns": 2, "block_rows": 5})", basket(2, 5)},
      {R"({"motif": "tuck_rib"})", tuck_rib()},
      {R"({"motif": "tuck_rib", "height": 3})", tuck_rib(3)},
      {R"({"motif": "ladder", "columns": 2})", ladder(2)},
      {R"({"motif": "rope", "front": 3, "back": 2, "interval": 6, "lean": "right"})", rope(3, 2, 6, Lean::right)},
      {R"({"motif": "rope", "front": 3, "back": 2, "interval": 7, "lean": "left"})", rope(3, 2, 7, Lean::left)},
      {R"({"motif": "plait", "stitches": 2, "interval": 4})", plait(2, 4)},
      {R"({"motif": "plait", "stitches": 2, "interval": 4, "lean": "left"})", plait(2, 4, Lean::left)},
      {R"({"motif": "wave", "stitches": 3, "interval": 6})", wave(3, 6)},
      {R"({"motif": "wave", "stitches": 3, "interval": 6, "lean": "left"})", wave(3, 6, Lean::left)},
      {R"({"motif": "wave", "stitches": 3, "interval": 6, "mirrored": true})", wave(3, 6).mirrored()},
      {R"({"motif": "rope", "front": 2, "back": 2, "interval": 4, "lean": "left", "repeat_across": 3})",
       rope(2, 2, 4, Lean::left).repeated_across(3)},
  };
  for (const auto& [text, strip] : cases) {
    INFO(text);
    CHECK(strip_of(text, strip.grid.rows()) == strip);
  }
}

TEST_CASE("a name and a texture of one's own stand in place of the motif's", "[file][motif]") {
  const Strip strip = strip_of(R"({"motif": "moss", "name": "border", "texture": "moss in cotton"})", 2);
  CHECK(strip == Strip{"border", "moss in cotton", moss().grid});
  const Strip turned = strip_of(
      R"({"motif": "rope", "front": 2, "back": 2, "interval": 4, "lean": "left", "mirrored": true, "name": "LC"})", 4);
  CHECK(turned.name == "LC");  // what was asked for, not its mirror image
  CHECK(turned.grid == rope(2, 2, 4, Lean::right).grid);
}

TEST_CASE("a chart among the parts is read as a grid file is", "[file][motif]") {
  const Strip strip = strip_of(R"({"motif": "chart", "texture": "lozenge", "rows": ["kpk", "ppp"],
    "crossings": [{"row": 1, "column": 0, "left": 1, "right": 2, "lean": "left"}]})",
                               2);
  Grid grid = Grid::from_text("kpk\nppp\n");
  grid.cross({.row = 1, .column = 0, .left = 1, .right = 2, .lean = Lean::left});
  CHECK(strip == Strip{"lozenge", "lozenge", grid});
}

TEST_CASE("parts stand on each other from the bottom, mirrored or not, as the C++ calls build them", "[file][panel]") {
  const Panel panel = read_panel(panel_file(R"(
    {"rows": 6, "strips": [{"motif": "garter", "columns": 11}]},
    {"rows": 16, "edge": {"motif": "stockinette"}, "left": [{"motif": "tuck_rib"}, {"motif": "stockinette"}],
     "centre": {"motif": "rope", "front": 3, "back": 2, "interval": 8, "lean": "right"}})"));
  const Panel below = join_strips("sampler", 6, std::vector{garter(1, 1, 11)});
  PanelParts parts;
  parts.name = "sampler";
  parts.rows = 16;
  parts.edge = stockinette();
  parts.left = {tuck_rib(), stockinette()};
  parts.centre = rope(3, 2, 8, Lean::right);
  CHECK(panel == build_panel(parts).above(below));
  CHECK(panel.grid().rows() == 22);
  CHECK(panel.bands().size() == 2);
  CHECK(panel.grid().at(2, 0) == Cell::purl);  // garter at the bottom
}

TEST_CASE("a part without a centre is mirrored about the axis it names", "[file][panel]") {
  const std::string left = R"({"rows": 4, "left": [{"motif": "stockinette", "columns": 3}])";
  CHECK(read_panel(panel_file(left + "}")).grid().columns() == 6);
  CHECK(read_panel(panel_file(left + R"(, "axis": "line"})")).grid().columns() == 6);
  CHECK(read_panel(panel_file(left + R"(, "axis": "stitch"})")).grid().columns() == 5);
}

TEST_CASE("a panel is written in full, cells, bands and axis", "[file][panel]") {
  PanelParts parts;
  parts.name = "strip of two";
  parts.rows = 2;
  parts.edge = stockinette();
  parts.left = {moss(2)};
  const Panel panel = build_panel(parts);
  const std::string expected = R"({
  "format": "latchwork-panel",
  "version": 1,
  "name": "strip of two",
  "axis_half_columns": 6,
  "rows": [
    "kpkkpk",
    "kkppkk"
  ],
  "bands": [
    {
      "row": 1,
      "rows": 2,
      "strips": [
        {"name": "stockinette", "texture": "stockinette", "column": 0, "columns": 1, "repeat_rows": 1},
        {"name": "moss", "texture": "moss", "column": 1, "columns": 2, "repeat_rows": 2},
        {"name": "moss", "texture": "moss", "column": 3, "columns": 2, "repeat_rows": 2},
        {"name": "stockinette", "texture": "stockinette", "column": 5, "columns": 1, "repeat_rows": 1}
      ]
    }
  ]
}
)";
  CHECK(write(panel) == expected);
  CHECK(read_panel(expected) == panel);
}

TEST_CASE("a panel of very many parts is put together once", "[file][panel]") {
  constexpr int parts = 20'000;
  const std::string part =
      R"({"rows": 2, "strips": [{"motif": "rope", "front": 1, "back": 1, "interval": 2, "lean": "left"}]})";
  std::string all = part;
  for (int i = 1; i < parts; ++i) all += "," + part;
  const Panel one = read_panel(panel_file(part));
  const Panel panel = read_panel(panel_file(all));
  CHECK(panel.grid() == one.grid().repeated_up(parts));
  CHECK(panel.bands().size() == parts);
  CHECK(panel.bands()[parts - 1].row == 2 * parts - 1);
}

TEST_CASE("a crossing that lacks a stitch in the part above is told there", "[file][panel][error]") {
  const std::string crossed = R"({"rows": 1, "strips": [{"motif": "chart", "texture": "rope", "rows": ["kk"],)"
                              R"( "crossings": [{"row": 1, "column": 0, "left": 1, "right": 1, "lean": "left"}]}]})";
  const std::string bare = R"({"rows": 1, "strips": [{"motif": "chart", "texture": "gap", "rows": [".k"]}]})";
  try {
    read_panel(panel_file(crossed + ",\n" + crossed + ",\n" + bare + ",\n" + bare));
    FAIL("not refused");
  } catch (const Error& error) {
    CHECK(error.code() == ErrorCode::crossing_over_none);
    CHECK(error.place().field == "parts[2]");
    CHECK(error.place().line == 3);
    CHECK(error.place().row == 3);
  }
}

}  // namespace file_panel_test
