#pragma once

#include <span>
#include <string_view>

namespace latchwork::inline v0 {

/// A file of src/article/data.
struct BuiltInText {
  std::string_view name;  ///< of the article in it
  std::string_view json;
};

/// All of them, in the order of article_names(). CMake makes the code (texts.cpp.in).
std::span<const BuiltInText> built_in_texts() noexcept;

}  // namespace latchwork::inline v0
