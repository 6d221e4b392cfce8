#pragma once

#include <cstdint>
#include <optional>
#include <set>
#include <string>
#include <utility>
#include <vector>

#include "latchwork/brief.hpp"
#include "latchwork/chart.hpp"
#include "schematic/drawn.hpp"

namespace latchwork::inline v0::report {

/// What the summary and the page both tell.
struct Facts {
  std::string title;
  std::string subtitle;
  std::vector<std::pair<std::string, std::string>> lines;    ///< label, words
  std::vector<std::pair<std::string, std::string>> article;  ///< likewise, of a brief with one
  std::vector<std::pair<std::string, std::string>> pieces;   ///< likewise, of its pieces; the page has a table of them
  std::vector<std::pair<std::string, std::string>> notes;  ///< severity, "size", "yarn", "article" or "caution", words
};
Facts facts_of(const Brief& brief, const Job& job);

/// Adds notes to those that there are, each once: of ten thousand textures one may be told ten thousand things.
class Noting {
 public:
  explicit Noting(Facts& facts) : notes_(facts.notes), told_(facts.notes.begin(), facts.notes.end()) {}

  void add(std::string kind, std::string words) {
    std::pair<std::string, std::string> note(std::move(kind), std::move(words));
    if (told_.insert(note).second) notes_.push_back(std::move(note));
  }
  bool has(const std::string& kind, const std::string& words) const { return told_.count({kind, words}) > 0; }

 private:
  std::vector<std::pair<std::string, std::string>>& notes_;
  std::set<std::pair<std::string, std::string>> told_;
};

/// summary() and page_html() of a job that is known to be the brief's.
std::string summary_of(const Brief& brief, const Job& job);
std::string page_of(const Brief& brief, const Job& job);

/// Textures without a gauge, for each figure that wants one: what Job::missing tells.
struct Unmeasured {
  std::vector<Finding> size;
  std::vector<Finding> article;  ///< by the state and the substitutes of its design; nothing where there is none
  std::vector<Finding> all() const;
};
/// @throws Error as measuring_findings().
Unmeasured unmeasured(const Brief& brief);

/// What the yarn comes to, where the brief names any.
void add_yarn(Facts& facts, const Brief& brief, const Job& job);

/// A need by all its routes, and what to buy: the labels of the two lines, and what to say after the first.
struct NeedWords {
  std::string need;
  std::string buy;
  std::string after;
};
void add_need(Facts& facts, const YarnRequest& request, const YarnNeed& need, const NeedWords& told);

/// The state of the cloth that sizes are of, by these options: "washed"; of textures in unlike states, which size()
/// finds, "rested and washed". Of a brief whose panel has all gauges.
std::string state_words(const Brief& brief, const SizeOptions& options);

/// "41.2".
std::string centimetres(double mm);

/// The article's pieces as they are made, or, without one, the panel: to scale with their measures, as SVG; nothing
/// where there is no outline, or no gauge.
std::optional<schematics::DrawnSchematic> schematic_of(const Brief& brief, const Job& job);

/// The job's charts: proportions from the panel's size, stops where there is a plan.
ChartOptions chart_options(const Brief& brief, const Job& job, Side side);

}  // namespace latchwork::inline v0::report
