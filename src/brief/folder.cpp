#include <algorithm>
#include <array>
#include <filesystem>
#include <fstream>
#include <initializer_list>
#include <string>
#include <system_error>
#include <utility>
#include <vector>

#include <fmt/format.h>

#include "article_fit/check.hpp"
#include "brief/article.hpp"
#include "brief/asked.hpp"
#include "brief/facts.hpp"
#include "brief/match.hpp"
#include "brief/sheets.hpp"
#include "brief/substitutes.hpp"
#include "file/json.hpp"
#include "latchwork/brief.hpp"
#include "latchwork/chart.hpp"
#include "latchwork/error.hpp"
#include "latchwork/file.hpp"
#include "latchwork/instructions.hpp"
#include "text/utf8.hpp"
#include "text/words.hpp"

namespace latchwork::inline v0 {
namespace {

namespace fs = std::filesystem;

Error io_error(const std::string& name, const fs::path& path, std::string_view what) {
  Place place;
  place.field = name;
  return {ErrorCode::io, place, fmt::format("{} {}", one_line(path.string()), what)};
}

std::string read_file(const fs::path& folder, const std::string& name) {
  const fs::path path = folder / name;
  std::error_code failure;
  if (!fs::is_regular_file(path, failure)) throw io_error(name, path, "is not there, or is no file");
  const std::uintmax_t bytes = fs::file_size(path, failure);
  if (failure) throw io_error(name, path, "cannot be read");
  if (bytes > max_file_bytes) {
    Place place;
    place.field = name;
    throw Error(ErrorCode::too_large, place,
                fmt::format("{} has {} bytes; at most {} are read", one_line(path.string()), bytes, max_file_bytes));
  }
  std::ifstream file(path, std::ios::binary);
  std::string text(static_cast<std::size_t>(bytes), '\0');
  file.read(text.data(), static_cast<std::streamsize>(bytes));
  if (!file || file.gcount() != static_cast<std::streamsize>(bytes)) throw io_error(name, path, "cannot be read");
  return text;
}

/// Reads one file; what its reader refuses is told with the file's name before field and message.
template <class Reader>
auto read_with(const fs::path& folder, const std::string& name, Reader&& reader) {
  const std::string text = read_file(folder, name);
  try {
    return reader(text);
  } catch (const Error& error) {
    Place place = error.place();
    place.field = place.field.empty() ? name : name + ": " + place.field;
    throw Error(error.code(), place, name + ": " + error.what());
  }
}

/// Files written beside their places, and moved there when all are written: no half a file is ever found, and what
/// cannot be written leaves the folder as it was, unless a move fails, which is the system's doing.
class Delivery {
 public:
  explicit Delivery(fs::path folder) : folder_(std::move(folder)) {}
  Delivery(const Delivery&) = delete;
  Delivery& operator=(const Delivery&) = delete;
  ~Delivery() {
    std::error_code ignored;
    for (const std::string& name : names_) fs::remove(part(name), ignored);
  }

  void add(const std::string& name, const std::string& text) {
    const fs::path path = folder_ / name;
    std::error_code failure;
    if (fs::is_directory(path, failure)) throw io_error(name, path, "cannot be written: a folder stands there");
    names_.push_back(name);
    std::ofstream file(part(name), std::ios::binary | std::ios::trunc);
    file.write(text.data(), static_cast<std::streamsize>(text.size()));
    file.close();
    if (!file) throw io_error(name, path, "cannot be written");
  }

  void deliver() {
    for (const std::string& name : names_) {
      std::error_code failure;
      fs::rename(part(name), folder_ / name, failure);
      if (failure) throw io_error(name, folder_ / name, "cannot be written: " + failure.message());
    }
    names_.clear();
  }

 private:
  fs::path part(const std::string& name) const { return folder_ / (name + ".part"); }

