/* Spread events, shaped panels and schematics, against values worked out by hand. */
#include <stdlib.h>
#include <string.h>

#include "program.h"

static void events_are_spread_evenly(void) {
  /* K. TenDyke, 2014 (check value EV-02): 11 increase rows in 108; woolpackyarn.com (EV-04): 4 in 51 stitches. */
  latchwork_error error = LATCHWORK_ERROR_INIT;
  latchwork_spacing spacing = LATCHWORK_SPACING_INIT;
  latchwork_edge_event events[3];
  int32_t gaps[5], positions[4], sum = 0;
  size_t i, needed = 0;
  char text[128];
  checking = "spacing";
  OK(latchwork_spaced_evenly(108, 11, LATCHWORK_SPACING_ENDS_IN_THE_ROUND, 1, &spacing, &error));
  CHECK(spacing.length == 108 && spacing.events == 11 && spacing.step == 1 && spacing.rest == 0);
  CHECK(spacing.every == 9 && spacing.times == 2 && spacing.longer_times == 9);
  OK(latchwork_spacing_text(&spacing, LATCHWORK_COUNTED_ROWS, text, sizeof text, NULL, &error));
  CHECK(strcmp(text, "every 9th row 2 times, every 10th row 9 times") == 0);
  OK(latchwork_spaced_evenly(51, 4, LATCHWORK_SPACING_ENDS_HALF_ENDS, 1, &spacing, &error));
  OK(latchwork_spacing_positions(&spacing, positions, 4, &needed, &error));
  CHECK(needed == 4 && positions[0] == 6 && positions[1] == 19 && positions[2] == 32 && positions[3] == 45);
  OK(latchwork_spacing_gaps(&spacing, gaps, 5, &needed, &error));
  for (i = 0; i < needed; ++i) sum += gaps[i];
  CHECK(needed == 5 && sum == 51 && gaps[0] == 6);
  /* Rows 3, 6 and 10 of ten: gaps of 3, 3 and 4. */
  OK(latchwork_spaced_evenly(10, 3, LATCHWORK_SPACING_ENDS_IN_THE_ROUND, 1, &spacing, &error));
  OK(latchwork_spacing_edge_events(&spacing, -1, 20, events, 3, &needed, &error));
  CHECK(needed == 2 && events[0].row == 23 && events[0].stitches == -1 && events[0].every == 3 && events[0].times == 2);
  CHECK(events[1].row == 30 && events[1].times == 1);
  CHECK(latchwork_spacing_edge_events(&spacing, 0, 20, events, 3, &needed, &error) == LATCHWORK_E_BAD_ARGUMENT);
  CHECK(strcmp(error.field, "stitches") == 0);
  OK(latchwork_spaced_evenly(51, 4, LATCHWORK_SPACING_ENDS_HALF_ENDS, 1, &spacing, &error));
  CHECK(latchwork_spaced_evenly(10, 10, LATCHWORK_SPACING_ENDS_FLAT, 1, &spacing, &error) == LATCHWORK_E_BAD_ARGUMENT);
  CHECK(strcmp(error.field, "events") == 0 && spacing.length == 51);
}

