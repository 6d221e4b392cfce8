// Looks inside: a check that may hold less than it does as a rule (src/certificate/check.hpp).
#include <algorithm>
#include <cstddef>
#include <string>
#include <vector>

#include "catch.hpp"
#include "certificate/check.hpp"
#include "instances.hpp"
#include "latchwork/plan.hpp"

namespace certificate_room_test {

using namespace latchwork;
using namespace latchwork_test;

TEST_CASE("a certificate that keeps more branches than a check may hold is refused at the branch",
          "[certificate][error]") {
  const Instance in = instance_of("co-prime periods", 1);
  Certificate certificate = certify(in.grid, in.machine, in.effort, plan(in.grid, in.machine, in.effort).total_ms);
  // Every branch kept, from the cast-on up: twice as many a row.
  certificate.branches.clear();
  std::vector<int> below = {-1};
  for (int row = 0; row < 10; ++row) {
    std::vector<int> kept;
    for (const int branch : below) {
      for (const bool stop : {true, false}) {
        kept.push_back(static_cast<int>(certificate.branches.size()));
        certificate.branches.push_back({row, branch, stop, BranchEnd::kept, -1});
      }
    }
    below = std::move(kept);
  }
  const auto checked = [&](std::size_t most_places) {
    return checking::check_within(in.grid, in.machine, in.effort, certificate, {}, most_places);
  };
  // Where there is room it is wrong for another reason.
  const CertificateCheck found = checked(checking::most_places);
  CHECK(!found.holds);
  CHECK(found == check_certificate(in.grid, in.machine, in.effort, certificate));
  try {
    checked(200);
    FAIL("held");
  } catch (const Error& error) {
    CHECK(error.code() == ErrorCode::too_large);
    CHECK(error.place().field.starts_with("branches["));
    CHECK(error.place().row >= 1);
    CHECK(std::string(error.what()).starts_with(error.place().field + ": up to here row "));
  }
}

TEST_CASE("a sound certificate is checked in the room that its branches take", "[certificate]") {
  const Instance in = instance_of("co-prime periods", 1);
  const Certificate certificate =
      certify(in.grid, in.machine, in.effort, plan(in.grid, in.machine, in.effort).total_ms);
  REQUIRE(!certificate.branches.empty());
  // No row keeps more than all that are kept, and no class has more places than two for each row and one more.
  const std::size_t kept =
      static_cast<std::size_t>(std::ranges::count(certificate.branches, BranchEnd::kept, &Branch::end) + 1);
  std::size_t most = kept * certificate.classes.size() * static_cast<std::size_t>(2 * in.grid.rows() + 1);
  CHECK(checking::check_within(in.grid, in.machine, in.effort, certificate, {}, most).holds);
}

}  // namespace certificate_room_test
