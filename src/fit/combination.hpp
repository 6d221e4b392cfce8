#pragma once

#include <cstddef>
#include <span>
#include <vector>

#include "fit/request.hpp"
#include "gauge/gauges.hpp"
#include "size/measure.hpp"

namespace latchwork::inline v0::fitting {

/// How often the groups of each variable of Ties stand in a panel, and last, how many edge columns at each side.
using Counts = std::vector<Count>;

/// Measures articles of one request, as size() measures their panels. With everything else fixed no width falls as a
/// count grows, and no height as rows grow, in doubles as in numbers: what lies between the seams only gains columns.
class Combination {
 public:
  Combination(const FitRequest& request, const Gauges& gauges);

  Count columns(const Counts& counts) const;  ///< of one panel
  Count columns_each(std::size_t dimension) const { return columns_each_[dimension]; }
  Count edge_least(Count panels) const;  ///< what a seam between panels takes in

  /// Sets what width() and height() tell of. Columns that the seams take in whole leave a width of 0.
  void measure(Count panels, const Counts& counts);
  double width() const { return width_; }
  double height(Count rows) const;
  struct Heights {
    double least = 0;
    double greatest = 0;
  };
  /// What all heights of so many rows lie between, whatever is measured.
  Heights heights(Count rows) const;
  /// Parts of work that measuring a width or a height takes.
  Count width_work() const { return width_work_; }
  Count height_work() const { return height_work_; }
  /// Rows that the seams at both ends take in.
  double seam_rows() const { return request_.seam_bottom + request_.seam_top; }

 private:
  struct Shares {
    const Gauge* gauge = nullptr;
    Counts columns;  // of it, for one of each count
  };
  struct Part {
    std::size_t share = 0;
    Count columns = 0;
  };
  struct Group {
    std::size_t variable = 0;
    Count columns = 0;  // of it, once
    std::vector<Part> parts;
  };
  /// One panel between its seams.
  struct Sewn {
    std::vector<TextureColumns> textures;  // by name, as size() takes them
    double width = 0;
  };

  void sew(Sewn& panel, const Counts& counts, double seam_left, double seam_right);
  void take_in(Sewn& panel, const Counts& counts, double seam, bool from_left) const;

  const FitRequest& request_;
  std::vector<Shares> shares_;
  std::vector<Group> groups_;
  std::size_t edge_share_ = 0;
  Counts columns_each_;
  Count width_work_ = 0;
  Count height_work_ = 0;

  Count panels_ = 1;
  Sewn outer_left_, inner_, outer_right_;
  double width_ = 0;
};

}  // namespace latchwork::inline v0::fitting
