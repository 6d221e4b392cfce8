#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <cstddef>
#include <map>
#include <set>
#include <string>
#include <string_view>
#include <tuple>
#include <utility>
#include <vector>

#include "article/check.hpp"
#include "error/refuse.hpp"
#include "text/utf8.hpp"

namespace latchwork::inline v0 {
namespace {

constexpr double most_pieces = 1e6;

struct Range {
  double least = 0;
  double greatest = 0;
};

// "450 mm", "-87.2 to -74.5 mm": to a thousandth, which is finer than anything that is measured.
std::string mm_words(Range range) {
  const auto number = [](double mm) {
    const double rounded = std::round(mm * 1000) / 1000;
    return fmt::format("{}", rounded == 0 ? 0.0 : rounded);  // no "-0"
  };
  const std::string least = number(range.least);
  const std::string greatest = number(range.greatest);
  return least == greatest ? least + " mm" : fmt::format("{} to {} mm", least, greatest);
}

// Pieces of a row that are alike: those at its start, between and at its end.
struct Part {
  std::string_view name;
  int count = 1;
  EdgeUse start = EdgeUse::free;
  EdgeUse end = EdgeUse::free;
};

std::vector<Part> parts_of(int count, EdgeUse start, EdgeUse end, const std::array<std::string_view, 3>& names) {
  constexpr EdgeUse sewn = EdgeUse::seamed;
  if (count == 1 || (start == sewn && end == sewn)) return {{"", count, start, end}};
  if (count == 2) return {{names[0], 1, start, sewn}, {names[2], 1, sewn, end}};
  return {{names[0], 1, start, sewn}, {names[1], count - 2, sewn, sewn}, {names[2], 1, sewn, end}};
}

// "panel, lower left"; "middle" but once.
std::string part_name(const std::string& piece, std::string_view up, std::string_view across) {
  if (up == across || across.empty()) return up.empty() ? piece : fmt::format("{}, {}", piece, up);
  return up.empty() ? fmt::format("{}, {}", piece, across) : fmt::format("{}, {} {}", piece, up, across);
}

template <class Item>
std::string names_of(const std::vector<Item>& items) {
  std::string out;
  for (const Item& each : items) out += fmt::format("{}'{}'", out.empty() ? "" : ", ", each.name);
  return out;
}

// The item that was chosen by name; null where there is none to choose.
template <class Item>
const Item* chosen(const std::vector<Item>& items, const std::string& name, std::string_view field) {
  const std::string path = fmt::format("choices.{}", field);
  if (items.empty()) {
    if (!name.empty()) refuse(path, fmt::format("the article has no {}, so '{}' cannot be chosen", field, shown(name)));
    return nullptr;
  }
  for (const Item& each : items) {
    if (each.name == name) return &each;
  }
  refuse(path, name.empty() ? fmt::format("choose a {}: {}", field, names_of(items))
                            : fmt::format("'{}' is no {} here; choose from {}", shown(name), field, names_of(items)));
}

class Reckoning {
 public:
  Reckoning(const Article& article, const ArticleChoices& choices) : article_(article), choices_(choices) {}

  Targets all() {
    closure_ = chosen(article_.closures, choices_.closure, "closure");
    rule_ = chosen(article_.rules, choices_.rule, "rule");
    take_sizes();
    take_counts();
    if (closure_ != nullptr) {
      told("closure", *closure_);
      if (known_.count("overlap") == 0) known_["overlap"] = {closure_->overlap_least_mm, closure_->overlap_greatest_mm};
    }
    fill();
    for (std::size_t i = 0; i < article_.pieces.size(); ++i) {
      if (wanted(article_.pieces[i].closures)) piece(article_.pieces[i]);
    }
    for (const ArticleSeam& each : article_.seams) {
      if (wanted(each.closures)) seam(each);
    }
    out_.cautions = article_.cautions;
    return std::move(out_);
  }

