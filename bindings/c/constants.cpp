// The constants of latchwork.h are the enumerators and limits of C++: a number that drifts does not compile.
#include "barrier.hpp"

#define SAME(constant, enumerator) static_assert((constant) == static_cast<int>(latchwork::enumerator))

SAME(LATCHWORK_E_INTERNAL, ErrorCode::internal);
SAME(LATCHWORK_E_NO_MEMORY, ErrorCode::no_memory);
SAME(LATCHWORK_E_BAD_ARGUMENT, ErrorCode::bad_argument);
SAME(LATCHWORK_E_OFF_GRID, ErrorCode::off_grid);
SAME(LATCHWORK_E_STITCH_TAKEN, ErrorCode::stitch_taken);
SAME(LATCHWORK_E_CROSSING_CUT, ErrorCode::crossing_cut);
SAME(LATCHWORK_E_CROSSING_OVER_STACK, ErrorCode::crossing_over_stack);
SAME(LATCHWORK_E_CROSSING_OVER_NONE, ErrorCode::crossing_over_none);
SAME(LATCHWORK_E_SIZE_MISMATCH, ErrorCode::size_mismatch);
SAME(LATCHWORK_E_TOO_LARGE, ErrorCode::too_large);
SAME(LATCHWORK_E_BAD_LETTER, ErrorCode::bad_letter);
SAME(LATCHWORK_E_BAD_SYNTAX, ErrorCode::bad_syntax);
SAME(LATCHWORK_E_BAD_ENCODING, ErrorCode::bad_encoding);
SAME(LATCHWORK_E_NEWER_VERSION, ErrorCode::newer_version);
SAME(LATCHWORK_E_WRONG_FORMAT, ErrorCode::wrong_format);
SAME(LATCHWORK_E_DUPLICATE_KEY, ErrorCode::duplicate_key);
SAME(LATCHWORK_E_MISSING_FIELD, ErrorCode::missing_field);
SAME(LATCHWORK_E_UNKNOWN_FIELD, ErrorCode::unknown_field);
SAME(LATCHWORK_E_BAD_VALUE, ErrorCode::bad_value);
SAME(LATCHWORK_E_BAD_UNIT, ErrorCode::bad_unit);
SAME(LATCHWORK_E_IO, ErrorCode::io);
SAME(LATCHWORK_E_NO_GAUGE, ErrorCode::no_gauge);
SAME(LATCHWORK_E_CANCELLED, ErrorCode::cancelled);

SAME(LATCHWORK_CELL_KNIT, Cell::knit);
SAME(LATCHWORK_CELL_PURL, Cell::purl);
SAME(LATCHWORK_CELL_TUCK, Cell::tuck);
SAME(LATCHWORK_CELL_SLIP, Cell::slip);
SAME(LATCHWORK_CELL_NONE, Cell::none);

SAME(LATCHWORK_LEAN_LEFT, Lean::left);
SAME(LATCHWORK_LEAN_RIGHT, Lean::right);

SAME(LATCHWORK_CENTRE_FRONT, Centre::front);
SAME(LATCHWORK_CENTRE_BETWEEN, Centre::between);
SAME(LATCHWORK_CENTRE_BEHIND, Centre::behind);

SAME(LATCHWORK_AXIS_LINE, Axis::line);
SAME(LATCHWORK_AXIS_STITCH, Axis::stitch);

SAME(LATCHWORK_MACHINE_CLASS_FINE, MachineClass::fine);
SAME(LATCHWORK_MACHINE_CLASS_STANDARD, MachineClass::standard);
SAME(LATCHWORK_MACHINE_CLASS_MID, MachineClass::mid);
SAME(LATCHWORK_MACHINE_CLASS_BULKY, MachineClass::bulky);

SAME(LATCHWORK_SEVERITY_ADVICE, Severity::advice);
SAME(LATCHWORK_SEVERITY_WARNING, Severity::warning);
SAME(LATCHWORK_SEVERITY_ERROR, Severity::error);

