#pragma once

#include <algorithm>
#include <map>
#include <optional>
#include <set>
#include <string>
#include <vector>

#include "how_many.hpp"
#include "instances.hpp"
#include "latchwork/plan.hpp"
#include "latchwork/wale.hpp"
#include "random.hpp"

// A brute force over all stop sets and all works of each wale, written from DEVELOPERS.md in the plainest way. It
// shares no code with the planner.

namespace latchwork_test {

using namespace latchwork;

/// What may be asked of a plan of such an instance, but for kinds of stop and closed rows.
inline Conditions random_conditions(Random& random, const Instance& in) {
  Conditions asked;
  asked.carriage_right_only = random.one_in(3);
  if (random.one_in(2)) asked.rows_apart = random.between(1, 4);
  if (random.one_in(3)) asked.max_depth = random.between(1, 5);
  asked.forced_exempt = random.one_in(2);
  if (random.one_in(2)) {
    KeptRhythm kept;
    kept.row = random.between(1, in.grid.rows());
    kept.first_column = random.between(0, in.grid.columns() - 1);
    kept.last_column = random.between(kept.first_column, in.grid.columns() - 1);
    if (random.one_in(2)) kept.rhythm = Rhythm{random.between(1, 4), random.between(1, 3)};
    asked.rhythms.push_back(kept);
  }
  return asked;
}

inline bool in_stack(Cell cell) {
  return cell == Cell::tuck || cell == Cell::slip;
}

struct Brute {
  const Instance& in;
  Conditions asked = {};
  Wales wales{in.grid};

  std::int64_t rung(Cell cell) const {
    const Effort& effort = in.effort;
    return effort.drop + (cell == Cell::knit   ? effort.rung_knit
                          : cell == Cell::purl ? effort.rung_purl
                          : cell == Cell::tuck ? effort.rung_tuck
                                               : effort.rung_slip);
  }

  // Does a crossing after this row take the wale?
  bool crossed(const Wale& wale, int row) const {
    return std::any_of(in.grid.crossings().begin(), in.grid.crossings().end(), [&](const Crossing& crossing) {
      return crossing.row == row && wale.column_at(row) >= crossing.column &&
             wale.column_at(row) < crossing.column + crossing.width();
    });
  }

  Cell cell(const Wale& wale, int row) const { return in.grid.at(row, wale.column_at(row)); }

  bool tuck_at(int row, int column) const {
    return column >= 0 && column < in.grid.columns() && in.grid.at(row, column) == Cell::tuck;
  }

  bool batch_allowed(const Wale& wale, int a, int s) const {
    if (s - a > in.machine.max_ladder) return false;
    if (asked.max_depth > 0 && s - a > asked.max_depth) return false;
    if (a == wale.row - 1 && !in.machine.cast_on_loops) return false;
    if (a >= wale.row && in_stack(cell(wale, a))) return false;
    if (in_stack(cell(wale, s))) return false;
    for (int row = a + 1; row < s; ++row) {
      if (crossed(wale, row)) return false;
    }
    return true;
  }

  // By hold: all the tucks from row r up to a knit, none with a tuck beside it, set after row r, released after row b.
  std::optional<int> held(const Wale& wale, int r, const std::vector<bool>& stops) const {
    int b = r;
    bool alone = true;
    while (b + 1 <= wale.last_row() && cell(wale, b + 1) == Cell::tuck) {
      ++b;
      alone = alone && !tuck_at(b, wale.column_at(b) - 1) && !tuck_at(b, wale.column_at(b) + 1);
    }
    const bool whole = r < wale.row || !in_stack(cell(wale, r));
    const bool loop = r >= wale.row || in.machine.cast_on_loops;
    if (b > r && b < wale.last_row() && cell(wale, b + 1) == Cell::knit && alone && whole && loop &&
        stops[static_cast<std::size_t>(r)] && stops[static_cast<std::size_t>(b)]) {
      return b;
    }
    return {};
  }

