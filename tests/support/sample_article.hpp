#pragma once

#include "latchwork/article.hpp"

namespace latchwork_test {

/// An article with something in every member, invented for the tests.
inline latchwork::Article sample_article() {
  using namespace latchwork;
  constexpr SourceMark ours = SourceMark::practice;
  Article article;
  article.name = "window bolster \"long\"";
  article.measures = {"length", "girth"};
  article.lists = {
      {"windows",
       "invented",
       ours,
       SizeOf::filling,
       {{"narrow", {{"length", 700, 700, "70 cm"}, {"girth", 300, 300, "30 cm"}}},
        {"wide", {{"length", 900, 900, "90 cm"}, {"girth", 320, 340, "32-34 cm"}}}}},
      {"sewn before",
       "invented",
       SourceMark::from_memory,
       SizeOf::finished,
       {{"short", {{"length", 690, 690, "69 cm"}, {"girth", 290, 290, "29 cm"}}},
        {"with its flap", {{"length", 500, 520, "50-52 cm and the flap", "flap"}, {"girth", 290, 290, "29 cm"}}}}}};
  article.inputs = {{"flap", "how far the end reaches", 20, 200}};
  article.counts = {{"parts", "panels side by side", 1, 6}, {"tiers", "panels one above the other", 1, 4}};
  article.closures = {{"lap", ClosureKind::overlap, 60, 80, "invented", ours},
                      {"sewn", ClosureKind::seam, 0, 0, "invented", ours},
                      {"left open", ClosureKind::open, 0, 0, "invented", ours}};
  article.rules = {{"snug", "invented", ours, 10, 20, {}},
                   {"stepped", "invented", ours, 0, 0, {{700, 690}, {300, 290}}}};
  article.rules[0].oblongs_only = true;
  ArticlePiece body;
  body.name = "body";
  body.across = "parts";
  body.up = "tiers";
  body.width = {{{"length", 1}}, 0, 0, {"parts"}};
  body.length = {{{"girth", 1}, {"overlap", 0.5}}, 0, 0, {"tiers"}};
  body.left = EdgeUse::seamed;
  body.lower = body.upper = EdgeUse::closure;
  ArticlePiece end;
  end.name = "end";
  end.count = 2;
  end.times = {"tiers"};
  end.width = {{{"flap", 1}}, 10, 12, {}};
  end.length = {{{"flap", 2}, {"overlap", -1}}, 0, 0, {}};
  end.lower = EdgeUse::seamed;
  end.shape = {{{{{"flap", 0.5}}, 0, 0, {}}, {{{"flap", 1.5}}, 0, 0, {}}},
               {{{{"flap", 1}}, 20, 20, {}}, {{}, 40, 45, {}}}};
  end.closures = {"lap"};
  article.pieces = {body, end};
  article.seams = {{"side by side", 1, {}, {"parts"}, {{{"girth", 1}, {"overlap", 0.5}}, 0, 0, {}}, {}},
                   {"one above the other", 1, {}, {"tiers"}, {{{"length", 1}}, 0, 0, {}}, {}},
                   {"end", 2, {"tiers"}, {}, {{{"flap", 1}}, 0, 0, {}}, {"lap"}}};
  article.cautions = {{"Keep it clear of heaters.", "invented", ours}};
  return article;
}

/// Its wide size, in three parts and two tiers, lapped.
inline latchwork::ArticleChoices sample_choices() {
  latchwork::ArticleChoices choices;
  choices.list = "windows";
  choices.size = "wide";
  choices.rule = "snug";
  choices.closure = "lap";
  choices.measures = {{"flap", 100, 100, ""}};
  choices.counts = {{"parts", 3}, {"tiers", 2}};
  return choices;
}

}  // namespace latchwork_test
