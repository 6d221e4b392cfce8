/* Articles through the C ABI: those that come with the library, and a host's own, built in memory. */
#include <stdlib.h>
#include <string.h>

#include "program.h"

static int near(double value, double wanted) { return value > wanted - 1e-6 && value < wanted + 1e-6; }

static void articles_come_with_the_library(void) {
  latchwork_error error = LATCHWORK_ERROR_INIT;
  latchwork_article_file *file = NULL, *again = NULL;
  latchwork_article article = LATCHWORK_ARTICLE_INIT;
  latchwork_article small = LATCHWORK_ARTICLE_INIT;
  char text[256];
  char *json;
  size_t needed = 0;
  int32_t equal = 0;
  checking = "built-in articles";
  OK(latchwork_article_names(text, sizeof text, NULL, &error));
  CHECK(strcmp(text, "cushion cover\nblanket of panels\nscarf\nbag panel\nstraight garment pieces") == 0);
  OK(latchwork_built_in_article("cushion cover", &file, &error));
  OK(latchwork_article_file_article(file, &article, &error));
  CHECK(strcmp(article.name, "cushion cover") == 0 && article.measure_count == 2);
  CHECK(strcmp(article.measures[1], "height") == 0 && article.list_count == 3);
  CHECK(strcmp(article.lists[2].source, "aloriam.com") == 0 && article.lists[2].of == LATCHWORK_SIZE_OF_FILLING);
  CHECK(strcmp(article.lists[2].sizes[1].measures[0].printed, "18 in") == 0);
  CHECK(near(article.lists[2].sizes[1].measures[0].least_mm, 457.2));
  CHECK(article.closure_count == 3 && article.closures[0].mark == LATCHWORK_SOURCE_MARK_FROM_MEMORY);
  CHECK(article.closures[0].kind == LATCHWORK_CLOSURE_KIND_OVERLAP && article.closures[0].overlap_greatest_mm == 150.0);
  CHECK(article.rules[4].pair_count == 7 && near(article.rules[4].pairs[0].finished_mm, 393.7));
  CHECK(strcmp(article.pieces[2].length.terms[1].of, "overlap") == 0 && article.pieces[2].length.terms[1].times == 0.5);
  CHECK(article.pieces[2].upper == LATCHWORK_EDGE_USE_CLOSURE && article.pieces[2].closure_count == 2);
  CHECK(article.caution_count > 2 && strstr(article.cautions[0].source, "Pediatrics") != NULL);
  /* What C sees is written as it stands, and read back equal. */
  OK(latchwork_article_write(&article, NULL, 0, &needed, &error));
  json = malloc(needed);
  CHECK(json != NULL);
  OK(latchwork_article_write(&article, json, needed, NULL, &error));
  OK(latchwork_read_article(json, strlen(json), &again, &error));
  OK(latchwork_article_file_equal(file, again, &equal, &error));
  CHECK(equal == 1);
  free(json);
  latchwork_article_file_destroy(again);
  latchwork_article_file_destroy(file);
  CHECK(latchwork_built_in_article("hat", &file, &error) == LATCHWORK_E_BAD_ARGUMENT && file == NULL);
  CHECK(strcmp(error.field, "name") == 0 && strstr(error.message, "'scarf'") != NULL);
  CHECK(latchwork_article_write(&small, NULL, 0, &needed, &error) == LATCHWORK_E_BAD_VALUE);
  CHECK(strcmp(error.field, "name") == 0);
}

