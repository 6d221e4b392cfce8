#pragma once

#include <string>
#include <vector>

#include "latchwork/export.hpp"
#include "latchwork/gauge.hpp"
#include "latchwork/panel.hpp"

namespace latchwork::inline v0 {

/// One strip of a band at its own gauge.
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

/// Relaxed size of a panel. A strip of n columns and m rows measures 100 n / g by 100 m / r mm, where g and r are its
/// texture's stitches and rows per 10 cm. The width of a band is the sum of its strips' widths; the panel's is its
/// widest band's. Strips of unlike row gauge pull on each other, so heights are told as least, greatest and
/// width-weighted mean, each per band and summed over the bands.
///
/// The spreads say how far the panel may come out when its gauge wanders as much as the places of the swatch did: one
/// standard deviation, from the sample standard deviations s of the swatch (not from the error of the mean, which
/// would be smaller and takes the swatch for the panel). Error propagation to first order: where a gauge g has spread
/// s, a size X changes by dX/dg * s. All strips of a texture share its gauge, so their shares are added; different
/// textures, and the stitches and rows of one texture, are independent, so theirs are added as squares:
///   width_spread^2  = sum over textures t of (s_t / g_t * sum of the widths w of t's strips)^2, in the widest band;
///   height_spread^2 = sum over t of (s_t / r_t * sum of h w / W)^2 + (s_t / g_t * sum of w (h - H) / W)^2,
/// where the inner sums run over t's strips in all bands, h is a strip's height, and W and H are width and mean height
/// of its band: the second term is there because widths are the weights of the mean. A texture measured in one place
/// adds nothing to the spreads: they are then too small by what is not known, `spread_known` is false, and a warning
/// names the textures.
struct Size {
  double width_mm = 0;
  double least_width_mm = 0;  ///< of the narrowest band: below width_mm the edges wave
  double height_mm = 0;       ///< width-weighted mean
  double least_height_mm = 0;
  double greatest_height_mm = 0;
  double width_spread_mm = 0;         ///< one standard deviation of width_mm
  double height_spread_mm = 0;        ///< one standard deviation of height_mm
  bool spread_known = true;           ///< stitches and rows of every texture were measured in two places or more
  std::vector<StripSize> strips;      ///< by band from the bottom, from the left on the RS
  std::vector<std::string> warnings;  ///< for people, each said once: unlike heights of strips (but of ladders, which
                                      ///< give way) and unlike widths of bands from 1 mm up, with their rows; textures
                                      ///< whose spread is not known
  friend bool operator==(const Size&, const Size&) = default;
};

/// Size of a panel from the swatch's gauges. A ladder ("none" columns) is measured like any texture.
/// Mirroring a panel changes nothing in it but the order of the strips. Linear in strips, measurements
/// and the cells of ladders.
/// @throws Error no_gauge (field = texture).
LATCHWORK_API Size size(const Panel& panel, const Swatch& swatch);

}  // namespace latchwork::inline v0
