#pragma once

#include "../field.hpp"
#include "latchwork/timings.hpp"

namespace latchwork::python {

template <>
struct Data<TermState> {
  static constexpr char name[] = "TermState";
  static constexpr char argument[] = "state";
  static constexpr char module[] = "latchwork._enums";
  static constexpr long long least = 0, most = 3;
};

template <>
struct Data<Spell> {
  static constexpr char name[] = "Spell";
  static constexpr char module[] = "latchwork._timings";
  static constexpr bool frozen = true;
  static constexpr auto fields = std::tuple{field("stops", &Spell::stops),
                                            field("batches", &Spell::batches),
                                            field("drops", &Spell::drops),
                                            field("rungs_knit", &Spell::rungs_knit),
                                            field("rungs_purl", &Spell::rungs_purl),
                                            field("rungs_tuck", &Spell::rungs_tuck),
                                            field("rungs_slip", &Spell::rungs_slip),
                                            field("crossings", &Spell::crossings),
                                            field("stitches_crossed", &Spell::stitches_crossed),
                                            field("holds", &Spell::holds),
                                            field("shapings", &Spell::shapings),
                                            field("rows", &Spell::rows),
                                            field("time_ms", &Spell::time_ms),
                                            field("note", &Spell::note),
                                            field("line", &Spell::line)};
};

template <>
struct Data<TermFit> {
  static constexpr char name[] = "TermFit";
  static constexpr char module[] = "latchwork._timings";
  static constexpr bool frozen = true;
  static constexpr auto fields = std::tuple{field("term", &TermFit::term),
                                            field("state", &TermFit::state),
                                            field("value_ms", &TermFit::value_ms),
                                            field("estimate_ms", &TermFit::estimate_ms),
                                            field("standard_error_ms", &TermFit::standard_error_ms),
                                            field("spells", &TermFit::spells),
                                            field("tied_with", &TermFit::tied_with)};
};

template <>
struct Data<OutlyingSpell> {
  static constexpr char name[] = "OutlyingSpell";
  static constexpr char module[] = "latchwork._timings";
  static constexpr bool frozen = true;
  static constexpr auto fields =
      std::tuple{field("spell", &OutlyingSpell::spell), field("line", &OutlyingSpell::line),
                 field("residual_ms", &OutlyingSpell::residual_ms), field("studentized", &OutlyingSpell::studentized)};
};

template <>
struct Data<EffortFit> {
  static constexpr char name[] = "EffortFit";
  static constexpr char module[] = "latchwork._timings";
  static constexpr bool frozen = true;
  static constexpr auto fields =
      std::tuple{field("effort", &EffortFit::effort),      field("terms", &EffortFit::terms),
                 field("outlying", &EffortFit::outlying),  field("spells", &EffortFit::spells),
                 field("rank", &EffortFit::rank),          field("degrees_of_freedom", &EffortFit::degrees_of_freedom),
                 field("spread_ms", &EffortFit::spread_ms)};
};

}  // namespace latchwork::python
