#pragma once

#include <optional>
#include <utility>
#include <vector>

#include "plan/conditions.hpp"
#include "plan/kinds.hpp"
#include "plan/problem.hpp"
#include "plan/works.hpp"

namespace latchwork::inline v0::planning {

/// Whether works that are settled keep the conditions. Depth is not looked at: the problem is narrowed to it.
class Keeping {
 public:
  /// All but the machine must outlive it. @throws Error bad_argument for a wale in two rhythms.
  Keeping(const Problem& problem, const Grid& grid, const Wales& wales, const Machine& machine,
          const Conditions& conditions);

  /// Why no plan keeps them, as far as no search is needed to know; as plan() says it.
  std::vector<Finding> barred(const Machine& machine) const;

  /// Whether stops after these rows, and those that are forced, may be where they are: what broken() looks at first,
  /// without the works.
  bool may_stop(const std::vector<char>& worked) const;

  /// The first condition that these works break (one list a lane of the problem), and where; nothing when they keep
  /// all.
  std::optional<Finding> broken(const std::vector<std::vector<Work>>& works);

 private:
  struct Kept {
    const KeptRhythm* rhythm = nullptr;
    std::size_t lane = 0;
    std::vector<Work> works;  // of the lane in that rhythm
  };
  using AtRow = std::vector<std::pair<std::size_t, Work>>;  // by lane

  std::optional<Finding> at_closed_row(const std::vector<AtRow>& made) const;
  std::optional<Finding> too_near(const std::vector<AtRow>& made) const;
  std::optional<Finding> too_many_kinds(const std::vector<AtRow>& made);
  std::optional<Finding> off_its_rhythm(const std::vector<std::vector<Work>>& works) const;
  bool stops(const std::vector<AtRow>& made, int row) const;
  bool exempt(int row) const { return conditions_.forced_exempt && is_forced(problem_, row); }
  int column_of(const AtRow& made, int row) const;

  const Problem& problem_;
  const Grid& grid_;
  const Wales& wales_;
  const Conditions& conditions_;
  bool starts_right_;
  std::vector<char> closed_;   // per row 0..R, by hand
  Conditions given_;           // without the rhythm that is to be found: any keeps it
  std::vector<Group> groups_;  // of the given rhythms
  Problem rest_;               // without their wales; empty where there are none
  std::vector<Settled> settled_;
  std::vector<Kept> kept_;
  Deeds deeds_;
  std::vector<std::vector<int>> forced_deeds_;
};

}  // namespace latchwork::inline v0::planning
