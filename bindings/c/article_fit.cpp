// From an article to panels that make it.
#include <memory>

#include "barrier.hpp"

using namespace latchwork;
using namespace latchwork::c;

namespace {

EdgeUse use_in(int32_t use, const char* field) {
  return enumerator(use, EdgeUse::closure, field);
}

TargetPiece piece_in(const latchwork_target_piece* piece, const latchwork_target_point* shape, size_t shape_count) {
  const latchwork_target_piece& from = given(piece, "piece");
  TargetPiece to;
  to.name = text_or_none(from.name);
  to.count = from.count;
  to.width_least_mm = from.width_least_mm;
  to.width_greatest_mm = from.width_greatest_mm;
  to.length_least_mm = from.length_least_mm;
  to.length_greatest_mm = from.length_greatest_mm;
  to.left = use_in(from.left, "piece.left");
  to.right = use_in(from.right, "piece.right");
  to.lower = use_in(from.lower, "piece.lower");
  to.upper = use_in(from.upper, "piece.upper");
  for (const latchwork_target_point& point : array_in(shape, shape_count, "shape")) {
    to.shape.push_back(
        {point.height_least_mm, point.height_greatest_mm, point.width_least_mm, point.width_greatest_mm});
  }
  return to;
}

const ArticleFit& value_of(const latchwork_article_fit* article_fit) {
  return given(article_fit, "article_fit").value;
}

}  // namespace

namespace latchwork::c {

ArticleRequest article_request_in(const latchwork_article_request* request) {
  const latchwork_article_request from =
      struct_in(request, latchwork_article_request LATCHWORK_ARTICLE_REQUEST_INIT, "request");
  ArticleRequest to;
  to.article = text_or_none(from.article);
  if (from.choices != nullptr) to.choices = article_choices_in(from.choices);
  to.made = texts_in(from.made, from.made_count, "made");
  for (const latchwork_strip_run& run : array_in(from.groups, from.group_count, "groups")) {
    const std::string field = "groups[" + std::to_string(to.groups.size()) + "]";
    to.groups.push_back({run.first, run.last, run.least, run.most, as_group_in(run.tied, run.as_group, field)});
  }
  to.edge = from.edge;
  to.seam_ms_per_m = from.seam_ms_per_m;
  if (from.design != nullptr) to.design = fit_request_in(from.design, "design");
  to.design.groups.clear();  // neither these nor the edge nor targets are read
  to.design.edge.reset();
  to.design.width_mm = to.design.width_most_mm = to.design.height_mm = to.design.height_most_mm = 0;
  return to;
}

void fill_article_request_file(latchwork_article_request_file** out, const std::function<ArticleRequest()>& make) {
  given(out, "out") = nullptr;
  auto file = std::make_unique<latchwork_article_request_file>();
  file->value = make();
  const ArticleRequest& from = file->value;
  for (const NamedMeasure& measure : from.choices.measures) file->measures.push_back(named_measure_out(measure));
  for (const NamedCount& count : from.choices.counts) file->counts.push_back({count.name.c_str(), count.count});
  for (const std::string& name : from.made) file->made.push_back(name.c_str());
  for (const StripRun& run : from.groups) {
    const bool tied = run.as_group >= 0;
    file->groups.push_back({run.first, run.last, run.least, run.most, tied ? 1 : 0, tied ? run.as_group : 0});
  }
  for (const Substitute& each : from.design.substitutes) {
    file->substitutes.push_back({each.texture.c_str(), each.use.c_str()});
  }
  file->choices.list = from.choices.list.c_str();
  file->choices.size = from.choices.size.c_str();
  file->choices.rule = from.choices.rule.c_str();
  file->choices.closure = from.choices.closure.c_str();
  file->choices.measures = file->measures.data();
  file->choices.measure_count = file->measures.size();
  file->choices.counts = file->counts.data();
  file->choices.count_count = file->counts.size();
  file->choices.measures_of_filling = from.choices.measures_of_filling ? 1 : 0;
  file->design = fit_request_out(from.design);
  file->design.substitutes = file->substitutes.data();
  file->design.substitute_count = file->substitutes.size();
  file->view.edge = from.edge;
  file->view.seam_ms_per_m = from.seam_ms_per_m;
  file->view.article = from.article.c_str();
  file->view.choices = &file->choices;
  file->view.made = file->made.data();
  file->view.made_count = file->made.size();
  file->view.groups = file->groups.data();
  file->view.group_count = file->groups.size();
  file->view.design = &file->design;
  *out = file.release();
}

}  // namespace latchwork::c

