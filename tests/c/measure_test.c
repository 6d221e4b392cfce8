/* Swatches, quantities, yarn numbers and yarn need, against values worked out by hand from the definitions. */
#include <stdlib.h>
#include <string.h>

#include "program.h"

static void a_unit_is_spelled_as_in_a_quantity(void) {
  static const char csv[] = "texture,counted,count,length,unit\ns,stitches,28,4,inches\ns,rows,40,10,cm\n";
  static const char ounces[] = "texture,counted,count,length,unit\ns,stitches,28,4,oz\n";
  latchwork_swatch *swatch = NULL;
  latchwork_measurement read[2];
  latchwork_error error = LATCHWORK_ERROR_INIT;
  size_t needed = 0;
  OK(latchwork_read_swatch(csv, strlen(csv), &swatch, NULL));
  OK(latchwork_swatch_measurements(swatch, read, 2, &needed, NULL));
  CHECK(needed == 2 && read[0].length_mm == 101.6 && read[1].length_mm == 100.0);
  latchwork_swatch_destroy(swatch);
  CHECK(latchwork_read_swatch(ounces, strlen(ounces), &swatch, &error) == LATCHWORK_E_BAD_UNIT && swatch == NULL);
  CHECK(error.line == 2 && strcmp(error.field, "unit") == 0);
}

