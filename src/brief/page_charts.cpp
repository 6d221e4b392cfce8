#include <fmt/format.h>

#include <algorithm>
#include <string>
#include <string_view>
#include <vector>

#include "brief/page_parts.hpp"
#include "brief/sheets.hpp"
#include "text/utf8.hpp"
#include "text/words.hpp"

namespace latchwork::inline v0 {
namespace {

using report::tag;

/// The picture with a style of its own.
std::string styled(const drawing::DrawnChart& picture, const std::string& style) {
  const std::size_t open = picture.svg.find('>');
  return picture.svg.substr(0, open) + fmt::format(" style=\"{}\"", style) + picture.svg.substr(open);
}

void append_key(std::string& out, const std::vector<drawing::KeyPicture>& key, double mm_per_unit) {
  if (key.empty()) return;
  out += "<ul class=\"key\">\n";
  for (const drawing::KeyPicture& entry : key) {
    out += "<li>";
    if (!entry.symbol.svg.empty()) {
      out += "<span class=\"entry\"><span class=\"symbol\">" +
             styled(entry.symbol, fmt::format("--units:{:.1f};--print-width:{:.2f}mm", entry.symbol.width,
                                              entry.symbol.width * mm_per_unit)) +
             "</span>";
    }
    out += tag("span", entry.words, " class=\"says\"") + (entry.symbol.svg.empty() ? "</li>\n" : "</span></li>\n");
  }
  out += "</ul>\n";
}

/// On a screen cells are drawn 16 px high where there is room, never below 8 px, and words never below 10 px.
void append_cells(std::string& out, const report::ChartSheet& sheet, double mm_per_unit) {
  const double font = report::font_mm / mm_per_unit;
  const double beside = 1.2 * font;  // half of the outermost column's name
  const double cells = sheet.cells.cells_width + 2 * beside;
  out += fmt::format(
      "<figure class=\"chart cut\" "
      "style=\"--least:{:.3f};--all:{:.1f};--rows:{:.1f};--cells:{:.1f};--whole:{:.1f};--left:{:.1f}\">\n",
      std::max(10 / font, 0.5), sheet.rows.width + cells, sheet.rows.width, cells, sheet.cells.width,
      beside - sheet.cells.cells_left);
  out += "<div class=\"rows\">" + sheet.rows.svg + "</div>\n<div class=\"cells\">";
  out += styled(sheet.cells, fmt::format("--print-width:{:.2f}mm", sheet.cells.width * mm_per_unit));
  out += "</div>\n</figure>\n";
}

}  // namespace

std::string report::tag(std::string_view name, std::string_view words, std::string_view attributes) {
  return fmt::format("<{}{}>{}</{}>", name, attributes, escaped_xml(words), name);
}

void report::append_chart(std::string& out, const ChartSheets& chart, Side side) {
  const auto& sheets = chart.sheets;
  const std::string title = side == Side::operator_view ? "Operator's view (WS)" : "Right side (RS)";
  const std::string_view id = side == Side::operator_view ? " id=\"operator\"" : " id=\"right-side\"";
  const std::string section = fmt::format("<section class=\"picture{}\">\n", chart.wide ? " wide" : "");
  for (std::size_t i = 0; i < sheets.size(); ++i) {
    const std::string part = sheets.size() == 1 ? "" : fmt::format(", sheet {} of {}", i + 1, sheets.size());
    out += section;
    out += tag("h2", title + part, i == 0 ? id : "") + "\n";
    out += tag("p", sheets[i].title, " class=\"words title\"") + "\n";
    out += tag("p", joined(sheets[i].notes, " "), " class=\"words\"") + "\n";
    append_cells(out, sheets[i], chart.mm_per_unit);
    if (!sheets[i].key.empty()) out += tag("h3", "Key", " class=\"words\"") + "\n";
    append_key(out, sheets[i].key, chart.mm_per_unit);
    out += "</section>\n";
  }
  if (chart.key.empty()) return;
  out += section;
  out += tag("h2", title + ", key") + "\n";
  append_key(out, chart.key, chart.mm_per_unit);
  out += "</section>\n";
}

}  // namespace latchwork::inline v0
