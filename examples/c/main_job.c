/* The main job through the C ABI: a brief goes in; a verified plan, charts, words and a page come out.
   main_job BRIEF_FOLDER OUTPUT_FOLDER */
#include <latchwork/latchwork.h>
#include <stdio.h>
#include <stdlib.h>

/* Called now and then on this thread; returning 1 would stop the search with the best plan so far. */
static int32_t count_calls(const latchwork_progress *progress, void *user_data) {
  (void)progress;
  ++*(int *)user_data;
  return 0;
}

static int tell(const latchwork_error *error) {
  fprintf(stderr, "%s: %s\n", latchwork_error_name(error->code), error->message);
  return 1;
}

/* The first stops from the plan as data: how the hand work can be shown in a window of the host's own. */
static int print_stops(const latchwork_job *job, latchwork_error *error) {
  latchwork_plan *plan = NULL;
  latchwork_stop *stops = NULL;
  size_t count = 0, i;
  if (latchwork_job_plan(job, &plan, error) != LATCHWORK_OK) return tell(error);
  latchwork_plan_stops(plan, NULL, 0, &count, NULL); /* asks how many there are */
  stops = malloc((count + 1) * sizeof *stops);
  if (stops == NULL || latchwork_plan_stops(plan, stops, count, NULL, error) != LATCHWORK_OK) {
    free(stops);
    latchwork_plan_destroy(plan);
    return tell(error);
  }
  for (i = 0; i < count && i < 5; ++i) {
    printf("RC %d, %s: %d re-formed, %d crossed\n", (int)stops[i].row, stops[i].carriage_right ? "COR" : "COL",
           (int)stops[i].reforms, (int)stops[i].crossings);
  }
  if (i < count) printf("and %d stops more\n", (int)(count - i));
  free(stops);
  latchwork_plan_destroy(plan);
  return 0;
}

/* Each panel that fits the article, a brief of its own, into a folder of its own. */
static int write_fitted(const latchwork_brief *brief, const latchwork_job *job, const char *folder,
                        latchwork_error *error) {
  latchwork_article_job *article = NULL;
  latchwork_fitted_panel *panels = NULL;
  size_t count = 0, i;
  int failed = 0;
  if (latchwork_job_article(job, &article, NULL) != LATCHWORK_OK) return 0; /* the brief names no article */
  latchwork_article_job_panels(article, NULL, 0, &count, NULL);
  panels = malloc((count + 1) * sizeof *panels);
  if (panels == NULL || latchwork_article_job_panels(article, panels, count, NULL, error) != LATCHWORK_OK) {
    failed = tell(error);
  }
  for (i = 0; i < count && !failed; ++i) {
    latchwork_brief *fitted = NULL;
    latchwork_job *fitted_job = NULL;
    char into[4096];
    const int length = snprintf(into, sizeof into, "%s/%s", folder, panels[i].folder);
    if (length < 0 || (size_t)length >= sizeof into) {
      fprintf(stderr, "%s: the name is too long\n", folder);
      failed = 1;
    } else if (latchwork_brief_fitted_brief(brief, job, i, &fitted, error) != LATCHWORK_OK ||
               latchwork_brief_run(fitted, NULL, &fitted_job, error) != LATCHWORK_OK ||
               latchwork_brief_write_brief(fitted, into, error) != LATCHWORK_OK ||
               latchwork_brief_write_job(fitted, fitted_job, into, error) != LATCHWORK_OK) {
      failed = tell(error);
    }
    latchwork_job_destroy(fitted_job);
    latchwork_brief_destroy(fitted);
  }
  free(panels);
  latchwork_article_job_destroy(article);
  return failed;
}

int main(int argc, char **argv) {
  latchwork_error error = LATCHWORK_ERROR_INIT;
  latchwork_plan_options options = LATCHWORK_PLAN_OPTIONS_INIT;
  latchwork_verification verification = LATCHWORK_VERIFICATION_INIT;
  latchwork_brief *brief = NULL;
  latchwork_job *job = NULL;
  char *summary = NULL;
  size_t needed = 0;
  int calls = 0, failed = 0;
  if (argc != 3) {
    fprintf(stderr, "main_job BRIEF_FOLDER OUTPUT_FOLDER\n");
    return 2;
  }
  options.progress = count_calls;
  options.user_data = &calls;
  if (latchwork_read_brief(argv[1], &brief, &error) != LATCHWORK_OK) return tell(&error);
  if (latchwork_brief_run(brief, &options, &job, &error) != LATCHWORK_OK ||
      latchwork_brief_summary(brief, job, NULL, 0, &needed, &error) != LATCHWORK_OK ||
      (summary = malloc(needed)) == NULL ||
      latchwork_brief_summary(brief, job, summary, needed, NULL, &error) != LATCHWORK_OK ||
      latchwork_job_verification(job, &verification, &error) != LATCHWORK_OK) {
    failed = tell(&error);
  } else if (write_fitted(brief, job, argv[2], &error) != 0) {
    failed = 1;
  } else if (latchwork_brief_write_job(brief, job, argv[2], &error) != LATCHWORK_OK) {
    failed = tell(&error);
  } else {
    printf("%s\n", summary);
    failed = print_stops(job, &error);
    if (!verification.verified) failed = 1;
  }
  free(summary);
  latchwork_job_destroy(job);
  latchwork_brief_destroy(brief);
  return failed;
}