static void a_swatch_measures_a_panel(void) {
  /* 30 stitches in 10 cm are 6 in 20 mm; 40 rows in 10 cm are 4 in 10 mm. Two places, 29 and 31: mean 30, sample
     standard deviation sqrt(2), standard error 1. Off the machine 27 stitches: 10 % narrower once rested. */
  static const latchwork_measurement measurements[] = {
      {"rope", "left", "first", 29.0, 100.0, LATCHWORK_COUNTED_STITCHES, LATCHWORK_CLOTH_STATE_RESTED, 0},
      {"moss", NULL, NULL, 10.0, 101.6, LATCHWORK_COUNTED_STITCHES, LATCHWORK_CLOTH_STATE_RESTED, 0},
      {"rope", "right", "first", 31.0, 100.0, LATCHWORK_COUNTED_STITCHES, LATCHWORK_CLOTH_STATE_RESTED, 0},
      {"rope", "", "", 40.0, 100.0, LATCHWORK_COUNTED_ROWS, LATCHWORK_CLOTH_STATE_RESTED, 12},
      {"rope", "", "", 27.0, 100.0, LATCHWORK_COUNTED_STITCHES, LATCHWORK_CLOTH_STATE_OFF_MACHINE, 0},
      {"rope", "", "", 40.0, 100.0, LATCHWORK_COUNTED_ROWS, LATCHWORK_CLOTH_STATE_OFF_MACHINE, 0},
  };
  static const latchwork_substitute substitute = {"plain", "rope"};
  latchwork_substitute again[2];
  latchwork_measurement given[6];
  latchwork_swatch *swatch = NULL;
  latchwork_gauge gauge = LATCHWORK_GAUGE_INIT;
  latchwork_shrinkage shrinkage;
  latchwork_size_options options = LATCHWORK_SIZE_OPTIONS_INIT;
  latchwork_size size = LATCHWORK_SIZE_INIT;
  latchwork_strip_size strips[1];
  latchwork_findings *findings = NULL;
  latchwork_finding finding = LATCHWORK_FINDING_INIT;
  latchwork_error error = LATCHWORK_ERROR_INIT;
  latchwork_grid *grid = NULL, *narrow = NULL;
  latchwork_strip *strip = NULL, *sides = NULL;
  const latchwork_strip *row[3];
  latchwork_panel *panel = NULL;
  const char *textures[2];
  size_t needed = 0;
  int32_t states[2] = {-1, -1};
  int32_t has = -1;
  checking = "swatch";
  OK(latchwork_swatch_create(measurements, 6, &swatch, NULL));
  OK(latchwork_swatch_measurements(swatch, given, 6, &needed, NULL));
  CHECK(needed == 6 && strcmp(given[2].texture, "rope") == 0 && strcmp(given[2].place, "right") == 0);
  CHECK(strcmp(given[2].swatch, "first") == 0 && given[3].line == 12 && given[4].state == 0 && given[3].state == 1);
  CHECK(given[1].length_mm == 101.6 && strcmp(given[1].place, "") == 0 && given[3].counted == LATCHWORK_COUNTED_ROWS);
  OK(latchwork_swatch_textures(swatch, textures, 2, &needed, NULL));
  CHECK(needed == 2 && strcmp(textures[0], "rope") == 0 && strcmp(textures[1], "moss") == 0);
  OK(latchwork_swatch_states(swatch, "rope", states, 2, &needed, NULL));
  CHECK(needed == 2 && states[0] == LATCHWORK_CLOTH_STATE_OFF_MACHINE && states[1] == LATCHWORK_CLOTH_STATE_RESTED);
  OK(latchwork_swatch_has(swatch, "rope", LATCHWORK_CLOTH_STATE_MOST_FINISHED, &has, NULL));
  CHECK(has == 1);
  OK(latchwork_swatch_has(swatch, "rope", LATCHWORK_CLOTH_STATE_WASHED, &has, NULL));
  CHECK(has == 0);
  OK(latchwork_swatch_has(swatch, "moss", LATCHWORK_CLOTH_STATE_MOST_FINISHED, &has, NULL));
  CHECK(has == 0);
  OK(latchwork_swatch_gauge(swatch, "rope", LATCHWORK_CLOTH_STATE_MOST_FINISHED, &gauge, NULL));
  CHECK(gauge.stitches_per_10cm == 30.0 && gauge.stitches_places == 2 && gauge.rows_places == 1);
  CHECK(gauge.state == LATCHWORK_CLOTH_STATE_RESTED);
  CHECK(gauge.stitches_spread > 1.41421 && gauge.stitches_spread < 1.41422 && gauge.rows_spread == 0.0);
  CHECK(gauge.stitches_standard_error > 0.99999 && gauge.stitches_standard_error < 1.00001);
  CHECK(gauge.stitches_swatches == 1 && gauge.stitches_freedom == 1.0);
  CHECK(gauge.rows_swatches == 1 && gauge.rows_freedom == 0.0);
  CHECK(latchwork_swatch_gauge(swatch, "rope", LATCHWORK_CLOTH_STATE_WASHED, &gauge, &error) == LATCHWORK_E_NO_GAUGE);
  CHECK(latchwork_swatch_gauge(swatch, "rope", 3, &gauge, &error) == LATCHWORK_E_BAD_ARGUMENT);
  CHECK(strcmp(error.field, "state") == 0);
  OK(latchwork_swatch_shrinkages(swatch, &shrinkage, 1, &needed, NULL));
  CHECK(needed == 1 && strcmp(shrinkage.texture, "rope") == 0 && shrinkage.from_state == 0 && shrinkage.to_state == 1);
  CHECK(shrinkage.width_percent > 9.9999 && shrinkage.width_percent < 10.0001 && shrinkage.length_percent == 0.0);
  CHECK(shrinkage.error_known == 0);
  OK(latchwork_swatch_findings(swatch, &findings, NULL));
  OK(latchwork_findings_get(findings, 0, &finding, NULL));
  CHECK(finding.code == LATCHWORK_FINDING_CODE_FEW_PLACES && finding.value == 2 && finding.limit == 5);
  CHECK(strcmp(finding.field, "measurements[0]") == 0 && finding.line == 0);
  latchwork_findings_destroy(findings);

  OK(latchwork_grid_create(4, 6, &grid, NULL));
  OK(latchwork_grid_create(4, 2, &narrow, NULL));
  OK(latchwork_strip_create("s", "lent", grid, &sides, NULL));
  OK(latchwork_strip_create("n", "rope", narrow, &strip, NULL));
  row[0] = row[2] = sides;
  row[1] = strip;
  OK(latchwork_join_strips("j", 4, row, 3, &panel, NULL));
  OK(latchwork_panel_measuring_findings(panel, swatch, NULL, &findings, NULL));
  OK(latchwork_findings_count(findings, &needed, NULL));
  OK(latchwork_findings_get(findings, needed - 1, &finding, NULL)); /* after what is said of the swatch */
  CHECK(finding.code == LATCHWORK_FINDING_CODE_NARROW_TEXTURE && strcmp(finding.field, "rope") == 0);
  CHECK(finding.column == 6 && finding.last_column == 7 && finding.value == 2 && finding.limit == 3);
  latchwork_findings_destroy(findings);
  latchwork_panel_destroy(panel);
  latchwork_strip_destroy(strip);
  latchwork_strip_destroy(sides);
  latchwork_grid_destroy(narrow);
  OK(latchwork_strip_create("r", "rope", grid, &strip, NULL));
  OK(latchwork_panel_create("p", strip, &panel, NULL));
  OK(latchwork_panel_size(panel, swatch, NULL, &size, NULL));
  CHECK(size.spread_known == 0 && size.level == 0.95); /* the rows were measured in one place */
  CHECK(size.width_mm > 19.999 && size.width_mm < 20.001 && size.height_mm > 9.999 && size.height_mm < 10.001);
  OK(latchwork_size_options_default(&options, NULL));
  options.state = LATCHWORK_CLOTH_STATE_OFF_MACHINE;
  options.seam_left = 0.5;
  options.seam_right = 1.0;
  options.level = 0.9;
  OK(latchwork_panel_size(panel, swatch, &options, &size, NULL));
  CHECK(size.width_mm > 16.666 && size.width_mm < 16.667 && size.level == 0.9); /* 4.5 of 27 to 10 cm */
  CHECK(size.seam_width_mm > 5.555 && size.seam_width_mm < 5.556 && size.seam_height_mm == 0.0);
  options.seam_left = 0.25;
  CHECK(latchwork_panel_size(panel, swatch, &options, &size, &error) == LATCHWORK_E_BAD_ARGUMENT);
  CHECK(strcmp(error.field, "seam_left") == 0);
  options.state = 7;
  CHECK(latchwork_panel_size(panel, swatch, &options, &size, &error) == LATCHWORK_E_BAD_ARGUMENT);
  CHECK(strcmp(error.field, "options.state") == 0);
  OK(latchwork_panel_size_strips(panel, swatch, NULL, strips, 1, &needed, NULL));
  CHECK(needed == 1 && strips[0].band == 0 && strips[0].strip == 0 && strips[0].columns == 6 && strips[0].rows == 4);
  OK(latchwork_panel_size_findings(panel, swatch, NULL, &findings, NULL));
  OK(latchwork_findings_get(findings, 0, &finding, NULL));
  CHECK(finding.code == LATCHWORK_FINDING_CODE_UNKNOWN_SPREAD);
  latchwork_findings_destroy(findings);
  latchwork_panel_destroy(panel);
  latchwork_strip_destroy(strip);

  OK(latchwork_strip_create("p", "plain", grid, &strip, NULL));
  OK(latchwork_panel_create("p", strip, &panel, NULL));
  CHECK(latchwork_panel_size(panel, swatch, NULL, &size, &error) == LATCHWORK_E_NO_GAUGE);
  OK(latchwork_panel_measuring_findings(panel, swatch, NULL, &findings, NULL));
  OK(latchwork_findings_get(findings, 0, &finding, NULL));
  CHECK(finding.code == LATCHWORK_FINDING_CODE_NO_SWATCH && strcmp(finding.field, "plain") == 0);
  latchwork_findings_destroy(findings);
  OK(latchwork_size_options_default(&options, NULL));
  options.substitutes = &substitute;
  options.substitute_count = 1;
  OK(latchwork_panel_size(panel, swatch, &options, &size, NULL));
  CHECK(size.width_mm > 19.999 && size.width_mm < 20.001);
  OK(latchwork_panel_measuring_findings(panel, swatch, &options, &findings, NULL));
  OK(latchwork_findings_get(findings, 0, &finding, NULL));
  CHECK(finding.code == LATCHWORK_FINDING_CODE_BORROWED_GAUGE && strcmp(finding.field, "plain") == 0);
  latchwork_findings_destroy(findings);
  again[0] = again[1] = substitute;
  options.substitutes = again;
  options.substitute_count = 2;
  CHECK(latchwork_panel_size(panel, swatch, &options, &size, &error) == LATCHWORK_E_BAD_ARGUMENT);
  CHECK(strcmp(error.field, "substitutes[1].texture") == 0);
  latchwork_panel_destroy(panel);
  latchwork_strip_destroy(strip);
  latchwork_grid_destroy(grid);
  latchwork_swatch_destroy(swatch);
}

