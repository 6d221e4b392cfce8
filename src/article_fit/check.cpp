#include "article_fit/check.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cstdint>

#include "fit/request.hpp"
#include "gauge/gauges.hpp"
#include "latchwork/error.hpp"
#include "text/utf8.hpp"

namespace latchwork::inline v0 {
namespace {

using fitting::refuse;
using fitting::require;

void require_text(const std::string& field, const std::string& text) {
  if (utf8_error(text) == std::string_view::npos) return;
  Place place;
  place.field = field;
  throw Error(ErrorCode::bad_encoding, place, field + " is not UTF-8");
}

void require_made(const std::vector<std::string>& made) {
  if (made.size() > ArticleRequest::max_pieces) {
    refuse("made", fmt::format("made has {} names; there may be {}", made.size(), ArticleRequest::max_pieces));
  }
  for (std::size_t i = 0; i < made.size(); ++i) {
    const std::string field = fmt::format("made[{}]", i);
    require_text(field, made[i]);
    if (made[i].empty()) refuse(field, field + " is empty");
    const auto before = made.begin() + static_cast<std::ptrdiff_t>(i);
    if (std::find(made.begin(), before, made[i]) != before) {
      refuse(field, fmt::format("{} is '{}', which stands there already", field, shown(made[i])));
    }
  }
}

void require_groups(const std::vector<StripRun>& groups) {
  if (groups.size() > static_cast<std::size_t>(FitRequest::max_groups)) {
    refuse("groups", fmt::format("groups are {}; there may be {}", groups.size(), FitRequest::max_groups));
  }
  for (std::size_t i = 0; i < groups.size(); ++i) {
    const std::string field = fmt::format("groups[{}].", i);
    require(field + "first", groups[i].first, 0, Grid::max_side);
    require(field + "last", groups[i].last, groups[i].first, Grid::max_side);
    require(field + "least", groups[i].least, 0, Grid::max_side);
    require(field + "most", groups[i].most, groups[i].least, Grid::max_side);
    fitting::require_tie(field + "as_group", groups[i].as_group, i);
  }
}

void require_design_substitutes(const std::vector<Substitute>& substitutes) {
  for (std::size_t i = 0; i < substitutes.size(); ++i) {
    require_text(fmt::format("design.substitutes[{}].texture", i), substitutes[i].texture);
    require_text(fmt::format("design.substitutes[{}].use", i), substitutes[i].use);
  }
  require_substitutes(substitutes, "design.");
}

void require_seam_time(std::int64_t ms) {
  constexpr std::int64_t most = ArticleRequest::max_seam_ms_per_m;
  if (ms < 0 || ms > most) refuse("seam_ms_per_m", fmt::format("seam_ms_per_m is {}; it must be 0..{}", ms, most));
}

}  // namespace

void require_article_request(const ArticleRequest& request) {
  require_text("article", request.article);
  require_made(request.made);
  require_groups(request.groups);
  require("edge", request.edge, -1, Grid::max_side);
  require_design_substitutes(request.design.substitutes);
  require_seam_time(request.seam_ms_per_m);
  try {
    fitting::require_bounds(request.design);
  } catch (const Error& error) {
    Place place = error.place();
    place.field = "design." + place.field;
    throw Error(error.code(), place, std::string("design.") + error.what());
  }
}

}  // namespace latchwork::inline v0
