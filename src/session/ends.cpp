#include "session/ends.hpp"

#include <algorithm>
#include <deque>
#include <limits>
#include <utility>

namespace latchwork::inline v0::sitting {
namespace {

constexpr int never = std::numeric_limits<int>::max() / 2;

/// The fewest sessions from any of a run of ends on. From one question to the next both bounds of the run only fall, so
/// that each end comes and goes once.
class FallingRun {
 public:
  FallingRun(const std::vector<int>& fewest, const std::vector<char>& may_end)
      : fewest_(fewest), may_end_(may_end), next_(may_end.size()) {}

  int fewest(std::size_t first, std::size_t last) {
    while (next_ > first) {
      --next_;
      if (may_end_[next_] == 0) continue;
      while (!run_.empty() && fewest_[run_.back()] >= fewest_[next_]) run_.pop_back();
      run_.push_back(next_);
    }
    while (!run_.empty() && run_.front() > last) run_.pop_front();
    return run_.empty() ? never : fewest_[run_.front()];
  }

 private:
  const std::vector<int>& fewest_;
  const std::vector<char>& may_end_;
  std::size_t next_;
  std::deque<std::size_t> run_;
};

/// Where a session may end, for its beginning.
enum class Ends : char { stops, rows, past };

class Search {
 public:
  Search(Rows rows, std::int64_t length)
      : rows_(std::move(rows)), last_(rows_.spent.size() - 1), length_(length), half_(length - length / 2) {
    rows_.stop[last_] = rows_.clear[last_] = 1;  // the panel's end is as good as a stop
    fewest_.assign(last_ + 1, 0);
    find_kinds();
  }

  std::vector<std::size_t> ends() {
    const std::int64_t whole = rows_.spent[last_];
    const int fewest = fewest_within(0, whole);
    if (fewest <= 1) return {last_};
    std::int64_t least = 0;  // the longest session is at least this, and at most `longest`
    std::int64_t longest = whole;
    while (least < longest) {
      const std::int64_t middle = least + (longest - least) / 2;
      if (fewest_within(0, middle) == fewest) {
        longest = middle;
      } else {
        least = middle + 1;
      }
    }
    std::int64_t shortest = 0;  // the shortest session is at least this, and at most `most`
    std::int64_t most = longest;
    while (shortest < most) {
      const std::int64_t middle = most - (most - shortest) / 2;
      if (fewest_within(middle, longest) == fewest) {
        shortest = middle;
      } else {
        most = middle - 1;
      }
    }
    fewest_within(shortest, longest);
    return longest_first(longest);
  }

 private:
  std::int64_t work(std::size_t from, std::size_t to) const { return rows_.spent[to] - rows_.spent[from]; }

  /// The last row that work of so much takes in, walking down from `at`.
  std::size_t up_to(std::size_t from, std::int64_t most, std::size_t at) const {
    while (work(from, at) > most) --at;
    return at;
  }
  /// The first row after `from` that takes so much, walking down from `at`, the row after one that does.
  std::size_t first_of(std::size_t from, std::int64_t least, std::size_t at) const {
    while (at - 1 > from && work(from, at - 1) >= least) --at;
    return at;
  }

  void find_kinds() {
    kinds_.assign(last_, Ends::past);
    past_.assign(last_, last_);
    std::size_t half = last_ + 1;
    std::size_t full = last_;
    std::size_t after = last_;
    std::vector<std::size_t> next_clear(last_ + 1, last_);
    std::vector<std::size_t> next_stop(last_ + 2, last_ + 1);
    for (std::size_t row = last_ + 1; row-- > 0;) {
      if (rows_.clear[row] != 0) after = row;
      next_clear[row] = after;
      next_stop[row] = rows_.stop[row] != 0 ? row : next_stop[row + 1];
    }
    for (std::size_t from = last_; from-- > 0;) {
      half = first_of(from, half_, half);
      full = up_to(from, length_, full);
      if (next_stop[half] <= full) {
        kinds_[from] = Ends::stops;
      } else if (next_clear[from + 1] <= full) {
        kinds_[from] = Ends::rows;
      } else {
        past_[from] = next_clear[full + 1];
      }
    }
  }

  /// The fewest sessions, each of at least and at most so much work; of those from each row on it leaves the table.
  int fewest_within(std::int64_t least, std::int64_t most) {
    FallingRun stops(fewest_, rows_.stop);
    FallingRun clear(fewest_, rows_.clear);
    const std::int64_t longest = std::min(most, length_);
    std::size_t half = last_ + 1;
    std::size_t first = last_ + 1;
    std::size_t full = last_;
    fewest_[last_] = 0;
    for (std::size_t from = last_; from-- > 0;) {
      half = first_of(from, std::max(half_, least), half);
      first = first_of(from, least, first);
      full = up_to(from, longest, full);
      const int by_stop = stops.fewest(half, full);
      const int by_row = clear.fewest(first, full);
      int then = never;
      if (kinds_[from] == Ends::stops) {
        then = by_stop;
      } else if (kinds_[from] == Ends::rows) {
        then = by_row;
      } else if (const std::int64_t takes = work(from, past_[from]); takes >= least && takes <= most) {
        then = fewest_[past_[from]];
      }
      fewest_[from] = std::min(never, then + 1);
    }
    return fewest_.front();
  }

  /// By the table that fewest_within() left: each session from the first as long as can be.
  std::vector<std::size_t> longest_first(std::int64_t most) const {
    const std::int64_t longest = std::min(most, length_);
    std::vector<std::size_t> out;
    for (std::size_t from = 0; from < last_;) {
      std::size_t to = past_[from];
      if (kinds_[from] != Ends::past) {
        const std::vector<char>& may_end = kinds_[from] == Ends::stops ? rows_.stop : rows_.clear;
        const auto past = std::upper_bound(rows_.spent.begin(), rows_.spent.end(), rows_.spent[from] + longest);
        to = static_cast<std::size_t>(past - rows_.spent.begin()) - 1;
        while (may_end[to] == 0 || fewest_[to] + 1 != fewest_[from]) --to;  // what ends here takes the least, too
      }
      out.push_back(to);
      from = to;
    }
    return out;
  }

  Rows rows_;
  std::size_t last_;
  std::int64_t length_;
  std::int64_t half_;  // the least work of its second half
  std::vector<Ends> kinds_;
  std::vector<std::size_t> past_;  // where it ends when nothing in its length will do
  std::vector<int> fewest_;
};

}  // namespace

std::vector<std::size_t> even_ends(Rows rows, std::int64_t length_ms) {
  if (rows.spent.size() < 2) return {};
  return Search(std::move(rows), length_ms).ends();
}

}  // namespace latchwork::inline v0::sitting
