// Plans generated panels and tells, a JSON line each: the panel, the efforts, what the plan takes, and how long
// planning took (median; processor time, so that other work on the machine does not count). tests/bench/plan_highs.py
// reads the lines and solves the same panels by a general solver.
//   latchwork_plan_bench [SEEDS [KIND]]      how many panels of each kind (5 unless said), and of which kind only
//   latchwork_plan_bench SEEDS KIND SECONDS  instead, a table: how many are proven in so many seconds ("" for all
//   kinds)
//   latchwork_plan_bench limits              instead, a table: how well a time limit is kept
//   latchwork_plan_bench growth              instead, tables: time and memory as rows and classes grow

#include <algorithm>
#include <chrono>
#include <cstdio>
#include <cstdlib>
#include <ctime>
#include <nlohmann/json.hpp>
#include <string>
#include <utility>
#include <vector>

#include "instances.hpp"
#include "latchwork/grid.hpp"
#include "latchwork/plan.hpp"
#include "memory.hpp"

using namespace latchwork;
using namespace latchwork_test;

namespace {

// Panels of a person's size, then of each kind of the generator, then growth in rows.
std::vector<Instance> instances(int seeds) {
  std::vector<Instance> out;
  const auto add_brief = [&](const std::string& kind, const std::string& name, int rows) {
    out.push_back({kind, name, brief_panel(rows), {}, {}});
  };
  for (const int rows : {120, 240}) add_brief("brief", "mirrored brief, " + std::to_string(rows) + " rows", rows);
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

nlohmann::ordered_json told(const Instance& instance, const Plan& plan, double median_us) {
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
  json["plan_us"] = median_us;
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

// How well the time limit is kept, by the clock, on panels that take longer: best of several runs, since what else the
// machine does counts against it.
void limits() {
  std::printf("%-18s%9s%9s%12s%14s\n", "kind", "asked ms", "took ms", "over ms", "gap");
  for (const auto& [kind, seed] :
       {std::pair{"co-prime periods", 4}, std::pair{"tuck stacks", 4}, std::pair{"many classes", 6}}) {
    const Instance instance = instance_of(kind, static_cast<std::uint64_t>(seed));
    for (const int asked : {5, 20, 100, 400}) {
      double took = 1e9;
      Plan found;
      for (int run = 0; run < 5; ++run) {
        PlanOptions options;
        options.time_limit_ms = asked;
        const auto begin = std::chrono::steady_clock::now();
        found = plan(instance.grid, instance.machine, instance.effort, options);
        took =
            std::min(took, std::chrono::duration<double, std::milli>(std::chrono::steady_clock::now() - begin).count());
      }
      std::printf("%-18s%9d%9.1f%12.1f%13.3f%%\n", kind, asked, took, took - asked,
                  100.0 * static_cast<double>(found.total_ms - found.bound_ms) / static_cast<double>(found.total_ms));
    }
  }
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
    limits();
    return 0;
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
  if (argc > 3) {
    survey(seeds, kind, std::atof(argv[3]));
    return 0;
  }
  for (const Instance& instance : instances(seeds)) {
    if (!kind.empty() && instance.kind != kind) continue;
    std::vector<double> times;
    Plan result;
    double spent = 0;
    while (times.empty() || (times.size() < 25 && spent < 2e5)) {
      PlanOptions options;
      options.work_limit = std::int64_t{4'000'000'000};  // a minute or less: what is not closed then is told so
      const std::clock_t begin = std::clock();
      result = plan(instance.grid, instance.machine, instance.effort, options);
      const double took = 1e6 * static_cast<double>(std::clock() - begin) / CLOCKS_PER_SEC;
      times.push_back(took);
      spent += took;
    }
    std::sort(times.begin(), times.end());
    std::printf("%s\n", told(instance, result, times[times.size() / 2]).dump().c_str());
    std::fflush(stdout);
  }
}
