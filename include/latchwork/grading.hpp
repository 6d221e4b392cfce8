#pragma once

#include <cstddef>
#include <cstdint>
#include <string>
#include <vector>

#include "latchwork/export.hpp"
#include "latchwork/fit.hpp"

namespace latchwork::inline v0 {

/// One size of a family.
struct GradeSize {
  std::string name;          ///< "45 x 45", "M"; no two alike
  double width_mm = 0;       ///< the target, or the least of a range, as in FitRequest
  double width_most_mm = 0;  ///< 0: width_mm
  double height_mm = 0;
  double height_most_mm = 0;  ///< 0: height_mm
  friend bool operator==(const GradeSize&, const GradeSize&) = default;
};

/// One design in several sizes.
struct GradeRequest {
  static constexpr int max_sizes = 50;

  FitRequest design;  ///< what may vary; its targets and `most` are not read
  std::vector<GradeSize>
      sizes;  ///< 1..max_sizes, in the order in which they are written: as a rule from the smallest up
  friend bool operator==(const GradeRequest&, const GradeRequest&) = default;
};

/// What a design comes to in its sizes.
struct Grading {
  std::vector<std::string> names;  ///< of the sizes, in order
  /// What the design's groups are made of, in order: their strips' names, each once, "ground + rope"; where two groups
  /// would be told alike, with their numbers, "ground + rope (group 3)".
  std::vector<std::string> groups;
  std::vector<FitCandidate> candidates;  ///< one for each; empty when the sizes cannot be graded
  bool complete = true;  ///< false: a better choice, or where there is none the only one, may not have been looked at
  int missing = -1;      ///< the first size that nothing fits; -1: none such
  /// For the missing size as fit() has them. Where every size is fitted and none go together: a candidate for each
  /// size, in order, that would go together if one bound gave for all, with what each does not keep (nothing, where it
  /// keeps all). Each bound of FitBound is loosened alone, the tolerances of width and height together only where
  /// neither is enough; edge columns and panels no further than 1000 fits go; that choice is taken whose greatest error
  /// is least, of these the first in the order of FitBound. None where `complete` is false.
  std::vector<FitNearest> nearest{};
  bool nearest_complete = true;  ///< false: there may be nearer ones
  /// For people, where there are no candidates: which size nothing fits, or that none go together, and what would have
  /// to give: of `nearest` the first, or all of the sizes'.
  std::string message;
  /// As FitResult has them, of the design: the same for every size; then of each size that ends open, by its name.
  std::vector<Finding> findings{};
  friend bool operator==(const Grading&, const Grading&) = default;
};

/// Fits every size so that all are one design. The construction is the same: as many panels and as many edge columns in
/// each. Of any two sizes, neighbours or not, no group stands fewer times in the wider one, and as often where they are
/// as wide; rows likewise go with the heights. A range is as wide as its middle. Of all ways to choose so, the one
/// whose greatest error is least; of these that with the least sum of errors; of these fewer panels, then fewer edge
/// columns.
///
/// From each size's best candidates under each construction, 300 at first, and twice as many until what is not listed
/// cannot be part of a better choice. Where that would take more than FitRequest::max_candidates, the work of fit(), or
/// 400 million comparisons of two candidates in all (20 million a search, which only sizes can come to whose heights
/// do not go with their widths), the best choice so far is returned, and `complete` is false.
/// At most 1000 constructions times sizes. Each fit has the work of fit() to itself, and `options` watch over all.
/// @throws Error bad_argument (field "sizes", "sizes[2].name", "sizes[2].width_mm", or "design." and a field of
/// FitRequest), bad_encoding ("sizes[2].name"), no_gauge, too_large, cancelled, as fit();
/// too_large (field "design.edge_most") for more constructions.
LATCHWORK_API Grading grade(const GradeRequest& request, const Swatch& swatch, const FitOptions& options = {});

/// Numbers of several sizes as written patterns give them: "4 (6, 8)"; where all are the same, or there is one, "4";
/// nothing for none. Linear.
LATCHWORK_API std::string graded_text(const std::vector<std::int64_t>& numbers);

/// A line a size, for a terminal: panels, times of each group, edge columns, columns and rows of a panel, width and
/// height in cm with their errors in percent; below it what each group is, and that there may be a better choice where
/// the grading is not `complete`. Where there are no candidates, the message. Below either, a line for each texture
/// that is measured by another's gauge, and for each size that ends open.
LATCHWORK_API std::string grading_table(const Grading& grading);

/// The lines of a written pattern that differ between sizes: "Knit 120 (144, 168) rows". Where there are no
/// candidates, the message. Groups are told by what they are made of; what is not `complete`, measured by another's
/// gauge or open at its end as in grading_table().
LATCHWORK_API std::string grading_words(const Grading& grading);

}  // namespace latchwork::inline v0
