#include "timings/non_negative.hpp"

#include <algorithm>
#include <cstddef>

namespace latchwork::inline v0::timing {
namespace {

constexpr double least_use = 1e-11;

class ActiveSet {
 public:
  ActiveSet(const std::vector<Column>& columns, const Column& target)
      : columns_(columns), target_(target), weights_(columns.size(), 0.0), barred_(columns.size(), 0) {
    for (Column& column : columns_) {
      lengths_.push_back(length(column));
      for (double& value : column) value /= lengths_.back() > 0 ? lengths_.back() : 1;
    }
  }

  Column solve() {
    // The residual shrinks with every column let in, so this ends by itself; the limit is for rounding that would let
    // two columns change places for ever, at a difference that no one can see.
    const std::size_t most_rounds = 50 * (columns_.size() + 1);
    for (std::size_t round = 0; round < most_rounds; ++round) {
      const std::size_t next = most_useful();
      if (next == columns_.size()) break;
      if (let_in(next)) {
        std::fill(barred_.begin(), barred_.end(), 0);
      } else {
        barred_[next] = 1;
      }
    }
    for (std::size_t i = 0; i < weights_.size(); ++i) weights_[i] /= lengths_[i] > 0 ? lengths_[i] : 1;
    return weights_;
  }

 private:
  std::size_t most_useful() const {
    Column residual = target_;
    for (const std::size_t used : in_use_) add_times(residual, -weights_[used], columns_[used]);
    std::size_t best = columns_.size();
    double most = least_use * length(target_);
    for (std::size_t i = 0; i < columns_.size(); ++i) {
      if (barred_[i] != 0 || std::find(in_use_.begin(), in_use_.end(), i) != in_use_.end()) continue;
      const double use = product(columns_[i], residual);
      if (use > most) {
        most = use;
        best = i;
      }
    }
    return best;
  }

  // The least-squares weights of the columns in use; empty when the last of them lies within the span of the others.
  Column unbounded() const {
    Basis basis;
    for (const std::size_t used : in_use_) {
      if (!basis.add(columns_[used])) return {};
    }
    return basis.weights(target_);
  }

  bool let_in(std::size_t next) {
    in_use_.push_back(next);
    Column wanted = unbounded();
    if (wanted.empty() || wanted.back() <= 0) {
      in_use_.pop_back();
      return false;
    }
    while (std::any_of(wanted.begin(), wanted.end(), [](double weight) { return weight <= 0; })) {
      go_toward(wanted);
      wanted = unbounded();
    }
    for (std::size_t k = 0; k < in_use_.size(); ++k) weights_[in_use_[k]] = wanted[k];
    return true;
  }

  // As far as no weight falls below 0; what comes to 0 is let out.
  void go_toward(const Column& wanted) {
    double share = 1;
    std::size_t first = 0;
    for (std::size_t k = 0; k < in_use_.size(); ++k) {
      if (wanted[k] > 0) continue;
      const double now = weights_[in_use_[k]];
      const double reach = now / (now - wanted[k]);
      if (reach < share) {
        share = reach;
        first = k;
      }
    }
    std::vector<std::size_t> staying;
    for (std::size_t k = 0; k < in_use_.size(); ++k) {
      double& weight = weights_[in_use_[k]];
      weight += share * (wanted[k] - weight);
      if (k != first && weight > 0) {
        staying.push_back(in_use_[k]);
      } else {
        weight = 0;
      }
    }
    in_use_ = staying;
  }

  std::vector<Column> columns_;  ///< each of length 1, or 0
  Column target_;
  Column lengths_;
  Column weights_;
  std::vector<std::size_t> in_use_;
  std::vector<char> barred_;
};

}  // namespace

Column non_negative(const std::vector<Column>& columns, const Column& target) {
  return ActiveSet(columns, target).solve();
}

}  // namespace latchwork::inline v0::timing