static void quantities_are_read_with_their_units(void) {
  latchwork_error error = LATCHWORK_ERROR_INIT;
  latchwork_length length = {1.0};
  latchwork_weight weight = {1.0};
  latchwork_duration duration = {1};
  latchwork_count_per_length density = {1.0, 1.0, LATCHWORK_COUNTED_STITCHES};
  double value = 0.0;
  char text[64];
  checking = "quantities";
  OK(latchwork_read_length("17 3/4 in", 9, "width", &length, &error));
  CHECK(length.mm == 450.85); /* an inch is 25.4 mm exactly: NIST SP 811 */
  OK(latchwork_length_text(&length, LATCHWORK_LENGTH_UNIT_CM, text, sizeof text, NULL, &error));
  CHECK(strcmp(text, "45.085 cm") == 0);
  OK(latchwork_read_weight("1 lb", 4, NULL, &weight, &error));
  OK(latchwork_weight_in(&weight, LATCHWORK_WEIGHT_UNIT_GRAIN, &value, &error));
  CHECK(weight.g == 453.59237 && value == 7000.0);
  OK(latchwork_read_duration("1 h 20 min", 10, NULL, &duration, &error));
  CHECK(duration.ms == 4800000);
  OK(latchwork_duration_text(&duration, text, sizeof text, NULL, &error));
  CHECK(strcmp(text, "1 h 20 min") == 0);
  OK(latchwork_rounded_duration_text(&duration, text, sizeof text, NULL, &error));
  CHECK(strcmp(text, "1 h 20 min") == 0);
  OK(latchwork_read_count_per_length("28 rows / 4 in", 14, NULL, &density, &error));
  CHECK(density.counted == LATCHWORK_COUNTED_ROWS && density.count == 28.0 && density.length_mm == 101.6);
  OK(latchwork_count_per_length_text(&density, LATCHWORK_LENGTH_UNIT_INCH, text, sizeof text, NULL, &error));
  CHECK(strcmp(text, "28 rows / 4 in") == 0);
  OK(latchwork_per_10cm(&density, &value, &error));
  CHECK(value > 27.559 && value < 27.56);
  OK(latchwork_length_of(1.0, LATCHWORK_LENGTH_UNIT_YARD, &length, &error));
  OK(latchwork_length_in(&length, LATCHWORK_LENGTH_UNIT_FOOT, &value, &error));
  CHECK(length.mm == 914.4 && value == 3.0);
  OK(latchwork_weight_of(16.0, LATCHWORK_WEIGHT_UNIT_OUNCE, &weight, &error));
  OK(latchwork_weight_text(&weight, LATCHWORK_WEIGHT_UNIT_POUND, text, sizeof text, NULL, &error));
  CHECK(strcmp(text, "1 lb") == 0);

  CHECK(latchwork_read_length("45 g", 4, "width", &length, &error) == LATCHWORK_E_BAD_UNIT && length.mm == 914.4);
  CHECK(strcmp(error.field, "width") == 0 && error.character == 4);
  CHECK(latchwork_read_count_per_length("28 sts / 10 cm / 4 in", 21, NULL, &density, &error) == LATCHWORK_E_BAD_UNIT);
  CHECK(error.field[0] == '\0' && error.character == 16);
  CHECK(latchwork_length_of(-1.0, LATCHWORK_LENGTH_UNIT_CM, &length, &error) == LATCHWORK_E_BAD_ARGUMENT);
  CHECK(strcmp(error.field, "value") == 0 && error.character == 0);
  CHECK(latchwork_length_text(&length, 6, text, sizeof text, NULL, &error) == LATCHWORK_E_BAD_ARGUMENT);
  CHECK(strcmp(error.field, "unit") == 0);
}

