/* Fitting through the C ABI, against figures worked out by hand: 25 stitches and 40 rows to 10 cm, so that a stitch is 4 mm
   wide and a row 2.5 mm high. */
#include <string.h>

#include "program.h"

static latchwork_strip *ground = NULL, *edge = NULL;
static latchwork_swatch *swatch = NULL;
static const latchwork_strip *strips[1];
static latchwork_fit_group group = LATCHWORK_FIT_GROUP_INIT;
static latchwork_fit_request request = LATCHWORK_FIT_REQUEST_INIT;

static void begin_request(double width_mm, double height_mm) {
  OK(latchwork_fit_request_default(&request, NULL));
  strips[0] = ground;
  group.strips = strips;
  group.strip_count = 1;
  group.least = 1;
  group.most = 20;
  request.width_mm = width_mm;
  request.height_mm = height_mm;
  request.groups = &group;
  request.group_count = 1;
}

static void the_defaults_are_told(void) {
  checking = "defaults";
  begin_request(1.0, 1.0);
  CHECK(request.panels_least == 1 && request.panels_most == 1 && request.seam_stitches == 1.0);
  CHECK(request.edge_least == 1 && request.edge_most == 1 && request.rows_step == 1 && request.rows_extra == 0);
  CHECK(request.tolerance_percent == LATCHWORK_NO_TOLERANCE && request.most == 10 && request.needles == 0);
  CHECK(request.state == LATCHWORK_CLOTH_STATE_MOST_FINISHED && request.vary_start == 0);
}

static void candidates_are_ranked_and_made(void) {
  latchwork_fit_result *found = NULL;
  latchwork_fit_candidate candidates[10];
  latchwork_panel *panel = NULL;
  latchwork_error error = LATCHWORK_ERROR_INIT;
  int32_t columns = 0, complete = 0;
  size_t needed = 0;
  latchwork_grid *grid = NULL;
  checking = "candidates";
  begin_request(410.0, 301.0);
  request.most = 4;
  OK(latchwork_fit(&request, swatch, NULL, &found, NULL));
  OK(latchwork_fit_result_candidates(found, candidates, 10, &needed, NULL));
  CHECK(needed == 4);
  CHECK(candidates[0].panels == 1 && candidates[0].times[0] == 10 && candidates[0].times[1] == 0);
  CHECK(candidates[0].columns == 100 && candidates[0].rows == 120 && candidates[0].start_row == 1);
  CHECK(candidates[0].width_mm == 400.0 && candidates[0].width_error_mm == -10.0);
  CHECK(candidates[0].width_error_percent > -2.44 && candidates[0].width_error_percent < -2.43);
  CHECK(candidates[1].rows == 121 && candidates[2].rows == 119);
  OK(latchwork_fit_result_nearest(found, NULL, 0, &needed, NULL));
  CHECK(needed == 0);
  OK(latchwork_fit_result_nearest_complete(found, &complete, NULL));
  CHECK(complete == 1);
  OK(latchwork_fitted(&request, &candidates[0], 0, &panel, NULL));
  OK(latchwork_panel_grid(panel, &grid, NULL));
  OK(latchwork_grid_columns(grid, &columns, NULL));
  CHECK(columns == 100);
  latchwork_grid_destroy(grid);
  latchwork_panel_destroy(panel);
  candidates[0].columns = 99;
  CHECK(latchwork_fitted(&request, &candidates[0], 0, &panel, &error) == LATCHWORK_E_BAD_ARGUMENT && panel == NULL);
  CHECK(strcmp(error.field, "columns") == 0);
  candidates[0].columns = 100;
  CHECK(latchwork_fitted(&request, &candidates[0], 1, &panel, &error) == LATCHWORK_E_BAD_ARGUMENT);
  CHECK(strcmp(error.field, "panel") == 0);
  latchwork_fit_result_destroy(found);
}

