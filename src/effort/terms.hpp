#pragma once

#include <array>
#include <cstdint>
#include <string_view>

#include "latchwork/effort.hpp"

namespace latchwork::inline v0 {

/// A part of an Effort: its number, its name, and where it stands.
struct EffortPart {
  EffortTerm term;
  std::string_view name;
  std::int64_t Effort::*cost;
};

/// All of them, in the order of EffortTerm.
inline constexpr std::array effort_parts = {
    EffortPart{EffortTerm::stop, "stop", &Effort::stop},
    EffortPart{EffortTerm::batch, "batch", &Effort::batch},
    EffortPart{EffortTerm::drop, "drop", &Effort::drop},
    EffortPart{EffortTerm::rung_knit, "rung_knit", &Effort::rung_knit},
    EffortPart{EffortTerm::rung_purl, "rung_purl", &Effort::rung_purl},
    EffortPart{EffortTerm::rung_tuck, "rung_tuck", &Effort::rung_tuck},
    EffortPart{EffortTerm::rung_slip, "rung_slip", &Effort::rung_slip},
    EffortPart{EffortTerm::crossing, "crossing", &Effort::crossing},
    EffortPart{EffortTerm::crossing_stitch, "crossing_stitch", &Effort::crossing_stitch},
    EffortPart{EffortTerm::hold, "hold", &Effort::hold},
    EffortPart{EffortTerm::shaping, "shaping", &Effort::shaping},
    EffortPart{EffortTerm::row, "row", &Effort::row},
};

}  // namespace latchwork::inline v0
