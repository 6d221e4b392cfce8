#pragma once

#include <map>
#include <string_view>
#include <vector>

#include "latchwork/panel.hpp"
#include "latchwork/yarn_need.hpp"

namespace latchwork::inline v0 {

/// Where a texture's yarn goes.
struct TexturePlaces {
  std::string_view texture;       ///< the panel's
  bool plain = true;              ///< every place of it is knit, and no crossing reaches into it
  std::map<int, double> strands;  ///< by yarn: places times strands, cast-on, bind-off and waste too
};

/// What the figures are applied to.
struct Places {
  std::vector<TexturePlaces> textures;  ///< in the order in which they begin, rows from below, from the left; those
                                        ///< without a place are left out
  double first_tex = 0;  ///< of all strands of row 1; a yarn of unknown number, which is alone, counts as 1 tex
  bool same_tex = true;  ///< in every row, waste aside
};

/// @throws Error bad_argument (field "rows") for a row without a yarn.
Places places_of(const Panel& panel, const YarnRequest& request);

}  // namespace latchwork::inline v0