static void ranges_seams_and_panels_are_taken(void) {
  latchwork_fit_result *found = NULL;
  latchwork_fit_candidate best;
  size_t needed = 0;
  checking = "panels";
  begin_request(1000.0, 100.0); /* 250 stitches of 4 panels of 10 * 6 + 2 * 2 = 64, less 1 at each edge of 3 seams */
  group.least = group.most = 6;
  request.edge = edge;
  request.edge_least = request.edge_most = 2;
  request.panels_most = 6;
  request.needles = 70;
  request.most = 1;
  OK(latchwork_fit(&request, swatch, NULL, &found, NULL));
  OK(latchwork_fit_result_candidates(found, &best, 1, &needed, NULL));
  CHECK(best.panels == 4 && best.columns == 64 && best.edge_columns == 2 && best.width_mm == 1000.0);
  latchwork_fit_result_destroy(found);
  request.seam_left = 2.0;
  request.width_mm = 980.0;
  request.width_most_mm = 995.0;
  request.tolerance_percent = 0.0;
  OK(latchwork_fit(&request, swatch, NULL, &found, NULL));
  OK(latchwork_fit_result_candidates(found, &best, 1, &needed, NULL));
  CHECK(needed == 1 && best.width_mm == 992.0 && best.width_error_mm == 0.0 && best.width_error_percent == 0.0);
  latchwork_fit_result_destroy(found);
}

/* Ten stitches left and right of a middle of four: 24 once, 44 twice, and never 34. */
static void tied_groups_stand_as_often(void) {
  latchwork_fit_group groups[3] = {LATCHWORK_FIT_GROUP_INIT, LATCHWORK_FIT_GROUP_INIT, LATCHWORK_FIT_GROUP_INIT};
  const latchwork_strip *edges[4];
  latchwork_fit_result *found = NULL;
  latchwork_fit_candidate best;
  latchwork_panel *panel = NULL;
  latchwork_error error = LATCHWORK_ERROR_INIT;
  size_t needed = 0, i = 0;
  checking = "ties";
  begin_request(34 * 4.0 + 1.0, 100.0);
  for (i = 0; i < 4; ++i) edges[i] = edge;
  groups[0] = groups[2] = group;
  groups[1].strips = edges;
  groups[1].strip_count = 4;
  groups[2].tied = 1;
  groups[2].as_group = 0;
  groups[2].least = groups[2].most = 7; /* not what counts */
  request.groups = groups;
  request.group_count = 3;
  request.most = 1;
  OK(latchwork_fit(&request, swatch, NULL, &found, NULL));
  OK(latchwork_fit_result_candidates(found, &best, 1, &needed, NULL));
  CHECK(needed == 1 && best.times[0] == 2 && best.times[1] == 1 && best.times[2] == 2 && best.columns == 44);
  latchwork_fit_result_destroy(found);
  request.width_mm = request.height_mm = 0.0; /* targets are not what panels are made of */
  OK(latchwork_fitted(&request, &best, 0, &panel, NULL));
  latchwork_panel_destroy(panel);
  best.times[2] = 3;
  CHECK(latchwork_fitted(&request, &best, 0, &panel, &error) == LATCHWORK_E_BAD_ARGUMENT);
  CHECK(strcmp(error.field, "times[2]") == 0);
  groups[2].as_group = 2;
  request.width_mm = request.height_mm = 100.0;
  CHECK(latchwork_fit(&request, swatch, NULL, &found, &error) == LATCHWORK_E_BAD_ARGUMENT && found == NULL);
  CHECK(strcmp(error.field, "groups[2].as_group") == 0);
}

