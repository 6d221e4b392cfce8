#pragma once

#include "../field.hpp"
#include "latchwork/fit.hpp"

namespace latchwork::python {

template <>
struct Data<FitRequest> {
  static constexpr char name[] = "FitRequest";
  static constexpr char module[] = "latchwork._data";
  static constexpr bool frozen = false;
  static constexpr auto fields = std::tuple{field("width_mm", &FitRequest::width_mm),
                                            field("height_mm", &FitRequest::height_mm),
                                            field("repeat", &FitRequest::repeat),
                                            field("closing", &FitRequest::closing),
                                            field("edge", &FitRequest::edge),
                                            field("edge_least", &FitRequest::edge_least),
                                            field("edge_most", &FitRequest::edge_most),
                                            field("repeats_least", &FitRequest::repeats_least),
                                            field("repeats_most", &FitRequest::repeats_most),
                                            field("rows_step", &FitRequest::rows_step),
                                            field("rows_extra", &FitRequest::rows_extra),
                                            field("needles", &FitRequest::needles),
                                            field("most", &FitRequest::most)};
};

template <>
struct Data<FitCandidate> {
  static constexpr char name[] = "FitCandidate";
  static constexpr char module[] = "latchwork._data";
  static constexpr bool frozen = true;
  static constexpr auto fields = std::tuple{field("repeats", &FitCandidate::repeats),
                                            field("edge_columns", &FitCandidate::edge_columns),
                                            field("columns", &FitCandidate::columns),
                                            field("rows", &FitCandidate::rows),
                                            field("width_mm", &FitCandidate::width_mm),
                                            field("height_mm", &FitCandidate::height_mm),
                                            field("width_error_mm", &FitCandidate::width_error_mm),
                                            field("height_error_mm", &FitCandidate::height_error_mm),
                                            field("error", &FitCandidate::error)};
};

}  // namespace latchwork::python
