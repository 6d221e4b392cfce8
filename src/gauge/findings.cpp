#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <map>
#include <tuple>

#include "gauge/gauges.hpp"
#include "gauge/pieces.hpp"
#include "latchwork/gauge.hpp"
#include "text/utf8.hpp"
#include "text/words.hpp"
#include "timings/student.hpp"

namespace latchwork::inline v0 {
namespace {

constexpr double grubbs_share = 0.05;
constexpr double unlike_share = 0.05;
constexpr double least_apart = 0.5;  // stitches or rows

/// The places of one thing measured.
struct Group {
  std::string_view texture;
  ClothState state = ClothState::rested;
  Counted counted = Counted::stitches;
  std::vector<std::size_t> items{};  // indices into the measurements
};

std::string thing_of(const Group& group) {
  return fmt::format("{} of texture '{}', {}", group.counted == Counted::stitches ? "stitches" : "rows",
                     one_line(group.texture), cloth_state_name(group.state));
}

/// "28.5 over 100 mm, 'left third' of swatch 'second' (line 7)"
std::string measure_words(const Measurement& measure) {
  std::string out = fmt::format("{} over {} mm", measure.count, measure.length_mm);
  if (!measure.place.empty()) out += fmt::format(", '{}'", one_line(measure.place));
  if (!measure.swatch.empty())
    out += fmt::format("{} swatch '{}'", measure.place.empty() ? " on" : " of", one_line(measure.swatch));
  if (measure.line > 0) out += fmt::format(" (line {})", measure.line);
  return out;
}

class Looking {
 public:
  explicit Looking(const Swatch& swatch) : measures_(swatch.measurements()) {}

  std::vector<Finding> all() {
    std::map<std::tuple<std::string_view, ClothState, Counted>, std::size_t> known;
    std::vector<Group> groups;
    for (std::size_t i = 0; i < measures_.size(); ++i) {
      const Measurement& each = measures_[i];
      const auto [at, fresh] = known.try_emplace({each.texture, each.state, each.counted}, groups.size());
      if (fresh) groups.push_back({.texture = each.texture, .state = each.state, .counted = each.counted});
      groups[at->second].items.push_back(i);
    }
    for (const Group& group : groups) {
      const Counted other = group.counted == Counted::stitches ? Counted::rows : Counted::stitches;
      if (known.find({group.texture, group.state, other}) == known.end()) half_measured(group, other);
      few_places(group);
      short_measure(group);
      odd_one_out(group);
      unlike_swatches(group);
    }
    return std::move(found_);
  }

 private:
  Finding& add(FindingCode code, Severity severity, std::size_t item) {
    Finding finding;
    finding.code = code;
    finding.severity = severity;
    finding.place.field = fmt::format("measurements[{}]", item);
    finding.place.line = measures_[item].line;
    found_.push_back(std::move(finding));
    return found_.back();
  }

  void half_measured(const Group& group, Counted other) {
    Finding& finding = add(FindingCode::half_measured, Severity::warning, group.items.front());
    const char* missing = other == Counted::stitches ? "stitches" : "rows";
    finding.message = fmt::format("{}, were measured, but not its {}: they make no gauge", thing_of(group), missing);
    finding.suggestion = fmt::format("count its {} too", missing);
  }

  void few_places(const Group& group) {
    const auto places = static_cast<int>(group.items.size());
    if (places >= usual_places) return;
    Finding& finding =
        add(FindingCode::few_places, places == 1 ? Severity::warning : Severity::advice, group.items.front());
    finding.value = places;
    finding.limit = usual_places;
    finding.message = fmt::format("{}, were measured in {}; {} are usual{}", thing_of(group), count_of(places, "place"),
                                  usual_places, places == 1 ? ", and of one no spread is known" : "");
    finding.suggestion = "count in more places, away from the edges";
  }

  void short_measure(const Group& group) {
    const auto shorter = [&](std::size_t a, std::size_t b) { return measures_[a].length_mm < measures_[b].length_mm; };
    const std::size_t item = *std::min_element(group.items.begin(), group.items.end(), shorter);
    const Measurement& measure = measures_[item];
    if (measure.length_mm >= usual_length_mm) return;
    Finding& finding = add(FindingCode::short_measure, Severity::advice, item);
    finding.value = static_cast<int>(measure.length_mm);  // down: what is nearly long enough must not seem to be
    finding.limit = static_cast<int>(usual_length_mm);
    finding.message =
        fmt::format("{}: {}; {} mm or more are usual", thing_of(group), measure_words(measure), usual_length_mm);
    finding.suggestion = "count over more: half a stitch miscounted weighs less";
  }

