#pragma once

#include <cstdint>

#include "latchwork/export.hpp"
#include "latchwork/quantity.hpp"
#include "latchwork/yarn.hpp"

namespace latchwork::inline v0 {

// Geometry of plain knit (stockinette), after Munden: in a given state of relaxation the counts of a cloth depend on
// its loop length l alone, as courses/cm = Kc / l and wales/cm = Kw / l with l in cm. Then loops/cm2 = Kc Kw / l^2, a
// plain row takes Kw times its relaxed width of yarn, and a square metre 100 Kc Kw / l metres (l in cm). Stated for
// wool; nothing of it holds for ribs, garter, tucks or cables, of which no constants are known that can be trusted.

/// How far a cloth has come to rest. The values are in the C ABI.
enum class PlainState : std::uint8_t {
  dry_relaxed = 0,  ///< off the machine and rested: Kc 5.0, Kw 3.8 (Munden, J. Text. Inst. 50, T448, 1959; from memory)
  wet_relaxed = 1,  ///< soaked and dried flat: Kc 5.3, Kw 4.1 (the same; from memory)
  fully_relaxed = 2,  ///< washed with agitation: Kc 5.5, Kw 4.2 (GATE Textile Engineering 2015, Q54; Knapton et al.,
                      ///< Text. Res. J. 38, 999, 1968, from memory)
};

/// The constants of a cloth.
struct PlainConstants {
  double courses = 5.5;  ///< Kc, 0.1..100
  double wales = 4.2;    ///< Kw, 0.1..100
  friend bool operator==(const PlainConstants&, const PlainConstants&) = default;
};

/// @throws Error bad_argument (field "state").
LATCHWORK_API PlainConstants plain_constants_of(PlainState state);

/// Loop length in mm of plain knit of that gauge: 10 Kw / (stitches per cm), or 10 Kc / (rows per cm). The two agree
/// as far as the cloth is in the state of the constants; their geometric mean goes by the loops per area.
/// @throws Error bad_argument (field "counted", "count", "length_mm", "courses", "wales"); bad_value, as per_10cm().
LATCHWORK_API double plain_loop_mm(const CountPerLength& gauge, const PlainConstants& constants);
/// Stitches or rows per 10 cm of plain knit of that loop length (0.1..1000 mm).
/// @throws Error bad_argument (field "counted", "loop_mm", "courses", "wales").
LATCHWORK_API double plain_per_10cm(Counted counted, double loop_mm, const PlainConstants& constants);

/// Tightness, sqrt(tex) / loop length in mm: 1.3 to 1.5 for plain knits of mills (study note, scribd 469140556), about
/// 0.9 to 1.0 for yarns at the gauge of their label. The other custom, per cm, is ten times this.
/// @throws Error bad_argument (field "system", "number", "plies", "loop_mm"); bad_value, as yarn_tex().
LATCHWORK_API double tightness_factor(const YarnNumber& yarn, double loop_mm);
/// Weight of a cloth, in g/m2: stitches and rows per cm, times loop length in mm, times tex, over 100.
/// @throws Error bad_argument (field "stitches", "rows" for counts of the other, "count", "length_mm", "loop_mm",
/// "system", "number", "plies"); bad_value, as per_10cm() and yarn_tex().
LATCHWORK_API double area_density_g_m2(const CountPerLength& stitches, const CountPerLength& rows, double loop_mm,
                                       const YarnNumber& yarn);

}  // namespace latchwork::inline v0
