#pragma once

#include "latchwork/panel.hpp"
#include "latchwork/yarn_need.hpp"

namespace latchwork::inline v0 {

/// Throws unless the request is one that can be reckoned for a panel of so many rows.
void require_request(const YarnRequest& request, int rows);

}  // namespace latchwork::inline v0
