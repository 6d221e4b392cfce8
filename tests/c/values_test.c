/* What the calls give back, against values worked out by hand from the definitions; structs of other versions; text and
   its buffers. */
#include <stdlib.h>
#include <string.h>

#include "check.h"
#include <latchwork/latchwork.h>

int checks_failed = 0;
long checks_made = 0;
const char *checking = "";

#define OK(call) CHECK((call) == LATCHWORK_OK)

static latchwork_grid *grid_of(const char *text) {
  latchwork_grid *grid = NULL;
  OK(latchwork_grid_from_text(text, strlen(text), &grid, NULL));
  return grid;
}

static void crossings_have_the_published_names(void) {
  /* Craft Yarn Council: in n/m RC and n/m LC the first number is the group that passes in front; in RC that is the left
     group, in LC the right one. */
  static const struct {
    latchwork_crossing crossing;
    const char *name;
    int32_t width, travel;
  } table[] = {
      {{1, 0, 3, 0, 3, LATCHWORK_LEAN_RIGHT, LATCHWORK_CENTRE_BETWEEN}, "3/3 RC", 6, 3},
      {{1, 0, 1, 0, 2, LATCHWORK_LEAN_LEFT, LATCHWORK_CENTRE_BETWEEN}, "2/1 LC", 3, 2},
      {{1, 0, 2, 0, 1, LATCHWORK_LEAN_RIGHT, LATCHWORK_CENTRE_BETWEEN}, "2/1 RC", 3, 2},
      {{1, 0, 2, 1, 2, LATCHWORK_LEAN_RIGHT, LATCHWORK_CENTRE_BEHIND}, "2/1/2 RC, centre behind", 5, 3},
  };
  size_t i;
  checking = "crossing names";
  for (i = 0; i < sizeof table / sizeof *table; ++i) {
    char text[64];
    int32_t width = 0, travel = 0;
    OK(latchwork_crossing_name(&table[i].crossing, text, sizeof text, NULL, NULL));
    CHECK(strcmp(text, table[i].name) == 0);
    OK(latchwork_crossing_width(&table[i].crossing, &width, NULL));
    OK(latchwork_crossing_travel(&table[i].crossing, &travel, NULL));
    CHECK(width == table[i].width && travel == table[i].travel);
  }
}

static void a_grid_is_what_its_letters_say(void) {
  /* Top row first in the text, row 1 first in the array; the crossing stands after the row written below it. */
  static const uint8_t expected[] = {0, 1, 2, 3, 0, 0, 0, 0, 0, 0, 0, 4};
  latchwork_grid *grid = grid_of("kkk.\nx 0 2/1 L\nkkkk\nkpts\n");
  latchwork_grid *again = NULL;
  uint8_t cells[12];
  latchwork_crossing crossing;
  char text[64];
  size_t needed = 0;
  int32_t rows = 0, columns = 0, cell = 0, equal = 0;
  checking = "grid";
  OK(latchwork_grid_rows(grid, &rows, NULL));
  OK(latchwork_grid_columns(grid, &columns, NULL));
  CHECK(rows == 3 && columns == 4);
  OK(latchwork_grid_cells(grid, cells, sizeof cells, &needed, NULL));
  CHECK(needed == 12 && memcmp(cells, expected, 12) == 0);
  OK(latchwork_grid_at(grid, 1, 3, &cell, NULL));
  CHECK(cell == LATCHWORK_CELL_SLIP);
  OK(latchwork_grid_crossings(grid, &crossing, 1, &needed, NULL));
  CHECK(needed == 1 && crossing.row == 2 && crossing.column == 0 && crossing.left == 2 && crossing.centre == 0);
  CHECK(crossing.right == 1 && crossing.lean == LATCHWORK_LEAN_LEFT);
  OK(latchwork_grid_to_text(grid, text, sizeof text, NULL, NULL));
  CHECK(strcmp(text, "kkk.\nx 0 2/1 L\nkkkk\nkpts\n") == 0);
  OK(latchwork_grid_from_cells(3, 4, cells, 12, &again, NULL));
  OK(latchwork_grid_equal(grid, again, &equal, NULL));
  CHECK(equal == 0);
  OK(latchwork_grid_cross(again, &crossing, NULL));
  OK(latchwork_grid_equal(grid, again, &equal, NULL));
  CHECK(equal == 1);
  latchwork_grid_destroy(grid);
  latchwork_grid_destroy(again);
}

