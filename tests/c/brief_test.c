/* Jobs that come out less than whole, through the C ABI: no swatch at all, and an article that this machine makes no
   panel for. They are told, not errors: what can be known is there. */
#include <stdlib.h>
#include <string.h>

#include "program.h"

static const latchwork_measurement measured[2] = {
    {"stockinette", "", "", 25.0, 100.0, LATCHWORK_COUNTED_STITCHES, LATCHWORK_CLOTH_STATE_RESTED, 0},
    {"stockinette", "", "", 40.0, 100.0, LATCHWORK_COUNTED_ROWS, LATCHWORK_CLOTH_STATE_RESTED, 0}};

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

int main(int argc, char **argv) {
  if (argc != 2) return 2;
  without_a_swatch_the_size_is_missing(argv[1]);
  an_article_that_cannot_be_made_has_no_hours();
  return checks_told();
}
