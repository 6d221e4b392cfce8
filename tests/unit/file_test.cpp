#include "latchwork/file.hpp"

#include <limits>
#include <string>

#include "catch.hpp"

namespace file_test {

using namespace latchwork;
using latchwork_test::refused;
using latchwork_test::refused_field;

namespace {

std::string grid_file(const std::string& rest) {
  return R"({"format": "latchwork-grid", "version": 1, )" + rest + "}";
}

Place at_line(int line, std::string field = {}) {
  Place place;
  place.line = line;
  place.field = std::move(field);
  return place;
}

}  // namespace

TEST_CASE("a grid file gives its top row first, and crossings by name", "[file][grid]") {
  const Grid grid = read_grid(grid_file(R"("rows": ["ktspk", "ppkkk", "kkkk."],
    "crossings": [{"row": 2, "column": 0, "left": 2, "centre": 1, "right": 2, "lean": "left", "place": "behind"}])"));
  CHECK(grid.rows() == 3);
  CHECK(grid.columns() == 5);
  CHECK(grid.at(1, 4) == Cell::none);
  CHECK(grid.at(2, 0) == Cell::purl);
  CHECK(grid.at(3, 1) == Cell::tuck);
  CHECK(grid.at(3, 2) == Cell::slip);
  REQUIRE(grid.crossings().size() == 1);
  const Crossing expected{
      .row = 2, .column = 0, .left = 2, .centre = 1, .right = 2, .lean = Lean::left, .place = Centre::behind};
  CHECK(grid.crossings()[0] == expected);
}

TEST_CASE("a grid is written one row a line, and the same bytes each time", "[file][grid]") {
  Grid grid(3, 4);
  grid.set(1, 0, Cell::purl);
  grid.cross({.row = 2, .column = 0, .left = 2, .right = 1, .lean = Lean::right});
  grid.cross({.row = 3, .column = 1, .left = 1, .centre = 1, .right = 1, .lean = Lean::left, .place = Centre::front});
  const std::string expected = R"({
  "format": "latchwork-grid",
  "version": 1,
  "rows": [
    "kkkk",
    "kkkk",
    "pkkk"
  ],
  "crossings": [
    {"row": 2, "column": 0, "left": 2, "right": 1, "lean": "right"},
    {"row": 3, "column": 1, "left": 1, "centre": 1, "right": 1, "lean": "left", "place": "front"}
  ]
}
)";
  CHECK(write(grid) == expected);
  CHECK(read_grid(expected) == grid);
}

TEST_CASE("crossings may stand in any order, and fields too", "[file][grid]") {
  const std::string first = R"({"row": 1, "column": 2, "left": 1, "right": 1, "lean": "left"})";
  const std::string second = R"({"lean": "right", "right": 1, "left": 1, "column": 0, "row": 1})";
  const std::string rows = R"("rows": ["kkkk"])";
  const Grid one = read_grid(grid_file(rows + R"(, "crossings": [)" + first + ", " + second + "]"));
  const Grid other = read_grid(R"({"crossings": [)" + second + ", " + first + "], " + rows +
                               R"(, "version": 1, "format": "latchwork-grid"})");
  CHECK(one == other);
  CHECK(one.crossings()[0].lean == Lean::right);
}

TEST_CASE("a whole number may be written with a point or an exponent", "[file]") {
  const Grid grid = read_grid(R"({"format": "latchwork-grid", "version": 1.0, "rows": ["kkk", "kkk"],
    "crossings": [{"row": 1.0, "column": 0.0, "left": 1e0, "right": 20e-1, "lean": "left"}]})");
  REQUIRE(grid.crossings().size() == 1);
  CHECK(grid.crossings()[0].right == 2);
  for (const char* number : {"1.5", "-1e300", "1.0000001", "-9007199254740994.0"}) {
    INFO(number);
    const std::string file = std::string(R"({"format": "latchwork-grid", "rows": ["k"], "version": )") + number + "}";
    CHECK_THROWS_MATCHES(read_grid(file), Error, refused(ErrorCode::bad_value, at_line(1, "version")));
  }
  for (const char* number : {"2.0", "1e300", "9007199254740994.0", "18446744073709551616"}) {
    INFO(number);
    const std::string file = std::string(R"({"format": "latchwork-grid", "rows": ["k"], "version": )") + number + "}";
    CHECK_THROWS_MATCHES(read_grid(file), Error, refused(ErrorCode::newer_version, at_line(1, "version")));
  }
}

