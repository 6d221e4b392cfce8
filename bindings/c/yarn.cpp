// Yarn numbers, and the yarn classes of gauges.
#include "barrier.hpp"

using namespace latchwork;
using namespace latchwork::c;

namespace latchwork::c {

YarnNumber yarn_number_in(const latchwork_yarn_number& yarn, const std::string& field) {
  return {enumerator(yarn.system, YarnSystem::metres_per_100g, field.c_str()), yarn.number, yarn.plies};
}

latchwork_yarn_number yarn_number_out(const YarnNumber& yarn) {
  return {yarn.number, static_cast<int32_t>(yarn.system), yarn.plies};
}

}  // namespace latchwork::c

namespace {

YarnNumber yarn_in(const latchwork_yarn_number* yarn) {
  return latchwork::c::yarn_number_in(given(yarn, "yarn"), "system");
}
YarnSystem system_in(int32_t system) {
  return enumerator(system, YarnSystem::metres_per_100g, "system");
}

// The names are literals, since the list goes when the call returns.
latchwork_yarn_category category_out(const YarnCategory& from) {
  static constexpr const char* names[] = {"Lace",   "Super fine", "Fine",        "Light",
                                          "Medium", "Bulky",      "Super bulky", "Jumbo"};
  return {names[from.number], from.least_needle_mm, from.most_needle_mm,
          from.number,        from.least_stitches,  from.most_stitches};
}

}  // namespace

latchwork_status latchwork_read_yarn_number(const char* text, size_t size, const char* field,
                                            latchwork_yarn_number* yarn, latchwork_error* error) {
  return guarded(error, [&] {
    latchwork_yarn_number& to = given(yarn, "yarn");
    to = yarn_number_out(read_yarn_number(text_in(text, size), field == nullptr ? "" : field));
  });
}

latchwork_status latchwork_yarn_number_text(const latchwork_yarn_number* yarn, char* text, size_t capacity,
                                            size_t* needed, latchwork_error* error) {
  return guarded(error, [&] {
    TextRoom room(text, capacity, needed, "text");
    room.take_text(yarn_number_text(yarn_in(yarn)));
  });
}

latchwork_status latchwork_yarn_tex(const latchwork_yarn_number* yarn, double* tex, latchwork_error* error) {
  return guarded(error, [&] { given(tex, "tex") = yarn_tex(yarn_in(yarn)); });
}

latchwork_status latchwork_yarn_number_in(const latchwork_yarn_number* yarn, int32_t system,
                                          latchwork_yarn_number* converted, latchwork_error* error) {
  return guarded(error, [&] {
    given(converted, "converted") = yarn_number_out(latchwork::yarn_number_in(yarn_in(yarn), system_in(system)));
  });
}

latchwork_status latchwork_yarns_together(const latchwork_yarn_number* yarns, size_t count,
                                          latchwork_yarn_number* together, latchwork_error* error) {
  return guarded(error, [&] {
    std::vector<YarnNumber> values;
    for (const latchwork_yarn_number& yarn : array_in(yarns, count, "yarns")) {
      const std::string field = "yarns[" + std::to_string(values.size()) + "].system";
      values.push_back(latchwork::c::yarn_number_in(yarn, field));
    }
    given(together, "together") = yarn_number_out(yarns_together(values));
  });
}

latchwork_status latchwork_yarn_number_of(const latchwork_length* length, const latchwork_weight* weight,
                                          int32_t system, latchwork_yarn_number* yarn, latchwork_error* error) {
  return guarded(error, [&] {
    given(yarn, "yarn") =
        yarn_number_out(yarn_number_of({given(length, "length").mm}, {given(weight, "weight").g}, system_in(system)));
  });
}

latchwork_status latchwork_yarn_weight(const latchwork_yarn_number* yarn, const latchwork_length* length,
                                       latchwork_weight* weight, latchwork_error* error) {
  return guarded(error,
                 [&] { given(weight, "weight").g = yarn_weight(yarn_in(yarn), {given(length, "length").mm}).g; });
}

latchwork_status latchwork_yarn_length(const latchwork_yarn_number* yarn, const latchwork_weight* weight,
                                       latchwork_length* length, latchwork_error* error) {
  return guarded(error,
                 [&] { given(length, "length").mm = yarn_length(yarn_in(yarn), {given(weight, "weight").g}).mm; });
}

latchwork_status latchwork_yarn_diameter_mm(const latchwork_yarn_number* yarn, double fibre_density,
                                            double* diameter_mm, latchwork_error* error) {
  return guarded(error, [&] { given(diameter_mm, "diameter_mm") = yarn_diameter_mm(yarn_in(yarn), fibre_density); });
}

latchwork_status latchwork_yarn_categories(latchwork_yarn_category* categories, size_t capacity, size_t* needed,
                                           latchwork_error* error) {
  return guarded(error, [&] {
    Room room(categories, capacity, needed, "categories");
    room.take(yarn_categories(), category_out);
  });
}

latchwork_status latchwork_yarn_categories_at(const latchwork_count_per_length* gauge,
                                              latchwork_yarn_category* categories, size_t capacity, size_t* needed,
                                              latchwork_error* error) {
  return guarded(error, [&] {
    Room room(categories, capacity, needed, "categories");
    const latchwork_count_per_length& from = given(gauge, "gauge");
    room.take(yarn_categories_at({enumerator(from.counted, Counted::rows, "counted"), from.count, from.length_mm}),
              category_out);
  });
}
