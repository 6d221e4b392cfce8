#pragma once

#include <string>
#include <vector>

#include "latchwork/gauge.hpp"

namespace latchwork::inline v0::report {

/// substitutes.csv of a brief, as read_brief() says.
std::vector<Substitute> read_substitutes(const std::string& csv);

/// The text that read_substitutes() reads back to these. @throws Error bad_value (field "brief.substitutes[0].texture")
/// for what it does not take; bad_encoding; too_large (field "brief.substitutes").
std::string substitutes_text(const std::vector<Substitute>& substitutes);

}  // namespace latchwork::inline v0::report
