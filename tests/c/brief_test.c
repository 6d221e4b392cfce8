/* Jobs that come out less than whole, through the C ABI: no swatch at all, and an article that this machine makes no
   panel for. They are told, not errors: what can be known is there. */
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "program.h"

static const latchwork_measurement measured[4] = {
    {"stockinette", "", "", 25.0, 100.0, LATCHWORK_COUNTED_STITCHES, LATCHWORK_CLOTH_STATE_RESTED, 0},
    {"stockinette", "", "", 40.0, 100.0, LATCHWORK_COUNTED_ROWS, LATCHWORK_CLOTH_STATE_RESTED, 0},
    {"stockinette", "", "", 30.0, 100.0, LATCHWORK_COUNTED_STITCHES, LATCHWORK_CLOTH_STATE_WASHED, 0},
    {"stockinette", "", "", 44.0, 100.0, LATCHWORK_COUNTED_ROWS, LATCHWORK_CLOTH_STATE_WASHED, 0}};

/* A brief of plain knit, 12 columns and 60 rows, measured by so many of the above, on a bed of so many needles. */
static latchwork_brief *brief_of(size_t measurements, int32_t needles) {
  latchwork_error error = LATCHWORK_ERROR_INIT;
  latchwork_machine machine = LATCHWORK_MACHINE_INIT;
  latchwork_strip *strip = NULL;
  latchwork_panel *panel = NULL;
  latchwork_swatch *swatch = NULL;
  latchwork_brief *brief = NULL;
  const latchwork_strip *strips[1];
  OK(latchwork_machine_generic(LATCHWORK_MACHINE_CLASS_STANDARD, &machine, &error));
  machine.needles = needles;
  OK(latchwork_stockinette(12, &strip, &error));
  strips[0] = strip;
  OK(latchwork_join_strips("front", 60, strips, 1, &panel, &error));
  OK(latchwork_swatch_create(measured, measurements, &swatch, &error));
  OK(latchwork_brief_create(panel, swatch, &machine, NULL, &brief, &error));
  latchwork_swatch_destroy(swatch);
  latchwork_panel_destroy(panel);
  latchwork_strip_destroy(strip);
  return brief;
}

/* A cushion cover 200 mm square; its fits may be as wide as 200 needles, whatever the machine of the brief has. */
static void set_article(latchwork_brief *brief) {
  static const latchwork_named_measure sides[2] = {{"width", 200.0, 200.0, NULL, NULL},
                                                   {"height", 200.0, 200.0, NULL, NULL}};
  static const char *const made[1] = {"front"};
  static const latchwork_strip_run run = {0, 0, 1, 9, 0, 0};
  latchwork_error error = LATCHWORK_ERROR_INIT;
  latchwork_article_request request = LATCHWORK_ARTICLE_REQUEST_INIT;
  latchwork_article_choices choices = LATCHWORK_ARTICLE_CHOICES_INIT;
  latchwork_fit_request design = LATCHWORK_FIT_REQUEST_INIT;
  OK(latchwork_fit_request_default(&design, &error));
  design.needles = 200;
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
  OK(latchwork_brief_set_article(brief, &request, NULL, &error));
}

static char *summary_of(const latchwork_brief *brief, const latchwork_job *job) {
  latchwork_error error = LATCHWORK_ERROR_INIT;
  size_t needed = 0;
  char *text = NULL;
  OK(latchwork_brief_summary(brief, job, NULL, 0, &needed, &error));
  text = calloc(needed + 1, 1);
  if (text != NULL) OK(latchwork_brief_summary(brief, job, text, needed, NULL, &error));
  CHECK(text != NULL);
  return text;
}

