/* Spoiled files through the C ABI: each is refused with the code, line, field, row and column that
   tests/golden/file/refused.txt states (its head says how it is written), and gives nothing. */
#include <stdlib.h>

#include "program.h"

enum { KINDS = 11, MOST_BYTES = 1 << 20 };

typedef struct {
  char kind[32], code[32], field[64], near[64];
  int32_t line, row, column;
} wanted;

/* One reader a line: refused, nothing comes out, and what comes out all the same is freed. */
#define READER(name, type, read, destroy)                                               \
  static latchwork_status name(const char* text, size_t size, latchwork_error* error) { \
    latchwork_##type* out = NULL;                                                       \
    const latchwork_status status = read(text, size, &out, error);                      \
    CHECK(out == NULL);                                                                 \
    destroy(out);                                                                       \
    return status;                                                                      \
  }
READER(grid, grid, latchwork_read_grid, latchwork_grid_destroy)
READER(strip, strip, latchwork_read_strip, latchwork_strip_destroy)
READER(panel, panel, latchwork_read_panel, latchwork_panel_destroy)
READER(article, article_file, latchwork_read_article, latchwork_article_file_destroy)
READER(choices, article_request_file, latchwork_read_article_request, latchwork_article_request_file_destroy)
READER(yarn, yarn_file, latchwork_read_yarn_request, latchwork_yarn_file_destroy)
READER(plan, plan, latchwork_read_plan, latchwork_plan_destroy)
READER(certificate, certificate, latchwork_read_certificate, latchwork_certificate_destroy)
READER(swatch, swatch, latchwork_read_swatch, latchwork_swatch_destroy)
READER(timings, timings, latchwork_read_timings, latchwork_timings_destroy)

/* A machine goes into the caller's own structs, which keep what they held. */
static latchwork_status machine(const char* text, size_t size, latchwork_error* error) {
  latchwork_machine out, before;
  latchwork_effort effort, effort_before;
  latchwork_status status;
  memset(&out, 7, sizeof out);
  memset(&effort, 7, sizeof effort);
  out.struct_size = sizeof out;
  effort.struct_size = sizeof effort;
  memcpy(&before, &out, sizeof out);
  memcpy(&effort_before, &effort, sizeof effort);
  status = latchwork_read_machine(text, size, &out, &effort, error);
  CHECK(memcmp(&before, &out, sizeof out) == 0 && memcmp(&effort_before, &effort, sizeof effort) == 0);
  return status;
}

static const struct {
  const char* kind;
  latchwork_status (*read)(const char* text, size_t size, latchwork_error* error);
} readers[KINDS] = {{"grid", grid},       {"strip", strip},     {"panel", panel},
                    {"machine", machine}, {"article", article}, {"article-choices", choices},
                    {"yarn", yarn},       {"plan", plan},       {"certificate", certificate},
                    {"swatch", swatch},   {"timings", timings}};

static int files_of_kind[KINDS];
static int files_of_code[256];

/* "@ KIND CODE line=N field=PATH row=N column=N near=NAME schema|beyond: REASON"; 0 where it is not written so. */
static int read_head(char* head, wanted* out) {
  static const wanted nothing = {{0}, {0}, {0}, {0}, 0, 0, -1};
  char* end = strstr(head, ": ");
  char* word;
  *out = nothing;
  if (end == NULL) return 0;
  *end = '\0';
  if (sscanf(head, "@ %31s %31s", out->kind, out->code) != 2) return 0;
  for (word = strtok(head, " "); word != NULL; word = strtok(NULL, " ")) {
    if (strncmp(word, "line=", 5) == 0) out->line = (int32_t)strtol(word + 5, NULL, 10);
    if (strncmp(word, "row=", 4) == 0) out->row = (int32_t)strtol(word + 4, NULL, 10);
    if (strncmp(word, "column=", 7) == 0) out->column = (int32_t)strtol(word + 7, NULL, 10);
    if (strncmp(word, "field=", 6) == 0) {
      if (strlen(word + 6) >= sizeof out->field) return 0;
      strcpy(out->field, word + 6);
    }
    if (strncmp(word, "near=", 5) == 0) {
      if (strlen(word + 5) >= sizeof out->near) return 0;
      strcpy(out->near, word + 5);
    }
  }
  return 1;
}

static void one_file(char* head, const char* text, size_t size) {
  latchwork_error error = LATCHWORK_ERROR_INIT;
  wanted want;
  latchwork_status status;
  int i = 0;
  char shown[256];
  strncpy(shown, head, sizeof shown - 1);
  shown[sizeof shown - 1] = '\0';
  checking = shown;
  if (!read_head(head, &want)) {
    CHECK(!"a head as the file's own says");
    return;
  }
  while (i < KINDS && strcmp(readers[i].kind, want.kind) != 0) ++i;
  CHECK(i < KINDS);
  if (i == KINDS) return;
  ++files_of_kind[i];
  status = readers[i].read(text, size, &error);
  CHECK(status != LATCHWORK_OK && status == error.code);
  CHECK(strcmp(latchwork_error_name(status), want.code) == 0);
  CHECK(error.line == want.line && error.row == want.row && error.column == want.column);
  CHECK(strcmp(error.field, want.field) == 0);
  CHECK(strncmp(error.message, "line ", 5) == 0);
  if (want.near[0] != '\0') {
    char meant[96];
    snprintf(meant, sizeof meant, "perhaps \"%s\" was meant", want.near);
    CHECK(strstr(error.message, meant) != NULL);
  }
  CHECK(readers[i].read(text, size, NULL) == status);
  if (status >= 0 && status < 256) ++files_of_code[status];
}

