#include "instructions/sheet.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <iterator>
#include <limits>
#include <map>
#include <span>
#include <string_view>

#include "crossing/words.hpp"
#include "grid/words.hpp"
#include "instructions/along.hpp"
#include "instructions/check.hpp"
#include "instructions/fold.hpp"
#include "instructions/needles_in_work.hpp"
#include "instructions/sweep.hpp"
#include "instructions/words.hpp"
#include "latchwork/finding.hpp"
#include "simulate/labels.hpp"
#include "text/duration.hpp"
#include "text/utf8.hpp"
#include "text/words.hpp"

namespace latchwork::inline v0::writing {
namespace {

using MarkOf = std::vector<std::pair<CrossingWay, std::string>>;

/// A stop in words, and its sweep where it is of several kinds: the last words of actions[at].
struct Told {
  SheetStop stop;
  Sweep sweep;
  std::size_t at = 0;
};

/// The first run among rungs in words, "4 p"; empty where there is none.
std::string run_in(std::string_view words) {
  const auto digit = [](char c) { return c >= '0' && c <= '9'; };
  for (std::size_t i = 0; i < words.size(); ++i) {
    if (!digit(words[i])) continue;
    std::size_t end = i;
    while (digit(words[end])) ++end;  // a number is never last
    if (words[end + 1] != 'x') return std::string(words.substr(i, end + 2 - i));
    i = end;
  }
  return {};
}

/// The first repeat, "2 x (t, p)"; empty where there is none.
std::string repeat_in(std::string_view words) {
  const std::size_t open = words.find(" x (");
  if (open == std::string_view::npos) return {};
  const std::size_t from = open == 0 ? 0 : words.find_last_not_of("0123456789", open - 1) + 1;
  return std::string(words.substr(from, words.find(')', open) + 1 - from));
}

class Writer {
 public:
  /// For a plan that check() takes and that has no needless steps, `left_out` telling of those it had.
  Writer(const Panel& panel, const Plan& plan, const Machine& machine, std::string left_out)
      : panel_(panel), plan_(plan), machine_(machine), left_out_(std::move(left_out)) {}

  Sheet written() {
    header();
    reasons();
    if (plan_.status == PlanStatus::infeasible) return std::move(sheet_);
    look();
    if (!works_ && plan_.stops.empty()) {
      sheet_.start = "No needle takes a stitch: there is nothing to knit.";
      return std::move(sheet_);
    }
    ways();
    sets();
    NeedlesInWork needles(plan_);
    start_and_end(needles);
    stops(needles);
    rules(needles.into_moved());
    key();
    cautions();
    return std::move(sheet_);
  }

 private:
  static constexpr std::size_t fewest_named = 3;  ///< ranges of a list that gets a name: fewer are told again

  void header() {
    sheet_.title = "Machine instructions: " + one_line(panel_.name());
    sheet_.header.push_back(fmt::format("{}, {} machine: {}, {:g} mm apart.", extent_words(panel_.grid()),
                                        one_line(machine_.name), count_of(machine_.needles, "needle"),
                                        machine_.pitch_mm));
    sheet_.header.push_back(
        "The wrong side (WS) faces you all the time; left and right are yours as you stand at the bed.");
    if (plan_.rhythm && !plan_.stops.empty()) {
      sheet_.header.push_back(fmt::format("Regular schedule: stop every {}, first at {}.",
                                          count_of(plan_.rhythm->every, "row"), counter(plan_.rhythm->first)));
    }
    if (!left_out_.empty()) sheet_.header.push_back(left_out_);
  }

  /// Why there is no plan, and what no plan can get round: a plan is made for a tuck at the edge too.
  void reasons() {
    std::vector<Finding> all = plan_.findings;
    for (const Finding& finding : findings(panel_.grid(), machine_)) {
      if (finding.severity == Severity::error && std::find(all.begin(), all.end(), finding) == all.end()) {
        all.push_back(finding);
      }
    }
    for (const Finding& finding : all) {
      std::string words = finding.message + needles_of(finding);
      if (!finding.suggestion.empty()) words += ". What would help: " + finding.suggestion;
      sheet_.reasons.push_back(one_line(words));
    }
    if (sheet_.reasons.empty() && plan_.status == PlanStatus::infeasible) {
      sheet_.reasons.emplace_back("There is no plan for this panel.");
    }
  }

