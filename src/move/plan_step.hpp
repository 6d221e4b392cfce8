#pragma once

#include <cstddef>
#include <cstdint>
#include <optional>
#include <span>
#include <string_view>
#include <vector>

#include "latchwork/plan.hpp"

namespace latchwork::inline v0 {

/// A step of a plan: `stops[stop].list[index]`.
struct PlanStep {
  std::size_t stop = 0;
  std::string_view list;  ///< "releases", "reforms", "crossings", "shapings" or "holds"
  std::size_t index = 0;
};

/// The step that one of moves(plan) comes from; nothing for a cast-on at the start, a carriage pass, or no move. As
/// linear as moves(). @throws Error as moves().
std::optional<PlanStep> step_of_move(const Plan& plan, std::int64_t move);

/// The steps that some of moves(plan) come from, rising, each once. As linear as moves(). @throws Error as moves().
std::vector<PlanStep> steps_of_moves(const Plan& plan, std::span<const std::int64_t> moves);

}  // namespace latchwork::inline v0
