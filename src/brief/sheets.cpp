#include "brief/sheets.hpp"

#include <algorithm>
#include <cmath>
#include <cstdint>
#include <cstdlib>
#include <limits>
#include <tuple>
#include <utility>

#include "chart/pen.hpp"
#include "chart/sheet.hpp"
#include "chart/view.hpp"
#include "text/words.hpp"

namespace latchwork::inline v0::report {
namespace {

using drawing::View;

constexpr double row_units = 16;  ///< of the SVG

/// One side of a panel.
struct Chart {
  View view;
  const ChartOptions& options;

  /// The highest row that the width of the paper allows a sheet of so many columns.
  double most_row_mm(const Paper& paper, int columns) const {
    return cell_mm(paper, columns) / drawing::cell_proportion(options);
  }
  double cell_mm(const Paper& paper, int columns) const {
    const double beside = drawing::words_beside(drawing::sheet_of(view, drawing::whole(view)));
    return (paper.width_mm - beside * font_mm) / columns;
  }
};

/// How many lines words take, by what a letter takes at least as wide faces have it.
double lines_of(const std::string& words, double width_mm, double letter_mm) {
  const double letters = std::max(width_mm / letter_mm, 1.0);
  return static_cast<double>(drawing::wrapped(words, static_cast<std::size_t>(letters)).size());
}

/// Height of a sheet's words above its cells, as the page sets them.
double heading_mm(const ChartSheet& sheet, const Paper& paper) {
  return lines_of(sheet.title, paper.width_mm, font_mm * 1.3 * 0.62) * line_mm * 1.3 +
         lines_of(joined(sheet.notes, " "), paper.width_mm, font_mm * 0.56) * line_mm + 2;
}

/// Height of a key, its title too: lines of as many entries as there are columns, each line as high as its highest.
double height_mm(const std::vector<drawing::KeyPicture>& key, const Paper& paper, double scale) {
  if (key.empty()) return 0;
  const bool wide = paper.width_mm > upright.width_mm;
  const auto columns = static_cast<std::size_t>(wide ? key_columns_across : key_columns);
  double height = line_mm + 2;
  for (std::size_t from = 0; from < key.size(); from += columns) {
    double line = 0;
    for (std::size_t i = from; i < std::min(from + columns, key.size()); ++i) {
      const double room = paper.width_mm * 0.97 / static_cast<double>(columns) - key[i].symbol.width * scale - font_mm;
      line = std::max({line, lines_of(key[i].words, room, font_mm * 0.58) * line_mm, key[i].symbol.height * scale});
    }
    height += line + key_gap_mm;
  }
  return height;
}

/// The last row of each of so many sheets: pairs of rows, as evenly as integers allow.
std::vector<int> even_cut(int rows, int sheets) {
  std::vector<int> ends;
  ends.reserve(static_cast<std::size_t>(sheets));
  for (std::int64_t i = 1; i < sheets; ++i) {
    const std::int64_t pairs = (rows * i + sheets) / (2 * std::int64_t{sheets});
    ends.push_back(static_cast<int>(2 * pairs));
  }
  ends.push_back(rows);
  return ends;
}

/// Columns of a sheet, from the left on the RS.
struct Columns {
  int first = 0;
  int last = 0;
  int count() const { return last - first + 1; }
};

/// Columns cut into so many parts, nearly even: each cut where no crossing is cut, between strips if there is an edge
/// near; where every column near has a crossing over it the parts overlap by those that are cut.
std::vector<Columns> cut_across(const View& view, int parts) {
  const int columns = view.grid.columns();
  std::vector<int> over(static_cast<std::size_t>(columns) + 1, 0);  // crossings cut left of a column
  for (const Crossing& crossing : view.grid.crossings()) {
    ++over[static_cast<std::size_t>(crossing.column) + 1];
    --over[static_cast<std::size_t>(crossing.column) + static_cast<std::size_t>(crossing.width())];
  }
  for (std::size_t i = 1; i < over.size(); ++i) over[i] += over[i - 1];
  const std::vector<int> edges = view.shared_edges();
  std::vector<Columns> result{{.first = 0, .last = columns - 1}};
  for (int i = 1; i < parts; ++i) {
    const auto even = static_cast<int>(std::int64_t{columns} * i / parts);
    const int room = columns / (6 * parts);
    const auto price = [&](int column) {
      return std::tuple(over[static_cast<std::size_t>(column)], !std::binary_search(edges.begin(), edges.end(), column),
                        std::abs(column - even));
    };
    int best = even;
    for (int column = even - room; column <= even + room; ++column) {
      if (price(column) < price(best)) best = column;
    }
    int first = best;
    int last = best - 1;
    for (const Crossing& crossing : view.grid.crossings()) {
      const int end = crossing.column + crossing.width();
      if (crossing.column >= best || end <= best) continue;
      first = std::min(first, crossing.column);
      last = std::max(last, end - 1);
    }
    result.back().last = last;
    result.push_back({.first = first, .last = columns - 1});
  }
  return result;
}

/// The same columns as seen from a side, from its left.
Columns seen(const View& view, Columns rs) {
  if (view.side == Side::right_side) return rs;
  const int last = view.grid.columns() - 1;
  return {.first = last - rs.last, .last = last - rs.first};
}

/// To a hundredth of a millimetre, so that no rounding comes out twice the size.
double floored(double row_mm) {
  return std::max(std::floor(row_mm * 100) / 100, 0.01);
}

class Cutting {
 public:
  Cutting(const Panel& panel, const ChartOptions& back, const ChartOptions& front)
      : back_{.view = drawing::view_of(panel, back), .options = back},
        front_{.view = drawing::view_of(panel, front), .options = front},
        rows_(panel.grid().rows()) {}