/* A brief without a swatch is knitted all the same; its size, and its article, wait for one. */
static void without_a_swatch_the_size_is_missing(const char *folder) {
  latchwork_error error = LATCHWORK_ERROR_INIT;
  latchwork_brief *made = brief_of(0, 200), *brief = NULL;
  latchwork_job *job = NULL;
  latchwork_findings *missing = NULL;
  latchwork_finding finding = LATCHWORK_FINDING_INIT;
  latchwork_size size = LATCHWORK_SIZE_INIT;
  latchwork_verification verification = LATCHWORK_VERIFICATION_INIT;
  latchwork_article_job *article = NULL;
  size_t count = 0;
  char *told;
  checking = "no swatch";
  set_article(made);
  OK(latchwork_brief_write_brief(made, folder, &error));
  OK(latchwork_read_brief(folder, &brief, &error));
  OK(latchwork_brief_run(brief, NULL, &job, &error));
  OK(latchwork_job_missing(job, &missing, &error));
  OK(latchwork_findings_count(missing, &count, &error));
  CHECK(count == 1);
  OK(latchwork_findings_get(missing, 0, &finding, &error));
  CHECK(finding.code == LATCHWORK_FINDING_CODE_NO_SWATCH && strcmp(finding.field, "stockinette") == 0);
  CHECK(strstr(finding.message, "'stockinette' has no gauge") != NULL && finding.suggestion[0] != '\0');
  CHECK(latchwork_job_size(job, &size, &error) == LATCHWORK_E_NO_GAUGE && strcmp(error.field, "stockinette") == 0);
  CHECK(latchwork_job_article(job, &article, &error) == LATCHWORK_E_NO_GAUGE && article == NULL);
  OK(latchwork_job_verification(job, &verification, &error));
  CHECK(verification.verified == 1);
  told = summary_of(brief, job);
  CHECK(told != NULL && strstr(told, "not known: no gauge of 'stockinette', see below") != NULL);
  CHECK(told != NULL && strstr(told, "cushion cover, not fitted: a gauge is missing") != NULL);
  CHECK(told != NULL && strstr(told, "swatch.csv") != NULL); /* how to give one */
  free(told);
  latchwork_findings_destroy(missing);
  latchwork_job_destroy(job);
  latchwork_brief_destroy(brief);
  latchwork_brief_destroy(made);
}

/* Where the bed is too short for every panel that fits, the fits are there, marked as such, and no hours. */
static void an_article_that_cannot_be_made_has_no_hours(void) {
  latchwork_error error = LATCHWORK_ERROR_INIT;
  latchwork_brief *brief = brief_of(2, 8);
  latchwork_job *job = NULL;
  latchwork_article_job *article = NULL;
  latchwork_piece_work work;
  latchwork_work_times times = LATCHWORK_WORK_TIMES_INIT;
  size_t needed = 0;
  char *told;
  checking = "nothing makeable";
  set_article(brief);
  OK(latchwork_brief_run(brief, NULL, &job, &error));
  OK(latchwork_job_article(job, &article, &error));
  OK(latchwork_article_job_works(article, &work, 1, &needed, &error));
  CHECK(needed == 1 && work.fits == 1); /* it fits in size */
  OK(latchwork_article_job_times(article, &times, &error));
  CHECK(times.total_ms == 0);
  told = summary_of(brief, job);
  CHECK(told != NULL && strstr(told, "which this machine cannot make: ") != NULL);
  CHECK(told != NULL && strstr(told, "not known: it cannot be made") != NULL);
  free(told);
  latchwork_article_job_destroy(article);
  latchwork_job_destroy(job);
  latchwork_brief_destroy(brief);
}