 private:
  template <class Item>
  void told(std::string_view what, const Item& item) {
    constexpr const char* how[] = {"published", "from memory", "common practice"};
    const std::string_view mark = how[static_cast<std::size_t>(item.mark)];
    // "common practice, no source" says already how far to trust it.
    const std::string after = item.source.starts_with(mark) ? std::string() : fmt::format(" ({})", mark);
    out_.sources.push_back(fmt::format("{} '{}': {}{}", what, item.name, item.source, after));
  }

  void take_sizes() {
    const bool by_list = !choices_.list.empty() || !choices_.size.empty();
    const ArticleSize* size = by_list ? chosen_size() : nullptr;
    find_wanted_inputs(size);
    if (choices_.measures_of_filling) take_filling_as_given(by_list);
    for (std::size_t i = 0; i < choices_.measures.size(); ++i) {
      own(fmt::format("choices.measures[{}].", i), choices_.measures[i], by_list);
    }
    for (const ArticleInput& input : article_.inputs) {
      if (wanted_inputs_.count(input.name) == 1 && known_.count(input.name) == 0) {
        refuse("choices.measures",
               fmt::format("give {}: {}, {} to {} mm", input.name, input.meaning, input.least_mm, input.greatest_mm));
      }
    }
    if (size != nullptr) {
      for (const NamedMeasure& each : size->measures) known_[each.name] = of_size(each);
    }
    for (const std::string& name : article_.measures) {
      if (known_.count(name) > 0) continue;
      if (article_.lists.empty()) refuse("choices.measures", fmt::format("give {}: there is no list of sizes", name));
      refuse("choices.list", fmt::format("choose a list ({}) or give {}", names_of(article_.lists), name));
    }
  }

  const ArticleSize* chosen_size() {
    const SizeList* list = chosen(article_.lists, choices_.list, "list");
    if (list == nullptr) refuse("choices.size", "the article has no list, so no size can be chosen");
    filling_given_ = list->of == SizeOf::filling;
    told("list", *list);
    return chosen(list->sizes, choices_.size, "size");
  }

  /// All inputs but those that only other sizes refer to.
  void find_wanted_inputs(const ArticleSize* size) {
    for (const ArticleInput& input : article_.inputs) wanted_inputs_.insert(input.name);
    for (const SizeList& list : article_.lists) {
      for (const ArticleSize& each : list.sizes) {
        for (const NamedMeasure& measure : each.measures) wanted_inputs_.erase(measure.of);
      }
    }
    const auto take = [this](const Extent& extent) {
      for (const LengthTerm& term : extent.terms) wanted_inputs_.insert(term.of);
    };
    for (const ArticlePiece& piece : article_.pieces) {
      take(piece.width);
      take(piece.length);
      for (const ShapePoint& point : piece.shape) {
        take(point.height);
        take(point.width);
      }
    }
    for (const ArticleSeam& each : article_.seams) take(each.length);
    if (size == nullptr) return;
    for (const NamedMeasure& measure : size->measures) wanted_inputs_.insert(measure.of);
  }

  void take_filling_as_given(bool by_list) {
    constexpr const char* field = "choices.measures_of_filling";
    if (by_list) refuse(field, "own measures are of the filling, but a list was chosen: it gives them");
    if (article_.rules.empty()) refuse(field, "own measures are of the filling, but the article has no rule for one");
    filling_given_ = true;
  }

  Range of_size(const NamedMeasure& measure) const {
    if (measure.of.empty()) return {measure.least_mm, measure.greatest_mm};
    const Range& of = known_.at(measure.of);
    const Range out{of.least + measure.least_mm, of.greatest + measure.greatest_mm};
    if (!(out.least >= 1 && out.greatest <= 1e5)) come_out(measure.name, choices_.size, out, 1);
    return out;
  }

