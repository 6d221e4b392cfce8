#include "latchwork/timings.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <utility>

#include "latchwork/error.hpp"
#include "text/csv_table.hpp"
#include "timings/counts.hpp"

namespace latchwork::inline v0 {
namespace timing {
namespace {

constexpr std::size_t most_note_bytes = 256;

}  // namespace

void require_spell(const Spell& spell, const std::function<Place(std::string_view)>& place_of) {
  bool idle = true;
  for (const Count& count : counts) {
    const int value = spell.*count.count;
    idle = idle && value == 0;
    if (value >= 0 && value <= max_spell_count) continue;
    const Place place = place_of(count.name);
    throw Error(ErrorCode::bad_value, place,
                fmt::format("{} is {}; it must be 0..{}", named(place), value, max_spell_count));
  }
  if (spell.time_ms < 1 || spell.time_ms > max_spell_ms) {
    const Place place = place_of("time_ms");
    throw Error(ErrorCode::bad_value, place,
                fmt::format("{} is {} ms; it must be 1..{} ms", named(place), spell.time_ms, max_spell_ms));
  }
  require_field_text(spell.note, most_note_bytes, place_of("note"));
  if (spell.line < 0) {
    const Place place = place_of("line");
    throw Error(ErrorCode::bad_value, place, fmt::format("{} is {}; it must be 0 or more", named(place), spell.line));
  }
  if (idle) {
    const Place place = place_of("time_ms");
    throw Error(ErrorCode::bad_value, place,
                fmt::format("{}: nothing was done in this time; a spell must count something above 0", named(place)));
  }
}

void require_spells(std::size_t count, const Place& place) {
  if (count <= Timings::max_spells) return;
  throw Error(ErrorCode::too_large, place, fmt::format("{} spells; the limit is {}", count, Timings::max_spells));
}

}  // namespace timing

Timings::Timings(std::vector<Spell> spells) : spells_(std::move(spells)) {
  Place whole;
  whole.field = "spells";
  timing::require_spells(spells_.size(), whole);
  for (std::size_t i = 0; i < spells_.size(); ++i) {
    timing::require_spell(spells_[i], [i](std::string_view field) {
      Place place;
      place.field = fmt::format("spells[{}]{}{}", i, field.empty() ? "" : ".", field);
      return place;
    });
  }
}

bool operator==(const Timings& a, const Timings& b) {
  return std::equal(a.spells_.begin(), a.spells_.end(), b.spells_.begin(), b.spells_.end(),
                    [](const Spell& one, Spell other) {
                      other.line = one.line;
                      return one == other;
                    });
}

}  // namespace latchwork::inline v0