static void panels_are_shaped(void) {
  /* One stitch at each side after rows 2 and 4; a 2/2 cross that the left edge cuts by one stitch. */
  const latchwork_edge_event event = {2, 1, 2, 2};
  const latchwork_measurement measurements[2] = {{"s", "middle", NULL, 20.0, 100.0, LATCHWORK_COUNTED_STITCHES, LATCHWORK_CLOTH_STATE_RESTED, 0},
                                                 {"s", "middle", NULL, 30.0, 100.0, LATCHWORK_COUNTED_ROWS, LATCHWORK_CLOTH_STATE_RESTED, 0}};
  latchwork_error error = LATCHWORK_ERROR_INIT;
  latchwork_edge_shape edge = LATCHWORK_EDGE_SHAPE_INIT;
  latchwork_outline outline = LATCHWORK_OUTLINE_INIT;
  latchwork_shape_options options = LATCHWORK_SHAPE_OPTIONS_INIT;
  latchwork_size size = LATCHWORK_SIZE_INIT;
  latchwork_size_options sewn = LATCHWORK_SIZE_OPTIONS_INIT;
  latchwork_finding finding = LATCHWORK_FINDING_INIT;
  latchwork_machine machine = LATCHWORK_MACHINE_INIT;
  latchwork_row_span spans[6], back[6];
  latchwork_shaping_step steps[2];
  latchwork_grid *grid = grid_of("kkkkkkkk\nkkkkkkkk\nkkkkkkkk\nkkkkkkkk\nx 0 2/2 R\nkkkkkkkk\nkkkkkkkk\n");
  latchwork_grid *cloth = NULL;
  latchwork_strip *strip = NULL;
  latchwork_panel *panel = NULL, *made = NULL;
  latchwork_findings *findings = NULL;
  latchwork_swatch *swatch = NULL;
  size_t needed = 0, count = 0;
  char text[256];
  checking = "shaping";
  edge.events = &event;
  edge.event_count = 1;
  OK(latchwork_outlined(6, 8, &edge, &edge, 1, spans, 6, &needed, &error));
  CHECK(needed == 6 && spans[1].first == 0 && spans[2].first == 1 && spans[5].first == 2 && spans[5].last == 5);
  outline.rows = spans;
  outline.row_count = 6;
  OK(latchwork_outline_shaping_steps(&outline, steps, 2, &needed, &error));
  CHECK(needed == 2 && steps[1].row == 4 && steps[1].left == 1 && steps[1].right == 1);
  OK(latchwork_outline_text(&outline, text, sizeof text, NULL, &error));
  CHECK(strstr(text, "RC 2: decrease 1 at each side, then every 2nd row 1 time.") != NULL);
  OK(latchwork_strip_create("s", "s", grid, &strip, &error));
  OK(latchwork_panel_create("p", strip, &panel, &error));
  OK(latchwork_grid_shape_findings(grid, &outline, NULL, &findings, &error));
  OK(latchwork_findings_count(findings, &count, &error));
  OK(latchwork_findings_get(findings, 0, &finding, &error));
  CHECK(count == 1 && finding.code == LATCHWORK_FINDING_CODE_CROSSING_CUT && finding.row == 2 && finding.value == 1);
  CHECK(latchwork_panel_shaped(panel, &outline, NULL, &made, &error) == LATCHWORK_E_CROSSING_CUT);
  CHECK(error.row == 2 && error.column == 0 && made == NULL);
  options.cut = LATCHWORK_CUT_WORK_KNIT;
  options.edge_stitches = -1;
  OK(latchwork_panel_shaped(panel, &outline, &options, &made, &error));
  OK(latchwork_panel_grid(made, &cloth, &error));
  OK(latchwork_grid_outline_of(cloth, back, 6, &needed, &error));
  CHECK(needed == 6 && memcmp(back, spans, sizeof back) == 0);
  OK(latchwork_swatch_create(measurements, 2, &swatch, &error));
  OK(latchwork_panel_size(made, swatch, NULL, &size, &error));
  CHECK(size.cast_on.columns == 8 && size.bind_off.columns == 4 && size.widest_row == 1 && size.widest_columns == 8);
  CHECK(size.cast_on.width_mm > 39.999 && size.cast_on.width_mm < 40.001 && size.bind_off.width_mm < 20.001);
  CHECK(size.width_mm == size.cast_on.width_mm && size.bind_off.row == 6 && size.bind_off.margin_mm == 0.0);
  OK(latchwork_size_options_default(&sewn, &error));
  sewn.seam_left = sewn.seam_right = 2.5; /* five of the four stitches that the last rows have */
  OK(latchwork_panel_size(made, swatch, &sewn, &size, &error));
  CHECK(size.width_mm > 14.999 && size.width_mm < 15.001 && size.bind_off.width_mm == 0.0);
  back[0].first = back[1].first = 0;
  back[0].last = back[1].last = 3;
  back[2].first = back[3].first = back[4].first = back[5].first = 4;
  back[2].last = back[3].last = back[4].last = back[5].last = 7;
  outline.rows = back; /* rows 1 and 2 beside the others: two pieces */
  CHECK(latchwork_outline_text(&outline, text, sizeof text, NULL, &error) == LATCHWORK_E_BAD_ARGUMENT);
  CHECK(strcmp(error.field, "outline") == 0 && error.row == 3);
  outline.rows = spans;
  latchwork_findings_destroy(findings);
  latchwork_grid_destroy(cloth);
  cloth = grid_of("..kk\nkk..\n");
  OK(latchwork_machine_generic(LATCHWORK_MACHINE_CLASS_STANDARD, &machine, &error));
  OK(latchwork_grid_findings(cloth, &machine, &findings, &error));
  OK(latchwork_findings_get(findings, 0, &finding, &error));
  CHECK(finding.code == LATCHWORK_FINDING_CODE_TWO_PIECES && finding.severity == LATCHWORK_SEVERITY_ERROR);
  CHECK(finding.row == 2 && finding.column == 2 && finding.last_column == 3 && finding.limit == 1);
  CHECK(strcmp(latchwork_finding_name(finding.code), "two_pieces") == 0);
  options.edge_stitches = -2;
  latchwork_panel_destroy(made);
  CHECK(latchwork_panel_shaped(panel, &outline, &options, &made, &error) == LATCHWORK_E_BAD_ARGUMENT);
  CHECK(strcmp(error.field, "edge_stitches") == 0);
  latchwork_swatch_destroy(swatch);
  latchwork_findings_destroy(findings);
  latchwork_panel_destroy(panel);
  latchwork_strip_destroy(strip);
  latchwork_grid_destroy(cloth);
  latchwork_grid_destroy(grid);
}

