#include "brief/facts.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <set>
#include <string_view>

#include "brief/article.hpp"
#include "brief/match.hpp"
#include "brief/run.hpp"
#include "conditions/words.hpp"
#include "gauge/gauges.hpp"
#include "grid/words.hpp"
#include "latchwork/brief.hpp"
#include "latchwork/session.hpp"
#include "size/bands.hpp"
#include "text/duration.hpp"
#include "text/utf8.hpp"
#include "text/words.hpp"

namespace latchwork::inline v0 {
namespace report {
namespace {

const char* severity_word(Severity severity) {
  switch (severity) {
    case Severity::advice:
      return "advice";
    case Severity::warning:
      return "warning";
    case Severity::error:
      return "error";
  }
  return "?";
}

std::string spread_words(const Size& size) {
  if (!size.spread_known && size.width_spread_mm == 0 && size.height_spread_mm == 0) return "spread not known";
  return fmt::format("{:g} of 100 within {} x {} cm of it{}", 100 * size.level, centimetres(size.width_margin_mm),
                     centimetres(size.height_margin_mm), size.spread_known ? "" : ", or more");
}

/// " at the widest row (29.9 cm at the cast-on, 35.0 cm at the last row)"; nothing where all are one width.
std::string shape_words(const Size& size) {
  constexpr double told_from_mm = 0.5;
  const double least = std::min(size.cast_on.width_mm, size.bind_off.width_mm);
  if (size.width_mm - least < told_from_mm) return {};
  return fmt::format(" at the widest row ({} cm at the cast-on, {} cm at the last row)",
                     centimetres(size.cast_on.width_mm), centimetres(size.bind_off.width_mm));
}

bool has_seams(const FitRequest& design) {
  return design.seam_left > 0 || design.seam_right > 0 || design.seam_bottom > 0 || design.seam_top > 0;
}

std::string size_words(const Brief& brief, const Job& job) {
  if (!job.size) {
    std::vector<std::string> textures;
    std::set<std::string> named;
    for (const Finding& finding : job.missing) {
      std::string name = "'" + one_line(finding.place.field) + "'";
      if (named.insert(name).second) textures.push_back(std::move(name));
    }
    return "not known: no gauge of " + joined(textures) + ", see below";
  }
  const Size& size = *job.size;
  std::string measured =
      fmt::format("{} cm wide{} x {} cm high, {}; {}", centimetres(size.width_mm), shape_words(size),
                  centimetres(size.height_mm), state_words(brief, measuring_of(brief)), spread_words(size));
  if (size.greatest_height_mm > size.least_height_mm) {
    measured += fmt::format("; the strips by themselves {} to {} cm high", centimetres(size.least_height_mm),
                            centimetres(size.greatest_height_mm));
  }
  if (brief.article && has_seams(brief.article->design)) measured += "; the whole panel, with what seams will take";
  return measured;
}

/// What somebody has to write where, so that the size is known.
void add_missing(Facts& facts, const Job& job) {
  for (const Finding& finding : job.missing) {
    facts.notes.emplace_back("missing", one_line(finding.message) + ". What would help: " + finding.suggestion);
  }
  if (job.missing.empty()) return;
  facts.notes.emplace_back(
      "missing",
      "A gauge stands in swatch.csv in lines that name the texture in the column 'texture' and say 'stitches', "
      "others 'rows', in the column 'counted', and where the cloth was washed or off the machine that in the column "
      "'state'. A line of substitutes.csv, with the columns 'texture' and 'use', says whose gauge may stand in");
}

/// What is to be said of the size; textures of one or two wales in one line, since most cables and ribs have some.
void add_sizing(Facts& facts, const Size& size) {
  std::vector<std::string> narrow;
  std::string help;
  for (const Finding& finding : size.findings) {
    if (finding.code == FindingCode::narrow_texture) {
      narrow.push_back("'" + one_line(finding.place.field) + "'");
      help = finding.suggestion;
    } else {
      facts.notes.emplace_back("size", one_line(finding.message));
    }
  }
  if (narrow.empty()) return;
  facts.notes.emplace_back(
      "size",
      fmt::format("{} {} nowhere wider than two wales, and so few have no gauge of their own. What would help: {}",
                  joined(narrow), narrow.size() == 1 ? "is" : "are", help));
}

/// What is doubtful in the swatch; textures in too few places in one line, since that is true of most swatches.
class Doubts {
 public:
  explicit Doubts(Facts& facts) : notes_(facts) {}