static void yarn_numbers_convert_by_their_definitions(void) {
  latchwork_error error = LATCHWORK_ERROR_INIT;
  latchwork_yarn_number yarn = {0.0, 0, 0}, other = {0.0, 0, 0}, pair[2];
  latchwork_yarn_category classes[8];
  latchwork_length length = {120000.0};
  latchwork_weight weight = {50.0};
  const latchwork_count_per_length gauge = {24.0, 101.6, LATCHWORK_COUNTED_STITCHES};
  size_t needed = 0;
  double value = 0.0;
  char text[64];
  checking = "yarn";
  OK(latchwork_read_yarn_number("5/2 cotton", 10, "yarn", &yarn, &error));
  CHECK(yarn.system == LATCHWORK_YARN_SYSTEM_COTTON && yarn.number == 5.0 && yarn.plies == 2);
  OK(latchwork_yarn_number_in(&yarn, LATCHWORK_YARN_SYSTEM_YARDS_PER_POUND, &other, &error));
  CHECK(other.number == 2100.0 && other.plies == 1); /* 5 * 840 / 2 */
  OK(latchwork_yarn_number_text(&yarn, text, sizeof text, NULL, &error));
  CHECK(strcmp(text, "Ne 5 x 2") == 0);
  OK(latchwork_yarn_number_of(&length, &weight, LATCHWORK_YARN_SYSTEM_METRES_PER_100G, &other, &error));
  CHECK(other.number == 240.0);
  OK(latchwork_yarn_tex(&other, &value, &error));
  CHECK(value > 416.66 && value < 416.67);
  OK(latchwork_yarn_weight(&other, &length, &weight, &error));
  OK(latchwork_yarn_length(&other, &weight, &length, &error));
  CHECK(weight.g == 50.0 && length.mm == 120000.0);
  pair[0] = pair[1] = other;
  OK(latchwork_yarns_together(pair, 2, &yarn, &error));
  CHECK(yarn.number > 833.33 && yarn.number < 833.34 && yarn.system == LATCHWORK_YARN_SYSTEM_TEX);
  OK(latchwork_yarn_diameter_mm(&yarn, 1.54, &value, &error));
  CHECK(value > 1.032 && value < 1.033);
  OK(latchwork_yarn_categories(classes, 8, &needed, &error));
  CHECK(needed == 8 && strcmp(classes[3].name, "Light") == 0 && classes[7].most_needle_mm == 0.0);
  OK(latchwork_yarn_categories_at(&gauge, classes, 8, &needed, &error));
  CHECK(needed == 2 && classes[0].number == 2 && classes[1].number == 3 && classes[1].least_stitches == 21);

  CHECK(latchwork_read_yarn_number("Nm 8/3", 6, "yarn", &other, &error) == LATCHWORK_E_BAD_SYNTAX);
  CHECK(strcmp(error.field, "yarn") == 0 && error.character == 4);
  pair[1].system = 16;
  CHECK(latchwork_yarns_together(pair, 2, &yarn, &error) == LATCHWORK_E_BAD_ARGUMENT);
  CHECK(strcmp(error.field, "yarns[1].system") == 0);
}

