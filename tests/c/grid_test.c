/* What becomes of a grid, worked out by hand from the table of views (DEVELOPERS.md, views) and from what each operation
   says of itself. */
#include <stdlib.h>
#include <string.h>

#include "program.h"

/* 5 columns, 3 rows, like no view of its own: a 2/1 RC after row 2 over columns 1 to 3, purls at two corners. */
static const char lopsided[] =
    "kkkkp\n"
    "x 1 2/1 R\n"
    "kkkkk\n"
    "pkkkk\n";

static int reads_as(const latchwork_grid *grid, const char *wanted) {
  char text[512];
  if (grid == NULL || latchwork_grid_to_text(grid, text, sizeof text, NULL, NULL) != LATCHWORK_OK) return 0;
  if (strcmp(text, wanted) == 0) return 1;
  printf("%s: made\n%sand not\n%s", checking, text, wanted);
  return 0;
}

static void views_are_those_of_the_table(void) {
  static const struct {
    const char *name;
    latchwork_status (*view)(const latchwork_grid *grid, latchwork_grid **out, latchwork_error *error);
    const char *seen;
  } table[] = {
      {"mirrored", latchwork_grid_mirrored, "pkkkk\nx 1 1/2 L\nkkkkk\nkkkkp\n"},
      {"turned", latchwork_grid_turned, "kpppp\nx 1 1/2 R\nppppp\nppppk\n"},
      {"upside_down", latchwork_grid_upside_down, "pkkkk\nkkkkk\nx 1 1/2 L\nkkkkp\n"},
      {"half_turn", latchwork_grid_half_turn, "kkkkp\nkkkkk\nx 1 2/1 R\npkkkk\n"},
  };
  latchwork_grid *grid = grid_of(lopsided);
  size_t i;
  for (i = 0; i < sizeof table / sizeof *table; ++i) {
    latchwork_grid *seen = NULL, *back = NULL;
    int32_t equal = 0;
    checking = table[i].name;
    OK(table[i].view(grid, &seen, NULL));
    CHECK(reads_as(seen, table[i].seen));
    OK(table[i].view(seen, &back, NULL));
    OK(latchwork_grid_equal(back, grid, &equal, NULL));
    CHECK(equal == 1);
    latchwork_grid_destroy(seen);
    latchwork_grid_destroy(back);
  }
  latchwork_grid_destroy(grid);
}

static void grids_are_joined_repeated_and_cut(void) {
  latchwork_grid *grid = grid_of(lopsided), *right = grid_of("pp\nkk\npp\n"), *below = grid_of("kpkpk\n");
  latchwork_grid *made = NULL;
#define MAKES(call, wanted)         \
  do {                              \
    checking = #call;               \
    OK(call);                       \
    CHECK(reads_as(made, wanted));  \
    latchwork_grid_destroy(made);   \
    made = NULL;                    \
  } while (0)
  MAKES(latchwork_grid_beside(grid, right, &made, NULL), "kkkkppp\nx 1 2/1 R\nkkkkkkk\npkkkkpp\n");
  MAKES(latchwork_grid_above(grid, below, &made, NULL), "kkkkp\nx 1 2/1 R\nkkkkk\npkkkk\nkpkpk\n");
  MAKES(latchwork_grid_repeated_across(grid, 2, 0, &made, NULL),
        "kkkkpkkkkp\nx 1 2/1 R\nx 6 2/1 R\nkkkkkkkkkk\npkkkkpkkkk\n");
  /* Half-drop: the second copy a row up, its top row at the bottom, its crossing on the seam. */
  MAKES(latchwork_grid_repeated_across(grid, 2, 1, &made, NULL),
        "x 6 2/1 R\nkkkkpkkkkk\nx 1 2/1 R\nkkkkkpkkkk\npkkkkkkkkp\n");
  MAKES(latchwork_grid_repeated_up(grid, 2, 0, &made, NULL),
        "kkkkp\nx 1 2/1 R\nkkkkk\npkkkk\nkkkkp\nx 1 2/1 R\nkkkkk\npkkkk\n");
  /* Like bricks: the second copy a column to the right, its last column first. */
  MAKES(latchwork_grid_repeated_up(grid, 2, 1, &made, NULL),
        "pkkkk\nx 2 2/1 R\nkkkkk\nkpkkk\nkkkkp\nx 1 2/1 R\nkkkkk\npkkkk\n");
  MAKES(latchwork_grid_rolled_up(grid, 1, &made, NULL), "x 1 2/1 R\nkkkkk\npkkkk\nkkkkp\n");
  MAKES(latchwork_grid_rolled_up(grid, -1, &made, NULL), "pkkkk\nkkkkp\nx 1 2/1 R\nkkkkk\n");
  MAKES(latchwork_grid_sliced(grid, 2, 1, 2, 3, &made, NULL), "kkk\nx 0 2/1 R\nkkk\n");
  MAKES(latchwork_grid_unfolded(grid, LATCHWORK_AXIS_LINE, &made, NULL),
        "kkkkppkkkk\nx 1 2/1 R\nx 6 1/2 L\nkkkkkkkkkk\npkkkkkkkkp\n");
  MAKES(latchwork_grid_unfolded(grid, LATCHWORK_AXIS_STITCH, &made, NULL),
        "kkkkpkkkk\nx 1 2/1 R\nx 5 1/2 L\nkkkkkkkkk\npkkkkkkkp\n");
#undef MAKES
  latchwork_grid_destroy(grid);
  latchwork_grid_destroy(right);
  latchwork_grid_destroy(below);
}

