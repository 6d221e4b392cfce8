#include <fmt/format.h>

#include <algorithm>
#include <optional>
#include <utility>

#include "certificate/ways.hpp"
#include "effort/check.hpp"
#include "grid/words.hpp"
#include "latchwork/certificate.hpp"
#include "machine/check.hpp"
#include "progress/pulse.hpp"

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
  Checker(const Grid& grid, const Machine& machine, const Effort& effort, const Certificate& certificate,
          const WatchOptions& options)
      : effort_(effort),
        in_(certificate),
        wales_(grid),
        pulse_(options, steps(), "the check of the certificate"),
        common_(common_of(grid, wales_, machine, effort, pulse_)) {}

  /// Tells that all is done, found wrong or not.
  void finish() { pulse_.finish(); }

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
  // Of the pulse: each row of each wale, each row of each class, and each class of each branch, twice where it is held
  // against another.
  std::int64_t steps() const {
    std::int64_t steps = 0;
    for (const Wale& wale : wales_.all()) steps += wale.last_row() - wale.row + 1;
    const auto classes = static_cast<std::int64_t>(in_.classes.size());
    const auto looks = [](const std::vector<Branch>& branches) {
      const auto twice = std::ranges::count(branches, BranchEnd::dominated, &Branch::end);
      return static_cast<std::int64_t>(branches.size()) + twice;
    };
    std::int64_t branches = looks(in_.branches);
    for (const Stretch& stretch : in_.stretches) branches += looks(stretch.branches);
    return steps + classes * (in_.rows + 1 + branches);
  }
  bool forced(int row) const { return common_.forced[at(row)] != 0; }
  std::int64_t stop() const { return effort_.stop * in_.unit; }
  bool looks_ahead() const { return !in_.branches.empty() || !in_.stretches.empty(); }

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
        const auto field = [k, i] { return fmt::format("classes[{}].wales[{}]", k, i); };
        const int wale = wales[i];
        if (wale < 0 || at(wale) >= class_of.size()) {
          refuse(field(), fmt::format("wale {} does not exist; there are {}", wale, class_of.size()));
        }
        const Wale& named = wales_.all()[at(wale)];
        if (i > 0 && wale <= wales[i - 1]) {
          refuse(field(), fmt::format("wale {} does not follow wale {}", wale, wales[i - 1]), named.row, named.column);
        }
        if (class_of[at(wale)] >= 0) {
          refuse(field(), fmt::format("wale {} is in class {} already", wale, class_of[at(wale)]), named.row,
                 named.column);
        }
        if (common_.pieces[at(wale)].empty()) {
          refuse(field(), fmt::format("wale {} has no hand cells", wale), named.row, named.column);
        }
        if (common_.pieces[at(wale)] != common_.pieces[at(wales.front())]) {
          refuse(field(), fmt::format("wale {} is not made as wale {} is", wale, wales.front()), named.row,
                 named.column);
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
    std::vector<std::int64_t> price(at(in_.rows) + 1, 0);  // of one class after another
    ways_.reserve(in_.classes.size());
    for (std::size_t k = 0; k < in_.classes.size(); ++k) {
      const WaleClass& one = in_.classes[k];
      for (std::size_t i = 0; i < one.prices.size(); ++i) {
        const auto [row, paid] = one.prices[i];
        const auto field = [k, i] { return fmt::format("classes[{}].prices[{}]", k, i); };
        if (row < 0 || row > in_.rows) refuse(field(), fmt::format("there is no row {}", row));
        if (i > 0 && row <= one.prices[i - 1].row) {
          refuse(field(), fmt::format("row {} does not follow row {}", row, one.prices[i - 1].row), row);
        }
        if (forced(row)) refuse(field(), "a forced stop is paid for by the panel", row);
        if (paid < 1) refuse(field(), fmt::format("the price is {}; it is above 0 or not listed", paid), row);
        if (paid > stop() - sold[at(row)]) {
          // Both are 0 or more, but a file's price may be as high as a number can be.
          const std::uint64_t all = static_cast<std::uint64_t>(sold[at(row)]) + static_cast<std::uint64_t>(paid);
          refuse(
              field(),
              fmt::format("with this price the classes pay {} in all for this stop, and it costs {}: in 1/{} ms, all "
                          "prices for one stop may come to what it costs",
                          all, stop(), in_.unit),
              row);
        }
        sold[at(row)] += paid;
        price[at(row)] = paid;
      }
      ways_.emplace_back(common_.pieces[at(one.wales.front())], in_.rows, static_cast<std::int64_t>(one.wales.size()),
                         in_.unit, effort_);
      const Ways& ways = ways_.back();
      pulse_.step(in_.rows + 1 - ways.rows());
      if (looks_ahead()) ahead_.push_back(ways.to_end(price, pulse_));
      const std::int64_t least = looks_ahead() ? ways.least(ahead_.back(), price.front()) : ways.least(price, pulse_);
      const auto field = [k] { return fmt::format("classes[{}].least", k); };
      if (least >= never) {
        const Wale& named = wales_.all()[at(one.wales.front())];
        refuse(field(), "these wales cannot be made at all", named.row, named.column);
      }
      if (least != one.least) {
        refuse(field(), fmt::format("the cheapest way under these prices is {}, not {}", least, one.least));
      }
      sum_ += least;
      for (const StopPrice& set : one.prices) price[at(set.row)] = 0;
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
    const std::int64_t above = in_.bound_ms - common_.fixed - 1;  // below 0, and every plan passes it
    if (above >= 0) cut_ = above / common_.step * common_.step * in_.unit;
    check_stretches();
    const std::int64_t bound = forced_cost + sum_;
    if (!in_.branches.empty()) {
      Schedules start;
      start.classes.assign(ways_.size(), Ways::start());
      check_branches(in_.branches, "branches", 0, std::move(start), cut_);
    } else if (bound <= cut_) {
      refuse("bound_ms", fmt::format("the prices prove {} ms and no more, and there are no branches",
                                     common_.fixed + (bound + in_.unit - 1) / in_.unit));
    }
  }

  std::int64_t bound_of(const Schedules& schedules, int row, std::vector<std::int64_t>* ways = nullptr) const {
    std::int64_t bound = schedules.paid + forced_after_[at(row)] + gain_[at(row)];
    for (std::size_t k = 0; k < ways_.size(); ++k) {
      const Places& mine = schedules.classes[k];
      const Places& ahead = ahead_[k].after(row);
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

  // Places from where every way on passes the cut.
  void leave_out(Schedules& schedules, int row, std::int64_t cut) const {
    std::vector<std::int64_t> ways;
    const std::int64_t bound = bound_of(schedules, row, &ways);
    if (bound >= never) return;
    for (std::size_t k = 0; k < ways_.size(); ++k) {
      Places& mine = schedules.classes[k];
      for (std::size_t i = 0; i < mine.value.size(); ++i) {
        const std::int64_t to_go = ahead_[k].after(row).at(mine.first + static_cast<int>(i));
        if (mine.value[i] >= never || to_go >= never || bound - ways[k] + mine.value[i] + to_go > cut) {
          mine.value[i] = never;
        }
      }
    }
  }

  // Whether, whatever follows, x costs no more than y: wherever a class of y may still stand, x stands there or further
  // on, and what it has paid more is made up for elsewhere.
  bool as_good(const Schedules& x, const Schedules& y, int row, std::int64_t cut) const {
    std::vector<std::int64_t> ways;
    const std::int64_t bound = bound_of(y, row, &ways);
    if (bound >= never) return true;  // a class of y is stuck: nothing follows from y, and `ways` ends at that class
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
        const std::int64_t to_go = ahead_[k].after(row).at(place);
        if (ys.value[i] >= never || to_go >= never) continue;
        if (bound - ways[k] + ys.value[i] + to_go > cut) continue;  // no plan of use goes on from there
        if (mine >= never) return false;
        most = std::max(most.value_or(mine - ys.value[i]), mine - ys.value[i]);
      }
      if (most) lead += *most;
    }
    return lead <= 0;
  }

  // What is to come from the upper rows on. From each stretch's row every class may stand anywhere, at the cost at
  // which its way to go comes to the same: what its way on costs more than that, it costs any schedule more.
  void check_stretches() {
    gain_.assign(at(in_.rows) + 1, 0);
    std::int64_t gain = 0;  // of those above
    for (std::size_t i = 0; i < in_.stretches.size(); ++i) {
      const Stretch& stretch = in_.stretches[i];
      const std::string field = fmt::format("stretches[{}]", i);
      const int above = i > 0 ? in_.stretches[i - 1].row : in_.rows;
      if (stretch.row < 0 || stretch.row >= above) {
        refuse(field + ".row", fmt::format("row {} is not from 0 to {}", stretch.row, above - 1));
      }
      if (stretch.gain < 1 || stretch.gain > common_.most * in_.unit) {
        refuse(field + ".gain", fmt::format("{} is not above 0 and below any plan's total", stretch.gain), stretch.row);
      }
      if (i > 0) std::fill(gain_.begin() + stretch.row + 1, gain_.begin() + above + 1, gain);
      gain = std::max(gain, stretch.gain);
      Schedules start;
      std::int64_t to_go = forced_after_[at(stretch.row)];
      for (const RowsOfPlaces& ahead : ahead_) {
        Places places = ahead.after(stretch.row);
        std::int64_t most = 0;
        for (const std::int64_t value : places.value) most = value < never ? std::max(most, value) : most;
        for (std::int64_t& value : places.value) value = value < never ? most - value : never;
        to_go += most;
        start.classes.push_back(std::move(places));
      }
      check_branches(stretch.branches, field + ".branches", stretch.row + 1, std::move(start),
                     to_go + stretch.gain - 1);
    }
    if (!in_.stretches.empty()) std::fill(gain_.begin(), gain_.begin() + in_.stretches.back().row + 1, gain);
  }

  // Each branch in its place and ended for a reason: none that goes on costs `cut` or less.
  void check_branches(const std::vector<Branch>& branches, const std::string& list, int first, Schedules start,
                      std::int64_t cut) {
    const auto field = [&](int branch) { return fmt::format("{}[{}]", list, branch); };
    std::vector<Schedules> below;
    below.push_back(std::move(start));
    std::size_t next = 0;
    for (int row = first; row <= in_.rows && !below.empty(); ++row) {
      std::vector<Schedules> kept;
      std::vector<Schedules> dominated;
      const auto take = [&](int from, bool stops, Schedules schedules) {
        const auto wanted = [&] {
          return fmt::format("row {}, from branch {}, {} stop, must be here", row, from,
                             stops ? "with a" : "without a");
        };
        const auto here = [&] { return field(static_cast<int>(next)); };
        pulse_.step(static_cast<std::int64_t>(ways_.size()));
        if (next >= branches.size()) refuse(here(), "it is missing: " + wanted(), row);
        const Branch& branch = branches[next];
        if (branch.row != row || branch.below != from || branch.stop != stops) refuse(here(), wanted(), row);
        if (branch.end != BranchEnd::dominated && branch.by != -1) {
          refuse(here() + ".by", "only a dominated branch names another", row);
        }
        schedules.branch = static_cast<int>(next);
        if (branch.end == BranchEnd::kept) {
          leave_out(schedules, row, cut);
          kept.push_back(std::move(schedules));
        } else if (branch.end == BranchEnd::dominated) {
          dominated.push_back(std::move(schedules));
        } else if (branch.end != BranchEnd::bound) {
          refuse(here() + ".end", fmt::format("{} is no way to end", static_cast<int>(branch.end)), row);
        } else if (const std::int64_t bound = bound_of(schedules, row); bound <= cut) {
          refuse(here() + ".end", fmt::format("its bound, {}, does not pass {}", bound, cut), row);
        }
        ++next;
      };
      for (const Schedules& from : below) {
        const Schedules passed = decided(from, row, false);
        Schedules stopped = decided(from, row, true);
        // A stop that changes nothing need not be looked at.
        const bool idle = !forced(row) && stopped.classes == passed.classes;
        const bool listed = next < branches.size() && branches[next].stop;
        if (!idle || listed) take(from.branch, true, std::move(stopped));
        if (!forced(row)) take(from.branch, false, passed);
      }
      for (const Schedules& one : dominated) {
        pulse_.step(static_cast<std::int64_t>(ways_.size()));
        const int name = branches[at(one.branch)].by;
        const auto by = std::lower_bound(kept.begin(), kept.end(), name,
                                         [](const Schedules& k, int index) { return k.branch < index; });
        if (by == kept.end() || by->branch != name) {
          refuse(field(one.branch) + ".by", fmt::format("{} is no kept branch of its row", name), row);
        }
        if (!as_good(*by, one, row, cut)) {
          refuse(field(one.branch) + ".by", fmt::format("branch {} is not as good whatever follows", name), row);
        }
      }
      below = std::move(kept);
    }
    if (!below.empty()) {
      refuse(field(below.front().branch) + ".end", "a schedule reaches the top and costs less", in_.rows);
    }
    if (next < branches.size()) {
      refuse(field(static_cast<int>(next)), "it continues nothing", branches[next].row);
    }
  }

  Schedules decided(const Schedules& from, int row, bool stops) const {
    Schedules to;
    to.paid = from.paid + (stops ? stop() : 0);
    for (std::size_t k = 0; k < ways_.size(); ++k) to.classes.push_back(ways_[k].decided(from.classes[k], row, stops));
    return to;
  }

  const Effort& effort_;
  const Certificate& in_;
  Wales wales_;
  Pulse pulse_;
  Common common_;
  std::vector<Ways> ways_;                  // per class
  std::vector<RowsOfPlaces> ahead_;         // per class; empty without branches
  std::vector<std::int64_t> forced_after_;  // per row: forced stops above it
  std::vector<std::int64_t> gain_;          // per row: what is still to come above the ways to go
  std::int64_t sum_ = 0;
  std::int64_t cut_ = -1;
};

}  // namespace

CertificateCheck check_certificate(const Grid& grid, const Machine& machine, const Effort& effort,
                                   const Certificate& certificate, const WatchOptions& options) {
  check(machine);
  check(effort);
  require_extent("certificate", {.columns = certificate.columns, .rows = certificate.rows}, "grid", grid);
  CertificateCheck found;
  Checker checker(grid, machine, effort, certificate, options);
  try {
    checker.check();
    found.holds = true;
    found.bound_ms = certificate.bound_ms;
    found.message = "holds";
  } catch (Wrong& wrong) {
    found.place = std::move(wrong.place);
    found.message = std::move(wrong.message);
  }
  checker.finish();
  return found;
}

}  // namespace latchwork::inline v0
