#pragma once

#include "../field.hpp"
#include "latchwork/brief.hpp"

namespace latchwork::python {

template <>
struct Data<Brief> {
  static constexpr char name[] = "Brief";
  static constexpr char module[] = "latchwork._brief";
  static constexpr bool frozen = false;
  static constexpr auto fields = std::tuple{field("panel", &Brief::panel),
                                            field("swatch", &Brief::swatch),
                                            field("machine", &Brief::machine),
                                            field("effort", &Brief::effort),
                                            field("yarn", &Brief::yarn),
                                            field("article", &Brief::article),
                                            field("own_article", &Brief::own_article),
                                            field("substitutes", &Brief::substitutes),
                                            field("state", &Brief::state),
                                            field("session_ms", &Brief::session_ms),
                                            field("rest_ms", &Brief::rest_ms)};
};

template <>
struct Data<PieceWork> {
  static constexpr char name[] = "PieceWork";
  static constexpr char module[] = "latchwork._brief";
  static constexpr bool frozen = false;
  static constexpr auto fields = std::tuple{field("panels", &PieceWork::panels),
                                            field("fits", &PieceWork::fits),
                                            field("plan", &PieceWork::plan),
                                            field("verification", &PieceWork::verification),
                                            field("inner", &PieceWork::inner),
                                            field("inner_plan", &PieceWork::inner_plan),
                                            field("inner_verification", &PieceWork::inner_verification)};
};

template <>
struct Data<FittedPanel> {
  static constexpr char name[] = "FittedPanel";
  static constexpr char module[] = "latchwork._brief";
  static constexpr bool frozen = true;
  static constexpr auto fields = std::tuple{field("folder", &FittedPanel::folder),
                                            field("pieces", &FittedPanel::pieces), field("piece", &FittedPanel::piece),
                                            field("panel", &FittedPanel::panel), field("count", &FittedPanel::count)};
};

template <>
struct Data<ArticleJob> {
  static constexpr char name[] = "ArticleJob";
  static constexpr char module[] = "latchwork._brief";
  static constexpr bool frozen = false;
  static constexpr auto fields =
      std::tuple{field("fit", &ArticleJob::fit),         field("works", &ArticleJob::works),
                 field("panels", &ArticleJob::panels),   field("times", &ArticleJob::times),
                 field("seam_mm", &ArticleJob::seam_mm), field("sewing_ms", &ArticleJob::sewing_ms),
                 field("yarn", &ArticleJob::yarn),       field("notes", &ArticleJob::notes)};
};

template <>
struct Data<Job> {
  static constexpr char name[] = "Job";
  static constexpr char module[] = "latchwork._brief";
  static constexpr bool frozen = false;
  static constexpr auto fields = std::tuple{field("findings", &Job::findings),
                                            field("plan", &Job::plan),
                                            field("conditions", &Job::conditions),
                                            field("regular", &Job::regular),
                                            field("unconditioned", &Job::unconditioned),
                                            field("verification", &Job::verification),
                                            field("regular_verification", &Job::regular_verification),
                                            field("size", &Job::size),
                                            field("yarn", &Job::yarn),
                                            field("article", &Job::article),
                                            field("missing", &Job::missing)};
};

}  // namespace latchwork::python
