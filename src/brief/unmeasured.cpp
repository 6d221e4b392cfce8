#include <algorithm>

#include "brief/facts.hpp"
#include "brief/run.hpp"
#include "latchwork/brief.hpp"

namespace latchwork::inline v0::report {
namespace {

std::vector<Finding> without_gauge(const Brief& brief, const SizeOptions& options) {
  std::vector<Finding> out = measuring_findings(brief.panel, brief.swatch, options);
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
  Unmeasured out{.size = without_gauge(brief, measuring_of(brief)), .article = {}};
  if (brief.article) {
    SizeOptions options;
    options.state = article_state(brief);
    options.substitutes = article_substitutes(brief);
    out.article = without_gauge(brief, options);
  }
  return out;
}

}  // namespace latchwork::inline v0::report
