#include <string>
#include <vector>

#include "catch.hpp"
#include "latchwork/chart.hpp"
#include "latchwork/fit.hpp"
#include "latchwork/machine.hpp"
#include "latchwork/motif.hpp"
#include "latchwork/size.hpp"
#include "reference.hpp"

namespace size_test {

// Gauge, sizes and machines. Every value is read from check_values.json by its id; what is compared with it comes from
// the library's swatches, sizes, fits and generic machines.

using namespace latchwork;
using latchwork_test::Approx;
using latchwork_test::meets_reference;
using latchwork_test::reference;
using latchwork_test::reference_input;
using latchwork_test::reference_inputs;
using latchwork_test::reference_source;

namespace {

// A swatch file of one texture: so many stitches over one length, so many rows over another.
Swatch swatch(double stitches, const std::string& stitch_length, double rows, const std::string& row_length) {
  return read_swatch("texture,counted,count,length,unit\nstockinette,stitches," + std::to_string(stitches) + "," +
                     stitch_length + "\nstockinette,rows," + std::to_string(rows) + "," + row_length + "\n");
}

FitRequest square_inches(double width_in, double height_in) {
  FitRequest out;
  out.width_mm = width_in * 25.4;
  out.height_mm = height_in * 25.4;
  out.groups = {{{stockinette(1)}, 1, 1000}};
  return out;
}

Size plain_size(int columns, int rows, const Swatch& measured) {
  return size(Panel("plain", stockinette(columns).filled_up(rows)), measured);
}

}  // namespace

TEST_CASE("SZ-01, SZ-02: so many stitches and rows make so many inches", "[reference][size]") {
  // Knitting Math (1), knittingwithkarma.blogspot.com, May 2011. Published.
  INFO(reference_source("SZ-01"));
  const nlohmann::json& across = reference_inputs("SZ-01");
  const nlohmann::json& along = reference_inputs("SZ-02");
  const Swatch measured =
      swatch(4 * across.at("sts_per_in").get<double>(), "4,in", 4 * along.at("rows_per_in").get<double>(), "4,in");
  const std::vector<FitCandidate> found =
      fit(square_inches(across.at("width_in"), along.at("length_in")), measured).candidates;
  REQUIRE_FALSE(found.empty());
  CHECK(found[0].columns == reference("SZ-01").at("expected").get<int>());
  CHECK(found[0].rows == reference("SZ-02").at("expected").get<int>());
  CHECK(found[0].error == Approx(0).margin(1e-9));
}

TEST_CASE("SZ-08: half a stitch too many or too few are equally near, and rounding up is among them",
          "[reference][size]") {
  // How to figure decrease and increase placement, knittingunplugged.com, May 2016. Published: it rounds 49.5 and 71.5
  // up. fit() ranks both neighbours with one error, the fewer columns first; the first not too narrow is the printed
  // one.
  INFO(reference_source("SZ-08"));
  const nlohmann::json& inputs = reference_inputs("SZ-08");
  const nlohmann::json& expected = reference("SZ-08").at("expected");
  for (std::size_t i = 0; i < expected.size(); ++i) {
    const Swatch measured = swatch(4 * inputs.at("sts_per_in").get<double>(), "4,in", 28, "4,in");
    FitRequest request = square_inches(inputs.at("width_in")[i].get<double>(), 4);
    request.most = 40;
    const std::vector<FitCandidate> found = fit(request, measured).candidates;
    REQUIRE(found.size() == 40);
    CHECK(found[0].columns == expected[i].get<int>() - 1);
    CHECK(found[1].columns == expected[i].get<int>());
    CHECK(found[0].error == found[1].error);
    CHECK(found[1].width_error_mm > 0);
  }
}

TEST_CASE("SZ-10: 99 stitches are edges, whole repeats and what balances them", "[reference][size]") {
  // n = repeat * k + edges + extra. Derived.
  INFO(reference_source("SZ-10"));
  const nlohmann::json& inputs = reference_inputs("SZ-10");
  const nlohmann::json& expected = reference("SZ-10").at("expected");
  FitRequest request = square_inches(10, 10);
  request.groups = {{{stockinette(inputs.at("panel_repeat"))}, 1, 200}, {{stockinette(expected[1])}}};
  request.edge = stockinette(1);
  request.edge_least = request.edge_most = inputs.at("edge");
  request.width_mm = inputs.at("sts").get<double>() * 4;
  const std::vector<FitCandidate> found = fit(request, swatch(25, "10,cm", 40, "10,cm")).candidates;
  REQUIRE_FALSE(found.empty());
  CHECK(found[0].columns == inputs.at("sts").get<int>());
  CHECK(found[0].times[0] == expected[0].get<int>());
  CHECK(found[0].width_error_mm == 0);
}

TEST_CASE("SZ-11: twenty stitches over 4 in are not twenty over 10 cm", "[reference][size]") {
  // 4 in = 10.16 cm. Derived.
  INFO(reference_source("SZ-11"));
  const double stitches = reference_inputs("SZ-11").at("sts_per_4in");
  CHECK(meets_reference("SZ-11", swatch(stitches, "4,in", 30, "4,in").gauge("stockinette").stitches.per_10cm));
  CHECK(swatch(stitches, "10,cm", 30, "10,cm").gauge("stockinette").stitches.per_10cm == stitches);
}

TEST_CASE("SZ-12: one stitch miscounted in a swatch costs two centimetres of panel", "[reference][size]") {
  // W = n / g. Derived.
  INFO(reference_source("SZ-12"));
  const nlohmann::json& inputs = reference_inputs("SZ-12");
  const int columns = inputs.at("sts_cast_on");
  const double truly = plain_size(columns, 1, swatch(inputs.at("true_sts"), "10,cm", 30, "10,cm")).width_mm;
  const double expected = plain_size(columns, 1, swatch(inputs.at("measured_sts"), "10,cm", 30, "10,cm")).width_mm;
  CHECK(meets_reference("SZ-12", (truly - expected) / 10));
}

TEST_CASE("SZ-14: lengths in inches are exact", "[reference][size]") {
  // UK cushion size list, britishwholesales.co.uk: the inch names of sizes that are not quite those centimetres.
  INFO(reference_source("SZ-14"));
  const nlohmann::json& inches = reference_inputs("SZ-14").at("inch_names");
  for (std::size_t i = 0; i < inches.size(); ++i) {
    const Swatch measured = swatch(20, std::to_string(inches[i].get<int>()) + ",in", 30, "4,in");
    CHECK(meets_reference("SZ-14", measured.measurements()[0].length_mm / 10,
                          reference("SZ-14").at("expected")[i].get<double>()));
  }
}

TEST_CASE("TX-01: a garter square takes two rows to a stitch", "[reference][size]") {
  // Did you know?, gettinghookedagain.blogspot.com, October 2010: 25 stitches by 50 rows, 20 by 40. Published. Each
  // printed square is taken as the swatch from which the other is fitted.
  INFO(reference_source("TX-01"));
  const auto stitches = reference_input<std::vector<int>>("TX-01", "stitches");
  const auto rows = reference("TX-01").at("expected").get<std::vector<int>>();
  REQUIRE(stitches.size() == 2);
  for (std::size_t from = 0; from < 2; ++from) {
    const std::size_t to = 1 - from;
    const Strip one = garter(1, 1, 1);
    const Swatch measured({{one.texture, Counted::stitches, static_cast<double>(stitches[from]), 120, ""},
                           {one.texture, Counted::rows, static_cast<double>(rows[from]), 120, ""}});
    const double side = size(Panel("g", garter(1, 1, stitches[to])), measured).width_mm;
    FitRequest request;
    request.width_mm = request.height_mm = side;
    request.groups = {{{one}, 1, 200}};
    const std::vector<FitCandidate> found = fit(request, measured).candidates;
    REQUIRE_FALSE(found.empty());
    CHECK(found[0].columns == stitches[to]);
    CHECK(found[0].rows == rows[to]);
  }
}

TEST_CASE("TX-02: garter is about two thirds as long as plain of the same rows", "[reference][size]") {
  // The 2:1 rule over the loop-shape factor, at one stitch width. Derived.
  INFO(reference_source("TX-02"));
  const nlohmann::json& inputs = reference_inputs("TX-02");
  const Strip ridges = garter(1, 1, 10);
  const double stitches = 20;
  const Swatch measured({{"stockinette", Counted::stitches, stitches, 100, ""},
                         {"stockinette", Counted::rows, stitches * inputs.at("plain_R").get<double>(), 100, ""},
                         {ridges.texture, Counted::stitches, stitches, 100, ""},
                         {ridges.texture, Counted::rows, stitches * inputs.at("garter_R").get<double>(), 100, ""}});
  const Size got = size(join_strips("p", 60, std::vector<Strip>{stockinette(10), ridges}), measured);
  REQUIRE(got.strips.size() == 2);
  CHECK(meets_reference("TX-02", got.strips[1].height_mm / got.strips[0].height_mm));
  CHECK(meets_reference("TX-02", got.least_height_mm / got.greatest_height_mm));
}

TEST_CASE("KG-04, KG-05: a chart's stitches have the proportion of relaxed plain wool", "[reference][size]") {
  // From memory: Munden 1959, Knapton 1968, R = Kc / Kw dry-relaxed and wet-relaxed. Printed as 1.3 to one decimal.
  INFO(reference_source("KG-04"));
  const ChartOptions defaults;
  const double ratio = defaults.stitch_width_mm / defaults.stitch_height_mm;
  const double dry = reference("KG-04").at("expected")[1];
  const double wet = reference("KG-05").at("expected")[1];
  CHECK(ratio <= dry);
  CHECK(ratio >= wet);
}

TEST_CASE("NP-01, NP-03, NP-04: the generic machines have these pitches and beds", "[reference][size]") {
  // NP-01: retailer's gauge guide, store.dknits.com, and eliteimpexx.com. Published. NP-03, NP-04: from memory.
  struct Case {
    const char* id;
    MachineClass machine_class;
  };
  const Case cases[] = {{"NP-01", MachineClass::standard}, {"NP-03", MachineClass::mid}, {"NP-04", MachineClass::fine}};
  for (const Case& each : cases) {
    INFO(reference_source(each.id));
    const nlohmann::json& inputs = reference_inputs(each.id);
    const nlohmann::json& expected = reference(each.id).at("expected");
    const Machine machine = Machine::generic(each.machine_class);
    CHECK(machine.pitch_mm == inputs.at("pitch_mm").get<double>());
    CHECK(machine.needles == inputs.at("needles").get<int>());
    CHECK(meets_reference(each.id, 25.4 / machine.pitch_mm, expected[0]));
    CHECK(meets_reference(each.id, machine.pitch_mm * machine.needles, expected[1]));
  }
}

TEST_CASE("NP-05: the whole standard bed at 28 stitches makes 71 cm and no more", "[reference][size]") {
  // W = needles / gauge. Derived.
  INFO(reference_source("NP-05"));
  const nlohmann::json& inputs = reference_inputs("NP-05");
  const Machine machine = Machine::generic(MachineClass::standard);
  CHECK(machine.needles == inputs.at("needles").get<int>());
  FitRequest request = square_inches(1000, 10);
  request.needles = machine.needles;
  const std::vector<FitCandidate> found =
      fit(request, swatch(inputs.at("sts_per_10cm"), "10,cm", 40, "10,cm")).candidates;
  REQUIRE_FALSE(found.empty());
  CHECK(meets_reference("NP-05", found[0].width_mm / 10));
}

TEST_CASE("NP-07: a 2/2 cable on a bulky bed travels 18 mm", "[reference][size]") {
  // b * pitch. Derived.
  INFO(reference_source("NP-07"));
  const Machine machine = Machine::generic(MachineClass::bulky);
  CHECK(machine.pitch_mm == reference_input("NP-07", "pitch_mm"));
  const Grid grid = rope(2, 2, 6, Lean::left).grid;
  REQUIRE(grid.crossings().size() == 1);
  CHECK(crossing_name(grid.crossings()[0]).starts_with(reference_input<std::string>("NP-07", "cable")));
  CHECK(meets_reference("NP-07", grid.crossings()[0].travel() * machine.pitch_mm));
}

}  // namespace size_test
