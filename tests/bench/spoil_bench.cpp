// Spoils verified plans of big panels, one step at a time, and asks verify() whether the cloth is the chart's; an
// oracle that knows nothing of knitting says what it should answer. Not a measure of speed: the count is of answers,
// and any wrong one ends with 1.
//   latchwork_spoil_bench [SPOILINGS]   10,000 unless said

#include <cstdint>
#include <cstdio>
#include <cstdlib>
#include <string>
#include <vector>

#include "instances.hpp"
#include "latchwork/plan.hpp"
#include "latchwork/simulate.hpp"
#include "random.hpp"
#include "spoil.hpp"
#include "spoil_oracle.hpp"

using namespace latchwork;
using namespace latchwork_test;

namespace {

struct Tally {
  int spoilings = 0, same = 0, differ = 0, impossible = 0;
  int hidden = 0;  // impossible, and the cloth differs too
  int wrong = 0;
};

void spoil_one(const Instance& instance, const Plan& made, Random& random, Tally& tally) {
  const auto kind = static_cast<Spoil>(random.between(0, static_cast<int>(Spoil::count) - 1));
  Plan spoiled = made;
  if (!spoil_somewhere(random, spoiled, kind)) return;
  SpoilOracle oracle(instance.grid, spoiled);
  const SpoilOracle::Verdict verdict = oracle.verdict();
  relabel(instance.grid, spoiled);
  const Verification verification = verify(instance.grid, spoiled);
  ++tally.spoilings;
  ++(verdict.same ? tally.same : verdict.impossible ? tally.impossible : tally.differ);
  tally.hidden += verdict.impossible && verdict.row ? 1 : 0;
  const bool right = verification.verified == verdict.same && verification.fault.has_value() == verdict.impossible &&
                     verification.needless == verdict.needless && verification.expected.empty() == !verdict.row &&
                     (!verdict.row || verification.difference.row == *verdict.row) &&
                     (!verdict.place || verification.difference.column == verdict.place->second);
  if (right) return;
  ++tally.wrong;
  std::printf("%s: %s: verify says \"%s\"\n", instance.name.c_str(),
              std::string(spoil_words[static_cast<std::size_t>(kind)]).c_str(), verification.message.c_str());
}

}  // namespace

int main(int argc, char** argv) {
  const int wanted = argc > 1 ? std::atoi(argv[1]) : 10'000;
  std::vector<Instance> panels;
  for (const std::string& kind : spoil_kinds()) {
    for (const int rows : {100, 200, 400}) panels.push_back(instance_of(kind, static_cast<std::uint64_t>(rows), rows));
  }
  panels.push_back(instance_of("200 classes", 1, 2000));
  std::printf("%-18s%-24s%11s%7s%9s%12s%12s%7s\n", "kind", "panel", "spoilings", "same", "differ", "impossible",
              "and differ", "wrong");
  Random random(11);
  int wrong = 0;
  for (const Instance& instance : panels) {
    PlanOptions options;
    options.work_limit = 100'000'000;  // any plan will do
    const Plan made = plan(instance.grid, instance.machine, instance.effort, options);
    if (!verify(instance.grid, made).verified) {
      std::printf("%s: not verified\n", instance.name.c_str());
      return 1;
    }
    Tally tally;
    const int share = (wanted + static_cast<int>(panels.size()) - 1) / static_cast<int>(panels.size());
    for (int tries = 0; tally.spoilings < share && tries < 4 * share; ++tries) spoil_one(instance, made, random, tally);
    std::printf("%-18s%-24s%11d%7d%9d%12d%12d%7d\n", instance.kind.c_str(), instance.name.c_str(), tally.spoilings,
                tally.same, tally.differ, tally.impossible, tally.hidden, tally.wrong);
    std::fflush(stdout);
    wrong += tally.wrong;
  }
  return wrong == 0 ? 0 : 1;
}
