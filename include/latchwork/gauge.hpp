#pragma once

#include <cstdint>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "latchwork/export.hpp"

namespace latchwork::inline v0 {

enum class Counted : std::uint8_t { stitches = 0, rows = 1 };

/// One measurement: how many stitches or rows were counted over what length, at one place of a rested swatch.
struct Measurement {
  std::string texture;
  Counted counted = Counted::stitches;
  double count = 0;      ///< above 0, at most 10000
  double length_mm = 0;  ///< above 0, at most 10000; 10 cm is 100 mm, 4 in is 101.6 mm
  std::string place;     ///< free text: "left third"
  friend bool operator==(const Measurement&, const Measurement&) = default;
};

/// Mean and spread of the same thing measured in several places.
struct Density {
  double per_10cm = 0;  ///< mean of the places' count * 100 / length_mm
  double spread = 0;    ///< sample standard deviation (n - 1); 0 for one place
  int places = 0;
  friend bool operator==(const Density&, const Density&) = default;
};

/// Stitches and rows per 10 cm of one texture.
struct Gauge {
  std::string texture;
  Density stitches;
  Density rows;
  friend bool operator==(const Gauge&, const Gauge&) = default;
};

/// All measurements of a swatch, and the gauge of each texture. A value.
class LATCHWORK_API Swatch {
 public:
  Swatch() = default;
  /// @throws Error bad_value (field) for a count or length out of range, or an empty texture.
  explicit Swatch(std::vector<Measurement> measurements);

  std::span<const Measurement> measurements() const noexcept { return measurements_; }
  /// Textures in the order first measured.
  std::vector<std::string> textures() const;
  bool has(std::string_view texture) const noexcept;  ///< both stitches and rows were measured
  /// @throws Error no_gauge (field = the texture) when stitches or rows were not measured.
  Gauge gauge(std::string_view texture) const;
  friend bool operator==(const Swatch&, const Swatch&) = default;

 private:
  std::vector<Measurement> measurements_;
};

/// Reads a swatch file: CSV (RFC 4180) with a first line that names its columns, in any order:
/// texture,counted,count,length,unit,place; counted is `stitches` or `rows`, unit is mm, cm or in. Lines that start
/// with # and blank lines are passed over.
/// @throws Error with line and field: bad_syntax, missing_field, unknown_field, duplicate_key, bad_value, bad_unit,
/// bad_encoding, too_large.
LATCHWORK_API Swatch read_swatch(std::string_view csv);

/// The CSV that read_swatch() reads back to an equal swatch (lengths in mm).
LATCHWORK_API std::string write(const Swatch& swatch);

}  // namespace latchwork::inline v0
