// The constants of latchwork.h are the enumerators and limits of C++: a number that drifts does not compile.
#include <cstddef>

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

SAME(LATCHWORK_EFFORT_TERM_STOP, EffortTerm::stop);
SAME(LATCHWORK_EFFORT_TERM_BATCH, EffortTerm::batch);
SAME(LATCHWORK_EFFORT_TERM_DROP, EffortTerm::drop);
SAME(LATCHWORK_EFFORT_TERM_RUNG_KNIT, EffortTerm::rung_knit);
SAME(LATCHWORK_EFFORT_TERM_RUNG_PURL, EffortTerm::rung_purl);
SAME(LATCHWORK_EFFORT_TERM_RUNG_TUCK, EffortTerm::rung_tuck);
SAME(LATCHWORK_EFFORT_TERM_RUNG_SLIP, EffortTerm::rung_slip);
SAME(LATCHWORK_EFFORT_TERM_CROSSING, EffortTerm::crossing);
SAME(LATCHWORK_EFFORT_TERM_CROSSING_STITCH, EffortTerm::crossing_stitch);
SAME(LATCHWORK_EFFORT_TERM_HOLD, EffortTerm::hold);
SAME(LATCHWORK_EFFORT_TERM_SHAPING, EffortTerm::shaping);
SAME(LATCHWORK_EFFORT_TERM_ROW, EffortTerm::row);

SAME(LATCHWORK_FIT_BOUND_WIDTH, FitBound::width);
SAME(LATCHWORK_FIT_BOUND_HEIGHT, FitBound::height);
SAME(LATCHWORK_FIT_BOUND_TIMES, FitBound::times);
SAME(LATCHWORK_FIT_BOUND_EDGE_COLUMNS, FitBound::edge_columns);
SAME(LATCHWORK_FIT_BOUND_ROWS, FitBound::rows);
SAME(LATCHWORK_FIT_BOUND_PANELS, FitBound::panels);
SAME(LATCHWORK_FIT_BOUND_NEEDLES, FitBound::needles);
SAME(LATCHWORK_TERM_STATE_FITTED, TermState::fitted);
SAME(LATCHWORK_TERM_STATE_AT_ZERO, TermState::at_zero);
SAME(LATCHWORK_TERM_STATE_TIED, TermState::tied);
SAME(LATCHWORK_TERM_STATE_NO_DATA, TermState::no_data);

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
SAME(LATCHWORK_FINDING_CODE_CARRIAGE_SIDE, FindingCode::carriage_side);
SAME(LATCHWORK_FINDING_CODE_STOPS_TOO_NEAR, FindingCode::stops_too_near);
SAME(LATCHWORK_FINDING_CODE_TOO_DEEP, FindingCode::too_deep);
SAME(LATCHWORK_FINDING_CODE_OFF_RHYTHM, FindingCode::off_rhythm);
SAME(LATCHWORK_FINDING_CODE_TOO_MANY_KINDS, FindingCode::too_many_kinds);
SAME(LATCHWORK_FINDING_CODE_ROW_CLOSED, FindingCode::row_closed);
SAME(LATCHWORK_FINDING_CODE_FEW_PLACES, FindingCode::few_places);
SAME(LATCHWORK_FINDING_CODE_SHORT_MEASURE, FindingCode::short_measure);
SAME(LATCHWORK_FINDING_CODE_ODD_ONE_OUT, FindingCode::odd_one_out);
SAME(LATCHWORK_FINDING_CODE_HALF_MEASURED, FindingCode::half_measured);
SAME(LATCHWORK_FINDING_CODE_NO_SWATCH, FindingCode::no_swatch);
SAME(LATCHWORK_FINDING_CODE_BORROWED_GAUGE, FindingCode::borrowed_gauge);
SAME(LATCHWORK_FINDING_CODE_MIXED_STATES, FindingCode::mixed_states);
SAME(LATCHWORK_FINDING_CODE_UNKNOWN_SPREAD, FindingCode::unknown_spread);
SAME(LATCHWORK_FINDING_CODE_UNLIKE_HEIGHTS, FindingCode::unlike_heights);
SAME(LATCHWORK_FINDING_CODE_UNLIKE_WIDTHS, FindingCode::unlike_widths);
SAME(LATCHWORK_FINDING_CODE_CROSSING_CUT, FindingCode::crossing_cut);
SAME(LATCHWORK_FINDING_CODE_STACK_CUT, FindingCode::stack_cut);
SAME(LATCHWORK_FINDING_CODE_COLUMN_CUT, FindingCode::column_cut);
SAME(LATCHWORK_FINDING_CODE_NO_STITCH, FindingCode::no_stitch);
SAME(LATCHWORK_FINDING_CODE_TWO_PIECES, FindingCode::two_pieces);
SAME(LATCHWORK_FINDING_CODE_YARN_AWAY, FindingCode::yarn_away);
SAME(LATCHWORK_FINDING_CODE_UNLIKE_SWATCHES, FindingCode::unlike_swatches);
SAME(LATCHWORK_FINDING_CODE_NARROW_TEXTURE, FindingCode::narrow_texture);

