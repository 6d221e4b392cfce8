#include "brief/run.hpp"

#include <algorithm>
#include <cstdint>
#include <functional>
#include <optional>
#include <set>
#include <string_view>
#include <utility>

#include "brief/article.hpp"
#include "brief/asked.hpp"
#include "brief/facts.hpp"
#include "conditions/words.hpp"
#include "gauge/gauges.hpp"
#include "latchwork/brief.hpp"
#include "plan/limits.hpp"

namespace latchwork::inline v0 {

std::function<void(const Progress&)> report::share_of(const std::function<void(const Progress&)>& whole, double from,
                                                      double share) {
  if (!whole) return {};
  return [whole, from, share](const Progress& part) {
    Progress told = part;
    told.share = from + share * part.share;
    whole(told);
  };
}

SizeOptions report::measuring_of(const Brief& brief) {
  require_substitutes(brief.substitutes, "brief.");
  SizeOptions out;
  out.state = brief.state;
  out.substitutes = brief.substitutes;
  return out;
}

std::vector<Substitute> report::article_substitutes(const Brief& brief) {
  require_substitutes(brief.article->design.substitutes, "brief.article.design.");
  require_substitutes(brief.substitutes, "brief.");
  std::vector<Substitute> out;
  std::set<std::string_view> named_before;
  for (const auto* list : {&brief.article->design.substitutes, &brief.substitutes}) {
    for (const Substitute& each : *list) {
      if (named_before.insert(each.texture).second) out.push_back(each);
    }
  }
  return out;
}

std::optional<ClothState> report::article_state(const Brief& brief) {
  return brief.article->design.state ? brief.article->design.state : brief.state;
}

SizeOptions report::article_measuring(const Brief& brief) {
  SizeOptions out;
  out.state = article_state(brief);
  out.substitutes = article_substitutes(brief);
  return out;
}

Job run(const Brief& brief, const PlanOptions& options) {
  report::require_asked(brief);
  const Grid& grid = brief.panel.grid();
  const double panel = brief.article ? 0.5 : 1;  // its share of the work; the rest is the article's
  const auto part = [&](double from, double share) {
    return report::share_of(options.progress, panel * from, panel * share);
  };
  Job job;
  const report::Unmeasured unmeasured = report::unmeasured(brief);
  job.missing = unmeasured.all();
  // First, since what is refused is then found at once.
  if (unmeasured.size.empty()) job.size = size(brief.panel, brief.swatch, report::measuring_of(brief));
  std::optional<ArticleFit> article;
  if (brief.article && unmeasured.article.empty())
    article = report::article_fit_of(brief, {.stop = options.stop, .progress = {}});
  if (brief.yarn) job.yarn = yarn_need(brief.panel, brief.swatch, *brief.yarn);
  job.findings = findings(grid, brief.machine);
  PlanOptions planning = options;
  const bool asked = !condition_words(options.conditions).empty();
  const double first = asked ? 0.5 : 0.6;
  planning.progress = part(0, first);
  const planning::Deadline deadline(options);  // both of these plans answer one question
  job.plan = plan(grid, brief.machine, brief.effort, planning);
  job.conditions = options.conditions;
  if (asked) {
    planning.conditions = {};
    if (deadline.set()) planning.time_limit_ms = std::max<std::int64_t>(1, deadline.left_ms());
    planning.progress = part(first, 0.6 - first);
    job.unconditioned = plan(grid, brief.machine, brief.effort, planning);
    planning.conditions = options.conditions;
    planning.time_limit_ms = options.time_limit_ms;
  } else {
    job.unconditioned = job.plan;
  }
  planning.progress = part(0.6, 0.2);
  job.regular = plan_regular(grid, brief.machine, brief.effort, planning);
  job.verification = verify(grid, job.plan, {.stop = options.stop, .progress = part(0.8, 0.1)});
  job.regular_verification = verify(grid, job.regular, {.stop = options.stop, .progress = part(0.9, 0.1)});
  if (article) {
    planning.progress = report::share_of(options.progress, panel, 1 - panel);
    job.article = report::article_of(brief, job, std::move(*article), planning);
  }
  return job;
}

}  // namespace latchwork::inline v0
