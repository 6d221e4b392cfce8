#include "schematic/simple.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <cstddef>
#include <cstdint>
#include <iterator>
#include <numeric>
#include <set>
#include <utility>

#include "latchwork/error.hpp"

namespace latchwork::inline v0::schematics {
namespace {

/// A corner in whole thousandths of a millimetre. Within 1e6 mm of the origin, products of differences are below 4e18
/// and so are told exactly in 64 bits, sums of two as well: nothing here is rounded a second time.
struct Node {
  std::int64_t x = 0;
  std::int64_t y = 0;
  std::size_t corner = 0;  ///< its index in the outline
};

bool in_one_place(const Node& a, const Node& b) {
  return a.x == b.x && a.y == b.y;
}

/// From the left, and from the bottom up in one line: the order in which the sweep comes by.
bool before(const Node& a, const Node& b) {
  return a.x != b.x ? a.x < b.x : a.y < b.y;
}

/// 1 where c lies to the left of the way from a to b, -1 to the right, 0 on its line.
int turn(const Node& a, const Node& b, const Node& c) {
  const std::int64_t cross = (b.x - a.x) * (c.y - a.y) - (b.y - a.y) * (c.x - a.x);
  return (cross > 0 ? 1 : 0) - (cross < 0 ? 1 : 0);
}

/// Whether c, on the line of a and b, lies between them.
bool between(const Node& a, const Node& b, const Node& c) {
  return std::min(a.x, b.x) <= c.x && c.x <= std::max(a.x, b.x) && std::min(a.y, b.y) <= c.y &&
         c.y <= std::max(a.y, b.y);
}

bool meet(const Node& a, const Node& b, const Node& c, const Node& d) {
  const int abc = turn(a, b, c);
  const int abd = turn(a, b, d);
  const int cda = turn(c, d, a);
  const int cdb = turn(c, d, b);
  if (abc * abd < 0 && cda * cdb < 0) return true;
  return (abc == 0 && between(a, b, c)) || (abd == 0 && between(a, b, d)) || (cda == 0 && between(c, d, a)) ||
         (cdb == 0 && between(c, d, b));
}

/// An edge from node k to the next, the end that the sweep comes to first first.
struct Edge {
  std::size_t k = 0;
  const Node* low = nullptr;
  const Node* high = nullptr;
};

/// The order from below of edges that the sweep is at. Edges that meet nowhere keep it as long as both are there.
struct Below {
  using is_transparent = void;
  bool operator()(const Edge& a, const Edge& b) const {
    if (a.k == b.k) return false;
    if (a.low == b.low) return turn(*a.low, *a.high, *b.high) > 0;
    return before(*b.low, *a.low) ? turn(*b.low, *b.high, *a.low) < 0 : turn(*a.low, *a.high, *b.low) > 0;
  }
  bool operator()(const Edge& edge, const Node& node) const { return turn(*edge.low, *edge.high, node) > 0; }
  bool operator()(const Node& node, const Edge& edge) const { return turn(*edge.low, *edge.high, node) < 0; }
};

/// Shamos and Hoey's sweep: while nothing has met, the edges over the sweep's place keep their order, and two that meet
/// are neighbours before they do. So only neighbours are looked at.
class Sweep {
 public:
  Sweep(std::string at, const std::vector<OutlinePoint>& outline) : at_(std::move(at)) {
    nodes_.reserve(outline.size());
    for (std::size_t i = 0; i < outline.size(); ++i) {
      const Node node{std::llround(outline[i].x_mm * 1000), std::llround(outline[i].y_mm * 1000), i};
      if (nodes_.empty() || !in_one_place(nodes_.back(), node)) nodes_.push_back(node);
    }
    while (nodes_.size() > 1 && in_one_place(nodes_.front(), nodes_.back())) nodes_.pop_back();
  }

  void run() {
    require_corners();
    places_.resize(nodes_.size());
    for (const std::size_t node : order_) pass(node);
  }

