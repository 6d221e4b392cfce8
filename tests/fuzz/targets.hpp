#pragma once

#include <algorithm>
#include <array>
#include <cmath>
#include <cstdint>
#include <cstdio>
#include <cstdlib>
#include <cstring>
#include <string>
#include <string_view>

#include "brief/asked.hpp"
#include "latchwork/article.hpp"
#include "latchwork/article_fit.hpp"
#include "latchwork/certificate.hpp"
#include "latchwork/chart.hpp"
#include "latchwork/file.hpp"
#include "latchwork/fit.hpp"
#include "latchwork/gauge.hpp"
#include "latchwork/grading.hpp"
#include "latchwork/instructions.hpp"
#include "latchwork/quantity.hpp"
#include "latchwork/reason.hpp"
#include "latchwork/schematic.hpp"
#include "latchwork/session.hpp"
#include "latchwork/shaping.hpp"
#include "latchwork/simulate.hpp"
#include "latchwork/size.hpp"
#include "latchwork/timings.hpp"
#include "latchwork/yarn.hpp"
#include "latchwork/yarn_need.hpp"
#include "text/utf8.hpp"

// Every reader of bytes, given any bytes at all. A reader either refuses with a place and a message that is UTF-8, or
// gives a value that is written and read again to an equal one. Anything else ends the process. So does, of plans,
// which are plain data and may hold any number, any answer but a text, a count or an Error.
namespace latchwork_fuzz {

using namespace latchwork;

[[noreturn]] inline void fail(const char* what, std::string_view detail) {
  std::fprintf(stderr, "%s: %.*s\n", what, static_cast<int>(detail.size()), detail.data());
  std::abort();
}

template <class Read, class Write>
void check(std::string_view bytes, bool placed, Read&& read, Write&& write_back) {
  try {
    const auto value = read(bytes);
    std::string text;
    try {
      text = write_back(value);
      if (!(read(text) == value)) fail("read back unequal", text);
    } catch (const Error& error) {
      fail("what was read is not written and read again", error.what());
    }
  } catch (const Error& error) {
    if (utf8_error(error.what()) != std::string_view::npos) fail("a message that is not UTF-8", error.what());
    if (utf8_error(error.place().field) != std::string_view::npos) fail("a field that is not UTF-8", error.what());
    if (error.code() == ErrorCode::internal) fail("an invariant was broken", error.what());
    if (placed && error.place().line < 1) fail("an error without a line", error.what());
  }
}

inline void grid_text(std::string_view bytes) {
  check(bytes, true, Grid::from_text, [](const Grid& grid) { return grid.to_text(); });
}
inline void grid_json(std::string_view bytes) {
  check(bytes, true, read_grid, [](const Grid& grid) { return write(grid); });
}
inline void strip_json(std::string_view bytes) {
  check(bytes, true, read_strip, [](const Strip& strip) { return write(strip); });
}
inline void panel_json(std::string_view bytes) {
  check(bytes, true, read_panel, [](const Panel& panel) { return write(panel); });
}
inline void is_refused_well(const Error& error) {
  if (error.code() == ErrorCode::internal) fail("an invariant was broken", error.what());
  if (utf8_error(error.what()) != std::string_view::npos) fail("a message that is not UTF-8", error.what());
}

/// A need of yarn for plain knit: refused, or of numbers.
inline void reckon(const YarnRequest& request) {
  static const Panel panel("plain", Strip{"stockinette", "stockinette", Grid(6, 5)});
  static const Swatch swatch({{"stockinette", Counted::stitches, 28, 100, "", "", ClothState::rested},
                              {"stockinette", Counted::stitches, 29, 100, "", "", ClothState::rested},
                              {"stockinette", Counted::rows, 40, 100, "", "", ClothState::rested},
                              {"stockinette", Counted::stitches, 30, 100, "", "", ClothState::washed},
                              {"stockinette", Counted::rows, 42, 100, "", "", ClothState::washed}});
  try {
    const YarnNeed need = yarn_need(panel, swatch, request);
    if (!(need.apart >= 0 && need.apart <= 4)) fail("routes are apart by no number", {});
    for (const YarnEstimate& estimate : need.estimates) {
      for (const double number : {estimate.weight_g, estimate.spread_g, estimate.margin_g, estimate.length_m}) {
        if (!(number >= 0 && std::isfinite(number))) fail("an estimate that is no number", {});
      }
      for (const YarnShare& share : estimate.shares) {
        if (!(share.buy_g >= share.weight_g && share.buy_g <= 1e9 && share.balls >= 0)) fail("no share", {});
      }
    }
  } catch (const Error& error) {
    is_refused_well(error);
  }
}

inline void yarn_json(std::string_view bytes) {
  check(bytes, true, read_yarn_request, [](const YarnRequest& request) { return write(request); });
  try {
    reckon(read_yarn_request(bytes));
  } catch (const Error& error) {
    is_refused_well(error);
  }
}
/// An article, or the choices of one; what was read is reckoned, too, by the first of all there is to choose.
inline void article_json(std::string_view bytes) {
  check(bytes, true, read_article_request, [](const ArticleRequest& request) { return write(request); });
  check(bytes, true, read_article, [](const Article& article) { return write(article); });
  try {
    const Article article = read_article(bytes);
    ArticleChoices choices;
    if (!article.lists.empty()) choices.list = article.lists[0].name;
    if (!article.lists.empty()) choices.size = article.lists[0].sizes[0].name;
    if (!article.rules.empty()) choices.rule = article.rules[0].name;
    if (!article.closures.empty()) choices.closure = article.closures[0].name;
    for (const ArticleInput& input : article.inputs) {
      choices.measures.push_back({input.name, input.least_mm, input.greatest_mm, ""});
    }
    for (const ArticleCount& count : article.counts) choices.counts.push_back({count.name, count.greatest});
    const Targets made = targets(article, choices);
    for (const TargetPiece& piece : made.pieces) {
      if (!(piece.width_least_mm >= 1 && piece.width_greatest_mm <= 1e5 && piece.count > 0)) fail("no piece", bytes);
    }
    if (!(made.seam_least_mm >= 0 && std::isfinite(made.seam_greatest_mm))) fail("no seam", bytes);
  } catch (const Error& error) {
    if (error.code() == ErrorCode::internal) fail("an invariant was broken", error.what());
    if (utf8_error(error.what()) != std::string_view::npos) fail("a message that is not UTF-8", error.what());
  }
}
inline void machine_json(std::string_view bytes) {
  check(bytes, true, read_machine, [](const MachineFile& file) { return write(file); });
}
/// A brief's own settings; what was read is what sessions and rests may be.
inline void brief_json(std::string_view bytes) {
  check(bytes, true, report::read_asked, report::write_asked);
  report::Asked asked;
  try {
    asked = report::read_asked(bytes);
  } catch (const Error&) {
    return;  // looked at above
  }
  try {
    Plan plan;
    plan.rows = 3;
    const SessionOptions options{.session_ms = asked.session_ms, .rest_ms = asked.rest_ms};
    if (sessions(plan, Effort{}, options).size() > 1) fail("three rows in several sessions", bytes);
    if (!rests(plan, Effort{}, options).empty()) fail("a rest from no hand work", bytes);
  } catch (const Error& error) {
    fail("settings that were read are refused", error.what());
  }
}
inline void plan_json(std::string_view bytes) {
  check(bytes, true, read_plan, [](const Plan& plan) { return write(plan); });
}
inline void certificate_json(std::string_view bytes) {
  check(bytes, true, read_certificate, [](const Certificate& certificate) { return write(certificate); });
}
/// A digit, the deepest ladder; a small panel as text; an empty line; a certificate, checked against the panel. None
/// that holds proves more than a plan takes, and none proves anything of a panel that cannot be made.
inline void certificate_check(std::string_view bytes) {
  const std::size_t end = bytes.find("\n\n");
  if (bytes.size() < 2 || end == std::string_view::npos || end > 400) return;
  Machine machine;
  machine.max_ladder = 1 + static_cast<unsigned char>(bytes[0] - '1') % 12;
  Effort effort;
  effort.stop = 90'000;
  try {
    const Grid grid = Grid::from_text(bytes.substr(2, end - 1));
    const Certificate certificate = read_certificate(bytes.substr(end + 2));
    double share = 0;
    const WatchOptions watch{.stop = {}, .progress = [&](const Progress& progress) {
                               if (!(progress.share >= share && progress.share <= 1)) fail("progress falls", bytes);
                               share = progress.share;
                             }};
    const CertificateCheck checked = check_certificate(grid, machine, effort, certificate, watch);
    if (share != 1) fail("progress ends before the end", bytes);
    if (checked.message.empty() || utf8_error(checked.message) != std::string_view::npos) fail("no message", bytes);
    if (!checked.holds) return;
    const Plan made = plan(grid, machine, effort);
    if (made.status == PlanStatus::infeasible || made.total_ms < checked.bound_ms) fail("a false proof", bytes);
  } catch (const Error& error) {
    if (error.code() == ErrorCode::internal) fail("an invariant was broken", error.what());
    if (utf8_error(error.what()) != std::string_view::npos) fail("a message that is not UTF-8", error.what());
  }
}
/// What was read is made gauges of, looked at for doubts, held against its other states and sized with, too.
inline void swatch_csv(std::string_view bytes) {
  check(bytes, true, read_swatch, [](const Swatch& swatch) { return write(swatch); });
  try {
    const Swatch swatch = read_swatch(bytes);
    for (const Finding& finding : swatch_findings(swatch)) {
      if (utf8_error(finding.message) != std::string_view::npos) fail("a message that is not UTF-8", bytes);
    }
    for (const Shrinkage& each : shrinkages(swatch)) {
      if (!(std::isfinite(each.width_percent) && std::isfinite(each.length_percent) &&
            std::isfinite(each.width_error) && std::isfinite(each.length_error)))
        fail("a shrinkage not finite", {});
    }
    const auto some = swatch.measurements().first(std::min<std::size_t>(swatch.measurements().size(), 20));
    for (const Measurement& measurement : some) {
      const std::string& texture = measurement.texture;
      if (!swatch.has(texture)) continue;
      const Gauge gauge = swatch.gauge(texture);
      for (const Density& density : {gauge.stitches, gauge.rows}) {
        if (!(density.per_10cm > 0 && std::isfinite(density.per_10cm))) fail("a gauge that is none", texture);
        if (!(density.spread >= 0 && std::isfinite(density.spread))) fail("a spread that is none", texture);
      }
      const Size made = size(Panel("any", Strip{"any", texture, Grid(3, 5)}), swatch);
      if (!(made.width_mm > 0 && std::isfinite(made.width_margin_mm) && std::isfinite(made.height_margin_mm))) {
        fail("a size that is none", texture);
      }
      break;  // of the first that has a gauge
    }
  } catch (const Error& error) {
    if (error.code() == ErrorCode::internal) fail("an invariant was broken", error.what());
  }
}
/// What was read is fitted and described, too.
inline void timings_csv(std::string_view bytes) {
  check(bytes, true, read_timings, [](const Timings& timings) { return write(timings); });
  try {
    const EffortFit fit = fit_effort(read_timings(bytes));
    if (utf8_error(describe(fit)) != std::string_view::npos) fail("a description that is not UTF-8", {});
    for (const TermFit& term : fit.terms) {
      if (!(term.estimate_ms >= 0 && term.estimate_ms <= 3'600'001)) fail("a cost out of range", {});
      if (term.standard_error_ms && !std::isfinite(*term.standard_error_ms)) fail("an error that is not finite", {});
    }
    for (const OutlyingSpell& one : fit.outlying) {
      if (!std::isfinite(one.residual_ms) || !std::isfinite(one.studentized)) fail("a residual not finite", {});
    }
  } catch (const Error& error) {
    if (error.code() == ErrorCode::internal) fail("an invariant was broken", error.what());
  }
}

/// An answer, or an Error that is not our own.
template <class Call>
void tried(Call&& call) {
  try {
    call();
  } catch (const Error& error) {
    if (error.code() == ErrorCode::internal) fail("an invariant was broken", error.what());
    if (utf8_error(error.what()) != std::string_view::npos) fail("a message that is not UTF-8", error.what());
  }
}

/// A plan of any numbers, and all that is made of one: for a panel of its own size, where that is small.
inline void plan_use(std::string_view bytes) {
  Plan plan;
  try {
    plan = read_plan(bytes);
  } catch (const Error&) {
    return;  // plan_json looks at these
  }
  const bool small = plan.rows >= 1 && plan.rows <= 40 && plan.columns >= 1 && plan.columns <= 40;
  const Panel panel("any", Strip{"any", "any", small ? Grid(plan.rows, plan.columns) : Grid(4, 4)});
  const auto is_text = [](const std::string& text) {
    if (text.empty() || utf8_error(text) != std::string_view::npos) fail("a text that is not UTF-8", text);
  };
  tried([&] { is_text(instructions(panel, plan, Machine{})); });
  for (const Side side : {Side::right_side, Side::operator_view}) {
    tried([&] { is_text(chart_svg(panel, {.side = side, .plan = &plan})); });
    tried([&] { is_text(chart_text(panel, {.side = side, .plan = &plan})); });
  }
  tried([&] {
    const HandWork work = hand_work(plan);
    if (work.stitches_crossed < 0 || work.hand_ms < 0 || work.carriage_ms < 0) fail("hand work below nothing", bytes);
  });
  tried([&] { is_text(verify(panel.grid(), plan).message); });
  if (plan.rows > 1000) return;  // what follows goes through all rows
  tried([&] {
    const Period period = plan_period(plan);
    if (period.last_row > std::max(0, plan.rows)) fail("a period past the last row", bytes);
  });
  tried([&] {
    for (const Move& move : moves(plan)) is_text(describe(move));
  });
}

/// All readers of quantities on one text, each written in all units.
inline void quantity(std::string_view bytes) {
  for (int unit = 0; unit <= static_cast<int>(LengthUnit::yard); ++unit) {
    const auto in = static_cast<LengthUnit>(unit);
    check(
        bytes, false, [](std::string_view text) { return read_length(text, "length"); },
        [&](const Length& length) { return length_text(length, in); });
    check(
        bytes, false, [](std::string_view text) { return read_count_per_length(text); },
        [&](const CountPerLength& density) { return count_per_length_text(density, in); });
  }
  for (int unit = 0; unit <= static_cast<int>(WeightUnit::grain); ++unit) {
    check(
        bytes, false, [](std::string_view text) { return read_weight(text, "weight"); },
        [&](const Weight& weight) { return weight_text(weight, static_cast<WeightUnit>(unit)); });
  }
  check(
      bytes, false, [](std::string_view text) { return read_duration(text); }, duration_text);
  try {
    const double density = per_10cm(read_count_per_length(bytes));
    if (!(density > 0 && std::isfinite(density))) fail("a density that is no number", bytes);
  } catch (const Error& error) {
    is_refused_well(error);
  }
}

inline void yarn_number(std::string_view bytes) {
  check(
      bytes, false, [](std::string_view text) { return read_yarn_number(text, "yarn"); }, yarn_number_text);
  try {
    const YarnNumber yarn = read_yarn_number(bytes, "yarn");
    const double tex = yarn_tex(yarn);
    if (!(tex > 0 && std::isfinite(tex))) fail("a yarn of no tex", bytes);
    for (int system = 0; system <= static_cast<int>(YarnSystem::metres_per_100g); ++system) {
      const YarnNumber other = yarn_number_in(yarn, static_cast<YarnSystem>(system));
      if (!(std::abs(yarn_tex(other) - tex) <= 1e-9 * tex)) fail("another yarn in another system", bytes);
    }
  } catch (const Error& error) {
    is_refused_well(error);
  }
}

/// Numbers out of bytes, any bit pattern; 0 past their end.
class Numbers {
 public:
  explicit Numbers(std::string_view bytes) : bytes_(bytes) {}
  template <class T>
  T next() {
    T value{};
    const std::size_t size = std::min(sizeof(T), bytes_.size());
    if (size == sizeof(T)) std::memcpy(&value, bytes_.data(), size);
    bytes_.remove_prefix(size);
    return value;
  }
  int small(int most) { return next<std::uint8_t>() % (most + 1); }

