/* Articles through the C ABI: those that come with the library, and a host's own, built in memory. */
#include <stdlib.h>
#include <string.h>

#include "program.h"

static int near(double value, double wanted) { return value > wanted - 1e-6 && value < wanted + 1e-6; }

static void articles_come_with_the_library(void) {
  latchwork_error error = LATCHWORK_ERROR_INIT;
  latchwork_article_file *file = NULL, *again = NULL;
  latchwork_article article = LATCHWORK_ARTICLE_INIT;
  latchwork_article small = LATCHWORK_ARTICLE_INIT;
  char text[256];
  char *json;
  size_t needed = 0;
  int32_t equal = 0;
  checking = "built-in articles";
  OK(latchwork_article_names(text, sizeof text, NULL, &error));
  CHECK(strcmp(text, "cushion cover\nblanket of panels\nscarf\nbag panel\nstraight garment pieces") == 0);
  OK(latchwork_built_in_article("cushion cover", &file, &error));
  OK(latchwork_article_file_article(file, &article, &error));
  CHECK(strcmp(article.name, "cushion cover") == 0 && article.measure_count == 2);
  CHECK(strcmp(article.measures[1], "height") == 0 && article.list_count == 3);
  CHECK(strcmp(article.lists[2].source, "aloriam.com") == 0 && article.lists[2].of == LATCHWORK_SIZE_OF_FILLING);
  CHECK(strcmp(article.lists[2].sizes[1].measures[0].printed, "18 in") == 0);
  CHECK(near(article.lists[2].sizes[1].measures[0].least_mm, 457.2));
  CHECK(article.closure_count == 3 && article.closures[0].mark == LATCHWORK_SOURCE_MARK_FROM_MEMORY);
  CHECK(article.closures[0].kind == LATCHWORK_CLOSURE_KIND_OVERLAP && article.closures[0].overlap_greatest_mm == 150.0);
  CHECK(article.rules[4].pair_count == 7 && near(article.rules[4].pairs[0].finished_mm, 393.7));
  CHECK(strcmp(article.pieces[2].length.terms[1].of, "overlap") == 0 && article.pieces[2].length.terms[1].times == 0.5);
  CHECK(article.pieces[2].upper == LATCHWORK_EDGE_USE_CLOSURE && article.pieces[2].closure_count == 2);
  CHECK(article.caution_count > 2 && strstr(article.cautions[0].source, "Pediatrics") != NULL);
  /* What C sees is written as it stands, and read back equal. */
  OK(latchwork_article_write(&article, NULL, 0, &needed, &error));
  json = malloc(needed);
  CHECK(json != NULL);
  OK(latchwork_article_write(&article, json, needed, NULL, &error));
  OK(latchwork_read_article(json, strlen(json), &again, &error));
  OK(latchwork_article_file_equal(file, again, &equal, &error));
  CHECK(equal == 1);
  free(json);
  latchwork_article_file_destroy(again);
  latchwork_article_file_destroy(file);
  CHECK(latchwork_built_in_article("hat", &file, &error) == LATCHWORK_E_BAD_ARGUMENT && file == NULL);
  CHECK(strcmp(error.field, "name") == 0 && strstr(error.message, "'scarf'") != NULL);
  CHECK(latchwork_article_write(&small, NULL, 0, &needed, &error) == LATCHWORK_E_BAD_VALUE);
  CHECK(strcmp(error.field, "name") == 0);
}

