#include "yarn_need/check.hpp"

#include <fmt/format.h>

#include <string>
#include <string_view>

#include "error/refuse.hpp"
#include "gauge/gauges.hpp"
#include "latchwork/error.hpp"
#include "text/utf8.hpp"
#include "yarn/systems.hpp"

namespace latchwork::inline v0 {
namespace {

void require(const std::string& field, double value, double least, double most, bool may_be_zero = false) {
  if ((value >= least && value <= most) || (may_be_zero && value == 0)) return;  // false for NaN
  refuse(ErrorCode::bad_argument, field,
         fmt::format("{} is {}; it must be {}{}..{}", field, value, may_be_zero ? "0 or " : "", least, most));
}

void require_items(std::string_view field, std::size_t count, std::size_t most) {
  if (count <= most) return;
  refuse(ErrorCode::too_large, std::string(field), fmt::format("{} has {} items; the limit is {}", field, count, most));
}

// Two measures that are given together, or not at all.
void require_pair(const std::string& where, const char* first, double a, const char* second, double b, double most) {
  require(where + first, a, 1, most, true);
  require(where + second, b, 1, most, true);
  if ((a == 0) == (b == 0)) return;
  refuse(ErrorCode::bad_argument, where + (a == 0 ? first : second),
         fmt::format("{}{} is 0, but {}{} is not: give both or neither", where, a == 0 ? first : second, where,
                     a == 0 ? second : first));
}

void require_yarns(const YarnRequest& request) {
  if (request.yarns.empty()) refuse(ErrorCode::bad_argument, "yarns", "yarns has none; it must have one or more");
  require_items("yarns", request.yarns.size(), YarnRequest::max_yarns);
  for (std::size_t i = 0; i < request.yarns.size(); ++i) {
    const Yarn& yarn = request.yarns[i];
    const std::string where = fmt::format("yarns[{}].", i);
    if (yarn.name.find('\0') != std::string::npos || utf8_error(yarn.name) != std::string::npos) {
      refuse(ErrorCode::bad_encoding, where + "name",
             fmt::format("{}name holds a NUL, or a byte that is not UTF-8", where));
    }
    require(where + "ball_g", yarn.ball_g, 1e-3, 1e6, true);
    if (yarn.number.number == 0) {
      if (yarn.number.system != YarnSystem::tex || yarn.number.plies != 1) {
        refuse(ErrorCode::bad_argument, where + (yarn.number.plies != 1 ? "number.plies" : "number.system"),
               fmt::format("{}number is not known, which is 0 tex in one ply", where));
      }
      if (request.yarns.size() == 1) continue;
      refuse(ErrorCode::bad_argument, where + "number.number",
             fmt::format("{}number is not known; of several yarns every one must be", where));
    }
    require_yarn(yarn.number, where + "number.");
    yarn_number_or_refuse(exact_tex(yarn.number), "tex", ErrorCode::bad_argument, where + "number.number");
  }
}

void require_yarn_index(const std::string& field, int yarn, int least, const YarnRequest& request) {
  require(field, yarn, least, static_cast<double>(request.yarns.size()) - 1);
}

void require_rows(const YarnRequest& request, int rows) {
  require_items("rows", request.rows.size(), YarnRequest::max_items);
  for (std::size_t i = 0; i < request.rows.size(); ++i) {
    const YarnRows& each = request.rows[i];
    const std::string where = fmt::format("rows[{}].", i);
    require(where + "first", each.first, 1, rows);
    require(where + "last", each.last, each.first, rows, true);
    require_yarn_index(where + "yarn", each.yarn, 0, request);
  }
}

void require_measures(const YarnRequest& request) {
  require_items("weighed", request.weighed.size(), YarnRequest::max_items);
  for (std::size_t i = 0; i < request.weighed.size(); ++i) {
    const WeighedSwatch& each = request.weighed[i];
    const std::string where = fmt::format("weighed[{}].", i);
    require_texture_name(where + "texture", each.texture);
    require(where + "weight_g", each.weight_g, 1e-3, 1e6);
    require(where + "scale_g", each.scale_g, 0, 1e6);
    require_pair(where, "width_mm", each.width_mm, "height_mm", each.height_mm, 1e5);
    require_pair(where, "stitches", each.stitches, "rows", each.rows, 1e6);
    if (each.width_mm == 0 && each.stitches == 0) {
      refuse(
          ErrorCode::bad_argument, where + "width_mm",
          fmt::format("{}width_mm and stitches are 0: of what was weighed give width and height, or stitches and rows",
                      where));
    }
    require(where + "tex", each.tex, 1e-3, 1e9, true);
    if (cloth_state_name(each.state).empty()) {
      refuse(ErrorCode::bad_argument, where + "state",
             fmt::format("{}state is {}, which is no state", where, static_cast<int>(each.state)));
    }
    if (each.tex > 0 && request.yarns[0].number.number == 0) {
      refuse(ErrorCode::bad_argument, where + "tex",
             fmt::format("{}tex is given, but the number of the yarn is not known", where));
    }
  }
  require_items("loops", request.loops.size(), YarnRequest::max_items);
  for (std::size_t i = 0; i < request.loops.size(); ++i) {
    const std::string where = fmt::format("loops[{}].", i);
    require_texture_name(where + "texture", request.loops[i].texture);
    require(where + "stitches", request.loops[i].stitches, 1, 1e9);
    require(where + "length_mm", request.loops[i].length_mm, 0.1, 1e9);
  }
  require_substitutes(request.substitutes);
  require_state(request.state);
}

}  // namespace

void require_request(const YarnRequest& request, int rows) {
  require_yarns(request);
  require_rows(request, rows);
  require_measures(request);
  if (request.plain) {
    require("plain.courses", request.plain->courses, 0.1, 100);
    require("plain.wales", request.plain->wales, 0.1, 100);
  }
  require("pieces", request.pieces, 1, 10'000);
  require("cast_on_rows", request.cast_on_rows, 0, 1000);
  require("bind_off_rows", request.bind_off_rows, 0, 1000);
  require("waste_rows", request.waste_rows, 0, 1e6);
  require_yarn_index("waste_yarn", request.waste_yarn, -1, request);
  require("seam_mm", request.seam_mm, 0, 1e6);
  require("seam_ratio", request.seam_ratio, 1, 20);
  require_yarn_index("seam_yarn", request.seam_yarn, 0, request);
  require("sureness", request.sureness, 0, 6);
  require("allowance", request.allowance, 0, 2);
  if (request.seam_mm > 0 && request.yarns[0].number.number == 0) {
    refuse(ErrorCode::bad_argument, "yarns[0].number.number",
           "the number of the yarn is not known, so that its seams cannot be weighed");
  }
}

}  // namespace latchwork::inline v0