  // The cheapest way to make rows r+1 and up of a wale that is right up to row r; nothing when there is none.
  std::optional<std::int64_t> rest(const Wale& wale, int r, const std::vector<bool>& stops) const {
    if (r == wale.last_row()) return 0;
    std::optional<std::int64_t> best;
    const auto offer = [&](std::int64_t cost, int then) {
      const auto more = rest(wale, then, stops);
      if (more && (!best || cost + *more < *best)) best = cost + *more;
    };
    if (cell(wale, r + 1) == Cell::knit) offer(0, r + 1);
    std::int64_t cost = in.effort.batch;
    for (int s = r + 1; s <= wale.last_row(); ++s) {
      cost += rung(cell(wale, s));
      if (stops[static_cast<std::size_t>(s)] && batch_allowed(wale, r, s)) offer(cost, s);
    }
    if (const auto b = held(wale, r, stops)) offer(in.effort.hold, *b + 1);
    return best;
  }

  std::int64_t fixed() const {
    const Effort& effort = in.effort;
    std::int64_t cost = in.grid.rows() * effort.row;
    for (const Crossing& crossing : in.grid.crossings()) {
      int lifted = crossing.left + crossing.right;
      const bool bare = crossing.centre > 0 && in.grid.at(crossing.row, crossing.column + crossing.left) == Cell::none;
      const bool moves = crossing.left != crossing.right;
      if (!bare && (crossing.place != Centre::front || moves)) lifted += crossing.centre;
      cost += effort.crossing + effort.crossing_stitch * lifted;
    }
    for (const Wale& wale : wales.all()) {
      cost += effort.shaping * ((wale.row > 1) + (wale.last_row() < in.grid.rows()));
    }
    return cost;
  }

  std::vector<bool> forced() const {
    std::vector<bool> rows(static_cast<std::size_t>(in.grid.rows()) + 1, false);
    for (const Crossing& crossing : in.grid.crossings()) rows[static_cast<std::size_t>(crossing.row)] = true;
    for (const Wale& wale : wales.all()) {
      if (wale.row > 1) rows[static_cast<std::size_t>(wale.row - 1)] = true;
      if (wale.last_row() < in.grid.rows()) rows[static_cast<std::size_t>(wale.last_row())] = true;
    }
    return rows;
  }

  // Over every set of stops.
  std::optional<std::int64_t> best() const { return least(); }

  // A rhythm done as plan.hpp tells it; nothing when a batch is not allowed or something is left undone.
  std::optional<std::int64_t> rhythm(int every, int first) const {
    const std::vector<bool> must = forced();
    std::int64_t total = fixed();
    std::vector<int> right_up_to;
    for (const Wale& wale : wales.all()) right_up_to.push_back(wale.row - 1);
    for (int row = 1; row <= in.grid.rows(); ++row) {
      const bool stop = row >= first && (row - first) % every == 0;
      if (must[static_cast<std::size_t>(row)] && !stop) return {};
      if (!stop) continue;
      bool busy = must[static_cast<std::size_t>(row)];
      for (std::size_t w = 0; w < wales.all().size(); ++w) {
        const Wale& wale = wales.all()[w];
        if (row < wale.row || row > wale.last_row() || in_stack(cell(wale, row))) continue;
        int lowest = right_up_to[w] + 1;
        while (lowest <= row && cell(wale, lowest) == Cell::knit) ++lowest;
        if (lowest > row) continue;
        if (!batch_allowed(wale, lowest - 1, row)) return {};
        total += in.effort.batch;
        for (int r = lowest; r <= row; ++r) total += rung(cell(wale, r));
        right_up_to[w] = row;
        busy = true;
      }
      if (busy) total += in.effort.stop;
    }
    for (std::size_t w = 0; w < wales.all().size(); ++w) {
      const Wale& wale = wales.all()[w];
      for (int row = right_up_to[w] + 1; row <= wale.last_row(); ++row) {
        if (cell(wale, row) != Cell::knit) return {};
      }
    }
    return total;
  }

  /// One way of making a wale: what it costs, and what is done after which row.
  struct Way {
    std::int64_t cost = 0;
    std::vector<std::pair<int, std::string>> deeds;
  };

  std::string deed(const char* what, const Wale& wale, int from, int to) const {
    std::string words = std::string(what) + " " + std::to_string(wale.column_at(to));
    for (int row = from; row <= to && *what == 'b'; ++row) words += cell_letter(cell(wale, row));
    return words;
  }

