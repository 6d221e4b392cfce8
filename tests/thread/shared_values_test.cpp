// Const calls may run at once on one object. Run under the thread sanitizer in CI, and plainly everywhere else.
#include <thread>
#include <vector>

#include "catch.hpp"
#include "latchwork/latchwork.hpp"

namespace shared_values_test {

using namespace latchwork;

namespace {

Panel shared_panel() {
  PanelParts parts;
  parts.name = "shared";
  parts.rows = 24;
  parts.edge = stockinette();
  parts.left = {reverse(2), rope(2, 2, 6, Lean::right), tuck_rib(1)};
  parts.centre = plait(1, 4);
  return build_panel(parts);
}

template <class Body>
void at_once(Body body) {
  std::vector<std::thread> threads;
  for (int i = 0; i < 4; ++i) threads.emplace_back(body, i);
  for (auto& thread : threads) thread.join();
}

}  // namespace

TEST_CASE("four threads read, derive, plan, knit and draw one panel at once and get what one thread gets", "[thread]") {
  const Panel panel = shared_panel();
  const Machine machine = Machine::generic(MachineClass::standard);
  const Effort effort;
  const Plan alone = plan(panel.grid(), machine, effort);
  const std::string chart = chart_svg(panel);
  const std::string text = write(panel);
  std::vector<int> same(4, 0);
  at_once([&](int i) {
    const Grid& grid = panel.grid();
    const bool derived = grid.mirrored().mirrored() == grid && grid.hash() == panel.grid().hash() &&
                         Wales(grid).at(1, 0) == 0 && !grid.describe().empty();
    const Plan mine = plan(grid, machine, effort);
    const bool planned =
        mine == alone && verify(grid, mine).verified && findings(grid, machine) == findings(grid, machine);
    const bool written =
        chart_svg(panel) == chart && write(panel) == text && !instructions(panel, mine, machine).empty();
    same[static_cast<std::size_t>(i)] = derived && planned && written ? 1 : 0;
  });
  for (const int one : same) CHECK(one == 1);
}

TEST_CASE("an error thrown in one thread does not reach another", "[thread][error]") {
  const Grid grid(4, 4);
  std::vector<int> rows(4, 0);
  at_once([&](int i) {
    try {
      (void)grid.at(5 + i, 0);
    } catch (const Error& error) {
      rows[static_cast<std::size_t>(i)] = error.place().row;
    }
  });
  CHECK(rows == std::vector<int>{5, 6, 7, 8});
}

}  // namespace shared_values_test
