// Things to make, and what they come to.
#include "barrier.hpp"

using namespace latchwork;
using namespace latchwork::c;

namespace latchwork::c {

void fill_article_file(latchwork_article_file** out, const std::function<Article()>& make) {
  given(out, "out") = nullptr;
  auto file = std::make_unique<latchwork_article_file>();
  file->value = make();
  file->view = article_out(file->value, file->kept);
  *out = file.release();
}

latchwork_target_piece target_piece_out(const TargetPiece& from) {
  return {from.name.c_str(),
          from.width_least_mm,
          from.width_greatest_mm,
          from.length_least_mm,
          from.length_greatest_mm,
          from.count,
          static_cast<int32_t>(from.left),
          static_cast<int32_t>(from.right),
          static_cast<int32_t>(from.lower),
          static_cast<int32_t>(from.upper)};
}

}  // namespace latchwork::c

namespace {

const Targets& value_of(const latchwork_targets* targets) {
  return given(targets, "targets").value;
}

}  // namespace

latchwork_status latchwork_article_names(char* text, size_t capacity, size_t* needed, latchwork_error* error) {
  return guarded(error, [&] {
    TextRoom room(text, capacity, needed, "text");
    room.take_text(lines_of(article_names()));
  });
}

latchwork_status latchwork_built_in_article(const char* name, latchwork_article_file** out, latchwork_error* error) {
  return guarded(error, [&] { fill_article_file(out, [&] { return built_in_article(&given(name, "name")); }); });
}

latchwork_status latchwork_read_article(const char* text, size_t size, latchwork_article_file** out,
                                        latchwork_error* error) {
  return guarded(error, [&] { fill_article_file(out, [&] { return read_article(text_in(text, size)); }); });
}

latchwork_status latchwork_article_file_copy(const latchwork_article_file* file, latchwork_article_file** out,
                                             latchwork_error* error) {
  return guarded(error, [&] { fill_article_file(out, [&] { return given(file, "file").value; }); });
}

latchwork_status latchwork_article_file_equal(const latchwork_article_file* file, const latchwork_article_file* other,
                                              int32_t* equal, latchwork_error* error) {
  return guarded(error,
                 [&] { given(equal, "equal") = given(file, "file").value == given(other, "other").value ? 1 : 0; });
}

void latchwork_article_file_destroy(latchwork_article_file* file) {
  destroy(file);
}

latchwork_status latchwork_article_file_article(const latchwork_article_file* file, latchwork_article* article,
                                                latchwork_error* error) {
  return guarded(error, [&] { StructRoom(article, "article").take(given(file, "file").view); });
}

latchwork_status latchwork_article_write(const latchwork_article* article, char* text, size_t capacity, size_t* needed,
                                         latchwork_error* error) {
  return guarded(error, [&] {
    TextRoom room(text, capacity, needed, "text");
    room.take_text(write(article_in(article)));
  });
}

latchwork_status latchwork_article_targets(const latchwork_article* article, const latchwork_article_choices* choices,
                                           latchwork_targets** out, latchwork_error* error) {
  return guarded(error, [&] { fill(out, [&] { return targets(article_in(article), article_choices_in(choices)); }); });
}

latchwork_status latchwork_targets_copy(const latchwork_targets* targets, latchwork_targets** out,
                                        latchwork_error* error) {
  return guarded(error, [&] { fill(out, [&] { return value_of(targets); }); });
}

latchwork_status latchwork_targets_equal(const latchwork_targets* targets, const latchwork_targets* other,
                                         int32_t* equal, latchwork_error* error) {
  return guarded(error, [&] { given(equal, "equal") = value_of(targets) == given(other, "other").value ? 1 : 0; });
}

void latchwork_targets_destroy(latchwork_targets* targets) {
  destroy(targets);
}

latchwork_status latchwork_targets_pieces(const latchwork_targets* targets, latchwork_target_piece* pieces,
                                          size_t capacity, size_t* needed, latchwork_error* error) {
  return guarded(error, [&] {
    Room room(pieces, capacity, needed, "pieces");
    room.take(value_of(targets).pieces, target_piece_out);
  });
}

latchwork_status latchwork_targets_shape(const latchwork_targets* targets, size_t index, latchwork_target_point* points,
                                         size_t capacity, size_t* needed, latchwork_error* error) {
  return guarded(error, [&] {
    Room room(points, capacity, needed, "points");
    room.take(element(value_of(targets).pieces, index, "index").shape, [](const TargetPoint& from) {
      return latchwork_target_point{from.height_least_mm, from.height_greatest_mm, from.width_least_mm,
                                    from.width_greatest_mm};
    });
  });
}

latchwork_status latchwork_targets_seams(const latchwork_targets* targets, latchwork_target_seam* seams,
                                         size_t capacity, size_t* needed, latchwork_error* error) {
  return guarded(error, [&] {
    Room room(seams, capacity, needed, "seams");
    room.take(value_of(targets).seams, [](const TargetSeam& from) {
      return latchwork_target_seam{from.name.c_str(), from.least_mm, from.greatest_mm, from.count};
    });
  });
}

latchwork_status latchwork_targets_filling(const latchwork_targets* targets, latchwork_named_measure* filling,
                                           size_t capacity, size_t* needed, latchwork_error* error) {
  return guarded(error, [&] {
    Room room(filling, capacity, needed, "filling");
    room.take(value_of(targets).filling, named_measure_out);
  });
}

latchwork_status latchwork_targets_cautions(const latchwork_targets* targets, latchwork_caution* cautions,
                                            size_t capacity, size_t* needed, latchwork_error* error) {
  return guarded(error, [&] {
    Room room(cautions, capacity, needed, "cautions");
    room.take(value_of(targets).cautions, caution_out);
  });
}

latchwork_status latchwork_targets_sources(const latchwork_targets* targets, char* text, size_t capacity,
                                           size_t* needed, latchwork_error* error) {
  return guarded(error, [&] {
    TextRoom room(text, capacity, needed, "text");
    room.take_text(lines_of(value_of(targets).sources));
  });
}

latchwork_status latchwork_targets_seam_least_mm(const latchwork_targets* targets, double* mm, latchwork_error* error) {
  return guarded(error, [&] { given(mm, "mm") = value_of(targets).seam_least_mm; });
}

latchwork_status latchwork_targets_seam_greatest_mm(const latchwork_targets* targets, double* mm,
                                                    latchwork_error* error) {
  return guarded(error, [&] { given(mm, "mm") = value_of(targets).seam_greatest_mm; });
}
