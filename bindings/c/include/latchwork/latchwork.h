/* latchwork, the C ABI: all of the C++ library for any language that can call C. C99; needs <stddef.h> and <stdint.h>.

   Rules that hold for every function, so that they are said once:

   - Names. latchwork_<type>_<what>: C++ `Grid::mirrored` is latchwork_grid_mirrored, `verify(grid, ...)` is
     latchwork_grid_verify, `needle_name` is latchwork_needle_name.
   - Status. What can fail returns LATCHWORK_OK or the code of an error, and tells it in `error`, which is the caller's
     own and may be NULL. Nothing is thrown, printed or kept: there is no "last error". Every function fails with
     BAD_ARGUMENT for a NULL where NULL is not said to be allowed (error.field is the argument's name), for an enum value
     out of its range or an index past the end, and with NO_MEMORY; only what comes beside these is listed.
   - Handles (grid, wales, strip, panel, swatch, fit_result, grading, article_file, targets, article_request_file,
     article_fit, article_job, yarn_file, yarn_need, timings, effort_fit, findings, plan, front, certificate, fabric, brief,
     job) are values behind a pointer. What comes through `out` is the caller's, to be freed by
     latchwork_<type>_destroy(); on failure *out is NULL. A handle holds no other: the parts it was made of may be
     destroyed at once. Calls that take a handle as const may run at once in many threads; any other call needs the
     handle alone.
   - Failure leaves everything as it was, but for *out, which is NULL, text, which is "", and *needed, which is 0, or
     what the whole takes where only the buffer was too small.
   - Text out and arrays out: the caller's buffer, its capacity (bytes with the closing NUL; elements), and `needed`,
     which is set to what the whole takes and may be NULL when a buffer is given. (NULL, 0, &needed) asks for the size
     alone and succeeds; a buffer that is too small is BAD_ARGUMENT (field "capacity") and gets nothing.
   - Text in is UTF-8: names end with NUL; files come with their size in bytes and need no NUL. Text out is UTF-8.
   - Structs. Those that stand alone begin with struct_size, set by their LATCHWORK_..._INIT, so that they can grow at
     their end. A caller with a smaller struct (an older header): the fields it lacks have their defaults on the way in and
     are left out on the way out. A caller with a larger one (a newer header): what this library does not know must be
     zero on the way in, else BAD_ARGUMENT (field "...struct_size"); it is set to zero on the way out.
     Structs that stand in arrays (crossing, move, wale, stop, ...) have no struct_size and never change.
     Structs of data (machine, effort, size options, fit request, yarn request): every field counts; begin with the
     function that fills them (latchwork_machine_generic, latchwork_effort_default, latchwork_size_options_default,
     latchwork_fit_request_default, latchwork_yarn_request_default) and change what differs.
     Structs of options (plan, watch, fit, chart, panel parts, article request): 0 and NULL are the defaults.
   - Numbers. Rows run from 1 up from the cast-on, columns from 0 from the left on the right side (RS). Needles are the
     operator's: L3 is -3, R2 is 2, there is no needle 0. Lengths are in millimetres, times in whole milliseconds, gauge
     is per 10 cm. Flags are int32_t: 0 no, 1 yes.
   - Callbacks run on the calling thread, within the call. They must return: no longjmp and no exception through us. */
#ifndef LATCHWORK_LATCHWORK_H
#define LATCHWORK_LATCHWORK_H

#include <stddef.h>
#include <stdint.h>

#if defined(__GNUC__)
#define LATCHWORK_C_API __attribute__((visibility("default")))
#else
#define LATCHWORK_C_API
#endif

