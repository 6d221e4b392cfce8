#pragma once

#include <map>
#include <string>
#include <utility>
#include <vector>

#include "latchwork/plan.hpp"

namespace latchwork::inline v0::writing {

/// The needles in work, as a plan goes up from stop to stop, and what is told of those that begin or end. As in
/// outline_text(), one stitch that leaves at an edge is a decrease, one that joins an increase; several, and any
/// inside, are bound off and cast on. For plans that check() takes.
class NeedlesInWork {
 public:
  explicit NeedlesInWork(const Plan& plan);

  /// Whether work begins in the cast-on of row 0: each needle must then have a loop of its own to go into.
  bool works_into_cast_on() const { return into_cast_on_; }
  /// The needles that are cast on, and those that are not, from the operator's left.
  std::pair<std::vector<int>, std::vector<int>> at_start() const;
  /// Whether a stitch hangs on some needle after the plan's last stop.
  bool any_at_end() const;

  /// Takes the shapings of the next stop, and tells them, an action a kind.
  std::vector<std::string> shaped(const Stop& stop);
  /// Whether, so far, the tool was to go into a loop onto which a stitch was moved.
  bool into_moved() const { return into_moved_; }

 private:
  std::pair<int, int> ends() const;
  int needle_at(int step) const;
  bool works_at(int step) const;
  bool goes_into(int needle, int row) const;
  bool goes_below(int needle, int row) const;
  bool is_far(int run_first, int count, const Stop& stop) const;
  void tell_far(const std::vector<int>& needles, const std::vector<int>& among, std::vector<std::string>& told) const;
  void join(const Stop& stop, std::vector<std::string>& told);
  void leave(const Stop& stop, std::vector<std::string>& told);

  struct Depth {
    int from_row = 0;
    int row = 0;
  };
  const Plan& plan_;
  std::vector<bool> works_;                     ///< by steps from the leftmost needle to the operator's right
  std::map<int, std::vector<Depth>> re_forms_;  ///< by needle
  bool into_cast_on_ = false;
  bool into_moved_ = false;
};

}  // namespace latchwork::inline v0::writing