static void a_mirrored_crossing_leans_the_other_way(void) {
  /* DEVELOPERS.md, views: start W-c-l-q = 6-1-2-1, groups swapped, lean flipped. */
  latchwork_grid *grid = grid_of("kkkkkk\nx 1 2/1 R\nkkkkkk\n");
  latchwork_grid *mirrored = NULL;
  latchwork_crossing crossing;
  checking = "mirrored";
  OK(latchwork_grid_mirrored(grid, &mirrored, NULL));
  OK(latchwork_grid_crossings(mirrored, &crossing, 1, NULL, NULL));
  CHECK(crossing.column == 2 && crossing.left == 1 && crossing.right == 2 && crossing.lean == LATCHWORK_LEAN_LEFT);
  latchwork_grid_destroy(grid);
  latchwork_grid_destroy(mirrored);
}

static void wales_follow_their_loops_through_a_crossing(void) {
  /* 2 over 1: the stitches of columns 0 and 1 go to 1 and 2, that of column 2 to 0. */
  latchwork_grid *grid = grid_of("kkk\nx 0 2/1 R\nkkk\n");
  latchwork_wales *wales = NULL;
  latchwork_wale all[3];
  int32_t columns[2], index = -2;
  size_t needed = 0;
  checking = "wales";
  OK(latchwork_wales_create(grid, &wales, NULL));
  OK(latchwork_wales_all(wales, all, 3, &needed, NULL));
  CHECK(needed == 3 && all[2].column == 2 && all[2].row == 1 && all[2].last_row == 2);
  OK(latchwork_wales_columns(wales, 2, columns, 2, &needed, NULL));
  CHECK(needed == 2 && columns[0] == 2 && columns[1] == 0);
  OK(latchwork_wales_at(wales, 2, 1, &index, NULL));
  CHECK(index == 0);
  latchwork_wales_destroy(wales);
  latchwork_grid_destroy(grid);
}

static void errors_name_their_place(void) {
  latchwork_error error = LATCHWORK_ERROR_INIT;
  latchwork_grid *grid = grid_of("kkkk\nx 0 2/2 R\nkkkk\n");
  latchwork_grid *none = (latchwork_grid *)&error;
  latchwork_crossing crossing = LATCHWORK_CROSSING_INIT;
  const latchwork_strip *strips[2] = {NULL, NULL};
  latchwork_panel *panel = NULL;
  latchwork_strip *strip = NULL;
  checking = "errors";
  CHECK(latchwork_grid_set(grid, 3, 1, LATCHWORK_CELL_PURL, &error) == LATCHWORK_E_OFF_GRID);
  CHECK(error.code == LATCHWORK_E_OFF_GRID && error.row == 3 && error.column == 1 && error.message[0] != '\0');
  CHECK(latchwork_grid_set(grid, 1, 1, 5, &error) == LATCHWORK_E_BAD_ARGUMENT && strcmp(error.field, "cell") == 0);
  CHECK(latchwork_grid_set(grid, 1, 1, -1, &error) == LATCHWORK_E_BAD_ARGUMENT);
  CHECK(latchwork_grid_set(grid, 1, 1, 256, &error) == LATCHWORK_E_BAD_ARGUMENT);
  CHECK(latchwork_grid_set(grid, 1, 1, LATCHWORK_CELL_TUCK, &error) == LATCHWORK_E_CROSSING_OVER_STACK);
  crossing.column = 1;
  CHECK(latchwork_grid_cross(grid, &crossing, &error) == LATCHWORK_E_STITCH_TAKEN && error.row == 1);
  crossing.lean = 2;
  CHECK(latchwork_grid_cross(grid, &crossing, &error) == LATCHWORK_E_BAD_ARGUMENT);
  CHECK(strcmp(error.field, "crossing.lean") == 0);
  CHECK(latchwork_grid_unfolded(grid, LATCHWORK_AXIS_STITCH, &none, &error) == LATCHWORK_E_CROSSING_CUT && none == NULL);
  CHECK(latchwork_grid_unfolded(grid, 2, &none, &error) == LATCHWORK_E_BAD_ARGUMENT && strcmp(error.field, "axis") == 0);
  CHECK(latchwork_grid_from_text("kk\nkq\n", 6, &none, &error) == LATCHWORK_E_BAD_LETTER && error.line == 2);
  CHECK(latchwork_grid_create(0, 5, &none, &error) == LATCHWORK_E_BAD_ARGUMENT && strcmp(error.field, "rows") == 0);
  CHECK(latchwork_grid_create(70000, 5, &none, &error) == LATCHWORK_E_TOO_LARGE);
  CHECK(latchwork_grid_from_text(NULL, 0, &none, &error) == LATCHWORK_E_BAD_ARGUMENT && strcmp(error.field, "text") == 0);
  CHECK(latchwork_strip_create("caf\xE9", "a", grid, &strip, &error) == LATCHWORK_E_BAD_ENCODING && strip == NULL);
  CHECK(strcmp(error.field, "strip.name") == 0);
  CHECK(latchwork_strip_create("a", "caf\xE9", grid, &strip, &error) == LATCHWORK_E_BAD_ENCODING && strip == NULL);
  CHECK(strcmp(error.field, "strip.texture") == 0);
  OK(latchwork_stockinette(2, &strip, &error));
  CHECK(latchwork_panel_create("caf\xE9", strip, &panel, &error) == LATCHWORK_E_BAD_ENCODING && panel == NULL);
  CHECK(strcmp(error.field, "name") == 0);
  strips[0] = strip;
  CHECK(latchwork_join_strips("two", 3, strips, 2, &panel, &error) == LATCHWORK_E_BAD_ARGUMENT && panel == NULL);
  CHECK(strcmp(error.field, "strips[1]") == 0);
  latchwork_strip_destroy(strip);
  latchwork_grid_destroy(grid);
}

