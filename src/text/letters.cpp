#include "text/letters.hpp"

namespace latchwork::inline v0 {

std::string letter_name(std::size_t index) {
  std::string name;
  for (std::size_t n = index + 1; n > 0; n = (n - 1) / 26) {
    name.insert(name.begin(), static_cast<char>('A' + (n - 1) % 26));
  }
  return name;
}

}  // namespace latchwork::inline v0