  void own(const std::string& at, const NamedMeasure& given, bool by_list) {
    Range allowed{1, 1e5};
    const auto& names = article_.measures;
    const auto input = std::find_if(article_.inputs.begin(), article_.inputs.end(),
                                    [&](const ArticleInput& each) { return each.name == given.name; });
    if (input != article_.inputs.end()) {
      if (wanted_inputs_.count(given.name) == 0) {
        refuse(at + "name", fmt::format("{} is not wanted: the size that was chosen does not go by it", given.name));
      }
      allowed = {input->least_mm, input->greatest_mm};
    } else if (given.name == "overlap" && closure_ != nullptr && closure_->kind != ClosureKind::seam) {
      allowed = {0, 1e4};
    } else if (std::find(names.begin(), names.end(), given.name) == names.end()) {
      refuse(at + "name", fmt::format("'{}' is no measure or input that is wanted", shown(given.name)));
    } else if (by_list) {
      refuse(at + "name", fmt::format("{} is given by the size that was chosen", given.name));
    }
    if (!(given.least_mm >= allowed.least && given.least_mm <= allowed.greatest)) {
      refuse(at + "least_mm",
             fmt::format("{} is {} mm, not {} to {}", given.name, given.least_mm, allowed.least, allowed.greatest));
    }
    if (!(given.greatest_mm >= given.least_mm && given.greatest_mm <= allowed.greatest)) {
      refuse(at + "greatest_mm", fmt::format("{} goes up to {} mm, not {} to {}", given.name, given.greatest_mm,
                                             given.least_mm, allowed.greatest));
    }
    if (given.name == "overlap") overlap_at_ = at;
    if (!known_.emplace(given.name, Range{given.least_mm, given.greatest_mm}).second) {
      refuse(at + "name", fmt::format("{} is given twice", given.name));
    }
  }

  void take_counts() {
    for (std::size_t i = 0; i < choices_.counts.size(); ++i) {
      const NamedCount& given = choices_.counts[i];
      const std::string at = fmt::format("choices.counts[{}].", i);
      const auto count = std::find_if(article_.counts.begin(), article_.counts.end(),
                                      [&](const ArticleCount& each) { return each.name == given.name; });
      if (count == article_.counts.end()) refuse(at + "name", fmt::format("'{}' is no count here", shown(given.name)));
      if (given.count < count->least || given.count > count->greatest) {
        refuse(at + "count",
               fmt::format("{} is {}, not {} to {}", given.name, given.count, count->least, count->greatest));
      }
      if (!counts_.emplace(given.name, given.count).second) {
        refuse(at + "name", fmt::format("{} is given twice", given.name));
      }
    }
    for (const ArticleCount& count : article_.counts) {
      if (counts_.count(count.name) == 0) {
        refuse("choices.counts",
               fmt::format("give {}: {}, {} to {}", count.name, count.meaning, count.least, count.greatest));
      }
    }
  }

  // Where the filling is known the article is made to it, and the other way round.
  void fill() {
    if (rule_ == nullptr) return;
    told("rule", *rule_);
    require_shape();
    for (const std::string& name : article_.measures) {
      Range& measure = known_[name];
      Range filling = measure;
      if (filling_given_) {
        measure = finished(measure);
      } else {
        filling = filled(measure);
      }
      if (!(filling.least >= 1 && filling.greatest <= 1e5)) come_out(name, "filling", filling, 1);
      out_.filling.push_back({name, filling.least, filling.greatest, {}});
    }
  }

  /// Only where the rule is for the square or oblong that there is.
  void require_shape() const {
    const auto alike = [&](const std::string& name) {
      const Range& one = known_.at(article_.measures.front());
      const Range& other = known_.at(name);
      return std::abs(one.least - other.least) < 1e-6 && std::abs(one.greatest - other.greatest) < 1e-6;
    };
    const bool square = std::all_of(article_.measures.begin(), article_.measures.end(), alike);
    if (square ? !rule_->oblongs_only : !rule_->squares_only) return;
    refuse("choices.rule", fmt::format("rule '{}' is for {}; this is {}", rule_->name,
                                       rule_->squares_only ? "squares" : "oblongs", square ? "square" : "oblong"));
  }

