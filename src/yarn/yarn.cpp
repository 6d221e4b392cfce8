#include "latchwork/yarn.hpp"

#include <fmt/format.h>

#include <array>
#include <cmath>

#include "error/refuse.hpp"
#include "latchwork/error.hpp"
#include "quantity/number.hpp"
#include "yarn/systems.hpp"

namespace latchwork::inline v0 {
namespace {

// tex of a count of one with `yards` yards to the pound: 453.59237 g / (yards * 0.9144 m) * 1000, in whole numbers.
constexpr double over = 4'535'923'700;
constexpr double under_per_yard = 9144;

constexpr std::array systems = {
    SystemOfYarn{YarnSystem::tex, "tex", true, 1, 1, false, 0},
    SystemOfYarn{YarnSystem::dtex, "dtex", true, 1, 10, false, 0},
    SystemOfYarn{YarnSystem::denier, "den", true, 1, 9, false, 0},
    SystemOfYarn{YarnSystem::metric, "Nm", false, 1000, 1, true, 0},
    SystemOfYarn{YarnSystem::cotton, "Ne", false, over, under_per_yard * 840, true, 2},
    SystemOfYarn{YarnSystem::spun_silk, "spun silk", false, over, under_per_yard * 840, true, 2},
    SystemOfYarn{YarnSystem::worsted, "worsted", false, over, under_per_yard * 560, true, 1},
    SystemOfYarn{YarnSystem::linen, "linen", false, over, under_per_yard * 300, true, 2},
    SystemOfYarn{YarnSystem::woollen_cut, "woollen cut", false, over, under_per_yard * 300, true, 0},
    SystemOfYarn{YarnSystem::woollen_run, "woollen run", false, over, under_per_yard * 1600, true, 0},
    SystemOfYarn{YarnSystem::yorkshire, "YSW", false, over, under_per_yard * 256, true, 0},
    SystemOfYarn{YarnSystem::galashiels, "Galashiels", false, over, under_per_yard * 200, true, 0},
    SystemOfYarn{YarnSystem::west_of_england, "West of England", false, over, under_per_yard * 320, true, 0},
    SystemOfYarn{YarnSystem::jute, "jute", true, over, under_per_yard * 14'400, true, 0},
    SystemOfYarn{YarnSystem::yards_per_pound, "yd/lb", false, over, under_per_yard, false, 0},
    SystemOfYarn{YarnSystem::metres_per_100g, "m/100 g", false, 100'000, 1, false, 0},
};

Twofold number_of(const Twofold& tex, const SystemOfYarn& system) {
  return system.direct ? tex * Twofold(system.under) / Twofold(system.over)
                       : Twofold(system.over) / Twofold(system.under) / tex;
}

double base_or_refuse(const Twofold& base, std::string_view what) {
  const double value = base.nearest();
  if (!in_range(value)) {
    refuse(ErrorCode::bad_value, std::string(what),
           fmt::format("the {} is {}; it must be 0 or {}..{}", what, value, least_quantity, most_quantity));
  }
  return value;
}

void require_base(std::string_view field, double base, bool may_be_zero) {
  if (in_range(base) && (may_be_zero || base > 0)) return;
  refuse(ErrorCode::bad_argument, std::string(field),
         fmt::format("{} is {}; it must be {}{}..{}", field, base, may_be_zero ? "0 or " : "", least_quantity,
                     most_quantity));
}

}  // namespace

const SystemOfYarn& system_of(YarnSystem system) {
  const auto number = static_cast<std::size_t>(system);
  if (number < systems.size()) return systems[number];
  refuse(ErrorCode::bad_argument, "system", fmt::format("system is {}; it must be 0..{}", number, systems.size() - 1));
}

void require_yarn(const YarnNumber& yarn, std::string_view prefix) {
  if (static_cast<std::size_t>(yarn.system) >= systems.size()) {
    refuse(ErrorCode::bad_argument, fmt::format("{}system", prefix),
           fmt::format("{}system is {}; it must be 0..{}", prefix, static_cast<int>(yarn.system), systems.size() - 1));
  }
  if (!(yarn.number >= least_yarn_number && yarn.number <= most_yarn_number)) {
    refuse(ErrorCode::bad_argument, fmt::format("{}number", prefix),
           fmt::format("{}number is {}; it must be {}..{}", prefix, yarn.number, least_yarn_number, most_yarn_number));
  }
  if (yarn.plies < 1 || yarn.plies > most_plies) {
    refuse(ErrorCode::bad_argument, fmt::format("{}plies", prefix),
           fmt::format("{}plies is {}; it must be 1..{}", prefix, yarn.plies, most_plies));
  }
}

Twofold exact_tex(const YarnNumber& yarn) {
  const SystemOfYarn& system = system_of(yarn.system);
  const Twofold unit = Twofold(system.over * yarn.plies) / Twofold(system.under);
  return system.direct ? unit * Twofold(yarn.number) : unit / Twofold(yarn.number);
}

double yarn_number_or_refuse(const Twofold& number, std::string_view what, ErrorCode code, const std::string& field) {
  const double value = number.nearest();
  if (value >= least_yarn_number && value <= most_yarn_number) return value;
  refuse(code, field,
         fmt::format("that is {} {}; it must be {}..{}", value, what, least_yarn_number, most_yarn_number));
}

double yarn_tex(const YarnNumber& yarn) {
  require_yarn(yarn);
  return yarn_number_or_refuse(exact_tex(yarn), "tex");
}

YarnNumber yarn_number_in(const YarnNumber& yarn, YarnSystem system) {
  require_yarn(yarn);
  const SystemOfYarn& in = system_of(system);
  if (system == yarn.system && yarn.plies == 1) return yarn;
  return {system, yarn_number_or_refuse(number_of(exact_tex(yarn), in), in.name), 1};
}

YarnNumber yarns_together(std::span<const YarnNumber> yarns) {
  if (yarns.empty()) refuse(ErrorCode::bad_argument, "yarns", "yarns has none; it must have one or more");
  Twofold tex;
  for (std::size_t i = 0; i < yarns.size(); ++i) {
    require_yarn(yarns[i], fmt::format("yarns[{}].", i));
    tex = tex + exact_tex(yarns[i]);
  }
  return {YarnSystem::tex, yarn_number_or_refuse(tex, "tex"), 1};
}

YarnNumber yarn_number_of(const Length& length, const Weight& weight, YarnSystem system) {
  const SystemOfYarn& in = system_of(system);
  require_base("mm", length.mm, false);
  require_base("g", weight.g, false);
  const Twofold tex = Twofold(weight.g) * Twofold(1e6) / Twofold(length.mm);
  return {system, yarn_number_or_refuse(number_of(tex, in), in.name), 1};
}

Weight yarn_weight(const YarnNumber& yarn, const Length& length) {
  require_yarn(yarn);
  require_base("mm", length.mm, true);
  return {base_or_refuse(exact_tex(yarn) * Twofold(length.mm) / Twofold(1e6), "weight")};
}

Length yarn_length(const YarnNumber& yarn, const Weight& weight) {
  require_yarn(yarn);
  require_base("g", weight.g, true);
  return {base_or_refuse(Twofold(weight.g) * Twofold(1e6) / exact_tex(yarn), "length")};
}

double yarn_diameter_mm(const YarnNumber& yarn, double fibre_density) {
  constexpr double least = 0.1;
  constexpr double most = 25;
  const double tex = yarn_tex(yarn);
  if (!(fibre_density >= least && fibre_density <= most)) {
    refuse(ErrorCode::bad_argument, "fibre_density",
           fmt::format("fibre_density is {}; it must be {}..{} g/cm3", fibre_density, least, most));
  }
  return 0.0444 * std::sqrt(tex / fibre_density);
}

}  // namespace latchwork::inline v0
