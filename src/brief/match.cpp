#include "brief/match.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cstdint>
#include <string>
#include <vector>

#include "brief/article.hpp"
#include "brief/asked.hpp"
#include "brief/facts.hpp"
#include "brief/run.hpp"
#include "conditions/check.hpp"
#include "grid/words.hpp"
#include "latchwork/error.hpp"
#include "latchwork/wale.hpp"
#include "plan/kept.hpp"
#include "plan/problem.hpp"
#include "text/words.hpp"
#include "yarn_need/decide.hpp"

namespace latchwork::inline v0::report {
namespace {

[[noreturn]] void refuse(ErrorCode code, const std::string& field, const std::string& message) {
  Place place;
  place.field = field;
  throw Error(code, place, field + " " + message);
}

void require_plan_of(const Grid& grid, const Plan& plan, const std::string& field) {
  if (plan.rows != grid.rows() || plan.columns != grid.columns()) {
    refuse(ErrorCode::size_mismatch, field,
           fmt::format("is for {} rows of {} columns; the brief's panel has {} of {}", plan.rows, plan.columns,
                       grid.rows(), grid.columns()));
  }
}

/// Times are told beside each other, and must be of one plan: its steps by the brief's efforts.
void require_times_of(const Brief& brief, const Plan& plan, const std::string& field) {
  if (plan.status == PlanStatus::infeasible) return;
  const HandWork work = hand_work(plan, brief.effort);
  if (plan.total_ms != work.hand_ms + work.carriage_ms) {
    refuse(
        ErrorCode::bad_argument, field + ".total_ms",
        fmt::format("is {}; by the brief's efforts its steps take {}", plan.total_ms, work.hand_ms + work.carriage_ms));
  }
  if (plan.bound_ms < 0 || plan.bound_ms > plan.total_ms) {
    refuse(ErrorCode::bad_argument, field + ".bound_ms",
           fmt::format("is {}; it must be 0..{}, the plan's total", plan.bound_ms, plan.total_ms));
  }
}

void require_conditions_kept(const Brief& brief, const Job& job, const Grid& grid, const Plan& plan,
                             const std::string& field) {
  if (plan.status == PlanStatus::infeasible) return;
  const auto broken = planning::broken_condition(plan, job.conditions);
  if (broken) refuse(ErrorCode::bad_argument, field, *broken);
  if (job.conditions.rhythms.empty()) return;
  check(job.conditions, grid.rows(), grid.columns());
  const Wales wales(grid);
  const Effort none{0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0};  // what is worked when is no matter of cost
  const planning::Problem problem = planning::problem_of(grid, wales, brief.machine, none);
  if (const auto off = planning::broken_rhythm(plan, problem, wales, job.conditions))
    refuse(ErrorCode::bad_argument, field, *off);
}

/// A plan that is called verified is knitted once more: a page for the machine must not say it of another panel.
void require_knits(const Grid& grid, const Plan& plan, const Verification& told, const std::string& field) {
  if (!told.verified) return;
  if (plan.status == PlanStatus::infeasible)
    refuse(ErrorCode::bad_argument, field, "says verified, and there is no plan");
  const Verification now = verify(grid, plan);
  if (!now.verified) {
    refuse(ErrorCode::bad_argument, field, "says verified, but the plan does not knit its panel: " + now.message);
  }
}

void require_needles_of(const Brief& brief, const Plan& plan, const std::string& field) {
  if (plan.status == PlanStatus::infeasible) return;
  if (plan.carriage_starts_right != brief.machine.carriage_starts_right) {
    refuse(ErrorCode::bad_argument, field + ".carriage_starts_right", "is not as on the brief's machine");
  }
  const int leftmost = leftmost_needle(brief.machine, plan.columns);
  if (plan.leftmost == leftmost) return;
  refuse(ErrorCode::bad_argument, field + ".leftmost",
         fmt::format("is {}; on the brief's machine the panel begins at {}", plan.leftmost, needle_name(leftmost)));
}

/// Ladders as deep as the brief's machine lets them be, and from loops that it has.
void require_ladders_of(const Brief& brief, const Plan& plan, const std::string& field) {
  for (std::size_t s = 0; s < plan.stops.size() && plan.status != PlanStatus::infeasible; ++s) {
    for (std::size_t r = 0; r < plan.stops[s].reforms.size(); ++r) {
      const Reform& reform = plan.stops[s].reforms[r];
      const std::string where = fmt::format("{}.stops[{}].reforms[{}].", field, s, r);
      if (std::ssize(reform.rungs) > brief.machine.max_ladder) {
        refuse(ErrorCode::bad_argument, where + "rungs",
               fmt::format("has {}; the brief's machine allows ladders of {}",
                           count_of(std::ssize(reform.rungs), "rung"), count_of(brief.machine.max_ladder, "row")));
      }
      if (reform.from_row == 0 && !brief.machine.cast_on_loops) {
        refuse(ErrorCode::bad_argument, where + "from_row", "is 0, and the brief's cast-on has no loops to drop to");
      }
    }
  }
}

void require_strips_of(const Panel& panel, const Size& size) {
  std::size_t at = 0;
  const auto bands = panel.bands();
  for (std::size_t band = 0; band < bands.size(); ++band) {
    for (std::size_t strip = 0; strip < bands[band].strips.size(); ++strip, ++at) {
      const std::string field = fmt::format("job.size.strips[{}]", at);
      if (at >= size.strips.size()) refuse(ErrorCode::size_mismatch, field, "is missing: the brief's panel has more");
      const StripSize& told = size.strips[at];
      const bool same = told.band == static_cast<int>(band) && told.columns == bands[band].strips[strip].columns &&
                        told.rows == bands[band].rows;
      if (!same) refuse(ErrorCode::size_mismatch, field, "is no measure of that strip of the brief's panel");
    }
  }
  if (at < size.strips.size()) {
    refuse(ErrorCode::size_mismatch, fmt::format("job.size.strips[{}]", at),
           fmt::format("is one too many: the brief's panel has {}", count_of(std::ssize(size.strips) - 1, "strip")));
  }
}

/// The strips first, since these can be named.
void require_size_of(const Brief& brief, const Size& told) {
  require_strips_of(brief.panel, told);
  if (told == size(brief.panel, brief.swatch, measuring_of(brief))) return;
  refuse(ErrorCode::bad_argument, "job.size", "is not that of the brief's panel by its swatch");
}

/// What is missing bars size and article, and nothing else does.
void require_missing_of(const Brief& brief, const Job& job) {
  const Unmeasured unmeasured = report::unmeasured(brief);
  if (job.missing != unmeasured.all()) {
    refuse(ErrorCode::bad_argument, "job.missing", "are not the textures of the brief's panel without a gauge");
  }
  if (job.size.has_value() != unmeasured.size.empty()) {
    refuse(ErrorCode::size_mismatch, "job.size",
           job.size ? "is told, and a texture of the brief has no gauge" : "is missing, and every texture has a gauge");
  }
  const bool has_article = brief.article && unmeasured.article.empty();
  if (job.article.has_value() == has_article) return;
  if (!job.article) refuse(ErrorCode::size_mismatch, "job.article", "is missing: the brief names an article");
  refuse(ErrorCode::size_mismatch, "job.article",
         brief.article ? "is fitted, and a texture has no gauge" : "is of an article that the brief does not name");
}

void require_yarn_of(const Brief& brief, const Job& job) {
  if (brief.yarn.has_value() != job.yarn.has_value()) {
    refuse(ErrorCode::size_mismatch, "job.yarn",
           job.yarn ? "reckons yarn that the brief does not name" : "is missing: the brief names yarn");
  }
  if (!job.yarn) return;
  for (std::size_t i = 0; i < job.yarn->estimates.size(); ++i) {
    const auto shares = std::ssize(job.yarn->estimates[i].shares);
    if (shares == std::ssize(brief.yarn->yarns)) continue;
    refuse(ErrorCode::size_mismatch, fmt::format("job.yarn.estimates[{}].shares", i),
           fmt::format("has {}; the brief names {}", count_of(shares, "share"),
                       count_of(std::ssize(brief.yarn->yarns), "yarn")));
  }
  YarnNeed decided = *job.yarn;
  decide(decided);
  if (decided.decides != job.yarn->decides || decided.why != job.yarn->why) {
    refuse(ErrorCode::bad_argument, "job.yarn.decides",
           fmt::format("is {}; by its estimates it is {}, and `why` says so", job.yarn->decides, decided.decides));
  }
  if (*job.yarn == yarn_need(brief.panel, brief.swatch, *brief.yarn)) return;
  refuse(ErrorCode::bad_argument, "job.yarn", "is not what the brief's panel takes of its yarns");
}

/// `before`: of the fields, "job.article.works[0].", or "job.article.works[0].inner_".
void require_work(const Brief& brief, const Job& job, const Grid& grid, const Plan& plan, const Verification& told,
                  const std::string& before) {
  require_plan_of(grid, plan, before + "plan");
  require_needles_of(brief, plan, before + "plan");
  require_ladders_of(brief, plan, before + "plan");
  require_times_of(brief, plan, before + "plan");
  require_conditions_kept(brief, job, grid, plan, before + "plan");
  require_knits(grid, plan, told, before + "verification");
}

/// The article is fitted and reckoned once more; its plans are held to the panels that they are of.
void require_article_of(const Brief& brief, const Job& job) {
  if (!job.article) return;
  if (job.article->fit != article_fit_of(brief)) {
    refuse(ErrorCode::bad_argument, "job.article.fit", "is not that of the brief's article by its panel");
  }
  const std::vector<PiecePanel> pieces = piece_panels(brief, job.article->fit);
  if (job.article->works.size() != pieces.size()) {
    refuse(ErrorCode::size_mismatch, "job.article.works",
           fmt::format("are {}; the article has {} of the panel", job.article->works.size(),
                       count_of(std::ssize(pieces), "piece")));
  }
  for (std::size_t i = 0; i < pieces.size(); ++i) {
    const PieceWork& work = job.article->works[i];
    const std::string field = fmt::format("job.article.works[{}]", i);
    if (work.panels != pieces[i].panels || work.fits != pieces[i].fits || work.inner != pieces[i].inner_panels) {
      refuse(ErrorCode::bad_argument, field, "does not knit the panels that the fit is of");
    }
    require_work(brief, job, pieces[i].panel.grid(), work.plan, work.verification, field + ".");
    if (pieces[i].inner) {
      require_work(brief, job, pieces[i].inner->grid(), work.inner_plan, work.inner_verification, field + ".inner_");
    } else if (work.inner_plan != Plan{} || work.inner_verification != Verification{}) {
      refuse(ErrorCode::bad_argument, field + ".inner_plan", "is of inner panels, and the piece has none of their own");
    }
  }
  ArticleJob reckoned = *job.article;
  reckon(brief, reckoned);
  if (reckoned != *job.article) {
    refuse(ErrorCode::bad_argument, "job.article", "has hours, yarn or notes that do not come of its plans and fits");
  }
}

void require_severities(const std::vector<Finding>& findings, const std::string& field) {
  for (std::size_t i = 0; i < findings.size(); ++i) {
    if (findings[i].severity <= Severity::error) continue;
    refuse(ErrorCode::bad_argument, fmt::format("{}[{}].severity", field, i),
           fmt::format("is {}; 0 is advice, 1 warning, 2 error", static_cast<int>(findings[i].severity)));
  }
}

}  // namespace

void require_job_of(const Brief& brief, const Job& job) {
  require_asked(brief);
  require_plan_of(brief.panel.grid(), job.plan, "job.plan");
  require_plan_of(brief.panel.grid(), job.regular, "job.regular");
  require_needles_of(brief, job.plan, "job.plan");
  require_ladders_of(brief, job.plan, "job.plan");
  require_needles_of(brief, job.regular, "job.regular");
  require_ladders_of(brief, job.regular, "job.regular");
  require_times_of(brief, job.plan, "job.plan");
  require_times_of(brief, job.regular, "job.regular");
  if (job.unconditioned.status != PlanStatus::infeasible) {
    require_plan_of(brief.panel.grid(), job.unconditioned, "job.unconditioned");
    require_times_of(brief, job.unconditioned, "job.unconditioned");
  }
  require_missing_of(brief, job);
  if (job.size) require_size_of(brief, *job.size);
  require_yarn_of(brief, job);
  require_severities(job.findings, "job.findings");
  require_severities(job.plan.findings, "job.plan.findings");
  if (job.findings != findings(brief.panel.grid(), brief.machine)) {
    refuse(ErrorCode::bad_argument, "job.findings", "are not those of the brief's panel on its machine");
  }
  require_conditions_kept(brief, job, brief.panel.grid(), job.plan, "job.plan");
  require_conditions_kept(brief, job, brief.panel.grid(), job.regular, "job.regular");
  require_knits(brief.panel.grid(), job.plan, job.verification, "job.verification");
  require_knits(brief.panel.grid(), job.regular, job.regular_verification, "job.regular_verification");
  require_article_of(brief, job);
}

}  // namespace latchwork::inline v0::report
