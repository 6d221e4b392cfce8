#include "conditions/words.hpp"

#include <fmt/format.h>

#include "text/words.hpp"

namespace latchwork::inline v0 {
namespace {

std::string kept_words(const KeptRhythm& kept) {
  const std::string rhythm =
      kept.rhythm ? fmt::format("every {} from RC {:03}", count_of(kept.rhythm->every, "row"), kept.rhythm->first)
                  : std::string("in one rhythm");
  return fmt::format("what stands in {} in row {} re-formed {}", run_of("column", kept.first_column, kept.last_column),
                     kept.row, rhythm);
}

std::string closed_words(const std::vector<int>& rows) {
  constexpr std::size_t told = 12;
  std::vector<std::string> parts;
  for (std::size_t i = 0; i < rows.size() && i < told; ++i) parts.push_back(fmt::to_string(rows[i]));
  if (rows.size() > told) parts.push_back(fmt::format("{} more", rows.size() - told));
  return fmt::format("no stop after row{} {}", rows.size() == 1 ? "" : "s", joined(parts));
}

}  // namespace

std::vector<std::string> condition_words(const Conditions& conditions) {
  std::vector<std::string> words;
  if (conditions.carriage_right_only) words.emplace_back("stops only with the carriage on the right");
  if (conditions.rows_apart > 1) {
    words.push_back(fmt::format("stops {} apart or more", count_of(conditions.rows_apart, "row")));
  }
  if (!conditions.closed_rows.empty()) words.push_back(closed_words(conditions.closed_rows));
  if (conditions.forced_exempt && !words.empty()) {
    words.back() += " (these do not bind stops that crossings or shapings force)";
  }
  if (conditions.max_depth > 0) {
    words.push_back(fmt::format("no re-form deeper than {}", count_of(conditions.max_depth, "row")));
  }
  if (conditions.max_kinds > 0) {
    words.push_back(fmt::format("at most {} of stop", count_of(conditions.max_kinds, "kind")));
  }
  for (const KeptRhythm& kept : conditions.rhythms) words.push_back(kept_words(kept));
  return words;
}

}  // namespace latchwork::inline v0
