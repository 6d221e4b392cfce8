#include <algorithm>
#include <cstdint>
#include <string>
#include <string_view>

#include "catch.hpp"
#include "random_values.hpp"

namespace file_round_trip_test {

using namespace latchwork;
using namespace latchwork_test;

namespace {

/// Reading what was written gives an equal value, and writing that gives the same bytes.
template <class Value, class Read>
void check_round_trip(const Value& value, Read&& read) {
  const std::string text = write(value);
  CAPTURE(text);
  const Value back = read(text);
  REQUIRE(back == value);
  REQUIRE(write(back) == text);
}

constexpr std::uint64_t rounds = 1500;

int lines_of(std::string_view text) {
  return 1 + static_cast<int>(std::count(text.begin(), text.end(), '\n'));
}

}  // namespace

TEST_CASE("what is written is read back equal: grids", "[file][property]") {
  for (std::uint64_t seed = 1; seed <= rounds; ++seed) {
    CAPTURE(seed);
    Random random(seed);
    check_round_trip(any_grid(random), read_grid);
  }
}

TEST_CASE("what is written is read back equal: strips", "[file][property]") {
  for (std::uint64_t seed = 1; seed <= rounds; ++seed) {
    CAPTURE(seed);
    Random random(seed);
    check_round_trip(Strip{any_text(random), any_text(random), any_grid(random)}, read_strip);
  }
}

TEST_CASE("what is written is read back equal: panels", "[file][property]") {
  for (std::uint64_t seed = 1; seed <= rounds; ++seed) {
    CAPTURE(seed);
    Random random(seed);
    check_round_trip(any_panel(random), read_panel);
  }
}

TEST_CASE("what is written is read back equal: machines and efforts", "[file][property]") {
  for (std::uint64_t seed = 1; seed <= rounds; ++seed) {
    CAPTURE(seed);
    Random random(seed);
    check_round_trip(any_machine(random), read_machine);
  }
}

TEST_CASE("what is written is read back equal: plans, right or wrong", "[file][property]") {
  for (std::uint64_t seed = 1; seed <= rounds; ++seed) {
    CAPTURE(seed);
    Random random(seed);
    check_round_trip(any_plan(random), read_plan);
  }
}

TEST_CASE("what is written is read back equal: certificates, right or wrong", "[file][property]") {
  for (std::uint64_t seed = 1; seed <= rounds; ++seed) {
    CAPTURE(seed);
    Random random(seed);
    check_round_trip(any_certificate(random), read_certificate);
  }
}

TEST_CASE("what is written is read back equal: what a need of yarn is reckoned from", "[file][yarn][property]") {
  for (std::uint64_t seed = 1; seed <= rounds; ++seed) {
    CAPTURE(seed);
    Random random(seed);
    check_round_trip(any_yarn_request(random), read_yarn_request);
  }
}

TEST_CASE("a text that is cut short anywhere is refused", "[file][property]") {
  Random random(1);
  const std::string text = write(any_panel(random));
  for (std::size_t length = 0; length + 2 < text.size(); ++length) {  // but for the last brace's newline
    CAPTURE(length);
    const std::string_view start = std::string_view(text).substr(0, length);
    try {
      static_cast<void>(read_panel(start));
      FAIL("was read");
    } catch (const Error& error) {
      const bool in_letter = (static_cast<unsigned char>(text[length]) & 0xC0U) == 0x80U;  // of two bytes or more
      REQUIRE(error.code() == (in_letter ? ErrorCode::bad_encoding : ErrorCode::bad_syntax));
      // What ends with a line stands on that line still.
      REQUIRE(error.place().line == lines_of(start.ends_with('\n') ? start.substr(0, length - 1) : start));
    }
  }
}

TEST_CASE("a text with a byte spoiled anywhere is refused, or gives a value that is written and read again",
          "[file][property]") {
  Random random(2);
  const std::string text = write(any_panel(random));
  int read = 0;
  int refused = 0;
  for (std::size_t at = 0; at < text.size(); ++at) {
    std::string spoiled = text;
    spoiled[at] = static_cast<char>(random.next());
    CAPTURE(at, spoiled);
    try {
      const Panel panel = read_panel(spoiled);
      REQUIRE(read_panel(write(panel)) == panel);
      ++read;
    } catch (const Error& error) {
      REQUIRE(error.code() != ErrorCode::internal);
      REQUIRE(error.place().line > 0);
      REQUIRE(error.place().line <= lines_of(spoiled));
      ++refused;
    }
  }
  CHECK(read > 0);
  CHECK(refused > static_cast<int>(text.size()) / 2);
}

}  // namespace file_round_trip_test
