#pragma once

#include <cmath>
#include <fstream>
#include <nlohmann/json.hpp>
#include <stdexcept>
#include <string>
#include <string_view>

namespace latchwork_test {

/// The published and derived values that tests/reference holds the library against, with their sources.
inline const nlohmann::json& reference_values() {
  static const nlohmann::json values = [] {
    const std::string path = std::string(LATCHWORK_TESTS_DIR) + "/reference/check_values.json";
    std::ifstream file(path);
    if (!file) throw std::runtime_error("cannot open " + path);
    return nlohmann::json::parse(file);
  }();
  return values;
}

/// One check value, by its id: topic, inputs, expected, tolerance, source, mark.
inline const nlohmann::json& reference(std::string_view id) {
  for (const nlohmann::json& value : reference_values()) {
    if (value.at("id").get_ref<const std::string&>() == id) return value;
  }
  throw std::runtime_error("check_values.json has no value " + std::string(id));
}

/// What its example starts from.
inline const nlohmann::json& reference_inputs(std::string_view id) {
  return reference(id).at("inputs");
}
template <class Value = double>
Value reference_input(std::string_view id, const char* name) {
  return reference_inputs(id).at(name).get<Value>();
}

/// Where the value comes from, for a test's INFO.
inline std::string reference_source(const std::string& id) {
  const nlohmann::json& value = reference(id);
  return id + " (" + value.at("mark").get<std::string>() + "): " + value.at("source").get<std::string>();
}

/// Whether `got` is `expected` within the value's own tolerance.
inline bool meets_reference(std::string_view id, double got, double expected) {
  const nlohmann::json& tolerance = reference(id).at("tolerance");
  if (tolerance.contains("exact")) return got == expected;
  if (tolerance.contains("abs")) return std::abs(got - expected) <= tolerance.at("abs").get<double>();
  return std::abs(got - expected) <= tolerance.at("rel").get<double>() * std::abs(expected);
}
inline bool meets_reference(std::string_view id, double got) {
  return meets_reference(id, got, reference(id).at("expected").get<double>());
}

}  // namespace latchwork_test
