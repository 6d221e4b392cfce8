/* What C reads it writes as the same bytes, and reads these back equal: the golden files of every kind, which are as the
   library writes them, and the kinds that are CSV. */
#include <stdlib.h>

#include "program.h"

enum { MOST_BYTES = 1 << 16 };

/* Reads a text, writes what was read, and reads that again; `written` has room for MOST_BYTES. */
typedef void (*again)(const char *text, char *written, int32_t *equal);

/* Of a handle that is written itself. */
#define HANDLE(name, type, read, write)                                   \
  static void name(const char *text, char *written, int32_t *equal) {     \
    latchwork_##type *first = NULL, *second = NULL;                       \
    size_t needed = 0;                                                    \
    OK(read(text, strlen(text), &first, NULL));                           \
    OK(write(first, NULL, 0, &needed, NULL));                             \
    OK(write(first, written, MOST_BYTES, NULL, NULL));                    \
    CHECK(needed == strlen(written) + 1);                                 \
    OK(read(written, strlen(written), &second, NULL));                    \
    OK(latchwork_##type##_equal(first, second, equal, NULL));             \
    latchwork_##type##_destroy(first);                                    \
    latchwork_##type##_destroy(second);                                   \
  }
HANDLE(grid, grid, latchwork_read_grid, latchwork_grid_write)
HANDLE(strip, strip, latchwork_read_strip, latchwork_strip_write)
HANDLE(panel, panel, latchwork_read_panel, latchwork_panel_write)
HANDLE(plan, plan, latchwork_read_plan, latchwork_plan_write)
HANDLE(certificate, certificate, latchwork_read_certificate, latchwork_certificate_write)
HANDLE(swatch, swatch, latchwork_read_swatch, latchwork_swatch_write)
HANDLE(timings, timings, latchwork_read_timings, latchwork_timings_write)

/* Of a handle that lends a struct, which is written. */
#define LENDER(name, handle, type, init, read, lend, write)               \
  static void name(const char *text, char *written, int32_t *equal) {     \
    latchwork_##handle *first = NULL, *second = NULL;                     \
    latchwork_##type lent = init;                                         \
    OK(read(text, strlen(text), &first, NULL));                           \
    OK(lend(first, &lent, NULL));                                         \
    OK(write(&lent, written, MOST_BYTES, NULL, NULL));                    \
    OK(read(written, strlen(written), &second, NULL));                    \
    OK(latchwork_##handle##_equal(first, second, equal, NULL));           \
    latchwork_##handle##_destroy(first);                                  \
    latchwork_##handle##_destroy(second);                                 \
  }
LENDER(article, article_file, article, LATCHWORK_ARTICLE_INIT, latchwork_read_article, latchwork_article_file_article,
       latchwork_article_write)
LENDER(choices, article_request_file, article_request, LATCHWORK_ARTICLE_REQUEST_INIT, latchwork_read_article_request,
       latchwork_article_request_file_request, latchwork_article_request_write)
LENDER(yarn, yarn_file, yarn_request, LATCHWORK_YARN_REQUEST_INIT, latchwork_read_yarn_request,
       latchwork_yarn_file_request, latchwork_yarn_request_write)

/* Two structs of the caller's own. */
static void machine(const char *text, char *written, int32_t *equal) {
  latchwork_machine first = LATCHWORK_MACHINE_INIT, second = LATCHWORK_MACHINE_INIT;
  latchwork_effort effort = LATCHWORK_EFFORT_INIT, other = LATCHWORK_EFFORT_INIT;
  OK(latchwork_read_machine(text, strlen(text), &first, &effort, NULL));
  OK(latchwork_machine_write(&first, &effort, written, MOST_BYTES, NULL, NULL));
  OK(latchwork_read_machine(written, strlen(written), &second, &other, NULL));
  *equal = strcmp(first.name, second.name) == 0 && first.needles == second.needles &&
           first.pitch_mm == second.pitch_mm && first.leftmost == second.leftmost &&
           first.max_ladder == second.max_ladder && memcmp(&effort, &other, sizeof effort) == 0;
}

/* Whether what is written of a text has `wanted` in it, which is all of it where `whole`. */
static void goes_round(const char *name, again call, const char *text, const char *wanted, int whole) {
  char *written = calloc(MOST_BYTES, 1);
  int32_t equal = 0;
  checking = name;
  CHECK(written != NULL);
  if (written == NULL) return;
  call(text, written, &equal);
  CHECK(equal == 1);
  CHECK(strstr(written, wanted) != NULL && (!whole || strcmp(written, wanted) == 0));
  free(written);
}

static void golden_files_are_written_as_they_were_read(const char *folder) {
  static const struct {
    const char *name;
    again call;
  } files[] = {{"grid", grid},       {"strip", strip},   {"panel", panel},
               {"plan", plan},       {"yarn", yarn},     {"certificate", certificate},
               {"article", article}, {"machine", machine}};
  size_t i;
  for (i = 0; i < sizeof files / sizeof *files; ++i) {
    char path[1024];
    char *text = calloc(MOST_BYTES, 1);
    FILE *in;
    checking = files[i].name;
    snprintf(path, sizeof path, "%s/%s.json", folder, files[i].name);
    in = fopen(path, "rb");
    CHECK(in != NULL && text != NULL);
    if (in != NULL && text != NULL) {
      const size_t size = fread(text, 1, MOST_BYTES - 1, in);
      CHECK(size > 0 && size < MOST_BYTES - 1);
      goes_round(files[i].name, files[i].call, text, text, 1);
    }
    if (in != NULL) fclose(in);
    free(text);
  }
}

int main(int argc, char **argv) {
  if (argc != 2) return 2;
  golden_files_are_written_as_they_were_read(argv[1]);
  /* A length in inches is kept in mm, a time in minutes in ms; blank lines and comments are not kept. */
  goes_round("swatch", swatch,
             "# off the bed\ntexture,counted,count,length,unit\n\nmoss,rows,30,4,in\nmoss,stitches,28.5,10,cm\n",
             "texture,counted,count,length,unit,place\nmoss,rows,30,101.6,mm,\nmoss,stitches,28.5,100,mm,\n", 1);
  goes_round("timings", timings, "rows,time,unit\n10,0.5,min\n", "\n0,0,0,0,0,0,0,0,0,0,0,10,30000,ms,\n", 0);
  goes_round("choices", choices,
             "{\"version\": 1, \"article\": \"scarf\", \"format\": \"latchwork-article-choices\", \"edge\": 0,"
             " \"groups\": [{\"first\": 1, \"last\": 3}], \"design\": {\"rows_step\": 8}}",
             "\"rows_step\": 8", 0);
  return checks_told();
}