static void long_texts_are_cut_between_characters(void) {
  /* 100 two-byte letters as a texture that was not measured: error.field holds 63 bytes, so 31 letters. */
  char texture[201];
  latchwork_measurement measurement = {"rope", NULL, NULL, 30.0, 100.0, LATCHWORK_COUNTED_ROWS, 1, 0};
  latchwork_swatch *swatch = NULL;
  latchwork_gauge gauge = LATCHWORK_GAUGE_INIT;
  latchwork_error error = LATCHWORK_ERROR_INIT;
  size_t i;
  checking = "cut texts";
  for (i = 0; i < 100; ++i) memcpy(texture + 2 * i, "\xc3\xa9", 2);
  texture[200] = '\0';
  OK(latchwork_swatch_create(&measurement, 1, &swatch, NULL));
  CHECK(latchwork_swatch_gauge(swatch, texture, -1, &gauge, &error) == LATCHWORK_E_NO_GAUGE);
  CHECK(strlen(error.field) == 62 && memcmp(error.field, texture, 62) == 0);
  CHECK(strlen(error.message) < sizeof error.message);
  latchwork_swatch_destroy(swatch);
}

static void buffers_are_filled_whole_or_not_at_all(void) {
  latchwork_error error = LATCHWORK_ERROR_INIT;
  char text[8];
  size_t needed = 99;
  checking = "buffers";
  OK(latchwork_needle_name(-12, NULL, 0, &needed, NULL));
  CHECK(needed == 4); /* L12 and its NUL */
  memset(text, 'z', sizeof text);
  CHECK(latchwork_needle_name(-12, text, 3, &needed, &error) == LATCHWORK_E_BAD_ARGUMENT);
  CHECK(needed == 4 && text[0] == '\0' && text[1] == 'z' && strcmp(error.field, "capacity") == 0);
  OK(latchwork_needle_name(-12, text, 4, NULL, NULL));
  CHECK(memcmp(text, "L12\0zzzz", 8) == 0);
  CHECK(latchwork_needle_name(-12, NULL, 0, NULL, &error) == LATCHWORK_E_BAD_ARGUMENT);
  CHECK(latchwork_needle_name(-12, NULL, 4, &needed, &error) == LATCHWORK_E_BAD_ARGUMENT);
  CHECK(strcmp(error.field, "text") == 0);
  needed = 99;
  CHECK(latchwork_needle_name(0, text, sizeof text, &needed, &error) == LATCHWORK_E_BAD_ARGUMENT);
  CHECK(needed == 0 && text[0] == '\0');
}

static void needles_count_outward_from_the_centre(void) {
  /* DEVELOPERS.md, sides: five stitches stand on L3..R2, RS column 0 is the operator's rightmost; there is no needle 0. */
  latchwork_machine machine = LATCHWORK_MACHINE_INIT;
  int32_t needle = 0;
  checking = "needles";
  OK(latchwork_machine_generic(LATCHWORK_MACHINE_CLASS_STANDARD, &machine, NULL));
  OK(latchwork_leftmost_needle(&machine, 5, &needle, NULL));
  CHECK(needle == -3);
  OK(latchwork_needle_of(&machine, 5, 0, &needle, NULL));
  CHECK(needle == 2);
  OK(latchwork_needle_of(&machine, 5, 4, &needle, NULL));
  CHECK(needle == -3);
  OK(latchwork_needle_beside(-1, 1, &needle, NULL));
  CHECK(needle == 1);
  OK(latchwork_needle_beside(2, -4, &needle, NULL));
  CHECK(needle == -3);
}

/* A caller of a newer header: a struct with one field more than this library knows. */
struct newer_effort {
  latchwork_effort known;
  int64_t unknown;
};
struct newer_error {
  latchwork_error known;
  int64_t unknown;
};

