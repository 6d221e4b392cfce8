// The fuzzers' corpus as an ordinary test, and each of its files spoiled at random in a thousand ways.
#include <algorithm>
#include <cstdint>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <string>
#include <vector>

#include "catch.hpp"
#include "random.hpp"
#include "refused_files.hpp"
#include "targets.hpp"

namespace replay_test {

namespace {

using latchwork_fuzz::targets;
using latchwork_test::Random;

std::string bytes_of(const std::filesystem::path& path) {
  std::ifstream in(path, std::ios::binary);
  return {std::istreambuf_iterator<char>(in), {}};
}

/// Files of the corpus by name, so that each run goes the same way.
std::vector<std::string> corpus(std::string_view target) {
  const auto folder = std::filesystem::path(LATCHWORK_TESTS_DIR) / "fuzz" / "corpus" / target;
  std::vector<std::filesystem::path> paths(std::filesystem::directory_iterator(folder), {});
  std::sort(paths.begin(), paths.end());
  std::vector<std::string> texts;
  for (const auto& path : paths) texts.push_back(bytes_of(path));
  return texts;
}

std::string spoiled(std::string text, const std::vector<std::string>& others, Random& random) {
  const auto place = [&](const std::string& in) {
    return static_cast<std::size_t>(random.between(0, static_cast<int>(in.size())));
  };
  for (int times = random.between(1, 3); times > 0; --times) {
    const std::size_t at = place(text);
    switch (random.between(0, 5)) {
      case 0:
        text.insert(at, 1, static_cast<char>(random.next()));
        break;
      case 1:
        text.erase(at, 1);
        break;
      case 2:
        text.erase(at, static_cast<std::size_t>(random.between(1, 40)));
        break;
      case 3:
        if (at < text.size()) text[at] = static_cast<char>(text[at] ^ (1 << random.between(0, 7)));
        break;
      case 4:
        if (at < text.size()) text[at] = "0123456789-.,:\"{}[]kpts\n"[random.between(0, 23)];
        break;
      default: {  // a piece of another file, or of this one
        const std::string& other =
            others[static_cast<std::size_t>(random.between(0, static_cast<int>(others.size()) - 1))];
        text.insert(at, other, place(other), static_cast<std::size_t>(random.between(1, 60)));
      }
    }
  }
  return text;
}

}  // namespace

TEST_CASE("every file of the corpus, and each spoiled at random, is refused or read, and nothing else", "[fuzz]") {
  for (const auto& target : targets) {
    INFO(target.name);
    const std::vector<std::string> texts = corpus(target.name);
    REQUIRE_FALSE(texts.empty());
    for (const std::string& text : texts) target.run(text);
    Random random(20);
    for (const std::string& text : texts) {
      for (int i = 0; i < 1000; ++i) target.run(spoiled(text, texts, random));
    }
  }
  SUCCEED("no target ended the process");
}

// What a random change seldom hits: the ends of what a number can be, in each place, needles' names among them.
TEST_CASE("a plan with any of its numbers at an end is refused or used, and nothing else", "[fuzz]") {
  for (const std::string& text : corpus("plan_use")) {
    for (std::size_t at = 0; at < text.size();) {
      std::size_t end = at;
      while (end < text.size() && text[end] >= '0' && text[end] <= '9') ++end;
      if (end == at) {
        ++at;
        continue;
      }
      for (const char* number : {"0", "1", "9", "2147483647", "2147483648", "-1", "-2147483648", "9223372036854775807",
                                 "-9223372036854775808"}) {
        latchwork_fuzz::plan_use(text.substr(0, at) + number + text.substr(end));
      }
      at = end;
    }
  }
  SUCCEED("no plan ended the process");
}

TEST_CASE("every reader refuses or reads what was written for another", "[fuzz]") {
  for (const auto& from : targets) {
    for (const std::string& text : corpus(from.name)) {
      for (const auto& to : targets) to.run(text);
    }
  }
  for (const auto& file : latchwork_test::refused_files()) {
    for (const auto& to : targets) to.run(file.text);
  }
  SUCCEED("no target ended the process");
}

}  // namespace replay_test