  /// " (needles L4-R2)": findings tell RS columns, and who stands at the bed looks for needles.
  std::string needles_of(const Finding& finding) const {
    const int first = finding.place.column;
    const int last = std::max(first, finding.last_column);
    if (first < 0 || last >= plan_.columns || plan_.leftmost == 0) return {};
    return fmt::format(" ({} {})", first == last ? "needle" : "needles",
                       needle_run(needle_beside(plan_.leftmost, plan_.columns - 1 - last), last - first + 1));
  }

  /// What the plan holds, for rules, key and cautions.
  void look() {
    std::map<int, int> held;  // needle, and the row after which it was put in hold
    for (const Stop& stop : plan_.stops) {
      (stop.carriage_right ? right_ : left_) = true;
      for (const int needle : stop.releases) {
        const auto since = held.find(needle);
        if (since == held.end()) continue;
        most_tucks_ = std::max(most_tucks_, stop.row - since->second);
        held.erase(since);
      }
      for (const int needle : stop.holds) held.try_emplace(needle, stop.row);
      hand_ms_ = std::min(hand_ms_, std::numeric_limits<std::int64_t>::max() - stop.effort_ms) + stop.effort_ms;
      releases_ = releases_ || !stop.releases.empty();
      holds_ = holds_ || !stop.holds.empty() || !stop.releases.empty();
      for (const CrossingStep& step : stop.crossings) holds_ = holds_ || step.ease;
      for (std::size_t i = 0; i < stop.reforms.size(); ++i) {
        const Reform& reform = stop.reforms[i];
        int tucks = 0;
        for (const Cell rung : reform.rungs) {
          used_[static_cast<std::size_t>(rung)] = true;
          tucks = rung == Cell::tuck ? tucks + 1 : 0;
          most_tucks_ = std::max(most_tucks_, tucks);
        }
        const std::string words = rung_words(reform.rungs);
        if (repeat_.empty()) repeat_ = repeat_in(words);
        if (run_.empty()) run_ = run_in(words);
        if (i > 0 && needle_beside(stop.reforms[i - 1].needle, 1) == reform.needle) {
          const auto has_tucks = [](const Reform& r) {
            return std::find(r.rungs.begin(), r.rungs.end(), Cell::tuck) != r.rungs.end();
          };
          neighbours_tuck_ = neighbours_tuck_ || (has_tucks(reform) && has_tucks(stop.reforms[i - 1]));
        }
      }
      reforms_ = reforms_ || !stop.reforms.empty();
      sweeps_ = sweeps_ || !Sweep(stop.reforms).one_kind();
      from_left_ = from_left_ && from_the_left(stop.reforms);
    }
    (plan_.carriage_starts_right ? right_ : left_) = true;
    (plan_.carriage_starts_right == (plan_.rows % 2 == 0) ? right_ : left_) = true;
    for (const Cell cell : panel_.grid().cells()) {
      works_ = works_ || cell != Cell::none;
      slips_ = slips_ || cell == Cell::slip;
    }
    const auto columns = static_cast<std::size_t>(panel_.grid().columns());
    for (auto left = panel_.grid().cells(); !left.empty(); left = left.subspan(columns)) {
      ladders_ = ladders_ || has_ladder(left.first(columns));
    }
  }

  /// The yarn runs bare only between stitches; beyond the last stitch of a shaped edge there is none.
  static bool has_ladder(std::span<const Cell> cells) {
    const auto works = [](Cell cell) { return cell != Cell::none; };
    const auto first = std::find_if(cells.begin(), cells.end(), works);
    const auto last = std::find_if(cells.rbegin(), cells.rend(), works).base();
    return first < last && std::find(first, last, Cell::none) != last;
  }