/* Plain knit between edges, made into a flap that is narrower at its top, or a straight one, sewn of three panels. */
static latchwork_brief *flap_of_three(int shaped) {
  static const latchwork_extent width = {NULL, 0, 240.0, 240.0, NULL, 0};
  static const latchwork_extent length = {NULL, 0, 100.0, 100.0, NULL, 0};
  static const latchwork_extent narrow = {NULL, 0, 200.0, 200.0, NULL, 0};
  static const latchwork_strip_run run = {1, 1, 1, 9, 0, 0};
  latchwork_shape_point top = {{NULL, 0, 0.0, 0.0, NULL, 0}, {NULL, 0, 0.0, 0.0, NULL, 0}};
  latchwork_error error = LATCHWORK_ERROR_INIT;
  latchwork_machine machine = LATCHWORK_MACHINE_INIT;
  latchwork_strip *edge = NULL, *ground = NULL;
  latchwork_panel *panel = NULL;
  latchwork_swatch *swatch = NULL;
  latchwork_brief *brief = NULL;
  latchwork_article_piece piece;
  latchwork_article article = LATCHWORK_ARTICLE_INIT;
  latchwork_article_request request = LATCHWORK_ARTICLE_REQUEST_INIT;
  latchwork_article_choices choices = LATCHWORK_ARTICLE_CHOICES_INIT;
  latchwork_fit_request design = LATCHWORK_FIT_REQUEST_INIT;
  const latchwork_strip *strips[3];
  OK(latchwork_machine_generic(LATCHWORK_MACHINE_CLASS_STANDARD, &machine, &error));
  OK(latchwork_stockinette(1, &edge, &error));
  OK(latchwork_stockinette(4, &ground, &error));
  strips[0] = strips[2] = edge;
  strips[1] = ground;
  OK(latchwork_join_strips("flap", 40, strips, 3, &panel, &error));
  OK(latchwork_swatch_create(measured, 2, &swatch, &error));
  OK(latchwork_brief_create(panel, swatch, &machine, NULL, &brief, &error));
  memset(&piece, 0, sizeof piece);
  piece.count = 1;
  top.height = length;
  top.width = narrow;
  piece.name = "flap";
  piece.width = width;
  piece.length = length;
  if (shaped) {
    piece.shape = &top;
    piece.shape_count = 1;
  }
  article.name = "flap";
  article.pieces = &piece;
  article.piece_count = 1;
  OK(latchwork_fit_request_default(&design, &error));
  design.edge_least = design.edge_most = 1;
  design.panels_least = design.panels_most = 3;
  request.article = "flap.json";
  request.choices = &choices;
  request.groups = &run;
  request.group_count = 1;
  request.edge = 0;
  request.design = &design;
  OK(latchwork_brief_set_article(brief, &request, &article, &error));
  latchwork_swatch_destroy(swatch);
  latchwork_panel_destroy(panel);
  latchwork_strip_destroy(ground);
  latchwork_strip_destroy(edge);
  return brief;
}

/* The file of that name in the folder, closed by NUL. */
static char *text_of(const char *folder, const char *name) {
  char path[1024];
  char *text = calloc(1 << 20, 1);
  FILE *file;
  snprintf(path, sizeof path, "%s/%s", folder, name);
  file = fopen(path, "rb");
  CHECK(file != NULL && text != NULL);
  if (file != NULL && text != NULL) CHECK(fread(text, 1, (1 << 20) - 1, file) > 0);
  if (file != NULL) fclose(file);
  return text;
}

/* The middle one has 20 stitches between its seams, the outer ones one more at their free edges; the seams are told, and drawn with the widths of one and of all. */
static void panels_of_a_piece_are_told_and_drawn_with_their_seams(const char *folder) {
  latchwork_error error = LATCHWORK_ERROR_INIT;
  latchwork_brief *brief = flap_of_three(0);
  latchwork_job *job = NULL;
  latchwork_article_job *article = NULL;
  latchwork_piece_work work;
  latchwork_plan *inner = NULL;
  double seam_mm = 0.0;
  size_t needed = 0;
  char *told;
  checking = "seams between panels";
  OK(latchwork_brief_run(brief, NULL, &job, &error));
  OK(latchwork_job_article(job, &article, &error));
  OK(latchwork_article_job_works(article, &work, 1, &needed, &error));
  CHECK(work.fits == 1 && work.panels == 3 && work.inner == 0);
  CHECK(latchwork_article_job_inner_plan(article, 0, &inner, &error) == LATCHWORK_E_BAD_ARGUMENT && inner == NULL);
  CHECK(strcmp(error.field, "index") == 0);
  OK(latchwork_article_job_seam_mm(article, &seam_mm, &error));
  CHECK(seam_mm > 199.999 && seam_mm < 200.001);
  told = summary_of(brief, job);
  CHECK(told != NULL &&
        strstr(told, "Seams          between the panels of 'flap': 2 of 10.0 cm; in all 20.0 cm\n") != NULL);
  free(told);
  OK(latchwork_brief_write_job(brief, job, folder, &error));
  told = text_of(folder, "schematic.svg");
  CHECK(told != NULL && strstr(told, "flap: panel 1 of 3, width at the cast-on, 8") != NULL);
  CHECK(told != NULL && strstr(told, "flap, all 3 panels, width at the cast-on, 24") != NULL);
  CHECK(told != NULL && strstr(told, "stroke-dasharray") != NULL);
  CHECK(told != NULL && strstr(told, "Dashed: a seam to the piece beside it.") != NULL);
  free(told);
  latchwork_article_job_destroy(article);
  latchwork_job_destroy(job);
  latchwork_brief_destroy(brief);
}