/* Zeros tie an element to nothing, though 0 is the first group's index. */
static void a_group_of_zeros_is_free(void) {
  latchwork_fit_group groups[2];
  latchwork_fit_result *found = NULL;
  latchwork_fit_candidate best;
  latchwork_error error = LATCHWORK_ERROR_INIT;
  size_t needed = 0, i = 0;
  static const struct {
    int32_t tied, as_group;
    const char *field;
  } wrong[] = {{0, 1, "request.groups[1].as_group"},
               {0, -1, "request.groups[1].as_group"},
               {1, -1, "request.groups[1].as_group"},
               {2, 0, "request.groups[1].tied"},
               {1, 1, "groups[1].as_group"}};
  checking = "no tie";
  begin_request(34 * 4.0, 100.0);
  memset(groups, 0, sizeof groups);
  for (i = 0; i < 2; ++i) {
    groups[i].strips = strips;
    groups[i].strip_count = 1;
    groups[i].least = 1;
    groups[i].most = i == 0 ? 1 : 20;
  }
  request.groups = groups;
  request.group_count = 2;
  request.most = 1;
  OK(latchwork_fit(&request, swatch, NULL, &found, NULL));
  OK(latchwork_fit_result_candidates(found, &best, 1, &needed, NULL));
  CHECK(needed == 1 && best.times[0] == 1 && best.times[1] == 2);
  latchwork_fit_result_destroy(found);
  groups[1].tied = 1;
  OK(latchwork_fit(&request, swatch, NULL, &found, NULL));
  OK(latchwork_fit_result_candidates(found, &best, 1, &needed, NULL));
  CHECK(needed == 1 && best.times[0] == 1 && best.times[1] == 1);
  latchwork_fit_result_destroy(found);
  for (i = 0; i < sizeof wrong / sizeof wrong[0]; ++i) {
    found = NULL;
    groups[1].tied = wrong[i].tied;
    groups[1].as_group = wrong[i].as_group;
    CHECK(latchwork_fit(&request, swatch, NULL, &found, &error) == LATCHWORK_E_BAD_ARGUMENT && found == NULL);
    CHECK(strcmp(error.field, wrong[i].field) == 0);
  }
}

/* 1 when one panel's grid is the other's mirror image. */
static int mirrors(const latchwork_panel *panel, const latchwork_panel *other) {
  latchwork_grid *grid = NULL, *there = NULL, *image = NULL;
  int32_t equal = 0;
  OK(latchwork_panel_grid(panel, &grid, NULL));
  OK(latchwork_panel_grid(other, &there, NULL));
  OK(latchwork_grid_mirrored(there, &image, NULL));
  OK(latchwork_grid_equal(grid, image, &equal, NULL));
  latchwork_grid_destroy(image);
  latchwork_grid_destroy(there);
  latchwork_grid_destroy(grid);
  return equal;
}

static void halves_of_a_wide_piece_mirror_each_other(void) {
  static const latchwork_substitute as_plain = {"rope 2/2 every 6", "stockinette"};
  latchwork_strip *rope = NULL;
  latchwork_fit_result *found = NULL;
  latchwork_fit_candidate best;
  latchwork_panel *left = NULL, *right = NULL;
  size_t needed = 0;
  checking = "halves";
  OK(latchwork_rope(2, 2, 6, LATCHWORK_LEAN_RIGHT, &rope, NULL));
  begin_request(400.0, 60.0);
  strips[0] = rope;
  group.most = 30;
  request.edge = edge;
  request.panels_most = 2;
  request.needles = 60;
  request.most = 1;
  request.substitutes = &as_plain;
  request.substitute_count = 1;
  OK(latchwork_fit(&request, swatch, NULL, &found, NULL));
  OK(latchwork_fit_result_candidates(found, &best, 1, &needed, NULL));
  /* 2 * (12 * 4 + 2) less a stitch of each edge at the seam: 98 of 4 mm is the nearest to 100. */
  CHECK(needed == 1 && best.panels == 2 && best.columns == 50 && best.width_mm == 392.0);
  OK(latchwork_fitted(&request, &best, 0, &left, NULL));
  OK(latchwork_fitted(&request, &best, 1, &right, NULL));
  CHECK(mirrors(left, right) == 1 && mirrors(left, left) == 0);
  latchwork_panel_destroy(right);
  latchwork_panel_destroy(left);
  latchwork_fit_result_destroy(found);
  latchwork_strip_destroy(rope);
}

