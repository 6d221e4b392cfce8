#include <filesystem>
#include <fstream>
#include <map>
#include <set>
#include <sstream>
#include <string>

#include "catch.hpp"
#include "reference.hpp"

using latchwork_test::reference_values;

TEST_CASE("every topic of the check values is tested here, or belongs to what latchwork does not do yet",
          "[reference]") {
  // Articles are not in the library; a chart is never turned by a quarter (SY-03).
  const std::set<std::string> not_yet = {"CYC body sizes", "cushion insert", "child cord limit"};
  std::string tests;
  for (const auto& entry : std::filesystem::directory_iterator(std::string(LATCHWORK_TESTS_DIR) + "/reference")) {
    if (!entry.path().string().ends_with("_test.cpp") || entry.path().filename() == "coverage_test.cpp") continue;
    std::ostringstream text;
    text << std::ifstream(entry.path()).rdbuf();
    tests += text.str();
  }
  std::map<std::string, bool> tested;
  std::set<std::string> ids;
  for (const auto& value : reference_values()) {
    const std::string id = value.at("id");
    INFO(id);
    CHECK(ids.insert(id).second);
    CHECK_FALSE(value.at("source").get<std::string>().empty());
    bool& topic = tested[value.at("topic").get<std::string>()];
    topic = topic || tests.find('"' + id + '"') != std::string::npos;
  }
  for (const auto& [topic, has_test] : tested) {
    INFO(topic);
    CHECK(has_test != (not_yet.count(topic) == 1));
  }
  for (const std::string& topic : not_yet) CHECK(tested.count(topic) == 1);
}
