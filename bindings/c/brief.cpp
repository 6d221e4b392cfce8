// The main job: a brief goes in, a job comes out.
#include <memory>

#include "barrier.hpp"

using namespace latchwork;
using namespace latchwork::c;

namespace {

/// Where a texture has no gauge there is none, and the error says so of the first.
const Size& size_of(const latchwork_job* job) {
  const Job& value = given(job, "job").value;
  if (value.size) return *value.size;
  const Finding& finding = value.missing.at(0);
  throw Error(ErrorCode::no_gauge, finding.place, finding.message);
}

bool same(const Job& left, const Job& right) {
  return left.findings == right.findings && left.plan == right.plan && left.regular == right.regular &&
         left.unconditioned == right.unconditioned && left.verification == right.verification &&
         left.regular_verification == right.regular_verification && left.size == right.size &&
         left.yarn == right.yarn && left.conditions == right.conditions && left.article == right.article &&
         left.missing == right.missing;
}

}  // namespace

latchwork_status latchwork_brief_create(const latchwork_panel* panel, const latchwork_swatch* swatch,
                                        const latchwork_machine* machine, const latchwork_effort* effort,
                                        latchwork_brief** out, latchwork_error* error) {
  return guarded(error, [&] {
    fill(out, [&] {
      return Brief{given(panel, "panel").value,
                   given(swatch, "swatch").value,
                   machine_in(machine),
                   effort_in(effort),
                   {},
                   {},
                   {},
                   {}};
    });
  });
}

latchwork_status latchwork_read_brief(const char* folder, latchwork_brief** out, latchwork_error* error) {
  return guarded(error, [&] { fill(out, [&] { return read_brief(&given(folder, "folder")); }); });
}

latchwork_status latchwork_brief_copy(const latchwork_brief* brief, latchwork_brief** out, latchwork_error* error) {
  return guarded(error, [&] { fill(out, [&] { return given(brief, "brief").value; }); });
}

latchwork_status latchwork_brief_equal(const latchwork_brief* brief, const latchwork_brief* other, int32_t* equal,
                                       latchwork_error* error) {
  return guarded(error,
                 [&] { given(equal, "equal") = given(brief, "brief").value == given(other, "other").value ? 1 : 0; });
}

void latchwork_brief_destroy(latchwork_brief* brief) {
  destroy(brief);
}

latchwork_status latchwork_brief_panel(const latchwork_brief* brief, latchwork_panel** out, latchwork_error* error) {
  return guarded(error, [&] { fill(out, [&] { return given(brief, "brief").value.panel; }); });
}

latchwork_status latchwork_brief_swatch(const latchwork_brief* brief, latchwork_swatch** out, latchwork_error* error) {
  return guarded(error, [&] { fill(out, [&] { return given(brief, "brief").value.swatch; }); });
}

latchwork_status latchwork_brief_machine(const latchwork_brief* brief, latchwork_machine* machine,
                                         latchwork_error* error) {
  return guarded(error, [&] { StructRoom(machine, "machine").take(machine_out(given(brief, "brief").value.machine)); });
}

latchwork_status latchwork_brief_effort(const latchwork_brief* brief, latchwork_effort* effort,
                                        latchwork_error* error) {
  return guarded(error, [&] { StructRoom(effort, "effort").take(effort_out(given(brief, "brief").value.effort)); });
}

latchwork_status latchwork_brief_set_yarn(latchwork_brief* brief, const latchwork_yarn_request* request,
                                          latchwork_error* error) {
  return guarded(error, [&] { given(brief, "brief").value.yarn = yarn_request_in(&given(request, "request")); });
}

latchwork_status latchwork_brief_clear_yarn(latchwork_brief* brief, latchwork_error* error) {
  return guarded(error, [&] { given(brief, "brief").value.yarn.reset(); });
}

latchwork_status latchwork_brief_yarn(const latchwork_brief* brief, latchwork_yarn_file** out, latchwork_error* error) {
  return guarded(error, [&] {
    fill_yarn_file(out, [&] {
      const auto& yarn = given(brief, "brief").value.yarn;
      if (!yarn) refuse("brief", "one that names no yarn");
      return *yarn;
    });
  });
}

