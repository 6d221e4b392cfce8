/* One good value of everything that a call can take, and a second, different one of each handle. */
#ifndef LATCHWORK_TESTS_WORLD_H
#define LATCHWORK_TESTS_WORLD_H

#include <latchwork/latchwork.h>

#include "calls.h"
#include "check.h"

#define HANDLES(X) \
  X(grid) X(wales) X(strip) X(panel) X(findings) X(plan) X(front) X(certificate) X(fabric) X(swatch) \
  X(fit_result) X(grading) X(yarn_need) X(yarn_file) X(article_file) X(targets) \
  X(article_request_file) X(article_fit) X(article_job) X(timings) \
  X(effort_fit) X(brief) X(job)

struct world {
#define HANDLE(type) latchwork_##type *type, *other_##type;
  HANDLES(HANDLE)
#undef HANDLE
  latchwork_grid *patch;
  latchwork_article_job *sewn_job; /* of a shaped piece of three panels, the middle one of which has a plan of its own */
  latchwork_plan *full_plan;       /* has all there can be in a plan */
  latchwork_plan *infeasible_plan; /* has findings */
  latchwork_machine machine;
  latchwork_effort effort;
  latchwork_crossing crossing, free_crossing;
  latchwork_plan_options plan_options; /* with conditions */
  latchwork_conditions conditions;
  latchwork_watch_options watch_options;
  latchwork_chart_options chart_options;
  latchwork_panel_parts parts;
  latchwork_size_options size_options;
  latchwork_session_options session_options;
  latchwork_fit_request request;
  latchwork_fit_options fit_options;
  latchwork_grade_size sizes[2];
  int64_t numbers[3];
  latchwork_fit_group groups[2];
  latchwork_fit_candidate candidate;
  latchwork_bed bed;
  latchwork_move move;
  latchwork_length length;
  latchwork_weight weight;
  latchwork_duration duration;
  latchwork_count_per_length density;
  latchwork_count_per_length row_density;
  latchwork_yarn_number yarn;
  latchwork_spacing spacing;
  latchwork_edge_point edge_points[2];
  latchwork_edge_shape edge_shape;
  latchwork_row_span row_spans[4];
  latchwork_outline outline;
  latchwork_shape_options shape_options;
  latchwork_outline_point corners[3];
  latchwork_schematic_measure measure;
  latchwork_schematic_piece piece;
  latchwork_schematic schematic;
  latchwork_plain_constants constants;
  latchwork_weighed_swatch weighed[2];
  latchwork_yarn main_yarn;
  latchwork_yarn_request yarn_request;
  latchwork_named_measure ease;
  latchwork_named_count panels;
  latchwork_article article;
  latchwork_article_choices choices;
  latchwork_target_piece target_piece;
  latchwork_target_point target_points[1];
  latchwork_panel *wide_panel; /* that the target piece is cut from */
  latchwork_target_piece uncut_piece; /* as wide as any panel, so that no crossing is cut */
  latchwork_article_request article_request;
  latchwork_strip_run run;
  latchwork_fit_candidate article_candidate;
  latchwork_fit_request article_design;
  const char *made[1];
  latchwork_split_part split_part;
  latchwork_substitute substitute;
  latchwork_move *moves;
  size_t moves_count;
  uint8_t cells[6];
  latchwork_band band;
  latchwork_strip_span span;
  latchwork_measurement measurements[6];
  latchwork_spell spells[9]; /* stops and batches tied; the fifth outlying */
  const latchwork_strip *strips[2];
  const char *grid_text;
  const char *brief_folder, *out_folder;
  char *grid_json, *strip_json, *panel_json, *machine_json, *yarn_json, *article_json, *choices_json, *plan_json, *certificate_json, *swatch_csv, *timings_csv;
};

extern struct world w;

/* Makes the world; 0, or the line of world.c that failed. */
int world_make(const char *brief_folder, const char *out_folder);
void world_free(void);

/* Round the call itself, so that only its own allocations fail. */
void begin(const struct how *how);
void end(const struct how *how);

#define HANDLE(type) int same_##type(const latchwork_##type *a, const latchwork_##type *b);
HANDLES(HANDLE)
#undef HANDLE

#endif
