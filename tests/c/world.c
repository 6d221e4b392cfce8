#include "world.h"

#include <stdlib.h>
#include <string.h>

#include "allocations.h"

struct world w;
int checks_failed = 0;
long checks_made = 0;
const char *checking = "";

/* A purl below a rope crossing: enough for a plan with a batch and a crossing. */
static const char grid_text[] =
    "kkkkkk\n"
    "kkkkkk\n"
    "x 1 2/2 R\n"
    "kkkkkk\n"
    "kkpkkk\n";

/* Not a plan for anything: it has one of everything, so that every part of a plan can be read back. */
static const char full_plan_json[] =
    "{\"format\": \"latchwork-plan\", \"version\": 1, \"rows\": 4, \"columns\": 6, \"leftmost\": \"L3\",\n"
    " \"carriage_starts_right\": true, \"status\": \"feasible\", \"total_ms\": 90000, \"bound_ms\": 80000,\n"
    " \"rhythm\": {\"every\": 3, \"first\": 2}, \"columns_on\": [0, 1, 2, 4, 5],\n"
    " \"stops\": [{\"row\": 2, \"carriage_right\": true, \"effort_ms\": 70000, \"releases\": [\"L3\", \"R1\"],\n"
    "  \"reforms\": [{\"needle\": \"L2\", \"column\": 4, \"wale\": 4, \"from_row\": 0, \"rungs\": \"pk\"},\n"
    "              {\"needle\": \"L1\", \"column\": 3, \"wale\": 3, \"from_row\": 1, \"rungs\": \"p\"}],\n"
    "  \"crossings\": [{\"crossing\": {\"row\": 2, \"column\": 1, \"left\": 2, \"centre\": 1, \"right\": 1, \"lean\": \"left\",\n"
    "                              \"place\": \"behind\"},\n"
    "    \"returns\": [{\"group\": \"right\", \"stitches\": 1, \"from_needle\": \"L2\", \"to_needle\": \"R2\", \"prongs\": [1]},\n"
    "                {\"group\": \"left\", \"stitches\": 2, \"from_needle\": \"R1\", \"to_needle\": \"L2\", \"prongs\": [2]},\n"
    "                {\"group\": \"centre\", \"stitches\": 1, \"from_needle\": \"L1\", \"to_needle\": \"R1\", \"prongs\": [1]}],\n"
    "    \"ease\": true}],\n"
    "  \"shapings\": [{\"needle\": \"R3\", \"column\": 0, \"on\": false}, {\"needle\": \"L1\", \"column\": 3, \"on\": true}],\n"
    "  \"holds\": [\"L1\"]}]}\n";

/* One of everything again. */
static const char full_certificate_json[] =
    "{\"format\": \"latchwork-certificate\", \"version\": 1, \"rows\": 4, \"columns\": 6, \"bound_ms\": 81500,\n"
    " \"unit\": 6, \"forced\": [2], \"classes\": [{\"wales\": [2], \"least\": 300, \"prices\": [{\"row\": 1, \"price\": 90}]}],\n"
    " \"stretches\": [{\"row\": 1, \"gain\": 3, \"branches\": [{\"row\": 2, \"below\": -1, \"stop\": true, \"end\": \"bound\", \"by\": -1}]}],\n"
    " \"branches\": [{\"row\": 0, \"below\": -1, \"stop\": false, \"end\": \"bound\", \"by\": -1}]}\n";

void begin(const struct how *how) { allocations_begin(how->fail_at); }
void end(const struct how *how) {
  (void)how;
  allocations_end();
}

#define HANDLE(type)                                                                            \
  int same_##type(const latchwork_##type *a, const latchwork_##type *b) {                       \
    int32_t equal = 0;                                                                          \
    return latchwork_##type##_equal(a, b, &equal, NULL) == LATCHWORK_OK && equal == 1;          \
  }
HANDLES(HANDLE)
#undef HANDLE

#define TRY(call)                                                                \
  do {                                                                           \
    latchwork_error error = LATCHWORK_ERROR_INIT;                                \
    latchwork_error *const e = &error;                                           \
    if ((call) != LATCHWORK_OK) {                                                \
      printf("world.c:%d: %s, %s\n", __LINE__, error.message, error.field);      \
      return __LINE__;                                                           \
    }                                                                            \
  } while (0)

