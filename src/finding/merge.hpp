#pragma once

#include <vector>

#include "latchwork/finding.hpp"

namespace latchwork::inline v0::seeking {

/// Like findings that touch are told once: of one code and severity, where rows overlap or follow each other and
/// columns do. The extent grows, `value` is the greatest, and message and suggestion are those of the lowest, leftmost
/// one, with the extent added. In order of row, then column.
std::vector<Finding> merged_findings(std::vector<Finding> findings);

}  // namespace latchwork::inline v0::seeking
