#include <fmt/format.h>

#include <algorithm>
#include <optional>
#include <utility>

#include "certificate/ways.hpp"
#include "effort/check.hpp"
#include "latchwork/certificate.hpp"
#include "machine/check.hpp"

namespace latchwork::inline v0 {
namespace {

using namespace checking;

std::size_t at(int i) {
  return static_cast<std::size_t>(i);
}

/// Where a certificate does not hold. Caught below: no caller sees it.
struct Wrong {
  Place place;
  std::string message;
};

[[noreturn]] void refuse(std::string field, std::string message, int row = 0, int column = -1) {
  Wrong wrong;
  wrong.place.row = row;
  wrong.place.column = column;
  wrong.message = fmt::format("{}: {}", field, message);
  wrong.place.field = std::move(field);
  throw wrong;
}

/// Up to some row: what is paid for stops, and each class's cheapest ways to its places.
struct Schedules {
  int branch = -1;
  std::int64_t paid = 0;
  std::vector<Places> classes;
};

class Checker {
 public:
  Checker(const Grid& grid, const Machine& machine, const Effort& effort, const Certificate& certificate)
      : effort_(effort), in_(certificate), wales_(grid), common_(common_of(grid, wales_, machine, effort)) {}

  void check() {
    if (in_.unit < 1 || in_.unit > in_.rows + 2) {
      refuse("unit", fmt::format("it is {}; it may be 1 to rows + 2, {}", in_.unit, in_.rows + 2));
    }
    check_forced();
    check_classes();
    check_prices();
    check_bound();
  }

 private:
  bool forced(int row) const { return common_.forced[at(row)] != 0; }
  std::int64_t stop() const { return effort_.stop * in_.unit; }

  void check_forced() {
    std::vector<int> rows;
    for (int row = 0; row <= in_.rows; ++row) {
      if (forced(row)) rows.push_back(row);
    }
    for (std::size_t i = 0; i < std::max(rows.size(), in_.forced.size()); ++i) {
      if (i < rows.size() && i < in_.forced.size() && rows[i] == in_.forced[i]) continue;
      refuse(fmt::format("forced[{}]", i),
             i < rows.size() ? fmt::format("every plan stops after row {}", rows[i])
                             : fmt::format("no crossing or shaping stops every plan after row {}", in_.forced[i]),
             i < rows.size() ? rows[i] : in_.forced[i]);
    }
  }

  // Every wale with hand cells in one class, all of a class alike.
  void check_classes() {
    std::vector<int> class_of(wales_.all().size(), -1);
    for (std::size_t k = 0; k < in_.classes.size(); ++k) {
      const std::vector<int>& wales = in_.classes[k].wales;
      if (wales.empty()) refuse(fmt::format("classes[{}].wales", k), "there is none");
      for (std::size_t i = 0; i < wales.size(); ++i) {
        const std::string field = fmt::format("classes[{}].wales[{}]", k, i);
        const int wale = wales[i];
        if (wale < 0 || at(wale) >= class_of.size()) {
          refuse(field, fmt::format("wale {} does not exist; there are {}", wale, class_of.size()));
        }
        const Wale& named = wales_.all()[at(wale)];
        if (i > 0 && wale <= wales[i - 1]) {
          refuse(field, fmt::format("wale {} does not follow wale {}", wale, wales[i - 1]), named.row, named.column);
        }
        if (class_of[at(wale)] >= 0) {
          refuse(field, fmt::format("wale {} is in class {} already", wale, class_of[at(wale)]), named.row,
                 named.column);
        }
        if (common_.pieces[at(wale)].empty()) {
          refuse(field, fmt::format("wale {} has no hand cells", wale), named.row, named.column);
        }
        if (common_.pieces[at(wale)] != common_.pieces[at(wales.front())]) {
          refuse(field, fmt::format("wale {} is not made as wale {} is", wale, wales.front()), named.row, named.column);
        }
        class_of[at(wale)] = static_cast<int>(k);
      }
    }
    for (std::size_t wale = 0; wale < class_of.size(); ++wale) {
      if (class_of[wale] >= 0 || common_.pieces[wale].empty()) continue;
      const Wale& named = wales_.all()[wale];
      refuse("classes", fmt::format("wale {} has hand cells and is in no class", wale), named.row, named.column);
    }
  }

