#pragma once

#include <cstddef>
#include <string>
#include <vector>

#include "latchwork/plan.hpp"

namespace latchwork::inline v0::writing {

/// The re-forms of one stop in words, in the plan's order, which is the order of the hand: one sweep of the bed. Where
/// all are alike they are one list of needles; else each run of needles that are alike tells its own work before the
/// next, so that nobody has to put several lists together on the way.
class Sweep {
 public:
  Sweep() = default;
  explicit Sweep(const std::vector<Reform>& reforms);

  bool empty() const { return runs_.empty(); }
  /// All needles drop as many rows and are worked alike.
  bool one_kind() const { return runs_.size() < 2; }
  /// Of neighbouring needles that are alike.
  std::size_t ranges() const { return ranges_; }

  /// "L33-L32, R31-R32"
  const std::string& needles() const { return needles_; }
  /// Of one kind, `needles` being its list or that list's name: "L33: drop 3 rows to the cast-on, re-form rows 1-3 as 3
  /// p".
  std::string of_one_kind(const std::string& needles) const;
  /// Of several, with depths instead of row numbers, so that the same work further up reads the same: "L33-L32: 10 rows
  /// as 5 x (t, p) | L31, L24-L23: 10 rows as 10 p"; what comes again along the bed once, along_words().
  const std::string& work() const { return work_; }
  /// How far on the first work is that comes again along the bed: "each 11 needles further right"; empty where none
  /// does.
  const std::string& along() const { return along_; }
  /// "the cast-on and row 2": the loops that the tools go into, from the lowest up.
  const std::string& down_to() const { return down_to_; }
  /// Tells the work, where it stands and all, from any other: equal for the same work further up.
  std::string key() const;

 private:
  struct Run {
    std::vector<int> needles;
    int from_row = 0;
    std::vector<Cell> rungs;
  };
  std::vector<Run> runs_;
  std::size_t ranges_ = 0;
  std::string needles_;
  std::string work_;
  std::string along_;
  std::string down_to_;
};

/// Whether needles rise through the stop: a sweep from the operator's left.
bool from_the_left(const std::vector<Reform>& reforms);

}  // namespace latchwork::inline v0::writing