static void a_finished_panel_is_parted_for_the_bed(void) {
  latchwork_error error = LATCHWORK_ERROR_INIT;
  latchwork_machine machine = LATCHWORK_MACHINE_INIT;
  latchwork_strip *rope = NULL, *image = NULL;
  const latchwork_strip *all[5];
  latchwork_panel *panel = NULL, *left = NULL, *right = NULL, *none = NULL;
  latchwork_split_part parts[3];
  size_t needed = 0;
  checking = "split";
  OK(latchwork_rope(3, 3, 8, LATCHWORK_LEAN_RIGHT, &rope, NULL));
  OK(latchwork_strip_mirrored(rope, &image, NULL));
  all[0] = all[2] = all[4] = ground;
  all[1] = rope;
  all[3] = image;
  OK(latchwork_join_strips("two ropes", 16, all, 5, &panel, NULL)); /* 10 + 6 + 10 + 6 + 10 */
  OK(latchwork_machine_generic(LATCHWORK_MACHINE_CLASS_STANDARD, &machine, NULL));
  OK(latchwork_panel_split(panel, &machine, 1, parts, 3, &needed, NULL));
  CHECK(needed == 1 && parts[0].columns == 42 && parts[0].seam_left == 0 && parts[0].seam_right == 0);
  machine.needles = 30;
  OK(latchwork_panel_split(panel, &machine, 2, parts, 3, &needed, NULL));
  CHECK(needed == 2 && parts[0].column == 0 && parts[0].columns == 21 && parts[0].seam_right == 2);
  CHECK(parts[1].column == 21 && parts[1].columns == 21 && parts[1].seam_left == 2 && parts[1].seam_right == 0);
  CHECK(latchwork_panel_split(panel, &machine, 0.5, parts, 3, &needed, &error) == LATCHWORK_E_BAD_ARGUMENT);
  CHECK(strcmp(error.field, "seam_stitches") == 0);
  OK(latchwork_panel_split_part(panel, &parts[0], &left, NULL));
  OK(latchwork_panel_split_part(panel, &parts[1], &right, NULL));
  CHECK(mirrors(left, right) == 1);
  machine.needles = 7;
  CHECK(latchwork_panel_split(panel, &machine, 1, parts, 3, &needed, &error) == LATCHWORK_E_TOO_LARGE);
  CHECK(strcmp(error.field, "panel") == 0 && error.column == 10);
  parts[0].columns = 12; /* through the rope */
  CHECK(latchwork_panel_split_part(panel, &parts[0], &none, &error) == LATCHWORK_E_CROSSING_CUT && none == NULL);
  parts[0].columns = 43;
  CHECK(latchwork_panel_split_part(panel, &parts[0], &none, &error) == LATCHWORK_E_BAD_ARGUMENT);
  CHECK(strcmp(error.field, "part.columns") == 0);
  latchwork_panel_destroy(right);
  latchwork_panel_destroy(left);
  latchwork_panel_destroy(panel);
  latchwork_strip_destroy(image);
  latchwork_strip_destroy(rope);
}

