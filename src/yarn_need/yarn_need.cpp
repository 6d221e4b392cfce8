#include "latchwork/yarn_need.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <map>
#include <set>
#include <string_view>

#include "gauge/gauges.hpp"
#include "latchwork/error.hpp"
#include "text/words.hpp"
#include "yarn_need/check.hpp"
#include "yarn_need/figures.hpp"
#include "yarn_need/places.hpp"

namespace latchwork::inline v0 {
namespace {

constexpr double most_need = 1e9;  // g, or balls: beyond, the request is a slip

struct NamedRoute {
  YarnRoute route;
  std::string_view name;
};
constexpr std::array routes = {
    NamedRoute{YarnRoute::weighed_area, "weighed swatches by area"},
    NamedRoute{YarnRoute::weighed_stitches, "weighed swatches by stitches"},
    NamedRoute{YarnRoute::measured_loops, "measured loops"},
    NamedRoute{YarnRoute::plain_geometry, "geometry of plain knit"},
};

double square(double x) {
  return x * x;
}

[[noreturn]] void refuse_need(double need, const char* unit) {
  Place place;
  place.field = "pieces";
  throw Error(ErrorCode::too_large, place, fmt::format("a need of {} {}; the limit is {}", need, unit, most_need));
}

class Reckoning {
 public:
  Reckoning(const YarnRequest& request, const Places& places, const Figures& figures)
      : request_(request), places_(places), figures_(figures), known_(request.yarns[0].number.number > 0) {
    for (const Yarn& yarn : request.yarns) tex_.push_back(known_ ? yarn_tex(yarn.number) : 1);
  }

  std::optional<YarnEstimate> estimate(YarnRoute route, std::string& why) const {
    if (!known_ && (route == YarnRoute::measured_loops || route == YarnRoute::plain_geometry)) {
      why = "the number of the yarn is not known";
      return std::nullopt;
    }
    YarnEstimate out;
    out.route = route;
    std::vector<double> strand_mm(request_.yarns.size(), 0);
    std::map<std::string_view, std::vector<double>> off_mm;  // by whose figure it is, by yarn
    std::set<std::string> noted;
    std::set<ClothState> states;
    std::vector<std::string> once;  // textures, in their order
    for (const TexturePlaces& texture : places_.textures) {
      std::optional<Figure> figure = figures_.figure(route, texture, why);
      if (!figure) return std::nullopt;
      auto& off = off_mm.try_emplace(figure->texture, strand_mm.size(), 0.0).first->second;
      for (const auto& [yarn, strands] : texture.strands) {
        const double mm = strands * figure->loop_mm * request_.pieces;
        strand_mm[static_cast<std::size_t>(yarn)] += mm;
        off[static_cast<std::size_t>(yarn)] += mm * figure->spread;
      }
      if (figure->gauge != nullptr) states.insert(figure->gauge->state);
      std::string name = fmt::format("'{}'", figure->texture);
      if (figure->once && std::find(once.begin(), once.end(), name) == once.end()) once.push_back(std::move(name));
      for (std::string& note : figure->notes) {
        if (noted.insert(note).second) out.notes.push_back(std::move(note));
      }
    }
    if (states.size() > 1) out.notes.push_back("the gauges are of cloth in unlike states: their areas do not match");
    if (!once.empty()) out.notes.push_back("measured once only, so that the spread is not known: " + joined(once));
    if (route == YarnRoute::weighed_area || route == YarnRoute::weighed_stitches) note_thickness(out);
    strand_mm[static_cast<std::size_t>(request_.seam_yarn)] += request_.seam_mm * request_.seam_ratio;
    sum(strand_mm, off_mm, out);
    return out;
  }

 private:
  void note_thickness(YarnEstimate& out) const {
    const auto other = [&](const WeighedSwatch& each) {
      return each.tex > 0 && std::abs(each.tex - places_.first_tex) > 0.01 * places_.first_tex;
    };
    if (places_.same_tex && std::none_of(request_.weighed.begin(), request_.weighed.end(), other)) return;
    out.notes.push_back("rows or swatches are of unlike thickness: they are reckoned at loops of the same length");
  }

