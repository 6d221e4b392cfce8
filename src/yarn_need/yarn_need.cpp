#include "latchwork/yarn_need.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <map>
#include <numbers>
#include <optional>
#include <set>
#include <string>

#include "error/refuse.hpp"
#include "gauge/gauges.hpp"
#include "latchwork/error.hpp"
#include "size/doubt.hpp"
#include "text/utf8.hpp"
#include "text/words.hpp"
#include "timings/student.hpp"
#include "yarn_need/balls.hpp"
#include "yarn_need/check.hpp"
#include "yarn_need/decide.hpp"
#include "yarn_need/figures.hpp"
#include "yarn_need/places.hpp"

namespace latchwork::inline v0 {
namespace {

constexpr std::array routes = {YarnRoute::weighed_area, YarnRoute::weighed_stitches, YarnRoute::measured_loops,
                               YarnRoute::plain_geometry};

/// What a need may be off by: by what it comes from, and by yarn.
struct Off {
  bool sampled = false;
  double freedom = 0;             ///< the least of those that share it
  std::vector<double> strand_mm;  ///< that are missing where the part is off by one standard deviation
};
using Offs = std::map<DoubtOf, Off>;

/// "the gauge of 'moss'": what was measured only once.
std::string measured(const DoubtOf& of) {
  const bool gauge = of.what == DoubtOf::What::stitches || of.what == DoubtOf::What::rows;
  return fmt::format("{}'{}'", gauge ? "the gauge of " : "", one_line(of.texture));
}

class Reckoning {
 public:
  Reckoning(const YarnRequest& request, const Places& places, const Figures& figures)
      : request_(request), places_(places), figures_(figures), known_(request.yarns[0].number.number > 0) {
    for (const Yarn& yarn : request.yarns) tex_.push_back(known_ ? yarn_tex(yarn.number) : 1);
  }

  std::optional<YarnEstimate> estimate(YarnRoute route, std::string& why) {
    if (!known_ && (route == YarnRoute::measured_loops || route == YarnRoute::plain_geometry)) {
      why = "the number of the yarn is not known";
      return std::nullopt;
    }
    YarnEstimate out;
    out.route = route;
    std::vector<double> strand_mm(request_.yarns.size(), 0);
    Offs offs;
    std::set<std::string> noted;
    std::set<ClothState> states;
    std::vector<std::string> once;  // in the order of the textures
    std::set<std::string> once_known;
    for (const TexturePlaces& texture : places_.textures) {
      std::optional<Figure> figure = figures_.figure(route, texture, why);
      if (!figure) return std::nullopt;
      for (const auto& [yarn, strands] : texture.strands) {
        strand_mm[static_cast<std::size_t>(yarn)] += strands * figure->loop_mm * request_.pieces;
      }
      for (const FigureDoubt& doubt : figure->doubts) {
        add(offs, doubt, texture, figure->loop_mm);
        std::string name = measured(doubt.of);
        if (doubt.places == 1 && once_known.insert(name).second) once.push_back(std::move(name));
      }
      if (figure->state) states.insert(*figure->state);
      for (std::string& note : figure->notes) {
        if (noted.insert(note).second) out.notes.push_back(std::move(note));
      }
    }
    if (states.size() > 1 && request_.plain) {
      out.notes.push_back("the gauges are of cloth in unlike states: one pair of constants does not fit them all");
    }
    out.spread_known = once.empty();
    if (!once.empty()) out.notes.push_back("measured once only, so that the spread is not known: " + joined(once));
    if (route == YarnRoute::weighed_area || route == YarnRoute::weighed_stitches) note_thickness(out);
    if (!sum(strand_mm, offs, out, why)) return std::nullopt;
    return out;
  }

  /// Of each estimate so far, half the interval that holds 95 of 100.
  const std::vector<double>& margins() const { return margins_; }

 private:
  void note_thickness(YarnEstimate& out) const {
    const auto other = [&](const WeighedSwatch& each) {
      return each.tex > 0 && std::abs(each.tex - places_.first_tex) > 0.01 * places_.first_tex;
    };
    if (places_.same_tex && std::none_of(request_.weighed.begin(), request_.weighed.end(), other)) return;
    out.notes.push_back("rows or swatches are of unlike thickness: they are reckoned at loops of the same length");
  }

  void add(Offs& offs, const FigureDoubt& doubt, const TexturePlaces& texture, double loop_mm) const {
    Off& off = offs[doubt.of];
    off.sampled = off.sampled || doubt.places > 0;
    // Textures that go by the same swatches may know them with unlike gauges, and so be off by unlike parts of them.
    if (doubt.freedom > 0) off.freedom = off.freedom > 0 ? std::min(off.freedom, doubt.freedom) : doubt.freedom;
    off.strand_mm.resize(request_.yarns.size(), 0);
    for (const auto& [yarn, strands] : texture.strands) {
      off.strand_mm[static_cast<std::size_t>(yarn)] +=
          strands * loop_mm * request_.pieces * doubt.share * doubt.deviation;
    }
  }

  // Of one yarn, or of all.
  Doubt doubt_of(const Offs& offs, std::optional<std::size_t> yarn) const {
    Doubt out;
    for (const auto& [of, off] : offs) {
      double weight_g = 0;
      for (std::size_t i = 0; i < tex_.size(); ++i) {
        if (!yarn || *yarn == i) weight_g += off.strand_mm[i] * tex_[i] * 1e-6;
      }
      if (off.sampled) {
        out.add(weight_g, off.freedom);
      } else {
        out.add_known(weight_g);
      }
    }
    return out;
  }

