#include <string>
#include <vector>

#include "catch.hpp"
#include "latchwork/timings.hpp"

namespace timings_file_test {

using namespace latchwork;
using latchwork_test::refused_field;

namespace {

const std::string header = "stops,batches,drops,rungs_purl,rows,time,unit,note\n";

Timings plain_timings() {
  return Timings({{.stops = 1, .batches = 3, .drops = 12, .rungs_purl = 12, .time_ms = 90'500, .note = "left, upper"},
                  {.rows = 24, .time_ms = 96'000}});
}

}  // namespace

TEST_CASE("a timings file is read by its header, in any order of columns, with the lines of its spells",
          "[timings][file]") {
  const std::string csv = "# after tea\n" + header +
                          "1,3,12,12,0,90.5,s,\"left, upper\"\n"
                          "\n"
                          ",,,,24,1.6,min,\n";
  const Timings timings = read_timings(csv);
  CHECK(timings == plain_timings());
  CHECK(timings.spells()[0].line == 3);
  CHECK(timings.spells()[1].line == 5);
  CHECK(read_timings("note,unit,time,rows,rungs_purl,drops,batches,stops\n"
                     "\"left, upper\",s,90.5,,12,12,3,1\n"
                     ",ms,96000,24,,,,\n") == timings);
}

TEST_CASE("columns of which no spell has any may be left out", "[timings][file]") {
  CHECK(read_timings("rows,time,unit\n10,40,s\n") == Timings({{.rows = 10, .time_ms = 40'000}}));
  CHECK(read_timings("rows,time,unit\n") == Timings());
}

TEST_CASE("a second is 1000 ms, a minute 60 s, an hour 60 min", "[timings][file]") {
  const auto ms = [](const std::string& text) {
    return read_timings("rows,time,unit\n1," + text + "\n").spells()[0].time_ms;
  };
  CHECK(ms("250,ms") == 250);
  CHECK(ms("12.345,s") == 12'345);
  CHECK(ms("1.1,min") == 66'000);
  CHECK(ms("0.35,h") == 1'260'000);
  CHECK(ms("0.0000025,h") == 9);
  CHECK(ms("12.3450000000,s") == 12'345);
  CHECK(ms(".5,s") == 500);
  CHECK(ms("0.001,s") == 1);
  CHECK(ms("100,h") == max_spell_ms);
}

TEST_CASE("what is wrong in a timings file is told with place, value and limit", "[timings][file][error]") {
  // One rule with read_duration(): never rounded.
  CHECK_THROWS_WITH(read_timings(header + "1,3,12,12,0,0.0014,s,\n"),
                    "line 2, field time: '0.0014' s is not a whole number of milliseconds");
  CHECK_THROWS_WITH(read_timings(header + "1,3,12,12,0,90000.5,ms,\n"),
                    "line 2, field time: '90000.5' ms is not a whole number of milliseconds");
  CHECK_THROWS_WITH(read_timings(header + "1,3,12,12,0,90000.00000001,ms,\n"),
                    "line 2, field time: '90000.00000001' ms is not a whole number of milliseconds");
  CHECK_THROWS_WITH(read_timings(header + "1,3,12,12,0,1e3,s,\n"),
                    "line 2, field time: '1e3' is not digits with or without a decimal point");
  CHECK_THROWS_WITH(read_timings(header + "1,3,12,12,0,28.,s,\n"),
                    "line 2, field time: '28.' has a point without a digit after it");
  CHECK_THROWS_WITH(read_timings(header + "1,3,12,12,0,101,h,\n"),
                    "line 2, field time: '101' h is 363600000 ms; it must be 1..360000000 ms");
  CHECK_THROWS_WITH(read_timings(header + "1000001,3,12,12,0,10,s,\n"),
                    "line 2, field stops is 1000001; it must be 0..1000000");
  CHECK_THROWS_WITH(read_timings(header + "1,3,12,12,0,10,sec,\n"),
                    "line 2, field unit: 'sec' is no unit of time here; it must be ms, s, min or h");
  CHECK_THROWS_WITH(read_timings(header + "0,,,,0,10,s,\n"),
                    "line 2, field time: nothing was done in this time; a spell must count something above 0");
  CHECK_THROWS_WITH(read_timings("time,unit\n10,s\n"),
                    "line 1, field stops: the header names no column of what was done, such as stops or rows");
}

TEST_CASE("a timings file past its limits is refused", "[timings][file][error]") {
  std::string csv = "rows,time,unit\n";
  for (std::size_t i = 0; i < Timings::max_spells; ++i) csv += "1,4,s\n";
  CHECK(read_timings(csv).spells().size() == Timings::max_spells);
  CHECK_THROWS_MATCHES(read_timings(csv + "1,4,s\n"), Error,
                       refused_field(ErrorCode::too_large, "", static_cast<int>(Timings::max_spells) + 2));
  CHECK_THROWS_MATCHES(read_timings(std::string(max_timings_bytes + 1, '\n')), Error,
                       refused_field(ErrorCode::too_large, "", static_cast<int>(max_timings_bytes) + 1));
}

TEST_CASE("what is written reads back equal, whatever the notes hold", "[timings][file]") {
  const Timings timings({{.stops = max_spell_count, .rows = 1, .time_ms = 1, .note = "# no comment, \"quoted\"\r\n"},
                         {.rungs_knit = 1,
                          .rungs_tuck = 2,
                          .rungs_slip = 3,
                          .crossings = 4,
                          .stitches_crossed = 5,
                          .holds = 6,
                          .shapings = 7,
                          .time_ms = max_spell_ms,
                          .note = " caf\xC3\xA9 "}});
  CHECK(read_timings(write(timings)) == timings);
  CHECK(read_timings(write(Timings())) == Timings());
  CHECK(write(plain_timings()) ==
        "stops,batches,drops,rungs_knit,rungs_purl,rungs_tuck,rungs_slip,crossings,stitches_crossed,holds,shapings,"
        "rows,time,unit,note\n"
        "1,3,12,0,12,0,0,0,0,0,0,0,90500,ms,\"left, upper\"\n"
        "0,0,0,0,0,0,0,0,0,0,0,24,96000,ms,\n");
}

TEST_CASE("spells out of their range are refused with index and field", "[timings][error]") {
  struct Case {
    const char* why;
    Spell spell;
    ErrorCode code;
    const char* field;
  };
  const Case cases[] = {
      {"less than nothing", {.stops = 2, .drops = -1, .time_ms = 5}, ErrorCode::bad_value, "spells[1].drops"},
      {"too much", {.rows = max_spell_count + 1, .time_ms = 5}, ErrorCode::bad_value, "spells[1].rows"},
      {"no time", {.rows = 1, .time_ms = 0}, ErrorCode::bad_value, "spells[1].time_ms"},
      {"time runs back", {.rows = 1, .time_ms = -5}, ErrorCode::bad_value, "spells[1].time_ms"},
      {"too long", {.rows = 1, .time_ms = max_spell_ms + 1}, ErrorCode::bad_value, "spells[1].time_ms"},
      {"idle", {.time_ms = 5}, ErrorCode::bad_value, "spells[1].time_ms"},
      {"a long note", {.rows = 1, .time_ms = 5, .note = std::string(257, 'x')}, ErrorCode::bad_value, "spells[1].note"},
      {"a NUL", {.rows = 1, .time_ms = 5, .note = std::string(1, '\0')}, ErrorCode::bad_value, "spells[1].note"},
      {"not UTF-8", {.rows = 1, .time_ms = 5, .note = "\xE9"}, ErrorCode::bad_encoding, "spells[1].note"},
      {"a line below 0", {.rows = 1, .time_ms = 5, .line = -1}, ErrorCode::bad_value, "spells[1].line"},
  };
  for (const Case& each : cases) {
    INFO(each.why);
    CHECK_THROWS_MATCHES(Timings({{.rows = 1, .time_ms = 1}, each.spell}), Error, refused_field(each.code, each.field));
  }
  const std::vector<Spell> many(Timings::max_spells + 1, {.rows = 1, .time_ms = 1});
  CHECK_THROWS_MATCHES(Timings(many), Error, refused_field(ErrorCode::too_large, "spells"));
}

}  // namespace timings_file_test
