// Plans generated panels and tells, a JSON line each: the panel, the efforts, what the plan takes, and how long it
// took, the whole call of plan() and by itself the solving, from the problem as the planner lays it out to the least
// schedule (medians; processor time, so that other work on the machine does not count). tests/bench/plan_highs.py reads
// the lines and solves the same panels by a general solver.
//   latchwork_plan_bench [SEEDS [KIND]]      how many panels of each kind (5 unless said), and of which kind only
//   latchwork_plan_bench SEEDS KIND rows ROWS  only that kind, of so many rows each
//   latchwork_plan_bench SEEDS KIND SECONDS  instead, a table: how many are proven in so many seconds ("" for all
//   kinds)
//   latchwork_plan_bench limits [ROWS [CALL]]  instead, a table: how well each call keeps a time limit, panels of up to
//   so many rows (3902), of calls with such a name only; an error behind a time is what the call ended in. Exits with 1
//   when a call does not keep what is promised
//   latchwork_plan_bench growth              instead, tables: time and memory as rows and classes grow

#include <algorithm>
#include <array>
#include <chrono>
#include <cstdio>
#include <cstdlib>
#include <ctime>
#include <functional>
#include <map>
#include <memory>
#include <nlohmann/json.hpp>
#include <stop_token>
#include <string>
#include <type_traits>
#include <utility>
#include <vector>

#include "instances.hpp"
#include "latchwork/certificate.hpp"
#include "latchwork/choice.hpp"
#include "latchwork/error.hpp"
#include "latchwork/grid.hpp"
#include "latchwork/plan.hpp"
#include "latchwork/reason.hpp"
#include "latchwork/wale.hpp"
#include "memory.hpp"
#include "plan/inputs.hpp"
#include "plan/limits.hpp"
#include "plan/problem.hpp"
#include "plan/solve.hpp"
#include "processor_time.hpp"

using namespace latchwork;
using namespace latchwork_test;

