#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <climits>
#include <string>
#include <utility>
#include <vector>

#include "file/grid_json.hpp"
#include "file/object.hpp"
#include "latchwork/file.hpp"

namespace latchwork::inline v0 {
namespace {

using json::Fields;
using json::Is;
using json::Layout;
using json::Missing;
using json::Value;
using json::whole;
using json::Writer;

constexpr std::string_view plan_format = "latchwork-plan";
constexpr std::array<std::string_view, 3> statuses = {"optimal", "feasible", "infeasible"};
constexpr std::array<std::string_view, 3> groups = {"left", "centre", "right"};
constexpr std::array<std::string_view, 3> severities = {"advice", "warning", "error"};
constexpr json::NeedleNames names{};

/// Names of all finding codes, which run on from 1.
const std::vector<std::string_view>& finding_names() {
  static const auto all = [] {
    std::vector<std::string_view> found;
    for (int code = 1; !finding_name(static_cast<FindingCode>(code)).empty(); ++code) {
      found.push_back(finding_name(static_cast<FindingCode>(code)));
    }
    return found;
  }();
  return all;
}

// How values stand in the file that are neither numbers nor texts nor lists. Each goes both ways.

struct Letters {
  void operator()(Value value, std::vector<Cell>& cells) const {
    const std::string_view letters = value.text();
    cells.resize(letters.size());
    json::read_letters(value, letters, 0, reinterpret_cast<std::uint8_t*>(cells.data()));
  }
  void operator()(Writer& writer, const std::vector<Cell>& cells) const { writer.text(json::letters_of(cells)); }
};

struct OneCrossing {
  void operator()(Value value, Crossing& crossing) const { crossing = json::get_crossing(value, false); }
  void operator()(Writer& writer, const Crossing& crossing) const { json::put_crossing(writer, crossing); }
};

/// Only what applies.
struct WherePlaced {
  void operator()(Value value, Place& place) const {
    constexpr std::array<std::string_view, 5> known = {"row", "column", "line", "character", "field"};
    const Fields fields(value, known);
    json::Taking members(fields, Missing::keeps_default);
    members.integer("row", place.row, INT_MIN, INT_MAX);
    members.integer("column", place.column, INT_MIN, INT_MAX);
    members.integer("line", place.line, INT_MIN, INT_MAX);
    members.integer("character", place.character, INT_MIN, INT_MAX);
    members.text("field", place.field);
  }
  void operator()(Writer& writer, const Place& place) const {
    const Place nowhere;
    writer.begin_object(Layout::line);
    json::Putting members(writer, Missing::keeps_default);
    if (place.row != nowhere.row) members.integer("row", place.row, INT_MIN, INT_MAX);
    if (place.column != nowhere.column) members.integer("column", place.column, INT_MIN, INT_MAX);
    if (place.line != nowhere.line) members.integer("line", place.line, INT_MIN, INT_MAX);
    if (place.character != nowhere.character) members.integer("character", place.character, INT_MIN, INT_MAX);
    if (place.field != nowhere.field) members.text("field", place.field);
    writer.end_object();
  }
};

// The members of each struct, once, for reading and writing. A plan is plain data, wrong plans too: every number that a
// member can hold is taken.
struct PlanLists {
  using Object = json::Object<PlanLists>;

  void operator()(auto& members, Is<Rhythm> auto& rhythm) const {
    whole(members, "every", rhythm.every);
    whole(members, "first", rhythm.first);
  }

  void operator()(auto& members, Is<GroupReturn> auto& group) const {
    members.choice("group", group.group, groups);
    whole(members, "stitches", group.stitches);
    members.needle("from_needle", group.from_needle, names);
    members.needle("to_needle", group.to_needle, names);
    members.integers("prongs", group.prongs, INT_MIN, INT_MAX);
  }

  void operator()(auto& members, Is<CrossingStep> auto& step) const {
    members.value("crossing", step.crossing, OneCrossing{});
    members.list("returns", step.returns, Layout::lines, Object{});
    members.hint("ease", step.ease);
  }

  void operator()(auto& members, Is<Reform> auto& reform) const {
    members.needle("needle", reform.needle, names);
    whole(members, "column", reform.column);
    whole(members, "wale", reform.wale);
    whole(members, "from_row", reform.from_row);
    members.value("rungs", reform.rungs, Letters{});
  }

  void operator()(auto& members, Is<Shaping> auto& shaping) const {
    members.needle("needle", shaping.needle, names);
    whole(members, "column", shaping.column);
    members.boolean("on", shaping.on);
  }

  void operator()(auto& members, Is<Stop> auto& stop) const {
    whole(members, "row", stop.row);
    members.boolean("carriage_right", stop.carriage_right);
    whole(members, "effort_ms", stop.effort_ms);
    members.needles("releases", stop.releases, names);
    members.list("reforms", stop.reforms, Layout::lines, Object{});
    members.list("crossings", stop.crossings, Layout::lines, Object{Layout::lines});
    members.list("shapings", stop.shapings, Layout::lines, Object{});
    members.needles("holds", stop.holds, names);
  }

  void operator()(auto& members, Is<Finding> auto& finding) const {
    members.choice("code", finding.code, finding_names(), 1);
    members.choice("severity", finding.severity, severities);
    members.value("place", finding.place, WherePlaced{});
    whole(members, "last_row", finding.last_row);
    whole(members, "last_column", finding.last_column);
    whole(members, "value", finding.value);
    whole(members, "limit", finding.limit);
    members.text("message", finding.message);
    members.text("suggestion", finding.suggestion);
  }

  void operator()(auto& members, Is<Plan> auto& plan) const {
    whole(members, "rows", plan.rows);
    whole(members, "columns", plan.columns);
    members.needle("leftmost", plan.leftmost, names);
    members.boolean("carriage_starts_right", plan.carriage_starts_right);
    members.choice("status", plan.status, statuses);
    whole(members, "total_ms", plan.total_ms);
    whole(members, "bound_ms", plan.bound_ms);
    members.optional("rhythm", plan.rhythm, Object{});
    members.integers("columns_on", plan.columns_on, INT_MIN, INT_MAX);
    members.list("stops", plan.stops, Layout::lines, Object{Layout::lines});
    members.list("findings", plan.findings, Layout::lines, Object{Layout::lines});
  }
};

void require_letters(const Plan& plan) {
  for (std::size_t s = 0; s < plan.stops.size(); ++s) {
    const std::vector<Reform>& reforms = plan.stops[s].reforms;
    for (std::size_t r = 0; r < reforms.size(); ++r) {
      const std::vector<Cell>& rungs = reforms[r].rungs;
      const auto bad = std::find_if(rungs.begin(), rungs.end(), [](Cell cell) { return cell_letter(cell) == '\0'; });
      if (bad == rungs.end()) continue;
      Place place;
      place.field = fmt::format("stops[{}].reforms[{}].rungs[{}]", s, r, bad - rungs.begin());
      const std::string message =
          fmt::format("{} is cell {}, which has no letter", place.field, static_cast<int>(*bad));
      throw Error(ErrorCode::bad_value, std::move(place), message);
    }
  }
}

}  // namespace

Plan read_plan(std::string_view json) {
  return json::read_file<Plan, PlanLists>(json, plan_format);
}

std::string write(const Plan& plan) {
  require_letters(plan);
  return json::write_file<PlanLists>(plan, plan_format);
}

}  // namespace latchwork::inline v0