static void grids_are_changed_in_place(void) {
  latchwork_grid *grid = NULL, *patch = grid_of("kp\n");
  const latchwork_crossing crossing = {2, 1, 2, 0, 1, LATCHWORK_LEAN_RIGHT, LATCHWORK_CENTRE_BETWEEN};
  latchwork_error error = LATCHWORK_ERROR_INIT;
  checking = "changes";
  OK(latchwork_grid_create(3, 5, &grid, NULL));
  OK(latchwork_grid_set(grid, 1, 0, LATCHWORK_CELL_PURL, NULL));
  OK(latchwork_grid_set(grid, 3, 4, LATCHWORK_CELL_PURL, NULL));
  OK(latchwork_grid_cross(grid, &crossing, NULL));
  CHECK(reads_as(grid, lopsided));
  OK(latchwork_grid_paste(grid, patch, 1, 3, NULL));
  CHECK(reads_as(grid, "kkkkp\nx 1 2/1 R\nkkkkk\npkkkp\n"));
  /* Half under the crossing, and above the top row: refused with the place, and nothing is changed. */
  CHECK(latchwork_grid_paste(grid, patch, 2, 3, &error) == LATCHWORK_E_CROSSING_CUT);
  CHECK(error.row == 2 && error.column == 1);
  CHECK(latchwork_grid_paste(grid, patch, 4, 0, &error) == LATCHWORK_E_OFF_GRID && error.row == 4);
  CHECK(latchwork_grid_uncross(grid, 2, 2, &error) == LATCHWORK_E_OFF_GRID && error.row == 2 && error.column == 2);
  CHECK(reads_as(grid, "kkkkp\nx 1 2/1 R\nkkkkk\npkkkp\n"));
  OK(latchwork_grid_uncross(grid, 2, 1, NULL));
  CHECK(reads_as(grid, "kkkkp\nkkkkk\npkkkp\n"));
  latchwork_grid_destroy(grid);
  latchwork_grid_destroy(patch);
}