 private:
  std::string_view bytes_;
};

inline EdgeShape any_edge(Numbers& numbers) {
  EdgeShape out;
  out.line = static_cast<EdgeLine>(numbers.small(2));
  out.start = numbers.next<std::int8_t>();
  for (int i = numbers.small(6); i > 0; --i)
    out.points.push_back({numbers.next<std::int16_t>(), numbers.next<double>()});
  for (int i = numbers.small(6); i > 0; --i) {
    out.events.push_back({numbers.next<std::int16_t>(), numbers.next<std::int32_t>(), numbers.next<std::int32_t>(),
                          numbers.next<std::int32_t>()});
  }
  return out;
}

/// A shape between two edges: refused, or one that a panel takes and gives back.
inline void shape(std::string_view bytes) {
  Numbers numbers(bytes);
  try {
    const int rows = numbers.next<std::int8_t>();
    const int columns = numbers.next<std::int8_t>();
    const int step = numbers.next<std::int8_t>();
    const EdgeShape left = any_edge(numbers);
    const Outline outline = outlined(rows, columns, left, any_edge(numbers), step);
    if (outline.rows.size() != static_cast<std::size_t>(rows)) fail("an outline of another height", {});
    if (outline_text(outline).empty()) fail("an outline without words", {});
    const Panel panel("any", Strip{"any", "any", Grid(rows, columns)});
    if (!(outline_of(shaped(panel, outline).grid()) == outline)) fail("a shape that is not read back", {});
  } catch (const Error& error) {
    if (error.code() == ErrorCode::internal) fail("an invariant was broken", error.what());
  }
}

/// A drawing of any numbers: refused, or without one that is none.
inline void schematic(std::string_view bytes) {
  Numbers numbers(bytes);
  Schematic drawing;
  drawing.unit = static_cast<LengthUnit>(numbers.small(6));
  const bool coarse = numbers.small(1) == 1;  // in quarters of a millimetre, where corners and edges often meet
  const auto place = [&] { return coarse ? numbers.next<std::int16_t>() / 4.0 : numbers.next<double>(); };
  const auto point = [&] {
    const double x = place();
    return OutlinePoint{x, place()};
  };
  for (int i = numbers.small(3); i > 0; --i) {
    SchematicPiece piece;
    piece.seam_left = numbers.small(1) == 1;
    for (int j = numbers.small(12); j > 0; --j) piece.outline.push_back(point());
    for (int j = numbers.small(6); j > 0; --j) {
      const auto side = static_cast<MeasureSide>(numbers.small(4));
      const OutlinePoint start = point();
      piece.measures.push_back({"m", side, start, point(), numbers.next<double>(), {}});
    }
    drawing.pieces.push_back(std::move(piece));
  }
  try {
    const std::string svg = schematic_svg(drawing);
    if (svg.find("nan") != std::string::npos || svg.find("inf") != std::string::npos) fail("no number", svg);
  } catch (const Error& error) {
    if (error.code() == ErrorCode::internal) fail("an invariant was broken", error.what());
  }
}

/// Requests of any numbers to what reckons with them: each is refused, or answered with numbers.
inline void requests(std::string_view bytes) {
  Numbers numbers(bytes);
  // Most requests are looked at past their first field: a number is near a sensible one, or any there is.
  const auto about = [&](double sensible) {
    return numbers.small(7) == 0 ? numbers.next<double>() : sensible * (numbers.small(255) + 1) / 64.0;
  };
  const auto whole = [&](int sensible) {
    return numbers.small(15) == 0 ? numbers.next<std::int32_t>() : numbers.small(sensible);
  };
  YarnRequest yarn;
  for (int i = numbers.small(2); i >= 0; --i) {
    yarn.yarns.push_back({"y", {static_cast<YarnSystem>(numbers.small(16)), about(20), whole(3)}, about(50)});
  }
  for (int i = numbers.small(2); i > 0; --i) {
    yarn.weighed.push_back({"stockinette", about(5), about(0.1), about(100), about(100), about(28), about(40),
                            about(100), static_cast<ClothState>(numbers.small(3))});
    yarn.loops.push_back({"stockinette", about(100), about(1000)});
  }
  for (int i = numbers.small(2); i > 0; --i) yarn.rows.push_back({whole(6), whole(6), whole(2)});
  if (numbers.small(1) == 1) yarn.plain = PlainConstants{about(5), about(4)};
  if (numbers.small(1) == 1) yarn.state = static_cast<ClothState>(numbers.small(3));
  yarn.pieces = whole(8);
  yarn.cast_on_rows = about(1);
  yarn.waste_rows = about(10);
  yarn.seam_mm = about(500);
  yarn.seam_ratio = about(3);
  yarn.sureness = about(2);
  yarn.allowance = about(0.1);
  reckon(yarn);

  const auto strip = [](const char* name, int columns) { return Strip{name, "stockinette", Grid(2, columns)}; };
  static const Swatch swatch({{"stockinette", Counted::stitches, 28, 100}, {"stockinette", Counted::rows, 40, 100}});
  FitRequest fit_request;
  fit_request.width_mm = about(100);
  fit_request.height_mm = about(50);
  fit_request.width_most_mm = numbers.small(1) * about(120);
  if (numbers.small(1) == 1) fit_request.tolerance_percent = about(5);
  for (int i = numbers.small(1); i >= 0; --i) fit_request.groups.push_back({{strip("a", 3)}, whole(3), whole(12)});
  fit_request.edge = strip("edge", 1);
  fit_request.edge_least = whole(2);
  fit_request.edge_most = whole(4);
  fit_request.panels_most = whole(3);
  fit_request.seam_stitches = numbers.small(2) / 2.0;
  fit_request.rows_step = whole(6);
  fit_request.rows_extra = whole(3);
  fit_request.needles = whole(200);
  fit_request.most = whole(20);
  fit_request.seam_left = numbers.small(4) / 2.0;
  fit_request.seam_top = about(1);
  GradeRequest sizes;
  sizes.design = fit_request;
  for (int i = 0; i <= numbers.small(2); ++i) sizes.sizes.push_back({"s", about(100), 0, about(50), 0});
  const auto is_candidate = [](const FitCandidate& each) {
    if (!(each.width_mm > 0 && std::isfinite(each.width_mm) && std::isfinite(each.width_error_percent) &&
          each.height_mm > 0 && std::isfinite(each.height_mm) && each.rows > 0 && each.columns > 0)) {
      fail("a candidate of no size", {});
    }
  };
  try {
    const FitResult found = fit(fit_request, swatch);
    for (const FitCandidate& each : found.candidates) is_candidate(each);
    for (const FitCandidate& each : grade(sizes, swatch).candidates) is_candidate(each);
  } catch (const Error& error) {
    is_refused_well(error);
  }

  Plan plan;
  plan.rows = whole(40);
  int at = 0;
  for (int i = numbers.small(5); i > 0; --i) {
    Stop stop;
    stop.row = at += whole(9);
    stop.shapings.resize(static_cast<std::size_t>(numbers.small(3)));
    plan.stops.push_back(std::move(stop));
    if (std::abs(at) > 1'000'000) break;
  }
  Effort effort;
  effort.row = numbers.small(1) == 1 ? numbers.next<std::int64_t>() : 20'000;
  effort.shaping = numbers.small(1) == 1 ? numbers.next<std::int64_t>() : 30'000;
  SessionOptions options;
  options.session_ms = numbers.small(3) == 0 ? numbers.next<std::int64_t>() : 60'000 * (1 + numbers.small(30));
  options.rest_ms = numbers.small(3) == 0 ? numbers.next<std::int64_t>() : 60'000 * numbers.small(10);
  options.from_row = whole(20);
  try {
    int end = options.from_row;
    const std::vector<Session> made = sessions(plan, effort, options);
    for (const Session& each : made) {
      if (each.from_row != end || each.to_row < end || each.work_ms < each.hand_ms || each.hand_ms < 0) {
        fail("sessions that do not follow each other", {});
      }
      end = each.to_row;
    }
    for (const Rest& each : rests(plan, effort, options)) {
      if (each.session < 0 || static_cast<std::size_t>(each.session) >= made.size()) fail("a rest in no session", {});
    }
    if (work_times(plan, effort, 1000).total_ms < 0) fail("times that wrapped", {});
  } catch (const Error& error) {
    is_refused_well(error);
  }
}

struct Target {
  std::string_view name;
  void (*run)(std::string_view);
};

inline constexpr std::array targets = {
    Target{"grid_text", grid_text},
    Target{"grid_json", grid_json},
    Target{"strip_json", strip_json},
    Target{"panel_json", panel_json},
    Target{"machine_json", machine_json},
    Target{"brief_json", brief_json},
    Target{"yarn_json", yarn_json},
    Target{"article_json", article_json},
    Target{"plan_json", plan_json},
    Target{"plan_use", plan_use},
    Target{"certificate_json", certificate_json},
    Target{"certificate_check", certificate_check},
    Target{"swatch_csv", swatch_csv},
    Target{"timings_csv", timings_csv},
    Target{"quantity", quantity},
    Target{"yarn_number", yarn_number},
    Target{"shape", shape},
    Target{"schematic", schematic},
    Target{"requests", requests},
};

}  // namespace latchwork_fuzz
