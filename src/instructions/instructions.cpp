#include "latchwork/instructions.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <string>
#include <string_view>

#include "instructions/sheet.hpp"
#include "instructions/words.hpp"
#include "text/words.hpp"

namespace latchwork::inline v0 {
namespace {

using writing::Sheet;
using writing::SheetRepeat;
using writing::SheetStop;

void append_list(std::string& out, std::string_view title, const std::vector<std::string>& lines) {
  if (lines.empty()) return;
  out += fmt::format("\n{}\n", title);
  for (const std::string& line : lines) out += fmt::format("  - {}\n", line);
}

void append_pairs(std::string& out, std::string_view title,
                  const std::vector<std::pair<std::string, std::string>>& pairs) {
  if (pairs.empty()) return;
  out += fmt::format("\n{}\n", title);
  std::size_t widest = 0;
  for (const auto& [name, words] : pairs) widest = std::max(widest, name.size());
  for (const auto& [name, words] : pairs) out += fmt::format("  {:<{}}  {}\n", name, widest, words);
}

void append_stop(std::string& out, const SheetStop& stop) {
  out += fmt::format("{:>4}  {} {}  ", stop.number, writing::counter(stop.row), writing::carriage(stop.right));
  out += joined(stop.actions, "; ") + ".\n";
}

/// A line for each time, which goes on further in where it is long; of a single stop the times go on in the line.
void append_repeat(std::string& out, const SheetRepeat& repeat) {
  constexpr std::size_t long_line = 100;
  out += "      " + repeat.words + "\n";
  std::string line;
  const auto end_line = [&] {
    if (!line.empty()) out += line + "\n";
    line.clear();
  };
  for (const auto& time : repeat.times) {
    std::string_view indent = "        ";
    if (!repeat.one_stop) end_line();
    for (const std::string& row : time) {
      if (!line.empty() && line.size() + 2 + row.size() > long_line) {
        end_line();
        if (!repeat.one_stop) indent = "          ";
      }
      line += line.empty() ? indent : ", ";
      line += row;
    }
  }
  end_line();
}

}  // namespace

std::string instructions(const Panel& panel, const Plan& plan, const Machine& machine) {
  const Sheet sheet = writing::sheet_of(panel, plan, machine);
  std::string out = sheet.title + "\n\n";
  for (const std::string& line : sheet.header) out += line + "\n";
  append_list(out, writing::reasons_title(plan.status), sheet.reasons);
  if (plan.status == PlanStatus::infeasible) return out;
  append_pairs(out, "Abbreviations", sheet.key);
  append_list(out, "Take care", sheet.cautions);
  append_list(out, "At every stop", sheet.rules);
  append_pairs(out, "Crossings", sheet.crossings);
  append_pairs(out, "Needles worked together", sheet.sets);
  append_pairs(out, "Sweeps worked more than once", sheet.sweeps);
  out += "\nSteps\n      " + sheet.start + "\n";
  for (const writing::SheetPart& part : sheet.parts) {
    for (const SheetStop& stop : part.stops) append_stop(out, stop);
    if (part.repeat) append_repeat(out, *part.repeat);
  }
  if (!sheet.end.empty()) out += "      " + sheet.end + "\n";
  return out;
}

}  // namespace latchwork::inline v0