TEST_CASE("a bad letter is quoted whole and alone, before the row's length is looked at", "[file][error]") {
  const auto message = [](const std::string& rows) {
    try {
      read_grid(grid_file("\"rows\": " + rows));
    } catch (const Error& error) {
      CHECK(error.code() == ErrorCode::bad_letter);
      return std::string(error.what());
    }
    return std::string();
  };
  CHECK(message(R"(["kkqkk"])").find("letter 3 is \"q\",") != std::string::npos);
  CHECK(message(R"(["kékkk"])").find("letter 2 is \"é\",") != std::string::npos);
  CHECK(message(R"(["kk", "k\u20ac"])").find("letter 2 is \"€\",") != std::string::npos);
  CHECK(message(R"(["kk", "k\ud83e\uddf6"])").find("letter 2 is \"\xF0\x9F\xA7\xB6\",") != std::string::npos);
}

TEST_CASE("a NUL in a text of a file is refused with its field, for C would tell the text only up to there",
          "[file][error]") {
  CHECK_THROWS_MATCHES(read_grid(grid_file("\"rows\": [\n\"k\\u0000\"]")), Error,
                       refused(ErrorCode::bad_value, at_line(2, "rows[0]")));
}

TEST_CASE("an empty text is said to be empty", "[file][error]") {
  for (const char* empty : {"", " \n\t", "\xEF\xBB\xBF\n"}) {
    try {
      read_grid(empty);
      FAIL("it was read");
    } catch (const Error& error) {
      CHECK(error.code() == ErrorCode::bad_syntax);
      CHECK(std::string(error.what()).find("the text is empty") != std::string::npos);
    }
  }
}

TEST_CASE("a text that is too large is refused before it is looked at", "[file][error]") {
  const std::string text(100'000'000, '[');
  CHECK_THROWS_MATCHES(read_grid(text), Error, refused(ErrorCode::too_large, at_line(1)));
  CHECK_THROWS_MATCHES(read_machine(text), Error, refused(ErrorCode::too_large, at_line(1)));
  // The line is that in which the text becomes too large.
  std::string spaces(max_file_bytes + 1, ' ');
  spaces[2] = spaces[5] = spaces[max_file_bytes] = '\n';
  CHECK_THROWS_MATCHES(read_grid(spaces), Error, refused(ErrorCode::too_large, at_line(3)));
  CHECK_THROWS_MATCHES(read_grid(std::string(1000, ' ')), Error, refused(ErrorCode::bad_syntax, at_line(1)));
}

TEST_CASE("values nested without end are refused at the first that is too deep", "[file][error]") {
  std::string text = "\n";
  for (int i = 0; i < 1'000'000; ++i) text += "[\n";
  CHECK_THROWS_MATCHES(read_grid(text), Error, refused(ErrorCode::too_large, at_line(34)));
  std::string objects;
  for (int i = 0; i < 1'000'000; ++i) objects += R"({"a":)";
  CHECK_THROWS_MATCHES(read_grid(objects), Error, refused(ErrorCode::too_large, at_line(1)));
}

TEST_CASE("a text that is not UTF-8 is refused with its line", "[file][error]") {
  const char* bytes = GENERATE("\xFF",             // no lead byte
                               "\xC3",             // cut off
                               "\xC0\xAF",         // longer than need be
                               "\xED\xA0\x80",     // half a surrogate pair
                               "\xF4\x90\x80\x80"  // past the last code point
  );
  const std::string text = "{\n\"format\":\n\"" + std::string(bytes) + "\"}";
  CHECK_THROWS_MATCHES(read_grid(text), Error, refused(ErrorCode::bad_encoding, at_line(3)));
}

