#include "latchwork/brief.hpp"
#include "latchwork/motif.hpp"

#include <algorithm>
#include <filesystem>
#include <iterator>
#include <string>
#include <vector>

#include "brief_folder.hpp"
#include "catch.hpp"
#include "latchwork/file.hpp"
#include "latchwork/instructions.hpp"
#include "text.hpp"

namespace brief_folder_test {

using namespace latchwork;
using latchwork_test::example;
using latchwork_test::Folder;
using latchwork_test::holds;
using latchwork_test::put;
using latchwork_test::refused_field;
using latchwork_test::sampler;
using latchwork_test::text_of;
namespace fs = std::filesystem;

TEST_CASE("a job is written as eight files that hold what the functions give", "[brief]") {
  const Folder folder("job");
  const Brief brief = sampler();
  const Job job = run(brief);
  const fs::path out = folder.path / "new" / "deep";
  write_job(brief, job, out.string());
  std::vector<std::string> names;
  for (const auto& entry : fs::directory_iterator(out)) names.push_back(entry.path().filename().string());
  std::sort(names.begin(), names.end());
  CHECK(names == std::vector<std::string>{"chart-operator.svg", "chart-rs.svg", "chart.txt", "instructions.txt",
                                          "page.html", "plan.json", "schematic.svg", "summary.txt"});
  CHECK(text_of(out / "summary.txt") == summary(brief, job));
  CHECK(text_of(out / "page.html") == page_html(brief, job));
  CHECK(text_of(out / "instructions.txt") == instructions(brief.panel, job.plan, brief.machine));
  CHECK(read_plan(text_of(out / "plan.json")) == job.plan);
  CHECK(holds(text_of(out / "chart-operator.svg"), "wrong side (WS)"));
}

TEST_CASE("a brief without a file is refused with the file's name", "[brief][error]") {
  const std::string missing = GENERATE(as<std::string>(), "panel.json", "machine.json");
  const Folder folder("missing");
  for (const char* name : {"panel.json", "swatch.csv", "machine.json"}) {
    if (name != missing) fs::copy_file(example("sampler") / name, folder.path / name);
  }
  CHECK_THROWS_MATCHES(read_brief(folder.path.string()), Error, refused_field(ErrorCode::io, missing));
  fs::create_directory(folder.path / missing);  // a folder in its place is no better
  CHECK_THROWS_MATCHES(read_brief(folder.path.string()), Error, refused_field(ErrorCode::io, missing));
}

TEST_CASE("a brief's file of 100 MB is refused with its name, and is not read", "[brief][error]") {
  const std::string huge = GENERATE(as<std::string>(), "panel.json", "machine.json", "swatch.csv");
  const Folder folder("huge");
  for (const char* name : {"panel.json", "swatch.csv", "machine.json"}) {
    fs::copy_file(example("sampler") / name, folder.path / name);
  }
  fs::resize_file(folder.path / huge, 100'000'000);  // a hole
  CHECK_THROWS_MATCHES(read_brief(folder.path.string()), Error, refused_field(ErrorCode::too_large, huge));
}

TEST_CASE("a brief without swatch.csv has an empty swatch, and is told without a size", "[brief]") {
  const Folder folder("no-swatch");
  for (const char* name : {"panel.json", "machine.json"}) {
    fs::copy_file(example("sampler") / name, folder.path / name);
  }
  const Brief brief = read_brief(folder.path.string());
  CHECK(brief.swatch == Swatch());
  const Job job = run(brief);
  CHECK_FALSE(job.size);
  CHECK_FALSE(job.missing.empty());
  CHECK(job.plan == run(read_brief(example("sampler").string())).plan);
  fs::create_directory(folder.path / "swatch.csv");
  CHECK_THROWS_MATCHES(read_brief(folder.path.string()), Error, refused_field(ErrorCode::io, "swatch.csv"));
}

TEST_CASE("what a reader refuses is told with the file's name before the field", "[brief][error]") {
  const Folder folder("spoiled");
  for (const char* name : {"panel.json", "swatch.csv", "machine.json"}) {
    fs::copy_file(example("sampler") / name, folder.path / name);
  }
  put(folder.path / "machine.json", "{\"format\": \"latchwork-machine\", \"version\": 1,\n \"needles\": 1}\n");
  try {
    read_brief(folder.path.string());
    FAIL("a bed of one needle was taken");
  } catch (const Error& error) {
    CHECK(error.place().line == 2);
    CHECK(error.place().field == "machine.json: needles");
    CHECK(std::string(error.what()).starts_with("machine.json: "));
  }
  put(folder.path / "machine.json", "");
  try {
    read_brief(folder.path.string());
    FAIL("an empty machine file was taken");
  } catch (const Error& error) {
    CHECK(error.code() == ErrorCode::bad_syntax);
    CHECK(error.place().field == "machine.json");
  }
}

TEST_CASE("a job cannot be written where a file stands in the folder's place", "[brief][error]") {
  const Folder folder("blocked");
  const fs::path file = folder.path / "taken";
  put(file, "something else");
  const Brief brief = sampler();
  const Job job = run(brief);
  CHECK_THROWS_MATCHES(write_job(brief, job, file.string()), Error, refused_field(ErrorCode::io, "folder"));
  CHECK(text_of(file) == "something else");
  fs::create_directories(folder.path / "half" / "plan.json");
  CHECK_THROWS_MATCHES(write_job(brief, job, (folder.path / "half").string()), Error,
                       refused_field(ErrorCode::io, "plan.json"));
  for (const auto& entry : fs::directory_iterator(folder.path / "half")) {
    CHECK(entry.path().extension() != ".part");
  }
}

TEST_CASE("a folder's name that names none is refused as that argument", "[brief][error]") {
  const Brief brief = sampler();
  const Job job = run(brief);
  for (const std::string& name : {std::string(), std::string("out\0side", 8)}) {
    CHECK_THROWS_MATCHES(read_brief(name), Error, refused_field(ErrorCode::bad_argument, "folder"));
    CHECK_THROWS_MATCHES(write_job(brief, job, name), Error, refused_field(ErrorCode::bad_argument, "folder"));
  }
  CHECK_FALSE(fs::exists("out"));
}

TEST_CASE("a yarn file that is refused is told with its name", "[brief][yarn][error]") {
  const Folder folder("brief-yarn");
  fs::copy(example("sampler"), folder.path, fs::copy_options::recursive);
  put(folder.path / "yarn.json", R"({"format": "latchwork-yarn", "version": 1, "yarns": [{"number": "2/28"}]})");
  Place place;
  place.line = 1;
  place.character = 5;
  place.field = "yarn.json: yarns[0].number";
  CHECK_THROWS_MATCHES(read_brief(folder.path.string()), Error, latchwork_test::refused(ErrorCode::bad_unit, place));
}

TEST_CASE("what cannot be written leaves the folder as it was", "[brief][error]") {
  const Brief brief = sampler();
  const Job job = run(brief);
  const Folder folder("delivery");
  put(folder.path / "chart-rs.svg", "from before");
  fs::create_directories(folder.path / "page.html");
  CHECK_THROWS_MATCHES(write_job(brief, job, folder.path.string()), Error, refused_field(ErrorCode::io, "page.html"));
  CHECK(text_of(folder.path / "chart-rs.svg") == "from before");
  CHECK(std::distance(fs::directory_iterator(folder.path), fs::directory_iterator()) == 2);
  fs::remove(folder.path / "page.html");
  write_job(brief, job, folder.path.string());
  CHECK(text_of(folder.path / "chart-rs.svg") != "from before");
  CHECK(std::distance(fs::directory_iterator(folder.path), fs::directory_iterator()) == 8);
}

TEST_CASE("a folder whose name is no text is named in the error as far as it is one", "[brief][error]") {
  CHECK_THROWS_MATCHES(read_brief("no\xFFwhere"), Error, refused_field(ErrorCode::io, "panel.json"));
  CHECK_THROWS_WITH(read_brief("no\xFFwhere"),
                    Catch::Matchers::StartsWith("panel.json: no?where") || Catch::Matchers::StartsWith("no?where"));
}

TEST_CASE("an article of a brief's own has no file's name that a brief or a job has for something else",
          "[brief][article][file][error]") {
  Brief brief = sampler();
  brief.own_article = built_in_article("scarf");
  brief.article.emplace();
  for (const char* name :
       {"panel.json", "machine.json", "yarn.json", "article.json", "brief.json", "plan.json", "Yarn.json"}) {
    CAPTURE(name);
    const Folder folder("reserved");
    brief.article->article = name;
    CHECK_THROWS_MATCHES(write_brief(brief, folder.path.string()), Error,
                         refused_field(ErrorCode::bad_argument, "brief.article.article"));
    CHECK(fs::is_empty(folder.path));
    // Nor is one read that write_job() would write over.
    write_brief(sampler(), folder.path.string());
    put(folder.path / "article.json",
        std::string(R"({"format": "latchwork-article-choices", "version": 1, "article": ")") + name + "\"}");
    CHECK_THROWS_MATCHES(read_brief(folder.path.string()), Error,
                         refused_field(ErrorCode::bad_argument, "article.json: article", 1));
  }
}

TEST_CASE("an article that nobody has is not written, for it could not be read", "[brief][error]") {
  const Folder folder("nobody");
  Brief brief = sampler();
  brief.article = ArticleRequest{};
  brief.article->article = "hat";
  CHECK_THROWS_MATCHES(write_brief(brief, folder.path.string()), Error,
                       refused_field(ErrorCode::bad_argument, "brief.article.article"));
  CHECK(fs::is_empty(folder.path));
}

TEST_CASE("a chart in text that is wider than a terminal stands in parts one below the other", "[brief][chart]") {
  std::vector<Strip> strips{stockinette(2)};
  for (int i = 0; i < 18; ++i) {
    strips.push_back(reverse(2));
    strips.push_back(rope(3, 3, 8, Lean::right));
  }
  Brief brief = sampler();
  brief.panel = join_strips("wide", 8, strips);  // 146 columns
  brief.machine = Machine::generic(MachineClass::standard);
  brief.substitutes.clear();
  const Folder folder("wide-text");
  write_job(brief, run(brief), folder.path.string());
  std::ifstream file(folder.path / "chart.txt");
  std::size_t rows_told = 0;
  for (std::string line; std::getline(file, line);) {
    if (line.starts_with("  8 ") || line.starts_with(" 8 ")) {
      ++rows_told;
      CHECK(line.size() < 130);
    }
  }
  CHECK(rows_told == 6);  // row 8 in three parts, from both sides
}

}  // namespace brief_folder_test