static void a_piece_becomes_a_shape(void) {
  /* A stitch is 5 mm wide, a row 3.333 mm high. From 60 mm to 100 mm over 30 of 60 rows: four stitches a side. */
  const latchwork_measurement measurements[2] = {{"stockinette", "middle", NULL, 20.0, 100.0, LATCHWORK_COUNTED_STITCHES, LATCHWORK_CLOTH_STATE_RESTED, 0},
                                                 {"stockinette", "middle", NULL, 30.0, 100.0, LATCHWORK_COUNTED_ROWS, LATCHWORK_CLOTH_STATE_RESTED, 0}};
  const latchwork_target_point widest = {100.0, 100.0, 100.0, 100.0};
  latchwork_error error = LATCHWORK_ERROR_INIT;
  latchwork_target_piece piece = {0};
  latchwork_outline outline = LATCHWORK_OUTLINE_INIT;
  latchwork_size_options options = LATCHWORK_SIZE_OPTIONS_INIT;
  latchwork_row_span spans[60];
  latchwork_shaping_step steps[4];
  latchwork_strip *strip = NULL, *filled = NULL;
  latchwork_panel *panel = NULL, *made = NULL;
  latchwork_swatch *swatch = NULL;
  size_t needed = 0;
  checking = "piece outline";
  OK(latchwork_stockinette(20, &strip, &error));
  OK(latchwork_strip_filled_up(strip, 60, &filled, &error));
  OK(latchwork_panel_create("sleeve", filled, &panel, &error));
  OK(latchwork_swatch_create(measurements, 2, &swatch, &error));
  piece.name = "sleeve";
  piece.count = 1;
  piece.width_least_mm = piece.width_greatest_mm = 60.0;
  piece.length_least_mm = piece.length_greatest_mm = 200.0;
  OK(latchwork_piece_outline(&piece, &widest, 1, panel, swatch, NULL, 2, spans, 60, &needed, &error));
  CHECK(needed == 60 && spans[0].first == 4 && spans[0].last == 15 && spans[59].first == 0 && spans[59].last == 19);
  outline.rows = spans;
  outline.row_count = needed;
  OK(latchwork_outline_shaping_steps(&outline, steps, 4, &needed, &error));
  /* The line is half a stitch further out after 3.75, 11.25, 18.75 and 26.25 rows; rows go by two. */
  CHECK(needed == 4 && steps[0].row == 4 && steps[1].row == 12 && steps[2].row == 18 && steps[3].row == 26);
  CHECK(steps[0].left == -1 && steps[0].right == -1);
  OK(latchwork_panel_shaped(panel, &outline, NULL, &made, &error));
  /* A seam at the left takes a stitch of each row, where the piece is sewn. */
  OK(latchwork_size_options_default(&options, &error));
  options.seam_left = 1.0;
  piece.left = LATCHWORK_EDGE_USE_SEAMED;
  OK(latchwork_piece_outline(&piece, NULL, 0, panel, swatch, &options, 1, spans, 60, &needed, &error));
  CHECK(spans[9].first == 4 && spans[9].last == 15); /* 35 of 95 mm: 3.5 stitches a side, halves out */
  CHECK(latchwork_piece_outline(&piece, &widest, 1, panel, swatch, &options, 0, spans, 60, &needed, &error) ==
        LATCHWORK_E_BAD_ARGUMENT);
  CHECK(strcmp(error.field, "step") == 0);
  piece.width_least_mm = piece.width_greatest_mm = 120.0;
  CHECK(latchwork_piece_outline(&piece, NULL, 0, panel, swatch, NULL, 1, spans, 60, &needed, &error) ==
        LATCHWORK_E_BAD_ARGUMENT);
  CHECK(strcmp(error.field, "piece.width_least_mm") == 0 && error.row == 1);
  latchwork_panel_destroy(made);
  latchwork_swatch_destroy(swatch);
  latchwork_panel_destroy(panel);
  latchwork_strip_destroy(filled);
  latchwork_strip_destroy(strip);
}

