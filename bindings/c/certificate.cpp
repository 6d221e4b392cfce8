// Certificates: how they are made and checked, and everything that is in them.
#include "barrier.hpp"

using namespace latchwork;
using namespace latchwork::c;

namespace {

const WaleClass& class_of(const latchwork_certificate* certificate, std::size_t index) {
  return element(given(certificate, "certificate").value.classes, index, "index");
}

latchwork_branch branch_out(const Branch& branch) {
  return {branch.row, branch.below, branch.stop ? 1 : 0, static_cast<int32_t>(branch.end), branch.by};
}

}  // namespace

latchwork_status latchwork_grid_certify(const latchwork_grid* grid, const latchwork_machine* machine,
                                        const latchwork_effort* effort, int64_t total_ms,
                                        const latchwork_plan_options* options, latchwork_certificate** out,
                                        latchwork_error* error) {
  return guarded(error, [&] {
    fill(out, [&] {
      const latchwork_plan_options from = plan_options_in(options);
      Watch watch(from.progress, from.user_data);
      return certify(given(grid, "grid").value, machine_in(machine), effort_in(effort), total_ms,
                     plan_options_of(from, watch));
    });
  });
}

latchwork_status latchwork_grid_check_certificate(const latchwork_grid* grid, const latchwork_machine* machine,
                                                  const latchwork_effort* effort,
                                                  const latchwork_certificate* certificate,
                                                  const latchwork_watch_options* options,
                                                  latchwork_certificate_check* check, latchwork_error* error) {
  return guarded(error, [&] {
    StructRoom room(check, "check");
    const latchwork_watch_options how = watch_options_in(options);
    Watch watch(how.progress, how.user_data);
    const CertificateCheck found =
        check_certificate(given(grid, "grid").value, machine_in(machine), effort_in(effort),
                          given(certificate, "certificate").value, {watch.token(), watch.progress()});
    latchwork_certificate_check to = LATCHWORK_CERTIFICATE_CHECK_INIT;
    to.holds = found.holds ? 1 : 0;
    to.bound_ms = found.bound_ms;
    to.row = found.place.row;
    to.column = found.place.column;
    cut(to.field, found.place.field);
    cut(to.message, found.message);
    room.take(to);
  });
}

latchwork_status latchwork_certificate_copy(const latchwork_certificate* certificate, latchwork_certificate** out,
                                            latchwork_error* error) {
  return guarded(error, [&] { fill(out, [&] { return given(certificate, "certificate").value; }); });
}

latchwork_status latchwork_certificate_equal(const latchwork_certificate* certificate,
                                             const latchwork_certificate* other, int32_t* equal,
                                             latchwork_error* error) {
  return guarded(error, [&] {
    given(equal, "equal") = given(certificate, "certificate").value == given(other, "other").value ? 1 : 0;
  });
}

void latchwork_certificate_destroy(latchwork_certificate* certificate) {
  destroy(certificate);
}

latchwork_status latchwork_certificate_rows(const latchwork_certificate* certificate, int32_t* rows,
                                            latchwork_error* error) {
  return guarded(error, [&] { given(rows, "rows") = given(certificate, "certificate").value.rows; });
}

latchwork_status latchwork_certificate_columns(const latchwork_certificate* certificate, int32_t* columns,
                                               latchwork_error* error) {
  return guarded(error, [&] { given(columns, "columns") = given(certificate, "certificate").value.columns; });
}

latchwork_status latchwork_certificate_bound_ms(const latchwork_certificate* certificate, int64_t* ms,
                                                latchwork_error* error) {
  return guarded(error, [&] { given(ms, "ms") = given(certificate, "certificate").value.bound_ms; });
}

latchwork_status latchwork_certificate_unit(const latchwork_certificate* certificate, int64_t* unit,
                                            latchwork_error* error) {
  return guarded(error, [&] { given(unit, "unit") = given(certificate, "certificate").value.unit; });
}

latchwork_status latchwork_certificate_forced(const latchwork_certificate* certificate, int32_t* rows, size_t capacity,
                                              size_t* needed, latchwork_error* error) {
  return guarded(error, [&] {
    Room room(rows, capacity, needed, "rows");
    room.take(given(certificate, "certificate").value.forced);
  });
}

latchwork_status latchwork_certificate_classes(const latchwork_certificate* certificate, latchwork_wale_class* classes,
                                               size_t capacity, size_t* needed, latchwork_error* error) {
  return guarded(error, [&] {
    Room room(classes, capacity, needed, "classes");
    room.take(given(certificate, "certificate").value.classes, [](const WaleClass& one) {
      return latchwork_wale_class{count_of(one.wales), count_of(one.prices), one.least};
    });
  });
}

latchwork_status latchwork_certificate_wales(const latchwork_certificate* certificate, size_t index, int32_t* wales,
                                             size_t capacity, size_t* needed, latchwork_error* error) {
  return guarded(error, [&] {
    Room room(wales, capacity, needed, "wales");
    room.take(class_of(certificate, index).wales);
  });
}

latchwork_status latchwork_certificate_prices(const latchwork_certificate* certificate, size_t index,
                                              latchwork_stop_price* prices, size_t capacity, size_t* needed,
                                              latchwork_error* error) {
  return guarded(error, [&] {
    Room room(prices, capacity, needed, "prices");
    room.take(class_of(certificate, index).prices, [](const StopPrice& price) {
      return latchwork_stop_price{price.row, price.price};
    });
  });
}

latchwork_status latchwork_certificate_stretches(const latchwork_certificate* certificate, latchwork_stretch* stretches,
                                                 size_t capacity, size_t* needed, latchwork_error* error) {
  return guarded(error, [&] {
    Room room(stretches, capacity, needed, "stretches");
    room.take(given(certificate, "certificate").value.stretches, [](const Stretch& stretch) {
      return latchwork_stretch{stretch.row, count_of(stretch.branches), stretch.gain};
    });
  });
}

latchwork_status latchwork_certificate_stretch_branches(const latchwork_certificate* certificate, size_t index,
                                                        latchwork_branch* branches, size_t capacity, size_t* needed,
                                                        latchwork_error* error) {
  return guarded(error, [&] {
    Room room(branches, capacity, needed, "branches");
    room.take(element(given(certificate, "certificate").value.stretches, index, "index").branches, branch_out);
  });
}

latchwork_status latchwork_certificate_branches(const latchwork_certificate* certificate, latchwork_branch* branches,
                                                size_t capacity, size_t* needed, latchwork_error* error) {
  return guarded(error, [&] {
    Room room(branches, capacity, needed, "branches");
    room.take(given(certificate, "certificate").value.branches, branch_out);
  });
}
