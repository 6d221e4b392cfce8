#pragma once

#include <cstddef>
#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "latchwork/export.hpp"
#include "latchwork/gauge.hpp"
#include "latchwork/panel.hpp"
#include "latchwork/plain_knit.hpp"
#include "latchwork/yarn.hpp"

namespace latchwork::inline v0 {

/// How a need of yarn was found. The values are in the C ABI.
enum class YarnRoute : std::uint8_t {
  weighed_area = 0,      ///< from weighed swatches, by their area and the gauge of the state they were weighed in
  weighed_stitches = 1,  ///< from weighed swatches, by their stitches and the panel's; needs no gauge
  measured_loops = 2,    ///< from the length of unravelled stitches; needs no gauge
  plain_geometry = 3,    ///< from the gauge of plain knit and Munden's constants (plain_knit.hpp), for stockinette only
};

/// A swatch of one texture that was weighed. Give its width and height, or its stitches and rows, or both.
struct WeighedSwatch {
  std::string texture;
  double weight_g = 0;   ///< 1e-3..1e6
  double scale_g = 0;    ///< the step of the scale it was weighed on, 0..1e6; 0: finer than matters
  double width_mm = 0;   ///< in that state; 1..1e5, or 0 with height_mm
  double height_mm = 0;  ///< 1..1e5, or 0
  double stitches = 0;   ///< columns of its chart, 1..1e6, or 0 with rows
  double rows = 0;       ///< 1..1e6, or 0
  double tex = 0;        ///< of all its strands together, 1e-3..1e9; 0: of the yarns of the panel's first row
  ClothState state = ClothState::rested;  ///< of the swatch when its width and height were measured
  friend bool operator==(const WeighedSwatch&, const WeighedSwatch&) = default;
};

/// Stitches of one texture that were unravelled, and the length of yarn they gave. Some hundred stitches are usual.
struct MeasuredLoops {
  std::string texture;
  double stitches = 0;   ///< 1..1e9: places of the chart, columns times rows
  double length_mm = 0;  ///< of one strand, pulled straight; 0.1..1e9
  friend bool operator==(const MeasuredLoops&, const MeasuredLoops&) = default;
};

/// A yarn of the work.
struct Yarn {
  std::string name;
  YarnNumber number;  ///< number 0: not known, for one yarn alone and weighed swatches; lengths are then not known
  double ball_g = 0;  ///< as sold, 1e-3..1e6; 0: not sold by the ball
  friend bool operator==(const Yarn&, const Yarn&) = default;
};

/// Rows that one yarn is knitted in. Where the rows of several meet, they are knitted together.
struct YarnRows {
  int first = 1;  ///< 1..R
  int last = 0;   ///< first..R; 0: R
  int yarn = 0;   ///< index into YarnRequest::yarns
  friend bool operator==(const YarnRows&, const YarnRows&) = default;
};

/// What a need of yarn is reckoned from.
struct YarnRequest {
  static constexpr std::size_t max_yarns = 100;
  static constexpr std::size_t max_items = 50'000;  ///< of each other list