static void a_blanket_is_shared_out(void) {
  latchwork_error error = LATCHWORK_ERROR_INIT;
  latchwork_article_file *file = NULL;
  latchwork_article article = LATCHWORK_ARTICLE_INIT;
  latchwork_article_choices choices = LATCHWORK_ARTICLE_CHOICES_INIT;
  const latchwork_named_measure size[2] = {{"width", 1200.0, 1200.0, NULL, NULL},
                                           {"height", 1500.0, 1500.0, NULL, NULL}};
  latchwork_named_count counts[2] = {{"across", 3}, {"up", 1}};
  latchwork_targets *targets = NULL;
  latchwork_target_piece pieces[9];
  latchwork_target_seam seams[2];
  latchwork_caution cautions[8];
  latchwork_named_measure filling;
  size_t needed = 0;
  double mm = 0.0;
  checking = "blanket";
  OK(latchwork_built_in_article("blanket of panels", &file, &error));
  OK(latchwork_article_file_article(file, &article, &error));
  CHECK(latchwork_article_targets(&article, &choices, &targets, &error) == LATCHWORK_E_BAD_ARGUMENT && targets == NULL);
  CHECK(strcmp(error.field, "choices.list") == 0);
  choices.measures = size;
  choices.measure_count = 2;
  choices.counts = counts;
  choices.count_count = 2;
  OK(latchwork_article_targets(&article, &choices, &targets, &error));
  OK(latchwork_targets_pieces(targets, pieces, 9, &needed, &error));
  CHECK(needed == 3 && strcmp(pieces[0].name, "panel, left") == 0 && pieces[0].count == 1);
  CHECK(pieces[0].left == LATCHWORK_EDGE_USE_FREE && pieces[0].right == LATCHWORK_EDGE_USE_SEAMED);
  CHECK(pieces[0].width_least_mm == 400.0 && pieces[2].length_greatest_mm == 1500.0);
  CHECK(pieces[2].right == LATCHWORK_EDGE_USE_FREE && pieces[2].lower == LATCHWORK_EDGE_USE_FREE);
  OK(latchwork_targets_seams(targets, seams, 2, &needed, &error));
  CHECK(needed == 1 && seams[0].count == 2 && seams[0].least_mm == 1500.0);
  OK(latchwork_targets_seam_least_mm(targets, &mm, &error));
  CHECK(mm == 3000.0);
  OK(latchwork_targets_seam_greatest_mm(targets, &mm, &error));
  CHECK(mm == 3000.0);
  OK(latchwork_targets_filling(targets, &filling, 1, &needed, &error));
  CHECK(needed == 0);
  OK(latchwork_targets_cautions(targets, cautions, 8, &needed, &error));
  CHECK(needed == article.caution_count && strcmp(cautions[0].text, article.cautions[0].text) == 0);
  latchwork_targets_destroy(targets);
  counts[1].count = 1001;
  CHECK(latchwork_article_targets(&article, &choices, &targets, &error) == LATCHWORK_E_BAD_ARGUMENT && targets == NULL);
  CHECK(strcmp(error.field, "choices.counts[1].count") == 0);
  latchwork_article_file_destroy(file);
}