static void what_would_have_to_give_is_told(void) {
  latchwork_fit_result *found = NULL, *again = NULL;
  latchwork_fit_candidate nearest[3];
  latchwork_fit_give gives[2];
  int32_t equal = 0;
  size_t needed = 0;
  latchwork_error error = LATCHWORK_ERROR_INIT;
  checking = "nearest";
  begin_request(840.0, 100.0);
  request.tolerance_percent = 1.0;
  OK(latchwork_fit(&request, swatch, NULL, &found, NULL));
  OK(latchwork_fit_result_candidates(found, NULL, 0, &needed, NULL));
  CHECK(needed == 0);
  OK(latchwork_fit_result_nearest(found, nearest, 3, &needed, NULL));
  CHECK(needed == 3 && nearest[0].times[0] == 21 && nearest[1].times[0] == 20 && nearest[2].times[0] == 19);
  OK(latchwork_fit_result_gives(found, 0, gives, 2, &needed, NULL));
  CHECK(needed == 1 && gives[0].bound == LATCHWORK_FIT_BOUND_TIMES && gives[0].group == 0);
  CHECK(gives[0].value == 21.0 && gives[0].limit == 20.0);
  CHECK(strcmp(gives[0].words, "21 repeats of group 1; at most 20 are allowed") == 0);
  OK(latchwork_fit_result_gives(found, 1, gives, 2, &needed, NULL));
  CHECK(needed == 1 && gives[0].bound == LATCHWORK_FIT_BOUND_WIDTH && gives[0].group == -1 && gives[0].value == -40.0);
  CHECK(latchwork_fit_result_gives(found, 3, gives, 2, &needed, &error) == LATCHWORK_E_BAD_ARGUMENT);
  CHECK(strcmp(error.field, "index") == 0);
  OK(latchwork_fit_result_copy(found, &again, NULL));
  OK(latchwork_fit_result_equal(found, again, &equal, NULL));
  CHECK(equal == 1);
  latchwork_fit_result_destroy(again);
  latchwork_fit_result_destroy(found);
}

static void a_borrowed_gauge_is_told(void) {
  latchwork_fit_result *found = NULL;
  latchwork_findings *findings = NULL;
  latchwork_finding finding = LATCHWORK_FINDING_INIT;
  latchwork_strip *rope = NULL;
  latchwork_substitute named = {NULL, "stockinette"}, again[2];
  latchwork_fit_result *none = NULL;
  latchwork_error error = LATCHWORK_ERROR_INIT;
  latchwork_grading *grading = NULL;
  latchwork_grade_size sizes[1] = {{"S", 400.0, 0.0, 300.0, 0.0}};
  char texture[64], table[1000];
  checking = "borrowed";
  begin_request(400.0, 300.0);
  OK(latchwork_rope(2, 2, 8, LATCHWORK_LEAN_RIGHT, &rope, NULL));
  OK(latchwork_strip_texture(rope, texture, sizeof texture, NULL, NULL));
  named.texture = texture;
  strips[0] = rope;
  request.substitutes = &named;
  request.substitute_count = 1;
  OK(latchwork_fit(&request, swatch, NULL, &found, NULL));
  OK(latchwork_fit_result_findings(found, &findings, NULL));
  OK(latchwork_findings_get(findings, 0, &finding, NULL));
  CHECK(finding.code == LATCHWORK_FINDING_CODE_BORROWED_GAUGE && strcmp(finding.field, texture) == 0);
  latchwork_findings_destroy(findings);
  again[0] = again[1] = named;
  again[1].use = "moss";
  request.substitutes = again;
  request.substitute_count = 2;
  CHECK(latchwork_fit(&request, swatch, NULL, &none, &error) == LATCHWORK_E_BAD_ARGUMENT && none == NULL);
  CHECK(strcmp(error.field, "substitutes[1].texture") == 0);
  again[0].use = texture;
  request.substitute_count = 1;
  CHECK(latchwork_fit(&request, swatch, NULL, &none, &error) == LATCHWORK_E_BAD_ARGUMENT && none == NULL);
  CHECK(strcmp(error.field, "substitutes[0].use") == 0);
  request.substitutes = &named;
  OK(latchwork_grade(&request, sizes, 1, swatch, NULL, &grading, NULL));
  OK(latchwork_grading_findings(grading, &findings, NULL));
  OK(latchwork_findings_get(findings, 0, &finding, NULL));
  CHECK(finding.code == LATCHWORK_FINDING_CODE_BORROWED_GAUGE);
  OK(latchwork_grading_table(grading, table, sizeof table, NULL, NULL));
  CHECK(strstr(table, "is measured by the gauge of 'stockinette'") != NULL);
  latchwork_findings_destroy(findings);
  latchwork_grading_destroy(grading);
  latchwork_fit_result_destroy(found);
  latchwork_strip_destroy(rope);
}