  /// How many spreads are passed as seldom as a normal error passes the sureness asked for.
  double times_spread(const Doubt& doubt) {
    const std::optional<int> freedom = doubt.freedom();
    if (request_.sureness == 0) return 0;  // also for -0
    if (!freedom) return request_.sureness;
    const auto [found, is_new] = times_.emplace(*freedom, 0);
    if (is_new) found->second = timing::student_limit(std::erfc(request_.sureness / std::numbers::sqrt2), *freedom);
    return found->second;
  }

  /// False, and why, where the margin alone makes the need too large.
  bool sum(const std::vector<double>& strand_mm, const Offs& offs, YarnEstimate& out, std::string& why) {
    const Doubt all = doubt_of(offs, std::nullopt);
    const double times = times_spread(all);
    out.spread_g = all.spread();
    out.margin_g = times * out.spread_g;
    if (out.spread_g > 0 && times > 1.5 * request_.sureness) {
      out.notes.push_back(fmt::format(
          "measured so seldom that to be as sure as asked takes {:.1f} times the spread: measure more", times));
    }
    for (std::size_t yarn = 0; yarn < strand_mm.size(); ++yarn) {
      const Doubt doubt = doubt_of(offs, yarn);
      const double seam_mm =
          yarn == static_cast<std::size_t>(request_.seam_yarn) ? request_.seam_mm * request_.seam_ratio : 0;
      const double length_mm = strand_mm[yarn] + seam_mm;
      YarnShare share;
      share.yarn = static_cast<int>(yarn);
      share.weight_g = length_mm * tex_[yarn] * 1e-6;
      share.length_m = known_ ? length_mm / 1000 : 0;
      share.spread_g = doubt.spread();
      share.margin_g = times_spread(doubt) * share.spread_g;
      share.buy_g = (share.weight_g + share.margin_g) * (1 + request_.allowance);
      if (!(share.buy_g <= most_need)) {
        if (share.weight_g * (1 + request_.allowance) > most_need)
          refuse_need(cause_of(share, seam_mm), share.buy_g, "g");
        why = fmt::format("measured so seldom that to be as sure as asked {:.3g} g were to be bought", share.buy_g);
        return false;
      }
      share.balls = balls_of(share.buy_g, request_.yarns[yarn].ball_g, fmt::format("yarns[{}].ball_g", yarn));
      out.weight_g += share.weight_g;
      out.length_m += share.length_m;
      out.shares.push_back(share);
    }
    margins_.push_back(all.margin(0.95));
    return true;
  }

  /// The field without which a need would not be too large.
  std::string cause_of(const YarnShare& share, double seam_mm) const {
    const double more = 1 + request_.allowance;
    const double seam_g = seam_mm * tex_[static_cast<std::size_t>(share.yarn)] * 1e-6;
    if (seam_g * more > most_need) return "seam_mm";
    if (((share.weight_g - seam_g) / request_.pieces + seam_g) * more <= most_need) return "pieces";
    return fmt::format("yarns[{}].number", share.yarn);
  }

  const YarnRequest& request_;
  const Places& places_;
  const Figures& figures_;
  bool known_;
  std::vector<double> tex_;
  std::vector<double> margins_;
  std::map<int, double> times_;  ///< spreads of the margin, by degrees of freedom
};

/// Of two routes whose margins are not known: an estimate of what one swatch measured well may be off by.
constexpr double far_apart = 0.2;

std::string told(const YarnEstimate& estimate) {
  return estimate.spread_known ? fmt::format("{:.1f} g (spread {:.1f} g)", estimate.weight_g, estimate.spread_g)
                               : fmt::format("{:.1f} g (spread not known)", estimate.weight_g);
}

/// `margins` are those of the estimates at 95 %.
void compare(YarnNeed& need, const std::vector<double>& margins) {
  need.apart = apart(need.estimates);
  for (std::size_t i = 0; i < need.estimates.size(); ++i) {
    for (std::size_t k = i + 1; k < need.estimates.size(); ++k) {
      const YarnEstimate& a = need.estimates[i];
      const YarnEstimate& b = need.estimates[k];
      const double apart = std::abs(a.weight_g - b.weight_g);
      const double explained = a.spread_known || b.spread_known
                                   ? std::hypot(a.spread_known ? margins[i] : 0, b.spread_known ? margins[k] : 0)
                                   : far_apart * std::max(a.weight_g, b.weight_g);
      if (apart <= explained) continue;
      need.warnings.push_back(
          fmt::format("by {} it is {}, by {} {}: further apart than that explains, so measure again",
                      route_name(a.route), told(a), route_name(b.route), told(b)));
    }
  }
}

}  // namespace

YarnNeed yarn_need(const Panel& panel, const Swatch& swatch, const YarnRequest& request) {
  require_request(request, panel.grid().rows());
  const Gauges gauges(swatch, request.state);
  const Places places = places_of(panel, request);
  const Figures figures(request, gauges, places);
  Reckoning reckoning(request, places, figures);
  YarnNeed out;
  for (const YarnRoute route : routes) {
    std::string why;
    if (std::optional<YarnEstimate> estimate = reckoning.estimate(route, why)) {
      out.estimates.push_back(std::move(*estimate));
    } else {
      out.missing.push_back(fmt::format("{}: {}", route_name(route), why));
    }
  }
  compare(out, reckoning.margins());
  decide(out);
  return out;
}

}  // namespace latchwork::inline v0
