#pragma once

#include <cstddef>
#include <functional>
#include <map>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "latchwork/error.hpp"
#include "latchwork/gauge.hpp"
#include "latchwork/panel.hpp"

namespace latchwork::inline v0 {

constexpr std::size_t most_measurement_bytes = 256;  ///< of the name of a texture or of a place

/// Mean and spread of the values of several places of one piece.
Density density(std::span<const double> values);
/// Of several pieces: `piece_of[i]` is that of `values[i]`, 0 upward.
Density density(std::span<const double> values, std::span<const int> piece_of);

/// How far one panel's own gauge may lie from the mean, relative to it: one standard deviation, and the degrees of
/// freedom that it is known with (0: nothing is known of it).
struct RelativeSpread {
  double deviation = 0;
  double freedom = 0;
};
RelativeSpread relative_spread(const Density& density);

/// What was measured of one texture in one state; places of 0 where nothing was. Made in one pass for all.
using MeasuredGauges = std::map<std::string, std::map<ClothState, Gauge>, std::less<>>;
MeasuredGauges measured_gauges(const Swatch& swatch);

/// Both stitches and rows were measured.
bool is_whole(const Gauge& gauge) noexcept;

/// Whether a strip of which a shape has left nothing counts.
enum class CutOff : std::uint8_t { left_out, counts };
/// The textures of a panel, each once, in the order of its bands and strips. O(cells).
std::vector<std::string_view> textures_of(const Panel& panel, CutOff cut_off = CutOff::left_out);

/// The gauges that a panel is measured by: each texture's own in the state asked for, or its substitute's.
class Gauges {
 public:
  /// Without a state each texture's is the most finished one that it has a whole gauge in.
  /// @throws Error bad_argument (field "state", "substitutes[1].use"); too_large (field "substitutes").
  explicit Gauges(const Swatch& swatch, std::optional<ClothState> state = {},
                  std::span<const Substitute> substitutes = {});

  /// The texture's own gauge; null where it has none.
  const Gauge* own(std::string_view texture) const;
  /// Its own gauge in that state, whichever state was asked for; null where it has none.
  const Gauge* own(std::string_view texture, ClothState state) const;
  /// Its own gauge, or its substitute's; null where neither has one.
  const Gauge* find(std::string_view texture) const;
  /// As find(). @throws Error no_gauge (field = the texture), naming what was not measured, and what was.
  const Gauge& of(std::string_view texture) const;
  /// All textures of a panel at once, so that somebody who has to measure some is told of all. @throws Error no_gauge
  /// (field = the first that has none), naming each that has none.
  void require(const Panel& panel, CutOff cut_off = CutOff::left_out) const;
  /// Why a texture has no gauge: "rows were not measured".
  std::string lack(std::string_view texture) const;

 private:
  /// "; it has 'moss', 'rope'", for messages.
  std::string measured() const;

  MeasuredGauges all_;
  std::optional<ClothState> state_;
  std::map<std::string, std::string, std::less<>> substitutes_;
};

/// @throws Error bad_argument (field "state") for a number that is no state.
void require_state(std::optional<ClothState> state);
/// A texture has one substitute at most, and never itself. `before` stands before the field, as in "design.".
/// @throws Error bad_argument (field "substitutes[1].texture"), too_large (field "substitutes").
void require_substitutes(std::span<const Substitute> substitutes, const std::string& before = {});
/// @throws Error bad_argument for what is no name of a texture.
void require_texture_name(const std::string& field, std::string_view text);

/// Throws unless the measurement is one that a swatch may hold; `place_of` says where a field of it stands.
void require_measurement(const Measurement& measurement, const std::function<Place(std::string_view)>& place_of);

/// @throws Error too_large with this place, when there are more measurements than Swatch::max_measurements.
void require_measurements(std::size_t count, const Place& place);

}  // namespace latchwork::inline v0
