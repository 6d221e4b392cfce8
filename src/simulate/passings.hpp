#pragma once

#include <cstddef>
#include <cstdint>
#include <memory>
#include <vector>

namespace latchwork::inline v0::knitting {

/// Two wales that change places, each named by its column in the row below.
struct Passing {
  std::int32_t near = 0;  ///< passes on the operator's side
  std::int32_t far = 0;   ///< passes on the RS
};

/// What passed after one row, in the order in which it was done.
class Passings {
 public:
  void add(const Passing& passing);
  /// Takes away the last so many.
  void take_back(std::size_t count);
  /// A wale that was dropped below the row comes up again on the operator's side of all that it passes there; what it
  /// has passed twice it does not pass. Whether that was so before. Linear in what it has passed, but for sorting it,
  /// and the first time in all that has passed after the row.
  bool pass_near(int wale, int columns);

  bool empty() const noexcept { return all_.empty(); }
  template <class Look>
  void each(Look&& look) const {
    for (const Passing& passing : all_) {
      if (passing.near >= 0) look(passing);
    }
  }

 private:
  /// Where the passings of each wale are, for a row after which some wale was dropped: one wale after the other may be.
  struct Index {
    /// Of the passings of its near and of its far wale the one before each.
    struct Before {
      std::int32_t near = -1;
      std::int32_t far = -1;
    };
    std::vector<std::int32_t> last;  ///< per column
    std::vector<Before> before;      ///< per passing
    std::size_t gone = 0;
  };

  void index(int columns);
  void link(std::size_t passing);
  void clear_away();

  std::vector<Passing> all_;  // of one that is gone `near` is turned below 0, until there are too many of them
  std::unique_ptr<Index> index_;
};

}  // namespace latchwork::inline v0::knitting
