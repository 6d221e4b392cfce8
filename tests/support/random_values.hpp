#pragma once

#include <algorithm>
#include <bit>
#include <cstdint>
#include <limits>
#include <string>
#include <utility>
#include <vector>

#include "latchwork/file.hpp"
#include "random_grid.hpp"

// Random values of what files hold: anything that a type can be and a file can say.
namespace latchwork_test {

using namespace latchwork;

/// A text of every kind of character, and every length that matters.
inline std::string any_text(Random& random) {
  static const std::vector<std::string> characters = {"a",
                                                      "Z",
                                                      " ",
                                                      "\"",
                                                      "\\",
                                                      "/",
                                                      "\n",
                                                      "\t",
                                                      "\r",
                                                      "\x01",
                                                      "\x01",
                                                      "\x7F",
                                                      "'",
                                                      "<",
                                                      "&",
                                                      "{",
                                                      "[",
                                                      ",",
                                                      ":",
                                                      "\xC3\xA9",
                                                      "\xE7\xB7\xA8",
                                                      "\xEF\xBB\xBF",
                                                      "\xF0\x9F\xA7\xB6"};
  std::string text;
  for (int i = random.between(0, 12); i > 0; --i) {
    text += characters[static_cast<std::size_t>(random.between(0, static_cast<int>(characters.size()) - 1))];
  }
  return text;
}

inline int any_int(Random& random) {
  switch (random.between(0, 3)) {
    case 0:
      return std::numeric_limits<int>::min();
    case 1:
      return std::numeric_limits<int>::max();
    case 2:
      return random.between(-3, 3);
    default:
      return static_cast<int>(static_cast<std::uint32_t>(random.next()));
  }
}

inline std::int64_t any_time(Random& random) {
  return random.one_in(2) ? any_int(random) : static_cast<std::int64_t>(random.next());
}

/// Any needle that has a name, and now and then the 0 that has none.
inline int any_needle(Random& random) {
  const int needle = any_int(random);
  return needle == std::numeric_limits<int>::min() ? 0 : needle;
}

template <class Item, class Make>
std::vector<Item> some(Random& random, Make&& make) {
  std::vector<Item> items;
  for (int i = random.between(0, 3); i > 0; --i) items.push_back(make(random));
  return items;
}

inline Crossing any_crossing(Random& random) {
  return {.row = any_int(random),
          .column = any_int(random),
          .left = any_int(random),
          .centre = any_int(random),
          .right = any_int(random),
          .lean = static_cast<Lean>(random.between(0, 1)),
          .place = static_cast<Centre>(random.between(0, 2))};
}

inline CrossingStep any_step(Random& random) {
  CrossingStep step;
  step.crossing = any_crossing(random);
  step.returns = some<GroupReturn>(random, [](Random& r) {
    return GroupReturn{static_cast<GroupName>(r.between(0, 2)), any_int(r), any_needle(r), any_needle(r),
                       some<int>(r, any_int)};
  });
  step.ease = random.one_in(2);
  return step;
}

inline Reform any_reform(Random& random) {
  Reform reform{any_needle(random), any_int(random), any_int(random), any_int(random), {}};
  for (int i = random.between(0, 9); i > 0; --i) reform.rungs.push_back(static_cast<Cell>(random.between(0, 4)));
  return reform;
}

inline Stop any_stop(Random& random) {
  Stop stop;
  stop.row = any_int(random);
  stop.carriage_right = random.one_in(2);
  stop.releases = some<int>(random, any_needle);
  stop.reforms = some<Reform>(random, any_reform);
  stop.crossings = some<CrossingStep>(random, any_step);
  stop.shapings = some<Shaping>(random, [](Random& r) { return Shaping{any_needle(r), any_int(r), r.one_in(2)}; });
  stop.holds = some<int>(random, any_needle);
  stop.effort_ms = any_time(random);
  return stop;
}

inline Finding any_finding(Random& random) {
  Finding finding;
  finding.code = static_cast<FindingCode>(random.between(1, 17));
  finding.severity = static_cast<Severity>(random.between(0, 2));
  if (random.one_in(2)) finding.place.row = any_int(random);
  if (random.one_in(2)) finding.place.column = any_int(random);
  if (random.one_in(2)) finding.place.line = any_int(random);
  if (random.one_in(2)) finding.place.character = any_int(random);
  if (random.one_in(2)) finding.place.field = any_text(random);
  finding.last_row = any_int(random);
  finding.last_column = any_int(random);
  finding.value = any_int(random);
  finding.limit = any_int(random);
  finding.message = any_text(random);
  finding.suggestion = any_text(random);
  return finding;
}

inline Plan any_plan(Random& random) {
  Plan plan;
  plan.rows = any_int(random);
  plan.columns = any_int(random);
  plan.leftmost = any_needle(random);
  plan.carriage_starts_right = random.one_in(2);
  plan.columns_on = some<int>(random, any_int);
  plan.stops = some<Stop>(random, any_stop);
  plan.total_ms = any_time(random);
  plan.bound_ms = any_time(random);
  plan.status = static_cast<PlanStatus>(random.between(0, 2));
  if (random.one_in(2)) plan.rhythm = Rhythm{any_int(random), any_int(random)};
  plan.findings = some<Finding>(random, any_finding);
  return plan;
}

inline StopPrice any_stop_price(Random& random) {
  return {any_int(random), any_time(random)};
}

inline WaleClass any_wale_class(Random& random) {
  WaleClass one;
  one.wales = some<int>(random, any_int);
  one.prices = some<StopPrice>(random, any_stop_price);
  one.least = any_time(random);
  return one;
}

inline Branch any_branch(Random& random) {
  Branch branch;
  branch.row = any_int(random);
  branch.below = any_int(random);
  branch.stop = random.one_in(2);
  branch.end = static_cast<BranchEnd>(random.between(0, 2));
  branch.by = any_int(random);
  return branch;
}

inline Stretch any_stretch(Random& random) {
  return {any_int(random), any_time(random), some<Branch>(random, any_branch)};
}

inline Certificate any_certificate(Random& random) {
  Certificate certificate;
  certificate.rows = any_int(random);
  certificate.columns = any_int(random);
  certificate.bound_ms = any_time(random);
  certificate.unit = any_time(random);
  certificate.forced = some<int>(random, any_int);
  certificate.classes = some<WaleClass>(random, any_wale_class);
  certificate.stretches = some<Stretch>(random, any_stretch);
  certificate.branches = some<Branch>(random, any_branch);
  return certificate;
}

/// A panel over a random grid, cut at random into bands and strips.
inline Panel any_panel(Random& random) {
  const Grid grid = any_grid(random);
  std::vector<Band> bands;
  for (int row = 1; row <= grid.rows();) {
    Band band{row, random.between(1, grid.rows() + 1 - row), {}};
    for (int column = 0; column < grid.columns();) {
      const int columns = random.between(1, grid.columns() - column);
      band.strips.push_back({any_text(random), any_text(random), column, columns, random.between(1, 1000)});
      column += columns;
    }
    row += band.rows;
    bands.push_back(std::move(band));
  }
  Panel panel(any_text(random), grid, std::move(bands));
  if (random.one_in(2)) panel.set_axis_half_columns(random.between(1, 2 * grid.columns() - 1));
  return panel;
}

inline MachineFile any_machine(Random& random) {
  MachineFile file;
  Machine& machine = file.machine;
  machine.name = any_text(random);
  machine.needles = random.between(2, 4000);
  do {
    machine.pitch_mm = std::bit_cast<double>(random.next() >> 2);  // half of all positive doubles
  } while (!(machine.pitch_mm > 0 && machine.pitch_mm <= 50));
  machine.leftmost = random.between(-4000, 4000);
  machine.prongs = some<int>(random, [](Random& r) { return r.between(1, 20); });
  std::sort(machine.prongs.begin(), machine.prongs.end());
  machine.prongs.erase(std::unique(machine.prongs.begin(), machine.prongs.end()), machine.prongs.end());
  machine.comfortable_crossing = random.between(1, 4000);
  machine.tuck_limit = random.between(1, 65536);
  machine.float_limit = random.between(1, 4000);
  machine.max_ladder = random.between(1, 65536);
  machine.cast_on_loops = random.one_in(2);
  machine.carriage_starts_right = random.one_in(2);
  Effort& effort = file.effort;
  for (std::int64_t* cost :
       {&effort.stop, &effort.batch, &effort.drop, &effort.rung_knit, &effort.rung_purl, &effort.rung_tuck,
        &effort.rung_slip, &effort.crossing, &effort.crossing_stitch, &effort.hold, &effort.shaping, &effort.row}) {
    *cost = random.between(0, 3'600'000);
  }
  return file;
}

/// One that can be reckoned for some panel.
inline YarnRequest any_yarn_request(Random& random) {
  const auto number = [&](double least, double most) {
    return least + (most - least) * (static_cast<double>(random.next() >> 11) * 0x1p-53);
  };
  const auto or_zero = [&](double least, double most) { return random.one_in(3) ? 0 : number(least, most); };
  const auto texture = [&](Random& r) { return "t" + std::to_string(r.between(1, 9)); };
  YarnRequest request;
  const int yarns = random.between(1, 4);
  for (int i = 0; i < yarns; ++i) {
    Yarn yarn{"\xC3\xA9\"\n" + texture(random),
              {static_cast<YarnSystem>(random.between(0, 15)), number(0.5, 400), random.between(1, 4)},
              or_zero(1, 500)};
    if (yarns == 1 && random.one_in(3)) yarn.number = {};
    request.yarns.push_back(yarn);
  }
  const bool known = request.yarns[0].number.number > 0;
  request.rows = some<YarnRows>(random, [&](Random& r) {
    const int first = r.between(1, Grid::max_side);
    return YarnRows{first, r.one_in(3) ? 0 : r.between(first, Grid::max_side), r.between(0, yarns - 1)};
  });
  request.weighed = some<WeighedSwatch>(random, [&](Random& r) {
    const bool area = r.one_in(2);
    const bool counts = !area || r.one_in(2);
    return WeighedSwatch{texture(r),
                         number(0.5, 300),
                         or_zero(0.01, 5),
                         area ? number(1, 1e5) : 0,
                         area ? number(1, 1e5) : 0,
                         counts ? number(1, 1e6) : 0,
                         counts ? number(1, 1e6) : 0,
                         known ? or_zero(1, 1e6) : 0,
                         static_cast<ClothState>(r.between(0, 2))};
  });
  request.loops = some<MeasuredLoops>(random, [&](Random& r) {
    return MeasuredLoops{texture(r), number(1, 1e9), number(0.1, 1e9)};
  });
  int substituted = 0;  // each texture once, and none by itself
  request.substitutes = some<Substitute>(random, [&](Random& r) {
    return Substitute{"s" + std::to_string(substituted++), texture(r)};
  });
  if (random.one_in(2)) request.state = static_cast<ClothState>(random.between(0, 2));
  if (random.one_in(2)) request.plain = PlainConstants{number(0.1, 100), number(0.1, 100)};
  request.pieces = random.between(1, 10'000);
  request.cast_on_rows = number(0, 1000);
  request.bind_off_rows = number(0, 1000);
  request.waste_rows = number(0, 1e6);
  request.waste_yarn = random.between(-1, yarns - 1);
  request.seam_mm = known ? number(0, 1e6) : 0;
  request.seam_ratio = number(1, 20);
  request.seam_yarn = random.between(0, yarns - 1);
  request.sureness = number(0, 6);
  request.allowance = number(0, 2);
  return request;
}

}  // namespace latchwork_test
