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
  const SizeOptions sizes;
  m.def(
      "piece_outline",
      [](const TargetPiece& piece, const Panel& panel, const Swatch& swatch, Whole<"step"> step,
         std::optional<ClothState> state, std::vector<Substitute> substitutes, double seam_left, double seam_right,
         double seam_bottom, double seam_top) {
        const SizeOptions options{state,    std::move(substitutes), seam_left, seam_right, seam_bottom,
                                  seam_top, SizeOptions().level};
        return piece_outline(piece, panel, swatch, options, step);
      },
      "piece"_a, "panel"_a, "swatch"_a, py::kw_only(), "step"_a = 1, "state"_a = py::none(),
      "substitutes"_a = std::vector<Substitute>(), "seam_left"_a = sizes.seam_left, "seam_right"_a = sizes.seam_right,
      "seam_bottom"_a = sizes.seam_bottom, "seam_top"_a = sizes.seam_top,
      "The shape of a piece on a panel that is to make it, for shaped(): in mm between the seams at the panel's own "
      "gauges, columns by their strips' widths, rows by the heights that size() gives the panel in that shape. Ranges "
      "are met in their middle; between "
      "two points of the piece's shape the width changes evenly. In each row half of what the panel has too much "
      "lies outside at each side, as seen on the right side, to the nearest column, halves out. A point at the "
      "piece's length is at the panel's last row. Seams are read where the piece's edge is seamed. With step=2 the "
      "edges change after even rows only, when the carriage stands where it stood at the cast-on.\n"
      "\n"
      "Raises Error no_gauge (field = texture); bad_argument (field \"piece.width_least_mm\" or "
      "\"piece.shape[1].width_least_mm\", with the row, where the piece is wider than the panel; "
      "\"piece.shape[1].height_least_mm\" where it is higher; those and ..._greatest_mm for what is no range or does "
      "not rise; \"step\"; \"outline\", with the row, where no stitch is left; as size()).");
  const ShapeOptions cuts;
  m.def(
      "fitted_piece",
      [](const TargetPiece& piece, const FitRequest& design, const FitCandidate& candidate, const Swatch& swatch,
         Whole<"panel"> panel, Whole<"step"> step, Whole<"edge_stitches"> edge_stitches, CutWork cut) {
        const Swatch own = swatch;  // another thread may change it meanwhile
        const py::gil_scoped_release free;
        return fitted_piece(piece, design, candidate, own, panel, step, {.edge_stitches = edge_stitches, .cut = cut});
      },
      "piece"_a, "design"_a, "candidate"_a, "swatch"_a, "panel"_a = 0, py::kw_only(), "step"_a = 1,
      "edge_stitches"_a = cuts.edge_stitches, py::arg_v("cut", cuts.cut, "CutWork.refuse"),
      "A panel that a piece is knitted of: fitted() of piece_request(), cut to the piece's shape, where it has one, by "
      "piece_outline(), measured by the design's state, substitutes and seams. Of a piece sewn of several panels the "
      "outer ones have its edges, and what lies between them stays whole. `step` as in piece_outline(), "
      "`edge_stitches` and `cut` as in shaped(). Raises Error as fitted(), piece_outline() and shaped(); "
      "bad_encoding.");
  m.def("panel_design", without_gil(&panel_design), "request"_a, "panel"_a,
        "The design of a request, with groups and edge cut from the panel's strips: each one vertical repeat of its "
        "strip, from row 1 up. Only of a panel of one band.\n\nRaises Error bad_argument (field \"made[1]\", "
        "\"groups[0].last\", \"edge\", \"design.rows_step\", ...; \"panel\" for one of several bands; \"groups[0]\", "
        "\"edge\" "
        "for a strip that repeats in more rows than the panel has); crossing_cut.");
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
      "fits, which fitted() makes panels of. Pieces alike are fitted once; pieces whose lengths are one target get "
      "one row count, those whose widths are one target too the same panels and times, chosen together by the least "
      "greatest error. A panel of several bands is held against the pieces and not fitted, and a message says so. "
      "`stop` and `progress` as in fit().\n"
      "\n"
      "Raises Error as targets(), panel_design(), size() and fit(); bad_argument (field \"made[0]\") for a name that "
      "is no piece's under these choices; bad_encoding for a name that is not UTF-8.");
}

}  // namespace latchwork::python
