#pragma once

#include <cstdint>
#include <vector>

#include "latchwork/conditions.hpp"
#include "latchwork/export.hpp"
#include "latchwork/plan.hpp"

namespace latchwork::inline v0 {

// What there is to choose from between the least plan and one that is easily remembered.

/// One of the conditions, or all of them together.
enum class Condition : std::uint8_t {
  carriage_right_only = 0,
  rows_apart = 1,
  max_depth = 2,
  max_kinds = 3,
  rhythms = 4,
  closed_rows = 5,
  all = 6,
};

/// What a condition costs against the plan without any.
struct ConditionPrice {
  Condition condition = Condition::all;
  PlanStatus status = PlanStatus::infeasible;  ///< of the plan under it
  std::int64_t total_ms = 0;                   ///< what that plan takes; 0 when there is none; -1, and price_ms too,
                                               ///< with status `feasible`: a limit, or the search's own allowance where
                                               ///< nobody set one, ended it, and it had none
  std::int64_t price_ms = 0;  ///< more than the least plan without it that was found; 0 or more; where there is none
                              ///< (`infeasible`) this and the next two are 0 and mean nothing
  std::int64_t least_price_ms = 0;  ///< the price is proven to be no less than this ...
  std::int64_t most_price_ms = 0;   ///< ... and no more than this (-1: nothing is known): exact when both are the same
  friend bool operator==(const ConditionPrice&, const ConditionPrice&) = default;
};

/// The price of each condition that is asked (none asked: no price; rows_apart 1 asks nothing), alone, and last of all
/// together; `forced_exempt` goes with each. Each is a plan of its own; work and time limit are the whole call's,
/// shared fairly, and the same work limit gives the same prices. A plan found under one counts wherever it keeps what
/// is asked. Ended, it has of the rest what needs no search: the plan under all, which keeps each, then each alone, of
/// 150,000 cells in all; what has none then has total -1. @throws Error as plan(); cancelled only where the panel was
/// not even read.
LATCHWORK_API std::vector<ConditionPrice> condition_prices(const Grid& grid, const Machine& machine,
                                                           const Effort& effort = {}, const PlanOptions& options = {});

/// A plan that no other of the front beats in both effort and kinds.
struct FrontPoint {
  int kinds = 0;  ///< different kinds of stop, see stop_kinds()
  Plan plan;      ///< `optimal`: none with so many kinds or fewer takes less; else its bound is of all such plans
  friend bool operator==(const FrontPoint&, const FrontPoint&) = default;
};

/// Effort against kinds of stop to be remembered: a knitter chooses. The last point is the least plan, or, where the
/// options' max_kinds is below its kinds, the best with so many.
struct Front {
  std::vector<FrontPoint> points;  ///< from the fewest kinds on; each takes less than the one before
  bool fewest_proven = false;      ///< no plan has fewer kinds than the first
  std::vector<Finding> findings;   ///< why there is no plan at all; else empty
  friend bool operator==(const Front&, const Front&) = default;
};

/// The front under the other conditions of the options; their max_kinds, where it is set, is the most kinds that are of
/// interest. The least plan, then plans under max_kinds for those numbers of kinds below its own that no proof settles:
/// one kind first, then the most, then the middle of what is open, so that a call that is cut short has looked at few
/// and at many. Where neither work nor time is limited each number of kinds has an allowance of search of its own, a
/// second or so: a panel with hundreds of kinds of stop takes minutes. The work limit and the time limit are the whole
/// call's: the least plan has a quarter, each number of kinds an eighth of what is left or more, and the same work
/// limit gives the same front. Stopped, or out of work or time, the points found so far, each with the best bound that
/// is known.
/// @throws Error as plan() does; where no plan of few kinds is found in time, that is no error but no point.
LATCHWORK_API Front plan_front(const Grid& grid, const Machine& machine, const Effort& effort = {},
                               const PlanOptions& options = {});

}  // namespace latchwork::inline v0
