#pragma once

#include <vector>

#include "latchwork/finding.hpp"

namespace latchwork::inline v0::seeking {

/// Like findings that touch are told once: of one code and severity, in the same or neighbouring columns, rows up to
/// four apart; of crossings, edges and shapings any number. The extent grows; value, limit and suggestion are those of
/// the worst, the message is that of the lowest, leftmost one, with the extent added. In order of row, then column.
std::vector<Finding> merged_findings(std::vector<Finding> findings);

}  // namespace latchwork::inline v0::seeking
