#pragma once

namespace latchwork::inline v0::timing {

/// Probability that Student's t with that many degrees of freedom (1 or more) is farther from 0 than `t`, either way.
/// Finite sums of M. Abramowitz and I. A. Stegun, Handbook of Mathematical Functions, 1964, 26.7.3 and 26.7.4; to about
/// 1e-15. Linear in the degrees of freedom.
double student_beyond(double t, int freedom);

/// The t with student_beyond(t, freedom) == share, for 1e-9..1, to about 1e-6 of itself.
double student_limit(double share, int freedom);

}  // namespace latchwork::inline v0::timing
