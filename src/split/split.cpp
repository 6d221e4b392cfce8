#include "latchwork/split.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <cstdint>
#include <optional>
#include <span>
#include <string>
#include <vector>

#include "latchwork/error.hpp"
#include "machine/check.hpp"
#include "text/utf8.hpp"
#include "text/words.hpp"

namespace latchwork::inline v0 {
namespace {

/// Whether the panel may be cut before each column, 0..columns.
class Lines {
 public:
  explicit Lines(const Panel& panel) : open_(static_cast<std::size_t>(panel.grid().columns()) + 1, 1) {
    const std::vector<Stitches> rows = stitches_of(panel.grid());
    for (const Band& band : panel.bands()) {
      for (const StripSpan& strip : band.strips) {
        if (!plain(panel.grid(), rows, band, strip)) close(strip.column, strip.columns);
      }
    }
    for (const Crossing& crossing : panel.grid().crossings()) {
      close(crossing.column, crossing.left + crossing.centre + crossing.right);
    }
    close_edges_of_shapes(panel.grid());
  }

  int last() const { return static_cast<int>(open_.size()) - 1; }
  bool open(int line) const { return open_[static_cast<std::size_t>(line)] != 0; }
  /// What is open is then so from either side.
  void mirror() {
    for (std::size_t left = 0, right = open_.size() - 1; left < right; ++left, --right) {
      open_[left] = open_[right] = open_[left] != 0 && open_[right] != 0 ? 1 : 0;
    }
  }
  /// The last that is open, not more than so many columns after another.
  std::optional<int> farthest(int from, int most) const {
    for (int line = std::min(from + most, last()); line > from; --line) {
      if (open(line)) return line;
    }
    return std::nullopt;
  }

 private:
  void close(int column, int columns) {
    const auto from = open_.begin() + column;
    std::fill(from + 1, from + columns, char{0});
  }
  /// From a row's first stitch to its last.
  struct Stitches {
    int first = 0;
    int last = -1;
  };
  static std::vector<Stitches> stitches_of(const Grid& grid) {
    std::vector<Stitches> out(static_cast<std::size_t>(grid.rows()) + 1);
    for (int row = 1; row <= grid.rows(); ++row) {
      Stitches& of = out[static_cast<std::size_t>(row)];
      of.last = grid.columns() - 1;
      while (of.first <= of.last && grid.at(row, of.first) == Cell::none) ++of.first;
      while (of.last >= of.first && grid.at(row, of.last) == Cell::none) --of.last;
    }
    return out;
  }
  /// Knit alone inside the panel's shape.
  static bool plain(const Grid& grid, const std::vector<Stitches>& rows, const Band& band, const StripSpan& strip) {
    for (int row = band.row; row < band.row + band.rows; ++row) {
      const Stitches& of = rows[static_cast<std::size_t>(row)];
      const int end = std::min(strip.column + strip.columns, of.last + 1);
      for (int column = std::max(strip.column, of.first); column < end; ++column) {
        if (grid.at(row, column) != Cell::knit) return false;
      }
    }
    return true;
  }
  void close_edges_of_shapes(const Grid& grid) {
    const std::span<const Cell> cells = grid.cells();
    const auto columns = static_cast<std::size_t>(grid.columns());
    for (std::size_t at = 0; at < cells.size(); ++at) {
      const std::size_t line = at % columns;
      if (line > 0 && (cells[at] == Cell::none) != (cells[at - 1] == Cell::none)) open_[line] = 0;
    }
  }

  std::vector<char> open_;
};

class Splitting {
 public:
  Splitting(Lines lines, int seam) : lines_(std::move(lines)), seam_(seam) {}

  /// Cuts from the left, each part as wide as it may be with its seams, up to a line at which so many stitches are
  /// added; nothing where a part would be wider.
  std::optional<std::vector<int>> filled(int most, int end, int end_seam) {
    std::vector<int> cuts;
    for (int at = 0;;) {
      const int room = most - (at > 0 ? seam_ : 0);
      if (end - at <= room - end_seam) return cuts;
      const std::optional<int> next = lines_.farthest(at, room - seam_);
      if (!next) {
        stuck_ = at;
        return std::nullopt;
      }
      cuts.push_back(*next);
      at = *next;
    }
  }

  std::optional<std::vector<int>> filled(int most) { return filled(most, lines_.last(), 0); }