/* The text of a call that writes: asked for its size, then for itself. */
#define WRITTEN(to, function, ...)                         \
  do {                                                     \
    size_t needed = 0;                                     \
    TRY(function(__VA_ARGS__, NULL, 0, &needed, e));       \
    (to) = malloc(needed);                                 \
    if ((to) == NULL) return __LINE__;                     \
    TRY(function(__VA_ARGS__, (to), needed, NULL, e));     \
  } while (0)

static void measure(latchwork_measurement *to, const char *texture, int32_t counted, double count) {
  to->texture = texture;
  to->place = "middle";
  to->count = count;
  to->length_mm = 100.0;
  to->counted = counted;
  to->swatch = "first";
  to->state = LATCHWORK_CLOTH_STATE_RESTED;
}

static void time_spell(latchwork_spell *to, int32_t stops, int32_t rows, int64_t time_ms) {
  static const latchwork_spell none = {0};
  *to = none;
  to->stops = stops;
  to->batches = stops;
  to->rows = rows;
  to->time_ms = time_ms;
  to->note = "by the clock";
}

static void make_shape(void) {
  const latchwork_edge_shape edge_shape = LATCHWORK_EDGE_SHAPE_INIT;
  const latchwork_outline outline = LATCHWORK_OUTLINE_INIT;
  const latchwork_shape_options options = LATCHWORK_SHAPE_OPTIONS_INIT;
  const latchwork_schematic schematic = LATCHWORK_SCHEMATIC_INIT;
  int i;
  w.edge_points[1].row = 4;
  w.edge_points[1].columns = 1.0;
  w.edge_shape = edge_shape;
  w.edge_shape.points = w.edge_points;
  w.edge_shape.point_count = 2;
  for (i = 0; i < 4; ++i) w.row_spans[i].last = i < 3 ? 5 : 4;
  w.outline = outline;
  w.outline.rows = w.row_spans;
  w.outline.row_count = 4;
  w.shape_options = options;
  w.shape_options.edge_stitches = 2;
  w.corners[1].x_mm = 300.0;
  w.corners[2].y_mm = 200.0;
  w.measure.end.x_mm = 300.0;
  w.measure.mm = 300.0;
  w.measure.label = "width";
  w.piece.name = "shawl";
  w.piece.outline = w.corners;
  w.piece.outline_count = 3;
  w.piece.measures = &w.measure;
  w.piece.measure_count = 1;
  w.schematic = schematic;
  w.schematic.title = "shawl";
  w.schematic.pieces = &w.piece;
  w.schematic.piece_count = 1;
}