  Range finished(Range filling) const {
    if (rule_->pairs.empty()) {
      return {filling.least - rule_->larger_greatest_mm, filling.greatest - rule_->larger_least_mm};
    }
    return by_pair(filling, &RulePair::filling_mm, &RulePair::finished_mm);
  }

  Range filled(Range article) const {
    if (rule_->pairs.empty()) {
      return {article.least + rule_->larger_least_mm, article.greatest + rule_->larger_greatest_mm};
    }
    return by_pair(article, &RulePair::finished_mm, &RulePair::filling_mm);
  }

  // A graded rule knows its own sizes; between them it says nothing, so nothing is guessed.
  Range by_pair(Range given, double RulePair::*from, double RulePair::*to) const {
    std::string there;
    for (const RulePair& pair : rule_->pairs) {
      if (std::abs(pair.*from - given.least) < 1e-6 && std::abs(pair.*from - given.greatest) < 1e-6) {
        return {pair.*to, pair.*to};
      }
      there += fmt::format("{}{}", there.empty() ? "" : ", ", pair.*from);
    }
    refuse("choices.rule", fmt::format("rule '{}' does not know {}; it knows {}", rule_->name, mm_words(given), there));
  }

  bool wanted(const std::vector<std::string>& closures) const {
    return closures.empty() ||
           (closure_ != nullptr && std::find(closures.begin(), closures.end(), closure_->name) != closures.end());
  }

  int times(int count, const std::vector<std::string>& names, const std::vector<std::string>& between,
            const std::string& of) const {
    constexpr double enough = 1e15;  // so that none of something endless is still none
    double product = count;
    for (const std::string& name : names) product = std::min(enough, product * counts_.at(name));
    for (const std::string& name : between) product = std::min(enough, product * (counts_.at(name) - 1));
    if (product > most_pieces) too_many(of, product);
    return static_cast<int>(product);
  }

  [[noreturn]] static void too_many(std::string_view of, double count) {
    refuse("choices.counts", fmt::format("'{}' comes to {} of them; there may be {}", of, count, most_pieces));
  }

  Range range_of(const Extent& extent) const {
    Range out{extent.least_mm, extent.greatest_mm};
    for (const LengthTerm& term : extent.terms) {
      const Range of = known_.at(term.of);
      out.least += term.times * (term.times < 0 ? of.greatest : of.least);
      out.greatest += term.times * (term.times < 0 ? of.least : of.greatest);
    }
    for (const std::string& name : extent.over) {
      out.least /= counts_.at(name);
      out.greatest /= counts_.at(name);
    }
    return out;
  }

  void seam(const ArticleSeam& from) {
    const int count = times(from.count, from.times, from.between, from.name);
    if (count == 0) return;
    const Range length = range_of(from.length);
    if (!(length.least >= 0 && length.greatest <= 1e5)) come_out("length", from.name, length, 0);
    out_.seams.push_back({from.name, count, length.least, length.greatest});
    out_.seam_least_mm += count * length.least;
    out_.seam_greatest_mm += count * length.greatest;
  }

  [[noreturn]] static void come_out(std::string_view what, std::string_view of, Range range, int least) {
    refuse("choices.measures",
           fmt::format("the {} of '{}' comes to {}, not {} to 100000 mm", what, of, mm_words(range), least));
  }