static void a_shaped_piece_is_fitted_and_cut(void) {
  const latchwork_measurement measurements[2] = {{"stockinette", "middle", NULL, 20.0, 100.0, LATCHWORK_COUNTED_STITCHES, LATCHWORK_CLOTH_STATE_RESTED, 0},
                                                 {"stockinette", "middle", NULL, 30.0, 100.0, LATCHWORK_COUNTED_ROWS, LATCHWORK_CLOTH_STATE_RESTED, 0}};
  const latchwork_target_point widest = {100.0, 100.0, 100.0, 100.0};
  latchwork_error error = LATCHWORK_ERROR_INIT;
  latchwork_target_piece piece = {0};
  latchwork_fit_request design = LATCHWORK_FIT_REQUEST_INIT;
  latchwork_fit_group group = LATCHWORK_FIT_GROUP_INIT;
  latchwork_fit_candidate candidate = {0};
  latchwork_row_span spans[60];
  const latchwork_strip *strips[1];
  latchwork_strip *strip = NULL, *edge = NULL;
  latchwork_panel *panel = NULL, *other = NULL;
  latchwork_grid *grid = NULL;
  latchwork_swatch *swatch = NULL;
  size_t needed = 0;
  checking = "fitted piece";
  OK(latchwork_stockinette(4, &strip, &error));
  OK(latchwork_stockinette(1, &edge, &error));
  OK(latchwork_swatch_create(measurements, 2, &swatch, &error));
  strips[0] = strip;
  group.strips = strips;
  group.strip_count = 1;
  OK(latchwork_fit_request_default(&design, &error));
  design.groups = &group;
  design.group_count = 1;
  design.edge = edge;
  piece.name = "sleeve";
  piece.count = 1;
  piece.width_least_mm = piece.width_greatest_mm = 60.0;
  piece.length_least_mm = piece.length_greatest_mm = 200.0;
  candidate.panels = 1;
  candidate.times[0] = 1;
  candidate.edge_columns = 8;
  candidate.columns = 20;
  candidate.rows = 60;
  candidate.start_row = 1;
  OK(latchwork_fitted_piece(&piece, &widest, 1, &design, &candidate, swatch, 0, 2, NULL, &panel, &error));
  OK(latchwork_panel_grid(panel, &grid, &error));
  OK(latchwork_grid_outline_of(grid, spans, 60, &needed, &error));
  /* As in a_piece_becomes_a_shape: from 60 mm to 100 mm by rows of 5 mm stitches. */
  CHECK(needed == 60 && spans[0].first == 4 && spans[0].last == 15 && spans[59].first == 0 && spans[59].last == 19);
  CHECK(latchwork_fitted_piece(&piece, &widest, 1, &design, &candidate, swatch, 1, 2, NULL, &other, &error) ==
        LATCHWORK_E_BAD_ARGUMENT);
  CHECK(strcmp(error.field, "panel") == 0 && other == NULL);
  latchwork_grid_destroy(grid);
  latchwork_panel_destroy(panel);
  latchwork_swatch_destroy(swatch);
  latchwork_strip_destroy(edge);
  latchwork_strip_destroy(strip);
}

static void a_bind_off_needs_the_yarn(void) {
  /* Common practice, no source. After row 2 the carriage stands at the operator's right, the left of the right side. */
  latchwork_error error = LATCHWORK_ERROR_INIT;
  latchwork_finding finding = LATCHWORK_FINDING_INIT;
  latchwork_machine machine = LATCHWORK_MACHINE_INIT;
  latchwork_grid *grid = grid_of(".kkkkk..\n.kkkkkkk\nkkkkkkkk\nkkkkkkkk\n");
  latchwork_findings *findings = NULL;
  size_t i, count = 0, away = 0;
  checking = "yarn away";
  OK(latchwork_machine_generic(LATCHWORK_MACHINE_CLASS_STANDARD, &machine, &error));
  OK(latchwork_grid_findings(grid, &machine, &findings, &error));
  OK(latchwork_findings_count(findings, &count, &error));
  for (i = 0; i < count; ++i) {
    OK(latchwork_findings_get(findings, i, &finding, &error));
    if (finding.code == LATCHWORK_FINDING_CODE_YARN_AWAY) ++away;
  }
  CHECK(away == 0); /* two after row 3, on the carriage's left, are at the yarn */
  latchwork_findings_destroy(findings);
  findings = NULL;
  machine.carriage_starts_right = 0;
  OK(latchwork_grid_findings(grid, &machine, &findings, &error));
  OK(latchwork_findings_count(findings, &count, &error));
  for (i = 0; i < count; ++i) {
    OK(latchwork_findings_get(findings, i, &finding, &error));
    if (finding.code != LATCHWORK_FINDING_CODE_YARN_AWAY) continue;
    ++away;
    CHECK(finding.row == 3 && finding.column == 6 && finding.last_column == 7 && finding.value == 2);
  }
  CHECK(away == 1 && strcmp(latchwork_finding_name(LATCHWORK_FINDING_CODE_YARN_AWAY), "yarn_away") == 0);
  latchwork_findings_destroy(findings);
  latchwork_grid_destroy(grid);
}

