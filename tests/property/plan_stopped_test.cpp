// Long calls that are ended: wherever they are asked to stop they give what their pages promise, and a count of work
// ends them at the same place each time. tests/python/test_stopped.py has the same, and in another process.
#include <algorithm>
#include <functional>
#include <optional>
#include <stop_token>
#include <string>
#include <vector>

#include "catch.hpp"
#include "instances.hpp"
#include "latchwork/certificate.hpp"
#include "latchwork/choice.hpp"
#include "latchwork/error.hpp"
#include "latchwork/plan.hpp"
#include "latchwork/reason.hpp"
#include "latchwork/simulate.hpp"

namespace plan_stopped_test {

using namespace latchwork;
using namespace latchwork_test;

namespace {

struct LongCall {
  std::string name;
  bool may_have_none = false;                    ///< then it ends in the error `cancelled`
  std::function<void(const PlanOptions&)> make;  ///< and looks at what it gives
  std::function<bool(const PlanOptions&)> alike_when_again;
};

/// The same twice, or the same error.
template <class Make>
bool alike(const Make& make, const PlanOptions& options) {
  const auto once = [&]() -> std::optional<decltype(make(options))> {
    try {
      return make(options);
    } catch (const Error& error) {
      REQUIRE(error.code() == ErrorCode::cancelled);
      return {};
    }
  };
  return once() == once();
}

/// A panel, its least plan under what is asked, and every call that can be long.
struct Calls {
  Instance in;
  Plan mine;

  explicit Calls(Instance instance) : in(std::move(instance)), mine(plan(in.grid, in.machine, in.effort)) {
    REQUIRE(mine.status == PlanStatus::optimal);
  }

  template <class Make, class Look>
  LongCall call(std::string name, bool may_have_none, Make make, Look look) const {
    return {std::move(name), may_have_none, [make, look](const PlanOptions& options) { look(make(options)); },
            [make](const PlanOptions& options) { return alike(make, options); }};
  }

  /// Of any plan for the panel: it is one, and its bound lies below it and below the least that keeps to as much.
  void look_at(const Plan& made, std::int64_t least_ms) const {
    REQUIRE(made.status != PlanStatus::infeasible);
    CHECK(verify(in.grid, made).verified);
    CHECK(made.bound_ms <= least_ms);
    CHECK(made.total_ms >= least_ms);
    CHECK((made.status == PlanStatus::optimal) == (made.bound_ms == made.total_ms));
  }

  LongCall under(std::string name, const Conditions& asked, bool may_have_none) const {
    PlanOptions whole;
    whole.conditions = asked;
    const std::int64_t least = plan(in.grid, in.machine, in.effort, whole).total_ms;
    return call(
        std::move(name), may_have_none,
        [this, asked](PlanOptions options) {
          options.conditions = asked;
          return plan(in.grid, in.machine, in.effort, options);
        },
        [this, least](const Plan& made) { look_at(made, least); });
  }

