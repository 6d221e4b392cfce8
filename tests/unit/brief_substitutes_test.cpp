#include <algorithm>
#include <filesystem>
#include <string>

#include "brief_folder.hpp"
#include "catch.hpp"
#include "latchwork/brief.hpp"
#include "text.hpp"

namespace brief_substitutes_test {

using namespace latchwork;
using latchwork_test::example;
using latchwork_test::Folder;
using latchwork_test::holds;
using latchwork_test::put;
using latchwork_test::refused_field;
using latchwork_test::text_of;
namespace fs = std::filesystem;

namespace {

/// The cushion's brief without what its swatch says of one texture.
std::string without(const std::string& texture, const fs::path& folder) {
  fs::copy(example("cushion"), folder, fs::copy_options::recursive);
  std::string left;
  const std::string csv = text_of(folder / "swatch.csv");
  for (std::size_t at = 0; at < csv.size();) {
    const std::size_t end = csv.find('\n', at) + 1;
    const std::string line = csv.substr(at, end - at);
    if (!line.starts_with(texture + ",")) left += line;
    at = end;
  }
  REQUIRE(left.size() < csv.size());
  put(folder / "swatch.csv", left);
  return folder.string();
}

}  // namespace

TEST_CASE("a texture without a swatch of its own borrows a gauge only as the brief says, and the job tells it",
          "[brief][gauge]") {
  const Folder folder("substitutes");
  const std::string name = without("reverse", folder.path);
  const Brief bare = read_brief(name);
  CHECK(bare.substitutes.empty());
  const Job barred = run(bare);
  CHECK_FALSE(barred.size);
  REQUIRE(barred.missing.size() == 1);
  CHECK(barred.missing[0].place.field == "reverse");
  put(folder.path / "substitutes.csv", "texture,use\nreverse,stockinette\n");
  const Brief brief = read_brief(name);
  CHECK(brief.substitutes == std::vector<Substitute>{{"reverse", "stockinette"}});
  const Job job = run(brief);
  SizeOptions how;
  how.substitutes = brief.substitutes;
  CHECK(job.size == size(brief.panel, brief.swatch, how));
  const auto borrowed = [](const std::vector<Finding>& all) {
    return std::any_of(all.begin(), all.end(), [](const Finding& each) {
      return each.code == FindingCode::borrowed_gauge && holds(each.message, "'reverse'");
    });
  };
  CHECK(borrowed(job.size->findings));
  REQUIRE(job.article);
  CHECK(borrowed(job.article->fit.pieces.at(0).fit.findings));
  const char* told = "texture 'reverse' is measured by the gauge of 'stockinette', as told: it was not measured";
  CHECK(holds(summary(brief, job), told));
  CHECK(holds(page_html(brief, job), "schematic"));
  const Folder out("substitutes-out");
  write_job(brief, job, out.path.string());
  CHECK(holds(text_of(out.path / "summary.txt"), told));
  // Each panel that fits borrows as it did when it was fitted.
  REQUIRE(job.article->panels.size() == 1);
  CHECK(fitted_brief(brief, job, 0).substitutes == brief.substitutes);
  // One list that says two things of a texture is refused by whose it is.
  Brief twice = brief;
  twice.substitutes.push_back({"reverse", "moss"});
  CHECK_THROWS_MATCHES(run(twice), Error, refused_field(ErrorCode::bad_argument, "brief.substitutes[1].texture"));
  twice = brief;
  twice.article->design.substitutes = {{"reverse", "moss"}, {"reverse", "stockinette"}};
  CHECK_THROWS_MATCHES(run(twice), Error,
                       refused_field(ErrorCode::bad_argument, "brief.article.design.substitutes[1].texture"));
  // What the article's own design says of a texture goes first.
  Brief both = brief;
  both.article->design.substitutes = {{"reverse", brief.swatch.measurements().back().texture}};
  CHECK(run(both).article->fit.pieces[0].as_it_stands.width_mm != job.article->fit.pieces[0].as_it_stands.width_mm);
}

TEST_CASE("a brief's substitutes are refused with their line and field", "[brief][gauge][error]") {
  const Folder folder("bad-substitutes");
  const std::string name = without("reverse", folder.path);
  const auto refused = [&](const std::string& csv, ErrorCode code, int line, const std::string& field) {
    INFO(csv);
    put(folder.path / "substitutes.csv", csv);
    try {
      read_brief(name);
      FAIL_CHECK("was read");
    } catch (const Error& error) {
      CHECK(error.code() == code);
      CHECK(error.place().line == line);
      CHECK(error.place().field == "substitutes.csv" + (field.empty() ? "" : ": " + field));
      CHECK(holds(error.what(), "substitutes.csv: "));
    }
  };
  refused("texture\nreverse\n", ErrorCode::missing_field, 1, "use");
  refused("texture,use,gauge\n", ErrorCode::unknown_field, 1, "gauge");
  refused("textures,use\nreverse,stockinette\n", ErrorCode::unknown_field, 1, "textures");
  refused("texture,use\n\nreverse,\n", ErrorCode::bad_value, 3, "use");
  refused("texture,use\n,stockinette\n", ErrorCode::bad_value, 2, "texture");
  refused("texture,use\nreverse,reverse\n", ErrorCode::bad_value, 2, "use");
  refused("texture,use\nreverse,stockinette\nreverse,moss\n", ErrorCode::bad_value, 3, "texture");
  refused("texture,use\nreverse,stockinette,moss\n", ErrorCode::bad_syntax, 2, "");
  refused("texture,use\n" + std::string(257, 'x') + ",moss\n", ErrorCode::bad_value, 2, "texture");
  refused("texture,use\nreverse,\xFF\n", ErrorCode::bad_encoding, 2, "");
  std::string many = "texture,use\n";
  for (int i = 0; i < 10'001; ++i) many += "t" + std::to_string(i) + ",u\n";
  refused(many, ErrorCode::too_large, 10'002, "");
}

TEST_CASE("swatches of one texture that are unlike each other are told in summary and page", "[brief][gauge]") {
  Brief brief = latchwork_test::sampler();
  const std::string words = "has 15.25 to 10 cm on average and swatch 'second' 19.83, further apart than";
  CHECK_FALSE(holds(summary(brief, run(brief)), "further apart than"));
  std::vector<Measurement> all(brief.swatch.measurements().begin(), brief.swatch.measurements().end());
  const std::size_t count = all.size();
  for (std::size_t i = 0; i < count; ++i) {
    if (all[i].texture != "stockinette") continue;
    Measurement second = all[i];
    second.swatch = "second";
    second.count *= 1.3;
    all.push_back(second);
  }
  brief.swatch = Swatch(all);
  const Job job = run(brief);
  const std::string told = summary(brief, job);
  CHECK(holds(told, "\nswatch   stitches of texture 'stockinette', washed: the swatch without a name " + words));
  CHECK(holds(told, ". What would help: leave out the one that the panel will not be knitted as"));
  CHECK(holds(page_html(brief, job), "further apart than their places explain"));
}

TEST_CASE("a gauge that an article's fits alone borrow is told", "[brief][gauge][article]") {
  const Folder folder("article-borrows");
  Brief brief = read_brief(without("reverse", folder.path));
  brief.article->design.substitutes = {{"reverse", "stockinette"}};
  PlanOptions quick;
  quick.work_limit = 1;  // how well it is planned is no matter
  const Job job = run(brief, quick);
  CHECK_FALSE(job.size);
  REQUIRE(job.article);
  const std::string borrows =
      "texture 'reverse' is measured by the gauge of 'stockinette', as told: it was not measured";
  CHECK(holds(summary(brief, job), "\narticle  " + borrows));
  CHECK(holds(page_html(brief, job), "as told: it was not measured"));
  // Where the size borrows it, too, it is told once.
  brief.substitutes = brief.article->design.substitutes;
  const std::string once = summary(brief, run(brief, quick));
  CHECK(holds(once, "\nsize     " + borrows));
  CHECK_FALSE(holds(once, "\narticle  " + borrows));
}

TEST_CASE("a borrowed gauge is told where another texture bars the size", "[brief][gauge]") {
  const Folder folder("borrowed-unsized");
  Brief brief = read_brief(without("reverse", folder.path));
  brief.article.reset();
  brief.substitutes = {{"garter 2/2", "stockinette"}};
  std::vector<Measurement> all(brief.swatch.measurements().begin(), brief.swatch.measurements().end());
  std::erase_if(all, [](const Measurement& each) { return each.texture == "garter 2/2"; });
  brief.swatch = Swatch(all);
  PlanOptions quick;
  quick.work_limit = 1;
  const Job job = run(brief, quick);
  REQUIRE_FALSE(job.size);
  CHECK(holds(summary(brief, job), "texture 'garter 2/2' is measured by the gauge of 'stockinette', as told"));
}

}  // namespace brief_substitutes_test