  /// The same for so many parts that mirror each other; nothing where none do.
  std::optional<std::vector<int>> mirrored(int most, int parts) {
    const int width = lines_.last();
    std::optional<std::vector<int>> cuts;
    if (parts % 2 == 0) {
      if (width % 2 != 0 || !lines_.open(width / 2)) return std::nullopt;
      cuts = filled(most, width / 2, seam_);
      if (!cuts || std::ssize(*cuts) + 1 != parts / 2) return std::nullopt;
      cuts->push_back(width / 2);
    } else {
      cuts.emplace();
      for (int at = 0, left = parts / 2; left > 0; --left) {
        const int room = most - (at > 0 ? seam_ : 0) - seam_;
        const std::optional<int> next = lines_.farthest(at, std::min(room, (width - 1) / 2 - at));  // a middle is left
        if (!next) return std::nullopt;
        cuts->push_back(*next);
        at = *next;
      }
      const int middle = width - 2 * cuts->back();
      if (middle < 1 || middle + 2 * seam_ > most) return std::nullopt;
    }
    for (auto i = static_cast<std::ptrdiff_t>(parts / 2) - 1 - (parts % 2 == 0 ? 1 : 0); i >= 0; --i) {
      cuts->push_back(width - (*cuts)[static_cast<std::size_t>(i)]);
    }
    return cuts;
  }

  int stuck() const { return stuck_; }

 private:
  Lines lines_;
  int seam_;
  int stuck_ = 0;
};

/// The least that will do of 1..most, of which `most` does, and what it gives.
template <class Try>
std::vector<int> with_the_least(int most, const Try& attempt) {
  int least = 1;
  while (least < most) {
    const int middle = least + (most - least) / 2;
    if (attempt(middle)) {
      most = middle;
    } else {
      least = middle + 1;
    }
  }
  return *attempt(most);
}

/// Needles from where the machine lets a panel begin.
int needles_for(const Machine& machine) {
  if (machine.leftmost == 0) return machine.needles;
  const int left =
      machine.leftmost < 0 ? -machine.leftmost : 1 - machine.leftmost;  // to the left of the middle, and it
  return std::clamp(needles_right(machine) + left, 0, machine.needles);
}

/// What a seam takes of an edge, as columns to add there. @throws Error bad_argument (field "seam_stitches").
int whole_stitches(double stitches) {
  const bool inside = stitches >= 0 && stitches <= max_seam_stitches;  // no NaN is
  if (inside && std::floor(stitches) == stitches) return static_cast<int>(stitches);
  Place place;
  place.field = "seam_stitches";
  throw Error(ErrorCode::bad_argument, place,
              fmt::format("seam_stitches is {}; it must be 0..{}{}", stitches, max_seam_stitches,
                          inside ? " and whole, since that many columns are added at each edge that is sewn" : ""));
}

[[noreturn]] void refuse_part(const Panel& panel, int column, int seam, int needles) {
  const Band& band = panel.bands().front();
  const auto strip = std::find_if(band.strips.begin(), band.strips.end(), [&](const StripSpan& each) {
    return column >= each.column && column < each.column + each.columns;
  });
  Place place;
  place.column = column;
  place.field = "panel";
  throw Error(
      ErrorCode::too_large, place,
      fmt::format("from column {} ('{}') on there is no line to part the panel at within {}: a part gets {} for "
                  "a seam, and no strip but of knit alone and no crossing is cut",
                  column, shown(strip->name), count_of(needles, "needle"), count_of(seam, "stitch", "es")));
}

}  // namespace

std::vector<SplitPart> split(const Panel& panel, const Machine& machine, double seam_stitches) {
  check(machine);
  const int seam = whole_stitches(seam_stitches);
  const int width = panel.grid().columns();
  const int needles = needles_for(machine);
  if (width <= needles) return {{0, width, 0, 0}};
  Lines lines(panel);
  Splitting any(lines, seam);
  const auto fewest = any.filled(needles);
  if (!fewest) refuse_part(panel, any.stuck(), seam, needles);
  const auto parts = static_cast<int>(fewest->size()) + 1;
  lines.mirror();
  Splitting even(lines, seam);
  std::vector<int> cuts;
  if (panel.grid() == panel.grid().mirrored()) {
    for (const int mirrored : {parts, parts + 1}) {  // a motif in the middle takes an odd number of them
      if (!cuts.empty() || !even.mirrored(needles, mirrored)) continue;
      cuts = with_the_least(needles, [&](int most) { return even.mirrored(most, mirrored); });
    }
  }
  if (cuts.empty()) {
    cuts = with_the_least(needles, [&](int most) {
      auto found = any.filled(most);
      if (found && std::ssize(*found) + 1 > parts) found.reset();
      return found;
    });
  }
  std::vector<SplitPart> out;
  out.reserve(cuts.size() + 1);
  int at = 0;
  for (const int cut : cuts) {
    out.push_back({at, cut - at, at > 0 ? seam : 0, seam});
    at = cut;
  }
  out.push_back({at, width - at, seam, 0});
  return out;
}

}  // namespace latchwork::inline v0
