#pragma once

#include <cstddef>
#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

namespace latchwork::inline v0::json {

/// How an array or object stands: one member a line, or all on one line (and all within it).
enum class Layout : std::uint8_t { lines, line };

/// Writes JSON that people can read, the same bytes for the same calls.
class Writer {
 public:
  /// A file's object with its "format" and "version".
  void begin_file(std::string_view format, int version);
  void begin_object(Layout layout) { open('{', layout); }
  void end_object() { close('}'); }
  void begin_array(Layout layout) { open('[', layout); }
  void end_array() { close(']'); }
  void key(std::string_view name);

  void integer(std::int64_t value);
  /// The shortest digits that read back to the same number. @throws Error bad_value when it is not finite.
  void real(double value);
  void boolean(bool value);
  /// @throws Error bad_encoding when it is not UTF-8.
  void text(std::string_view value);

  /// Where a member of that name in the open object stands in the file: "effort_ms.stop".
  std::string field_of(std::string_view key) const;
  /// Where the value stands that is written next: "effort_ms.stop", "prongs[2]".
  std::string field() const;

  /// The text, closed by a newline; the writer is empty after it.
  std::string take();

 private:
  struct Level {
    Layout layout;
    bool array = false;
    std::string_view name{};  // of an object's member; empty in an array, and of the whole file
    std::size_t members = 0;  // begun
  };
  void open(char bracket, Layout layout);
  void close(char bracket);
  std::string path() const;
  void before_value();
  void separate();
  void new_line() {
    out_ += '\n';
    out_.append(2 * levels_.size(), ' ');
  }
  void quote(std::string_view value);

  std::string out_;
  std::vector<Level> levels_;
  std::string_view key_;  // last written
  bool after_key_ = false;
};

}  // namespace latchwork::inline v0::json
