// Proofs that are wrong, record by record: no branch, stretch or number that makes one prove too much gets past the
// checker. What a spoiled proof may say is not guessed here: a bound above the least total is wrong whatever proves it.
// tests/python/test_certificate_spoiled.py holds the second checker to the same.
#include <algorithm>
#include <functional>
#include <optional>
#include <string>
#include <utility>
#include <vector>

#include "catch.hpp"
#include "how_many.hpp"
#include "instances.hpp"
#include "latchwork/certificate.hpp"
#include "latchwork/plan.hpp"
#include "random.hpp"

namespace certificate_spoiled_test {

using namespace latchwork;
using namespace latchwork_test;

namespace {

struct Proven {
  Instance in;
  Certificate sound;
};

/// Small panels whose proofs need branches: dear stops, periods that do not fit.
std::vector<Proven> proofs_with_branches(int most) {
  std::vector<Proven> found;
  for (std::uint64_t seed = 1; static_cast<int>(found.size()) < most && seed < 400; ++seed) {
    Instance in = instance_of("co-prime periods", seed, 24);
    in.effort.stop = 60'000;
    const Plan least = plan(in.grid, in.machine, in.effort);
    if (least.status != PlanStatus::optimal) continue;
    Certificate sound = certify(in.grid, in.machine, in.effort, least.total_ms);
    if (sound.branches.empty() || sound.branches.size() > 400 || sound.bound_ms != least.total_ms) continue;
    found.push_back({std::move(in), std::move(sound)});
  }
  return found;
}

CertificateCheck checked(const Instance& in, const Certificate& certificate) {
  return check_certificate(in.grid, in.machine, in.effort, certificate);
}

std::size_t at(int i) {
  return static_cast<std::size_t>(i);
}

/// A liar who claims a bound that no plan keeps to, and tells every lie about a branch that the checker does not see
/// through at once: `branches` may be the certificate's own or a stretch's, `field` is their name.
class Liar {
 public:
  Liar(const Instance& in, Certificate claim, std::vector<Branch>& (*branches)(Certificate&), std::string field,
       Random& random)
      : in_(in), claim_(std::move(claim)), branches_(branches), field_(std::move(field)), random_(random) {}

  /// The record at which the checker saw through it; none where it did not.
  std::optional<std::string> lie() {
    for (int lies = 0; lies < 3'000; ++lies) {
      CertificateCheck found = checked(in_, claim_);
      if (found.holds || !found.place.field.starts_with(field_ + "[")) {
        if (found.holds) return {};
        return found.place.field;
      }
      std::vector<Branch>& branches = branches_(claim_);
      const std::string next = field_ + "[" + std::to_string(branches.size()) + "]";
      if (found.place.field != next) return found.place.field;  // a schedule at the top, or a branch that all lies fail
      if (!add_one(found, branches)) return next;
    }
    return field_;
  }

 private:
  // The record that is missing, ended by any lie that passes; kept where none does.
  bool add_one(const CertificateCheck& missing, std::vector<Branch>& branches) {
    Branch branch;
    branch.row = missing.place.row;
    const auto from = missing.message.find("from branch ");
    if (from == std::string::npos) return false;
    branch.below = std::stoi(missing.message.substr(from + 12));
    branch.stop = missing.message.find(", with a stop") != std::string::npos;
    std::vector<Branch> ends;
    branch.end = BranchEnd::bound;
    ends.push_back(branch);
    branch.end = BranchEnd::dominated;
    for (std::size_t i = 0; i < branches.size(); ++i) {
      if (branches[i].row != branch.row) continue;
      branch.by = static_cast<int>(i);
      ends.push_back(branch);
    }
    for (std::size_t i = ends.size(); i > 1; --i)
      std::swap(ends[i - 1], ends[at(random_.between(0, static_cast<int>(i) - 1))]);
    branch.end = BranchEnd::kept;
    branch.by = -1;
    ends.push_back(branch);
    const std::size_t index = branches.size();
    for (const Branch& end : ends) {
      branches.push_back(end);
      const CertificateCheck found = checked(in_, claim_);
      const std::string mine = field_ + "[" + std::to_string(index) + "]";
      if (found.holds || !found.place.field.starts_with(mine) || end.end == BranchEnd::kept) return true;
      branches.pop_back();
    }
    return false;
  }

