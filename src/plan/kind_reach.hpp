#pragma once

#include <cstddef>
#include <cstdint>
#include <map>
#include <span>
#include <utility>
#include <vector>

#include "plan/kind_ways.hpp"
#include "plan/kinds.hpp"
#include "plan/limits.hpp"
#include "plan/problem.hpp"

namespace latchwork::inline v0::planning {

/// What kinds of stop can still do. It errs to one side only: where it says that something cannot be, it cannot.
class KindReach {
 public:
  /// Both must live as long.
  KindReach(const Problem& problem, Deeds& deeds) : problem_(problem), deeds_(deeds) {}

  /// Looks through all that may be done, where that is not too much. `at_row` as solve_kinds(). Returns the work done;
  /// where `limits` are over it is left on the way.
  std::int64_t prepare(const std::vector<std::vector<int>>& at_row, Limits& limits);
  /// No stop after a row above this is of the kind; the panel's last row where that is not known.
  int last_row(int kind);
  /// Kinds from this number on have other numbers now.
  void forget_kinds(int first);
  /// Whether nothing that this lane does is ever done by another, or forced; false where that is not known.
  bool on_its_own(std::size_t lane) const { return own_[lane] != 0; }
  /// Lanes of which one may do what another does, or what a third does that does what the other does, are of one party,
  /// by number; all are of one where that is not known.
  std::size_t party(std::size_t lane) const { return party_[lane]; }
  /// Whether the lane's party may do what is forced as well, by a wale that is kept to a rhythm; true where that is not
  /// known. Without it a stop at which that is forced and one at which it does that would be of two kinds.
  bool with_forced(std::size_t lane) const { return with_forced_[lane] != 0; }
  /// Whether the lane, standing so after the row, may be made to the end with what these kinds hold, and with the
  /// deeds of one list more.
  bool can_end(std::size_t lane, Standing standing, int row, std::span<const int> kinds, const DeedList* more);
  /// How many kinds more the forced stops after the row need at least: a kind does for those only at which the very
  /// same is forced.
  std::size_t forced_to_come(int row, std::span<const int> kinds);
  /// Done and not counted yet.
  std::int64_t take_work() noexcept { return std::exchange(work_, 0); }

 private:
  void note_forced(const std::vector<std::vector<int>>& at_row, const std::vector<int>& owner);
  bool ends(const Lane& lane, int done, int row);
  bool holds(const DeedList& list) const;

  const Problem& problem_;
  Deeds& deeds_;
  bool known_ = false;
  std::vector<int> last_;                   // per deed, -1 where it is none
  std::vector<int> last_kind_;              // per kind, -1 where it is not known yet
  std::vector<char> own_;                   // per lane
  std::vector<std::size_t> party_;          // per lane
  std::vector<char> with_forced_;           // per lane
  std::vector<char> only_forced_;           // per deed: it is forced, and no lane does it
  std::map<std::vector<int>, int> forced_;  // what may be forced at a stop, numbered
  std::vector<int> last_forced_;            // per such: the last row
  std::vector<int> forced_by_;              // per kind: which of them, -1: none, -2: not known yet
  std::vector<int> seen_;                   // scratch
  std::int64_t work_ = 0;

  // One question.
  std::span<const int> kinds_;
  const DeedList* more_ = nullptr;
  int looks_left_ = 0;
};

}  // namespace latchwork::inline v0::planning
