#include "latchwork/size.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <map>
#include <string_view>
#include <utility>

#include "gauge/gauges.hpp"
#include "size/measure.hpp"

namespace latchwork::inline v0 {
namespace {

constexpr double told_from_mm = 1;  // less is lost in the measuring

// One texture's part of a band.
struct Part {
  TextureColumns texture;
  double width_mm = 0;
  double height_mm = 0;
};

struct MeasuredBand {
  int row = 1;
  int rows = 1;
  std::vector<Part> parts;  // by texture name
  double width_mm = 0;
  double height_mm = 0;
  std::size_t least_part = 0;     // of the heights; the first by name of equal ones
  std::size_t greatest_part = 0;  // likewise
  int last_row() const { return row + rows - 1; }
  const Part& least() const { return parts[least_part]; }
  const Part& greatest() const { return parts[greatest_part]; }
};

MeasuredBand measured(const Band& band, const Gauges& gauges) {
  std::map<std::string_view, TextureColumns> columns;
  for (const StripSpan& strip : band.strips) {
    TextureColumns& texture = columns[strip.texture];
    if (texture.gauge == nullptr) texture.gauge = &gauge_of(gauges, strip.texture);
    texture.columns += strip.columns;
  }
  MeasuredBand out;
  out.row = band.row;
  out.rows = band.rows;
  std::vector<TextureColumns> textures;
  for (const auto& [name, texture] : columns) {
    textures.push_back(texture);
    out.parts.push_back(
        {texture, extent_mm(texture.columns, texture.gauge->stitches), extent_mm(band.rows, texture.gauge->rows)});
  }
  out.width_mm = band_width_mm(textures);
  out.height_mm = band_height_mm(textures, band.rows);
  for (std::size_t i = 1; i < out.parts.size(); ++i) {
    if (out.parts[i].height_mm < out.least().height_mm) out.least_part = i;
    if (out.parts[i].height_mm > out.greatest().height_mm) out.greatest_part = i;
  }
  return out;
}

double relative_spread(const Density& density) {
  return density.spread / density.per_10cm;
}

double width_spread(const MeasuredBand& band) {
  double squares = 0;
  for (const Part& part : band.parts) {
    const double share = relative_spread(part.texture.gauge->stitches) * part.width_mm;
    squares += share * share;
  }
  return std::sqrt(squares);
}

// See size.hpp for the formula. A texture's shares are summed over the bands before they are squared.
double height_spread(const std::vector<MeasuredBand>& bands) {
  struct Shares {
    double by_rows = 0;
    double by_stitches = 0;
  };
  std::map<std::string_view, Shares> shares;
  for (const MeasuredBand& band : bands) {
    for (const Part& part : band.parts) {
      const Gauge& gauge = *part.texture.gauge;
      Shares& of = shares[gauge.texture];
      of.by_rows += relative_spread(gauge.rows) * part.height_mm * part.width_mm / band.width_mm;
      of.by_stitches +=
          relative_spread(gauge.stitches) * part.width_mm * (part.height_mm - band.height_mm) / band.width_mm;
    }
  }
  double squares = 0;
  for (const auto& [texture, of] : shares) squares += of.by_rows * of.by_rows + of.by_stitches * of.by_stitches;
  return std::sqrt(squares);
}

std::string rows_of(const MeasuredBand& band) {
  return band.rows == 1 ? fmt::format("row {}", band.row) : fmt::format("rows {}-{}", band.row, band.last_row());
}

void warn_of_heights(const std::vector<MeasuredBand>& bands, Size& size) {
  bool told = false;
  for (const MeasuredBand& band : bands) {
    const double apart = band.greatest().height_mm - band.least().height_mm;
    if (apart < told_from_mm) continue;
    told = true;
    const std::string& tall = band.greatest().texture.gauge->texture;
    const std::string& low = band.least().texture.gauge->texture;
    size.warnings.push_back(fmt::format(
        "{}: texture '{}' is {:.1f} mm high and '{}' {:.1f} mm, {:.1f} mm apart: '{}' will ripple or '{}' be stretched",
        rows_of(band), tall, band.greatest().height_mm, low, band.least().height_mm, apart, tall, low));
  }
  const double apart = size.greatest_height_mm - size.least_height_mm;
  if (!told && apart >= told_from_mm) {
    size.warnings.push_back(
        fmt::format("strips of unlike height add up over {} bands: the tallest make {:.1f} mm, the lowest {:.1f} mm, "
                    "{:.1f} mm apart",
                    bands.size(), size.greatest_height_mm, size.least_height_mm, apart));
  }
}

void warn_of_widths(const std::vector<MeasuredBand>& bands, const MeasuredBand& widest, Size& size) {
  for (const MeasuredBand& band : bands) {
    const double apart = widest.width_mm - band.width_mm;
    if (apart < told_from_mm) continue;
    size.warnings.push_back(fmt::format("{} are {:.1f} mm wide and {} {:.1f} mm: the edges will wave, {:.1f} mm in all",
                                        rows_of(band), band.width_mm, rows_of(widest), widest.width_mm, apart));
  }
}

void warn_of_single_places(const std::vector<MeasuredBand>& bands, Size& size) {
  std::map<std::string_view, const Gauge*> gauges;
  for (const MeasuredBand& band : bands) {
    for (const Part& part : band.parts) gauges.emplace(part.texture.gauge->texture, part.texture.gauge);
  }
  for (const auto& [texture, gauge] : gauges) {
    const bool stitches = gauge->stitches.places < 2;
    const bool rows = gauge->rows.places < 2;
    if (!stitches && !rows) continue;
    const char* what = stitches && rows ? "stitches and rows were" : stitches ? "stitches were" : "rows were";
    size.warnings.push_back(fmt::format(
        "texture '{}': {} measured in one place only, so their spread is not known and counts as 0", texture, what));
  }
}

}  // namespace

Size size(const Panel& panel, const Swatch& swatch) {
  const Gauges gauges = all_gauges(swatch);
  Size out;
  std::vector<MeasuredBand> bands;
  bands.reserve(panel.bands().size());
  for (const Band& band : panel.bands()) {
    for (const StripSpan& strip : band.strips) {
      const Gauge& gauge = gauge_of(gauges, strip.texture);
      out.strips.push_back({strip.name, strip.texture, static_cast<int>(bands.size()), strip.columns, band.rows,
                            extent_mm(strip.columns, gauge.stitches), extent_mm(band.rows, gauge.rows)});
    }
    bands.push_back(measured(band, gauges));
    out.height_mm += bands.back().height_mm;
    out.least_height_mm += bands.back().least().height_mm;
    out.greatest_height_mm += bands.back().greatest().height_mm;
  }
  const auto by_width = [](const MeasuredBand& a, const MeasuredBand& b) { return a.width_mm < b.width_mm; };
  const MeasuredBand& widest = *std::max_element(bands.begin(), bands.end(), by_width);  // the lowest of equal ones
  out.width_mm = widest.width_mm;
  out.least_width_mm = std::min_element(bands.begin(), bands.end(), by_width)->width_mm;
  out.width_spread_mm = width_spread(widest);
  out.height_spread_mm = height_spread(bands);
  warn_of_heights(bands, out);
  warn_of_widths(bands, widest, out);
  warn_of_single_places(bands, out);
  return out;
}

}  // namespace latchwork::inline v0
