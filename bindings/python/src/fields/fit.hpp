#pragma once

#include "../field.hpp"
#include "latchwork/fit.hpp"

namespace latchwork::python {

template <>
struct Data<FitBound> {
  static constexpr char name[] = "FitBound";
  static constexpr char module[] = "latchwork._enums";
  static constexpr long long least = 0, most = 6;
};

template <>
struct Data<FitGroup> {
  static constexpr char name[] = "FitGroup";
  static constexpr char module[] = "latchwork._fit";
  static constexpr bool frozen = false;
  static constexpr auto fields = std::tuple{field("strips", &FitGroup::strips), field("least", &FitGroup::least),
                                            field("most", &FitGroup::most), field("as_group", &FitGroup::as_group)};
};

template <>
struct Data<FitRequest> {
  static constexpr char name[] = "FitRequest";
  static constexpr char module[] = "latchwork._fit";
  static constexpr bool frozen = false;
  static constexpr auto fields = std::tuple{field("width_mm", &FitRequest::width_mm),
                                            field("width_most_mm", &FitRequest::width_most_mm),
                                            field("height_mm", &FitRequest::height_mm),
                                            field("height_most_mm", &FitRequest::height_most_mm),
                                            field("tolerance_percent", &FitRequest::tolerance_percent),
                                            field("groups", &FitRequest::groups),
                                            field("edge", &FitRequest::edge),
                                            field("edge_least", &FitRequest::edge_least),
                                            field("edge_most", &FitRequest::edge_most),
                                            field("panels_least", &FitRequest::panels_least),
                                            field("panels_most", &FitRequest::panels_most),
                                            field("seam_stitches", &FitRequest::seam_stitches),
                                            field("rows_step", &FitRequest::rows_step),
                                            field("rows_extra", &FitRequest::rows_extra),
                                            field("vary_start", &FitRequest::vary_start),
                                            field("needles", &FitRequest::needles),
                                            field("most", &FitRequest::most),
                                            field("state", &FitRequest::state),
                                            field("substitutes", &FitRequest::substitutes),
                                            field("seam_left", &FitRequest::seam_left),
                                            field("seam_right", &FitRequest::seam_right),
                                            field("seam_bottom", &FitRequest::seam_bottom),
                                            field("seam_top", &FitRequest::seam_top)};
};

template <>
struct Data<FitCandidate> {
  static constexpr char name[] = "FitCandidate";
  static constexpr char module[] = "latchwork._fit";
  static constexpr bool frozen = true;
  static constexpr auto fields = std::tuple{field("panels", &FitCandidate::panels),
                                            field("times", &FitCandidate::times),
                                            field("edge_columns", &FitCandidate::edge_columns),
                                            field("columns", &FitCandidate::columns),
                                            field("rows", &FitCandidate::rows),
                                            field("start_row", &FitCandidate::start_row),
                                            field("imbalance_rows", &FitCandidate::imbalance_rows),
                                            field("open_ends", &FitCandidate::open_ends),
                                            field("width_mm", &FitCandidate::width_mm),
                                            field("height_mm", &FitCandidate::height_mm),
                                            field("width_error_mm", &FitCandidate::width_error_mm),
                                            field("height_error_mm", &FitCandidate::height_error_mm),
                                            field("width_error_percent", &FitCandidate::width_error_percent),
                                            field("height_error_percent", &FitCandidate::height_error_percent),
                                            field("error", &FitCandidate::error)};
};

template <>
struct Data<FitGive> {
  static constexpr char name[] = "FitGive";
  static constexpr char module[] = "latchwork._fit";
  static constexpr bool frozen = true;
  static constexpr auto fields =
      std::tuple{field("bound", &FitGive::bound), field("group", &FitGive::group), field("value", &FitGive::value),
                 field("limit", &FitGive::limit), field("words", &FitGive::words)};
};

template <>
struct Data<FitNearest> {
  static constexpr char name[] = "FitNearest";
  static constexpr char module[] = "latchwork._fit";
  static constexpr bool frozen = true;
  static constexpr auto fields =
      std::tuple{field("candidate", &FitNearest::candidate), field("gives", &FitNearest::gives)};
};

template <>
struct Data<FitResult> {
  static constexpr char name[] = "FitResult";
  static constexpr char module[] = "latchwork._fit";
  static constexpr bool frozen = true;
  static constexpr auto fields =
      std::tuple{field("candidates", &FitResult::candidates), field("nearest", &FitResult::nearest),
                 field("nearest_complete", &FitResult::nearest_complete), field("findings", &FitResult::findings)};
};

}  // namespace latchwork::python
