#pragma once

#include <string>
#include <string_view>

namespace latchwork::inline v0 {

/// "every 9th row", "every row".
std::string every_words(int gap, std::string_view thing);

}  // namespace latchwork::inline v0
