#include <map>
#include <set>
#include <string_view>

#include "catch.hpp"
#include "latchwork/article.hpp"
#include "latchwork/article_fit.hpp"
#include "latchwork/file.hpp"
#include "latchwork/gauge.hpp"
#include "latchwork/timings.hpp"
#include "refused_files.hpp"

namespace file_refused_test {

using namespace latchwork;

namespace {

using Reader = void (*)(std::string_view);
const std::map<std::string, Reader> readers = {
    {"grid", [](std::string_view text) { read_grid(text); }},
    {"strip", [](std::string_view text) { read_strip(text); }},
    {"panel", [](std::string_view text) { read_panel(text); }},
    {"machine", [](std::string_view text) { read_machine(text); }},
    {"article", [](std::string_view text) { read_article(text); }},
    {"article-choices", [](std::string_view text) { read_article_request(text); }},
    {"yarn", [](std::string_view text) { read_yarn_request(text); }},
    {"plan", [](std::string_view text) { read_plan(text); }},
    {"certificate", [](std::string_view text) { read_certificate(text); }},
    {"swatch", [](std::string_view text) { read_swatch(text); }},
    {"timings", [](std::string_view text) { read_timings(text); }},
};

}  // namespace

TEST_CASE("each spoiled file is refused for its reason and at its place", "[file][error]") {
  const auto files = latchwork_test::refused_files();
  std::set<std::string> kinds;
  for (const auto& file : files) {
    INFO(file.kind << ": " << file.reason << "\n" << file.text);
    kinds.insert(file.kind);
    try {
      readers.at(file.kind)(file.text);
      FAIL_CHECK("was read");
    } catch (const Error& error) {
      INFO(error.what());
      CHECK(error_name(error.code()) == file.code);
      CHECK(error.place().line == file.place.line);
      CHECK(error.place().field == file.place.field);
      CHECK(error.place().row == file.place.row);
      CHECK(error.place().column == file.place.column);
      CHECK(std::string_view(error.what()).starts_with("line "));
      const std::string meant = "; perhaps \"" + file.near + "\" was meant";
      if (!file.near.empty()) CHECK(std::string_view(error.what()).find(meant) != std::string_view::npos);
    }
  }
  CHECK(kinds.size() == readers.size());
}

TEST_CASE("a file of 100 MB is refused by every reader before it is looked at", "[file][error]") {
  const std::string text(100'000'000, ' ');
  for (const auto& [kind, read] : readers) {
    INFO(kind);
    CHECK_THROWS_MATCHES(read(text), Error, latchwork_test::refused_field(ErrorCode::too_large, "", 1));
  }
}

}  // namespace file_refused_test
