#include "timings/ties.hpp"

#include <algorithm>
#include <cmath>
#include <numeric>

#include "timings/non_negative.hpp"

namespace latchwork::inline v0::timing {
namespace {

void join(std::vector<std::size_t>& group, std::size_t a, std::size_t b) {
  const std::size_t low = std::min(group[a], group[b]);
  const std::size_t high = std::max(group[a], group[b]);
  for (std::size_t& one : group) one = one == high ? low : one;
}

// Lawson and Hanson's LDP: the shortest v with, for each row, rows[0][i] v[0] + rows[1][i] v[1] + ... >= least[i].
// There is one, as the caller knows.
Column shortest(const std::vector<Column>& rows, const Column& least) {
  const std::size_t size = rows.size();
  std::vector<Column> columns;
  for (std::size_t i = 0; i < least.size(); ++i) {
    Column& column = columns.emplace_back();
    for (const Column& row : rows) column.push_back(row[i]);
    column.push_back(least[i]);
  }
  Column target(size + 1, 0.0);
  target[size] = 1;
  const Column weights = non_negative(columns, target);
  Column residual = target;
  for (std::size_t i = 0; i < columns.size(); ++i) add_times(residual, -weights[i], columns[i]);
  Column out(size, 0.0);
  if (!(residual[size] > 0)) return out;
  for (std::size_t k = 0; k < size; ++k) out[k] = -residual[k] / residual[size];
  return out;
}

}  // namespace

Ties ties_of(const std::vector<Column>& columns) {
  Ties ties;
  ties.group.resize(columns.size());
  std::iota(ties.group.begin(), ties.group.end(), std::size_t{0});
  ties.tied.assign(columns.size(), 0);
  Basis basis;
  std::vector<std::size_t> kept;
  for (std::size_t i = 0; i < columns.size(); ++i) {
    Column unit = columns[i];
    const double own = length(unit);
    for (double& value : unit) value /= own;
    if (basis.add(unit)) {
      kept.push_back(i);
      continue;
    }
    const Column weights = basis.weights(unit);
    Column& exchange = ties.exchanges.emplace_back(columns.size(), 0.0);
    exchange[i] = 1 / own;
    ties.tied[i] = 1;
    for (std::size_t k = 0; k < weights.size(); ++k) {
      if (std::abs(weights[k]) <= rank_tolerance) continue;
      exchange[kept[k]] = -weights[k] / length(columns[kept[k]]);
      ties.tied[kept[k]] = 1;
      join(ties.group, i, kept[k]);
    }
  }
  return ties;
}

void settle(const Ties& ties, const Column& wanted, Column& weights) {
  if (ties.exchanges.empty()) return;
  Column scale;
  for (const double value : wanted) scale.push_back(std::max(value, 1.0));
  Basis basis(1e-13);  // the exchanges are independent, each by a column of its own, however it is scaled
  for (Column exchange : ties.exchanges) {
    for (std::size_t i = 0; i < exchange.size(); ++i) exchange[i] /= scale[i];
    basis.add(exchange);
  }
  const std::vector<Column>& ways = basis.vectors();
  Column place;
  Column gap;
  for (std::size_t i = 0; i < wanted.size(); ++i) {
    place.push_back(weights[i] / scale[i]);
    gap.push_back(wanted[i] / scale[i] - place[i]);
  }
  const Column nearest = basis.coordinates(gap);
  for (std::size_t k = 0; k < ways.size(); ++k) add_times(place, nearest[k], ways[k]);
  if (std::any_of(place.begin(), place.end(), [](double value) { return value < 0; })) {
    Column least = place;
    for (double& value : least) value = -value;
    const Column back = shortest(ways, least);
    for (std::size_t k = 0; k < ways.size(); ++k) add_times(place, back[k], ways[k]);
  }
  for (std::size_t i = 0; i < weights.size(); ++i) {
    if (ties.tied[i] != 0) weights[i] = std::max(place[i], 0.0) * scale[i];
  }
}

}  // namespace latchwork::inline v0::timing