  void ways() {
    for (const Stop& stop : plan_.stops) {
      for (const CrossingStep& step : stop.crossings) {
        const CrossingWay way = way_of(plan_, step);
        if (mark_of(way).empty()) marks_.emplace_back(way, fmt::format("X{}", marks_.size() + 1));
      }
    }
    for (const auto& [way, mark] : marks_) {
      sheet_.crossings.emplace_back(
          mark, crossing_title(way.shape) + ": " + way_words(way) + "." + missing_tools_words(way, machine_.prongs));
    }
  }

  /// Scattered needles that are re-formed alike at several stops get a name, so that the list is read once.
  void sets() {
    std::map<std::string, std::size_t> stops_of;
    std::vector<std::string> in_order;
    for (const Stop& stop : plan_.stops) {
      const Sweep sweep(stop.reforms);
      if (!sweep.one_kind() || sweep.ranges() < fewest_named) continue;
      const auto [entry, fresh] = stops_of.try_emplace(sweep.needles(), 0);
      if (fresh) in_order.push_back(entry->first);
      ++entry->second;
    }
    for (const std::string& needles : in_order) {
      if (stops_of[needles] < 2) continue;
      set_of_[needles] = fmt::format("set {}", set_of_.size() + 1);
      sheet_.sets.emplace_back(set_of_[needles], needles);
    }
  }

  std::string mark_of(const CrossingWay& way) const {
    for (const auto& [known, mark] : marks_) {
      if (known == way) return mark;
    }
    return {};
  }

  Told told_of(const Stop& stop, NeedlesInWork& needles, labels::InHold& held) {
    Told told{.stop = {.number = 1, .row = stop.row, .right = stop.carriage_right, .actions = {}},
              .sweep = Sweep(stop.reforms)};
    std::vector<std::string>& actions = told.stop.actions;
    const bool before = held.any();
    held.pass(stop);
    const bool after = held.any();
    if (!stop.releases.empty()) actions.push_back("release " + needle_ranges(stop.releases));
    told.at = actions.size();
    if (!told.sweep.empty() && told.sweep.one_kind()) {
      const auto set = set_of_.find(told.sweep.needles());
      actions.push_back(told.sweep.of_one_kind(set == set_of_.end() ? told.sweep.needles() : set->second));
    } else if (!told.sweep.empty()) {
      actions.push_back(fmt::format("sweep down to {} | {}", told.sweep.down_to(), told.sweep.work()));
      if (along_.empty()) along_ = told.sweep.along();
    }
    add_crossings(actions, stop);
    for (std::string& words : needles.shaped(stop)) actions.push_back(std::move(words));
    if (!stop.holds.empty()) actions.push_back("hold " + needle_ranges(stop.holds));
    if (!before && after) actions.emplace_back("set the carriage to hold");
    if (before && !after) actions.emplace_back("set the carriage back to knit");
    if (actions.empty()) actions.emplace_back("nothing to do");
    return told;
  }

  /// In the plan's order; those made alike one after the other are one list of needles, and what comes again along the
  /// bed is told once.
  void add_crossings(std::vector<std::string>& actions, const Stop& stop) {
    std::vector<OnNeedles> pieces;
    pieces.reserve(stop.crossings.size());
    for (const CrossingStep& step : stop.crossings) {
      const int first = block_needle(plan_, step.crossing);
      const std::string mark = mark_of(way_of(plan_, step));
      pieces.push_back({{first, needle_beside(first, step.crossing.width() - 1)},
                        mark,
                        fmt::format("{}: cross {}", needle_run(first, step.crossing.width()), mark)});
    }
    const std::vector<Along> all = along_the_bed(pieces);
    for (std::size_t i = 0; i < all.size();) {
      if (all[i].times > 1) {
        const std::vector<std::string> once = alike_together(pieces, all[i].first, all[i].first + all[i].period);
        actions.push_back(along_words(pieces, all[i], joined(once, " | ")));
        if (along_.empty()) along_ = along_step(all[i]);
        ++i;
        continue;
      }
      const std::size_t first = all[i].first;
      while (i < all.size() && all[i].times == 1) ++i;
      std::vector<std::string> rest = alike_together(pieces, first, i < all.size() ? all[i].first : pieces.size());
      std::move(rest.begin(), rest.end(), std::back_inserter(actions));
    }
  }

