#include <algorithm>
#include <iterator>
#include <set>
#include <string>
#include <vector>

#include "catch.hpp"
#include "latchwork/gauge.hpp"
#include "random.hpp"

namespace gauge_file_test {

using namespace latchwork;
using latchwork_test::Random;

namespace {

// Text that means something to a reader of CSV, and some that does not.
std::string random_text(Random& random, int most_pieces) {
  static const char* const pieces[] = {
      "a",  "rope 3/3", ",",  "\"", "\"\"", "\n", "\r\n", "\r",           " ",
      "\t", "#",        "\\", ";",  "1.5",  "mm", "=",    "\xC3\xA9",     "\xE2\x86\x92",
      "'",  "\x01",     "<",  "&",  "-",    "0",  "rows", "\xEF\xBB\xBF", "\xF0\x9F\xA7\xB6"};
  std::string out;
  for (int i = random.between(0, most_pieces); i > 0; --i) {
    out += pieces[random.between(0, static_cast<int>(std::size(pieces)) - 1)];
  }
  return out;
}

// A number of any number of digits within the range.
double random_number(Random& random, double least, double most) {
  const double share = static_cast<double>(random.next() >> 11) * 0x1p-53;
  const double value = least + (most - least) * share * (random.one_in(3) ? 0.001 : 1);
  if (random.one_in(2)) return value;
  return static_cast<double>(static_cast<int>(value * 10)) / 10 + least;
}

Swatch random_swatch(Random& random) {
  std::vector<Measurement> out;
  for (int i = random.between(0, 12); i > 0; --i) {
    out.push_back({"t" + random_text(random, 6), random.one_in(2) ? Counted::rows : Counted::stitches,
                   random_number(random, 0.1, 9000), random_number(random, 1, 9000), random_text(random, 6)});
    if (random.one_in(3)) out.back().swatch = random_text(random, 4);
    if (random.one_in(3)) out.back().state = static_cast<ClothState>(random.between(0, 2));
    if (random.one_in(3)) out.back().line = random.between(0, 1000);
    if (random.one_in(3)) out.back().texture = random_text(random, 3) + "t" + random_text(random, 1);
  }
  return Swatch(out);
}

// Changes, leaves out, doubles or puts in a byte or a piece, a few times.
std::string spoiled(std::string text, Random& random) {
  for (int i = random.between(1, 4); i > 0; --i) {
    const std::size_t at = static_cast<std::size_t>(random.between(0, static_cast<int>(text.size())));
    switch (random.between(0, 4)) {
      case 0:
        text.insert(at, random_text(random, 2));
        break;
      case 1:
        text.insert(at, 1, static_cast<char>(random.between(0, 255)));
        break;
      case 2:
        text = text.substr(0, at);
        break;
      case 3:
        if (at < text.size()) text.erase(at, static_cast<std::size_t>(random.between(1, 9)));
        break;
      default:
        if (at < text.size()) text[at] = static_cast<char>(random.between(0, 255));
    }
  }
  return text;
}

}  // namespace

TEST_CASE("any swatch that can be made is written and read back equal", "[gauge][property]") {
  for (std::uint64_t seed = 1; seed <= 3000; ++seed) {
    CAPTURE(seed);
    Random random(seed);
    const Swatch swatch = random_swatch(random);
    CHECK(read_swatch(write(swatch)) == swatch);
  }
}

TEST_CASE("a spoiled swatch file is read as what it then says, or refused with a place", "[gauge][property]") {
  int read = 0;
  std::set<ErrorCode> refused;
  for (std::uint64_t seed = 1; seed <= 20'000; ++seed) {
    CAPTURE(seed);
    Random random(seed);
    const std::string csv = spoiled(write(random_swatch(random)), random);
    const int lines = 1 + static_cast<int>(std::count(csv.begin(), csv.end(), '\n'));
    try {
      const Swatch swatch = read_swatch(csv);
      ++read;
      CHECK(read_swatch(write(swatch)) == swatch);
    } catch (const Error& error) {
      refused.insert(error.code());
      CHECK(error.place().line >= 1);
      CHECK(error.place().line <= lines);
      CHECK_FALSE(std::string(error.what()).empty());
    }
  }
  CHECK(read > 1000);
  // Every way in which bytes can be wrong was met, and no other.
  CHECK(refused == std::set<ErrorCode>{ErrorCode::bad_syntax, ErrorCode::bad_encoding, ErrorCode::duplicate_key,
                                       ErrorCode::missing_field, ErrorCode::unknown_field, ErrorCode::bad_value,
                                       ErrorCode::bad_unit});
}

TEST_CASE("random bytes after a good header never end in anything but a swatch or an error", "[gauge][property]") {
  int read = 0;
  int refused = 0;
  for (std::uint64_t seed = 1; seed <= 5000; ++seed) {
    CAPTURE(seed);
    Random random(seed);
    std::string csv = random.one_in(2) ? "texture,counted,count,length,unit\n" : "";
    for (int i = random.between(0, 60); i > 0; --i) csv += static_cast<char>(random.between(0, 255));
    try {
      static_cast<void>(read_swatch(csv));
      ++read;
    } catch (const Error& error) {
      CHECK(error.code() != ErrorCode::internal);
      CHECK(error.place().line >= 1);
      CHECK(error.place().line <= 1 + std::count(csv.begin(), csv.end(), '\n'));
      ++refused;
    }
  }
  CHECK(read > 0);
  CHECK(refused > 4000);
}

}  // namespace gauge_file_test
