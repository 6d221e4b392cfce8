#pragma once

#include "latchwork/brief.hpp"

namespace latchwork::inline v0::report {

/// What tells of a job reads the brief's parts by the job's numbers, so the two must belong together: plans, needles,
/// strips and yarns; what is called verified is knitted once more, and size and yarn are reckoned once more. @throws
/// Error size_mismatch (field "job.plan", "job.size.strips[2]", ...); bad_argument (field) for a plan that does not
/// knit the panel, stands on other needles, has times that its steps do not take by the brief's efforts, or breaks the
/// conditions; findings of another machine; another size or need of yarn than the brief comes to.
void require_job_of(const Brief& brief, const Job& job);

}  // namespace latchwork::inline v0::report
