// The main job: a brief goes in; a verified plan, sizes, charts and words come out.
//
//   make_panel BRIEF_FOLDER OUT_FOLDER
//
// BRIEF_FOLDER holds panel.json, swatch.csv, machine.json and, if yarn is to be reckoned, yarn.json. Exit codes: 0
// done, 1 an error (told with its place), 2 wrong usage, 3 written, but the panel cannot be made as it stands, 4
// written, but a texture has no gauge, so that there is no size (or no article): the summary says which, and what to
// measure.
#include <algorithm>
#include <cstdio>
#include <exception>
#include <string>

#include "latchwork/latchwork.hpp"

int main(int argc, char** argv) {
  if (argc != 3) {
    std::fputs("usage: make_panel BRIEF_FOLDER OUT_FOLDER\n", stderr);
    return 2;
  }
  try {
    const latchwork::Brief brief = latchwork::read_brief(argv[1]);
    const latchwork::Job job = latchwork::run(brief);
    latchwork::write_job(brief, job, argv[2]);
    if (std::fputs(latchwork::summary(brief, job).c_str(), stdout) < 0 || std::fflush(stdout) != 0) {
      std::fputs("make_panel: the summary cannot be written\n", stderr);
      return 1;
    }
    const bool against = std::any_of(job.findings.begin(), job.findings.end(), [](const latchwork::Finding& finding) {
      return finding.severity == latchwork::Severity::error;
    });
    if (against || job.plan.status == latchwork::PlanStatus::infeasible) return 3;
    if (!job.missing.empty()) return 4;
  } catch (const latchwork::Error& error) {
    const std::string code(latchwork::error_name(error.code()));
    std::fprintf(stderr, "make_panel: %s: %s\n", code.c_str(), error.what());  // the message names the place
    return 1;
  } catch (const std::exception& error) {
    std::fprintf(stderr, "make_panel: %s\n", error.what());
    return 1;
  }
  return 0;
}
