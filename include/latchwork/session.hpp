#pragma once

#include <cstdint>
#include <vector>

#include "latchwork/effort.hpp"
#include "latchwork/export.hpp"
#include "latchwork/plan.hpp"

namespace latchwork::inline v0 {

/// A plan's time by kind of work, in whole milliseconds; they add up to the total.
struct WorkTimes {
  std::int64_t stops_ms = 0;      ///< the stops themselves: parking the carriage, taking up the tools
  std::int64_t reforms_ms = 0;    ///< stitches dropped and re-formed, rung by rung
  std::int64_t crossings_ms = 0;  ///< groups lifted, crossed and put back
  std::int64_t holds_ms = 0;      ///< needles put in hold and taken out
  std::int64_t shapings_ms = 0;   ///< needles cast on and bound off
  std::int64_t carriage_ms = 0;   ///< plain rows
  std::int64_t total_ms = 0;
  friend bool operator==(const WorkTimes&, const WorkTimes&) = default;
};

/// The time of `pieces` panels made by one plan, by kind of work, from its steps and these efforts; the plan's own
/// totals are not read. An article of several plans, a front and two backs, say, takes the sums of theirs, field by
/// field. Only what is done at the machine is in it: sewing up, washing and blocking are not. Linear in steps.
/// @throws Error bad_argument (effort, as hand_work(); pieces: 1..1000; field "plan", with the first of its findings,
/// for one that is infeasible, by which nothing is knitted);
/// too_large (field "pieces") for so much work that 64 bits do not hold it.
LATCHWORK_API WorkTimes work_times(const Plan& plan, const Effort& effort = {}, int pieces = 1);

struct SessionOptions {
  std::int64_t session_ms = 3'600'000;  ///< how long one sits at the machine, 60'000..86'400'000
  std::int64_t rest_ms = 1'200'000;     ///< of hand work, after which the hands rest, 60'000..86'400'000; 0: no rests
  int from_row = 0;                     ///< rows knitted already, with their stops; 0..rows
  friend bool operator==(const SessionOptions&, const SessionOptions&) = default;
};

/// One sitting at the machine: rows from_row + 1 to to_row with their stops; the first takes in a stop at row 0 too.
struct Session {
  int from_row = 0;            ///< the row counter when it begins
  int to_row = 0;              ///< and when it ends
  bool carriage_right = true;  ///< where the carriage stands at its end
  bool clear = true;           ///< at its end no needle is in hold and none was brought out to be knit back
  std::int64_t work_ms = 0;    ///< hand work and carriage
  std::int64_t hand_ms = 0;    ///< hand work alone
  friend bool operator==(const Session&, const Session&) = default;
};

/// A rest for the hands.
struct Rest {
  int session = 0;           ///< index of the session it falls in
  int row = 0;               ///< after this row and its stop
  std::int64_t hand_ms = 0;  ///< hand work since the last rest, or since the session began
  friend bool operator==(const Rest&, const Rest&) = default;
};

/// Where to stop for the day, in sessions as few and as even as good ends allow. A session may end after each stop in
/// the second half of its length that leaves nothing in hold; where there is no such stop, after each row in its length
/// that leaves nothing in hold; where there is none either, after the first such row past its length, so that it lasts
/// longer. The panel's end counts as such a stop. Of all ways with the fewest sessions it is the one whose longest
/// session is shortest, of these the one whose shortest is longest, of these the one whose first session is longest,
/// then the second, and so on. A plan that is infeasible has none. Linear in steps, and in rows times the bits of the
/// longest session.
/// @throws Error bad_argument (effort; field "session_ms", "rest_ms", "from_row", "rows", or "stops[3].row" for
/// stops that do not rise within 0..rows); too_large for a plan of more rows than Grid::max_side
/// ("rows"), or of more work than 2^60 ms ("plan").
LATCHWORK_API std::vector<Session> sessions(const Plan& plan, const Effort& effort = {},
                                            const SessionOptions& options = {});

/// Where the hands rest within those sessions: after the stop at which the hand work since the last rest comes to
/// `rest_ms`; not at a session's end. A stop is not divided: one whose own hand work is longer than `rest_ms` has no
/// rest inside it here, so rest between its batches. The lengths are estimates of ours: rest before it hurts. @throws
/// as sessions().
LATCHWORK_API std::vector<Rest> rests(const Plan& plan, const Effort& effort = {}, const SessionOptions& options = {});

}  // namespace latchwork::inline v0