SAME(LATCHWORK_CONDITION_CARRIAGE_RIGHT_ONLY, Condition::carriage_right_only);
SAME(LATCHWORK_CONDITION_ROWS_APART, Condition::rows_apart);
SAME(LATCHWORK_CONDITION_MAX_DEPTH, Condition::max_depth);
SAME(LATCHWORK_CONDITION_MAX_KINDS, Condition::max_kinds);
SAME(LATCHWORK_CONDITION_RHYTHMS, Condition::rhythms);
SAME(LATCHWORK_CONDITION_CLOSED_ROWS, Condition::closed_rows);
SAME(LATCHWORK_CONDITION_ALL, Condition::all);

SAME(LATCHWORK_STOP_CAUSE_CROSSING, StopCause::crossing);
SAME(LATCHWORK_STOP_CAUSE_SHAPING, StopCause::shaping);
SAME(LATCHWORK_STOP_CAUSE_HAND_CELLS, StopCause::hand_cells);
SAME(LATCHWORK_STOP_CAUSE_SAVING, StopCause::saving);
SAME(LATCHWORK_STOP_CAUSE_UNKNOWN, StopCause::unknown);

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

SAME(LATCHWORK_LENGTH_UNIT_MM, LengthUnit::mm);
SAME(LATCHWORK_LENGTH_UNIT_CM, LengthUnit::cm);
SAME(LATCHWORK_LENGTH_UNIT_M, LengthUnit::m);
SAME(LATCHWORK_LENGTH_UNIT_INCH, LengthUnit::inch);
SAME(LATCHWORK_LENGTH_UNIT_FOOT, LengthUnit::foot);
SAME(LATCHWORK_LENGTH_UNIT_YARD, LengthUnit::yard);

SAME(LATCHWORK_WEIGHT_UNIT_GRAM, WeightUnit::gram);
SAME(LATCHWORK_WEIGHT_UNIT_KILOGRAM, WeightUnit::kilogram);
SAME(LATCHWORK_WEIGHT_UNIT_OUNCE, WeightUnit::ounce);
SAME(LATCHWORK_WEIGHT_UNIT_POUND, WeightUnit::pound);
SAME(LATCHWORK_WEIGHT_UNIT_GRAIN, WeightUnit::grain);

SAME(LATCHWORK_YARN_SYSTEM_TEX, YarnSystem::tex);
SAME(LATCHWORK_YARN_SYSTEM_DTEX, YarnSystem::dtex);
SAME(LATCHWORK_YARN_SYSTEM_DENIER, YarnSystem::denier);
SAME(LATCHWORK_YARN_SYSTEM_METRIC, YarnSystem::metric);
SAME(LATCHWORK_YARN_SYSTEM_COTTON, YarnSystem::cotton);
SAME(LATCHWORK_YARN_SYSTEM_SPUN_SILK, YarnSystem::spun_silk);
SAME(LATCHWORK_YARN_SYSTEM_WORSTED, YarnSystem::worsted);
SAME(LATCHWORK_YARN_SYSTEM_LINEN, YarnSystem::linen);
SAME(LATCHWORK_YARN_SYSTEM_WOOLLEN_CUT, YarnSystem::woollen_cut);
SAME(LATCHWORK_YARN_SYSTEM_WOOLLEN_RUN, YarnSystem::woollen_run);
SAME(LATCHWORK_YARN_SYSTEM_YORKSHIRE, YarnSystem::yorkshire);
SAME(LATCHWORK_YARN_SYSTEM_GALASHIELS, YarnSystem::galashiels);
SAME(LATCHWORK_YARN_SYSTEM_WEST_OF_ENGLAND, YarnSystem::west_of_england);
SAME(LATCHWORK_YARN_SYSTEM_JUTE, YarnSystem::jute);
SAME(LATCHWORK_YARN_SYSTEM_YARDS_PER_POUND, YarnSystem::yards_per_pound);
SAME(LATCHWORK_YARN_SYSTEM_METRES_PER_100G, YarnSystem::metres_per_100g);

