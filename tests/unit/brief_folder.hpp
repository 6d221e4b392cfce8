#pragma once

#include <filesystem>
#include <fstream>
#include <iterator>
#include <string>
#include <utility>
#include <vector>

#include "catch.hpp"
#include "latchwork/brief.hpp"

namespace latchwork_test {

inline std::string text_of(const std::filesystem::path& path) {
  std::ifstream file(path, std::ios::binary);
  REQUIRE(file);
  return {std::istreambuf_iterator<char>(file), std::istreambuf_iterator<char>()};
}

inline void put(const std::filesystem::path& path, const std::string& text) {
  std::ofstream file(path, std::ios::binary);
  file << text;
}

inline std::filesystem::path example(const std::string& name) {
  return std::filesystem::path(LATCHWORK_EXAMPLES_DIR) / "briefs" / name;
}

/// A folder of its own for one test, gone afterwards.
struct Folder {
  std::filesystem::path path;
  explicit Folder(const std::string& name) : path(std::filesystem::temp_directory_path() / ("latchwork-" + name)) {
    std::filesystem::remove_all(path);
    std::filesystem::create_directories(path);
  }
  ~Folder() {
    std::error_code ignored;
    std::filesystem::remove_all(path, ignored);
  }
  Folder(const Folder&) = delete;
  Folder& operator=(const Folder&) = delete;
};

/// What was measured washed, rested too: so many times as many stitches and rows.
inline latchwork::Swatch rested_too(const latchwork::Swatch& swatch, double times) {
  std::vector<latchwork::Measurement> all(swatch.measurements().begin(), swatch.measurements().end());
  const std::size_t count = all.size();
  for (std::size_t i = 0; i < count; ++i) {
    REQUIRE(all[i].state == latchwork::ClothState::washed);
    latchwork::Measurement rested = all[i];
    rested.state = latchwork::ClothState::rested;
    rested.count *= times;
    all.push_back(std::move(rested));
  }
  return latchwork::Swatch(std::move(all));
}

inline latchwork::Brief sampler() {
  return latchwork::read_brief(example("sampler").string());
}

}  // namespace latchwork_test