  BothCharts made() {
    cut_columns();
    wide_ = widest(upright) < least_upright_mm;
    paper_ = wide_ ? across : upright;
    const double most = std::min(widest(paper_), report::most_row_mm);
    const double fair = floored(std::min(most, fair_row_mm));
    const double highest_key = std::max(height_mm(key_of(back_, fair / row_units), paper_, fair / row_units),
                                        height_mm(key_of(front_, fair / row_units), paper_, fair / row_units));
    key_apart_ = highest_key > most_key * paper_.height_mm;
    Try best = fewest_sheets(fair);
    // What room is left goes to the rows.
    for (double wanted = floored(std::min(most, best.row_mm)); wanted > fair * 1.02;) {
      Try larger = tried(best.sheets, wanted);
      if (larger.fits) return with_key(std::move(larger));
      wanted = floored(std::min(larger.row_mm, wanted * 0.95));
    }
    return with_key(std::move(best));
  }

 private:
  struct Try {
    BothCharts charts;  ///< of a try that does not fit, as far as it was drawn
    int sheets = 1;
    double row_mm = 0;  ///< the row that would fit the paper if the words stood as they are
    double rows = 0;    ///< of the sheet that did not fit, as many as would
    bool fits = true;
  };

  /// Into the fewest parts whose cells are wide enough on paper laid across.
  void cut_columns() {
    const int columns = front_.view.grid.columns();
    for (int parts = 1; parts == 1 || columns / parts >= fewest_columns; ++parts) {
      parts_ = cut_across(front_.view, parts);
      most_columns_ = 0;
      for (const Columns& part : parts_) most_columns_ = std::max(most_columns_, part.count());
      if (std::min(back_.cell_mm(across, most_columns_), front_.cell_mm(across, most_columns_)) >= least_cell_mm)
        return;
    }
  }

  double widest(const Paper& paper) const {
    return std::min(back_.most_row_mm(paper, most_columns_), front_.most_row_mm(paper, most_columns_));
  }

  /// Of the whole panel.
  static std::vector<drawing::KeyPicture> key_of(const Chart& chart, double scale) {
    return drawing::key_pictures(chart.view, drawing::sheet_of(chart.view, drawing::whole(chart.view)), chart.options,
                                 {.font = font_mm / scale});
  }

  BothCharts with_key(Try made) const {
    if (key_apart_) {
      made.charts.operator_view.key = key_of(back_, made.charts.operator_view.mm_per_unit);
      made.charts.right_side.key = key_of(front_, made.charts.right_side.mm_per_unit);
    }
    return std::move(made.charts);
  }

