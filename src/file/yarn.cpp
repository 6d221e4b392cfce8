#include <climits>
#include <string>

#include "file/gauge_json.hpp"
#include "latchwork/file.hpp"
#include "yarn_need/check.hpp"

namespace latchwork::inline v0 {
namespace {

using json::Is;
using json::Layout;
using json::Missing;
using json::Value;
using json::Writer;

constexpr std::string_view yarn_format = "latchwork-yarn";
constexpr std::string_view unknown = "unknown";

/// As people write it, "2/28 Nm"; in a file without its characters' places, which would be those of the text alone.
struct NumberText {
  void operator()(Value value, YarnNumber& number) const {
    const std::string_view text = value.text();
    number = {};
    if (text != unknown) value.guard([&] { number = read_yarn_number(text); });
  }
  void operator()(Writer& writer, const YarnNumber& number) const {
    writer.text(number.number == 0 ? std::string(unknown) : yarn_number_text(number));
  }
};

// The members of each struct, once, for reading and writing. Ranges are those of require_request().
struct YarnLists {
  using Object = json::Object<YarnLists, Missing::keeps_default>;

  void operator()(auto& members, Is<Yarn> auto& yarn) const {
    members.text("name", yarn.name);
    members.value("number", yarn.number, NumberText{});
    members.number("ball_g", yarn.ball_g);
  }

  void operator()(auto& members, Is<YarnRows> auto& rows) const {
    members.integer("first", rows.first, 1, INT_MAX);
    members.integer("last", rows.last, 0, INT_MAX);
    members.integer("yarn", rows.yarn, 0, INT_MAX);
  }

  void operator()(auto& members, Is<WeighedSwatch> auto& swatch) const {
    members.required("texture", "weight_g");
    members.text("texture", swatch.texture);
    members.number("weight_g", swatch.weight_g);
    members.number("scale_g", swatch.scale_g);
    members.number("width_mm", swatch.width_mm);
    members.number("height_mm", swatch.height_mm);
    members.number("stitches", swatch.stitches);
    members.number("rows", swatch.rows);
    members.number("tex", swatch.tex);
    members.value("state", swatch.state, json::StateText{});
  }

  void operator()(auto& members, Is<MeasuredLoops> auto& loops) const {
    members.required("texture", "stitches", "length_mm");
    members.text("texture", loops.texture);
    members.number("stitches", loops.stitches);
    members.number("length_mm", loops.length_mm);
  }

  void operator()(auto& members, Is<Substitute> auto& substitute) const {
    json::substitute_members(members, substitute);
  }

  void operator()(auto& members, Is<PlainConstants> auto& constants) const {
    members.number("courses", constants.courses);
    members.number("wales", constants.wales);
  }

  void operator()(auto& members, Is<YarnRequest> auto& request) const {
    members.required("yarns");
    constexpr std::size_t most = YarnRequest::max_items;
    members.list("yarns", request.yarns, Layout::lines, Object{}, YarnRequest::max_yarns);
    members.list("rows", request.rows, Layout::lines, Object{}, most);
    members.list("weighed", request.weighed, Layout::lines, Object{}, most);
    members.list("loops", request.loops, Layout::lines, Object{}, most);
    members.list("substitutes", request.substitutes, Layout::lines, Object{}, most);
    members.optional("state", request.state, json::StateText{});
    members.optional("plain", request.plain, Object{});
    members.integer("pieces", request.pieces, 1, 10'000);
    members.number("cast_on_rows", request.cast_on_rows);
    members.number("bind_off_rows", request.bind_off_rows);
    members.number("waste_rows", request.waste_rows);
    members.integer("waste_yarn", request.waste_yarn, -1, INT_MAX);
    members.number("seam_mm", request.seam_mm);
    members.number("seam_ratio", request.seam_ratio);
    members.integer("seam_yarn", request.seam_yarn, 0, INT_MAX);
    members.number("sureness", request.sureness);
    members.number("allowance", request.allowance);
  }
};

}  // namespace

YarnRequest read_yarn_request(std::string_view json) {
  return json::read_file<YarnRequest, YarnLists, Missing::keeps_default>(
      json, yarn_format, [](const YarnRequest& request) { require_request(request, Grid::max_side); });
}

std::string write(const YarnRequest& request) {
  try {
    require_request(request, Grid::max_side);
  } catch (const Error& error) {
    if (error.code() != ErrorCode::bad_argument) throw;
    throw Error(ErrorCode::bad_value, error.place(), error.what());
  }
  return json::write_file<YarnLists, Missing::keeps_default>(request, yarn_format);
}

}  // namespace latchwork::inline v0
