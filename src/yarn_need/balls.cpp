#include "yarn_need/balls.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "error/refuse.hpp"

namespace latchwork::inline v0 {

void refuse_need(const std::string& field, double need, const char* unit) {
  refuse(ErrorCode::too_large, field, fmt::format("a need of {} {}; the limit is {}", need, unit, most_need));
}

int balls_of(double buy_g, double ball_g, const std::string& field) {
  if (ball_g <= 0) return 0;
  constexpr double rounding = 1e-9;  // 100 g in balls of 50 are two, whatever the sums lose
  const double balls = std::ceil(buy_g / ball_g - rounding);
  if (!(balls <= most_need)) refuse_need(field, balls, "balls");
  return static_cast<int>(std::max(balls, 0.0));
}

}  // namespace latchwork::inline v0
