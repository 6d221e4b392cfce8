#pragma once

#include <optional>
#include <vector>

#include "latchwork/export.hpp"

namespace latchwork::inline v0 {

/// A regular schedule: stop after rows first, first + every, first + 2 * every, ... and do all that is due.
/// `first` may be greater than `every`: then nothing is due before.
struct Rhythm {
  int every = 1;
  int first = 1;
  friend bool operator==(const Rhythm&, const Rhythm&) = default;
};

/// Neighbouring wales whose re-forms keep to one rhythm: at each of its stops all that is due in them is re-formed,
/// from just below the lowest hand cell not yet worked, unless the wale's row is a tuck or slip (then it waits); they
/// are worked at no other stop, and never by hold. A rhythm's stop with nothing to do in them is not made for them.
struct KeptRhythm {
  int row = 1;           ///< the wales that stand, in this row, ...
  int first_column = 0;  ///< ... in columns first_column..last_column, from the left on the RS
  int last_column = 0;
  std::optional<Rhythm> rhythm{};  ///< none: the best one, by trying every rhythm
  friend bool operator==(const KeptRhythm&, const KeptRhythm&) = default;
};

/// What a knitter asks of a plan beside the least effort, so that it can be kept in the head. By default nothing.
struct Conditions {
  bool carriage_right_only = false;   ///< stops only where the carriage stands on the right
  int rows_apart = 0;                 ///< no two stops nearer than so many rows (row 0 counts); 0 or 1: none
  int max_depth = 0;                  ///< no re-form deeper than so many rows; 0: the machine's greatest ladder
  int max_kinds = 0;                  ///< at most so many kinds of stop (stop_kinds() says what one is); 0: any
  std::vector<KeptRhythm> rhythms{};  ///< no wale in two of them; at most one without a rhythm of its own
  std::vector<int> closed_rows{};     ///< no stop after these rows, 0..R
  bool forced_exempt =
      false;  ///< carriage side, rows apart and closed rows do not bind the stops that crossings and shapings force
              ///< (other stops still keep their distance from these); else such a stop bars the plan
  friend bool operator==(const Conditions&, const Conditions&) = default;
};

}  // namespace latchwork::inline v0