  // No stop sold for more than it costs, and each class's cheapest way.
  void check_prices() {
    std::vector<std::int64_t> sold(at(in_.rows) + 1, 0);
    for (std::size_t k = 0; k < in_.classes.size(); ++k) {
      const WaleClass& one = in_.classes[k];
      std::vector<std::int64_t> price(at(in_.rows) + 1, 0);
      for (std::size_t i = 0; i < one.prices.size(); ++i) {
        const auto [row, paid] = one.prices[i];
        const std::string field = fmt::format("classes[{}].prices[{}]", k, i);
        if (row < 0 || row > in_.rows) refuse(field, fmt::format("there is no row {}", row));
        if (i > 0 && row <= one.prices[i - 1].row) {
          refuse(field, fmt::format("row {} does not follow row {}", row, one.prices[i - 1].row), row);
        }
        if (forced(row)) refuse(field, "a forced stop is paid for by the panel", row);
        if (paid < 1) refuse(field, fmt::format("the price is {}; it is above 0 or not listed", paid), row);
        if (paid > stop() - sold[at(row)]) {
          refuse(field, fmt::format("with this price the stop is sold for more than its {}", stop()), row);
        }
        sold[at(row)] += paid;
        price[at(row)] = paid;
      }
      ways_.emplace_back(common_.pieces[at(one.wales.front())], in_.rows, static_cast<std::int64_t>(one.wales.size()),
                         in_.unit, effort_);
      std::vector<Places> ahead = ways_.back().to_end(price);
      const std::int64_t least = ways_.back().least(ahead.front(), price.front());
      const std::string field = fmt::format("classes[{}].least", k);
      if (least >= never) {
        const Wale& named = wales_.all()[at(one.wales.front())];
        refuse(field, "these wales cannot be made at all", named.row, named.column);
      }
      if (least != one.least) {
        refuse(field, fmt::format("the cheapest way under these prices is {}, not {}", least, one.least));
      }
      sum_ += least;
      if (!in_.branches.empty()) ahead_.push_back(std::move(ahead));
    }
  }

  void check_bound() {
    forced_after_.assign(at(in_.rows) + 1, 0);
    std::int64_t forced_cost = 0;
    for (int row = in_.rows; row >= 0; --row) {
      forced_after_[at(row)] = forced_cost;
      if (forced(row)) forced_cost += stop();
    }
    if (in_.bound_ms < 0 || in_.bound_ms > common_.most) {
      refuse("bound_ms", fmt::format("no plan for this panel could take {} ms", in_.bound_ms));
    }
    // The greatest total below the bound that a plan could have; branches that must pass it are ended.
    const std::int64_t above = in_.bound_ms - common_.fixed - 1;
    if (above >= 0) {
      cut_ = above / common_.step * common_.step * in_.unit;
    } else if (in_.branches.empty()) {
      return;  // no plan could have such a total
    }
    const std::int64_t bound = forced_cost + sum_;
    if (!in_.branches.empty()) {
      check_branches();
    } else if (bound <= cut_) {
      refuse("bound_ms", fmt::format("the prices prove {} ms and no more, and there are no branches",
                                     common_.fixed + (bound + in_.unit - 1) / in_.unit));
    }
  }

  std::int64_t bound_of(const Schedules& schedules, int row, std::vector<std::int64_t>* ways = nullptr) const {
    std::int64_t bound = schedules.paid + forced_after_[at(row)];
    for (std::size_t k = 0; k < ways_.size(); ++k) {
      const Places& mine = schedules.classes[k];
      const Places& ahead = ahead_[k][at(row)];
      std::int64_t way = never;
      for (std::size_t i = 0; i < mine.value.size(); ++i) {
        const std::int64_t to_go = ahead.at(mine.first + static_cast<int>(i));
        if (mine.value[i] < never && to_go < never) way = std::min(way, mine.value[i] + to_go);
      }
      if (way >= never) return never;
      if (ways) ways->push_back(way);
      bound += way;
    }
    return bound;
  }

  // Whether, whatever follows, x costs no more than y: wherever a class of y may still stand, x stands there or further
  // on, and what it has paid more is made up for elsewhere.
  bool as_good(const Schedules& x, const Schedules& y, int row) const {
    std::vector<std::int64_t> ways;
    const std::int64_t bound = bound_of(y, row, &ways);
    std::int64_t lead = x.paid - y.paid;
    for (std::size_t k = 0; k < ways_.size(); ++k) {
      const Places& xs = x.classes[k];
      const Places& ys = y.classes[k];
      std::int64_t further = never;  // least that x has paid for this place or one further on
      std::optional<std::int64_t> most;
      for (std::size_t i = ys.value.size(); i-- > 0;) {
        const int place = ys.first + static_cast<int>(i);
        std::int64_t mine = xs.at(place);
        if (place % 2 == 0) mine = further = std::min(further, mine);
        const std::int64_t to_go = ahead_[k][at(row)].at(place);
        if (ys.value[i] >= never || to_go >= never) continue;
        if (bound - ways[k] + ys.value[i] + to_go > cut_) continue;  // no plan of use goes on from there
        if (mine >= never) return false;
        most = std::max(most.value_or(mine - ys.value[i]), mine - ys.value[i]);
      }
      if (most) lead += *most;
    }
    return lead <= 0;
  }

