#include "yarn_need/figures.hpp"

#include <fmt/format.h>

#include <cmath>

namespace latchwork::inline v0 {
namespace {

double square(double x) {
  return x * x;
}

double relative_spread(const Density& density) {
  return density.spread / density.per_10cm;
}

}  // namespace

Figures::Figures(const YarnRequest& request, const Gauges& gauges, const Places& places)
    : request_(request), gauges_(gauges) {
  for (const WeighedSwatch& each : request.weighed) {
    const double strand_mm = 1e6 * each.weight_g / (each.tex > 0 ? each.tex : places.first_tex);
    const auto add = [&](Samples& samples, double places_of_it) {
      samples.values.push_back(strand_mm / places_of_it);
      samples.scale_squares += square(each.scale_g / each.weight_g) / 12;
    };
    if (each.width_mm > 0) add(areas_[each.texture], each.width_mm * each.height_mm);
    if (each.stitches > 0) add(stitches_[each.texture], each.stitches * each.rows);
  }
  for (const MeasuredLoops& each : request.loops) loops_[each.texture].values.push_back(each.length_mm / each.stitches);
  for (const Substitute& each : request.substitutes) substitutes_.emplace(each.texture, each.use);
  for (const TexturePlaces& each : places.textures) plain_.emplace(each.texture, each.plain);
}

std::optional<Figure> Figures::mean(const ByTexture& samples, std::string_view texture) const {
  const auto found = samples.find(texture);
  if (found == samples.end()) return std::nullopt;
  const auto& [values, scale_squares] = found->second;
  const auto n = static_cast<double>(values.size());
  Figure out;
  out.texture = found->first;
  double sum = 0;
  for (const double value : values) sum += value;
  out.loop_mm = sum / n;
  double squares = 0;
  for (const double value : values) squares += square(value / out.loop_mm - 1);
  if (values.size() > 1) {
    squares /= n - 1;
  } else {
    out.once = true;
  }
  out.spread = std::sqrt(squares + scale_squares / n);
  return out;
}

const Gauge* Figures::gauge(std::string_view texture) const {
  return gauges_.own(texture);
}

std::optional<Figure> Figures::geometry(std::string_view texture) const {
  const Gauge* of = gauge(texture);
  if (of == nullptr) return std::nullopt;
  const double by_stitches = 100 * request_.plain.wales / of->stitches.per_10cm;
  const double by_rows = 100 * request_.plain.courses / of->rows.per_10cm;
  Figure out;
  out.texture = of->texture;
  out.gauge = of;
  out.loop_mm = std::sqrt(by_stitches * by_rows);
  out.spread = std::sqrt(square(relative_spread(of->stitches) / 2) + square(relative_spread(of->rows) / 2) +
                         square((by_stitches - by_rows) / (2 * out.loop_mm)));
  return out;
}

std::optional<Figure> Figures::own(YarnRoute route, std::string_view texture, std::string_view gauged_as, bool plain,
                                   std::string& why) const {
  std::optional<Figure> out;
  switch (route) {
    case YarnRoute::weighed_area: {
      out = mean(areas_, texture);
      if (!out) {
        why = fmt::format("texture '{}' has no weighed swatch with width and height", texture);
        return out;
      }
      const Gauge* of = gauge(gauged_as);
      if (of == nullptr) of = gauge(texture);
      if (of == nullptr) {
        why = fmt::format("texture '{}' has no gauge, so its area is not known", gauged_as);
        return std::nullopt;
      }
      out->gauge = of;
      out->loop_mm *= 1e4 / (of->stitches.per_10cm * of->rows.per_10cm);
      out->spread =
          std::sqrt(square(out->spread) + square(relative_spread(of->stitches)) + square(relative_spread(of->rows)));
      return out;
    }
    case YarnRoute::weighed_stitches:
      out = mean(stitches_, texture);
      if (!out) why = fmt::format("texture '{}' has no weighed swatch with stitches and rows", texture);
      return out;
    case YarnRoute::measured_loops:
      out = mean(loops_, texture);
      if (!out) why = fmt::format("texture '{}' has no measured loops", texture);
      return out;
    case YarnRoute::plain_geometry:
      if (!plain) {
        why = fmt::format("texture '{}' is not plain knit, and nothing else has constants", texture);
        return out;
      }
      out = geometry(texture);
      if (!out) why = fmt::format("texture '{}' has no gauge", texture);
      return out;
  }
  return out;
}

std::optional<Figure> Figures::figure(YarnRoute route, const TexturePlaces& texture, std::string& why) const {
  std::optional<Figure> out = own(route, texture.texture, texture.texture, texture.plain, why);
  const auto substitute = substitutes_.find(texture.texture);
  if (out || substitute == substitutes_.end()) return out;
  const auto known =
      plain_.find(substitute->second);  // one that the panel does not have is taken for what it is called
  const bool plain = known == plain_.end() || known->second;
  std::string why_not;
  out = own(route, substitute->second, texture.texture, plain, why_not);
  if (out) {
    out->notes.push_back(fmt::format("texture '{}' is reckoned by the figure of '{}', as told: {}", texture.texture,
                                     substitute->second, why));
  } else {
    why += "; of its substitute, " + why_not;
  }
  return out;
}

}  // namespace latchwork::inline v0
