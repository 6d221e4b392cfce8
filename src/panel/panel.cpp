#include "latchwork/panel.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cstdint>
#include <utility>

#include "latchwork/error.hpp"
#include "strip/names.hpp"
#include "text/utf8.hpp"
#include "text/words.hpp"

namespace latchwork::inline v0 {
namespace {

[[noreturn]] void refuse_at(ErrorCode code, int row, int column, const char* field, const std::string& message) {
  Place place;
  place.row = row;
  place.column = column;
  place.field = field;
  throw Error(code, std::move(place), message);
}

/// In UTF-8, and without a NUL: C would tell it only up to there.
void require_text_in(const std::string& text, const std::string& field) {
  const std::size_t bad = utf8_error(text);
  const std::size_t nul = text.find('\0');
  if (bad == std::string::npos && nul == std::string::npos) return;
  Place place;
  place.field = field;
  if (bad == std::string::npos) {
    throw Error(ErrorCode::bad_value, std::move(place),
                fmt::format("{} holds a NUL (offset {}), which no name may", field, nul));
  }
  throw Error(ErrorCode::bad_encoding, std::move(place),
              fmt::format("{} holds a byte that is not UTF-8 (offset {})", field, bad));
}

void require_names(const std::string& name, std::span<const Band> bands) {
  require_text_in(name, "name");
  for (std::size_t b = 0; b < bands.size(); ++b) {
    const std::vector<StripSpan>& strips = bands[b].strips;
    for (std::size_t s = 0; s < strips.size(); ++s) {
      require_text_in(strips[s].name, fmt::format("bands[{}].strips[{}].name", b, s));
      require_text_in(strips[s].texture, fmt::format("bands[{}].strips[{}].texture", b, s));
    }
  }
}

/// The strips of one band must stand side by side from column 0 to the grid's last.
void require_strips_cover(const Band& band, int columns) {
  std::int64_t next = 0;
  for (const StripSpan& strip : band.strips) {
    if (strip.columns < 1) {
      refuse_at(ErrorCode::bad_argument, band.row, strip.column, "columns",
                fmt::format("strip '{}' in the band at row {} has {} columns; at least 1", strip.name, band.row,
                            strip.columns));
    }
    if (strip.repeat_rows < 1) {
      refuse_at(ErrorCode::bad_argument, band.row, strip.column, "repeat_rows",
                fmt::format("strip '{}' in the band at row {} repeats every {} rows; at least 1", strip.name, band.row,
                            strip.repeat_rows));
    }
    if (strip.column != next) {
      refuse_at(ErrorCode::size_mismatch, band.row, strip.column, "",
                fmt::format("strip '{}' in the band at row {} begins at column {}; the next column to cover is {}",
                            strip.name, band.row, strip.column, next));
    }
    next += strip.columns;
  }
  if (next != columns) {
    refuse_at(ErrorCode::size_mismatch, band.row, static_cast<int>(std::min<std::int64_t>(next, columns)), "",
              fmt::format("the strips of the band at row {} cover {}; the grid has {}", band.row,
                          count_of(next, "column"), columns));
  }
}

void require_bands_cover(std::span<const Band> bands, const Grid& grid) {
  std::int64_t next = 1;
  for (const Band& band : bands) {
    if (band.rows < 1) {
      refuse_at(ErrorCode::bad_argument, band.row, -1, "rows",
                fmt::format("the band at row {} has {} rows; at least 1", band.row, band.rows));
    }
    if (band.row != next) {
      refuse_at(ErrorCode::size_mismatch, band.row, -1, "",
                fmt::format("a band begins at row {}; the next row to cover is {}", band.row, next));
    }
    require_strips_cover(band, grid.columns());
    next += band.rows;
  }
  if (next != grid.rows() + std::int64_t{1}) {
    refuse_at(ErrorCode::size_mismatch, static_cast<int>(std::min<std::int64_t>(next, grid.rows())), -1, "",
              fmt::format("the bands cover {}; the grid has {}", count_of(next - 1, "row"), grid.rows()));
  }
}

}  // namespace

Panel::Panel(std::string name, const Strip& strip) : name_(std::move(name)), grid_(strip.grid) {
  require_text_in(name_, "name");
  require_text_in(strip.name, "strip.name");
  require_text_in(strip.texture, "strip.texture");
  Band band;
  band.rows = grid_.rows();
  band.strips.push_back({strip.name, strip.texture, 0, grid_.columns(), grid_.rows()});
  bands_.push_back(std::move(band));
}

Panel::Panel(std::string name, Grid grid, std::vector<Band> bands)
    : name_(std::move(name)), grid_(std::move(grid)), bands_(std::move(bands)) {
  require_names(name_, bands_);  // first, since the other messages quote them
  require_bands_cover(bands_, grid_);
}

void Panel::set_axis_half_columns(std::optional<int> half_columns) {
  const int most = 2 * grid_.columns() - 1;
  if (half_columns && (*half_columns < 1 || *half_columns > most)) {
    Place place;
    place.field = "axis_half_columns";
    throw Error(ErrorCode::bad_argument, std::move(place),
                fmt::format("axis_half_columns is {}; 1 to {} in a panel of {}", *half_columns, most,
                            count_of(grid_.columns(), "column")));
  }
  axis_ = half_columns;
}

Panel Panel::above(const Panel& below) const {
  Panel result = below;
  result.grid_ = grid_.above(below.grid_);
  result.name_ = name_;
  for (const Band& band : bands_) {
    result.bands_.push_back(band);
    result.bands_.back().row += below.grid_.rows();
  }
  if (axis_ != below.axis_) result.axis_ = std::nullopt;
  return result;
}

Panel Panel::mirrored() const {
  Panel result = *this;
  result.grid_ = grid_.mirrored();
  for (Band& band : result.bands_) {
    std::ranges::reverse(band.strips);
    for (StripSpan& strip : band.strips) {
      strip.column = grid_.columns() - strip.column - strip.columns;
      strip.name = mirrored_name(strip.name);
    }
  }
  if (axis_) result.axis_ = 2 * grid_.columns() - *axis_;
  return result;
}

}  // namespace latchwork::inline v0
