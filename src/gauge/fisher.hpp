#pragma once

namespace latchwork::inline v0 {

/// Probability that Fisher's F with these degrees of freedom, `between` over `within`, 1 or more each, exceeds
/// `ratio` >= 0. Finite sums of M. Abramowitz and I. A. Stegun, Handbook of Mathematical Functions,
/// 1964, 26.6.4, 26.6.5 and 26.6.8; to about 1e-12. More than 200 between and 600 within count as so many, which makes
/// it a little greater.
double fisher_beyond(double ratio, int between, int within);

}  // namespace latchwork::inline v0
