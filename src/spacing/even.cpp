#include "spacing/even.hpp"

#include <algorithm>
#include <utility>

namespace latchwork::inline v0 {
namespace {

using Word = std::vector<char>;  // 1: the letter that stands alone, 0: the one that comes in runs

/// The runs of 0 of a word whose 1s stand alone, one letter each: 0 for a short one and 1 for a long one. Runs at the
/// ends may go on outside, so they count only where they are long already. False where they are of more than two
/// lengths.
bool runs_of(const Word& word, Word& runs) {
  const auto first = std::find(word.begin(), word.end(), 1);
  const auto last = std::find(word.rbegin(), word.rend(), 1).base();  // past it
  std::vector<int> lengths;
  int length = 0;
  for (auto at = first + 1; at != last; ++at) {
    if (*at == 0) {
      ++length;
    } else {
      lengths.push_back(length);
      length = 0;
    }
  }
  const int least = *std::min_element(lengths.begin(), lengths.end());
  const auto before = first - word.begin();
  const auto behind = word.end() - last;
  if (*std::max_element(lengths.begin(), lengths.end()) > least + 1) return false;
  if (before > least + 1 || behind > least + 1) return false;
  runs.clear();
  if (before == least + 1) runs.push_back(1);
  for (const int one : lengths) runs.push_back(one == least ? 0 : 1);
  if (behind == least + 1) runs.push_back(1);
  return true;
}

}  // namespace

bool spread_evenly(const std::vector<int>& gaps) {
  if (gaps.empty()) return true;
  const int least = *std::min_element(gaps.begin(), gaps.end());
  Word word;
  word.reserve(gaps.size());
  for (const int gap : gaps) word.push_back(gap == least ? 0 : 1);
  // A word is even when one of its letters stands alone and the runs of the other are even in turn. Each turn has at
  // most half the letters, and one more.
  while (std::count(word.begin(), word.end(), 1) > 1 && std::count(word.begin(), word.end(), 0) > 1) {
    const auto twice = [&word](char letter) {
      return std::adjacent_find(word.begin(), word.end(),
                                [letter](char a, char b) { return a == letter && b == letter; }) != word.end();
    };
    if (twice(1)) {
      if (twice(0)) return false;
      for (char& letter : word) letter = letter == 0 ? 1 : 0;
    }
    Word runs;
    if (!runs_of(word, runs)) return false;
    word = std::move(runs);
  }
  return true;
}

}  // namespace latchwork::inline v0
