#pragma once

#include "latchwork/brief.hpp"

namespace latchwork::inline v0::report {

/// What tells of a job reads the brief's parts by the job's numbers, so the two must belong together: plans, needles,
/// strips and yarns; and what is called verified is knitted once more. @throws Error size_mismatch (field "job.plan",
/// "job.size.strips[2]", ...); bad_argument (field) for a plan that does not knit the panel or stands on other needles,
/// a time below 0, a severity that is none.
void require_job_of(const Brief& brief, const Job& job);

}  // namespace latchwork::inline v0::report
