#include "fit/combination.hpp"

#include <algorithm>
#include <cmath>
#include <map>
#include <string_view>

namespace latchwork::inline v0::fitting {

Combination::Combination(const FitRequest& request, const Gauges& gauges) : request_(request) {
  const Ties ties = ties_of(request.groups);
  const std::size_t edge = ties.first_of.size();
  std::map<std::string_view, Shares> by_name;
  const auto share_of = [&](const Strip& strip) -> Shares& {
    const Gauge& gauge = gauges.of(strip.texture);
    Shares& out = by_name[gauge.texture];  // what borrows a gauge is measured with its owner, as in size()
    out.gauge = &gauge;
    out.columns.resize(edge + 1, 0);
    return out;
  };
  columns_each_.resize(edge + 1, 0);
  for (std::size_t i = 0; i < request.groups.size(); ++i) {
    const std::size_t variable = ties.variable_of[i];
    for (const Strip& strip : request.groups[i].strips) share_of(strip).columns[variable] += strip.grid.columns();
    columns_each_[variable] += columns_of(request.groups[i]);
  }
  if (request.edge) share_of(*request.edge).columns[edge] += 2;
  columns_each_[edge] = 2;

  std::map<std::string_view, std::size_t> index;
  for (const auto& [name, share] : by_name) {
    index.emplace(name, shares_.size());
    shares_.push_back(share);
  }
  for (std::size_t i = 0; i < request.groups.size(); ++i) {
    const FitGroup& from = request.groups[i];
    Group& group = groups_.emplace_back();
    group.variable = ties.variable_of[i];
    group.columns = columns_of(from);
    group.parts.reserve(from.strips.size());
    for (const Strip& strip : from.strips) {
      group.parts.push_back({index.at(gauges.of(strip.texture).texture), strip.grid.columns()});
    }
  }
  if (request.edge) edge_share_ = index.at(gauges.of(request.edge->texture).texture);
  constexpr Count fixed_work = 16;
  const Count textures = std::ssize(shares_);
  height_work_ = fixed_work + textures;
  width_work_ = fixed_work + textures * std::ssize(columns_each_);
  for (const Group& group : groups_) width_work_ += std::ssize(group.parts);
  for (Sewn* panel : {&outer_left_, &inner_, &outer_right_}) {
    panel->textures.reserve(shares_.size());
    for (const Shares& share : shares_) panel->textures.push_back({share.gauge, 0});
  }
}

Count Combination::columns(const Counts& counts) const {
  Count out = 0;
  for (std::size_t i = 0; i < counts.size(); ++i) out += counts[i] * columns_each_[i];
  return out;
}

Count Combination::edge_least(Count panels) const {
  return panels > 1 ? static_cast<Count>(std::ceil(request_.seam_stitches)) : 0;
}

// What is made mirrored is measured as it was, with its seams the other way round.
void Combination::measure(Count panels, const Counts& counts) {
  panels_ = panels;
  if (panels == 1) {
    sew(outer_left_, counts, request_.seam_left, request_.seam_right);
    width_ = outer_left_.width;
    return;
  }
  sew(outer_left_, counts, request_.seam_left, request_.seam_stitches);
  sew(outer_right_, counts, request_.seam_right, request_.seam_stitches);
  width_ = outer_left_.width;
  if (panels > 2) {
    sew(inner_, counts, request_.seam_stitches, request_.seam_stitches);
    width_ += static_cast<double>(panels - 2) * inner_.width;
  }
  width_ += outer_right_.width;
  // A panel that its seams take in whole makes no combination.
  const bool whole = outer_left_.width > 0 && outer_right_.width > 0 && (panels == 2 || inner_.width > 0);
  if (!whole) width_ = 0;
}

double Combination::height(Count rows) const {
  const double between = (static_cast<double>(rows) - request_.seam_top) - request_.seam_bottom;
  const double left = band_height_mm(outer_left_.textures, between);
  if (panels_ == 1) return left;
  const double right = band_height_mm(outer_right_.textures, between);
  double least = std::min(left, right);
  double greatest = std::max(left, right);
  double weighted = outer_left_.width * left;
  if (panels_ > 2) {
    const double inner = band_height_mm(inner_.textures, between);
    least = std::min(least, inner);
    greatest = std::max(greatest, inner);
    weighted += static_cast<double>(panels_ - 2) * (inner_.width * inner);
  }
  weighted += outer_right_.width * right;
  return std::clamp(weighted / width_, least, greatest);
}

Combination::Heights Combination::heights(Count rows) const {
  const double between = std::max(0.0, (static_cast<double>(rows) - request_.seam_top) - request_.seam_bottom);
  Heights out;
  for (const Shares& share : shares_) {
    const double height = extent_mm(between, share.gauge->rows);
    out.least = &share == &shares_.front() ? height : std::min(out.least, height);
    out.greatest = std::max(out.greatest, height);
  }
  return out;
}

void Combination::sew(Sewn& panel, const Counts& counts, double seam_left, double seam_right) {
  panel.width = 0;
  if (static_cast<double>(columns(counts)) <= seam_left + seam_right) return;
  for (std::size_t i = 0; i < shares_.size(); ++i) {
    Count columns = 0;
    for (std::size_t k = 0; k < counts.size(); ++k) columns += counts[k] * shares_[i].columns[k];
    panel.textures[i].columns = static_cast<double>(columns);
  }
  take_in(panel, counts, seam_left, true);
  take_in(panel, counts, seam_right, false);
  panel.width = band_width_mm(panel.textures);
}

// Whole and half stitches: every difference is exact.
void Combination::take_in(Sewn& panel, const Counts& counts, double seam, bool from_left) const {
  const auto take = [&](std::size_t share, Count there) {
    const double taken = std::min(seam, static_cast<double>(there));
    panel.textures[share].columns -= taken;
    seam -= taken;
  };
  const Count edge = counts.back();
  if (seam > 0 && edge > 0) take(edge_share_, edge);
  for (std::size_t n = 0; n < groups_.size() && seam > 0; ++n) {
    const Group& group = groups_[from_left ? n : groups_.size() - 1 - n];
    const Count times = counts[group.variable];
    const Count whole = std::min(times, static_cast<Count>(seam / static_cast<double>(group.columns)));
    for (const Part& part : group.parts) {
      panel.textures[part.share].columns -= static_cast<double>(whole * part.columns);
    }
    seam -= static_cast<double>(whole * group.columns);
    if (whole == times) continue;
    for (std::size_t k = 0; k < group.parts.size() && seam > 0; ++k) {
      const Part& part = group.parts[from_left ? k : group.parts.size() - 1 - k];
      take(part.share, part.columns);
    }
  }
  if (seam > 0 && edge > 0) take(edge_share_, edge);
}

}  // namespace latchwork::inline v0::fitting
