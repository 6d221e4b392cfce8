#pragma once

#include <string>

namespace latchwork::inline v0 {

inline constexpr double most_need = 1e9;  ///< g, or balls: beyond, the request is a slip

/// @throws Error too_large (that field).
[[noreturn]] void refuse_need(const std::string& field, double need, const char* unit);

/// Whole balls that hold so much; 0 where it is not sold by the ball. @throws Error too_large (that field).
int balls_of(double buy_g, double ball_g, const std::string& field);

}  // namespace latchwork::inline v0