  /// Every way of making rows r+1 and up, at these stops.
  std::vector<Way> ways(const Wale& wale, int r, const std::vector<bool>& stops) const {
    if (r == wale.last_row()) return {{}};
    std::vector<Way> found;
    const auto offer = [&](std::int64_t cost, int then, const std::vector<std::pair<int, std::string>>& deeds) {
      for (Way way : ways(wale, then, stops)) {
        way.cost += cost;
        way.deeds.insert(way.deeds.end(), deeds.begin(), deeds.end());
        found.push_back(std::move(way));
      }
    };
    if (cell(wale, r + 1) == Cell::knit) offer(0, r + 1, {});
    std::int64_t cost = in.effort.batch;
    for (int s = r + 1; s <= wale.last_row(); ++s) {
      cost += rung(cell(wale, s));
      // A batch that starts below a knit costs more and is never of use: the rules begin it right below a hand cell.
      if (cell(wale, r + 1) == Cell::knit || !stops[static_cast<std::size_t>(s)] || !batch_allowed(wale, r, s))
        continue;
      offer(cost, s, {{s, deed("batch", wale, r + 1, s)}});
    }
    if (const auto b = held(wale, r, stops)) {
      offer(in.effort.hold, *b + 1, {{r, deed("hold", wale, r + 1, r + 1)}, {*b, deed("release", wale, r + 1, r + 1)}});
    }
    return found;
  }

  bool kept(std::size_t wale, const KeptRhythm& group) const {
    for (int column = group.first_column; column <= group.last_column; ++column) {
      if (in.grid.at(group.row, column) != Cell::none && wales.at(group.row, column) == static_cast<int>(wale)) {
        return true;
      }
    }
    return false;
  }

  /// The one way that a rhythm leaves a wale; nothing when it does not make it.
  std::optional<Way> way_in(const Wale& wale, const Rhythm& rhythm) const {
    Way way;
    int right_up_to = wale.row - 1;
    for (int row = 1; row <= wale.last_row(); ++row) {
      if (row < rhythm.first || (row - rhythm.first) % rhythm.every != 0) continue;
      if (row < wale.row || in_stack(cell(wale, row))) continue;
      int lowest = right_up_to + 1;
      while (lowest <= row && cell(wale, lowest) == Cell::knit) ++lowest;
      if (lowest > row) continue;
      if (!batch_allowed(wale, lowest - 1, row)) return {};
      way.cost += in.effort.batch;
      for (int r = lowest; r <= row; ++r) way.cost += rung(cell(wale, r));
      way.deeds.emplace_back(row, deed("batch", wale, lowest, row));
      right_up_to = row;
    }
    for (int row = right_up_to + 1; row <= wale.last_row(); ++row) {
      if (cell(wale, row) != Cell::knit) return {};
    }
    return way;
  }

  /// Whether sides and distances of these stops are as asked.
  bool allowed(const std::vector<bool>& stops) const {
    const std::vector<bool> must = forced();
    int last = -1;
    for (int row = 0; row < static_cast<int>(stops.size()); ++row) {
      const auto i = static_cast<std::size_t>(row);
      if (!stops[i]) continue;
      const bool right = in.machine.carriage_starts_right == (row % 2 == 0);
      if (std::count(asked.closed_rows.begin(), asked.closed_rows.end(), row) > 0 &&
          !(asked.forced_exempt && must[i])) {
        return false;
      }
      if (asked.carriage_right_only && !right && !(asked.forced_exempt && must[i])) return false;
      const bool both = last >= 0 && asked.forced_exempt && must[i] && must[static_cast<std::size_t>(last)];
      if (last >= 0 && row - last < asked.rows_apart && !both) return false;
      last = row;
    }
    return true;
  }

  std::vector<std::vector<bool>> stop_sets() const {
    const std::vector<bool> must = forced();
    std::vector<std::vector<bool>> sets;
    for (unsigned set = 0; set < 1U << must.size(); ++set) {
      std::vector<bool> stops(must.size());
      bool all = true;
      for (std::size_t row = 0; row < must.size(); ++row) {
        stops[row] = (set >> row & 1U) != 0;
        all = all && (stops[row] || !must[row]);
      }
      if (all) sets.push_back(std::move(stops));
    }
    return sets;
  }