  /// "L30-L25, R4-R9: cross X3".
  static std::vector<std::string> alike_together(const std::vector<OnNeedles>& pieces, std::size_t first,
                                                 std::size_t end) {
    std::vector<std::string> out;
    for (std::size_t i = first; i < end;) {
      std::vector<std::string> needles;
      const std::string& mark = pieces[i].work;
      for (; i < end && pieces[i].work == mark; ++i) {
        needles.push_back(pieces[i].words.substr(0, pieces[i].words.find(':')));
      }
      out.push_back(fmt::format("{}: cross {}", joined(needles), mark));
    }
    return out;
  }

  /// The actions with rows told from the stop's own, so that the same work further up reads the same.
  static std::string work_key(const Told& told) {
    std::string key = told.sweep.key();
    for (std::size_t i = 0; i < told.stop.actions.size(); ++i) {
      if (told.sweep.empty() || i != told.at) key += told.stop.actions[i] + ';';
    }
    return key;
  }

  /// Sweeps that are told at several stops: they get a name, so that their list stands once.
  static std::vector<std::string> named_sweeps(const std::vector<Told>& told, const std::vector<Fold>& folds) {
    std::map<std::string, int> times;
    std::vector<std::string> named;
    for (const Fold& fold : folds) {
      if (fold.back > 0) continue;
      for (std::size_t i = fold.first; i < fold.first + fold.count; ++i) {
        const Sweep& sweep = told[i].sweep;
        if (sweep.one_kind() || sweep.ranges() < fewest_named) continue;
        if (++times[sweep.work()] == 2) named.push_back(sweep.work());
      }
    }
    return named;
  }

  void name_sweeps(std::vector<Told>& told, const std::vector<std::string>& named) {
    std::map<std::string, std::string> names;
    for (const Told& stop : told) {  // in the order in which they are told first
      const std::string& work = stop.sweep.work();
      if (names.contains(work) || std::find(named.begin(), named.end(), work) == named.end()) continue;
      const std::string name = fmt::format("sweep {}", names.size() + 1);
      names.emplace(work, name);
      sheet_.sweeps.emplace_back(name, work);
    }
    for (Told& stop : told) {
      const auto name = names.find(stop.sweep.work());
      if (name == names.end()) continue;
      stop.stop.actions[stop.at] = fmt::format("{} down to {}", name->second, stop.sweep.down_to());
    }
  }

  void stops(NeedlesInWork& needles) {
    std::vector<StopWork> works;
    std::vector<Told> told;
    std::map<std::string, int> known;
    labels::InHold held;
    for (const Stop& stop : plan_.stops) {
      Told words = told_of(stop, needles, held);
      words.stop.number = static_cast<int>(told.size()) + 1;
      std::size_t letters = 20;
      for (const std::string& action : words.stop.actions) letters += action.size() + 2;
      const int next = static_cast<int>(known.size());
      works.push_back({stop.row, known.try_emplace(work_key(words), next).first->second, letters});
      told.push_back(std::move(words));
    }
    // What has a name is soon told: with that the fold is made again.
    const std::vector<std::string> names = named_sweeps(told, folded(works));
    for (std::size_t i = 0; i < told.size(); ++i) {
      const std::string& sweep = told[i].sweep.work();
      if (std::find(names.begin(), names.end(), sweep) != names.end()) works[i].letters -= sweep.size();
    }
    const std::vector<Fold> folds = folded(works);
    name_sweeps(told, named_sweeps(told, folds));
    const std::vector<std::size_t> whose = told_by(folds);
    for (const Fold& fold : folds) append_part(told, fold, whose);
  }