  fs::path folder_;
  std::vector<std::string> names_;
};

/// A folder's name as a path: one that is empty, or that the system would cut at a NUL, names none.
fs::path path_of(const std::string& folder) {
  Place place;
  place.field = "folder";
  if (folder.empty()) throw Error(ErrorCode::bad_argument, place, "folder is empty; \".\" is the one at work in");
  if (const std::size_t nul = folder.find('\0'); nul != std::string::npos) {
    throw Error(ErrorCode::bad_argument, place, fmt::format("folder has a NUL as its character {}", nul + 1));
  }
  return {folder};
}

constexpr const char* article_file = "article.json";
constexpr const char* asked_file = "brief.json";

/// What write_brief() and write_job() write, or take away, under a name that an article's own file might have.
constexpr std::array reserved_files = {"panel.json", "machine.json", "yarn.json",
                                       article_file, asked_file,     "plan.json"};

/// Some file systems take names for the same whose letters differ in size only.
bool is_reserved(std::string name) {
  for (char& each : name) each = each >= 'A' && each <= 'Z' ? static_cast<char>(each - 'A' + 'a') : each;
  return std::find(reserved_files.begin(), reserved_files.end(), name) != reserved_files.end();
}

/// A file of the folder, and not of another: no part of a path; and none that is there for something else.
bool is_article_file(const std::string& name) {
  return name.size() > 5 && name.ends_with(".json") && name.find_first_of("/\\:") == std::string::npos &&
         name.find('\0') == std::string::npos && !is_reserved(name);
}

/// Does `check`, and tells what it refuses with the line and the field of article.json.
template <class Check>
void check_article_file(const fs::path& folder, Check&& check) {
  read_with(folder, article_file, [&](const std::string& text) {
    const json::Document document(text);
    document.root().guard(std::forward<Check>(check));
    return 0;
  });
}

void read_article_of(const fs::path& folder, Brief& brief) {
  brief.article = read_with(folder, article_file, [](const std::string& text) { return read_article_request(text); });
  const std::string& name = brief.article->article;
  const std::vector<std::string> known = article_names();
  if (std::find(known.begin(), known.end(), name) == known.end()) {
    if (!is_article_file(name)) {
      check_article_file(folder, [&] {
        Place place;
        place.field = "article";
        throw Error(ErrorCode::bad_argument, place,
                    fmt::format("'{}' is none; it must be '{}', or a file \"name.json\" of its own beside it",
                                shown(name), joined(known, "', '")));
      });
    }
    brief.own_article = read_with(folder, name, [](const std::string& text) { return read_article(text); });
  }
  // What does not go with this article or this panel is found here, and not after hours at the plan.
  check_article_file(folder, [&] {
    made_pieces(targets(report::article_of(brief), brief.article->choices), brief.article->made);
    if (brief.panel.bands().size() == 1) panel_design(*brief.article, brief.panel);
  });
}

/// What the article is called is what it is read by again: one of the library's, or a file of the brief's own.
void require_article_name(const Brief& brief) {
  const std::string name = brief.article ? brief.article->article : "";
  const std::vector<std::string> known = article_names();
  const bool is_known = std::find(known.begin(), known.end(), name) != known.end();
  if (brief.own_article ? is_article_file(name) && !is_known : is_known) return;
  Place place;
  place.field = "brief.article.article";
  const std::string told =
      brief.own_article
          ? fmt::format(
                "with an article of the brief's own it names that one's file, \"name.json\", which "
                "must be none of {}",
                joined({reserved_files.begin(), reserved_files.end()}))
          : fmt::format("the brief has no article of its own, and the library has '{}'", joined(known, "', '"));
  throw Error(ErrorCode::bad_argument, place, fmt::format("brief.article.article is '{}'; {}", shown(name), told));
}

constexpr const char* substitutes_file = "substitutes.csv";

/// Files to be written, by name.
using Files = std::vector<std::pair<std::string, std::string>>;

/// Writes all or none of them, then takes away those of `others` that an earlier call left and this one does not have.
void write_files(const fs::path& folder, const Files& files, std::initializer_list<const char*> others) {
  std::error_code failure;
  fs::create_directories(folder, failure);
  if (!fs::is_directory(folder, failure)) throw io_error("folder", folder, "cannot be made, or is no folder");
  Delivery delivery(folder);
  for (const auto& [name, text] : files) delivery.add(name, text);
  delivery.deliver();
  for (const char* other : others) {
    const bool is_written =
        std::any_of(files.begin(), files.end(), [&](const auto& file) { return file.first == other; });
    if (!is_written) fs::remove(folder / other, failure);
  }
}

}  // namespace

Brief read_brief(const std::string& folder) {
  const fs::path path = path_of(folder);
  Panel panel = read_with(path, "panel.json", [](const std::string& text) { return read_panel(text); });
  MachineFile machine = read_with(path, "machine.json", [](const std::string& text) { return read_machine(text); });
  std::optional<YarnRequest> yarn;
  std::error_code failure;
  Swatch swatch;
  if (fs::exists(path / "swatch.csv", failure)) {
    swatch = read_with(path, "swatch.csv", [](const std::string& text) { return read_swatch(text); });
  }
  if (fs::exists(path / "yarn.json", failure)) {
    yarn = read_with(path, "yarn.json", [](const std::string& text) { return read_yarn_request(text); });
  }
  Brief brief{std::move(panel),
              std::move(swatch),
              std::move(machine.machine),
              machine.effort,
              std::move(yarn),
              /*article=*/std::nullopt,
              /*own_article=*/std::nullopt,
              /*substitutes=*/{}};
  if (fs::exists(path / asked_file, failure)) {
    const report::Asked asked = read_with(path, asked_file, report::read_asked);
    brief.state = asked.state;
    brief.session_ms = asked.session_ms;
    brief.rest_ms = asked.rest_ms;
  }
  if (fs::exists(path / substitutes_file, failure))
    brief.substitutes = read_with(path, substitutes_file, report::read_substitutes);
  if (fs::exists(path / "article.json", failure)) read_article_of(path, brief);
  return brief;
}

void write_job(const Brief& brief, const Job& job, const std::string& folder) {
  const fs::path path = path_of(folder);
  report::require_job_of(brief, job);
  // All is made before anything is written: what cannot be made leaves the folder as it was.
  Files files = {
      {"chart-rs.svg", chart_svg(brief.panel, report::chart_options(brief, job, Side::right_side))},
      {"chart-operator.svg", chart_svg(brief.panel, report::chart_options(brief, job, Side::operator_view))},
      {"chart.txt", report::text_sheets(brief.panel, report::chart_options(brief, job, Side::right_side)) + "\n" +
                        report::text_sheets(brief.panel, report::chart_options(brief, job, Side::operator_view))},
      {"instructions.txt", instructions(brief.panel, job.plan, brief.machine)},
      {"plan.json", write(job.plan)},
      {"summary.txt", report::summary_of(brief, job)},
      {"page.html", report::page_of(brief, job)},
  };
  if (auto schematic = report::schematic_of(brief, job)) files.emplace_back("schematic.svg", std::move(schematic->svg));
  if (job.article) files.emplace_back("article.txt", report::article_text(brief, *job.article));
  write_files(path, files, {"schematic.svg", "article.txt"});
}

void write_brief(const Brief& brief, const std::string& folder) {
  const fs::path path = path_of(folder);
  report::require_asked(brief);
  Files files = {
      {"panel.json", write(brief.panel)},
      {"swatch.csv", write(brief.swatch)},
      {"machine.json", write(MachineFile{brief.machine, brief.effort})},
  };
  if (brief.yarn) files.emplace_back("yarn.json", write(*brief.yarn));
  if (brief.article) files.emplace_back(article_file, write(*brief.article));
  if (const report::Asked asked = report::asked_of(brief); asked != report::Asked{}) {
    files.emplace_back(asked_file, report::write_asked(asked));
  }
  if (brief.article || brief.own_article) require_article_name(brief);
  if (brief.own_article) files.emplace_back(brief.article->article, write(*brief.own_article));
  if (!brief.substitutes.empty()) files.emplace_back(substitutes_file, report::substitutes_text(brief.substitutes));
  write_files(path, files, {"yarn.json", article_file, substitutes_file, asked_file});
}

}  // namespace latchwork::inline v0