static void a_blanket_is_shared_out(void) {
  latchwork_error error = LATCHWORK_ERROR_INIT;
  latchwork_article_file *file = NULL;
  latchwork_article article = LATCHWORK_ARTICLE_INIT;
  latchwork_article_choices choices = LATCHWORK_ARTICLE_CHOICES_INIT;
  const latchwork_named_measure size[2] = {{"width", 1200.0, 1200.0, NULL, NULL},
                                           {"height", 1500.0, 1500.0, NULL, NULL}};
  latchwork_named_count counts[2] = {{"across", 3}, {"up", 1}};
  latchwork_targets *targets = NULL;
  latchwork_target_piece pieces[9];
  latchwork_target_seam seams[2];
  latchwork_caution cautions[8];
  latchwork_named_measure filling;
  size_t needed = 0;
  double mm = 0.0;
  checking = "blanket";
  OK(latchwork_built_in_article("blanket of panels", &file, &error));
  OK(latchwork_article_file_article(file, &article, &error));
  CHECK(latchwork_article_targets(&article, &choices, &targets, &error) == LATCHWORK_E_BAD_ARGUMENT && targets == NULL);
  CHECK(strcmp(error.field, "choices.list") == 0);
  choices.measures = size;
  choices.measure_count = 2;
  choices.counts = counts;
  choices.count_count = 2;
  OK(latchwork_article_targets(&article, &choices, &targets, &error));
  OK(latchwork_targets_pieces(targets, pieces, 9, &needed, &error));
  CHECK(needed == 3 && strcmp(pieces[0].name, "panel, left") == 0 && pieces[0].count == 1);
  CHECK(pieces[0].left == LATCHWORK_EDGE_USE_FREE && pieces[0].right == LATCHWORK_EDGE_USE_SEAMED);
  CHECK(pieces[0].width_least_mm == 400.0 && pieces[2].length_greatest_mm == 1500.0);
  CHECK(pieces[2].right == LATCHWORK_EDGE_USE_FREE && pieces[2].lower == LATCHWORK_EDGE_USE_FREE);
  OK(latchwork_targets_seams(targets, seams, 2, &needed, &error));
  CHECK(needed == 1 && seams[0].count == 2 && seams[0].least_mm == 1500.0);
  OK(latchwork_targets_seam_least_mm(targets, &mm, &error));
  CHECK(mm == 3000.0);
  OK(latchwork_targets_seam_greatest_mm(targets, &mm, &error));
  CHECK(mm == 3000.0);
  OK(latchwork_targets_filling(targets, &filling, 1, &needed, &error));
  CHECK(needed == 0);
  OK(latchwork_targets_cautions(targets, cautions, 8, &needed, &error));
  CHECK(needed == article.caution_count && strcmp(cautions[0].text, article.cautions[0].text) == 0);
  latchwork_targets_destroy(targets);
  counts[1].count = 1001;
  CHECK(latchwork_article_targets(&article, &choices, &targets, &error) == LATCHWORK_E_BAD_ARGUMENT && targets == NULL);
  CHECK(strcmp(error.field, "choices.counts[1].count") == 0);
  latchwork_article_file_destroy(file);
}