TEST_CASE("a byte order mark is passed over, as in every file; a NUL is no JSON", "[file][error]") {
  const std::string good = grid_file(R"("rows": ["k"])");
  CHECK_NOTHROW(read_grid(good));
  CHECK(read_grid("\xEF\xBB\xBF" + good) == read_grid(good));
  CHECK(Grid::from_text("\xEF\xBB\xBFkp\n") == Grid::from_text("kp\n"));
  CHECK_THROWS_MATCHES(read_grid(good + "\n" + std::string(1, '\0')), Error,
                       refused(ErrorCode::bad_syntax, at_line(2)));
  CHECK_THROWS_MATCHES(read_grid(std::string_view()), Error, refused(ErrorCode::bad_syntax, at_line(1)));
}

TEST_CASE("an unknown key of any bytes is shown short and in whole characters", "[file][error]") {
  std::string key = "\\n";
  for (int i = 0; i < 1000; ++i) key += "\xC3\xA9";
  try {
    read_grid(grid_file("\"rows\": [\"k\"], \"" + key + "\": 1"));
    FAIL("was read");
  } catch (const Error& error) {
    CHECK(error.code() == ErrorCode::unknown_field);
    CHECK(error.place().field.size() < 70);
    CHECK(error.place().field.starts_with("?\xC3\xA9"));
    CHECK(error.place().field.ends_with("\xC3\xA9..."));
  }
}

TEST_CASE("a grid past its limits is refused before room is made for it", "[file][error]") {
  std::string rows = R"("rows": [)";
  for (int i = 0; i < 65537; ++i) rows += R"("k",)";
  rows.back() = ']';
  CHECK_THROWS_MATCHES(read_grid(grid_file(rows)), Error, refused(ErrorCode::too_large, at_line(1, "rows")));
  const std::string wide = R"("rows": [")" + std::string(65537, 'k') + "\"]";
  CHECK_THROWS_MATCHES(read_grid(grid_file(wide)), Error, refused(ErrorCode::too_large, at_line(1, "rows[0]")));
}

TEST_CASE("what is not in a machine file is as in Machine, or as in its class", "[file][machine]") {
  const MachineFile plain = read_machine(R"({"format": "latchwork-machine", "version": 1})");
  CHECK(plain == MachineFile{});
  const MachineFile bulky = read_machine(R"({"format": "latchwork-machine", "version": 1, "class": "bulky",
    "name": "the old one", "leftmost": "L20", "prongs": [], "effort_ms": {"stop": 20000}})");
  Machine expected = Machine::generic(MachineClass::bulky);
  expected.name = "the old one";
  expected.leftmost = -20;
  expected.prongs.clear();
  CHECK(bulky.machine == expected);
  Effort effort;
  effort.stop = 20'000;
  CHECK(bulky.effort == effort);
}

TEST_CASE("a machine that no reader would take is not written", "[file][machine][error]") {
  MachineFile file;
  file.machine.needles = 1;
  CHECK_THROWS_MATCHES(write(file), Error, refused_field(ErrorCode::bad_value, "needles"));
  file = {};
  file.machine.pitch_mm =
      GENERATE(0.0, -1.0, 51.0, std::numeric_limits<double>::quiet_NaN(), std::numeric_limits<double>::infinity());
  CHECK_THROWS_MATCHES(write(file), Error, refused_field(ErrorCode::bad_value, "pitch_mm"));
  file = {};
  file.machine.name = "\xFF";
  CHECK_THROWS_MATCHES(write(file), Error, refused_field(ErrorCode::bad_encoding, "name"));
  file = {};
  file.machine.leftmost = std::numeric_limits<int>::min();
  CHECK_THROWS_MATCHES(write(file), Error, refused_field(ErrorCode::bad_value, "leftmost"));
  file = {};
  file.machine.prongs = {1, 21};
  CHECK_THROWS_MATCHES(write(file), Error, refused_field(ErrorCode::bad_value, "prongs[1]"));
  file = {};
  file.effort.shaping = 3'600'001;
  CHECK_THROWS_MATCHES(write(file), Error, refused_field(ErrorCode::bad_value, "effort_ms.shaping"));
  CHECK_THROWS_WITH(write(file), "effort_ms.shaping is 3600001, not from 0 to 3600000");
}