SAME(LATCHWORK_CLOTH_STATE_OFF_MACHINE, ClothState::off_machine);
SAME(LATCHWORK_CLOTH_STATE_RESTED, ClothState::rested);
SAME(LATCHWORK_CLOTH_STATE_WASHED, ClothState::washed);

SAME(LATCHWORK_PLAIN_STATE_DRY_RELAXED, PlainState::dry_relaxed);
SAME(LATCHWORK_PLAIN_STATE_WET_RELAXED, PlainState::wet_relaxed);
SAME(LATCHWORK_PLAIN_STATE_FULLY_RELAXED, PlainState::fully_relaxed);

SAME(LATCHWORK_YARN_ROUTE_WEIGHED_AREA, YarnRoute::weighed_area);
SAME(LATCHWORK_YARN_ROUTE_WEIGHED_STITCHES, YarnRoute::weighed_stitches);
SAME(LATCHWORK_YARN_ROUTE_MEASURED_LOOPS, YarnRoute::measured_loops);
SAME(LATCHWORK_YARN_ROUTE_PLAIN_GEOMETRY, YarnRoute::plain_geometry);

SAME(LATCHWORK_SIZE_OF_FINISHED, SizeOf::finished);
SAME(LATCHWORK_SIZE_OF_FILLING, SizeOf::filling);
SAME(LATCHWORK_SIZE_OF_BODY, SizeOf::body);

SAME(LATCHWORK_CLOSURE_KIND_OPEN, ClosureKind::open);
SAME(LATCHWORK_CLOSURE_KIND_OVERLAP, ClosureKind::overlap);
SAME(LATCHWORK_CLOSURE_KIND_SEAM, ClosureKind::seam);
SAME(LATCHWORK_CLOSURE_KIND_BUTTONS, ClosureKind::buttons);

SAME(LATCHWORK_EDGE_USE_FREE, EdgeUse::free);
SAME(LATCHWORK_EDGE_USE_SEAMED, EdgeUse::seamed);
SAME(LATCHWORK_EDGE_USE_CLOSURE, EdgeUse::closure);

SAME(LATCHWORK_SOURCE_MARK_PUBLISHED, SourceMark::published);
SAME(LATCHWORK_SOURCE_MARK_FROM_MEMORY, SourceMark::from_memory);
SAME(LATCHWORK_SOURCE_MARK_PRACTICE, SourceMark::practice);
SAME(LATCHWORK_ARTICLE_MAX_ITEMS, Article::max_items);

SAME(LATCHWORK_COUNTED_STITCHES, Counted::stitches);
SAME(LATCHWORK_COUNTED_ROWS, Counted::rows);

SAME(LATCHWORK_SPACING_ENDS_IN_THE_ROUND, SpacingEnds::in_the_round);
SAME(LATCHWORK_SPACING_ENDS_FLAT, SpacingEnds::flat);
SAME(LATCHWORK_SPACING_ENDS_HALF_ENDS, SpacingEnds::half_ends);
SAME(LATCHWORK_MAX_SPACING, max_spacing);
SAME(LATCHWORK_MAX_SEAM_STITCHES, max_seam_stitches);

SAME(LATCHWORK_MEASURE_SIDE_BOTTOM, MeasureSide::bottom);
SAME(LATCHWORK_MEASURE_SIDE_TOP, MeasureSide::top);
SAME(LATCHWORK_MEASURE_SIDE_LEFT, MeasureSide::left);
SAME(LATCHWORK_MEASURE_SIDE_RIGHT, MeasureSide::right);
SAME(LATCHWORK_SCHEMATIC_MAX_PIECES, Schematic::max_pieces);
SAME(LATCHWORK_SCHEMATIC_MAX_SIZES, Schematic::max_sizes);
SAME(LATCHWORK_SCHEMATIC_MAX_POINTS, Schematic::max_points);
SAME(LATCHWORK_SCHEMATIC_MAX_MEASURES, Schematic::max_measures);

SAME(LATCHWORK_EDGE_LINE_STRAIGHT, EdgeLine::straight);
SAME(LATCHWORK_EDGE_LINE_CURVE, EdgeLine::curve);
SAME(LATCHWORK_CUT_WORK_REFUSE, CutWork::refuse);
SAME(LATCHWORK_CUT_WORK_KNIT, CutWork::knit);
SAME(LATCHWORK_MAX_EDGE_ITEMS, max_edge_items);