static void a_family_is_drawn_and_says_what_is_borrowed(void) {
  /* 5 and 6 groups of ten stitches of 5 mm; 60 and 66 rows of 3.333 mm. The motif is measured by the gauge of another. */
  const latchwork_measurement measurements[2] = {{"plain", "middle", NULL, 20.0, 100.0, LATCHWORK_COUNTED_STITCHES, LATCHWORK_CLOTH_STATE_RESTED, 0},
                                                 {"plain", "middle", NULL, 30.0, 100.0, LATCHWORK_COUNTED_ROWS, LATCHWORK_CLOTH_STATE_RESTED, 0}};
  const latchwork_grade_size sizes[2] = {{"S", 250.0, 0.0, 200.0, 0.0}, {"M", 300.0, 0.0, 220.0, 0.0}};
  const latchwork_substitute substitute = {"moss", "plain"};
  const latchwork_outline_point corners[4] = {{0.0, 0.0}, {200.0, 0.0}, {200.0, 100.0}, {0.0, 100.0}};
  const latchwork_outline_point larger[4] = {{-20.0, 0.0}, {220.0, 0.0}, {220.0, 120.0}, {-20.0, 120.0}};
  const latchwork_schematic_outline other = {larger, 4};
  const char *names[2] = {"small", "large"}, *note = "By eye.";
  latchwork_error error = LATCHWORK_ERROR_INIT;
  latchwork_fit_request design = LATCHWORK_FIT_REQUEST_INIT;
  latchwork_size_options options = LATCHWORK_SIZE_OPTIONS_INIT;
  latchwork_schematic schematic = LATCHWORK_SCHEMATIC_INIT;
  latchwork_schematic_piece piece = {0};
  latchwork_fit_group group = LATCHWORK_FIT_GROUP_INIT;
  latchwork_grid *grid = NULL;
  latchwork_strip *strip = NULL;
  const latchwork_strip *strips[1];
  latchwork_panel *panel = NULL;
  latchwork_swatch *swatch = NULL;
  latchwork_grading *grading = NULL;
  char *text, notes[256];
  size_t needed = 0;
  checking = "family";
  OK(latchwork_grid_create(1, 10, &grid, &error));
  OK(latchwork_strip_create("motif", "moss", grid, &strip, &error));
  OK(latchwork_swatch_create(measurements, 2, &swatch, &error));
  OK(latchwork_fit_request_default(&design, &error));
  strips[0] = strip;
  group.strips = strips;
  group.strip_count = 1;
  group.least = 1;
  group.most = 20;
  OK(latchwork_fit_request_default(&design, &error));
  design.groups = &group;
  design.group_count = 1;
  design.substitutes = &substitute;
  design.substitute_count = 1;
  OK(latchwork_grade(&design, sizes, 2, swatch, NULL, &grading, &error));
  OK(latchwork_graded_schematic_svg(&design, sizes, 2, grading, swatch, "pads", LATCHWORK_LENGTH_UNIT_CM, NULL, 0, &needed, &error));
  text = malloc(needed);
  CHECK(text != NULL);
  OK(latchwork_graded_schematic_svg(&design, sizes, 2, grading, swatch, "pads", LATCHWORK_LENGTH_UNIT_CM, text, needed, NULL, &error));
  CHECK(strstr(text, "a = 25 (30) cm") != NULL && strstr(text, "b: height, 20 (22) cm") != NULL);
  CHECK(strstr(text, "pads: schematic, right side shown") != NULL && strstr(text, "Borrowed gauge: texture ") != NULL);
  CHECK(strstr(text, "lw-other") != NULL);
  free(text);
  CHECK(latchwork_graded_schematic_svg(&design, sizes, 1, grading, swatch, NULL, LATCHWORK_LENGTH_UNIT_CM, NULL, 0, &needed, &error) ==
        LATCHWORK_E_BAD_ARGUMENT);
  CHECK(strcmp(error.field, "candidates") == 0);
  OK(latchwork_panel_create("pad", strip, &panel, &error));
  OK(latchwork_size_options_default(&options, &error));
  options.substitutes = &substitute;
  options.substitute_count = 1;
  OK(latchwork_panel_schematic_notes(panel, swatch, &options, notes, sizeof notes, &needed, &error));
  CHECK(strstr(notes, "measured by the gauge of 'plain'") != NULL);
  /* Other sizes and notes by hand. */
  piece.outline = corners;
  piece.outline_count = 4;
  piece.others = &other;
  piece.other_count = 1;
  piece.notes = &note;
  piece.note_count = 1;
  schematic.pieces = &piece;
  schematic.piece_count = 1;
  CHECK(latchwork_schematic_svg(&schematic, NULL, 0, &needed, &error) == LATCHWORK_E_BAD_ARGUMENT);
  CHECK(strcmp(error.field, "pieces[0].others") == 0); /* there is one size */
  schematic.sizes = names;
  schematic.size_count = 2;
  OK(latchwork_schematic_svg(&schematic, NULL, 0, &needed, &error));
  text = malloc(needed);
  CHECK(text != NULL);
  OK(latchwork_schematic_svg(&schematic, text, needed, NULL, &error));
  CHECK(strstr(text, "By eye.") != NULL && strstr(text, "Sizes: small (large); the first is drawn thick.") != NULL);
  free(text);
  latchwork_grading_destroy(grading);
  latchwork_swatch_destroy(swatch);
  latchwork_panel_destroy(panel);
  latchwork_strip_destroy(strip);
  latchwork_grid_destroy(grid);
}

