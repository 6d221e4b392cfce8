#pragma once

#include <cstddef>
#include <cstdint>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "latchwork/effort.hpp"
#include "latchwork/export.hpp"

namespace latchwork::inline v0 {

/// One spell of work by the clock: what was done in it, and how long all of it took. Each count is 0..max_spell_count,
/// and one at least is above 0. What each count is worth is the field of Effort beside it.
struct Spell {
  int stops = 0;             ///< Effort::stop
  int batches = 0;           ///< wales found and re-formed: Effort::batch
  int drops = 0;             ///< rungs laddered down, of all batches: Effort::drop
  int rungs_knit = 0;        ///< rungs re-formed as a knit: Effort::rung_knit
  int rungs_purl = 0;        ///< as a purl: Effort::rung_purl
  int rungs_tuck = 0;        ///< as a tuck: Effort::rung_tuck
  int rungs_slip = 0;        ///< passed by: Effort::rung_slip
  int crossings = 0;         ///< Effort::crossing
  int stitches_crossed = 0;  ///< stitches lifted for them: Effort::crossing_stitch
  int holds = 0;             ///< needles put in hold and released again: Effort::hold
  int shapings = 0;          ///< needles cast on or bound off at a stop: Effort::shaping
  int rows = 0;              ///< plain carriage passes: Effort::row
  std::int64_t time_ms = 0;  ///< 1..max_spell_ms
  std::string note{};        ///< free text, UTF-8 without NUL, to 256 bytes: "the telephone rang"
  int line = 0;              ///< line of the file it was read from, 0..2147483647; 0: from none
  friend bool operator==(const Spell&, const Spell&) = default;
};

inline constexpr int max_spell_count = 1'000'000;                        ///< most of anything in one spell
inline constexpr std::int64_t max_spell_ms = 360'000'000;                ///< longest spell: 100 hours
inline constexpr std::size_t max_timings_bytes = std::size_t{64} << 20;  ///< of a timings file: 64 MiB, as of others

/// Timed spells in their order. A value; all calls are const.
/// Const calls may run at once on one object; any other call needs it alone.
class LATCHWORK_API Timings {
 public:
  static constexpr std::size_t max_spells = 50'000;

  Timings() = default;
  /// @throws Error bad_value for a count, time, text or line out of its range, or a spell in which nothing was done
  /// (field "spells[3].rows"; "spells[3].time_ms"); bad_encoding for a note that is not UTF-8; too_large (field
  /// "spells").
  explicit Timings(std::vector<Spell> spells);

  std::span<const Spell> spells() const noexcept { return spells_; }
  /// The same spells in the same order, whichever lines they stood on.
  friend LATCHWORK_API bool operator==(const Timings& a, const Timings& b);

