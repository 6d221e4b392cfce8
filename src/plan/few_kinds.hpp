#pragma once

#include <cstddef>
#include <cstdint>
#include <set>
#include <utility>
#include <vector>

#include "plan/kinds.hpp"
#include "plan/limits.hpp"
#include "plan/solve.hpp"

namespace latchwork::inline v0::planning {

/// Schedules with few kinds of stop, found cheaply, for a search to begin with.
class FewKinds {
 public:
  using AllWorks = std::vector<std::vector<Work>>;  ///< one list a lane

  /// `at_row`: per row 0..R what is done there beside the works of the problem's lanes.
  FewKinds(const Problem& problem, Deeds& deeds, const std::vector<std::vector<int>>& at_row, std::size_t most,
           Limits& limits);

  /// Takes a schedule when it keeps the conditions and is the best yet. Its kinds go to `kinds`, whether they are too
  /// many or not.
  bool consider(const AllWorks& works, std::set<int>* kinds = nullptr);
  /// From the stops of these works from one set of stops to another that needs fewer kinds, or none too many and less
  /// work: a stop more, a stop less, or one a row off, as long as one of them is better and so much work is not done.
  /// Whether to go on.
  bool descend(const AllWorks& works, std::int64_t most_work);
  /// Considers latest(), which it returns, and, when that does not do, re-forms at every row, then in rhythms until one
  /// does or so much work is done. It takes some milliseconds whatever the limits; past these it ends with them.
  AllWorks find_any(std::int64_t most_work);
  /// As few stops as may be: each as late as what is due allows, where all that is due is done; none when it fails,
  /// or there is no time.
  AllWorks latest();
  /// Considers re-forms in every rhythm, the forced stops beside them. The kinds of the best few go to `kinds`, what
  /// they do to `starts`.
  void try_rhythms(std::set<int>& kinds, std::vector<AllWorks>& starts);
  /// The least schedules as if a stop took longer and longer: they have fewer and fewer stops, and no more kinds than
  /// stops. Each is considered; those with the fewest kinds of all so far are told.
  std::vector<AllWorks> with_few_stops(const AllWorks& plain, const PlanOptions& options);

  const Solved& best() const noexcept { return best_; }
  /// Work done and not counted yet.
  std::int64_t take_work() { return std::exchange(work_, 0); }

 private:
  struct Seen {
    std::size_t kinds = 0;
    std::size_t stops = 0;
    std::int64_t cost = far;
  };
  std::size_t fewest_kinds(const AllWorks& works);
  std::size_t different(std::size_t count);
  Seen look(const AllWorks& works);
  Seen look(const std::vector<char>& stops);
  bool heed(const std::vector<Work>& works, const Lane& lane);
  bool heed();
  std::set<int> kinds_of(const AllWorks& works);
  std::int64_t put_in_rhythm(AllWorks& works, int every, int first);
  int latest_first() const;
  bool better(const Seen& a, const Seen& b) const;

  const Problem& problem_;
  Deeds& deeds_;
  const std::vector<std::vector<int>>& at_row_;
  std::size_t most_;
  Limits& limits_;
  Solved best_;
  std::vector<std::uint64_t> forced_sums_;  // per row: of what is done beside the works
  bool only_own_ = true;                    // nothing is forced but crossings and shapings
  // Scratch.
  AllWorks works_;
  std::vector<std::uint64_t> sums_;
  std::vector<char> flags_;

  std::int64_t work_ = 0;      // not counted yet
  std::int64_t unheeded_ = 0;  // until the clock is looked at
  bool out_of_time_ = false;   // nothing more is considered
};

}  // namespace latchwork::inline v0::planning