static void a_schematic_is_drawn_with_its_measures(void) {
  /* 20 stitches and 30 rows per 10 cm: 40 stitches are 20 cm, 60 rows 20 cm. */
  const latchwork_measurement measurements[2] = {{"stockinette", "middle", NULL, 20.0, 100.0, LATCHWORK_COUNTED_STITCHES, LATCHWORK_CLOTH_STATE_RESTED, 0},
                                                 {"stockinette", "middle", NULL, 30.0, 100.0, LATCHWORK_COUNTED_ROWS, LATCHWORK_CLOTH_STATE_RESTED, 0}};
  const char *sizes[2] = {"small", "large"};
  const double larger[2] = {220.0, 240.0};
  const latchwork_outline_point bow[4] = {{0.0, 0.0}, {200.0, 0.0}, {0.0, 200.0}, {200.0, 200.0}};
  latchwork_error error = LATCHWORK_ERROR_INIT;
  latchwork_schematic schematic = LATCHWORK_SCHEMATIC_INIT;
  latchwork_schematic_piece piece = {0};
  latchwork_size_options options = LATCHWORK_SIZE_OPTIONS_INIT;
  latchwork_size size = LATCHWORK_SIZE_INIT;
  latchwork_schematic_measure measures[4];
  latchwork_outline_point outline[8];
  latchwork_strip *strip = NULL, *filled = NULL;
  latchwork_panel *panel = NULL;
  latchwork_swatch *swatch = NULL;
  size_t corners = 0, count = 0, needed = 0;
  char label[64], *text;
  checking = "schematic";
  OK(latchwork_stockinette(40, &strip, &error));
  OK(latchwork_strip_filled_up(strip, 60, &filled, &error));
  OK(latchwork_panel_create("front", filled, &panel, &error));
  OK(latchwork_swatch_create(measurements, 2, &swatch, &error));
  /* Drawn as large as it is sized: a stitch and a row less for the seams. */
  OK(latchwork_size_options_default(&options, &error));
  options.seam_right = options.seam_bottom = 1.0;
  OK(latchwork_panel_size(panel, swatch, &options, &size, &error));
  OK(latchwork_panel_schematic_measures(panel, swatch, &options, measures, 4, &count, &error));
  CHECK(count == 2 && size.width_mm > 194.9 && size.width_mm < 195.1);
  CHECK(measures[0].mm > size.width_mm - 1e-9 && measures[0].mm < size.width_mm + 1e-9);
  CHECK(measures[1].mm > size.height_mm - 1e-9 && measures[1].mm < size.height_mm + 1e-9);
  OK(latchwork_panel_schematic_piece(panel, swatch, NULL, outline, 8, &corners, &error));
  OK(latchwork_panel_schematic_measures(panel, swatch, NULL, measures, 4, &count, &error));
  CHECK(corners == 4 && count == 2);
  CHECK(measures[0].side == LATCHWORK_MEASURE_SIDE_BOTTOM && measures[0].mm > 199.9 && measures[0].mm < 200.1);
  CHECK(measures[0].label == NULL && measures[0].other_count == 0);
  OK(latchwork_panel_schematic_label(panel, swatch, NULL, 0, label, sizeof label, NULL, &error));
  CHECK(strcmp(label, "width at the cast-on") == 0);
  measures[0].label = label;
  measures[0].others_mm = &larger[0];
  measures[0].other_count = 1;
  measures[1].label = "height";
  measures[1].others_mm = &larger[1];
  piece.name = "front";
  piece.outline = outline;
  piece.outline_count = corners;
  piece.measures = measures;
  piece.measure_count = count;
  schematic.title = "cushion";
  schematic.sizes = sizes;
  schematic.size_count = 2;
  schematic.pieces = &piece;
  schematic.piece_count = 1;
  CHECK(latchwork_schematic_svg(&schematic, NULL, 0, &needed, &error) == LATCHWORK_E_BAD_ARGUMENT);
  CHECK(strcmp(error.field, "pieces[0].measures[1].others_mm") == 0);
  measures[1].other_count = 1;
  OK(latchwork_schematic_svg(&schematic, NULL, 0, &needed, &error));
  text = malloc(needed);
  CHECK(text != NULL);
  OK(latchwork_schematic_svg(&schematic, text, needed, NULL, &error));
  CHECK(strstr(text, "a = 20 (22) cm") != NULL && strstr(text, "b: height, 20 (24) cm") != NULL);
  CHECK(strstr(text, "cushion: schematic, right side shown") != NULL);
  free(text);
  memcpy(outline, bow, sizeof bow);
  CHECK(latchwork_schematic_svg(&schematic, NULL, 0, &needed, &error) == LATCHWORK_E_BAD_ARGUMENT);
  CHECK(strcmp(error.field, "pieces[0].outline[1]") == 0);
  latchwork_swatch_destroy(swatch);
  latchwork_panel_destroy(panel);
  latchwork_strip_destroy(filled);
  latchwork_strip_destroy(strip);
}