static void a_host_makes_its_own(void) {
  /* A door cushion, invented: filled, lapped, with a shaped front. */
  latchwork_error error = LATCHWORK_ERROR_INIT;
  static const char *const measures[] = {"width"};
  static const latchwork_named_measure forty[] = {{"width", 400.0, 400.0, "40 cm", NULL}};
  latchwork_article_size size = {"forty", forty, 1};
  latchwork_size_list list = {"ours", "invented", LATCHWORK_SOURCE_MARK_PRACTICE, LATCHWORK_SIZE_OF_FILLING, NULL, 1};
  const latchwork_closure lap = {"lap", "invented", 30.0, 40.0, LATCHWORK_CLOSURE_KIND_OVERLAP,
                                 LATCHWORK_SOURCE_MARK_PRACTICE};
  latchwork_filling_rule rule = {"snug", "invented", 10.0, 20.0, NULL, 0, LATCHWORK_SOURCE_MARK_PRACTICE, 0, 0};
  const latchwork_named_measure insert = {"width", 420.0, 420.0, NULL, NULL};
  latchwork_length_term terms[2] = {{"width", 1.0}, {"overlap", 1.0}};
  latchwork_shape_point top = {{NULL, 0, 100.0, 100.0, NULL, 0}, {NULL, 0, 50.0, 60.0, NULL, 0}};
  latchwork_article_piece piece;
  latchwork_article article = LATCHWORK_ARTICLE_INIT;
  latchwork_article_choices choices = LATCHWORK_ARTICLE_CHOICES_INIT;
  latchwork_targets *targets = NULL;
  latchwork_target_piece made;
  latchwork_target_point point;
  latchwork_named_measure filling;
  size_t needed = 0;
  char text[256];
  checking = "own article";
  memset(&piece, 0, sizeof piece);
  piece.name = "front";
  piece.count = 2;
  piece.width.terms = terms;
  piece.width.term_count = 1;
  piece.length.terms = terms;
  piece.length.term_count = 2;
  piece.shape = &top;
  piece.shape_count = 1;
  list.sizes = &size;
  article.name = "door cushion";
  article.measures = measures;
  article.measure_count = 1;
  article.lists = &list;
  article.list_count = 1;
  article.closures = &lap;
  article.closure_count = 1;
  article.rules = &rule;
  article.rule_count = 1;
  article.pieces = &piece;
  article.piece_count = 1;
  choices.list = "ours";
  choices.size = "forty";
  choices.rule = "snug";
  choices.closure = "lap";
  OK(latchwork_article_targets(&article, &choices, &targets, &error));
  OK(latchwork_targets_pieces(targets, &made, 1, &needed, &error));
  CHECK(needed == 1 && made.count == 2 && made.width_least_mm == 380.0 && made.width_greatest_mm == 390.0);
  CHECK(made.length_least_mm == 410.0 && made.length_greatest_mm == 430.0);
  OK(latchwork_targets_shape(targets, 0, &point, 1, &needed, &error));
  CHECK(needed == 1 && point.height_least_mm == 100.0 && point.width_greatest_mm == 60.0);
  CHECK(latchwork_targets_shape(targets, 1, &point, 1, &needed, &error) == LATCHWORK_E_BAD_ARGUMENT);
  OK(latchwork_targets_filling(targets, &filling, 1, &needed, &error));
  CHECK(needed == 1 && filling.least_mm == 400.0 && strcmp(filling.name, "width") == 0);
  OK(latchwork_targets_sources(targets, text, sizeof text, NULL, &error));
  CHECK(strstr(text, "list 'ours': invented (common practice)\n") != NULL);
  latchwork_targets_destroy(targets);
  choices.list = choices.size = NULL; /* an insert that is there, 42 cm: the cover is 40 to 41 */
  choices.measures = &insert;
  choices.measure_count = 1;
  choices.measures_of_filling = 1;
  OK(latchwork_article_targets(&article, &choices, &targets, &error));
  OK(latchwork_targets_pieces(targets, &made, 1, &needed, &error));
  CHECK(made.width_least_mm == 400.0 && made.width_greatest_mm == 410.0);
  latchwork_targets_destroy(targets);
  choices.measures_of_filling = 2;
  CHECK(latchwork_article_targets(&article, &choices, &targets, &error) == LATCHWORK_E_BAD_ARGUMENT);
  CHECK(strcmp(error.field, "choices.measures_of_filling") == 0);
  choices.measures_of_filling = 0;
  rule.oblongs_only = 1; /* one measure is as square as can be */
  CHECK(latchwork_article_targets(&article, &choices, &targets, &error) == LATCHWORK_E_BAD_ARGUMENT);
  CHECK(strcmp(error.field, "choices.rule") == 0);
  rule.squares_only = 1;
  CHECK(latchwork_article_targets(&article, &choices, &targets, &error) == LATCHWORK_E_BAD_ARGUMENT);
  CHECK(strcmp(error.field, "rules[0].oblongs_only") == 0);
  rule.squares_only = rule.oblongs_only = 0;
  choices.measures = NULL;
  choices.measure_count = 0;
  choices.list = "ours";
  choices.size = "forty";

  terms[1].of = "girth";
  CHECK(latchwork_article_targets(&article, &choices, &targets, &error) == LATCHWORK_E_BAD_ARGUMENT);
  CHECK(strcmp(error.field, "pieces[0].length.terms[1].of") == 0);
  CHECK(latchwork_article_write(&article, NULL, 0, &needed, &error) == LATCHWORK_E_BAD_VALUE);
  CHECK(strcmp(error.field, "pieces[0].length.terms[1].of") == 0);
  terms[1].of = "overlap";
  piece.lower = 3;
  CHECK(latchwork_article_targets(&article, &choices, &targets, &error) == LATCHWORK_E_BAD_ARGUMENT);
  CHECK(strcmp(error.field, "pieces[0].lower") == 0);
  piece.lower = 0;
  piece.shape = NULL;
  CHECK(latchwork_article_targets(&article, &choices, &targets, &error) == LATCHWORK_E_BAD_ARGUMENT);
  CHECK(strcmp(error.field, "pieces[0].shape") == 0);
  piece.shape = &top;
  top.height.greatest_mm = 431.0;
  CHECK(latchwork_article_targets(&article, &choices, &targets, &error) == LATCHWORK_E_BAD_ARGUMENT);
  CHECK(strcmp(error.field, "choices.measures") == 0);
}

