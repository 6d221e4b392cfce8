#pragma once

#include <fstream>
#include <sstream>
#include <stdexcept>
#include <string>
#include <vector>

#include "latchwork/error.hpp"

namespace latchwork_test {

/// One entry of tests/golden/file/refused.txt, which says how it is written.
struct RefusedFile {
  std::string kind;
  std::string code;
  latchwork::Place place;
  std::string near;  // the name that the message says was meant
  std::string reason;
  std::string text;
};

inline std::vector<RefusedFile> refused_files() {
  std::ifstream in(std::string(LATCHWORK_TESTS_DIR) + "/golden/file/refused.txt");
  std::vector<RefusedFile> files;
  std::string line;
  while (std::getline(in, line)) {
    if (!line.starts_with("@ ")) {
      if (!files.empty()) files.back().text += line + "\n";
      continue;
    }
    RefusedFile file;
    const std::size_t colon = line.find(": ");
    if (colon == std::string::npos) throw std::runtime_error("no reason in: " + line);
    file.reason = line.substr(colon + 2);
    std::istringstream words(line.substr(2, colon - 2));
    words >> file.kind >> file.code;
    for (std::string word; words >> word;) {
      const std::size_t equals = word.find('=');
      if (equals == std::string::npos) continue;
      const std::string name = word.substr(0, equals);
      const std::string value = word.substr(equals + 1);
      if (name == "line") file.place.line = std::stoi(value);
      if (name == "row") file.place.row = std::stoi(value);
      if (name == "column") file.place.column = std::stoi(value);
      if (name == "field") file.place.field = value;
      if (name == "near") file.near = value;
    }
    files.push_back(file);
  }
  return files;
}

}  // namespace latchwork_test
