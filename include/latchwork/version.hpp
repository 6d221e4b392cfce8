#pragma once

#include <string_view>

#include "latchwork/export.hpp"

namespace latchwork::inline v0 {

/// The library's version, "0.1.0" (semantic versioning).
LATCHWORK_API std::string_view version() noexcept;

}  // namespace latchwork::inline v0
