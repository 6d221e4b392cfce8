#include <fmt/format.h>

#include <algorithm>
#include <functional>
#include <string>
#include <vector>

#include "latchwork/grading.hpp"
#include "text/utf8.hpp"
#include "text/words.hpp"

namespace latchwork::inline v0 {
namespace {

/// "4 (6, 8)".
std::string in_sizes(const std::vector<std::string>& words) {
  if (words.empty()) return {};
  if (std::all_of(words.begin(), words.end(), [&](const std::string& word) { return word == words.front(); })) {
    return words.front();
  }
  return fmt::format("{} ({})", words.front(), joined({words.begin() + 1, words.end()}));
}

using Told = std::function<std::string(const FitCandidate&)>;

std::string told(const Grading& grading, const Told& of) {
  std::vector<std::string> words;
  for (const FitCandidate& candidate : grading.candidates) words.push_back(of(candidate));
  return in_sizes(words);
}

std::string cm(double mm) {
  return fmt::format("{:.1f}", mm / 10);
}

/// Code points, which is what a terminal shows in a line of most scripts.
std::size_t characters(const std::string& text) {
  return static_cast<std::size_t>(
      std::count_if(text.begin(), text.end(), [](char c) { return (static_cast<unsigned char>(c) & 0xC0U) != 0x80U; }));
}

std::string padded(const std::string& text, std::size_t width) {
  return text + std::string(width - std::min(width, characters(text)), ' ');
}

/// What a reader must know of the choice: that it is not proven the best, that sizes rest on a guess where a texture
/// was not measured itself, and what ends open.
std::string notes(const Grading& grading) {
  std::string out;
  if (!grading.complete && !grading.candidates.empty()) {
    out += "Not every choice was looked at: there may be a better one.\n";
  }
  for (const Finding& finding : grading.findings) {
    const bool told = finding.code == FindingCode::borrowed_gauge || finding.code == FindingCode::open_crossing ||
                      finding.code == FindingCode::open_stack;
    if (told) out += one_line(finding.message) + "\n";
  }
  return out;
}

std::size_t groups_of(const Grading& grading) {
  return grading.candidates.empty() ? 0 : grading.candidates.front().times.size();
}

/// A grading put together by hand may have no names.
std::string group_name(const Grading& grading, std::size_t group) {
  return group < grading.groups.size() ? one_line(grading.groups[group]) : fmt::format("group {}", group + 1);
}

/// "once", "4 (6, 8) times".
std::string times_words(const std::string& times) {
  return times == "1" ? "once" : times + " times";
}

}  // namespace

std::string graded_text(const std::vector<std::int64_t>& numbers) {
  std::vector<std::string> words;
  words.reserve(numbers.size());
  for (const std::int64_t number : numbers) words.push_back(fmt::to_string(number));
  return in_sizes(words);
}

std::string grading_table(const Grading& grading) {
  if (grading.candidates.empty()) return grading.message + "\n" + notes(grading);
  struct Column {
    std::string heading;
    Told of;
  };
  std::vector<Column> columns = {{"panels", [](const FitCandidate& c) { return fmt::to_string(c.panels); }}};
  for (std::size_t group = 0; group < groups_of(grading); ++group) {
    columns.push_back({fmt::format("group {}", group + 1), [group](const FitCandidate& c) {
                         return group < c.times.size() ? fmt::format("{} x", c.times[group]) : std::string("?");
                       }});
  }
  columns.push_back({"edge", [](const FitCandidate& c) { return fmt::to_string(c.edge_columns); }});
  columns.push_back({"columns", [](const FitCandidate& c) { return fmt::to_string(c.columns); }});
  columns.push_back({"rows", [](const FitCandidate& c) { return fmt::to_string(c.rows); }});
  columns.push_back({"width cm", [](const FitCandidate& c) { return cm(c.width_mm); }});
  columns.push_back({"off", [](const FitCandidate& c) { return fmt::format("{:+.1f} %", c.width_error_percent); }});
  columns.push_back({"height cm", [](const FitCandidate& c) { return cm(c.height_mm); }});
  columns.push_back({"off", [](const FitCandidate& c) { return fmt::format("{:+.1f} %", c.height_error_percent); }});

  std::size_t longest = 4;  // "size"
  const auto name = [&](std::size_t i) { return i < grading.names.size() ? one_line(grading.names[i]) : "?"; };
  for (std::size_t i = 0; i < grading.candidates.size(); ++i) longest = std::max(longest, characters(name(i)));
  std::string out = padded("size", longest);
  std::vector<std::size_t> widths;
  for (const Column& column : columns) {
    std::size_t width = column.heading.size();
    for (const FitCandidate& candidate : grading.candidates) width = std::max(width, column.of(candidate).size());
    widths.push_back(width);
    out += fmt::format("  {:>{}}", column.heading, width);
  }
  out += "\n";
  for (std::size_t i = 0; i < grading.candidates.size(); ++i) {
    out += padded(name(i), longest);
    for (std::size_t c = 0; c < columns.size(); ++c) {
      out += fmt::format("  {:>{}}", columns[c].of(grading.candidates[i]), widths[c]);
    }
    out += "\n";
  }
  for (std::size_t group = 0; group < groups_of(grading); ++group) {
    out += fmt::format("group {}: {}\n", group + 1, group_name(grading, group));
  }
  return out + notes(grading);
}

std::string grading_words(const Grading& grading) {
  if (grading.candidates.empty()) return grading.message + "\n" + notes(grading);
  std::vector<std::string> names;
  for (const std::string& name : grading.names) names.push_back(one_line(name));
  const auto number = [&](int FitCandidate::*of) {
    return told(grading, [of](const FitCandidate& candidate) { return fmt::to_string(candidate.*of); });
  };
  std::string out = fmt::format("Sizes: {}.\n", in_sizes(names));
  out += fmt::format("Panels of one piece: {}.\n", number(&FitCandidate::panels));
  out += fmt::format("Columns of a panel: {}", number(&FitCandidate::columns));
  out += fmt::format(": {} at each edge", number(&FitCandidate::edge_columns));
  for (std::size_t group = 0; group < groups_of(grading); ++group) {
    const std::string times = told(grading, [group](const FitCandidate& candidate) {
      return group < candidate.times.size() ? fmt::to_string(candidate.times[group]) : std::string("?");
    });
    out += fmt::format(", {} {}", times_words(times), group_name(grading, group));
  }
  out += fmt::format(".\nKnit {} rows", number(&FitCandidate::rows));
  const bool begins = std::any_of(grading.candidates.begin(), grading.candidates.end(),
                                  [](const FitCandidate& candidate) { return candidate.start_row != 1; });
  if (begins) out += fmt::format(", beginning with row {} of the vertical repeat", number(&FitCandidate::start_row));
  out += fmt::format(".\nWidth {} cm, height {} cm, between the seams.\n",
                     told(grading, [](const FitCandidate& candidate) { return cm(candidate.width_mm); }),
                     told(grading, [](const FitCandidate& candidate) { return cm(candidate.height_mm); }));
  return out + notes(grading);
}

}  // namespace latchwork::inline v0
