#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <functional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

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

std::string prongs_of(std::span<const int> tools, std::string_view between) {
  std::vector<std::string> prongs;
  for (const int tool : tools) prongs.push_back(fmt::to_string(tool));
  return joined(prongs, between);
}

using CrossedGroups = std::array<int, 3>;  // stitches lifted: left, right, centre

bool one_tool_each(const ToolSharing& sharing) {
  return sharing.at_hand && std::none_of(sharing.prongs.begin(), sharing.prongs.end(),
                                         [](const std::vector<int>& tools) { return tools.size() > 1; });
}

std::vector<int> with_sizes(std::vector<int> sizes, std::span<const int> more) {
  sizes.insert(sizes.end(), more.begin(), more.end());
  return sizes;
}

/// The sizes that are not at hand and of which two each would carry every group on one tool, where any do: one if one
/// is enough, else those of all groups.
std::vector<int> sizes_wanted(const CrossedGroups& groups, const std::vector<int>& at_hand) {
  std::vector<int> wanted;
  for (const int group : groups) {
    if (group > 0 && std::ranges::find(at_hand, group) == at_hand.end() &&
        std::ranges::find(wanted, group) == wanted.end()) {
      wanted.push_back(group);
    }
  }
  std::ranges::sort(wanted, std::greater<>{});
  for (const int size : wanted) {
    if (one_tool_each(share_tools(groups, with_sizes(at_hand, std::array{size})))) return {size};
  }
  return wanted;
}

/// What to have at hand so that each group hangs on one tool. Where three groups are of one size a machine's two of it
/// are not enough, so that a third is asked for, or something else that holds the centre. Empty where no tool is as
/// wide as a group.
std::string tools_wanted(const CrossedGroups& groups, const std::vector<int>& at_hand) {
  if (*std::ranges::max_element(groups) > most_prongs) return {};
  const std::vector<int> sizes = sizes_wanted(groups, at_hand);
  std::vector<std::string> names;
  names.reserve(sizes.size());
  for (const int size : sizes) names.push_back(fmt::format("{}-pronged", size));
  const std::string tools = joined(names, " and ") + " tools at hand";
  if (one_tool_each(share_tools(groups, with_sizes(at_hand, sizes)))) return "have " + tools;
  if (!sizes.empty()) return fmt::format("have {}, and for the centre a third or a stitch holder", tools);
  const int third = groups.front();
  int wider = third + 1;
  while (std::ranges::find(at_hand, wider) != at_hand.end()) ++wider;
  if (wider <= most_prongs && one_tool_each(share_tools(groups, with_sizes(at_hand, std::array{wider})))) {
    return fmt::format("have {}-pronged tools at hand, or for the centre a third {}-pronged tool or a stitch holder",
                       wider, third);
  }
  return fmt::format("have a third {}-pronged tool or a stitch holder at hand for the centre", third);
}

void find_tools(const Grid& grid, const Machine& machine, const Crossing& crossing, std::vector<Finding>& found) {
  const CrossedGroups groups{crossing.left, crossing.right, lifting::centre_lifted(grid, crossing)};
  const ToolSharing sharing = share_tools(groups, machine.prongs);
  if (one_tool_each(sharing)) return;
  const int widest_group = *std::max_element(groups.begin(), groups.end());
  const int widest_tool = machine.prongs.empty() ? 0 : *std::max_element(machine.prongs.begin(), machine.prongs.end());

  Finding finding = over(FindingCode::no_tool, sharing.at_hand ? Severity::advice : Severity::error, crossing);
  finding.value = widest_group;
  finding.limit =
      widest_group > widest_tool ? widest_tool : 0;  // else tools of its size are too few, or there are none
  const std::string lifts = fmt::format("{} + {} stitches{}", groups[0], groups[1],
                                        groups[2] > 0 ? fmt::format(" and {} of the centre", groups[2]) : "");
  const std::string two_each = fmt::format("two of each tool at hand ({} {})", prongs_of(machine.prongs, ", "),
                                           machine.prongs == std::vector{1} ? "prong" : "prongs");
  const std::string wanted = tools_wanted(groups, machine.prongs);
  std::vector<std::string> helps;
  if (machine.prongs.empty()) {
    finding.message = fmt::format("{} lifts {} at once and no pronged tool is at hand", place_of(crossing), lifts);
  } else if (!sharing.at_hand) {
    finding.message = fmt::format("{} lifts {} at once; {} cannot carry them", place_of(crossing), lifts, two_each);
  } else {
    std::string ways = fmt::format("lift them on {} against {}", prongs_of(sharing.prongs[0], " + "),
                                   prongs_of(sharing.prongs[1], " + "));
    if (groups[2] > 0) ways += ", the centre on " + prongs_of(sharing.prongs[2], " + ");
    helps.push_back(std::move(ways));
    // Wider than the widest, or the right one is not there or already in use: a group hangs on several tools.
    finding.message = fmt::format(
        "{} lifts {} at once: a group needs several tools, {}", place_of(crossing), lifts,
        widest_group > widest_tool ? "the widest has " + count_of(widest_tool, "prong") : "with " + two_each);
  }
  if (!wanted.empty()) helps.push_back(wanted);
  if (!sharing.at_hand) helps.emplace_back("cross fewer stitches");
  finding.suggestion = joined(helps, ", or ");
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
