#include "yarn_need/places.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <cstdint>
#include <utility>

#include "latchwork/error.hpp"

namespace latchwork::inline v0 {
namespace {

// Yarns and how many strands of each.
using Strands = std::map<int, int>;

/// The yarns of each row, from row 1 up: a sweep over where they begin and end.
class Sweep {
 public:
  Sweep(const YarnRequest& request, int rows) : rows_(rows) {
    if (request.rows.empty()) {
      for (std::size_t i = 0; i < request.yarns.size(); ++i) active_[static_cast<int>(i)] = 1;
      return;
    }
    for (const YarnRows& each : request.rows) {
      changes_.push_back({each.first, each.yarn, 1});
      changes_.push_back({(each.last == 0 ? rows : each.last) + 1, each.yarn, -1});
    }
    std::sort(changes_.begin(), changes_.end(), [](const Change& a, const Change& b) { return a.row < b.row; });
  }

  /// The strands of `row`; rows are asked for in order. @throws Error bad_argument (field "rows").
  const Strands& at(int row) {
    for (; next_ < changes_.size() && changes_[next_].row <= row; ++next_) {
      int& strands = active_[changes_[next_].yarn];
      strands += changes_[next_].by;
      if (strands == 0) active_.erase(changes_[next_].yarn);
    }
    if (active_.empty()) {
      Place place;
      place.row = row;
      place.field = "rows";
      throw Error(ErrorCode::bad_argument, place, fmt::format("row {} of {} has no yarn", row, rows_));
    }
    return active_;
  }

 private:
  struct Change {
    int row;
    int yarn;
    int by;
  };
  int rows_;
  std::vector<Change> changes_;
  std::size_t next_ = 0;
  Strands active_;
};

double tex_of(const Strands& strands, const YarnRequest& request) {
  double tex = 0;
  for (const auto& [yarn, count] : strands) {
    const YarnNumber& number = request.yarns[static_cast<std::size_t>(yarn)].number;
    tex += count * (number.number == 0 ? 1 : yarn_tex(number));
  }
  return tex;
}

class Counter {
 public:
  Counter(const Panel& panel, const YarnRequest& request) : panel_(panel), request_(request) {}

  Places count() && {
    Sweep sweep(request_, panel_.grid().rows());
    for (const Band& band : panel_.bands()) {
      std::vector<std::size_t> textures;
      textures.reserve(band.strips.size());
      for (const StripSpan& strip : band.strips) textures.push_back(index_of(strip.texture));
      for (int row = band.row; row < band.row + band.rows; ++row) count_row(band, textures, row, sweep.at(row));
    }
    mark_crossings();
    std::erase_if(out_.textures, [](const TexturePlaces& each) { return each.strands.empty(); });
    return std::move(out_);
  }

 private:
  std::size_t index_of(const std::string& texture) {
    const auto [found, is_new] = index_.emplace(texture, out_.textures.size());
    if (is_new) out_.textures.push_back({texture, true, {}});
    return found->second;
  }

  void count_row(const Band& band, const std::vector<std::size_t>& textures, int row, const Strands& strands) {
    const Grid& grid = panel_.grid();
    const auto columns = static_cast<std::size_t>(grid.columns());
    const auto cells = grid.cells().subspan(static_cast<std::size_t>(row - 1) * columns, columns);
    const auto stitch = [](Cell cell) { return cell != Cell::none; };
    const auto first = std::find_if(cells.begin(), cells.end(), stitch) - cells.begin();
    const auto end = cells.rend() - std::find_if(cells.rbegin(), cells.rend(), stitch);  // past the last
    const double tex = tex_of(strands, request_);
    if (row == 1) out_.first_tex = tex;
    if (std::abs(tex - out_.first_tex) > 1e-9 * tex) out_.same_tex = false;

    double times = 1;
    if (row == 1) times += request_.cast_on_rows;
    if (row == grid.rows()) times += request_.bind_off_rows;
    for (std::size_t i = 0; i < band.strips.size(); ++i) {
      const StripSpan& strip = band.strips[i];
      const auto from = std::max<std::int64_t>(strip.column, first);
      const auto to = std::min<std::int64_t>(strip.column + strip.columns, end);
      if (from >= to) continue;
      TexturePlaces& texture = out_.textures[textures[i]];
      const auto begin = cells.begin() + from;
      texture.plain = texture.plain && std::all_of(begin, cells.begin() + to, [](Cell c) { return c == Cell::knit; });
      add(texture, static_cast<double>(to - from), times, strands);
      if (row == 1) add_waste(texture, static_cast<double>(to - from), strands);
    }
  }

  static void add(TexturePlaces& texture, double places, double times, const Strands& strands) {
    for (const auto& [yarn, count] : strands) texture.strands[yarn] += places * times * count;
  }

  void add_waste(TexturePlaces& texture, double places, const Strands& strands) {
    if (request_.waste_rows == 0) return;
    add(texture, places, request_.waste_rows, request_.waste_yarn < 0 ? strands : Strands{{request_.waste_yarn, 1}});
  }

  // A crossing draws on the stitches round it: what it reaches into is no plain knit.
  void mark_crossings() {
    std::size_t at = 0;
    const auto bands = panel_.bands();
    for (const Crossing& crossing : panel_.grid().crossings()) {  // by row
      while (bands[at].row + bands[at].rows <= crossing.row) ++at;
      const auto& strips = bands[at].strips;
      auto strip = std::upper_bound(strips.begin(), strips.end(), crossing.column,
                                    [](int column, const StripSpan& each) { return column < each.column; });
      const int end = crossing.column + crossing.left + crossing.centre + crossing.right;
      for (--strip; strip != strips.end() && strip->column < end; ++strip) {
        out_.textures[index_.at(strip->texture)].plain = false;
      }
    }
  }

  const Panel& panel_;
  const YarnRequest& request_;
  Places out_;
  std::map<std::string_view, std::size_t> index_;
};

}  // namespace

Places places_of(const Panel& panel, const YarnRequest& request) {
  return Counter(panel, request).count();
}

}  // namespace latchwork::inline v0
