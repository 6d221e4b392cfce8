#pragma once

#include <cstdint>

namespace latchwork::inline v0::following {

/// Is told how far the wales are followed, for a caller who may have to leave it on the way.
class Watch {
 public:
  Watch() = default;
  Watch(const Watch&) = delete;
  Watch& operator=(const Watch&) = delete;
  virtual ~Watch() = default;

  /// So many cells more, of twice as many as the grid has. What it throws ends it.
  virtual void passed(std::int64_t cells) = 0;
};

}  // namespace latchwork::inline v0::following