 private:
  std::vector<Spell> spells_;
};

/// Reads a timings file: CSV (RFC 4180, UTF-8), one spell a line, whose first line names its columns, in any order:
/// the counts stops, batches, drops, rungs_knit, rungs_purl, rungs_tuck, rungs_slip, crossings, stitches_crossed,
/// holds, shapings, rows, then time, unit, note. Counts that stand in no spell may be left out, not all of them; so
/// may `note`. A count is a whole number without sign, nothing is 0. A time is digits with or without a decimal point,
/// no sign, no exponent; its unit is ms, s, min or h; it is a whole number of milliseconds, as read_duration() has it.
/// What else a file may hold (comments, blank lines, blanks round fields) is as in read_swatch(). Linear in the text.
/// @throws Error with line and field: bad_syntax, missing_field, unknown_field (field "column 3", as read_swatch() has
/// it, for a column without a name), duplicate_key, bad_value (what Timings refuses too), bad_unit, bad_encoding,
/// too_large (more than max_timings_bytes or Timings::max_spells).
LATCHWORK_API Timings read_timings(std::string_view csv);

/// The CSV that read_timings() reads back to equal timings: every column, times in ms, lines ended with LF.
LATCHWORK_API std::string write(const Timings& timings);

/// Where a cost of a fitted Effort comes from.
enum class TermState : std::uint8_t {
  fitted = 0,   ///< from the timings
  at_zero = 1,  ///< the timings would have it at or below 0; it is 0, which is the least it may be
  tied = 2,     ///< the timings tell only what it and others cost together (TermFit::tied_with)
  no_data = 3,  ///< no spell has any of it: the default is kept
};

/// One term of a fitted Effort.
struct TermFit {
  EffortTerm term = EffortTerm::stop;
  TermState state = TermState::no_data;
  std::int64_t value_ms = 0;  ///< as in EffortFit::effort: estimate_ms to the nearest millisecond, a half goes up
  double estimate_ms = 0;     ///< 0 or more, finite
  std::optional<double> standard_error_ms;  ///< of estimate_ms; only where `fitted` and there is a spread
  int spells = 0;                           ///< spells that have any of it
  std::vector<EffortTerm> tied_with;        ///< the others it is tied with, by number; empty unless `tied`
  friend bool operator==(const TermFit&, const TermFit&) = default;
};

/// A spell that took longer or shorter than the others let expect.
struct OutlyingSpell {
  int spell = 0;           ///< index into Timings::spells()
  int line = 0;            ///< Spell::line
  double residual_ms = 0;  ///< its time, less what the estimates make of its work
  double studentized = 0;  ///< residual over its own standard deviation, as fitted without this spell; finite
  friend bool operator==(const OutlyingSpell&, const OutlyingSpell&) = default;
};

/// Efforts from timings, and how far they may be trusted. Every number is finite.
struct EffortFit {
  Effort effort;                        ///< each within Effort's limits
  std::vector<TermFit> terms;           ///< every term, by number
  std::vector<OutlyingSpell> outlying;  ///< by spell; they took part in the fit all the same
  int spells = 0;                       ///< spells fitted to
  int rank = 0;                         ///< how many costs, or sums of tied ones, were free to be set
  int degrees_of_freedom = 0;           ///< spells - rank
  std::optional<double> spread_ms;  ///< root of (sum of squared residuals / degrees of freedom); without those, none
  friend bool operator==(const EffortFit&, const EffortFit&) = default;
};

/// Efforts by non-negative least squares: of all costs of 0 or more, those under which the spells' times have the least
/// sum of squared residuals, each spell counting the same. So time spells of about the same length.
/// - Ties: columns of counts are tied when one is a weighted sum of others to within 1e-7 of its own length; the terms
///   of one such sum, and of sums that share terms, are tied with each other. Of all costs that fit as well, tied terms
///   get those nearest to the defaults (least sum of squares of the changes, each over its default, or over 1 ms where
///   the default is 0), so that one timed spell already moves all of its terms.
/// - Zero: a cost whose share of all spells' times is under 1e-10 counts as 0.
/// - Standard errors: the textbook's, spread * root of the diagonal of (X'X)^-1, over the terms that are not at zero.
/// - Outlying: |studentized| above the point that Student's t, with one degree of freedom less than the fit, passes
///   with probability 0.05 / spells (Bonferroni's limit for externally studentized residuals: R. D. Cook and
///   S. Weisberg, Residuals and Influence in Regression, 1982, ch. 2). Needs two degrees of freedom; a spell that alone
///   settles a cost has no residual and is never outlying. The spread is taken as 1/sqrt(12) ms at least, that of
///   rounding to whole milliseconds.
/// With no spells every term keeps its default. The same timings in another order give the same fit but for the last
/// digits. Linear in the spells.
/// @throws Error bad_argument (field "defaults.drop"); too_large (field "effort.row") for a cost that comes out above
/// Effort's limit of 3'600'000 ms: a wrong unit, perhaps.
LATCHWORK_API EffortFit fit_effort(const Timings& timings, const Effort& defaults = {});

/// The fit for people: what it rests on, a line for each term with its value and where it comes from, and the outlying
/// spells by their lines. UTF-8, each line ended with LF.
LATCHWORK_API std::string describe(const EffortFit& fit);

/// "fitted", "at_zero", "tied", "no_data"; empty for a number that is none.
LATCHWORK_API std::string_view term_state_name(TermState state) noexcept;

}  // namespace latchwork::inline v0
