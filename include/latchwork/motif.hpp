#pragma once

#include "latchwork/crossing.hpp"
#include "latchwork/export.hpp"
#include "latchwork/strip.hpp"

namespace latchwork::inline v0 {

// Motifs: each returns one vertical repeat as a strip. All throw Error bad_argument (the parameter's name as field) for
// a number below 1 (interval: below 2) and too_large past Grid's limits. Crossings are put half way up their interval
// (after row 4 of 8, row 3 of 5), so that a panel of whole repeats starts and ends on as many plain rows.
//
// Names say the lean (RC, LC: its front group travels right, left); textures do not, since mirrored cloth measures the
// same: name "rope 3/3 RC every 8", texture "rope 3/3 every 8"; "wave 2/2 LC every 8", "wave 2/2 every 8"; name and
// texture "stockinette", "reverse", "garter 2/2", "moss", "basket 3x4", "tuck rib 1", "ladder", "plait 2 every 6".

LATCHWORK_API Strip stockinette(int columns = 1);  ///< all knit; 1 row
LATCHWORK_API Strip reverse(int columns = 1);      ///< reverse stockinette: all purl; 1 row
LATCHWORK_API Strip garter(int knit_rows = 1, int purl_rows = 1, int columns = 1);  ///< rows of knit, then rows of purl
LATCHWORK_API Strip moss(int columns = 2);                              ///< knit and purl alternate both ways; 2 rows
LATCHWORK_API Strip basket(int block_columns = 3, int block_rows = 4);  ///< two by two blocks of knit and purl
LATCHWORK_API Strip tuck_rib(int height = 1);  ///< one wale: `height` tucks closed by a purl; height + 1 rows
LATCHWORK_API Strip ladder(int columns = 1);   ///< needles out of work: bare strands; 1 row
/// A crossing of `front` over `back` stitches on the same stitches every `interval` rows (2 or more).
LATCHWORK_API Strip rope(int front, int back, int interval, Lean lean);
/// Three groups of `stitches`, crossing in turn `interval` rows apart: the left pair with `lean`, then the right pair
/// with the other. 2 * interval rows. With the right lean the outer strands pass over the middle one, with the left
/// lean under it (and the name says "under"); either is its own mirror image half a repeat up.
LATCHWORK_API Strip plait(int stitches, int interval, Lean lean = Lean::right);
/// A crossing of n over n whose lean changes each time: `lean` first. 2 * interval rows.
LATCHWORK_API Strip wave(int stitches, int interval, Lean lean = Lean::right);

}  // namespace latchwork::inline v0