/* A front of 200 x 200 mm of a panel of 4 mm stitches and 2.5 mm rows: 12 columns a repeat, with a seam stitch each side. */
static void an_article_leads_to_panels(void) {
  static const latchwork_measurement measured[2] = {
      {"stockinette", "", "", 25.0, 100.0, LATCHWORK_COUNTED_STITCHES, LATCHWORK_CLOTH_STATE_RESTED, 0},
      {"stockinette", "", "", 40.0, 100.0, LATCHWORK_COUNTED_ROWS, LATCHWORK_CLOTH_STATE_RESTED, 0}};
  const latchwork_named_measure sides[2] = {{"width", 200.0, 200.0, NULL, NULL}, {"height", 200.0, 200.0, NULL, NULL}};
  const char *const made[1] = {"front"};
  const latchwork_strip_run run = {0, 0, 1, 9, 0, 0};
  latchwork_error error = LATCHWORK_ERROR_INIT;
  latchwork_article_request request = LATCHWORK_ARTICLE_REQUEST_INIT;
  latchwork_article_choices choices = LATCHWORK_ARTICLE_CHOICES_INIT;
  latchwork_fit_request design = LATCHWORK_FIT_REQUEST_INIT;
  latchwork_fit_request wanted = LATCHWORK_FIT_REQUEST_INIT;
  latchwork_article article = LATCHWORK_ARTICLE_INIT;
  latchwork_article_file *file = NULL;
  latchwork_article_fit *found = NULL, *none = NULL;
  latchwork_article_job *told = NULL;
  latchwork_article_request_file *choices_file = NULL, *no_choices = NULL;
  latchwork_fit_result *fits = NULL, *direct = NULL;
  latchwork_strip *strip = NULL;
  latchwork_panel *panel = NULL, *fitted = NULL;
  latchwork_swatch *swatch = NULL;
  latchwork_grid *grid = NULL;
  latchwork_brief *brief = NULL, *own = NULL, *another = NULL;
  latchwork_job *job = NULL, *own_job = NULL;
  latchwork_panel *own_panel = NULL;
  latchwork_grid *own_grid = NULL;
  latchwork_machine machine = LATCHWORK_MACHINE_INIT;
  latchwork_piece_fit pieces[3];
  latchwork_piece_work works[3];
  latchwork_fitted_panel panels[2];
  latchwork_fit_candidate best[10];
  latchwork_fit_group group = LATCHWORK_FIT_GROUP_INIT;
  const latchwork_strip *strips[1];
  int32_t equal = 0, columns = 0;
  latchwork_work_times times = LATCHWORK_WORK_TIMES_INIT;
  int64_t sewing_ms = -1;
  double seam_mm = 0.0;
  size_t needed = 0;
  checking = "from an article to panels";
  OK(latchwork_stockinette(12, &strip, &error));
  strips[0] = strip;
  OK(latchwork_join_strips("front", 60, strips, 1, &panel, &error));
  OK(latchwork_swatch_create(measured, 2, &swatch, &error));
  OK(latchwork_built_in_article("cushion cover", &file, &error));
  OK(latchwork_article_file_article(file, &article, &error));
  OK(latchwork_fit_request_default(&design, &error));
  design.seam_left = design.seam_right = 1.0;
  choices.rule = "same size";
  choices.closure = "overlap";
  choices.measures = sides;
  choices.measure_count = 2;
  request.article = "cushion cover";
  request.choices = &choices;
  request.made = made;
  request.made_count = 1;
  request.groups = &run;
  request.group_count = 1;
  request.design = &design;
  request.seam_ms_per_m = 600000;
  OK(latchwork_fit_article(&article, &request, panel, swatch, NULL, &found, &error));
  OK(latchwork_article_fit_pieces(found, pieces, 3, &needed, &error));
  CHECK(needed == 1 && strcmp(pieces[0].target.name, "front") == 0);
  CHECK(near(pieces[0].as_it_stands.width_mm, 40.0) && near(pieces[0].as_it_stands.height_error_mm, -50.0));
  OK(latchwork_article_fit_result(found, 0, &fits, &error));
  OK(latchwork_fit_result_candidates(fits, best, 10, &needed, &error));
  CHECK(needed == 10 && best[0].times[0] == 4 && best[0].rows == 80);
  CHECK(near(best[0].width_mm, 46 * 4.0) && near(best[0].width_error_percent, -8.0));
  OK(latchwork_article_fit_fitted(found, 0, &request, panel, &best[0], 0, &fitted, &error));
  OK(latchwork_panel_grid(fitted, &grid, &error));
  OK(latchwork_grid_columns(grid, &columns, &error));
  CHECK(columns == 48);
  /* The same by a piece, in one call. */
  group.strips = strips;
  group.strip_count = 1;
  group.least = 1;
  group.most = 9;
  design.groups = &group;
  design.group_count = 1;
  OK(latchwork_fit_piece(&pieces[0].target, NULL, 0, &design, swatch, NULL, &direct, &error));
  OK(latchwork_fit_result_equal(fits, direct, &equal, &error));
  CHECK(equal == 1);
  latchwork_fit_result_destroy(direct);
  direct = NULL;
  OK(latchwork_piece_request(&pieces[0].target, NULL, 0, &design, &wanted, &error));
  CHECK(near(wanted.width_mm, 200.0) && wanted.groups == &group && wanted.seam_left == 1.0 && wanted.seam_top == 0.0);
  CHECK(latchwork_article_fit_result(found, 1, &direct, &error) == LATCHWORK_E_BAD_ARGUMENT && direct == NULL);
  CHECK(strcmp(error.field, "index") == 0);
  design.rows_step = 0;
  CHECK(latchwork_fit_article(&article, &request, panel, swatch, NULL, &none, &error) == LATCHWORK_E_BAD_ARGUMENT);
  CHECK(none == NULL && strcmp(error.field, "design.rows_step") == 0);
  design.rows_step = 1;
  /* A brief takes it. */
  OK(latchwork_machine_generic(LATCHWORK_MACHINE_CLASS_STANDARD, &machine, &error));
  OK(latchwork_brief_create(panel, swatch, &machine, NULL, &brief, &error));
  CHECK(latchwork_brief_article(brief, &choices_file, &error) == LATCHWORK_E_BAD_ARGUMENT && choices_file == NULL);
  OK(latchwork_brief_set_article(brief, &request, NULL, &error));
  OK(latchwork_brief_article(brief, &choices_file, &error));
  OK(latchwork_brief_run(brief, NULL, &job, &error));
  OK(latchwork_job_article(job, &told, &error));
  OK(latchwork_article_job_works(told, works, 3, &needed, &error));
  CHECK(needed == 1 && works[0].panels == 1 && works[0].fits == 1);
  OK(latchwork_article_job_times(told, &times, &error));
  CHECK(times.total_ms == times.carriage_ms && times.carriage_ms > 0); /* plain knit */
  OK(latchwork_article_job_seam_mm(told, &seam_mm, &error));
  OK(latchwork_article_job_sewing_ms(told, &sewing_ms, &error));
  CHECK(near(seam_mm, 800.0) && sewing_ms == 480000); /* round the four sides, at ten minutes a metre */
  {
    const latchwork_substitute lace = {"lace", "stockinette"};
    latchwork_substitute there[2];
    OK(latchwork_brief_substitutes(brief, there, 2, &needed, &error));
    CHECK(needed == 0);
    OK(latchwork_brief_set_substitutes(brief, &lace, 1, &error));
    OK(latchwork_brief_substitutes(brief, there, 2, &needed, &error));
    CHECK(needed == 1 && strcmp(there[0].texture, "lace") == 0 && strcmp(there[0].use, "stockinette") == 0);
    OK(latchwork_brief_set_substitutes(brief, NULL, 0, &error));
  }
  { /* The cloth that sizes are meant in, sessions and rests. */
    int32_t state = 0;
    int64_t session_ms = 0;
    int64_t rest_ms = 0;
    OK(latchwork_brief_state(brief, &state, &error));
    OK(latchwork_brief_session_ms(brief, &session_ms, &error));
    OK(latchwork_brief_rest_ms(brief, &rest_ms, &error));
    CHECK(state == LATCHWORK_CLOTH_STATE_MOST_FINISHED && session_ms == 3600000 && rest_ms == 1200000);
    OK(latchwork_brief_set_state(brief, LATCHWORK_CLOTH_STATE_WASHED, &error));
    OK(latchwork_brief_set_sessions(brief, 60000, 0, &error));
    CHECK(latchwork_brief_set_state(brief, 3, &error) == LATCHWORK_E_BAD_ARGUMENT && strcmp(error.field, "state") == 0);
    CHECK(latchwork_brief_set_sessions(brief, 1, 0, &error) == LATCHWORK_E_BAD_ARGUMENT);
    CHECK(strcmp(error.field, "session_ms") == 0);
    CHECK(latchwork_brief_set_sessions(brief, 60000, 1, &error) == LATCHWORK_E_BAD_ARGUMENT);
    CHECK(strcmp(error.field, "rest_ms") == 0);
    OK(latchwork_brief_state(brief, &state, &error));
    OK(latchwork_brief_session_ms(brief, &session_ms, &error));
    OK(latchwork_brief_rest_ms(brief, &rest_ms, &error));
    CHECK(state == LATCHWORK_CLOTH_STATE_WASHED && session_ms == 60000 && rest_ms == 0);
    OK(latchwork_brief_set_state(brief, LATCHWORK_CLOTH_STATE_MOST_FINISHED, &error));
    OK(latchwork_brief_set_sessions(brief, 3600000, 1200000, &error));
  }
  /* What fits is a brief of its own. */
  OK(latchwork_article_job_panels(told, panels, 2, &needed, &error));
  CHECK(needed == 1 && strcmp(panels[0].folder, "fitted-front") == 0 && strcmp(panels[0].pieces, "front") == 0);
  CHECK(panels[0].count == 1 && panels[0].piece == 0 && panels[0].panel == 0);
  OK(latchwork_brief_fitted_brief(brief, job, 0, &own, &error));
  OK(latchwork_brief_panel(own, &own_panel, &error));
  OK(latchwork_panel_grid(own_panel, &own_grid, &error));
  OK(latchwork_grid_equal(own_grid, grid, &equal, &error));
  CHECK(equal == 1);
  CHECK(latchwork_brief_article(own, &no_choices, &error) == LATCHWORK_E_BAD_ARGUMENT && no_choices == NULL);
  OK(latchwork_brief_run(own, NULL, &own_job, &error));
  CHECK(latchwork_brief_fitted_brief(brief, job, 1, &another, &error) == LATCHWORK_E_BAD_ARGUMENT && another == NULL);
  CHECK(strcmp(error.field, "index") == 0);
  CHECK(latchwork_brief_fitted_brief(own, own_job, 0, &another, &error) == LATCHWORK_E_BAD_ARGUMENT);
  CHECK(strcmp(error.field, "brief.article") == 0);
  CHECK(latchwork_brief_write_brief(own, "", &error) == LATCHWORK_E_BAD_ARGUMENT && strcmp(error.field, "folder") == 0);
  latchwork_job_destroy(own_job);
  latchwork_grid_destroy(own_grid);
  latchwork_panel_destroy(own_panel);
  latchwork_brief_destroy(own);
  OK(latchwork_brief_clear_article(brief, &error));
  CHECK(latchwork_brief_summary(brief, job, NULL, 0, &needed, &error) == LATCHWORK_E_SIZE_MISMATCH);
  CHECK(strcmp(error.field, "job.article") == 0);
  latchwork_article_job_destroy(told);
  latchwork_job_destroy(job);
  latchwork_brief_destroy(brief);
  latchwork_article_request_file_destroy(choices_file);
  latchwork_grid_destroy(grid);
  latchwork_panel_destroy(fitted);
  latchwork_panel_destroy(panel);
  latchwork_strip_destroy(strip);
  latchwork_swatch_destroy(swatch);
  latchwork_fit_result_destroy(fits);
  latchwork_article_fit_destroy(found);
  latchwork_article_file_destroy(file);
}