SAME(LATCHWORK_SIDE_RIGHT_SIDE, Side::right_side);
SAME(LATCHWORK_SIDE_OPERATOR_VIEW, Side::operator_view);
SAME(LATCHWORK_BLANK_COMMONER, Blank::commoner);
SAME(LATCHWORK_BLANK_KNIT, Blank::knit);
SAME(LATCHWORK_BLANK_PURL, Blank::purl);

SAME(LATCHWORK_GRID_MAX_SIDE, Grid::max_side);
SAME(LATCHWORK_GRID_MAX_CELLS, Grid::max_cells);
SAME(LATCHWORK_SWATCH_MAX_MEASUREMENTS, Swatch::max_measurements);
SAME(LATCHWORK_FIT_REQUEST_MAX_GROUPS, FitRequest::max_groups);
SAME(LATCHWORK_ARTICLE_REQUEST_MAX_PIECES, ArticleRequest::max_pieces);
SAME(LATCHWORK_ARTICLE_REQUEST_MAX_SEAM_MS_PER_M, ArticleRequest::max_seam_ms_per_m);
SAME(LATCHWORK_GRADE_REQUEST_MAX_SIZES, GradeRequest::max_sizes);
SAME(LATCHWORK_FIT_REQUEST_MAX_PANELS, FitRequest::max_panels);
SAME(LATCHWORK_FIT_REQUEST_MAX_CANDIDATES, FitRequest::max_candidates);
SAME(LATCHWORK_USUAL_PLACES, usual_places);
SAME(LATCHWORK_USUAL_LENGTH_MM, usual_length_mm);
SAME(LATCHWORK_MAX_FILE_BYTES, max_file_bytes);
SAME(LATCHWORK_MAX_SWATCH_BYTES, max_swatch_bytes);
SAME(LATCHWORK_TIMINGS_MAX_SPELLS, Timings::max_spells);
SAME(LATCHWORK_MAX_SPELL_COUNT, max_spell_count);
SAME(LATCHWORK_MAX_SPELL_MS, max_spell_ms);
SAME(LATCHWORK_MAX_TIMINGS_BYTES, max_timings_bytes);
SAME(LATCHWORK_YARN_REQUEST_MAX_YARNS, YarnRequest::max_yarns);
SAME(LATCHWORK_YARN_REQUEST_MAX_ITEMS, YarnRequest::max_items);
SAME(LATCHWORK_MAX_QUANTITY_BYTES, max_quantity_bytes);

// A struct that can grow must not end in padding: a field put there would read what an older caller left in it.
template <class T>
constexpr std::size_t bytes_of = sizeof(T);
#define GROWS(type, last) \
  static_assert(sizeof(void*) != 8 || offsetof(type, last) + bytes_of<decltype(type::last)> == sizeof(type), #type)

GROWS(latchwork_error, character);
GROWS(latchwork_panel_parts, reserved);
GROWS(latchwork_machine, name);
GROWS(latchwork_effort, row);
GROWS(latchwork_finding, suggestion);
GROWS(latchwork_hand_work, carriage_ms);
GROWS(latchwork_progress, share);
GROWS(latchwork_conditions, closed_rows_count);
GROWS(latchwork_plan_options, conditions);
GROWS(latchwork_two_rhythms, reforms_first);
GROWS(latchwork_period, stops);
GROWS(latchwork_work_times, total_ms);
GROWS(latchwork_session_options, rest_ms);
GROWS(latchwork_certificate_check, message);
GROWS(latchwork_bed, columns);
GROWS(latchwork_fault, message);
GROWS(latchwork_watch_options, user_data);
GROWS(latchwork_verification, needless_message);
GROWS(latchwork_gauge, rows_freedom);
GROWS(latchwork_size_options, level);
GROWS(latchwork_size, bind_off);
GROWS(latchwork_fit_request, substitute_count);
GROWS(latchwork_fit_options, user_data);
GROWS(latchwork_article_request, seam_ms_per_m);
GROWS(latchwork_spacing, rest);
GROWS(latchwork_edge_shape, reserved);
GROWS(latchwork_outline, row_count);
GROWS(latchwork_shape_options, cut);
GROWS(latchwork_schematic, note_count);
GROWS(latchwork_yarn_request, allowance);
GROWS(latchwork_chart_options, reserved);
