#include "plan/blame.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <bit>
#include <functional>
#include <optional>
#include <string>
#include <vector>

#include "plan/conditions.hpp"
#include "plan/index.hpp"
#include "plan/one_call.hpp"
#include "plan/readings.hpp"
#include "text/words.hpp"

namespace latchwork::inline v0::planning {
namespace {

constexpr std::int64_t least_work = 20'000'000;  // a second or so, as a search for few kinds has for its own
constexpr std::int64_t most_blaming = 60'000'000;
constexpr std::int64_t cells_a_ms = 1'000;   // of plans without a search, before one was measured
constexpr std::int64_t most_cells = 60'000;  // read once the call is over: a few milliseconds

struct Named {
  const char* name;
  FindingCode code;
  const char* suggestion;
};

// Conditions by their place in a set. Those that stop rows go first: what they bar is plain to see.
constexpr std::array<Named, 6> named = {{
    {"closed_rows", FindingCode::row_closed, "open one of these rows"},
    {"carriage_right_only", FindingCode::carriage_side, "allow both sides"},
    {"rows_apart", FindingCode::stops_too_near, "ask for fewer rows between stops"},
    {"max_depth", FindingCode::too_deep, "allow deeper re-forms"},
    {"rhythms", FindingCode::off_rhythm, "another rhythm, or keep fewer wales to it"},
    {"max_kinds", FindingCode::too_many_kinds, "allow more kinds of stop"},
}};
using Some = unsigned;  // a set of conditions, a bit each
constexpr std::size_t all_sets = std::size_t{1} << named.size();

bool has(Some set, std::size_t i) {
  return (set >> i & 1U) != 0;
}

Some asked_in(const Conditions& asked) {
  const std::array<bool, named.size()> each = {!asked.closed_rows.empty(), asked.carriage_right_only,
                                               asked.rows_apart > 1,       asked.max_depth > 0,
                                               !asked.rhythms.empty(),     asked.max_kinds > 0};
  Some set = 0;
  for (std::size_t i = 0; i < each.size(); ++i) set |= each[i] ? 1U << i : 0U;
  return set;
}

Conditions only(const Conditions& asked, Some set) {
  Conditions left;
  left.forced_exempt = asked.forced_exempt;
  if (has(set, 0)) left.closed_rows = asked.closed_rows;
  left.carriage_right_only = has(set, 1);
  if (has(set, 2)) left.rows_apart = asked.rows_apart;
  if (has(set, 3)) left.max_depth = asked.max_depth;
  if (has(set, 4)) left.rhythms = asked.rhythms;
  if (has(set, 5)) left.max_kinds = asked.max_kinds;
  return left;
}

std::optional<std::size_t> of_code(FindingCode code) {
  const auto* const found =
      std::find_if(named.begin(), named.end(), [&](const Named& one) { return one.code == code; });
  if (found == named.end()) return {};
  return static_cast<std::size_t>(found - named.begin());
}

/// The panel is planned several times, and of each plan only its status and findings are asked for.
class Several {
 public:
  explicit Several(Spent& spent) : spent_(spent), shared_(spent.readings), written_(spent.written) {
    if (!shared_) spent.readings = &readings_;
    spent.written = false;
  }
  ~Several() {
    spent_.readings = shared_;
    spent_.written = written_;
  }
  Several(const Several&) = delete;
  Several& operator=(const Several&) = delete;

 private:
  Spent& spent_;
  Readings* shared_;
  bool written_;
  Readings readings_{true};
};

class Blame {
 public:
  Blame(Plan&& none, const Barred& barred)
      : barred_(barred),
        all_(asked_in(barred.options.conditions)),
        last_work_(barred.spent.work + std::clamp(barred.taken, least_work, most_blaming)),
        longest_ms_(std::int64_t{barred.grid.rows()} * barred.grid.columns() / cells_a_ms) {
    const PlanOptions& options = barred.options;
    if (options.work_limit > 0) {
      last_work_ =
          std::min(last_work_, barred.spent.work + std::max<std::int64_t>(0, options.work_limit - barred.taken));
    }
    known_[all_] = Known::none;
    none_[all_] = std::move(none);
  }

  Plan run() && {
    std::vector<Finding> why;
    for (Some rest = all_; rest != 0 && look(rest) == Known::none;) {
      bool sure = true;
      const Some reason = least_of(rest, sure);
      tell(reason, sure, why);
      rest &= ~reason;
    }
    Plan none = std::move(none_[all_]);
    none.findings = std::move(why);
    return none;
  }

 private:
  enum class Known : char { open, some, none, unknown };  // of the plans under a set

  // Of these, under which there is no plan, one that leaves none alone; else so many that none can be missed. `sure`:
  // whether that is known of each.
  Some least_of(Some set, bool& sure) {
    for (std::size_t i = 0; i < named.size(); ++i) {
      if (has(set, i) && look(1U << i) == Known::none) return 1U << i;
    }
    for (std::size_t i = 0; i < named.size(); ++i) {
      const Some fewer = set & ~(1U << i);
      if (fewer == set || fewer == 0) continue;
      const Known known = look(fewer);
      if (known == Known::none) set = fewer;
      sure = sure && known != Known::unknown;
    }
    return set;
  }