namespace {

// Panels of a person's size, then of each kind of the generator, then growth in rows.
std::vector<Instance> instances(int seeds, const std::string& only, int rows) {
  std::vector<Instance> out;
  for (int seed = 1; rows > 0 && seed <= seeds; ++seed) {
    out.push_back(instance_of(only, static_cast<std::uint64_t>(seed), rows));
  }
  if (rows > 0) return out;
  const auto add_brief = [&](const std::string& kind, const std::string& name, int tall) {
    out.push_back({kind, name, brief_panel(tall), {}, {}});
  };
  for (const int tall : {120, 240}) add_brief("brief", "mirrored brief, " + std::to_string(tall) + " rows", tall);
  for (const std::string& kind : instance_kinds()) {
    for (int seed = 1; seed <= seeds; ++seed) out.push_back(instance_of(kind, static_cast<std::uint64_t>(seed)));
  }
  for (const int times : {1, 2, 4, 8, 16, 32}) add_brief("growth, rows", "brief x" + std::to_string(times), 60 * times);
  for (const int times : {1, 2, 4, 8, 16, 32}) {
    out.push_back({"growth, classes", "6 wales x" + std::to_string(times), distinct_panel(6 * times, 120, 1), {}, {}});
  }
  out.push_back(instance_of("200 classes", 1, 2000));
  return out;
}

std::string letters(const Grid& grid, int row) {
  std::string text;
  for (int column = 0; column < grid.columns(); ++column) text += cell_letter(grid.at(row, column));
  return text;
}

constexpr std::int64_t most_work = 4'000'000'000;  // a minute or less: what is not closed then is told so
constexpr std::size_t most_runs = 25;
constexpr double enough_us = 2e5;  // of runs of one panel

// The median of runs until there are enough, in microseconds of processor time. `run` tells what it took.
template <class Run>
double median_us(Run&& run) {
  std::vector<double> times;
  double spent = 0;
  while (times.empty() || (times.size() < most_runs && spent < enough_us)) {
    times.push_back(run());
    spent += times.back();
  }
  std::sort(times.begin(), times.end());
  return times[times.size() / 2];
}

double us_since(std::clock_t begin) {
  return 1e6 * static_cast<double>(std::clock() - begin) / CLOCKS_PER_SEC;
}

// Of the solving alone: what a general solver does once its model is handed over. The schedule must be the plan's.
double solve_us(const Instance& instance, const Plan& plan) {
  PlanOptions options;
  options.work_limit = most_work;
  const Wales wales(instance.grid);
  const planning::Problem problem = planning::problem_of(instance.grid, wales, instance.machine, instance.effort);
  if (!planning::what_bars(instance.grid, instance.machine, problem).empty()) return 0;  // nothing to solve
  return median_us([&] {
    const std::clock_t begin = std::clock();
    planning::Limits limits(options);
    const planning::Solved solved = planning::solve(problem, options, limits);
    const double took = us_since(begin);
    if (!solved.found() || planning::plan_ms(problem, solved.cost) != plan.total_ms) {
      std::fprintf(stderr, "%s: the solving alone gives another plan\n", instance.name.c_str());
      std::exit(1);
    }
    return took;
  });
}

nlohmann::ordered_json told(const Instance& instance, const Plan& plan, double plan_us) {
  nlohmann::ordered_json json;
  json["kind"] = instance.kind;
  json["name"] = instance.name;
  for (int row = 1; row <= instance.grid.rows(); ++row) json["cells"].push_back(letters(instance.grid, row));
  json["crossings"] = nlohmann::ordered_json::array();
  for (const Crossing& crossing : instance.grid.crossings()) {
    json["crossings"].push_back({{"row", crossing.row},
                                 {"column", crossing.column},
                                 {"left", crossing.left},
                                 {"centre", crossing.centre},
                                 {"right", crossing.right},
                                 {"place", static_cast<int>(crossing.place)}});
  }
  const Effort& effort = instance.effort;
  json["effort"] = {{"stop", effort.stop},       {"batch", effort.batch},
                    {"drop", effort.drop},       {"k", effort.rung_knit},
                    {"p", effort.rung_purl},     {"t", effort.rung_tuck},
                    {"s", effort.rung_slip},     {"crossing", effort.crossing},
                    {"hold", effort.hold},       {"crossing_stitch", effort.crossing_stitch},
                    {"shaping", effort.shaping}, {"row", effort.row}};
  json["max_ladder"] = instance.machine.max_ladder;
  json["status"] = std::string(plan_status_name(plan.status));
  json["total_ms"] = plan.total_ms;
  json["bound_ms"] = plan.bound_ms;
  json["stops"] = plan.stops.size();
  json["plan_us"] = plan_us;
  json["solve_us"] = solve_us(instance, plan);
  return json;
}

// One run of each with so many seconds: how many are proven, and how long they take.
void survey(int seeds, const std::string& only, double seconds) {
  std::printf("%-18s%7s%8s%12s%12s%12s  %s\n", "kind", "panels", "proven", "median ms", "90th ms", "longest ms",
              "not proven (seed: gap)");
  for (const std::string& kind : instance_kinds()) {
    if (!only.empty() && only != kind) continue;
    std::vector<double> times;
    int proven = 0;
    std::string open;
    for (int seed = 1; seed <= seeds; ++seed) {
      const Instance instance = instance_of(kind, static_cast<std::uint64_t>(seed));
      std::stop_source stop;
      const std::clock_t begin = std::clock();
      const auto taken = [&] { return static_cast<double>(std::clock() - begin) / CLOCKS_PER_SEC; };
      PlanOptions options;
      options.stop = stop.get_token();
      options.progress = [&](const Progress&) {
        if (taken() > seconds) stop.request_stop();
      };
      const Plan found = plan(instance.grid, instance.machine, instance.effort, options);
      times.push_back(1000 * taken());
      if (found.status == PlanStatus::optimal) {
        ++proven;
      } else {
        char gap[64];
        std::snprintf(
            gap, sizeof gap, " %d: %.3f%%", seed,
            100.0 * static_cast<double>(found.total_ms - found.bound_ms) / static_cast<double>(found.total_ms));
        open += gap;
      }
    }
    std::sort(times.begin(), times.end());
    std::printf("%-18s%7d%8d%12.2f%12.2f%12.2f %s\n", kind.c_str(), seeds, proven, times[times.size() / 2],
                times[times.size() * 9 / 10], times.back(), open.c_str());
    std::fflush(stdout);
  }
}

// How well a time limit is kept by each call, in processor time from the end of the limit to the return, the median of
// three: what else the machine does counts neither for nor against it.

/// What a call gives back is destroyed outside the time that is measured.
using Call = std::function<std::shared_ptr<void>(const Instance&, const PlanOptions&)>;

template <class Result>
std::shared_ptr<void> result_of(Result&& result) {
  return std::make_shared<std::decay_t<Result>>(std::forward<Result>(result));
}

/// By how much a call passed its limit, and the error where it ended in one and so has no result.
struct Over {
  double ms = 0;
  std::string ended;
  /// What is promised: 20 ms, or 5 % where that is more.
  bool kept(int limit) const { return ms <= std::max(20.0, 0.05 * limit); }
};

Over over_limit(const Call& call, const Instance& instance, int limit) {
  std::vector<double> over;
  Over found;
  for (int run = 0; run < 3; ++run) {
    PlanOptions options;
    options.time_limit_ms = limit;
    std::shared_ptr<void> result;
    const ProcessorTime after(limit);
    try {
      result = call(instance, options);
    } catch (const Error& error) {
      if (error.code() != ErrorCode::cancelled && error.code() != ErrorCode::too_large) throw;
      found.ended = " " + std::string(error_name(error.code()));
    }
    over.push_back(after.ms());
  }
  std::sort(over.begin(), over.end());
  found.ms = over[1];
  return found;
}

/// For calls that have no time limit of their own: a host that looks at the clock when it is told how far they are.
WatchOptions watched(int limit_ms, std::stop_source& source) {
  WatchOptions options;
  options.stop = source.get_token();
  const auto end = std::chrono::steady_clock::now() + std::chrono::milliseconds(limit_ms);
  options.progress = [&source, end](const Progress&) {
    if (std::chrono::steady_clock::now() >= end) source.request_stop();
  };
  return options;
}

std::vector<std::pair<std::string, Call>> limited_calls() {
  const auto under = [](const Conditions& conditions) {
    return [conditions](const Instance& in, PlanOptions options) {
      options.conditions = conditions;
      return result_of(plan(in.grid, in.machine, in.effort, options));
    };
  };
  Conditions apart;
  apart.rows_apart = 3;
  Conditions kinds;
  kinds.max_kinds = 12;
  Conditions rhythm;
  rhythm.rhythms = {{1, 0, 20, {}}};
  Conditions few;
  few.rows_apart = 3;
  few.max_kinds = 4;
  Conditions many;
  many.rows_apart = 2;
  many.max_kinds = 36;
  many.forced_exempt = true;
  Conditions sided;
  sided.carriage_right_only = true;
  sided.max_depth = 9;
  // Of a plan cut short, as a host that asks for more about it has it.
  const auto hurried = [](const Instance& in) {
    PlanOptions options;
    options.work_limit = 1;
    return plan(in.grid, in.machine, in.effort, options);
  };
  // Made once for each panel, outside the time that is measured.
  const auto mine = [hurried](const Instance& in) -> const Plan& {
    static std::map<std::string, Plan> made;
    const auto [place, fresh] = made.try_emplace(in.kind + in.name);
    if (fresh) place->second = hurried(in);
    return place->second;
  };
  const auto proof = [](const Instance& in) -> const Certificate& {
    static std::map<std::string, Certificate> made;
    const auto [place, fresh] = made.try_emplace(in.kind + in.name);
    PlanOptions options;
    options.work_limit = 50'000'000;
    if (fresh) place->second = certify(in.grid, in.machine, in.effort, 0, options);
    return place->second;
  };
  return {
      {"plan", under({})},
      {"plan, side, depth 9", under(sided)},
      {"plan, rows_apart 3", under(apart)},
      {"plan, max_kinds 12", under(kinds)},
      {"plan, open rhythm", under(rhythm)},
      {"plan, apart 3, kinds 4", under(few)},
      {"plan, apart 2, kinds 36", under(many)},
      {"plan_regular",
       [](const Instance& in, const PlanOptions& options) {
         return result_of(plan_regular(in.grid, in.machine, in.effort, options));
       }},
      {"plan_two_rhythms",
       [](const Instance& in, const PlanOptions& options) {
         return result_of(plan_two_rhythms(in.grid, in.machine, in.effort, options));
       }},
      {"plan_front",
       [](const Instance& in, const PlanOptions& options) {
         return result_of(plan_front(in.grid, in.machine, in.effort, options));
       }},
      {"front, open rhythm",
       [rhythm](const Instance& in, PlanOptions options) {
         options.conditions = rhythm;
         return result_of(plan_front(in.grid, in.machine, in.effort, options));
       }},
      {"prices, apart 3, kinds 4",
       [few](const Instance& in, PlanOptions options) {
         options.conditions = few;
         return result_of(condition_prices(in.grid, in.machine, in.effort, options));
       }},
      {"regular, apart 3, kinds 4",
       [few](const Instance& in, PlanOptions options) {
         options.conditions = few;
         return result_of(plan_regular(in.grid, in.machine, in.effort, options));
       }},
      {"condition_prices",
       [apart](const Instance& in, PlanOptions options) {
         options.conditions = apart;
         options.conditions.carriage_right_only = true;
         return result_of(condition_prices(in.grid, in.machine, in.effort, options));
       }},
      {"stop_reasons",
       [mine](const Instance& in, const PlanOptions& options) {
         return result_of(stop_reasons(in.grid, in.machine, in.effort, mine(in), options));
       }},
      {"plan_tolerances",
       [mine](const Instance& in, const PlanOptions& options) {
         try {
           return result_of(plan_tolerances(in.grid, in.machine, in.effort, mine(in), options));
         } catch (const Error& error) {  // a longer search found a better one
           if (error.code() != ErrorCode::bad_argument) throw;
           return std::shared_ptr<void>();
         }
       }},
      {"certify",
       [mine](const Instance& in, const PlanOptions& options) {
         return result_of(certify(in.grid, in.machine, in.effort, mine(in).total_ms, options));
       }},
      {"check_certificate",
       [proof](const Instance& in, const PlanOptions& options) {
         std::stop_source source;
         const WatchOptions watch = watched(static_cast<int>(options.time_limit_ms), source);
         return result_of(check_certificate(in.grid, in.machine, in.effort, proof(in), watch));
       }},
      {"plan_period", [mine](const Instance& in, const PlanOptions&) { return result_of(plan_period(mine(in))); }},
  };
}

/// Crossings of one stitch over one that travel a column a row, one in five stitches, and purls between.
Grid crossed_panel(int columns, int rows) {
  Grid grid(rows, columns);
  for (int row = 1; row <= rows; ++row) {
    for (int column = 1 + row % 5; column + 4 < columns; column += 5) {
      grid.cross({.row = row, .column = column, .left = 1, .right = 1});
      if (row % 3 == 0) grid.set(row, column + 3, Cell::purl);
    }
  }
  return grid;
}

/// Whether all limits were kept.
bool limits(int most_rows, const std::string& only) {
  bool kept = true;
  constexpr std::array asked = {1, 5, 20, 100, 400};
  std::printf("%-27s%-14s%-12s", "ms over the limit", "kind", "panel");
  for (const int limit : asked) std::printf("%13d ms", limit);
  std::printf("\n");
  for (const auto& [columns, rows] :
       {std::pair(180, 400), std::pair(190, 1000), std::pair(194, 2000), std::pair(194, 3902)}) {
    if (rows > most_rows) continue;
    std::vector<Instance> panels(6);
    panels[0] = {"distinct", "", distinct_panel(columns, rows, 1), {}, {}};
    panels[1] = {"co-prime", "", instance_of("co-prime periods", 4, rows).grid, {}, {}};
    panels[2] = {"brief", "", brief_panel(rows), {}, {}};
    panels[3] = {"crossed", "", crossed_panel(columns, rows), {}, {}};
    panels[4] = {"stacks", "", stacked_panel(columns, rows, 1), {}, {}};
    panels[5] = {"eased", "", instance_of("eased crossings", 648, rows).grid, {}, {}};
    for (Instance& panel : panels) {
      panel.name = std::to_string(panel.grid.columns()) + " x " + std::to_string(rows);
      for (const auto& [name, call] : limited_calls()) {
        if (!only.empty() && name.find(only) == std::string::npos) continue;
        static_cast<void>(over_limit(call, panel, 1));  // what the calls are handed is made
        std::printf("%-27s%-14s%-12s", name.c_str(), panel.kind.c_str(), panel.name.c_str());
        for (const int limit : asked) {
          const Over over = over_limit(call, panel, limit);
          std::array<char, 32> ms{};
          std::snprintf(ms.data(), ms.size(), "%.1f%s", over.ms, over.ended.c_str());
          std::printf("%16s", ms.data());
          kept = kept && over.kept(limit);
        }
        std::printf("\n");
        std::fflush(stdout);
      }
    }
  }
  if (!kept) std::printf("NOT KEPT\n");
  return kept;
}

// A panel of the growth tables: 200 classes of more and more rows, or 480 rows of more and more classes.
Instance grown(const std::string& what, int times) {
  if (what == "rows") return instance_of("200 classes", 1, 60 * times);
  return {"", "", distinct_panel(6 * times, 480, 1), {}, {}};
}

void growth(const std::string& self, const std::string& what) {
  std::printf("%-8s%7s%18s%12s%8s%14s%20s\n", what.c_str(), "times", "stitches x rows", "median ms", "x", "memory KiB",
              "bytes a stitch");
  double first = 0;
  for (const int times : {1, 2, 4, 8, 16, 32}) {
    const Instance instance = grown(what, times);
    std::vector<double> seconds;
    for (int run = 0; run < 5; ++run) {
      const std::clock_t begin = std::clock();
      static_cast<void>(plan(instance.grid, instance.machine, instance.effort));
      seconds.push_back(static_cast<double>(std::clock() - begin) / CLOCKS_PER_SEC);
    }
    std::sort(seconds.begin(), seconds.end());
    if (times == 1) first = seconds[2];
    const long kib = kib_told_by(self, "peak " + what + " " + std::to_string(times));
    const double stitches = static_cast<double>(instance.grid.columns()) * instance.grid.rows();
    const std::string shape = std::to_string(instance.grid.columns()) + " x " + std::to_string(instance.grid.rows());
    std::printf("%15d%18s%12.2f%8.1f%14ld%20.0f\n", times, shape.c_str(), 1000 * seconds[2], seconds[2] / first, kib,
                1024.0 * static_cast<double>(kib) / stitches);
  }
}

}  // namespace