static void what_cannot_keep_the_rules_is_refused_with_its_place(void) {
  latchwork_grid *grid = grid_of(lopsided), *low = grid_of("kk\n"), *cable = grid_of("kkk\nx 1 1/1 R\nkkk\n");
  latchwork_grid *made = NULL;
  latchwork_error error = LATCHWORK_ERROR_INIT;
#define REFUSES(call, wanted)                  \
  do {                                         \
    checking = #call;                          \
    made = grid;                               \
    CHECK((call) == (wanted) && made == NULL); \
    CHECK(error.code == (wanted));             \
  } while (0)
  REFUSES(latchwork_grid_sliced(grid, 1, 0, 3, 3, &made, &error), LATCHWORK_E_CROSSING_CUT);
  CHECK(error.row == 2 && error.column == 1);
  REFUSES(latchwork_grid_sliced(grid, 3, 0, 2, 1, &made, &error), LATCHWORK_E_OFF_GRID);
  CHECK(error.row == 3 && error.column == 0);
  REFUSES(latchwork_grid_unfolded(cable, LATCHWORK_AXIS_STITCH, &made, &error), LATCHWORK_E_CROSSING_CUT);
  CHECK(error.row == 1 && error.column == 1);
  REFUSES(latchwork_grid_beside(grid, low, &made, &error), LATCHWORK_E_SIZE_MISMATCH);
  CHECK(strcmp(error.field, "right") == 0);
  REFUSES(latchwork_grid_above(grid, low, &made, &error), LATCHWORK_E_SIZE_MISMATCH);
  CHECK(strcmp(error.field, "below") == 0);
  REFUSES(latchwork_grid_repeated_across(grid, 0, 0, &made, &error), LATCHWORK_E_BAD_ARGUMENT);
  CHECK(strcmp(error.field, "times") == 0);
  REFUSES(latchwork_grid_repeated_up(grid, INT32_MAX, 0, &made, &error), LATCHWORK_E_TOO_LARGE);
  CHECK(strcmp(error.field, "rows") == 0);
  REFUSES(latchwork_grid_repeated_up(grid, 2, 3, &made, &error), LATCHWORK_E_CROSSING_CUT);
  CHECK(error.row == 2 && error.column == 1);
#undef REFUSES
  latchwork_grid_destroy(grid);
  latchwork_grid_destroy(low);
  latchwork_grid_destroy(cable);
}

/* FNV-1a, 64 bits (RFC 9923), from its definition. */
static uint64_t fnv1a(const uint8_t *bytes, size_t count) {
  uint64_t hash = UINT64_C(0xcbf29ce484222325);
  size_t i;
  for (i = 0; i < count; ++i) hash = (hash ^ bytes[i]) * UINT64_C(0x100000001b3);
  return hash;
}

static void a_grid_is_described_and_hashed(void) {
  /* Rows, columns; cells from row 1; of the crossing row, column, groups, then a byte each for its lean and its centre. */
  static const uint8_t bytes[] = {
      3, 0, 0, 0, 5, 0, 0, 0,                                   /* rows, columns, the lowest byte first */
      1, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 1,              /* cells */
      2, 0, 0, 0, 1, 0, 0, 0, 2, 0, 0, 0, 0, 0, 0, 0, 1, 0, 0, 0, 1, 1};
  latchwork_grid *grid = grid_of(lopsided), *mixed = grid_of("kkp.k\nx 0 1/1 R\nkktsk\n");
  char text[128];
  uint64_t hash = 0;
  size_t needed = 0;
  checking = "description and hash";
  OK(latchwork_grid_describe(mixed, text, sizeof text, &needed, NULL));
  CHECK(strcmp(text, "5 stitches x 2 rows, RS: 6 knit, 1 purl, 1 tuck, 1 slip, 1 none; 1 crossing") == 0);
  CHECK(needed == strlen(text) + 1);
  CHECK(fnv1a((const uint8_t *)"foobar", 6) == UINT64_C(0x85944171f73967e8)); /* a vector of the RFC */
  OK(latchwork_grid_hash(grid, &hash, NULL));
  CHECK(hash == fnv1a(bytes, sizeof bytes));
  latchwork_grid_destroy(grid);
  latchwork_grid_destroy(mixed);
}

int main(void) {
  views_are_those_of_the_table();
  grids_are_joined_repeated_and_cut();
  grids_are_changed_in_place();
  what_cannot_keep_the_rules_is_refused_with_its_place();
  a_grid_is_described_and_hashed();
  return checks_told();
}
