#pragma once

#include <optional>
#include <string>
#include <utility>
#include <vector>

#include "latchwork/machine.hpp"
#include "latchwork/panel.hpp"
#include "latchwork/plan.hpp"

namespace latchwork::inline v0::writing {

/// One stop in words.
struct SheetStop {
  int number = 1;  ///< among all the plan's stops
  int row = 0;
  bool right = true;                 ///< carriage
  std::vector<std::string> actions;  ///< in the order they are done
};

/// Stops told before, made again.
struct SheetRepeat {
  std::string words;     ///< "Repeat stops 1-4 every 10 rows, 2 more times, then stops 1-2:"
  bool one_stop = true;  ///< all are the same one
  /// For each further time, "RC 012 COR as 3" of each stop, or "RC 012 COR" of one; the last time may have fewer.
  std::vector<std::vector<std::string>> times;
};

struct SheetPart {
  std::vector<SheetStop> stops;
  std::optional<SheetRepeat> repeat;
};

/// Machine instructions in pieces, for text and page alike.
struct Sheet {
  std::string title;
  std::vector<std::string> header;
  std::vector<std::pair<std::string, std::string>> key;  ///< abbreviation, meaning: just those used
  std::vector<std::string> cautions;
  std::vector<std::string> rules;                              ///< what holds at every stop
  std::vector<std::pair<std::string, std::string>> crossings;  ///< "X1", how it is made
  std::vector<std::pair<std::string, std::string>> sets;       ///< "set 1", needles that are worked together often
  std::vector<std::pair<std::string, std::string>> sweeps;     ///< "sweep 1", what is told at several stops
  std::string start;
  std::vector<SheetPart> parts;
  std::string end;                   ///< empty where nothing is knitted
  std::vector<std::string> reasons;  ///< why it cannot be made as it stands; of an infeasible plan there are no parts
};

/// What stands over the reasons: whether steps follow them.
constexpr const char* reasons_title(PlanStatus status) {
  return status == PlanStatus::infeasible
             ? "This panel cannot be made on this machine as it stands"
             : "Cannot be made on this machine as it stands, though the steps below have it in them";
}

/// @throws Error as instructions().
Sheet sheet_of(const Panel& panel, const Plan& plan, const Machine& machine);

}  // namespace latchwork::inline v0::writing
