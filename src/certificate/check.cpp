#include <fmt/format.h>

#include <algorithm>
#include <optional>
#include <span>
#include <string>
#include <utility>
#include <vector>

#include "certificate/check.hpp"
#include "certificate/schedules.hpp"
#include "certificate/ways.hpp"
#include "effort/check.hpp"
#include "grid/words.hpp"
#include "latchwork/certificate.hpp"
#include "machine/check.hpp"
#include "progress/pulse.hpp"
#include "text/words.hpp"

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

class Checker {
 public:
  Checker(const Grid& grid, const Machine& machine, const Effort& effort, const Certificate& certificate,
          const WatchOptions& options, std::size_t most_places)
      : effort_(effort),
        in_(certificate),
        most_places_(most_places),
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
      // Before row 0 is decided nothing is made and nothing paid.
      check_branches(in_.branches, "branches", 0, std::vector<std::int64_t>(ways_.size(), 0), cut_);
    } else if (bound <= cut_) {
      refuse("bound_ms", fmt::format("the prices prove {} ms and no more, and there are no branches",
                                     common_.fixed + (bound + in_.unit - 1) / in_.unit));
    }
  }

  std::int64_t bound_of(const Schedule& schedule, const RowPlaces& places,
                        std::vector<std::int64_t>* ways = nullptr) const {
    std::int64_t bound = schedule.paid + forced_after_[at(places.row())] + gain_[at(places.row())];
    for (std::size_t k = 0; k < ways_.size(); ++k) {
      const std::span<const std::int64_t> mine = places.of(k, schedule.ways);
      const std::vector<std::int64_t>& ahead = ahead_[k].after(places.row()).value;
      std::int64_t way = never;
      for (std::size_t i = 0; i < mine.size(); ++i) {
        if (mine[i] < never && ahead[i] < never) way = std::min(way, mine[i] + ahead[i]);
      }
      if (way >= never) return never;
      if (ways) ways->push_back(way);
      bound += way;
    }
    return bound;
  }

  // Places from where every way on passes the cut.
  void leave_out(std::int64_t paid, std::span<std::int64_t> reached, const RowPlaces& places, std::int64_t cut) const {
    std::vector<std::int64_t> ways;
    const std::int64_t bound = bound_of({paid, reached}, places, &ways);
    if (bound >= never) return;
    for (std::size_t k = 0; k < ways_.size(); ++k) {
      const std::span<std::int64_t> mine = places.of(k, reached);
      const std::vector<std::int64_t>& ahead = ahead_[k].after(places.row()).value;
      for (std::size_t i = 0; i < mine.size(); ++i) {
        if (mine[i] >= never || ahead[i] >= never || bound - ways[k] + mine[i] + ahead[i] > cut) mine[i] = never;
      }
    }
  }

  // Whether, whatever follows, x costs no more than y: wherever a class of y may still stand, x stands there or further
  // on, and what it has paid more is made up for elsewhere.
  bool as_good(const Schedule& x, const Schedule& y, const RowPlaces& places, std::int64_t cut) const {
    std::vector<std::int64_t> ways;
    const std::int64_t bound = bound_of(y, places, &ways);
    if (bound >= never) return true;  // a class of y is stuck: nothing follows from y, and `ways` ends at that class
    std::int64_t lead = x.paid - y.paid;
    for (std::size_t k = 0; k < ways_.size(); ++k) {
      const std::span<const std::int64_t> xs = places.of(k, x.ways);
      const std::span<const std::int64_t> ys = places.of(k, y.ways);
      const Places& ahead = ahead_[k].after(places.row());
      std::int64_t further = never;  // least that x has paid for this place or one further on
      std::optional<std::int64_t> most;
      for (std::size_t i = ys.size(); i-- > 0;) {
        const int place = ahead.first + static_cast<int>(i);
        std::int64_t mine = xs[i];
        if (place % 2 == 0) mine = further = std::min(further, mine);
        const std::int64_t to_go = ahead.value[i];
        if (ys[i] >= never || to_go >= never) continue;
        if (bound - ways[k] + ys[i] + to_go > cut) continue;  // no plan of use goes on from there
        if (mine >= never) return false;
        most = std::max(most.value_or(mine - ys[i]), mine - ys[i]);
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
      std::vector<std::int64_t> start;
      std::int64_t to_go = forced_after_[at(stretch.row)];
      for (const RowsOfPlaces& ahead : ahead_) {
        const std::vector<std::int64_t>& values = ahead.after(stretch.row).value;
        std::int64_t most = 0;
        for (const std::int64_t value : values) most = value < never ? std::max(most, value) : most;
        for (const std::int64_t value : values) start.push_back(value < never ? most - value : never);
        to_go += most;
      }
      check_branches(stretch.branches, field + ".branches", stretch.row + 1, start, to_go + stretch.gain - 1);
    }
    if (!in_.stretches.empty()) std::fill(gain_.begin(), gain_.begin() + in_.stretches.back().row + 1, gain);
  }

  // Each branch in its place and ended for a reason: none that goes on costs `cut` or less. `start`: what has been paid
  // for the places before row `first` is decided.
  void check_branches(const std::vector<Branch>& branches, const std::string& list, int first,
                      std::span<const std::int64_t> start, std::int64_t cut) {
    const auto field = [&](int branch) { return fmt::format("{}[{}]", list, branch); };
    KeptSchedules below(start.size(), 1);
    below.add(-1, {0, start});
    std::size_t next = 0;
    RowPlaces places(ways_, first - 1);
    std::vector<std::int64_t> passed;
    std::vector<std::int64_t> stopped;
    for (int row = first; row <= in_.rows && below.size() > 0; ++row) {
      const RowPlaces before = std::exchange(places, RowPlaces(ways_, row));
      const auto decide = [&](std::size_t from, bool stops, std::vector<std::int64_t>& into) {
        into.resize(places.count());
        const Schedule schedule = below[from];
        for (std::size_t k = 0; k < ways_.size(); ++k) {
          ways_[k].decided(before.of(k, schedule.ways), row, stops, places.of(k, std::span(into)));
        }
        return Schedule{schedule.paid + (stops ? stop() : 0), into};
      };
      // Of these no more is needed than where they come from until all that is kept is known.
      struct Dominated {
        int branch;
        std::size_t from;
      };
      std::vector<Dominated> dominated;
      const std::size_t most = std::min(2 * below.size(), most_places_ / std::max<std::size_t>(1, places.count()));
      KeptSchedules kept(places.count(), kept_of_row(branches, next, most));
      const auto take = [&](std::size_t from, bool stops, const Schedule& schedule, std::span<std::int64_t> ways) {
        const int continued = below.branch(from);
        const auto wanted = [&] {
          return fmt::format("row {}, from branch {}, {} stop, must be here", row, continued,
                             stops ? "with a" : "without a");
        };
        const auto here = [&] { return field(static_cast<int>(next)); };
        pulse_.step(static_cast<std::int64_t>(ways_.size()));
        if (next >= branches.size()) refuse(here(), "it is missing: " + wanted(), row);
        const Branch& branch = branches[next];
        if (branch.row != row || branch.below != continued || branch.stop != stops) refuse(here(), wanted(), row);
        if (branch.end != BranchEnd::dominated && branch.by != -1) {
          refuse(here() + ".by", "only a dominated branch names another", row);
        }
        if (branch.end == BranchEnd::kept) {
          require_room(below, kept, here(), row);
          leave_out(schedule.paid, ways, places, cut);
          kept.add(static_cast<int>(next), schedule);
        } else if (branch.end == BranchEnd::dominated) {
          dominated.push_back({static_cast<int>(next), from});
        } else if (branch.end != BranchEnd::bound) {
          refuse(here() + ".end", fmt::format("{} is no way to end", static_cast<int>(branch.end)), row);
        } else if (const std::int64_t bound = bound_of(schedule, places); bound <= cut) {
          refuse(here() + ".end", fmt::format("its bound, {}, does not pass {}", bound, cut), row);
        }
        ++next;
      };
      for (std::size_t from = 0; from < below.size(); ++from) {
        const Schedule without = decide(from, false, passed);
        const Schedule with = decide(from, true, stopped);
        // A stop that changes nothing need not be looked at.
        const bool idle = !forced(row) && stopped == passed;
        const bool listed = next < branches.size() && branches[next].stop;
        if (!idle || listed) take(from, true, with, stopped);
        if (!forced(row)) take(from, false, without, passed);
      }
      for (const Dominated& one : dominated) {
        pulse_.step(static_cast<std::int64_t>(ways_.size()));
        const Branch& branch = branches[at(one.branch)];
        const std::optional<std::size_t> by = kept.find(branch.by);
        if (!by) refuse(field(one.branch) + ".by", fmt::format("{} is no kept branch of its row", branch.by), row);
        if (!as_good(kept[*by], decide(one.from, branch.stop, passed), places, cut)) {
          refuse(field(one.branch) + ".by", fmt::format("branch {} is not as good whatever follows", branch.by), row);
        }
      }
      below = std::move(kept);
    }
    if (below.size() > 0) {
      refuse(field(below.branch(0)) + ".end", "a schedule reaches the top and costs less", in_.rows);
    }
    if (next < branches.size()) {
      refuse(field(static_cast<int>(next)), "it continues nothing", branches[next].row);
    }
  }

  // The branches from `next` on that say they are kept in that row, `most` of them.
  static std::size_t kept_of_row(const std::vector<Branch>& branches, std::size_t next, std::size_t most) {
    std::size_t kept = 0;
    for (std::size_t i = next; i < branches.size() && branches[i].row == branches[next].row && kept < most; ++i) {
      if (branches[i].end == BranchEnd::kept) ++kept;
    }
    return kept;
  }

  // A certificate that is wrong may keep more branches than any memory holds.
  void require_room(const KeptSchedules& below, const KeptSchedules& kept, std::string field, int row) const {
    if (below.places() + kept.places() + kept.places_of_one() <= most_places_) return;
    Place place;
    place.row = row;
    const std::string message =
        fmt::format("{}: up to here row {} keeps {} of {} each; a check holds {} at most, of two rows together", field,
                    row, count_of(static_cast<std::int64_t>(kept.size()), "branch", "es"),
                    count_of(static_cast<std::int64_t>(kept.places_of_one()), "place"), most_places_);
    place.field = std::move(field);
    throw Error(ErrorCode::too_large, place, message);
  }

  const Effort& effort_;
  const Certificate& in_;
  std::size_t most_places_;
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

CertificateCheck checking::check_within(const Grid& grid, const Machine& machine, const Effort& effort,
                                        const Certificate& certificate, const WatchOptions& options, std::size_t room) {
  check(machine);
  check(effort);
  require_extent("certificate", {.columns = certificate.columns, .rows = certificate.rows}, "grid", grid);
  CertificateCheck found;
  Checker checker(grid, machine, effort, certificate, options, room);
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

CertificateCheck check_certificate(const Grid& grid, const Machine& machine, const Effort& effort,
                                   const Certificate& certificate, const WatchOptions& options) {
  return checking::check_within(grid, machine, effort, certificate, options, checking::most_places);
}

}  // namespace latchwork::inline v0