TEST_CASE("texts keep quotes, line ends and letters of every script, and have no NUL", "[file]") {
  MachineFile file;
  file.machine.name = "a \"b\" \\ /\n\t\r\x01\x1F\x7F \xC3\xA9 \xE7\xB7\xA8 \xF0\x9F\xA7\xB6";
  CHECK(read_machine(write(file)) == file);
  file.machine.name += '\0';
  CHECK_THROWS_MATCHES(write(file), Error, refused_field(ErrorCode::bad_value, "name"));
}

TEST_CASE("numbers are written in their shortest form", "[file]") {
  MachineFile file;
  file.machine.pitch_mm = 0.1;
  CHECK(write(file).find("\"pitch_mm\": 0.1,") != std::string::npos);
  file.machine.pitch_mm = 9;
  CHECK(write(file).find("\"pitch_mm\": 9,") != std::string::npos);
  file.machine.pitch_mm = GENERATE(5e-324, 1.0 / 3.0, 4.5, 1e-9, 50.0, 49.999999999999996);
  CHECK(read_machine(write(file)) == file);
}

TEST_CASE("a large number that a double may have rounded is refused, and one past all is out of range",
          "[file][error]") {
  const Grid grid = Grid::from_text("kkk\nkpk\nkkk\n");
  const Certificate certificate = certify(grid, Machine{}, Effort{}, plan(grid, Machine{}).total_ms);
  const std::string sound = write(certificate);
  const std::string bound = "\"bound_ms\": " + std::to_string(certificate.bound_ms);
  REQUIRE(sound.find(bound) != std::string::npos);
  const auto with = [&](const std::string& number) {
    std::string text = sound;
    return text.replace(sound.find(bound), bound.size(), "\"bound_ms\": " + number);
  };
  CHECK(read_certificate(with("9007199254740993")).bound_ms == 9'007'199'254'740'993);
  CHECK(read_certificate(with("9007199254740991.0")).bound_ms == 9'007'199'254'740'991);
  for (const auto& [number, told] : {std::pair{"9007199254740993.0", "write its digits alone"},
                                     {"1e16", "write its digits alone"},
                                     {"9223372036854775808", "is not from"}}) {
    CAPTURE(number);
    try {
      static_cast<void>(read_certificate(with(number)));
      FAIL("it was read");
    } catch (const Error& error) {
      CHECK(error.code() == ErrorCode::bad_value);
      CHECK(error.place().field == "bound_ms");
      CHECK(std::string(error.what()).find(told) != std::string::npos);
    }
  }
}

TEST_CASE("a number that no count holds is told as one, and not as a fraction", "[file][error]") {
  for (const auto& [number, told] : {std::pair{"99999999999999999999", "1e+20 is not from 1 to"},
                                     {"-1e30", "-1e+30 is not from 1 to"},
                                     {"1.5", "1.5 is not a whole number from 1 to"}}) {
    try {
      read_grid(grid_file(
          std::string(
              R"("rows": ["kkkk"], "crossings": [{"column": 0, "left": 1, "right": 1, "lean": "left", "row": )") +
          number + "}]"));
      FAIL("it was read");
    } catch (const Error& error) {
      CHECK(error.code() == ErrorCode::bad_value);
      CHECK(std::string(error.what()).find(told) != std::string::npos);
    }
  }
}

}  // namespace file_test
