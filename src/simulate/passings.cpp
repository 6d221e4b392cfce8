#include "passings.hpp"

#include <algorithm>
#include <utility>

namespace latchwork::inline v0::knitting {
namespace {

std::size_t of_wale(std::int32_t wale) {
  return static_cast<std::size_t>(wale);
}

std::int32_t near_of(const Passing& passing) {
  return passing.near < 0 ? ~passing.near : passing.near;
}

}  // namespace

void Passings::add(const Passing& passing) {
  all_.push_back(passing);
  if (index_) link(all_.size() - 1);
}

void Passings::link(std::size_t passing) {
  const auto here = static_cast<std::int32_t>(passing);
  const auto [near, far] = all_[passing];
  Index::Before before;
  before.near = std::exchange(index_->last[of_wale(near)], here);
  if (far != near) before.far = std::exchange(index_->last[of_wale(far)], here);
  index_->before.push_back(before);
}

void Passings::index(int columns) {
  index_ = std::make_unique<Index>();
  index_->last.assign(static_cast<std::size_t>(columns), -1);
  index_->before.reserve(all_.size());
  for (std::size_t i = 0; i < all_.size(); ++i) link(i);
}

void Passings::take_back(std::size_t count) {
  while (count > 0 && !all_.empty()) {
    const Passing last = all_.back();
    const auto here = static_cast<std::int32_t>(all_.size() - 1);
    all_.pop_back();
    if (last.near >= 0) --count;
    if (!index_) continue;
    const Index::Before before = index_->before.back();
    index_->before.pop_back();
    if (last.near < 0) --index_->gone;
    std::int32_t& of_near = index_->last[of_wale(near_of(last))];
    if (of_near == here) of_near = before.near;
    std::int32_t& of_far = index_->last[of_wale(last.far)];
    if (of_far == here) of_far = before.far;
  }
}

bool Passings::pass_near(int wale, int columns) {
  if (!index_) index(columns);
  std::vector<std::int32_t> others;
  bool as_before = true;
  for (std::int32_t here = std::exchange(index_->last[of_wale(wale)], -1); here >= 0;) {
    Passing& passing = all_[of_wale(here)];
    const Index::Before& before = index_->before[of_wale(here)];
    here = near_of(passing) == wale ? before.near : before.far;
    if (passing.near < 0) continue;
    as_before = as_before && passing.near == wale;
    others.push_back(passing.near == wale ? passing.far : passing.near);
    passing.near = ~passing.near;
    ++index_->gone;
  }
  std::ranges::sort(others);
  std::size_t again = 0;
  for (std::size_t i = 0; i < others.size();) {
    std::size_t past = i;
    while (past < others.size() && others[past] == others[i]) ++past;
    if ((past - i) % 2 == 1) {
      add({wale, others[i]});
      ++again;
    }
    i = past;
  }
  if (2 * index_->gone > all_.size()) clear_away();
  return as_before && again == others.size();
}

void Passings::clear_away() {
  std::erase_if(all_, [](const Passing& passing) { return passing.near < 0; });
  index(static_cast<int>(index_->last.size()));
}

}  // namespace latchwork::inline v0::knitting