/* Of a shaped piece of three panels the outer ones are cut, the one between them is not and has a plan of its own. */
static void a_shaped_piece_of_three_panels_has_two_plans(void) {
  latchwork_error error = LATCHWORK_ERROR_INIT;
  latchwork_brief *brief = flap_of_three(1);
  latchwork_job *job = NULL;
  latchwork_article_job *article = NULL;
  latchwork_piece_work work;
  latchwork_fitted_panel panels[3];
  latchwork_plan *outer = NULL, *inner = NULL, *refused = NULL;
  latchwork_work_times one = LATCHWORK_WORK_TIMES_INIT, other = LATCHWORK_WORK_TIMES_INIT, all = LATCHWORK_WORK_TIMES_INIT;
  latchwork_verification verification = LATCHWORK_VERIFICATION_INIT;
  size_t needed = 0;
  checking = "shaped piece of three panels";
  OK(latchwork_brief_run(brief, NULL, &job, &error));
  OK(latchwork_job_article(job, &article, &error));
  OK(latchwork_article_job_works(article, &work, 1, &needed, &error));
  CHECK(work.fits == 1 && work.panels == 3 && work.inner == 1);
  OK(latchwork_article_job_plan(article, 0, &outer, &error));
  OK(latchwork_article_job_inner_plan(article, 0, &inner, &error));
  OK(latchwork_article_job_inner_verification(article, 0, &verification, &error));
  CHECK(verification.verified == 1);
  OK(latchwork_plan_work_times(outer, NULL, 2, &one, &error));
  OK(latchwork_plan_work_times(inner, NULL, 1, &other, &error));
  OK(latchwork_article_job_times(article, &all, &error));
  CHECK(one.shapings_ms > 0 && other.shapings_ms == 0 && all.total_ms == one.total_ms + other.total_ms);
  OK(latchwork_article_job_panels(article, panels, 3, &needed, &error));
  CHECK(needed == 3 && strcmp(panels[0].pieces, "flap, left outer panel") == 0);
  CHECK(strcmp(panels[1].folder, "fitted-flap-inner") == 0 && strcmp(panels[1].pieces, "flap, middle panel") == 0);
  CHECK(panels[2].panel == 2 && panels[2].count == 1);
  CHECK(latchwork_article_job_inner_plan(article, 1, &refused, &error) == LATCHWORK_E_BAD_ARGUMENT && refused == NULL);
  CHECK(latchwork_article_job_inner_verification(article, 1, &verification, &error) == LATCHWORK_E_BAD_ARGUMENT);
  latchwork_plan_destroy(inner);
  latchwork_plan_destroy(outer);
  latchwork_article_job_destroy(article);
  latchwork_job_destroy(job);
  latchwork_brief_destroy(brief);
}

/* Wool of which `tex` is known, or not (0), and a swatch of it that was weighed, for so many panels. */
static void set_yarn(latchwork_brief *brief, double tex, int32_t pieces) {
  latchwork_error error = LATCHWORK_ERROR_INIT;
  latchwork_yarn yarn;
  latchwork_weighed_swatch weighed;
  latchwork_yarn_request request = LATCHWORK_YARN_REQUEST_INIT;
  memset(&yarn, 0, sizeof yarn);
  memset(&weighed, 0, sizeof weighed);
  yarn.name = "wool";
  yarn.number.number = tex;
  yarn.number.system = LATCHWORK_YARN_SYSTEM_TEX;
  yarn.number.plies = 1;
  weighed.texture = "stockinette";
  weighed.weight_g = 10.0;
  weighed.stitches = 50.0;
  weighed.rows = 80.0;
  weighed.state = LATCHWORK_CLOTH_STATE_RESTED;
  OK(latchwork_yarn_request_default(&request, &error));
  request.yarns = &yarn;
  request.yarn_count = 1;
  request.weighed = &weighed;
  request.weighed_count = 1;
  request.pieces = pieces;
  OK(latchwork_brief_set_yarn(brief, &request, &error));
}

