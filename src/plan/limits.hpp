#pragma once

#include <algorithm>
#include <chrono>
#include <cstdint>
#include <utility>

#include "latchwork/plan.hpp"

namespace latchwork::inline v0::planning {

/// When a call with a time limit is to be over.
class Deadline {
 public:
  using Clock = std::chrono::steady_clock;
  using Duration = std::chrono::duration<double, std::milli>;

  /// Its clock runs from here. A limit that goes past the clock's end is as good as none.
  explicit Deadline(const PlanOptions& options) : set_(options.time_limit_ms > 0) {
    if (!set_) return;
    from_ = Clock::now();
    const auto room = std::chrono::duration_cast<std::chrono::milliseconds>(Clock::time_point::max() - from_);
    if (options.time_limit_ms < room.count()) at_ = from_ + std::chrono::milliseconds(options.time_limit_ms);
  }
  bool set() const noexcept { return set_; }
  bool over() const { return set_ && Clock::now() >= at_; }
  /// By how much it will be over once it has run for so long. Of no use when none is set.
  Duration late_by(Duration gone) const { return from_ + gone - at_; }
  /// By how much it may be over at the most: see PlanOptions.
  Duration most_late() const { return std::max(Duration(20), Duration(at_ - from_) / 20); }
  /// Whether it is over for so long already.
  bool over_for(Clock::duration time) const {
    return set_ && at_ != Clock::time_point::max() && Clock::now() >= at_ + time;
  }
  /// Whole milliseconds, 0 when it is over. Of no use when none is set.
  std::int64_t left_ms() const {
    const auto left = std::chrono::duration_cast<std::chrono::milliseconds>(at_ - Clock::now());
    return std::max<std::int64_t>(0, left.count());
  }
  /// Whole milliseconds since its clock runs, rounded up. Of no use when none is set.
  std::int64_t gone_ms() const { return std::chrono::ceil<std::chrono::milliseconds>(Clock::now() - from_).count(); }
  /// How long it runs already. Of no use when none is set.
  Clock::duration gone_by() const { return Clock::now() - from_; }
  /// From here on it is over sooner by so much, though by no more than half of the whole.
  void keep_back(Clock::duration time) {
    if (!set_ || at_ == Clock::time_point::max()) return;
    at_ -= std::min<Clock::duration>(time, (at_ - from_) / 2);
  }
  /// The share of the time that is gone, 0..1; 0 when none is set.
  double gone() const {
    if (!set_) return 0;
    return std::clamp(Duration(Clock::now() - from_) / Duration(at_ - from_), 0.0, 1.0);
  }

 private:
  bool set_;
  Clock::time_point from_;
  Clock::time_point at_ = Clock::time_point::max();
};

class Readings;

/// What a plan has taken of a call of which it is a part, and what it is asked for there.
struct Spent {
  const Deadline* whole = nullptr;  ///< of the call
  std::int64_t work = 0;            ///< steps of all plans so far
  std::int64_t least_ms = 0;  ///< the most that one takes without its search, as far as is known; with a time limit
  Deadline::Clock::duration set_up{};  ///< the most that one took to read the panel; with a time limit
  Readings* readings = nullptr;        ///< of the call, where there are several plans
  std::int64_t bound_ms = 0;           ///< no plan that the call may still ask for takes less
  bool ended = false;                  ///< the limits of the last plan ended it
  int after = 0;    ///< what the call does with a plan once it is written up: quarters of the time to read the panel
  bool why = true;  ///< of a plan under conditions that there is not: whether anybody asks for the reasons
  bool written = true;  ///< whether anybody asks for the stops, or else for total, bound and status only
};

/// What ends a long call before it is done, and what it tells meanwhile. A call that keeps to a count of work ends at
/// the same place on every machine; the clock is read only where a time limit is given.
class Limits {
 public:
  /// `spent`, where anybody asks, is told what this takes, and must live as long.
  explicit Limits(const PlanOptions& options, Spent* spent = nullptr)
      : options_(options), deadline_(options), spent_(spent) {}
  /// Of a part of a call: over when the whole is, whatever time limit these options have.
  Limits(const PlanOptions& options, const Limits& whole) : options_(options), deadline_(whole.deadline_) {}

  /// Whether to go on after so much more work (states looked at), which is not to be much more than `often`. Once it
  /// says no, it says no again.
  bool go_on(std::int64_t work) {
    work_ += work;
    if (spent_) spent_->work += work;
    if (ended_) return false;
    if (options_.stop.stop_requested()) return end();
    if (options_.work_limit > 0 && work_ > options_.work_limit) return end();
    if (work_ >= looked_ + often) {
      looked_ = work_;
      if (deadline_.over()) return end();
    }
    if (work_ < told_ + tell_every) return true;
    told_ = work_;
    return tell();
  }

  /// Whether to go on after so many lanes were gone through, or as much was done, which counts as no work but takes
  /// time.
  bool go_past(std::int64_t lanes) {
    lanes_ += lanes;
    if (lanes_ < lanes_between) return !ended_;
    lanes_ = 0;
    return !over();
  }

  /// What progress will be told; a bound or a share below the last stays as it was.
  void now(std::int64_t bound_ms, std::int64_t best_ms, double share) {
    known_ = true;
    now_ = {std::max(bound_ms, now_.bound_ms), aside_ ? now_.best_ms : best_ms, std::max(share, now_.share)};
  }

  /// What comes next is this part of the whole, until part() is asked again.
  void part(double from, double to) {
    from_ = from;
    to_ = to;
    done(0);
  }
  /// How much of the part is done, 0..1.
  void done(double share) { now_.share = std::max(now_.share, from_ + (to_ - from_) * share); }

