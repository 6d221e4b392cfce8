#pragma once

#include <cstddef>
#include <cstdint>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "latchwork/export.hpp"
#include "latchwork/finding.hpp"
#include "latchwork/quantity.hpp"

namespace latchwork::inline v0 {

/// What has been done to a cloth since it was knitted, the least finished first. Cloth measures differently in each, so
/// measurements of two states are never put together. The values are in the C ABI.
enum class ClothState : std::uint8_t {
  off_machine = 0,  ///< just taken off
  rested = 1,       ///< lain without pull until it moves no more, overnight at least
  washed = 2,       ///< washed and dried as the article will be
};

/// "off the machine", "rested", "washed": what a swatch file says. Empty for a number that is no state.
LATCHWORK_API std::string_view cloth_state_name(ClothState state) noexcept;

/// One measurement: how many stitches or rows were counted over what length, at one place of a swatch.
struct Measurement {
  std::string texture{};  ///< UTF-8 without NUL, 1..256 bytes
  Counted counted = Counted::stitches;
  double count = 0;                       ///< 0.1..10000; parts of a stitch count
  double length_mm = 0;                   ///< 1..10000; 10 cm is 100 mm, 4 in is 101.6 mm
  std::string place{};                    ///< free text, UTF-8 without NUL, to 256 bytes: "left third"
  std::string swatch{};                   ///< the piece it was measured on, likewise, to 64 bytes: "second, looser"
  ClothState state = ClothState::rested;  ///< of that piece when it was measured
  int line = 0;                           ///< line of the file it was read from, 0..2147483647; 0: from none
  friend bool operator==(const Measurement&, const Measurement&) = default;
};

/// The same thing measured in several places: its mean, and how far that is to be trusted.
///
/// One swatch knows only its own wandering: a piece that is knitted another day may be looser all over. Where two
/// swatches or more were measured and their means differ by more than their places explain, that is part of it (one-way
/// analysis of variance, JCGM 100:2008, H.5). With K swatches, N places, n_i of them in swatch i, the mean squares B
/// between swatches and W within them, and n0 = (N - sum n_i^2 / N) / (K - 1), swatches differ by the variance
/// V = (B - W) / n0 (unequal n_i: from memory). Where V > 0, spread^2 = V + W, standard_error^2 = V sum n_i^2 / N^2 +
/// W / N, and `freedom` follows from B with K - 1 degrees and W with N - K (Welch and Satterthwaite, JCGM 100:2008,
/// G.4.1). Two swatches may be alike by chance, so with two only a margin at 95 % holds about nine times in ten.
struct Density {
  double per_10cm = 0;        ///< mean of the places' count * 100 / length_mm
  double spread = 0;          ///< sample standard deviation (n - 1), per 10 cm; 0 for one place: nothing is known of it
  double standard_error = 0;  ///< of the mean: spread / sqrt(places) (JCGM 100:2008, 4.2.3); 0 for one place
  int places = 0;
  int swatches = 0;    ///< pieces it was measured on, by their names
  double freedom = 0;  ///< degrees of freedom of spread^2 + standard_error^2: places - 1; 0 for one place
  friend bool operator==(const Density&, const Density&) = default;
};

/// Stitches and rows per 10 cm of one texture in one state.
struct Gauge {
  std::string texture;
  ClothState state = ClothState::rested;
  Density stitches;
  Density rows;
  friend bool operator==(const Gauge&, const Gauge&) = default;
};

/// A texture that may be reckoned by another's figure, since it has none of its own. Wherever a list of these is taken,
/// one that names a texture twice, or as its own substitute, is refused: Error bad_argument (field
/// "substitutes[1].texture", "substitutes[0].use").
struct Substitute {
  std::string texture;
  std::string use;  ///< the texture whose figure is taken
  friend bool operator==(const Substitute&, const Substitute&) = default;
};

/// All measurements of the swatches, and the gauge of each texture in each state. A value; all calls are const and
/// linear in the measurements.
///
/// Where no state is asked for, a texture's is the most finished one in which both its stitches and its rows were
/// measured: that of the article, if its swatch was finished like it.
/// Const calls may run at once on one object; any other call needs it alone.
class LATCHWORK_API Swatch {
 public:
  static constexpr std::size_t max_measurements = 50'000;

  Swatch() = default;
  /// @throws Error bad_value for a count, length, state, line or text out of its range, bad_encoding for text that is
  /// not UTF-8 (field "measurements[3].count"); too_large (field "measurements").
  explicit Swatch(std::vector<Measurement> measurements);

  std::span<const Measurement> measurements() const noexcept { return measurements_; }
  /// Textures in the order first measured.
  std::vector<std::string> textures() const;
  /// The states in which both stitches and rows of a texture were measured, the least finished first.
  std::vector<ClothState> states(std::string_view texture) const;
  /// Both stitches and rows were measured in that state; in any, when none is named.
  bool has(std::string_view texture, std::optional<ClothState> state = {}) const noexcept;
  /// @throws Error no_gauge (field = the texture) when stitches or rows were not measured in that state, or in any;
  /// bad_argument (field "state").
  Gauge gauge(std::string_view texture, std::optional<ClothState> state = {}) const;
  /// The same measurements in the same order, whichever lines they stood on.
  friend LATCHWORK_API bool operator==(const Swatch&, const Swatch&) noexcept;

