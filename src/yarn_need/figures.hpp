#pragma once

#include <cstdint>
#include <map>
#include <optional>
#include <string>
#include <string_view>
#include <tuple>
#include <vector>

#include "gauge/gauges.hpp"
#include "latchwork/yarn_need.hpp"
#include "yarn_need/places.hpp"

namespace latchwork::inline v0 {

/// What a figure may be off by. What several figures share, they are off by together.
struct DoubtOf {
  enum class What : std::uint8_t { yarn, scale, stitches, rows, proportion, constants };
  What what = What::yarn;
  std::string_view texture;               ///< whose it is; empty for constants, which all share
  ClothState state = ClothState::rested;  ///< of a gauge, or of the constants
  friend bool operator==(const DoubtOf&, const DoubtOf&) = default;
  friend bool operator<(const DoubtOf& one, const DoubtOf& other) {
    return std::tie(one.what, one.texture, one.state) < std::tie(other.what, other.texture, other.state);
  }
};

/// One part of a figure's doubt, relative to it.
struct FigureDoubt {
  DoubtOf of;
  double share = 1;      ///< how much the figure changes for a part that is off by its whole self
  double deviation = 0;  ///< one standard deviation of the panel's own figure, relative
  int places = 0;        ///< 0: no sample; 1: its spread is not known
  double freedom = 0;    ///< degrees of freedom of a sample
};

/// Yarn of one strand at one place of a texture.
struct Figure {
  double loop_mm = 0;
  std::vector<FigureDoubt> doubts;
  std::optional<ClothState> state;  ///< of the gauge that plain geometry rests on
  std::vector<std::string> notes;
};

/// The figures of the textures by each route.
class Figures {
 public:
  Figures(const YarnRequest& request, const Gauges& gauges, const Places& places);

  /// The texture's own figure, or that of its substitute; `why` says why there is none.
  std::optional<Figure> figure(YarnRoute route, const TexturePlaces& texture, std::string& why) const;

 private:
  struct Sample {
    double value = 0;
    double scale_square = 0;  ///< the relative variance that the scale's step makes
    ClothState state = ClothState::rested;
  };
  using ByTexture = std::map<std::string_view, std::vector<Sample>>;

  std::optional<Figure> own(YarnRoute route, std::string_view texture, std::string_view gauged_as, bool plain,
                            std::string& why) const;
  std::optional<Figure> area(std::string_view texture, std::string_view gauged_as, std::string& why) const;
  std::optional<Figure> geometry(std::string_view texture) const;

  const YarnRequest& request_;
  const Gauges& gauges_;
  ByTexture areas_;     ///< mm of strand per mm2
  ByTexture stitches_;  ///< mm of strand per place
  ByTexture loops_;     ///< the same
  std::map<std::string_view, std::string_view> substitutes_;
  std::map<std::string_view, bool> plain_;  ///< of the panel's textures
};

}  // namespace latchwork::inline v0
