#include "file/motif_json.hpp"

#include <array>
#include <string>
#include <utility>

#include "file/grid_json.hpp"
#include "latchwork/motif.hpp"

namespace latchwork::inline v0::json {
namespace {

/// Takes a motif's parameters under the names and defaults of motif.hpp.
class Parameters {
 public:
  explicit Parameters(Fields& fields) : fields_(fields) {}

  int count(std::string_view key, int least = 1) { return fields_.take(key).number(least, Grid::max_side); }
  int count_or(std::string_view key, int fallback) {
    const auto value = fields_.find(key);
    return value ? value->number(1, Grid::max_side) : fallback;
  }
  Lean lean() { return read_lean(fields_.take("lean")); }
  Lean lean_or(Lean fallback) {
    const auto value = fields_.find("lean");
    return value ? read_lean(*value) : fallback;
  }

 private:
  static Lean read_lean(Value value) {
    constexpr std::array<std::string_view, 2> leans = {"left", "right"};
    return static_cast<Lean>(value.choice(leans.data(), leans.size()));
  }

  Fields& fields_;
};

Strip chart(Fields& fields) {
  std::string texture(fields.take("texture").text());
  return {texture, texture, take_grid(fields)};
}

/// How a motif's name leads to its strip. The parameters stand in the order of the function's.
struct Motif {
  std::string_view name;
  Strip (*make)(Parameters&, Fields&);
};

constexpr std::array motifs = {
    Motif{"stockinette", [](Parameters& p, Fields&) { return stockinette(p.count_or("columns", 1)); }},
    Motif{"reverse", [](Parameters& p, Fields&) { return reverse(p.count_or("columns", 1)); }},
    Motif{"garter",
          [](Parameters& p, Fields&) {
            const int knit_rows = p.count_or("knit_rows", 1);
            const int purl_rows = p.count_or("purl_rows", 1);
            return garter(knit_rows, purl_rows, p.count_or("columns", 1));
          }},
    Motif{"moss", [](Parameters& p, Fields&) { return moss(p.count_or("columns", 2)); }},
    Motif{"basket",
          [](Parameters& p, Fields&) {
            const int block_columns = p.count_or("block_columns", 3);
            return basket(block_columns, p.count_or("block_rows", 4));
          }},
    Motif{"tuck_rib", [](Parameters& p, Fields&) { return tuck_rib(p.count_or("height", 1)); }},
    Motif{"ladder", [](Parameters& p, Fields&) { return ladder(p.count_or("columns", 1)); }},
    Motif{"rope",
          [](Parameters& p, Fields&) {
            const int front = p.count("front");
            const int back = p.count("back");
            const int interval = p.count("interval", 2);
            return rope(front, back, interval, p.lean());
          }},
    Motif{"plait",
          [](Parameters& p, Fields&) {
            const int stitches = p.count("stitches");
            const int interval = p.count("interval", 2);
            return plait(stitches, interval, p.lean_or(Lean::right));
          }},
    Motif{"wave",
          [](Parameters& p, Fields&) {
            const int stitches = p.count("stitches");
            const int interval = p.count("interval", 2);
            return wave(stitches, interval, p.lean_or(Lean::right));
          }},
    Motif{"chart", [](Parameters&, Fields& fields) { return chart(fields); }},
};

constexpr auto motif_names = [] {
  std::array<std::string_view, motifs.size()> names;
  for (std::size_t i = 0; i < motifs.size(); ++i) names[i] = motifs[i].name;
  return names;
}();

}  // namespace

Strip get_motif(Value value) {
  Fields fields(value);
  const Motif& motif = motifs[fields.take("motif").choice(motif_names.data(), motif_names.size())];
  return value.guard([&] {
    Parameters parameters(fields);
    Strip strip = motif.make(parameters, fields);
    if (const auto mirrored = fields.find("mirrored"); mirrored && mirrored->boolean()) strip = strip.mirrored();
    if (const auto times = fields.find("repeat_across")) {
      strip = strip.repeated_across(times->number(1, Grid::max_side));
    }
    if (const auto name = fields.find("name")) strip.name = name->text();
    if (const auto texture = fields.find("texture")) strip.texture = texture->text();
    fields.finish();
    return strip;
  });
}

}  // namespace latchwork::inline v0::json
