// Repeats of stops: folded with the fewest letters, and unfolded again.
#include "instructions/fold.hpp"

#include <algorithm>
#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

#include "catch.hpp"
#include "random.hpp"

namespace fold_test {

using latchwork::writing::Fold;
using latchwork::writing::folded;
using latchwork::writing::StopWork;
using latchwork::writing::told_by;
using latchwork_test::Random;

namespace {

/// A stop for each letter, rows `apart`.
std::vector<StopWork> stops_of(std::string_view works, int apart, std::size_t letters = 80) {
  std::vector<StopWork> stops;
  for (const char work : works) stops.push_back({apart * (static_cast<int>(stops.size()) + 1), work, letters});
  return stops;
}

/// "abc +5<3": three stops told, then five that repeat those three before each.
std::string written(std::string_view works, const std::vector<Fold>& folds) {
  std::string out;
  for (const Fold& fold : folds) {
    if (!out.empty()) out += ' ';
    if (fold.back == 0) {
      out += works.substr(fold.first, fold.count);
    } else {
      out += "+" + std::to_string(fold.count) + "<" + std::to_string(fold.back);
    }
  }
  return out;
}

/// Told one by one they are a list; the same stops in one fold or in several are alike.
std::string folded_words(std::string_view works, std::size_t letters = 100) {
  std::string out = written(works, folded(stops_of(works, 4, letters)));
  std::string joined;
  for (std::size_t i = 0; i < out.size(); ++i) {
    const bool between_told = out[i] == ' ' && out[i + 1] != '+' && i > 0 && out[i - 1] >= 'a';
    if (!between_told) joined += out[i];
  }
  return joined;
}

/// What folds take, by the letters that are written in src/instructions/fold.cpp: a line for each repeat, and a reading
/// for each stop in it.
std::size_t cost(const std::vector<StopWork>& stops, const std::vector<Fold>& folds) {
  std::size_t letters = 0;
  for (const Fold& fold : folds) {
    if (fold.back > 0) letters += 150 + fold.count * (fold.back == 1 ? 12 : 18);
    for (std::size_t i = fold.first; fold.back == 0 && i < fold.first + fold.count; ++i) letters += stops[i].letters;
  }
  return letters;
}

/// The least of all ways to write the stops.
std::size_t least(const std::vector<StopWork>& stops) {
  std::vector<std::size_t> from(stops.size() + 1, 0);  // the least for the stops from there on
  for (std::size_t at = stops.size(); at-- > 0;) {
    from[at] = stops[at].letters + from[at + 1];
    for (std::size_t back = 1; back <= at; ++back) {
      for (std::size_t end = at; end < stops.size() && stops[end].work == stops[end - back].work; ++end) {
        from[at] = std::min(from[at], 150 + (end + 1 - at) * (back == 1 ? 12 : 18) + from[end + 1]);
      }
    }
  }
  return from[0];
}

}  // namespace

TEST_CASE("stops are told once: whole repeats, repeats that end early, and runs from further down", "[instructions]") {
  CHECK(folded_words("") == "");
  CHECK(folded_words("a") == "a");
  CHECK(folded_words("abcd") == "abcd");
  CHECK(folded_words("aaaa") == "a +3<1");
  CHECK(folded_words("ababab") == "ab +4<2");
  CHECK(folded_words("abcabcab") == "abc +5<3");
  CHECK(folded_words("xabcabcab") == "xabc +5<3");
  CHECK(folded_words("abcdyabc") == "abcdy +3<5");
  CHECK(folded_words("aa", 163) == "a +1<1");
  // Where telling them again is as short they are told.
  CHECK(folded_words("aa", 162) == "aa");
  CHECK(folded_words("abab", 30) == "abab");
  CHECK(folded_words("ababab", 30) == "ababab");
}

TEST_CASE("folds unfold to the stops, each told by a stop that is told itself", "[instructions][property]") {
  for (std::uint64_t seed = 1; seed <= 400; ++seed) {
    INFO("seed " << seed);
    Random random(seed);
    std::vector<StopWork> stops;
    const int kinds = random.between(1, 6);
    const int length = random.between(1, 7);
    std::vector<int> tune;
    for (int i = 0; i < length; ++i) tune.push_back(random.between(1, kinds));
    int row = 0;
    for (int i = random.between(0, 600); i > 0; --i) {
      row += random.between(1, 3);
      const int work = random.one_in(20) ? random.between(1, kinds) : tune[stops.size() % tune.size()];
      stops.push_back({row, work, static_cast<std::size_t>(20 + 30 * work)});
    }
    const std::vector<Fold> folds = folded(stops);
    const std::vector<std::size_t> told = told_by(folds);
    REQUIRE(told.size() == stops.size());
    std::size_t next = 0;
    for (const Fold& fold : folds) {
      REQUIRE(fold.first == next);
      REQUIRE(fold.count > 0);
      next += fold.count;
    }
    for (std::size_t i = 0; i < stops.size(); ++i) {
      REQUIRE(told[i] <= i);
      CHECK(stops[told[i]].work == stops[i].work);
      CHECK(told[told[i]] == told[i]);
    }
    // What a repeat names are stops told one after another, or one.
    for (const Fold& fold : folds) {
      if (fold.back == 0) continue;
      REQUIRE(fold.back <= fold.first);
      const std::size_t named = std::min(fold.back, fold.count);
      bool rising = true;
      bool one = true;
      for (std::size_t i = 1; i < named; ++i) {
        rising = rising && told[fold.first + i] == told[fold.first] + i;
        one = one && told[fold.first + i] == told[fold.first];
      }
      CHECK((rising || one));
    }
  }
}

TEST_CASE("folds take the fewest letters, but where the stops repeated would not be told one after another",
          "[instructions][property]") {
  int fewest = 0;
  for (std::uint64_t seed = 1; seed <= 300; ++seed) {
    INFO("seed " << seed);
    Random random(seed);
    std::vector<StopWork> stops;
    const int kinds = random.between(1, 3);
    for (int i = random.between(0, 40); i > 0; --i) {
      const int work = random.between(1, kinds);
      stops.push_back({static_cast<int>(stops.size()) + 1, work, static_cast<std::size_t>(60 * work)});
    }
    const std::size_t letters = cost(stops, folded(stops));
    CHECK(letters >= least(stops));
    std::size_t told = 0;
    for (const StopWork& stop : stops) told += stop.letters;
    CHECK(letters <= told);
    fewest += letters == least(stops) ? 1 : 0;
  }
  CHECK(fewest > 150);
}

}  // namespace fold_test
