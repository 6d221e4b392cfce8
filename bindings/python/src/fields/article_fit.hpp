#pragma once

#include "../field.hpp"
#include "latchwork/article_fit.hpp"

namespace latchwork::python {

template <>
struct Data<StripRun> {
  static constexpr char name[] = "StripRun";
  static constexpr char module[] = "latchwork._article_fit";
  static constexpr bool frozen = true;
  static constexpr auto fields =
      std::tuple{field("first", &StripRun::first), field("last", &StripRun::last), field("least", &StripRun::least),
                 field("most", &StripRun::most), field("as_group", &StripRun::as_group)};
};

template <>
struct Data<ArticleRequest> {
  static constexpr char name[] = "ArticleRequest";
  static constexpr char module[] = "latchwork._article_fit";
  static constexpr bool frozen = false;
  static constexpr auto fields = std::tuple{field("article", &ArticleRequest::article),
                                            field("choices", &ArticleRequest::choices),
                                            field("made", &ArticleRequest::made),
                                            field("groups", &ArticleRequest::groups),
                                            field("edge", &ArticleRequest::edge),
                                            field("design", &ArticleRequest::design),
                                            field("seam_ms_per_m", &ArticleRequest::seam_ms_per_m)};
};

template <>
struct Data<PieceFit> {
  static constexpr char name[] = "PieceFit";
  static constexpr char module[] = "latchwork._article_fit";
  static constexpr bool frozen = true;
  static constexpr auto fields = std::tuple{
      field("target", &PieceFit::target), field("as_it_stands", &PieceFit::as_it_stands), field("fit", &PieceFit::fit)};
};

template <>
struct Data<ArticleFit> {
  static constexpr char name[] = "ArticleFit";
  static constexpr char module[] = "latchwork._article_fit";
  static constexpr bool frozen = true;
  static constexpr auto fields =
      std::tuple{field("targets", &ArticleFit::targets), field("pieces", &ArticleFit::pieces),
                 field("message", &ArticleFit::message)};
};

}  // namespace latchwork::python
