#pragma once

#include <string>
#include <string_view>

#include "latchwork/brief.hpp"

namespace latchwork::inline v0::report {

/// What brief.json holds: the state that sizes are meant in, sessions and rests.
struct Asked {
  std::optional<ClothState> state{};
  std::int64_t session_ms = SessionOptions{}.session_ms;
  std::int64_t rest_ms = SessionOptions{}.rest_ms;
  friend bool operator==(const Asked&, const Asked&) = default;
};
Asked asked_of(const Brief& brief);

/// @throws Error bad_argument (field "brief.state", "brief.session_ms", "brief.rest_ms").
void require_asked(const Brief& brief);

/// @throws Error as readers of JSON do.
Asked read_asked(std::string_view json);
/// Of what require_asked() takes.
std::string write_asked(const Asked& asked);

}  // namespace latchwork::inline v0::report
