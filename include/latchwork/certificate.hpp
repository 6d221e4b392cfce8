#pragma once

#include <cstdint>
#include <string>
#include <vector>

#include "latchwork/effort.hpp"
#include "latchwork/error.hpp"
#include "latchwork/export.hpp"
#include "latchwork/grid.hpp"
#include "latchwork/machine.hpp"
#include "latchwork/progress.hpp"

namespace latchwork::inline v0 {

// Why no plan by the planner's rules (see plan()) can take less. A stop serves many wales, so its cost is shared out
// among them: each class of wales pays a price for each stop it uses, and at no stop do the prices come to more than
// the stop costs. Then no plan can be cheaper than the forced stops and each class's cheapest way of being made under
// its prices. Where that sum stays below the total, branches close the gap: from the lowest row up, schedules that
// differ in where they stop, each ended because of its bound or because another is as good whatever follows. Stretches
// do so for the upper rows alone, so that those below need fewer. DEVELOPERS.md, "Certificates", has the rules.

/// What a class of wales pays for a stop.
struct StopPrice {
  int row = 0;             ///< the stop's, 0..R; not a forced stop
  std::int64_t price = 0;  ///< above 0; in 1/unit milliseconds, for all wales of the class together
  friend bool operator==(const StopPrice&, const StopPrice&) = default;
};

/// Wales whose hand work is in the same rows, with the same limits and costs (a purl and a slip of one cost are alike):
/// what is best for one is best for all.
struct WaleClass {
  std::vector<int> wales;         ///< indices into Wales(grid).all(), rising
  std::vector<StopPrice> prices;  ///< by row; a stop that is not listed is free to this class
  std::int64_t least = 0;         ///< the cheapest way of making them all under these prices, in 1/unit milliseconds
  friend bool operator==(const WaleClass&, const WaleClass&) = default;
};

/// What becomes of a branch: it goes on in the next row, its bound is too high, or another is as good.
enum class BranchEnd : std::uint8_t { kept = 0, bound = 1, dominated = 2 };

/// All schedules that stop, up to a row, at the same rows.
struct Branch {
  int row = 0;     ///< decided up to here, 0..R
  int below = -1;  ///< index of the kept branch of the row below that it continues; -1 in row 0
  bool stop = false;
  BranchEnd end = BranchEnd::kept;
  int by = -1;  ///< dominated: index of a kept branch of the same row; else -1
  friend bool operator==(const Branch&, const Branch&) = default;
};

/// What is to come from some row on: whatever a schedule has done up to there, its way on costs more than the prices'
/// ways to go. Branches show it, as those of the certificate do from the cast-on; from the row on each class may stand
/// anywhere, at the cost at which its way to go comes to the same.
struct Stretch {
  int row = 0;                   ///< after the decision at this row, 0..R-1
  std::int64_t gain = 0;         ///< how much more, above 0; in 1/unit milliseconds
  std::vector<Branch> branches;  ///< from row + 1 on, where `below` is -1
  friend bool operator==(const Stretch&, const Stretch&) = default;
};

/// A proof that no plan by the planner's rules takes less than `bound_ms`. Plain data: nothing in it is believed until
/// it is checked.
struct Certificate {
  int rows = 0;
  int columns = 0;
  std::int64_t bound_ms = 0;       ///< what is proven, hand work and carriage passes
  std::int64_t unit = 1;           ///< prices are in 1/unit milliseconds, 1..rows + 2
  std::vector<int> forced;         ///< rows of the stops that every plan makes: crossings, wales that begin or end
  std::vector<WaleClass> classes;  ///< every wale with hand cells is in one of them
  std::vector<Stretch> stretches;  ///< from the top down; each may use those above it, and `branches` all of them
  std::vector<Branch> branches;    ///< by row; empty where the prices suffice
  friend bool operator==(const Certificate&, const Certificate&) = default;
};

/// What check_certificate() found.
struct CertificateCheck {
  bool holds = false;         ///< every plan for this panel that keeps the planner's rules takes at least `bound_ms`
  std::int64_t bound_ms = 0;  ///< the certificate's when it holds, else 0
  Place place;                ///< where it fails: a row, a column, and the field ("classes[3].prices[2]")
  std::string message;        ///< "holds", or what is wrong
  friend bool operator==(const CertificateCheck&, const CertificateCheck&) = default;
};

/// Checks every word of a certificate, in whole numbers, against classes, ways and costs that it makes itself from the
/// grid; it uses none of the planner's code: what both use is Wales, which follows the loops, and the library's checks
/// of its arguments. What does not hold is told, not thrown. Linear in the certificate, the cells times the ladder's
/// depth, and branches times classes; memory for the cells, and 8 bytes a place of each branch kept in two rows. A plan
/// that verify() finds to make the panel, with hand_work() of `bound_ms`, is then a least one of those that keep the
/// planner's rules.
/// @throws Error bad_argument (machine, effort); size_mismatch (another panel's certificate); too_large, when a total,
/// times rows + 2, could pass 2^60 ms, or branches kept in two rows would take more than a gibibyte; cancelled.
LATCHWORK_API CertificateCheck check_certificate(const Grid& grid, const Machine& machine, const Effort& effort,
                                                 const Certificate& certificate, const WatchOptions& options = {});

}  // namespace latchwork::inline v0
