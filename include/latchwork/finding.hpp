#pragma once

#include <cstdint>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "latchwork/error.hpp"
#include "latchwork/export.hpp"
#include "latchwork/grid.hpp"
#include "latchwork/machine.hpp"

namespace latchwork::inline v0 {

/// How bad it is: `error` cannot be made, `warning` is hard or risky, `advice` is worth knowing.
enum class Severity : std::uint8_t { advice = 0, warning = 1, error = 2 };

/// What a bed, tool or method cannot do or finds hard, and what a measure cannot be trusted in. Numbers never change;
/// the list only grows.
enum class FindingCode : std::int32_t {
  off_bed = 1,              ///< the panel reaches past the bed where it is placed, or is wider than it
  no_tool = 2,              ///< a crossing's groups do not hang on one tool each, of two of each size: a group needs
                            ///< several, or there are too few; limit: the widest tool's prongs, where a group is wider
  tight_crossing = 3,       ///< a crossing travels further than is comfortable
  short_interval = 4,       ///< crossings on the same stitches follow each other in fewer rows than they have stitches
  open_crossing = 5,        ///< a crossing after the panel's last row
  open_stack = 6,           ///< tucks or slips that no knit or purl closes
  no_held_loop = 7,         ///< tucks or slips with no loop below to hold
  high_stack = 8,           ///< more tucks or slips in a stack than the machine's limit
  tuck_at_edge = 9,         ///< a tuck in the outermost wale or beside a ladder
  slip_at_edge = 10,        ///< a slip there
  purl_at_edge = 11,        ///< a re-formed purl there: two rows come as one long loop
  long_float = 12,          ///< slips side by side in a row over more needles than the limit
  tucks_side_by_side = 13,  ///< neighbouring tucks in a row: by hold they would carry one straight strand
  wale_begins = 14,         ///< a stitch above `none` inside the panel: a shaping event (at a ladder, an eyelet)
  wale_ends = 15,           ///< `none` above a stitch: a shaping event
  out_of_reach = 16,        ///< no batch that the rules allow can re-form this cell
  no_edge_stitch = 17,      ///< an outermost column that is not knit all the way
  carriage_side = 18,   ///< plans: a stop is needed where the carriage is on the left, and only the right is allowed
  stops_too_near = 19,  ///< plans: stops are needed nearer to each other than allowed
  too_deep = 20,        ///< plans: a cell that only a deeper re-form than allowed can make
  off_rhythm = 21,      ///< plans: wales that cannot be kept to their rhythm, or to any
  too_many_kinds = 22,  ///< plans: more kinds of stop are needed than allowed
  row_closed = 23,      ///< plans: a stop is needed after a row that is closed
  few_places = 24,      ///< swatches: measured in fewer places than is usual
  short_measure = 25,   ///< swatches: counted over less than is usual
  odd_one_out = 26,     ///< swatches: one place that does not belong to the others
  half_measured = 27,   ///< swatches: stitches alone, or rows alone, were measured
  no_swatch = 28,       ///< sizes: a texture that was not measured, and that no other stands in for
  borrowed_gauge = 29,  ///< sizes: a texture measured by another's gauge, as told
  mixed_states = 30,    ///< sizes: textures that were measured in unlike states
  unknown_spread = 31,  ///< sizes: textures measured in one place only
  unlike_heights = 32,  ///< sizes: textures side by side that are not equally high
  unlike_widths = 33,   ///< sizes: bands that are not equally wide
  crossing_cut = 34,    ///< shaping: a crossing of which a part is outside the shape
  stack_cut = 35,       ///< shaping: tucks or slips cut off from the loop they hold or from what closes them
  column_cut =
      36,  ///< shaping: hand cells in the edge stitches, which are knitted plain; crossings that reach into them
  no_stitch = 37,   ///< a panel without a single stitch
  two_pieces = 38,  ///< a row of which no stitch stands on one of the row below: the cloth comes apart there
  yarn_away = 39,   ///< two stitches or more bound off or cast on at once at the edge where the carriage, and with it
                    ///< the yarn, is not after that row: a row later it is (common practice, no source)
  unlike_swatches = 40,  ///< swatches: pieces whose gauges differ by more than their places explain
  narrow_texture = 41,  ///< sizes: a texture that is one or two wales wide wherever it stands, none of them at an edge:
                        ///< so few have no gauge of their own (common practice, no source)
};

struct Finding {
  FindingCode code = FindingCode::off_bed;
  Severity severity = Severity::advice;
  Place place;             ///< lowest row, leftmost column on the RS
  int last_row = 0;        ///< the finding spans rows place.row..last_row
  int last_column = -1;    ///< and columns place.column..last_column
  int value = 0;           ///< what was found, in the finding's unit (needles, stitches, rows, places, mm)
  int limit = 0;           ///< the limit it broke; 0: none
  std::string message;     ///< for people, with place, value and limit
  std::string suggestion;  ///< what would help
  friend bool operator==(const Finding&, const Finding&) = default;
};

/// The code's name as in FindingCode; empty for a number that is no code.
LATCHWORK_API std::string_view finding_name(FindingCode code) noexcept;

/// Everything this machine cannot make or will find hard about the grid read as a panel, worst first, then by row and
/// column. Like findings that touch (same code and severity, the same or neighbouring columns, rows up to four apart,
/// as most textures repeat; for crossings, edges and shapings any number) are told once, with their extent and the
/// worst value. Linear in cells and crossings, but for the sorting. @throws Error bad_argument for a machine out of its
/// ranges.
LATCHWORK_API std::vector<Finding> findings(const Grid& grid, const Machine& machine);

}  // namespace latchwork::inline v0