static void yarn_is_reckoned_by_every_route(void) {
  latchwork_error error = LATCHWORK_ERROR_INIT;
  latchwork_yarn_request request = LATCHWORK_YARN_REQUEST_INIT;
  latchwork_yarn yarn = {"main", {200.0, LATCHWORK_YARN_SYSTEM_TEX, 1}, 50.0};
  const latchwork_measured_loops loops[2] = {{"stockinette", 100.0, 1000.0}, {"stockinette", 100.0, 1100.0}};
  const latchwork_weighed_swatch weighed = {
      "stockinette", 2.1, 0.0, 0.0, 0.0, 10.0, 100.0, 0.0, LATCHWORK_CLOTH_STATE_WASHED};
  const latchwork_count_per_length gauge = {18.0, 100.0, LATCHWORK_COUNTED_STITCHES};
  const latchwork_count_per_length rows = {30.0, 10.0, LATCHWORK_COUNTED_ROWS};
  const latchwork_yarn_number twenty = {20.0, LATCHWORK_YARN_SYSTEM_TEX, 1};
  latchwork_plain_constants constants = {0.0, 0.0};
  latchwork_strip *strip = NULL, *filled = NULL;
  latchwork_panel *panel = NULL;
  latchwork_swatch *swatch = NULL;
  latchwork_yarn_need *need = NULL;
  latchwork_yarn_file *file = NULL;
  latchwork_yarn_request read_back = LATCHWORK_YARN_REQUEST_INIT;
  latchwork_yarn_need *again = NULL;
  int32_t equal = 0, decides = 7;
  char json[4096];
  latchwork_yarn_estimate estimates[4];
  latchwork_yarn_share share;
  size_t needed = 0;
  double value = 0.0;
  char text[1024];
  checking = "yarn need";
  OK(latchwork_stockinette(30, &strip, &error));
  OK(latchwork_strip_filled_up(strip, 20, &filled, &error));
  OK(latchwork_panel_create("plain", filled, &panel, &error));
  OK(latchwork_swatch_create(NULL, 0, &swatch, &error));
  OK(latchwork_yarn_request_default(&request, &error));
  CHECK(request.pieces == 1 && request.cast_on_rows == 1.0 && request.sureness == 2.0 && request.waste_yarn == -1);
  request.cast_on_rows = request.bind_off_rows = request.sureness = request.allowance = 0.0;
  request.yarns = &yarn;
  request.yarn_count = 1;
  request.loops = loops;
  request.loop_count = 2;
  request.weighed = &weighed;
  request.weighed_count = 1;
  OK(latchwork_panel_yarn_need(panel, swatch, &request, &need, &error));
  OK(latchwork_yarn_need_estimates(need, estimates, 4, &needed, &error));
  CHECK(needed == 2 && estimates[0].route == LATCHWORK_YARN_ROUTE_WEIGHED_STITCHES);
  CHECK(estimates[1].route == LATCHWORK_YARN_ROUTE_MEASURED_LOOPS);
  /* 600 places: of 10.5 mm at 0.2 g a metre, and of 2.1 mg: the same. */
  CHECK(estimates[0].weight_g > 1.2599 && estimates[0].weight_g < 1.2601 && estimates[0].spread_g == 0.0);
  CHECK(estimates[0].spread_known == 0 && estimates[1].spread_known == 1);
  CHECK(estimates[1].weight_g > 1.2599 && estimates[1].weight_g < 1.2601 && estimates[1].spread_g > 0.0);
  CHECK(estimates[1].length_m > 6.2999 && estimates[1].length_m < 6.3001);
  OK(latchwork_yarn_need_apart(need, &value, &error));
  CHECK(value < 1e-9);
  OK(latchwork_yarn_need_shares(need, 1, &share, 1, &needed, &error));
  CHECK(needed == 1 && share.yarn == 0 && share.balls == 1 && share.buy_g == share.weight_g);
  CHECK(latchwork_yarn_need_shares(need, 2, &share, 1, &needed, &error) == LATCHWORK_E_BAD_ARGUMENT);
  OK(latchwork_yarn_need_notes(need, 0, text, sizeof text, NULL, &error));
  CHECK(strstr(text, "measured once") != NULL);
  OK(latchwork_yarn_need_missing(need, text, sizeof text, NULL, &error));
  CHECK(strstr(text, "geometry of plain knit") != NULL && strstr(text, "no gauge") != NULL);
  OK(latchwork_yarn_need_warnings(need, text, sizeof text, NULL, &error));
  CHECK(text[0] == '\0');
  /* Of one swatch that was weighed nothing is known of the spread; of two measurements something is. */
  OK(latchwork_yarn_need_decides(need, &decides, &error));
  CHECK(decides == 1);
  OK(latchwork_yarn_need_why(need, text, sizeof text, NULL, &error));
  CHECK(strcmp(text, "measured loops: the only route whose spread is known") == 0);
  latchwork_yarn_need_destroy(need);
  /* What is written is read back, and C sees it as it was handed in. */
  OK(latchwork_yarn_request_write(&request, json, sizeof json, NULL, &error));
  OK(latchwork_read_yarn_request(json, strlen(json), &file, &error));
  OK(latchwork_yarn_file_request(file, &read_back, &error));
  CHECK(read_back.yarn_count == request.yarn_count && read_back.weighed_count == request.weighed_count);
  CHECK(strcmp(read_back.yarns[0].name, request.yarns[0].name) == 0);
  CHECK(read_back.yarns[0].number.number == request.yarns[0].number.number);
  CHECK(read_back.weighed[0].state == LATCHWORK_CLOTH_STATE_WASHED);
  CHECK(read_back.plain.courses == 0.0 && read_back.plain.wales == 0.0);
  CHECK(read_back.weighed[0].weight_g == request.weighed[0].weight_g && read_back.allowance == request.allowance);
  OK(latchwork_panel_yarn_need(panel, swatch, &read_back, &need, &error));
  OK(latchwork_panel_yarn_need(panel, swatch, &request, &again, &error));
  OK(latchwork_yarn_need_equal(need, again, &equal, &error));
  CHECK(equal == 1);
  latchwork_yarn_need_destroy(again);
  latchwork_yarn_need_destroy(need);
  latchwork_yarn_file_destroy(file);
  request.sureness = 2.0;
  OK(latchwork_panel_yarn_need(panel, swatch, &request, &need, &error));
  OK(latchwork_yarn_need_estimates(need, estimates, 4, &needed, &error));
  OK(latchwork_yarn_need_shares(need, 1, &share, 1, &needed, &error));
  /* Two measurements alone: Student's t of one degree of freedom, 13.97, in the place of 2. */
  CHECK(share.margin_g > 13.9 * share.spread_g && share.margin_g < 14.0 * share.spread_g);
  CHECK(estimates[1].margin_g == share.margin_g && share.buy_g == share.weight_g + share.margin_g);
  latchwork_yarn_need_destroy(need);
  request.plain.courses = 5.0;
  CHECK(latchwork_panel_yarn_need(panel, swatch, &request, &need, &error) == LATCHWORK_E_BAD_ARGUMENT && need == NULL);
  CHECK(strcmp(error.field, "plain.wales") == 0);
  yarn.ball_g = -1.0;
  CHECK(latchwork_panel_yarn_need(panel, swatch, &request, &need, &error) == LATCHWORK_E_BAD_ARGUMENT && need == NULL);
  CHECK(strcmp(error.field, "yarns[0].ball_g") == 0);
  yarn.ball_g = 50.0;
  yarn.number.system = LATCHWORK_YARN_SYSTEM_YARDS_PER_POUND;
  yarn.number.number = 1e-6;
  CHECK(latchwork_panel_yarn_need(panel, swatch, &request, &need, &error) == LATCHWORK_E_BAD_ARGUMENT && need == NULL);
  CHECK(strcmp(error.field, "yarns[0].number.number") == 0);
  latchwork_swatch_destroy(swatch);
  latchwork_panel_destroy(panel);
  latchwork_strip_destroy(filled);
  latchwork_strip_destroy(strip);

  OK(latchwork_plain_constants_of(LATCHWORK_PLAIN_STATE_FULLY_RELAXED, &constants, &error));
  CHECK(constants.courses == 5.5 && constants.wales == 4.2);
  OK(latchwork_plain_loop_mm(&gauge, &constants, &value, &error));
  CHECK(value > 23.333 && value < 23.334); /* check value KG-20 */
  OK(latchwork_plain_per_10cm(LATCHWORK_COUNTED_STITCHES, value, &constants, &value, &error));
  CHECK(value > 17.999 && value < 18.001);
  OK(latchwork_tightness_factor(&twenty, 3.0, &value, &error));
  CHECK(value > 1.4907 && value < 1.4908);
  OK(latchwork_area_density_g_m2(&gauge, &rows, 3.0, &twenty, &value, &error));
  CHECK(value > 32.399 && value < 32.401); /* 54 loops per cm2, of 3 mm, 20 tex */
  CHECK(latchwork_area_density_g_m2(&rows, &rows, 3.0, &twenty, &value, &error) == LATCHWORK_E_BAD_ARGUMENT);
  CHECK(strcmp(error.field, "stitches") == 0);
}

