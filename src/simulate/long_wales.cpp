#include "long_wales.hpp"

#include <utility>

namespace latchwork::inline v0::knitting {
namespace {

constexpr int near_the_needle = 64;  // slots; past any ladder that is dropped as a rule

std::size_t number(std::int32_t i) {
  return static_cast<std::size_t>(i);
}

}  // namespace

void LongWales::Wale::add(std::int32_t slot, int row) {
  if (slots.empty()) lowest = row;
  const std::size_t here = number(row - lowest);  // none goes below the first: rungs hang above a loop
  if (here >= last.size()) last.resize(here + 1, -1);
  row_before.push_back(std::exchange(last[here], static_cast<std::int32_t>(slots.size())));
  slots.push_back(slot);
}

void LongWales::Wale::take_off(int row) {
  last[number(row - lowest)] = row_before.back();
  row_before.pop_back();
  slots.pop_back();
}

std::int32_t LongWales::Wale::slot_of(int row) const {
  if (row < lowest || number(row - lowest) >= last.size()) return no_slot;
  const std::int32_t i = last[number(row - lowest)];
  return i < 0 ? no_slot : slots[number(i)];
}

std::int32_t LongWales::find(Cloth& cloth, std::int32_t top, int row) {
  std::int32_t slot = top;
  for (int step = 0; step < near_the_needle; ++step) {
    if (slot == no_slot || cloth.row_of(slot) == row) return slot;
    slot = cloth[slot].below;
  }
  std::vector<std::int32_t> fresh;
  for (; slot != no_slot && !cloth[slot].by_row; slot = cloth[slot].below) fresh.push_back(slot);
  if (fresh.empty() && slot == no_slot) return no_slot;
  if (fresh.empty()) return wales_.at(slot).slot_of(row);
  Wale wale;
  if (slot != no_slot) {
    wale = std::move(wales_.extract(slot).mapped());
    cloth[slot].by_row = false;
  }
  for (; !fresh.empty(); fresh.pop_back()) {
    slot = fresh.back();
    wale.add(slot, cloth.row_of(slot));
  }
  cloth[slot].by_row = true;
  return wales_.emplace(slot, std::move(wale)).first->second.slot_of(row);
}

void LongWales::drop(Cloth& cloth, std::int32_t slot, std::int32_t end) {
  Wale wale = std::move(wales_.extract(slot).mapped());
  cloth[slot].by_row = false;
  while (!wale.slots.empty() && wale.slots.back() != end) wale.take_off(cloth.row_of(wale.slots.back()));
  if (wale.slots.empty()) return;
  cloth[end].by_row = true;
  wales_.emplace(end, std::move(wale));
}

}  // namespace latchwork::inline v0::knitting
