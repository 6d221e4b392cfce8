// Things to make, and what they come to.

#include "latchwork/article.hpp"

#include "bind.hpp"

namespace latchwork::python {

void bind_article(py::module_& m) {
  m.def("article_names", &article_names,
        "Names of the articles that come with the library, in a fixed order: \"cushion cover\", \"blanket of panels\", "
        "\"scarf\", \"bag panel\", \"straight garment pieces\".");
  m.def(
      "built_in_article", [](const Words<"name">& name) { return built_in_article(name.value); }, "name"_a,
      "One of them.\n\nRaises Error bad_argument (field \"name\"), which names them all.");
  m.def(
      "targets", &targets, "article"_a, "choices"_a,
      "Pieces with their sizes, seams, filling and cautions. Where the list is of fillings the rule makes the "
      "article's measures of them; else the rule makes the filling. Ranges stay ranges: the least of a sum is the "
      "sum of what makes it least.\n\nRaises Error bad_argument for an article that contradicts itself or is out of "
      "its ranges (field \"pieces[0].width.terms[1].of\"), and for a choice that is missing, unknown, out of its range "
      "or not wanted (field \"choices.list\", \"choices.measures[2].least_mm\"): so too for a size that a graded rule "
      "does not know, and where a piece comes out without a width and length of 1..1e5 mm, a shape that does not rise "
      "within it, or a seam of less than 0 mm.");
  m.def(
      "read_article",
      [](const Text& text) {
        const py::gil_scoped_release free;  // str and bytes do not change, and `text` keeps its owner
        return read_article(text.view);
      },
      "json"_a,
      "Reads \"latchwork-article\", version 1: the members of Article by their names; what has a default may be left "
      "out.\n\nRaises Error with line and field: too_large, bad_encoding, bad_syntax, wrong_format, newer_version, "
      "duplicate_key, missing_field, unknown_field, bad_value; bad_argument for what targets() refuses in an article.");
}

}  // namespace latchwork::python
