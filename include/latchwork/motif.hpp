#pragma once

#include "latchwork/crossing.hpp"
#include "latchwork/export.hpp"
#include "latchwork/strip.hpp"

namespace latchwork::inline v0 {

// Motifs: each returns one vertical repeat as a strip. All throw Error bad_argument (the parameter's name as field) for
// a number below 1 and too_large past Grid's limits. Crossings are put half way up their interval, so that a panel of
// whole repeats starts and ends on plain rows.

LATCHWORK_API Strip stockinette(int columns = 1);  ///< all knit; 1 row
LATCHWORK_API Strip reverse(int columns = 1);      ///< reverse stockinette: all purl; 1 row
LATCHWORK_API Strip garter(int knit_rows = 1, int purl_rows = 1, int columns = 1);  ///< rows of knit, then rows of purl
LATCHWORK_API Strip moss(int columns = 2);                              ///< knit and purl alternate both ways; 2 rows
LATCHWORK_API Strip basket(int block_columns = 3, int block_rows = 4);  ///< two by two blocks of knit and purl
LATCHWORK_API Strip tuck_rib(int height = 1);  ///< one wale: `height` tucks closed by a purl; height + 1 rows
LATCHWORK_API Strip ladder(int columns = 1);   ///< needles out of work: bare strands; 1 row
/// A crossing of `front` over `back` stitches on the same stitches every `interval` rows (2 or more).
LATCHWORK_API Strip rope(int front, int back, int interval, Lean lean);
/// Three groups of `stitches`; every `interval` rows the left pair crosses with `lean`, then the right pair with the
/// other.
LATCHWORK_API Strip plait(int stitches, int interval, Lean lean = Lean::right);
/// A crossing of n over n whose lean changes each time: `lean` first. 2 * interval rows.
LATCHWORK_API Strip wave(int stitches, int interval, Lean lean = Lean::right);

}  // namespace latchwork::inline v0
