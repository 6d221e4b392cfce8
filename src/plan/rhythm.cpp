#include "plan/rhythm.hpp"

namespace latchwork::inline v0::planning {

Works works_in_rhythm(const Lane& lane, const Rhythm& rhythm, int rows) {
  Works works;
  int standing = 0;
  for (std::int64_t next = rhythm.first; next <= rows && standing < lane.task_count(); next += rhythm.every) {
    const int row = static_cast<int>(next);
    if (lane.task(standing).last_stop < row) break;
    const int done = lane.done_at(row);
    if (done <= standing) continue;  // nothing is due, or it waits
    works.cost += lane.batch_cost(standing, row);
    works.list.push_back({false, standing, done - 1, row});
    standing = done;
  }
  if (standing < lane.task_count()) works.cost = far;
  return works;
}

}  // namespace latchwork::inline v0::planning
