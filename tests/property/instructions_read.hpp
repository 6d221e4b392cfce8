#pragma once

// Reads machine instructions back, stop by stop, needle by needle, folds written out.

#include <algorithm>
#include <charconv>
#include <map>
#include <regex>
#include <set>
#include <string>
#include <utility>
#include <vector>

#include "catch.hpp"
#include "latchwork/plan.hpp"

namespace latchwork_test {

using namespace latchwork;

inline int place_of(int needle) {
  return needle > 0 ? needle - 1 : needle;
}
inline int needle_at(int place) {
  return place >= 0 ? place + 1 : place;
}
inline int number_in(const std::string& text) {
  int value = 0;
  std::from_chars(text.data(), text.data() + text.size(), value);
  return value;
}

inline std::vector<std::string> split(const std::string& text, const std::string& between) {
  std::vector<std::string> parts;
  std::size_t from = 0;
  for (std::size_t at = text.find(between); at != std::string::npos; at = text.find(between, from)) {
    parts.push_back(text.substr(from, at - from));
    from = at + between.size();
  }
  parts.push_back(text.substr(from));
  return parts;
}

inline int needle_read(const std::string& name) {
  return number_in(name.substr(1)) * (name[0] == 'L' ? -1 : 1);
}

using Sets = std::map<std::string, std::string>;

inline std::vector<int> needles_read(const std::string& told, const Sets& sets = {}) {
  const std::string ranges = told.starts_with("set ") ? sets.at(told) : told;
  std::vector<int> needles;
  for (const std::string& range : split(ranges, ", ")) {
    const auto ends = split(range, "-");
    for (int p = place_of(needle_read(ends.front())); p <= place_of(needle_read(ends.back())); ++p) {
      needles.push_back(needle_at(p));
    }
  }
  return needles;
}

inline std::vector<Cell> runs_read(const std::string& words) {
  std::vector<Cell> rungs;
  for (const std::string& word : split(words, ", ")) {
    const int times = word.size() > 1 ? number_in(word) : 1;
    rungs.insert(rungs.end(), static_cast<std::size_t>(times), *cell_of(word.back()));
  }
  return rungs;
}

inline std::vector<Cell> rungs_read(const std::string& words) {
  std::vector<Cell> rungs;
  static const std::regex item(R"((\d+) x \(([^)]*)\)|[^,( ]+ [a-z](?![a-z])|[a-z])");
  for (auto it = std::sregex_iterator(words.begin(), words.end(), item); it != std::sregex_iterator(); ++it) {
    if ((*it)[2].matched) {
      const std::vector<Cell> unit = runs_read((*it)[2]);
      for (int i = 0; i < number_in((*it)[1]); ++i) rungs.insert(rungs.end(), unit.begin(), unit.end());
    } else {
      const std::vector<Cell> run = runs_read((*it)[0]);
      rungs.insert(rungs.end(), run.begin(), run.end());
    }
  }
  return rungs;
}

/// "the left 3", "the right stitch", "stitches 3-4 from the left of the crossing": first step and how many.
inline std::pair<int, int> stitches_read(const std::string& words, const Crossing& shape) {
  const int width = shape.width();
  std::smatch m;
  if (words.starts_with("the centre ")) {  // the operator's left-hand group is the right one on the RS
    CHECK(words == (shape.centre == 1 ? "the centre stitch" : "the centre " + std::to_string(shape.centre)));
    return {shape.right, shape.centre};
  }
  if (std::regex_match(words, m, std::regex(R"(the left (\d+))"))) return {0, number_in(m[1])};
  if (std::regex_match(words, m, std::regex(R"(the right (\d+))"))) return {width - number_in(m[1]), number_in(m[1])};
  if (words == "the left stitch") return {0, 1};
  if (words == "the right stitch") return {width - 1, 1};
  REQUIRE(std::regex_match(words, m, std::regex(R"(stitch(?:es)? (\d+)(?:-(\d+))? from the left of the crossing)")));
  const int first = number_in(m[1]);
  return {first - 1, m[2].matched ? number_in(m[2]) - first + 1 : 1};
}

inline int needles_first_read(const std::string& words, int width) {
  std::smatch m;
  if (words.starts_with("the left")) return 0;
  if (words == "the right needle") return width - 1;
  if (std::regex_match(words, m, std::regex(R"(the right (\d+) needles)"))) return width - number_in(m[1]);
  REQUIRE(std::regex_match(words, m, std::regex(R"(needles? (\d+)(-\d+)? from the left of the crossing)")));
  return number_in(m[1]) - 1;
}

/// A crossing in words as returns in steps from its block's left needle; those that stay first.
struct WayRead {
  std::string title;
  std::vector<GroupReturn> returns;
  bool ease = false;
};

inline WayRead way_read(const std::string& words, const Crossing& shape) {
  WayRead way;
  const std::size_t colon = words.find(": ");
  way.title = words.substr(0, colon);
  std::map<int, std::vector<int>> prongs;  // by first step
  std::string rest = words.substr(colon + 2);
  rest = rest.substr(0, rest.find(" Not at hand: "));
  rest.pop_back();  // the full stop
  for (const std::string& part : split(rest, "; ")) {
    std::smatch m;
    if (part.starts_with("lift ")) {
      std::vector<int> last;
      for (const std::string& lift : split(part.substr(5), ", ")) {
        const std::size_t on = lift.rfind(" on ");
        const std::string tools = lift.substr(on + 4);
        if (tools != "another") {
          last.clear();
          for (const std::string& tool : split(tools, " and ")) last.push_back(number_in(tool.substr(2)));
        }
        prongs[stitches_read(lift.substr(0, on), shape).first] = last;
      }
    } else if (std::regex_match(part, m, std::regex("(.*) stays? where (it is|they are)"))) {
      const auto [from, count] = stitches_read(m[1], shape);
      way.returns.push_back({GroupName::centre, count, from, from, {}});
    } else if (part.starts_with("put back first ")) {
      for (const std::string& back : split(part.substr(15), ", then ")) {
        const std::size_t on = back.rfind(" on ");
        const auto [from, count] = stitches_read(back.substr(0, on), shape);
        const std::string needles = back.substr(on + 4);
        const bool own = needles == (count == 1 ? "its own needle" : "their own needles");
        way.returns.push_back(
            {GroupName::left, count, from, own ? from : needles_first_read(needles, shape.width()), prongs.at(from)});
      }
    } else {
      REQUIRE(part.starts_with("bring these needles out to hold"));
      way.ease = true;
    }
  }
  return way;
}

struct StopRead {
  int row = 0;
  bool right = true;
  std::vector<Reform> reforms;
  std::vector<std::pair<int, std::string>> crossings;  // block's left needle, letter
  std::vector<int> holds, releases, on, off;
  int depth_words = 0;
};

/// "L5-L4: 4 rows as 4 p | L1: 3 rows as t, 2 p": re-forms in the order told, from_row not yet known.
/// The needles of a text, each so many places further on.
inline std::string moved_on(const std::string& words, int places) {
  static const std::regex needle(R"(\b([LR])(\d+)\b)");
  std::string out;
  auto from = words.cbegin();
  for (auto it = std::sregex_iterator(words.begin(), words.end(), needle); it != std::sregex_iterator(); ++it) {
    const int number = number_in((*it)[2]);
    const int place = ((*it)[1] == "L" ? -number : number - 1) + places;
    out.append(from, (*it)[0].first);
    out += place < 0 ? "L" + std::to_string(-place) : "R" + std::to_string(place + 1);
    from = (*it)[0].second;
  }
  return out.append(from, words.cend());
}

/// "17 x [L93: 11 p | L90: 12 p], each 11 needles further right, to R87", written out. `found`: how many there were.
inline std::string spread(std::string words, int* found = nullptr) {
  static const std::regex along(R"((\d+) x \[([^\]]*)\], each (\d+) needles? further (right|left), to ([LR]\d+))");
  static const std::regex last_needle(R"(.*\b([LR]\d+):)");
  std::smatch m;
  while (std::regex_search(words, m, along)) {
    const std::string once = m[2];
    const bool crossings = once.find(": cross ") != std::string::npos;
    const int step = number_in(m[3]) * (m[4] == "right" ? 1 : -1);
    std::string out;
    for (int time = 0; time < number_in(m[1]); ++time) {
      if (time > 0) out += " | ";
      out += moved_on(once, time * step);
    }
    std::smatch last;
    REQUIRE(std::regex_search(out, last, last_needle));
    CHECK(last[1] == m[5]);
    if (crossings) out = std::regex_replace(out, std::regex(R"( \| )"), "; ");
    words = m.prefix().str() + out + m.suffix().str();
    if (found != nullptr) ++*found;
  }
  return words;
}

inline std::vector<Reform> sweep_read(const std::string& words, int row) {
  static const std::regex range(R"(([LR0-9, -]+): (\d+) rows? as (.*))");
  std::vector<Reform> reforms;
  for (const std::string& told : split(spread(words), " | ")) {
    std::smatch m;
    REQUIRE(std::regex_match(told, m, range));
    for (const int needle : needles_read(m[1])) {
      Reform read;
      read.needle = needle;
      read.from_row = row - number_in(m[2]);
      read.rungs = rungs_read(m[3]);
      reforms.push_back(read);
    }
  }
  return reforms;
}

/// "the cast-on, rows 2 and 4"
inline std::set<int> rows_read(const std::string& words) {
  static const std::regex number(R"(\d+)");
  std::set<int> rows;
  if (words.starts_with("the cast-on")) rows.insert(0);
  for (auto it = std::sregex_iterator(words.begin(), words.end(), number); it != std::sregex_iterator(); ++it) {
    rows.insert(number_in(it->str()));
  }
  return rows;
}

inline StopRead stop_read(const std::string& row, const std::string& side, const std::string& told, const Sets& sets) {
  const std::string actions = spread(told);
  StopRead stop;
  stop.row = number_in(row);
  stop.right = side == "COR";
  std::smatch m;
  static const std::regex reform(
      R"(([LR0-9, -]+|set \d+): drop (\d+) rows? to (?:row (\d+)|the cast-on), re-form rows? (\d+)(?:-(\d+))? as (.*))");
  static const std::regex sweep(R"((?:(sweep \d+)|sweep) down to ([^|]*?)(?: \| (.*))?)");
  static const std::regex cross(R"(([LR0-9, -]+): cross (X\d+))");
  static const std::regex begin("(?:increase 1: )?bring (.+) to work and cast on(?:, a loop of its own on it)?");
  static const std::regex end("bind off (.+) and put (?:it|them) out of work");
  static const std::regex decrease(
      "decrease 1: move the stitch on ([LR0-9]+) to [LR0-9]+ and put ([LR0-9]+) out of work.*");
  for (const std::string& action : split(actions, "; ")) {
    if (std::regex_match(action, m, reform)) {
      const int from = m[3].matched ? number_in(m[3]) : 0;
      CHECK(number_in(m[2]) == stop.row - from);
      CHECK(number_in(m[4]) == from + 1);
      CHECK(number_in(m[5].matched ? m[5] : m[4]) == stop.row);
      for (const int needle : needles_read(m[1], sets)) {
        Reform read;
        read.needle = needle;
        read.from_row = from;
        read.rungs = rungs_read(m[6]);
        stop.reforms.push_back(read);
      }
    } else if (std::regex_match(action, m, sweep)) {
      stop.reforms = sweep_read(m[1].matched ? sets.at(m[1]) : m[3].str(), stop.row);
      std::set<int> from;
      for (const Reform& read : stop.reforms) from.insert(read.from_row);
      CHECK(rows_read(m[2]) == from);
    } else if (std::regex_match(action, m, cross)) {
      for (const std::string& block : split(m[1], ", ")) {
        stop.crossings.emplace_back(needle_read(split(block, "-").front()), m[2]);
      }
    } else if (action.starts_with("hold ")) {
      stop.holds = needles_read(action.substr(5));
    } else if (action.starts_with("release ")) {
      stop.releases = needles_read(action.substr(8));
    } else if (std::regex_match(action, m, begin)) {
      stop.on = needles_read(m[1]);
    } else if (std::regex_match(action, m, end)) {
      stop.off = needles_read(m[1]);
    } else if (std::regex_match(action, m, decrease)) {
      stop.off = needles_read(m[1]);
      CHECK(m[1] == m[2]);
    } else {
      CHECK((action.starts_with("set the carriage") || action == "nothing to do"));
    }
  }
  return stop;
}

struct SheetRead {
  std::vector<StopRead> stops;
  std::map<std::string, std::string> ways;
  std::set<std::string> repeats;  ///< the ways in which repeats were told
  int left_out = 0;               ///< steps
};

/// "Repeat stops 3-6 every 24 rows, 2 more times, then stops 3-4:", held against the readings below it.
struct RepeatRead {
  std::string words;
  std::size_t from = 0;            ///< stops read before it
  std::vector<std::size_t> whose;  ///< for each reading the stop that it repeats, counted from 0
};

/// What a repeat's line says must be so of its readings, which alone are enough to follow it.
inline void check_repeat(const RepeatRead& repeat, SheetRead& sheet) {
  static const std::regex line(
      R"( +Repeat stops? (\d+)(?:-(\d+))?(?: every (\d+) rows?)?(?:, (\d+) more times?| once more))"
      R"((?:, then stops? (\d+)(?:-(\d+))?)?:)");
  INFO(repeat.words);
  REQUIRE_FALSE(repeat.whose.empty());
  std::smatch m;
  REQUIRE(std::regex_match(repeat.words, m, line));
  std::vector<std::size_t> run;
  const int last = number_in(m[2].matched ? m[2] : m[1]);
  for (int stop = number_in(m[1]); stop <= last; ++stop) run.push_back(static_cast<std::size_t>(stop) - 1);
  const auto times = static_cast<std::size_t>(m[4].matched ? number_in(m[4]) : 1);
  std::size_t over = 0;
  if (m[5].matched) {
    CHECK(m[5] == m[1]);
    over = static_cast<std::size_t>(number_in(m[6].matched ? m[6] : m[5]) - number_in(m[5])) + 1;
  }
  CHECK(over < run.size());
  REQUIRE(repeat.whose.size() == times * run.size() + over);
  for (std::size_t i = 0; i < repeat.whose.size(); ++i) CHECK(repeat.whose[i] == run[i % run.size()]);
  if (m[3].matched) {
    for (std::size_t i = repeat.from; i < sheet.stops.size(); ++i) {
      CHECK(sheet.stops[i].row - sheet.stops[i - run.size()].row == number_in(m[3]));
    }
  }
  sheet.repeats.insert(m[3].matched ? "every" : m[4].matched ? "unevenly" : "once more");
  if (over > 0) sheet.repeats.insert("then");
}

inline SheetRead sheet_read(const std::string& text) {
  SheetRead sheet;
  static const std::regex told(R"( *(\d+)  RC (\d+) (CO[LR])  (.*)\.)");
  static const std::regex reading(R"(RC (\d+) (CO[LR])(?: as (\d+))?)");
  static const std::regex way(R"(  (X\d+) +(\d+/.*))");
  static const std::regex left_out(R"(Left out below, .*: (\d+) steps? of the plan\..*)");
  static const std::regex one_stop(R"( +Repeat stop (\d+)[ ,].*)");
  RepeatRead repeat;
  std::vector<std::size_t> whose;  // for each stop the one whose work is told for it
  bool crossings = false;
  Sets sets;
  static const std::regex set(R"(  (set \d+|sweep \d+)  +(.*))");
  const auto end_repeat = [&] {
    if (!repeat.words.empty()) check_repeat(repeat, sheet);
    repeat = {};
  };
  for (const std::string& line : split(text, "\n")) {
    std::smatch m;
    if (line == "Crossings") crossings = true;
    if (line == "Steps") crossings = false;
    if (crossings && std::regex_match(line, m, way)) sheet.ways[m[1]] = m[2];
    if (std::regex_match(line, m, set)) sets[m[1]] = m[2];
    if (std::regex_match(line, m, left_out)) sheet.left_out = number_in(m[1]);
    if (std::regex_match(line, m, told)) {
      end_repeat();
      CHECK(number_in(m[1]) == static_cast<int>(sheet.stops.size()) + 1);
      whose.push_back(sheet.stops.size());
      sheet.stops.push_back(stop_read(m[2], m[3], m[4], sets));
    } else if (line.starts_with("      Repeat ")) {
      end_repeat();
      repeat = {.words = line, .from = sheet.stops.size(), .whose = {}};
    } else if (line.starts_with("        RC ") || line.starts_with("          RC ")) {
      REQUIRE_FALSE(repeat.words.empty());
      for (const std::string& counter : split(line.substr(line.find('R')), ", ")) {
        REQUIRE(std::regex_match(counter, m, reading));
        const std::smatch read = m;
        std::smatch only;
        if (!m[3].matched) REQUIRE(std::regex_match(repeat.words, only, one_stop));
        const auto as = static_cast<std::size_t>(number_in(read[3].matched ? read[3] : only[1])) - 1;
        REQUIRE(as < sheet.stops.size());
        CHECK(whose[as] == as);  // a stop that is told itself
        StopRead again = sheet.stops[as];
        const int up = number_in(read[1]) - again.row;
        again.row += up;
        for (Reform& reform : again.reforms) reform.from_row += up;
        again.right = read[2] == "COR";
        sheet.stops.push_back(again);
        whose.push_back(as);
        repeat.whose.push_back(as);
      }
    }
  }
  end_repeat();
  return sheet;
}

/// Each stop as it is read holds what the plan's stop does.
inline void check_read(const SheetRead& sheet, const Plan& plan) {
  REQUIRE(sheet.stops.size() == plan.stops.size());
  for (std::size_t i = 0; i < plan.stops.size(); ++i) {
    const Stop& stop = plan.stops[i];
    const StopRead& read = sheet.stops[i];
    INFO("stop " << i + 1);
    CHECK(read.row == stop.row);
    CHECK(read.right == stop.carriage_right);
    CHECK(read.holds == stop.holds);
    CHECK(read.releases == stop.releases);
    for (const Shaping& shaping : stop.shapings) {
      CHECK((shaping.on ? read.on : read.off) == std::vector<int>{shaping.needle});
    }
    REQUIRE(read.reforms.size() == stop.reforms.size());
    for (std::size_t k = 0; k < stop.reforms.size(); ++k) {
      CHECK(read.reforms[k].needle == stop.reforms[k].needle);
      CHECK(read.reforms[k].from_row == stop.reforms[k].from_row);
      CHECK(read.reforms[k].rungs == stop.reforms[k].rungs);
    }
    REQUIRE(read.crossings.size() == stop.crossings.size());
    for (std::size_t k = 0; k < stop.crossings.size(); ++k) {
      const CrossingStep& step = stop.crossings[k];
      const WayRead way = way_read(sheet.ways.at(read.crossings[k].second), step.crossing);
      const int origin = place_of(read.crossings[k].first);
      std::vector<GroupReturn> meant = step.returns;
      std::stable_partition(meant.begin(), meant.end(), [](const GroupReturn& g) { return g.prongs.empty(); });
      REQUIRE(way.returns.size() == meant.size());
      for (std::size_t g = 0; g < meant.size(); ++g) {
        CHECK(needle_at(origin + way.returns[g].from_needle) == meant[g].from_needle);
        CHECK(needle_at(origin + way.returns[g].to_needle) == meant[g].to_needle);
        CHECK(way.returns[g].stitches == meant[g].stitches);
        CHECK(way.returns[g].prongs == meant[g].prongs);
      }
      CHECK(way.ease == step.ease);
      CHECK(way.title.find(step.crossing.lean == Lean::right ? "right cross" : "left cross") != std::string::npos);
    }
  }
}

}  // namespace latchwork_test
