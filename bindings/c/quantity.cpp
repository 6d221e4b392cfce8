// Lengths, weights, durations and counts per length, from text and back.
#include "barrier.hpp"

using namespace latchwork;
using namespace latchwork::c;

namespace {

std::string_view field_in(const char* field) {
  return field == nullptr ? std::string_view() : std::string_view(field);
}
Length length_from(const latchwork_length* length) {
  return {given(length, "length").mm};
}
Weight weight_from(const latchwork_weight* weight) {
  return {given(weight, "weight").g};
}
CountPerLength density_from(const latchwork_count_per_length* density) {
  const latchwork_count_per_length& from = given(density, "density");
  return {enumerator(from.counted, Counted::rows, "counted"), from.count, from.length_mm};
}
LengthUnit length_unit_in(int32_t unit) {
  return enumerator(unit, LengthUnit::yard, "unit");
}
WeightUnit weight_unit_in(int32_t unit) {
  return enumerator(unit, WeightUnit::grain, "unit");
}

}  // namespace

latchwork_status latchwork_read_length(const char* text, size_t size, const char* field, latchwork_length* length,
                                       latchwork_error* error) {
  return guarded(error, [&] { given(length, "length").mm = read_length(text_in(text, size), field_in(field)).mm; });
}

latchwork_status latchwork_read_weight(const char* text, size_t size, const char* field, latchwork_weight* weight,
                                       latchwork_error* error) {
  return guarded(error, [&] { given(weight, "weight").g = read_weight(text_in(text, size), field_in(field)).g; });
}

latchwork_status latchwork_read_duration(const char* text, size_t size, const char* field, latchwork_duration* duration,
                                         latchwork_error* error) {
  return guarded(error,
                 [&] { given(duration, "duration").ms = read_duration(text_in(text, size), field_in(field)).ms; });
}

latchwork_status latchwork_read_count_per_length(const char* text, size_t size, const char* field,
                                                 latchwork_count_per_length* density, latchwork_error* error) {
  return guarded(error, [&] {
    latchwork_count_per_length& to = given(density, "density");
    const CountPerLength from = read_count_per_length(text_in(text, size), field_in(field));
    to = {from.count, from.length_mm, static_cast<int32_t>(from.counted)};
  });
}

latchwork_status latchwork_length_text(const latchwork_length* length, int32_t unit, char* text, size_t capacity,
                                       size_t* needed, latchwork_error* error) {
  return guarded(error, [&] {
    TextRoom room(text, capacity, needed, "text");
    room.take_text(length_text(length_from(length), length_unit_in(unit)));
  });
}

latchwork_status latchwork_weight_text(const latchwork_weight* weight, int32_t unit, char* text, size_t capacity,
                                       size_t* needed, latchwork_error* error) {
  return guarded(error, [&] {
    TextRoom room(text, capacity, needed, "text");
    room.take_text(weight_text(weight_from(weight), weight_unit_in(unit)));
  });
}

latchwork_status latchwork_duration_text(const latchwork_duration* duration, char* text, size_t capacity,
                                         size_t* needed, latchwork_error* error) {
  return guarded(error, [&] {
    TextRoom room(text, capacity, needed, "text");
    room.take_text(duration_text({given(duration, "duration").ms}));
  });
}

latchwork_status latchwork_rounded_duration_text(const latchwork_duration* duration, char* text, size_t capacity,
                                                 size_t* needed, latchwork_error* error) {
  return guarded(error, [&] {
    TextRoom room(text, capacity, needed, "text");
    room.take_text(rounded_duration_text({given(duration, "duration").ms}));
  });
}

latchwork_status latchwork_count_per_length_text(const latchwork_count_per_length* density, int32_t unit, char* text,
                                                 size_t capacity, size_t* needed, latchwork_error* error) {
  return guarded(error, [&] {
    TextRoom room(text, capacity, needed, "text");
    room.take_text(count_per_length_text(density_from(density), length_unit_in(unit)));
  });
}

latchwork_status latchwork_length_of(double value, int32_t unit, latchwork_length* length, latchwork_error* error) {
  return guarded(error, [&] { given(length, "length").mm = length_of(value, length_unit_in(unit)).mm; });
}

latchwork_status latchwork_length_in(const latchwork_length* length, int32_t unit, double* value,
                                     latchwork_error* error) {
  return guarded(error, [&] { given(value, "value") = length_in(length_from(length), length_unit_in(unit)); });
}

latchwork_status latchwork_weight_of(double value, int32_t unit, latchwork_weight* weight, latchwork_error* error) {
  return guarded(error, [&] { given(weight, "weight").g = weight_of(value, weight_unit_in(unit)).g; });
}

latchwork_status latchwork_weight_in(const latchwork_weight* weight, int32_t unit, double* value,
                                     latchwork_error* error) {
  return guarded(error, [&] { given(value, "value") = weight_in(weight_from(weight), weight_unit_in(unit)); });
}

latchwork_status latchwork_per_10cm(const latchwork_count_per_length* density, double* value, latchwork_error* error) {
  return guarded(error, [&] { given(value, "value") = per_10cm(density_from(density)); });
}
