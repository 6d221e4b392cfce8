#pragma once

#include <string>

namespace latchwork_test {

inline bool holds(const std::string& text, const std::string& part) {
  return text.find(part) != std::string::npos;
}

}  // namespace latchwork_test
