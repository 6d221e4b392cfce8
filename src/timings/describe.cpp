#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <string>
#include <vector>

#include "latchwork/timings.hpp"
#include "text/words.hpp"

namespace latchwork::inline v0 {
namespace {

std::string seconds(double ms) {
  return fmt::format("{:.3f} s", ms / 1000);
}

std::string origin(const TermFit& fit) {
  const std::string from = "from " + count_of(fit.spells, "spell");
  switch (fit.state) {
    case TermState::fitted:
      return fit.standard_error_ms ? fmt::format("+- {}, {}", seconds(*fit.standard_error_ms), from) : from;
    case TermState::at_zero:
      return "at zero, the least it may be, " + from;
    case TermState::tied: {
      std::vector<std::string> others;
      for (const EffortTerm term : fit.tied_with) others.emplace_back(effort_term_name(term));
      return fmt::format("tied with {}, {}", joined(others), from);
    }
    case TermState::no_data:
      return "default, no spell has any";
  }
  return {};
}

std::string head(const EffortFit& fit) {
  const std::string degrees = fit.degrees_of_freedom == 1 ? "degree" : "degrees";
  std::string out = fmt::format("Efforts from {}: {} free, {} {} of freedom", count_of(fit.spells, "timed spell"),
                                count_of(fit.rank, "cost"), fit.degrees_of_freedom, degrees);
  if (fit.spread_ms) return out + fmt::format(", spread {} a spell.\n", seconds(*fit.spread_ms));
  return out + ". Too few spells to tell how sure it is.\n";
}

}  // namespace

std::string describe(const EffortFit& fit) {
  std::string out = head(fit);
  for (const TermFit& term : fit.terms) {
    out += fmt::format("{:<15} {:>12}  {}\n", effort_term_name(term.term), seconds(static_cast<double>(term.value_ms)),
                       origin(term));
  }
  const bool tied =
      std::any_of(fit.terms.begin(), fit.terms.end(), [](const TermFit& one) { return one.state == TermState::tied; });
  if (tied) {
    out +=
        "Of tied terms the timings tell only what they cost together; that is shared out by the defaults. Spells in\n";
    out += "which one stands without the others, or in another proportion, tell them apart.\n";
  }
  if (!fit.outlying.empty()) out += "Outlying spells, which took part in the fit all the same:\n";
  for (const OutlyingSpell& one : fit.outlying) {
    const std::string which =
        one.line > 0 ? fmt::format("line {}", one.line) : fmt::format("spell {}", std::int64_t{one.spell} + 1);
    out += fmt::format("{}: {} {} than its work lets expect ({:.1f} standard deviations)\n", which,
                       seconds(std::abs(one.residual_ms)), one.residual_ms > 0 ? "longer" : "shorter",
                       std::abs(one.studentized));
  }
  return out;
}

}  // namespace latchwork::inline v0
