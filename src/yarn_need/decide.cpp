#include "yarn_need/decide.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <string>
#include <tuple>
#include <vector>

namespace latchwork::inline v0 {
namespace {

/// What an estimate comes to with what makes it sure, as far as that is known. The allowance is the same for all.
double sure_g(const YarnEstimate& estimate) {
  return estimate.weight_g + estimate.margin_g;
}

bool dearer(const YarnEstimate& one, const YarnEstimate& other) {
  return sure_g(one) > sure_g(other);
}

bool narrower(const YarnEstimate& one, const YarnEstimate& other) {
  return std::tie(one.margin_g, one.spread_g) < std::tie(other.margin_g, other.spread_g);
}

/// The first of them that none comes before.
template <class Before>
std::size_t first_of(const std::vector<YarnEstimate>& estimates, const std::vector<std::size_t>& among, Before before) {
  return *std::min_element(among.begin(), among.end(),
                           [&](std::size_t a, std::size_t b) { return before(estimates[a], estimates[b]); });
}

std::string words(const YarnEstimate& estimate) {
  if (!estimate.spread_known && !(estimate.margin_g > 0))
    return fmt::format("{:.1f} g, its margin not known", estimate.weight_g);
  return fmt::format("{:.1f} g with a margin of {:.1f} g{}", estimate.weight_g, estimate.margin_g,
                     estimate.spread_known ? "" : " or more");
}

}  // namespace

std::string_view route_name(YarnRoute route) {
  constexpr std::array<std::string_view, 4> names = {"weighed swatches by area", "weighed swatches by stitches",
                                                     "measured loops", "geometry of plain knit"};
  const auto at = static_cast<std::size_t>(route);
  return at < names.size() ? names[at] : "?";
}

double apart(const std::vector<YarnEstimate>& estimates) {
  if (estimates.size() < 2) return 0;
  const auto by_weight = [](const YarnEstimate& a, const YarnEstimate& b) { return a.weight_g < b.weight_g; };
  const auto [least, most] = std::minmax_element(estimates.begin(), estimates.end(), by_weight);
  double sum = 0;
  for (const YarnEstimate& each : estimates) sum += each.weight_g;
  return sum > 0 ? (most->weight_g - least->weight_g) * static_cast<double>(estimates.size()) / sum : 0;
}

void decide(YarnNeed& need) {
  const std::vector<YarnEstimate>& estimates = need.estimates;
  const auto take = [&](std::size_t index, const std::string& why) {
    need.decides = static_cast<int>(index);
    need.why = fmt::format("{}: {}", route_name(estimates[index].route), why);
  };
  need.decides = -1;
  need.why.clear();
  if (estimates.empty()) return;
  if (estimates.size() == 1) return take(0, "no other route can be gone");
  std::vector<std::size_t> all;
  std::vector<std::size_t> known;
  all.reserve(estimates.size());
  known.reserve(estimates.size());
  for (std::size_t i = 0; i < estimates.size(); ++i) {
    // The geometry goes last: a route before it has been measured in this yarn.
    if (estimates[i].route == YarnRoute::plain_geometry) continue;
    all.push_back(i);
    if (estimates[i].spread_known) known.push_back(i);
  }
  if (all.size() == 1) return take(all.front(), "the only route that was measured in this yarn");
  if (known.empty()) return take(first_of(estimates, all, dearer), "the dearest, since no route's spread is known");
  const std::size_t sure = first_of(estimates, known, narrower);
  std::vector<std::size_t> above;
  above.reserve(all.size());
  for (const std::size_t i : all) {
    const double more = estimates[i].weight_g - estimates[sure].weight_g;
    const double own = estimates[i].spread_known ? estimates[i].margin_g : 0;
    if (more > std::hypot(own, estimates[sure].margin_g)) above.push_back(i);
  }
  if (above.empty() && known.size() == 1) return take(sure, "the only route whose spread is known");
  if (above.empty()) return take(sure, fmt::format("the narrowest margin, {}", words(estimates[sure])));
  const std::size_t dear = first_of(estimates, above, dearer);
  take(dear, fmt::format("the dearest, {}, since it is {} by {}, further below than both explain",
                         words(estimates[dear]), words(estimates[sure]), route_name(estimates[sure].route)));
}

}  // namespace latchwork::inline v0
