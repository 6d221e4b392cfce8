// A name that is written wrong is told by itself: never as another one that is then missing.
#include <algorithm>
#include <fstream>
#include <iterator>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "catch.hpp"
#include "latchwork/article.hpp"
#include "latchwork/article_fit.hpp"
#include "latchwork/file.hpp"
#include "latchwork/gauge.hpp"
#include "latchwork/timings.hpp"

namespace file_misspelt_test {

using namespace latchwork;

namespace {

using Reader = void (*)(std::string_view);

std::string text_of(const std::string& path) {
  std::ifstream in(path, std::ios::binary);
  return {std::istreambuf_iterator<char>(in), {}};
}

std::string golden(const std::string& name) {
  return text_of(std::string(LATCHWORK_TESTS_DIR) + "/golden/file/" + name);
}

std::string choices() {
  ArticleRequest request;
  request.article = "scarf";
  request.choices.measures = {{"width", 200, 300, "20-30 cm", "width"}};
  request.choices.counts = {{"panels", 2}};
  request.groups = {{1, 2, 0, 3, -1}};
  request.made = {"scarf"};
  request.design.tolerance_percent = 3;
  request.design.state = ClothState::washed;
  request.design.substitutes = {{"edge", "stockinette"}};
  return write(request);
}

/// A name and where it stands.
struct Written {
  std::size_t at = 0;
  std::string name;
};

/// Every key of a JSON text whose texts hold no quote before a colon.
std::vector<Written> keys_of(const std::string& text) {
  std::vector<Written> keys;
  for (std::size_t end = text.find("\":"); end != std::string::npos; end = text.find("\":", end + 1)) {
    const std::size_t at = text.rfind('"', end - 1) + 1;
    keys.push_back({at, text.substr(at, end - at)});
  }
  return keys;
}

std::vector<Written> columns_of(const std::string& text) {
  std::vector<Written> columns;
  const std::size_t end = text.find('\n');
  for (std::size_t at = 0; at < end;) {
    const std::size_t next = std::min(text.find(',', at), end);
    columns.push_back({at, text.substr(at, next - at)});
    at = next + 1;
  }
  return columns;
}

/// One letter wrong: left out, doubled, swapped with the next.
std::vector<std::string> misspelt(const std::string& name) {
  const std::size_t middle = name.size() / 2;
  std::string out = name;
  std::string twice = name;
  std::string swapped = name;
  out.erase(middle, 1);
  twice.insert(middle, 1, name[middle]);
  std::swap(swapped[name.size() - 2], swapped[name.size() - 1]);
  std::vector<std::string> all = {out, twice};
  if (swapped != name) all.push_back(swapped);
  return all;
}

void each_is_told(const std::string& text, const std::vector<Written>& names, Reader read) {
  REQUIRE_NOTHROW(read(text));
  for (const auto& [at, name] : names) {
    for (const std::string& wrong : misspelt(name)) {
      const std::string spoiled = text.substr(0, at) + wrong + text.substr(at + name.size());
      INFO(name << " written " << wrong << ", byte " << at);
      try {
        read(spoiled);
        FAIL_CHECK("was read");
      } catch (const Error& error) {
        INFO(error.what());
        const std::string& field = error.place().field;
        CHECK(error.code() == ErrorCode::unknown_field);
        CHECK((field == wrong || field.ends_with("." + wrong)));
        CHECK(error.place().line == 1 + std::count(text.begin(), text.begin() + static_cast<std::ptrdiff_t>(at), '\n'));
        // Of two letters half is wrong, which is not near.
        const bool told =
            std::string_view(error.what()).find("; perhaps \"" + name + "\" was meant") != std::string::npos;
        if (name.size() > 2) CHECK(told);
      }
    }
  }
}

std::string message_of(Reader read, std::string_view text) {
  return latchwork_test::message_of([&] { read(text); });
}

const Reader grid = [](std::string_view text) { read_grid(text); };
const Reader panel = [](std::string_view text) { read_panel(text); };
const Reader swatch = [](std::string_view text) { read_swatch(text); };

}  // namespace

TEST_CASE("each field of each kind of file is told by its own name when a letter is wrong", "[file][error]") {
  const std::pair<std::string, Reader> files[] = {
      {golden("grid.json"), grid},
      {golden("strip.json"), [](std::string_view text) { read_strip(text); }},
      {golden("panel.json"), panel},
      {golden("panel_parts.json"), panel},
      {golden("machine.json"), [](std::string_view text) { read_machine(text); }},
      {golden("plan.json"), [](std::string_view text) { read_plan(text); }},
      {golden("certificate.json"), [](std::string_view text) { read_certificate(text); }},
      {golden("yarn.json"), [](std::string_view text) { read_yarn_request(text); }},
      {golden("article.json"), [](std::string_view text) { read_article(text); }},
      {choices(), [](std::string_view text) { read_article_request(text); }},
  };
  for (const auto& [text, read] : files) {
    INFO(text.substr(0, 40));
    const std::vector<Written> keys = keys_of(text);
    CHECK(keys.size() > 10);
    each_is_told(text, keys, read);
  }
}

TEST_CASE("each parameter of each motif is told by its own name when a letter is wrong", "[file][panel][error]") {
  const char* motif =
      GENERATE(R"({"motif": "stockinette", "columns": 2})", R"({"motif": "reverse", "columns": 2, "repeat_across": 2})",
               R"({"motif": "garter", "knit_rows": 2, "purl_rows": 2, "columns": 2, "name": "welt"})",
               R"({"motif": "moss", "columns": 2, "texture": "seed"})",
               R"({"motif": "basket", "block_columns": 2, "block_rows": 3})", R"({"motif": "tuck_rib", "height": 2})",
               R"({"motif": "ladder", "columns": 2})",
               R"({"motif": "rope", "front": 2, "back": 1, "interval": 4, "lean": "left", "mirrored": true})",
               R"({"motif": "plait", "stitches": 2, "interval": 4, "lean": "left"})",
               R"({"motif": "wave", "stitches": 2, "interval": 4, "lean": "left"})",
               R"({"motif": "chart", "texture": "own", "rows": ["kk"], "crossings": []})");
  const std::string text = std::string(R"({"format": "latchwork-panel", "version": 1, "name": "p",
    "parts": [{"rows": 8, "strips": [)") +
                           motif + R"(]}]})";
  each_is_told(text, keys_of(text), panel);
}

TEST_CASE("each column of a table is told by its own name when a letter is wrong", "[file][gauge][timings][error]") {
  const std::string measured = "texture,counted,count,length,unit,place,swatch,state\nmoss,rows,30,100,mm,,,\n";
  each_is_told(measured, columns_of(measured), swatch);
  const std::string timed = write(read_timings("stops,time,unit\n1,55,s\n"));
  each_is_told(timed, columns_of(timed), [](std::string_view text) { read_timings(text); });
}

TEST_CASE("what a name was meant for is told only where it is near and not there already", "[file][error]") {
  const auto of = [](const std::string& fields) {
    return message_of(grid, R"({"format": "latchwork-grid", "version": 1, )" + fields + "}");
  };
  CHECK(of(R"("Rows": ["k"])") == R"(line 1, Rows: there is no such field here; perhaps "rows" was meant)");
  CHECK(of(R"("row": ["k"])") == R"(line 1, row: there is no such field here; perhaps "rows" was meant)");
  CHECK(of(R"("wales": ["k"])") == "line 1, wales: there is no such field here");
  CHECK(of(R"("rows": ["k"], "row": 1)") == "line 1, row: there is no such field here");
  CHECK(of(R"("": 1)") == "line 1: there is no such field here");
  CHECK(message_of(swatch, "texture,counted,count,length,units\n") ==
        "line 1, field units: no such column; perhaps \"unit\" was meant; the columns are texture, counted, count, "
        "length, unit, place, swatch, state");
  CHECK(message_of(swatch, "texture,counted,count,length,unit,\n") ==
        "line 1, field column 6: the header has no name for it");
  CHECK(message_of(swatch, "texture,counted,count,length,counts\n").find("perhaps") == std::string::npos);
}

}  // namespace file_misspelt_test