  void check_branches() {
    std::vector<Schedules> below(1);
    below.front().classes.assign(ways_.size(), Ways::start());
    std::size_t next = 0;
    for (int row = 0; row <= in_.rows && !below.empty(); ++row) {
      std::vector<Schedules> kept;
      std::vector<Schedules> dominated;
      for (const Schedules& from : below) {
        const Schedules passed = decided(from, row, false);
        Schedules stopped = decided(from, row, true);
        // A stop that changes nothing need not be looked at.
        const bool idle = !forced(row) && stopped.classes == passed.classes;
        const bool listed = next < in_.branches.size() && in_.branches[next].stop;
        if (!idle || listed) take(next++, from.branch, row, true, std::move(stopped), kept, dominated);
        if (!forced(row)) take(next++, from.branch, row, false, passed, kept, dominated);
      }
      for (const Schedules& one : dominated) {
        const Branch& branch = in_.branches[at(one.branch)];
        const auto by = std::lower_bound(kept.begin(), kept.end(), branch.by,
                                         [](const Schedules& k, int index) { return k.branch < index; });
        if (by == kept.end() || by->branch != branch.by) {
          refuse(fmt::format("branches[{}].by", one.branch), fmt::format("{} is no kept branch of its row", branch.by),
                 row);
        }
        if (!as_good(*by, one, row)) {
          refuse(fmt::format("branches[{}].by", one.branch),
                 fmt::format("branch {} is not as good whatever follows", branch.by), row);
        }
      }
      below = std::move(kept);
    }
    if (!below.empty()) {
      refuse(fmt::format("branches[{}].end", below.front().branch), "a schedule reaches the top with a lower total",
             in_.rows);
    }
    if (next < in_.branches.size()) {
      refuse(fmt::format("branches[{}]", next), "it continues nothing", in_.branches[next].row);
    }
  }

  Schedules decided(const Schedules& from, int row, bool stops) const {
    Schedules to;
    to.paid = from.paid + (stops ? stop() : 0);
    for (std::size_t k = 0; k < ways_.size(); ++k) to.classes.push_back(ways_[k].decided(from.classes[k], row, stops));
    return to;
  }

  // Branch `next` must be this one.
  void take(std::size_t next, int from, int row, bool stops, Schedules schedules, std::vector<Schedules>& kept,
            std::vector<Schedules>& dominated) {
    const auto wanted = [&] {
      return fmt::format("row {}, from branch {}, {} stop, must be here", row, from, stops ? "with a" : "without a");
    };
    const std::string field = fmt::format("branches[{}]", next);
    if (next >= in_.branches.size()) refuse(field, "it is missing: " + wanted(), row);
    const Branch& branch = in_.branches[next];
    if (branch.row != row || branch.below != from || branch.stop != stops) refuse(field, wanted(), row);
    if (branch.end != BranchEnd::dominated && branch.by != -1) {
      refuse(field + ".by", "only a dominated branch names another", row);
    }
    schedules.branch = static_cast<int>(next);
    switch (branch.end) {
      case BranchEnd::kept:
        kept.push_back(std::move(schedules));
        return;
      case BranchEnd::dominated:
        dominated.push_back(std::move(schedules));
        return;
      case BranchEnd::bound: {
        const std::int64_t bound = bound_of(schedules, row);
        if (bound > cut_) return;
        refuse(field + ".end", fmt::format("its bound, {}, does not pass {}", bound, cut_), row);
      }
    }
    refuse(field + ".end", fmt::format("{} is no way to end", static_cast<int>(branch.end)), row);
  }

  const Effort& effort_;
  const Certificate& in_;
  Wales wales_;
  Common common_;
  std::vector<Ways> ways_;                  // per class
  std::vector<std::vector<Places>> ahead_;  // per class and row; empty without branches
  std::vector<std::int64_t> forced_after_;  // per row: forced stops above it
  std::int64_t sum_ = 0;
  std::int64_t cut_ = -1;
};

}  // namespace

CertificateCheck check_certificate(const Grid& grid, const Machine& machine, const Effort& effort,
                                   const Certificate& certificate) {
  check(machine);
  check(effort);
  if (certificate.rows != grid.rows() || certificate.columns != grid.columns()) {
    throw Error(ErrorCode::size_mismatch, {},
                fmt::format("the certificate is for {} columns x {} rows; the grid has {} x {}", certificate.columns,
                            certificate.rows, grid.columns(), grid.rows()));
  }
  CertificateCheck found;
  try {
    Checker(grid, machine, effort, certificate).check();
    found.holds = true;
    found.bound_ms = certificate.bound_ms;
    found.message = "holds";
  } catch (Wrong& wrong) {
    found.place = std::move(wrong.place);
    found.message = std::move(wrong.message);
  }
  return found;
}

}  // namespace latchwork::inline v0
