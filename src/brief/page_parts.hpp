#pragma once

#include <string>
#include <string_view>

#include "brief/sheets.hpp"
#include "latchwork/chart.hpp"

namespace latchwork::inline v0::report {

/// The page's style sheet: black on white, for A4 and for a phone.
extern const std::string_view page_style;

/// An element with words, escaped; attributes begin with a space.
std::string tag(std::string_view name, std::string_view words, std::string_view attributes = {});

/// The sheets of one side of a panel, each a section with its heading, picture and key.
void append_chart(std::string& out, const ChartSheets& chart, Side side);

}  // namespace latchwork::inline v0::report
