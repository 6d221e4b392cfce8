#include "latchwork/size.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <iterator>
#include <map>
#include <string_view>
#include <utility>

#include "gauge/gauges.hpp"
#include "size/measure.hpp"
#include "text/words.hpp"

namespace latchwork::inline v0 {
namespace {

constexpr double told_from_mm = 1;  // less is lost in the measuring

// One texture's part of a band.
struct Part {
  TextureColumns texture;
  double width_mm = 0;
  double height_mm = 0;
  bool ladder = true;  // no stitch anywhere: bare strands neither ripple nor are stretched
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

bool is_ladder(const Grid& grid, const Band& band, const StripSpan& strip) {
  const auto columns = static_cast<std::size_t>(grid.columns());
  for (int row = band.row; row < band.row + band.rows; ++row) {
    const auto cells =
        grid.cells().subspan(static_cast<std::size_t>(row - 1) * columns + static_cast<std::size_t>(strip.column),
                             static_cast<std::size_t>(strip.columns));
    if (std::any_of(cells.begin(), cells.end(), [](Cell cell) { return cell != Cell::none; })) return false;
  }
  return true;
}

MeasuredBand measured(const Grid& grid, const Band& band, const Gauges& gauges) {
  std::map<std::string_view, TextureColumns> columns;
  std::map<std::string_view, bool> stitches;
  for (const StripSpan& strip : band.strips) {
    TextureColumns& texture = columns[strip.texture];
    if (texture.gauge == nullptr) texture.gauge = &gauge_of(gauges, strip.texture);
    texture.columns += strip.columns;
    bool& any = stitches[strip.texture];
    any = any || !is_ladder(grid, band, strip);
  }
  MeasuredBand out;
  out.row = band.row;
  out.rows = band.rows;
  std::vector<TextureColumns> textures;
  for (const auto& [name, texture] : columns) {
    textures.push_back(texture);
    out.parts.push_back({texture, extent_mm(texture.columns, texture.gauge->stitches),
                         extent_mm(band.rows, texture.gauge->rows), !stitches[name]});
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

/// "rows 1-8, 17-24": where the same is true of several bands.
class Rows {
 public:
  void add(const MeasuredBand& band) {
    several_ = several_ || !runs_.empty() || band.rows > 1;
    runs_.push_back(band.rows == 1 ? fmt::to_string(band.row) : fmt::format("{}-{}", band.row, band.last_row()));
  }
  std::string words() const { return (several_ ? "rows " : "row ") + joined(runs_); }
  bool one_row() const { return !several_; }

 private:
  std::vector<std::string> runs_;
  bool several_ = false;
};

/// What is said of each band, each thing once, in the order of the lowest band it is true of.
class Said {
 public:
  void add(std::string words, const MeasuredBand& band) {
    const auto [known, fresh] = places_.try_emplace(words, said_.size());
    if (fresh) said_.emplace_back(std::move(words), Rows());
    said_[known->second].second.add(band);
  }
  const std::vector<std::pair<std::string, Rows>>& all() const { return said_; }

 private:
  std::vector<std::pair<std::string, Rows>> said_;
  std::map<std::string, std::size_t> places_;
};

/// The lowest and the tallest part of a band that have stitches; none where there is no such part.
std::pair<const Part*, const Part*> worked_heights(const MeasuredBand& band) {
  const Part* least = nullptr;
  const Part* greatest = nullptr;
  for (const Part& part : band.parts) {
    if (part.ladder) continue;
    if (least == nullptr || part.height_mm < least->height_mm) least = &part;
    if (greatest == nullptr || part.height_mm > greatest->height_mm) greatest = &part;
  }
  return {least, greatest};
}

void warn_of_heights(const std::vector<MeasuredBand>& bands, Size& size) {
  Said said;
  double lowest = 0;
  double tallest = 0;
  for (const MeasuredBand& band : bands) {
    const auto [least, greatest] = worked_heights(band);
    if (least == nullptr) continue;
    lowest += least->height_mm;
    tallest += greatest->height_mm;
    const double apart = greatest->height_mm - least->height_mm;
    if (apart < told_from_mm) continue;
    const std::string& tall = greatest->texture.gauge->texture;
    const std::string& low = least->texture.gauge->texture;
    said.add(fmt::format("texture '{}' is {:.1f} mm high and '{}' {:.1f} mm, {:.1f} mm apart: '{}' will ripple or '{}' "
                         "be stretched",
                         tall, greatest->height_mm, low, least->height_mm, apart, tall, low),
             band);
  }
  for (const auto& [words, rows] : said.all()) size.warnings.push_back(rows.words() + ": " + words);
  const double apart = tallest - lowest;
  if (said.all().empty() && apart >= told_from_mm) {
    size.warnings.push_back(
        fmt::format("strips of unlike height add up over {}: the tallest make {:.1f} mm, the lowest {:.1f} mm, "
                    "{:.1f} mm apart",
                    count_of(std::ssize(bands), "band"), tallest, lowest, apart));
  }
}

void warn_of_widths(const std::vector<MeasuredBand>& bands, const MeasuredBand& widest, Size& size) {
  Said said;
  for (const MeasuredBand& band : bands) {
    const double apart = widest.width_mm - band.width_mm;
    if (apart < told_from_mm) continue;
    said.add(fmt::format("{:.1f} mm wide and {} {:.1f} mm: the edges will wave, {:.1f} mm in all", band.width_mm,
                         run_of("row", widest.row, widest.last_row(), "-"), widest.width_mm, apart),
             band);
  }
  for (const auto& [words, rows] : said.all()) {
    size.warnings.push_back(fmt::format("{} {} {}", rows.words(), rows.one_row() ? "is" : "are", words));
  }
}

void warn_of_single_places(const std::vector<MeasuredBand>& bands, Size& size) {
  std::map<std::string_view, const Gauge*> gauges;
  for (const MeasuredBand& band : bands) {
    for (const Part& part : band.parts) gauges.emplace(part.texture.gauge->texture, part.texture.gauge);
  }
  struct Once {
    const char* what;
    bool stitches, rows;
    std::vector<std::string> textures{};
  };
  for (Once once : {Once{"stitches and rows", true, true}, Once{"stitches", true, false}, Once{"rows", false, true}}) {
    for (const auto& [texture, gauge] : gauges) {
      if ((gauge->stitches.places < 2) == once.stitches && (gauge->rows.places < 2) == once.rows) {
        once.textures.push_back(fmt::format("'{}'", texture));
      }
    }
    if (once.textures.empty()) continue;
    size.spread_known = false;
    size.warnings.push_back(
        fmt::format("{} of {} {} were measured in one place only: their spread is not known and "
                    "counts as 0",
                    once.what, once.textures.size() == 1 ? "texture" : "textures", joined(once.textures)));
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
    bands.push_back(measured(panel.grid(), band, gauges));
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
