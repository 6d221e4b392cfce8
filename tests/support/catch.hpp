#pragma once

// Catch2 2.13 and 3, told apart at configure time: tests include this and nothing of Catch2's.
#ifdef LATCHWORK_CATCH2_V3
#include <catch2/catch_all.hpp>
namespace latchwork_test {
template <class T>
using Matcher = Catch::Matchers::MatcherBase<T>;
using Catch::Approx;
}  // namespace latchwork_test
#else
#include <catch2/catch.hpp>
namespace latchwork_test {
template <class T>
using Matcher = Catch::MatcherBase<T>;
using Catch::Detail::Approx;
}  // namespace latchwork_test
#endif

#include "latchwork/error.hpp"

namespace latchwork_test {

/// Matches an Error by its code and, where given, its row and column, line or field.
class Refused : public Matcher<latchwork::Error> {
 public:
  Refused(latchwork::ErrorCode code, latchwork::Place place) : code_(code), place_(std::move(place)) {}
  bool match(const latchwork::Error& error) const override { return error.code() == code_ && error.place() == place_; }
  std::string describe() const override {
    return "is refused as " + std::string(latchwork::error_name(code_)) + " at row " + std::to_string(place_.row) +
           ", column " + std::to_string(place_.column) + ", line " + std::to_string(place_.line) + ", field '" +
           place_.field + "', character " + std::to_string(place_.character);
  }

 private:
  latchwork::ErrorCode code_;
  latchwork::Place place_;
};

inline Refused refused(latchwork::ErrorCode code, latchwork::Place place = {}) {
  return {code, std::move(place)};
}
inline Refused refused(latchwork::ErrorCode code, int row, int column) {
  latchwork::Place place;
  place.row = row;
  place.column = column;
  return {code, place};
}
inline Refused refused_field(latchwork::ErrorCode code, std::string field, int line = 0) {
  latchwork::Place place;
  place.field = std::move(field);
  place.line = line;
  return {code, place};
}
inline Refused refused_at(latchwork::ErrorCode code, std::string field, int character) {
  latchwork::Place place;
  place.field = std::move(field);
  place.character = character;
  return {code, place};
}

/// Of a plan's stop after a row, by its index.
inline latchwork::Place stop_place(int index, int row) {
  latchwork::Place place;
  place.row = row;
  place.field = "stops[" + std::to_string(index) + "].row";
  return place;
}

/// What the Error says that `call` throws; empty when it throws none.
template <class Call>
std::string message_of(Call&& call) {
  try {
    call();
  } catch (const latchwork::Error& error) {
    return error.what();
  }
  return {};
}

}  // namespace latchwork_test