latchwork_status latchwork_brief_set_state(latchwork_brief* brief, int32_t state, latchwork_error* error) {
  return guarded(error, [&] {
    Brief& value = given(brief, "brief").value;
    value.state = cloth_state_in(state, "state");
  });
}

latchwork_status latchwork_brief_state(const latchwork_brief* brief, int32_t* state, latchwork_error* error) {
  return guarded(error, [&] {
    const std::optional<ClothState>& from = given(brief, "brief").value.state;
    given(state, "state") = from ? static_cast<int32_t>(*from) : LATCHWORK_CLOTH_STATE_MOST_FINISHED;
  });
}

latchwork_status latchwork_brief_set_sessions(latchwork_brief* brief, int64_t session_ms, int64_t rest_ms,
                                              latchwork_error* error) {
  return guarded(error, [&] {
    Brief& value = given(brief, "brief").value;
    static_cast<void>(sessions(Plan{}, {}, {.session_ms = session_ms, .rest_ms = rest_ms}));  // refuses wrong lengths
    value.session_ms = session_ms;
    value.rest_ms = rest_ms;
  });
}

latchwork_status latchwork_brief_session_ms(const latchwork_brief* brief, int64_t* session_ms, latchwork_error* error) {
  return guarded(error, [&] { given(session_ms, "session_ms") = given(brief, "brief").value.session_ms; });
}

latchwork_status latchwork_brief_rest_ms(const latchwork_brief* brief, int64_t* rest_ms, latchwork_error* error) {
  return guarded(error, [&] { given(rest_ms, "rest_ms") = given(brief, "brief").value.rest_ms; });
}

latchwork_status latchwork_brief_run(const latchwork_brief* brief, const latchwork_plan_options* options,
                                     latchwork_job** out, latchwork_error* error) {
  return guarded(error, [&] {
    given(out, "out") = nullptr;
    const latchwork_plan_options from = plan_options_in(options);
    Watch watch(from.progress, from.user_data);
    auto job = std::make_unique<latchwork_job>();
    job->value = run(given(brief, "brief").value, plan_options_of(from, watch));
    for (const KeptRhythm& kept : job->value.conditions.rhythms) {
      const Rhythm rhythm = kept.rhythm.value_or(Rhythm{.every = 0, .first = 0});
      job->rhythms.push_back({kept.row, kept.first_column, kept.last_column, rhythm.every, rhythm.first});
    }
    *out = job.release();
  });
}

latchwork_status latchwork_brief_fitted_brief(const latchwork_brief* brief, const latchwork_job* job, size_t index,
                                              latchwork_brief** out, latchwork_error* error) {
  return guarded(error, [&] {
    fill(out, [&] { return fitted_brief(given(brief, "brief").value, given(job, "job").value, index); });
  });
}

latchwork_status latchwork_brief_summary(const latchwork_brief* brief, const latchwork_job* job, char* text,
                                         size_t capacity, size_t* needed, latchwork_error* error) {
  return guarded(error, [&] {
    TextRoom room(text, capacity, needed, "text");
    room.take_text(summary(given(brief, "brief").value, given(job, "job").value));
  });
}

latchwork_status latchwork_brief_page_html(const latchwork_brief* brief, const latchwork_job* job, char* text,
                                           size_t capacity, size_t* needed, latchwork_error* error) {
  return guarded(error, [&] {
    TextRoom room(text, capacity, needed, "text");
    room.take_text(page_html(given(brief, "brief").value, given(job, "job").value));
  });
}

latchwork_status latchwork_brief_write_job(const latchwork_brief* brief, const latchwork_job* job, const char* folder,
                                           latchwork_error* error) {
  return guarded(error,
                 [&] { write_job(given(brief, "brief").value, given(job, "job").value, &given(folder, "folder")); });
}

latchwork_status latchwork_brief_write_brief(const latchwork_brief* brief, const char* folder, latchwork_error* error) {
  return guarded(error, [&] { write_brief(given(brief, "brief").value, &given(folder, "folder")); });
}

