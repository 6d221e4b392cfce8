#include <algorithm>
#include <cmath>
#include <cstdint>
#include <set>
#include <string>
#include <vector>

#include "catch.hpp"
#include "latchwork/timings.hpp"
#include "random.hpp"

namespace timings_test {

using namespace latchwork;
using latchwork_test::Approx;
using latchwork_test::Random;

namespace {

constexpr int Spell::*counts[] = {&Spell::stops,      &Spell::batches,    &Spell::drops,
                                  &Spell::rungs_knit, &Spell::rungs_purl, &Spell::rungs_tuck,
                                  &Spell::rungs_slip, &Spell::crossings,  &Spell::stitches_crossed,
                                  &Spell::holds,      &Spell::shapings,   &Spell::rows};
constexpr std::int64_t Effort::*costs[] = {&Effort::stop,      &Effort::batch,     &Effort::drop,
                                           &Effort::rung_knit, &Effort::rung_purl, &Effort::rung_tuck,
                                           &Effort::rung_slip, &Effort::crossing,  &Effort::crossing_stitch,
                                           &Effort::hold,      &Effort::shaping,   &Effort::row};

std::int64_t time_of(const Spell& spell, const Effort& effort) {
  std::int64_t sum = 0;
  for (std::size_t i = 0; i < std::size(counts); ++i) sum += spell.*counts[i] * (effort.*costs[i]);
  return sum;
}

Effort any_effort(Random& random) {
  Effort out;
  for (const auto cost : costs) {
    out.*cost = random.one_in(5) ? 0 : random.one_in(3) ? random.between(1, 100'000) : random.between(1, 3'000);
  }
  return out;
}

// Counts of a spell; `most` bounds each.
Spell any_work(Random& random, int most) {
  Spell out;
  for (const auto count : counts) out.*count = random.one_in(3) ? 0 : random.between(0, most);
  out.rows += 1;
  return out;
}

// By nobody's hands: times that no costs explain.
std::vector<Spell> any_spells(Random& random) {
  std::vector<Spell> out;
  const int most = random.one_in(2) ? 3 : 40;
  std::set<int> left_out;
  for (int i = random.between(0, 8); i > 0; --i) left_out.insert(random.between(0, 11));
  for (int i = random.between(1, 20); i > 0; --i) {
    Spell spell = any_work(random, most);
    for (const int i_out : left_out) spell.*counts[i_out] = i_out == 11 ? 1 : 0;
    if (random.one_in(3)) spell.batches = spell.stops;  // ties
    if (random.one_in(3)) spell.drops = spell.rungs_knit + spell.rungs_purl;
    spell.time_ms = random.between(1, 200'000);
    out.push_back(spell);
  }
  if (random.one_in(4)) {
    for (Spell& spell : out) spell.batches = spell.stops;
  }
  return out;
}

double squares(const std::vector<Spell>& spells, const EffortFit& fit) {
  double sum = 0;
  for (const Spell& spell : spells) {
    double rest = static_cast<double>(spell.time_ms);
    for (std::size_t i = 0; i < std::size(counts); ++i) rest -= spell.*counts[i] * fit.terms[i].estimate_ms;
    sum += rest * rest;
  }
  return sum;
}

bool finite(const EffortFit& fit) {
  bool all = !fit.spread_ms || std::isfinite(*fit.spread_ms);
  for (const TermFit& term : fit.terms) {
    all = all && std::isfinite(term.estimate_ms) && term.estimate_ms >= 0 && term.value_ms >= 0 &&
          term.value_ms <= 3'600'000 && (!term.standard_error_ms || std::isfinite(*term.standard_error_ms));
  }
  for (const OutlyingSpell& one : fit.outlying) {
    all = all && std::isfinite(one.residual_ms) && std::isfinite(one.studentized);
  }
  return all;
}

}  // namespace

TEST_CASE("timings without noise give back the very costs that made them", "[timings][property]") {
  for (std::uint64_t seed = 1; seed <= 2000; ++seed) {
    CAPTURE(seed);
    Random random(seed);
    const Effort planted = any_effort(random);
    std::vector<Spell> spells;
    const int count = random.between(30, 60);
    const int most = random.one_in(3) ? 900 : 20;
    while (static_cast<int>(spells.size()) < count) {
      Spell spell = any_work(random, most);
      spell.time_ms = time_of(spell, planted);
      if (spell.time_ms >= 1 && spell.time_ms <= max_spell_ms) spells.push_back(spell);
    }
    const EffortFit fit = fit_effort(Timings(spells));
    CHECK(fit.effort == planted);
    CHECK(fit.outlying.empty());
    for (std::size_t i = 0; i < fit.terms.size(); ++i) {
      CHECK(fit.terms[i].state == (planted.*costs[i] == 0 ? TermState::at_zero : TermState::fitted));
    }
  }
}

// What the costs must fulfil to be the least under the bound (Karush, Kuhn and Tucker's conditions): no cost above 0
// wants to move, none at 0 wants to rise.
TEST_CASE("no change of the costs fits better, ties or not", "[timings][property]") {
  for (std::uint64_t seed = 1; seed <= 5000; ++seed) {
    CAPTURE(seed);
    Random random(seed);
    const std::vector<Spell> spells = any_spells(random);
    const EffortFit fit = fit_effort(Timings(spells));
    REQUIRE(finite(fit));
    CHECK(fit.rank + fit.degrees_of_freedom == fit.spells);
    double whole = 0;
    for (const Spell& spell : spells) whole += static_cast<double>(spell.time_ms) * static_cast<double>(spell.time_ms);
    for (std::size_t i = 0; i < std::size(counts); ++i) {
      double slope = 0;
      double own = 0;
      for (const Spell& spell : spells) {
        double rest = static_cast<double>(spell.time_ms);
        for (std::size_t k = 0; k < std::size(counts); ++k) rest -= spell.*counts[k] * fit.terms[k].estimate_ms;
        slope += spell.*counts[i] * rest;
        own += static_cast<double>(spell.*counts[i]) * spell.*counts[i];
      }
      if (own == 0) {
        CHECK(fit.terms[i].state == TermState::no_data);
        continue;
      }
      const double reach = slope / std::sqrt(own * whole);
      CHECK(reach < 1e-7);
      if (fit.terms[i].estimate_ms > 0) CHECK(reach > -1e-7);
    }
    if (fit.spread_ms) {
      CHECK(*fit.spread_ms * *fit.spread_ms * fit.degrees_of_freedom == Approx(squares(spells, fit)).margin(1e-3));
    }
  }
}

TEST_CASE("spells in another order give the same fit", "[timings][property]") {
  for (std::uint64_t seed = 1; seed <= 2000; ++seed) {
    CAPTURE(seed);
    Random random(seed);
    std::vector<Spell> spells = any_spells(random);
    for (std::size_t i = 0; i < spells.size(); ++i) spells[i].line = static_cast<int>(i) + 1;
    const EffortFit fit = fit_effort(Timings(spells));
    for (std::size_t i = spells.size(); i > 1; --i) {
      std::swap(spells[i - 1], spells[static_cast<std::size_t>(random.between(0, static_cast<int>(i) - 1))]);
    }
    const EffortFit again = fit_effort(Timings(spells));
    CHECK(again.rank == fit.rank);
    for (std::size_t i = 0; i < fit.terms.size(); ++i) {
      CHECK(again.terms[i].state == fit.terms[i].state);
      CHECK(again.terms[i].tied_with == fit.terms[i].tied_with);
      CHECK(again.terms[i].estimate_ms == Approx(fit.terms[i].estimate_ms).epsilon(1e-6).margin(1e-3));
    }
    std::set<int> lines;
    for (const OutlyingSpell& one : fit.outlying) lines.insert(one.line);
    std::set<int> again_lines;
    for (const OutlyingSpell& one : again.outlying) again_lines.insert(one.line);
    CHECK(again_lines == lines);
  }
}

TEST_CASE("times and counts scale as they must", "[timings][property]") {
  for (std::uint64_t seed = 1; seed <= 2000; ++seed) {
    CAPTURE(seed);
    Random random(seed);
    std::vector<Spell> spells = any_spells(random);
    const EffortFit fit = fit_effort(Timings(spells));
    const int times = random.between(2, 9);
    std::vector<Spell> longer = spells;
    for (Spell& spell : longer) spell.time_ms *= times;
    std::vector<Spell> fuller = spells;
    const std::size_t scaled = static_cast<std::size_t>(random.between(0, 11));
    for (Spell& spell : fuller) spell.*counts[scaled] *= times;
    const EffortFit longer_fit = fit_effort(Timings(longer));
    const EffortFit fuller_fit = fit_effort(Timings(fuller));
    for (std::size_t i = 0; i < fit.terms.size(); ++i) {
      CHECK(longer_fit.terms[i].state == fit.terms[i].state);
      CHECK(fuller_fit.terms[i].state == fit.terms[i].state);
      if (fit.terms[i].state != TermState::fitted) continue;
      const auto close = [](double value) { return Approx(value).epsilon(1e-7).margin(1e-4); };
      CHECK(longer_fit.terms[i].estimate_ms == close(times * fit.terms[i].estimate_ms));
      const double share = i == scaled ? times : 1;
      CHECK(fuller_fit.terms[i].estimate_ms * share == close(fit.terms[i].estimate_ms));
      if (fit.terms[i].standard_error_ms) {
        CHECK(*longer_fit.terms[i].standard_error_ms == close(times * *fit.terms[i].standard_error_ms));
        CHECK(*fuller_fit.terms[i].standard_error_ms * share == close(*fit.terms[i].standard_error_ms));
      }
    }
  }
}

TEST_CASE("the greatest counts and times there may be are fitted or refused", "[timings][property]") {
  int fitted = 0;
  int refused = 0;
  for (std::uint64_t seed = 1; seed <= 500; ++seed) {
    CAPTURE(seed);
    Random random(seed);
    std::vector<Spell> spells;
    for (int i = random.between(1, 30); i > 0; --i) {
      Spell spell;
      for (const auto count : counts)
        spell.*count = random.one_in(2) ? max_spell_count - random.between(0, 1) : random.between(0, 1);
      spell.rows += spell.rows < max_spell_count ? 1 : 0;
      spell.time_ms = random.one_in(2) ? max_spell_ms : 1;
      spells.push_back(spell);
    }
    try {
      const EffortFit fit = fit_effort(Timings(spells));
      CHECK(finite(fit));
      ++fitted;
    } catch (const Error& error) {
      CHECK(error.code() == ErrorCode::too_large);
      ++refused;
    }
  }
  CHECK(fitted > 100);
  CHECK(refused > 0);
}

TEST_CASE("of many fits to sound timings with rounded noise, about one in twenty names a spell",
          "[timings][property]") {
  int named = 0;
  for (std::uint64_t seed = 1; seed <= 2000; ++seed) {
    Random random(seed);
    std::vector<Spell> spells;
    for (int i = 0; i < 25; ++i) {
      Spell spell{.stops = random.between(1, 5), .rows = random.between(5, 30)};
      double noise = 0;  // twelve uniform numbers: near enough to normal, and the same everywhere
      for (int k = 0; k < 12; ++k) noise += static_cast<double>(random.between(-1'000, 1'000));
      spell.time_ms = 15'000 * spell.stops + 4'000 * spell.rows + static_cast<std::int64_t>(noise);
      spells.push_back(spell);
    }
    named += fit_effort(Timings(spells)).outlying.empty() ? 0 : 1;
  }
  CHECK(named > 40);
  CHECK(named < 160);
}

TEST_CASE("any timings that can be made are written and read back equal", "[timings][property]") {
  static const char* const pieces[] = {"a", ",", "\"", "\n", "\r\n", " ", "#", "\xC3\xA9", "1.5", "\t", "\xEF\xBB\xBF"};
  for (std::uint64_t seed = 1; seed <= 2000; ++seed) {
    CAPTURE(seed);
    Random random(seed);
    std::vector<Spell> spells = any_spells(random);
    for (Spell& spell : spells) {
      for (int i = random.between(0, 6); i > 0; --i) spell.note += pieces[random.between(0, 10)];
    }
    const Timings timings(spells);
    CHECK(read_timings(write(timings)) == timings);
  }
}

}  // namespace timings_test