/* 20 rows of reverse, stockinette, reverse, six columns each; the reverse is bound off after row 10. 40 rows of
   stockinette and 60 of reverse are 100 mm, 30 stitches of both: (25 + 2 16.667) / 3 and, above, 25 mm. */
static void a_shaped_panel_is_as_high_as_what_stands(void) {
  static const struct {
    const char *texture;
    double count;
    int32_t counted;
  } counts[4] = {{"stockinette", 30.0, LATCHWORK_COUNTED_STITCHES},
                 {"stockinette", 40.0, LATCHWORK_COUNTED_ROWS},
                 {"reverse", 30.0, LATCHWORK_COUNTED_STITCHES},
                 {"reverse", 60.0, LATCHWORK_COUNTED_ROWS}};
  static const latchwork_edge_point points[2] = {{0.0, 10}, {6.0, 10}};
  latchwork_measurement measurements[4];
  latchwork_error error = LATCHWORK_ERROR_INIT;
  latchwork_edge_shape edge = LATCHWORK_EDGE_SHAPE_INIT;
  latchwork_outline outline = LATCHWORK_OUTLINE_INIT;
  latchwork_size size = LATCHWORK_SIZE_INIT;
  latchwork_row_span spans[20];
  latchwork_strip *side = NULL, *middle = NULL;
  const latchwork_strip *strips[3];
  latchwork_panel *panel = NULL, *made = NULL;
  latchwork_swatch *swatch = NULL;
  size_t needed = 0, i;
  checking = "shaped heights";
  memset(measurements, 0, sizeof measurements);
  for (i = 0; i < 4; ++i) {
    measurements[i].texture = counts[i].texture;
    measurements[i].count = counts[i].count;
    measurements[i].counted = counts[i].counted;
    measurements[i].length_mm = 100.0;
    measurements[i].state = LATCHWORK_CLOTH_STATE_RESTED;
  }
  OK(latchwork_swatch_create(measurements, 4, &swatch, &error));
  OK(latchwork_reverse(6, &side, &error));
  OK(latchwork_stockinette(6, &middle, &error));
  strips[0] = strips[2] = side;
  strips[1] = middle;
  OK(latchwork_join_strips("p", 20, strips, 3, &panel, &error));
  edge.points = points;
  edge.point_count = 2;
  OK(latchwork_outlined(20, 18, &edge, &edge, 1, spans, 20, &needed, &error));
  outline.rows = spans;
  outline.row_count = needed;
  OK(latchwork_panel_shaped(panel, &outline, NULL, &made, &error));
  OK(latchwork_panel_size(made, swatch, NULL, &size, &error));
  CHECK(size.height_mm > 44.444 && size.height_mm < 44.445);
  CHECK(size.least_height_mm > 41.666 && size.least_height_mm < 41.667);
  CHECK(size.greatest_height_mm > 49.999 && size.greatest_height_mm < 50.001);
  latchwork_swatch_destroy(swatch);
  latchwork_panel_destroy(made);
  latchwork_panel_destroy(panel);
  latchwork_strip_destroy(middle);
  latchwork_strip_destroy(side);
}

