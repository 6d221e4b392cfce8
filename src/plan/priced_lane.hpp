#pragma once

#include <cstdint>
#include <vector>

#include "plan/sliding_least.hpp"
#include "plan/windows.hpp"

namespace latchwork::inline v0::planning {

/// A lane under prices of its stops: what each stop is worth to it, row by row, up or down.
///
/// Where a lane stands is told by its tasks alone: what follows after i tasks are done costs the same after whatever
/// stop that is, and what went before as well. A batch from task i to a stop costs a part of the task and a part of the
/// stop, so the best start of each stop is the least of a run of tasks, and the best stop of each task the least of a
/// run of rows. So most rows are a matter of a few steps, however deep batches may be: only where the lane's cheapest
/// way uses the stop must it be found out what it costs to do without.
class PricedLane {
 public:
  PricedLane(const Lane& lane, int rows);

  /// A pass over the rows of use to the lane, from row 0 up or from the top down; up only after one down.
  void start_up();
  void start_down();
  /// Goes to the next row of the pass.
  void up(int row);
  void down(int row);
  /// What the stop at that row is worth, 0..most, where its price was `price`.
  std::int64_t worth(std::int64_t price, std::int64_t most);
  /// Its price from now on. Without worth() that which it was.
  void set_up(std::int64_t price);
  void set_down(std::int64_t price);
  /// Instead of down() and set_down(): its price, whatever it was before.
  void take_down(int row, std::int64_t price);
  void end_down();

  /// The cheapest way under the prices as they are now; after take_down() not before end_down().
  std::int64_t least() const noexcept { return least_; }
  /// To be called after a pass down, before write_ways().
  void get_ready();
  /// Cheapest ways to the end from every state of the window of a layer. Linear in its states and in the rows that they
  /// can wait for, at most; as a rule a few steps a state.
  void write_ways(const Window& window, int layer, std::int64_t* ways) const;
  /// Steps made since the last call.
  std::int64_t take_work() noexcept;

 private:
  void look_at(int row);
  void price_down(std::int64_t price);
  std::int64_t after() const;
  std::int64_t held_on() const;
  std::int64_t avoiding() const;
  void finish_tasks(int row);

  /// What is known of a number of tasks done, and of the next task.
  struct Standing {
    std::int64_t to = far;      // the cheapest way there, by stops so far
    std::int64_t from = far;    // the cheapest way to the end
    std::int64_t worked = far;  // the same, when the next task is done by a batch
  };
  /// What is known of a task that may be held.
  struct Held {
    std::int64_t to = far;      // the cheapest way to where it is held over
    std::int64_t released = 0;  // the price of the stop that releases it
  };
  /// What is known of a stop after a row.
  struct OfRow {
    std::int64_t start = far;  // the best start of a batch that ends there
    std::int64_t there = far;  // the cheapest way, by stops below it, to what a batch there would do
    std::int64_t adds = far;   // what a batch that ends there adds, with the stop's price and all that follows
  };
  Standing& standing(int i) { return standing_[static_cast<std::size_t>(i)]; }
  const Standing& standing(int i) const { return standing_[static_cast<std::size_t>(i)]; }
  Held& held(int i) { return held_[static_cast<std::size_t>(i)]; }
  const Held& held(int i) const { return held_[static_cast<std::size_t>(i)]; }
  OfRow& of(int row) { return of_row_[static_cast<std::size_t>(row)]; }
  const OfRow& of(int row) const { return of_row_[static_cast<std::size_t>(row)]; }

  // A pass goes through all lanes row by row, so that what is looked at together stands together.
  const Lane* lane_;
  int rows_;
  std::int64_t least_ = far;
  std::vector<Standing> standing_;  // per number of tasks done
  std::vector<OfRow> of_row_;
  std::vector<Held> held_;     // per task; empty when the lane holds none
  std::vector<int> releases_;  // per row: the task whose hold ends there, -1: none; empty when the lane holds none
  std::vector<int> lower_;     // per row: the next row that adds less; past the last, if none does
  SlidingLeast queue_;         // up: starts of tasks; down: what rows add
  int next_ = 0;               // up: the next task to be pushed; down: the next to be finished
  int dropped_ = 0;            // up: tasks whose stops are past
  int pushed_ = 0;             // down: the lowest row pushed
  // Of the stop looked at.
  int row_ = 0;
  int done_ = 0;              // tasks done by a batch that ends there; -1: none may
  int release_ = -1;          // the task whose hold ends there
  bool sets_ = false;         // the next task may be held from there
  std::int64_t ended_ = 0;    // the cheapest way to done_ by a batch, without the price
  std::int64_t using_ = 0;    // the cheapest way by the stop, without its price
  std::int64_t without_ = 0;  // the cheapest way without it
  std::int64_t work_ = 0;
};

}  // namespace latchwork::inline v0::planning
