#include "latchwork/error.hpp"

#include <array>
#include <utility>

namespace latchwork::inline v0 {
namespace {

struct Named {
  ErrorCode code;
  std::string_view name;
};

constexpr std::array named = {
    Named{ErrorCode::internal, "internal"},
    Named{ErrorCode::no_memory, "no_memory"},
    Named{ErrorCode::bad_argument, "bad_argument"},
    Named{ErrorCode::off_grid, "off_grid"},
    Named{ErrorCode::stitch_taken, "stitch_taken"},
    Named{ErrorCode::crossing_cut, "crossing_cut"},
    Named{ErrorCode::crossing_over_stack, "crossing_over_stack"},
    Named{ErrorCode::crossing_over_none, "crossing_over_none"},
    Named{ErrorCode::size_mismatch, "size_mismatch"},
    Named{ErrorCode::too_large, "too_large"},
    Named{ErrorCode::bad_letter, "bad_letter"},
    Named{ErrorCode::bad_syntax, "bad_syntax"},
    Named{ErrorCode::bad_encoding, "bad_encoding"},
    Named{ErrorCode::newer_version, "newer_version"},
    Named{ErrorCode::wrong_format, "wrong_format"},
    Named{ErrorCode::duplicate_key, "duplicate_key"},
    Named{ErrorCode::missing_field, "missing_field"},
    Named{ErrorCode::unknown_field, "unknown_field"},
    Named{ErrorCode::bad_value, "bad_value"},
    Named{ErrorCode::bad_unit, "bad_unit"},
    Named{ErrorCode::io, "io"},
    Named{ErrorCode::no_gauge, "no_gauge"},
    Named{ErrorCode::cancelled, "cancelled"},
};

constexpr auto codes = [] {
  std::array<ErrorCode, named.size()> all{};
  for (std::size_t i = 0; i < named.size(); ++i) all[i] = named[i].code;
  return all;
}();

}  // namespace

Error::Error(ErrorCode code, Place place, const std::string& message)
    : std::runtime_error(message), code_(code), place_(std::move(place)) {}

Error::~Error() = default;  // here, so that there is one type info for every library that throws or catches it

std::string_view error_name(ErrorCode code) noexcept {
  for (const auto& entry : named) {
    if (entry.code == code) return entry.name;
  }
  return {};
}

std::span<const ErrorCode> error_codes() noexcept {
  return codes;
}

}  // namespace latchwork::inline v0
