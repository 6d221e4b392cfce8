#include "machine/check.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <string_view>

#include "error/refuse.hpp"
#include "latchwork/error.hpp"
#include "machine/tools.hpp"

namespace latchwork::inline v0 {
namespace {

[[noreturn]] void refuse_part(std::string_view part, const std::string& value, std::string_view range) {
  const std::string field = fmt::format("machine.{}", part);
  refuse(field, fmt::format("{} is {}; it may be {}", field, value, range));
}

void within(std::string_view field, int value, int least, int most) {
  if (value < least || value > most) refuse_part(field, std::to_string(value), fmt::format("{} to {}", least, most));
}

}  // namespace

void check(const Machine& machine) {
  within("needles", machine.needles, 2, 4000);
  if (!std::isfinite(machine.pitch_mm) || machine.pitch_mm <= 0 || machine.pitch_mm > 50) {
    refuse_part("pitch_mm", fmt::format("{} mm", machine.pitch_mm), "above 0, to 50 mm");
  }
  within("leftmost", machine.leftmost, -4000, 4000);
  if (machine.prongs.size() > 20) {
    refuse_part("prongs", fmt::format("a list of {} tools", machine.prongs.size()), "a list of up to 20, two of each");
  }
  for (std::size_t i = 0; i < machine.prongs.size(); ++i) {
    within(fmt::format("prongs[{}]", i), machine.prongs[i], 1, most_prongs);
    if (std::find(machine.prongs.begin(), machine.prongs.begin() + static_cast<std::ptrdiff_t>(i), machine.prongs[i]) !=
        machine.prongs.begin() + static_cast<std::ptrdiff_t>(i)) {
      refuse_part(fmt::format("prongs[{}]", i), fmt::format("{} again", machine.prongs[i]),
                  "named once: an entry stands for two tools of that many prongs");
    }
  }
  within("comfortable_crossing", machine.comfortable_crossing, 1, 4000);
  within("tuck_limit", machine.tuck_limit, 1, 65536);
  within("float_limit", machine.float_limit, 1, 4000);
  within("max_ladder", machine.max_ladder, 1, 65536);
}

}  // namespace latchwork::inline v0
