// What a brief's article comes to.
#include "barrier.hpp"

using namespace latchwork;
using namespace latchwork::c;

namespace {

const ArticleJob& value_of(const latchwork_article_job* article_job) {
  return given(article_job, "article_job").value;
}

const PieceWork& with_inner(const ArticleJob& article_job, std::size_t index) {
  const PieceWork& work = element(article_job.works, index, "index");
  if (work.inner == 0) refuse("index", "that of a piece whose inner panels have a plan of their own");
  return work;
}

}  // namespace

latchwork_status latchwork_brief_set_article(latchwork_brief* brief, const latchwork_article_request* request,
                                             const latchwork_article* own, latchwork_error* error) {
  return guarded(error, [&] {
    Brief& to = given(brief, "brief").value;
    ArticleRequest wanted = article_request_in(&given(request, "request"));
    std::optional<Article> article;
    if (own != nullptr) article = article_in(own);
    to.article = std::move(wanted);
    to.own_article = std::move(article);
  });
}

latchwork_status latchwork_brief_clear_article(latchwork_brief* brief, latchwork_error* error) {
  return guarded(error, [&] {
    Brief& from = given(brief, "brief").value;
    from.article.reset();
    from.own_article.reset();
  });
}

latchwork_status latchwork_brief_article(const latchwork_brief* brief, latchwork_article_request_file** out,
                                         latchwork_error* error) {
  return guarded(error, [&] {
    fill_article_request_file(out, [&] {
      const auto& article = given(brief, "brief").value.article;
      if (!article) refuse("brief", "one that names no article");
      return *article;
    });
  });
}

latchwork_status latchwork_brief_own_article(const latchwork_brief* brief, latchwork_article_file** out,
                                             latchwork_error* error) {
  return guarded(error, [&] {
    fill_article_file(out, [&] {
      const auto& article = given(brief, "brief").value.own_article;
      if (!article) refuse("brief", "one that has no article of its own");
      return *article;
    });
  });
}

latchwork_status latchwork_brief_set_substitutes(latchwork_brief* brief, const latchwork_substitute* substitutes,
                                                 size_t substitute_count, latchwork_error* error) {
  return guarded(error, [&] {
    Brief& to = given(brief, "brief").value;
    to.substitutes = substitutes_in(substitutes, substitute_count, "substitutes");
  });
}

latchwork_status latchwork_brief_substitutes(const latchwork_brief* brief, latchwork_substitute* substitutes,
                                             size_t capacity, size_t* needed, latchwork_error* error) {
  return guarded(error, [&] {
    Room room(substitutes, capacity, needed, "substitutes");
    room.take(given(brief, "brief").value.substitutes, [](const Substitute& from) {
      return latchwork_substitute{from.texture.c_str(), from.use.c_str()};
    });
  });
}

latchwork_status latchwork_job_article(const latchwork_job* job, latchwork_article_job** out, latchwork_error* error) {
  return guarded(error, [&] {
    fill(out, [&] {
      const Job& value = given(job, "job").value;
      if (!value.article && !value.missing.empty()) {
        const Finding& lack = value.missing.front();
        throw Error(ErrorCode::no_gauge, lack.place, lack.message);
      }
      if (!value.article) refuse("job", "one whose brief named an article");
      return *value.article;
    });
  });
}

latchwork_status latchwork_article_job_copy(const latchwork_article_job* article_job, latchwork_article_job** out,
                                            latchwork_error* error) {
  return guarded(error, [&] { fill(out, [&] { return value_of(article_job); }); });
}

latchwork_status latchwork_article_job_equal(const latchwork_article_job* article_job,
                                             const latchwork_article_job* other, int32_t* equal,
                                             latchwork_error* error) {
  return guarded(error, [&] { given(equal, "equal") = value_of(article_job) == given(other, "other").value ? 1 : 0; });
}

void latchwork_article_job_destroy(latchwork_article_job* article_job) {
  destroy(article_job);
}