int main(int argc, char** argv) {
  if (argc > 1 && std::string(argv[1]) == "limits") {
    return limits(argc > 2 ? std::atoi(argv[2]) : 3902, argc > 3 ? argv[3] : "") ? 0 : 1;
  }
  if (argc > 1 && std::string(argv[1]) == "growth") {
    growth(argv[0], "rows");
    growth(argv[0], "classes");
    return 0;
  }
  if (argc > 3 && std::string(argv[1]) == "peak") {  // for growth()
    const Instance instance = grown(argv[2], std::atoi(argv[3]));
    const long before = peak_kib();
    static_cast<void>(plan(instance.grid, instance.machine, instance.effort));
    std::printf("%ld\n", peak_kib() - before);
    return 0;
  }
  const int seeds = argc > 1 ? std::atoi(argv[1]) : 5;
  const std::string kind = argc > 2 ? argv[2] : "";
  const int rows = argc > 4 && std::string(argv[3]) == "rows" ? std::atoi(argv[4]) : 0;
  if (argc > 3 && rows == 0) {
    survey(seeds, kind, std::atof(argv[3]));
    return 0;
  }
  for (const Instance& instance : instances(seeds, kind, rows)) {
    if (!kind.empty() && instance.kind != kind) continue;
    Plan result;
    const double plan_us = median_us([&] {
      PlanOptions options;
      options.work_limit = most_work;
      const std::clock_t begin = std::clock();
      result = plan(instance.grid, instance.machine, instance.effort, options);
      return us_since(begin);
    });
    std::printf("%s\n", told(instance, result, plan_us).dump().c_str());
    std::fflush(stdout);
  }
}
