// brief.json: the state that sizes are meant in, sessions and rests.
#include <algorithm>
#include <filesystem>
#include <string>

#include "brief_folder.hpp"
#include "catch.hpp"
#include "latchwork/brief.hpp"
#include "latchwork/schematic.hpp"
#include "text.hpp"

namespace brief_asked_test {

using namespace latchwork;
using latchwork_test::example;
using latchwork_test::Folder;
using latchwork_test::holds;
using latchwork_test::put;
using latchwork_test::refused;
using latchwork_test::refused_field;
using latchwork_test::rested_too;
using latchwork_test::sampler;
using latchwork_test::text_of;
namespace fs = std::filesystem;

namespace {

/// The sampler's textures, measured rested too: a tenth wider and longer than washed.
Brief sampler_in_both() {
  Brief brief = sampler();
  brief.swatch = rested_too(brief.swatch, 0.9);
  return brief;
}

Place on_line_1(const char* field) {
  Place place;
  place.line = 1;
  place.field = field;
  return place;
}

}  // namespace

TEST_CASE("a brief's sizes are those of the state that it names, and the summary says which", "[brief][gauge]") {
  Brief brief = sampler_in_both();
  const Job finished = run(brief);
  REQUIRE(finished.size);
  CHECK(holds(summary(brief, finished), " cm high, washed; "));
  brief.state = ClothState::rested;
  const Job rested = run(brief);
  REQUIRE(rested.size);
  CHECK(holds(summary(brief, rested), " cm high, rested; "));
  CHECK(rested.size->width_mm == latchwork_test::Approx(finished.size->width_mm / 0.9));
  CHECK(rested.size->height_mm == latchwork_test::Approx(finished.size->height_mm / 0.9));
  CHECK(rested.size == size(brief.panel, brief.swatch, {.state = ClothState::rested}));
  // The drawing is of the same cloth.
  const Folder folder("asked-state");
  write_job(brief, rested, folder.path.string());
  const SchematicPiece piece = schematic_piece(brief.panel, brief.swatch, {.state = ClothState::rested});
  Schematic drawing;
  drawing.title = brief.panel.name();
  drawing.pieces = {piece};
  CHECK(text_of(folder.path / "schematic.svg") == schematic_svg(drawing));

  brief.state = ClothState::off_machine;  // measured of no texture
  const Job bare = run(brief);
  CHECK_FALSE(bare.size);
  CHECK_FALSE(bare.missing.empty());
}

TEST_CASE("textures of which not all were washed are told in both states", "[brief][gauge]") {
  Brief brief = sampler();
  std::vector<Measurement> all(brief.swatch.measurements().begin(), brief.swatch.measurements().end());
  const std::string texture = all.front().texture;
  REQUIRE(std::any_of(all.begin(), all.end(), [&](const Measurement& each) { return each.texture != texture; }));
  for (Measurement& each : all) {
    if (each.texture == texture) each.state = ClothState::rested;
  }
  brief.swatch = Swatch(all);
  CHECK(holds(summary(brief, run(brief)), " cm high, rested and washed; "));
}

TEST_CASE("a fitted brief is sized in the state that it was fitted in", "[brief][article]") {
  Brief brief = read_brief(example("cushion").string());
  std::vector<Measurement> all(brief.swatch.measurements().begin(), brief.swatch.measurements().end());
  const std::size_t count = all.size();
  for (std::size_t i = 0; i < count; ++i) {
    Measurement washed = all[i];
    washed.state = ClothState::washed;
    washed.count /= 0.95;
    all.push_back(washed);
  }
  brief.swatch = Swatch(all);
  REQUIRE_FALSE(brief.article->design.state);
  PlanOptions quick;
  quick.work_limit = 1;  // how well it is planned is no matter
  const auto fitted_in = [&](std::optional<ClothState> asked, std::optional<ClothState> design) {
    brief.state = asked;
    brief.article->design.state = design;
    const Job job = run(brief, quick);
    REQUIRE(job.article);
    REQUIRE_FALSE(job.article->panels.empty());
    const std::string told = summary(brief, job);
    CHECK(holds(told, ", sizes of rested cloth") == (design == ClothState::rested && asked != ClothState::rested));
    const Brief fitted = fitted_brief(brief, job, 0);
    const Size whole = size(fitted.panel, fitted.swatch, {.state = fitted.state, .substitutes = fitted.substitutes});
    const FitCandidate& best = job.article->fit.pieces[0].fit.candidates[0];
    CHECK(whole.height_mm > best.height_mm);  // the seams are in it
    CHECK(whole.height_mm < 1.06 * best.height_mm);
    return fitted.state;
  };
  CHECK(fitted_in({}, {}) == std::nullopt);
  CHECK(fitted_in(ClothState::rested, {}) == ClothState::rested);
  CHECK(fitted_in({}, ClothState::rested) == ClothState::rested);
  CHECK(fitted_in(ClothState::washed, ClothState::rested) == ClothState::rested);
}

TEST_CASE("the summary's sessions and rests are as long as the brief says", "[brief][session]") {
  Brief brief = read_brief(example("cushion").string());
  brief.article.reset();
  const Job job = run(brief);
  CHECK(holds(summary(brief, job), "Sessions       5 of an hour or less: leave off after RC "));
  CHECK(holds(summary(brief, job), "Rests          the hands, after some 20 min of hand work each: after RC "));
  brief.session_ms = 5'400'000;
  brief.rest_ms = 0;
  const std::vector<Session> own = sessions(job.plan, brief.effort, {.session_ms = 5'400'000, .rest_ms = 0});
  const std::string told = summary(brief, job);
  CHECK(holds(told, "Sessions       " + std::to_string(own.size()) + " of 1 h 30 min or less: leave off after RC "));
  CHECK_FALSE(holds(told, "Rests "));
}

TEST_CASE("brief.json is read, written where something in it is not as usual, and read back", "[brief][file]") {
  const Folder folder("asked-file");
  Brief brief = sampler();
  write_brief(brief, folder.path.string());
  CHECK_FALSE(fs::exists(folder.path / "brief.json"));
  brief.state = ClothState::off_machine;
  brief.session_ms = 2'700'000;
  brief.rest_ms = 0;
  write_brief(brief, folder.path.string());
  CHECK(fs::exists(folder.path / "brief.json"));
  CHECK(read_brief(folder.path.string()) == brief);
  put(folder.path / "brief.json", R"({"format": "latchwork-brief", "version": 1, "state": "washed"})");
  const Brief read = read_brief(folder.path.string());
  CHECK(read.state == ClothState::washed);
  CHECK(read.session_ms == SessionOptions{}.session_ms);
  CHECK(read.rest_ms == SessionOptions{}.rest_ms);
  write_brief(sampler(), folder.path.string());  // what is as usual again takes the file away
  CHECK_FALSE(fs::exists(folder.path / "brief.json"));
}

TEST_CASE("what brief.json may not hold is refused with its field, and so is the brief", "[brief][file][error]") {
  const Folder folder("asked-refused");
  write_brief(sampler(), folder.path.string());
  struct Case {
    const char* members;
    ErrorCode code;
    const char* field;
  };
  for (const Case& each : {Case{R"("state": "damp")", ErrorCode::bad_value, "brief.json: state"},
                           Case{R"("state": 1)", ErrorCode::bad_value, "brief.json: state"},
                           Case{R"("session_ms": 59999)", ErrorCode::bad_value, "brief.json: session_ms"},
                           Case{R"("session_ms": 1e9)", ErrorCode::bad_value, "brief.json: session_ms"},
                           Case{R"("rest_ms": -1)", ErrorCode::bad_value, "brief.json: rest_ms"},
                           Case{R"("rest_ms": 59999)", ErrorCode::bad_value, "brief.json: rest_ms"},
                           Case{R"("sessions": 1)", ErrorCode::unknown_field, "brief.json: sessions"}}) {
    INFO(each.members);
    put(folder.path / "brief.json",
        std::string(R"({"format": "latchwork-brief", "version": 1, )") + each.members + "}");
    CHECK_THROWS_MATCHES(read_brief(folder.path.string()), Error, refused(each.code, on_line_1(each.field)));
  }
  put(folder.path / "brief.json", R"({"format": "latchwork-brief", "version": 2})");
  CHECK_THROWS_MATCHES(read_brief(folder.path.string()), Error,
                       refused(ErrorCode::newer_version, on_line_1("brief.json: version")));

  const Brief good = sampler();
  const Job job = run(good);
  const Folder empty("asked-unwritten");
  const auto refuses = [&](auto&& spoil, const char* field) {
    Brief bad = good;
    spoil(bad);
    CHECK_THROWS_MATCHES(run(bad), Error, refused_field(ErrorCode::bad_argument, field));
    CHECK_THROWS_MATCHES(summary(bad, job), Error, refused_field(ErrorCode::bad_argument, field));
    CHECK_THROWS_MATCHES(write_brief(bad, empty.path.string()), Error, refused_field(ErrorCode::bad_argument, field));
    CHECK(fs::is_empty(empty.path));
  };
  refuses([](Brief& brief) { brief.state = static_cast<ClothState>(3); }, "brief.state");
  refuses([](Brief& brief) { brief.session_ms = 59'999; }, "brief.session_ms");
  refuses([](Brief& brief) { brief.session_ms = 86'400'001; }, "brief.session_ms");
  refuses([](Brief& brief) { brief.rest_ms = 59'999; }, "brief.rest_ms");
}

}  // namespace brief_asked_test