static void structs_of_other_versions_are_understood(void) {
  latchwork_effort effort = LATCHWORK_EFFORT_INIT, full = LATCHWORK_EFFORT_INIT;
  struct newer_effort newer = {LATCHWORK_EFFORT_INIT, 7};
  struct newer_error newer_error = {LATCHWORK_ERROR_INIT, 7};
  latchwork_error error = LATCHWORK_ERROR_INIT;
  latchwork_machine machine = LATCHWORK_MACHINE_INIT, second = LATCHWORK_MACHINE_INIT;
  char json[4096];
  checking = "struct_size";
  OK(latchwork_machine_generic(LATCHWORK_MACHINE_CLASS_STANDARD, &machine, NULL));

  /* An older caller, whose struct ends before `row`: out, the rest is left alone; in, `row` has its default. */
  OK(latchwork_effort_default(&full, NULL));
  effort.struct_size = offsetof(latchwork_effort, row);
  effort.row = -77;
  OK(latchwork_effort_default(&effort, NULL));
  CHECK(effort.struct_size == offsetof(latchwork_effort, row) && effort.row == -77 && effort.stop == full.stop);
  effort.stop = 16000;
  OK(latchwork_machine_write(&machine, &effort, json, sizeof json, NULL, NULL));
  OK(latchwork_read_machine(json, strlen(json), &second, &full, NULL));
  CHECK(full.stop == 16000 && full.row == 4000);

  /* A newer caller: out, what we do not know is zero; in, it must be. */
  newer.known.struct_size = sizeof newer;
  OK(latchwork_effort_default(&newer.known, NULL));
  CHECK(newer.unknown == 0 && newer.known.struct_size == sizeof newer && newer.known.stop == 15000);
  OK(latchwork_machine_write(&machine, &newer.known, json, sizeof json, NULL, NULL));
  newer.unknown = 1;
  CHECK(latchwork_machine_write(&machine, &newer.known, json, sizeof json, NULL, &error) == LATCHWORK_E_BAD_ARGUMENT);
  CHECK(strcmp(error.field, "effort.struct_size") == 0);

  /* Not initialised. */
  memset(&effort, 0, sizeof effort);
  CHECK(latchwork_effort_default(&effort, &error) == LATCHWORK_E_BAD_ARGUMENT);
  CHECK(strcmp(error.field, "effort.struct_size") == 0);
  memset(&effort, 0xA5, sizeof effort);
  CHECK(latchwork_effort_default(&effort, &error) == LATCHWORK_E_BAD_ARGUMENT);
  CHECK(latchwork_machine_write(&machine, &effort, json, sizeof json, NULL, &error) == LATCHWORK_E_BAD_ARGUMENT);

  /* The error itself. */
  error.struct_size = 0;
  strcpy(error.message, "untouched");
  CHECK(latchwork_needle_name(0, json, sizeof json, NULL, &error) == LATCHWORK_E_BAD_ARGUMENT);
  CHECK(strcmp(error.message, "untouched") == 0);
  error.struct_size = offsetof(latchwork_error, field);
  CHECK(latchwork_needle_name(0, json, sizeof json, NULL, &error) == LATCHWORK_E_BAD_ARGUMENT);
  CHECK(error.code == LATCHWORK_E_BAD_ARGUMENT && strcmp(error.message, "untouched") == 0);
  newer_error.known.struct_size = sizeof newer_error;
  CHECK(latchwork_needle_name(0, json, sizeof json, NULL, &newer_error.known) == LATCHWORK_E_BAD_ARGUMENT);
  CHECK(newer_error.known.code == LATCHWORK_E_BAD_ARGUMENT && newer_error.known.struct_size == sizeof newer_error);
  CHECK(newer_error.unknown == 0);
}

static void a_machine_comes_back_as_it_went(void) {
  latchwork_machine machine = LATCHWORK_MACHINE_INIT, read = LATCHWORK_MACHINE_INIT;
  latchwork_effort effort = LATCHWORK_EFFORT_INIT, read_effort = LATCHWORK_EFFORT_INIT;
  latchwork_error error = LATCHWORK_ERROR_INIT;
  char json[4096], *name;
  checking = "machine";
  OK(latchwork_machine_generic(LATCHWORK_MACHINE_CLASS_BULKY, &machine, NULL));
  OK(latchwork_effort_default(&effort, NULL));
  machine.leftmost = -20;
  machine.prongs_count = 4;
  machine.prongs[3] = 7;
  machine.carriage_starts_right = 0;
  effort.hold = 0; /* it costs nothing: not "the default" */
  strcpy(machine.name, "attic");
  OK(latchwork_machine_write(&machine, &effort, json, sizeof json, NULL, NULL));
  OK(latchwork_read_machine(json, strlen(json), &read, &read_effort, NULL));
  CHECK(memcmp(&machine, &read, sizeof machine) == 0);
  CHECK(memcmp(&effort, &read_effort, sizeof effort) == 0);
  OK(latchwork_read_machine(json, strlen(json), &read, NULL, NULL));

  /* A name that the struct cannot hold is refused, not cut. */
  name = strstr(json, "attic");
  CHECK(name != NULL);
  if (name != NULL) {
    memmove(name + 200, name, strlen(name) + 1);
    memset(name, 'a', 200);
    CHECK(latchwork_read_machine(json, strlen(json), &read, NULL, &error) == LATCHWORK_E_TOO_LARGE);
    CHECK(strcmp(error.field, "machine.name") == 0 && strcmp(read.name, "attic") == 0);
  }
  memset(machine.name, 'a', sizeof machine.name);
  CHECK(latchwork_machine_write(&machine, NULL, json, sizeof json, NULL, &error) == LATCHWORK_E_BAD_ARGUMENT);
  CHECK(strcmp(error.field, "machine.name") == 0);
  machine.name[0] = '\0';
  machine.cast_on_loops = 2;
  CHECK(latchwork_machine_write(&machine, NULL, json, sizeof json, NULL, &error) == LATCHWORK_E_BAD_ARGUMENT);
  CHECK(strcmp(error.field, "machine.cast_on_loops") == 0);
  machine.cast_on_loops = 1;
  machine.prongs_count = LATCHWORK_MACHINE_PRONGS + 1;
  CHECK(latchwork_machine_write(&machine, NULL, json, sizeof json, NULL, &error) == LATCHWORK_E_BAD_ARGUMENT);
  CHECK(strcmp(error.field, "machine.prongs_count") == 0);
}