 private:
  using Status = std::set<Edge, Below>;

  std::size_t after(std::size_t k) const { return k + 1 == nodes_.size() ? 0 : k + 1; }
  std::size_t ahead_of(std::size_t k) const { return (k == 0 ? nodes_.size() : k) - 1; }

  Edge edge(std::size_t k) const {
    const Node& from = nodes_[k];
    const Node& to = nodes_[after(k)];
    return before(from, to) ? Edge{k, &from, &to} : Edge{k, &to, &from};
  }

  /// Three or more, no two in one place, and none where the outline goes back the way it came. Fills `order_`.
  void require_corners() {
    if (nodes_.size() < 3) refuse(nodes_[0], fmt::format("has {} corners apart; it needs three", nodes_.size()));
    order_.resize(nodes_.size());
    std::iota(order_.begin(), order_.end(), std::size_t{0});
    std::sort(order_.begin(), order_.end(), [this](std::size_t a, std::size_t b) {
      return in_one_place(nodes_[a], nodes_[b]) ? a < b : before(nodes_[a], nodes_[b]);
    });
    for (std::size_t i = 1; i < order_.size(); ++i) {
      const Node& a = nodes_[order_[i - 1]];
      const Node& b = nodes_[order_[i]];
      if (in_one_place(a, b))
        refuse(b, fmt::format("touches itself: its corners {} and {} lie in one place", a.corner, b.corner));
    }
    for (std::size_t k = 0; k < nodes_.size(); ++k) {
      const Node& a = nodes_[ahead_of(k)];
      const Node& b = nodes_[k];
      const Node& c = nodes_[after(k)];
      if (turn(a, b, c) == 0 && !between(a, c, b))
        refuse(b, fmt::format("folds back on itself at its corner {}", b.corner));
    }
  }

  void pass(std::size_t node) {
    std::array<Edge, 2> starting;
    std::size_t starts = 0;
    for (const std::size_t k : {ahead_of(node), node}) {
      const Edge one = edge(k);
      if (one.low == &nodes_[node]) {
        starting[starts++] = one;
        continue;
      }
      const auto next = status_.erase(places_[k]);
      if (next != status_.begin() && next != status_.end()) require_apart(*std::prev(next), *next);
    }
    if (starts == 2 && Below()(starting[1], starting[0])) std::swap(starting[0], starting[1]);
    for (std::size_t i = 0; i < starts; ++i) {
      const Edge& fresh = starting[i];
      const auto next = i == 0 ? status_.lower_bound(nodes_[node]) : std::next(places_[starting[0].k]);
      if (next != status_.end()) require_apart(fresh, *next);
      if (next != status_.begin()) require_apart(*std::prev(next), fresh);
      places_[fresh.k] = status_.insert(next, fresh);
    }
  }

  void require_apart(const Edge& a, const Edge& b) const {
    if (after(a.k) == b.k || after(b.k) == a.k) return;  // they share a corner, and no more
    if (!meet(*a.low, *a.high, *b.low, *b.high)) return;
    const auto [first, second] = std::minmax(a.k, b.k);
    refuse(nodes_[first],
           fmt::format("crosses or touches itself: its edges from corner {} to {} and from {} to {} meet",
                       nodes_[first].corner, nodes_[after(first)].corner, nodes_[second].corner,
                       nodes_[after(second)].corner));
  }

  [[noreturn]] void refuse(const Node& node, const std::string& what) const {
    Place place;
    place.field = fmt::format("{}[{}]", at_, node.corner);
    throw Error(ErrorCode::bad_argument, place, fmt::format("{} {}", at_, what));
  }

  std::string at_;
  std::vector<Node> nodes_;
  std::vector<std::size_t> order_;
  Status status_;
  std::vector<Status::iterator> places_;  ///< of the edges in `status_`
};

}  // namespace

void require_simple(const std::string& at, const std::vector<OutlinePoint>& outline) {
  Sweep(at, outline).run();
}

}  // namespace latchwork::inline v0::schematics