  void append_part(const std::vector<Told>& told, const Fold& fold, const std::vector<std::size_t>& whose) {
    if (fold.back == 0) {
      if (sheet_.parts.empty() || sheet_.parts.back().repeat) sheet_.parts.emplace_back();
      std::vector<SheetStop>& stops = sheet_.parts.back().stops;
      for (std::size_t i = fold.first; i < fold.first + fold.count; ++i) stops.push_back(told[i].stop);
      return;
    }
    if (sheet_.parts.back().repeat) sheet_.parts.emplace_back();  // what repeats is never first
    SheetRepeat& repeat = sheet_.parts.back().repeat.emplace();
    const std::size_t end = fold.first + fold.count;
    repeat.one_stop = std::all_of(whose.begin() + static_cast<std::ptrdiff_t>(fold.first),
                                  whose.begin() + static_cast<std::ptrdiff_t>(end),
                                  [&](std::size_t stop) { return stop == whose[fold.first]; });
    repeat.words = repeat_words(told, fold, whose);
    repeats_ = true;
    named_ = named_ || !repeat.one_stop;
    for (std::size_t i = fold.first; i < end; ++i) {
      if ((i - fold.first) % fold.back == 0) repeat.times.emplace_back();
      const SheetStop& stop = told[i].stop;
      repeat.times.back().push_back(counter(stop.row) + " " + carriage(stop.right) +
                                    (repeat.one_stop ? "" : fmt::format(" as {}", told[whose[i]].stop.number)));
    }
  }

  /// "Repeat stops 3-6 every 24 rows, 2 more times, then stops 3-4:". Without "every" where the rows do not rise
  /// evenly.
  static std::string repeat_words(const std::vector<Told>& told, const Fold& fold,
                                  const std::vector<std::size_t>& whose) {
    const std::size_t from = fold.first - fold.back;
    const auto stops = [&](std::size_t count) {
      const int first = told[whose[from]].stop.number;
      return run_of("stop", first, first + static_cast<int>(count) - 1, "-");
    };
    const bool one_stop = fold.back > 1 && fold.count > 1 && whose[from + 1] == whose[from];
    if (one_stop) return fmt::format("Repeat {}, {} more times:", stops(1), fold.count);
    if (fold.count <= fold.back) return fmt::format("Repeat {} once more:", stops(fold.count));
    const auto rise = [&](std::size_t i) { return told[i].stop.row - told[i - fold.back].stop.row; };
    bool evenly = true;
    for (std::size_t i = fold.first; i < fold.first + fold.count; ++i) evenly = evenly && rise(i) == rise(fold.first);
    std::string words = "Repeat " + stops(fold.back);
    words += evenly ? fmt::format(" every {}, ", count_of(rise(fold.first), "row")) : ", ";
    words += count_of(static_cast<std::int64_t>(fold.count / fold.back), "more time");
    const std::size_t over = fold.count % fold.back;
    if (over > 0) words += ", then " + stops(over);
    return words + ":";
  }

  void rules(bool into_moved) {
    if (plan_.stops.empty()) return;
    sheet_.rules.emplace_back(
        "Knit to each row counter reading, stop, and do what stands beside it, one kind of work after another in the "
        "order listed.");
    if (reforms_) {
      sheet_.rules.push_back(fmt::format("Re-form needles one at a time, in the order listed{}.",
                                         from_left_ ? ": one sweep of the bed from your left" : ""));
      if (sweeps_) {
        sheet_.rules.emplace_back(
            "A sweep tells, from one | to the next, how many rows each of the needles drops and as what they are "
            "re-formed.");
      }
      sheet_.rules.emplace_back(
          "At each: tool into the loop as many rows down as told, then drop; work every rung, the lowest first; hang "
          "the last loop on its needle.");
    }
    if (repeats_) {
      sheet_.rules.push_back(
          std::string("Where stops are repeated, the row numbers in their work rise with the row counter") +
          (named_ ? "; \"as 3\" is the work of stop 3." : "."));
    }
    if (neighbours_tuck_) {
      sheet_.rules.emplace_back(
          "Where tucked needles stand side by side their rungs criss-cross: take the rung of the lower row first, "
          "every time.");
    }
    if (most_tucks_ > 1) {
      // Spencer, Knitting Technology, as study notes have it: the hook is what limits tucks on one needle.
      sheet_.rules.push_back(
          fmt::format("Up to {} tucks wait on one stitch until a loop is drawn through them all, and must fit into the "
                      "hook: four are usual at most.",
                      most_tucks_));
    }
    if (most_tucks_ > 0) {
      sheet_.rules.emplace_back(
          "Go by the row counter: where there are tucks the cloth shows fewer stitches than rows were knitted.");
    }
    if (into_moved) {
      sheet_.rules.emplace_back(
          "Where a stitch is dropped to the row after which another was moved onto its needle, the tool goes into both "
          "loops.");
    }
    if (!marks_.empty()) {
      sheet_.rules.emplace_back(
          "Cross after re-forming. The stitches put back first show in front on the right side: keep to the order.");
    }
  }

