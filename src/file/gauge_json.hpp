#pragma once

#include <array>
#include <string_view>

#include "file/object.hpp"
#include "latchwork/gauge.hpp"

// By which gauges something is measured, as several formats say it.
namespace latchwork::inline v0::json {

/// The state of the cloth, by its name.
struct StateText {
  void operator()(Value value, ClothState& state) const {
    std::array<std::string_view, 3> names;
    for (std::size_t i = 0; i < names.size(); ++i) names[i] = cloth_state_name(static_cast<ClothState>(i));
    state = static_cast<ClothState>(value.choice(names.data(), names.size()));
  }
  void operator()(Writer& writer, const ClothState& state) const { writer.text(cloth_state_name(state)); }
};

inline void substitute_members(auto& members, Is<Substitute> auto& substitute) {
  members.required("texture", "use");
  members.text("texture", substitute.texture);
  members.text("use", substitute.use);
}

}  // namespace latchwork::inline v0::json