static void spoiled_files_are_refused_at_their_places(char* all) {
  char* head = strncmp(all, "@ ", 2) == 0 ? all : strstr(all, "\n@ ");
  int i;
  if (head != NULL && *head == '\n') ++head;
  while (head != NULL) {
    char* text = strchr(head, '\n');
    char* next = text == NULL ? NULL : strstr(text, "\n@ ");
    checking = head;
    CHECK(text != NULL);
    if (text == NULL) return;
    *text++ = '\0';
    if (next == NULL) {
      one_file(head, text, strlen(text));
    } else if (next < text) { /* an empty file: the next head follows at once */
      one_file(head, text, 0);
      head = text;
      continue;
    } else {
      one_file(head, text, (size_t)(next + 1 - text));
    }
    head = next == NULL ? NULL : next + 1;
  }
  for (i = 0; i < KINDS; ++i) {
    checking = readers[i].kind;
    CHECK(files_of_kind[i] > 0);
  }
  /* By number too: the names above are the library's own. */
  checking = "codes by number";
  CHECK(files_of_code[LATCHWORK_E_WRONG_FORMAT] > 0);
  CHECK(files_of_code[LATCHWORK_E_NEWER_VERSION] > 0);
  CHECK(files_of_code[LATCHWORK_E_BAD_SYNTAX] > 0);
  CHECK(files_of_code[LATCHWORK_E_DUPLICATE_KEY] > 0);
  CHECK(files_of_code[LATCHWORK_E_MISSING_FIELD] > 0);
  CHECK(files_of_code[LATCHWORK_E_UNKNOWN_FIELD] > 0);
  CHECK(files_of_code[LATCHWORK_E_BAD_VALUE] > 0);
  CHECK(files_of_code[LATCHWORK_E_BAD_LETTER] > 0);
}

/* Bytes that no text can hold: no UTF-8, on line 2 of three. */
static void bytes_that_are_no_text_are_refused_at_their_line(void) {
  static const char spoiled[] = "{\"version\": 1,\n\"format\": \"k\xff\"\n}";
  int i;
  for (i = 0; i < KINDS; ++i) {
    latchwork_error error = LATCHWORK_ERROR_INIT;
    checking = readers[i].kind;
    CHECK(readers[i].read(spoiled, sizeof spoiled - 1, &error) == LATCHWORK_E_BAD_ENCODING);
    CHECK(error.code == LATCHWORK_E_BAD_ENCODING && error.line == 2 && error.row == 0 && error.column == -1);
    CHECK(error.field[0] == '\0');
  }
}

/* 100 MB, of which nothing is looked at: the system makes the zeros when they are. */
enum { HUGE_BYTES = 100000000 };

static void files_of_100_mb_are_refused(const char* folder) {
  const char* huge = calloc(HUGE_BYTES, 1);
  char path[1024];
  FILE* out;
  int i;
  checking = "a file of 100 MB";
  CHECK(huge != NULL && LATCHWORK_MAX_FILE_BYTES < HUGE_BYTES && LATCHWORK_MAX_SWATCH_BYTES < HUGE_BYTES);
  if (huge == NULL) return;
  for (i = 0; i < KINDS; ++i) {
    latchwork_error error = LATCHWORK_ERROR_INIT;
    checking = readers[i].kind;
    CHECK(readers[i].read(huge, HUGE_BYTES, &error) == LATCHWORK_E_TOO_LARGE);
    CHECK(error.code == LATCHWORK_E_TOO_LARGE && error.line == 1 && error.row == 0 && error.column == -1);
    CHECK(error.field[0] == '\0' && strstr(error.message, "100000000") != NULL);
  }
  free((void*)huge);

  /* As a brief's panel: the file is a hole with an end. */
  checking = "a brief's file of 100 MB";
  snprintf(path, sizeof path, "%s/panel.json", folder);
  out = fopen(path, "wb");
  CHECK(out != NULL);
  if (out == NULL) return;
  CHECK(fseek(out, HUGE_BYTES - 1, SEEK_SET) == 0 && fputc(' ', out) == ' ');
  CHECK(fclose(out) == 0);
  {
    latchwork_error error = LATCHWORK_ERROR_INIT;
    latchwork_brief* brief = (latchwork_brief*)path;
    CHECK(latchwork_read_brief(folder, &brief, &error) == LATCHWORK_E_TOO_LARGE && brief == NULL);
    CHECK(strcmp(error.field, "panel.json") == 0 && strstr(error.message, "100000000") != NULL);
  }
  CHECK(remove(path) == 0);
}

int main(int argc, char** argv) {
  FILE* in = argc == 3 ? fopen(argv[1], "rb") : NULL;
  char* all = malloc(MOST_BYTES);
  size_t size = 0;
  checking = "the file of spoiled files";
  CHECK(in != NULL && all != NULL);
  if (in != NULL && all != NULL) {
    size = fread(all, 1, MOST_BYTES - 1, in);
    CHECK(size > 0 && size < MOST_BYTES - 1);
    all[size] = '\0';
    spoiled_files_are_refused_at_their_places(all);
    bytes_that_are_no_text_are_refused_at_their_line();
    files_of_100_mb_are_refused(argv[2]);
  }
  if (in != NULL) fclose(in);
  free(all);
  return checks_told();
}