latchwork_status latchwork_piece_request(const latchwork_target_piece* piece, const latchwork_target_point* shape,
                                         size_t shape_count, const latchwork_fit_request* design,
                                         latchwork_fit_request* request, latchwork_error* error) {
  return guarded(error, [&] {
    StructRoom room(request, "request");
    const latchwork_fit_request from = struct_in(design, fit_request_out({}), "design");
    // What a design points at is neither read nor copied here.
    FitRequest bare;
    bare.seam_left = from.seam_left;
    bare.seam_right = from.seam_right;
    bare.seam_bottom = from.seam_bottom;
    bare.seam_top = from.seam_top;
    const FitRequest made = piece_request(piece_in(piece, shape, shape_count), bare);
    latchwork_fit_request to = from;
    to.struct_size = sizeof to;
    to.width_mm = made.width_mm;
    to.width_most_mm = made.width_most_mm;
    to.height_mm = made.height_mm;
    to.height_most_mm = made.height_most_mm;
    to.seam_left = made.seam_left;
    to.seam_right = made.seam_right;
    to.seam_bottom = made.seam_bottom;
    to.seam_top = made.seam_top;
    room.take(to);
  });
}

latchwork_status latchwork_fit_piece(const latchwork_target_piece* piece, const latchwork_target_point* shape,
                                     size_t shape_count, const latchwork_fit_request* design,
                                     const latchwork_swatch* swatch, const latchwork_fit_options* options,
                                     latchwork_fit_result** out, latchwork_error* error) {
  return guarded(error, [&] {
    fill(out, [&] {
      const latchwork_fit_options how = fit_options_in(options);
      Watch watch(how.progress, how.user_data);
      return fit_piece(piece_in(piece, shape, shape_count), fit_request_in(design, "design"),
                       given(swatch, "swatch").value, {watch.token(), watch.progress()});
    });
  });
}

latchwork_status latchwork_piece_outline(const latchwork_target_piece* piece, const latchwork_target_point* shape,
                                         size_t shape_count, const latchwork_panel* panel,
                                         const latchwork_swatch* swatch, const latchwork_size_options* options,
                                         int32_t step, latchwork_row_span* spans, size_t capacity, size_t* needed,
                                         latchwork_error* error) {
  return guarded(error, [&] {
    Room room(spans, capacity, needed, "spans");
    room.take(piece_outline(piece_in(piece, shape, shape_count), given(panel, "panel").value,
                            given(swatch, "swatch").value, size_options_in(options), step)
                  .rows,
              row_span_out);
  });
}

latchwork_status latchwork_fitted_piece(const latchwork_target_piece* piece, const latchwork_target_point* shape,
                                        size_t shape_count, const latchwork_fit_request* design,
                                        const latchwork_fit_candidate* candidate, const latchwork_swatch* swatch,
                                        int32_t panel, int32_t step, const latchwork_shape_options* options,
                                        latchwork_panel** out, latchwork_error* error) {
  return guarded(error, [&] {
    fill(out, [&] {
      const FitRequest from = fit_request_in(design, "design");
      return fitted_piece(piece_in(piece, shape, shape_count), from, fit_candidate_in(candidate, from),
                          given(swatch, "swatch").value, panel, step, shape_options_in(options));
    });
  });
}

latchwork_status latchwork_read_article_request(const char* text, size_t size, latchwork_article_request_file** out,
                                                latchwork_error* error) {
  return guarded(error,
                 [&] { fill_article_request_file(out, [&] { return read_article_request(text_in(text, size)); }); });
}

latchwork_status latchwork_article_request_file_copy(const latchwork_article_request_file* file,
                                                     latchwork_article_request_file** out, latchwork_error* error) {
  return guarded(error, [&] { fill_article_request_file(out, [&] { return given(file, "file").value; }); });
}

