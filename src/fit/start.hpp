#pragma once

#include <map>
#include <string>
#include <tuple>
#include <vector>

#include "fit/budget.hpp"
#include "fit/request.hpp"

namespace latchwork::inline v0::fitting {

/// Where the vertical repeat begins: how the ends of a strip look when row 1 is made as a given row of its repeat. Made
/// in time linear in the strip's cells, asked in constant time.
class Ends {
 public:
  explicit Ends(const Strip& strip);

  struct Look {
    Count apart = 0;    ///< rows below the first crossing against rows above the last
    bool open = false;  ///< see FitCandidate::open_ends
  };
  Look look(Count start_row, Count rows) const;
  Count repeat() const { return static_cast<Count>(below_.size()); }

 private:
  // By row of the repeat, from 0.
  std::vector<Count> below_;     // rows from it up to the first mark, both counted; 0 where there is none
  std::vector<Count> above_;     // rows above the last mark, down from it
  std::vector<bool> open_last_;  // a tuck or slip, or a crossing after it
};

/// What is open at the end of a candidate's panels: open_crossing, open_stack, once each. `whose` begins the words.
std::vector<Finding> open_findings(const FitRequest& request, const FitCandidate& candidate, const std::string& whose);

/// Chooses starts for candidates of one request, once for each kind.
class Starts {
 public:
  explicit Starts(const FitRequest& request);
  /// Sets start_row, imbalance_rows and open_ends. @throws Error too_large (field "vary_start") when the budget is
  /// spent.
  void choose(FitCandidate& candidate, Budget& budget);

 private:
  struct Standing {
    const Ends* ends = nullptr;
    Count times = 0;
  };
  struct Chosen {
    bool open = false;
    Count imbalance = 0;
    Count row = 1;
    friend bool operator<(const Chosen& a, const Chosen& b) {
      return std::tie(a.open, a.imbalance, a.row) < std::tie(b.open, b.imbalance, b.row);
    }
  };
  static Chosen at(Count row, Count rows, const std::vector<Standing>& strips);

  const FitRequest& request_;
  std::vector<std::vector<Ends>> groups_;
  std::vector<Ends> edge_;                                           // one or none
  std::map<std::tuple<int, bool, std::vector<int>>, Chosen> known_;  // by rows, edge or none, times
};

}  // namespace latchwork::inline v0::fitting
