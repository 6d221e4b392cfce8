// A host that embeds latchwork: makes a rope panel, plans it, knits it, and says so.
#include <cstdio>

#include "latchwork/latchwork.hpp"

int main() {
  using namespace latchwork;
  try {
    const Strip edge = stockinette();
    const Strip strips[] = {edge, reverse(2), rope(2, 2, 6, Lean::right), reverse(2), edge};
    const Panel panel = join_strips("band", 24, strips);
    const Machine machine = Machine::generic(MachineClass::standard);
    const Plan best = plan(panel.grid(), machine);
    const Verification knitted = verify(panel.grid(), best);
    std::printf("%d stops, %s\n", static_cast<int>(best.stops.size()), knitted.message.c_str());
    return knitted.verified ? 0 : 1;
  } catch (const Error& error) {  // one type in every library: thrown there, caught here
    std::printf("%s\n", error.what());
    return 2;
  }
}