latchwork_status latchwork_job_copy(const latchwork_job* job, latchwork_job** out, latchwork_error* error) {
  return guarded(error, [&] {
    given(out, "out") = nullptr;
    *out = new latchwork_job(given(job, "job"));
  });
}

latchwork_status latchwork_job_equal(const latchwork_job* job, const latchwork_job* other, int32_t* equal,
                                     latchwork_error* error) {
  return guarded(error,
                 [&] { given(equal, "equal") = same(given(job, "job").value, given(other, "other").value) ? 1 : 0; });
}

void latchwork_job_destroy(latchwork_job* job) {
  destroy(job);
}

latchwork_status latchwork_job_findings(const latchwork_job* job, latchwork_findings** out, latchwork_error* error) {
  return guarded(error, [&] { fill(out, [&] { return given(job, "job").value.findings; }); });
}

latchwork_status latchwork_job_missing(const latchwork_job* job, latchwork_findings** out, latchwork_error* error) {
  return guarded(error, [&] { fill(out, [&] { return given(job, "job").value.missing; }); });
}

latchwork_status latchwork_job_plan(const latchwork_job* job, latchwork_plan** out, latchwork_error* error) {
  return guarded(error, [&] { fill(out, [&] { return given(job, "job").value.plan; }); });
}

latchwork_status latchwork_job_conditions(const latchwork_job* job, latchwork_conditions* conditions,
                                          latchwork_error* error) {
  return guarded(error, [&] {
    StructRoom room(conditions, "conditions");
    const Conditions& from = given(job, "job").value.conditions;
    latchwork_conditions to = LATCHWORK_CONDITIONS_INIT;
    to.carriage_right_only = from.carriage_right_only ? 1 : 0;
    to.rows_apart = from.rows_apart;
    to.max_depth = from.max_depth;
    to.max_kinds = from.max_kinds;
    to.forced_exempt = from.forced_exempt ? 1 : 0;
    to.rhythms = job->rhythms.data();
    to.rhythms_count = job->rhythms.size();
    to.closed_rows = from.closed_rows.data();
    to.closed_rows_count = from.closed_rows.size();
    room.take(to);
  });
}

latchwork_status latchwork_job_regular(const latchwork_job* job, latchwork_plan** out, latchwork_error* error) {
  return guarded(error, [&] { fill(out, [&] { return given(job, "job").value.regular; }); });
}

latchwork_status latchwork_job_unconditioned(const latchwork_job* job, latchwork_plan** out, latchwork_error* error) {
  return guarded(error, [&] { fill(out, [&] { return given(job, "job").value.unconditioned; }); });
}

latchwork_status latchwork_job_verification(const latchwork_job* job, latchwork_verification* verification,
                                            latchwork_error* error) {
  return guarded(error, [&] {
    StructRoom(verification, "verification").take(verification_out(given(job, "job").value.verification));
  });
}

latchwork_status latchwork_job_regular_verification(const latchwork_job* job, latchwork_verification* verification,
                                                    latchwork_error* error) {
  return guarded(error, [&] {
    StructRoom(verification, "verification").take(verification_out(given(job, "job").value.regular_verification));
  });
}

latchwork_status latchwork_job_yarn(const latchwork_job* job, latchwork_yarn_need** out, latchwork_error* error) {
  return guarded(error, [&] {
    fill(out, [&] {
      const auto& yarn = given(job, "job").value.yarn;
      if (!yarn) refuse("job", "one whose brief named no yarn");
      return *yarn;
    });
  });
}

latchwork_status latchwork_job_size(const latchwork_job* job, latchwork_size* size, latchwork_error* error) {
  return guarded(error, [&] { StructRoom(size, "size").take(size_out(size_of(job))); });
}

latchwork_status latchwork_job_size_strips(const latchwork_job* job, latchwork_strip_size* strips, size_t capacity,
                                           size_t* needed, latchwork_error* error) {
  return guarded(error, [&] {
    Room room(strips, capacity, needed, "strips");
    room.take(strip_sizes_out(size_of(job)));
  });
}

latchwork_status latchwork_job_size_findings(const latchwork_job* job, latchwork_findings** out,
                                             latchwork_error* error) {
  return guarded(error, [&] { fill(out, [&] { return size_of(job).findings; }); });
}
