#include "file/motif_json.hpp"

#include <algorithm>
#include <array>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "file/grid_json.hpp"
#include "latchwork/motif.hpp"

namespace latchwork::inline v0::json {
namespace {

/// Takes a motif's parameters under the names and defaults of motif.hpp.
class Parameters {
 public:
  explicit Parameters(const Fields& fields) : fields_(fields) {}

  int count(std::string_view key, int least = 1) const { return fields_.take(key).number(least, Grid::max_side); }
  int count_or(std::string_view key, int fallback) const {
    const auto value = fields_.find(key);
    return value ? value->number(1, Grid::max_side) : fallback;
  }
  Lean lean() const { return read_lean(fields_.take("lean")); }
  Lean lean_or(Lean fallback) const {
    const auto value = fields_.find("lean");
    return value ? read_lean(*value) : fallback;
  }

 private:
  static Lean read_lean(Value value) {
    constexpr std::array<std::string_view, 2> sides = {"left", "right"};
    return static_cast<Lean>(value.choice(sides.data(), sides.size()));
  }

  const Fields& fields_;
};

Strip chart(const Fields& fields) {
  std::string texture(fields.take("texture").text());
  return {texture, texture, take_grid(fields)};
}

/// How a motif's name leads to its strip, and the names of its parameters, which stand in the order of the function's.
struct Motif {
  std::string_view name;
  std::array<std::string_view, 4> parameters;
  Strip (*make)(const Parameters&, const Fields&);
};

constexpr std::array motifs = {
    Motif{"stockinette",
          {"columns"},
          [](const Parameters& p, const Fields&) { return stockinette(p.count_or("columns", 1)); }},
    Motif{"reverse", {"columns"}, [](const Parameters& p, const Fields&) { return reverse(p.count_or("columns", 1)); }},
    Motif{"garter",
          {"knit_rows", "purl_rows", "columns"},
          [](const Parameters& p, const Fields&) {
            const int knit_rows = p.count_or("knit_rows", 1);
            const int purl_rows = p.count_or("purl_rows", 1);
            return garter(knit_rows, purl_rows, p.count_or("columns", 1));
          }},
    Motif{"moss", {"columns"}, [](const Parameters& p, const Fields&) { return moss(p.count_or("columns", 2)); }},
    Motif{"basket",
          {"block_columns", "block_rows"},
          [](const Parameters& p, const Fields&) {
            const int block_columns = p.count_or("block_columns", 3);
            return basket(block_columns, p.count_or("block_rows", 4));
          }},
    Motif{"tuck_rib", {"height"}, [](const Parameters& p, const Fields&) { return tuck_rib(p.count_or("height", 1)); }},
    Motif{"ladder", {"columns"}, [](const Parameters& p, const Fields&) { return ladder(p.count_or("columns", 1)); }},
    Motif{"rope",
          {"front", "back", "interval", "lean"},
          [](const Parameters& p, const Fields&) {
            const int front = p.count("front");
            const int back = p.count("back");
            const int interval = p.count("interval", 2);
            return rope(front, back, interval, p.lean());
          }},
    Motif{"plait",
          {"stitches", "interval", "lean"},
          [](const Parameters& p, const Fields&) {
            const int stitches = p.count("stitches");
            const int interval = p.count("interval", 2);
            return plait(stitches, interval, p.lean_or(Lean::right));
          }},
    Motif{"wave",
          {"stitches", "interval", "lean"},
          [](const Parameters& p, const Fields&) {
            const int stitches = p.count("stitches");
            const int interval = p.count("interval", 2);
            return wave(stitches, interval, p.lean_or(Lean::right));
          }},
    Motif{"chart",
          {"texture", "rows", "crossings"},
          [](const Parameters&, const Fields& fields) { return chart(fields); }},
};

constexpr auto motif_names = [] {
  std::array<std::string_view, motifs.size()> names;
  for (std::size_t i = 0; i < motifs.size(); ++i) names[i] = motifs[i].name;
  return names;
}();

/// What every motif may have, and the parameters of `motif`, or of all where it is not named.
std::vector<std::string_view> names_of(const Motif* motif) {
  std::vector<std::string_view> names = {"motif", "mirrored", "repeat_across", "name", "texture"};
  for (const Motif& each : motifs) {
    if (motif == nullptr || &each == motif) names.insert(names.end(), each.parameters.begin(), each.parameters.end());
  }
  names.erase(std::remove(names.begin(), names.end(), std::string_view()), names.end());
  return names;
}

}  // namespace

Strip get_motif(Value value) {
  const auto named = value.member("motif");
  // Where it is missing, what is unknown is told before that it is.
  const Value which = named ? *named : Fields(value, names_of(nullptr)).take("motif");
  const Motif& motif = motifs[which.choice(motif_names.data(), motif_names.size())];
  const Fields fields(value, names_of(&motif));
  return value.guard([&] {
    Strip strip = motif.make(Parameters(fields), fields);
    if (const auto mirrored = fields.find("mirrored"); mirrored && mirrored->boolean()) strip = strip.mirrored();
    if (const auto times = fields.find("repeat_across")) {
      strip = strip.repeated_across(times->number(1, Grid::max_side));
    }
    if (const auto name = fields.find("name")) strip.name = name->text();
    if (const auto texture = fields.find("texture")) strip.texture = texture->text();
    return strip;
  });
}

}  // namespace latchwork::inline v0::json