static int make_structs(void) {
  const latchwork_machine machine = LATCHWORK_MACHINE_INIT;
  const latchwork_effort effort = LATCHWORK_EFFORT_INIT;
  const latchwork_crossing crossing = {3, 0, 2, 0, 1, LATCHWORK_LEAN_LEFT, LATCHWORK_CENTRE_BETWEEN};
  const latchwork_plan_options plan_options = LATCHWORK_PLAN_OPTIONS_INIT;
  const latchwork_conditions conditions = LATCHWORK_CONDITIONS_INIT;
  const latchwork_watch_options watch_options = LATCHWORK_WATCH_OPTIONS_INIT;
  const latchwork_chart_options chart_options = LATCHWORK_CHART_OPTIONS_INIT;
  const latchwork_panel_parts parts = LATCHWORK_PANEL_PARTS_INIT;
  const latchwork_size_options size_options = LATCHWORK_SIZE_OPTIONS_INIT;
  const latchwork_session_options session_options = LATCHWORK_SESSION_OPTIONS_INIT;
  const latchwork_fit_request request = LATCHWORK_FIT_REQUEST_INIT;
  const latchwork_bed bed = LATCHWORK_BED_INIT;
  const latchwork_move move = LATCHWORK_MOVE_INIT;
  const latchwork_spacing spacing = LATCHWORK_SPACING_INIT;
  const uint8_t cells[6] = {0, 1, 0, 0, 0, 1};
  int32_t i;
  w.machine = machine;
  w.effort = effort;
  w.crossing = crossing;
  w.free_crossing = crossing;
  w.plan_options = plan_options;
  w.conditions = conditions;
  w.conditions.carriage_right_only = 1;
  w.plan_options.conditions = &w.conditions;
  w.watch_options = watch_options;
  w.chart_options = chart_options;
  w.parts = parts;
  w.request = request;
  w.size_options = size_options;
  w.session_options = session_options;
  TRY(latchwork_size_options_default(&w.size_options, e));
  TRY(latchwork_session_options_default(&w.session_options, e));
  w.session_options.rest_ms = 60000;
  w.bed = bed;
  w.move = move;
  w.length.mm = 450.85;
  w.weight.g = 50.0;
  w.duration.ms = 4800000;
  w.density.count = 28.0;
  w.density.length_mm = 101.6;
  w.yarn.number = 28.0;
  w.yarn.system = LATCHWORK_YARN_SYSTEM_METRIC;
  w.yarn.plies = 2;
  w.row_density = w.density;
  w.row_density.counted = LATCHWORK_COUNTED_ROWS;
  make_shape();
  w.spacing = spacing;
  TRY(latchwork_spaced_evenly(108, 11, LATCHWORK_SPACING_ENDS_IN_THE_ROUND, 1, &w.spacing, e));
  w.constants.courses = 5.5;
  w.constants.wales = 4.2;
  memcpy(w.cells, cells, sizeof cells);
  TRY(latchwork_machine_generic(LATCHWORK_MACHINE_CLASS_STANDARD, &w.machine, e));
  TRY(latchwork_effort_default(&w.effort, e));
  TRY(latchwork_fit_request_default(&w.request, e));
  measure(&w.measurements[0], "rope", LATCHWORK_COUNTED_STITCHES, 30.0);
  measure(&w.measurements[1], "rope", LATCHWORK_COUNTED_ROWS, 40.0);
  measure(&w.measurements[2], "stockinette", LATCHWORK_COUNTED_STITCHES, 28.0);
  measure(&w.measurements[3], "stockinette", LATCHWORK_COUNTED_ROWS, 42.0);
  measure(&w.measurements[4], "rope", LATCHWORK_COUNTED_STITCHES, 29.0);
  measure(&w.measurements[5], "rope", LATCHWORK_COUNTED_ROWS, 39.0);
  w.measurements[4].state = w.measurements[5].state = LATCHWORK_CLOTH_STATE_OFF_MACHINE;
  for (i = 0; i < 9; ++i) {
    time_spell(&w.spells[i], i % 4, 10 + i, 27000 * (i % 4) + 4000 * (10 + i) + 70 * (i * 5 % 9) + (i == 4 ? 60000 : 0));
  }
  return 0;
}

static int make_cloth(void) {
  latchwork_strip *edge = NULL;
  w.grid_text = grid_text;
  TRY(latchwork_grid_from_text(grid_text, strlen(grid_text), &w.grid, e));
  TRY(latchwork_grid_mirrored(w.grid, &w.other_grid, e));
  TRY(latchwork_grid_create(1, 1, &w.patch, e));
  TRY(latchwork_wales_create(w.grid, &w.wales, e));
  TRY(latchwork_wales_create(w.patch, &w.other_wales, e));
  TRY(latchwork_strip_create("rope", "rope", w.grid, &w.strip, e));
  TRY(latchwork_stockinette(1, &edge, e));
  w.other_strip = edge;
  w.strips[0] = w.strip;
  w.strips[1] = w.other_strip;
  TRY(latchwork_panel_create("sample", w.strip, &w.panel, e));
  TRY(latchwork_panel_mirrored(w.panel, &w.other_panel, e));
  w.band.row = 1;
  w.band.rows = 4;
  w.band.strips = 1;
  w.span.name = "rope";
  w.span.texture = "rope";
  w.span.column = 0;
  w.span.columns = 6;
  w.span.repeat_rows = 4;
  w.parts.rows = 8;
  w.parts.name = "mirrored";
  w.parts.edge = w.other_strip;
  w.parts.left = w.strips;
  w.parts.left_count = 1;
  w.parts.centre = w.other_strip;
  w.request.width_mm = 120.0;
  w.request.height_mm = 100.0;
  w.groups[0].strips = w.groups[1].strips = w.strips;
  w.groups[0].strip_count = w.groups[1].strip_count = 1;
  w.groups[0].least = w.groups[1].least = w.groups[1].most = 1;
  w.groups[0].most = 20;
  w.request.groups = w.groups;
  w.request.group_count = 2;
  w.request.edge = w.other_strip;
  w.request.rows_step = 4;
  w.request.most = 3;
  w.sizes[0].name = "S";
  w.sizes[0].width_mm = 120.0;
  w.sizes[0].height_mm = 100.0;
  w.sizes[1].name = "M";
  w.sizes[1].width_mm = 140.0;
  w.sizes[1].height_mm = 120.0;
  w.numbers[0] = 4;
  w.numbers[1] = 6;
  w.numbers[2] = 8;
  return 0;
}