  void piece(const ArticlePiece& from) {
    TargetPiece to;
    const int across = from.across.empty() ? 1 : counts_.at(from.across);
    const int up = from.up.empty() ? 1 : counts_.at(from.up);
    const int count = times(from.count, from.times, {}, from.name);
    if (static_cast<double>(count) * across * up > most_pieces)
      too_many(from.name, static_cast<double>(count) * across * up);
    const Range width = range_of(from.width);
    const Range length = range_of(from.length);
    for (const auto& [what, range] : {std::pair{"width", width}, std::pair{"length", length}}) {
      if (!(range.least >= 1 && range.greatest <= 1e5)) come_out(what, from.name, range, 1);
    }
    require_lap(from, width, length);
    to.width_least_mm = width.least;
    to.width_greatest_mm = width.greatest;
    to.length_least_mm = length.least;
    to.length_greatest_mm = length.greatest;
    to.shape.reserve(from.shape.size());
    for (const ShapePoint& point : from.shape) shape_point(point, from.name, length, to.shape);
    for (const Part& row : parts_of(up, from.lower, from.upper, {"lower", "middle", "upper"})) {
      for (const Part& column : parts_of(across, from.left, from.right, {"left", "middle", "right"})) {
        to.name = part_name(from.name, row.name, column.name);
        to.count = count * row.count * column.count;
        to.lower = row.start;
        to.upper = row.end;
        to.left = column.start;
        to.right = column.end;
        out_.pieces.push_back(to);
      }
    }
  }

  /// What lies over another piece is a part of its own: 450 mm of a cushion cannot be lapped by more than 450.
  void require_lap(const ArticlePiece& from, Range width, Range length) const {
    if (closure_ == nullptr || closure_->kind == ClosureKind::seam) return;
    const Range overlap = known_.at("overlap");
    const bool along = from.lower == EdgeUse::closure || from.upper == EdgeUse::closure;
    const bool across = from.left == EdgeUse::closure || from.right == EdgeUse::closure;
    for (const auto& [laps, what, range] : {std::tuple{along, "length", length}, std::tuple{across, "width", width}}) {
      if (!laps || (overlap.least <= range.least && overlap.greatest <= range.greatest)) continue;
      const bool least = overlap.greatest <= range.greatest;
      refuse(overlap_at_.empty() ? "choices.closure" : overlap_at_ + (least ? "least_mm" : "greatest_mm"),
             fmt::format("the overlap is {}, more than the {} of '{}', {}", mm_words(overlap), what, from.name,
                         mm_words(range)));
    }
  }

  void shape_point(const ShapePoint& from, const std::string& piece, Range length, std::vector<TargetPoint>& shape) {
    const Range height = range_of(from.height);
    const Range width = range_of(from.width);
    const std::string of = fmt::format("point {} of '{}'", shape.size() + 1, piece);
    if (!(width.least >= 1 && width.greatest <= 1e5)) {
      refuse("choices.measures", fmt::format("the width at {} comes to {}, not 1 to 100000 mm", of, mm_words(width)));
    }
    const Range below = shape.empty() ? Range{} : Range{shape.back().height_least_mm, shape.back().height_greatest_mm};
    if (!(height.least >= below.least && height.greatest >= below.greatest && height.least <= length.least &&
          height.greatest <= length.greatest)) {
      refuse("choices.measures",
             fmt::format(
                 "the height of {} comes to {}, outside what is from the point below, {}, to the piece's length, {}",
                 of, mm_words(height), mm_words(below), mm_words(length)));
    }
    shape.push_back({height.least, height.greatest, width.least, width.greatest});
  }

  const Article& article_;
  const ArticleChoices& choices_;
  const Closure* closure_ = nullptr;
  const FillingRule* rule_ = nullptr;
  std::string overlap_at_;  ///< where among the choices an own overlap stands
  bool filling_given_ = false;
  std::set<std::string_view> wanted_inputs_;
  std::map<std::string, Range> known_;
  std::map<std::string, int> counts_;
  Targets out_;
};

}  // namespace

Targets targets(const Article& article, const ArticleChoices& choices) {
  require_article(article);
  return Reckoning(article, choices).all();
}

}  // namespace latchwork::inline v0