#ifdef __cplusplus
extern "C" {
#endif

/* ---- Errors ---------------------------------------------------------------------------------------------------- */

typedef int32_t latchwork_status; /* LATCHWORK_OK or an error code; signatures never use enum types */

/* The numbers never change; the list only grows. Since 0.1. */
enum {
  LATCHWORK_OK = 0,
  LATCHWORK_E_INTERNAL = 1,             /* an invariant of ours was broken: a bug in latchwork */
  LATCHWORK_E_NO_MEMORY = 2,            /* memory ran out */
  LATCHWORK_E_BAD_ARGUMENT = 3,         /* an argument is missing or out of its range; `field` names it */
  LATCHWORK_E_OFF_GRID = 4,             /* a cell, crossing or slice reaches outside the grid */
  LATCHWORK_E_STITCH_TAKEN = 5,         /* two crossings after one row share a column */
  LATCHWORK_E_CROSSING_CUT = 6,         /* the operation would cut a crossing in two, or put an axis through it */
  LATCHWORK_E_CROSSING_OVER_STACK = 7,  /* a tuck or slip in row r of a crossing's span */
  LATCHWORK_E_CROSSING_OVER_NONE = 8,   /* no stitch in rows r or r+1 of a crossing's span */
  LATCHWORK_E_SIZE_MISMATCH = 9,        /* pieces of unequal size are put together */
  LATCHWORK_E_TOO_LARGE = 10,           /* a size, count or cost beyond the documented limit */
  LATCHWORK_E_BAD_LETTER = 11,          /* a letter that stands for no cell */
  LATCHWORK_E_BAD_SYNTAX = 12,          /* text that is not well-formed (JSON, CSV, crossing line) */
  LATCHWORK_E_BAD_ENCODING = 13,        /* text that is not UTF-8 */
  LATCHWORK_E_NEWER_VERSION = 14,       /* a file of a newer format version than this library reads */
  LATCHWORK_E_WRONG_FORMAT = 15,        /* a file of another kind than asked for */
  LATCHWORK_E_DUPLICATE_KEY = 16,       /* a key that stands twice in one object */
  LATCHWORK_E_MISSING_FIELD = 17,       /* a field that must be there is not */
  LATCHWORK_E_UNKNOWN_FIELD = 18,       /* a field that the format does not know */
  LATCHWORK_E_BAD_VALUE = 19,           /* a field's value has the wrong type or is out of range */
  LATCHWORK_E_BAD_UNIT = 20,            /* a unit that is missing, unknown, or not of the kind asked for */
  LATCHWORK_E_IO = 21,                  /* a file cannot be read or written */
  LATCHWORK_E_NO_GAUGE = 22,            /* a texture has no measurements in the swatch */
  LATCHWORK_E_CANCELLED = 23            /* the caller asked to stop */
};

/* What went wrong and where. The caller's own, on its stack. Set by every call it is given to: after LATCHWORK_OK its
   code is 0 and its texts are empty. Texts are cut between characters when they are too long. Since 0.1. */
typedef struct latchwork_error {
  uint32_t struct_size; /* set by LATCHWORK_ERROR_INIT; where it is 0 nothing is written */
  int32_t code;         /* the status returned */
  int32_t row;          /* grid row from 1, counted up from the cast-on; 0: none */
  int32_t column;       /* grid column from 0, from the left on the RS; -1: none */
  int32_t line;         /* line of a text or file, from 1; 0: none */
  char field[64];       /* argument, or path of a field in a file ("crossings[2].left"); "": none */
  char message[256];    /* for people: names place, value and limit */
  int32_t character;    /* character (Unicode code point) of the text of a field, from 1; 0: none */
} latchwork_error;
#define LATCHWORK_ERROR_INIT { sizeof(latchwork_error), 0, 0, -1, 0, {0}, {0}, 0 }

/* The code's name as in C++ ("off_grid"); "ok" for LATCHWORK_OK, "" for a number that is no code. Never freed. Since 0.1. */
LATCHWORK_C_API const char *latchwork_error_name(int32_t code);
/* Every error code, in order of its number. Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_error_codes(int32_t *codes, size_t capacity, size_t *needed,
                                                       latchwork_error *error);
/* The library's version, "0.1.0" (semantic versioning). Never freed. Since 0.1. */
LATCHWORK_C_API const char *latchwork_version(void);

/* ---- Cells and crossings --------------------------------------------------------------------------------------- */

/* What is seen on the RS at one row and column; the letters are those of grid texts. Since 0.1. */
enum {
  LATCHWORK_CELL_KNIT = 0, /* k: face loop */
  LATCHWORK_CELL_PURL = 1, /* p: back loop */
  LATCHWORK_CELL_TUCK = 2, /* t: this row's strand is held with the loop below; the closing cell takes both */
  LATCHWORK_CELL_SLIP = 3, /* s: this row's strand passes by uncaught */
  LATCHWORK_CELL_NONE = 4  /* .: no stitch: outside a shaped edge, or inside as a ladder of bare strands */
};

/* Lean, on the RS, of the outer group that passes in front. Since 0.1. */
enum { LATCHWORK_LEAN_LEFT = 0, LATCHWORK_LEAN_RIGHT = 1 };
/* Where the centre group of a crossing lies, from the RS. Since 0.1. */
enum { LATCHWORK_CENTRE_FRONT = 0, LATCHWORK_CENTRE_BETWEEN = 1, LATCHWORK_CENTRE_BEHIND = 2 };

/* Two neighbouring groups of stitches that change places between two rows; a centre group may stay between them. In a
   right cross the left group passes in front and travels right (n/m RC has left = n); in a left cross the right group
   passes in front (n/m LC has right = n): the Craft Yarn Council's terms. An element of arrays: no struct_size. Since 0.1. */
typedef struct latchwork_crossing {
  int32_t row;    /* crossed after this row is knitted: 1..R; after R it sits on a tile's seam */
  int32_t column; /* leftmost stitch: 0..W-1, from the left on the RS */
  int32_t left;   /* stitches in the left group, 1 or more */
  int32_t centre; /* stitches in the centre group, 0 or more */
  int32_t right;  /* stitches in the right group, 1 or more */
  int32_t lean;   /* LATCHWORK_LEAN_... */
  int32_t place;  /* LATCHWORK_CENTRE_...; BETWEEN when there is no centre */
} latchwork_crossing;
#define LATCHWORK_CROSSING_INIT { 1, 0, 1, 0, 1, LATCHWORK_LEAN_RIGHT, LATCHWORK_CENTRE_BETWEEN }

/* The cell's letter, one of k p t s . ; NUL for a number that is no cell. Since 0.1. */
LATCHWORK_C_API char latchwork_cell_letter(int32_t cell);
/* The cell of a letter; -1 for a letter that stands for none (capitals do not). Since 0.1. */
LATCHWORK_C_API int32_t latchwork_cell_of(char letter);
/* Stitches in all: left + centre + right. Groups of other than 1..65,536 stitches (centre: 0..65,536) are refused, here and
   for the travel, as any argument out of its range (field "crossing.left", ...). Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_crossing_width(const latchwork_crossing *crossing, int32_t *stitches,
                                                          latchwork_error *error);
/* Longest sideways travel in stitches: max(left, right) + centre. Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_crossing_travel(const latchwork_crossing *crossing, int32_t *stitches,
                                                           latchwork_error *error);
/* The trade's name: "3/3 RC", "2/1 LC"; with a centre "2/1/2 RC, centre behind". Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_crossing_name(const latchwork_crossing *crossing, char *text,
                                                         size_t capacity, size_t *needed, latchwork_error *error);

/* ---- Grid: a stitch chart as seen from the RS ------------------------------------------------------------------- */

/* R rows of W cells and the crossings between rows. Read as a tile its row R runs on into row 1 of the next copy; read
   as a panel it ends. It keeps what is true in both: crossings stay inside, share no column after one row, and their
   spans hold no tuck or slip in row r and no bare place in rows r and r+1, but for a centre that is bare in both. */
typedef struct latchwork_grid latchwork_grid;

#define LATCHWORK_GRID_MAX_SIDE 65536      /* most rows, and most columns */
#define LATCHWORK_GRID_MAX_CELLS 268435456 /* most cells in all */

/* Where a mirror axis lies: on the line between two stitches, or on a stitch that both halves share. Since 0.1. */
enum { LATCHWORK_AXIS_LINE = 0, LATCHWORK_AXIS_STITCH = 1 };

/* A grid of knit stitches. Fails: BAD_ARGUMENT (rows, columns) below 1; TOO_LARGE. Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_grid_create(int32_t rows, int32_t columns, latchwork_grid **out,
                                                       latchwork_error *error);
/* A grid from rows of letters, TOP row first, one row a line. A line "x COLUMN LEFT/RIGHT R|L" or
   "x COLUMN LEFT/CENTRE/RIGHT R|L front|between|behind" puts a crossing after the row written just below it.
   Fails: BAD_LETTER (the cell's row and column; the message counts the letters of a line from 1, as in files),
   BAD_SYNTAX, SIZE_MISMATCH (columns), TOO_LARGE (rows, columns), and as latchwork_grid_cross, all with line.
   Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_grid_from_text(const char *text, size_t size, latchwork_grid **out,
                                                          latchwork_error *error);
/* A grid from `count` cells, row 1 first, from the left. Fails: BAD_ARGUMENT (rows, columns) below 1; SIZE_MISMATCH
   (count is not rows x columns); BAD_VALUE (row, column) for a number that is no cell; TOO_LARGE. Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_grid_from_cells(int32_t rows, int32_t columns, const uint8_t *cells,
                                                           size_t count, latchwork_grid **out, latchwork_error *error);
/* A grid of its own, equal to this one. Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_grid_copy(const latchwork_grid *grid, latchwork_grid **out,
                                                     latchwork_error *error);
/* *equal is 1 when cells and crossings are the same, else 0. Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_grid_equal(const latchwork_grid *grid, const latchwork_grid *other,
                                                      int32_t *equal, latchwork_error *error);
/* Frees it; NULL is fine. Since 0.1. */
LATCHWORK_C_API void latchwork_grid_destroy(latchwork_grid *grid);

/* Puts a cell at (row, column). Fails: OFF_GRID, CROSSING_OVER_STACK, CROSSING_OVER_NONE. Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_grid_set(latchwork_grid *grid, int32_t row, int32_t column, int32_t cell,
                                                    latchwork_error *error);
/* Adds a crossing. Fails: OFF_GRID, BAD_ARGUMENT (left, centre, right, lean, place), STITCH_TAKEN,
   CROSSING_OVER_STACK, CROSSING_OVER_NONE. Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_grid_cross(latchwork_grid *grid, const latchwork_crossing *crossing,
                                                      latchwork_error *error);
/* Takes away the crossing after `row` that starts at `column`. Fails: OFF_GRID when there is none. Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_grid_uncross(latchwork_grid *grid, int32_t row, int32_t column,
                                                        latchwork_error *error);
/* Writes `patch` over this grid with its row 1, column 0 at (row, column), its crossings in place of those inside.
   Fails: OFF_GRID; CROSSING_CUT when a crossing here lies partly under the patch; CROSSING_OVER_NONE when one below or on
   top of the patch would have no stitch above it. Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_grid_paste(latchwork_grid *grid, const latchwork_grid *patch, int32_t row,
                                                      int32_t column, latchwork_error *error);

/* Rows, 1 or more. Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_grid_rows(const latchwork_grid *grid, int32_t *rows, latchwork_error *error);
/* Columns, 1 or more. Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_grid_columns(const latchwork_grid *grid, int32_t *columns,
                                                        latchwork_error *error);
/* The cell at (row, column), LATCHWORK_CELL_... Fails: OFF_GRID. Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_grid_at(const latchwork_grid *grid, int32_t row, int32_t column,
                                                   int32_t *cell, latchwork_error *error);
/* All cells row by row from the cast-on, from the left on the RS: rows x columns bytes. Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_grid_cells(const latchwork_grid *grid, uint8_t *cells, size_t capacity,
                                                      size_t *needed, latchwork_error *error);
/* All crossings by row, then column. Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_grid_crossings(const latchwork_grid *grid, latchwork_crossing *crossings,
                                                          size_t capacity, size_t *needed, latchwork_error *error);
/* One value for equal grids, the same on every machine (FNV-1a, 64 bits). Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_grid_hash(const latchwork_grid *grid, uint64_t *hash,
                                                     latchwork_error *error);
/* One line for people: size, cells by kind, crossings. Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_grid_describe(const latchwork_grid *grid, char *text, size_t capacity,
                                                         size_t *needed, latchwork_error *error);
/* The letters and crossing lines that latchwork_grid_from_text() reads back to an equal grid. Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_grid_to_text(const latchwork_grid *grid, char *text, size_t capacity,
                                                        size_t *needed, latchwork_error *error);

/* Reflected left to right: knit and purl stay, every lean flips. Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_grid_mirrored(const latchwork_grid *grid, latchwork_grid **out,
                                                         latchwork_error *error);
/* Reflected top to bottom: leans flip; a stack of tucks or slips and the cell that closes it keep their order.
   Fails: CROSSING_OVER_NONE when a stack just above a crossing ends on no stitch, or one just below a bare centre. Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_grid_upside_down(const latchwork_grid *grid, latchwork_grid **out,
                                                            latchwork_error *error);
/* Turned by 180 degrees in its plane; leans keep. Fails: as latchwork_grid_upside_down. Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_grid_half_turn(const latchwork_grid *grid, latchwork_grid **out,
                                                          latchwork_error *error);
/* The same cloth seen from the other side: columns mirrored, knit and purl swapped, leans keep, centre front and
   behind swapped. Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_grid_turned(const latchwork_grid *grid, latchwork_grid **out,
                                                       latchwork_error *error);
/* This grid and its mirror image on its right: 2W columns about a line, 2W-1 about a shared last stitch
   (LATCHWORK_AXIS_...). Fails: BAD_ARGUMENT (axis), CROSSING_CUT when the shared stitch is in a crossing; TOO_LARGE. Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_grid_unfolded(const latchwork_grid *grid, int32_t axis, latchwork_grid **out,
                                                         latchwork_error *error);
/* `times` copies side by side; copy i is moved up by i * shift rows, wrapping over the tile's seam (half-drop: shift =
   R/2). Fails: BAD_ARGUMENT (times) below 1; TOO_LARGE. Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_grid_repeated_across(const latchwork_grid *grid, int32_t times,
                                                                int32_t shift, latchwork_grid **out,
                                                                latchwork_error *error);
/* `times` copies upward; copy i is moved right by i * shift columns, and what leaves there comes in on the left (as
   bricks lie: shift = W/2). Fails: BAD_ARGUMENT (times) below 1; TOO_LARGE; CROSSING_CUT, when a crossing would leave in
   part; CROSSING_OVER_NONE, when a shifted copy has no stitch above one. Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_grid_repeated_up(const latchwork_grid *grid, int32_t times, int32_t shift,
                                                            latchwork_grid **out, latchwork_error *error);
/* Row y moves to y + shift, wrapping over the tile's seam; any shift. Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_grid_rolled_up(const latchwork_grid *grid, int32_t shift,
                                                          latchwork_grid **out, latchwork_error *error);
/* This grid with `right` on its right. Fails: SIZE_MISMATCH (unequal rows); TOO_LARGE. Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_grid_beside(const latchwork_grid *grid, const latchwork_grid *right,
                                                       latchwork_grid **out, latchwork_error *error);
/* This grid on top of `below`. Fails: SIZE_MISMATCH (unequal columns); TOO_LARGE; CROSSING_OVER_NONE when a crossing on
   one's seam would have no stitch above it in the other. Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_grid_above(const latchwork_grid *grid, const latchwork_grid *below,
                                                      latchwork_grid **out, latchwork_error *error);
/* Rows row..row+rows-1 and columns column..column+columns-1; a crossing belongs to the row it follows.
   Fails: BAD_ARGUMENT (rows, columns) below 1; OFF_GRID; CROSSING_CUT; CROSSING_OVER_NONE when a crossing after the
   slice's last row would have no stitch in its first. Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_grid_sliced(const latchwork_grid *grid, int32_t row, int32_t column,
                                                       int32_t rows, int32_t columns, latchwork_grid **out,
                                                       latchwork_error *error);

/* ---- Wales: physical chains of loops, followed through crossings ------------------------------------------------ */

/* All wales of a grid in the panel reading, ordered by (row, column) of their lowest cell. */
typedef struct latchwork_wales latchwork_wales;

/* One wale; it is named by the column and row of its lowest loop. An element of arrays. Since 0.1. */
typedef struct latchwork_wale {
  int32_t column;   /* column of its lowest cell */
  int32_t row;      /* row of its lowest cell */
  int32_t last_row; /* row of its highest cell; its rows are one unbroken run */
} latchwork_wale;

/* Follows the wales of a grid. Linear in cells. Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_wales_create(const latchwork_grid *grid, latchwork_wales **out,
                                                        latchwork_error *error);
/* Wales of their own, equal to these. Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_wales_copy(const latchwork_wales *wales, latchwork_wales **out,
                                                      latchwork_error *error);
/* *equal is 1 when all wales run the same way, in grids of the same size, else 0. Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_wales_equal(const latchwork_wales *wales, const latchwork_wales *other,
                                                       int32_t *equal, latchwork_error *error);
/* Frees them; NULL is fine. Since 0.1. */
LATCHWORK_C_API void latchwork_wales_destroy(latchwork_wales *wales);
/* All of them, in order. Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_wales_all(const latchwork_wales *wales, latchwork_wale *all, size_t capacity,
                                                     size_t *needed, latchwork_error *error);
/* The columns of wale `index`, one a row, from its lowest row up. Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_wales_columns(const latchwork_wales *wales, size_t index, int32_t *columns,
                                                         size_t capacity, size_t *needed, latchwork_error *error);
/* The index of the wale at (row, column); -1 where there is no stitch. Fails: OFF_GRID. Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_wales_at(const latchwork_wales *wales, int32_t row, int32_t column,
                                                    int32_t *index, latchwork_error *error);

/* ---- Strips and motifs ------------------------------------------------------------------------------------------ */

/* A grid (one vertical repeat, as seen on the RS), the name people call it by, and the texture that measures it. */
typedef struct latchwork_strip latchwork_strip;

/* A strip of a copy of `grid`. `texture` is a key into a swatch. Fails: BAD_ENCODING (strip.name, strip.texture) for text
   that is not UTF-8. Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_strip_create(const char *name, const char *texture,
                                                        const latchwork_grid *grid, latchwork_strip **out,
                                                        latchwork_error *error);
/* A strip of its own, equal to this one. Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_strip_copy(const latchwork_strip *strip, latchwork_strip **out,
                                                      latchwork_error *error);
/* *equal is 1 when name, texture and grid are the same, else 0. Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_strip_equal(const latchwork_strip *strip, const latchwork_strip *other,
                                                       int32_t *equal, latchwork_error *error);
/* Frees it; NULL is fine. Since 0.1. */
LATCHWORK_C_API void latchwork_strip_destroy(latchwork_strip *strip);
/* What people call it. Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_strip_name(const latchwork_strip *strip, char *text, size_t capacity,
                                                      size_t *needed, latchwork_error *error);
/* The key into a swatch. Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_strip_texture(const latchwork_strip *strip, char *text, size_t capacity,
                                                         size_t *needed, latchwork_error *error);
/* A copy of its grid. Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_strip_grid(const latchwork_strip *strip, latchwork_grid **out,
                                                      latchwork_error *error);
/* Reflected left to right; the lean words in its name are exchanged (RC, LC), the texture stays. Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_strip_mirrored(const latchwork_strip *strip, latchwork_strip **out,
                                                          latchwork_error *error);
/* `times` copies side by side. Fails: BAD_ARGUMENT (times) below 1; TOO_LARGE. Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_strip_repeated_across(const latchwork_strip *strip, int32_t times,
                                                                 latchwork_strip **out, latchwork_error *error);
/* `times` copies upward. Fails: BAD_ARGUMENT (times) below 1; TOO_LARGE. Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_strip_repeated_up(const latchwork_strip *strip, int32_t times,
                                                             latchwork_strip **out, latchwork_error *error);
/* Repeated upward and cut at exactly `rows` rows, row 1 at the bottom. Fails: BAD_ARGUMENT (rows) below 1; TOO_LARGE;
   CROSSING_OVER_NONE, as latchwork_grid_sliced. Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_strip_filled_up(const latchwork_strip *strip, int32_t rows,
                                                           latchwork_strip **out, latchwork_error *error);

/* The motifs: each gives one vertical repeat. All fail with BAD_ARGUMENT (the parameter's name) for a number below 1 and
   TOO_LARGE past the grid's limits. Crossings stand half way up their interval. */

/* Stockinette: all knit; 1 row. Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_stockinette(int32_t columns, latchwork_strip **out, latchwork_error *error);
/* Reverse stockinette: all purl; 1 row. Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_reverse(int32_t columns, latchwork_strip **out, latchwork_error *error);
/* Garter: rows of knit, then rows of purl. Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_garter(int32_t knit_rows, int32_t purl_rows, int32_t columns,
                                                  latchwork_strip **out, latchwork_error *error);
/* Moss: knit and purl alternate both ways; 2 rows. Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_moss(int32_t columns, latchwork_strip **out, latchwork_error *error);
/* Basket: two by two blocks of knit and purl. Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_basket(int32_t block_columns, int32_t block_rows, latchwork_strip **out,
                                                  latchwork_error *error);
/* Tuck rib: one wale, `height` tucks closed by a purl; height + 1 rows. Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_tuck_rib(int32_t height, latchwork_strip **out, latchwork_error *error);
/* Ladder: needles out of work, bare strands; 1 row. Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_ladder(int32_t columns, latchwork_strip **out, latchwork_error *error);
/* Rope: a crossing of `front` over `back` stitches on the same stitches every `interval` rows (2 or more). Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_rope(int32_t front, int32_t back, int32_t interval, int32_t lean,
                                                latchwork_strip **out, latchwork_error *error);
/* Plait: three groups of `stitches`; every `interval` rows the left pair crosses with `lean`, then the right pair with
   the other. Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_plait(int32_t stitches, int32_t interval, int32_t lean,
                                                 latchwork_strip **out, latchwork_error *error);
/* Wave: a crossing of n over n whose lean changes each time, `lean` first; 2 * interval rows. Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_wave(int32_t stitches, int32_t interval, int32_t lean, latchwork_strip **out,
                                                latchwork_error *error);

/* ---- Panels ----------------------------------------------------------------------------------------------------- */

/* What is knitted: a grid that ends, and which texture measures which part of it. Bands cover the rows from row 1 up. */
typedef struct latchwork_panel latchwork_panel;

/* A run of rows in which strips stand side by side. An element of arrays. Since 0.1. */
typedef struct latchwork_band {
  int32_t row;    /* first row */
  int32_t rows;   /* rows in all */
  int32_t strips; /* strips in it, from the left on the RS */
} latchwork_band;

/* One strip's place in a band. An element of arrays. Its texts are lent: on the way in they are the caller's and are
   copied, on the way out they are the panel's and go with it. Since 0.1. */
typedef struct latchwork_strip_span {
  const char *name;
  const char *texture;
  int32_t column;      /* first column */
  int32_t columns;     /* columns in all */
  int32_t repeat_rows; /* the strip's vertical repeat in rows */
} latchwork_strip_span;

/* What latchwork_build_panel() builds: edge + left half + centre + mirrored half + edge. Options: 0 and NULL are the
   defaults, but for `rows`, which must be given. Since 0.1. */
typedef struct latchwork_panel_parts {
  uint32_t struct_size;
  int32_t rows;                       /* every strip is filled up to this height */
  const char *name;                   /* NULL: "" */
  const latchwork_strip *edge;        /* at the left; mirrored at the right; NULL: none */
  const latchwork_strip *const *left; /* from the left edge towards the middle */
  size_t left_count;
  const latchwork_strip *centre; /* stands once in the middle; NULL: none */
  int32_t axis; /* without a centre: about the line after `left`, or about its shared last stitch; LATCHWORK_AXIS_... */
  int32_t reserved; /* 0; a later field takes its place */
} latchwork_panel_parts;
#define LATCHWORK_PANEL_PARTS_INIT { sizeof(latchwork_panel_parts), 0, NULL, NULL, NULL, 0, NULL, 0, 0 }

/* A panel of one band and one strip. Fails: BAD_ENCODING (name) for text that is not UTF-8. Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_panel_create(const char *name, const latchwork_strip *strip,
                                                        latchwork_panel **out, latchwork_error *error);
/* A panel of a copy of `grid` and bands of strips: the spans of the first band, then those of the second, and so on.
   Fails: SIZE_MISMATCH when the bands do not cover the grid exactly, or their strips are not `spans_count`; BAD_ARGUMENT
   (rows, columns, repeat_rows) below 1; BAD_ENCODING (name, bands[0].strips[2].texture) for text that is not UTF-8.
   Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_panel_from_bands(const char *name, const latchwork_grid *grid,
                                                            const latchwork_band *bands, size_t bands_count,
                                                            const latchwork_strip_span *spans, size_t spans_count,
                                                            latchwork_panel **out, latchwork_error *error);
/* Builds a mirrored panel in one call.
   Fails: BAD_ARGUMENT (rows; parts, when there is nothing); CROSSING_CUT when the shared stitch is in a crossing;
   CROSSING_OVER_NONE, as latchwork_strip_filled_up; TOO_LARGE; BAD_ENCODING, as latchwork_panel_from_bands. Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_build_panel(const latchwork_panel_parts *parts, latchwork_panel **out,
                                                       latchwork_error *error);
/* Strips side by side from the left on the RS, each filled up to `rows`. Fails: BAD_ARGUMENT (rows below 1; strips,
   when there is none); CROSSING_OVER_NONE, as latchwork_strip_filled_up; TOO_LARGE; BAD_ENCODING, as
   latchwork_panel_from_bands. Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_join_strips(const char *name, int32_t rows,
                                                       const latchwork_strip *const *strips, size_t count,
                                                       latchwork_panel **out, latchwork_error *error);
/* A panel of its own, equal to this one. Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_panel_copy(const latchwork_panel *panel, latchwork_panel **out,
                                                      latchwork_error *error);
/* *equal is 1 when name, grid, bands and axis are the same, else 0. Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_panel_equal(const latchwork_panel *panel, const latchwork_panel *other,
                                                       int32_t *equal, latchwork_error *error);
/* Frees it; NULL is fine. Since 0.1. */
LATCHWORK_C_API void latchwork_panel_destroy(latchwork_panel *panel);
/* Its name. Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_panel_name(const latchwork_panel *panel, char *text, size_t capacity,
                                                      size_t *needed, latchwork_error *error);
/* A copy of its grid. Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_panel_grid(const latchwork_panel *panel, latchwork_grid **out,
                                                      latchwork_error *error);
/* Its bands from row 1 up. Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_panel_bands(const latchwork_panel *panel, latchwork_band *bands,
                                                       size_t capacity, size_t *needed, latchwork_error *error);
/* The strips of band `band` from the left on the RS; their texts are the panel's and go with it. Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_panel_strips(const latchwork_panel *panel, size_t band,
                                                        latchwork_strip_span *strips, size_t capacity, size_t *needed,
                                                        latchwork_error *error);
/* The mirror axis in half columns from the left edge (W when it is the middle); 0: none was named. Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_panel_axis_half_columns(const latchwork_panel *panel, int32_t *half_columns,
                                                                   latchwork_error *error);
/* Names the mirror axis; 0: none. Fails: BAD_ARGUMENT outside 1..2W-1. Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_panel_set_axis_half_columns(latchwork_panel *panel, int32_t half_columns,
                                                                       latchwork_error *error);
/* This panel on top of `below`; the name is this panel's. Fails: as latchwork_grid_above. Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_panel_above(const latchwork_panel *panel, const latchwork_panel *below,
                                                       latchwork_panel **out, latchwork_error *error);
/* Reflected left to right, bands and axis with it. Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_panel_mirrored(const latchwork_panel *panel, latchwork_panel **out,
                                                          latchwork_error *error);

/* ---- Machine and effort ----------------------------------------------------------------------------------------- */

/* Generic classes of single-bed machines by needle pitch. Since 0.1. */
enum { LATCHWORK_MACHINE_CLASS_FINE = 0, LATCHWORK_MACHINE_CLASS_STANDARD = 1, LATCHWORK_MACHINE_CLASS_MID = 2, LATCHWORK_MACHINE_CLASS_BULKY = 3 };

#define LATCHWORK_MACHINE_PRONGS 20 /* most sizes of pronged tools */

/* The bed, the tools at hand, and what is comfortable on them. Data: begin with latchwork_machine_generic().
   What takes it fails with BAD_ARGUMENT (the field) for a value out of its range. Since 0.1. */
typedef struct latchwork_machine {
  uint32_t struct_size;
  int32_t needles;                          /* 2..4000; with an odd count the odd one is on the left */
  double pitch_mm;                          /* needle to needle; above 0, to 50 */
  int32_t leftmost;                         /* the panel's leftmost needle, -4000..4000; 0: centred */
  int32_t comfortable_crossing;             /* travel in stitches above which a crossing is hard; 1..4000 */
  int32_t tuck_limit;                       /* most tucks or slips in a stack; 1..65536 */
  int32_t float_limit;                      /* most needles a float may pass; 1..4000 */
  int32_t max_ladder;                       /* most rows laddered down in one batch; 1..65536 */
  int32_t cast_on_loops;                    /* 1: the cast-on gives each needle a loop of its own */
  int32_t carriage_starts_right;            /* 1: the carriage stands on the right at RC 0 */
  int32_t prongs_count;                     /* sizes of pronged tools: 0..LATCHWORK_MACHINE_PRONGS */
  int32_t prongs[LATCHWORK_MACHINE_PRONGS]; /* pronged tools at hand, two of each; each 1..20, named once */
  char name[128];                           /* UTF-8, closed by NUL */
} latchwork_machine;
#define LATCHWORK_MACHINE_INIT { sizeof(latchwork_machine), 0, 0.0, 0, 0, 0, 0, 0, 0, 0, 0, {0}, {0} }

/* What hand work costs, in whole milliseconds, each 0..3600000. Data: begin with latchwork_effort_default(). Where a call
   takes efforts, NULL stands for the defaults; 0 in a field means that the work costs nothing. Since 0.1. */
typedef struct latchwork_effort {
  uint32_t struct_size;
  int64_t stop;            /* each stop: park the carriage, find the place, start again */
  int64_t batch;           /* each batch: count over, find the wale, tool in, hang */
  int64_t drop;            /* each rung laddered down */
  int64_t rung_knit;       /* each rung re-formed as a knit, on its needle */
  int64_t rung_purl;       /* as a purl */
  int64_t rung_tuck;       /* taken into the stitch */
  int64_t rung_slip;       /* passed by */
  int64_t crossing;        /* each crossing */
  int64_t crossing_stitch; /* each stitch lifted for it */
  int64_t hold;            /* each needle put in hold and released again */
  int64_t shaping;         /* each needle on which a wale begins or ends at a stop */
  int64_t row;             /* each plain carriage pass */
} latchwork_effort;
#define LATCHWORK_EFFORT_INIT { sizeof(latchwork_effort), 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0 }

/* Fills `machine` with the generic machine of a class (LATCHWORK_MACHINE_CLASS_...), named after it. Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_machine_generic(int32_t machine_class, latchwork_machine *machine,
                                                           latchwork_error *error);
/* Fills `effort` with the default efforts, which are estimates, meant to be replaced by the user's timings. Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_effort_default(latchwork_effort *effort, latchwork_error *error);
/* "L3", "R12". Fails: BAD_ARGUMENT (needle) for 0. Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_needle_name(int32_t needle, char *text, size_t capacity, size_t *needed,
                                                       latchwork_error *error);
/* The needle `steps` places to the operator's right of `needle`, over the centre. Fails: BAD_ARGUMENT (needle) for 0.
   Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_needle_beside(int32_t needle, int32_t steps, int32_t *beside,
                                                         latchwork_error *error);
/* The leftmost needle, operator's view, of a panel of that many columns. Not checked against the bed.
   Fails: BAD_ARGUMENT (columns) below 1. Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_leftmost_needle(const latchwork_machine *machine, int32_t columns,
                                                           int32_t *needle, latchwork_error *error);
/* The needle of an RS column: column 0 is the operator's rightmost stitch. Fails: BAD_ARGUMENT (columns) below 1 and
   (column) outside 0..columns-1. Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_needle_of(const latchwork_machine *machine, int32_t columns, int32_t column,
                                                     int32_t *needle, latchwork_error *error);

/* The parts of an effort by number, in their order. Since 0.1. */
enum {
  LATCHWORK_EFFORT_TERM_STOP = 0,
  LATCHWORK_EFFORT_TERM_BATCH = 1,
  LATCHWORK_EFFORT_TERM_DROP = 2,
  LATCHWORK_EFFORT_TERM_RUNG_KNIT = 3,
  LATCHWORK_EFFORT_TERM_RUNG_PURL = 4,
  LATCHWORK_EFFORT_TERM_RUNG_TUCK = 5,
  LATCHWORK_EFFORT_TERM_RUNG_SLIP = 6,
  LATCHWORK_EFFORT_TERM_CROSSING = 7,
  LATCHWORK_EFFORT_TERM_CROSSING_STITCH = 8,
  LATCHWORK_EFFORT_TERM_HOLD = 9,
  LATCHWORK_EFFORT_TERM_SHAPING = 10,
  LATCHWORK_EFFORT_TERM_ROW = 11
};
/* The term's name as in latchwork_effort ("rung_purl"); "" for a number that is no term. Never freed. Since 0.1. */
LATCHWORK_C_API const char *latchwork_effort_term_name(int32_t term);

/* ---- Timings: efforts by the clock ------------------------------------------------------------------------------ */

/* Timed spells of work in their order. */
typedef struct latchwork_timings latchwork_timings;
/* Efforts from timings, and how far they may be trusted. Every number is finite. */
typedef struct latchwork_effort_fit latchwork_effort_fit;

#define LATCHWORK_TIMINGS_MAX_SPELLS 50000
#define LATCHWORK_MAX_SPELL_COUNT 1000000    /* most of anything in one spell */
#define LATCHWORK_MAX_SPELL_MS 360000000     /* longest spell: 100 hours */
#define LATCHWORK_MAX_TIMINGS_BYTES 67108864 /* of a timings file */

/* One spell of work by the clock: what was done in it, each 0..LATCHWORK_MAX_SPELL_COUNT and one at least above 0, and
   how long all of it took. Each count's cost is the field of latchwork_effort beside it. An element of arrays. Its note
   is lent: on the way in the caller's, copied; on the way out the timings', and it goes with them. Since 0.1. */
typedef struct latchwork_spell {
  int64_t time_ms;          /* 1..LATCHWORK_MAX_SPELL_MS */
  const char *note;         /* free text, to 256 bytes: "the telephone rang"; NULL on the way in: "" */
  int32_t stops;            /* stop */
  int32_t batches;          /* wales found and re-formed: batch */
  int32_t drops;            /* rungs laddered down, of all batches: drop */
  int32_t rungs_knit;       /* rungs re-formed as a knit: rung_knit */
  int32_t rungs_purl;       /* as a purl: rung_purl */
  int32_t rungs_tuck;       /* as a tuck: rung_tuck */
  int32_t rungs_slip;       /* passed by: rung_slip */
  int32_t crossings;        /* crossing */
  int32_t stitches_crossed; /* stitches lifted for them: crossing_stitch */
  int32_t holds;            /* needles put in hold and released again: hold */
  int32_t shapings;         /* needles cast on or bound off at a stop: shaping */
  int32_t rows;             /* plain carriage passes: row */
  int32_t line;             /* line of the file it was read from; 0: from none */
} latchwork_spell;

/* Where a cost of a fitted effort comes from. Since 0.1. */
enum {
  LATCHWORK_TERM_STATE_FITTED = 0,  /* from the timings */
  LATCHWORK_TERM_STATE_AT_ZERO = 1, /* the timings would have it at or below 0; it is 0, the least it may be */
  LATCHWORK_TERM_STATE_TIED = 2,    /* the timings tell only what it and others cost together */
  LATCHWORK_TERM_STATE_NO_DATA = 3  /* no spell has any of it: the default is kept */
};

/* One term of a fitted effort. An element of arrays. Since 0.1. */
typedef struct latchwork_term_fit {
  double estimate_ms;       /* 0 or more */
  double standard_error_ms; /* of estimate_ms, only where FITTED and there is a spread; else -1 */
  int64_t value_ms;         /* as in the effort: estimate_ms to the nearest millisecond, a half goes up */
  int32_t term;             /* LATCHWORK_EFFORT_TERM_... */
  int32_t state;            /* LATCHWORK_TERM_STATE_... */
  int32_t spells;           /* spells that have any of it */
  int32_t tied_with;        /* how many others it is tied with: latchwork_effort_fit_tied_with() */
} latchwork_term_fit;

/* A spell that took longer or shorter than the others let expect. An element of arrays. Since 0.1. */
typedef struct latchwork_outlying_spell {
  double residual_ms; /* its time, less what the estimates make of its work */
  double studentized; /* residual over its own standard deviation, as fitted without this spell */
  int32_t spell;      /* index into the timings' spells */
  int32_t line;       /* the spell's line */
} latchwork_outlying_spell;

/* Timings of `count` spells. Fails: BAD_VALUE for a count, time, text or line out of its range, or a spell in which
   nothing was done (field "spells[3].rows"; "spells[3].time_ms"); BAD_ENCODING for a note that is not UTF-8; TOO_LARGE.
   Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_timings_create(const latchwork_spell *spells, size_t count,
                                                          latchwork_timings **out, latchwork_error *error);
/* Reads a timings file: CSV (RFC 4180, UTF-8), one spell a line, whose first line names its columns, in any order: the
   counts stops, batches, drops, rungs_knit, rungs_purl, rungs_tuck, rungs_slip, crossings, stitches_crossed, holds,
   shapings, rows (those that no spell has may be left out, not all), time, unit (ms, s, min, h) and note (may be left
   out). A count is a whole number, nothing is 0; a time is a whole number of milliseconds. Fails with line and field:
   BAD_SYNTAX, MISSING_FIELD, UNKNOWN_FIELD ("column 3", counted from 1, for a column without a name), DUPLICATE_KEY,
   BAD_VALUE, BAD_UNIT, BAD_ENCODING, TOO_LARGE. Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_read_timings(const char *text, size_t size, latchwork_timings **out,
                                                        latchwork_error *error);
/* The CSV that latchwork_read_timings() reads back to equal timings: every column, times in ms. Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_timings_write(const latchwork_timings *timings, char *text, size_t capacity,
                                                         size_t *needed, latchwork_error *error);
/* Timings of their own, equal to these. Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_timings_copy(const latchwork_timings *timings, latchwork_timings **out,
                                                        latchwork_error *error);
/* *equal is 1 when all spells are the same and in the same order, whichever lines they stood on, else 0. Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_timings_equal(const latchwork_timings *timings,
                                                         const latchwork_timings *other, int32_t *equal,
                                                         latchwork_error *error);
/* Frees them; NULL is fine. Since 0.1. */
LATCHWORK_C_API void latchwork_timings_destroy(latchwork_timings *timings);
/* All spells in order; their notes are the timings' and go with them. Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_timings_spells(const latchwork_timings *timings, latchwork_spell *spells,
                                                          size_t capacity, size_t *needed, latchwork_error *error);
/* Efforts by non-negative least squares, each spell counting the same; ties, zeros, standard errors and outlying spells
   by the rules at fit_effort() in timings.hpp. Terms without data keep `defaults` (may be NULL), tied ones are shared out
   nearest to them. Fails: BAD_ARGUMENT (defaults); TOO_LARGE (field "effort.row") for a cost that comes out above
   3600000 ms: a wrong unit, perhaps. Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_timings_fit_effort(const latchwork_timings *timings,
                                                              const latchwork_effort *defaults,
                                                              latchwork_effort_fit **out, latchwork_error *error);
/* A fit of its own, equal to this one. Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_effort_fit_copy(const latchwork_effort_fit *effort_fit,
                                                           latchwork_effort_fit **out, latchwork_error *error);
/* *equal is 1 when both say the same, else 0. Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_effort_fit_equal(const latchwork_effort_fit *effort_fit,
                                                            const latchwork_effort_fit *other, int32_t *equal,
                                                            latchwork_error *error);
/* Frees it; NULL is fine. Since 0.1. */
LATCHWORK_C_API void latchwork_effort_fit_destroy(latchwork_effort_fit *effort_fit);
/* The efforts, each within its limits. Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_effort_fit_effort(const latchwork_effort_fit *effort_fit,
                                                             latchwork_effort *effort, latchwork_error *error);
/* Every term, by number. Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_effort_fit_terms(const latchwork_effort_fit *effort_fit,
                                                            latchwork_term_fit *terms, size_t capacity, size_t *needed,
                                                            latchwork_error *error);
/* The other terms (LATCHWORK_EFFORT_TERM_...) that the term at `index` is tied with, by number. Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_effort_fit_tied_with(const latchwork_effort_fit *effort_fit, size_t index,
                                                                int32_t *terms, size_t capacity, size_t *needed,
                                                                latchwork_error *error);
/* The outlying spells in order; they took part in the fit all the same. Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_effort_fit_outlying(const latchwork_effort_fit *effort_fit,
                                                               latchwork_outlying_spell *spells, size_t capacity,
                                                               size_t *needed, latchwork_error *error);
/* Spells fitted to. Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_effort_fit_spells(const latchwork_effort_fit *effort_fit, int32_t *spells,
                                                             latchwork_error *error);
/* How many costs, or sums of tied ones, were free to be set. Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_effort_fit_rank(const latchwork_effort_fit *effort_fit, int32_t *rank,
                                                           latchwork_error *error);
/* Spells less rank. Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_effort_fit_degrees_of_freedom(const latchwork_effort_fit *effort_fit,
                                                                         int32_t *degrees, latchwork_error *error);
/* Root of (sum of squared residuals / degrees of freedom); -1 without those. Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_effort_fit_spread_ms(const latchwork_effort_fit *effort_fit,
                                                                double *spread_ms, latchwork_error *error);
/* The fit for people: a line for each term with its value and where it comes from, the outlying spells by their lines.
   Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_effort_fit_describe(const latchwork_effort_fit *effort_fit, char *text,
                                                               size_t capacity, size_t *needed,
                                                               latchwork_error *error);
/* "fitted", "at_zero", "tied", "no_data"; "" for a number that is none. Never freed. Since 0.1. */
LATCHWORK_C_API const char *latchwork_term_state_name(int32_t state);

/* ---- Findings --------------------------------------------------------------------------------------------------- */

/* How bad it is: ERROR cannot be made, WARNING is hard or risky, ADVICE is worth knowing. Since 0.1. */
enum { LATCHWORK_SEVERITY_ADVICE = 0, LATCHWORK_SEVERITY_WARNING = 1, LATCHWORK_SEVERITY_ERROR = 2 };

/* What a bed, tool or method cannot do or finds hard. Numbers never change; the list only grows. Since 0.1. */
enum {
  LATCHWORK_FINDING_CODE_OFF_BED = 1,             /* the panel reaches past the bed where it is placed, or is wider */
  LATCHWORK_FINDING_CODE_NO_TOOL = 2,             /* a crossing's groups do not hang on one tool each: a group
                                                     needs several, or there are too few; limit: the widest tool's
                                                     prongs, where a group is wider */
  LATCHWORK_FINDING_CODE_TIGHT_CROSSING = 3,      /* a crossing travels further than is comfortable */
  LATCHWORK_FINDING_CODE_SHORT_INTERVAL = 4,      /* crossings follow each other in fewer rows than they have stitches */
  LATCHWORK_FINDING_CODE_OPEN_CROSSING = 5,       /* a crossing after the panel's last row */
  LATCHWORK_FINDING_CODE_OPEN_STACK = 6,          /* tucks or slips that no knit or purl closes */
  LATCHWORK_FINDING_CODE_NO_HELD_LOOP = 7,        /* tucks or slips with no loop below to hold */
  LATCHWORK_FINDING_CODE_HIGH_STACK = 8,          /* more tucks or slips in a stack than the machine's limit */
  LATCHWORK_FINDING_CODE_TUCK_AT_EDGE = 9,        /* a tuck in the outermost wale or beside a ladder */
  LATCHWORK_FINDING_CODE_SLIP_AT_EDGE = 10,       /* a slip there */
  LATCHWORK_FINDING_CODE_PURL_AT_EDGE = 11,       /* a re-formed purl there: two rows come as one long loop */
  LATCHWORK_FINDING_CODE_LONG_FLOAT = 12,         /* slips side by side in a row over more needles than the limit */
  LATCHWORK_FINDING_CODE_TUCKS_SIDE_BY_SIDE = 13, /* neighbouring tucks: by hold they would carry one straight strand */
  LATCHWORK_FINDING_CODE_WALE_BEGINS = 14,        /* a stitch above a bare place inside the panel: a shaping event */
  LATCHWORK_FINDING_CODE_WALE_ENDS = 15,          /* a bare place above a stitch: a shaping event */
  LATCHWORK_FINDING_CODE_OUT_OF_REACH = 16,       /* no batch that the rules allow can re-form this cell */
  LATCHWORK_FINDING_CODE_NO_EDGE_STITCH = 17,     /* an outermost column that is not knit all the way */
  LATCHWORK_FINDING_CODE_CARRIAGE_SIDE = 18,      /* plans: a stop is needed where the carriage is on the left */
  LATCHWORK_FINDING_CODE_STOPS_TOO_NEAR = 19,     /* plans: stops are needed nearer to each other than allowed */
  LATCHWORK_FINDING_CODE_TOO_DEEP = 20,           /* plans: a cell that only a deeper re-form than allowed can make */
  LATCHWORK_FINDING_CODE_OFF_RHYTHM = 21,         /* plans: wales that cannot be kept to their rhythm, or to any */
  LATCHWORK_FINDING_CODE_TOO_MANY_KINDS = 22,     /* plans: more kinds of stop are needed than allowed */
  LATCHWORK_FINDING_CODE_ROW_CLOSED = 23,         /* plans: a stop is needed after a row that is closed */
  LATCHWORK_FINDING_CODE_FEW_PLACES = 24,         /* swatches: measured in fewer places than is usual */
  LATCHWORK_FINDING_CODE_SHORT_MEASURE = 25,      /* swatches: counted over less than is usual */
  LATCHWORK_FINDING_CODE_ODD_ONE_OUT = 26,        /* swatches: one place that does not belong to the others */
  LATCHWORK_FINDING_CODE_HALF_MEASURED = 27,      /* swatches: stitches alone, or rows alone, were measured */
  LATCHWORK_FINDING_CODE_NO_SWATCH = 28,          /* sizes: a texture that was not measured, and that no other stands in for */
  LATCHWORK_FINDING_CODE_BORROWED_GAUGE = 29,     /* sizes: a texture measured by another's gauge, as told */
  LATCHWORK_FINDING_CODE_MIXED_STATES = 30,       /* sizes: textures that were measured in unlike states */
  LATCHWORK_FINDING_CODE_UNKNOWN_SPREAD = 31,     /* sizes: textures measured in one place only */
  LATCHWORK_FINDING_CODE_UNLIKE_HEIGHTS = 32,     /* sizes: textures side by side that are not equally high */
  LATCHWORK_FINDING_CODE_UNLIKE_WIDTHS = 33,      /* sizes: bands that are not equally wide */
  LATCHWORK_FINDING_CODE_CROSSING_CUT = 34,       /* shaping: a crossing of which a part is outside the shape */
  LATCHWORK_FINDING_CODE_STACK_CUT = 35,          /* shaping: tucks or slips cut off from their held or closing loop */
  LATCHWORK_FINDING_CODE_COLUMN_CUT = 36,         /* shaping: hand cells in the edge stitches, knitted plain; crossings that reach into them */
  LATCHWORK_FINDING_CODE_NO_STITCH = 37,          /* a panel without a single stitch */
  LATCHWORK_FINDING_CODE_TWO_PIECES = 38,         /* a row that stands on no stitch of the row below */
  LATCHWORK_FINDING_CODE_YARN_AWAY = 39,          /* stitches bound off or cast on at once where the yarn is not */
  LATCHWORK_FINDING_CODE_UNLIKE_SWATCHES = 40,    /* swatches whose gauges differ by more than their places explain */
  LATCHWORK_FINDING_CODE_NARROW_TEXTURE = 41      /* sizes: a texture that only ever stands one or two wales wide */
};

/* A list of findings. */
typedef struct latchwork_findings latchwork_findings;

/* One finding. Texts are cut between characters when they are too long; latchwork_findings_message() and
   latchwork_findings_suggestion() have them whole. Since 0.1. */
typedef struct latchwork_finding {
  uint32_t struct_size;
  int32_t code;         /* LATCHWORK_FINDING_CODE_... */
  int32_t severity;     /* LATCHWORK_SEVERITY_... */
  int32_t row;          /* lowest row; 0: none */
  int32_t column;       /* leftmost column on the RS; -1: none */
  int32_t last_row;     /* it spans rows row..last_row */
  int32_t last_column;  /* and columns column..last_column */
  int32_t line;         /* line of the file it speaks of; 0: none */
  int32_t value;        /* what was found, in the finding's unit (needles, stitches, rows, places, mm) */
  int32_t limit;        /* the limit it broke; 0: none */
  char field[64];       /* what it speaks of, when that is no cell: "measurements[3]", a texture; "": none */
  char message[384];    /* for people, with place, value and limit */
  char suggestion[256]; /* what would help */
} latchwork_finding;
#define LATCHWORK_FINDING_INIT { sizeof(latchwork_finding), 0, 0, 0, -1, 0, -1, 0, 0, 0, {0}, {0}, {0} }

/* The finding's name as in C++ ("off_bed"); "" for a number that is no code. Never freed. Since 0.1. */
LATCHWORK_C_API const char *latchwork_finding_name(int32_t code);
/* Everything this machine cannot make or will find hard about the grid read as a panel, worst first, then by row and
   column. Fails: BAD_ARGUMENT for a machine out of its ranges. Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_grid_findings(const latchwork_grid *grid, const latchwork_machine *machine,
                                                         latchwork_findings **out, latchwork_error *error);
/* A list of its own, equal to this one. Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_findings_copy(const latchwork_findings *findings, latchwork_findings **out,
                                                         latchwork_error *error);
/* *equal is 1 when all findings are the same and in the same order, else 0. Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_findings_equal(const latchwork_findings *findings,
                                                          const latchwork_findings *other, int32_t *equal,
                                                          latchwork_error *error);
/* Frees it; NULL is fine. Since 0.1. */
LATCHWORK_C_API void latchwork_findings_destroy(latchwork_findings *findings);
/* How many there are. Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_findings_count(const latchwork_findings *findings, size_t *count,
                                                          latchwork_error *error);
/* The finding at `index`, from 0. Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_findings_get(const latchwork_findings *findings, size_t index,
                                                        latchwork_finding *finding, latchwork_error *error);
/* The whole message of the finding at `index`. Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_findings_message(const latchwork_findings *findings, size_t index,
                                                            char *text, size_t capacity, size_t *needed,
                                                            latchwork_error *error);
/* The whole suggestion of the finding at `index`; empty when there is none. Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_findings_suggestion(const latchwork_findings *findings, size_t index,
                                                               char *text, size_t capacity, size_t *needed,
                                                               latchwork_error *error);

/* ---- Plans ------------------------------------------------------------------------------------------------------ */

/* A schedule of hand work for a panel on a machine: stop by stop, in the operator's words. It is checked where it is
   told or simulated. */
typedef struct latchwork_plan latchwork_plan;

/* Whether the plan is proven to be the least, is the best found, or there is none. Since 0.1. */
enum { LATCHWORK_PLAN_STATUS_OPTIMAL = 0, LATCHWORK_PLAN_STATUS_FEASIBLE = 1, LATCHWORK_PLAN_STATUS_INFEASIBLE = 2 };
/* Which of a crossing's groups, named by where it stands on the RS before the crossing. Since 0.1. */
enum { LATCHWORK_GROUP_NAME_LEFT = 0, LATCHWORK_GROUP_NAME_CENTRE = 1, LATCHWORK_GROUP_NAME_RIGHT = 2 };

/* All that is done after row `row` is knitted: releases, re-forms in one sweep of the bed from the operator's left,
   crossings, shapings, holds. An element of arrays; the counts are those of the lists below. Since 0.1. */
typedef struct latchwork_stop {
  int32_t row;            /* 0 only for needles put in hold on the cast-on row */
  int32_t carriage_right; /* 1: COR, 0: COL */
  int32_t releases, reforms, crossings, shapings, holds; /* how many of each */
  int64_t effort_ms;      /* the stop and all that is done at it */
} latchwork_stop;

/* A batch: one wale dropped to the loop of row `from_row` and re-formed up to the stop's row. An element of arrays.
   Since 0.1. */
typedef struct latchwork_reform {
  int32_t needle;   /* operator's view */
  int32_t column;   /* RS column at the stop */
  int32_t wale;     /* index into the wales of the grid */
  int32_t from_row; /* the tool goes into this row's loop; 0: the cast-on's */
  int32_t rungs;    /* how many rungs are re-formed: those of rows from_row + 1, from_row + 2, ... */
} latchwork_reform;

/* A crossing made at a stop. All lifted groups leave their needles first, then they return in the order of the list: the
   group put back first shows in front on the RS. An element of arrays. Since 0.1. */
typedef struct latchwork_crossing_step {
  latchwork_crossing crossing;
  int32_t returns; /* how many groups return */
  int32_t ease;    /* hint, 1: bring the crossed needles out to hold, let the carriage knit them back on the next row */
} latchwork_crossing_step;

/* One group put back on the needles. Needles are the operator's leftmost of the group. An element of arrays. Since 0.1. */
typedef struct latchwork_group_return {
  int32_t group;       /* LATCHWORK_GROUP_NAME_... */
  int32_t stitches;    /* stitches in the group */
  int32_t from_needle; /* lifted from here */
  int32_t to_needle;   /* put back here */
  int32_t prongs;      /* how many tools lift it; 0: it stays on its needles */
} latchwork_group_return;

/* A needle that begins (`on` is 1) or ends work at a stop, by cast-on or bind-off. An element of arrays. Since 0.1. */
typedef struct latchwork_shaping {
  int32_t needle; /* operator's view */
  int32_t column; /* on the RS */
  int32_t on;     /* 1: begins, 0: ends */
} latchwork_shaping;

/* Totals of a plan. Since 0.1. */
typedef struct latchwork_hand_work {
  uint32_t struct_size;
  int32_t stops, batches, crossings, holds, shapings;
  int32_t rungs_knit, rungs_purl, rungs_tuck, rungs_slip;
  int32_t stitches_crossed; /* stitches lifted */
  int64_t hand_ms;          /* all but the carriage passes */
  int64_t carriage_ms;
} latchwork_hand_work;
#define LATCHWORK_HAND_WORK_INIT { sizeof(latchwork_hand_work), 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0 }

/* Told now and then during a long call, and once more, with share 1, before it gives its result, also after it was asked
   to stop. A call of several plans tells bound and best of the first, its least plan, and those of
   latchwork_grid_stop_reasons and latchwork_grid_certify are of the plan that is handed in. Lent to the callback.
   Since 0.1. */
typedef struct latchwork_progress {
  uint32_t struct_size;
  int64_t bound_ms; /* plans: proven so far; never falls (others: 0) */
  int64_t best_ms;  /* plans: best so far; -1: none yet; never rises once there is one (others: 0) */
  double share;     /* of the work, 0..1; never falls */
} latchwork_progress;

/* Called on the calling thread with the options' user_data. Anything but 0 asks the call to stop. Since 0.1. */
typedef int32_t (*latchwork_progress_call)(const latchwork_progress *progress, void *user_data);

/* How to watch a simulation, a verification or the check of a certificate, and end it. Options: 0 and NULL are the
   defaults. Since 0.1. */
typedef struct latchwork_watch_options {
  uint32_t struct_size;
  latchwork_progress_call progress; /* NULL: none. Only the share is told. Stopped, the call fails with CANCELLED */
  void *user_data;                  /* handed to `progress`, never looked at */
} latchwork_watch_options;
#define LATCHWORK_WATCH_OPTIONS_INIT { sizeof(latchwork_watch_options), NULL, NULL }

/* Neighbouring wales whose re-forms keep to one rhythm: at each of its stops all that is due in them is re-formed, from
   just below the lowest hand cell not yet worked, unless the wale's row is a tuck or slip (then it waits); they are
   worked at no other stop, and never by hold. An element of arrays. Since 0.1. */
typedef struct latchwork_kept_rhythm {
  int32_t row;          /* the wales that stand, in this row, ... */
  int32_t first_column; /* ... in columns first_column..last_column, from the left on the RS */
  int32_t last_column;
  int32_t every;        /* 0: the best rhythm, by trying every one */
  int32_t first;        /* stops after rows first, first + every, ... */
} latchwork_kept_rhythm;

/* What a knitter asks of a plan beside the least effort, so that it can be kept in the head. Options: 0 and NULL ask
   nothing. Since 0.1. */
typedef struct latchwork_conditions {
  uint32_t struct_size;
  int32_t carriage_right_only; /* 1: stops only where the carriage stands on the right */
  int32_t rows_apart;          /* no two stops nearer than so many rows (row 0 counts); 0 or 1: none */
  int32_t max_depth;           /* no re-form deeper than so many rows; 0: the machine's greatest ladder */
  int32_t max_kinds;           /* at most so many kinds of stop, see latchwork_plan_stop_kinds; 0: any */
  int32_t forced_exempt;       /* 1: side, distance and closed rows do not bind stops that crossings and shapings force */
  const latchwork_kept_rhythm *rhythms; /* no wale in two of them; at most one without a rhythm of its own */
  size_t rhythms_count;
  const int32_t *closed_rows; /* no stop after these rows, 0..R */
  size_t closed_rows_count;
} latchwork_conditions;
#define LATCHWORK_CONDITIONS_INIT { sizeof(latchwork_conditions), 0, 0, 0, 0, 0, NULL, 0, NULL, 0 }

/* How to plan. Options: 0 and NULL are the defaults. Since 0.1. */
typedef struct latchwork_plan_options {
  uint32_t struct_size;
  latchwork_progress_call progress; /* NULL: none. Stopped, a plan is the best so far, with status FEASIBLE */
  void *user_data;                  /* handed to `progress`, never looked at */
  int64_t work_limit;               /* search steps, a count and not a clock: the same plan on every machine; 0: none */
  int64_t time_limit_ms;            /* by the clock, from the call on; passed by no more than 20 ms, or 5 % of it where
                                       that is more, as far as the machine lets it be foreseen; 0: none */
  int64_t memory_limit;             /* bytes for the search's partial schedules, and in certify as many for branches; 0: 1 GiB */
  const latchwork_conditions *conditions; /* what else is asked of the plan; NULL: nothing */
} latchwork_plan_options;
#define LATCHWORK_PLAN_OPTIONS_INIT { sizeof(latchwork_plan_options), NULL, NULL, 0, 0, 0, NULL }

/* "optimal", "feasible", "infeasible"; "" for a number that is none. Never freed. Since 0.1. */
LATCHWORK_C_API const char *latchwork_plan_status_name(int32_t status);
/* The least-effort plan for the grid read as a panel. Exact: status OPTIMAL unless stopped or limited. What cannot be
   scheduled gives status INFEASIBLE with findings, not an error. Under conditions it is the least plan that keeps them,
   and findings of an infeasible one name the condition and the place; with max_kinds the search is exact on small panels
   and else ends FEASIBLE with a bound. A batch starts right below a hand cell and passes no crossing of its wale; only
   tucks under a closing knit with no tuck beside them are held. These are the planner's rules: what is proven is proven
   of the plans that keep them, and one that does not may take less. effort and options may be NULL.
   Fails: BAD_ARGUMENT (machine, effort, options, conditions), TOO_LARGE (effort; grid: kinds of wale, times rows + 1,
   past 2^25; options.conditions.max_kinds: nobody limits the search, and its own allowance ends before it has a plan or
   knows that there is none); CANCELLED when stopped, limited, or out of its memory, before that. A plan without
   conditions is had before any search, however short the limit; only a panel of more than 200,000 cells, a crossing
   counted as twenty, or one of which many wales begin or end inside it, is CANCELLED where it would be had too late, and
   where the call is stopped with some 400,000 cells still to be passed. Under conditions a few cheap plans are tried
   first (rows_apart: as few stops as serve all; a rhythm to be found: the likely ones, down to the densest; max_kinds:
   stops each as late as can be, else rhythms), and only where none of them keeps the conditions a limit ends in
   CANCELLED. Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_grid_plan(const latchwork_grid *grid, const latchwork_machine *machine,
                                                     const latchwork_effort *effort,
                                                     const latchwork_plan_options *options, latchwork_plan **out,
                                                     latchwork_error *error);
/* The best regular plan: stop every p rows and do all that is due. INFEASIBLE when no rhythm works. Under conditions the
   best of the rhythms whose stops and works keep them; where none does, its findings name the condition and the place.
   effort and options may be NULL.
   Stopped or limited before any was tried, it takes the first that does, down to every row.
   Fails: as latchwork_grid_plan; CANCELLED when none of these keeps the conditions. Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_grid_plan_regular(const latchwork_grid *grid,
                                                             const latchwork_machine *machine,
                                                             const latchwork_effort *effort,
                                                             const latchwork_plan_options *options,
                                                             latchwork_plan **out, latchwork_error *error);
/* A plan of its own, equal to this one. Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_plan_copy(const latchwork_plan *plan, latchwork_plan **out,
                                                     latchwork_error *error);
/* *equal is 1 when the plans are the same in everything, else 0. Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_plan_equal(const latchwork_plan *plan, const latchwork_plan *other,
                                                      int32_t *equal, latchwork_error *error);
/* Frees it; NULL is fine. Since 0.1. */
LATCHWORK_C_API void latchwork_plan_destroy(latchwork_plan *plan);
/* Rows of the panel. Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_plan_rows(const latchwork_plan *plan, int32_t *rows, latchwork_error *error);
/* Columns of the panel. Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_plan_columns(const latchwork_plan *plan, int32_t *columns,
                                                        latchwork_error *error);
/* The panel's leftmost needle, operator's view. Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_plan_leftmost(const latchwork_plan *plan, int32_t *needle,
                                                         latchwork_error *error);
/* 1: the carriage stands on the right at RC 0. Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_plan_carriage_starts_right(const latchwork_plan *plan, int32_t *right,
                                                                      latchwork_error *error);
/* RS columns with a stitch in row 1: the needles cast on. Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_plan_columns_on(const latchwork_plan *plan, int32_t *columns,
                                                           size_t capacity, size_t *needed, latchwork_error *error);
/* All hand work and all carriage passes, in milliseconds. Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_plan_total_ms(const latchwork_plan *plan, int64_t *ms,
                                                         latchwork_error *error);
/* No plan of this kind, by the planner's rules (see latchwork_grid_plan), can take less, in milliseconds. Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_plan_bound_ms(const latchwork_plan *plan, int64_t *ms,
                                                         latchwork_error *error);
/* LATCHWORK_PLAN_STATUS_... Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_plan_status(const latchwork_plan *plan, int32_t *status,
                                                           latchwork_error *error);
/* The rhythm of a regular plan: stops after rows first, first + every, ...; 0 and 0 when it has none. Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_plan_rhythm(const latchwork_plan *plan, int32_t *every, int32_t *first,
                                                       latchwork_error *error);
/* Why an infeasible plan is infeasible, and where; else an empty list. Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_plan_findings(const latchwork_plan *plan, latchwork_findings **out,
                                                         latchwork_error *error);
/* Its stops by row. Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_plan_stops(const latchwork_plan *plan, latchwork_stop *stops,
                                                      size_t capacity, size_t *needed, latchwork_error *error);
/* Needles taken out of hold at stop `stop`, operator's left to right. Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_plan_releases(const latchwork_plan *plan, size_t stop, int32_t *needles,
                                                         size_t capacity, size_t *needed, latchwork_error *error);
/* Needles put in hold at stop `stop` for the coming rows. Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_plan_holds(const latchwork_plan *plan, size_t stop, int32_t *needles,
                                                      size_t capacity, size_t *needed, latchwork_error *error);
/* The batches of stop `stop`, operator's left to right. Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_plan_reforms(const latchwork_plan *plan, size_t stop,
                                                        latchwork_reform *reforms, size_t capacity, size_t *needed,
                                                        latchwork_error *error);
/* What the rungs of batch `reform` of stop `stop` become (LATCHWORK_CELL_...), the lowest row first. Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_plan_rungs(const latchwork_plan *plan, size_t stop, size_t reform,
                                                      uint8_t *rungs, size_t capacity, size_t *needed,
                                                      latchwork_error *error);
/* The crossings made at stop `stop`. Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_plan_crossings(const latchwork_plan *plan, size_t stop,
                                                          latchwork_crossing_step *crossings, size_t capacity,
                                                          size_t *needed, latchwork_error *error);
/* The groups of crossing `crossing` of stop `stop` in the order in which they are put back. Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_plan_returns(const latchwork_plan *plan, size_t stop, size_t crossing,
                                                        latchwork_group_return *returns, size_t capacity,
                                                        size_t *needed, latchwork_error *error);
/* The pronged tools that lift group `group_return` of that crossing, operator's left to right. Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_plan_prongs(const latchwork_plan *plan, size_t stop, size_t crossing,
                                                       size_t group_return, int32_t *prongs, size_t capacity,
                                                       size_t *needed, latchwork_error *error);
/* The needles on which wales begin or end at stop `stop`. Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_plan_shapings(const latchwork_plan *plan, size_t stop,
                                                         latchwork_shaping *shapings, size_t capacity, size_t *needed,
                                                         latchwork_error *error);
/* For each stop the number of its kind, from 0 in the order in which kinds first appear. Stops are of one kind when the
   same is done at them, whatever their row: the same needles released, re-formed to the same depth with the same rungs,
   the same crossings in the same columns, needles cast on, bound off and held. Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_plan_stop_kinds(const latchwork_plan *plan, int32_t *kinds, size_t capacity,
                                                           size_t *needed, latchwork_error *error);
/* Counts and times of a plan under these efforts (may be NULL). What a spoiled plan has below 0, rows or stitches of a
   group, counts as none; stitches crossed past 2^31 - 1 stay there. Fails: BAD_ARGUMENT (effort). Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_plan_hand_work(const latchwork_plan *plan, const latchwork_effort *effort,
                                                          latchwork_hand_work *work, latchwork_error *error);

/* ---- What to choose from ---------------------------------------------------------------------------------------- */

/* The rhythms of a plan in two, one inside the other or not. Since 0.1. */
typedef struct latchwork_two_rhythms {
  uint32_t struct_size;
  int32_t crossings_every; /* the widest rhythm that has every crossing of the panel; 0 when it has none */
  int32_t crossings_first;
  int32_t reforms_every;   /* stops at which all that is due is re-formed; 0 when nothing ever is */
  int32_t reforms_first;
} latchwork_two_rhythms;
#define LATCHWORK_TWO_RHYTHMS_INIT { sizeof(latchwork_two_rhythms), 0, 0, 0, 0 }

/* One of the conditions, or all of them together. Since 0.1. */
enum {
  LATCHWORK_CONDITION_CARRIAGE_RIGHT_ONLY = 0,
  LATCHWORK_CONDITION_ROWS_APART = 1,
  LATCHWORK_CONDITION_MAX_DEPTH = 2,
  LATCHWORK_CONDITION_MAX_KINDS = 3,
  LATCHWORK_CONDITION_RHYTHMS = 4,
  LATCHWORK_CONDITION_CLOSED_ROWS = 5,
  LATCHWORK_CONDITION_ALL = 6
};

/* What a condition costs against the plan without any. An element of arrays. Since 0.1. */
typedef struct latchwork_condition_price {
  int32_t condition;      /* LATCHWORK_CONDITION_... */
  int32_t status;         /* LATCHWORK_PLAN_STATUS_... of the plan under it */
  int64_t total_ms;       /* what that plan takes; 0 when there is none; -1, and price_ms too, with status FEASIBLE: the
                             search ended, for a limit or its own allowance, and had none */
  int64_t price_ms;       /* more than the least plan without it that was found; 0 or more; where there is none (status
                             INFEASIBLE) this and the next two are 0 and mean nothing */
  int64_t least_price_ms; /* the price is proven to be no less than this ... */
  int64_t most_price_ms;  /* ... and no more than this (-1: nothing is known): exact when both are the same */
} latchwork_condition_price;

/* Effort against kinds of stop to be remembered: plans of which none beats another in both. */
typedef struct latchwork_front latchwork_front;

/* A plan of a front. An element of arrays. Since 0.1. */
typedef struct latchwork_front_point {
  int32_t kinds;    /* different kinds of stop, see latchwork_plan_stop_kinds */
  int32_t status;   /* LATCHWORK_PLAN_STATUS_OPTIMAL: none with so many kinds or fewer takes less */
  int64_t total_ms; /* what the plan takes */
  int64_t bound_ms; /* no plan with so many kinds or fewer takes less */
} latchwork_front_point;

/* Why a plan stops where it does; UNKNOWN: the search for a plan without the stop came to no end. Since 0.1. */
enum {
  LATCHWORK_STOP_CAUSE_CROSSING = 0,
  LATCHWORK_STOP_CAUSE_SHAPING = 1,
  LATCHWORK_STOP_CAUSE_HAND_CELLS = 2,
  LATCHWORK_STOP_CAUSE_SAVING = 3,
  LATCHWORK_STOP_CAUSE_UNKNOWN = 4
};

/* Why a stop is there. An element of arrays. Since 0.1. */
typedef struct latchwork_stop_reason {
  int32_t row;            /* the stop's */
  int32_t cause;          /* LATCHWORK_STOP_CAUSE_...: HAND_CELLS: no plan makes them without this stop; SAVING: plans
                             without it take more, or as much */
  int32_t place_row;      /* the crossing's or shaping's row and column, or the lowest, leftmost of the hand cells */
  int32_t place_column;   /* -1: none */
  int64_t saves_ms;       /* SAVING: so much more takes the best plan found that never stops here; never more than a
                             beside_ms that is told */
  int64_t least_saves_ms; /* every plan that never stops here takes at least so much more; the same as saves_ms when that
                             plan is proven the least; may be far below 0 when not */
  int64_t beside_ms;      /* 0 or more: so much more it takes to do this stop's works at the other stops as they are, some
                             of them perhaps differently there. -1, not told: these stops cannot make the panel, or take
                             less than the plan, something forces the stop, or conditions are asked, which may bar those
                             ways */
  char message[256];      /* for people, with place and time */
} latchwork_stop_reason;

/* From which row on, up to which, and every how many rows a schedule repeats itself. Since 0.1. */
typedef struct latchwork_period {
  uint32_t struct_size;
  int32_t from_row; /* rows from_row..last_row */
  int32_t last_row;
  int32_t rows;     /* the stop after row r and the one after row r + rows are of one kind, or neither is; 0: no period */
  int32_t times;    /* how often it goes through in full: 2 or more */
  int32_t stops;    /* stops in one period */
} latchwork_period;
#define LATCHWORK_PERIOD_INIT { sizeof(latchwork_period), 0, 0, 0, 0, 0 }

/* An effort, and how far it may move before another plan takes less. An element of arrays. Since 0.1. */
typedef struct latchwork_tolerance {
  int32_t term;        /* LATCHWORK_EFFORT_TERM_... */
  int64_t value_ms;    /* what it is */
  int64_t least_ms;    /* if proven, the plan stays a least one from here ... */
  int64_t most_ms;     /* ... to here, the other efforts as they are; within 0..3600000 */
  int32_t least_exact; /* 1: one millisecond below, where that may be, another plan takes less */
  int32_t most_exact;  /* 1: one millisecond above */
  int32_t proven;      /* 1: the plan is proven to be a least one at value_ms; 0: nothing is, and both ends are value_ms */
} latchwork_tolerance;

/* The best plan in two rhythms: crossings are made where the panel has them, which is every so many rows or at some of
   these; re-forms at the stops of a rhythm of their own, all that is due, the best of all by full enumeration. *out is
   INFEASIBLE when no rhythm works. Conditions are kept as by latchwork_grid_plan_regular, by all stops that are made,
   forced ones too. effort and options may be NULL.
   Fails: as latchwork_grid_plan_regular. Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_grid_plan_two_rhythms(const latchwork_grid *grid,
                                                                 const latchwork_machine *machine,
                                                                 const latchwork_effort *effort,
                                                                 const latchwork_plan_options *options,
                                                                 latchwork_two_rhythms *rhythms, latchwork_plan **out,
                                                                 latchwork_error *error);
/* The price of each condition asked (rows_apart 1 asks nothing), alone, and last of all together: each a plan of its own, also for the size alone.
   Limits are the whole call's. Ended, it has of the rest what needs no search: under all, which keeps each, then each
   alone, of 150,000 cells in all; else total -1. effort, options: NULL is fine. Fails: as latchwork_grid_plan. Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_grid_condition_prices(const latchwork_grid *grid,
                                                                 const latchwork_machine *machine,
                                                                 const latchwork_effort *effort,
                                                                 const latchwork_plan_options *options,
                                                                 latchwork_condition_price *prices, size_t capacity,
                                                                 size_t *needed, latchwork_error *error);
/* The front under the other conditions of the options; their max_kinds, where it is set, is the most kinds of interest.
   After the least plan it looks at one kind, at the most, then at the middle of what no proof settles. The work limit
   and the time limit are the whole call's, an eighth of what is left or more for each number of kinds; the same work
   limit gives the same front. Where neither work nor time is limited each number of kinds has an allowance of search of
   its own, a second or so: a panel with hundreds of kinds of stop takes minutes. Stopped, or out of work or time, the
   points found so far. effort and options may be NULL. Fails: as latchwork_grid_plan. Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_grid_plan_front(const latchwork_grid *grid, const latchwork_machine *machine,
                                                           const latchwork_effort *effort,
                                                           const latchwork_plan_options *options, latchwork_front **out,
                                                           latchwork_error *error);
/* A front of its own, equal to this one. Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_front_copy(const latchwork_front *front, latchwork_front **out,
                                                      latchwork_error *error);
/* *equal is 1 when the fronts are the same in everything, else 0. Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_front_equal(const latchwork_front *front, const latchwork_front *other,
                                                       int32_t *equal, latchwork_error *error);
/* Frees it; NULL is fine. Since 0.1. */
LATCHWORK_C_API void latchwork_front_destroy(latchwork_front *front);
/* Its points, from the fewest kinds on; each takes less than the one before, and the last is the least plan, or, where the
   options' max_kinds is below its kinds, the best with so many. Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_front_points(const latchwork_front *front, latchwork_front_point *points,
                                                        size_t capacity, size_t *needed, latchwork_error *error);
/* A copy of the plan of the point at `index`. Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_front_point_plan(const latchwork_front *front, size_t index,
                                                            latchwork_plan **out, latchwork_error *error);
/* *proven is 1 when no plan has fewer kinds than the first point. Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_front_fewest_proven(const latchwork_front *front, int32_t *proven,
                                                               latchwork_error *error);
/* Why there is no plan at all; else an empty list. Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_front_findings(const latchwork_front *front, latchwork_findings **out,
                                                          latchwork_error *error);

/* The reason of each stop of a plan, in its order. What a stop saves is found exactly, by planning again with its row
   closed, also when only the size is asked. The work limit and the time limit are the whole call's:
   stopped, or out of work or time, the causes not yet found are UNKNOWN. effort and options may be NULL. Fails: as
   latchwork_grid_plan; before anything is planned, SIZE_MISMATCH (plan) for a plan of another size, and BAD_ARGUMENT
   ("stops[3].row") for stops that do not rise within its rows; BAD_ARGUMENT (plan) where nothing forces a stop and no
   plan does without it, because there is none for the panel under these conditions at all. Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_grid_stop_reasons(const latchwork_grid *grid,
                                                             const latchwork_machine *machine,
                                                             const latchwork_effort *effort, const latchwork_plan *plan,
                                                             const latchwork_plan_options *options,
                                                             latchwork_stop_reason *reasons, size_t capacity,
                                                             size_t *needed, latchwork_error *error);
/* "crossing", "shaping", "hand_cells", "saving", "unknown"; "" for a number that is none. Never freed. Since 0.1. */
LATCHWORK_C_API const char *latchwork_stop_cause_name(int32_t cause);
/* Where a plan becomes periodic, as that of a panel repeated upward does: of all periods that are gone through at least
   twice, with a stop, the one that covers the most rows; then the shortest; then the lowest. An infeasible
   plan has none, and its stops are not looked at. Fails: TOO_LARGE (rows), above LATCHWORK_GRID_MAX_SIDE rows;
   BAD_ARGUMENT (rows) below 0, and ("stops[3].row") for stops that do not rise within them. Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_plan_period(const latchwork_plan *plan, latchwork_period *period,
                                                       latchwork_error *error);
/* For every effort, in the order of latchwork_effort, how far it may move before this plan, a least one under the
   options' conditions, is none. Some tens of plans, also when only the size is asked; the work limit and
   the time limit are the whole call's: stopped, or out of work or time, ends not yet found are not exact, nor is the
   greatest value at which the times of all plans of a large panel can be counted. effort and options may be NULL.
   Fails: as latchwork_grid_plan; before anything is planned, SIZE_MISMATCH (plan) for a plan of another size, and
   BAD_ARGUMENT ("stops[3].row") for stops that do not rise within its rows;
   BAD_ARGUMENT (plan) when the panel has no plan, another takes less, this one breaks a condition, or takes less than
   any by the planner's rules can (see latchwork_grid_plan); and, unless the call is over by then, when it works the wales
   of a rhythm otherwise, or does not make this panel. Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_grid_plan_tolerances(const latchwork_grid *grid,
                                                                const latchwork_machine *machine,
                                                                const latchwork_effort *effort,
                                                                const latchwork_plan *plan,
                                                                const latchwork_plan_options *options,
                                                                latchwork_tolerance *tolerances, size_t capacity,
                                                                size_t *needed, latchwork_error *error);

/* ---- Sessions ---------------------------------------------------------------------------------------------------- */

/* A plan's time by kind of work, in whole milliseconds; they add up to the total. Since 0.1. */
typedef struct latchwork_work_times {
  uint32_t struct_size;
  int64_t stops_ms;     /* the stops themselves: parking the carriage, taking up the tools */
  int64_t reforms_ms;   /* stitches dropped and re-formed, rung by rung */
  int64_t crossings_ms; /* groups lifted, crossed and put back */
  int64_t holds_ms;     /* needles put in hold and taken out */
  int64_t shapings_ms;  /* needles cast on and bound off */
  int64_t carriage_ms;  /* plain rows */
  int64_t total_ms;
} latchwork_work_times;
#define LATCHWORK_WORK_TIMES_INIT { sizeof(latchwork_work_times), 0, 0, 0, 0, 0, 0, 0 }

/* How long one sits at the machine, and after how much hand work the hands rest. Fill it with
   latchwork_session_options_default and change what differs. Since 0.1. */
typedef struct latchwork_session_options {
  uint32_t struct_size;
  int32_t from_row;   /* rows knitted already, with their stops; 0..rows */
  int64_t session_ms; /* 60000..86400000 */
  int64_t rest_ms;    /* of hand work, 60000..86400000; 0: no rests */
} latchwork_session_options;
#define LATCHWORK_SESSION_OPTIONS_INIT { sizeof(latchwork_session_options), 0, 0, 0 }

/* One sitting: rows from_row + 1 to to_row with their stops; the first takes in a stop at row 0 too. An element of arrays.
   Since 0.1. */
typedef struct latchwork_session {
  int32_t from_row;       /* the row counter when it begins */
  int32_t to_row;         /* and when it ends */
  int32_t carriage_right; /* where the carriage stands at its end */
  int32_t clear;          /* 1: at its end no needle is in hold and none was brought out to be knit back */
  int64_t work_ms;        /* hand work and carriage */
  int64_t hand_ms;        /* hand work alone */
} latchwork_session;

/* A rest for the hands. A stop is not divided: one whose hand work is longer than rest_ms has no rest inside it here. An
   element of arrays. Since 0.1. */
typedef struct latchwork_rest {
  int32_t session; /* index of the session it falls in */
  int32_t row;     /* after this row and its stop */
  int64_t hand_ms; /* hand work since the last rest, or since the session began */
} latchwork_rest;

/* The time of `pieces` panels (1..1000) made by one plan, by kind of work, from its steps and these efforts. effort may be
   NULL. An article of several plans takes the sums of theirs, field by field; sewing up is in none. Fails: BAD_ARGUMENT
   (effort, pieces; plan, with the first of its findings, for one that is infeasible); TOO_LARGE (pieces) for so much work
   that 64 bits do not hold it. Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_plan_work_times(const latchwork_plan *plan, const latchwork_effort *effort,
                                                           int32_t pieces, latchwork_work_times *times,
                                                           latchwork_error *error);
/* An hour; rests after 20 minutes of hand work; from row 0. Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_session_options_default(latchwork_session_options *session_options,
                                                                   latchwork_error *error);
/* Where to stop for the day, in sessions as few and as even as good ends allow. A session may end after each stop in the
   second half of its length that leaves nothing in hold; where there is no such stop, after each row in its length that
   does; where there is none either, after the first such row past its length, so that it lasts longer. The panel's end
   counts as such a stop. Of all ways with the fewest sessions it is the one whose longest session is shortest, of these the
   one whose shortest is longest, of these the one whose first session is longest, then the second, and so on. A plan that is
   infeasible has none. effort and options may be NULL. Fails: BAD_ARGUMENT (effort; field "session_ms", "rest_ms",
   "from_row", "rows", or "stops[3].row" for stops that do not rise within 0..rows); TOO_LARGE for a plan of more rows than
   a grid may have, or of more work than 2^60 ms. Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_plan_sessions(const latchwork_plan *plan, const latchwork_effort *effort,
                                                         const latchwork_session_options *options,
                                                         latchwork_session *sessions, size_t capacity, size_t *needed,
                                                         latchwork_error *error);
/* Where the hands rest within those sessions: after the stop at which the hand work since the last rest comes to rest_ms;
   not at a session's end. Fails: as latchwork_plan_sessions. Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_plan_rests(const latchwork_plan *plan, const latchwork_effort *effort,
                                                      const latchwork_session_options *options, latchwork_rest *rests,
                                                      size_t capacity, size_t *needed, latchwork_error *error);

/* ---- Certificates ----------------------------------------------------------------------------------------------- */

/* A proof that no plan by the planner's rules (see latchwork_grid_plan) takes less than its bound. A stop serves many
   wales, so its cost is shared out among them as
   prices; no plan can be cheaper than the forced stops and each class's cheapest way under its prices. Where that stays
   below the total, branches close the gap. Nothing in it is believed until it is checked. */
typedef struct latchwork_certificate latchwork_certificate;

/* What becomes of a branch: it goes on in the next row, its bound is too high, or another is as good. Since 0.1. */
enum { LATCHWORK_BRANCH_END_KEPT = 0, LATCHWORK_BRANCH_END_BOUND = 1, LATCHWORK_BRANCH_END_DOMINATED = 2 };

/* What a class of wales pays for a stop. An element of arrays. Since 0.1. */
typedef struct latchwork_stop_price {
  int32_t row;   /* the stop's, 0..R; not a forced stop */
  int64_t price; /* above 0; in 1/unit milliseconds, for all wales of the class together */
} latchwork_stop_price;

/* Wales that are made alike. An element of arrays; the counts are those of the lists below. Since 0.1. */
typedef struct latchwork_wale_class {
  int32_t wales;  /* how many */
  int32_t prices; /* how many; a stop that is not listed is free to this class */
  int64_t least;  /* the cheapest way of making them all under these prices, in 1/unit milliseconds */
} latchwork_wale_class;

/* All schedules that stop, up to a row, at the same rows. An element of arrays. Since 0.1. */
typedef struct latchwork_branch {
  int32_t row;  /* decided up to here, 0..R */
  int32_t below; /* index of the kept branch of the row below that it continues; -1 in row 0 */
  int32_t stop; /* 1: stops after this row */
  int32_t end;  /* LATCHWORK_BRANCH_END_... */
  int32_t by;   /* dominated: index of a kept branch of the same row; else -1 */
} latchwork_branch;

/* What is to come from some row on: every way on costs more than the prices' ways to go. An element of arrays. Since
   0.1. */
typedef struct latchwork_stretch {
  int32_t row;      /* after the decision at this row, 0..R-1 */
  int32_t branches; /* how many */
  int64_t gain;     /* how much more, above 0; in 1/unit milliseconds */
} latchwork_stretch;

/* What latchwork_grid_check_certificate() found. Since 0.1. */
typedef struct latchwork_certificate_check {
  uint32_t struct_size;
  int32_t holds;     /* 1: every plan for this panel that keeps the planner's rules takes at least bound_ms */
  int64_t bound_ms;  /* the certificate's when it holds, else 0 */
  int32_t row;       /* where it fails; 0: none */
  int32_t column;    /* -1: none */
  char field[64];    /* "classes[3].prices[2]"; "": none */
  char message[256]; /* "holds", or what is wrong; cut between characters when too long */
} latchwork_certificate_check;
#define LATCHWORK_CERTIFICATE_CHECK_INIT { sizeof(latchwork_certificate_check), 0, 0, 0, -1, {0}, {0} }

/* A proof that no plan by the planner's rules (see latchwork_grid_plan) takes less than total_ms: hand in the total of an
   optimal plan, or the bound of a feasible one. When that cannot be proven, a certificate of the greatest bound that
   prices alone were found to prove; when prices prove more than total_ms, of that. It looks at no conditions: conditions
   only take plans away, so that what is proven of all plans holds of those that keep them. effort and options may be NULL.
   Fails: BAD_ARGUMENT (machine, effort, options, total_ms; grid, when it cannot be scheduled at all), TOO_LARGE; CANCELLED
   when stopped or limited before the panel was read, as a large one may be. Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_grid_certify(const latchwork_grid *grid, const latchwork_machine *machine,
                                                        const latchwork_effort *effort, int64_t total_ms,
                                                        const latchwork_plan_options *options,
                                                        latchwork_certificate **out, latchwork_error *error);
/* Checks every word of a certificate, in whole numbers, against classes, ways and costs made from the grid anew; it
   uses none of the planner's code: what both use is how wales are followed, and the checks of arguments. What does not
   hold is told in `check`, with status OK. effort and options may be NULL. Fails: BAD_ARGUMENT (machine, effort),
   SIZE_MISMATCH (another panel's certificate), TOO_LARGE (totals; branches kept in two rows that would take more than a
   gibibyte), CANCELLED. Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_grid_check_certificate(const latchwork_grid *grid,
                                                                  const latchwork_machine *machine,
                                                                  const latchwork_effort *effort,
                                                                  const latchwork_certificate *certificate,
                                                                  const latchwork_watch_options *options,
                                                                  latchwork_certificate_check *check,
                                                                  latchwork_error *error);
/* A certificate of its own, equal to this one. Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_certificate_copy(const latchwork_certificate *certificate,
                                                            latchwork_certificate **out, latchwork_error *error);
/* *equal is 1 when the certificates are the same in everything, else 0. Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_certificate_equal(const latchwork_certificate *certificate,
                                                             const latchwork_certificate *other, int32_t *equal,
                                                             latchwork_error *error);
/* Frees it; NULL is fine. Since 0.1. */
LATCHWORK_C_API void latchwork_certificate_destroy(latchwork_certificate *certificate);
/* Rows of the panel. Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_certificate_rows(const latchwork_certificate *certificate, int32_t *rows,
                                                            latchwork_error *error);
/* Columns of the panel. Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_certificate_columns(const latchwork_certificate *certificate,
                                                               int32_t *columns, latchwork_error *error);
/* What is proven: no plan by the planner's rules takes less, in milliseconds. Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_certificate_bound_ms(const latchwork_certificate *certificate, int64_t *ms,
                                                                latchwork_error *error);
/* Prices are in 1/unit milliseconds. Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_certificate_unit(const latchwork_certificate *certificate, int64_t *unit,
                                                            latchwork_error *error);
/* Rows of the stops that every plan makes: crossings, wales that begin or end. Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_certificate_forced(const latchwork_certificate *certificate, int32_t *rows,
                                                              size_t capacity, size_t *needed, latchwork_error *error);
/* Its classes of wales. Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_certificate_classes(const latchwork_certificate *certificate,
                                                               latchwork_wale_class *classes, size_t capacity,
                                                               size_t *needed, latchwork_error *error);
/* The wales of class `index`, as indices into the wales of the grid. Fails: BAD_ARGUMENT (index). Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_certificate_wales(const latchwork_certificate *certificate, size_t index,
                                                             int32_t *wales, size_t capacity, size_t *needed,
                                                             latchwork_error *error);
/* What class `index` pays, by row. Fails: BAD_ARGUMENT (index). Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_certificate_prices(const latchwork_certificate *certificate, size_t index,
                                                              latchwork_stop_price *prices, size_t capacity,
                                                              size_t *needed, latchwork_error *error);
/* Its stretches, from the top down; each may use those above it, and the branches all of them. Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_certificate_stretches(const latchwork_certificate *certificate,
                                                                 latchwork_stretch *stretches, size_t capacity,
                                                                 size_t *needed, latchwork_error *error);
/* The branches of stretch `index`, by row, from the row above its own on, where `below` is -1.
   Fails: BAD_ARGUMENT (index). Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_certificate_stretch_branches(const latchwork_certificate *certificate,
                                                                        size_t index, latchwork_branch *branches,
                                                                        size_t capacity, size_t *needed,
                                                                        latchwork_error *error);
/* Its branches, by row; none where the prices suffice. Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_certificate_branches(const latchwork_certificate *certificate,
                                                                latchwork_branch *branches, size_t capacity,
                                                                size_t *needed, latchwork_error *error);

/* ---- Moves, simulate, verify ------------------------------------------------------------------------------------ */

/* What hands and carriage do, one thing at a time. No move names a stitch pattern. Since 0.1. */
enum {
  LATCHWORK_MOVE_KIND_CAST_ON = 0,     /* needles needle..last_needle get a new loop each and are in work */
  LATCHWORK_MOVE_KIND_BIND_OFF = 1,    /* the loops on needle..last_needle are bound off; the needles are out of work */
  LATCHWORK_MOVE_KIND_CARRIAGE = 2,    /* one pass: needles in work knit; a needle in hold takes the strand with its loop */
  LATCHWORK_MOVE_KIND_HOLD = 3,        /* needle..last_needle go to hold */
  LATCHWORK_MOVE_KIND_RELEASE = 4,     /* and come back to work */
  LATCHWORK_MOVE_KIND_TOOL_INTO = 5,   /* the latch tool goes into the loop of `row` in the wale on `needle` */
  LATCHWORK_MOVE_KIND_DROP = 6,        /* the stitch on `needle` is dropped and ladders down to the loop of `row` */
  LATCHWORK_MOVE_KIND_RUNG_BEHIND = 7, /* the tool passes behind the rung of `row`: it is taken into the stitch */
  LATCHWORK_MOVE_KIND_RUNG_BEFORE = 8, /* the tool passes in front of the rung: it stays on the RS of the stitch */
  LATCHWORK_MOVE_KIND_RUNG_ASIDE = 9,  /* the rung is left on the operator's side, as when worked on its needle */
  LATCHWORK_MOVE_KIND_DRAW_TOWARD = 10, /* the rung of `row` is drawn toward the operator: a back loop on the RS */
  LATCHWORK_MOVE_KIND_DRAW_AWAY = 11,   /* away from the operator: a face loop on the RS */
  LATCHWORK_MOVE_KIND_HANG = 12,        /* the loop on the latch tool goes back on `needle` */
  LATCHWORK_MOVE_KIND_LIFT = 13,        /* the stitches on needle..last_needle go to pronged tool `tool` */
  LATCHWORK_MOVE_KIND_PUT_BACK = 14     /* the stitches on `tool` go to needle..last_needle, in their order */
};

/* One move. An element of arrays. Since 0.1. */
typedef struct latchwork_move {
  int32_t kind;        /* LATCHWORK_MOVE_KIND_... */
  int32_t needle;      /* operator's view; 0: none */
  int32_t last_needle; /* at or right of `needle`; same as `needle` for one */
  int32_t row;         /* loop or rung meant, 0 the cast-on's; -1: none */
  int32_t tool;        /* pronged tool, counted from 0 within the stop; -1: none */
} latchwork_move;
#define LATCHWORK_MOVE_INIT { LATCHWORK_MOVE_KIND_CARRIAGE, 0, 0, -1, -1 }

/* The needles that make the panel. Data: both fields count. Since 0.1. */
typedef struct latchwork_bed {
  uint32_t struct_size;
  int32_t leftmost; /* operator's leftmost needle of the panel */
  int32_t columns;  /* needles in a run; RS column 0 is the rightmost */
} latchwork_bed;
#define LATCHWORK_BED_INIT { sizeof(latchwork_bed), -1, 1 }

/* What came off the bed. */
typedef struct latchwork_fabric latchwork_fabric;

/* Something that hands could not do, or a loop left in a state no fabric has. Since 0.1. */
typedef struct latchwork_fault {
  uint32_t struct_size;
  int32_t row;       /* RS row; 0: none */
  int32_t column;    /* RS column; -1: none */
  int64_t move;      /* index of the move; -1: found when the fabric was read */
  char message[256]; /* cut between characters when too long */
} latchwork_fault;
#define LATCHWORK_FAULT_INIT { sizeof(latchwork_fault), 0, -1, -1, {0} }

/* What came of a plan when its cloth was held against a chart. Since 0.1. */
typedef struct latchwork_verification {
  uint32_t struct_size;
  int32_t verified;  /* 1: all could be done, the fabric is sound and equals the chart, front to back order included, and
                        the plan says of itself what is so, but for its times and their bound, which go by efforts */
  int32_t row;       /* first differing place of the cloth, by row and then column. Where the cloth is the chart's and yet
                        not verified: of the fault, or where the plan says what is not so. 0: none */
  int32_t column;    /* -1: none */
  int64_t loops;     /* loops drawn in all */
  char field[64];    /* what differs there; "": none */
  char message[256]; /* "verified", and what of it is needless; or what differs there, and what could not be done; cut
                        between characters when long */
  int32_t wale;      /* of the chart, at that place of the cloth: its index among latchwork_wales_all(); -1: none */
  int32_t fault;     /* 1: hands could not make some move; the fault_... below tell the first such */
  int64_t fault_move;   /* its index among latchwork_plan_moves(); -1: none */
  int32_t fault_row;    /* 0: none */
  int32_t fault_column; /* -1: none */
  char expected[64];    /* what the chart has at that place: "purl", "no stitch", "1/2 RC", "no crossing"; "": the cloth is
                           the chart's */
  char found[64];       /* what the cloth has there: likewise, or "a stitch that no cell describes", "a passing that no
                           crossing describes" */
  char fault_message[256]; /* cut between characters when too long */
  int64_t needless;        /* steps that hands do for nothing: without them the cloth is the same. A needle brought back that
                              is not in hold, put in hold that is, or put in hold and brought back before a row is knitted;
                              a wale re-formed as it stood; a crossing that puts every stitch back where it was and behind
                              none. Of two that undo each other both are counted */
  int64_t needless_move;   /* the first of them: the index of its first move among latchwork_plan_moves(); -1: none */
  int32_t needless_row;    /* 0: none */
  int32_t needless_column; /* -1: none */
  char needless_message[256]; /* cut between characters when too long */
} latchwork_verification;
#define LATCHWORK_VERIFICATION_INIT \
  { sizeof(latchwork_verification), 0, 0, -1, 0, {0}, {0}, -1, 0, -1, 0, -1, {0}, {0}, {0}, 0, -1, 0, -1, {0} }

/* Every move of a plan from the cast-on to the last row, in order. Works for wrong plans too.
   Fails: TOO_LARGE (rows). Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_plan_moves(const latchwork_plan *plan, latchwork_move *moves,
                                                      size_t capacity, size_t *needed, latchwork_error *error);
/* The move for people: "needle L3: draw the rung of row 9 through, toward you". Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_move_describe(const latchwork_move *move, char *text, size_t capacity,
                                                         size_t *needed, latchwork_error *error);
/* Knits: executes the moves, right or wrong, on a bed that knows loops, strands and passings and nothing of charts,
   then reads the fabric back. A move that hands could not do is a fault, and the moves end there: nothing is read. options
   may be NULL.
   Fails: BAD_ARGUMENT (bed, moves; "leftmost", "columns" of the bed), TOO_LARGE, CANCELLED. Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_simulate(const latchwork_bed *bed, const latchwork_move *moves, size_t count,
                                                    const latchwork_watch_options *options, latchwork_fabric **out,
                                                    latchwork_error *error);
/* Knits the plan and compares with the grid: the one way in which anything is called verified. A plan that makes the
   right cloth but tells a wrong carriage side, another crossing than the chart's, a stop at a row that the counter never
   reads, a column or wale that is not its needle's, other needles cast on than the chart's in row 1, a crossing's groups
   in another order than its name says, one twice or not at all, or tools that do not carry their stitches, is not. Work
   that changes nothing does no harm: the plan is verified all the same, and `needless` tells how much of it there is. An
   infeasible plan is none: nothing is knitted, and it is not verified. The order in which the plan lists its stops is
   not compared; charts, instructions, sessions, rests and periods take only stops that rise.
   What hands cannot do of a plan is left undone and knitted on to its end, so that it hides no difference of the cloth: a
   rung that does not hang on the ladder is passed over, a batch without a loop at its from_row is not begun, of a crossing
   of which some stitch cannot be lifted or put back nothing is done, a needle that cannot be cast on, bound off, held or
   released is let be, one left in hold without a stitch goes back before the carriage comes. options may be NULL.
   Fails: SIZE_MISMATCH when the plan is for another size; BAD_ARGUMENT (leftmost) when its leftmost needle is 0;
   TOO_LARGE; CANCELLED. Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_grid_verify(const latchwork_grid *grid, const latchwork_plan *plan,
                                                       const latchwork_watch_options *options,
                                                       latchwork_verification *verification, latchwork_error *error);
/* A fabric of its own, equal to this one. Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_fabric_copy(const latchwork_fabric *fabric, latchwork_fabric **out,
                                                       latchwork_error *error);
/* *equal is 1 when grid, faults and loops are the same, else 0. Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_fabric_equal(const latchwork_fabric *fabric, const latchwork_fabric *other,
                                                        int32_t *equal, latchwork_error *error);
/* Frees it; NULL is fine. Since 0.1. */
LATCHWORK_C_API void latchwork_fabric_destroy(latchwork_fabric *fabric);
/* The fabric read back as a grid, RS; *out is NULL, with LATCHWORK_OK, when a fault bars it. Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_fabric_grid(const latchwork_fabric *fabric, latchwork_grid **out,
                                                       latchwork_error *error);
/* Loops drawn in all, by carriage and by hand. Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_fabric_loops(const latchwork_fabric *fabric, int64_t *loops,
                                                        latchwork_error *error);
/* How many faults there are; 0 for a sound fabric. Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_fabric_faults(const latchwork_fabric *fabric, size_t *count,
                                                         latchwork_error *error);
/* The fault at `index`, from 0, in the order found. Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_fabric_fault(const latchwork_fabric *fabric, size_t index,
                                                        latchwork_fault *fault, latchwork_error *error);

/* ---- Quantities -------------------------------------------------------------------------------------------------- */

/* A type each, so that no length is taken for a weight, and one unit inside, which is the field's name. Readers take text
   as people write it, a number and a unit: "45 cm", "17 3/4 in", "1 h 20 min"; the units and all that is refused are in
   quantity.hpp. They fail with the field as the caller names it (`field`, which may be NULL) and error.character:
   BAD_SYNTAX, BAD_UNIT (missing, unknown, ambiguous, of another kind or another system), BAD_VALUE, BAD_ENCODING,
   TOO_LARGE (above LATCHWORK_MAX_QUANTITY_BYTES). What is read is the double nearest to what is written. */

#define LATCHWORK_MAX_QUANTITY_BYTES 256

/* Units of length: an inch is 25.4 mm, a foot 12 in, a yard 36 in. Since 0.1. */
enum {
  LATCHWORK_LENGTH_UNIT_MM = 0,
  LATCHWORK_LENGTH_UNIT_CM = 1,
  LATCHWORK_LENGTH_UNIT_M = 2,
  LATCHWORK_LENGTH_UNIT_INCH = 3,
  LATCHWORK_LENGTH_UNIT_FOOT = 4,
  LATCHWORK_LENGTH_UNIT_YARD = 5
};
/* Units of weight: an ounce is 28.349523125 g (avoirdupois), a pound 16 oz, a grain 1/7000 lb. Since 0.1. */
enum {
  LATCHWORK_WEIGHT_UNIT_GRAM = 0,
  LATCHWORK_WEIGHT_UNIT_KILOGRAM = 1,
  LATCHWORK_WEIGHT_UNIT_OUNCE = 2,
  LATCHWORK_WEIGHT_UNIT_POUND = 3,
  LATCHWORK_WEIGHT_UNIT_GRAIN = 4
};
/* What is counted on cloth. Since 0.1. */
enum { LATCHWORK_COUNTED_STITCHES = 0, LATCHWORK_COUNTED_ROWS = 1 };

/* These four never change, as elements of arrays. Since 0.1. */
typedef struct latchwork_length {
  double mm; /* 0, or 1e-6..1e12 */
} latchwork_length;
typedef struct latchwork_weight {
  double g; /* 0, or 1e-6..1e12 */
} latchwork_weight;
typedef struct latchwork_duration {
  int64_t ms; /* 0..1e12 */
} latchwork_duration;
/* Stitches or rows over a length, as they were counted: 28 over 10 cm and 28 over 4 in stay two things. */
typedef struct latchwork_count_per_length {
  double count;     /* 1e-6..1e12; parts of a stitch count */
  double length_mm; /* 1e-6..1e12: 10 cm is 100 mm, 4 in is 101.6 mm */
  int32_t counted;  /* LATCHWORK_COUNTED_... */
} latchwork_count_per_length;

/* "45 cm", "5 ft 6 in". Fails: BAD_SYNTAX, BAD_UNIT, BAD_VALUE, BAD_ENCODING, TOO_LARGE. Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_read_length(const char *text, size_t size, const char *field,
                                                       latchwork_length *length, latchwork_error *error);
/* "50 g", "1 lb 4 oz". Fails: BAD_SYNTAX, BAD_UNIT, BAD_VALUE, BAD_ENCODING, TOO_LARGE. Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_read_weight(const char *text, size_t size, const char *field,
                                                       latchwork_weight *weight, latchwork_error *error);
/* "90 min", "1 h 20 min", a whole number of milliseconds. Fails: BAD_SYNTAX, BAD_UNIT, BAD_VALUE, BAD_ENCODING,
   TOO_LARGE. Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_read_duration(const char *text, size_t size, const char *field,
                                                         latchwork_duration *duration, latchwork_error *error);
/* "28 sts / 10 cm", "7 sts/in", "28 rows / 4 in"; two lengths, as in "10 cm / 4 in", are BAD_UNIT. Fails: BAD_SYNTAX,
   BAD_UNIT, BAD_VALUE, BAD_ENCODING, TOO_LARGE. Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_read_count_per_length(const char *text, size_t size, const char *field,
                                                                 latchwork_count_per_length *density,
                                                                 latchwork_error *error);
/* "450.85 mm": the shortest decimal number of LATCHWORK_LENGTH_UNIT_... that reads back to an equal length. Fails:
   BAD_ARGUMENT (mm, unit). Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_length_text(const latchwork_length *length, int32_t unit, char *text,
                                                       size_t capacity, size_t *needed, latchwork_error *error);
/* "50 g", likewise in LATCHWORK_WEIGHT_UNIT_... Fails: BAD_ARGUMENT (g, unit). Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_weight_text(const latchwork_weight *weight, int32_t unit, char *text,
                                                       size_t capacity, size_t *needed, latchwork_error *error);
/* "1 h 20 min". Fails: BAD_ARGUMENT (ms). Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_duration_text(const latchwork_duration *duration, char *text,
                                                         size_t capacity, size_t *needed, latchwork_error *error);
/* For people, rounded: "40 s", "3 min 20 s", "12 min", "5 h 12 min"; from ten minutes on to the minute, and below a
   second as it is ("0.5 s"). As summaries and instructions have it. Fails: BAD_ARGUMENT (ms). Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_rounded_duration_text(const latchwork_duration *duration, char *text,
                                                                 size_t capacity, size_t *needed,
                                                                 latchwork_error *error);
/* "28 sts / 10 cm", the length in LATCHWORK_LENGTH_UNIT_... Fails: BAD_ARGUMENT (counted, count, length_mm, unit).
   Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_count_per_length_text(const latchwork_count_per_length *density,
                                                                 int32_t unit, char *text, size_t capacity,
                                                                 size_t *needed, latchwork_error *error);
/* The length of a number of units, the nearest double. Fails: BAD_ARGUMENT (value, unit). Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_length_of(double value, int32_t unit, latchwork_length *length,
                                                     latchwork_error *error);
/* How many units a length is. Fails: BAD_ARGUMENT (mm, unit). Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_length_in(const latchwork_length *length, int32_t unit, double *value,
                                                     latchwork_error *error);
/* The weight of a number of units. Fails: BAD_ARGUMENT (value, unit). Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_weight_of(double value, int32_t unit, latchwork_weight *weight,
                                                     latchwork_error *error);
/* How many units a weight is. Fails: BAD_ARGUMENT (g, unit). Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_weight_in(const latchwork_weight *weight, int32_t unit, double *value,
                                                     latchwork_error *error);
/* Stitches or rows per 10 cm, the nearest double: 28 over 4 in are 27.56 over 10 cm. Fails: BAD_ARGUMENT (counted,
   count, length_mm); BAD_VALUE when the result is out of 1e-6..1e12. Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_per_10cm(const latchwork_count_per_length *density, double *value,
                                                    latchwork_error *error);

/* ---- Yarn -------------------------------------------------------------------------------------------------------- */

/* Ways of saying how fine a yarn is; with 1 yd = 0.9144 m and 1 lb = 453.59237 g all are exact multiples of tex. The
   sources are in yarn.hpp. Since 0.1. */
enum {
  LATCHWORK_YARN_SYSTEM_TEX = 0,               /* g per 1000 m */
  LATCHWORK_YARN_SYSTEM_DTEX = 1,              /* g per 10 000 m */
  LATCHWORK_YARN_SYSTEM_DENIER = 2,            /* g per 9000 m */
  LATCHWORK_YARN_SYSTEM_METRIC = 3,            /* Nm: km per kg */
  LATCHWORK_YARN_SYSTEM_COTTON = 4,            /* Ne: hanks of 840 yd per lb */
  LATCHWORK_YARN_SYSTEM_SPUN_SILK = 5,         /* as cotton */
  LATCHWORK_YARN_SYSTEM_WORSTED = 6,           /* hanks of 560 yd per lb */
  LATCHWORK_YARN_SYSTEM_LINEN = 7,             /* leas of 300 yd per lb */
  LATCHWORK_YARN_SYSTEM_WOOLLEN_CUT = 8,       /* cuts of 300 yd per lb */
  LATCHWORK_YARN_SYSTEM_WOOLLEN_RUN = 9,       /* runs of 1600 yd per lb */
  LATCHWORK_YARN_SYSTEM_YORKSHIRE = 10,        /* YSW: skeins of 256 yd per lb */
  LATCHWORK_YARN_SYSTEM_GALASHIELS = 11,       /* cuts of 200 yd per lb */
  LATCHWORK_YARN_SYSTEM_WEST_OF_ENGLAND = 12,  /* snaps of 320 yd per lb */
  LATCHWORK_YARN_SYSTEM_JUTE = 13,             /* lb per spindle of 14 400 yd, direct */
  LATCHWORK_YARN_SYSTEM_YARDS_PER_POUND = 14,
  LATCHWORK_YARN_SYSTEM_METRES_PER_100G = 15
};

/* How fine a yarn is: the number of one single, and how many of them are twisted together. An element of arrays.
   Since 0.1. */
typedef struct latchwork_yarn_number {
  double number;  /* 1e-6..1e9 */
  int32_t system; /* LATCHWORK_YARN_SYSTEM_... */
  int32_t plies;  /* 1..100 */
} latchwork_yarn_number;

/* One class of the Craft Yarn Council's Standard Yarn Weight System: guidelines only. An element of arrays. Since 0.1. */
typedef struct latchwork_yarn_category {
  const char *name;        /* "Light"; never freed */
  double least_needle_mm;  /* of hand needles */
  double most_needle_mm;   /* 0: no upper end */
  int32_t number;          /* 0..7 */
  int32_t least_stitches;  /* of stockinette over 4 in, which the table takes for 10 cm */
  int32_t most_stitches;
} latchwork_yarn_category;

/* "20 tex", "Nm 28/2", "2/24 worsted", "1000 yd/lb", "50 g = 120 m"; "Nm 28 x 2" is two plies of 28, and of "28/2" the plies
   are the number that can be plies, 12 or less. `field` may be NULL. Fails with field and character: BAD_SYNTAX (also
   where either number may be the plies), BAD_UNIT (no name, an unknown one), BAD_VALUE, BAD_ENCODING, TOO_LARGE.
   Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_read_yarn_number(const char *text, size_t size, const char *field,
                                                            latchwork_yarn_number *yarn, latchwork_error *error);
/* "Nm 28 x 2", which reads back to an equal number. Fails: BAD_ARGUMENT (system, number, plies). Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_yarn_number_text(const latchwork_yarn_number *yarn, char *text,
                                                            size_t capacity, size_t *needed, latchwork_error *error);
/* g per 1000 m of the whole yarn. Fails: BAD_ARGUMENT (system, number, plies); BAD_VALUE when it is out of 1e-6..1e9.
   Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_yarn_tex(const latchwork_yarn_number *yarn, double *tex,
                                                    latchwork_error *error);
/* The whole yarn's number in another system, as one single. Fails: as latchwork_yarn_tex. Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_yarn_number_in(const latchwork_yarn_number *yarn, int32_t system,
                                                          latchwork_yarn_number *converted, latchwork_error *error);
/* Yarns knitted or twisted together, as one of that many tex. Fails: BAD_ARGUMENT (yarns for none, yarns[1].number);
   BAD_VALUE when it is out of 1e-6..1e9. Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_yarns_together(const latchwork_yarn_number *yarns, size_t count,
                                                          latchwork_yarn_number *together, latchwork_error *error);
/* The number of a yarn of which this length has this weight. Fails: BAD_ARGUMENT (mm, g, system), for 0 too; BAD_VALUE
   when it is out of 1e-6..1e9. Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_yarn_number_of(const latchwork_length *length,
                                                          const latchwork_weight *weight, int32_t system,
                                                          latchwork_yarn_number *yarn, latchwork_error *error);
/* What a length of yarn weighs. Fails: BAD_ARGUMENT (system, number, plies, mm); BAD_VALUE when the weight is out of
   range. Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_yarn_weight(const latchwork_yarn_number *yarn,
                                                       const latchwork_length *length, latchwork_weight *weight,
                                                       latchwork_error *error);
/* How long yarn of a weight is. Fails: BAD_ARGUMENT (system, number, plies, g); BAD_VALUE when the length is out of
   range. Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_yarn_length(const latchwork_yarn_number *yarn,
                                                       const latchwork_weight *weight, latchwork_length *length,
                                                       latchwork_error *error);
/* Diameter of a yarn of that fibre density (g/cm3, 0.1..25; cotton 1.54): 0.0444 mm * sqrt(tex / density), a model of
   packed fibres. Fails: BAD_ARGUMENT (system, number, plies, fibre_density); BAD_VALUE, as latchwork_yarn_tex. Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_yarn_diameter_mm(const latchwork_yarn_number *yarn, double fibre_density,
                                                            double *diameter_mm, latchwork_error *error);
/* All classes, 0 to 7. Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_yarn_categories(latchwork_yarn_category *categories, size_t capacity,
                                                           size_t *needed, latchwork_error *error);
/* The classes that a gauge of stockinette falls in, taken over 4 in and rounded to whole stitches: none, one or two.
   Fails: BAD_ARGUMENT (counted, when rows were counted; count, length_mm); BAD_VALUE, as latchwork_per_10cm. Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_yarn_categories_at(const latchwork_count_per_length *gauge,
                                                              latchwork_yarn_category *categories, size_t capacity,
                                                              size_t *needed, latchwork_error *error);

/* ---- Swatch, size, fit ------------------------------------------------------------------------------------------ */

/* All measurements of a swatch, and the gauge of each texture. */
typedef struct latchwork_swatch latchwork_swatch;

#define LATCHWORK_SWATCH_MAX_MEASUREMENTS 50000
/* Fewest places that make a gauge, and the shortest length to count over: common practice, no source. Since 0.1. */
#define LATCHWORK_USUAL_PLACES 5
#define LATCHWORK_USUAL_LENGTH_MM 100.0

/* What has been done to a cloth since it was knitted, the least finished first. Measurements of two states are never put
   together. Where a state is asked for, MOST_FINISHED stands for each texture's most finished one that it has a gauge
   in. Since 0.1. */
enum {
  LATCHWORK_CLOTH_STATE_MOST_FINISHED = -1,
  LATCHWORK_CLOTH_STATE_OFF_MACHINE = 0, /* just taken off */
  LATCHWORK_CLOTH_STATE_RESTED = 1,      /* lain without pull until it moves no more, overnight at least */
  LATCHWORK_CLOTH_STATE_WASHED = 2       /* washed and dried as the article will be */
};

/* How many stitches or rows were counted over what length, at one place of a swatch. An element of arrays. Its texts are
   lent: on the way in the caller's, copied; on the way out the swatch's, and they go with it. Since 0.1. */
typedef struct latchwork_measurement {
  const char *texture; /* 1..256 bytes */
  const char *place;   /* free text, to 256 bytes: "left third"; NULL on the way in: "" */
  const char *swatch;  /* the piece it was measured on, likewise, to 64 bytes */
  double count;        /* 0.1..10000; parts of a stitch count */
  double length_mm;    /* 1..10000; 10 cm is 100 mm, 4 in is 101.6 mm */
  int32_t counted;     /* LATCHWORK_COUNTED_... */
  int32_t state;       /* LATCHWORK_CLOTH_STATE_..., but for MOST_FINISHED */
  int32_t line;        /* line of the file it was read from; 0: from none */
} latchwork_measurement;

/* Stitches and rows per 10 cm of one texture in one state: mean, sample standard deviation and standard error of the
   mean (0 for one place), places, pieces that were measured, and the degrees of freedom of spread^2 +
   standard_error^2 (0 for one place); where pieces differ by more than their places explain, that is part of both
   (gauge.hpp tells the formulas). Since 0.1. */
typedef struct latchwork_gauge {
  uint32_t struct_size;
  int32_t state; /* LATCHWORK_CLOTH_STATE_... */
  int32_t stitches_places;
  int32_t rows_places;
  double stitches_per_10cm;
  double stitches_spread;
  double stitches_standard_error;
  double rows_per_10cm;
  double rows_spread;
  double rows_standard_error;
  int32_t stitches_swatches;
  int32_t rows_swatches;
  double stitches_freedom;
  double rows_freedom;
} latchwork_gauge;
#define LATCHWORK_GAUGE_INIT { sizeof(latchwork_gauge), 0, 0, 0, 0.0, 0.0, 0.0, 0.0, 0.0, 0.0, 0, 0, 0.0, 0.0 }

/* How much a texture shrinks from one state to a more finished one, in per cent of its length in the first; less than 0:
   it grows. An element of arrays; the texture's name is the swatch's and goes with it. Since 0.1. */
typedef struct latchwork_shrinkage {
  const char *texture;
  double width_percent;
  double width_error; /* its standard error, in the same per cent; 0 when not known */
  double length_percent;
  double length_error;
  int32_t from_state;  /* LATCHWORK_CLOTH_STATE_... */
  int32_t to_state;
  int32_t error_known; /* 1: stitches and rows were measured in two places or more in both states */
} latchwork_shrinkage;

/* A texture that may be reckoned by another's figure, since it has none of its own. Its texts are the caller's, copied.
   An element of arrays. A list that names a texture twice, or as its own substitute, is refused where the list is read:
   BAD_ARGUMENT (field "substitutes[1].texture", "substitutes[0].use"). Since 0.1. */
typedef struct latchwork_substitute {
  const char *texture;
  const char *use; /* the texture whose figure is taken */
} latchwork_substitute;

/* By which gauges a panel is measured, and what its seams take off it. Data: begin with latchwork_size_options_default().
   Since 0.1. */
typedef struct latchwork_size_options {
  uint32_t struct_size;
  int32_t state;                            /* LATCHWORK_CLOTH_STATE_... of all gauges */
  const latchwork_substitute *substitutes;  /* for textures without a gauge */
  size_t substitute_count;
  double seam_left;   /* stitches that the seam at that side takes in, as seen on the RS: 0..1000, whole or half */
  double seam_right;
  double seam_bottom; /* rows that the seam along the cast-on takes in, likewise */
  double seam_top;    /* along the bind-off */
  double level;       /* of the margins, 0.5..0.999 */
} latchwork_size_options;
#define LATCHWORK_SIZE_OPTIONS_INIT { sizeof(latchwork_size_options), 0, NULL, 0, 0.0, 0.0, 0.0, 0.0, 0.0 }

/* A row of a panel between its seams. An element of structs. Since 0.1. */
typedef struct latchwork_row_width {
  int32_t row;
  int32_t columns; /* in work from its first stitch to its last: with what the seams take */
  double width_mm;
  double spread_mm; /* one standard deviation of width_mm */
  double margin_mm; /* width_mm lies within so much of what it will be, at the size's level */
} latchwork_row_width;

/* Size of a panel, between its seams, in millimetres, in the state that the gauges were measured in. Rows of a shaped
   panel are as wide as their stitches from the first to the last; a seam at a side follows the edge. Since 0.1. */
typedef struct latchwork_size {
  uint32_t struct_size;
  int32_t spread_known;  /* 1: stitches and rows of every texture were measured in two places or more; else spreads and
                            margins are too small by what is not known */
  double width_mm;       /* of the widest row */
  double least_width_mm; /* width_mm less what the narrowest band, over the columns that every row has, lacks of the
                            widest: below width_mm the edges wave */
  double height_mm;      /* width-weighted mean, per band and stretch of rows with the same columns, summed */
  double least_height_mm;
  double greatest_height_mm;
  double seam_width_mm;    /* what those at the sides take off the row that is widest between them */
  double seam_height_mm;   /* what they take off height_mm; below 0 where those at the sides take a short texture */
  double width_spread_mm;  /* one standard deviation of width_mm */
  double height_spread_mm; /* one standard deviation of height_mm */
  double level;            /* of the margins */
  double width_margin_mm;  /* width_mm lies within so much of what it will be, at that level */
  double height_margin_mm;
  int32_t widest_row; /* the lowest of equal ones */
  int32_t widest_columns;
  latchwork_row_width cast_on;  /* the lowest row that is not wholly in a seam */
  latchwork_row_width bind_off; /* the highest */
} latchwork_size;
#define LATCHWORK_SIZE_INIT                                                                                  \
  { sizeof(latchwork_size), 0, 0.0, 0.0, 0.0, 0.0, 0.0, 0.0, 0.0, 0.0, 0.0, 0.0, 0.0, 0.0, 0, 0, {0, 0, 0.0, 0.0, 0.0}, \
    {0, 0, 0.0, 0.0, 0.0} }

/* One strip of a band at its own gauge; its name and texture are those of latchwork_panel_strips(panel, band)[strip].
   An element of arrays. Since 0.1. */
typedef struct latchwork_strip_size {
  int32_t band;  /* index, bottom first */
  int32_t strip; /* index in the band, from the left on the RS */
  int32_t columns;
  int32_t rows;
  double width_mm;
  double height_mm;
} latchwork_strip_size;

#define LATCHWORK_FIT_REQUEST_MAX_GROUPS 8
#define LATCHWORK_FIT_REQUEST_MAX_PANELS 100
#define LATCHWORK_FIT_REQUEST_MAX_CANDIDATES 10000
/* Of latchwork_fit_request.tolerance_percent: none. Since 0.1. */
#define LATCHWORK_NO_TOLERANCE (-1.0)

/* Strips that stand beside each other, all together so many times: a motif with its ground, or what closes a panel (1 to
   1 times) so that its other side balances. An element of arrays. Since 0.1. */
typedef struct latchwork_fit_group {
  const latchwork_strip *const *strips; /* from the left on the RS, one or more; 65536 columns at most, together */
  size_t strip_count;
  int32_t least;                        /* times, 0..65536 */
  int32_t most;                         /* least..65536 */
  int32_t tied;     /* 1: it stands as often as the group as_group, so that the halves of a symmetric design grow alike;
                       0: as often as it likes, as_group -1 in C++ and Python: an element of zeros is tied to nothing */
  int32_t as_group; /* where tied is 1: index of an earlier group. The own least and most are then not what counts, but
                       those of that group (of the first, where that one is tied itself). Where tied is 0: 0 */
} latchwork_fit_group;
/* No strips, once, free. */
#define LATCHWORK_FIT_GROUP_INIT { NULL, 0, 1, 1, 0, 0 }

/* What an article shall measure, and what may vary. It is made of panels sewn side by side, all alike in their counts. A
   panel is, from the left on the RS: edge columns, each group so many times in order, the same number of edge columns.
   Panels right of the middle are mirrored; one in the middle stands as it is. Each panel is whole, so a seam cuts no
   motif and no crossing. Rows are rows_extra and a multiple of rows_step. The measure is that of latchwork_panel_size()
   with the same state, substitutes and seams: those at left and right are the article's two sides, and each seam
   between two panels takes in seam_stitches of either edge. Data: begin with latchwork_fit_request_default(). Since
   0.1. */
typedef struct latchwork_fit_request {
  uint32_t struct_size;
  int32_t edge_least;                      /* columns of edge at each side of each panel, from; 0..65536 */
  int32_t edge_most;                       /* to; edge_least..65536 */
  int32_t panels_least;                    /* 1..100 */
  int32_t panels_most;                     /* panels_least..100 */
  int32_t rows_step;                       /* the vertical repeat, 1..65536: rows are rows_extra + a multiple of this */
  int32_t rows_extra;                      /* rows beyond whole repeats, so that both ends balance; 0..65536 */
  int32_t vary_start;                      /* 1: look for the row of the vertical repeat to begin with */
  int32_t needles;                         /* bed: panels of more columns are left out; 0: no limit */
  int32_t most;                            /* candidates returned at most, 1..10000 */
  int32_t state;                           /* LATCHWORK_CLOTH_STATE_... of all gauges */
  double width_mm;                         /* between the seams: the target, or the least of a range; 1..1000000 */
  double width_most_mm;                    /* the greatest of the range, width_mm..1000000; 0: width_mm, a value */
  double height_mm;                        /* likewise */
  double height_most_mm;                   /* likewise */
  double tolerance_percent;                /* candidates further off than this, in either direction, are none; 0..100, or
                                              LATCHWORK_NO_TOLERANCE: nothing is ever too far off, and the best of what the
                                              other bounds allow is a candidate, be it a third of the width asked for */
  double seam_stitches;                    /* of each edge, that a seam between panels takes in: 0, 0.5 or 1 */
  double seam_left;                        /* stitches that the seam at that side takes in: 0..1000, whole or half */
  double seam_right;
  double seam_bottom;                      /* rows, likewise */
  double seam_top;
  const latchwork_fit_group *groups;       /* from the left on the RS, 1..8 */
  size_t group_count;
  const latchwork_strip *edge;             /* one column wide; NULL: none, and edge_least and edge_most count as 0 */
  const latchwork_substitute *substitutes; /* for textures without a gauge */
  size_t substitute_count;
} latchwork_fit_request;
#define LATCHWORK_FIT_REQUEST_INIT \
  { sizeof(latchwork_fit_request), 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0.0, 0.0, 0.0, 0.0, 0.0, 0.0, 0.0, 0.0, 0.0, 0.0, NULL, \
    0, NULL, NULL, 0 }

/* One way to meet the target. An error is the signed distance to the nearer end of the range, 0 inside, in mm and in
   percent of that end. The measures are what the swatch's means come to. How sure they are, and strips whose heights
   differ, latchwork_panel_size() and latchwork_panel_size_findings() tell of its latchwork_fitted() panel, with the
   request's state, substitutes and seams (seam_stitches where another panel is sewn to it). An element of arrays. Since
   0.1. */
typedef struct latchwork_fit_candidate {
  int32_t panels;
  int32_t times[LATCHWORK_FIT_REQUEST_MAX_GROUPS]; /* of each group, in order; 0 past the last */
  int32_t edge_columns;                            /* at each side of each panel */
  int32_t columns;                                 /* of one panel */
  int32_t rows;
  /* The row of each strip's own vertical repeat that row 1 is made as: 1 without vary_start, else the one whose ends
   balance best, of all up to where all strips stand as they do from row 1 (65536 at most). First come starts whose
   ends are not open, then those of the least imbalance, then the
     lowest. */
  int32_t start_row;
  int32_t open_ends; /* 1: a tuck or slip in the last row, or a crossing after it; one in row 1 is held with the cast-on */
  /* Summed over the strips of a panel: how far the rows below a strip's first crossing differ from those above its last;
     in a strip that has no crossings those below its first row with a cell that is not knit from those above its last.
     A strip of knit cells only counts nothing. All rows count where what is looked for falls outside them. */
  int64_t imbalance_rows;
  double width_mm;  /* of the outer left panel, plus (panels - 2) times an inner one's, plus the outer right's */
  double height_mm; /* the width-weighted mean of the same */
  double width_error_mm;
  double height_error_mm;
  double width_error_percent;
  double height_error_percent;
  double error; /* the rank: root of the sum of the squared relative errors */
} latchwork_fit_candidate;

/* What a request holds to, and what would have to give. Since 0.1. */
enum {
  LATCHWORK_FIT_BOUND_WIDTH = 0,        /* tolerance_percent of the width */
  LATCHWORK_FIT_BOUND_HEIGHT = 1,       /* tolerance_percent of the height */
  LATCHWORK_FIT_BOUND_TIMES = 2,        /* least and most of a group */
  LATCHWORK_FIT_BOUND_EDGE_COLUMNS = 3, /* edge_least, edge_most */
  LATCHWORK_FIT_BOUND_ROWS = 4,         /* rows_step, rows_extra */
  LATCHWORK_FIT_BOUND_PANELS = 5,       /* panels_least, panels_most */
  LATCHWORK_FIT_BOUND_NEEDLES = 6
};

/* One bound that a candidate does not keep. An element of arrays; its words are the result's and go with it. Since
   0.1. */
typedef struct latchwork_fit_give {
  const char *words; /* "21 repeats of group 1; at most 20 are allowed"; of tied groups "... of groups 1 and 3; ..." */
  double value;      /* the candidate's: mm off the range (signed), or a count */
  double limit;      /* the nearest that is allowed, likewise */
  int32_t bound;     /* LATCHWORK_FIT_BOUND_... */
  int32_t group;     /* index, where the bound is a group's (the first of tied ones); else -1 */
} latchwork_fit_give;

/* What latchwork_fit() finds: candidates, or else the nearest and what would have to give. Since 0.1. */
typedef struct latchwork_fit_result latchwork_fit_result;

/* "off the machine", "rested", "washed"; "" for a number that is no state. Never freed. Since 0.1. */
LATCHWORK_C_API const char *latchwork_cloth_state_name(int32_t state);
/* A swatch of `count` measurements. Fails: BAD_VALUE for a count, length, line or text out of its range, BAD_ENCODING for text
   that is not UTF-8 (field "measurements[3].count"); TOO_LARGE. Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_swatch_create(const latchwork_measurement *measurements, size_t count,
                                                         latchwork_swatch **out, latchwork_error *error);
/* Reads a swatch file: CSV (RFC 4180) whose first line names its columns, in any order: texture, counted, count,
   length, unit, place, swatch, state; the last four may be left out (without `unit` each length has its own, "10 cm";
   without a state it is rested). Fails with line and field: BAD_SYNTAX, MISSING_FIELD, UNKNOWN_FIELD ("column 3",
   counted from 1, for a column without a name), DUPLICATE_KEY, BAD_VALUE, BAD_UNIT, BAD_ENCODING, TOO_LARGE. Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_read_swatch(const char *text, size_t size, latchwork_swatch **out,
                                                       latchwork_error *error);
/* The CSV that latchwork_read_swatch() reads back to an equal swatch (lengths in mm). Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_swatch_write(const latchwork_swatch *swatch, char *text, size_t capacity,
                                                        size_t *needed, latchwork_error *error);
/* A swatch of its own, equal to this one. Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_swatch_copy(const latchwork_swatch *swatch, latchwork_swatch **out,
                                                       latchwork_error *error);
/* *equal is 1 when all measurements are the same and in the same order, whichever lines they stood on, else 0. Since
   0.1. */
LATCHWORK_C_API latchwork_status latchwork_swatch_equal(const latchwork_swatch *swatch, const latchwork_swatch *other,
                                                        int32_t *equal, latchwork_error *error);
/* Frees it; NULL is fine. Since 0.1. */
LATCHWORK_C_API void latchwork_swatch_destroy(latchwork_swatch *swatch);
/* All measurements in order; their texts are the swatch's and go with it. Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_swatch_measurements(const latchwork_swatch *swatch,
                                                               latchwork_measurement *measurements, size_t capacity,
                                                               size_t *needed, latchwork_error *error);
/* The textures in the order first measured; the texts are the swatch's and go with it. Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_swatch_textures(const latchwork_swatch *swatch, const char **textures,
                                                           size_t capacity, size_t *needed, latchwork_error *error);
/* The states in which both stitches and rows of a texture were measured, the least finished first. Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_swatch_states(const latchwork_swatch *swatch, const char *texture,
                                                         int32_t *states, size_t capacity, size_t *needed,
                                                         latchwork_error *error);
/* *has is 1 when both stitches and rows of the texture were measured in that state (MOST_FINISHED: in any), else 0. Since
   0.1. */
LATCHWORK_C_API latchwork_status latchwork_swatch_has(const latchwork_swatch *swatch, const char *texture, int32_t state,
                                                      int32_t *has, latchwork_error *error);
/* The gauge of a texture in a state, or in its most finished one. Fails: NO_GAUGE (field: the texture) when stitches or
   rows were not measured in it; BAD_ARGUMENT (state). Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_swatch_gauge(const latchwork_swatch *swatch, const char *texture,
                                                        int32_t state, latchwork_gauge *gauge, latchwork_error *error);
/* Every pair of states that a texture has a gauge in, textures in the order first measured, the least finished first.
   Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_swatch_shrinkages(const latchwork_swatch *swatch,
                                                             latchwork_shrinkage *shrinkages, size_t capacity,
                                                             size_t *needed, latchwork_error *error);
/* What is doubtful in a swatch: HALF_MEASURED, FEW_PLACES (below 5), SHORT_MEASURE (below 100 mm), ODD_ONE_OUT (Grubbs's
   test at 5 %, and off the others by a whole stitch or row, one and a half where all counts are whole), UNLIKE_SWATCHES
   (two swatches further apart than their places explain). Nothing is left out of a gauge for it. `field` is the
   measurement, "measurements[3]". Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_swatch_findings(const latchwork_swatch *swatch, latchwork_findings **out,
                                                           latchwork_error *error);
/* Fills `size_options` with the defaults: most finished states, no substitutes, no seams, level 0.95. Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_size_options_default(latchwork_size_options *size_options,
                                                                latchwork_error *error);
/* Size of a panel from the swatch's gauges; options may be NULL: the defaults. Fails: NO_GAUGE (field: the texture);
   BAD_ARGUMENT (seam_left, level, substitutes[1].use), also for seams that leave nothing; TOO_LARGE (substitutes). Since
   0.1. */
LATCHWORK_C_API latchwork_status latchwork_panel_size(const latchwork_panel *panel, const latchwork_swatch *swatch,
                                                      const latchwork_size_options *options, latchwork_size *size,
                                                      latchwork_error *error);
/* The sizes of its strips, whole, or 0 where all of one is cut off, band by band from the bottom, from the left on the
   RS. Fails: as latchwork_panel_size. Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_panel_size_strips(const latchwork_panel *panel,
                                                             const latchwork_swatch *swatch,
                                                             const latchwork_size_options *options,
                                                             latchwork_strip_size *strips, size_t capacity,
                                                             size_t *needed, latchwork_error *error);
/* What is to be said of the size: UNLIKE_HEIGHTS, UNLIKE_WIDTHS, BORROWED_GAUGE (field: the texture), MIXED_STATES,
   UNKNOWN_SPREAD, NARROW_TEXTURE (with the columns of its first strip). Fails: as latchwork_panel_size. Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_panel_size_findings(const latchwork_panel *panel,
                                                               const latchwork_swatch *swatch,
                                                               const latchwork_size_options *options,
                                                               latchwork_findings **out, latchwork_error *error);
/* How far its measure can be trusted before it is sized: NO_SWATCH (field: the texture) where sizing would fail,
   BORROWED_GAUGE, MIXED_STATES, UNKNOWN_SPREAD, NARROW_TEXTURE, and what latchwork_swatch_findings() says of the gauges
   that are used. Fails: BAD_ARGUMENT (field, as above); TOO_LARGE. Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_panel_measuring_findings(const latchwork_panel *panel,
                                                                    const latchwork_swatch *swatch,
                                                                    const latchwork_size_options *options,
                                                                    latchwork_findings **out, latchwork_error *error);
/* How to watch a fit, and end it. Options: 0 and NULL are the defaults. Since 0.1. */
typedef struct latchwork_fit_options {
  uint32_t struct_size;
  latchwork_progress_call progress; /* NULL: none. Only the share is told. Stopped, the call fails with CANCELLED */
  void *user_data;                  /* handed to `progress`, never looked at */
} latchwork_fit_options;
#define LATCHWORK_FIT_OPTIONS_INIT { sizeof(latchwork_fit_options), NULL, NULL }

/* Fills `request` with the defaults: 1 edge column, 1 panel, seams of 1 stitch between panels, any row count, no bed, no
   tolerance, 10 candidates. Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_fit_request_default(latchwork_fit_request *request, latchwork_error *error);
/* Every combination of panels, times, edge columns and rows that makes a grid (LATCHWORK_GRID_MAX_SIDE,
   LATCHWORK_GRID_MAX_CELLS), fits the needles, leaves something between the seams and, where panels are sewn together,
   has the edge columns that their seam takes in is considered. The best `most` come ranked by error, then fewer panels,
   fewer columns, fewer rows, fewer edge columns, then fewer times of the first group, the second, and so on. The time
   goes with the product of all ranges but the largest, and with `most`. The work is counted: a width takes 16 and one for
   each strip of the groups and each texture in each group, a height 16 and one for each texture, a start two for each
   strip; candidates may take 400 million, a second or so, and the nearest as many again. options may be NULL. Fails:
   BAD_ARGUMENT (field "width_mm", "groups[1].least"; "edge" where two panels or more are asked for and a seam has no edge
   columns to take in; "edge", "groups[0].strips" where a panel's outermost column could have no stitch in some row),
   NO_GAUGE (field: the texture), TOO_LARGE (field "substitutes"; "groups" when the combinations take more work than that,
   "vary_start" when the starts do), CANCELLED. Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_fit(const latchwork_fit_request *request, const latchwork_swatch *swatch,
                                               const latchwork_fit_options *options, latchwork_fit_result **out,
                                               latchwork_error *error);
/* A result of its own, equal to this one. Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_fit_result_copy(const latchwork_fit_result *fit_result,
                                                           latchwork_fit_result **out, latchwork_error *error);
/* *equal is 1 when everything in both is the same, else 0. Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_fit_result_equal(const latchwork_fit_result *fit_result,
                                                            const latchwork_fit_result *other, int32_t *equal,
                                                            latchwork_error *error);
/* Frees it; NULL is fine. Since 0.1. */
LATCHWORK_C_API void latchwork_fit_result_destroy(latchwork_fit_result *fit_result);
/* Ranked; none when nothing fits. Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_fit_result_candidates(const latchwork_fit_result *fit_result,
                                                                 latchwork_fit_candidate *candidates, size_t capacity,
                                                                 size_t *needed, latchwork_error *error);
/* Only when nothing fits: three, or all there are. One bound is loosened, or more together, and of all that is then allowed the
   candidate taken for which the bound that must give most gives least. The tolerance of the width, that of the height,
   each free group's times, edge columns, rows, panels and needles are bounds. How far one gives is in proportion to
   what is allowed: a count by |value - limit| / limit (a limit of 0 taken as 1), width and height by what is beyond the
   tolerance, as a share of the tolerance (one below 1 % taken as 1 %; without one, all that they are off, though it is
   no bound then), rows that are no whole repeats by 1; rounded up to a millionth. Of more bounds, each is taken to give
   as far as the one that gives most. At most: 1000 % each; 1 (0 where it was allowed) to 65536; 0 to 65536; any number;
   1 to 100; no limit. Of candidates for which it is the same the first in the ranking is taken. Each bound is tried
   alone and with each other one; where these come to fewer than three, three together, and so on up. Bounds are left
   out where some of them by themselves give no further in all. Ranked by how far they give in all, then fewer bounds, then
   as candidates; where fewer than three, the rest is filled up as fit.hpp has it. Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_fit_result_nearest(const latchwork_fit_result *fit_result,
                                                              latchwork_fit_candidate *candidates, size_t capacity,
                                                              size_t *needed, latchwork_error *error);
/* What would have to give for the nearest at `index`, in the order of LATCHWORK_FIT_BOUND_..., groups in theirs. Since
   0.1. */
LATCHWORK_C_API latchwork_status latchwork_fit_result_gives(const latchwork_fit_result *fit_result, size_t index,
                                                            latchwork_fit_give *gives, size_t capacity, size_t *needed,
                                                            latchwork_error *error);
/* *nearest_complete is 0 when the search for the nearest was cut short: there may be nearer ones; else 1. Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_fit_result_nearest_complete(const latchwork_fit_result *fit_result,
                                                                       int32_t *nearest_complete,
                                                                       latchwork_error *error);
/* What latchwork_panel_measuring_findings() says of the request's strips, as a panel of them all: borrowed_gauge for
   each texture that is measured by another's gauge, as told, mixed_states, unknown_spread, and the swatch's odd ones.
   Then of the best candidate, where its ends are open: OPEN_CROSSING, OPEN_STACK (row: its last). What else is to be said
   of one (its margins, strips of unlike heights, NARROW_TEXTURE) latchwork_panel_size() and
   latchwork_panel_size_findings() say of its latchwork_fitted() panel. Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_fit_result_findings(const latchwork_fit_result *fit_result,
                                                               latchwork_findings **out, latchwork_error *error);
/* One panel of a candidate, named after its numbers: the one at index `panel`, 0..panels-1, from the left on the RS. Of the
   candidate panels, times, edge_columns, columns, rows and start_row are read; it may break the request's bounds, as
   those of latchwork_fit_result_nearest do. Of the request all but the targets is, so that the design of
   latchwork_grade() will do. Fails: BAD_ARGUMENT (field) when they are no candidate's of this request
   with whatever bounds loosened; as latchwork_join_strips. Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_fitted(const latchwork_fit_request *request,
                                                  const latchwork_fit_candidate *candidate, int32_t panel,
                                                  latchwork_panel **out, latchwork_error *error);

/* One size of a family: a target or a range each way, as in latchwork_fit_request. An element of arrays. Since 0.1. */
typedef struct latchwork_grade_size {
  const char *name; /* "45 x 45", "M"; no two alike */
  double width_mm;
  double width_most_mm; /* 0: width_mm */
  double height_mm;
  double height_most_mm; /* 0: height_mm */
} latchwork_grade_size;

#define LATCHWORK_GRADE_REQUEST_MAX_SIZES 50

/* What a design comes to in its sizes. Since 0.1. */
typedef struct latchwork_grading latchwork_grading;

/* Fits every size so that all are one design; of `design` the targets and `most` are not read. The construction is the same:
   as many panels and as many edge columns in each. Of any two sizes, neighbours or not, no group stands fewer times in the
   wider one, and as often where they are as wide; rows likewise go with the heights. A range is as wide as its middle. Of all
   ways to choose so, the one whose greatest error is least; of these that with the least sum of errors; of these fewer
   panels, then fewer edge columns. From each size's best candidates under each construction, 300 at first, and twice as
   many until what is not listed cannot be part of a better choice: see latchwork_grading_complete(). Fails: BAD_ARGUMENT (field
   "sizes", "sizes[2].name", "sizes[2].width_mm", or "design." and a field of the request), BAD_ENCODING ("sizes[2].name"),
   NO_GAUGE (field: the texture), TOO_LARGE, as latchwork_fit; TOO_LARGE (field "design.edge_most") for more than 1000
   constructions times sizes; CANCELLED. Each fit has the work of latchwork_fit to itself; options watch over all, and may
   be NULL. Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_grade(const latchwork_fit_request *design,
                                                 const latchwork_grade_size *sizes, size_t count,
                                                 const latchwork_swatch *swatch, const latchwork_fit_options *options,
                                                 latchwork_grading **out, latchwork_error *error);
/* A grading of its own, equal to this one. Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_grading_copy(const latchwork_grading *grading, latchwork_grading **out,
                                                        latchwork_error *error);
/* *equal is 1 when everything in both is the same, else 0. Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_grading_equal(const latchwork_grading *grading,
                                                         const latchwork_grading *other, int32_t *equal,
                                                         latchwork_error *error);
/* Frees it; NULL is fine. Since 0.1. */
LATCHWORK_C_API void latchwork_grading_destroy(latchwork_grading *grading);
/* The names of the sizes, in order; they are the grading's and go with it. Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_grading_names(const latchwork_grading *grading, const char **names,
                                                         size_t capacity, size_t *needed, latchwork_error *error);
/* What the design's groups are made of, in order: their strips' names, each once, "ground + rope"; where two groups would
   be told alike, with their numbers, "ground + rope (group 3)". The texts are the grading's and go with it. Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_grading_groups(const latchwork_grading *grading, const char **groups,
                                                          size_t capacity, size_t *needed, latchwork_error *error);
/* A candidate for each size; none when the sizes cannot be graded. Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_grading_candidates(const latchwork_grading *grading,
                                                              latchwork_fit_candidate *candidates, size_t capacity,
                                                              size_t *needed, latchwork_error *error);
/* *complete is 0 where a better choice, or where there is none the only one, may not have been looked at: that would have
   taken more than LATCHWORK_FIT_REQUEST_MAX_CANDIDATES of a size, the work of latchwork_fit(), or 400 million comparisons of
   two candidates in all (20 million a search, which only sizes can come to whose heights do not go with their widths); else
   1. Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_grading_complete(const latchwork_grading *grading, int32_t *complete,
                                                            latchwork_error *error);
/* Index of the first size that nothing fits; -1: none such. Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_grading_missing(const latchwork_grading *grading, int32_t *missing,
                                                           latchwork_error *error);
/* For that size the nearest, and what would have to give for the one at `index`, as latchwork_fit_result_nearest and
   latchwork_fit_result_gives. Where every size is fitted and none go together: a candidate for each size, in order, that
   would go together if one bound gave for all, with what each does not keep (nothing, where it keeps all). Each bound is
   loosened alone, the tolerances of width and height together only where neither is enough; edge columns and panels
   no further than 1000 fits go; that choice is
   taken whose greatest error is least, of these the first in the order of LATCHWORK_FIT_BOUND_...; none where
   latchwork_grading_complete() tells 0. Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_grading_nearest(const latchwork_grading *grading,
                                                           latchwork_fit_candidate *candidates, size_t capacity,
                                                           size_t *needed, latchwork_error *error);
LATCHWORK_C_API latchwork_status latchwork_grading_gives(const latchwork_grading *grading, size_t index,
                                                         latchwork_fit_give *gives, size_t capacity, size_t *needed,
                                                         latchwork_error *error);
/* *nearest_complete is 1 when that search was not cut short, as latchwork_fit_result_nearest_complete. Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_grading_nearest_complete(const latchwork_grading *grading,
                                                                    int32_t *nearest_complete, latchwork_error *error);
/* For people, where there are no candidates: which size nothing fits, or that none go together, and what would have to give
   (of the nearest the first, or all of the sizes'); else "". Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_grading_message(const latchwork_grading *grading, char *text,
                                                           size_t capacity, size_t *needed, latchwork_error *error);
/* As latchwork_fit_result_findings, of the design: the same for every size; then of each size that ends open, by its name.
   Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_grading_findings(const latchwork_grading *grading, latchwork_findings **out,
                                                            latchwork_error *error);
/* A line a size, for a terminal: panels, times of each group, edge columns, columns and rows of a panel, width and height in
   cm with their errors in percent; below it what each group is, and that there may be a better choice where
   latchwork_grading_complete() tells 0. Where there are no candidates, the message. Below either, a line for each texture
   that is measured by another's gauge, and for each size that ends open. Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_grading_table(const latchwork_grading *grading, char *text, size_t capacity,
                                                         size_t *needed, latchwork_error *error);
/* The lines of a written pattern that differ between sizes: "Knit 120 (144, 168) rows". Where there are no
   candidates, the message. Groups are told by what they are made of; what is not proven, measured by another's gauge or open
   at its end as in latchwork_grading_table(). Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_grading_words(const latchwork_grading *grading, char *text, size_t capacity,
                                                         size_t *needed, latchwork_error *error);
/* Numbers of several sizes as written patterns give them: "4 (6, 8)"; where all are the same, or there is one, "4"; "" for
   none. Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_graded_text(const int64_t *numbers, size_t count, char *text,
                                                       size_t capacity, size_t *needed, latchwork_error *error);

/* ---- A panel wider than the bed ----------------------------------------------------------------------------------- */

/* Most stitches that a seam may take in of an edge. Since 0.1. */
#define LATCHWORK_MAX_SEAM_STITCHES 10

/* A part of a panel that is knitted by itself and sewn to its neighbours. An element of arrays. Since 0.1. */
typedef struct latchwork_split_part {
  int32_t column;     /* the panel's column that it begins with, from the left on the RS */
  int32_t columns;    /* of the panel */
  int32_t seam_left;  /* stitches more at its left edge, which the seam takes in; 0..LATCHWORK_MAX_SEAM_STITCHES */
  int32_t seam_right; /* likewise */
} latchwork_split_part;

/* Parts a finished panel that is wider than the bed, from the left on the RS; each part gets `seam_stitches` (0..10, 1 is
   usual) columns of knit at each edge that is sewn to another. No motif's strip is cut (one of knit alone may be), no
   crossing, and no line that has a stitch on one side only. The rule that chooses is in split.hpp: halves that
   mirror each other where the panel does, with the fewest parts or one more; else the fewest parts; the widest part
   narrowest. A fraction of seam_stitches is refused: half a stitch has no
   column that could be added at both edges. Fails: BAD_ARGUMENT (machine, seam_stitches); TOO_LARGE
   (panel; column: of the part that there is no end for) when no such lines are near enough. Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_panel_split(const latchwork_panel *panel, const latchwork_machine *machine,
                                                       double seam_stitches, latchwork_split_part *parts,
                                                       size_t capacity, size_t *needed, latchwork_error *error);
/* One part as a panel, also one that is cut where you choose, inside a strip too. Size it with its seams to have what is left
   when it is sewn. Fails: BAD_ARGUMENT (field "part.columns"); CROSSING_CUT (row, column), as latchwork_grid_sliced; TOO_LARGE.
   Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_panel_split_part(const latchwork_panel *panel,
                                                            const latchwork_split_part *part, latchwork_panel **out,
                                                            latchwork_error *error);

/* ---- Even spacing ------------------------------------------------------------------------------------------------ */

/* Where the first and the last event stand. Since 0.1. */
enum {
  LATCHWORK_SPACING_ENDS_IN_THE_ROUND = 0, /* k gaps, an event at the end of each: a tube, or up rows to the last */
  LATCHWORK_SPACING_ENDS_FLAT = 1,         /* k + 1 gaps, one at each edge */
  LATCHWORK_SPACING_ENDS_HALF_ENDS = 2     /* k gaps, the one across the ends cut in two */
};

#define LATCHWORK_MAX_SPACING 1000000 /* longest length */

/* Events spread over stitches or rows. The first four fields say which spacing it is, and are all that functions read
   of one handed in; latchwork_spaced_evenly() fills it. Since 0.1. */
typedef struct latchwork_spacing {
  uint32_t struct_size;
  int32_t length;       /* stitches or rows */
  int32_t events;       /* k */
  int32_t ends;         /* LATCHWORK_SPACING_ENDS_... */
  int32_t step;         /* every gap is a multiple of it */
  int32_t every;        /* the shorter gap */
  int32_t times;        /* how many gaps of `every` */
  int32_t longer_times; /* how many gaps of every + step */
  int32_t rest;         /* what no gap takes, at the far end */
} latchwork_spacing;
#define LATCHWORK_SPACING_INIT \
  { sizeof(latchwork_spacing), 0, 0, 0, 0, 0, 0, 0, 0 }

/* Spreads events as evenly as whole stitches or rows allow; the rule is in spacing.hpp. Step 2: in even rows only.
   Fails: BAD_ARGUMENT (length, events, ends, step). Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_spaced_evenly(int32_t length, int32_t events, int32_t ends, int32_t step,
                                                         latchwork_spacing *spacing, latchwork_error *error);
/* Its gaps in order: as many as events, one more unless in the round. Fails: as latchwork_spaced_evenly. Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_spacing_gaps(const latchwork_spacing *spacing, int32_t *gaps,
                                                        size_t capacity, size_t *needed, latchwork_error *error);
/* Stitches or rows worked before each event. Fails: as latchwork_spaced_evenly. Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_spacing_positions(const latchwork_spacing *spacing, int32_t *positions,
                                                             size_t capacity, size_t *needed, latchwork_error *error);
/* For people: "every 9th row 2 times, every 10th row 9 times". counted: LATCHWORK_COUNTED_... Fails: as
   latchwork_spaced_evenly; BAD_ARGUMENT (counted). Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_spacing_text(const latchwork_spacing *spacing, int32_t counted,
                                                            char *text, size_t capacity, size_t *needed,
                                                            latchwork_error *error);

/* ---- Shaping ----------------------------------------------------------------------------------------------------- */

/* How the points of an edge are joined. Since 0.1. */
enum {
  LATCHWORK_EDGE_LINE_STRAIGHT = 0, /* by straight lines: slopes */
  LATCHWORK_EDGE_LINE_CURVE = 1     /* by a smooth curve that passes no point's columns between two points */
};
/* What latchwork_panel_shaped does with a crossing or a stack that the edge cuts. Since 0.1. */
enum {
  LATCHWORK_CUT_WORK_REFUSE = 0, /* nothing is shaped: an error at the place */
  LATCHWORK_CUT_WORK_KNIT = 1    /* the crossing is left out, and its span, or the stack, is knitted plain */
};

#define LATCHWORK_MAX_EDGE_ITEMS 1000 /* most points, and most events, of one edge */

/* A point that an edge passes through. Never changes. Since 0.1. */
typedef struct latchwork_edge_point {
  double columns; /* in from the panel's edge, 0..W */
  int32_t row;    /* when the row counter reads this: 0 (the cast-on) to R */
} latchwork_edge_point;

/* Stitches that leave or join at an edge, some times over. One is a decrease or an increase, several are bound off or
   cast on. Never changes. Since 0.1. */
typedef struct latchwork_edge_event {
  int32_t row;      /* after this row the first time, 1..R-1 */
  int32_t stitches; /* that leave; below 0: that join; not 0 */
  int32_t every;    /* rows from one time to the next, 1 or more */
  int32_t times;    /* 1 or more */
} latchwork_edge_event;

/* Events spread over rows as those of an edge: `stitches` leave (below 0: join) after the row in which each stands,
   counted from row `above`. Like gaps become one event with its times. Fails: as latchwork_spaced_evenly; BAD_ARGUMENT
   (stitches for 0, above below 0); TOO_LARGE (spacing) for more than LATCHWORK_MAX_EDGE_ITEMS events. Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_spacing_edge_events(const latchwork_spacing *spacing, int32_t stitches,
                                                               int32_t above, latchwork_edge_event *events,
                                                               size_t capacity, size_t *needed,
                                                               latchwork_error *error);

/* One side edge, from the bottom up: points, or a start and events, not both. Neither: straight up. Since 0.1. */
typedef struct latchwork_edge_shape {
  uint32_t struct_size;
  int32_t line;                       /* LATCHWORK_EDGE_LINE_... */
  const latchwork_edge_point *points; /* rows never falling; two at one row are a step there */
  size_t point_count;
  const latchwork_edge_event *events;
  size_t event_count;
  int32_t start; /* columns in from the panel's edge in row 1, with events */
  int32_t reserved; /* 0; a later field takes its place */
} latchwork_edge_shape;
#define LATCHWORK_EDGE_SHAPE_INIT \
  { sizeof(latchwork_edge_shape), 0, NULL, 0, NULL, 0, 0, 0 }

/* The columns in work in one row, from the left on the RS. Never changes. Since 0.1. */
typedef struct latchwork_row_span {
  int32_t first;
  int32_t last;
} latchwork_row_span;

/* A panel's shape, row 1 first. The rows are the caller's. Since 0.1. */
typedef struct latchwork_outline {
  uint32_t struct_size;
  const latchwork_row_span *rows;
  size_t row_count;
} latchwork_outline;
#define LATCHWORK_OUTLINE_INIT \
  { sizeof(latchwork_outline), NULL, 0 }

/* What changes after a row. Never changes. Since 0.1. */
typedef struct latchwork_shaping_step {
  int32_t row;   /* after this row */
  int32_t left;  /* stitches that leave at the left edge on the RS; below 0: that join */
  int32_t right; /* at the right edge */
} latchwork_shaping_step;

/* Options of shaping. Since 0.1. */
typedef struct latchwork_shape_options {
  uint32_t struct_size;
  int32_t edge_stitches; /* columns at each edge whose cells are knitted plain all the way, 1..100; 0: one; -1: none; what crosses
                            them and is not cut is kept */
  int32_t cut;           /* LATCHWORK_CUT_WORK_... */
} latchwork_shape_options;
#define LATCHWORK_SHAPE_OPTIONS_INIT \
  { sizeof(latchwork_shape_options), 0, 0 }

/* The shape of rows x columns between two edges as seen on the RS; one row span a row. An edge of points lies in each
   row where the line is in its middle, rounded; with step 2 it changes after even rows only, and events have to be after
   such rows. Fails: BAD_ARGUMENT (rows,
   columns, step; left.points[2].row; left, right or outline with the row, for a row without a stitch too, or with
   none on a stitch of the row below: two pieces); TOO_LARGE. Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_outlined(int32_t rows, int32_t columns, const latchwork_edge_shape *left,
                                                    const latchwork_edge_shape *right, int32_t step,
                                                    latchwork_row_span *spans, size_t capacity, size_t *needed,
                                                    latchwork_error *error);
/* The shape that a grid has: the outermost stitches of each row. Fails: BAD_ARGUMENT (grid, with the row) for a row
   without a stitch, or with no column in common with the row below. Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_grid_outline_of(const latchwork_grid *grid, latchwork_row_span *spans,
                                                           size_t capacity, size_t *needed, latchwork_error *error);
/* What the shape does to the grid's hand work, worst first: CROSSING_CUT, STACK_CUT, and as advice COLUMN_CUT for hand cells
   and kept crossings in the edge stitches. Options may be NULL. Fails: BAD_ARGUMENT (outline with the
   row, edge_stitches, cut); SIZE_MISMATCH (outline). Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_grid_shape_findings(const latchwork_grid *grid,
                                                               const latchwork_outline *outline,
                                                               const latchwork_shape_options *options,
                                                               latchwork_findings **out, latchwork_error *error);
/* The panel in that shape: no stitch outside, knit in the edge stitches. Options may be NULL. Fails: as
   latchwork_grid_shape_findings; where cuts are refused CROSSING_CUT at the crossing, BAD_ARGUMENT (outline) at the
   stack. Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_panel_shaped(const latchwork_panel *panel, const latchwork_outline *outline,
                                                        const latchwork_shape_options *options, latchwork_panel **out,
                                                        latchwork_error *error);
/* Every change of a shape, from the bottom up. Fails: BAD_ARGUMENT (outline). Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_outline_shaping_steps(const latchwork_outline *outline,
                                                                 latchwork_shaping_step *steps, size_t capacity,
                                                                 size_t *needed, latchwork_error *error);
/* For people, a line each: "RC 12: decrease 1 at each side, then every 6th row 4 times."; edges that shape at different
   rows each by itself where that is shorter, the second with "Meanwhile". Fails: BAD_ARGUMENT (outline).
   Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_outline_text(const latchwork_outline *outline, char *text,
                                                            size_t capacity, size_t *needed, latchwork_error *error);
/* ---- Schematic drawings ------------------------------------------------------------------------------------------ */

/* On which side of the piece a measure's line is drawn. Since 0.1. */
enum {
  LATCHWORK_MEASURE_SIDE_BOTTOM = 0,
  LATCHWORK_MEASURE_SIDE_TOP = 1,
  LATCHWORK_MEASURE_SIDE_LEFT = 2,
  LATCHWORK_MEASURE_SIDE_RIGHT = 3
};

#define LATCHWORK_SCHEMATIC_MAX_PIECES 50
#define LATCHWORK_SCHEMATIC_MAX_SIZES 50
#define LATCHWORK_SCHEMATIC_MAX_POINTS 200000 /* of one outline */
#define LATCHWORK_SCHEMATIC_MAX_MEASURES 26   /* of one piece */

/* A corner of a piece's outline. Never changes. Since 0.1. */
typedef struct latchwork_outline_point {
  double x_mm; /* from the left on the RS, -1e6..1e6 */
  double y_mm; /* up from the cast-on, -1e6..1e6 */
} latchwork_outline_point;

/* One measure of a piece. Never changes. Since 0.1. */
typedef struct latchwork_schematic_measure {
  latchwork_outline_point start; /* a width is taken between the x of both, a height between the y */
  latchwork_outline_point end;
  double mm;               /* in the drawn size, 0..1e6; written, not taken from the points */
  const double *others_mm; /* in the other sizes, in order */
  size_t other_count;
  const char *label; /* "width at the cast-on"; NULL: "" */
  int32_t side;      /* LATCHWORK_MEASURE_SIDE_... */
} latchwork_schematic_measure;

/* An outline of a piece in another size: its corners in order. Never changes. Since 0.1. */
typedef struct latchwork_schematic_outline {
  const latchwork_outline_point *points;
  size_t point_count;
} latchwork_schematic_outline;

/* One panel off the machine. Never changes. Since 0.1. */
typedef struct latchwork_schematic_piece {
  const char *name;                       /* NULL: "" */
  const latchwork_outline_point *outline; /* its corners in order, three or more; its edges meet there alone */
  size_t outline_count;
  const latchwork_schematic_measure *measures;
  size_t measure_count;
  int32_t seam_left;  /* its left side is sewn to the piece before it: drawn edge to edge, the seam dashed */
  int32_t seam_right; /* its right side to the piece after it, likewise */
  const latchwork_schematic_outline *others; /* in the other sizes, in order, drawn thin: all of them, or NULL */
  size_t other_count;
  const char *const *notes; /* what its measures rest on: below the drawing, what two pieces say once */
  size_t note_count;
} latchwork_schematic_piece;

/* What a schematic drawing shows. All it points at is the caller's. Since 0.1. */
typedef struct latchwork_schematic {
  uint32_t struct_size;
  int32_t unit;             /* LATCHWORK_LENGTH_UNIT_CM, to one decimal, or _INCH, to a quarter; what is less than half of
                               that "under 0.05", "under 1/8" */
  const char *title;        /* NULL: "" */
  const char *const *sizes; /* their names, the drawn one first; none: one size without a name */
  size_t size_count;
  const latchwork_schematic_piece *pieces; /* from the left on the RS, one or more */
  size_t piece_count;
  const char *const *notes; /* lines for people, below the drawing */
  size_t note_count;
} latchwork_schematic;
#define LATCHWORK_SCHEMATIC_INIT \
  { sizeof(latchwork_schematic), LATCHWORK_LENGTH_UNIT_CM, NULL, NULL, 0, NULL, 0, NULL, 0 }

/* The drawing as SVG 1.1, black on white, to scale, every measure on it. A width of the first of pieces sewn together may
   go on over the others, whose place its x then counts on to. Fails: BAD_ARGUMENT (pieces,
   pieces[0].outline[2].x_mm, pieces[0].measures[1].others_mm, pieces[0].others, unit; pieces[0].outline[2] for an
   outline that crosses or touches itself or folds back there); TOO_LARGE; BAD_ENCODING. Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_schematic_svg(const latchwork_schematic *schematic, char *text,
                                                         size_t capacity, size_t *needed, latchwork_error *error);
/* A panel as a piece, between its seams as latchwork_panel_size measures it (options NULL: the defaults): its outline.
   Fails: NO_GAUGE (field: the texture); BAD_ARGUMENT (grid, with the row) for a row without a stitch, or without a column
   in common with the row below; (seam_right, with the row) for a row that its seams take wholly; as
   latchwork_panel_size. Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_panel_schematic_piece(const latchwork_panel *panel,
                                                                 const latchwork_swatch *swatch,
                                                                 const latchwork_size_options *options,
                                                                 latchwork_outline_point *outline, size_t capacity,
                                                                 size_t *needed, latchwork_error *error);
/* Its measures, without their labels (NULL). Fails: as latchwork_panel_schematic_piece. Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_panel_schematic_measures(const latchwork_panel *panel,
                                                                    const latchwork_swatch *swatch,
                                                                    const latchwork_size_options *options,
                                                                    latchwork_schematic_measure *measures,
                                                                    size_t capacity, size_t *needed,
                                                                    latchwork_error *error);
/* Its notes, one a line: which textures are measured by another's gauge; none for none. Fails: as
   latchwork_panel_schematic_piece. Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_panel_schematic_notes(const latchwork_panel *panel,
                                                                 const latchwork_swatch *swatch,
                                                                 const latchwork_size_options *options, char *text,
                                                                 size_t capacity, size_t *needed,
                                                                 latchwork_error *error);
/* The label of one of them. Fails: as latchwork_panel_schematic_piece. Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_panel_schematic_label(const latchwork_panel *panel,
                                                                 const latchwork_swatch *swatch,
                                                                 const latchwork_size_options *options, size_t index,
                                                                 char *text, size_t capacity, size_t *needed,
                                                                 latchwork_error *error);
/* One design in all its sizes, drawn at once: request and sizes are those that the grading was made of. The panels
   stand edge to edge as they are sewn, each as latchwork_panel_schematic_piece has it with the design's state,
   substitutes and seams; the first size is drawn, the others thin over it, lower edges in line, middles, each of all its
   panels, one above the other. Panels alike are measured once, heights on the last one; where there are two or more the
   first has the width of them all too; notes tell which textures are measured by another's gauge. `title` may be
   NULL. Fails: BAD_ARGUMENT (candidates for a grading without, or of other sizes; panels
   where sizes differ in them; unit for another than cm or inch; as latchwork_fitted); TOO_LARGE (panels); as
   latchwork_grade, latchwork_panel_schematic_piece
   and latchwork_schematic_svg. Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_graded_schematic_svg(const latchwork_fit_request *design,
                                                                const latchwork_grade_size *sizes, size_t count,
                                                                const latchwork_grading *grading,
                                                                const latchwork_swatch *swatch, const char *title,
                                                                int32_t unit, char *text, size_t capacity,
                                                                size_t *needed, latchwork_error *error);

/* ---- Plain knit, and how much yarn a panel takes ----------------------------------------------------------------- */

/* How far a cloth of plain knit has come to rest. Since 0.1. */
enum {
  LATCHWORK_PLAIN_STATE_DRY_RELAXED = 0,  /* off the machine and rested */
  LATCHWORK_PLAIN_STATE_WET_RELAXED = 1,  /* soaked and dried flat */
  LATCHWORK_PLAIN_STATE_FULLY_RELAXED = 2 /* washed with agitation */
};

/* Munden's constants: courses/cm = courses / l, wales/cm = wales / l, l the loop length in cm. Never changes. Since 0.1. */
typedef struct latchwork_plain_constants {
  double courses; /* Kc, 0.1..100 */
  double wales;   /* Kw, 0.1..100 */
} latchwork_plain_constants;

/* The constants of plain wool in a state; plain_knit.hpp names their sources. Fails: BAD_ARGUMENT (state). Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_plain_constants_of(int32_t state, latchwork_plain_constants *constants,
                                                              latchwork_error *error);
/* Loop length in mm of plain knit of that gauge, by its stitches or by its rows. Fails: BAD_ARGUMENT (counted, count,
   length_mm, courses, wales); BAD_VALUE, as latchwork_per_10cm. Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_plain_loop_mm(const latchwork_count_per_length *gauge,
                                                         const latchwork_plain_constants *constants, double *loop_mm,
                                                         latchwork_error *error);
/* Stitches or rows (LATCHWORK_COUNTED_...) per 10 cm of plain knit of that loop length, 0.1..1000 mm. Fails:
   BAD_ARGUMENT (counted, loop_mm, courses, wales). Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_plain_per_10cm(int32_t counted, double loop_mm,
                                                          const latchwork_plain_constants *constants, double *value,
                                                          latchwork_error *error);
/* Tightness, sqrt(tex) / loop length in mm; the other custom, per cm, is ten times this. Fails: BAD_ARGUMENT (system,
   number, plies, loop_mm); BAD_VALUE, as latchwork_yarn_tex. Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_tightness_factor(const latchwork_yarn_number *yarn, double loop_mm,
                                                            double *value, latchwork_error *error);
/* Weight of a cloth in g/m2. Fails: BAD_ARGUMENT (stitches, rows for counts of the other, count, length_mm, loop_mm,
   system, number, plies); BAD_VALUE, as latchwork_per_10cm and latchwork_yarn_tex. Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_area_density_g_m2(const latchwork_count_per_length *stitches,
                                                             const latchwork_count_per_length *rows, double loop_mm,
                                                             const latchwork_yarn_number *yarn, double *value,
                                                             latchwork_error *error);

/* How a need of yarn was found; the formulas and their spreads are in yarn_need.hpp. Since 0.1. */
enum {
  LATCHWORK_YARN_ROUTE_WEIGHED_AREA = 0,     /* from weighed swatches, by area */
  LATCHWORK_YARN_ROUTE_WEIGHED_STITCHES = 1, /* from weighed swatches, by stitches; needs no gauge */
  LATCHWORK_YARN_ROUTE_MEASURED_LOOPS = 2,   /* from the length of unravelled stitches; needs no gauge */
  LATCHWORK_YARN_ROUTE_PLAIN_GEOMETRY = 3    /* from the gauge of plain knit, for stockinette only */
};

#define LATCHWORK_YARN_REQUEST_MAX_YARNS 100
#define LATCHWORK_YARN_REQUEST_MAX_ITEMS 50000 /* of each other list */

/* What a need of yarn is reckoned from, as it stood in a file. Since 0.1. */
typedef struct latchwork_yarn_file latchwork_yarn_file;
/* A need of yarn, by every route that can be gone. */
typedef struct latchwork_yarn_need latchwork_yarn_need;

/* A swatch of one texture that was weighed: width and height, or stitches and rows, or both. The texts of this and the
   next two are the caller's, copied. Elements of arrays. Since 0.1. */
typedef struct latchwork_weighed_swatch {
  const char *texture;
  double weight_g;  /* 1e-3..1e6 */
  double scale_g;   /* the step of the scale it was weighed on, 0..1e6; 0: finer than matters */
  double width_mm;  /* in `state`; 1..1e5, or 0 with height_mm */
  double height_mm; /* 1..1e5, or 0 */
  double stitches;  /* columns of its chart, 1..1e6, or 0 with rows */
  double rows;      /* 1..1e6, or 0 */
  double tex;       /* of all its strands together, 1e-3..1e9; 0: of the yarns of the panel's first row */
  int32_t state;    /* LATCHWORK_CLOTH_STATE_... when width and height were measured; its gauge goes with them */
} latchwork_weighed_swatch;

/* Stitches of one texture that were unravelled, and the length of yarn they gave. Since 0.1. */
typedef struct latchwork_measured_loops {
  const char *texture;
  double stitches;  /* 1..1e9: places of the chart, columns times rows */
  double length_mm; /* of one strand, pulled straight; 0.1..1e9 */
} latchwork_measured_loops;

/* A yarn of the work. Since 0.1. */
typedef struct latchwork_yarn {
  const char *name;             /* NULL: "" */
  latchwork_yarn_number number; /* number 0: not known, for one yarn alone and weighed swatches */
  double ball_g;                /* as sold, 1e-3..1e6; 0: not sold by the ball */
} latchwork_yarn;

/* Rows that one yarn is knitted in. Where the rows of several meet, they are knitted together. Since 0.1. */
typedef struct latchwork_yarn_rows {
  int32_t first; /* 1..R */
  int32_t last;  /* first..R; 0: R */
  int32_t yarn;  /* index into the request's yarns */
} latchwork_yarn_rows;

/* What a need of yarn is reckoned from. Data: begin with latchwork_yarn_request_default(). Since 0.1. */
typedef struct latchwork_yarn_request {
  uint32_t struct_size;
  int32_t pieces;                         /* panels alike, 1..10000 */
  int32_t waste_yarn;                     /* index; -1: the yarns of row 1 */
  int32_t seam_yarn;                      /* index */
  int32_t state;                          /* LATCHWORK_CLOTH_STATE_... of plain geometry's gauges */
  const latchwork_yarn *yarns;            /* one or more */
  size_t yarn_count;
  const latchwork_yarn_rows *rows;        /* none: all yarns in all rows */
  size_t row_count;
  const latchwork_weighed_swatch *weighed;
  size_t weighed_count;
  const latchwork_measured_loops *loops;
  size_t loop_count;
  const latchwork_substitute *substitutes;
  size_t substitute_count;
  latchwork_plain_constants plain;        /* both 0: by the state of each gauge */
  double cast_on_rows;                    /* yarn of the cast-on, in rows like row 1; 0..1000 */
  double bind_off_rows;                   /* yarn of the bind-off, in rows like the last; 0..1000. Neither counts what is
                                             cast on or bound off at a shaped edge: the allowance holds it */
  double waste_rows;                      /* knitted beside the panel, in rows like row 1; 0..1e6 */
  double seam_mm;                         /* seams of the whole article, 0..1e6 */
  double seam_ratio;                      /* sewing yarn for a length of seam, 1..20 */
  double sureness;                        /* in standard deviations of a normal error, 0..6: 2 is enough in 97.7 of 100 */
  double allowance;                       /* share on top of that, 0..2 */
} latchwork_yarn_request;
#define LATCHWORK_YARN_REQUEST_INIT                                                                        \
  { sizeof(latchwork_yarn_request), 0, 0, 0, 0, NULL, 0, NULL, 0, NULL, 0, NULL, 0, NULL, 0, { 0.0, 0.0 }, 0.0, \
    0.0, 0.0, 0.0, 0.0, 0.0, 0.0 }

/* One yarn's part of a need. An element of arrays. Since 0.1. */
typedef struct latchwork_yarn_share {
  double weight_g; /* the mean, without allowance */
  double spread_g; /* one standard deviation of it */
  double margin_g; /* what goes on top of weight_g for the sureness asked for */
  double length_m; /* 0 where the yarn's number is not known */
  double buy_g;    /* (weight_g + margin_g) * (1 + allowance) */
  int32_t yarn;    /* index into the request's yarns */
  int32_t balls;   /* whole balls that hold buy_g; 0 where it is not sold by the ball */
} latchwork_yarn_share;

/* The need by one route, of all yarns. An element of arrays. Since 0.1. */
typedef struct latchwork_yarn_estimate {
  double weight_g;
  double spread_g; /* one standard deviation of it */
  double margin_g; /* as latchwork_yarn_share has it, of all yarns together */
  double length_m; /* 0 where not known */
  int32_t route;   /* LATCHWORK_YARN_ROUTE_... */
  int32_t spread_known; /* every figure it rests on was measured twice or more, gauges too */
} latchwork_yarn_estimate;

/* Fills `request` with the defaults: one piece, a row each for cast-on and bind-off, seams of three times their length,
   a sureness of two standard deviations, a tenth on top; no yarns. Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_yarn_request_default(latchwork_yarn_request *request,
                                                                latchwork_error *error);
/* A file of its own, equal to this one. Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_yarn_file_copy(const latchwork_yarn_file *file, latchwork_yarn_file **out,
                                                          latchwork_error *error);
/* *equal is 1 when all members are the same, else 0. Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_yarn_file_equal(const latchwork_yarn_file *file,
                                                           const latchwork_yarn_file *other, int32_t *equal,
                                                           latchwork_error *error);
/* Frees it; NULL is fine. Since 0.1. */
LATCHWORK_C_API void latchwork_yarn_file_destroy(latchwork_yarn_file *file);
/* What it holds; its arrays and texts live as long as the file. Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_yarn_file_request(const latchwork_yarn_file *file,
                                                             latchwork_yarn_request *request, latchwork_error *error);
/* Yarn for a panel. A texture without a figure bars a route, unless a substitute is named for it; none is built in.
   Fails: BAD_ARGUMENT (yarns, rows[1].last, weighed[0].weight_g); BAD_ENCODING (yarns[0].name); TOO_LARGE. Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_panel_yarn_need(const latchwork_panel *panel, const latchwork_swatch *swatch,
                                                           const latchwork_yarn_request *request,
                                                           latchwork_yarn_need **out, latchwork_error *error);
/* A need of its own, equal to this one. Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_yarn_need_copy(const latchwork_yarn_need *need, latchwork_yarn_need **out,
                                                          latchwork_error *error);
/* *equal is 1 when all estimates and texts are the same, else 0. Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_yarn_need_equal(const latchwork_yarn_need *need,
                                                           const latchwork_yarn_need *other, int32_t *equal,
                                                           latchwork_error *error);
/* Frees it; NULL is fine. Since 0.1. */
LATCHWORK_C_API void latchwork_yarn_need_destroy(latchwork_yarn_need *need);
/* The estimates in the order of LATCHWORK_YARN_ROUTE_...; none when no route can be gone. Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_yarn_need_estimates(const latchwork_yarn_need *need,
                                                               latchwork_yarn_estimate *estimates, size_t capacity,
                                                               size_t *needed, latchwork_error *error);
/* Each yarn's share of the estimate at `index`. Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_yarn_need_shares(const latchwork_yarn_need *need, size_t index,
                                                            latchwork_yarn_share *shares, size_t capacity,
                                                            size_t *needed, latchwork_error *error);
/* The notes on the estimate at `index` for people, one a line; "" for none. Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_yarn_need_notes(const latchwork_yarn_need *need, size_t index, char *text,
                                                           size_t capacity, size_t *needed, latchwork_error *error);
/* How far apart the estimates are: (greatest - least weight) / mean of them; 0 for one or none. Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_yarn_need_apart(const latchwork_yarn_need *need, double *apart,
                                                           latchwork_error *error);
/* *index is that of the estimate to buy by, for all yarns, or -1 where there is none: the one with the narrowest margin
   among those whose spread is known; where others, known or not, give more than that and both margins explain, the
   dearest of them, and where no spread is known the dearest of all; geometry of plain knit only where it is the only one
   (YarnNeed::decides in yarn_need.hpp). Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_yarn_need_decides(const latchwork_yarn_need *need, int32_t *index,
                                                             latchwork_error *error);
/* The route that decides, and by which rule, for people; "" where none does. Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_yarn_need_why(const latchwork_yarn_need *need, char *text, size_t capacity,
                                                         size_t *needed, latchwork_error *error);
/* Why each other route cannot be gone, one a line; "" when all can. Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_yarn_need_missing(const latchwork_yarn_need *need, char *text,
                                                             size_t capacity, size_t *needed, latchwork_error *error);
/* Routes that are further apart than their spreads explain, one a line; "" for none. Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_yarn_need_warnings(const latchwork_yarn_need *need, char *text,
                                                              size_t capacity, size_t *needed, latchwork_error *error);

/* ---- Files: JSON (RFC 8259, UTF-8), with "format" and "version" first -------------------------------------------- */

/* Readers check the whole text before anything is made and fail with line and field: TOO_LARGE (above
   LATCHWORK_MAX_FILE_BYTES), BAD_ENCODING, BAD_SYNTAX, WRONG_FORMAT, NEWER_VERSION, DUPLICATE_KEY, MISSING_FIELD,
   UNKNOWN_FIELD, BAD_VALUE, BAD_LETTER, SIZE_MISMATCH, and as the types' own checks do. What is written reads back to an
   equal value; writers fail with BAD_VALUE or BAD_ENCODING (field) rather than write what no reader takes. */

#define LATCHWORK_MAX_FILE_BYTES 67108864   /* of a JSON file */
#define LATCHWORK_MAX_SWATCH_BYTES 67108864 /* of a swatch file */

/* "latchwork-grid", version 1. Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_read_grid(const char *text, size_t size, latchwork_grid **out,
                                                     latchwork_error *error);
/* "latchwork-strip", version 1. Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_read_strip(const char *text, size_t size, latchwork_strip **out,
                                                      latchwork_error *error);
/* "latchwork-panel", version 1: parts by motif, or cells in full. Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_read_panel(const char *text, size_t size, latchwork_panel **out,
                                                      latchwork_error *error);
/* "latchwork-machine", version 1: a machine and efforts; `effort` may be NULL. Fails also: TOO_LARGE for a name or tools
   that latchwork_machine cannot hold. Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_read_machine(const char *text, size_t size, latchwork_machine *machine,
                                                        latchwork_effort *effort, latchwork_error *error);
/* "latchwork-certificate", version 1. Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_read_certificate(const char *text, size_t size, latchwork_certificate **out,
                                                            latchwork_error *error);
/* "latchwork-yarn", version 1. Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_read_yarn_request(const char *text, size_t size, latchwork_yarn_file **out,
                                                             latchwork_error *error);
/* "latchwork-plan", version 1. Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_read_plan(const char *text, size_t size, latchwork_plan **out,
                                                     latchwork_error *error);
/* The grid as JSON. Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_grid_write(const latchwork_grid *grid, char *text, size_t capacity,
                                                      size_t *needed, latchwork_error *error);
/* The strip as JSON. Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_strip_write(const latchwork_strip *strip, char *text, size_t capacity,
                                                       size_t *needed, latchwork_error *error);
/* The panel as JSON, always cells in full. Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_panel_write(const latchwork_panel *panel, char *text, size_t capacity,
                                                       size_t *needed, latchwork_error *error);
/* The machine and efforts (may be NULL) as JSON. Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_machine_write(const latchwork_machine *machine,
                                                         const latchwork_effort *effort, char *text, size_t capacity,
                                                         size_t *needed, latchwork_error *error);
/* The JSON of a request. Fails: BAD_VALUE or BAD_ENCODING (field) for what no reader takes. Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_yarn_request_write(const latchwork_yarn_request *request, char *text,
                                                              size_t capacity, size_t *needed, latchwork_error *error);
/* The plan as JSON. Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_plan_write(const latchwork_plan *plan, char *text, size_t capacity,
                                                      size_t *needed, latchwork_error *error);
/* The certificate as JSON. Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_certificate_write(const latchwork_certificate *certificate, char *text,
                                                             size_t capacity, size_t *needed, latchwork_error *error);

/* ---- Things to make: articles ------------------------------------------------------------------------------------ */

/* What the measures of a size list are taken on. Since 0.1. */
enum {
  LATCHWORK_SIZE_OF_FINISHED = 0, /* the finished article */
  LATCHWORK_SIZE_OF_FILLING = 1,  /* what goes into it: a cushion's insert. A rule tells the article's measures */
  LATCHWORK_SIZE_OF_BODY = 2      /* the wearer's body, without ease */
};

/* How an opening is closed. Since 0.1. */
enum {
  LATCHWORK_CLOSURE_KIND_OPEN = 0,
  LATCHWORK_CLOSURE_KIND_OVERLAP = 1,
  LATCHWORK_CLOSURE_KIND_SEAM = 2,
  LATCHWORK_CLOSURE_KIND_BUTTONS = 3
};

/* What becomes of an edge of a piece. Since 0.1. */
enum {
  LATCHWORK_EDGE_USE_FREE = 0,   /* seen: nothing is sewn to it */
  LATCHWORK_EDGE_USE_SEAMED = 1, /* sewn to another edge, all of it or a part: a seam allowance is lost there */
  LATCHWORK_EDGE_USE_CLOSURE = 2 /* at the opening: buttoned, lapped, or left open */
};

/* How a figure or a statement is known. Since 0.1. */
enum {
  LATCHWORK_SOURCE_MARK_PUBLISHED = 0,   /* its source prints it */
  LATCHWORK_SOURCE_MARK_FROM_MEMORY = 1, /* its source is said to, and was not at hand */
  LATCHWORK_SOURCE_MARK_PRACTICE = 2     /* common practice, no source */
};

#define LATCHWORK_ARTICLE_MAX_ITEMS 1000 /* of each list */

/* An article as it stood in a file, or as it comes with the library. Since 0.1. */
typedef struct latchwork_article_file latchwork_article_file;
/* What an article comes to under the choices made. Since 0.1. */
typedef struct latchwork_targets latchwork_targets;

/* A length that was measured or is to be met. The texts of this and of all structs below are the caller's, copied, or
   live as long as the handle that gave them; NULL is "". An element of arrays. Since 0.1. */
typedef struct latchwork_named_measure {
  const char *name;    /* "width", "height", "chest", "ease": what terms refer to */
  double least_mm;     /* 1..1e5 in a size; in choices as far as its input goes */
  double greatest_mm;  /* least_mm..1e5 */
  const char *printed; /* in a size as its source prints it: "28-30 in"; not read in choices */
  const char *of;      /* in a size: the input that it is, "wearer's height", with from least_mm to greatest_mm,
                          -1e5..1e5, on top; NULL: these alone. Not read in choices */
} latchwork_named_measure;

/* A size of a list. An element of arrays. Since 0.1. */
typedef struct latchwork_article_size {
  const char *name; /* "12 months", "18 in"; unlike the others of its list */
  const latchwork_named_measure *measures;
  size_t measure_count;
} latchwork_article_size;

/* Sizes that one source prints. An element of arrays. Since 0.1. */
typedef struct latchwork_size_list {
  const char *name; /* unlike the other lists of the article */
  const char *source;
  int32_t mark; /* LATCHWORK_SOURCE_MARK_... */
  int32_t of;   /* LATCHWORK_SIZE_OF_... */
  const latchwork_article_size *sizes; /* one or more */
  size_t size_count;
} latchwork_size_list;

/* `times` a measure. An element of arrays. Since 0.1. */
typedef struct latchwork_length_term {
  const char *of; /* a measure of the chosen size, an input, or "overlap", the closure's */
  double times;   /* -100..100 */
} latchwork_length_term;

/* A length: the sum of its terms, and from least_mm to greatest_mm on top; all that over the product of the counts in
   `over`. Without terms it is the range itself. Never changes. Since 0.1. */
typedef struct latchwork_extent {
  const latchwork_length_term *terms;
  size_t term_count;
  double least_mm;    /* -1e5..1e5 */
  double greatest_mm; /* least_mm..1e5 */
  const char *const *over;
  size_t over_count;
} latchwork_extent;

/* A point of a piece's shaping: its width at a height, changing evenly from the point before. An element of arrays.
   Since 0.1. */
typedef struct latchwork_shape_point {
  latchwork_extent height; /* above the lower edge: from that of the point before to the piece's length */
  latchwork_extent width;  /* 1..1e5 mm */
} latchwork_shape_point;

/* A piece of an article, knitted flat from its lower edge. An element of arrays. Since 0.1. */
typedef struct latchwork_article_piece {
  const char *name;
  const char *const *times; /* names of the article's counts */
  size_t time_count;
  const char *across;      /* a count: so many side by side, sewn to each other; "": one */
  const char *up;          /* a count: so many one above the other, sewn to each other; "": one */
  latchwork_extent width;  /* of one, between the seams, at its lower edge: what a seam takes is not in it */
  latchwork_extent length; /* of one, likewise */
  int32_t count;           /* 1..1000; multiplied by the counts in `times` */
  int32_t left;            /* LATCHWORK_EDGE_USE_..., as seen from the RS; of several the outer edge of them all */
  int32_t right;
  int32_t lower;
  int32_t upper;
  const latchwork_shape_point *shape; /* from below, the lower edge left out; none: straight */
  size_t shape_count;
  const char *const *closures; /* only with these closures; none: with any */
  size_t closure_count;
} latchwork_article_piece;

/* Seams alike. An element of arrays. Since 0.1. */
typedef struct latchwork_article_seam {
  const char *name;
  const char *const *times; /* names of the article's counts: so often each */
  size_t time_count;
  const char *const *between; /* names of counts: once less than each, as seams between panels are */
  size_t between_count;
  latchwork_extent length;
  const char *const *closures; /* only with these closures; none: with any */
  size_t closure_count;
  int32_t count; /* 1..1000 */
} latchwork_article_seam;

/* A way to close the article. An element of arrays. Since 0.1. */
typedef struct latchwork_closure {
  const char *name;
  const char *source;
  double overlap_least_mm;    /* 0..1e4: how far one edge lies over the other; 0 for a seam */
  double overlap_greatest_mm; /* overlap_least_mm..1e4 */
  int32_t kind;               /* LATCHWORK_CLOSURE_KIND_... */
  int32_t mark;               /* LATCHWORK_SOURCE_MARK_... */
} latchwork_closure;

/* A filling of one size and the article that it goes into, along one side. An element of arrays. Since 0.1. */
typedef struct latchwork_rule_pair {
  double filling_mm;  /* 1..1e5 */
  double finished_mm; /* 1..1e5 */
} latchwork_rule_pair;

/* How much larger the filling is than the finished article, along each side. An article is square where all its measures
   are alike; a rule is for squares, for oblongs or for both. An element of arrays. Since 0.1. */
typedef struct latchwork_filling_rule {
  const char *name;
  const char *source;
  double larger_least_mm;           /* -1e4..1e4; 0 with pairs */
  double larger_greatest_mm;        /* larger_least_mm..1e4; 0 with pairs */
  const latchwork_rule_pair *pairs; /* a graded rule: it knows these sizes and no others */
  size_t pair_count;
  int32_t mark;         /* LATCHWORK_SOURCE_MARK_... */
  int32_t squares_only; /* 1: it is for squares */
  int32_t oblongs_only; /* 1: it is for what is not square; not both */
} latchwork_filling_rule;

/* A length that no list gives, so the caller does: ease, the length of a garment. One that only sizes refer to is wanted
   where the chosen size does. An element of arrays. Since 0.1. */
typedef struct latchwork_article_input {
  const char *name;
  const char *meaning;
  double least_mm;    /* -1e5..1e5: the least that makes sense */
  double greatest_mm; /* least_mm..1e5 */
} latchwork_article_input;

/* A number that the caller gives: panels across. An element of arrays. Since 0.1. */
typedef struct latchwork_article_count {
  const char *name;
  const char *meaning;
  int32_t least;    /* 1..1000 */
  int32_t greatest; /* least..1000 */
} latchwork_article_count;

/* What may hurt someone, and what to defer to. An element of arrays. Since 0.1. */
typedef struct latchwork_caution {
  const char *text;
  const char *source;
  int32_t mark; /* LATCHWORK_SOURCE_MARK_... */
} latchwork_caution;

/* A thing to make, as data. All it points at is the caller's, or the file's that gave it. Since 0.1. */
typedef struct latchwork_article {
  uint32_t struct_size;
  const char *name;
  const char *const *measures; /* what a size must give: "width", "height"; none is called "overlap" */
  size_t measure_count;
  const latchwork_size_list *lists; /* published sizes */
  size_t list_count;
  const latchwork_article_input *inputs;
  size_t input_count;
  const latchwork_article_count *counts;
  size_t count_count;
  const latchwork_closure *closures; /* none: nothing to close */
  size_t closure_count;
  const latchwork_filling_rule *rules; /* none: nothing to fill */
  size_t rule_count;
  const latchwork_article_piece *pieces; /* one or more */
  size_t piece_count;
  const latchwork_article_seam *seams;
  size_t seam_count;
  const latchwork_caution *cautions;
  size_t caution_count;
} latchwork_article;
#define LATCHWORK_ARTICLE_INIT                                                                              \
  { sizeof(latchwork_article), NULL, NULL, 0, NULL, 0, NULL, 0, NULL, 0, NULL, 0, NULL, 0, NULL, 0, NULL, 0, NULL, 0 }

/* A number under a name. An element of arrays. Since 0.1. */
typedef struct latchwork_named_count {
  const char *name;
  int32_t count;
} latchwork_named_count;

/* What the caller chooses. Nothing is chosen for them: where sources disagree each is offered by its name. Options: 0 and
   NULL are none. Since 0.1. */
typedef struct latchwork_article_choices {
  uint32_t struct_size;
  const char *list;    /* a name of the article's lists; none, with `size`: every measure stands in `measures` */
  const char *size;    /* a name of that list */
  const char *rule;    /* a name of the article's rules; none where there are none */
  const char *closure; /* a name of the article's closures; none where there are none */
  /* Own measures of the finished article or body, where no list is chosen; every input that is wanted; and "overlap",
     0..1e4 mm, for how far the edges lie over each other in place of the closure's own figures, but of a seam's. */
  const latchwork_named_measure *measures;
  size_t measure_count;
  const latchwork_named_count *counts; /* every count */
  size_t count_count;
  int32_t measures_of_filling; /* 1: own measures are of the filling that there is: the rule makes the article */
} latchwork_article_choices;
#define LATCHWORK_ARTICLE_CHOICES_INIT \
  { sizeof(latchwork_article_choices), NULL, NULL, NULL, NULL, NULL, 0, NULL, 0, 0 }

/* A point of a shape, in mm. An element of arrays. Since 0.1. */
typedef struct latchwork_target_point {
  double height_least_mm;
  double height_greatest_mm;
  double width_least_mm;
  double width_greatest_mm;
} latchwork_target_point;

/* A piece to be fitted. Of pieces sewn to each other those with other edges stand apart: "panel, lower left". An element
   of arrays. Since 0.1. */
typedef struct latchwork_target_piece {
  const char *name;
  double width_least_mm;
  double width_greatest_mm;
  double length_least_mm;
  double length_greatest_mm;
  int32_t count;
  int32_t left; /* LATCHWORK_EDGE_USE_..., as seen from the RS */
  int32_t right;
  int32_t lower;
  int32_t upper;
} latchwork_target_piece;

/* Seams to be sewn. An element of arrays. Since 0.1. */
typedef struct latchwork_target_seam {
  const char *name;
  double least_mm; /* of one */
  double greatest_mm;
  int32_t count;
} latchwork_target_seam;

/* Names of the articles that come with the library, one a line, in a fixed order: cushion cover, blanket of panels, scarf,
   bag panel, straight garment pieces. Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_article_names(char *text, size_t capacity, size_t *needed,
                                                         latchwork_error *error);
/* One of them. Fails: BAD_ARGUMENT (name), which names them all. Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_built_in_article(const char *name, latchwork_article_file **out,
                                                            latchwork_error *error);
/* "latchwork-article", version 1. Fails with line and field: TOO_LARGE, BAD_ENCODING, BAD_SYNTAX, WRONG_FORMAT,
   NEWER_VERSION, DUPLICATE_KEY, MISSING_FIELD, UNKNOWN_FIELD, BAD_VALUE; BAD_ARGUMENT for what
   latchwork_article_targets() refuses in an article. Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_read_article(const char *text, size_t size, latchwork_article_file **out,
                                                        latchwork_error *error);
/* A file of its own, equal to this one. Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_article_file_copy(const latchwork_article_file *file,
                                                             latchwork_article_file **out, latchwork_error *error);
/* *equal is 1 when all members are the same, else 0. Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_article_file_equal(const latchwork_article_file *file,
                                                              const latchwork_article_file *other, int32_t *equal,
                                                              latchwork_error *error);
/* Frees it; NULL is fine. Since 0.1. */
LATCHWORK_C_API void latchwork_article_file_destroy(latchwork_article_file *file);
/* What it holds; its arrays and texts live as long as the file. Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_article_file_article(const latchwork_article_file *file,
                                                                latchwork_article *article, latchwork_error *error);
/* The JSON that latchwork_read_article() reads back to an equal article. What no reader takes is refused as by the other
   writers of files, with its field: pieces[0].width.terms[1].of. Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_article_write(const latchwork_article *article, char *text, size_t capacity,
                                                         size_t *needed, latchwork_error *error);
/* Pieces with their sizes, seams, filling and cautions; article.hpp has the rules. Fails: BAD_ARGUMENT for an article that
   contradicts itself or is out of its ranges (pieces[0].width.terms[1].of), and for a choice that is missing, unknown, out
   of its range or not wanted (choices.list, choices.measures[2].least_mm): so too for a size that a graded rule does not
   know, and where a piece comes out without a width and length of 1..1e5 mm, a shape that does not rise within it, or a
   seam of less than 0 mm; BAD_ENCODING (field) for a text of the article that is not UTF-8. Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_article_targets(const latchwork_article *article,
                                                           const latchwork_article_choices *choices,
                                                           latchwork_targets **out, latchwork_error *error);
/* Targets of their own, equal to these. Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_targets_copy(const latchwork_targets *targets, latchwork_targets **out,
                                                        latchwork_error *error);
/* *equal is 1 when all members are the same, else 0. Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_targets_equal(const latchwork_targets *targets,
                                                         const latchwork_targets *other, int32_t *equal,
                                                         latchwork_error *error);
/* Frees them; NULL is fine. Since 0.1. */
LATCHWORK_C_API void latchwork_targets_destroy(latchwork_targets *targets);
/* The pieces; their texts live as long as the targets, as those of the next five do. Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_targets_pieces(const latchwork_targets *targets,
                                                          latchwork_target_piece *pieces, size_t capacity,
                                                          size_t *needed, latchwork_error *error);
/* The shape of the piece at `index`, from below; none: straight. Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_targets_shape(const latchwork_targets *targets, size_t index,
                                                         latchwork_target_point *points, size_t capacity,
                                                         size_t *needed, latchwork_error *error);
/* The seams. Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_targets_seams(const latchwork_targets *targets,
                                                         latchwork_target_seam *seams, size_t capacity, size_t *needed,
                                                         latchwork_error *error);
/* What is filled in, by the article's measures; none where nothing is. Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_targets_filling(const latchwork_targets *targets,
                                                           latchwork_named_measure *filling, size_t capacity,
                                                           size_t *needed, latchwork_error *error);
/* All of the article's cautions. Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_targets_cautions(const latchwork_targets *targets,
                                                            latchwork_caution *cautions, size_t capacity,
                                                            size_t *needed, latchwork_error *error);
/* For people, one a line: where list, rule and closure come from. Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_targets_sources(const latchwork_targets *targets, char *text,
                                                           size_t capacity, size_t *needed, latchwork_error *error);
/* Of all seams together, at least. Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_targets_seam_least_mm(const latchwork_targets *targets, double *mm,
                                                                 latchwork_error *error);
/* Of all seams together, at most. Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_targets_seam_greatest_mm(const latchwork_targets *targets, double *mm,
                                                                    latchwork_error *error);

/* ---- From an article to panels that make it ---------------------------------------------------------------------- */

/* Fills `request` with the design, the piece for its target. The width is the piece's, where it is shaped (`shape`,
   shape_count points, NULL for none) that of its widest place, since the shape is cut from it; the height is its length.
   The design's seam_left, seam_right, seam_bottom and seam_top stay where the piece's edge is seamed, and are 0 where it is
   free or at the opening; its targets are not read. What the design points at, the request points at too. Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_piece_request(const latchwork_target_piece *piece,
                                                         const latchwork_target_point *shape, size_t shape_count,
                                                         const latchwork_fit_request *design,
                                                         latchwork_fit_request *request, latchwork_error *error);
/* latchwork_fit() of that request, in one call. options may be NULL. Fails: as latchwork_fit. Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_fit_piece(const latchwork_target_piece *piece,
                                                     const latchwork_target_point *shape, size_t shape_count,
                                                     const latchwork_fit_request *design,
                                                     const latchwork_swatch *swatch,
                                                     const latchwork_fit_options *options, latchwork_fit_result **out,
                                                     latchwork_error *error);

/* The shape of a piece on a panel that is to make it, for latchwork_panel_shaped: one row span a row, at the panel's own
   gauges, in the middle of each range, half of what the panel has too much outside at each side, to the nearest column.
   A point at the piece's length is at the panel's last row. The seams of `options` (NULL: the defaults) are read where the
   piece's edge is seamed. With step 2 (3, ...) the edges change after multiples of it only, when the carriage stands where
   it stood at the cast-on. Fails: NO_GAUGE (field = texture); BAD_ARGUMENT (piece.width_least_mm or
   piece.shape[1].width_least_mm with the row where the piece is wider than the panel, piece.shape[1].height_least_mm where
   it is higher; those and ..._greatest_mm for what is no range or does not rise; step; outline with the row where no stitch
   is left; as latchwork_panel_size); TOO_LARGE. Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_piece_outline(const latchwork_target_piece *piece,
                                                         const latchwork_target_point *shape, size_t shape_count,
                                                         const latchwork_panel *panel, const latchwork_swatch *swatch,
                                                         const latchwork_size_options *options, int32_t step,
                                                         latchwork_row_span *spans, size_t capacity, size_t *needed,
                                                         latchwork_error *error);

/* A panel that a piece is knitted of: latchwork_fitted() of its request, cut to the piece's shape (`shape`, shape_count
   points, NULL for none) by latchwork_piece_outline(), measured by the design's state, substitutes and seams; its targets
   are not read. Of a piece sewn of several panels the outer ones have its edges, and what lies between them stays whole.
   step: 1, or as in latchwork_piece_outline; options may be NULL. Fails: as latchwork_fitted, latchwork_piece_outline and
   latchwork_panel_shaped. Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_fitted_piece(const latchwork_target_piece *piece,
                                                        const latchwork_target_point *shape, size_t shape_count,
                                                        const latchwork_fit_request *design,
                                                        const latchwork_fit_candidate *candidate,
                                                        const latchwork_swatch *swatch, int32_t panel, int32_t step,
                                                        const latchwork_shape_options *options, latchwork_panel **out,
                                                        latchwork_error *error);

/* Neighbouring strips of a panel that stand together so many times. An element of arrays. Since 0.1. */
typedef struct latchwork_strip_run {
  int32_t first; /* index of the first, from the left on the RS, 0..65536 */
  int32_t last;  /* index of the last, first..65536 */
  int32_t least; /* times, 0..65536 */
  int32_t most;  /* least..65536 */
  int32_t tied;  /* as in latchwork_fit_group, also in what is read: 0: free */
  int32_t as_group;
} latchwork_strip_run;
/* The first strip, once, free. */
#define LATCHWORK_STRIP_RUN_INIT { 0, 0, 1, 1, 0, 0 }

#define LATCHWORK_ARTICLE_REQUEST_MAX_PIECES 1000
#define LATCHWORK_ARTICLE_REQUEST_MAX_SEAM_MS_PER_M 86400000

/* An article to be made of a panel: what is chosen, and what may vary. Options: 0 and NULL are none; LATCHWORK_..._INIT
   names no edge. Since 0.1. */
typedef struct latchwork_article_request {
  uint32_t struct_size;
  int32_t edge;        /* index of the strip whose first column is the edge; -1: no edge */
  const char *article; /* a name of latchwork_article_names(), or a file in a brief's folder, "bolster.json" */
  const latchwork_article_choices *choices; /* NULL: none */
  const char *const *made; /* names of the article's pieces that are made as the panel, none twice; none: all */
  size_t made_count;
  const latchwork_strip_run *groups; /* at most 8; none: all strips once, but for the outermost two where there is an edge */
  size_t group_count;
  const latchwork_fit_request *design; /* what may vary, and seams; its targets, groups and edge are not read. NULL: the
                                          defaults */
  int64_t seam_ms_per_m; /* how long a metre of seam takes to sew up, in ms, 0..LATCHWORK_ARTICLE_REQUEST_MAX_SEAM_MS_PER_M,
                            for an article's hours; 0: not known, and sewing up is left out of them */
} latchwork_article_request;
#define LATCHWORK_ARTICLE_REQUEST_INIT \
  { sizeof(latchwork_article_request), -1, NULL, NULL, NULL, 0, NULL, 0, NULL, 0 }

/* A piece held against the panel. An element of arrays. Since 0.1. */
typedef struct latchwork_piece_fit {
  latchwork_target_piece target;
  latchwork_fit_candidate as_it_stands; /* the panel as it is: panels (1), columns, rows, width, height and their errors */
} latchwork_piece_fit;

/* A request as it stood in a file. Since 0.1. */
typedef struct latchwork_article_request_file latchwork_article_request_file;
/* An article, and how a panel makes it. Since 0.1. */
typedef struct latchwork_article_fit latchwork_article_fit;

/* "latchwork-article-choices", version 1. Fails with line and field: TOO_LARGE, BAD_ENCODING, BAD_SYNTAX, WRONG_FORMAT,
   NEWER_VERSION, DUPLICATE_KEY, MISSING_FIELD, UNKNOWN_FIELD, BAD_VALUE; BAD_ARGUMENT for what no panel's design can be.
   A measure is a number
   of mm, or a text as latchwork_read_length takes it, which fails as that. Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_read_article_request(const char *text, size_t size,
                                                                latchwork_article_request_file **out,
                                                                latchwork_error *error);
/* A request of its own, equal to this one. Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_article_request_file_copy(const latchwork_article_request_file *file,
                                                                     latchwork_article_request_file **out,
                                                                     latchwork_error *error);
/* *equal is 1 when everything in both is the same, else 0. Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_article_request_file_equal(const latchwork_article_request_file *file,
                                                                      const latchwork_article_request_file *other,
                                                                      int32_t *equal, latchwork_error *error);
/* Frees it; NULL is fine. Since 0.1. */
LATCHWORK_C_API void latchwork_article_request_file_destroy(latchwork_article_request_file *file);
/* Fills `request`; its texts and arrays live as long as the file. Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_article_request_file_request(const latchwork_article_request_file *file,
                                                                        latchwork_article_request *request,
                                                                        latchwork_error *error);
/* The JSON that latchwork_read_article_request() reads back to an equal request; of the design, targets, groups and edge
   are not written. Fails: BAD_VALUE (field) for what no reader takes; BAD_ENCODING. Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_article_request_write(const latchwork_article_request *request, char *text,
                                                                 size_t capacity, size_t *needed,
                                                                 latchwork_error *error);
/* One panel of a candidate for the piece at `index`, cut from the panel by the request that the fit is of, as
   latchwork_fitted() makes it: the way from latchwork_article_fit_result() to what is knitted. Fails: BAD_ARGUMENT (field
   "groups[0].last", "edge", ...; "panel" for one of several bands), CROSSING_CUT; as latchwork_fitted. Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_article_fit_fitted(const latchwork_article_fit *article_fit, size_t index,
                                                              const latchwork_article_request *request,
                                                              const latchwork_panel *panel,
                                                              const latchwork_fit_candidate *candidate,
                                                              int32_t panel_index, latchwork_panel **out,
                                                              latchwork_error *error);
/* Targets of the article, the panel as it stands held against each piece that is made as it is, and the best fits. Pieces
   alike are fitted once; pieces whose lengths are one target get one row count, those of one width too the same panels
   and times. A panel of several bands is held against the pieces and not fitted, and a message says so. options may be
   NULL. Fails: as latchwork_article_targets, latchwork_panel_size and latchwork_fit; BAD_ARGUMENT (field "made[0]")
   for a name that is no piece's under these choices, ("groups[0].last", "edge") for a strip that the panel does not have,
   ("groups[0]", "edge") for one that repeats in more rows than the panel has; CROSSING_CUT for a strip that cuts one. Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_fit_article(const latchwork_article *article,
                                                       const latchwork_article_request *request,
                                                       const latchwork_panel *panel, const latchwork_swatch *swatch,
                                                       const latchwork_fit_options *options,
                                                       latchwork_article_fit **out, latchwork_error *error);
/* A fit of its own, equal to this one. Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_article_fit_copy(const latchwork_article_fit *article_fit,
                                                            latchwork_article_fit **out, latchwork_error *error);
/* *equal is 1 when everything in both is the same, else 0. Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_article_fit_equal(const latchwork_article_fit *article_fit,
                                                             const latchwork_article_fit *other, int32_t *equal,
                                                             latchwork_error *error);
/* Frees it; NULL is fine. Since 0.1. */
LATCHWORK_C_API void latchwork_article_fit_destroy(latchwork_article_fit *article_fit);
/* A copy of the targets of all pieces. Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_article_fit_targets(const latchwork_article_fit *article_fit,
                                                               latchwork_targets **out, latchwork_error *error);
/* The pieces that are made as the panel, in the order of the targets; their texts live as long as the fit. Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_article_fit_pieces(const latchwork_article_fit *article_fit,
                                                              latchwork_piece_fit *pieces, size_t capacity,
                                                              size_t *needed, latchwork_error *error);
/* A copy of the fit of the piece at `index`: first the candidate that goes with the other pieces, then the others ranked;
   without candidates and nearest where the message tells why. Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_article_fit_result(const latchwork_article_fit *article_fit, size_t index,
                                                              latchwork_fit_result **out, latchwork_error *error);
/* For people: why nothing was fitted, which pieces that fit by themselves do not go together, or that a choice that is
   better for all may not have been looked at; "" where there is nothing to tell. Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_article_fit_message(const latchwork_article_fit *article_fit, char *text,
                                                               size_t capacity, size_t *needed,
                                                               latchwork_error *error);

/* ---- Charts and instructions ------------------------------------------------------------------------------------ */

/* Which side a picture shows: the RS, or the wrong side as the operator sees it on the bed. Since 0.1. */
enum { LATCHWORK_SIDE_RIGHT_SIDE = 0, LATCHWORK_SIDE_OPERATOR_VIEW = 1 };

/* Which loops an SVG chart leaves without a mark, as they look from the side shown: those the panel has more of from
   this side (knit when equal), or always the same. The key and a line under the title say which. Since 0.1. */
enum { LATCHWORK_BLANK_COMMONER = 0, LATCHWORK_BLANK_KNIT = 1, LATCHWORK_BLANK_PURL = 2 };

/* What a chart shows. Options: 0 and NULL are the defaults. Since 0.1. */
typedef struct latchwork_chart_options {
  uint32_t struct_size;
  int32_t side;                     /* LATCHWORK_SIDE_... */
  const latchwork_plan *plan;       /* marks its stops; NULL: none */
  const latchwork_machine *machine; /* needle names in the operator's view; NULL: the standard machine */
  double stitch_width_mm;           /* to 1000; only the proportion counts, 0.2 to 5 of the height; 0: 1.3 */
  double stitch_height_mm;          /* to 1000; 0: 1 */
  int32_t blank;                    /* LATCHWORK_BLANK_..., of the SVG; a chart in text marks every loop */
  /* The rows shown, a sheet of a panel that is too high for one, counted from 1. A crossing stands on the sheet of the
     row above it, one after the panel's last row on that row's; the stop below the first row is marked on either
     sheet. */
  int32_t first_row; /* 0: 1 */
  int32_t last_row;  /* 0: the panel's last */
  /* The columns shown, a sheet of a panel that is too wide for one: the first, counted from 0 from the left on the RS from
     whichever side the chart is drawn, and how many. A crossing that reaches past them is not drawn, its cells are
     grey. */
  int32_t first_column;
  int32_t columns;  /* 0: all from there on */
  int32_t reserved; /* 0; a later field takes its place */
} latchwork_chart_options;
#define LATCHWORK_CHART_OPTIONS_INIT { sizeof(latchwork_chart_options), 0, NULL, NULL, 0.0, 0.0, 0, 0, 0, 0, 0, 0 }

/* The chart as SVG 1.1, with a title that says which side is shown and a key of the symbols used. options may be NULL.
   Fails: BAD_ARGUMENT (field; "stops[1].row" for a plan whose stops do not rise within its rows); SIZE_MISMATCH (plan of
   another size); BAD_ENCODING, when a name is not UTF-8. Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_panel_chart_svg(const latchwork_panel *panel,
                                                           const latchwork_chart_options *options, char *text,
                                                           size_t capacity, size_t *needed, latchwork_error *error);
/* The same for a terminal. options may be NULL. Fails: as latchwork_panel_chart_svg. Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_panel_chart_text(const latchwork_panel *panel,
                                                            const latchwork_chart_options *options, char *text,
                                                            size_t capacity, size_t *needed, latchwork_error *error);
/* Machine instructions in words: by row counter and carriage side, needles in the operator's view, re-forms as one sweep
   across the bed, crossings by marks of their own ("X1"; letters are strips of charts), a key of the abbreviations used,
   the cautions that fit. What latchwork_grid_findings() calls an error comes first; for an
   infeasible plan, why, and no steps.
   Verify the plan first: latchwork_grid_verify() alone says whether its work makes this panel. Here a plan is refused that
   no words can tell, that they would tell wrongly, or that asks what hands cannot do; one that hands can follow to another
   cloth is told as it stands. Steps that hands would do for nothing, which latchwork_grid_verify() counts, are left out, and
   a line at the top says so.
   Fails: SIZE_MISMATCH (plan of another size); BAD_ARGUMENT for a machine out of its ranges, and for such a plan: rows,
   columns and needles outside the panel, needles cast on other than the chart's in row 1, stops that are not by rising row,
   a carriage on the other side than its row's, columns and wales that are not the needle's, rungs that are not all those
   from `from_row` up to the stop's row or are no knit, purl, tuck or slip, a needle re-formed or a stitch crossed twice at
   one stop, crossings that lack a group or have it twice, put it on other needles or in another order, or have no tools for
   it, counts below 1 and times below 0, and the first step that hands cannot do, such as a batch from a row where its wale
   has no loop; TOO_LARGE as latchwork_simulate(). The error's row is the stop's, its column that on the RS where there is
   one, its field the path from the plan, "stops[2].reforms[0].needle". Of an infeasible plan the stops are not looked at.
   Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_panel_instructions(const latchwork_panel *panel, const latchwork_plan *plan,
                                                              const latchwork_machine *machine, char *text,
                                                              size_t capacity, size_t *needed, latchwork_error *error);

/* ---- The main job: a brief goes in, a job comes out -------------------------------------------------------------- */

/* What a designer hands over: a panel, a swatch, a machine and efforts; yarns and an article, where they are asked for. As
   files: a folder with panel.json, machine.json and, if there, swatch.csv, yarn.json, article.json, substitutes.csv and
   brief.json. */
typedef struct latchwork_brief latchwork_brief;
/* What comes back: findings, the least-effort and the regular plan, their verifications, the size. */
typedef struct latchwork_job latchwork_job;
/* What the brief's article comes to. Since 0.1. */
typedef struct latchwork_article_job latchwork_article_job;

/* How a piece of the article is knitted: by the panel that fits it best, or, where nothing is fitted, the brief's. An
   element of arrays. Since 0.1. */
typedef struct latchwork_piece_work {
  int32_t panels; /* to knit: the piece's count, times the panels that each is sewn of */
  int32_t fits;   /* 1: the piece can be made: of a candidate (the plan is of its panel 0, in its shape), or of the brief's
                     panel, where that is no further off in width and height than the design's tolerance */
  int32_t inner;  /* of `panels`, those between the outer two of a shaped piece that is sewn of three or more: they are not
                     cut, so that they have a plan of their own; 0 where there are none, or the shape cuts nothing */
} latchwork_piece_work;

/* A panel that best fits are knitted of, other than the brief's own: latchwork_brief_fitted_brief() makes a brief of it. An
   element of arrays. Since 0.1. */
typedef struct latchwork_fitted_panel {
  const char *folder; /* a name for the folder of its files, none twice: "fitted-", then small letters, digits and hyphens
                         of the piece's name: "fitted-front-2", "fitted-front-mirrored", "fitted-front-inner" */
  const char *pieces; /* for people, what it is for: "front, back"; of a piece sewn of several panels "front, left panels",
                         "front, right panel, mirrored"; of a shaped one of three or more "front, left outer panel",
                         "front, inner panels" */
  int64_t count;      /* to knit, for all pieces */
  int32_t piece;      /* index of the first that it is for, as latchwork_article_fit_pieces() has them */
  int32_t panel;      /* which of that piece's panels it is, as of latchwork_fitted() */
} latchwork_fitted_panel;

/* A brief of copies of its parts; `effort` may be NULL. Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_brief_create(const latchwork_panel *panel, const latchwork_swatch *swatch,
                                                        const latchwork_machine *machine,
                                                        const latchwork_effort *effort, latchwork_brief **out,
                                                        latchwork_error *error);
/* Reads a brief's folder: panel.json, machine.json and, if there, swatch.csv (else an empty swatch), yarn.json,
   article.json, substitutes.csv (columns texture,use: a texture that lacks a swatch, and the one whose gauge is used for
   it) and brief.json (format "latchwork-brief": state, session_ms, rest_ms; each may be left out). Fails:
   BAD_ARGUMENT (folder) for an empty name; IO (field: the file's name), and as the readers do, with the file's name
   before the field: of article.json also what latchwork_article_targets refuses, an article that is neither the
   library's nor a file "name.json" of the folder that is no other file of a brief or a job, as "plan.json" is,
   BAD_ENCODING for a name that is not UTF-8, and CROSSING_CUT where a group's columns cut a crossing; of substitutes.csv,
   with its line, BAD_SYNTAX, MISSING_FIELD, UNKNOWN_FIELD ("column 3" for one without a name), BAD_VALUE for a texture
   that is empty, named twice or its own substitute, and TOO_LARGE. Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_read_brief(const char *folder, latchwork_brief **out,
                                                      latchwork_error *error);
/* A brief of its own, equal to this one. Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_brief_copy(const latchwork_brief *brief, latchwork_brief **out,
                                                      latchwork_error *error);
/* *equal is 1 when all its parts are the same, else 0. Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_brief_equal(const latchwork_brief *brief, const latchwork_brief *other,
                                                       int32_t *equal, latchwork_error *error);
/* Frees it; NULL is fine. Since 0.1. */
LATCHWORK_C_API void latchwork_brief_destroy(latchwork_brief *brief);
/* A copy of its panel. Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_brief_panel(const latchwork_brief *brief, latchwork_panel **out,
                                                       latchwork_error *error);
/* A copy of its swatch. Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_brief_swatch(const latchwork_brief *brief, latchwork_swatch **out,
                                                        latchwork_error *error);
/* Its machine. Fails: TOO_LARGE for a name or tools that latchwork_machine cannot hold. Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_brief_machine(const latchwork_brief *brief, latchwork_machine *machine,
                                                         latchwork_error *error);
/* Its efforts. Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_brief_effort(const latchwork_brief *brief, latchwork_effort *effort,
                                                        latchwork_error *error);
/* Gives the brief yarns to reckon. Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_brief_set_yarn(latchwork_brief *brief,
                                                          const latchwork_yarn_request *request,
                                                          latchwork_error *error);
/* Takes its yarns away again. Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_brief_clear_yarn(latchwork_brief *brief, latchwork_error *error);
/* What the yarn is reckoned from. Fails: BAD_ARGUMENT (brief) when it names no yarn. Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_brief_yarn(const latchwork_brief *brief, latchwork_yarn_file **out,
                                                      latchwork_error *error);
/* Gives the brief an article to make; `own` is the article where the request names none that comes with the library, and
   may be NULL. Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_brief_set_article(latchwork_brief *brief,
                                                             const latchwork_article_request *request,
                                                             const latchwork_article *own, latchwork_error *error);
/* Takes its article away again. Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_brief_clear_article(latchwork_brief *brief, latchwork_error *error);
/* What is chosen and may vary. Fails: BAD_ARGUMENT (brief) when it names no article. Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_brief_article(const latchwork_brief *brief,
                                                         latchwork_article_request_file **out, latchwork_error *error);
/* The article that its folder holds. Fails: BAD_ARGUMENT (brief) when it has none of its own. Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_brief_own_article(const latchwork_brief *brief,
                                                             latchwork_article_file **out, latchwork_error *error);
/* Textures that are measured by another's gauge where they have none of their own: for the panel's size, its drawing and the
   article's fits, there after those of the article's own design. The job's size has a finding for each. Takes the place of
   those that it had; none takes them away. Fails: BAD_ARGUMENT (field "substitutes[0].texture"). Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_brief_set_substitutes(latchwork_brief *brief,
                                                                 const latchwork_substitute *substitutes,
                                                                 size_t substitute_count, latchwork_error *error);
/* Those; their texts live as long as the brief and until it is given others. Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_brief_substitutes(const latchwork_brief *brief,
                                                             latchwork_substitute *substitutes, size_t capacity,
                                                             size_t *needed, latchwork_error *error);
/* The cloth that sizes are meant in, LATCHWORK_CLOTH_STATE_...: of the panel, its drawing and the article's fits whose own
   design names none. Fails: BAD_ARGUMENT (state). Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_brief_set_state(latchwork_brief *brief, int32_t state, latchwork_error *error);
/* That; MOST_FINISHED if none was said. Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_brief_state(const latchwork_brief *brief, int32_t *state, latchwork_error *error);
/* How long one sits at the machine, and how much hand work there is between two rests (0: none): what the summary tells of
   sessions. 3600000 and 1200000 if none were said. Fails: BAD_ARGUMENT (session_ms, rest_ms), as
   latchwork_plan_sessions(). Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_brief_set_sessions(latchwork_brief *brief, int64_t session_ms, int64_t rest_ms,
                                                              latchwork_error *error);
/* Those. Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_brief_session_ms(const latchwork_brief *brief, int64_t *session_ms,
                                                            latchwork_error *error);
LATCHWORK_C_API latchwork_status latchwork_brief_rest_ms(const latchwork_brief *brief, int64_t *rest_ms,
                                                         latchwork_error *error);
/* Finds, plans both ways, verifies both, sizes, reckons the yarn; fits the article and plans the panels that fit. What
   wants a gauge that the swatch has not is left out, and latchwork_job_missing tells it. Conditions bind all plans but
   that of latchwork_job_unconditioned. A time limit is for that one and the least-effort plan together, and for each
   other plan anew; a work limit for each plan. options may be NULL. Fails: as those do; BAD_ARGUMENT (field
   "options.time_limit_ms", "brief.state", "brief.session_ms", "brief.rest_ms", ...); TOO_LARGE (field "article",
   "article.seam_ms_per_m") for an article of more than 2^60 ms of work at the machine, or of sewing up. Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_brief_run(const latchwork_brief *brief,
                                                     const latchwork_plan_options *options, latchwork_job **out,
                                                     latchwork_error *error);
/* A brief of its own for a panel of latchwork_article_job_panels(), by its index, on which latchwork_brief_run() and
   latchwork_brief_write_job() go as on any other: panel, machine, efforts, swatch and the substitutes that it was
   fitted by, no article. Its yarn is that of one panel, without seams; where its request says which yarns knit which
   rows, and the panel has other rows, it has none. Its size is told as any brief's, with what the seams take in, in the
   state that it was fitted in: the article's design's, or, where that names none, the brief's. The panel is called after
   the brief's and what it is for, "runner: front, left panels", and then ", seams included" where a seam takes in any of
   it, at the piece's edges or between panels. Fails: BAD_ARGUMENT (field "brief.article", "index"; "job.article.fit"
   for a job of another brief); SIZE_MISMATCH (field "job.article");
   as latchwork_fit_article. Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_brief_fitted_brief(const latchwork_brief *brief, const latchwork_job *job,
                                                              size_t index, latchwork_brief **out,
                                                              latchwork_error *error);
/* For a terminal: size and the state of the cloth that it is of (or which textures of swatch.csv it wants), yarn, article,
   feasibility, stops, hand work by kind, hours, sessions and rests, bound, price of regularity, "verified" or not, and
   what is doubtful in the swatch.
   Fails: SIZE_MISMATCH (field "job.plan", "job.size", "job.size.strips[2]", "job.yarn", ...) for a job of another brief;
   BAD_ARGUMENT (field "job.verification", "job.plan.leftmost", "job.plan.total_ms", ...) for a plan that is called verified
   and does not knit the brief's panel, stands on other needles than its machine's, takes other times by its efforts, or
   breaks the job's conditions (but rhythms, which are not looked at); for findings of another machine; for another size or
   need of yarn than the brief's panel, swatch and yarns come to (field "job.size", "job.yarn"); for an article that is
   fitted or reckoned in another way than the brief's (field "job.article.fit", "job.article.works[0].plan", ...); as
   latchwork_panel_size, latchwork_panel_yarn_need and latchwork_fit_article. Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_brief_summary(const latchwork_brief *brief, const latchwork_job *job,
                                                         char *text, size_t capacity, size_t *needed,
                                                         latchwork_error *error);
/* One HTML5 page to print and take to the machine: summary, schematic, article, instructions, and both
   charts, cut at the same rows into as many A4 sheets as they take.
   Fails: as latchwork_brief_summary, latchwork_panel_chart_svg and latchwork_panel_instructions. Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_brief_page_html(const latchwork_brief *brief, const latchwork_job *job,
                                                           char *text, size_t capacity, size_t *needed,
                                                           latchwork_error *error);
/* Writes chart-rs.svg, chart-operator.svg, chart.txt, instructions.txt, plan.json, summary.txt, page.html and, for a
   panel with a size and in one piece (a stitch in every row, and a column in common with the row below), schematic.svg,
   for an article that is fitted article.txt, into `folder`, which is made if it is not there; an older schematic.svg or
   article.txt of which there is none now is taken away. The schematic is of the brief's panel, or, where an article is
   fitted, of its pieces as they are made, and of that panel as it stands where no piece is made of it: each piece's
   panels sewn together, seams dashed, measured between the seams, with the width of a panel and of all together. Pieces
   alike are drawn once; notes say which edges are sewn and what is not drawn.
   Fails: BAD_ARGUMENT (folder) for an empty name; IO (field: the file's name, or folder); CROSSING_CUT where a group of
   the article cuts a crossing; as latchwork_brief_page_html and latchwork_plan_write. Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_brief_write_job(const latchwork_brief *brief, const latchwork_job *job,
                                                           const char *folder, latchwork_error *error);
/* Writes the files that latchwork_read_brief() reads back to an equal brief into `folder`, which is made if it is not
   there; an older yarn.json, article.json, substitutes.csv or brief.json of which there is none now is taken away. Where anything is
   refused nothing is written. Fails: BAD_ARGUMENT (folder) for an empty name, (field "brief.article.article") for an own
   article that article.json does not name as a file of the folder, or names as one that a brief or a job has for something
   else ("yarn.json", "plan.json"), in whatever letters; BAD_VALUE, BAD_ENCODING or TOO_LARGE (field
   "brief.substitutes[0].use", "brief.substitutes") for what substitutes.csv does not take; IO (field: the file's name, or
   folder); as the writers of the parts. Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_brief_write_brief(const latchwork_brief *brief, const char *folder,
                                                             latchwork_error *error);
/* A job of its own, equal to this one. Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_job_copy(const latchwork_job *job, latchwork_job **out,
                                                    latchwork_error *error);
/* *equal is 1 when all its parts are the same, else 0. Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_job_equal(const latchwork_job *job, const latchwork_job *other,
                                                     int32_t *equal, latchwork_error *error);
/* Frees it; NULL is fine. Since 0.1. */
LATCHWORK_C_API void latchwork_job_destroy(latchwork_job *job);
/* A copy of its findings. Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_job_findings(const latchwork_job *job, latchwork_findings **out,
                                                        latchwork_error *error);
/* What bars size or article: NO_SWATCH for each texture that has no gauge, its field the texture. Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_job_missing(const latchwork_job *job, latchwork_findings **out,
                                                       latchwork_error *error);
/* A copy of the least-effort plan. Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_job_plan(const latchwork_job *job, latchwork_plan **out,
                                                    latchwork_error *error);
/* The conditions that were asked of both plans; their arrays live as long as the job. Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_job_conditions(const latchwork_job *job, latchwork_conditions *conditions,
                                                          latchwork_error *error);
/* A copy of the regular plan. Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_job_regular(const latchwork_job *job, latchwork_plan **out,
                                                       latchwork_error *error);
/* A copy of the least plan when nothing is asked of it, against which the conditions' cost is told; where none are asked,
   the same as latchwork_job_plan(). It has what that plan left of a time limit, 1 ms at the least, and a work limit of
   its own. Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_job_unconditioned(const latchwork_job *job, latchwork_plan **out,
                                                             latchwork_error *error);
/* What knitting the least-effort plan showed. Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_job_verification(const latchwork_job *job,
                                                            latchwork_verification *verification,
                                                            latchwork_error *error);
/* What knitting the regular plan showed; not verified when there is none. Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_job_regular_verification(const latchwork_job *job,
                                                                    latchwork_verification *verification,
                                                                    latchwork_error *error);
/* The yarn it takes. Fails: BAD_ARGUMENT (job) when the brief named none. Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_job_yarn(const latchwork_job *job, latchwork_yarn_need **out,
                                                    latchwork_error *error);
/* What its article comes to. Fails: NO_GAUGE (field: the texture) where latchwork_job_missing tells of any;
   BAD_ARGUMENT (job) where it does not, and the brief named no article. Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_job_article(const latchwork_job *job, latchwork_article_job **out,
                                                       latchwork_error *error);
/* One of its own, equal to this one. Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_article_job_copy(const latchwork_article_job *article_job,
                                                            latchwork_article_job **out, latchwork_error *error);
/* *equal is 1 when everything in both is the same, else 0. Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_article_job_equal(const latchwork_article_job *article_job,
                                                             const latchwork_article_job *other, int32_t *equal,
                                                             latchwork_error *error);
/* Frees it; NULL is fine. Since 0.1. */
LATCHWORK_C_API void latchwork_article_job_destroy(latchwork_article_job *article_job);
/* How the panel makes the pieces: latchwork_fit_article() with the machine's needles where the design names none.
   Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_article_job_fit(const latchwork_article_job *article_job,
                                                           latchwork_article_fit **out, latchwork_error *error);
/* One for each piece of the fit. Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_article_job_works(const latchwork_article_job *article_job,
                                                             latchwork_piece_work *works, size_t capacity,
                                                             size_t *needed, latchwork_error *error);
/* A copy of the plan of one panel of the piece at `index`, in its shape. Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_article_job_plan(const latchwork_article_job *article_job, size_t index,
                                                            latchwork_plan **out, latchwork_error *error);
/* What knitting that plan showed. Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_article_job_verification(const latchwork_article_job *article_job,
                                                                    size_t index, latchwork_verification *verification,
                                                                    latchwork_error *error);
/* A copy of the plan of one inner panel of the piece at `index`, of those that its work counts as inner. Fails:
   BAD_ARGUMENT (index) for a piece without. Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_article_job_inner_plan(const latchwork_article_job *article_job, size_t index,
                                                                  latchwork_plan **out, latchwork_error *error);
/* What knitting that plan showed. Fails: as latchwork_article_job_inner_plan. Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_article_job_inner_verification(const latchwork_article_job *article_job,
                                                                          size_t index,
                                                                          latchwork_verification *verification,
                                                                          latchwork_error *error);
/* What the pieces that fit are knitted of, alike ones once: those right of a piece's middle are mirrored. A panel that is
   the brief's own is none of them. Their texts live as long as the article job. Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_article_job_panels(const latchwork_article_job *article_job,
                                                              latchwork_fitted_panel *panels, size_t capacity,
                                                              size_t *needed, latchwork_error *error);
/* The time at the machine, by kind of work, of all panels of pieces that fit, together; of those without a plan nothing. Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_article_job_times(const latchwork_article_job *article_job,
                                                             latchwork_work_times *times, latchwork_error *error);
/* All seams to be sewn, where something fits: those of the article, of each kind the middle of its range, and those between the panels that a
   piece that fits is sewn of, each as long as the piece. Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_article_job_seam_mm(const latchwork_article_job *article_job,
                                                               double *seam_mm, latchwork_error *error);
/* Sewing them up, by the request's `seam_ms_per_m`, to the nearest ms; 0 where that is 0, and then a note says that the
   hours are without it. The article's hours are the total of its times and this. Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_article_job_sewing_ms(const latchwork_article_job *article_job,
                                                                 int64_t *sewing_ms, latchwork_error *error);
/* The yarn for all panels together. Fails: BAD_ARGUMENT (article_job) where none is reckoned: the brief names none, nothing
   fits, or a note says why it cannot be (seams in a yarn whose number is not known, ...). Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_article_job_yarn(const latchwork_article_job *article_job,
                                                            latchwork_yarn_need **out, latchwork_error *error);
/* For people, one a line: what is not in these figures. Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_article_job_notes(const latchwork_article_job *article_job, char *text,
                                                             size_t capacity, size_t *needed, latchwork_error *error);
/* The panel's size. Fails: NO_GAUGE (field: the first texture without one). Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_job_size(const latchwork_job *job, latchwork_size *size,
                                                    latchwork_error *error);
/* The sizes of its strips, band by band from the bottom, from the left on the RS. Fails: NO_GAUGE. Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_job_size_strips(const latchwork_job *job, latchwork_strip_size *strips,
                                                           size_t capacity, size_t *needed, latchwork_error *error);
/* What is to be said of the size. Fails: NO_GAUGE. Since 0.1. */
LATCHWORK_C_API latchwork_status latchwork_job_size_findings(const latchwork_job *job, latchwork_findings **out,
                                                             latchwork_error *error);

#ifdef __cplusplus
}
#endif

#endif
