#include <string>
#include <vector>

#include "catch.hpp"
#include "latchwork/finding.hpp"
#include "latchwork/motif.hpp"
#include "reference.hpp"

namespace finding_test {

using namespace latchwork;
using latchwork_test::reference;
using latchwork_test::reference_inputs;
using latchwork_test::reference_source;

TEST_CASE("CB-23: a cable crossed sooner than it has stitches is found, and the rule's own interval is not",
          "[reference][finding]") {
  // Machine knitting cables: single bed 1, alessandrina.com, December 2014. Published; other printed intervals are
  // longer, none shorter.
  INFO(reference_source("CB-23"));
  const nlohmann::json& cables = reference_inputs("CB-23").at("cable");
  const nlohmann::json& expected = reference("CB-23").at("expected");
  for (std::size_t i = 0; i < cables.size(); ++i) {
    const int group = cables[i].get<std::string>()[0] - '0';
    const int rows = expected[i].get<int>();
    const Machine machine;
    const auto short_intervals = [&](int interval) {
      std::vector<Finding> out;
      for (const Finding& finding : findings(rope(group, group, interval, Lean::right).grid.repeated_up(3), machine)) {
        if (finding.code == FindingCode::short_interval) out.push_back(finding);
      }
      return out;
    };
    CHECK(short_intervals(rows).empty());
    const std::vector<Finding> found = short_intervals(rows - 1);
    REQUIRE_FALSE(found.empty());
    CHECK(found[0].value == rows - 1);
    CHECK(found[0].limit == rows);
  }
}

}  // namespace finding_test
