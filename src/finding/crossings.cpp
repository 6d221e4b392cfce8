#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <span>

#include "finding/kinds.hpp"
#include "grid/lifting.hpp"
#include "machine/tools.hpp"
#include "text/words.hpp"

namespace latchwork::inline v0::seeking {
namespace {

std::string place_of(const Crossing& crossing) {
  return fmt::format("the {} after row {}, {},", crossing_name(crossing), crossing.row,
                     run_of("column", crossing.column, crossing.column + crossing.width() - 1));
}

Finding over(FindingCode code, Severity severity, const Crossing& crossing) {
  Finding finding = found_at(code, severity, crossing.row, crossing.column);
  finding.last_column = crossing.column + crossing.width() - 1;
  return finding;
}

bool bare(const Grid& grid, int row, int column) {
  return column >= 0 && column < grid.columns() && grid.at(row, column) == Cell::none;
}

bool ladder_beside(const Grid& grid, const Crossing& crossing) {
  return lifting::bare_centre(grid, crossing) || bare(grid, crossing.row, crossing.column - 1) ||
         bare(grid, crossing.row, crossing.column + crossing.width());
}

std::string sum_of(std::span<const int> tools) {
  std::vector<std::string> prongs;
  for (const int tool : tools) prongs.push_back(fmt::to_string(tool));
  return joined(prongs, " + ");
}

void find_tools(const Grid& grid, const Machine& machine, const Crossing& crossing, std::vector<Finding>& found) {
  const std::array groups{crossing.left, crossing.right, lifting::centre_lifted(grid, crossing)};
  const int widest_group = *std::max_element(groups.begin(), groups.end());
  const int widest_tool = machine.prongs.empty() ? 0 : *std::max_element(machine.prongs.begin(), machine.prongs.end());
  const ToolSharing sharing = share_tools(groups, machine.prongs);
  const bool shared = std::any_of(sharing.prongs.begin(), sharing.prongs.end(),
                                  [](const std::vector<int>& tools) { return tools.size() > 1; });
  if (sharing.at_hand && !shared) return;

  Finding finding = over(FindingCode::no_tool, sharing.at_hand ? Severity::advice : Severity::error, crossing);
  finding.value = widest_group;
  finding.limit = widest_tool;
  const std::string lifts = fmt::format("{} + {}{}", groups[0], groups[1],
                                        groups[2] > 0 ? fmt::format(" + {} in the centre", groups[2]) : "");
  if (machine.prongs.empty()) {
    finding.message =
        fmt::format("{} lifts {} stitches at once and no pronged tool is at hand", place_of(crossing), lifts);
    finding.suggestion = fmt::format("have two {}-pronged tools at hand", widest_group);
  } else if (!sharing.at_hand) {
    finding.message = fmt::format(
        "{} lifts {} stitches at once; two of each tool at hand ({}-pronged) cannot carry "
        "them",
        place_of(crossing), lifts, sum_of(machine.prongs));
    finding.suggestion = fmt::format("have {}-pronged tools at hand, or cross fewer stitches", widest_group);
  } else {
    std::vector<std::string> ways;
    for (const auto& tools : sharing.prongs) {
      if (!tools.empty()) ways.push_back(sum_of(tools));
    }
    // Wider than the widest, or the right one is already in use: either way a group hangs on several tools.
    finding.message = fmt::format("{} lifts {} stitches at once: a group needs several tools, the widest has {}",
                                  place_of(crossing), lifts, count_of(widest_tool, "prong"));
    finding.suggestion =
        fmt::format("lift them on {}, or have {}-pronged tools at hand", joined(ways, " against "), widest_group);
  }
  found.push_back(std::move(finding));
}

void find_tightness(const Grid& grid, const Machine& machine, const Crossing& crossing, std::vector<Finding>& found) {
  if (crossing.travel() <= machine.comfortable_crossing) return;
  const bool slack = ladder_beside(grid, crossing);
  Finding finding = over(FindingCode::tight_crossing, slack ? Severity::advice : Severity::warning, crossing);
  finding.value = crossing.travel();
  finding.limit = machine.comfortable_crossing;
  finding.message = fmt::format("{} moves stitches {}, {:.1f} mm on this bed; {} is comfortable", place_of(crossing),
                                count_of(crossing.travel(), "place"), crossing.travel() * machine.pitch_mm,
                                machine.comfortable_crossing);
  if (slack) {
    finding.message += "; the ladder beside it gives slack";
    finding.suggestion = "knit the row before the crossing at a looser stitch, and never force the stitches";
  } else {
    finding.suggestion =
        "leave a needle beside it out of work (a ladder) for slack, knit the row before the crossing at a looser "
        "stitch, or cross fewer stitches; never force them";
  }
  found.push_back(std::move(finding));
}

}  // namespace

void find_in_crossings(const Grid& grid, const Wales& wales, const Machine& machine, std::vector<Finding>& found) {
  std::vector<int> last_crossed(wales.all().size(), 0);  // per wale: the row of its last crossing
  for (const Crossing& crossing : grid.crossings()) {
    find_tools(grid, machine, crossing, found);
    find_tightness(grid, machine, crossing, found);
    if (crossing.row == grid.rows()) {
      Finding finding = over(FindingCode::open_crossing, Severity::warning, crossing);
      finding.value = crossing.row;
      finding.limit = grid.rows() - 1;
      finding.message = fmt::format("{} is the panel's last: no row holds the crossed stitches", place_of(crossing));
      finding.suggestion = "knit a row or more above it, or end the panel below it";
      found.push_back(std::move(finding));
    }
    int stitches = 0;
    int before = 0;
    for (int column = crossing.column; column < crossing.column + crossing.width(); ++column) {
      const int wale = wales.at(crossing.row, column);
      if (wale < 0) continue;
      ++stitches;
      int& last = last_crossed[static_cast<std::size_t>(wale)];
      before = std::max(before, last);
      last = crossing.row;
    }
    const int interval = crossing.row - before;
    if (before == 0 || interval >= stitches) continue;
    const bool very = interval * 2 < stitches;
    Finding finding = over(FindingCode::short_interval, very ? Severity::warning : Severity::advice, crossing);
    finding.value = interval;
    finding.limit = stitches;
    finding.message = fmt::format("{} comes {} after another on the same stitches; {} stitches take about {} rows",
                                  place_of(crossing), count_of(interval, "row"), stitches, stitches);
    finding.suggestion =
        fmt::format("cross every {} to {} rows, or knit at a looser stitch", stitches, stitches + (stitches + 2) / 3);
    found.push_back(std::move(finding));
  }
}

}  // namespace latchwork::inline v0::seeking
