#pragma once

#include <cstdint>
#include <string>
#include <vector>

#include "latchwork/export.hpp"

namespace latchwork::inline v0 {

/// Generic classes of single-bed machines by needle pitch (values and their sources: DEVELOPERS.md, "Constants").
enum class MachineClass : std::uint8_t { fine = 0, standard = 1, mid = 2, bulky = 3 };

/// The bed, the tools at hand, and what is comfortable on them. Needles are named as the operator sees them, outward
/// from the bed's centre: ... L2 L1 | R1 R2 ...; in numbers -2, -1 | 1, 2: there is no needle 0.
/// Plain data; functions that take it check it and throw Error bad_argument with the field. Where the defaults of
/// its limits come from: wider than 3/3 is hard on home machines (alessandrina.com, December 2014); four
/// tucks in succession at most (study notes after Spencer, Knitting Technology); floats of six needles at most
/// (textilethelp, 2020); the greatest ladder is from memory.
struct LATCHWORK_API Machine {
  std::string name = "standard";
  int needles = 200;      ///< 2..4000; with an odd count the odd one is on the left
  double pitch_mm = 4.5;  ///< needle to needle; above 0, to 50
  int leftmost = 0;  ///< the panel's leftmost needle, operator's view, -4000..4000; 0: centred, odd one on the left
  std::vector<int> prongs = {1, 2, 3};  ///< pronged tools at hand, two of each; up to 20 sizes, each 1..20 and named
                                        ///< once; may be empty
  int comfortable_crossing = 3;         ///< travel in stitches above which a crossing is hard; 1..4000
  int tuck_limit = 4;                   ///< most tucks or slips in a stack; 1..65536
  int float_limit = 6;                  ///< most needles a float may pass; 1..4000
  int max_ladder = 12;                  ///< most rows laddered down in one batch; 1..65536
  bool cast_on_loops = true;  ///< the cast-on gives each needle a loop of its own, so a batch may start at row 0
  bool carriage_starts_right = true;  ///< where the carriage stands at RC 0

  /// The generic machine of a class, named after it. @throws Error bad_argument for a number that is no class.
  static Machine generic(MachineClass machine_class);
  friend bool operator==(const Machine&, const Machine&) = default;
};

/// "L3", "R12". @throws Error bad_argument for 0.
LATCHWORK_API std::string needle_name(int needle);

/// The needle `steps` places to the operator's right of `needle`, over the centre without a needle 0.
/// @throws Error bad_argument for needle 0.
LATCHWORK_API int needle_beside(int needle, int steps);

/// The panel's leftmost needle in the operator's view: machine.leftmost, or centred. Not checked against the bed.
/// @throws Error bad_argument for columns below 1, or a machine out of its ranges.
LATCHWORK_API int leftmost_needle(const Machine& machine, int columns);

/// The needle of an RS column: column 0 is the operator's rightmost stitch.
/// @throws Error bad_argument for columns below 1, a column outside 0..columns-1, or a machine out of its ranges.
LATCHWORK_API int needle_of(const Machine& machine, int columns, int column);

}  // namespace latchwork::inline v0
