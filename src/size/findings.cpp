#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <map>
#include <set>
#include <utility>

#include "size/bands.hpp"
#include "text/utf8.hpp"
#include "text/words.hpp"

namespace latchwork::inline v0 {
namespace {

constexpr double told_from_mm = 1;  // less is lost in the measuring

Finding about(FindingCode code, Severity severity, std::string message, std::string suggestion) {
  Finding out;
  out.code = code;
  out.severity = severity;
  out.message = std::move(message);
  out.suggestion = std::move(suggestion);
  return out;
}

std::string quoted(std::string_view texture) {
  return fmt::format("'{}'", one_line(texture));
}

/// "rows 1-8, 17-24": where the same is true of several bands.
class Rows {
 public:
  template <class AnyBand>
  void add(const AnyBand& band) {
    several_ = several_ || !runs_.empty() || band.rows > 1;
    if (runs_.empty()) first_ = band.row;
    last_ = band.last_row();
    runs_.push_back(band.rows == 1 ? fmt::to_string(band.row) : fmt::format("{}-{}", band.row, band.last_row()));
  }
  std::string words() const { return (several_ ? "rows " : "row ") + joined(runs_); }
  bool one_row() const { return !several_; }
  std::size_t bands() const { return runs_.size(); }
  void place(Finding& finding, double apart_mm) const {
    finding.place.row = first_;
    finding.last_row = last_;
    finding.value = static_cast<int>(std::lround(std::min(apart_mm, 1e9)));
    finding.limit = static_cast<int>(told_from_mm);
  }

 private:
  std::vector<std::string> runs_;
  bool several_ = false;
  int first_ = 0;
  int last_ = 0;
};

struct Saying {
  std::string words;
  double apart_mm = 0;
  Rows rows{};
};

/// What is said of each band, each thing once, in the order of the lowest band it is true of.
class Said {
 public:
  template <class AnyBand>
  void add(std::string words, double apart_mm, const AnyBand& band) {
    const auto [known, fresh] = places_.try_emplace(words, said_.size());
    if (fresh) said_.push_back({.words = std::move(words), .apart_mm = apart_mm});
    said_[known->second].rows.add(band);
  }
  const std::vector<Saying>& all() const { return said_; }

