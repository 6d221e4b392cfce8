#pragma once

#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

namespace latchwork::inline v0 {

/// A count with its noun: "1 row", "3 rows", "0 stitches" (ending "es").
std::string count_of(std::int64_t count, std::string_view thing, std::string_view ending = "s");

/// A run of numbered things: "column 9", "columns 9 to 12", "rows 3-4" (between "-"), "stitches 2-3" (ending "es").
std::string run_of(std::string_view thing, std::int64_t first, std::int64_t last, std::string_view between = " to ",
                   std::string_view ending = "s");

/// "every 9th row", "every row".
std::string every_words(int gap, std::string_view thing);

/// The parts with `between` between them: "a, b, c".
std::string joined(const std::vector<std::string>& parts, std::string_view between = ", ");

}  // namespace latchwork::inline v0