static void panels_give_back_their_bands(void) {
  static const latchwork_band bands[] = {{1, 2, 2}, {3, 1, 1}};
  static const latchwork_strip_span spans[] = {
      {"left", "rope", 0, 2, 1}, {"right", "moss", 2, 1, 2}, {"top", "stockinette", 0, 3, 1}};
  latchwork_grid *grid = NULL;
  latchwork_panel *panel = NULL;
  latchwork_error error = LATCHWORK_ERROR_INIT;
  latchwork_band band[2];
  latchwork_strip_span span[2];
  size_t needed = 0;
  int32_t axis = -1;
  checking = "panel";
  OK(latchwork_grid_create(3, 3, &grid, NULL));
  OK(latchwork_panel_from_bands("p", grid, bands, 2, spans, 3, &panel, NULL));
  OK(latchwork_panel_bands(panel, band, 2, &needed, NULL));
  CHECK(needed == 2 && memcmp(band, bands, sizeof bands) == 0);
  OK(latchwork_panel_strips(panel, 0, span, 2, &needed, NULL));
  CHECK(needed == 2 && strcmp(span[1].name, "right") == 0 && strcmp(span[1].texture, "moss") == 0);
  CHECK(span[1].column == 2 && span[1].columns == 1 && span[1].repeat_rows == 2);
  CHECK(latchwork_panel_strips(panel, 2, span, 2, &needed, &error) == LATCHWORK_E_BAD_ARGUMENT);
  CHECK(strcmp(error.field, "band") == 0);
  OK(latchwork_panel_axis_half_columns(panel, &axis, NULL));
  CHECK(axis == 0);
  OK(latchwork_panel_set_axis_half_columns(panel, 3, NULL));
  OK(latchwork_panel_axis_half_columns(panel, &axis, NULL));
  CHECK(axis == 3);
  CHECK(latchwork_panel_set_axis_half_columns(panel, 6, &error) == LATCHWORK_E_BAD_ARGUMENT);
  OK(latchwork_panel_set_axis_half_columns(panel, 0, NULL));
  latchwork_panel_destroy(panel);
  CHECK(latchwork_panel_from_bands("p", grid, bands, 2, spans, 2, &panel, &error) == LATCHWORK_E_SIZE_MISMATCH);
  CHECK(strcmp(error.field, "bands[1].strips") == 0 && panel == NULL);
  CHECK(latchwork_panel_from_bands("p", grid, bands, 1, spans, 3, &panel, &error) == LATCHWORK_E_SIZE_MISMATCH);
  CHECK(strcmp(error.field, "spans_count") == 0);
  latchwork_grid_destroy(grid);
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
  latchwork_grid *grid = NULL;
  latchwork_strip *strip = NULL;
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
  latchwork_panel_destroy(panel);
  latchwork_strip_destroy(strip);
  latchwork_grid_destroy(grid);
  latchwork_swatch_destroy(swatch);
}