static int make_wide_panel(void) {
  latchwork_strip *across = NULL, *up = NULL;
  TRY(latchwork_strip_repeated_across(w.strip, 10, &across, e));
  TRY(latchwork_strip_filled_up(across, 60, &up, e));
  TRY(latchwork_panel_create("wide", up, &w.wide_panel, e));
  latchwork_strip_destroy(across);
  latchwork_strip_destroy(up);
  return 0;
}

static int make_work(void) {
  size_t needed = 0;
  size_t i;
  latchwork_fit_request narrow = w.request;
  latchwork_fit_candidate candidates[3];
  latchwork_grid *wide = NULL;
  TRY(latchwork_swatch_create(w.measurements, 6, &w.swatch, e));
  TRY(latchwork_swatch_create(w.measurements, 2, &w.other_swatch, e));
  TRY(latchwork_timings_create(w.spells, 9, &w.timings, e));
  TRY(latchwork_timings_create(w.spells, 8, &w.other_timings, e));
  TRY(latchwork_timings_fit_effort(w.timings, NULL, &w.effort_fit, e));
  TRY(latchwork_timings_fit_effort(w.other_timings, NULL, &w.other_effort_fit, e));
  TRY(latchwork_fit(&w.request, w.swatch, NULL, &w.fit_result, e));
  narrow.needles = 5; /* nothing fits */
  TRY(latchwork_fit(&narrow, w.swatch, NULL, &w.other_fit_result, e));
  TRY(latchwork_grade(&w.request, w.sizes, 2, w.swatch, NULL, &w.grading, e));
  TRY(latchwork_grade(&narrow, w.sizes, 2, w.swatch, NULL, &w.other_grading, e));
  TRY(latchwork_fit_result_candidates(w.fit_result, candidates, 3, &needed, e));
  if (needed == 0) return __LINE__;
  w.candidate = candidates[0];
  TRY(latchwork_grid_create(1, 300, &wide, e)); /* wider than the bed of 200 needles */
  TRY(latchwork_grid_findings(wide, &w.machine, &w.findings, e));
  TRY(latchwork_grid_findings(w.patch, &w.machine, &w.other_findings, e));
  TRY(latchwork_grid_plan(wide, &w.machine, NULL, NULL, &w.infeasible_plan, e));
  latchwork_grid_destroy(wide);
  TRY(latchwork_grid_plan(w.grid, &w.machine, &w.effort, NULL, &w.plan, e));
  TRY(latchwork_grid_plan(w.other_grid, &w.machine, &w.effort, NULL, &w.other_plan, e));
  TRY(latchwork_grid_plan_front(w.grid, &w.machine, &w.effort, NULL, &w.front, e));
  TRY(latchwork_grid_plan_front(w.other_grid, &w.machine, &w.effort, NULL, &w.other_front, e));
  TRY(latchwork_read_plan(full_plan_json, strlen(full_plan_json), &w.full_plan, e));
  TRY(latchwork_read_certificate(full_certificate_json, strlen(full_certificate_json), &w.certificate, e));
  TRY(latchwork_grid_certify(w.grid, &w.machine, &w.effort, 81500, NULL, &w.other_certificate, e));
  TRY(latchwork_plan_moves(w.plan, NULL, 0, &w.moves_count, e));
  w.moves = malloc(w.moves_count * sizeof *w.moves);
  if (w.moves == NULL) return __LINE__;
  TRY(latchwork_plan_moves(w.plan, w.moves, w.moves_count, NULL, e));
  TRY(latchwork_plan_leftmost(w.plan, &w.bed.leftmost, e));
  w.bed.columns = 6;
  for (i = 0; i < w.moves_count && w.moves[i].kind != LATCHWORK_MOVE_KIND_LIFT; ++i) {
  }
  if (i == w.moves_count) return __LINE__;
  w.move = w.moves[i];
  TRY(latchwork_simulate(&w.bed, w.moves, w.moves_count, NULL, &w.other_fabric, e));
  /* One move left out in the middle: a fabric with a fault. */
  memmove(&w.moves[i], &w.moves[i + 1], (w.moves_count - i - 1) * sizeof *w.moves);
  --w.moves_count;
  TRY(latchwork_simulate(&w.bed, w.moves, w.moves_count, NULL, &w.fabric, e));
  return 0;
}

