#pragma once

#include <string_view>

#include "latchwork/yarn.hpp"
#include "quantity/twofold.hpp"

namespace latchwork::inline v0 {

inline constexpr double least_yarn_number = 1e-6;
inline constexpr double most_yarn_number = 1e9;
inline constexpr int most_plies = 100;

/// A system as a fraction of whole numbers: tex = over / under * number where it is direct, else over / under / number.
struct SystemOfYarn {
  YarnSystem system = YarnSystem::tex;
  std::string_view name;  ///< as it is written
  bool direct = false;
  double over = 1;
  double under = 1;
  bool name_first = true;   ///< "Nm 28", but "28 tex"
  int plies_by_custom = 0;  ///< in A/B: 1 when A is the plies, 2 when B is, 0 when neither is customary
};

/// @throws Error bad_argument (field "system").
const SystemOfYarn& system_of(YarnSystem system);

/// Throws unless the number is one that a YarnNumber may have. `prefix` stands before the field's name.
void require_yarn(const YarnNumber& yarn, std::string_view prefix = {});

/// The whole yarn's tex, not rounded.
Twofold exact_tex(const YarnNumber& yarn);
/// @throws Error with that code and field when it is out of range.
double yarn_number_or_refuse(const Twofold& number, std::string_view what, ErrorCode code = ErrorCode::bad_value,
                             const std::string& field = "number");

}  // namespace latchwork::inline v0