/* A blanket of three across: the panel in the middle has two seams, those beside it one. */
static void pieces_sewn_to_each_other_have_one_row_count(void) {
  static const char text[] =
      "{\"format\": \"latchwork-article-choices\", \"version\": 1, \"article\": \"blanket of panels\",\n"
      " \"choices\": {\"measures\": [{\"name\": \"width\", \"least_mm\": \"90 cm\", \"greatest_mm\": 900},\n"
      "                          {\"name\": \"height\", \"least_mm\": 505, \"greatest_mm\": \"50.5 cm\"}],\n"
      "             \"counts\": [{\"name\": \"across\", \"count\": 3}, {\"name\": \"up\", \"count\": 1}]},\n"
      " \"groups\": [{\"first\": 0, \"last\": 0, \"least\": 1, \"most\": 30}],\n"
      " \"design\": {\"seam_left\": 1, \"seam_right\": 1}}";
  static const char tied[] =
      "{\"format\": \"latchwork-article-choices\", \"version\": 1, \"article\": \"scarf\",\n"
      " \"groups\": [{\"first\": 0, \"last\": 0}, {\"first\": 2, \"last\": 2, \"as_group\": 0}]}";
  const latchwork_measurement measured[2] = {
      {"stockinette", "", "", 25.0, 100.0, LATCHWORK_COUNTED_STITCHES, LATCHWORK_CLOTH_STATE_RESTED, 0},
      {"stockinette", "", "", 40.0, 100.0, LATCHWORK_COUNTED_ROWS, LATCHWORK_CLOTH_STATE_RESTED, 0}};
  latchwork_error error = LATCHWORK_ERROR_INIT;
  latchwork_article_request request = LATCHWORK_ARTICLE_REQUEST_INIT, pair = LATCHWORK_ARTICLE_REQUEST_INIT;
  latchwork_strip_run runs[2];
  char back[2000];
  latchwork_article article = LATCHWORK_ARTICLE_INIT;
  latchwork_article_request_file *choices = NULL, *none = NULL;
  latchwork_article_file *file = NULL;
  latchwork_article_fit *found = NULL;
  latchwork_fit_result *fits[3] = {NULL, NULL, NULL};
  latchwork_fit_candidate best[3][10];
  latchwork_strip *strip = NULL;
  latchwork_panel *panel = NULL;
  latchwork_swatch *swatch = NULL;
  const latchwork_strip *strips[1];
  char wrong[sizeof text];
  size_t needed = 0, i;
  checking = "pieces sewn to each other";
  OK(latchwork_read_article_request(text, sizeof text - 1, &choices, &error));
  OK(latchwork_article_request_file_request(choices, &request, &error));
  CHECK(near(request.choices->measures[0].least_mm, 900.0) && near(request.choices->measures[1].greatest_mm, 505.0));
  memcpy(wrong, text, sizeof text);
  memcpy(strstr(wrong, "90 cm"), "90 kg", 5);
  CHECK(latchwork_read_article_request(wrong, sizeof text - 1, &none, &error) == LATCHWORK_E_BAD_UNIT && none == NULL);
  CHECK(error.line == 2 && strncmp(error.field, "choices.measures[0].least_mm", 28) == 0);
  /* A tie is told as it is asked for. */
  OK(latchwork_read_article_request(tied, sizeof tied - 1, &none, &error));
  OK(latchwork_article_request_file_request(none, &pair, &error));
  CHECK(pair.group_count == 2 && pair.groups[0].tied == 0 && pair.groups[0].as_group == 0);
  CHECK(pair.groups[1].tied == 1 && pair.groups[1].as_group == 0);
  runs[0] = pair.groups[0];
  runs[1] = pair.groups[1];
  OK(latchwork_article_request_write(&pair, back, sizeof back, &needed, &error));
  CHECK(strstr(back, "\"as_group\": 0") != NULL && strstr(back, "\"as_group\": -1") != NULL);
  runs[1].tied = 0;
  runs[1].as_group = 1;
  pair.groups = runs;
  CHECK(latchwork_article_request_write(&pair, back, sizeof back, &needed, &error) == LATCHWORK_E_BAD_ARGUMENT);
  CHECK(strcmp(error.field, "groups[1].as_group") == 0);
  latchwork_article_request_file_destroy(none);
  OK(latchwork_stockinette(3, &strip, &error));
  strips[0] = strip;
  OK(latchwork_join_strips("patch", 60, strips, 1, &panel, &error));
  OK(latchwork_swatch_create(measured, 2, &swatch, &error));
  OK(latchwork_built_in_article("blanket of panels", &file, &error));
  OK(latchwork_article_file_article(file, &article, &error));
  OK(latchwork_fit_article(&article, &request, panel, swatch, NULL, &found, &error));
  for (i = 0; i < 3; ++i) {
    OK(latchwork_article_fit_result(found, i, &fits[i], &error));
    OK(latchwork_fit_result_candidates(fits[i], best[i], 10, &needed, &error));
    CHECK(best[i][0].rows == 202 && best[i][0].times[0] == best[0][0].times[0]);
    latchwork_fit_result_destroy(fits[i]);
  }
  latchwork_article_fit_destroy(found);
  latchwork_article_file_destroy(file);
  latchwork_swatch_destroy(swatch);
  latchwork_panel_destroy(panel);
  latchwork_strip_destroy(strip);
  latchwork_article_request_file_destroy(choices);
}

static void what_is_wrong_is_told_with_line_and_field(void) {
  static const char text[] =
      "{\"format\": \"latchwork-article\", \"version\": 1, \"name\": \"mat\",\n"
      " \"pieces\": [{\"name\": \"mat\", \"width\": {\"terms\": [{\"of\": \"girth\"}]}}]}";
  latchwork_error error = LATCHWORK_ERROR_INIT;
  latchwork_article_file *file = NULL;
  checking = "bad article";
  CHECK(latchwork_read_article(text, sizeof text - 1, &file, &error) == LATCHWORK_E_BAD_ARGUMENT && file == NULL);
  CHECK(error.line == 2 && strcmp(error.field, "pieces[0].width.terms[0].of") == 0);
}

int main(void) {
  articles_come_with_the_library();
  a_blanket_is_shared_out();
  a_host_makes_its_own();
  an_article_leads_to_panels();
  pieces_sewn_to_each_other_have_one_row_count();
  what_is_wrong_is_told_with_line_and_field();
  return checks_told();
}