  /// The least total under all conditions but max_kinds, with these rhythms.
  std::optional<std::int64_t> least_with(const std::vector<Rhythm>& rhythms) const {
    std::optional<std::int64_t> best;
    for (const std::vector<bool>& stops : stop_sets()) {
      if (!allowed(stops)) continue;
      std::int64_t total = fixed() + std::count(stops.begin(), stops.end(), true) * in.effort.stop;
      bool made = true;
      for (std::size_t w = 0; w < wales.all().size() && made; ++w) {
        std::optional<std::int64_t> cost;
        bool of_a_group = false;
        for (std::size_t g = 0; g < rhythms.size(); ++g) {
          if (!kept(w, asked.rhythms[g])) continue;
          of_a_group = true;
          const auto way = way_in(wales.all()[w], rhythms[g]);
          if (way && std::all_of(way->deeds.begin(), way->deeds.end(),
                                 [&](const auto& done) { return stops[static_cast<std::size_t>(done.first)]; })) {
            cost = way->cost;
          }
        }
        if (!of_a_group) cost = rest(wales.all()[w], wales.all()[w].row - 1, stops);
        made = cost.has_value();
        total += cost.value_or(0);
      }
      if (made && (!best || total < *best)) best = total;
    }
    return best;
  }

  /// The same, the best of all rhythms where one is left open.
  std::optional<std::int64_t> least() const {
    std::vector<Rhythm> rhythms;
    std::size_t open = asked.rhythms.size();
    for (std::size_t g = 0; g < asked.rhythms.size(); ++g) {
      rhythms.push_back(asked.rhythms[g].rhythm.value_or(Rhythm{}));
      if (!asked.rhythms[g].rhythm) open = g;
    }
    if (open == rhythms.size()) return least_with(rhythms);
    std::optional<std::int64_t> best;
    for (int every = 1; every <= in.grid.rows(); ++every) {
      for (int first = 1; first <= in.grid.rows(); ++first) {
        rhythms[open] = {every, first};
        const auto total = least_with(rhythms);
        if (total && (!best || *total < *best)) best = total;
      }
    }
    return best;
  }

  /// Whether a plan keeps all that is asked, whatever it takes.
  bool keeps(const Plan& plan) const {
    std::vector<bool> stops(static_cast<std::size_t>(in.grid.rows()) + 1, false);
    std::map<int, std::vector<std::pair<int, int>>> done;  // per wale: stop, and rungs
    for (const Stop& stop : plan.stops) {
      stops[static_cast<std::size_t>(stop.row)] = true;
      for (const Reform& reform : stop.reforms) {
        const auto rungs = static_cast<int>(reform.rungs.size());
        if (asked.max_depth > 0 && rungs > asked.max_depth) return false;
        done[reform.wale].emplace_back(stop.row, rungs);
      }
    }
    if (!allowed(stops)) return false;
    const std::vector<int> kinds = stop_kinds(plan);
    const auto count = static_cast<int>(std::set(kinds.begin(), kinds.end()).size());
    if (asked.max_kinds > 0 && count > asked.max_kinds) return false;
    const auto in_rhythm = [&](const KeptRhythm& group, const Rhythm& rhythm) {
      for (std::size_t w = 0; w < wales.all().size(); ++w) {
        if (!kept(w, group)) continue;
        const auto way = way_in(wales.all()[w], rhythm);
        const auto& mine = done[static_cast<int>(w)];
        const auto alike = [](const auto& deed, const auto& made) { return deed.first == made.first; };
        if (!way || !std::equal(way->deeds.begin(), way->deeds.end(), mine.begin(), mine.end(), alike)) return false;
      }
      return true;
    };
    return std::all_of(asked.rhythms.begin(), asked.rhythms.end(), [&](const KeptRhythm& group) {
      if (group.rhythm) return in_rhythm(group, *group.rhythm);
      for (int every = 1; every <= in.grid.rows(); ++every) {
        for (int first = 1; first <= in.grid.rows(); ++first) {
          if (in_rhythm(group, {every, first})) return true;
        }
      }
      return false;
    });
  }