static const char other_yarn_json[] =
    "{\"format\": \"latchwork-yarn\", \"version\": 1, \"yarns\": [{\"number\": \"20 tex\"}],\n"
    " \"rows\": [{\"first\": 1, \"yarn\": 0}],\n"
    " \"loops\": [{\"texture\": \"rope\", \"stitches\": 100, \"length_mm\": 900}],\n"
    " \"substitutes\": [{\"texture\": \"edge\", \"use\": \"rope\"}]}";

static int make_yarn(void) {
  const latchwork_yarn_request yarn_request = LATCHWORK_YARN_REQUEST_INIT;
  const latchwork_weighed_swatch weighed = {"rope",  6.0,  0.1, 120.0,
                                            100.0,   36.0, 40.0, 0.0, LATCHWORK_CLOTH_STATE_RESTED};
  w.yarn_request = yarn_request;
  w.weighed[0] = weighed;
  w.main_yarn.name = "main";
  w.main_yarn.number = w.yarn;
  w.main_yarn.ball_g = 50.0;
  TRY(latchwork_yarn_request_default(&w.yarn_request, e));
  w.yarn_request.yarns = &w.main_yarn;
  w.yarn_request.yarn_count = 1;
  w.yarn_request.weighed = w.weighed;
  w.yarn_request.weighed_count = 1;
  TRY(latchwork_panel_yarn_need(w.panel, w.swatch, &w.yarn_request, &w.yarn_need, e));
  w.yarn_request.pieces = 2;
  TRY(latchwork_panel_yarn_need(w.panel, w.swatch, &w.yarn_request, &w.other_yarn_need, e));
  WRITTEN(w.yarn_json, latchwork_yarn_request_write, &w.yarn_request);
  TRY(latchwork_read_yarn_request(w.yarn_json, strlen(w.yarn_json), &w.yarn_file, e));
  TRY(latchwork_read_yarn_request(other_yarn_json, strlen(other_yarn_json), &w.other_yarn_file, e));
  return 0;
}

