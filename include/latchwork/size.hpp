#pragma once

#include <optional>
#include <string>
#include <vector>

#include "latchwork/export.hpp"
#include "latchwork/finding.hpp"
#include "latchwork/gauge.hpp"
#include "latchwork/panel.hpp"

namespace latchwork::inline v0 {

/// By which gauges a panel is measured, and what its seams take off it.
struct SizeOptions {
  std::optional<ClothState> state{};  ///< of all gauges; nothing: each texture's most finished one, as Swatch has it
  std::vector<Substitute> substitutes{};  ///< for textures without a gauge; no other stands in, and each is told
  double seam_left = 0;    ///< stitches that the seam at that side takes in, as seen on the RS: 0..1000, whole or half
  double seam_right = 0;   ///< likewise
  double seam_bottom = 0;  ///< rows that the seam along the cast-on takes in, likewise
  double seam_top = 0;     ///< along the bind-off
  double level = 0.95;     ///< of the margins, 0.5..0.999
  friend bool operator==(const SizeOptions&, const SizeOptions&) = default;
};

/// One strip of a band at its own gauge, seams and shape not taken off; 0 mm, and no gauge, where all of it is cut off.
struct StripSize {
  std::string name;
  std::string texture;
  int band = 0;  ///< index, bottom first
  int columns = 0;
  int rows = 0;
  double width_mm = 0;
  double height_mm = 0;
  friend bool operator==(const StripSize&, const StripSize&) = default;
};

/// A row of a panel between its seams.
struct RowWidth {
  int row = 1;
  int columns = 0;  ///< in work from its first stitch to its last: with what the seams take
  double width_mm = 0;
  double spread_mm = 0;  ///< one standard deviation of width_mm
  double margin_mm = 0;  ///< width_mm lies within so much of what it will be, at the size's level
  friend bool operator==(const RowWidth&, const RowWidth&) = default;
};

/// Size of a panel, between its seams, in the state that the gauges were measured in. A strip of n columns and m rows
/// measures 100 n / g by 100 m / r mm, where g and r are its texture's stitches and rows per 10 cm; what a seam takes
/// in is not counted. The width of a row is the sum of its strips' widths from its first stitch to its last, so that a
/// shaped panel's rows have their own; the panel's is its widest row's, and those of the first and the last row are
/// told beside it. A row without a stitch counts as whole. A seam at the left or right follows the edge: it takes as
/// many stitches of each row. Strips of unlike row gauge pull on each other, so heights are told as least, greatest and
/// width-weighted mean, each per band, of a shaped panel per stretch of rows that have the same columns, and summed.
///
/// The spreads say how far one panel may come out when its gauge wanders as much as the places of the swatch did: one
/// standard deviation, by error propagation to first order (JCGM 100:2008, 5.1.2). Of a gauge g that was measured in n
/// places with the sample standard deviation s, the panel's own differs from the mean by u = s sqrt(1 + 1/n): the 1 is
/// the panel's wandering, the 1/n what is not known of the mean. One swatch tells nothing of how another piece may come
/// out looser or tighter all over; of several, u^2 = spread^2 + standard_error^2 of gauge.hpp has that in it. All
/// strips that share a gauge are off together, so their shares are added; different gauges, and the stitches and rows
/// of one texture, are independent, so theirs are added as squares:
///   width_spread^2  = sum over gauges t of (u_t / g_t * sum of the widths w of t's strips)^2, in the widest row;
///   height_spread^2 = sum over t of (u_t / r_t * sum of h w / W)^2 + (u_t / g_t * sum of w (h - H) / W)^2,
/// where the inner sums run over t's strips in all bands, or stretches of them, h is a strip's height, and W and H are
/// width and mean height of its band or stretch: the second term is there because widths are the weights of the mean.
///
/// The margins are half the interval in which, at the level asked for, the panel's size lies: the spread times the
/// point of Student's t that leaves (1 - level) / 2 on either side, with the effective degrees of freedom of Welch and
/// Satterthwaite, spread^4 / sum of (part^4 / freedom of the gauge, n - 1 of one swatch) over the squares' parts, cut
/// to the whole number below (JCGM 100:2008, G.4.1; 10000 at most). Of two places the margin is wide: that little is
/// known.
///
/// A texture measured in one place adds nothing to the spreads: they are then too small by what is not known,
/// `spread_known` is false, and a finding names the textures.
struct Size {
  double width_mm = 0;
  double least_width_mm = 0;  ///< width_mm less what the narrowest band, over the columns that every row has, lacks of
                              ///< the widest: below width_mm the edges wave
  double height_mm = 0;       ///< width-weighted mean
  double least_height_mm = 0;
  double greatest_height_mm = 0;
  double seam_width_mm = 0;     ///< what those at the sides take off the row that is widest between them
  double seam_height_mm = 0;    ///< what they take off height_mm; below 0 where those at the sides take a short texture
                                ///< wholly or in part, whose height is in the mean without them
  double width_spread_mm = 0;   ///< one standard deviation of width_mm
  double height_spread_mm = 0;  ///< one standard deviation of height_mm
  double level = 0.95;          ///< of the margins
  double width_margin_mm = 0;   ///< width_mm lies within so much of what it will be, at that level
  double height_margin_mm = 0;
  bool spread_known = true;       ///< stitches and rows of every texture were measured in two places or more
  int widest_row = 1;             ///< the lowest of equal ones
  int widest_columns = 0;         ///< as RowWidth has them
  RowWidth cast_on;               ///< the lowest row that is not wholly in a seam
  RowWidth bind_off;              ///< the highest
  std::vector<StripSize> strips;  ///< by band from the bottom, from the left on the RS
  /// Each said once: borrowed_gauge, mixed_states, unknown_spread; narrow_texture (advice; columns of its first strip,
  /// `value` wales at the most of `limit`; strips of a texture that touch are one, and what is measured by another's
  /// gauge is not told); unlike_heights (but of ladders, which give way) and
  /// unlike_widths from 1 mm up, with their lowest and highest rows; value and limit in mm, rounded.
  std::vector<Finding> findings;
  friend bool operator==(const Size&, const Size&) = default;
};

/// Size of a panel from the swatch's gauges. A ladder ("none" columns) is measured like any texture. Mirroring a panel
/// (and its seams) changes nothing in it but the order of the strips. Linear in measurements, cells and, where the
/// shape changes, the strips of each such row. @throws Error no_gauge (field = texture); bad_argument (field
/// "seam_left", "level", "substitutes[1].use"), also for seams that leave nothing; too_large (field "substitutes").
LATCHWORK_API Size size(const Panel& panel, const Swatch& swatch, const SizeOptions& options = {});

/// How far a panel's measure can be trusted before it is sized: no_swatch (error) for each texture that size() would
/// refuse, borrowed_gauge, mixed_states, unknown_spread and narrow_texture as in Size, and what swatch_findings() says
/// of the gauges that are used. Linear in strips and measurements. @throws Error bad_argument (field, as above);
/// too_large.
LATCHWORK_API std::vector<Finding> measuring_findings(const Panel& panel, const Swatch& swatch,
                                                      const SizeOptions& options = {});

}  // namespace latchwork::inline v0
