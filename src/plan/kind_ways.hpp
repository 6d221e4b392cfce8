#pragma once

#include <array>
#include <cstddef>
#include <cstdint>
#include <deque>
#include <span>
#include <vector>

#include "plan/kinds.hpp"
#include "plan/prices.hpp"
#include "plan/problem.hpp"
#include "plan/windows.hpp"

namespace latchwork::inline v0::planning {

/// Where a lane stands: so many tasks done, or held over task h: -1 - h.
using Standing = std::int32_t;

/// One way for a lane to take a stop.
struct Way {
  Standing to = 0;
  std::int64_t cost = 0;
  std::int64_t to_go = 0;  ///< what its way on from there costs at least
  DeedList deeds;
};

/// What lanes may do at a stop after one row, and what their ways to go from there cost at least.
class KindWays {
 public:
  /// All of these must live as long. The windows and prices are of the problem.
  KindWays(const Problem& problem, Deeds& deeds, const Windows& windows, Prices& prices)
      : problem_(problem), deeds_(deeds), windows_(windows), prices_(prices), begin_(problem.lanes.size()) {}

  void enter(int row);
  /// far where a lane may not stand after this row.
  std::int64_t to_go(std::size_t lane, Standing standing) const;
  /// Every way for a lane to take the stop, cheapest first, with what is to go; to let it pass is one. It lives until
  /// the next row.
  std::span<const Way> of(std::size_t lane, Standing from);

 private:
  /// To stay, to hold, to re-form, and to re-form and hold.
  struct Ways {
    std::array<Way, 4> list;
    std::size_t count = 0;
  };
  void find(std::size_t lane, Standing from, Ways& out);

  const Problem& problem_;
  Deeds& deeds_;
  const Windows& windows_;
  Prices& prices_;
  int row_ = 0;
  std::vector<std::size_t> begin_;  // per lane: where its states begin
  std::vector<const Ways*> known_;  // per state of the layer before the row
  std::deque<Ways> ways_;           // of this row
};

}  // namespace latchwork::inline v0::planning
