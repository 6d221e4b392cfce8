#pragma once

#include <array>
#include <functional>
#include <string_view>

#include "effort/terms.hpp"
#include "latchwork/error.hpp"
#include "latchwork/timings.hpp"

namespace latchwork::inline v0::timing {

/// A count of a spell, by the name that it has in files.
struct Count {
  std::string_view name;
  int Spell::*count;
};

/// counts[i] is what effort_parts[i] is the cost of.
inline constexpr std::array counts = {
    Count{"stops", &Spell::stops},
    Count{"batches", &Spell::batches},
    Count{"drops", &Spell::drops},
    Count{"rungs_knit", &Spell::rungs_knit},
    Count{"rungs_purl", &Spell::rungs_purl},
    Count{"rungs_tuck", &Spell::rungs_tuck},
    Count{"rungs_slip", &Spell::rungs_slip},
    Count{"crossings", &Spell::crossings},
    Count{"stitches_crossed", &Spell::stitches_crossed},
    Count{"holds", &Spell::holds},
    Count{"shapings", &Spell::shapings},
    Count{"rows", &Spell::rows},
};
static_assert(counts.size() == effort_parts.size());

/// Throws unless the spell is one that Timings may hold; `place_of` says where a field of it stands ("" for the whole).
void require_spell(const Spell& spell, const std::function<Place(std::string_view)>& place_of);

/// @throws Error too_large with this place, when there are more spells than Timings::max_spells.
void require_spells(std::size_t count, const Place& place);

}  // namespace latchwork::inline v0::timing
