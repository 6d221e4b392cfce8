/* Motifs are the charts they are known by, strips repeat and mirror, and a panel is built of them in one call. */
#include <string.h>

#include "program.h"

static int is_chart(latchwork_grid *grid, const char *wanted) {
  char text[512] = "";
  int same;
  OK(latchwork_grid_to_text(grid, text, sizeof text, NULL, NULL));
  latchwork_grid_destroy(grid);
  same = strcmp(text, wanted) == 0;
  if (!same) printf("%s: made\n%sand not\n%s", checking, text, wanted);
  return same;
}

static int is_strip(const latchwork_strip *strip, const char *name, const char *texture, const char *chart) {
  latchwork_grid *grid = NULL;
  char text[128] = "";
  OK(latchwork_strip_name(strip, text, sizeof text, NULL, NULL));
  CHECK(strcmp(text, name) == 0);
  OK(latchwork_strip_texture(strip, text, sizeof text, NULL, NULL));
  CHECK(strcmp(text, texture) == 0);
  OK(latchwork_strip_grid(strip, &grid, NULL));
  return is_chart(grid, chart);
}

static void motifs_are_the_charts_they_are_known_by(void) {
  latchwork_strip *strip = NULL;
#define MOTIF(call, name, texture, chart)           \
  do {                                              \
    checking = #call;                               \
    OK(latchwork_##call);                           \
    CHECK(is_strip(strip, name, texture, chart));   \
    latchwork_strip_destroy(strip);                 \
    strip = NULL;                                   \
  } while (0)
  MOTIF(stockinette(3, &strip, NULL), "stockinette", "stockinette", "kkk\n");
  MOTIF(reverse(2, &strip, NULL), "reverse", "reverse", "pp\n");
  /* Two knit rows then two purl rows give double garter (common practice, no source). */
  MOTIF(garter(2, 2, 3, &strip, NULL), "garter 2/2", "garter 2/2", "ppp\nppp\nkkk\nkkk\n");
  MOTIF(garter(3, 1, 1, &strip, NULL), "garter 3/1", "garter 3/1", "p\nk\nk\nk\n");
  MOTIF(moss(3, &strip, NULL), "moss", "moss", "pkp\nkpk\n");
  MOTIF(basket(2, 1, &strip, NULL), "basket 2x1", "basket 2x1", "ppkk\nkkpp\n");
  /* Tuck-then-purl, repeated, is a tuck rib column (common practice, no source). */
  MOTIF(tuck_rib(3, &strip, NULL), "tuck rib 3", "tuck rib 3", "p\nt\nt\nt\n");
  MOTIF(ladder(2, &strip, NULL), "ladder", "ladder", "..\n");
  /* In n/m RC and n/m LC, n is the front group: RC has left = n, LC has right = n (Craft Yarn Council's terms). */
  MOTIF(rope(2, 1, 2, LATCHWORK_LEAN_RIGHT, &strip, NULL), "rope 2/1 RC every 2", "rope 2/1 every 2",
        "kkk\nx 0 2/1 R\nkkk\n");
  MOTIF(rope(2, 1, 2, LATCHWORK_LEAN_LEFT, &strip, NULL), "rope 2/1 LC every 2", "rope 2/1 every 2",
        "kkk\nx 0 1/2 L\nkkk\n");
  MOTIF(plait(1, 2, LATCHWORK_LEAN_RIGHT, &strip, NULL), "plait 1 every 2", "plait 1 every 2",
        "kkk\nx 1 1/1 L\nkkk\nkkk\nx 0 1/1 R\nkkk\n");
  MOTIF(plait(1, 2, LATCHWORK_LEAN_LEFT, &strip, NULL), "plait 1 under every 2", "plait 1 every 2",
        "kkk\nx 1 1/1 R\nkkk\nkkk\nx 0 1/1 L\nkkk\n");
  MOTIF(wave(2, 3, LATCHWORK_LEAN_RIGHT, &strip, NULL), "wave 2/2 RC every 3", "wave 2/2 every 3",
        "kkkk\nx 0 2/2 L\nkkkk\nkkkk\nkkkk\nx 0 2/2 R\nkkkk\nkkkk\n");
#undef MOTIF
  {
    latchwork_error error = LATCHWORK_ERROR_INIT;
    checking = "a motif's least numbers";
    CHECK(latchwork_rope(2, 2, 1, LATCHWORK_LEAN_LEFT, &strip, &error) == LATCHWORK_E_BAD_ARGUMENT && strip == NULL);
    CHECK(strcmp(error.field, "interval") == 0);
    CHECK(latchwork_tuck_rib(65536, &strip, &error) == LATCHWORK_E_TOO_LARGE && strcmp(error.field, "height") == 0);
  }
}

static void strips_mirror_repeat_and_fill(void) {
  latchwork_strip *rope = NULL, *garter = NULL, *made = NULL;
  checking = "strips";
  OK(latchwork_rope(2, 1, 2, LATCHWORK_LEAN_RIGHT, &rope, NULL));
  OK(latchwork_garter(1, 1, 1, &garter, NULL));
  OK(latchwork_strip_mirrored(rope, &made, NULL));
  CHECK(is_strip(made, "rope 2/1 LC every 2", "rope 2/1 every 2", "kkk\nx 0 1/2 L\nkkk\n"));
  latchwork_strip_destroy(made);
  OK(latchwork_strip_repeated_across(rope, 2, &made, NULL));
  CHECK(is_strip(made, "rope 2/1 RC every 2", "rope 2/1 every 2", "kkkkkk\nx 0 2/1 R\nx 3 2/1 R\nkkkkkk\n"));
  latchwork_strip_destroy(made);
  OK(latchwork_strip_repeated_up(garter, 2, &made, NULL));
  CHECK(is_strip(made, "garter 1/1", "garter 1/1", "p\nk\np\nk\n"));
  latchwork_strip_destroy(made);
  OK(latchwork_strip_filled_up(garter, 3, &made, NULL));
  CHECK(is_strip(made, "garter 1/1", "garter 1/1", "k\np\nk\n"));
  latchwork_strip_destroy(made);
  latchwork_strip_destroy(garter);
  latchwork_strip_destroy(rope);
}

/* Edge, left half, centre, mirrored half, mirrored edge. */
static void a_panel_is_built_in_one_call(void) {
  static const char *const names[] = {"stockinette",         "reverse", "rope 1/1 LC every 2", "garter 1/1",
                                      "rope 1/1 RC every 2", "reverse", "stockinette"};
  static const int32_t columns[] = {0, 1, 2, 4, 5, 7, 8};
  latchwork_panel_parts parts = LATCHWORK_PANEL_PARTS_INIT;
  latchwork_strip *edge = NULL, *purl = NULL, *rope = NULL, *centre = NULL;
  const latchwork_strip *left[2];
  latchwork_panel *panel = NULL, *other = NULL, *both = NULL;
  latchwork_grid *grid = NULL;
  latchwork_strip_span spans[7];
  latchwork_band bands[2];
  latchwork_error error = LATCHWORK_ERROR_INIT;
  size_t needed = 0, i;
  int32_t half_columns = 0, equal = 0;
  char text[32];
  checking = "panel";
  OK(latchwork_stockinette(1, &edge, NULL));
  OK(latchwork_reverse(1, &purl, NULL));
  OK(latchwork_rope(1, 1, 2, LATCHWORK_LEAN_LEFT, &rope, NULL));
  OK(latchwork_garter(1, 1, 1, &centre, NULL));
  left[0] = purl;
  left[1] = rope;
  parts.name = "landing";
  parts.rows = 2;
  parts.edge = edge;
  parts.left = left;
  parts.left_count = 2;
  parts.centre = centre;
  OK(latchwork_build_panel(&parts, &panel, NULL));
  OK(latchwork_panel_name(panel, text, sizeof text, NULL, NULL));
  CHECK(strcmp(text, "landing") == 0);
  OK(latchwork_panel_grid(panel, &grid, NULL));
  CHECK(is_chart(grid, "kpkkpkkpk\nx 2 1/1 L\nx 5 1/1 R\nkpkkkkkpk\n"));
  OK(latchwork_panel_axis_half_columns(panel, &half_columns, NULL));
  CHECK(half_columns == 9); /* the middle of nine columns */
  OK(latchwork_panel_strips(panel, 0, spans, 7, &needed, NULL));
  CHECK(needed == 7);
  for (i = 0; i < 7; ++i) CHECK(strcmp(spans[i].name, names[i]) == 0 && spans[i].column == columns[i]);
  CHECK(strcmp(spans[4].texture, "rope 1/1 every 2") == 0 && spans[4].columns == 2 && spans[4].repeat_rows == 2);

  /* It is its own mirror image. */
  OK(latchwork_panel_mirrored(panel, &other, NULL));
  OK(latchwork_panel_equal(panel, other, &equal, NULL));
  CHECK(equal == 1);
  latchwork_panel_destroy(other);

  /* Without a centre, about the last stitch of the left half, which is in no crossing; through the rope it is refused. */
  left[0] = rope;
  left[1] = purl;
  parts.centre = NULL;
  parts.axis = LATCHWORK_AXIS_STITCH;
  OK(latchwork_build_panel(&parts, &other, NULL));
  OK(latchwork_panel_grid(other, &grid, NULL));
  CHECK(is_chart(grid, "kkkpkkk\nx 1 1/1 L\nx 4 1/1 R\nkkkpkkk\n"));
  latchwork_panel_destroy(other);
  left[0] = purl;
  left[1] = rope;
  other = panel;
  CHECK(latchwork_build_panel(&parts, &other, &error) == LATCHWORK_E_CROSSING_CUT && other == NULL);
  CHECK(error.row == 1 && error.column == 2);

  /* Put on a band of moss. */
  {
    latchwork_strip *moss = NULL;
    const latchwork_strip *below[1];
    OK(latchwork_moss(9, &moss, NULL));
    below[0] = moss;
    OK(latchwork_join_strips("moss", 1, below, 1, &other, NULL));
    latchwork_strip_destroy(moss);
  }
  OK(latchwork_panel_above(panel, other, &both, NULL));
  OK(latchwork_panel_grid(both, &grid, NULL));
  CHECK(is_chart(grid, "kpkkpkkpk\nx 2 1/1 L\nx 5 1/1 R\nkpkkkkkpk\nkpkpkpkpk\n"));
  OK(latchwork_panel_bands(both, bands, 2, &needed, NULL));
  CHECK(needed == 2 && bands[0].row == 1 && bands[0].rows == 1 && bands[0].strips == 1);
  CHECK(bands[1].row == 2 && bands[1].rows == 2 && bands[1].strips == 7);

  latchwork_panel_destroy(both);
  latchwork_panel_destroy(other);
  latchwork_panel_destroy(panel);
  latchwork_strip_destroy(centre);
  latchwork_strip_destroy(rope);
  latchwork_strip_destroy(purl);
  latchwork_strip_destroy(edge);
}

int main(void) {
  motifs_are_the_charts_they_are_known_by();
  strips_mirror_repeat_and_fill();
  a_panel_is_built_in_one_call();
  return checks_told();
}