/* One of everything that an article can have. */
static const char bolster_json[] =
    "{\"format\": \"latchwork-article\", \"version\": 1, \"name\": \"bolster\", \"measures\": [\"length\", \"girth\"],\n"
    " \"lists\": [{\"name\": \"ours\", \"source\": \"invented\", \"mark\": \"practice\", \"of\": \"filling\", \"sizes\": [\n"
    "  {\"name\": \"small\", \"measures\": [\n"
    "   {\"name\": \"length\", \"least_mm\": 500, \"greatest_mm\": 500, \"printed\": \"50 cm\"},\n"
    "   {\"name\": \"girth\", \"least_mm\": 300, \"greatest_mm\": 320, \"printed\": \"30-32 cm\"}]}]}],\n"
    " \"inputs\": [{\"name\": \"ease\", \"meaning\": \"room\", \"least_mm\": -10, \"greatest_mm\": 50}],\n"
    " \"counts\": [{\"name\": \"panels\", \"meaning\": \"round it\", \"least\": 1, \"greatest\": 8}],\n"
    " \"closures\": [{\"name\": \"lap\", \"kind\": \"overlap\", \"overlap_least_mm\": 20, \"overlap_greatest_mm\": 30,\n"
    "  \"source\": \"invented\"}],\n"
    " \"rules\": [{\"name\": \"stepped\", \"source\": \"invented\", \"pairs\": [{\"filling_mm\": 500, \"finished_mm\": 480}]},\n"
    "  {\"name\": \"snug\", \"source\": \"invented\", \"larger_least_mm\": 10, \"larger_greatest_mm\": 10}],\n"
    " \"pieces\": [{\"name\": \"body\", \"times\": [\"panels\"], \"closures\": [\"lap\"],\n"
    "  \"width\": {\"terms\": [{\"of\": \"girth\"}, {\"of\": \"ease\"}], \"over\": [\"panels\"]},\n"
    "  \"length\": {\"terms\": [{\"of\": \"length\"}, {\"of\": \"overlap\", \"times\": 0.5}]}, \"left\": \"seamed\",\n"
    "  \"right\": \"seamed\", \"upper\": \"closure\",\n"
    "  \"shape\": [{\"height\": {\"terms\": [{\"of\": \"length\", \"times\": 0.5}]}, \"width\": {\"least_mm\": 90, \"greatest_mm\": 95}}]}],\n"
    " \"seams\": [{\"name\": \"side\", \"times\": [\"panels\"], \"between\": [\"panels\"], \"closures\": [\"lap\"],\n"
    "  \"length\": {\"terms\": [{\"of\": \"length\"}]}}],\n"
    " \"cautions\": [{\"text\": \"Keep it from fires.\", \"source\": \"invented\", \"mark\": \"practice\"}]}";

static int make_articles(void) {
  const latchwork_article article = LATCHWORK_ARTICLE_INIT;
  const latchwork_article_choices choices = LATCHWORK_ARTICLE_CHOICES_INIT;
  w.article = article;
  w.choices = choices;
  w.ease.name = "ease";
  w.ease.least_mm = 10.0;
  w.ease.greatest_mm = 12.0;
  w.panels.name = "panels";
  w.panels.count = 3;
  w.choices.list = "ours";
  w.choices.size = "small";
  w.choices.rule = "snug";
  w.choices.closure = "lap";
  w.choices.measures = &w.ease;
  w.choices.measure_count = 1;
  w.choices.counts = &w.panels;
  w.choices.count_count = 1;
  TRY(latchwork_read_article(bolster_json, strlen(bolster_json), &w.article_file, e));
  TRY(latchwork_built_in_article("scarf", &w.other_article_file, e));
  TRY(latchwork_article_file_article(w.article_file, &w.article, e));
  TRY(latchwork_article_targets(&w.article, &w.choices, &w.other_targets, e));
  w.ease.greatest_mm = 14.0;
  TRY(latchwork_article_targets(&w.article, &w.choices, &w.targets, e));
  WRITTEN(w.article_json, latchwork_article_write, &w.article);
  return 0;
}

