#include "latchwork/error.hpp"

#include <set>
#include <string>

#include "catch.hpp"

namespace error_test {

using namespace latchwork;

TEST_CASE("every error code has a name of its own, and the numbers run on without a gap", "[error]") {
  std::set<std::string> names;
  int expected = 1;
  for (const ErrorCode code : error_codes()) {
    CHECK(static_cast<int>(code) == expected++);
    CHECK_FALSE(error_name(code).empty());
    names.insert(std::string(error_name(code)));
  }
  CHECK(names.size() == error_codes().size());
  CHECK(error_name(static_cast<ErrorCode>(expected)).empty());
  CHECK(error_name(static_cast<ErrorCode>(0)).empty());
}

TEST_CASE("an error keeps its code, its place and its words when it is copied", "[error]") {
  Place place;
  place.row = 12;
  place.column = 30;
  const Error error(ErrorCode::off_grid, place, "crossing at row 12, column 30 takes 6 stitches; the grid is 32 wide");
  const Error copy = error;
  CHECK(copy.code() == ErrorCode::off_grid);
  CHECK(copy.place() == place);
  CHECK(std::string(copy.what()).find("32 wide") != std::string::npos);
}

}  // namespace error_test
