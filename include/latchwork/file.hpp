#pragma once

#include <string>
#include <string_view>

#include "latchwork/effort.hpp"
#include "latchwork/export.hpp"
#include "latchwork/grid.hpp"
#include "latchwork/machine.hpp"
#include "latchwork/panel.hpp"
#include "latchwork/plan.hpp"
#include "latchwork/strip.hpp"

namespace latchwork::inline v0 {

// Files are JSON (RFC 8259, UTF-8) with "format" and "version" first; their JSON Schemas are installed. Every reader
// checks the whole text before anything is made, takes up to max_file_bytes, and throws Error with line and field:
// too_large, bad_encoding, bad_syntax, wrong_format, newer_version, duplicate_key, missing_field, unknown_field,
// bad_value; and what the types' own checks throw. read(write(x)) == x for every x. Linear in the text.

inline constexpr std::size_t max_file_bytes = std::size_t{64} << 20;

/// What a machine file holds.
struct MachineFile {
  Machine machine;
  Effort effort;
  friend bool operator==(const MachineFile&, const MachineFile&) = default;
};

LATCHWORK_API Grid read_grid(std::string_view json);    ///< "latchwork-grid", version 1
LATCHWORK_API Strip read_strip(std::string_view json);  ///< "latchwork-strip", version 1
LATCHWORK_API Panel
read_panel(std::string_view json);  ///< "latchwork-panel", version 1: parts by motif, or cells in full
LATCHWORK_API MachineFile read_machine(std::string_view json);  ///< "latchwork-machine", version 1
LATCHWORK_API Plan read_plan(std::string_view json);            ///< "latchwork-plan", version 1

LATCHWORK_API std::string write(const Grid& grid);
LATCHWORK_API std::string write(const Strip& strip);
LATCHWORK_API std::string write(const Panel& panel);  ///< always cells in full
LATCHWORK_API std::string write(const MachineFile& file);
LATCHWORK_API std::string write(const Plan& plan);

}  // namespace latchwork::inline v0