/* Six columns of reverse at each side are cut off from the first row to the last: 10 of stockinette, 25 to 100 mm. */
static void what_is_cut_off_needs_no_gauge(void) {
  static const latchwork_edge_point points[1] = {{6.0, 1}};
  latchwork_measurement measurements[2];
  latchwork_error error = LATCHWORK_ERROR_INIT;
  latchwork_edge_shape edge = LATCHWORK_EDGE_SHAPE_INIT;
  latchwork_outline outline = LATCHWORK_OUTLINE_INIT;
  latchwork_size size = LATCHWORK_SIZE_INIT;
  latchwork_size_options options = LATCHWORK_SIZE_OPTIONS_INIT;
  latchwork_strip_size sizes[3];
  latchwork_row_span spans[20];
  latchwork_strip *side = NULL, *middle = NULL;
  const latchwork_strip *strips[3];
  latchwork_panel *panel = NULL, *made = NULL;
  latchwork_swatch *swatch = NULL;
  size_t needed = 0, i;
  checking = "strips cut off";
  memset(measurements, 0, sizeof measurements);
  for (i = 0; i < 2; ++i) {
    measurements[i].texture = "stockinette";
    measurements[i].count = i == 0 ? 25.0 : 40.0;
    measurements[i].counted = i == 0 ? LATCHWORK_COUNTED_STITCHES : LATCHWORK_COUNTED_ROWS;
    measurements[i].length_mm = 100.0;
    measurements[i].state = LATCHWORK_CLOTH_STATE_RESTED;
  }
  OK(latchwork_swatch_create(measurements, 2, &swatch, &error));
  OK(latchwork_reverse(6, &side, &error));
  OK(latchwork_stockinette(10, &middle, &error));
  strips[0] = strips[2] = side;
  strips[1] = middle;
  OK(latchwork_join_strips("p", 20, strips, 3, &panel, &error));
  CHECK(latchwork_panel_size(panel, swatch, NULL, &size, &error) == LATCHWORK_E_NO_GAUGE);
  CHECK(strcmp(error.field, "reverse") == 0);
  edge.points = points;
  edge.point_count = 1;
  OK(latchwork_outlined(20, 22, &edge, &edge, 1, spans, 20, &needed, &error));
  outline.rows = spans;
  outline.row_count = needed;
  OK(latchwork_panel_shaped(panel, &outline, NULL, &made, &error));
  OK(latchwork_panel_size(made, swatch, NULL, &size, &error));
  CHECK(size.width_mm > 39.999 && size.width_mm < 40.001);
  OK(latchwork_panel_size_strips(made, swatch, NULL, sizes, 3, &needed, &error));
  CHECK(needed == 3 && sizes[0].width_mm == 0.0 && sizes[2].height_mm == 0.0 && sizes[1].width_mm == size.width_mm);
  /* The range of a state holds that for the most finished one. */
  for (i = 0; i < 2; ++i) {
    options.state = i == 0 ? -2 : 3;
    CHECK(latchwork_panel_size(made, swatch, &options, &size, &error) == LATCHWORK_E_BAD_ARGUMENT);
    CHECK(strcmp(error.field, "options.state") == 0 && strstr(error.message, "-1 to 2") != NULL);
  }
  latchwork_swatch_destroy(swatch);
  latchwork_panel_destroy(made);
  latchwork_panel_destroy(panel);
  latchwork_strip_destroy(middle);
  latchwork_strip_destroy(side);
}

int main(void) {
  what_is_cut_off_needs_no_gauge();
  a_shaped_panel_is_as_high_as_what_stands();
  events_are_spread_evenly();
  panels_are_shaped();
  a_piece_becomes_a_shape();
  a_shaped_piece_is_fitted_and_cut();
  a_family_is_drawn_and_says_what_is_borrowed();
  a_bind_off_needs_the_yarn();
  a_schematic_is_drawn_with_its_measures();
  return checks_told();
}
