#pragma once

#include <cmath>
#include <cstdint>

namespace latchwork::inline v0 {

/// A number as the unevaluated sum of two doubles, good to about 100 bits: T. J. Dekker, A floating-point technique for
/// extending the available precision, Numerische Mathematik 18, 1971. Conversions are done in it and rounded once, so
/// that 17.75 in is the double nearest to 450.85 mm. Nothing here overflows: the ranges of quantities are far inside.
class Twofold {
 public:
  constexpr Twofold() = default;
  constexpr explicit Twofold(double number) : high_(number) {}
  explicit Twofold(std::uint64_t whole) {
    const auto upper = static_cast<double>(whole & ~std::uint64_t{0x7FF});  // 53 bits and 11
    *this = sum(upper, static_cast<double>(whole & std::uint64_t{0x7FF}));
  }

  /// The nearest double.
  double nearest() const noexcept { return high_; }
  /// What the nearest double lacks.
  double rest() const noexcept { return low_; }

  friend Twofold operator+(const Twofold& a, const Twofold& b) {
    const Twofold top = two_sum(a.high_, b.high_);
    const Twofold bottom = two_sum(a.low_, b.low_);
    const Twofold middle = sum(top.high_, top.low_ + bottom.high_);
    return sum(middle.high_, middle.low_ + bottom.low_);
  }
  friend Twofold operator*(const Twofold& a, const Twofold& b) {
    const double product = a.high_ * b.high_;
    const double error = std::fma(a.high_, b.high_, -product);
    return sum(product, error + (a.high_ * b.low_ + a.low_ * b.high_));
  }
  friend Twofold operator/(const Twofold& a, const Twofold& b) {
    const double first = a.high_ / b.high_;
    Twofold left = a + b * Twofold(-first);
    const double second = left.high_ / b.high_;
    left = left + b * Twofold(-second);
    return sum(first, second) + Twofold(left.high_ / b.high_);
  }

 private:
  // Exact for |a| >= |b|.
  static Twofold sum(double a, double b) {
    Twofold out;
    out.high_ = a + b;
    out.low_ = b - (out.high_ - a);
    return out;
  }
  static Twofold two_sum(double a, double b) {
    Twofold out;
    out.high_ = a + b;
    const double b_part = out.high_ - a;
    out.low_ = (a - (out.high_ - b_part)) + (b - b_part);
    return out;
  }

  double high_ = 0;
  double low_ = 0;
};

}  // namespace latchwork::inline v0
