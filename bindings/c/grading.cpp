// One design in several sizes.
#include "barrier.hpp"

using namespace latchwork;
using namespace latchwork::c;

namespace {

const Grading& value_of(const latchwork_grading* grading) {
  return given(grading, "grading").value;
}

/// One of the texts of a grading.
template <class Make>
latchwork_status text_of(const latchwork_grading* grading, char* text, size_t capacity, size_t* needed,
                         latchwork_error* error, Make&& make) {
  return guarded(error, [&] {
    TextRoom room(text, capacity, needed, "text");
    room.take_text(make(value_of(grading)));
  });
}

}  // namespace

namespace latchwork::c {

GradeRequest grade_request_in(const latchwork_fit_request* design, const latchwork_grade_size* sizes, size_t count) {
  GradeRequest to;
  to.design = fit_request_in(design, "design");
  for (const latchwork_grade_size& from : array_in(sizes, count, "sizes")) {
    const std::string field = "sizes[" + std::to_string(to.sizes.size()) + "].name";
    to.sizes.push_back(
        {&given(from.name, field.c_str()), from.width_mm, from.width_most_mm, from.height_mm, from.height_most_mm});
  }
  return to;
}

}  // namespace latchwork::c

latchwork_status latchwork_grade(const latchwork_fit_request* design, const latchwork_grade_size* sizes, size_t count,
                                 const latchwork_swatch* swatch, const latchwork_fit_options* options,
                                 latchwork_grading** out, latchwork_error* error) {
  return guarded(error, [&] {
    fill(out, [&] {
      const GradeRequest request = grade_request_in(design, sizes, count);
      const latchwork_fit_options how = fit_options_in(options);
      Watch watch(how.progress, how.user_data);
      return grade(request, given(swatch, "swatch").value, {watch.token(), watch.progress()});
    });
  });
}

latchwork_status latchwork_grading_copy(const latchwork_grading* grading, latchwork_grading** out,
                                        latchwork_error* error) {
  return guarded(error, [&] { fill(out, [&] { return value_of(grading); }); });
}

latchwork_status latchwork_grading_equal(const latchwork_grading* grading, const latchwork_grading* other,
                                         int32_t* equal, latchwork_error* error) {
  return guarded(error, [&] { given(equal, "equal") = value_of(grading) == given(other, "other").value ? 1 : 0; });
}

void latchwork_grading_destroy(latchwork_grading* grading) {
  destroy(grading);
}

latchwork_status latchwork_grading_names(const latchwork_grading* grading, const char** names, size_t capacity,
                                         size_t* needed, latchwork_error* error) {
  return guarded(error, [&] {
    Room room(names, capacity, needed, "names");
    room.take(value_of(grading).names, [](const std::string& name) { return name.c_str(); });
  });
}

latchwork_status latchwork_grading_groups(const latchwork_grading* grading, const char** groups, size_t capacity,
                                          size_t* needed, latchwork_error* error) {
  return guarded(error, [&] {
    Room room(groups, capacity, needed, "groups");
    room.take(value_of(grading).groups, [](const std::string& group) { return group.c_str(); });
  });
}

latchwork_status latchwork_grading_candidates(const latchwork_grading* grading, latchwork_fit_candidate* candidates,
                                              size_t capacity, size_t* needed, latchwork_error* error) {
  return guarded(error, [&] {
    Room room(candidates, capacity, needed, "candidates");
    room.take(value_of(grading).candidates, fit_candidate_out);
  });
}

latchwork_status latchwork_grading_complete(const latchwork_grading* grading, int32_t* complete,
                                            latchwork_error* error) {
  return guarded(error, [&] { given(complete, "complete") = value_of(grading).complete ? 1 : 0; });
}

latchwork_status latchwork_grading_missing(const latchwork_grading* grading, int32_t* missing, latchwork_error* error) {
  return guarded(error, [&] { given(missing, "missing") = value_of(grading).missing; });
}

latchwork_status latchwork_grading_nearest(const latchwork_grading* grading, latchwork_fit_candidate* candidates,
                                           size_t capacity, size_t* needed, latchwork_error* error) {
  return guarded(error, [&] {
    Room room(candidates, capacity, needed, "candidates");
    room.take(value_of(grading).nearest, [](const FitNearest& from) { return fit_candidate_out(from.candidate); });
  });
}

latchwork_status latchwork_grading_gives(const latchwork_grading* grading, size_t index, latchwork_fit_give* gives,
                                         size_t capacity, size_t* needed, latchwork_error* error) {
  return guarded(error, [&] {
    Room room(gives, capacity, needed, "gives");
    room.take(fit_gives_out(element(value_of(grading).nearest, index, "index")));
  });
}

latchwork_status latchwork_grading_nearest_complete(const latchwork_grading* grading, int32_t* nearest_complete,
                                                    latchwork_error* error) {
  return guarded(error,
                 [&] { given(nearest_complete, "nearest_complete") = value_of(grading).nearest_complete ? 1 : 0; });
}

latchwork_status latchwork_grading_message(const latchwork_grading* grading, char* text, size_t capacity,
                                           size_t* needed, latchwork_error* error) {
  return text_of(grading, text, capacity, needed, error, [](const Grading& from) { return from.message; });
}

latchwork_status latchwork_grading_findings(const latchwork_grading* grading, latchwork_findings** out,
                                            latchwork_error* error) {
  return guarded(error, [&] { fill(out, [&] { return value_of(grading).findings; }); });
}

latchwork_status latchwork_grading_table(const latchwork_grading* grading, char* text, size_t capacity, size_t* needed,
                                         latchwork_error* error) {
  return text_of(grading, text, capacity, needed, error, grading_table);
}

latchwork_status latchwork_grading_words(const latchwork_grading* grading, char* text, size_t capacity, size_t* needed,
                                         latchwork_error* error) {
  return text_of(grading, text, capacity, needed, error, grading_words);
}

latchwork_status latchwork_graded_text(const int64_t* numbers, size_t count, char* text, size_t capacity,
                                       size_t* needed, latchwork_error* error) {
  return guarded(error, [&] {
    TextRoom room(text, capacity, needed, "text");
    const auto from = array_in(numbers, count, "numbers");
    room.take_text(graded_text({from.begin(), from.end()}));
  });
}
