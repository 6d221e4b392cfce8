#pragma once

#include <cstddef>

#include "latchwork/certificate.hpp"

namespace latchwork::inline v0::checking {

/// Places that the branches kept in two neighbouring rows may have together: a gibibyte of 8 bytes each.
inline constexpr std::size_t most_places = std::size_t{1} << 27;

/// check_certificate(), with another limit to those places.
CertificateCheck check_within(const Grid& grid, const Machine& machine, const Effort& effort,
                              const Certificate& certificate, const WatchOptions& options, std::size_t most_places);

}  // namespace latchwork::inline v0::checking
