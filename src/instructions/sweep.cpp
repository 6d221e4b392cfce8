#include "instructions/sweep.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <iterator>

#include "instructions/along.hpp"
#include "instructions/words.hpp"
#include "text/words.hpp"

namespace latchwork::inline v0::writing {
namespace {

/// "the cast-on", "row 2", "rows 2 and 4", "the cast-on, rows 2 and 4".
std::string rows_told(std::vector<int> rows) {
  std::sort(rows.begin(), rows.end());
  rows.erase(std::unique(rows.begin(), rows.end()), rows.end());
  std::string out;
  if (!rows.empty() && rows.front() == 0) {
    out = "the cast-on";
    rows.erase(rows.begin());
    if (rows.empty()) return out;
    out += rows.size() == 1 ? " and " : ", ";
  }
  out += rows.size() == 1 ? "row " : "rows ";
  for (std::size_t i = 0; i < rows.size(); ++i) {
    if (i > 0) out += i + 1 < rows.size() ? ", " : " and ";
    out += fmt::to_string(rows[i]);
  }
  return out;
}

}  // namespace

Sweep::Sweep(const std::vector<Reform>& reforms) {
  std::vector<int> needles;
  std::vector<int> rows;
  needles.reserve(reforms.size());
  rows.reserve(reforms.size());
  for (const Reform& reform : reforms) {
    needles.push_back(reform.needle);
    rows.push_back(reform.from_row);
    const bool alike = !runs_.empty() && runs_.back().from_row == reform.from_row && runs_.back().rungs == reform.rungs;
    const bool beside = alike && place_of(runs_.back().needles.back()) + 1 == place_of(reform.needle);
    if (!beside) ++ranges_;
    if (!alike) runs_.push_back({.needles = {}, .from_row = reform.from_row, .rungs = reform.rungs});
    runs_.back().needles.push_back(reform.needle);
  }
  needles_ = needle_ranges(needles);
  down_to_ = rows_told(std::move(rows));
  std::vector<OnNeedles> pieces;
  pieces.reserve(runs_.size());
  for (const Run& run : runs_) {
    const std::string work = fmt::format("{} as {}", count_of(std::ssize(run.rungs), "row"), rung_words(run.rungs));
    // What drops as deep from another row is other work: "down to" tells it.
    pieces.push_back({run.needles, fmt::format("{} from {}", work, run.from_row),
                      fmt::format("{}: {}", needle_ranges(run.needles), work)});
  }
  for (const Along& along : along_the_bed(pieces)) {
    std::vector<std::string> once;
    for (std::size_t i = along.first; i < along.first + along.period; ++i) once.push_back(pieces[i].words);
    if (!work_.empty()) work_ += " | ";
    work_ += along_words(pieces, along, joined(once, " | "));
    if (along.times > 1 && along_.empty()) along_ = along_step(along);
  }
}

std::string Sweep::of_one_kind(const std::string& needles) const {
  const Run& run = runs_.front();
  const int depth = static_cast<int>(run.rungs.size());
  return fmt::format("{}: drop {} to {}, re-form {} as {}", needles, count_of(depth, "row"), down_to_,
                     run_of("row", run.from_row + 1, run.from_row + depth, "-"), rung_words(run.rungs));
}

std::string Sweep::key() const {
  std::string key = work_;
  for (const Run& run : runs_) {
    if (run.from_row == 0) key += '0';  // "to the cast-on" is not "to row 8"
  }
  return key + ';';
}

bool from_the_left(const std::vector<Reform>& reforms) {
  return std::is_sorted(reforms.begin(), reforms.end(),
                        [](const Reform& a, const Reform& b) { return place_of(a.needle) < place_of(b.needle); });
}

}  // namespace latchwork::inline v0::writing
