#pragma once

#include <string>
#include <string_view>

#include "latchwork/certificate.hpp"
#include "latchwork/effort.hpp"
#include "latchwork/export.hpp"
#include "latchwork/grid.hpp"
#include "latchwork/machine.hpp"
#include "latchwork/panel.hpp"
#include "latchwork/plan.hpp"
#include "latchwork/strip.hpp"
#include "latchwork/yarn_need.hpp"

namespace latchwork::inline v0 {

// Files are JSON (RFC 8259, UTF-8; a byte order mark at the start is passed over, as in every text that is read here)
// with "format" and "version" first. Their JSON Schemas (draft 2020-12) are installed as
// share/latchwork/schema/{grid,strip,panel,machine,plan,certificate,yarn,article,article-choices,brief}.schema.json:
// article.json of a brief's folder is of the last but one, brief.json of the last. Every reader takes up to
// max_file_bytes, nested up to 32 deep, checks the whole text before anything is made, and throws Error with line and
// field ("crossings[2].left"; row and column too where a cell is meant): too_large, bad_encoding, bad_syntax,
// wrong_format, newer_version, duplicate_key, missing_field, unknown_field, bad_value, bad_letter, size_mismatch; and
// what the types' own checks throw, completed with line and field. read(write(x)) == x for every x, and write() throws
// rather than write what no reader takes: Error bad_value or bad_encoding (field) for a number that is not finite, an
// enumerator without a name, a number out of its documented range, a text that is not UTF-8. Linear in the text.
//
// Names in files are the names of members and enumerators here; what has a default may be left out, what no reader
// knows is refused, and that before a field of the same object is told to be missing: a misspelt field is told by its
// own name, with the one that was perhaps meant. Cells are letters (cell.hpp), needles "L3" or "R12".
//
// Grid: rows of letters, TOP row first; `centre` and `place` only where there is a centre.
//   {"format": "latchwork-grid", "version": 1,
//    "rows": ["kkkkkk", "kkkkkk", "kkkkkk"],
//    "crossings": [{"row": 2, "column": 0, "left": 2, "centre": 1, "right": 2, "lean": "right", "place": "behind"}]}
// Strip: "format": "latchwork-strip", "name", "texture", and the grid's fields.
// Panel in full: "format": "latchwork-panel", "name", the grid's fields, "axis_half_columns" when an axis is named, and
//   "bands": [{"row": 1, "rows": 96, "strips": [
//      {"name": "edge", "texture": "stockinette", "column": 0, "columns": 1, "repeat_rows": 1}, ...]}, ...]
// Panel by parts, for people: "format", "version", "name" and
//   "parts": [PART, ...]      bottom first, each on top of the one before, all of one width. A PART is either
//     {"rows": 96, "edge": MOTIF, "left": [MOTIF, ...], "centre": MOTIF, "axis": "line" or "stitch"}   (build_panel)
//     {"rows": 96, "strips": [MOTIF, ...]}                                from the left on the RS      (join_strips)
//   A MOTIF names a function of motif.hpp with its parameters by name (those with a default may be left out):
//     {"motif": "rope", "front": 3, "back": 3, "interval": 8, "lean": "right"}
//   or gives cells of one's own, one vertical repeat, TOP row first:
//     {"motif": "chart", "name": "lozenge", "texture": "lozenge", "rows": [...], "crossings": [...]}
//   and may have "name" and "texture" (in place of the motif's own), "mirrored": true, "repeat_across": 2.
// Machine: "format": "latchwork-machine", "class": "fine", "standard", "mid" or "bulky" to start from that generic
//   machine (else from Machine{}), then any member of Machine ("leftmost" is a needle or "centred"), and
//   "effort_ms": {"stop": 15000, ...} with any member of Effort.
// Plan: "format": "latchwork-plan" and the members of Plan; a needle 0, in plans that have none, is "none"; rungs are
//   letters, lowest row first; lists that are empty and hints that are not given are left out.
// Certificate: "format": "latchwork-certificate" and the members of Certificate; lists that are empty are left out.
//   DEVELOPERS.md, "Certificates", tells how one is checked.
// Yarn: "format": "latchwork-yarn" and the members of YarnRequest; the number of a yarn is a text as
//   read_yarn_number() takes it, or "unknown".
// Article: "format": "latchwork-article" and the members of Article; its reader and writer are in article.hpp.

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
LATCHWORK_API MachineFile read_machine(std::string_view json);      ///< "latchwork-machine", version 1
LATCHWORK_API Plan read_plan(std::string_view json);                ///< "latchwork-plan", version 1
LATCHWORK_API Certificate read_certificate(std::string_view json);  ///< "latchwork-certificate", version 1

LATCHWORK_API YarnRequest read_yarn_request(std::string_view json);  ///< "latchwork-yarn", version 1

LATCHWORK_API std::string write(const Grid& grid);
LATCHWORK_API std::string write(const Strip& strip);
LATCHWORK_API std::string write(const Panel& panel);  ///< always cells in full
LATCHWORK_API std::string write(const MachineFile& file);
LATCHWORK_API std::string write(const Plan& plan);
LATCHWORK_API std::string write(const Certificate& certificate);
LATCHWORK_API std::string write(const YarnRequest& request);

}  // namespace latchwork::inline v0