static void a_design_is_graded(void) {
  /* A stitch is 4 mm wide, a row 2.5 mm high; motifs of 10 stitches and 8 rows between edges of one stitch: 208 mm are
     52 stitches, 248 mm are 62. */
  static const latchwork_measurement measurements[] = {
      {"plain", NULL, NULL, 25.0, 100.0, LATCHWORK_COUNTED_STITCHES, 1, 0},
      {"plain", NULL, NULL, 40.0, 100.0, LATCHWORK_COUNTED_ROWS, 1, 0},
  };
  static const latchwork_grade_size sizes[] = {{"S", 208.0, 0.0, 200.0, 0.0}, {"M", 248.0, 0.0, 240.0, 0.0}};
  static const int64_t numbers[] = {4, 6, 8};
  latchwork_swatch *swatch = NULL;
  latchwork_grid *grid = NULL;
  latchwork_strip *motif = NULL, *edge = NULL;
  const latchwork_strip *strips[1];
  latchwork_fit_group group = LATCHWORK_FIT_GROUP_INIT;
  latchwork_fit_request design = LATCHWORK_FIT_REQUEST_INIT;
  latchwork_grade_size wrong = sizes[0], twins[2];
  latchwork_grading *grading = NULL;
  latchwork_fit_candidate candidates[2];
  latchwork_error error = LATCHWORK_ERROR_INIT;
  const char *names[2];
  char text[600];
  size_t needed = 0;
  int32_t missing = 7, complete = 7;
  checking = "grading";
  OK(latchwork_swatch_create(measurements, 2, &swatch, NULL));
  OK(latchwork_grid_create(8, 10, &grid, NULL));
  OK(latchwork_strip_create("motif", "plain", grid, &motif, NULL));
  latchwork_grid_destroy(grid);
  OK(latchwork_grid_create(1, 1, &grid, NULL));
  OK(latchwork_strip_create("edge", "plain", grid, &edge, NULL));
  OK(latchwork_fit_request_default(&design, NULL));
  strips[0] = motif;
  group.strips = strips;
  group.strip_count = 1;
  group.least = 1;
  group.most = 50;
  design.groups = &group;
  design.group_count = 1;
  design.edge = edge;
  design.rows_step = 8;
  OK(latchwork_grade(&design, sizes, 2, swatch, NULL, &grading, &error));
  OK(latchwork_grading_candidates(grading, candidates, 2, &needed, NULL));
  CHECK(needed == 2 && candidates[0].columns == 52 && candidates[1].columns == 62 && candidates[1].times[0] == 6);
  OK(latchwork_grading_names(grading, names, 2, &needed, NULL));
  CHECK(needed == 2 && strcmp(names[1], "M") == 0);
  OK(latchwork_grading_groups(grading, names, 2, &needed, NULL));
  CHECK(needed == 1 && strcmp(names[0], "motif") == 0);
  OK(latchwork_grading_missing(grading, &missing, NULL));
  CHECK(missing == -1);
  OK(latchwork_grading_complete(grading, &complete, NULL));
  CHECK(complete == 1);
  OK(latchwork_grading_words(grading, text, sizeof text, NULL, NULL));
  CHECK(strstr(text, "Columns of a panel: 52 (62)") != NULL);
  OK(latchwork_grading_table(grading, text, sizeof text, NULL, NULL));
  CHECK(strstr(text, "size  panels  group 1") == text);
  OK(latchwork_graded_text(numbers, 3, text, sizeof text, NULL, NULL));
  CHECK(strcmp(text, "4 (6, 8)") == 0);
  latchwork_grading_destroy(grading);
  wrong.name = NULL;
  CHECK(latchwork_grade(&design, &wrong, 1, swatch, NULL, &grading, &error) == LATCHWORK_E_BAD_ARGUMENT && grading == NULL);
  CHECK(strcmp(error.field, "sizes[0].name") == 0);
  twins[0] = twins[1] = sizes[0];
  CHECK(latchwork_grade(&design, twins, 2, swatch, NULL, &grading, &error) == LATCHWORK_E_BAD_ARGUMENT && grading == NULL);
  CHECK(strcmp(error.field, "sizes[1].name") == 0);
  wrong = sizes[0];
  wrong.width_mm = -1.0;
  CHECK(latchwork_grade(&design, &wrong, 1, swatch, NULL, &grading, &error) == LATCHWORK_E_BAD_ARGUMENT && grading == NULL);
  CHECK(strcmp(error.field, "sizes[0].width_mm") == 0);
  latchwork_strip_destroy(edge);
  latchwork_strip_destroy(motif);
  latchwork_grid_destroy(grid);
  latchwork_swatch_destroy(swatch);
}

int main(void) {
  a_unit_is_spelled_as_in_a_quantity();
  a_swatch_measures_a_panel();
  quantities_are_read_with_their_units();
  yarn_numbers_convert_by_their_definitions();
  yarn_is_reckoned_by_every_route();
  a_design_is_graded();
  return checks_told();
}