latchwork_status latchwork_article_request_file_equal(const latchwork_article_request_file* file,
                                                      const latchwork_article_request_file* other, int32_t* equal,
                                                      latchwork_error* error) {
  return guarded(error,
                 [&] { given(equal, "equal") = given(file, "file").value == given(other, "other").value ? 1 : 0; });
}

void latchwork_article_request_file_destroy(latchwork_article_request_file* file) {
  destroy(file);
}

latchwork_status latchwork_article_request_file_request(const latchwork_article_request_file* file,
                                                        latchwork_article_request* request, latchwork_error* error) {
  return guarded(error, [&] { StructRoom(request, "request").take(given(file, "file").view); });
}

latchwork_status latchwork_article_request_write(const latchwork_article_request* request, char* text, size_t capacity,
                                                 size_t* needed, latchwork_error* error) {
  return guarded(error, [&] {
    TextRoom room(text, capacity, needed, "text");
    room.take_text(write(article_request_in(request)));
  });
}

latchwork_status latchwork_fit_article(const latchwork_article* article, const latchwork_article_request* request,
                                       const latchwork_panel* panel, const latchwork_swatch* swatch,
                                       const latchwork_fit_options* options, latchwork_article_fit** out,
                                       latchwork_error* error) {
  return guarded(error, [&] {
    fill(out, [&] {
      const latchwork_fit_options how = fit_options_in(options);
      Watch watch(how.progress, how.user_data);
      return fit_article(article_in(article), article_request_in(request), given(panel, "panel").value,
                         given(swatch, "swatch").value, {watch.token(), watch.progress()});
    });
  });
}

latchwork_status latchwork_article_fit_copy(const latchwork_article_fit* article_fit, latchwork_article_fit** out,
                                            latchwork_error* error) {
  return guarded(error, [&] { fill(out, [&] { return value_of(article_fit); }); });
}

latchwork_status latchwork_article_fit_equal(const latchwork_article_fit* article_fit,
                                             const latchwork_article_fit* other, int32_t* equal,
                                             latchwork_error* error) {
  return guarded(error, [&] { given(equal, "equal") = value_of(article_fit) == given(other, "other").value ? 1 : 0; });
}

void latchwork_article_fit_destroy(latchwork_article_fit* article_fit) {
  destroy(article_fit);
}

latchwork_status latchwork_article_fit_targets(const latchwork_article_fit* article_fit, latchwork_targets** out,
                                               latchwork_error* error) {
  return guarded(error, [&] { fill(out, [&] { return value_of(article_fit).targets; }); });
}

latchwork_status latchwork_article_fit_pieces(const latchwork_article_fit* article_fit, latchwork_piece_fit* pieces,
                                              size_t capacity, size_t* needed, latchwork_error* error) {
  return guarded(error, [&] {
    Room room(pieces, capacity, needed, "pieces");
    room.take(value_of(article_fit).pieces, [](const PieceFit& from) {
      return latchwork_piece_fit{target_piece_out(from.target), fit_candidate_out(from.as_it_stands)};
    });
  });
}

latchwork_status latchwork_article_fit_result(const latchwork_article_fit* article_fit, size_t index,
                                              latchwork_fit_result** out, latchwork_error* error) {
  return guarded(error, [&] { fill(out, [&] { return element(value_of(article_fit).pieces, index, "index").fit; }); });
}

latchwork_status latchwork_article_fit_fitted(const latchwork_article_fit* article_fit, size_t index,
                                              const latchwork_article_request* request, const latchwork_panel* panel,
                                              const latchwork_fit_candidate* candidate, int32_t panel_index,
                                              latchwork_panel** out, latchwork_error* error) {
  return guarded(error, [&] {
    fill(out, [&] {
      const TargetPiece& target = element(value_of(article_fit).pieces, index, "index").target;
      const FitRequest wanted =
          piece_request(target, panel_design(article_request_in(request), given(panel, "panel").value));
      return fitted(wanted, fit_candidate_in(candidate, wanted), panel_index);
    });
  });
}

latchwork_status latchwork_article_fit_message(const latchwork_article_fit* article_fit, char* text, size_t capacity,
                                               size_t* needed, latchwork_error* error) {
  return guarded(error, [&] {
    TextRoom room(text, capacity, needed, "text");
    room.take_text(value_of(article_fit).message);
  });
}