  std::vector<Yarn> yarns;     ///< one or more
  std::vector<YarnRows> rows;  ///< empty: all yarns in all rows
  std::vector<WeighedSwatch> weighed;
  std::vector<MeasuredLoops> loops;
  std::vector<Substitute> substitutes;
  std::optional<ClothState> state;      ///< of plain geometry's gauges; nothing: each texture's most finished one
  std::optional<PlainConstants> plain;  ///< nothing: by the state of each gauge, as yarn_need() says
  int pieces = 1;                       ///< panels alike, 1..10000
  double cast_on_rows = 1;   ///< yarn of the cast-on, in rows like row 1; 0..1000; common practice, no source
  double bind_off_rows = 1;  ///< yarn of the bind-off, in rows like the last; 0..1000; common practice, no source.
                             ///< Neither counts what is cast on or bound off at a shaped edge: the allowance holds it
  double waste_rows = 0;     ///< knitted beside the panel, in rows like row 1; 0..1e6
  int waste_yarn = -1;       ///< index; -1: the yarns of row 1
  double seam_mm = 0;        ///< seams of the whole article, 0..1e6
  double seam_ratio = 3;     ///< sewing yarn for a length of seam, 1..20; common practice, no source
  int seam_yarn = 0;         ///< index
  double sureness = 2;       ///< how sure it is to be enough, in standard deviations of a normal error, 0..6: 2 is
                             ///< enough in 97.7 of 100
  double allowance = 0.1;    ///< share on top of that, for joins, mistakes and a second swatch, 0..2; common practice
  friend bool operator==(const YarnRequest&, const YarnRequest&) = default;
};

/// One yarn's part of a need.
struct YarnShare {
  int yarn = 0;         ///< index into YarnRequest::yarns
  double weight_g = 0;  ///< the mean, without allowance
  double spread_g = 0;  ///< one standard deviation of it
  double margin_g = 0;  ///< what goes on top of weight_g for the sureness asked for
  double length_m = 0;  ///< 0 where the yarn's number is not known
  double buy_g = 0;     ///< (weight_g + margin_g) * (1 + allowance)
  int balls = 0;        ///< whole balls that hold buy_g; 0 where it is not sold by the ball
  friend bool operator==(const YarnShare&, const YarnShare&) = default;
};

/// The need by one route.
struct YarnEstimate {
  YarnRoute route = YarnRoute::weighed_area;
  double weight_g = 0;             ///< of all yarns
  double spread_g = 0;             ///< one standard deviation of it
  double margin_g = 0;             ///< as YarnShare has it, of all yarns together
  bool spread_known = true;        ///< every figure it rests on was measured twice or more, gauges too
  double length_m = 0;             ///< of all yarns; 0 where not known
  std::vector<YarnShare> shares;   ///< one a yarn
  std::vector<std::string> notes;  ///< for people: what was taken from another texture, what is not known
  friend bool operator==(const YarnEstimate&, const YarnEstimate&) = default;
};

/// The need by every route that can be gone.
struct YarnNeed {
  std::vector<YarnEstimate> estimates;  ///< in the order of YarnRoute
  double apart = 0;                     ///< (greatest - least weight) / mean of them; 0 for one route
  std::vector<std::string> missing;     ///< for people: why each other route cannot be gone, in the order of YarnRoute
  /// For people: routes that are further apart than their margins at 95 % explain; where neither margin is known, by
  /// more than a fifth of the greater (an estimate of what one swatch measured well may be off by).
  std::vector<std::string> warnings;
  /// Index into `estimates` of the one to buy by, for all yarns; -1 where there is none. Plain geometry only where it
  /// is the only one: its constants are of wool in general (plain_knit.hpp), the other routes were measured in this
  /// yarn. Of those each is enough as often as was asked for, so the one with the narrowest margin is taken (then the
  /// narrowest spread, then the first): a wide margin says that little is known, not that more is needed. Of estimates
  /// whose spread is not known none is the narrowest where one is known; where none is, the greatest weight and margin,
  /// as far as that is known, is taken. So it is too of those, known or not, that give more than the narrowest by more
  /// than both margins explain (added as squares, one not known as 0): one of them is wrong, and yarn left over is a
  /// smaller harm than yarn that is missing.
  int decides = -1;
  std::string why;  ///< for people: the route that decides, and by which of these rules; empty where none does
  friend bool operator==(const YarnNeed&, const YarnNeed&) = default;
};

/// Yarn for a panel. Every route comes down to a length l of each strand at one place of the chart, by texture:
///   weighed_area      l = 1e10 weight / (width height tex g r)   at g stitches and r rows per 10 cm
///   weighed_stitches  l = 1e6 weight / (stitches rows tex)
///   measured_loops    l = length / stitches
///   plain_geometry    l = 100 sqrt(Kc Kw / (g r))                for textures that are knit all over
/// in mm, g and tex. A place is a cell of the chart, but for `none` outside the cloth: a ladder is part of its texture,
/// in the swatch as in the panel. Several swatches of one texture give the mean of their l. Length is the sum of l over
/// places and strands, weight is length times tex. Rows of another thickness than the swatch's are reckoned at the same
/// l, which a note says.
///
/// States are kept apart: a swatch's area goes with the gauge of the state it was weighed in, whatever other states
/// were measured, and a texture without a gauge in that state has no figure by area. Plain geometry goes by the gauges
/// of `state`; without `plain` by the constants of the gauge's state, which a note names: dry_relaxed for cloth that
/// rested or is just off the machine, fully_relaxed for washed cloth (soaked and dried flat it is wet_relaxed: tell
/// it).
///
/// The spread says how far the need of one article may come out: one standard deviation, by error propagation to first
/// order, and its parts are the size's (size.hpp). Of a figure measured n times with the sample standard deviation s
/// over its mean, u^2 = s^2 (1 + 1/n). Of one texture, relative to l:
///   weighed_*        u^2 of the swatches' l, and d^2, the mean of (scale / weight)^2 / 12: a reading may be off
///                    by half a step, evenly (JCGM 100:2008, 4.3.7); weighed_area adds u^2 of g and of r
///   measured_loops   u^2 of the l
///   plain_geometry   (u_g / 2)^2 + (u_r / 2)^2 + e^2 + k^2: e half the difference of the lengths by g and by r alone,
///                    over l, which tells a cloth that is not plain knit at rest, but not in which state it is, since
///                    Kc / Kw is nearly the same in all; so k, for constants that were not told, is D / sqrt(3), as if
///                    sqrt(Kc Kw) lay evenly within D of what was taken (JCGM 100:2008, 4.3.7), D the relative
///                    difference from the next state (of cloth off the machine, from fully_relaxed)
/// What shares a figure or a gauge is off together, so its parts are added; the others are added as squares. Numbers of
/// yarns, seams and what is bought on top have no spread.
///
/// The margin is the spread times the point of Student's t that is passed as seldom as a normal error passes `sureness`
/// standard deviations, with the effective degrees of freedom as of size(): of two swatches it is wide, since that
/// little is known, and a note says so. What was measured once adds nothing: the spread is then too small by what is
/// not known, `spread_known` is false, and a note names it.
///
/// A texture that has no figure for a route bars that route, unless `substitutes` names one for it; no figure is built
/// in, for cables and tucks least of all. A route that was measured so seldom that its margin alone comes to more than
/// 1e9 g to buy is missing. Linear in cells, swatches and yarns.
/// @throws Error bad_argument (field "yarns", "rows[1].last", "weighed[0].weight_g") for what is out of its range,
/// a row without a yarn, numbers of yarns that are not known where they must be, or one that is not known (0) in
/// another system than tex or in several plies; bad_encoding ("yarns[0].name"); too_large for lists above their limits
/// and for a need above 1e9 g or balls (field "pieces" or "seam_mm" where these make it so, else "yarns[0].number" or
/// "yarns[0].ball_g").
LATCHWORK_API YarnNeed yarn_need(const Panel& panel, const Swatch& swatch, const YarnRequest& request);

}  // namespace latchwork::inline v0
