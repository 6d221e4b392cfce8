#include "gauge/gauges.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <set>

#include "error/refuse.hpp"
#include "gauge/pieces.hpp"
#include "panel/standing.hpp"
#include "text/utf8.hpp"
#include "text/words.hpp"

namespace latchwork::inline v0 {
namespace {

constexpr std::size_t most_substitutes = 50'000;

}  // namespace

// Both sums are of differences from the first value, so that equal values give exactly that value and no spread, and
// values that share many digits lose none of those in which they differ.
Density density(std::span<const double> values) {
  Density out;
  out.places = static_cast<int>(values.size());
  if (values.empty()) return out;
  const double n = static_cast<double>(values.size());
  const double first = values.front();
  double sum = 0;
  for (const double value : values) sum += value - first;
  const double mean_difference = sum / n;
  out.per_10cm = first + mean_difference;
  if (values.size() < 2) return out;
  double squares = 0;
  for (const double value : values) {
    const double deviation = (value - first) - mean_difference;
    squares += deviation * deviation;
  }
  out.spread = std::sqrt(squares / (n - 1));
  out.standard_error = out.spread / std::sqrt(n);
  out.freedom = n - 1;
  return out;
}

Density density(std::span<const double> values, std::span<const int> piece_of) {
  Density out = density(values);
  const Pieces apart = pieces_of(values, piece_of);
  out.swatches = apart.pieces;
  // Where pieces do not differ by more than their places do, or nothing tells, all places are those of one.
  if (apart.pieces < 2 || apart.places <= apart.pieces || apart.between <= apart.within) return out;
  const double n = apart.places;
  const double of_pieces = (apart.between - apart.within) / apart.each;
  out.spread = std::sqrt(of_pieces + apart.within);
  out.standard_error = std::sqrt(of_pieces * apart.squares + apart.within / n);
  // What both come to, as squares, is this much of the one mean square and that of the other.
  const double between = (1 + apart.squares) / apart.each * apart.between;
  const double within = (1 + 1 / n - (1 + apart.squares) / apart.each) * apart.within;
  out.freedom = (between + within) * (between + within) /
                (between * between / (apart.pieces - 1) + within * within / (n - apart.pieces));
  return out;
}

RelativeSpread relative_spread(const Density& density) {
  return {std::hypot(density.spread, density.standard_error) / density.per_10cm, density.freedom};
}

MeasuredGauges measured_gauges(const Swatch& swatch) {
  struct Values {
    std::vector<double> values;
    std::vector<int> piece_of;
    std::map<std::string_view, int> pieces;
    Density density() const { return v0::density(values, piece_of); }
  };
  struct Both {
    Values stitches;
    Values rows;
  };
  std::map<std::pair<std::string_view, ClothState>, Both> values;
  for (const Measurement& each : swatch.measurements()) {
    Both& both = values[{each.texture, each.state}];
    Values& of = each.counted == Counted::stitches ? both.stitches : both.rows;
    of.values.push_back(each.count * 100 / each.length_mm);
    of.piece_of.push_back(of.pieces.emplace(each.swatch, static_cast<int>(of.pieces.size())).first->second);
  }
  MeasuredGauges out;
  for (const auto& [key, list] : values) {
    const auto& [texture, state] = key;
    out[std::string(texture)].emplace(state,
                                      Gauge{std::string(texture), state, list.stitches.density(), list.rows.density()});
  }
  return out;
}

bool is_whole(const Gauge& gauge) noexcept {
  return gauge.stitches.places > 0 && gauge.rows.places > 0;
}

std::vector<std::string_view> textures_of(const Panel& panel, CutOff cut_off) {
  std::vector<std::string_view> out;
  std::set<std::string_view> seen;
  for (const Band& band : panel.bands()) {
    const std::vector<bool> stands = standing_strips(panel.grid(), band);
    for (std::size_t i = 0; i < band.strips.size(); ++i) {
      if (!stands[i] && cut_off == CutOff::left_out) continue;
      if (seen.insert(band.strips[i].texture).second) out.push_back(band.strips[i].texture);
    }
  }
  return out;
}

Gauges::Gauges(const Swatch& swatch, std::optional<ClothState> state, std::span<const Substitute> substitutes)
    : all_(measured_gauges(swatch)), state_(state) {
  require_state(state);
  require_substitutes(substitutes);
  for (const Substitute& each : substitutes) substitutes_.emplace(each.texture, each.use);
}

const Gauge* Gauges::own(std::string_view texture) const {
  const auto found = all_.find(texture);
  if (found == all_.end()) return nullptr;
  const Gauge* out = nullptr;
  for (const auto& [state, gauge] : found->second) {
    if (is_whole(gauge) && (!state_ || *state_ == state)) out = &gauge;  // the last is the most finished
  }
  return out;
}

const Gauge* Gauges::own(std::string_view texture, ClothState state) const {
  const auto found = all_.find(texture);
  if (found == all_.end()) return nullptr;
  const auto in_state = found->second.find(state);
  return in_state == found->second.end() || !is_whole(in_state->second) ? nullptr : &in_state->second;
}

const Gauge* Gauges::find(std::string_view texture) const {
  if (const Gauge* gauge = own(texture)) return gauge;
  const auto substitute = substitutes_.find(texture);
  return substitute == substitutes_.end() ? nullptr : own(substitute->second);
}

const Gauge& Gauges::of(std::string_view texture) const {
  if (const Gauge* gauge = find(texture)) return *gauge;
  std::string message = fmt::format("the swatch has no gauge for texture '{}': {}", one_line(texture), lack(texture));
  if (const auto substitute = substitutes_.find(texture); substitute != substitutes_.end()) {
    message += fmt::format("; nor for '{}', which was to stand in: {}", one_line(substitute->second),
                           lack(substitute->second));
  }
  refuse(ErrorCode::no_gauge, std::string(texture), message + measured());
}

void Gauges::require(const Panel& panel, CutOff cut_off) const {
  std::vector<std::string_view> lacking;
  for (const std::string_view texture : textures_of(panel, cut_off)) {
    if (find(texture) == nullptr) lacking.push_back(texture);
  }
  if (lacking.empty()) return;
  if (lacking.size() == 1) of(lacking.front());
  std::string message = fmt::format("the swatch has no gauge for {} textures of the panel", lacking.size());
  const char* before = ": ";
  for (const std::string_view texture : lacking) {
    message += fmt::format("{}'{}' ({})", before, one_line(texture), lack(texture));
    before = ", ";
  }
  refuse(ErrorCode::no_gauge, std::string(lacking.front()), message + measured());
}

std::string Gauges::measured() const {
  std::vector<std::string> names;
  for (const auto& [texture, states] : all_) {
    if (own(texture) == nullptr) continue;
    if (names.size() == 12) {
      names.emplace_back("...");
      break;
    }
    names.push_back(fmt::format("'{}'", one_line(texture)));
  }
  return names.empty() ? std::string() : "; it has " + joined(names, ", ");
}

std::string Gauges::lack(std::string_view texture) const {
  const auto found = all_.find(texture);
  bool stitches = false;
  bool rows = false;
  if (found != all_.end()) {
    for (const auto& [state, gauge] : found->second) {
      if (state_ && *state_ != state) continue;
      stitches = stitches || gauge.stitches.places > 0;
      rows = rows || gauge.rows.places > 0;
    }
  }
  const std::string when = state_ ? fmt::format(" {}", cloth_state_name(*state_)) : std::string();
  if (stitches && rows) return "stitches and rows were not measured in one state";
  if (rows) return "stitches were not measured" + when;
  if (stitches) return "rows were not measured" + when;
  return "it was not measured" + when;
}

void require_state(std::optional<ClothState> state) {
  if (!state || !cloth_state_name(*state).empty()) return;
  refuse(ErrorCode::bad_argument, "state",
         fmt::format("state is {}; it must be 0..{}", static_cast<int>(*state), static_cast<int>(ClothState::washed)));
}

void require_texture_name(const std::string& field, std::string_view text) {
  if (text.empty() || text.size() > most_measurement_bytes || text.find('\0') != std::string_view::npos) {
    refuse(ErrorCode::bad_argument, field,
           fmt::format("{} takes {} bytes; the name of a texture has 1 to {}, without NUL", field, text.size(),
                       most_measurement_bytes));
  }
  if (utf8_error(text) != std::string_view::npos) {
    refuse(ErrorCode::bad_argument, field, fmt::format("{} holds a byte that is not UTF-8", field));
  }
}

void require_substitutes(std::span<const Substitute> substitutes, const std::string& before) {
  const std::string list = before + "substitutes";
  if (substitutes.size() > most_substitutes) {
    refuse(ErrorCode::too_large, list,
           fmt::format("{} has {} items; the limit is {}", list, substitutes.size(), most_substitutes));
  }
  std::map<std::string_view, std::size_t> named_before;
  for (std::size_t i = 0; i < substitutes.size(); ++i) {
    const auto& [texture, use] = substitutes[i];
    const std::string where = fmt::format("{}[{}].", list, i);
    require_texture_name(where + "texture", texture);
    require_texture_name(where + "use", use);
    if (texture == use) {
      refuse(ErrorCode::bad_argument, where + "use",
             fmt::format("{}use is '{}', the texture itself", where, shown(use)));
    }
    const auto [first, alone] = named_before.emplace(texture, i);
    if (!alone) {
      refuse(ErrorCode::bad_argument, where + "texture",
             fmt::format("{}texture is '{}', which has a substitute already: '{}', of {}[{}]", where, shown(texture),
                         shown(substitutes[first->second].use), list, first->second));
    }
  }
}

}  // namespace latchwork::inline v0