  void sum(const std::vector<double>& strand_mm, const std::map<std::string_view, std::vector<double>>& off_mm,
           YarnEstimate& out) const {
    double squares = 0;
    for (const auto& [texture, off] : off_mm) {
      double g = 0;
      for (std::size_t yarn = 0; yarn < off.size(); ++yarn) g += off[yarn] * tex_[yarn] * 1e-6;
      squares += square(g);
    }
    out.spread_g = std::sqrt(squares);
    for (std::size_t yarn = 0; yarn < strand_mm.size(); ++yarn) {
      YarnShare share;
      share.yarn = static_cast<int>(yarn);
      share.weight_g = strand_mm[yarn] * tex_[yarn] * 1e-6;
      share.length_m = known_ ? strand_mm[yarn] / 1000 : 0;
      double off_squares = 0;
      for (const auto& [texture, off] : off_mm) off_squares += square(off[yarn] * tex_[yarn] * 1e-6);
      share.spread_g = std::sqrt(off_squares);
      share.buy_g = (share.weight_g + request_.sureness * share.spread_g) * (1 + request_.allowance);
      if (!(share.buy_g <= most_need)) refuse_need(share.buy_g, "g");
      if (const double ball = request_.yarns[yarn].ball_g; ball > 0) {
        constexpr double rounding = 1e-9;  // 100 g in balls of 50 are two, whatever the sums lose
        const double balls = std::ceil(share.buy_g / ball - rounding);
        if (!(balls <= most_need)) refuse_need(balls, "balls");
        share.balls = static_cast<int>(std::max(balls, 0.0));
      }
      out.weight_g += share.weight_g;
      out.length_m += share.length_m;
      out.shares.push_back(share);
    }
  }

  const YarnRequest& request_;
  const Places& places_;
  const Figures& figures_;
  bool known_;
  std::vector<double> tex_;
};

std::string_view name_of(YarnRoute route) {
  return routes[static_cast<std::size_t>(route)].name;
}

void compare(YarnNeed& need) {
  if (need.estimates.size() < 2) return;
  double sum = 0;
  for (const YarnEstimate& each : need.estimates) sum += each.weight_g;
  const auto by_weight = [](const YarnEstimate& a, const YarnEstimate& b) { return a.weight_g < b.weight_g; };
  const auto [least, most] = std::minmax_element(need.estimates.begin(), need.estimates.end(), by_weight);
  const double mean = sum / static_cast<double>(need.estimates.size());
  if (mean > 0) need.apart = (most->weight_g - least->weight_g) / mean;
  for (std::size_t i = 0; i < need.estimates.size(); ++i) {
    for (std::size_t k = i + 1; k < need.estimates.size(); ++k) {
      const YarnEstimate& a = need.estimates[i];
      const YarnEstimate& b = need.estimates[k];
      const double apart = std::abs(a.weight_g - b.weight_g);
      // Where a spread is not known nothing can be said; its note says that.
      if (a.spread_g == 0 || b.spread_g == 0 || apart <= 2 * std::hypot(a.spread_g, b.spread_g)) continue;
      need.warnings.push_back(fmt::format(
          "{} give {:.1f} g (spread {:.1f} g), {} {:.1f} g (spread {:.1f} g): further apart than that explains, so "
          "measure again",
          name_of(a.route), a.weight_g, a.spread_g, name_of(b.route), b.weight_g, b.spread_g));
    }
  }
}

}  // namespace

YarnNeed yarn_need(const Panel& panel, const Swatch& swatch, const YarnRequest& request) {
  require_request(request, panel.grid().rows());
  const Gauges gauges(swatch, request.state);
  const Places places = places_of(panel, request);
  const Figures figures(request, gauges, places);
  const Reckoning reckoning(request, places, figures);
  YarnNeed out;
  for (const NamedRoute& each : routes) {
    std::string why;
    if (std::optional<YarnEstimate> estimate = reckoning.estimate(each.route, why)) {
      out.estimates.push_back(std::move(*estimate));
    } else {
      out.missing.push_back(fmt::format("{}: {}", each.name, why));
    }
  }
  compare(out);
  return out;
}

}  // namespace latchwork::inline v0