  Try fewest_sheets(double row_mm) const {
    const int most = std::max(1, rows_ / fewest_rows);
    int sheets = std::clamp(static_cast<int>(std::ceil(rows_ * row_mm / paper_.height_mm)), 1, most);
    while (sheets < most) {
      Try next = tried(sheets, row_mm);
      if (next.fits) return next;
      const double wanted = next.rows > 1 ? std::min<double>(std::ceil(rows_ / next.rows), most) : most;
      // Half the way: what stands round fewer rows may be less high.
      sheets += std::max(1, (static_cast<int>(wanted) - sheets) / 2);
    }
    return tried(most, row_mm, true);
  }

  /// Draws all, or until a sheet does not fit.
  Try tried(int sheets, double row_mm, bool whole = false) const {
    Try out{.charts = {}, .sheets = sheets, .row_mm = std::numeric_limits<double>::max()};
    const std::vector<int> ends = even_cut(rows_, sheets);
    const double scale = row_mm / row_units;
    for (const auto& [chart, drawn] :
         {std::pair{&back_, &out.charts.operator_view}, std::pair{&front_, &out.charts.right_side}}) {
      drawn->wide = wide_;
      drawn->mm_per_unit = scale;
      int first = 1;
      for (const int last : ends) {
        for (std::size_t i = 0; i < parts_.size(); ++i) {
          const std::size_t at = chart->view.side == Side::right_side ? i : parts_.size() - 1 - i;
          const Columns columns = seen(chart->view, parts_[at]);
          const drawing::Part part{
              .first_row = first, .last_row = last, .first_column = columns.first, .last_column = columns.last};
          drawn->sheets.push_back(sheet_of(*chart, part, scale));
          const ChartSheet& sheet = drawn->sheets.back();
          const double rows = last - first + 1;
          const double spare = paper_.height_mm - heading_mm(sheet, paper_) - sheet.cells.height * scale -
                               height_mm(sheet.key, paper_, scale);
          out.row_mm = std::min(out.row_mm, row_mm + spare / rows);
          if (spare < 0) {
            out.fits = false;
            out.rows = rows + spare / row_mm;
            if (!whole) return out;
          }
        }
        first = last + 1;
      }
    }
    return out;
  }

  ChartSheet sheet_of(const Chart& chart, const drawing::Part& part, double scale) const {
    const drawing::Sheet shown = drawing::sheet_of(chart.view, part);
    const drawing::Words words{.font = font_mm / scale};
    ChartSheet sheet{.cells = drawing::drawn_cells(chart.view, shown, chart.options, words),
                     .rows = drawing::drawn_rows(chart.view, shown, chart.options, words),
                     .title = shown.title,
                     .notes = drawing::notes_of(chart.view, shown),
                     .key = {}};
    if (key_apart_) {
      sheet.notes.emplace_back("The key stands on a sheet of its own.");
    } else {
      sheet.key = drawing::key_pictures(chart.view, shown, chart.options, words);
    }
    return sheet;
  }

  Chart back_;
  Chart front_;
  int rows_;
  std::vector<Columns> parts_;
  int most_columns_ = 1;  ///< of a part
  bool key_apart_ = false;
  Paper paper_{};
  bool wide_ = false;
};

}  // namespace

BothCharts chart_sheets(const Panel& panel, const ChartOptions& operator_view, const ChartOptions& right_side) {
  return Cutting(panel, operator_view, right_side).made();
}

std::string text_sheets(const Panel& panel, const ChartOptions& options) {
  const int columns = panel.grid().columns();
  if (columns <= most_text_columns) return chart_text(panel, options);
  constexpr int fair_columns = 72;
  ChartOptions front = options;  // columns are counted on the RS
  front.side = Side::right_side;
  std::vector<Columns> parts = cut_across(drawing::view_of(panel, front), (columns + fair_columns - 1) / fair_columns);
  if (options.side == Side::operator_view) std::reverse(parts.begin(), parts.end());
  std::string out;
  for (const Columns& part : parts) {
    ChartOptions shown = options;
    shown.first_column = part.first;
    shown.columns = part.count();
    out += (out.empty() ? "" : "\n") + chart_text(panel, shown);
  }
  return out;
}

}  // namespace latchwork::inline v0::report