/* What the cover's seams weigh nobody knows: its yarn is left out, a note says why, and all else is there. */
static void seams_in_a_yarn_of_unknown_number_leave_out_the_articles_yarn(void) {
  latchwork_error error = LATCHWORK_ERROR_INIT;
  latchwork_brief *brief = brief_of(2, 200);
  latchwork_job *job = NULL;
  latchwork_article_job *article = NULL;
  latchwork_yarn_need *need = NULL;
  char notes[4096];
  char *told;
  checking = "seams of unknown weight";
  set_article(brief);
  set_yarn(brief, 0.0, 1);
  OK(latchwork_brief_run(brief, NULL, &job, &error));
  OK(latchwork_job_yarn(job, &need, &error)); /* the panel alone can be weighed */
  latchwork_yarn_need_destroy(need);
  need = NULL;
  OK(latchwork_job_article(job, &article, &error));
  CHECK(latchwork_article_job_yarn(article, &need, &error) == LATCHWORK_E_BAD_ARGUMENT && need == NULL);
  CHECK(strcmp(error.field, "article_job") == 0);
  notes[0] = '\0';
  OK(latchwork_article_job_notes(article, notes, sizeof notes, NULL, &error));
  CHECK(strstr(notes, "its seams cannot be weighed: the number of the yarn is not known") != NULL);
  told = summary_of(brief, job);
  CHECK(told != NULL && strstr(told, "article  the article's yarn is not reckoned: its seams cannot be weighed") != NULL);
  free(told);
  latchwork_article_job_destroy(article);
  latchwork_job_destroy(job);
  set_yarn(brief, 100.0, 1);
  OK(latchwork_brief_run(brief, NULL, &job, &error));
  OK(latchwork_job_article(job, &article, &error));
  OK(latchwork_article_job_yarn(article, &need, &error));
  latchwork_yarn_need_destroy(need);
  latchwork_article_job_destroy(article);
  latchwork_job_destroy(job);
  latchwork_brief_destroy(brief);
}

/* Figures that the brief does not come to any more are not told. */
static void a_job_is_told_with_the_state_and_the_yarns_that_it_comes_of(void) {
  latchwork_error error = LATCHWORK_ERROR_INIT;
  latchwork_brief *brief = brief_of(4, 200);
  latchwork_job *job = NULL;
  size_t needed = 0;
  checking = "stale figures";
  set_yarn(brief, 100.0, 1);
  OK(latchwork_brief_run(brief, NULL, &job, &error));
  OK(latchwork_brief_summary(brief, job, NULL, 0, &needed, &error));
  OK(latchwork_brief_set_state(brief, LATCHWORK_CLOTH_STATE_RESTED, &error));
  CHECK(latchwork_brief_summary(brief, job, NULL, 0, &needed, &error) == LATCHWORK_E_BAD_ARGUMENT);
  CHECK(strcmp(error.field, "job.size") == 0);
  OK(latchwork_brief_set_state(brief, LATCHWORK_CLOTH_STATE_MOST_FINISHED, &error));
  set_yarn(brief, 100.0, 12);
  CHECK(latchwork_brief_page_html(brief, job, NULL, 0, &needed, &error) == LATCHWORK_E_BAD_ARGUMENT);
  CHECK(strcmp(error.field, "job.yarn") == 0);
  set_yarn(brief, 100.0, 1);
  OK(latchwork_brief_summary(brief, job, NULL, 0, &needed, &error));
  latchwork_job_destroy(job);
  latchwork_brief_destroy(brief);
}

int main(int argc, char **argv) {
  if (argc != 2) return 2;
  without_a_swatch_the_size_is_missing(argv[1]);
  an_article_that_cannot_be_made_has_no_hours();
  panels_of_a_piece_are_told_and_drawn_with_their_seams(argv[1]);
  a_shaped_piece_of_three_panels_has_two_plans();
  seams_in_a_yarn_of_unknown_number_leave_out_the_articles_yarn();
  a_job_is_told_with_the_state_and_the_yarns_that_it_comes_of();
  return checks_told();
}
