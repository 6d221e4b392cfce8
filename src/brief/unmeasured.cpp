#include <algorithm>

#include "brief/facts.hpp"
#include "brief/run.hpp"
#include "gauge/gauges.hpp"
#include "latchwork/brief.hpp"
#include "size/bands.hpp"

namespace latchwork::inline v0::report {
namespace {

std::vector<Finding> without_gauge(const Brief& brief, const SizeOptions& options, CutOff cut_off) {
  const Gauges gauges(brief.swatch, options.state, options.substitutes);
  std::vector<Finding> out = measuring_findings(textures_of(brief.panel, cut_off), brief.swatch, gauges);
  out.erase(std::remove_if(out.begin(), out.end(),
                           [](const Finding& finding) { return finding.code != FindingCode::no_swatch; }),
            out.end());
  return out;
}

}  // namespace

std::vector<Finding> Unmeasured::all() const {
  std::vector<Finding> out = size;
  for (const Finding& finding : article) {
    if (std::find(out.begin(), out.end(), finding) == out.end()) out.push_back(finding);
  }
  return out;
}

Unmeasured unmeasured(const Brief& brief) {
  Unmeasured out{.size = without_gauge(brief, measuring_of(brief), CutOff::left_out), .article = {}};
  // The strips are its design, whatever is cut off.
  if (brief.article) out.article = without_gauge(brief, article_measuring(brief), CutOff::counts);
  return out;
}

}  // namespace latchwork::inline v0::report
