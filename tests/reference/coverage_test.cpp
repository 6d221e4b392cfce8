#include <filesystem>
#include <fstream>
#include <map>
#include <regex>
#include <set>
#include <sstream>
#include <string>

#include "catch.hpp"
#include "reference.hpp"

namespace coverage_test {

using latchwork_test::reference_values;

TEST_CASE("every check value is tested here by its id, or is of no use", "[reference]") {
  const std::map<std::string, std::string> not_used = {
      {"SY-03", "a count of groups with quarter turns; a chart is never turned by a quarter"}};
  const std::regex named(R"re(//.*|reference_source\([^)]*\)|reference_inputs?(<[^>]*>)?\("[^"]*")re");
  std::string tests;
  std::string compared;
  for (const auto& entry : std::filesystem::directory_iterator(std::string(LATCHWORK_TESTS_DIR) + "/reference")) {
    if (!entry.path().string().ends_with("_test.cpp") || entry.path().filename() == "coverage_test.cpp") continue;
    std::ostringstream text;
    text << std::ifstream(entry.path()).rdbuf();
    // What only names a value, or takes what it starts from, compares nothing with it.
    tests += text.str();
    compared += std::regex_replace(text.str(), named, "");
  }
  std::set<std::string> ids;
  for (const auto& value : reference_values()) {
    const std::string id = value.at("id");
    INFO(id);
    CHECK(ids.insert(id).second);
    CHECK_FALSE(value.at("source").get<std::string>().empty());
    CHECK_FALSE(value.at("topic").get<std::string>().empty());
    const bool law = value.at("expected") == true;  // it has no number
    const bool tested = (law ? tests : compared).find('"' + id + '"') != std::string::npos;
    CHECK(tested != (not_used.count(id) == 1));
  }
  for (const auto& [id, reason] : not_used) CHECK(ids.count(id) == 1);
}

}  // namespace coverage_test
