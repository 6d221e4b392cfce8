#pragma once

#include <cstdint>
#include <string>
#include <string_view>

namespace latchwork::inline v0::drawing {

/// Lengths are whole hundredths of an SVG user unit: the same picture, byte by byte, on every machine.
using Unit = std::int64_t;

/// "12.5", "-3", "0.04".
void append_unit(std::string& out, Unit value);

struct CellSize {
  Unit width = 2080;
  Unit height = 1600;
};

/// Appends path commands to one `d` attribute.
class Path {
 public:
  Path& move(Unit x, Unit y) { return pair('M', x, y); }
  Path& move_by(Unit x, Unit y) { return pair('m', x, y); }
  Path& line(Unit x, Unit y) { return pair('L', x, y); }
  Path& line_by(Unit x, Unit y) { return pair('l', x, y); }
  Path& across_by(Unit x) { return one('h', x); }
  Path& up_by(Unit y) { return one('v', -y); }
  Path& down_by(Unit y) { return one('v', y); }
  /// Half an ellipse to (x, y) from here, bulging upward.
  Path& arch_by(Unit radius_x, Unit radius_y, Unit x, Unit y);
  Path& close() {
    text_ += 'z';
    return *this;
  }
  bool empty() const noexcept { return text_.empty(); }
  /// Writes `<path d="..."` + attributes + `/>` and starts afresh; nothing when empty.
  void flush(std::string& out, std::string_view attributes = {});

 private:
  Path& pair(char command, Unit x, Unit y);
  Path& one(char command, Unit value);
  std::string text_;
};

}  // namespace latchwork::inline v0::drawing