/* The bolster's body of the panel, its rope so many times; and in another request nothing that fits. */
static int make_article_fits(void) {
  static const char other_choices_json[] =
      "{\"format\": \"latchwork-article-choices\", \"version\": 1, \"article\": \"scarf\"}";
  const latchwork_article_request request = LATCHWORK_ARTICLE_REQUEST_INIT;
  const latchwork_fit_options fit_options = LATCHWORK_FIT_OPTIONS_INIT;
  const latchwork_fit_request design = LATCHWORK_FIT_REQUEST_INIT;
  latchwork_article_request narrow;
  latchwork_fit_request two_stitches;
  latchwork_fit_result *found = NULL;
  latchwork_fit_candidate candidates[3];
  w.fit_options = fit_options;
  w.article_request = request;
  w.article_design = design;
  TRY(latchwork_fit_request_default(&w.article_design, e));
  w.article_design.most = 3;
  w.article_design.needles = 200;
  w.run.first = 0;
  w.run.last = 0;
  w.run.least = 1;
  w.run.most = 20;
  w.made[0] = "body";
  w.article_request.article = "bolster.json";
  w.article_request.choices = &w.choices;
  w.article_request.made = w.made;
  w.article_request.made_count = 1;
  w.article_request.groups = &w.run;
  w.article_request.group_count = 1;
  w.article_request.design = &w.article_design;
  w.target_piece.name = "pocket";
  w.target_piece.width_least_mm = 110.0;
  w.target_piece.width_greatest_mm = 120.0;
  w.target_piece.length_least_mm = w.target_piece.length_greatest_mm = 100.0;
  w.target_piece.count = 1;
  w.target_piece.left = w.target_piece.right = LATCHWORK_EDGE_USE_SEAMED;
  w.target_points[0].height_least_mm = w.target_points[0].height_greatest_mm = 50.0;
  w.target_points[0].width_least_mm = 60.0;
  w.target_points[0].width_greatest_mm = 400.0;
  w.uncut_piece = w.target_piece;
  w.uncut_piece.width_least_mm = 60.0;
  w.uncut_piece.width_greatest_mm = 400.0;
  if (make_wide_panel() != 0) return -1;
  TRY(latchwork_fit_article(&w.article, &w.article_request, w.panel, w.swatch, NULL, &w.article_fit, e));
  TRY(latchwork_article_fit_result(w.article_fit, 0, &found, e));
  TRY(latchwork_fit_result_candidates(found, candidates, 3, NULL, e));
  latchwork_fit_result_destroy(found);
  w.article_candidate = candidates[0];
  narrow = w.article_request;
  two_stitches = w.article_design;
  two_stitches.needles = 2;
  narrow.design = &two_stitches;
  TRY(latchwork_fit_article(&w.article, &narrow, w.panel, w.swatch, NULL, &w.other_article_fit, e));
  WRITTEN(w.choices_json, latchwork_article_request_write, &w.article_request);
  TRY(latchwork_read_article_request(w.choices_json, strlen(w.choices_json), &w.article_request_file, e));
  TRY(latchwork_read_article_request(other_choices_json, strlen(other_choices_json), &w.other_article_request_file, e));
  return 0;
}

static int make_sewn_job(void) {
  static const latchwork_measurement measured[2] = {
      {"stockinette", "", "", 25.0, 100.0, LATCHWORK_COUNTED_STITCHES, LATCHWORK_CLOTH_STATE_RESTED, 0},
      {"stockinette", "", "", 40.0, 100.0, LATCHWORK_COUNTED_ROWS, LATCHWORK_CLOTH_STATE_RESTED, 0}};
  static const latchwork_strip_run run = {1, 1, 1, 3, 0, 0};
  static const latchwork_extent width = {NULL, 0, 120.0, 120.0, NULL, 0};
  static const latchwork_extent height = {NULL, 0, 20.0, 20.0, NULL, 0};
  static const latchwork_extent narrow = {NULL, 0, 80.0, 80.0, NULL, 0}; /* of 104, the best fit */
  const latchwork_article article_init = LATCHWORK_ARTICLE_INIT;
  const latchwork_article_request request_init = LATCHWORK_ARTICLE_REQUEST_INIT;
  const latchwork_article_choices choices = LATCHWORK_ARTICLE_CHOICES_INIT;
  latchwork_article article = article_init;
  latchwork_article_request request = request_init;
  latchwork_fit_request design = LATCHWORK_FIT_REQUEST_INIT;
  latchwork_article_piece piece;
  latchwork_shape_point top;
  latchwork_strip *edge = NULL, *ground = NULL;
  const latchwork_strip *strips[3];
  latchwork_panel *panel = NULL;
  latchwork_swatch *swatch = NULL;
  latchwork_brief *brief = NULL;
  latchwork_job *job = NULL;
  TRY(latchwork_stockinette(1, &edge, e));
  TRY(latchwork_stockinette(4, &ground, e));
  strips[0] = strips[2] = edge;
  strips[1] = ground;
  TRY(latchwork_join_strips("flap", 8, strips, 3, &panel, e));
  TRY(latchwork_swatch_create(measured, 2, &swatch, e));
  TRY(latchwork_brief_create(panel, swatch, &w.machine, NULL, &brief, e));
  top.height = height;
  top.width = narrow;
  memset(&piece, 0, sizeof piece);
  piece.name = "flap";
  piece.count = 1;
  piece.width = width;
  piece.length = height;
  piece.shape = &top;
  piece.shape_count = 1;
  article.name = "flap";
  article.pieces = &piece;
  article.piece_count = 1;
  TRY(latchwork_fit_request_default(&design, e));
  design.panels_least = design.panels_most = 3;
  request.article = "flap.json";
  request.choices = &choices;
  request.groups = &run;
  request.group_count = 1;
  request.edge = 0;
  request.design = &design;
  TRY(latchwork_brief_set_article(brief, &request, &article, e));
  TRY(latchwork_brief_run(brief, NULL, &job, e));
  TRY(latchwork_job_article(job, &w.sewn_job, e));
  latchwork_job_destroy(job);
  latchwork_brief_destroy(brief);
  latchwork_swatch_destroy(swatch);
  latchwork_panel_destroy(panel);
  latchwork_strip_destroy(ground);
  latchwork_strip_destroy(edge);
  return 0;
}

