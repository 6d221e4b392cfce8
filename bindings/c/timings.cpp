// Timed spells, and the efforts fitted to them.
#include "barrier.hpp"

using namespace latchwork;
using namespace latchwork::c;

namespace {

std::vector<Spell> spells_in(std::span<const latchwork_spell> spells) {
  std::vector<Spell> values;
  values.reserve(spells.size());
  for (const latchwork_spell& from : spells) {
    values.push_back({.stops = from.stops,
                      .batches = from.batches,
                      .drops = from.drops,
                      .rungs_knit = from.rungs_knit,
                      .rungs_purl = from.rungs_purl,
                      .rungs_tuck = from.rungs_tuck,
                      .rungs_slip = from.rungs_slip,
                      .crossings = from.crossings,
                      .stitches_crossed = from.stitches_crossed,
                      .holds = from.holds,
                      .shapings = from.shapings,
                      .rows = from.rows,
                      .time_ms = from.time_ms,
                      .note = from.note != nullptr ? from.note : "",
                      .line = from.line});
  }
  return values;
}

latchwork_spell spell_out(const Spell& from) {
  return {from.time_ms,          from.note.c_str(), from.stops,      from.batches,    from.drops,
          from.rungs_knit,       from.rungs_purl,   from.rungs_tuck, from.rungs_slip, from.crossings,
          from.stitches_crossed, from.holds,        from.shapings,   from.rows,       from.line};
}

const EffortFit& fit_in(const latchwork_effort_fit* effort_fit) {
  return given(effort_fit, "effort_fit").value;
}

}  // namespace

const char* latchwork_effort_term_name(int32_t term) {
  if (term < 0 || term > LATCHWORK_EFFORT_TERM_ROW) return "";
  return effort_term_name(static_cast<EffortTerm>(term)).data();
}

const char* latchwork_term_state_name(int32_t state) {
  if (state < 0 || state > LATCHWORK_TERM_STATE_NO_DATA) return "";
  return term_state_name(static_cast<TermState>(state)).data();
}

latchwork_status latchwork_timings_create(const latchwork_spell* spells, size_t count, latchwork_timings** out,
                                          latchwork_error* error) {
  return guarded(error, [&] { fill(out, [&] { return Timings(spells_in(array_in(spells, count, "spells"))); }); });
}

latchwork_status latchwork_timings_copy(const latchwork_timings* timings, latchwork_timings** out,
                                        latchwork_error* error) {
  return guarded(error, [&] { fill(out, [&] { return given(timings, "timings").value; }); });
}

latchwork_status latchwork_timings_equal(const latchwork_timings* timings, const latchwork_timings* other,
                                         int32_t* equal, latchwork_error* error) {
  return guarded(
      error, [&] { given(equal, "equal") = given(timings, "timings").value == given(other, "other").value ? 1 : 0; });
}

void latchwork_timings_destroy(latchwork_timings* timings) {
  destroy(timings);
}

latchwork_status latchwork_timings_spells(const latchwork_timings* timings, latchwork_spell* spells, size_t capacity,
                                          size_t* needed, latchwork_error* error) {
  return guarded(error, [&] {
    Room room(spells, capacity, needed, "spells");
    room.take(given(timings, "timings").value.spells(), spell_out);
  });
}

latchwork_status latchwork_timings_fit_effort(const latchwork_timings* timings, const latchwork_effort* defaults,
                                              latchwork_effort_fit** out, latchwork_error* error) {
  return guarded(error, [&] {
    fill(out, [&] { return fit_effort(given(timings, "timings").value, effort_in(defaults, "defaults")); });
  });
}

latchwork_status latchwork_effort_fit_copy(const latchwork_effort_fit* effort_fit, latchwork_effort_fit** out,
                                           latchwork_error* error) {
  return guarded(error, [&] { fill(out, [&] { return fit_in(effort_fit); }); });
}

latchwork_status latchwork_effort_fit_equal(const latchwork_effort_fit* effort_fit, const latchwork_effort_fit* other,
                                            int32_t* equal, latchwork_error* error) {
  return guarded(error, [&] { given(equal, "equal") = fit_in(effort_fit) == given(other, "other").value ? 1 : 0; });
}

void latchwork_effort_fit_destroy(latchwork_effort_fit* effort_fit) {
  destroy(effort_fit);
}

latchwork_status latchwork_effort_fit_effort(const latchwork_effort_fit* effort_fit, latchwork_effort* effort,
                                             latchwork_error* error) {
  return guarded(error, [&] { StructRoom(effort, "effort").take(effort_out(fit_in(effort_fit).effort)); });
}

latchwork_status latchwork_effort_fit_terms(const latchwork_effort_fit* effort_fit, latchwork_term_fit* terms,
                                            size_t capacity, size_t* needed, latchwork_error* error) {
  return guarded(error, [&] {
    Room room(terms, capacity, needed, "terms");
    room.take(fit_in(effort_fit).terms, [](const TermFit& from) {
      return latchwork_term_fit{from.estimate_ms,
                                from.standard_error_ms.value_or(-1),
                                from.value_ms,
                                static_cast<int32_t>(from.term),
                                static_cast<int32_t>(from.state),
                                from.spells,
                                count_of(from.tied_with)};
    });
  });
}

latchwork_status latchwork_effort_fit_tied_with(const latchwork_effort_fit* effort_fit, size_t index, int32_t* terms,
                                                size_t capacity, size_t* needed, latchwork_error* error) {
  return guarded(error, [&] {
    Room room(terms, capacity, needed, "terms");
    room.take(element(fit_in(effort_fit).terms, index, "index").tied_with);
  });
}

latchwork_status latchwork_effort_fit_outlying(const latchwork_effort_fit* effort_fit, latchwork_outlying_spell* spells,
                                               size_t capacity, size_t* needed, latchwork_error* error) {
  return guarded(error, [&] {
    Room room(spells, capacity, needed, "spells");
    room.take(fit_in(effort_fit).outlying, [](const OutlyingSpell& from) {
      return latchwork_outlying_spell{from.residual_ms, from.studentized, from.spell, from.line};
    });
  });
}

latchwork_status latchwork_effort_fit_spells(const latchwork_effort_fit* effort_fit, int32_t* spells,
                                             latchwork_error* error) {
  return guarded(error, [&] { given(spells, "spells") = fit_in(effort_fit).spells; });
}

latchwork_status latchwork_effort_fit_rank(const latchwork_effort_fit* effort_fit, int32_t* rank,
                                           latchwork_error* error) {
  return guarded(error, [&] { given(rank, "rank") = fit_in(effort_fit).rank; });
}

latchwork_status latchwork_effort_fit_degrees_of_freedom(const latchwork_effort_fit* effort_fit, int32_t* degrees,
                                                         latchwork_error* error) {
  return guarded(error, [&] { given(degrees, "degrees") = fit_in(effort_fit).degrees_of_freedom; });
}

latchwork_status latchwork_effort_fit_spread_ms(const latchwork_effort_fit* effort_fit, double* spread_ms,
                                                latchwork_error* error) {
  return guarded(error, [&] { given(spread_ms, "spread_ms") = fit_in(effort_fit).spread_ms.value_or(-1); });
}

latchwork_status latchwork_effort_fit_describe(const latchwork_effort_fit* effort_fit, char* text, size_t capacity,
                                               size_t* needed, latchwork_error* error) {
  return guarded(error, [&] {
    TextRoom room(text, capacity, needed, "text");
    room.take_text(describe(fit_in(effort_fit)));
  });
}