 private:
  std::vector<Measurement> measurements_;
};

/// How much a texture shrinks from one state to a more finished one, in per cent of its length in the first. Less than
/// 0: it grows. (ISO 5077 prints the change with the other sign.)
struct Shrinkage {
  std::string texture;
  ClothState from_state = ClothState::off_machine;
  ClothState to_state = ClothState::rested;
  double width_percent = 0;   ///< 100 (1 - q), q = stitches per 10 cm in the first state over those in the second
  double width_error = 0;     ///< its standard error, in the same per cent; 0 when not known
  double length_percent = 0;  ///< the same by rows
  double length_error = 0;
  bool error_known = false;  ///< stitches and rows were measured in two places or more in both states
  friend bool operator==(const Shrinkage&, const Shrinkage&) = default;
};

/// Every pair of states that a texture has a gauge in, textures in the order first measured, the least finished first.
/// The standard error is 100 q sqrt(e_from^2 + e_to^2), e the standard errors of the two means over the means (JCGM
/// 100:2008, 5.1.6): the states count as measured independently, which overstates it where the same marks were measured
/// again. Linear in the measurements.
LATCHWORK_API std::vector<Shrinkage> shrinkages(const Swatch& swatch);

/// Fewest places that make a gauge, and the shortest length to count over: common practice, no source.
inline constexpr int usual_places = 5;
inline constexpr double usual_length_mm = 100;

/// What is doubtful in a swatch, for each texture and state, in the order first measured. Nothing is left out of a
/// gauge for it. place.field is the measurement, "measurements[3]", place.line its line:
///   half_measured (warning)    stitches or rows alone were measured in that state, which makes no gauge
///   few_places (advice; one place: warning)  fewer than usual_places; value and limit in places
///   short_measure (advice)     counted over less than usual_length_mm: the shortest; value (cut) and limit in mm
///   odd_one_out (warning)      one place that does not belong to the others
///   unlike_swatches (warning)  swatches that differ by more than their places explain
/// The odd one out is found by Grubbs's test, two-sided at 5 % (F. E. Grubbs, Technometrics 11, 1969; NIST/SEMATECH
/// e-Handbook of Statistical Methods, 1.3.5.17.1): of n >= 3 places the one farthest from the mean, if it lies more
/// than (n - 1) / sqrt(n) * sqrt(t^2 / (n - 2 + t^2)) sample standard deviations away, t the upper 0.05 / 2n point of
/// Student's t with n - 2 degrees of freedom; and, since people count in halves, if it is a whole stitch or row or
/// more, over the length counted there, off the mean of the others, or one and a half where they counted whole ones
/// only. At most one is named: two wrong places may hide
/// each other, so count again and look again. Swatches are unlike by the F test of their means at 5 % (the analysis of
/// variance as for Density), if the greatest and the least mean are half a stitch or row apart over the mean length
/// counted there. Linear in the measurements, but for one t for each number of places.
LATCHWORK_API std::vector<Finding> swatch_findings(const Swatch& swatch);

/// Most bytes of a swatch file: 64 MiB, as of the other files.
inline constexpr std::size_t max_swatch_bytes = std::size_t{64} << 20;

/// Reads a swatch file: CSV (RFC 4180, UTF-8) whose first line names its columns, in any order:
/// texture,counted,count,length,unit,place,swatch,state; the last four may be left out. counted is `stitches` or
/// `rows`; unit is one of length as read_length() takes it: mm, cm, in, inches (25.4 mm exactly: 10 cm and 4 in are two
/// lengths), m, ft, yd; without that column each length has its own ("10 cm", "4 in"). state is `off the machine`,
/// `rested` or `washed`; empty or left out it is rested. Numbers are those of quantities: "28", "28.5", "28 1/2",
/// without sign or exponent. Lines end with LF or CRLF. Beyond the RFC: lines that start with # and blank lines are
/// passed over, so are a byte order mark at the start and blanks round an unquoted field. Linear in the text.
/// @throws Error with line and field, the name of its column: bad_syntax, missing_field, unknown_field (field
/// "column 3", counted from 1, for a column without a name), duplicate_key, bad_value, bad_unit, bad_encoding,
/// too_large (more than max_swatch_bytes or Swatch::max_measurements).
LATCHWORK_API Swatch read_swatch(std::string_view csv);

/// The CSV that read_swatch() reads back to an equal swatch: lengths in mm, every number in its
/// shortest exact form, lines ended with LF. The last two columns stand only where some measurement needs them.
LATCHWORK_API std::string write(const Swatch& swatch);

}  // namespace latchwork::inline v0