static void briefs_are_read_from_folders(const char *folder, const char *file) {
  latchwork_brief *brief = NULL, *made = NULL;
  latchwork_panel *panel = NULL;
  latchwork_swatch *swatch = NULL;
  latchwork_machine machine = LATCHWORK_MACHINE_INIT;
  latchwork_effort effort = LATCHWORK_EFFORT_INIT;
  latchwork_job *job = NULL;
  latchwork_verification verification = LATCHWORK_VERIFICATION_INIT;
  latchwork_error error = LATCHWORK_ERROR_INIT;
  int32_t equal = 0;
  checking = "brief";
  OK(latchwork_read_brief(folder, &brief, NULL));
  OK(latchwork_brief_panel(brief, &panel, NULL));
  OK(latchwork_brief_swatch(brief, &swatch, NULL));
  OK(latchwork_brief_machine(brief, &machine, NULL));
  OK(latchwork_brief_effort(brief, &effort, NULL));
  CHECK(machine.needles == 200 && effort.stop == 15000);
  OK(latchwork_brief_create(panel, swatch, &machine, &effort, &made, NULL));
  OK(latchwork_brief_equal(brief, made, &equal, NULL));
  CHECK(equal == 1);
  OK(latchwork_brief_run(brief, NULL, &job, NULL));
  OK(latchwork_job_verification(job, &verification, NULL));
  CHECK(verification.verified == 1);
  /* A file stands where the folder should be made. */
  CHECK(latchwork_brief_write_job(brief, job, file, &error) == LATCHWORK_E_IO && error.message[0] != '\0');
  latchwork_job_destroy(job);
  latchwork_brief_destroy(made);
  latchwork_panel_destroy(panel);
  latchwork_swatch_destroy(swatch);
  latchwork_brief_destroy(brief);
  CHECK(latchwork_read_brief(file, &brief, &error) == LATCHWORK_E_IO && brief == NULL);
  CHECK(latchwork_read_brief("", &brief, &error) == LATCHWORK_E_BAD_ARGUMENT && strcmp(error.field, "folder") == 0);
  CHECK(error.field[0] != '\0');
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
  const latchwork_weighed_swatch weighed = {"stockinette", 2.1, 0.0, 0.0, 0.0, 10.0, 100.0, 0.0};
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
  int32_t equal = 0;
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
  latchwork_yarn_need_destroy(need);
  /* What is written is read back, and C sees it as it was handed in. */
  OK(latchwork_yarn_request_write(&request, json, sizeof json, NULL, &error));
  OK(latchwork_read_yarn_request(json, strlen(json), &file, &error));
  OK(latchwork_yarn_file_request(file, &read_back, &error));
  CHECK(read_back.yarn_count == request.yarn_count && read_back.weighed_count == request.weighed_count);
  CHECK(strcmp(read_back.yarns[0].name, request.yarns[0].name) == 0);
  CHECK(read_back.yarns[0].number.number == request.yarns[0].number.number);
  CHECK(read_back.weighed[0].weight_g == request.weighed[0].weight_g && read_back.allowance == request.allowance);
  OK(latchwork_panel_yarn_need(panel, swatch, &read_back, &need, &error));
  OK(latchwork_panel_yarn_need(panel, swatch, &request, &again, &error));
  OK(latchwork_yarn_need_equal(need, again, &equal, &error));
  CHECK(equal == 1);
  latchwork_yarn_need_destroy(again);
  latchwork_yarn_need_destroy(need);
  latchwork_yarn_file_destroy(file);
  yarn.ball_g = -1.0;
  CHECK(latchwork_panel_yarn_need(panel, swatch, &request, &need, &error) == LATCHWORK_E_BAD_ARGUMENT && need == NULL);
  CHECK(strcmp(error.field, "yarns[0].ball_g") == 0);
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

static void events_are_spread_evenly(void) {
  /* K. TenDyke, 2014 (check value EV-02): 11 increase rows in 108; woolpackyarn.com (EV-04): 4 in 51 stitches. */
  latchwork_error error = LATCHWORK_ERROR_INIT;
  latchwork_spacing spacing = LATCHWORK_SPACING_INIT;
  int32_t gaps[5], positions[4], sum = 0;
  size_t i, needed = 0;
  char text[128];
  checking = "spacing";
  OK(latchwork_spaced_evenly(108, 11, LATCHWORK_SPACING_ENDS_IN_THE_ROUND, 1, &spacing, &error));
  CHECK(spacing.length == 108 && spacing.events == 11 && spacing.step == 1 && spacing.rest == 0);
  CHECK(spacing.every == 9 && spacing.times == 2 && spacing.longer_times == 9);
  OK(latchwork_spacing_text(&spacing, LATCHWORK_COUNTED_ROWS, text, sizeof text, NULL, &error));
  CHECK(strcmp(text, "every 9th row 2 times, every 10th row 9 times") == 0);
  OK(latchwork_spaced_evenly(51, 4, LATCHWORK_SPACING_ENDS_HALF_ENDS, 1, &spacing, &error));
  OK(latchwork_spacing_positions(&spacing, positions, 4, &needed, &error));
  CHECK(needed == 4 && positions[0] == 6 && positions[1] == 19 && positions[2] == 32 && positions[3] == 45);
  OK(latchwork_spacing_gaps(&spacing, gaps, 5, &needed, &error));
  for (i = 0; i < needed; ++i) sum += gaps[i];
  CHECK(needed == 5 && sum == 51 && gaps[0] == 6);
  CHECK(latchwork_spaced_evenly(10, 10, LATCHWORK_SPACING_ENDS_FLAT, 1, &spacing, &error) == LATCHWORK_E_BAD_ARGUMENT);
  CHECK(strcmp(error.field, "events") == 0 && spacing.length == 51);
}

static void panels_are_shaped(void) {
  /* One stitch at each side after rows 2 and 4; a 2/2 cross that the left edge cuts by one stitch. */
  const latchwork_edge_event event = {2, 1, 2, 2};
  const latchwork_measurement measurements[2] = {{"s", "middle", NULL, 20.0, 100.0, LATCHWORK_COUNTED_STITCHES, LATCHWORK_CLOTH_STATE_RESTED, 0},
                                                 {"s", "middle", NULL, 30.0, 100.0, LATCHWORK_COUNTED_ROWS, LATCHWORK_CLOTH_STATE_RESTED, 0}};
  latchwork_error error = LATCHWORK_ERROR_INIT;
  latchwork_edge_shape edge = LATCHWORK_EDGE_SHAPE_INIT;
  latchwork_outline outline = LATCHWORK_OUTLINE_INIT;
  latchwork_shape_options options = LATCHWORK_SHAPE_OPTIONS_INIT;
  latchwork_outline_size size = LATCHWORK_OUTLINE_SIZE_INIT;
  latchwork_finding finding = LATCHWORK_FINDING_INIT;
  latchwork_row_span spans[6], back[6];
  latchwork_shaping_step steps[2];
  latchwork_grid *grid = grid_of("kkkkkkkk\nkkkkkkkk\nkkkkkkkk\nkkkkkkkk\nx 0 2/2 R\nkkkkkkkk\nkkkkkkkk\n");
  latchwork_grid *cloth = NULL;
  latchwork_strip *strip = NULL;
  latchwork_panel *panel = NULL, *made = NULL;
  latchwork_findings *findings = NULL;
  latchwork_swatch *swatch = NULL;
  size_t needed = 0, count = 0;
  char text[256];
  checking = "shaping";
  edge.events = &event;
  edge.event_count = 1;
  OK(latchwork_outlined(6, 8, &edge, &edge, 1, spans, 6, &needed, &error));
  CHECK(needed == 6 && spans[1].first == 0 && spans[2].first == 1 && spans[5].first == 2 && spans[5].last == 5);
  outline.rows = spans;
  outline.row_count = 6;
  OK(latchwork_outline_shaping_steps(&outline, steps, 2, &needed, &error));
  CHECK(needed == 2 && steps[1].row == 4 && steps[1].left == 1 && steps[1].right == 1);
  OK(latchwork_outline_text(&outline, text, sizeof text, NULL, &error));
  CHECK(strstr(text, "RC 2: decrease 1 at each side, then every 2nd row 1 time.") != NULL);
  OK(latchwork_strip_create("s", "s", grid, &strip, &error));
  OK(latchwork_panel_create("p", strip, &panel, &error));
  OK(latchwork_grid_shape_findings(grid, &outline, NULL, &findings, &error));
  OK(latchwork_findings_count(findings, &count, &error));
  OK(latchwork_findings_get(findings, 0, &finding, &error));
  CHECK(count == 1 && finding.code == LATCHWORK_FINDING_CODE_CROSSING_CUT && finding.row == 2 && finding.value == 1);
  CHECK(latchwork_panel_shaped(panel, &outline, NULL, &made, &error) == LATCHWORK_E_CROSSING_CUT);
  CHECK(error.row == 2 && error.column == 0 && made == NULL);
  options.cut = LATCHWORK_CUT_WORK_KNIT;
  options.edge_stitches = -1;
  OK(latchwork_panel_shaped(panel, &outline, &options, &made, &error));
  OK(latchwork_panel_grid(made, &cloth, &error));
  OK(latchwork_grid_outline_of(cloth, back, 6, &needed, &error));
  CHECK(needed == 6 && memcmp(back, spans, sizeof back) == 0);
  OK(latchwork_swatch_create(measurements, 2, &swatch, &error));
  OK(latchwork_panel_outline_size(made, swatch, &size, &error));
  CHECK(size.bottom_columns == 8 && size.top_columns == 4 && size.widest_row == 1);
  CHECK(size.bottom_width_mm > 39.999 && size.bottom_width_mm < 40.001 && size.top_width_mm < 20.001);
  options.edge_stitches = -2;
  latchwork_panel_destroy(made);
  CHECK(latchwork_panel_shaped(panel, &outline, &options, &made, &error) == LATCHWORK_E_BAD_ARGUMENT);
  CHECK(strcmp(error.field, "edge_stitches") == 0);
  latchwork_swatch_destroy(swatch);
  latchwork_findings_destroy(findings);
  latchwork_panel_destroy(panel);
  latchwork_strip_destroy(strip);
  latchwork_grid_destroy(cloth);
  latchwork_grid_destroy(grid);
}

static void a_schematic_is_drawn_with_its_measures(void) {
  /* 20 stitches and 30 rows per 10 cm: 40 stitches are 20 cm, 60 rows 20 cm. */
  const latchwork_measurement measurements[2] = {{"stockinette", "middle", NULL, 20.0, 100.0, LATCHWORK_COUNTED_STITCHES, LATCHWORK_CLOTH_STATE_RESTED, 0},
                                                 {"stockinette", "middle", NULL, 30.0, 100.0, LATCHWORK_COUNTED_ROWS, LATCHWORK_CLOTH_STATE_RESTED, 0}};
  const char *sizes[2] = {"small", "large"};
  const double larger[2] = {220.0, 240.0};
  latchwork_error error = LATCHWORK_ERROR_INIT;
  latchwork_schematic schematic = LATCHWORK_SCHEMATIC_INIT;
  latchwork_schematic_piece piece = {0};
  latchwork_schematic_measure measures[4];
  latchwork_outline_point outline[8];
  latchwork_strip *strip = NULL, *filled = NULL;
  latchwork_panel *panel = NULL;
  latchwork_swatch *swatch = NULL;
  size_t corners = 0, count = 0, needed = 0;
  char label[64], *text;
  checking = "schematic";
  OK(latchwork_stockinette(40, &strip, &error));
  OK(latchwork_strip_filled_up(strip, 60, &filled, &error));
  OK(latchwork_panel_create("front", filled, &panel, &error));
  OK(latchwork_swatch_create(measurements, 2, &swatch, &error));
  OK(latchwork_panel_schematic_piece(panel, swatch, outline, 8, &corners, &error));
  OK(latchwork_panel_schematic_measures(panel, swatch, measures, 4, &count, &error));
  CHECK(corners == 4 && count == 2);
  CHECK(measures[0].side == LATCHWORK_MEASURE_SIDE_BOTTOM && measures[0].mm > 199.9 && measures[0].mm < 200.1);
  CHECK(measures[0].label == NULL && measures[0].other_count == 0);
  OK(latchwork_panel_schematic_label(panel, swatch, 0, label, sizeof label, NULL, &error));
  CHECK(strcmp(label, "width at the cast-on") == 0);
  measures[0].label = label;
  measures[0].others_mm = &larger[0];
  measures[0].other_count = 1;
  measures[1].label = "height";
  measures[1].others_mm = &larger[1];
  piece.name = "front";
  piece.outline = outline;
  piece.outline_count = corners;
  piece.measures = measures;
  piece.measure_count = count;
  schematic.title = "cushion";
  schematic.sizes = sizes;
  schematic.size_count = 2;
  schematic.pieces = &piece;
  schematic.piece_count = 1;
  CHECK(latchwork_schematic_svg(&schematic, NULL, 0, &needed, &error) == LATCHWORK_E_BAD_ARGUMENT);
  CHECK(strcmp(error.field, "pieces[0].measures[1].others_mm") == 0);
  measures[1].other_count = 1;
  OK(latchwork_schematic_svg(&schematic, NULL, 0, &needed, &error));
  text = malloc(needed);
  CHECK(text != NULL);
  OK(latchwork_schematic_svg(&schematic, text, needed, NULL, &error));
  CHECK(strstr(text, "A 20 (22) cm") != NULL && strstr(text, "B: height, 20 (24) cm") != NULL);
  CHECK(strstr(text, "cushion: schematic, right side shown") != NULL);
  free(text);
  latchwork_swatch_destroy(swatch);
  latchwork_panel_destroy(panel);
  latchwork_strip_destroy(filled);
  latchwork_strip_destroy(strip);
}

/* BRIEF FILE: a brief's folder, and a file that is no folder. */
int main(int argc, char **argv) {
  if (argc != 3) return 2;
  briefs_are_read_from_folders(argv[1], argv[2]);
  crossings_have_the_published_names();
  a_grid_is_what_its_letters_say();
  a_mirrored_crossing_leans_the_other_way();
  wales_follow_their_loops_through_a_crossing();
  errors_name_their_place();
  long_texts_are_cut_between_characters();
  buffers_are_filled_whole_or_not_at_all();
  needles_count_outward_from_the_centre();
  structs_of_other_versions_are_understood();
  a_machine_comes_back_as_it_went();
  panels_give_back_their_bands();
  a_swatch_measures_a_panel();
  quantities_are_read_with_their_units();
  yarn_numbers_convert_by_their_definitions();
  yarn_is_reckoned_by_every_route();
  events_are_spread_evenly();
  panels_are_shaped();
  a_schematic_is_drawn_with_its_measures();
  printf("%ld checks, %d failed\n", checks_made, checks_failed);
  return checks_failed != 0;
}
