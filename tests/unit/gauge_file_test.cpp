#include <string>
#include <vector>

#include "catch.hpp"
#include "latchwork/gauge.hpp"
#include "latchwork/quantity.hpp"

namespace gauge_file_test {

using namespace latchwork;
using latchwork_test::refused_field;

namespace {

const std::string header = "texture,counted,count,length,unit,place\n";

Swatch plain_swatch() {
  return Swatch({{"stockinette", Counted::stitches, 28, 100, "left third"},
                 {"stockinette", Counted::rows, 40.5, 101.6, "middle, marked rows"},
                 {"rope 3/3 every 8", Counted::rows, 30, 75, ""}});
}

}  // namespace

TEST_CASE("a swatch file is read by its header, in any order of columns", "[gauge][file]") {
  CHECK(read_swatch(header + "stockinette,stitches,28,100,mm,left third\n"
                             "stockinette,rows,40.5,4,in,\"middle, marked rows\"\n"
                             "rope 3/3 every 8,rows,30,7.5,cm,\n") == plain_swatch());
  CHECK(read_swatch("unit,place,length,texture,count,counted\n"
                    "mm,left third,100,stockinette,28,stitches\n"
                    "in,\"middle, marked rows\",4,stockinette,40.5,rows\n"
                    "cm,,7.5,rope 3/3 every 8,30,rows\n") == plain_swatch());
}

TEST_CASE("the place may be left out", "[gauge][file]") {
  const Swatch swatch = read_swatch("texture,counted,count,length,unit\nmoss,rows,30,10,cm\n");
  CHECK(swatch == Swatch({{"moss", Counted::rows, 30, 100, ""}}));
}

TEST_CASE("swatch and state may be told, and a length may carry its own unit", "[gauge][file]") {
  const Swatch swatch = read_swatch(
      "texture,counted,count,length,swatch,state\n"
      "moss,rows,30,10 cm,first,off the machine\n"
      "moss,rows,31,4 in,first,\n"
      "# washed at 30 degrees\n"
      "moss,rows,17,2 1/4 in,,washed\n");
  CHECK(swatch == Swatch({{"moss", Counted::rows, 30, 100, "", "first", ClothState::off_machine},
                          {"moss", Counted::rows, 31, 101.6, "", "first", ClothState::rested},
                          {"moss", Counted::rows, 17, 57.15, "", "", ClothState::washed}}));
  REQUIRE(swatch.measurements().size() == 3);
  CHECK(swatch.measurements()[0].line == 2);
  CHECK(swatch.measurements()[2].line == 5);
  CHECK(write(swatch) ==
        "texture,counted,count,length,unit,place,swatch,state\n"
        "moss,rows,30,100,mm,,first,off the machine\n"
        "moss,rows,31,101.6,mm,,first,rested\n"
        "moss,rows,17,57.15,mm,,,washed\n");
  CHECK(read_swatch(write(swatch)) == swatch);
  // Left out, a state is rested, and no swatch is named.
  CHECK(read_swatch("texture,counted,count,length\nmoss,rows,30,10 cm\n").measurements()[0] ==
        Measurement{"moss", Counted::rows, 30, 100, "", "", ClothState::rested, 2});
}

TEST_CASE("a length without a unit is refused at its character when the file has no unit column",
          "[gauge][file][error]") {
  const std::string bare = "texture,counted,count,length\n";
  const auto refused = [&](const char* length, ErrorCode code) {
    INFO(length);
    try {
      read_swatch(bare + "moss,rows,30," + length + "\n");
      FAIL("it was read");
    } catch (const Error& error) {
      CHECK(error.code() == code);
      CHECK(error.place().field == "length");
      CHECK(error.place().line == 2);
    }
  };
  refused("100", ErrorCode::bad_unit);
  refused("", ErrorCode::bad_syntax);
  refused("10 pt", ErrorCode::bad_unit);
  refused("10 cm 4 in", ErrorCode::bad_unit);
  refused("-10 cm", ErrorCode::bad_value);
  refused("0.5 mm", ErrorCode::bad_value);
  refused("1e2 mm", ErrorCode::bad_unit);
  refused("11 m", ErrorCode::bad_value);
  CHECK_THROWS_WITH(read_swatch(bare + "moss,rows,30,10\n"),
                    "line 2, field length: '10', character 3: the unit is missing; a length is in mm, cm, m, in, ft or "
                    "yd");
  try {
    read_swatch(bare + "moss,rows,30,10 pt\n");
  } catch (const Error& error) {
    CHECK(error.place().character == 4);
  }
}

TEST_CASE("the ways a spreadsheet or a person writes the same lines are all read", "[gauge][file]") {
  const Swatch wanted({{"moss", Counted::rows, 30, 100, "left"}});
  const std::string line = "moss,rows,30,100,mm,left";
  CHECK(read_swatch(header + line) == wanted);                                               // no newline at the end
  CHECK(read_swatch(header + line + "\r\n") == wanted);                                      // mixed line ends
  CHECK(read_swatch("\xEF\xBB\xBF" + header + line) == wanted);                              // a byte order mark
  CHECK(read_swatch("# rested overnight\n\n" + header + "  \t\n#,,\"\n" + line) == wanted);  // comments and blank lines
  CHECK(read_swatch("\r\n" + header + "#a\r\n\r\n" + line + "\r\n \r\n") == wanted);
  CHECK(read_swatch(header + "  moss , rows,\t30, 100 ,mm , left  ") == wanted);  // blanks round unquoted fields
  CHECK(read_swatch(header + "\"moss\", \"rows\" ,\"30\",\"100\",\"mm\",\"left\"\r\n") == wanted);
  CHECK(read_swatch("\"texture\",counted,\"count\",length,unit,place\n" + line) == wanted);
}

TEST_CASE("quotes, commas, newlines and outer blanks live inside quotes, as RFC 4180 has it", "[gauge][file]") {
  const Swatch swatch = read_swatch(header + "\" a \"\"b\"\", c\r\nd\n# e \",rows,30,100,mm,\"\"\n");
  CHECK(swatch == Swatch({{" a \"b\", c\r\nd\n# e ", Counted::rows, 30, 100, ""}}));
}

TEST_CASE("an inch is 25.4 mm exactly and 10 cm are not 4 in", "[gauge][file]") {
  const auto length = [](const char* text) {
    return read_swatch(header + "a,rows,1," + text + ",\n").measurements()[0].length_mm;
  };
  CHECK(length("4,in") == 101.6);
  CHECK(length("1,in") == 25.4);
  CHECK(length("17.1,cm") == 171);  // in doubles 17.1 * 10 is a little more
  CHECK(length("10,cm") == 100.0);
  CHECK(length("12.7,cm") == 127.0);
  CHECK(length("100,mm") == 100.0);
}

TEST_CASE("a unit of a swatch file is spelled as in a quantity", "[gauge][file]") {
  const auto length = [](const char* text) {
    return read_swatch(header + "a,rows,1," + text + ",\n").measurements()[0].length_mm;
  };
  for (const char* inches : {"4,in", "4,inch", "4,inches", "4,\"\"\"\"", "4,\u2033"}) {
    INFO(inches);
    CHECK(length(inches) == 101.6);
  }
  CHECK(length("0.1,m") == 100.0);
  CHECK(length("1/3,ft") == 101.6);
  CHECK(length("1/4,yd") == 228.6);  // 36 in of 25.4 mm to the yard: 914.4 mm
}

TEST_CASE("a swatch file with no measurements is an empty swatch", "[gauge][file]") {
  CHECK(read_swatch(header) == Swatch());
  CHECK(read_swatch("texture,counted,count,length,unit") == Swatch());
}

TEST_CASE("what is wrong in a swatch file is refused with its line and field", "[gauge][file][error]") {
  struct Case {
    const char* why;
    std::string csv;
    ErrorCode code;
    int line;
    const char* field;
  };
  const std::string good = "moss,rows,30,100,mm,left\n";
  const Case cases[] = {
      {"nothing at all", "", ErrorCode::missing_field, 1, "texture"},
      {"only comments", "# a\n\n", ErrorCode::missing_field, 1, "texture"},
      {"no length column", "texture,counted,count,unit\n", ErrorCode::missing_field, 1, "length"},
      {"a state of its own", "texture,counted,count,length,state\nmoss,rows,1,1 cm,wet\n", ErrorCode::bad_value, 2,
       "state"},
      {"a long swatch", "texture,counted,count,length,swatch\nmoss,rows,1,1 cm," + std::string(65, 'x') + "\n",
       ErrorCode::bad_value, 2, "swatch"},
      {"a header further down", "# a\n\ntexture,counted,length,unit\n", ErrorCode::missing_field, 3, "count"},
      {"no header", good, ErrorCode::unknown_field, 1, "moss"},
      {"capitals", "Texture,counted,count,length,unit\n", ErrorCode::unknown_field, 1, "Texture"},
      {"semicolons", "texture;counted;count;length;unit\n", ErrorCode::unknown_field, 1,
       "texture;counted;count;length;unit"},
      {"a column twice", "texture,counted,count,length,unit,count\n", ErrorCode::duplicate_key, 1, "count"},
      {"a field short", header + good + "moss,rows,30,100,mm\n", ErrorCode::bad_syntax, 3, ""},
      {"a decimal comma", header + "moss,rows,30,5,100,mm,left\n", ErrorCode::bad_syntax, 2, ""},
      {"an open quote", header + good + "\"moss,rows,30,100,mm,left\n" + good, ErrorCode::bad_syntax, 3, ""},
      {"text after a quote", header + "\"moss\"y,rows,30,100,mm,left\n", ErrorCode::bad_syntax, 2, ""},
      {"a quote inside", header + "moss,rows,30,100,mm,4\" up\n", ErrorCode::bad_syntax, 2, ""},
      {"old line ends", "texture,counted,count,length,unit\rmoss,rows,30,100,mm\r", ErrorCode::bad_syntax, 1, ""},
      {"no texture", header + ",rows,30,100,mm,left\n", ErrorCode::bad_value, 2, "texture"},
      {"courses", header + "moss,courses,30,100,mm,left\n", ErrorCode::bad_value, 2, "counted"},
      {"no count", header + "moss,rows,,100,mm,left\n", ErrorCode::bad_value, 2, "count"},
      {"a word", header + "moss,rows,thirty,100,mm,left\n", ErrorCode::bad_value, 2, "count"},
      {"not a number", header + "moss,rows,nan,100,mm,left\n", ErrorCode::bad_value, 2, "count"},
      {"infinite", header + "moss,rows,inf,100,mm,left\n", ErrorCode::bad_value, 2, "count"},
      {"hexadecimal", header + "moss,rows,0x1E,100,mm,left\n", ErrorCode::bad_value, 2, "count"},
      {"a plus sign", header + "moss,rows,+30,100,mm,left\n", ErrorCode::bad_value, 2, "count"},
      {"two points", header + "moss,rows,3.0.,100,mm,left\n", ErrorCode::bad_value, 2, "count"},
      {"a quoted decimal comma", header + "moss,rows,\"30,5\",100,mm,left\n", ErrorCode::bad_value, 2, "count"},
      {"nothing counted", header + "moss,rows,0,100,mm,left\n", ErrorCode::bad_value, 2, "count"},
      {"less than nothing", header + "moss,rows,-3,100,mm,left\n", ErrorCode::bad_value, 2, "count"},
      {"past a double", header + "moss,rows,1e999,100,mm,left\n", ErrorCode::bad_value, 2, "count"},
      {"under a double", header + "moss,rows,1e-999,100,mm,left\n", ErrorCode::bad_value, 2, "count"},
      {"a unit with the number", header + "moss,rows,30,100mm,mm,left\n", ErrorCode::bad_value, 2, "length"},
      {"too long once in mm", header + "moss,rows,30,1001,cm,left\n", ErrorCode::bad_value, 2, "length"},
      {"overflow once in mm", header + "moss,rows,30,1e308,in,left\n", ErrorCode::bad_value, 2, "length"},
      {"no unit", header + "moss,rows,30,100,,left\n", ErrorCode::bad_unit, 2, "unit"},
      {"a weight", header + "moss,rows,30,100,g,left\n", ErrorCode::bad_unit, 2, "unit"},
      {"two units", header + "moss,rows,30,100,mm cm,left\n", ErrorCode::bad_unit, 2, "unit"},
      {"in capitals", header + "moss,rows,30,100,MM,left\n", ErrorCode::bad_unit, 2, "unit"},
      {"a long place", header + "moss,rows,30,100,mm," + std::string(257, 'x') + "\n", ErrorCode::bad_value, 2,
       "place"},
      {"a NUL", header + "moss,rows,30,100,mm,a" + std::string(1, '\0') + "\n", ErrorCode::bad_value, 2, "place"},
      {"not UTF-8", header + good + "moss,rows,30,100,mm,\xE9t\xE9\n", ErrorCode::bad_encoding, 3, ""},
      {"after a field of two lines", header + "\"mo\nss\",rows,x,100,mm,left\n", ErrorCode::bad_value, 3, "count"},
      {"after a record of two lines", header + "\"mo\nss\",rows,1,100,mm,left\nmoss,rows,1,100,pt,\n",
       ErrorCode::bad_unit, 4, "unit"},
      {"with CRLF", "texture,counted,count,length,unit\r\n\r\nmoss,rows,1,100,pt\r\n", ErrorCode::bad_unit, 3, "unit"},
  };
  for (const Case& each : cases) {
    INFO(each.why);
    CHECK_THROWS_MATCHES(read_swatch(each.csv), Error, refused_field(each.code, each.field, each.line));
  }
}

TEST_CASE("the message names place, value and limit", "[gauge][file][error]") {
  CHECK_THROWS_WITH(read_swatch(header + "moss,rows,30,1001,cm,left\n"),
                    "line 2, field length is 10010 mm; it must be 1..10000 mm");
  CHECK_THROWS_WITH(read_swatch(header + "moss,rows,30,100,inchs,left\n"),
                    "line 2, field unit: 'inchs' is no unit of length; it must be mm, cm, m, in, ft or yd");
  CHECK_THROWS_WITH(read_swatch(header + "moss,rows,\"30,5\",100,mm,left\n"),
                    "line 2, field count: '30,5', character 3: a comma: numbers have a decimal point, and thousands "
                    "stand together");
  // Cut to 60 bytes, but not inside the two bytes of a letter.
  std::string word = "a";
  for (int i = 0; i < 30; ++i) word += "\xC3\xA9";
  const std::string cut = word.substr(0, 59) + "...";
  CHECK_THROWS_WITH(read_swatch(header + "moss,rows," + word + ",100,mm,left\n"),
                    "line 2, field count: '" + cut + "', character 1: '" + cut + "' is not a number");
}

TEST_CASE("numbers of a swatch file are written as those of quantities, with a column for units or without",
          "[gauge][file]") {
  const std::string own_unit = "texture,counted,count,length\n";
  const struct {
    const char* text;
    double value;
  } good[] = {{"28", 28},         {"28.5", 28.5}, {"28 1/2", 28.5}, {"28\xC2\xBD", 28.5},
              {"57/2", 28.5},     {".5", 0.5},    {"028.50", 28.5}, {"0.30000000000000004", 0.30000000000000004},
              {"10000", 10'000.0}};
  for (const auto& each : good) {
    CAPTURE(each.text);
    const std::string text = each.text;
    CHECK(read_swatch(header + "moss,rows," + text + ",100,mm,\n").measurements()[0].count == each.value);
    CHECK(read_swatch(own_unit + "moss,rows," + text + ",100 mm\n").measurements()[0].count == each.value);
    if (each.value < 1) continue;
    CHECK(read_swatch(header + "moss,rows,28," + text + ",mm,\n").measurements()[0].length_mm == each.value);
    CHECK(read_swatch(own_unit + "moss,rows,28," + text + " mm\n").measurements()[0].length_mm == each.value);
  }
  for (const char* text :
       {"1e2", "28.", "+28", "28 1/0", "28.5 1/2", "28 0.5", "1 000", "28 1/2 1/2", "0x1E", "28.000000000000000000",
        "\xE2\x88\x92"
        "28"}) {
    CAPTURE(text);
    const auto refused_at = [&](const std::string& csv, const char* field) {
      try {
        read_swatch(csv);
        FAIL("was read");
      } catch (const Error& error) {
        CHECK(error.place().line == 2);
        CHECK(error.place().field == field);
        CHECK(std::string(error.what()).find(", character ") != std::string::npos);
      }
    };
    refused_at(header + "moss,rows," + text + ",100,mm,\n", "count");
    refused_at(header + "moss,rows,28," + text + ",mm,\n", "length");
    refused_at(own_unit + "moss,rows,28," + text + " mm\n", "length");
  }
}

TEST_CASE("a swatch file past its limits is refused", "[gauge][file][error]") {
  std::string csv = header;
  for (std::size_t i = 0; i < Swatch::max_measurements; ++i) csv += "a,rows,1,1,cm,\n";
  CHECK(read_swatch(csv).measurements().size() == Swatch::max_measurements);
  CHECK_THROWS_MATCHES(read_swatch(csv + "a,rows,1,1,cm,\n"), Error,
                       refused_field(ErrorCode::too_large, "", static_cast<int>(Swatch::max_measurements) + 2));
  const std::string huge(max_swatch_bytes + 1, '\n');
  CHECK_THROWS_MATCHES(read_swatch(huge), Error,
                       refused_field(ErrorCode::too_large, "", static_cast<int>(max_swatch_bytes) + 1));
}

TEST_CASE("what is written reads back equal, whatever the texts hold", "[gauge][file]") {
  const Swatch swatch({{"# no comment", Counted::stitches, 28, 100, "left, \"upper\""},
                       {" outer blanks ", Counted::rows, 0.1, 1, "\t"},
                       {"two\nlines\r", Counted::rows, 10000, 10000, "\r\n"},
                       {"caf\xC3\xA9 \xE2\x86\x92", Counted::stitches, 1.0 / 3, 10.0 / 3, ""},
                       {"\"", Counted::rows, 20, 101.6, "\"\""},
                       {"\xEF\xBB\xBF", Counted::rows, 1e-1, 1e4, "#"}});
  CHECK(read_swatch(write(swatch)) == swatch);
  CHECK(write(plain_swatch()) ==
        "texture,counted,count,length,unit,place\n"
        "stockinette,stitches,28,100,mm,left third\n"
        "stockinette,rows,40.5,101.6,mm,\"middle, marked rows\"\n"
        "rope 3/3 every 8,rows,30,75,mm,\n");
  CHECK(read_swatch(write(Swatch())) == Swatch());
}

TEST_CASE("the longest swatch there can be, written, still fits the reader's limit", "[gauge][file]") {
  const double longest = 1234.5678901234567;
  const Measurement worst{std::string(256, '"'), Counted::stitches,      longest, longest, std::string(256, '"'),
                          std::string(64, '"'),  ClothState::off_machine};
  const std::string header_and_line = write(Swatch({worst}));
  const std::string lines_twice = write(Swatch({worst, worst}));
  const std::size_t line = lines_twice.size() - header_and_line.size();
  CHECK(line > 1024);
  CHECK(header_and_line.size() + (line + 16) * Swatch::max_measurements < max_swatch_bytes);
  CHECK(read_swatch(lines_twice) == Swatch({worst, worst}));
}

TEST_CASE("a length with its unit in a column is the length that it is with its unit behind it", "[gauge][file]") {
  for (const char* unit : {"mm", "cm", "in", "in.", "inches", "\"", "yd."}) {
    for (const char* length : {"2 1/3", "4 2/3", "3.3", "5 1/7"}) {
      const std::string spelt = std::string(unit) == "\"" ? "\"\"\"\"" : unit;
      const Swatch swatch =
          read_swatch("texture,counted,count,length,unit\nmoss,rows,30," + std::string(length) + "," + spelt + "\n");
      INFO(length << ' ' << unit);
      CHECK(swatch.measurements()[0].length_mm == read_length(std::string(length) + " " + unit).mm);
    }
  }
}

TEST_CASE("a line of nothing but commas is refused before it takes many times its length", "[gauge][file][error]") {
  CHECK_THROWS_MATCHES(read_swatch(header + std::string(2'000, ',') + "\n"), Error,
                       refused_field(ErrorCode::bad_syntax, "", 2));
}

}  // namespace gauge_file_test