  std::vector<LongCall> all() const {
    Conditions side;
    side.carriage_right_only = true;
    side.max_depth = 9;
    Conditions apart;
    apart.rows_apart = 3;
    Conditions kinds;
    const std::vector<int> of_least = stop_kinds(mine);  // with as many there is a plan
    kinds.max_kinds = 1 + *std::max_element(of_least.begin(), of_least.end());
    Conditions rhythm;
    rhythm.rhythms = {{1, 0, 2, {}}};
    const Plan regular = plan_regular(in.grid, in.machine, in.effort);
    const TwoRhythms two = plan_two_rhythms(in.grid, in.machine, in.effort);
    Conditions priced = apart;
    priced.carriage_right_only = true;
    return {
        under("plan", {}, false),
        under("carriage side and depth", side, false),
        under("rows apart", apart, true),
        under("kinds", kinds, true),
        under("open rhythm", rhythm, true),
        call(
            "regular", true,
            [this](const PlanOptions& options) { return plan_regular(in.grid, in.machine, in.effort, options); },
            [this, regular](const Plan& made) {
              look_at(made, regular.total_ms);
              CHECK(made.rhythm.has_value());
            }),
        call(
            "two rhythms", true,
            [this](const PlanOptions& options) { return plan_two_rhythms(in.grid, in.machine, in.effort, options); },
            [this, two](const TwoRhythms& made) { look_at(made.plan, two.plan.total_ms); }),
        call(
            "front", false,
            [this](const PlanOptions& options) { return plan_front(in.grid, in.machine, in.effort, options); },
            [this](const Front& front) {
              REQUIRE(!front.points.empty());
              CHECK(verify(in.grid, front.points.front().plan).verified);
              CHECK(front.points.back().plan.bound_ms <= mine.total_ms);
              CHECK(front.points.back().plan.total_ms >= mine.total_ms);
            }),
        call(
            "prices", false,
            [this, priced](PlanOptions options) {
              options.conditions = priced;
              return condition_prices(in.grid, in.machine, in.effort, options);
            },
            [this](const std::vector<ConditionPrice>& prices) {
              REQUIRE(prices.size() == 3);
              for (const ConditionPrice& price : prices) {
                CAPTURE(static_cast<int>(price.condition), price.total_ms);
                REQUIRE(price.status != PlanStatus::infeasible);
                if (price.total_ms < 0) {  // no plan was found, and none is had without a search
                  CHECK(price ==
                        ConditionPrice{price.condition, PlanStatus::feasible, -1, -1, price.least_price_ms, -1});
                  continue;
                }
                CHECK(price.total_ms >= mine.total_ms);
                CHECK(price.least_price_ms <= price.price_ms);
                CHECK(price.price_ms <= price.most_price_ms);
              }
            }),
        call(
            "reasons", false,
            [this](const PlanOptions& options) { return stop_reasons(in.grid, in.machine, in.effort, mine, options); },
            [this](const std::vector<StopReason>& reasons) {
              REQUIRE(reasons.size() == mine.stops.size());
              for (const StopReason& reason : reasons) {
                CHECK(!reason.message.empty());
                if (reason.cause == StopCause::saving) CHECK(reason.least_saves_ms <= reason.saves_ms);
              }
            }),
        call(
            "tolerances", false,
            [this](const PlanOptions& options) {
              return plan_tolerances(in.grid, in.machine, in.effort, mine, options);
            },
            [](const std::vector<Tolerance>& tolerances) {
              for (const Tolerance& tolerance : tolerances) {
                CHECK(tolerance.least_ms <= tolerance.value_ms);
                CHECK(tolerance.value_ms <= tolerance.most_ms);
                if (!tolerance.proven) CHECK(tolerance.least_ms == tolerance.most_ms);
              }
            }),
        call(
            "certify", false,
            [this](const PlanOptions& options) {
              return certify(in.grid, in.machine, in.effort, mine.total_ms, options);
            },
            [this](const Certificate& certificate) {
              CHECK(certificate.bound_ms <= mine.total_ms);
              CHECK(check_certificate(in.grid, in.machine, in.effort, certificate).holds);
            }),
    };
  }
};

/// Stops at the nth word (0: before the call). How often it was told.
int told_until(const LongCall& call, int nth, std::int64_t work_limit) {
  std::stop_source source;
  if (nth == 0) source.request_stop();
  int told = 0;
  PlanOptions options;
  options.stop = source.get_token();
  options.work_limit = work_limit;
  options.progress = [&](const Progress& now) {
    CHECK(now.share >= 0);
    CHECK(now.share <= 1);
    if (++told == nth) source.request_stop();
  };
  try {
    call.make(options);
  } catch (const Error& error) {
    CHECK(call.may_have_none);
    CHECK(error.code() == ErrorCode::cancelled);
    CHECK(!std::string(error.what()).empty());
  }
  return told;
}

}  // namespace

TEST_CASE("wherever a long call is asked to stop, it gives what its page promises", "[plan][limits][property][long]") {
  const Calls calls(instance_of("co-prime periods", 2, 60));
  for (const LongCall& call : calls.all()) {
    CAPTURE(call.name);
    constexpr std::int64_t enough = 3'000'000;
    const int all = told_until(call, -1, enough);
    REQUIRE(all >= 1);
    for (const int nth : {0, 1, 2, 3, 5, all / 2, all}) {
      CAPTURE(nth, all);
      const int told = told_until(call, nth, enough);
      // Of what was still to come each part may tell its end, and nothing is searched any more.
      CHECK(told <= std::max(nth, 1) + static_cast<int>(calls.mine.stops.size()) + 24);
    }
  }
}

TEST_CASE("a count of work ends a long call at the same place each time", "[plan][limits][property][long]") {
  const Calls calls(instance_of("co-prime periods", 5, 70));
  for (const LongCall& call : calls.all()) {
    CAPTURE(call.name);
    for (const std::int64_t limit : {1, 1'000, 20'000, 150'000, 1'000'000}) {
      CAPTURE(limit);
      PlanOptions options;
      options.work_limit = limit;
      CHECK(call.alike_when_again(options));
      try {
        call.make(options);  // and is true
      } catch (const Error& error) {
        CHECK(call.may_have_none);
        CHECK(error.code() == ErrorCode::cancelled);
      }
    }
  }
}

TEST_CASE("checks and simulations that are asked to stop end in an error, at whatever word",
          "[simulate][certificate][limits][property]") {
  const Instance in = instance_of("panels", 3, 200);
  const Plan mine = plan(in.grid, in.machine, in.effort);
  const Certificate proof = certify(in.grid, in.machine, in.effort, mine.total_ms);
  const std::vector<Move> all_moves = moves(mine);
  const Bed bed{mine.leftmost, mine.columns};
  const std::vector<std::function<void(const WatchOptions&)>> calls = {
      [&](const WatchOptions& options) { static_cast<void>(verify(in.grid, mine, options)); },
      [&](const WatchOptions& options) { static_cast<void>(simulate(bed, all_moves, options)); },
      [&](const WatchOptions& options) {
        static_cast<void>(check_certificate(in.grid, in.machine, in.effort, proof, options));
      },
  };
  for (std::size_t which = 0; which < calls.size(); ++which) {
    int all = 0;
    WatchOptions options;
    options.progress = [&](const Progress&) { ++all; };
    calls[which](options);
    REQUIRE(all > 3);
    for (const int nth : {0, 1, 2, 3, all / 2}) {
      CAPTURE(which, nth, all);
      std::stop_source source;
      if (nth == 0) source.request_stop();
      int told = 0;
      options.stop = source.get_token();
      options.progress = [&](const Progress&) {
        if (++told == nth) source.request_stop();
      };
      CHECK_THROWS_MATCHES(calls[which](options), Error, refused_field(ErrorCode::cancelled, ""));
      CHECK(told == nth);
    }
  }
}

}  // namespace plan_stopped_test
