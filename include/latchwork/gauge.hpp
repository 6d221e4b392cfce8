#pragma once

#include <cstddef>
#include <cstdint>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "latchwork/export.hpp"
#include "latchwork/quantity.hpp"

namespace latchwork::inline v0 {

/// One measurement: how many stitches or rows were counted over what length, at one place of a rested swatch.
struct Measurement {
  std::string texture;  ///< UTF-8 without NUL, 1..256 bytes
  Counted counted = Counted::stitches;
  double count = 0;      ///< 0.1..10000; parts of a stitch count
  double length_mm = 0;  ///< 1..10000; 10 cm is 100 mm, 4 in is 101.6 mm
  std::string place;     ///< free text, UTF-8 without NUL, to 256 bytes: "left third"
  friend bool operator==(const Measurement&, const Measurement&) = default;
};

/// Mean and spread of the same thing measured in several places.
struct Density {
  double per_10cm = 0;  ///< mean of the places' count * 100 / length_mm
  double spread = 0;    ///< sample standard deviation (n - 1), per 10 cm; 0 for one place, where nothing is known of it
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

/// All measurements of a swatch, and the gauge of each texture. A value; all calls are const and linear in the
/// measurements.
class LATCHWORK_API Swatch {
 public:
  static constexpr std::size_t max_measurements = 50'000;

  Swatch() = default;
  /// @throws Error bad_value for a count, length or text out of its range, bad_encoding for text that is not UTF-8
  /// (field "measurements[3].count"); too_large (field "measurements").
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

/// Most bytes of a swatch file: 64 MiB, as of the other files.
inline constexpr std::size_t max_swatch_bytes = std::size_t{64} << 20;

/// Reads a swatch file: CSV (RFC 4180, UTF-8) whose first line names its columns, in any order:
/// texture,counted,count,length,unit,place; `place` may be left out. counted is `stitches` or `rows`; unit is mm, cm or
/// in (25.4 mm exactly: 10 cm and 4 in are two lengths). Numbers have a decimal point and no sign. Lines end with LF or
/// CRLF. Beyond the RFC: lines that start with # and blank lines are passed over, so are a byte order mark at the start
/// and blanks round an unquoted field. Linear in the text.
/// @throws Error with line and field: bad_syntax, missing_field, unknown_field, duplicate_key, bad_value, bad_unit,
/// bad_encoding, too_large (more than max_swatch_bytes or Swatch::max_measurements).
LATCHWORK_API Swatch read_swatch(std::string_view csv);

/// The CSV that read_swatch() reads back to an equal swatch: lengths in mm, every number in its
/// shortest exact form, lines ended with LF.
LATCHWORK_API std::string write(const Swatch& swatch);

}  // namespace latchwork::inline v0