SAME(LATCHWORK_FINDING_CODE_OFF_BED, FindingCode::off_bed);
SAME(LATCHWORK_FINDING_CODE_NO_TOOL, FindingCode::no_tool);
SAME(LATCHWORK_FINDING_CODE_TIGHT_CROSSING, FindingCode::tight_crossing);
SAME(LATCHWORK_FINDING_CODE_SHORT_INTERVAL, FindingCode::short_interval);
SAME(LATCHWORK_FINDING_CODE_OPEN_CROSSING, FindingCode::open_crossing);
SAME(LATCHWORK_FINDING_CODE_OPEN_STACK, FindingCode::open_stack);
SAME(LATCHWORK_FINDING_CODE_NO_HELD_LOOP, FindingCode::no_held_loop);
SAME(LATCHWORK_FINDING_CODE_HIGH_STACK, FindingCode::high_stack);
SAME(LATCHWORK_FINDING_CODE_TUCK_AT_EDGE, FindingCode::tuck_at_edge);
SAME(LATCHWORK_FINDING_CODE_SLIP_AT_EDGE, FindingCode::slip_at_edge);
SAME(LATCHWORK_FINDING_CODE_PURL_AT_EDGE, FindingCode::purl_at_edge);
SAME(LATCHWORK_FINDING_CODE_LONG_FLOAT, FindingCode::long_float);
SAME(LATCHWORK_FINDING_CODE_TUCKS_SIDE_BY_SIDE, FindingCode::tucks_side_by_side);
SAME(LATCHWORK_FINDING_CODE_WALE_BEGINS, FindingCode::wale_begins);
SAME(LATCHWORK_FINDING_CODE_WALE_ENDS, FindingCode::wale_ends);
SAME(LATCHWORK_FINDING_CODE_OUT_OF_REACH, FindingCode::out_of_reach);
SAME(LATCHWORK_FINDING_CODE_NO_EDGE_STITCH, FindingCode::no_edge_stitch);

SAME(LATCHWORK_PLAN_STATUS_OPTIMAL, PlanStatus::optimal);
SAME(LATCHWORK_PLAN_STATUS_FEASIBLE, PlanStatus::feasible);
SAME(LATCHWORK_PLAN_STATUS_INFEASIBLE, PlanStatus::infeasible);

SAME(LATCHWORK_GROUP_NAME_LEFT, GroupName::left);
SAME(LATCHWORK_GROUP_NAME_CENTRE, GroupName::centre);
SAME(LATCHWORK_GROUP_NAME_RIGHT, GroupName::right);

SAME(LATCHWORK_MOVE_KIND_CAST_ON, MoveKind::cast_on);
SAME(LATCHWORK_MOVE_KIND_BIND_OFF, MoveKind::bind_off);
SAME(LATCHWORK_MOVE_KIND_CARRIAGE, MoveKind::carriage);
SAME(LATCHWORK_MOVE_KIND_HOLD, MoveKind::hold);
SAME(LATCHWORK_MOVE_KIND_RELEASE, MoveKind::release);
SAME(LATCHWORK_MOVE_KIND_TOOL_INTO, MoveKind::tool_into);
SAME(LATCHWORK_MOVE_KIND_DROP, MoveKind::drop);
SAME(LATCHWORK_MOVE_KIND_RUNG_BEHIND, MoveKind::rung_behind);
SAME(LATCHWORK_MOVE_KIND_RUNG_BEFORE, MoveKind::rung_before);
SAME(LATCHWORK_MOVE_KIND_RUNG_ASIDE, MoveKind::rung_aside);
SAME(LATCHWORK_MOVE_KIND_DRAW_TOWARD, MoveKind::draw_toward);
SAME(LATCHWORK_MOVE_KIND_DRAW_AWAY, MoveKind::draw_away);
SAME(LATCHWORK_MOVE_KIND_HANG, MoveKind::hang);
SAME(LATCHWORK_MOVE_KIND_LIFT, MoveKind::lift);
SAME(LATCHWORK_MOVE_KIND_PUT_BACK, MoveKind::put_back);

SAME(LATCHWORK_COUNTED_STITCHES, Counted::stitches);
SAME(LATCHWORK_COUNTED_ROWS, Counted::rows);

SAME(LATCHWORK_SIDE_RIGHT_SIDE, Side::right_side);
SAME(LATCHWORK_SIDE_OPERATOR_VIEW, Side::operator_view);

SAME(LATCHWORK_GRID_MAX_SIDE, Grid::max_side);
SAME(LATCHWORK_GRID_MAX_CELLS, Grid::max_cells);
SAME(LATCHWORK_SWATCH_MAX_MEASUREMENTS, Swatch::max_measurements);
SAME(LATCHWORK_MAX_FILE_BYTES, max_file_bytes);
SAME(LATCHWORK_MAX_SWATCH_BYTES, max_swatch_bytes);
