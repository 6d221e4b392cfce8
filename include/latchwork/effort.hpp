#pragma once

#include <cstdint>
#include <string_view>

#include "latchwork/export.hpp"

namespace latchwork::inline v0 {

/// What hand work costs, in whole milliseconds. The defaults are estimates [from memory], meant to be replaced by the
/// user's own timings. Each 0..3'600'000; functions that take it check that and throw Error bad_argument with the
/// field.
struct Effort {
  std::int64_t stop = 15'000;            ///< each stop: park the carriage, find the place, start again
  std::int64_t batch = 12'000;           ///< each batch: count over, find the wale, tool in, hang
  std::int64_t drop = 500;               ///< each rung laddered down
  std::int64_t rung_knit = 4'000;        ///< each rung re-formed as a knit, on its needle
  std::int64_t rung_purl = 2'500;        ///< as a purl
  std::int64_t rung_tuck = 1'500;        ///< taken into the stitch
  std::int64_t rung_slip = 1'500;        ///< passed by
  std::int64_t crossing = 15'000;        ///< each crossing
  std::int64_t crossing_stitch = 4'000;  ///< each stitch lifted for it (not a centre that stays on its needles)
  std::int64_t hold = 3'000;             ///< each needle put in hold and released again
  std::int64_t shaping = 8'000;          ///< each needle on which a wale begins or ends at a stop
  std::int64_t row = 4'000;              ///< each plain carriage pass
  friend bool operator==(const Effort&, const Effort&) = default;
};

/// The parts of an Effort by number, in their order.
enum class EffortTerm : std::uint8_t {
  stop = 0,
  batch = 1,
  drop = 2,
  rung_knit = 3,
  rung_purl = 4,
  rung_tuck = 5,
  rung_slip = 6,
  crossing = 7,
  crossing_stitch = 8,
  hold = 9,
  shaping = 10,
  row = 11,
};

/// The term's name as in Effort ("rung_purl"); empty for a number that is no term.
LATCHWORK_API std::string_view effort_term_name(EffortTerm term) noexcept;

}  // namespace latchwork::inline v0