  Known look(Some set) {
    Known& known = known_[set];
    if (known != Known::open) return known;
    for (Some more = 1; more < all_sets; ++more) {
      if ((more & set) == set && known_[more] == Known::some) return known = Known::some;
    }
    known = without_search(set);
    if (known == Known::unknown) known = searched(set);
    return known;
  }

  bool over() const {
    if (barred_.options.stop.stop_requested()) return true;
    return barred_.deadline.set() && barred_.deadline.left_ms() <= std::max(barred_.spent.least_ms, longest_ms_);
  }

  // What is had of a call that is stopped at once.
  Known without_search(Some set) {
    if (over()) {
      cells_ -= std::int64_t{barred_.grid.rows()} * barred_.grid.columns();
      if (cells_ < 0) return Known::unknown;
    }
    std::stop_source stopped;
    stopped.request_stop();
    PlanOptions own;
    own.stop = stopped.get_token();
    const bool timed = barred_.deadline.set();
    const std::int64_t before = timed ? barred_.deadline.gone_ms() : 0;
    const Known known = plan(set, own);
    if (timed) longest_ms_ = std::max(longest_ms_, barred_.deadline.gone_ms() - before);
    return known;
  }

  // Half of what is left, so that there is some for the others.
  Known searched(Some set) {
    const std::int64_t left = (last_work_ - barred_.spent.work) / 2;
    if (left <= 0 || over()) return Known::unknown;
    std::stop_source enough;
    const std::stop_callback stopped(barred_.options.stop, [&] { enough.request_stop(); });
    PlanOptions own;
    own.stop = enough.get_token();
    own.work_limit = left;
    own.memory_limit = barred_.options.memory_limit;
    if (barred_.deadline.set()) own.time_limit_ms = std::max<std::int64_t>(1, barred_.deadline.left_ms() / 2);
    own.progress = [&](const Progress& now) {
      if (now.best_ms >= 0) enough.request_stop();
      if (barred_.options.progress) barred_.options.progress(barred_.told);
    };
    return plan(set, own);
  }

  Known plan(Some set, PlanOptions& own) {
    own.conditions = only(barred_.options.conditions, set);
    try {
      Plan found = plan_bare(barred_.grid, barred_.machine, barred_.effort, own, barred_.spent);
      if (found.status != PlanStatus::infeasible) return Known::some;
      none_[set] = std::move(found);
      return Known::none;
    } catch (const Error& error) {
      if (!came_to_no_end(error)) throw;
      return Known::unknown;
    }
  }

  // What the plan under these alone says, and of several that each of them is needed.
  void tell(Some reason, bool sure, std::vector<Finding>& why) const {
    std::vector<Finding> found;
    for (const Finding& finding : none_[reason].findings) {
      const auto code = of_code(finding.code);
      if (code && has(reason, *code)) found.push_back(finding);
    }
    if (std::popcount(reason) > 1) {
      const Finding spot = found.empty() ? none_[reason].findings.front() : found.front();
      for (Finding& finding : found) finding.message += "; so it is" + together(reason, *of_code(finding.code), sure);
      for (std::size_t i = 0; i < named.size(); ++i) {
        const auto is = [&](const Finding& finding) { return finding.code == named[i].code; };
        if (!has(reason, i) || std::any_of(found.begin(), found.end(), is)) continue;
        found.push_back(finding_at(named[i].code, spot.place.row, spot.place.column,
                                   fmt::format("{}: it bars the panel{}", named[i].name, together(reason, i, sure)),
                                   named[i].suggestion));
        found.back().last_row = spot.last_row;
        found.back().last_column = spot.last_column;
      }
    }
    why.insert(why.end(), found.begin(), found.end());
  }

  static std::string together(Some reason, std::size_t self, bool sure) {
    std::vector<std::string> others;
    for (std::size_t i = 0; i < named.size(); ++i) {
      if (i != self && has(reason, i)) others.emplace_back(named[i].name);
    }
    const std::string with = joined(others, others.size() == 2 ? " and " : ", ");
    return sure ? fmt::format(" only together with {}", with)
                : fmt::format(" together with {}, or with some of that, which the search left open", with);
  }

  const Barred& barred_;
  Some all_;
  std::int64_t last_work_;
  std::int64_t longest_ms_;  // of a plan without a search
  std::int64_t cells_ = most_cells;
  std::array<Known, all_sets> known_{};
  std::array<Plan, all_sets> none_;
};

}  // namespace

Plan with_reasons(Plan none, const Barred& barred) {
  const bool barred_by_one = std::has_single_bit(asked_in(barred.options.conditions));
  const bool of_conditions = std::any_of(none.findings.begin(), none.findings.end(),
                                         [](const Finding& finding) { return of_code(finding.code).has_value(); });
  if (barred_by_one || !of_conditions) return none;
  const Several several(barred.spent);
  return Blame(std::move(none), barred).run();
}

}  // namespace latchwork::inline v0::planning