static int make_briefs(void) {
  latchwork_machine narrow = w.machine;
  narrow.needles = 100;
  TRY(latchwork_brief_create(w.panel, w.swatch, &w.machine, &w.effort, &w.brief, e));
  TRY(latchwork_brief_create(w.other_panel, w.swatch, &narrow, NULL, &w.other_brief, e));
  TRY(latchwork_brief_set_yarn(w.brief, &w.yarn_request, e));
  TRY(latchwork_brief_set_article(w.brief, &w.article_request, &w.article, e));
  w.substitute.texture = "lace";
  w.substitute.use = "rope";
  TRY(latchwork_brief_set_substitutes(w.brief, &w.substitute, 1, e));
  w.split_part.columns = 1;
  w.split_part.seam_right = 1;
  TRY(latchwork_brief_run(w.brief, NULL, &w.job, e));
  TRY(latchwork_job_article(w.job, &w.article_job, e));
  TRY(latchwork_brief_set_article(w.other_brief, &w.article_request, &w.article, e));
  TRY(latchwork_brief_run(w.other_brief, NULL, &w.other_job, e));
  TRY(latchwork_job_article(w.other_job, &w.other_article_job, e));
  WRITTEN(w.grid_json, latchwork_grid_write, w.grid);
  WRITTEN(w.strip_json, latchwork_strip_write, w.strip);
  WRITTEN(w.panel_json, latchwork_panel_write, w.panel);
  WRITTEN(w.machine_json, latchwork_machine_write, &w.machine, &w.effort);
  WRITTEN(w.plan_json, latchwork_plan_write, w.plan);
  WRITTEN(w.certificate_json, latchwork_certificate_write, w.certificate);
  WRITTEN(w.swatch_csv, latchwork_swatch_write, w.swatch);
  WRITTEN(w.timings_csv, latchwork_timings_write, w.timings);
  return 0;
}

int world_make(const char *brief_folder, const char *out_folder) {
  int line;
  w.brief_folder = brief_folder;
  w.out_folder = out_folder;
  line = make_structs();
  if (line == 0) line = make_cloth();
  if (line == 0) line = make_work();
  if (line == 0) line = make_yarn();
  if (line == 0) line = make_articles();
  if (line == 0) line = make_article_fits();
  if (line == 0) line = make_briefs();
  if (line == 0) line = make_sewn_job();
  return line;
}

void world_free(void) {
#define HANDLE(type)                \
  latchwork_##type##_destroy(w.type); \
  latchwork_##type##_destroy(w.other_##type);
  HANDLES(HANDLE)
#undef HANDLE
  latchwork_grid_destroy(w.patch);
  latchwork_article_job_destroy(w.sewn_job);
  latchwork_panel_destroy(w.wide_panel);
  latchwork_plan_destroy(w.full_plan);
  latchwork_plan_destroy(w.infeasible_plan);
  free(w.moves);
  free(w.grid_json);
  free(w.strip_json);
  free(w.panel_json);
  free(w.machine_json);
  free(w.yarn_json);
  free(w.article_json);
  free(w.choices_json);
  free(w.plan_json);
  free(w.certificate_json);
  free(w.swatch_csv);
  free(w.timings_csv);
}