static int32_t go_on(const latchwork_progress *progress, void *user_data) {
  double *last = user_data;
  CHECK(progress->share >= *last && progress->share <= 1.0);
  *last = progress->share;
  return 0;
}

static int32_t stop_at_once(const latchwork_progress *progress, void *user_data) {
  (void)progress;
  (void)user_data;
  return 1;
}

static void a_fit_is_watched_and_stopped(void) {
  latchwork_fit_options options = LATCHWORK_FIT_OPTIONS_INIT;
  latchwork_fit_result *found = NULL;
  latchwork_error error = LATCHWORK_ERROR_INIT;
  double last = 0.0;
  checking = "progress";
  begin_request(400.0, 300.0);
  options.progress = go_on;
  options.user_data = &last;
  OK(latchwork_fit(&request, swatch, &options, &found, NULL));
  CHECK(last == 1.0);
  latchwork_fit_result_destroy(found);
  options.progress = stop_at_once;
  CHECK(latchwork_fit(&request, swatch, &options, &found, &error) == LATCHWORK_E_CANCELLED && found == NULL);
}

static void bad_requests_are_refused_by_field(void) {
  latchwork_fit_result *found = NULL;
  latchwork_error error = LATCHWORK_ERROR_INIT;
  checking = "bad requests";
  begin_request(840.0, 100.0);
  group.least = 21;
  CHECK(latchwork_fit(&request, swatch, NULL, &found, &error) == LATCHWORK_E_BAD_ARGUMENT && found == NULL);
  CHECK(strcmp(error.field, "groups[0].most") == 0);
  begin_request(840.0, 100.0);
  strips[0] = NULL;
  CHECK(latchwork_fit(&request, swatch, NULL, &found, &error) == LATCHWORK_E_BAD_ARGUMENT);
  CHECK(strncmp(error.field, "request.groups[0].strips", 24) == 0);
  begin_request(840.0, 100.0);
  request.vary_start = 2;
  CHECK(latchwork_fit(&request, swatch, NULL, &found, &error) == LATCHWORK_E_BAD_ARGUMENT);
  CHECK(strcmp(error.field, "request.vary_start") == 0);
  begin_request(840.0, 100.0);
  request.tolerance_percent = -0.5;
  CHECK(latchwork_fit(&request, swatch, NULL, &found, &error) == LATCHWORK_E_BAD_ARGUMENT);
  CHECK(strcmp(error.field, "tolerance_percent") == 0);
  begin_request(840.0, 100.0);
  request.state = LATCHWORK_CLOTH_STATE_WASHED;
  CHECK(latchwork_fit(&request, swatch, NULL, &found, &error) == LATCHWORK_E_NO_GAUGE && found == NULL);
}

int main(void) {
  static const char csv[] = "texture,counted,count,length,unit\nstockinette,stitches,25,10,cm\nstockinette,rows,40,10,cm\n";
  OK(latchwork_stockinette(10, &ground, NULL));
  OK(latchwork_stockinette(1, &edge, NULL));
  OK(latchwork_read_swatch(csv, strlen(csv), &swatch, NULL));
  the_defaults_are_told();
  candidates_are_ranked_and_made();
  ranges_seams_and_panels_are_taken();
  tied_groups_stand_as_often();
  a_group_of_zeros_is_free();
  halves_of_a_wide_piece_mirror_each_other();
  a_finished_panel_is_parted_for_the_bed();
  what_would_have_to_give_is_told();
  a_borrowed_gauge_is_told();
  a_fit_is_watched_and_stopped();
  bad_requests_are_refused_by_field();
  latchwork_swatch_destroy(swatch);
  latchwork_strip_destroy(edge);
  latchwork_strip_destroy(ground);
  return checks_told();
}
