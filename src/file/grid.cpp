#include <array>
#include <string_view>

#include "file/grid_json.hpp"
#include "latchwork/file.hpp"

namespace latchwork::inline v0 {
namespace {

constexpr std::string_view grid_format = "latchwork-grid";
constexpr std::string_view strip_format = "latchwork-strip";

}  // namespace

Grid read_grid(std::string_view json) {
  const json::Document document(json);
  constexpr std::array<std::string_view, 2> known = {"rows", "crossings"};
  return json::take_grid(json::open(document, grid_format, 1, known));
}

std::string write(const Grid& grid) {
  json::Writer writer;
  writer.begin_file(grid_format, 1);
  json::put_grid(writer, grid);
  writer.end_object();
  return writer.take();
}

Strip read_strip(std::string_view json) {
  const json::Document document(json);
  constexpr std::array<std::string_view, 4> known = {"name", "texture", "rows", "crossings"};
  const json::Fields fields = json::open(document, strip_format, 1, known);
  const std::string name(fields.take("name").text());
  const std::string texture(fields.take("texture").text());
  Grid grid = json::take_grid(fields);
  return {name, texture, std::move(grid)};
}

std::string write(const Strip& strip) {
  json::Writer writer;
  writer.begin_file(strip_format, 1);
  writer.key("name");
  writer.text(strip.name);
  writer.key("texture");
  writer.text(strip.texture);
  json::put_grid(writer, strip.grid);
  writer.end_object();
  return writer.take();
}

}  // namespace latchwork::inline v0