  /// How many kinds of stop there are, when beside what is forced this is done after these rows.
  std::size_t kinds_of(std::map<int, std::set<std::string>> done) const {
    for (const Crossing& crossing : in.grid.crossings()) {
      Crossing alike = crossing;
      alike.row = 1;
      const bool bare = crossing.centre > 0 && in.grid.at(crossing.row, crossing.column + crossing.left) == Cell::none;
      done[crossing.row].insert("cross " + std::to_string(alike.column) + crossing_name(alike) + (bare ? "b" : ""));
    }
    for (const Wale& wale : wales.all()) {
      if (wale.row > 1) done[wale.row - 1].insert("on " + std::to_string(wale.column));
      if (wale.last_row() < in.grid.rows()) done[wale.last_row()].insert("off " + std::to_string(wale.columns.back()));
    }
    std::set<std::set<std::string>> kinds;
    for (const auto& [row, what] : done) kinds.insert(what);
    return kinds.size();
  }

  /// What the panel takes in a rhythm that keeps all conditions; nothing where it makes no panel, or breaks one.
  /// `apart`: what is forced is made beside it, else its stops are the rhythm's too.
  std::optional<std::int64_t> total_in(const Rhythm& rhythm, bool apart) const {
    std::vector<bool> stops = forced();
    for (std::size_t row = 0; row < stops.size() && !apart; ++row) {
      const int over = static_cast<int>(row) - rhythm.first;
      if (stops[row] && (over < 0 || over % rhythm.every != 0)) return {};
    }
    std::int64_t total = fixed();
    std::map<int, std::set<std::string>> done;
    for (std::size_t w = 0; w < wales.all().size(); ++w) {
      const auto way = way_in(wales.all()[w], rhythm);
      if (!way) return {};
      total += way->cost;
      for (const auto& [row, what] : way->deeds) {
        stops[static_cast<std::size_t>(row)] = true;
        done[row].insert(what);
      }
      for (const KeptRhythm& group : asked.rhythms) {
        if (!group.rhythm || !kept(w, group)) continue;
        const auto own = way_in(wales.all()[w], *group.rhythm);
        if (!own || own->deeds != way->deeds) return {};
      }
    }
    if (!allowed(stops)) return {};
    if (asked.max_kinds > 0 && kinds_of(std::move(done)) > static_cast<std::size_t>(asked.max_kinds)) return {};
    return total + std::count(stops.begin(), stops.end(), true) * in.effort.stop;
  }

