#pragma once

#include <algorithm>
#include <cstddef>
#include <cstdint>
#include <optional>
#include <set>
#include <span>
#include <vector>

#include "plan/kind_reach.hpp"
#include "plan/kind_sets.hpp"
#include "plan/kind_ways.hpp"
#include "plan/kinds.hpp"
#include "plan/limits.hpp"
#include "plan/number_table.hpp"
#include "plan/prices.hpp"
#include "plan/solve.hpp"
#include "plan/windows.hpp"

namespace latchwork::inline v0::planning {

/// The work of a search for few kinds of stop, counted against the call's limits and an allowance of its own.
class KindMeter {
 public:
  /// All of these must live as long: what the best is, is told on the way.
  KindMeter(const Problem& problem, const Solved& best, Limits& limits, std::int64_t allowance,
            std::int64_t memory_limit)
      : problem_(problem),
        best_(best),
        limits_(limits),
        allowance_(allowance),
        memory_(std::max(least_memory, memory_of(memory_limit))) {}

  void add(std::int64_t work) noexcept { work_ += work; }
  /// What the search holds by now, in bytes; past the memory it is not to go on.
  void hold(std::size_t bytes) noexcept {
    held_ = bytes;
    most_held_ = std::max(most_held_, bytes);
  }
  /// What was held at the most is forgotten.
  void begin() noexcept { most_held_ = 0; }
  /// How many times as much as was held at the most since then would have room, and as much again.
  std::size_t times_room() const noexcept { return memory_ / 2 / std::max<std::size_t>(1, most_held_); }
  /// Whether the memory is nearly full.
  bool crowded() const noexcept { return held_ > memory_ / 4 * 3; }
  /// Whether to go on. Once it says no, it says no again.
  bool go_on();
  /// The same, asked where much may have been done since.
  bool heed() { return !ended_ && (work_ - counted_ < Limits::often || go_on()); }
  bool ended() const noexcept { return ended_; }
  /// Whether its own allowance, and nothing else, ended it.
  bool out_of_allowance() const noexcept {
    return ended_ && work_ > allowance_ && held_ <= memory_ && !limits_.ended();
  }
  std::int64_t work() const noexcept { return work_; }
  Limits& limits() const noexcept { return limits_; }

 private:
  static constexpr std::size_t least_memory = std::size_t{1} << 10;  // so that there is a search at all

  const Problem& problem_;
  const Solved& best_;
  Limits& limits_;
  std::int64_t allowance_;
  std::size_t memory_;
  std::size_t held_ = 0;
  std::size_t most_held_ = 0;
  std::int64_t work_ = 0;
  std::int64_t counted_ = 0;
  bool ended_ = false;
};

/// Partial schedules followed up the rows, side by side, each with the kinds of stop that it has used.
class KindPass {
 public:
  /// What may be done at a stop: what is due, or what cannot wait; what makes it one of the kinds of a pool; anything.
  enum class Choice { due, pool, any };

  /// All of these must live as long. Finds a better schedule than `best`, which it changes then.
  KindPass(const Problem& problem, Deeds& deeds, const std::vector<std::vector<int>>& at_row, std::size_t most,
           Solved& best, KindMeter& meter);

  /// Below any pass: where each lane may stand, and what its way to go costs at least. Whether to go on.
  bool prepare();
  /// Whether it came to its end.
  bool run(std::size_t width, Choice choice, const std::set<int>& pool = {});

  /// See KindReach::party(); of use once prepared.
  std::size_t party(std::size_t lane) const { return reach_.party(lane); }
  bool with_forced(std::size_t lane) const { return reach_.with_forced(lane); }
  /// Of the last: whether nothing was left aside that may be better, and the least bound of what was.
  bool complete() const noexcept { return complete_; }
  std::int64_t left_out() const noexcept { return left_out_; }
  /// As many partial schedules as each row may keep by the memory limit, and by the search's own allowance where there
  /// is no other limit.
  std::size_t room(const PlanOptions& options);

 private:
  struct Label {
    std::int64_t cost = 0;
    std::int64_t bound = 0;
    std::uint32_t parent = 0;
    int kinds = 0;  // number of the set of kinds used so far
    int free_from = 0;
  };
  /// A lane that has several ways to take a stop.
  struct Choosing {
    std::size_t lane = 0;
    std::span<const Way> ways;
    unsigned allowed = 0;  // a bit a way
    // On the way through them all:
    std::size_t next = 0;
    std::size_t done = 0;  // deeds of those before
    std::int64_t cost = 0;
    std::int64_t bound = 0;
    std::int64_t rest = 0;  // least of those after
  };

  void enter(int row);
  void stay(std::uint32_t index);
  void stop(std::uint32_t index, Choice choice, const std::set<int>& pool);
  void stop_with_what_is_due(std::uint32_t index);
  bool repeat(std::uint32_t index, int kind);
  void follow(std::uint32_t index);
  bool choose(std::uint32_t index, bool last_kind);
  bool narrow(Choosing& lane, std::span<const int> old);
  void take(const Label& label, std::uint32_t index, bool repeated, std::int64_t cost, std::int64_t bound);
  void add_stop(std::int64_t cost, std::int64_t bound, std::uint32_t parent, int old, int kinds);
  void add(std::int64_t cost, std::int64_t bound, std::uint32_t parent, int kinds, int free_from);
  bool beaten(std::uint32_t index, int same);
  bool select(std::size_t width);
  void take_end();
  std::size_t held() const;
  bool heed();
  void forget();
  const Standing* standing_of(std::uint32_t index) const { return standings_.data() + index * chosen_.size(); }

  const Problem& problem_;
  Deeds& deeds_;
  const std::vector<std::vector<int>>& at_row_;
  std::size_t most_kinds_;
  Solved& best_;
  KindMeter& meter_;
  KindSets sets_;
  KindReach reach_;
  Windows windows_;
  std::optional<Prices> prices_;
  std::optional<KindWays> ways_;
  std::vector<std::int64_t> forced_after_;

  int row_ = 0;
  int first_kind_ = 0;           // that this run numbers
  std::size_t sets_kept_ = 0;    // bytes of sets when those that no label had were forgotten
  std::size_t labels_kept_ = 0;  // of all rows
  bool complete_ = true;
  std::int64_t left_out_ = far;
  std::size_t most_next_ = 0;
  std::size_t most_ways_ = 0;
  std::vector<Label> labels_;
  std::vector<Standing> standings_;
  std::vector<Label> next_;
  std::vector<Standing> next_standings_;
  std::vector<std::vector<std::uint32_t>> parents_;  // per row, of the labels kept
  std::vector<std::vector<Standing>> standings_at_;  // per row, of the labels kept
  NumberTable alike_;                                // by a sum over where lanes stand: the last label kept
  std::int64_t compared_ = 0;                        // by beaten(): it is no work that counts, but takes time
  std::vector<int> before_;                          // per label kept: the one before with that sum, -1: none

  // One stop of one label.
  std::vector<Standing> chosen_;
  std::vector<int> done_;
  std::vector<std::int64_t> rest_;  // least bound of the lanes from this one on
  std::vector<Choosing> choosing_;
};

}  // namespace latchwork::inline v0::planning
