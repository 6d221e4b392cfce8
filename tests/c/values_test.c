/* What the calls give back, against values worked out by hand from the definitions; structs of other versions; text and
   its buffers. */
#include <stdlib.h>
#include <string.h>

#include "program.h"

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
  {
    latchwork_crossing wide = {1, 0, INT32_MAX, INT32_MAX, 1, LATCHWORK_LEAN_RIGHT, LATCHWORK_CENTRE_BETWEEN};
    latchwork_error error = LATCHWORK_ERROR_INIT;
    int32_t stitches = 7;
    CHECK(latchwork_crossing_width(&wide, &stitches, &error) == LATCHWORK_E_BAD_ARGUMENT && stitches == 7);
    CHECK(strcmp(error.field, "crossing.left") == 0);
    wide.left = 1;
    CHECK(latchwork_crossing_travel(&wide, &stitches, &error) == LATCHWORK_E_BAD_ARGUMENT && stitches == 7);
    CHECK(strcmp(error.field, "crossing.centre") == 0);
    wide.centre = 65536;
    OK(latchwork_crossing_travel(&wide, &stitches, NULL));
    CHECK(stitches == 65537);
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

static void wales_are_equal_where_their_grids_sizes_are_too(void) {
  static const struct {
    const char *one, *other;
    int32_t equal;
  } table[] = {{"kp\n", "kk\n", 1}, {"kk\n", "k.\n", 0}, {"..\n", "..\n", 1}, {"..\n", "...\n...\n", 0}};
  size_t i;
  checking = "equal wales";
  for (i = 0; i < sizeof table / sizeof *table; ++i) {
    latchwork_grid *one = grid_of(table[i].one), *other = grid_of(table[i].other);
    latchwork_wales *mine = NULL, *yours = NULL;
    int32_t equal = -1;
    OK(latchwork_wales_create(one, &mine, NULL));
    OK(latchwork_wales_create(other, &yours, NULL));
    OK(latchwork_wales_equal(mine, yours, &equal, NULL));
    CHECK(equal == table[i].equal);
    latchwork_wales_destroy(mine);
    latchwork_wales_destroy(yours);
    latchwork_grid_destroy(one);
    latchwork_grid_destroy(other);
  }
}

static void a_crossing_wants_tools_that_are_not_at_hand(void) {
  /* Three groups of two, and two tools of two prongs: a wider one, or a third. */
  latchwork_grid *grid = grid_of("kkkkkk\nx 0 2/2/2 R between\nkkkkkk\n");
  latchwork_machine machine = LATCHWORK_MACHINE_INIT;
  latchwork_findings *findings = NULL;
  latchwork_finding finding = LATCHWORK_FINDING_INIT;
  char text[256] = "";
  size_t count = 0, i;
  checking = "tools";
  OK(latchwork_machine_generic(LATCHWORK_MACHINE_CLASS_STANDARD, &machine, NULL));
  machine.prongs_count = 1;
  machine.prongs[0] = 2;
  OK(latchwork_grid_findings(grid, &machine, &findings, NULL));
  OK(latchwork_findings_get(findings, 0, &finding, NULL)); /* worst first */
  CHECK(finding.code == LATCHWORK_FINDING_CODE_NO_TOOL && finding.severity == LATCHWORK_SEVERITY_ERROR);
  CHECK(finding.value == 2 && finding.limit == 0);
  OK(latchwork_findings_message(findings, 0, text, sizeof text, NULL, NULL));
  CHECK(strstr(text, "lifts 2 + 2 stitches and 2 of the centre at once") != NULL);
  OK(latchwork_findings_suggestion(findings, 0, text, sizeof text, NULL, NULL));
  CHECK(strstr(text, "have 3-pronged tools at hand, or for the centre a third 2-pronged tool or a stitch holder") == text);
  latchwork_findings_destroy(findings);
  machine.prongs_count = 2;
  machine.prongs[1] = 3;
  OK(latchwork_grid_findings(grid, &machine, &findings, NULL));
  OK(latchwork_findings_count(findings, &count, NULL));
  for (i = 0; i < count; ++i) {
    OK(latchwork_findings_get(findings, i, &finding, NULL));
    CHECK(finding.code != LATCHWORK_FINDING_CODE_NO_TOOL);
  }
  latchwork_findings_destroy(findings);
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
  CHECK(strcmp(error.field, "lean") == 0 && error.row == 1 && error.column == 1);
  CHECK(strcmp(error.message, "crossing at row 1, column 1 has lean = 2; 0 is left, 1 is right") == 0);
  crossing.lean = 256; /* more than a byte, in which C++ has it */
  CHECK(latchwork_grid_cross(grid, &crossing, &error) == LATCHWORK_E_BAD_ARGUMENT);
  CHECK(strcmp(error.message, "crossing at row 1, column 1 has lean = 256; 0 is left, 1 is right") == 0);
  CHECK(strcmp(error.field, "lean") == 0 && error.row == 1 && error.column == 1);
  crossing.lean = LATCHWORK_LEAN_LEFT;
  crossing.place = -1;
  CHECK(latchwork_grid_cross(grid, &crossing, &error) == LATCHWORK_E_BAD_ARGUMENT);
  CHECK(strcmp(error.field, "place") == 0 && error.row == 1 && error.column == 1);
  CHECK(strcmp(error.message, "crossing at row 1, column 1 has place = -1; 0 is front, 1 between, 2 behind") == 0);
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
  {
    latchwork_plan_options options = LATCHWORK_PLAN_OPTIONS_INIT;
    latchwork_conditions asked = LATCHWORK_CONDITIONS_INIT, told = LATCHWORK_CONDITIONS_INIT;
    const latchwork_kept_rhythm kept = {1, 0, 0, 2, 2};
    const int32_t closed[2] = {3, 5};
    latchwork_job *bound = NULL;
    latchwork_plan *kept_plan = NULL, *free_plan = NULL, *plain = NULL;
    int64_t kept_ms = 0, free_ms = 0;
    asked.rows_apart = 2;
    asked.forced_exempt = 1;
    asked.rhythms = &kept;
    asked.rhythms_count = 1;
    asked.closed_rows = closed;
    asked.closed_rows_count = 2;
    options.conditions = &asked;
    OK(latchwork_brief_run(brief, &options, &bound, NULL));
    OK(latchwork_job_conditions(bound, &told, NULL));
    CHECK(told.rows_apart == 2 && told.forced_exempt == 1 && told.max_kinds == 0 && told.rhythms_count == 1);
    CHECK(told.rhythms[0].every == 2 && told.rhythms[0].first == 2 && told.closed_rows_count == 2);
    CHECK(told.closed_rows[1] == 5);
    OK(latchwork_job_equal(job, bound, &equal, NULL));
    CHECK(equal == 0);
    /* What the conditions cost is told against the plan that the other job has. */
    OK(latchwork_job_plan(job, &plain, NULL));
    OK(latchwork_job_plan(bound, &kept_plan, NULL));
    OK(latchwork_job_unconditioned(bound, &free_plan, NULL));
    OK(latchwork_plan_equal(free_plan, plain, &equal, NULL));
    CHECK(equal == 1);
    OK(latchwork_plan_total_ms(kept_plan, &kept_ms, NULL));
    OK(latchwork_plan_total_ms(free_plan, &free_ms, NULL));
    CHECK(free_ms > 0 && free_ms <= kept_ms);
    latchwork_plan_destroy(free_plan);
    latchwork_plan_destroy(kept_plan);
    OK(latchwork_job_unconditioned(job, &free_plan, NULL));
    OK(latchwork_plan_equal(free_plan, plain, &equal, NULL));
    CHECK(equal == 1);
    latchwork_plan_destroy(free_plan);
    latchwork_plan_destroy(plain);
    latchwork_job_destroy(bound);
    OK(latchwork_job_conditions(job, &told, NULL));
    CHECK(told.rhythms_count == 0 && told.closed_rows_count == 0 && told.rows_apart == 0);
  }
  /* Without a gauge there is a plan and no size, and what is missing has the texture's name. */
  {
    latchwork_swatch *none = NULL;
    latchwork_brief *bare = NULL;
    latchwork_job *unmeasured = NULL;
    latchwork_findings *missing = NULL;
    latchwork_article_job *no_article = NULL;
    latchwork_plan *same = NULL, *plain = NULL;
    latchwork_size size = LATCHWORK_SIZE_INIT;
    latchwork_error first = LATCHWORK_ERROR_INIT;
    size_t count = 0;
    OK(latchwork_swatch_create(NULL, 0, &none, NULL));
    OK(latchwork_brief_create(panel, none, &machine, &effort, &bare, NULL));
    OK(latchwork_brief_run(bare, NULL, &unmeasured, NULL));
    OK(latchwork_job_missing(unmeasured, &missing, NULL));
    OK(latchwork_findings_count(missing, &count, NULL));
    CHECK(count > 0);
    CHECK(latchwork_job_size(unmeasured, &size, &first) == LATCHWORK_E_NO_GAUGE && first.field[0] != '\0');
    CHECK(latchwork_job_article(unmeasured, &no_article, &first) == LATCHWORK_E_NO_GAUGE && no_article == NULL);
    CHECK(latchwork_job_article(job, &no_article, &first) == LATCHWORK_E_BAD_ARGUMENT && no_article == NULL);
    OK(latchwork_job_size(job, &size, NULL));
    OK(latchwork_job_plan(unmeasured, &same, NULL));
    OK(latchwork_job_plan(job, &plain, NULL));
    OK(latchwork_plan_equal(same, plain, &equal, NULL));
    CHECK(equal == 1);
    latchwork_plan_destroy(plain);
    latchwork_plan_destroy(same);
    latchwork_findings_destroy(missing);
    latchwork_job_destroy(unmeasured);
    latchwork_brief_destroy(bare);
    latchwork_swatch_destroy(none);
  }
  /* A job is told of with its own brief alone. */
  {
    latchwork_grid *grid = grid_of("kk\nkk\n");
    latchwork_strip *strip = NULL;
    latchwork_panel *other = NULL;
    latchwork_brief *others = NULL;
    size_t needed = 0;
    OK(latchwork_strip_create("other", "other", grid, &strip, NULL));
    OK(latchwork_panel_create("other", strip, &other, NULL));
    OK(latchwork_brief_create(other, swatch, &machine, &effort, &others, NULL));
    CHECK(latchwork_brief_summary(others, job, NULL, 0, &needed, &error) == LATCHWORK_E_SIZE_MISMATCH);
    CHECK(strcmp(error.field, "job.plan") == 0);
    CHECK(latchwork_brief_page_html(others, job, NULL, 0, &needed, &error) == LATCHWORK_E_SIZE_MISMATCH);
    CHECK(latchwork_brief_write_job(others, job, folder, &error) == LATCHWORK_E_SIZE_MISMATCH);
    latchwork_brief_destroy(others);
    latchwork_panel_destroy(other);
    latchwork_strip_destroy(strip);
    latchwork_grid_destroy(grid);
  }
  latchwork_job_destroy(job);
  latchwork_brief_destroy(made);
  latchwork_panel_destroy(panel);
  latchwork_swatch_destroy(swatch);
  latchwork_brief_destroy(brief);
  CHECK(latchwork_read_brief(file, &brief, &error) == LATCHWORK_E_IO && brief == NULL);
  CHECK(latchwork_read_brief("", &brief, &error) == LATCHWORK_E_BAD_ARGUMENT && strcmp(error.field, "folder") == 0);
  CHECK(error.field[0] != '\0');
}

/* BRIEF FILE: a brief's folder, and a file that is no folder. */
int main(int argc, char **argv) {
  if (argc != 3) return 2;
  briefs_are_read_from_folders(argv[1], argv[2]);
  crossings_have_the_published_names();
  a_grid_is_what_its_letters_say();
  a_mirrored_crossing_leans_the_other_way();
  wales_follow_their_loops_through_a_crossing();
  wales_are_equal_where_their_grids_sizes_are_too();
  a_crossing_wants_tools_that_are_not_at_hand();
  errors_name_their_place();
  long_texts_are_cut_between_characters();
  buffers_are_filled_whole_or_not_at_all();
  needles_count_outward_from_the_centre();
  structs_of_other_versions_are_understood();
  a_machine_comes_back_as_it_went();
  panels_give_back_their_bands();
  return checks_told();
}
