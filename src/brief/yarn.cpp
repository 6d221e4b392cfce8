#include <fmt/format.h>

#include "brief/facts.hpp"
#include "text/utf8.hpp"
#include "text/words.hpp"
#include "yarn_need/decide.hpp"

namespace latchwork::inline v0::report {
namespace {

std::string grams(double weight_g) {
  if (weight_g == 0) return "0 g";  // of a yarn that knits no row
  if (weight_g < 0.05) return "under 0.1 g";
  return weight_g < 100 ? fmt::format("{:.1f} g", weight_g) : fmt::format("{:.0f} g", weight_g);
}

std::string estimate_words(const YarnEstimate& estimate) {
  std::string words = grams(estimate.weight_g);
  const bool told = estimate.spread_g > 0 && (estimate.spread_known || estimate.spread_g >= 0.05);
  if (told) {
    words += fmt::format(", give or take {}{}", grams(estimate.spread_g), estimate.spread_known ? "" : " or more");
  } else if (!estimate.spread_known) {
    words += ", spread not known";
  }
  if (estimate.length_m > 0) words += fmt::format(", {:.0f} m", estimate.length_m);
  return fmt::format("{} (from {})", words, route_name(estimate.route));
}

std::string buy_words(const Yarn& yarn, const YarnShare& share) {
  std::string words = grams(share.buy_g);
  if (share.balls > 0)
    words = fmt::format("{} of {:g} g ({} wanted)", count_of(share.balls, "ball"), yarn.ball_g, words);
  return yarn.name.empty() ? words : fmt::format("{}: {}", one_line(yarn.name), words);
}

}  // namespace

void add_yarn(Facts& facts, const Brief& brief, const Job& job) {
  if (!brief.yarn || !job.yarn) return;
  const int pieces = brief.yarn->pieces;
  add_need(facts, *brief.yarn, *job.yarn, {"Yarn", "To buy", pieces > 1 ? fmt::format("; {} panels", pieces) : ""});
}

void add_need(Facts& facts, const YarnRequest& request, const YarnNeed& need, const NeedWords& told) {
  std::vector<std::string> estimates;
  for (const YarnEstimate& estimate : need.estimates) estimates.push_back(estimate_words(estimate));
  std::string words = estimates.empty() ? "not known: see below" : joined(estimates, "; ");
  if (estimates.size() > 1) words += fmt::format("; {:.0f} % apart", 100 * need.apart);
  facts.lines.emplace_back(told.need, words + told.after);
  if (const int decides = need.decides; decides >= 0) {
    const YarnEstimate& by = need.estimates[static_cast<std::size_t>(decides)];
    for (std::size_t i = 0; i < request.yarns.size(); ++i) {
      facts.lines.emplace_back(told.buy, buy_words(request.yarns[i], by.shares[i]));
    }
    if (estimates.size() > 1) facts.lines.emplace_back("Decided by", need.why);
  }
  Noting notes(facts);
  const auto add = [&](const std::vector<std::string>& texts) {
    for (const std::string& text : texts) notes.add("yarn", text);
  };
  for (const YarnEstimate& estimate : need.estimates) add(estimate.notes);
  if (need.estimates.empty()) add(need.missing);
  add(need.warnings);
}

}  // namespace latchwork::inline v0::report
