#include <functional>

#include "conditions/words.hpp"
#include "latchwork/brief.hpp"

namespace latchwork::inline v0 {
namespace {

/// Progress of one part of the job as progress of the whole.
std::function<void(const Progress&)> part_of(const std::function<void(const Progress&)>& whole, double from,
                                             double share) {
  if (!whole) return {};
  return [whole, from, share](const Progress& part) {
    Progress told = part;
    told.share = from + share * part.share;
    whole(told);
  };
}

Verification verified(const Grid& grid, const Plan& plan, const PlanOptions& options, double from, double share) {
  SimulateOptions simulation;
  simulation.stop = options.stop;
  simulation.progress = part_of(options.progress, from, share);
  return verify(grid, plan, simulation);
}

}  // namespace

Job run(const Brief& brief, const PlanOptions& options) {
  const Grid& grid = brief.panel.grid();
  Job job;
  job.size = size(brief.panel, brief.swatch);  // first, since a texture without a gauge is found at once
  if (brief.yarn) job.yarn = yarn_need(brief.panel, brief.swatch, *brief.yarn);
  job.findings = findings(grid, brief.machine);
  PlanOptions planning = options;
  const bool asked = !condition_words(options.conditions).empty();
  const double first = asked ? 0.5 : 0.6;
  planning.progress = part_of(options.progress, 0, first);
  job.plan = plan(grid, brief.machine, brief.effort, planning);
  job.conditions = options.conditions;
  if (asked) {
    planning.conditions = {};
    planning.progress = part_of(options.progress, first, 0.6 - first);
    job.unconditioned = plan(grid, brief.machine, brief.effort, planning);
    planning.conditions = options.conditions;
  } else {
    job.unconditioned = job.plan;
  }
  planning.progress = part_of(options.progress, 0.6, 0.2);
  job.regular = plan_regular(grid, brief.machine, brief.effort, planning);
  job.verification = verified(grid, job.plan, options, 0.8, 0.1);
  job.regular_verification = verified(grid, job.regular, options, 0.9, 0.1);
  return job;
}

}  // namespace latchwork::inline v0
