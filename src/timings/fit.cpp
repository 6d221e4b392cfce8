#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <utility>

#include "effort/check.hpp"
#include "effort/terms.hpp"
#include "error/refuse.hpp"
#include "latchwork/error.hpp"
#include "latchwork/timings.hpp"
#include "timings/basis.hpp"
#include "timings/counts.hpp"
#include "timings/non_negative.hpp"
#include "timings/student.hpp"
#include "timings/ties.hpp"

namespace latchwork::inline v0 {
namespace timing {
namespace {

constexpr double least_share = 1e-10;        // of all times, under which a cost is 0
constexpr double outlying_share = 0.05;      // chance of naming any of sound spells
constexpr double least_variance = 1.0 / 12;  // of a time that is rounded to whole milliseconds
constexpr double least_freedom = 1e-9;       // 1 - leverage under which a spell settles a cost alone

// Twelve columns as long as there are spells are turned once, into the coordinates of their own span; all else is done
// on columns of twelve numbers at most.
class Fit {
 public:
  Fit(const Timings& timings, const Effort& defaults) : timings_(timings), defaults_(defaults) {
    for (const Spell& spell : timings.spells()) times_.push_back(static_cast<double>(spell.time_ms));
    std::vector<Column> full;
    for (std::size_t term = 0; term < counts.size(); ++term) {
      Column column;
      for (const Spell& spell : timings.spells()) column.push_back(spell.*counts[term].count);
      if (!(length(column) > 0)) continue;
      terms_.push_back(term);
      span_.add(column);
      full.push_back(std::move(column));
    }
    for (const Column& column : full) columns_.push_back(span_.coordinates(column));
  }

  EffortFit run() {
    ties_ = ties_of(columns_);
    costs_ = non_negative(columns_, span_.coordinates(times_));
    Column wanted;
    for (const std::size_t term : terms_) wanted.push_back(static_cast<double>(defaults_.*effort_parts[term].cost));
    settle(ties_, wanted, costs_);
    for (std::size_t i = 0; i < costs_.size(); ++i) {
      if (costs_[i] * length(columns_[i]) <= least_share * length(times_)) costs_[i] = 0;
      if (costs_[i] > 0) free_.add(columns_[i]);
    }
    EffortFit out;
    out.spells = static_cast<int>(times_.size());
    out.rank = static_cast<int>(free_.rank());
    out.degrees_of_freedom = out.spells - out.rank;
    const Column residuals = residual();
    const double squares = product(residuals, residuals);
    if (out.degrees_of_freedom > 0) out.spread_ms = std::sqrt(squares / out.degrees_of_freedom);
    tell_terms(out);
    if (out.degrees_of_freedom > 1) tell_outlying(out, residuals, squares);
    return out;
  }

 private:
  Column residual() const {
    Column out = times_;
    for (std::size_t i = 0; i < terms_.size(); ++i) {
      int Spell::*const count = counts[terms_[i]].count;
      for (std::size_t s = 0; s < out.size(); ++s) out[s] -= costs_[i] * (timings_.spells()[s].*count);
    }
    return out;
  }

  void tell_terms(EffortFit& out) const {
    std::size_t next = 0;
    for (std::size_t term = 0; term < effort_parts.size(); ++term) {
      TermFit fit;
      fit.term = effort_parts[term].term;
      if (next < terms_.size() && terms_[next] == term) {
        tell_term(fit, next++, out.spread_ms);
      } else {
        fit.value_ms = defaults_.*effort_parts[term].cost;
        fit.estimate_ms = static_cast<double>(fit.value_ms);
      }
      out.effort.*effort_parts[term].cost = fit.value_ms;
      out.terms.push_back(std::move(fit));
    }
  }

  void tell_term(TermFit& fit, std::size_t i, const std::optional<double>& spread) const {
    fit.estimate_ms = costs_[i];
    fit.value_ms = rounded(i);
    for (const Spell& spell : timings_.spells()) fit.spells += spell.*counts[terms_[i]].count > 0 ? 1 : 0;
    if (ties_.tied[i] != 0) {
      fit.state = TermState::tied;
      for (std::size_t k = 0; k < terms_.size(); ++k) {
        if (k != i && ties_.group[k] == ties_.group[i]) fit.tied_with.push_back(effort_parts[terms_[k]].term);
      }
      return;
    }
    fit.state = costs_[i] > 0 ? TermState::fitted : TermState::at_zero;
    if (fit.state == TermState::fitted && spread) fit.standard_error_ms = *spread / own_length(i);
  }

  // What of the column no other free one has: its square is 1 over the column's place on the diagonal of (X'X)^-1.
  double own_length(std::size_t i) const {
    Basis others;
    for (std::size_t k = 0; k < columns_.size(); ++k) {
      if (k != i && costs_[k] > 0) others.add(columns_[k]);
    }
    return others.distance(columns_[i]);
  }

  std::int64_t rounded(std::size_t i) const {
    const double value = std::floor(costs_[i] + 0.5);
    if (value <= static_cast<double>(max_effort_ms)) return static_cast<std::int64_t>(value);
    const std::string field = fmt::format("effort.{}", effort_parts[terms_[i]].name);
    refuse(ErrorCode::too_large, field,
           fmt::format("{} comes out at {:.0f} ms by these timings; the limit is {} ms. Are the times' units right?",
                       field, value, max_effort_ms));
  }

  void tell_outlying(EffortFit& out, const Column& residuals, double squares) const {
    const double limit = student_limit(outlying_share / out.spells, out.degrees_of_freedom - 1);
    for (std::size_t s = 0; s < residuals.size(); ++s) {
      const double free_share = 1 - leverage(s);
      if (free_share < least_freedom) continue;
      const double square = residuals[s] * residuals[s] / free_share;
      const double others = std::max((squares - square) / (out.degrees_of_freedom - 1), least_variance);
      const double studentized = residuals[s] / std::sqrt(free_share * others);
      if (std::abs(studentized) <= limit) continue;
      out.outlying.push_back({static_cast<int>(s), timings_.spells()[s].line, residuals[s], studentized});
    }
  }

  // How much of its own time a spell makes up by itself, 0..1.
  double leverage(std::size_t spell) const {
    double sum = 0;
    for (const Column& way : free_.vectors()) {
      double part = 0;
      for (std::size_t k = 0; k < way.size(); ++k) part += way[k] * span_.vectors()[k][spell];
      sum += part * part;
    }
    return sum;
  }

  const Timings& timings_;
  const Effort& defaults_;
  std::vector<std::size_t> terms_;  ///< those that any spell has
  Column times_;
  Basis span_;                   ///< of the counts' columns
  std::vector<Column> columns_;  ///< the counts' columns in that span's coordinates
  Ties ties_;
  Column costs_;
  Basis free_;  ///< of the columns whose costs are above 0
};

}  // namespace
}  // namespace timing

EffortFit fit_effort(const Timings& timings, const Effort& defaults) {
  check(defaults, "defaults");
  return timing::Fit(timings, defaults).run();
}

std::string_view term_state_name(TermState state) noexcept {
  switch (state) {
    case TermState::fitted:
      return "fitted";
    case TermState::at_zero:
      return "at_zero";
    case TermState::tied:
      return "tied";
    case TermState::no_data:
      return "no_data";
  }
  return {};
}

}  // namespace latchwork::inline v0
