#include "brief/asked.hpp"

#include <fmt/format.h>

#include "file/gauge_json.hpp"
#include "latchwork/error.hpp"
#include "session/check.hpp"

namespace latchwork::inline v0::report {
namespace {

using json::Is;
using json::Missing;

constexpr std::string_view asked_format = "latchwork-brief";

struct Fields {
  void operator()(auto& members, Is<Asked> auto& asked) const {
    members.optional("state", asked.state, json::StateText{});
    members.integer("session_ms", asked.session_ms, sitting::least_length_ms, sitting::most_length_ms);
    members.integer("rest_ms", asked.rest_ms, std::int64_t{0}, sitting::most_length_ms);
  }
};

[[noreturn]] void refuse_asked(ErrorCode code, const std::string& field, const std::string& what) {
  Place place;
  place.field = field;
  throw Error(code, place, field + " " + what);
}

/// `before` and `code`: of the fields, and of what is out of its range, where it is asked for.
void require(const Asked& asked, const std::string& before, ErrorCode code) {
  if (asked.state && *asked.state > ClothState::washed) {
    refuse_asked(code, before + "state",
                 fmt::format("is {}; it must be 0..2, or none", static_cast<int>(*asked.state)));
  }
  if (!sitting::is_session(asked.session_ms)) {
    refuse_asked(
        code, before + "session_ms",
        fmt::format("is {}; it must be {}..{}", asked.session_ms, sitting::least_length_ms, sitting::most_length_ms));
  }
  if (!sitting::is_rest(asked.rest_ms)) {
    refuse_asked(code, before + "rest_ms",
                 fmt::format("is {}; it must be {}..{}, or 0 for no rests", asked.rest_ms, sitting::least_length_ms,
                             sitting::most_length_ms));
  }
}

}  // namespace

Asked asked_of(const Brief& brief) {
  return {.state = brief.state, .session_ms = brief.session_ms, .rest_ms = brief.rest_ms};
}

void require_asked(const Brief& brief) {
  require(asked_of(brief), "brief.", ErrorCode::bad_argument);
}

Asked read_asked(std::string_view json) {
  return json::read_file<Asked, Fields, Missing::keeps_default>(
      json, asked_format, [](const Asked& asked) { require(asked, "", ErrorCode::bad_value); });
}

std::string write_asked(const Asked& asked) {
  return json::write_file<Fields, Missing::keeps_default>(asked, asked_format);
}

}  // namespace latchwork::inline v0::report