  void odd_one_out(const Group& group) {
    const std::size_t n = group.items.size();
    if (n < 3) return;
    std::vector<double> values;
    values.reserve(n);
    for (const std::size_t item : group.items) {
      values.push_back(measures_[item].count * 100 / measures_[item].length_mm);
    }
    const Density all = density(values);
    std::size_t far = 0;
    for (std::size_t i = 1; i < n; ++i) {
      if (std::abs(values[i] - all.per_10cm) > std::abs(values[far] - all.per_10cm)) far = i;
    }
    const double off = std::abs(values[far] - all.per_10cm);
    if (!(off > limit(n) * all.spread)) return;
    const auto places = static_cast<double>(n);
    const Measurement& measure = measures_[group.items[far]];
    // Off the mean of the others by n / (n - 1) times as much.
    const double counts_off = off * places / (places - 1) * measure.length_mm / 100;
    if (!(counts_off >= least_odd(group) - 1e-9)) return;
    values.erase(values.begin() + static_cast<std::ptrdiff_t>(far));
    Finding& finding = add(FindingCode::odd_one_out, Severity::warning, group.items[far]);
    finding.message = fmt::format("{}: {} make {:.2f} to 10 cm, the {} others {:.2f} on average, from {:.2f} to {:.2f}",
                                  thing_of(group), measure_words(measure), measure.count * 100 / measure.length_mm,
                                  n - 1, density(values).per_10cm, *std::min_element(values.begin(), values.end()),
                                  *std::max_element(values.begin(), values.end()));
    finding.suggestion = "count that place again, and leave it out only for a reason; until then it counts";
  }

  void unlike_swatches(const Group& group) {
    std::map<std::string_view, int> pieces;
    std::vector<std::string_view> names;
    std::vector<double> values;
    std::vector<int> piece_of;
    double length_mm = 0;
    for (const std::size_t item : group.items) {
      const Measurement& each = measures_[item];
      const auto [at, fresh] = pieces.emplace(each.swatch, static_cast<int>(pieces.size()));
      if (fresh) names.push_back(each.swatch);
      values.push_back(each.count * 100 / each.length_mm);
      piece_of.push_back(at->second);
      length_mm += each.length_mm / static_cast<double>(group.items.size());
    }
    const Pieces apart = pieces_of(values, piece_of);
    const double counts_apart = (apart.most.mean - apart.least.mean) * length_mm / 100;
    if (alike(apart) >= unlike_share || counts_apart < least_apart) return;
    const auto named = [&](const Pieces::Piece& piece) {
      const std::string_view name = names[static_cast<std::size_t>(piece.piece)];
      return name.empty() ? std::string("the swatch without a name") : fmt::format("swatch '{}'", one_line(name));
    };
    Finding& finding = add(FindingCode::unlike_swatches, Severity::warning, group.items.front());
    finding.message =
        fmt::format("{}: {} has {:.2f} to 10 cm on average and {} {:.2f}, further apart than their places explain",
                    thing_of(group), named(apart.least), apart.least.mean, named(apart.most), apart.most.mean);
    finding.suggestion =
        "leave out the one that the panel will not be knitted as, or measure a third; until then their mean counts, "
        "with wide margins";
  }

  /// Less than this off the others is reading: one whole stitch or row for people who count in halves, and half of one
  /// more where all counts are whole, since each of them may be half of one off.
  double least_odd(const Group& group) const {
    const bool whole = std::all_of(group.items.begin(), group.items.end(), [&](std::size_t item) {
      return measures_[item].count == std::floor(measures_[item].count);
    });
    return whole ? 1.5 : 1;
  }

  // Grubbs's critical value, in sample standard deviations.
  double limit(std::size_t places) {
    double& known = limits_[places];
    if (known == 0) {
      const auto n = static_cast<double>(places);
      const double t = timing::student_limit(grubbs_share / n, static_cast<int>(places) - 2);
      known = (n - 1) / std::sqrt(n) * std::sqrt(t * t / (n - 2 + t * t));
    }
    return known;
  }

  std::span<const Measurement> measures_;
  std::vector<Finding> found_;
  std::map<std::size_t, double> limits_;
};

}  // namespace

std::vector<Finding> swatch_findings(const Swatch& swatch) {
  return Looking(swatch).all();
}

}  // namespace latchwork::inline v0
