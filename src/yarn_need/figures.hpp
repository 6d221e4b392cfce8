#pragma once

#include <map>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "gauge/gauges.hpp"
#include "latchwork/yarn_need.hpp"
#include "yarn_need/places.hpp"

namespace latchwork::inline v0 {

/// Yarn of one strand at one place of a texture.
struct Figure {
  double loop_mm = 0;
  double spread = 0;             ///< one standard deviation, relative to it
  bool once = false;             ///< measured once only, so that its spread is not known
  std::string_view texture;      ///< whose it is
  const Gauge* gauge = nullptr;  ///< that it rests on, if any
  std::vector<std::string> notes;
};

/// The figures of the textures by each route.
class Figures {
 public:
  Figures(const YarnRequest& request, const Gauges& gauges, const Places& places);

  /// The texture's own figure, or that of its substitute; `why` says why there is none.
  std::optional<Figure> figure(YarnRoute route, const TexturePlaces& texture, std::string& why) const;

 private:
  struct Samples {
    std::vector<double> values;
    double scale_squares = 0;  ///< sum of the relative variances that the scale's step makes
  };
  using ByTexture = std::map<std::string_view, Samples>;

  std::optional<Figure> own(YarnRoute route, std::string_view texture, std::string_view gauged_as, bool plain,
                            std::string& why) const;
  std::optional<Figure> mean(const ByTexture& samples, std::string_view texture) const;
  std::optional<Figure> geometry(std::string_view texture) const;
  const Gauge* gauge(std::string_view texture) const;

  const YarnRequest& request_;
  const Gauges& gauges_;
  ByTexture areas_;     ///< mm of strand per mm2
  ByTexture stitches_;  ///< mm of strand per place
  ByTexture loops_;     ///< the same
  std::map<std::string_view, std::string_view> substitutes_;
  std::map<std::string_view, bool> plain_;  ///< of the panel's textures
};

}  // namespace latchwork::inline v0
