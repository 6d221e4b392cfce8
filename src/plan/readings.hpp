#pragma once

#include <chrono>
#include <memory>
#include <optional>
#include <vector>

#include "latchwork/effort.hpp"
#include "latchwork/grid.hpp"
#include "latchwork/machine.hpp"
#include "latchwork/wale.hpp"
#include "plan/limits.hpp"
#include "plan/problem.hpp"

namespace latchwork::inline v0::planning {

/// What is read of one grid on one machine, which but for its greatest ladder is the same: once for all plans of a
/// call, since on a large panel reading takes as long as a plan that is had without a search.
class Readings {
 public:
  /// `several`: plans that are to come, which read the same.
  explicit Readings(bool several) : several_(several) {}
  Readings(const Readings&) = delete;
  Readings& operator=(const Readings&) = delete;

  /// `limits`: see ReadOn. @throws Error cancelled, as that does.
  const Wales& wales(const Grid& grid, Limits& limits);

  /// See problem_of(). Stays until one is asked for at other efforts. @throws Error cancelled, as that does.
  const Problem& problem(const Grid& grid, const Machine& machine, const Effort& effort, Limits& limits,
                         Lanes lanes = Lanes::alike);

  /// The same for the caller to change: a copy, but of a single plan's call the thing itself.
  Problem own_problem(const Grid& grid, const Machine& machine, const Effort& effort, Limits& limits,
                      Lanes lanes = Lanes::alike);

  /// How often a panel was read.
  int times() const noexcept { return times_; }

 private:
  struct Reading {
    int max_ladder;
    Lanes lanes;
    std::unique_ptr<Problem> problem;  // stays where it is
  };

  bool several_;
  std::optional<Wales> wales_;
  std::optional<Effort> effort_;  // of all that is kept
  std::vector<Reading> kept_;
  int times_ = 0;
};

}  // namespace latchwork::inline v0::planning