  void key() {
    auto& key = sheet_.key;
    if (left_) key.emplace_back("COL", "carriage on the left");
    if (right_) key.emplace_back("COR", "carriage on the right");
    if (!plan_.stops.empty() || !plan_.columns_on.empty()) {
      const std::string first = needle_name(plan_.leftmost);
      const std::string last = needle_name(needle_beside(plan_.leftmost, plan_.columns - 1));
      key.emplace_back(plan_.columns == 1 ? first : first + ", " + last,
                       "needles, counted outward from the middle of the bed" +
                           (plan_.columns == 1 ? "" : fmt::format("; {0}-{1}: all from {0} to {1}", first, last)));
    }
    key.emplace_back("RC", "row counter");
    if (!marks_.empty()) key.emplace_back("RS", "right side, which faces away from you");
    key.emplace_back("WS", "wrong side, which faces you");
    const auto used = [&](Cell cell) { return used_[static_cast<std::size_t>(cell)]; };
    if (used(Cell::knit)) key.emplace_back("k", "knit: work the rung on its needle, as the carriage would");
    if (used(Cell::purl)) {
      key.emplace_back("p", "purl: draw the rung through towards you with the latch tool");
    }
    if (used(Cell::slip)) {
      key.emplace_back(
          "s",
          "slip: leave the rung out; tool in front of it if the next loop above is purled, rung on your side "
          "if it is knit");
    }
    if (used(Cell::tuck)) {
      key.emplace_back("t", "tuck: tool behind the rung; the next loop above takes it along");
    }
    if (!along_.empty()) {
      key.emplace_back(along_,
                       "what is in the brackets [ ] so many times, each time that far from the last; the last time "
                       "ends at the needle told");
    }
    if (!repeat_.empty()) {
      const std::string times = repeat_.substr(0, repeat_.find(' '));
      key.emplace_back(repeat_, "work what is in brackets " + (times == "2" ? "twice" : times + " times"));
    }
    if (!run_.empty()) {
      key.emplace_back(run_, fmt::format("{} rungs as {}", run_.substr(0, run_.find(' ')), run_.back()));
    }
    if (!marks_.empty()) {
      const Crossing& first = marks_.front().first.shape;
      const bool right = first.lean == Lean::right;
      const int front = right ? first.left : first.right;
      const std::string name = crossing_long_name(first);
      std::string words =
          fmt::format("{} {} in front of {} and {} {}, as seen on the RS", count_of(front, "stitch", "es"),
                      front == 1 ? "passes" : "pass", right ? first.right : first.left, front == 1 ? "leans" : "lean",
                      right ? "right" : "left");
      if (first.centre > 0) words += fmt::format("; {} in the centre", first.centre);
      key.emplace_back(name.substr(0, name.find(',')), std::move(words));
    }
    if (holds_) {
      key.emplace_back(
          "hold",
          "the needle pushed all the way out: while the carriage is set to hold, the yarn lies over it and "
          "it does not knit; set to knit, the next row knits it back");
    }
    if (releases_) {
      key.emplace_back("release", "push the needle back to work: it knits all its loops together in the next row");
    }
  }

  void cautions() {
    auto& cautions = sheet_.cautions;
    if (reforms_ || !marks_.empty()) {
      cautions.emplace_back(
          "Latch tools and needles are pointed and sprung: keep fingers clear of the carriage's way, and keep tools "
          "from small children.");
    }
    if (!marks_.empty()) {
      cautions.emplace_back("Never force a tight crossing: ease the stitches first.");
    }
    if (hand_ms_ >= 1'200'000) {
      cautions.push_back(
          fmt::format("About {} of hand work: rest your hands often, a few minutes each time, and "
                      "change what they do.",
                      rounded_duration(hand_ms_)));
    }
    if (ladders_ || slips_) {
      cautions.push_back(fmt::format("{} can catch small fingers: not for things for infants and small children.",
                                     ladders_ && slips_ ? "Ladders and floats"
                                     : ladders_         ? "Ladders"
                                                        : "Floats"));
    }
    cautions.emplace_back("Whatever it becomes: nothing soft or loose lies with a sleeping infant.");
    // A panel does not say what it is for, so these stand on every sheet.
    cautions.emplace_back(
        "If it becomes a cushion, its filling follows local fire rules; if it is for a child, no cords, openings or "
        "long loops; local codes come first.");
  }