static void a_host_makes_its_own(void) {
  /* A door cushion, invented: filled, lapped, with a shaped front. */
  latchwork_error error = LATCHWORK_ERROR_INIT;
  static const char *const measures[] = {"width"};
  static const latchwork_named_measure forty[] = {{"width", 400.0, 400.0, "40 cm", NULL}};
  latchwork_article_size size = {"forty", forty, 1};
  latchwork_size_list list = {"ours", "invented", LATCHWORK_SOURCE_MARK_PRACTICE, LATCHWORK_SIZE_OF_FILLING, NULL, 1};
  const latchwork_closure lap = {"lap", "invented", 30.0, 40.0, LATCHWORK_CLOSURE_KIND_OVERLAP,
                                 LATCHWORK_SOURCE_MARK_PRACTICE};
  latchwork_filling_rule rule = {"snug", "invented", 10.0, 20.0, NULL, 0, LATCHWORK_SOURCE_MARK_PRACTICE, 0, 0};
  const latchwork_named_measure insert = {"width", 420.0, 420.0, NULL, NULL};
  latchwork_length_term terms[2] = {{"width", 1.0}, {"overlap", 1.0}};
  latchwork_shape_point top = {{NULL, 0, 100.0, 100.0, NULL, 0}, {NULL, 0, 50.0, 60.0, NULL, 0}};
  latchwork_article_piece piece;
  latchwork_article article = LATCHWORK_ARTICLE_INIT;
  latchwork_article_choices choices = LATCHWORK_ARTICLE_CHOICES_INIT;
  latchwork_targets *targets = NULL;
  latchwork_target_piece made;
  latchwork_target_point point;
  latchwork_named_measure filling;
  size_t needed = 0;
  char text[256];
  checking = "own article";
  memset(&piece, 0, sizeof piece);
  piece.name = "front";
  piece.count = 2;
  piece.width.terms = terms;
  piece.width.term_count = 1;
  piece.length.terms = terms;
  piece.length.term_count = 2;
  piece.shape = &top;
  piece.shape_count = 1;
  list.sizes = &size;
  article.name = "door cushion";
  article.measures = measures;
  article.measure_count = 1;
  article.lists = &list;
  article.list_count = 1;
  article.closures = &lap;
  article.closure_count = 1;
  article.rules = &rule;
  article.rule_count = 1;
  article.pieces = &piece;
  article.piece_count = 1;
  choices.list = "ours";
  choices.size = "forty";
  choices.rule = "snug";
  choices.closure = "lap";
  OK(latchwork_article_targets(&article, &choices, &targets, &error));
  OK(latchwork_targets_pieces(targets, &made, 1, &needed, &error));
  CHECK(needed == 1 && made.count == 2 && made.width_least_mm == 380.0 && made.width_greatest_mm == 390.0);
  CHECK(made.length_least_mm == 410.0 && made.length_greatest_mm == 430.0);
  OK(latchwork_targets_shape(targets, 0, &point, 1, &needed, &error));
  CHECK(needed == 1 && point.height_least_mm == 100.0 && point.width_greatest_mm == 60.0);
  CHECK(latchwork_targets_shape(targets, 1, &point, 1, &needed, &error) == LATCHWORK_E_BAD_ARGUMENT);
  OK(latchwork_targets_filling(targets, &filling, 1, &needed, &error));
  CHECK(needed == 1 && filling.least_mm == 400.0 && strcmp(filling.name, "width") == 0);
  OK(latchwork_targets_sources(targets, text, sizeof text, NULL, &error));
  CHECK(strstr(text, "list 'ours': invented (common practice)\n") != NULL);
  latchwork_targets_destroy(targets);
  choices.list = choices.size = NULL; /* an insert that is there, 42 cm: the cover is 40 to 41 */
  choices.measures = &insert;
  choices.measure_count = 1;
  choices.measures_of_filling = 1;
  OK(latchwork_article_targets(&article, &choices, &targets, &error));
  OK(latchwork_targets_pieces(targets, &made, 1, &needed, &error));
  CHECK(made.width_least_mm == 400.0 && made.width_greatest_mm == 410.0);
  latchwork_targets_destroy(targets);
  choices.measures_of_filling = 2;
  CHECK(latchwork_article_targets(&article, &choices, &targets, &error) == LATCHWORK_E_BAD_ARGUMENT);
  CHECK(strcmp(error.field, "choices.measures_of_filling") == 0);
  choices.measures_of_filling = 0;
  rule.oblongs_only = 1; /* one measure is as square as can be */
  CHECK(latchwork_article_targets(&article, &choices, &targets, &error) == LATCHWORK_E_BAD_ARGUMENT);
  CHECK(strcmp(error.field, "choices.rule") == 0);
  rule.squares_only = 1;
  CHECK(latchwork_article_targets(&article, &choices, &targets, &error) == LATCHWORK_E_BAD_ARGUMENT);
  CHECK(strcmp(error.field, "rules[0].oblongs_only") == 0);
  rule.squares_only = rule.oblongs_only = 0;
  choices.measures = NULL;
  choices.measure_count = 0;
  choices.list = "ours";
  choices.size = "forty";

  terms[1].of = "girth";
  CHECK(latchwork_article_targets(&article, &choices, &targets, &error) == LATCHWORK_E_BAD_ARGUMENT);
  CHECK(strcmp(error.field, "pieces[0].length.terms[1].of") == 0);
  CHECK(latchwork_article_write(&article, NULL, 0, &needed, &error) == LATCHWORK_E_BAD_VALUE);
  CHECK(strcmp(error.field, "pieces[0].length.terms[1].of") == 0);
  terms[1].of = "overlap";
  piece.lower = 3;
  CHECK(latchwork_article_targets(&article, &choices, &targets, &error) == LATCHWORK_E_BAD_ARGUMENT);
  CHECK(strcmp(error.field, "pieces[0].lower") == 0);
  piece.lower = 0;
  piece.shape = NULL;
  CHECK(latchwork_article_targets(&article, &choices, &targets, &error) == LATCHWORK_E_BAD_ARGUMENT);
  CHECK(strcmp(error.field, "pieces[0].shape") == 0);
  piece.shape = &top;
  top.height.greatest_mm = 431.0;
  CHECK(latchwork_article_targets(&article, &choices, &targets, &error) == LATCHWORK_E_BAD_ARGUMENT);
  CHECK(strcmp(error.field, "choices.measures") == 0);
}

static void what_is_wrong_is_told_with_line_and_field(void) {
  static const char text[] =
      "{\"format\": \"latchwork-article\", \"version\": 1, \"name\": \"mat\",\n"
      " \"pieces\": [{\"name\": \"mat\", \"width\": {\"terms\": [{\"of\": \"girth\"}]}}]}";
  latchwork_error error = LATCHWORK_ERROR_INIT;
  latchwork_article_file *file = NULL;
  checking = "bad article";
  CHECK(latchwork_read_article(text, sizeof text - 1, &file, &error) == LATCHWORK_E_BAD_ARGUMENT && file == NULL);
  CHECK(error.line == 2 && strcmp(error.field, "pieces[0].width.terms[0].of") == 0);
}

int main(void) {
  articles_come_with_the_library();
  a_blanket_is_shared_out();
  a_host_makes_its_own();
  what_is_wrong_is_told_with_line_and_field();
  return checks_told();
}
