#pragma once

#include <cstddef>
#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "latchwork/fit.hpp"
#include "latchwork/size.hpp"

namespace latchwork::inline v0::fitting {

using Count = std::int64_t;  // products of two sides pass int

/// Throws unless every field is in its range. @throws Error bad_argument (field).
void require_request(const FitRequest& request);
/// The same, but for targets: what panels are made of.
void require_design(const FitRequest& request);
/// The same, but for groups and the edge too.
void require_bounds(const FitRequest& request);
[[noreturn]] void refuse(std::string_view field, const std::string& message);
void require(std::string_view field, Count value, Count least, Count most);

/// A group that could stand outermost with a column that has no stitch in some row.
struct BareOutside {
  std::size_t group = 0;
  bool left = true;  ///< its first column, on the panel's left; else its last, on the right
};
/// The first such group, looked for inward from either side as far as the first that always stands; nothing: none
/// could.
std::optional<BareOutside> bare_outside(const FitRequest& request);
/// Whether every panel has a seam, which takes in edge columns.
bool is_always_sewn(const FitRequest& request);

/// Whether a seam between panels has the columns that it takes in: it takes edge columns only.
bool can_be_sewn(const FitRequest& request, Count panels);

Count columns_of(const FitGroup& group);

/// How one of a candidate's panels is measured: at the article's sides its seams take in what the request says, between
/// panels `seam_stitches` of either edge. Nothing is checked.
SizeOptions measuring_of(const FitRequest& request, int panel, int panels);

/// Tied groups stand as often as each other, so that a search has one variable for all of them.
struct Ties {
  std::vector<std::size_t> variable_of;  ///< of each group, by index
  std::vector<std::size_t> first_of;     ///< of each variable: its first group, whose least and most count
};
/// Of groups each of which is free or tied to an earlier one.
Ties ties_of(const std::vector<FitGroup>& groups);
/// Whether `as_group` of the group at `index` is none or an earlier one. @throws Error bad_argument (field).
void require_tie(std::string_view field, int as_group, std::size_t index);

/// A target in mm, and how far off it a measure is. Errors never fall on the way out from it, in doubles as in numbers.
struct Target {
  double least = 0;
  double most = 0;

  double error_mm(double mm) const { return mm < least ? mm - least : (mm > most ? mm - most : 0); }
  double nearer(double mm) const { return mm < least ? least : most; }
  double relative(double mm) const { return error_mm(mm) / nearer(mm); }
  double percent(double mm) const { return 100 * error_mm(mm) / nearer(mm); }
};
Target width_target(const FitRequest& request);
Target height_target(const FitRequest& request);

struct Range {
  Count least = 0;
  Count most = 0;
  Count count() const { return most - least + 1; }
};

/// What a search keeps to: the request's bounds, or some of them loosened.
struct Limits {
  std::optional<double> width_tolerance;  // percent
  std::optional<double> height_tolerance;
  std::vector<Range> times;  // of each variable of Ties
  Range edge;
  Range panels;
  Count rows_step = 1;
  Count rows_extra = 0;
  Count columns_most = 0;
};
Limits limits_of(const FitRequest& request);

}  // namespace latchwork::inline v0::fitting