  const Instance& in_;
  Certificate claim_;
  std::vector<Branch>& (*branches_)(Certificate&);
  std::string field_;
  Random& random_;
};

}  // namespace

TEST_CASE("no branches whatever prove a bound that some plan does not keep to", "[certificate][property]") {
  Random random(20'261);
  int lied = 0;
  for (int i = 1; i <= how_many(120); ++i) {
    const Instance in = tiny_instance(static_cast<std::uint64_t>(i) + 8'600'000);
    const Plan least = plan(in.grid, in.machine, in.effort);
    if (least.status != PlanStatus::optimal) continue;
    CAPTURE(i, in.grid.to_text(), in.machine.max_ladder);
    Certificate claim = certify(in.grid, in.machine, in.effort, least.total_ms);
    if (claim.classes.empty()) continue;
    claim.branches.clear();
    claim.stretches.clear();
    claim.bound_ms = least.total_ms + random.between(1, 60'000);
    claim.branches.push_back({0, -1, true, BranchEnd::kept, -1});
    if (const CertificateCheck first = checked(in, claim); first.message.find("without a stop") != std::string::npos) {
      claim.branches.front().stop = false;
    }
    const auto seen =
        Liar(
            in, claim, [](Certificate& c) -> std::vector<Branch>& { return c.branches; }, "branches", random)
            .lie();
    REQUIRE(seen.has_value());
    ++lied;
  }
  CHECK(lied > how_many(120) / 3);
}

TEST_CASE("no stretch whatever gains more than what is to come costs", "[certificate][property]") {
  // A stretch that is believed raises the bounds below it. With any that the checker takes, at the greatest gain that
  // liars get past it, the certificate's own branches still do not prove too much.
  Random random(20'262);
  int taken = 0;
  int lied = 0;
  for (int i = 1; i <= how_many(60); ++i) {
    const Instance in = tiny_instance(static_cast<std::uint64_t>(i) + 8'700'000);
    const Plan least = plan(in.grid, in.machine, in.effort);
    if (least.status != PlanStatus::optimal) continue;
    CAPTURE(i, in.grid.to_text(), in.machine.max_ladder);
    Certificate claim = certify(in.grid, in.machine, in.effort, least.total_ms);
    if (claim.classes.empty()) continue;
    claim.branches.clear();
    claim.stretches.clear();
    claim.bound_ms = least.total_ms + 1;
    for (WaleClass& one : claim.classes) one.prices.clear();  // where prices say little a stretch has much to gain
    for (WaleClass& one : claim.classes) {
      // What the class costs without prices is what the checker says that it is.
      for (int looks = 0; looks < 2; ++looks) {
        const CertificateCheck found = checked(in, claim);
        const auto is = found.message.find("under these prices is ");
        const auto mine = "classes[" + std::to_string(&one - claim.classes.data()) + "].least";
        if (found.place.field == mine && is != std::string::npos) one.least = std::stoll(found.message.substr(is + 22));
      }
    }
    const int row = random.between(0, in.grid.rows() - 1);
    for (const std::int64_t gain : {std::int64_t{1}, claim.unit, 1'000 * claim.unit, 30'000 * claim.unit}) {
      Certificate mine = claim;
      mine.stretches = {{row, gain, {}}};
      Liar first(
          in, mine, [](Certificate& c) -> std::vector<Branch>& { return c.stretches.front().branches; },
          "stretches[0].branches", random);
      ++lied;
      const auto seen = first.lie();
      REQUIRE(seen.has_value());  // whatever became of the stretch, the claim is not proven
      if (!seen->starts_with("stretches")) ++taken;
    }
  }
  CHECK(lied > how_many(60) / 3);
  CHECK(taken > 0);
}

TEST_CASE("each field of each branch, spoiled in each way, is refused unless the proof is as true",
          "[certificate][property][long]") {
  const std::vector<Proven> proofs = proofs_with_branches(3);
  REQUIRE(!proofs.empty());
  int refused = 0;
  int as_true = 0;  // ended by another cause that is one
  for (const Proven& proven : proofs) {
    for (std::size_t i = 0; i < proven.sound.branches.size(); ++i) {
      const Branch& was = proven.sound.branches[i];
      const auto spoiled = [&](const std::function<void(Certificate&)>& spoil, bool always_wrong) {
        Certificate wrong = proven.sound;
        spoil(wrong);
        if (wrong == proven.sound) return;
        const CertificateCheck found = checked(proven.in, wrong);
        CAPTURE(i, static_cast<int>(was.end), found.message);
        if (always_wrong) REQUIRE(!found.holds);
        (found.holds ? as_true : refused) += 1;
        // Whatever holds, holds no more than the least total.
        if (found.holds) REQUIRE(found.bound_ms == proven.sound.bound_ms);
      };
      for (const int row : {-1, was.row - 1, was.row + 1, proven.in.grid.rows() + 1, 1 << 30}) {
        spoiled([&](Certificate& c) { c.branches[i].row = row; }, true);
      }
      for (const int below : {-2, -1, was.below - 1, was.below + 1, static_cast<int>(i), 1 << 30}) {
        spoiled([&](Certificate& c) { c.branches[i].below = below; }, true);
      }
      spoiled([&](Certificate& c) { c.branches[i].stop = !was.stop; }, true);
      for (const int end : {0, 1, 2, 3, 255}) {
        // A kept branch is continued below; a cut one is not.
        const bool kept = was.end == BranchEnd::kept || end == 0 || end > 2;
        spoiled([&](Certificate& c) { c.branches[i].end = static_cast<BranchEnd>(end); }, true);
        for (std::size_t by = 0; by < proven.sound.branches.size() && end == 2; ++by) {
          if (proven.sound.branches[by].row != was.row) continue;
          spoiled(
              [&](Certificate& c) {
                c.branches[i].end = BranchEnd::dominated;
                c.branches[i].by = static_cast<int>(by);
              },
              kept || proven.sound.branches[by].end != BranchEnd::kept);
        }
        if (end == 1) {
          spoiled([&](Certificate& c) { c.branches[i] = {was.row, was.below, was.stop, BranchEnd::bound, -1}; }, kept);
        }
      }
      for (const int by : {-2, -1, static_cast<int>(i), 1 << 30}) {
        spoiled([&](Certificate& c) { c.branches[i].by = by; }, true);
      }
      spoiled([&](Certificate& c) { c.branches.erase(c.branches.begin() + static_cast<std::ptrdiff_t>(i)); }, true);
      spoiled([&](Certificate& c) { c.branches.insert(c.branches.begin() + static_cast<std::ptrdiff_t>(i), was); },
              true);
      if (i > 0) spoiled([&](Certificate& c) { std::swap(c.branches[i], c.branches[i - 1]); }, true);
      // More is claimed than it proves.
      spoiled([&](Certificate& c) { c.branches.resize(i); }, i > 0);
    }
  }
  CHECK(refused > 1'000);
  CHECK(as_true < refused / 5);
}

}  // namespace certificate_spoiled_test
