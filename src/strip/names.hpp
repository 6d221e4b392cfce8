#pragma once

#include <string>
#include <string_view>

namespace latchwork::inline v0 {

/// The name with its lean words exchanged, RC <-> LC, where they stand as words of their own.
std::string mirrored_name(std::string_view name);

}  // namespace latchwork::inline v0
