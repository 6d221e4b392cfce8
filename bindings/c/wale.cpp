#include "barrier.hpp"

using namespace latchwork;
using namespace latchwork::c;

latchwork_status latchwork_wales_create(const latchwork_grid* grid, latchwork_wales** out, latchwork_error* error) {
  return guarded(error, [&] { fill(out, [&] { return Wales(given(grid, "grid").value); }); });
}

latchwork_status latchwork_wales_copy(const latchwork_wales* wales, latchwork_wales** out, latchwork_error* error) {
  return guarded(error, [&] { fill(out, [&] { return given(wales, "wales").value; }); });
}

latchwork_status latchwork_wales_equal(const latchwork_wales* wales, const latchwork_wales* other, int32_t* equal,
                                       latchwork_error* error) {
  return guarded(error,
                 [&] { given(equal, "equal") = given(wales, "wales").value == given(other, "other").value ? 1 : 0; });
}

void latchwork_wales_destroy(latchwork_wales* wales) {
  destroy(wales);
}

latchwork_status latchwork_wales_all(const latchwork_wales* wales, latchwork_wale* all, size_t capacity, size_t* needed,
                                     latchwork_error* error) {
  return guarded(error, [&] {
    Room room(all, capacity, needed, "all");
    room.take(given(wales, "wales").value.all(), [](const Wale& wale) {
      return latchwork_wale{wale.column, wale.row, wale.last_row()};
    });
  });
}

latchwork_status latchwork_wales_columns(const latchwork_wales* wales, size_t index, int32_t* columns, size_t capacity,
                                         size_t* needed, latchwork_error* error) {
  return guarded(error, [&] {
    Room room(columns, capacity, needed, "columns");
    room.take(element(given(wales, "wales").value.all(), index, "index").columns);
  });
}

latchwork_status latchwork_wales_at(const latchwork_wales* wales, int32_t row, int32_t column, int32_t* index,
                                    latchwork_error* error) {
  return guarded(error, [&] { given(index, "index") = given(wales, "wales").value.at(row, column); });
}
