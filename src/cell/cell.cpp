#include "latchwork/cell.hpp"

#include <string_view>

namespace latchwork::inline v0 {
namespace {

constexpr std::string_view letters = "kpts.";  // at each cell's own number

}  // namespace

char cell_letter(Cell cell) noexcept {
  const auto number = static_cast<std::size_t>(cell);
  return number < letters.size() ? letters[number] : '\0';
}

std::optional<Cell> cell_of(char letter) noexcept {
  const auto number = letters.find(letter);
  if (number == std::string_view::npos) return std::nullopt;
  return static_cast<Cell>(number);
}

}  // namespace latchwork::inline v0