latchwork_status latchwork_article_job_fit(const latchwork_article_job* article_job, latchwork_article_fit** out,
                                           latchwork_error* error) {
  return guarded(error, [&] { fill(out, [&] { return value_of(article_job).fit; }); });
}

latchwork_status latchwork_article_job_works(const latchwork_article_job* article_job, latchwork_piece_work* works,
                                             size_t capacity, size_t* needed, latchwork_error* error) {
  return guarded(error, [&] {
    Room room(works, capacity, needed, "works");
    room.take(value_of(article_job).works, [](const PieceWork& from) {
      return latchwork_piece_work{from.panels, from.fits ? 1 : 0, from.inner};
    });
  });
}

latchwork_status latchwork_article_job_plan(const latchwork_article_job* article_job, size_t index,
                                            latchwork_plan** out, latchwork_error* error) {
  return guarded(error, [&] { fill(out, [&] { return element(value_of(article_job).works, index, "index").plan; }); });
}

latchwork_status latchwork_article_job_verification(const latchwork_article_job* article_job, size_t index,
                                                    latchwork_verification* verification, latchwork_error* error) {
  return guarded(error, [&] {
    StructRoom(verification, "verification")
        .take(verification_out(element(value_of(article_job).works, index, "index").verification));
  });
}

latchwork_status latchwork_article_job_inner_plan(const latchwork_article_job* article_job, size_t index,
                                                  latchwork_plan** out, latchwork_error* error) {
  return guarded(error, [&] { fill(out, [&] { return with_inner(value_of(article_job), index).inner_plan; }); });
}

latchwork_status latchwork_article_job_inner_verification(const latchwork_article_job* article_job, size_t index,
                                                          latchwork_verification* verification,
                                                          latchwork_error* error) {
  return guarded(error, [&] {
    StructRoom(verification, "verification")
        .take(verification_out(with_inner(value_of(article_job), index).inner_verification));
  });
}

latchwork_status latchwork_article_job_panels(const latchwork_article_job* article_job, latchwork_fitted_panel* panels,
                                              size_t capacity, size_t* needed, latchwork_error* error) {
  return guarded(error, [&] {
    Room room(panels, capacity, needed, "panels");
    room.take(value_of(article_job).panels, [](const FittedPanel& from) {
      return latchwork_fitted_panel{from.folder.c_str(), from.pieces.c_str(), from.count, from.piece, from.panel};
    });
  });
}

latchwork_status latchwork_article_job_times(const latchwork_article_job* article_job, latchwork_work_times* times,
                                             latchwork_error* error) {
  return guarded(error, [&] { StructRoom(times, "times").take(work_times_out(value_of(article_job).times)); });
}

latchwork_status latchwork_article_job_seam_mm(const latchwork_article_job* article_job, double* seam_mm,
                                               latchwork_error* error) {
  return guarded(error, [&] { given(seam_mm, "seam_mm") = value_of(article_job).seam_mm; });
}

latchwork_status latchwork_article_job_sewing_ms(const latchwork_article_job* article_job, int64_t* sewing_ms,
                                                 latchwork_error* error) {
  return guarded(error, [&] { given(sewing_ms, "sewing_ms") = value_of(article_job).sewing_ms; });
}

latchwork_status latchwork_article_job_yarn(const latchwork_article_job* article_job, latchwork_yarn_need** out,
                                            latchwork_error* error) {
  return guarded(error, [&] {
    fill(out, [&] {
      const auto& yarn = value_of(article_job).yarn;
      if (!yarn) refuse("article_job", "one without a need of yarn");
      return *yarn;
    });
  });
}

latchwork_status latchwork_article_job_notes(const latchwork_article_job* article_job, char* text, size_t capacity,
                                             size_t* needed, latchwork_error* error) {
  return guarded(error, [&] {
    TextRoom room(text, capacity, needed, "text");
    room.take_text(lines_of(value_of(article_job).notes));
  });
}