  /// The share of the time, or of the work where that is limited, that is gone: 0..1.
  double gone() const {
    const double work = options_.work_limit > 0
                            ? std::min(1.0, static_cast<double>(work_) / static_cast<double>(options_.work_limit))
                            : 0.0;
    return std::max(work, deadline_.gone());
  }

  /// While it lives, what is solved asks for less than the call: a bound on it holds for the call's plan, but its
  /// schedules are no plans of the call, and the best told stays as it was.
  class Aside {
   public:
    explicit Aside(Limits& limits) : limits_(limits), before_(std::exchange(limits.aside_, true)) {}
    ~Aside() { limits_.aside_ = before_; }
    Aside(const Aside&) = delete;
    Aside& operator=(const Aside&) = delete;

   private:
    Limits& limits_;
    bool before_;
  };

  /// Whether it is stopped or its time is over by now, whatever the work: for what takes long and can be left. Then
  /// go_on() says no, too.
  bool over() {
    if (ended_) return true;
    if (stopped_or_late()) return !end();
    return known_ && ++looks_ % looks_told == 0 && !tell();
  }
  /// The same where a count of work has ended it, after which what is counted by itself may still be done.
  bool stopped_or_late() const { return options_.stop.stop_requested() || deadline_.over(); }

  /// Whether its time is over for so long that what is done whatever the limits is to come to an end, too.
  bool long_over() const { return deadline_.over_for(std::chrono::milliseconds(5)); }

  /// The same as over() of the whole call, of which this may be a part: for what all its parts need.
  bool whole_over() {
    if (!spent_ || !spent_->whole) return over();
    return options_.stop.stop_requested() || spent_->whole->over();
  }

  /// Whether the whole call, of which this may be a part, has a time limit.
  bool timed() const { return (spent_ && spent_->whole ? *spent_->whole : deadline_).set(); }

  /// Whether a call that has to read its panel for so long yet, and then has so much to do, would end long after its
  /// time: later than three quarters of what is allowed, for it is only foreseen.
  bool would_be_late(Deadline::Duration left, Deadline::Duration then) const {
    const Deadline& whole = spent_ && spent_->whole ? *spent_->whole : deadline_;
    return whole.set() && whole.late_by(whole.gone_by() + left + then) > 0.75 * whole.most_late();
  }
  /// What the call does with a plan, in quarters of the time to read the panel.
  int quarters_after() const { return spent_ ? spent_->after : 0; }

  /// The panel is read, and what comes of it will be written up, which takes so many quarters of that time: so much
  /// sooner the time is over. It may be by now, and go_on() looks at once. Where other plans of the call have read it,
  /// it is their time that counts.
  void keep_back(const Grid& grid, int quarters = for_a_plan) {
    if (!deadline_.set()) return;
    const auto crossings = static_cast<std::int64_t>(grid.crossings().size());
    quarters += static_cast<int>(4 * crossing_as_cells * crossings / (std::int64_t{grid.rows()} * grid.columns()));
    Deadline::Clock::duration set_up = deadline_.gone_by();
    if (spent_) {
      quarters += spent_->after;
      set_up = spent_->set_up = std::max(spent_->set_up, set_up);
      const auto least = std::chrono::ceil<std::chrono::milliseconds>(set_up / 4 * (4 + quarters)).count();
      spent_->least_ms = std::max<std::int64_t>(spent_->least_ms, least);
    }
    deadline_.keep_back(set_up / 4 * quarters);
    looked_ = work_ - often;
  }
  static constexpr std::int64_t crossing_as_cells = 20;  // that are read: what one takes to be written up, by measure
  static constexpr int for_a_plan = 6;                   // plans to begin with, and what becomes of the best
  static constexpr int for_a_rhythm_of_some = 9;         // the problem is laid out anew as well

  /// Whether it said no.
  bool ended() const noexcept { return ended_; }

  /// States looked at so far.
  std::int64_t work() const noexcept { return work_; }

  static constexpr std::int64_t often = 100'000;  // a fraction of a millisecond

 private:
  bool end() {
    ended_ = true;
    if (spent_) spent_->ended = true;
    return false;
  }

  // Whether to go on after it.
  bool tell() {
    if (!options_.progress) return true;
    now_.share = std::max(now_.share, gone());
    options_.progress(now_);
    return !options_.stop.stop_requested() || end();
  }

  static constexpr std::int64_t tell_every = 2'000'000;  // a few milliseconds
  static constexpr std::int64_t lanes_between = 50'000;  // looks at the clock: a few milliseconds
  static constexpr unsigned looks_told = 8;              // looks by over(): the same on a large panel
  const PlanOptions& options_;
  Deadline deadline_;
  Spent* spent_ = nullptr;
  Progress now_{0, -1, 0};
  double from_ = 0;  // the part of the whole that is being done
  double to_ = 0;
  std::int64_t work_ = 0;
  std::int64_t looked_ = 0;
  std::int64_t lanes_ = 0;           // gone through since the clock was looked at for their sake
  std::int64_t told_ = -tell_every;  // the first time at once
  unsigned looks_ = 0;               // by over()
  bool known_ = false;               // what is to be told
  bool ended_ = false;
  bool aside_ = false;
};

/// Whether nobody says how long a call may go on, so that a search for few kinds of stop is held to an allowance of its
/// own.
inline bool is_unlimited(const PlanOptions& options) {
  return options.work_limit == 0 && options.time_limit_ms == 0;
}

/// The bytes that a limit of the options allows.
inline std::size_t memory_of(std::int64_t memory_limit) {
  constexpr std::int64_t usual = std::int64_t{1} << 30;
  return static_cast<std::size_t>(memory_limit > 0 ? memory_limit : usual);
}

}  // namespace latchwork::inline v0::planning