  void start_and_end(const NeedlesInWork& needles) {
    const auto [on, off] = needles.at_start();
    if (on.empty()) {
      sheet_.start = "Cast on nothing yet";
    } else {
      sheet_.start = fmt::format("Cast on {} ({}{})", needle_ranges(on), count_of(std::ssize(on), "needle"),
                                 needles.works_into_cast_on() ? ", each with a loop of its own" : "");
      if (!off.empty()) sheet_.start += fmt::format("; leave {} out of work", needle_ranges(off));
    }
    sheet_.start += fmt::format(". Set {}, {}.", counter(0), carriage(plan_.carriage_starts_right));
    const bool right_at_end = plan_.carriage_starts_right == (plan_.rows % 2 == 0);
    const bool stands_there = !plan_.stops.empty() && plan_.stops.back().row == plan_.rows;
    constexpr std::string_view off_the_bed = "Bind off, or take the panel off on waste yarn.";
    if (!plan_.stops.empty() && !needles.any_at_end()) {
      sheet_.end = "No stitch is left on the bed: the panel ends here.";
      const int bare = plan_.stops.back().row + 1;
      if (bare <= plan_.rows) {
        sheet_.end += fmt::format(" Nothing is knitted in {}.", run_of("row", bare, plan_.rows));
      }
    } else if (plan_.stops.empty()) {
      sheet_.end = fmt::format("No hand work: knit {}, to {}, {}. {}", count_of(plan_.rows, "row"), counter(plan_.rows),
                               carriage(right_at_end), off_the_bed);
    } else if (stands_there) {
      sheet_.end = off_the_bed;
    } else {
      sheet_.end = fmt::format("Knit to {}, {}. {}", counter(plan_.rows), carriage(right_at_end), off_the_bed);
    }
  }

  const Panel& panel_;
  const Plan& plan_;
  const Machine& machine_;
  std::string left_out_;
  Sheet sheet_;
  MarkOf marks_;
  std::map<std::string, std::string> set_of_;
  std::array<bool, 4> used_{};  ///< as rungs, by cell: knit, purl, tuck, slip
  bool left_ = false;
  bool right_ = false;
  bool reforms_ = false;
  bool sweeps_ = false;    ///< some stop has re-forms of several kinds
  bool from_left_ = true;  ///< at every stop
  bool holds_ = false;     ///< the word is used: for needles that tuck, or for those of a crossing
  bool releases_ = false;
  std::string along_;     ///< the first "each 11 needles further right"
  std::string repeat_;    ///< the first "2 x (t, p)"
  std::string run_;       ///< the first "4 p"
  bool repeats_ = false;  ///< some stops are told as stops before them
  bool named_ = false;    ///< some of them by number
  bool neighbours_tuck_ = false;
  int most_tucks_ = 0;  ///< on one stitch
  bool works_ = false;  ///< some cell has a stitch
  bool ladders_ = false;
  bool slips_ = false;
  std::int64_t hand_ms_ = 0;
};

}  // namespace

Sheet sheet_of(const Panel& panel, const Plan& plan, const Machine& machine) {
  const Checked checked = check(panel, plan);
  if (checked.needless.empty()) return Writer(panel, plan, machine, {}).written();
  const std::size_t steps = checked.needless.size();
  return Writer(panel, without(plan, checked.needless), machine,
                fmt::format("Left out below, for the cloth is the same without: {} of the plan. {}{}.",
                            count_of(static_cast<std::int64_t>(steps), "step"),
                            steps == 1 ? "" : "The first: ", checked.first_needless))
      .written();
}

}  // namespace latchwork::inline v0::writing
