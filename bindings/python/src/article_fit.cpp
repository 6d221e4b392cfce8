// From an article to panels that make it.

#include "latchwork/article_fit.hpp"

#include "watched_fit.hpp"

namespace latchwork::python {

void bind_article_fit(py::module_& m) {
  m.def(
      "piece_request", &piece_request, "piece"_a, "design"_a,
      "What fits a piece: the design, with the piece for its target. The width is the piece's, where it is shaped that "
      "of its widest place, since the shape is cut from it; the height is its length. The design's seam_left, "
      "seam_right, seam_bottom and seam_top stay where the piece's edge is seamed, and are 0 where it is free or at "
      "the opening. Nothing is checked.");
  m.def(
      "fit_piece",
      [](const TargetPiece& piece, const FitRequest& design, const Swatch& swatch, const std::stop_source* stop,
         std::optional<py::function> progress) {
        return watched_fit(stop, std::move(progress), [&piece, &design, own = swatch](const FitOptions& options) {
          return fit_piece(piece, design, own, options);
        });
      },
      "piece"_a, "design"_a, "swatch"_a, py::kw_only(), "stop"_a = py::none(), "progress"_a = py::none(),
      "fit() of piece_request(). `stop` and `progress` as in fit(). Raises Error as fit().");
  m.def("panel_design", without_gil(&panel_design), "request"_a, "panel"_a,
        "The design of a request, with groups and edge cut from the panel's strips: each one vertical repeat of its "
        "strip, from row 1 up. Only of a panel of one band.\n\nRaises Error bad_argument (field \"made[1]\", "
        "\"groups[0].last\", \"edge\", \"design.rows_step\", ...; \"panel\" for one of several bands); crossing_cut.");
  m.def(
      "fit_article",
      [](const Article& article, const ArticleRequest& request, const Panel& panel, const Swatch& swatch,
         const std::stop_source* stop, std::optional<py::function> progress) {
        return watched_fit(stop, std::move(progress),
                           [&article, &request, own_panel = panel, own_swatch = swatch](const FitOptions& options) {
                             return fit_article(article, request, own_panel, own_swatch, options);
                           });
      },
      "article"_a, "request"_a, "panel"_a, "swatch"_a, py::kw_only(), "stop"_a = py::none(), "progress"_a = py::none(),
      "Targets of the article, the panel as it stands held against each piece that is made as it is, and the best "
      "fits, "
      "which fitted() makes panels of. Pieces alike are fitted once; pieces whose lengths are one target get one row "
      "count, those whose widths are one target too the same panels and times, chosen together by the least greatest "
      "error. A panel of several bands is held against the pieces and not fitted, and a message says so. `stop` and "
      "`progress` as in fit().\n\nRaises Error as targets(), "
      "panel_design(), size() and fit(); bad_argument (field \"made[0]\") for a name that is no piece's under these "
      "choices; bad_encoding for a name that is not UTF-8.");
}

}  // namespace latchwork::python
