#include "latchwork/certificate.hpp"

#include <cstdint>
#include <string>
#include <vector>

#include "catch.hpp"
#include "instances.hpp"
#include "latchwork/plan.hpp"

namespace certificate_test {

// Certificates of the planner against the checker, which uses none of its code. tests/python has a second checker.

using namespace latchwork;
using namespace latchwork_test;

TEST_CASE("every tiny panel's least total is certified, and no more", "[certificate][property]") {
  int checked = 0;
  int branched = 0;
  for (std::uint64_t seed = 1; seed <= 3000; ++seed) {
    const Instance in = tiny_instance(seed);
    CAPTURE(seed, in.grid.to_text(), in.machine.max_ladder, in.machine.cast_on_loops);
    const Plan least = plan(in.grid, in.machine, in.effort);
    if (least.status == PlanStatus::infeasible) {
      CHECK_THROWS_AS(certify(in.grid, in.machine, in.effort, 0), Error);
      continue;
    }
    const Certificate certificate = certify(in.grid, in.machine, in.effort, least.total_ms);
    const CertificateCheck check = check_certificate(in.grid, in.machine, in.effort, certificate);
    CAPTURE(check.message);
    REQUIRE(check.holds);
    REQUIRE(check.bound_ms == least.total_ms);
    ++checked;
    branched += certificate.branches.empty() ? 0 : 1;

    // Asked for more, it certifies what is true; and a claim of one millisecond more is refused.
    const Certificate more = certify(in.grid, in.machine, in.effort, least.total_ms + 1);
    REQUIRE(check_certificate(in.grid, in.machine, in.effort, more).holds);
    REQUIRE(more.bound_ms <= least.total_ms);
    Certificate claim = certificate;
    claim.bound_ms += 1;
    REQUIRE(!check_certificate(in.grid, in.machine, in.effort, claim).holds);
  }
  CHECK(checked > 1000);
  CHECK(branched >= 3);
}

TEST_CASE("plans of every kind of panel are certified", "[certificate][property]") {
  for (const std::string& kind : instance_kinds()) {
    for (std::uint64_t seed = 1; seed <= 3; ++seed) {
      const Instance in = instance_of(kind, seed, kind == "200 classes" ? 40 : 70);
      CAPTURE(kind, seed);
      PlanOptions options;
      options.work_limit = 50'000'000;
      const Plan least = plan(in.grid, in.machine, in.effort, options);
      const Certificate certificate = certify(in.grid, in.machine, in.effort, least.total_ms, options);
      const CertificateCheck check = check_certificate(in.grid, in.machine, in.effort, certificate);
      CAPTURE(check.message, certificate.branches.size());
      REQUIRE(check.holds);
      CHECK(check.bound_ms <= least.total_ms);
      if (least.status == PlanStatus::optimal) CHECK(check.bound_ms == least.total_ms);
    }
  }
}

TEST_CASE("where prices leave a wide gap, stretches of rows are looked through first",
          "[certificate][property][long]") {
  const Instance in = instance_of("tuck stacks", 6);
  const Plan least = plan(in.grid, in.machine, in.effort);
  REQUIRE(least.status == PlanStatus::optimal);
  const Certificate sound = certify(in.grid, in.machine, in.effort, least.total_ms);
  REQUIRE(sound.stretches.size() > 5);
  REQUIRE(sound.bound_ms == least.total_ms);
  const CertificateCheck check = check_certificate(in.grid, in.machine, in.effort, sound);
  CAPTURE(check.message);
  REQUIRE(check.holds);
  for (std::size_t i = 0; i < sound.stretches.size(); ++i) {
    Certificate spoiled = sound;
    spoiled.stretches[i].gain += in.effort.stop * sound.unit;
    const CertificateCheck found = check_certificate(in.grid, in.machine, in.effort, spoiled);
    CHECK(!found.holds);
    CHECK(found.place.field.starts_with("stretches[" + std::to_string(i) + "].branches["));
  }
  Certificate spoiled = sound;
  spoiled.stretches.clear();
  CHECK(!check_certificate(in.grid, in.machine, in.effort, spoiled).holds);
}

TEST_CASE("a lace as tall as a panel may be is checked in room and time as its cells", "[certificate][property]") {
  // Every cell beside and above a ladder is a wale of its own; in column 0 each is a purl, in a row of its own, and so
  // a class. A byte for each wale and row would come to 17 GB, a number for each class and row to the same.
  const int rows = Grid::max_side;
  const int columns = 8;
  std::vector<std::uint8_t> cells(static_cast<std::size_t>(rows) * columns, static_cast<std::uint8_t>(Cell::none));
  Certificate proof;
  proof.rows = rows;
  proof.columns = columns;
  const Effort effort;
  proof.bound_ms = rows * effort.row + (rows - 1) * effort.stop;
  int wales = 0;
  for (int row = 1; row <= rows; ++row) {
    if (row < rows) proof.forced.push_back(row);
    for (int column = (row + 1) % 2; column < columns; column += 2) {
      cells[static_cast<std::size_t>(row - 1) * columns + static_cast<std::size_t>(column)] =
          static_cast<std::uint8_t>(column == 0 ? Cell::purl : Cell::knit);
      const std::int64_t purl = effort.batch + effort.drop + effort.rung_purl;
      if (column == 0) proof.classes.push_back({{wales}, {}, purl});
      proof.bound_ms += (column == 0 ? purl : 0) + effort.shaping * ((row > 1 ? 1 : 0) + (row < rows ? 1 : 0));
      ++wales;
    }
  }
  const Grid grid = Grid::from_cells(rows, columns, cells);
  const CertificateCheck check = check_certificate(grid, {}, effort, proof);
  CAPTURE(check.message);
  CHECK(check.holds);
  ++proof.bound_ms;
  CHECK(check_certificate(grid, {}, effort, proof).place.field == "bound_ms");
}

}  // namespace certificate_test
