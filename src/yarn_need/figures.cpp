#include "yarn_need/figures.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <utility>

#include "text/utf8.hpp"

namespace latchwork::inline v0 {
namespace {

double square(double x) {
  return x * x;
}

void add_gauge(Figure& figure, const Gauge& gauge, double share) {
  using What = DoubtOf::What;
  const auto add = [&](What what, const Density& of) {
    const RelativeSpread spread = relative_spread(of);
    figure.doubts.push_back({{what, gauge.texture, gauge.state}, share, spread.deviation, of.places, spread.freedom});
  };
  add(What::stitches, gauge.stitches);
  add(What::rows, gauge.rows);
}

template <class Samples>
Figure mean_of(const Samples& samples, std::string_view texture) {
  using What = DoubtOf::What;
  const auto n = static_cast<double>(samples.size());
  Figure out;
  for (const auto& each : samples) out.loop_mm += each.value / n;
  double squares = 0;
  double scale_squares = 0;
  for (const auto& each : samples) {
    squares += square(each.value / out.loop_mm - 1);
    scale_squares += each.scale_square;
  }
  // The panel's own wanders, too, by as much as the samples do.
  const double deviation = samples.size() > 1 ? std::sqrt(squares / (n - 1) * (1 + 1 / n)) : 0;
  out.doubts.push_back({{What::yarn, texture}, 1, deviation, static_cast<int>(samples.size()), n - 1});
  if (scale_squares > 0) out.doubts.push_back({{What::scale, texture}, 1, std::sqrt(scale_squares / n), 0, 0});
  return out;
}

/// Of a texture that the panel does not have: whether it is knit all over, as only this motif is.
bool is_plain_by_name(std::string_view texture) {
  return texture == "stockinette";
}

/// The constants that cloth of a state is reckoned by when none were told.
struct Constants {
  PlainConstants constants;
  double doubt = 0;  ///< relative standard deviation of sqrt(Kc Kw)
  std::string note;
};

Constants constants_of(ClothState state) {
  const auto root = [](PlainState of) {
    const PlainConstants constants = plain_constants_of(of);
    return std::sqrt(constants.courses * constants.wales);
  };
  const bool washed = state == ClothState::washed;
  const PlainState taken = washed ? PlainState::fully_relaxed : PlainState::dry_relaxed;
  const PlainState next = state == ClothState::off_machine ? PlainState::fully_relaxed : PlainState::wet_relaxed;
  Constants out;
  out.constants = plain_constants_of(taken);
  out.doubt = std::abs(root(next) / root(taken) - 1) / std::sqrt(3.0);
  out.note = fmt::format(
      "its gauge is of cloth that is {}, so the constants of {} cloth of wool are taken, Kc {} and Kw {}{}",
      cloth_state_name(state), washed ? "fully relaxed" : "dry relaxed", out.constants.courses, out.constants.wales,
      washed ? "; if it was only soaked and dried flat, tell those of wet relaxed cloth" : "");
  return out;
}

}  // namespace

Figures::Figures(const YarnRequest& request, const Gauges& gauges, const Places& places)
    : request_(request), gauges_(gauges) {
  for (const WeighedSwatch& each : request.weighed) {
    const double strand_mm = 1e6 * each.weight_g / (each.tex > 0 ? each.tex : places.first_tex);
    const double scale_square = square(each.scale_g / each.weight_g) / 12;
    const auto sample = [&](double places_of_it) { return Sample{strand_mm / places_of_it, scale_square, each.state}; };
    if (each.width_mm > 0) areas_[each.texture].push_back(sample(each.width_mm * each.height_mm));
    if (each.stitches > 0) stitches_[each.texture].push_back(sample(each.stitches * each.rows));
  }
  for (const MeasuredLoops& each : request.loops) {
    loops_[each.texture].push_back({each.length_mm / each.stitches, 0, ClothState::rested});
  }
  for (const Substitute& each : request.substitutes) substitutes_.emplace(each.texture, each.use);
  for (const TexturePlaces& each : places.textures) plain_.emplace(each.texture, each.plain);
}

// Swatches that were weighed in several states come to the same: the yarn at one place is what it was.
std::optional<Figure> Figures::area(std::string_view texture, std::string_view gauged_as, std::string& why) const {
  const auto found = areas_.find(texture);
  if (found == areas_.end()) {
    why = fmt::format("texture '{}' has no weighed swatch with width and height", one_line(texture));
    return std::nullopt;
  }
  std::vector<Sample> loops = found->second;
  std::vector<std::pair<const Gauge*, double>> of_gauge;  // by the order of the swatches
  double sum = 0;
  for (Sample& each : loops) {
    const Gauge* gauge = gauges_.own(gauged_as, each.state);
    if (gauge == nullptr) gauge = gauges_.own(texture, each.state);
    if (gauge == nullptr) {
      why = fmt::format(
          "a swatch of texture '{}' was weighed {}, but '{}' has no gauge of that state, so its area is not known",
          one_line(texture), cloth_state_name(each.state), one_line(gauged_as));
      return std::nullopt;
    }
    each.value *= 1e4 / (gauge->stitches.per_10cm * gauge->rows.per_10cm);
    const auto known =
        std::find_if(of_gauge.begin(), of_gauge.end(), [&](const auto& one) { return one.first == gauge; });
    if (known == of_gauge.end()) {
      of_gauge.emplace_back(gauge, each.value);
    } else {
      known->second += each.value;
    }
    sum += each.value;
  }
  Figure out = mean_of(loops, found->first);
  for (const auto& [gauge, value] : of_gauge) add_gauge(out, *gauge, value / sum);
  return out;
}

std::optional<Figure> Figures::geometry(std::string_view texture) const {
  using What = DoubtOf::What;
  const Gauge* of = gauges_.own(texture);
  if (of == nullptr) return std::nullopt;
  const Constants taken = request_.plain ? Constants{*request_.plain, 0, {}} : constants_of(of->state);
  const double by_stitches = 100 * taken.constants.wales / of->stitches.per_10cm;
  const double by_rows = 100 * taken.constants.courses / of->rows.per_10cm;
  Figure out;
  out.state = of->state;
  out.loop_mm = std::sqrt(by_stitches * by_rows);
  add_gauge(out, *of, 0.5);
  const double proportion = std::abs(by_stitches - by_rows) / (2 * out.loop_mm);
  out.doubts.push_back({{What::proportion, of->texture}, 1, proportion, 0, 0});
  if (taken.doubt > 0) out.doubts.push_back({{What::constants, {}, of->state}, 1, taken.doubt, 0, 0});
  if (!taken.note.empty()) out.notes.push_back(fmt::format("texture '{}': {}", one_line(of->texture), taken.note));
  return out;
}

std::optional<Figure> Figures::own(YarnRoute route, std::string_view texture, std::string_view gauged_as, bool plain,
                                   std::string& why) const {
  const auto mean = [&](const ByTexture& samples, const char* lacking) -> std::optional<Figure> {
    if (const auto found = samples.find(texture); found != samples.end()) return mean_of(found->second, found->first);
    why = fmt::format("texture '{}' has no {}", one_line(texture), lacking);
    return std::nullopt;
  };
  std::optional<Figure> out;
  switch (route) {
    case YarnRoute::weighed_area:
      return area(texture, gauged_as, why);
    case YarnRoute::weighed_stitches:
      return mean(stitches_, "weighed swatch with stitches and rows");
    case YarnRoute::measured_loops:
      return mean(loops_, "measured loops");
    case YarnRoute::plain_geometry:
      if (!plain) {
        why = fmt::format("texture '{}' is not plain knit, and nothing else has constants", one_line(texture));
        return out;
      }
      out = geometry(texture);
      if (!out) why = fmt::format("texture '{}' has no gauge", one_line(texture));
      return out;
  }
  return out;
}

std::optional<Figure> Figures::figure(YarnRoute route, const TexturePlaces& texture, std::string& why) const {
  std::optional<Figure> out = own(route, texture.texture, texture.texture, texture.plain, why);
  const auto substitute = substitutes_.find(texture.texture);
  if (out || substitute == substitutes_.end()) return out;
  // One that the panel does not have is what it is called.
  const auto known = plain_.find(substitute->second);
  const bool plain = known == plain_.end() ? is_plain_by_name(substitute->second) : known->second;
  std::string why_not;
  out = own(route, substitute->second, texture.texture, plain, why_not);
  if (out) {
    out->notes.push_back(fmt::format("texture '{}' is reckoned by the figure of '{}', as told: {}",
                                     one_line(texture.texture), one_line(substitute->second), why));
  } else {
    why += "; of its substitute, " + why_not;
  }
  return out;
}

}  // namespace latchwork::inline v0
