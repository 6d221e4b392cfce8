// The main job: a brief goes in; a verified plan, sizes, charts and words come out.
//
//   make_panel BRIEF_FOLDER OUT_FOLDER
//
// BRIEF_FOLDER holds panel.json, machine.json and, to be told sizes, swatch.csv; if yarn is to be reckoned, yarn.json;
// if an article is to be made, article.json. What fits the article is written too, each panel as a brief and a job of
// its own into a folder of OUT_FOLDER that is named after its piece. Exit codes: 0 done, 1 an error (told with its
// place), 2 wrong usage, 3 written, but it cannot be made as asked: the panel not as it stands, or a piece of the
// article not by any panel; 4 written, but a texture has no gauge, so that there is no size (or no article): the
// summary says which, and what to measure.
#include <algorithm>
#include <cstddef>
#include <cstdio>
#include <exception>
#include <string>
#include <vector>

#include "latchwork/latchwork.hpp"

namespace {

/// Whether this machine makes the panel as it stands.
bool can_be_made(const latchwork::Job& job) {
  return job.plan.status != latchwork::PlanStatus::infeasible &&
         std::none_of(job.findings.begin(), job.findings.end(),
                      [](const latchwork::Finding& finding) { return finding.severity == latchwork::Severity::error; });
}

}  // namespace

int main(int argc, char** argv) {
  if (argc != 3) {
    std::fputs("usage: make_panel BRIEF_FOLDER OUT_FOLDER\n", stderr);
    return 2;
  }
  try {
    const latchwork::Brief brief = latchwork::read_brief(argv[1]);
    const latchwork::Job job = latchwork::run(brief);
    const std::vector<latchwork::FittedPanel> panels =
        job.article ? job.article->panels : std::vector<latchwork::FittedPanel>{};
    std::vector<latchwork::Brief> fitted;
    std::vector<latchwork::Job> fitted_jobs;
    for (std::size_t i = 0; i < panels.size(); ++i) {
      fitted.push_back(latchwork::fitted_brief(brief, job, i));
      fitted_jobs.push_back(latchwork::run(fitted.back()));
    }
    // The page that leads to the others comes last, so that it never leads to nothing.
    for (std::size_t i = 0; i < panels.size(); ++i) {
      const std::string folder = std::string(argv[2]) + "/" + panels[i].folder;
      latchwork::write_brief(fitted[i], folder);
      latchwork::write_job(fitted[i], fitted_jobs[i], folder);
    }
    latchwork::write_job(brief, job, argv[2]);
    if (std::fputs(latchwork::summary(brief, job).c_str(), stdout) < 0 || std::fflush(stdout) != 0) {
      std::fputs("make_panel: the summary cannot be written\n", stderr);
      return 1;
    }
    const bool all_fit =
        !job.article ||
        std::all_of(job.article->works.begin(), job.article->works.end(), [](const latchwork::PieceWork& work) {
          return work.fits && work.plan.status != latchwork::PlanStatus::infeasible;
        });
    if (!can_be_made(job) || !all_fit || !std::all_of(fitted_jobs.begin(), fitted_jobs.end(), can_be_made)) return 3;
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
