#pragma once

#include <cstdio>
#include <fstream>
#include <string>

namespace latchwork_test {

/// Most memory that this process has held so far, in KiB, as Linux tells it; 0 elsewhere.
inline long peak_kib() {
  std::ifstream status("/proc/self/status");
  std::string word;
  long kib = 0;
  while (status >> word) {
    if (word == "VmHWM:") status >> kib;
  }
  return kib;
}

/// The number that this program prints when it is run with these words, in a process of its own: what peak_kib() rises
/// by there is not hidden by what was held before. -1 when it prints none.
inline long kib_told_by(const std::string& self, const std::string& words) {
  FILE* const child = popen(("'" + self + "' " + words).c_str(), "r");
  long kib = 0;
  if (!child || std::fscanf(child, "%ld", &kib) != 1) kib = -1;
  if (child) pclose(child);
  return kib;
}

}  // namespace latchwork_test
