#include <fmt/format.h>

#include <algorithm>
#include <string>
#include <string_view>

#include "brief/article.hpp"
#include "brief/facts.hpp"
#include "brief/match.hpp"
#include "brief/page_parts.hpp"
#include "brief/sheets.hpp"
#include "instructions/sheet.hpp"
#include "instructions/words.hpp"
#include "latchwork/brief.hpp"
#include "text/utf8.hpp"
#include "text/words.hpp"

namespace latchwork::inline v0 {
namespace {

using report::tag;

void append_list(std::string& out, std::string_view title, const std::vector<std::string>& lines) {
  if (lines.empty()) return;
  out += tag("h3", title) + "\n<ul>\n";
  for (const std::string& line : lines) out += tag("li", line) + "\n";
  out += "</ul>\n";
}

bool is_digit(char each) {
  return each >= '0' && each <= '9';
}

/// How long the range of needles is that starts here, "R24-R25"; 0 where none does.
std::size_t needle_range(std::string_view words, std::size_t from) {
  std::size_t at = from;
  for (const bool last : {false, true}) {
    if (at >= words.size() || (words[at] != 'L' && words[at] != 'R')) return 0;
    const std::size_t digits = ++at;
    while (at < words.size() && is_digit(words[at])) ++at;
    if (at == digits) return 0;
    if (!last && (at >= words.size() || words[at++] != '-')) return 0;
  }
  return at - from;
}

/// Whether the space at `i` stands inside what is read as one: "2 p", "3 x (t, p)", "as 12", "cross X1".
bool is_tie(std::string_view words, std::size_t i) {
  const auto is = [&](std::size_t at, std::string_view letters) {
    return at < words.size() && letters.find(words[at]) != std::string_view::npos;
  };
  constexpr std::string_view digits = "0123456789";
  if (i == 0 || words[i] != ' ') return false;
  const std::string_view before = words.substr(0, i);
  if (before.ends_with(" as") && is(i + 1, digits)) return true;
  if (before.ends_with("cross") && is(i + 1, "X") && is(i + 2, digits)) return true;
  return is(i - 1, digits) && is(i + 1, "kptsx") && (i + 2 >= words.size() || is(i + 2, " ,)"));
}

/// Escaped, with ranges of needles, and what is_tie() holds together, each on one line.
std::string kept_together(std::string_view words) {
  std::string out;
  std::size_t from = 0;
  const auto add = [&](std::size_t end, const std::string& instead, std::size_t length) {
    out += escaped_xml(words.substr(from, end - from)) + instead;
    from = end + length;
  };
  for (std::size_t i = 0; i < words.size(); ++i) {
    const bool starts = i == 0 || words[i - 1] == ' ';
    const std::size_t range = starts ? needle_range(words, i) : 0;
    if (range > 0) {
      add(i, fmt::format("<span class=\"range\">{}</span>", words.substr(i, range)), range);
      i += range - 1;
    } else if (is_tie(words, i)) {
      add(i, "\u00a0", 1);
    }
  }
  return out + escaped_xml(words.substr(from));
}

/// Letters of a phrase that is kept on one line, but on a narrow screen.
constexpr std::size_t most_on_a_line = 36;

/// The same, short ranges of a sweep each on one line; long ones break as words do.
std::string in_ranges(std::string_view words) {
  constexpr std::string_view between = " | ";
  std::string out;
  for (std::size_t from = 0; from <= words.size();) {
    const std::size_t end = std::min(words.find(between, from), words.size());
    const std::string range = (from == 0 ? "" : "| ") + kept_together(words.substr(from, end - from));
    const bool keep = from > 0 && end - from <= most_on_a_line;
    if (from > 0) out += ' ';
    out += keep ? "<span class=\"phrase\">" + range + "</span>" : range;
    from = end + between.size();
  }
  return out;
}

void append_terms(std::string& out, std::string_view title,
                  const std::vector<std::pair<std::string, std::string>>& terms, std::string_view kind = {}) {
  if (terms.empty()) return;
  if (!title.empty()) out += tag("h3", title) + "\n";
  out += fmt::format("<table class=\"terms{}\">\n<tbody>\n", kind);
  for (const auto& [term, words] : terms) {
    out += "<tr>" + tag("th", term, " scope=\"row\"") + "<td>" + in_ranges(words) + "</td></tr>\n";
  }
  out += "</tbody>\n</table>\n";
}

void append_stop(std::string& out, const writing::SheetStop& stop) {
  out += fmt::format("<tr><td class=\"n\">{}</td><td class=\"at\"><span class=\"box\"></span>{} {}</td><td>",
                     stop.number, writing::counter(stop.row), writing::carriage(stop.right));
  // Crossings are short and many: they go on in the line, each whole.
  bool crossed = false;
  for (std::size_t i = 0; i < stop.actions.size(); ++i) {
    const std::string& action = stop.actions[i];
    const bool crosses = action.find(": cross X") != std::string::npos && action.size() <= most_on_a_line;
    if (i > 0) out += crosses && crossed ? "; " : "<br/>";
    out += crosses ? "<span class=\"phrase\">" + kept_together(action) + "</span>" : in_ranges(action);
    crossed = crosses;
  }
  out += "</td></tr>\n";
}

void append_repeat(std::string& out, const writing::SheetRepeat& repeat) {
  out += "<tr class=\"repeat\"><td class=\"n\"></td><td class=\"again\" colspan=\"2\">" + escaped_xml(repeat.words) +
         "<br/>";
  for (std::size_t i = 0; i < repeat.times.size(); ++i) {
    if (i > 0 && !repeat.one_stop) out += "<br/>";
    for (const std::string& row : repeat.times[i]) {
      out += fmt::format("<span class=\"tick\"><span class=\"box\"></span>{}</span> ", row);
    }
  }
  out += "</td></tr>\n";
}

/// That charts and instructions below are not those of the panels that fit, and where those are.
void append_fitted(std::string& out, const Brief& brief, const Job& job) {
  if (!job.article || job.article->panels.empty()) return;
  out += "<p class=\"lead\"><strong>" +
         escaped_xml("Charts and instructions here are " + report::charts_words(brief, *job.article) + ":") +
         "</strong></p>\n<ul>\n";
  for (const FittedPanel& each : job.article->panels) {
    out += fmt::format("<li><a href=\"{0}/page.html\">{0}</a>: {1}</li>\n", escaped_xml(each.folder),
                       escaped_xml(report::to_knit_words(each)));
  }
  out += "</ul>\n";
}

void append_steps(std::string& out, const Brief& brief, const Job& job) {
  const writing::Sheet sheet = writing::sheet_of(brief.panel, job.plan, brief.machine);
  out += "<section>\n<h2 id=\"steps\">Instructions</h2>\n";
  append_fitted(out, brief, job);
  if (job.plan.status == PlanStatus::infeasible) {
    append_list(out, writing::reasons_title(job.plan.status), sheet.reasons);
    out += "</section>\n";
    return;
  }
  for (const std::string& line : sheet.header) out += tag("p", line) + "\n";
  append_list(out, writing::reasons_title(job.plan.status), sheet.reasons);
  append_terms(out, "Abbreviations", sheet.key);
  append_list(out, "Take care", sheet.cautions);
  append_list(out, "At every stop", sheet.rules);
  append_terms(out, "Crossings", sheet.crossings);
  append_terms(out, "Needles worked together", sheet.sets);
  append_terms(out, "Sweeps worked more than once", sheet.sweeps);
  out += "<h3>Steps</h3>\n" + tag("p", sheet.start, " class=\"lead\"") + "\n";
  if (!sheet.parts.empty()) {
    out +=
        "<table class=\"steps\">\n<thead><tr><th class=\"n\">Stop</th><th>At</th><th>Hand "
        "work</th></tr></thead>\n<tbody>\n";
    for (const writing::SheetPart& part : sheet.parts) {
      for (const writing::SheetStop& stop : part.stops) append_stop(out, stop);
      if (part.repeat) append_repeat(out, *part.repeat);
    }
    out += "</tbody>\n</table>\n";
  }
  if (!sheet.end.empty()) out += tag("p", sheet.end, " class=\"end\"") + "\n";
  out += "</section>\n";
}

/// A strip's measures, how often it stands in a band, and the rows of the bands it stands in so.
struct SizeLine {
  StripSize strip;
  int times = 1;
  std::vector<std::string> rows{};
};

/// Strips alike in name and measures are told once.
std::vector<SizeLine> size_lines(const Panel& panel, const Size& size) {
  std::vector<SizeLine> lines;
  for (std::size_t from = 0; from < size.strips.size();) {
    const int index = size.strips[from].band;
    std::vector<SizeLine> own;
    for (; from < size.strips.size() && size.strips[from].band == index; ++from) {
      StripSize strip = size.strips[from];
      strip.band = 0;
      const auto same = std::find_if(own.begin(), own.end(), [&](const SizeLine& line) { return line.strip == strip; });
      if (same != own.end()) {
        ++same->times;
      } else {
        own.push_back({.strip = std::move(strip)});
      }
    }
    const Band& band = panel.bands()[static_cast<std::size_t>(index)];
    for (SizeLine& line : own) {
      const auto same = std::find_if(lines.begin(), lines.end(), [&](const SizeLine& told) {
        return told.strip == line.strip && told.times == line.times;
      });
      SizeLine& told = same != lines.end() ? *same : lines.emplace_back(std::move(line));
      told.rows.push_back(band.rows == 1 ? fmt::to_string(band.row)
                                         : fmt::format("{}-{}", band.row, band.row + band.rows - 1));
    }
  }
  return lines;
}

void append_sizes(std::string& out, const Panel& panel, const Size& size) {
  if (size.strips.empty()) return;
  const bool bands = panel.bands().size() > 1;
  out += "<h3>Sizes by strip</h3>\n<table>\n<thead><tr>";
  if (bands) out += "<th>Rows</th>";
  out +=
      "<th>Strip</th><th class=\"n\">Columns</th><th class=\"n\">Width, mm</th><th class=\"n\">Height, mm</th></tr>"
      "</thead>\n<tbody>\n";
  for (const auto& [strip, times, rows] : size_lines(panel, size)) {
    const std::string name = times == 1 ? strip.name : fmt::format("{} ({} times), each", strip.name, times);
    out += "<tr>";
    if (bands) out += tag("td", joined(rows));
    out += tag("td", name, " class=\"name\"") +
           fmt::format("<td class=\"n\">{}</td><td class=\"n\">{:.1f}</td><td class=\"n\">{:.1f}</td></tr>\n",
                       strip.columns, strip.width_mm, strip.height_mm);
  }
  out += "</tbody>\n</table>\n";
}

/// A cell that stands under its column's head or, on a narrow screen, tells it itself.
std::string labelled(std::string_view label, std::string_view words) {
  return tag("td", words, fmt::format(" data-label=\"{}\"", label));
}

void append_article(std::string& out, const Brief& brief, const Job& job, const report::Facts& facts) {
  if (!brief.article) return;
  out += "<h3 id=\"article\">What it is for</h3>\n";
  append_terms(out, "", facts.article, " facts");
  if (!job.article) return;
  out +=
      "<table class=\"pieces\">\n<thead><tr><th>Piece</th><th>Wanted</th><th>This panel, as it stands</th><th>Best "
      "fit</th>"
      "<th>To knit</th></tr></thead>\n<tbody>\n";
  for (const report::ArticleRow& row : report::article_rows(brief, *job.article)) {
    out += "<tr>" + tag("td", row.piece, " class=\"name\"") + labelled("Wanted", row.wanted) +
           labelled("As it stands", row.stands) + labelled("Best fit", row.best) + labelled("To knit", row.knitted) +
           "</tr>\n";
  }
  out += "</tbody>\n</table>\n";
  append_fitted(out, brief, job);
  append_list(out, "Where the article's figures come from", job.article->fit.targets.sources);
}

}  // namespace

std::string page_html(const Brief& brief, const Job& job) {
  report::require_job_of(brief, job);
  return report::page_of(brief, job);
}

std::string report::page_of(const Brief& brief, const Job& job) {
  const report::Facts facts = report::facts_of(brief, job);
  std::string out =
      "<!DOCTYPE html>\n<html xmlns=\"http://www.w3.org/1999/xhtml\" lang=\"en\">\n<head>\n<meta charset=\"utf-8\"/>\n"
      "<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\"/>\n";
  out += tag("title", facts.title) + "\n<style>" + std::string(report::page_style) + "</style>\n</head>\n<body>\n";
  out += tag("h1", facts.title) + "\n" + tag("p", facts.subtitle) + "\n";
  out +=
      "<nav><a href=\"#steps\">Instructions</a> <a href=\"#operator\">Operator's view</a> "
      "<a href=\"#right-side\">Right side</a></nav>\n";
  out += "<section>\n<h2>Summary</h2>\n";
  append_terms(out, "", facts.lines, " facts");
  if (!facts.notes.empty()) {
    out += "<h3>Worth knowing</h3>\n";
    append_terms(out, "", facts.notes, " facts");
  }
  if (job.size) append_sizes(out, brief.panel, *job.size);
  if (const auto schematic = report::schematic_of(brief, job)) {
    const std::size_t open = schematic->svg.find('>');
    out += "<h3 id=\"schematic\">Schematic</h3>\n<figure class=\"chart schematic\">\n" +
           schematic->svg.substr(0, open) +
           fmt::format(" style=\"--print-width:{:.2f}mm\"", schematic->fonts_wide * report::font_mm) +
           schematic->svg.substr(open) + "</figure>\n";
  }
  append_article(out, brief, job, facts);
  out += "</section>\n";
  append_steps(out, brief, job);
  const report::BothCharts charts =
      report::chart_sheets(brief.panel, report::chart_options(brief, job, Side::operator_view),
                           report::chart_options(brief, job, Side::right_side));
  report::append_chart(out, charts.operator_view, Side::operator_view);
  report::append_chart(out, charts.right_side, Side::right_side);
  out += "</body>\n</html>\n";
  return out;
}

}  // namespace latchwork::inline v0
