#include "barrier.hpp"

using namespace latchwork;
using namespace latchwork::c;

namespace latchwork::c {

latchwork_finding finding_out(const Finding& finding) {
  latchwork_finding to = LATCHWORK_FINDING_INIT;
  to.code = static_cast<int32_t>(finding.code);
  to.severity = static_cast<int32_t>(finding.severity);
  to.row = finding.place.row;
  to.column = finding.place.column;
  to.last_row = finding.last_row;
  to.last_column = finding.last_column;
  to.line = finding.place.line;
  to.value = finding.value;
  to.limit = finding.limit;
  cut(to.field, finding.place.field);
  cut(to.message, finding.message);
  cut(to.suggestion, finding.suggestion);
  return to;
}

}  // namespace latchwork::c

const char* latchwork_finding_name(int32_t code) {
  const std::string_view name = finding_name(static_cast<FindingCode>(code));
  return name.empty() ? "" : name.data();
}

latchwork_status latchwork_grid_findings(const latchwork_grid* grid, const latchwork_machine* machine,
                                         latchwork_findings** out, latchwork_error* error) {
  return guarded(error, [&] { fill(out, [&] { return findings(given(grid, "grid").value, machine_in(machine)); }); });
}

latchwork_status latchwork_findings_copy(const latchwork_findings* findings, latchwork_findings** out,
                                         latchwork_error* error) {
  return guarded(error, [&] { fill(out, [&] { return given(findings, "findings").value; }); });
}

latchwork_status latchwork_findings_equal(const latchwork_findings* findings, const latchwork_findings* other,
                                          int32_t* equal, latchwork_error* error) {
  return guarded(
      error, [&] { given(equal, "equal") = given(findings, "findings").value == given(other, "other").value ? 1 : 0; });
}

void latchwork_findings_destroy(latchwork_findings* findings) {
  destroy(findings);
}

latchwork_status latchwork_findings_count(const latchwork_findings* findings, size_t* count, latchwork_error* error) {
  return guarded(error, [&] { given(count, "count") = given(findings, "findings").value.size(); });
}

latchwork_status latchwork_findings_get(const latchwork_findings* findings, size_t index, latchwork_finding* finding,
                                        latchwork_error* error) {
  return guarded(error, [&] {
    StructRoom room(finding, "finding");
    room.take(finding_out(element(given(findings, "findings").value, index, "index")));
  });
}

latchwork_status latchwork_findings_message(const latchwork_findings* findings, size_t index, char* text,
                                            size_t capacity, size_t* needed, latchwork_error* error) {
  return guarded(error, [&] {
    TextRoom room(text, capacity, needed, "text");
    room.take_text(element(given(findings, "findings").value, index, "index").message);
  });
}

latchwork_status latchwork_findings_suggestion(const latchwork_findings* findings, size_t index, char* text,
                                               size_t capacity, size_t* needed, latchwork_error* error) {
  return guarded(error, [&] {
    TextRoom room(text, capacity, needed, "text");
    room.take_text(element(given(findings, "findings").value, index, "index").suggestion);
  });
}
