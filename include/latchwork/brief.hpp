#pragma once

#include <optional>
#include <string>
#include <vector>

#include "latchwork/effort.hpp"
#include "latchwork/export.hpp"
#include "latchwork/finding.hpp"
#include "latchwork/gauge.hpp"
#include "latchwork/machine.hpp"
#include "latchwork/panel.hpp"
#include "latchwork/plan.hpp"
#include "latchwork/simulate.hpp"
#include "latchwork/size.hpp"
#include "latchwork/yarn_need.hpp"

namespace latchwork::inline v0 {

/// What a designer hands over: a folder with panel.json, swatch.csv, machine.json (which may hold efforts) and, if yarn
/// is to be reckoned, yarn.json.
struct Brief {
  Panel panel;
  Swatch swatch;
  Machine machine;
  Effort effort;
  std::optional<YarnRequest> yarn;
  friend bool operator==(const Brief&, const Brief&) = default;
};

/// What comes back.
struct Job {
  std::vector<Finding> findings;
  Plan plan;
  Conditions conditions;  ///< that were asked of both plans
  Plan regular;
  Plan unconditioned;                 ///< the least plan when nothing is asked of it: what the conditions cost is told
                                      ///< against it; where none are asked, the same as `plan`
  Verification verification;          ///< of `plan`
  Verification regular_verification;  ///< of `regular`; not verified when there is none
  Size size;
  std::optional<YarnNeed> yarn;  ///< where the brief asks for it
};

/// @throws Error bad_argument (folder) for an empty name or a NUL in it; io (field = file name), and what the readers
/// throw with the file's name before the field.
LATCHWORK_API Brief read_brief(const std::string& folder);

/// Finds, plans both ways, verifies both, sizes, reckons the yarn. Conditions bind both plans.
/// @throws Error as those do.
LATCHWORK_API Job run(const Brief& brief, const PlanOptions& options = {});

/// For a terminal: size, yarn, feasibility, stops, hand work by kind, hours, bound, price of regularity, "verified" or
/// not. @throws Error size_mismatch (field "job.plan", "job.size.strips[2]", "job.yarn", ...) for a job of another
/// brief; bad_argument (field "job.verification", "job.plan.leftmost", ...) for a plan that is called verified and does
/// not knit the brief's panel, stands on other needles than its machine's, takes other times by its efforts, or breaks
/// the job's conditions (but rhythms, which are not looked at); for findings of another machine.
LATCHWORK_API std::string summary(const Brief& brief, const Job& job);

/// One HTML5 page to print and take to the machine: summary, schematic, instructions, both charts. @throws Error as
/// summary(), chart_svg() and instructions().
LATCHWORK_API std::string page_html(const Brief& brief, const Job& job);

/// Writes chart-rs.svg, chart-operator.svg, chart.txt, instructions.txt, plan.json, summary.txt, page.html and, for a
/// panel with a stitch in every row, schematic.svg into `folder`, which is made if it is not there; without a schematic
/// an older one is taken away. @throws Error bad_argument (folder), as read_brief(); io (field = file name, or folder);
/// as page_html(), and as write() of a plan.
LATCHWORK_API void write_job(const Brief& brief, const Job& job, const std::string& folder);

}  // namespace latchwork::inline v0