  /// `kind`: of the note of what the gauges are, which a size that is known tells, too, and then once.
  void add(const char* kind, const std::vector<Finding>& findings) {
    for (const Finding& finding : findings) {
      switch (finding.code) {
        case FindingCode::no_swatch:       // add_missing()
        case FindingCode::narrow_texture:  // add_sizing()
          break;
        case FindingCode::few_places:
          if (!few_.insert(finding.place.field).second) break;
          fewest_ = std::min(fewest_, finding.value);
          break;
        case FindingCode::borrowed_gauge:
        case FindingCode::mixed_states:
        case FindingCode::unknown_spread:
          if (!notes_.has("size", one_line(finding.message))) notes_.add(kind, one_line(finding.message));
          break;
        default:
          notes_.add("swatch", one_line(finding.message) + ". What would help: " + finding.suggestion);
      }
    }
  }

  void add_few() {
    if (few_.empty()) return;
    notes_.add("swatch", fmt::format("{} in fewer than {} places, down to {}: the size is surer with more",
                                     count_of(std::ssize(few_), "measure"), usual_places, fewest_));
  }

 private:
  Noting notes_;
  std::set<std::string> few_;  ///< measures, by the first of each
  int fewest_ = usual_places;
};

/// Of the gauges that the size goes by, and of those that the article's fits do, which may be in another state.
void add_measuring(Facts& facts, const Brief& brief, const Job& job) {
  Doubts doubts(facts);
  doubts.add("size", measuring_findings(brief.panel, brief.swatch, measuring_of(brief)));
  if (job.article) {
    const SizeOptions options = article_measuring(brief);
    const Gauges gauges(brief.swatch, options.state, options.substitutes);
    doubts.add("article", measuring_findings(textures_of(brief.panel, CutOff::counts), brief.swatch, gauges));
  }
  doubts.add_few();
}

bool sound(const Job& job) {
  return std::none_of(job.findings.begin(), job.findings.end(),
                      [](const Finding& finding) { return finding.severity == Severity::error; });
}

/// Nothing is against the panel but what was asked of its plan.
bool barred(const Job& job) {
  return job.plan.status == PlanStatus::infeasible && sound(job) && !condition_words(job.conditions).empty();
}

bool feasible(const Job& job) {
  return job.plan.status != PlanStatus::infeasible && sound(job);
}

std::string feasibility(const Brief& brief, const Job& job) {
  std::array<int, 3> count{};
  for (const Finding& finding : job.findings) ++count.at(static_cast<std::size_t>(finding.severity));
  std::vector<std::string> parts;
  if (count[2] > 0) parts.push_back(count_of(count[2], "error"));
  if (count[1] > 0) parts.push_back(count_of(count[1], "warning"));
  if (count[0] > 0) parts.push_back(count_of(count[0], "piece") + " of advice");
  const std::string found = parts.empty() ? "nothing found against it" : joined(parts, ", ");
  const bool yes = feasible(job) || barred(job);
  return fmt::format("{} on the {} machine: {}", yes ? "can be made" : "cannot be made as it stands",
                     one_line(brief.machine.name), found);
}

std::string hand_words(const HandWork& work) {
  std::vector<std::string> rungs;
  const auto add = [&](int count, const char* name) {
    if (count > 0) rungs.push_back(fmt::format("{} {}", count, name));
  };
  add(work.rungs_purl, "purl");
  add(work.rungs_tuck, "tuck");
  add(work.rungs_knit, "knit");
  add(work.rungs_slip, "slip");
  std::vector<std::string> parts;
  if (work.batches > 0) {
    parts.push_back(count_of(work.batches, "batch", "es") + " re-formed (rungs: " + joined(rungs, ", ") + ")");
  }
  if (work.crossings > 0) {
    parts.push_back(count_of(work.crossings, "crossing") +
                    fmt::format(" ({} lifted)", count_of(work.stitches_crossed, "stitch", "es")));
  }
  if (work.holds > 0) parts.push_back(count_of(work.holds, "needle") + " put in hold");
  if (work.shapings > 0) parts.push_back(count_of(work.shapings, "needle") + " cast on or bound off");
  return parts.empty() ? "none" : joined(parts, "; ");
}

/// `feasible`: what is verified are the steps; whether hands can do them on this machine is another question.
std::string verified_words(const Verification& verification, bool feasible) {
  if (verification.verified) {
    const std::string needless =
        verification.first_needless
            ? fmt::format("; {} needless, the first: {}",
                          verification.needless == 1 ? std::string("1 step is")
                                                     : fmt::format("{} steps are", verification.needless),
                          verification.first_needless->message)
            : std::string();
    return fmt::format("verified: knitted loop by loop ({}), and the fabric is the chart's{}{}",
                       count_of(verification.loops, "loop"), needless,
                       feasible ? "" : "; but the machine cannot make it as it stands: see the errors");
  }
  return "NOT verified: " + verification.message;
}

void add_plan(Facts& facts, const Brief& brief, const Job& job) {
  const HandWork work = hand_work(job.plan, brief.effort);
  if (job.plan.stops.empty()) {  // then every plan is this one
    facts.lines.emplace_back("Hand work", fmt::format("no hand work: knit {}", count_of(job.plan.rows, "row")));
    facts.lines.emplace_back("Time", rounded_duration(work.carriage_ms) + " of carriage");
    facts.lines.emplace_back("Plan", verified_words(job.verification, feasible(job)));
    return;
  }
  facts.lines.emplace_back("Stops", fmt::format("{} in {}", work.stops, count_of(job.plan.rows, "row")));
  facts.lines.emplace_back("Hand work", hand_words(work));
  facts.lines.emplace_back("Time",
                           fmt::format("{} by hand + {} of carriage = {}", rounded_duration(work.hand_ms),
                                       rounded_duration(work.carriage_ms), rounded_duration(job.plan.total_ms)));
  const bool free = condition_words(job.conditions).empty();
  const std::string least = free ? "the least hand work" : "the least hand work that keeps the conditions";
  const bool proven = job.plan.status == PlanStatus::optimal;
  facts.lines.emplace_back(
      "Least possible",
      proven ? fmt::format("{}: this plan is proven to take {}", rounded_duration(job.plan.bound_ms), least)
             : fmt::format("{} or more: this plan is the best found, not proven the least",
                           rounded_duration(job.plan.bound_ms)));
  facts.lines.emplace_back("Plan", verified_words(job.verification, feasible(job)));
}

/// What is asked, and what it costs against the least plan without it. What is not proven is told within its bounds.
void add_conditions(Facts& facts, const Job& job, const std::vector<std::string>& conditions) {
  facts.lines.emplace_back("Conditions", joined(conditions, "; "));
  const Plan& without = job.unconditioned;
  if (without.status == PlanStatus::infeasible) return;
  if (job.plan.status == PlanStatus::infeasible) {
    if (!barred(job)) return;
    facts.lines.emplace_back(
        "Their price", fmt::format("no plan keeps them; without them {} takes {}",
                                   without.status == PlanStatus::optimal ? "the least plan" : "the best plan found",
                                   rounded_duration(without.total_ms)));
    return;
  }
  // Every plan that keeps them is one without them, too.
  const std::int64_t least = std::min(without.total_ms, job.plan.total_ms);
  const std::int64_t more = job.plan.total_ms - least;
  if (without.bound_ms >= least && job.plan.status == PlanStatus::optimal) {
    facts.lines.emplace_back("Their price", more == 0 ? std::string("nothing: no plan without them takes less")
                                                      : fmt::format("{} more than the least plan without them, {}",
                                                                    rounded_duration(more), rounded_duration(least)));
    return;
  }
  const std::int64_t from = std::max<std::int64_t>(0, job.plan.bound_ms - least);
  const std::int64_t to = std::max<std::int64_t>(0, job.plan.total_ms - without.bound_ms);
  facts.lines.emplace_back(
      "Their price",
      fmt::format("{} more by the best plans found, with them and without; not proven: between {} and {}",
                  rounded_duration(more), rounded_duration(from), rounded_duration(to)));
}

void add_regular(Facts& facts, const Job& job) {
  const bool bound = !condition_words(job.conditions).empty();
  if (job.regular.status == PlanStatus::infeasible || !job.regular.rhythm) {
    facts.lines.emplace_back("Regular plan", std::string("no even rhythm of stops makes this panel") +
                                                 (bound ? " and keeps the conditions" : ""));
    return;
  }
  std::string price;
  if (job.plan.status != PlanStatus::infeasible) {
    const std::int64_t more = job.regular.total_ms - job.plan.total_ms;
    price = more <= 0 ? ", no more than the plan" : ", the price of regularity " + rounded_duration(more);
  }
  facts.lines.emplace_back(
      "Regular plan",
      fmt::format("stop every {} from RC {:03}: {} in all{}; {}", count_of(job.regular.rhythm->every, "row"),
                  job.regular.rhythm->first, rounded_duration(job.regular.total_ms), price,
                  job.regular_verification.verified ? "verified" : verified_words(job.regular_verification, true)));
}

void add_sittings(Facts& facts, const Job& job, const std::vector<Session>& all, std::int64_t session_ms) {
  const std::string wanted =
      session_ms == SessionOptions{}.session_ms ? std::string("an hour") : rounded_duration(session_ms);
  std::int64_t longest = 0;
  std::vector<std::string> ends;
  for (const Session& session : all) {
    longest = std::max(longest, session.work_ms);
    if (session.to_row < job.plan.rows && session.clear) ends.push_back(fmt::format("{:03}", session.to_row));
  }
  const std::string length = longest <= session_ms
                                 ? fmt::format("of {} or less", wanted)
                                 : fmt::format("of about {}, the longest {}", wanted, rounded_duration(longest));
  facts.lines.emplace_back("Sessions", fmt::format("{} {}: leave off after RC {}", all.size(), length, joined(ends)));
}

/// Sittings, where one is not enough: the page is taken to the machine day by day; and rests for the hands.
void add_sessions(Facts& facts, const Brief& brief, const Job& job) {
  if (!job.verification.verified) return;
  const SessionOptions options{.session_ms = brief.session_ms, .rest_ms = brief.rest_ms};
  const std::vector<Rest> pauses = rests(job.plan, brief.effort, options);
  std::vector<std::string> rows;
  rows.reserve(pauses.size());
  for (const Rest& each : pauses) rows.push_back(fmt::format("{:03}", each.row));
  const std::vector<Session> all = sessions(job.plan, brief.effort, options);
  if (all.size() > 1) add_sittings(facts, job, all, options.session_ms);
  if (rows.empty()) return;
  facts.lines.emplace_back("Rests", fmt::format("the hands, after some {} of hand work each: after RC {}",
                                                rounded_duration(options.rest_ms), joined(rows)));
}
}  // namespace

std::string state_words(const Brief& brief, const SizeOptions& options) {
  const Gauges gauges(brief.swatch, options.state, options.substitutes);
  std::set<ClothState> states;
  for (const std::string_view texture : textures_of(brief.panel)) states.insert(gauges.of(texture).state);
  std::string out;
  for (const ClothState state : states) out += fmt::format("{}{}", out.empty() ? "" : " and ", cloth_state_name(state));
  return out;
}

std::string centimetres(double mm) {
  return fmt::format("{:.1f}", mm / 10);
}

ChartOptions chart_options(const Brief& brief, const Job& job, Side side) {
  ChartOptions options;
  options.side = side;
  options.plan = job.plan.status == PlanStatus::infeasible ? nullptr : &job.plan;
  options.machine = &brief.machine;
  const Grid& grid = brief.panel.grid();
  const double width = job.size ? job.size->width_mm / job.size->widest_columns : 0;
  const double height = job.size ? job.size->height_mm / grid.rows() : 0;
  if (width > 0 && height > 0 && width <= 1000 && height <= 1000) {
    options.stitch_height_mm = height;
    options.stitch_width_mm = std::clamp(width, 0.2 * height, 5 * height);
  }
  return options;
}

Facts facts_of(const Brief& brief, const Job& job) {
  Facts facts;
  const Grid& grid = brief.panel.grid();
  facts.title = one_line(brief.panel.name());
  facts.subtitle =
      fmt::format("{} on a {} machine ({}, {:g} mm apart)", extent_words(grid), one_line(brief.machine.name),
                  count_of(brief.machine.needles, "needle"), brief.machine.pitch_mm);
  facts.lines.emplace_back("Size", size_words(brief, job));
  facts.lines.emplace_back("Feasible", feasibility(brief, job));
  const std::vector<std::string> conditions = condition_words(job.conditions);
  if (!conditions.empty()) add_conditions(facts, job, conditions);
  if (job.plan.status == PlanStatus::infeasible) {
    facts.lines.emplace_back("Plan", barred(job) ? "none keeps the conditions: see below" : "none: see the errors");
    if (barred(job)) add_regular(facts, job);
  } else {
    add_plan(facts, brief, job);
    if (!job.plan.stops.empty()) add_regular(facts, job);
    add_sessions(facts, brief, job);
  }
  add_yarn(facts, brief, job);
  add_article(facts, brief, job);
  Noting notes(facts);
  const auto note = [&](const Finding& finding) {
    std::string words = finding.message;
    if (!finding.suggestion.empty()) words += ". What would help: " + finding.suggestion;
    notes.add(severity_word(finding.severity), one_line(words));
  };
  for (const Finding& finding : job.findings) note(finding);
  for (const Finding& finding : job.plan.findings) note(finding);  // why there is no plan, unless told already
  add_missing(facts, job);
  if (job.size) add_sizing(facts, *job.size);
  add_measuring(facts, brief, job);
  return facts;
}

}  // namespace report

std::string summary(const Brief& brief, const Job& job) {
  report::require_job_of(brief, job);
  return report::summary_of(brief, job);
}

std::string report::summary_of(const Brief& brief, const Job& job) {
  const report::Facts facts = report::facts_of(brief, job);
  std::string out = facts.title + "\n" + facts.subtitle + "\n\n";
  for (const auto* lines : {&facts.lines, &facts.article, &facts.pieces}) {
    for (const auto& [label, words] : *lines) out += fmt::format("{:<15}{}\n", label, words);
  }
  if (!facts.notes.empty()) out += "\n";
  for (const auto& [kind, words] : facts.notes) out += fmt::format("{:<9}{}\n", kind, words);
  return out;
}

}  // namespace latchwork::inline v0