  /// Per number of kinds of stop the least total of a plan with just so many, at stops as asked; nothing when there are
  /// too many plans to try.
  std::optional<std::map<std::size_t, std::int64_t>> by_kinds() const {
    std::map<std::size_t, std::int64_t> best;
    std::size_t tried = 0;
    for (const std::vector<bool>& stops : stop_sets()) {
      if (!allowed(stops)) continue;
      std::vector<std::vector<Way>> of;
      std::size_t product = 1;
      for (const Wale& wale : wales.all()) {
        of.push_back(ways(wale, wale.row - 1, stops));
        product *= of.back().size();
        if (product > 20'000) return {};
      }
      tried += product;
      if (tried > 60'000) return {};
      std::vector<std::size_t> choice(of.size(), 0);
      for (std::size_t i = 0; i < product; ++i) {
        std::size_t rest_of_i = i;
        std::int64_t total = fixed() + std::count(stops.begin(), stops.end(), true) * in.effort.stop;
        std::map<int, std::set<std::string>> done;
        for (std::size_t w = 0; w < of.size(); ++w) {
          const Way& way = of[w][rest_of_i % of[w].size()];
          rest_of_i /= of[w].size();
          total += way.cost;
          for (const auto& [row, what] : way.deeds) done[row].insert(what);
        }
        const auto [place, fresh] = best.try_emplace(kinds_of(std::move(done)), total);
        if (!fresh) place->second = std::min(place->second, total);
      }
    }
    return best;
  }

  /// Every way of making a wale at these stops that keeps to its rhythm.
  std::vector<Way> kept_ways(std::size_t wale, const std::vector<Rhythm>& rhythms,
                             const std::vector<bool>& stops) const {
    for (std::size_t g = 0; g < rhythms.size(); ++g) {
      if (!kept(wale, asked.rhythms[g])) continue;
      const auto way = way_in(wales.all()[wale], rhythms[g]);
      const bool made = way && std::all_of(way->deeds.begin(), way->deeds.end(), [&](const auto& done) {
                          return stops[static_cast<std::size_t>(done.first)];
                        });
      return made ? std::vector<Way>{*way} : std::vector<Way>{};
    }
    return ways(wales.all()[wale], wales.all()[wale].row - 1, stops);
  }

  /// Goes through the plans that keep all that is asked but max_kinds, each with the number of its kinds of stop and
  /// its total, until `visit` says no. Whether there were not too many to try.
  template <class Visit>
  bool each_kept(Visit&& visit) const {
    std::vector<Rhythm> rhythms;
    std::size_t open = asked.rhythms.size();
    for (std::size_t g = 0; g < asked.rhythms.size(); ++g) {
      rhythms.push_back(asked.rhythms[g].rhythm.value_or(Rhythm{}));
      if (!asked.rhythms[g].rhythm) open = g;
    }
    std::size_t tried = 0;
    const int most = open < rhythms.size() ? in.grid.rows() : 1;
    for (int every = 1; every <= most; ++every) {
      for (int first = 1; first <= most; ++first) {
        if (open < rhythms.size()) rhythms[open] = {every, first};
        for (const std::vector<bool>& stops : stop_sets()) {
          if (!allowed(stops)) continue;
          std::vector<std::vector<Way>> of;
          std::size_t product = 1;
          for (std::size_t w = 0; w < wales.all().size(); ++w) {
            of.push_back(kept_ways(w, rhythms, stops));
            product *= of.back().size();
            if (product > 20'000) return false;
          }
          tried += product;
          if (tried > 60'000) return false;
          const std::int64_t stopping = fixed() + std::count(stops.begin(), stops.end(), true) * in.effort.stop;
          for (std::size_t i = 0; i < product; ++i) {
            std::size_t rest_of_i = i;
            std::int64_t total = stopping;
            std::map<int, std::set<std::string>> done;
            for (const std::vector<Way>& mine : of) {
              const Way& way = mine[rest_of_i % mine.size()];
              rest_of_i /= mine.size();
              total += way.cost;
              for (const auto& [row, what] : way.deeds) done[row].insert(what);
            }
            if (!visit(kinds_of(std::move(done)), total)) return true;
          }
        }
      }
    }
    return true;
  }

  /// Whether any plan keeps all that is asked, kinds of stop too; nothing when there are too many plans to try.
  std::optional<bool> any() const {
    if (asked.max_kinds == 0) return least().has_value();
    bool found = false;
    const bool tried = each_kept([&](std::size_t kinds, std::int64_t) {
      found = kinds <= static_cast<std::size_t>(asked.max_kinds);
      return !found;
    });
    return tried ? std::optional(found) : std::nullopt;
  }

  /// Of the plans that keep all that is asked the least total, where there is one; not known when there are too many.
  struct Least {
    bool known = false;
    std::optional<std::int64_t> total{};
  };
  Least least_of_all() const {
    if (asked.max_kinds == 0) return {true, least()};
    Least least;
    least.known = each_kept([&](std::size_t kinds, std::int64_t total) {
      if (kinds > static_cast<std::size_t>(asked.max_kinds)) return true;
      if (!least.total || total < *least.total) least.total = total;
      return true;
    });
    return least;
  }
};

/// The rhythm of the least total, of equals the longest and then the soonest; none where `total_of` has none.
struct BestRhythm {
  std::optional<std::int64_t> total{};
  latchwork::Rhythm rhythm{};
};
template <class TotalOf>
BestRhythm best_rhythm(int rows, TotalOf&& total_of) {
  BestRhythm best;
  for (int every = rows; every >= 1; --every) {
    for (int first = 1; first <= rows; ++first) {
      const latchwork::Rhythm tried{every, first};
      const std::optional<std::int64_t> total = total_of(tried);
      if (total && (!best.total || *total < *best.total)) best = {total, tried};
    }
  }
  return best;
}

}  // namespace latchwork_test