 private:
  std::vector<Saying> said_;
  std::map<std::string, std::size_t> places_;
};

/// The lowest and the tallest part of a band that have stitches; none where there is no such part.
std::pair<const Part*, const Part*> worked_heights(const MeasuredBand& band) {
  const Part* least = nullptr;
  const Part* greatest = nullptr;
  for (const Part& part : band.parts) {
    if (part.ladder) continue;
    if (least == nullptr || part.height_mm < least->height_mm) least = &part;
    if (greatest == nullptr || part.height_mm > greatest->height_mm) greatest = &part;
  }
  return {least, greatest};
}

/// Stretches of a band one above the other whose lowest and tallest texture are the same.
struct Heights {
  std::size_t band = 0;
  int row = 1;
  int rows = 1;
  const Gauge* low = nullptr;
  const Gauge* tall = nullptr;
  double low_mm = 0;
  double tall_mm = 0;
  int last_row() const { return row + rows - 1; }
};

std::vector<Heights> heights_of(const std::vector<MeasuredBand>& bands) {
  std::vector<Heights> out;
  for (const MeasuredBand& band : bands) {
    const auto [least, greatest] = worked_heights(band);
    if (least == nullptr) continue;
    const Gauge* low = least->texture.gauge;
    const Gauge* tall = greatest->texture.gauge;
    if (!out.empty() && out.back().band == band.band && out.back().low == low && out.back().tall == tall &&
        out.back().last_row() + 1 == band.row) {
      out.back().rows += band.rows;
      out.back().low_mm += least->height_mm;
      out.back().tall_mm += greatest->height_mm;
    } else {
      out.push_back({band.band, band.row, band.rows, low, tall, least->height_mm, greatest->height_mm});
    }
  }
  return out;
}

constexpr const char* help_with_heights =
    "take textures of like row gauge, end the panel's other texture in bands of its own, or block it to one height";

}  // namespace

void find_heights(const std::vector<MeasuredBand>& bands, std::vector<Finding>& found) {
  Said said;
  double lowest = 0;
  double tallest = 0;
  const std::vector<Heights> all = heights_of(bands);
  for (const Heights& of : all) {
    lowest += of.low_mm;
    tallest += of.tall_mm;
    const double apart = of.tall_mm - of.low_mm;
    if (apart < told_from_mm) continue;
    const std::string tall = one_line(of.tall->texture);
    const std::string low = one_line(of.low->texture);
    said.add(fmt::format("texture '{}' is {:.1f} mm high and '{}' {:.1f} mm, {:.1f} mm apart", tall, of.tall_mm, low,
                         of.low_mm, apart) +
                 "\n" + fmt::format("'{}' will ripple or '{}' be stretched", tall, low),
             apart, of);
  }
  for (const auto& [words, apart, rows] : said.all()) {
    const std::size_t cut = words.find('\n');
    const double in_all = apart * static_cast<double>(rows.bands());
    Finding finding = about(FindingCode::unlike_heights, Severity::warning,
                            rows.words() + ": " + words.substr(0, cut) +
                                (rows.bands() > 1 ? fmt::format(" each, {:.1f} mm in all", in_all) : "") + ": " +
                                words.substr(cut + 1),
                            help_with_heights);
    rows.place(finding, in_all);
    found.push_back(std::move(finding));
  }
  const double apart = tallest - lowest;
  if (said.all().empty() && apart >= told_from_mm) {
    Rows rows;
    std::set<std::size_t> whole;
    for (const Heights& of : all) {
      rows.add(of);
      whole.insert(of.band);
    }
    // Of a shaped panel a band may fall into stretches that lie unlike.
    const std::string over = whole.size() == all.size() ? count_of(std::ssize(all), "band")
                                                        : count_of(std::ssize(all), "stretch", "es") + " of rows";
    Finding finding =
        about(FindingCode::unlike_heights, Severity::warning,
              fmt::format("strips of unlike height add up over {}: the tallest make {:.1f} mm, the lowest {:.1f} mm, "
                          "{:.1f} mm apart",
                          over, tallest, lowest, apart),
              help_with_heights);
    rows.place(finding, apart);
    found.push_back(std::move(finding));
  }
}

void find_widths(const std::vector<BandWidth>& bands, const Columns& columns, bool whole, std::vector<Finding>& found) {
  if (bands.empty()) return;
  const BandWidth& widest = *std::max_element(
      bands.begin(), bands.end(), [](const BandWidth& a, const BandWidth& b) { return a.width_mm < b.width_mm; });
  const auto first = static_cast<int>(std::floor(columns.from));
  const auto last = static_cast<int>(std::ceil(columns.to)) - 1;
  const std::string where = whole ? "" : run_of("column", first, last) + ", which every row has: ";
  Said said;
  for (const BandWidth& band : bands) {
    const double apart = widest.width_mm - band.width_mm;
    if (apart < told_from_mm) continue;
    said.add(fmt::format("{:.1f} mm wide and {} {:.1f} mm: the edges will wave, {:.1f} mm in all", band.width_mm,
                         run_of("row", widest.row, widest.last_row(), "-"), widest.width_mm, apart),
             apart, band);
  }
  for (const auto& [words, apart, rows] : said.all()) {
    Finding finding = about(FindingCode::unlike_widths, Severity::warning,
                            fmt::format("{}{} {} {}", where, rows.words(), rows.one_row() ? "is" : "are", words),
                            "take textures of like stitch gauge for bands on top of each other, or block the edges");
    rows.place(finding, apart);
    found.push_back(std::move(finding));
  }
}

void find_gauges(const std::vector<std::string_view>& textures, const Gauges& gauges, std::vector<Finding>& found) {
  std::map<std::string_view, const Gauge*> used;  // by the measured texture's name
  std::map<ClothState, std::set<std::string_view>> states;
  std::set<std::string_view> seen;
  for (const std::string_view texture : textures) {
    if (!seen.insert(texture).second) continue;
    const Gauge* gauge = gauges.find(texture);
    if (gauge == nullptr) continue;
    used.emplace(gauge->texture, gauge);
    states[gauge->state].insert(gauge->texture);
    if (gauge->texture == texture) continue;
    Finding finding = about(FindingCode::borrowed_gauge, Severity::warning,
                            fmt::format("texture {} is measured by the gauge of {}, as told: {}", quoted(texture),
                                        quoted(gauge->texture), gauges.lack(texture)),
                            fmt::format("knit and measure a swatch of {}", quoted(texture)));
    finding.place.field = texture;
    found.push_back(std::move(finding));
  }
  if (states.size() > 1) {
    std::vector<std::string> parts;
    for (const auto& [state, measured] : states) {
      std::vector<std::string> names;
      names.reserve(measured.size());
      for (const std::string_view texture : measured) names.push_back(quoted(texture));
      parts.push_back(fmt::format("{} {}", joined(names), cloth_state_name(state)));
    }
    found.push_back(about(FindingCode::mixed_states, Severity::warning,
                          "textures were measured in unlike states: " + joined(parts, "; "),
                          "measure all in the state that the article will be in"));
  }
  struct Once {
    const char* what;
    bool stitches, rows;
  };
  for (const Once once :
       {Once{"stitches and rows", true, true}, Once{"stitches", true, false}, Once{"rows", false, true}}) {
    std::vector<std::string> named;
    for (const auto& [texture, gauge] : used) {
      if ((gauge->stitches.places < 2) == once.stitches && (gauge->rows.places < 2) == once.rows) {
        named.push_back(quoted(texture));
      }
    }
    if (named.empty()) continue;
    found.push_back(about(FindingCode::unknown_spread, Severity::warning,
                          fmt::format("{} of {} {} were measured in one place only: their spread is not known and "
                                      "counts as 0",
                                      once.what, named.size() == 1 ? "texture" : "textures", joined(named)),
                          "count in more places, away from the edges"));
  }
}

std::vector<Finding> measuring_findings(const Panel& panel, const Swatch& swatch, const SizeOptions& options) {
  require_size_options(options, panel);
  const Gauges gauges(swatch, options.state, options.substitutes);
  std::vector<Finding> out = measuring_findings(textures_of(panel), swatch, gauges);
  find_narrow(panel, gauges, out);
  return out;
}

std::vector<Finding> measuring_findings(const std::vector<std::string_view>& textures, const Swatch& swatch,
                                        const Gauges& gauges) {
  std::vector<Finding> out;
  std::set<std::pair<std::string_view, ClothState>> used;
  std::set<std::string_view> seen;
  for (const std::string_view texture : textures) {
    if (!seen.insert(texture).second) continue;
    if (const Gauge* gauge = gauges.find(texture)) {
      used.emplace(gauge->texture, gauge->state);
      continue;
    }
    Finding finding = about(FindingCode::no_swatch, Severity::error,
                            fmt::format("texture {} has no gauge: {}", quoted(texture), gauges.lack(texture)),
                            "knit and measure a swatch of it, or name a texture to stand in for it");
    finding.place.field = texture;
    out.push_back(std::move(finding));
  }
  find_gauges(textures, gauges, out);
  std::vector<Measurement> measurements;
  std::vector<std::size_t> index;
  const auto all = swatch.measurements();
  for (std::size_t i = 0; i < all.size(); ++i) {
    if (used.find({all[i].texture, all[i].state}) == used.end()) continue;
    measurements.push_back(all[i]);
    index.push_back(i);
  }
  for (Finding& finding : swatch_findings(Swatch(std::move(measurements)))) {
    // Its index in the swatch that was handed in.
    constexpr std::string_view before = "measurements[";
    const std::size_t i = std::stoul(finding.place.field.substr(before.size()));
    finding.place.field = fmt::format("{}{}]", before, index[i]);
    out.push_back(std::move(finding));
  }
  return out;
}

}  // namespace latchwork::inline v0
