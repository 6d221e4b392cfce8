#pragma once

#include <cstdint>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "latchwork/export.hpp"
#include "latchwork/quantity.hpp"

namespace latchwork::inline v0 {

/// Ways of saying how fine a yarn is. Direct systems say the weight of a length: the greater the number, the thicker.
/// Indirect ones say the length of a weight. With 1 yd = 0.9144 m and 1 lb = 453.59237 g (NIST SP 811) all are exact
/// multiples of tex; a count of y yards to the pound is 4535923700 / (9144 y) / count tex. Definitions: ISO 1144 and
/// ASTM D861 for tex; NIST SP 811 for denier; Groen Kennisnet HNPE handbook, section 7.1.6, for the hanks, checked
/// against the products printed there; Galashiels and West of England from memory. The values are in the C ABI.
enum class YarnSystem : std::uint8_t {
  tex = 0,               ///< g per 1000 m
  dtex = 1,              ///< g per 10 000 m
  denier = 2,            ///< g per 9000 m
  metric = 3,            ///< Nm: km per kg, 1000 / tex
  cotton = 4,            ///< Ne: hanks of 840 yd per lb, 590.54 / tex
  spun_silk = 5,         ///< as cotton; counts of folded spun silk are often those of the folded yarn: ask
  worsted = 6,           ///< hanks of 560 yd per lb, 885.81 / tex
  linen = 7,             ///< leas of 300 yd per lb, 1653.5 / tex
  woollen_cut = 8,       ///< cuts of 300 yd per lb
  woollen_run = 9,       ///< runs of 1600 yd per lb (100 yd per oz), 310.03 / tex
  yorkshire = 10,        ///< YSW: skeins of 256 yd per lb, 1937.7 / tex
  galashiels = 11,       ///< cuts of 200 yd per lb, 2480.3 / tex
  west_of_england = 12,  ///< snaps of 320 yd per lb, 1550.2 / tex
  jute = 13,             ///< lb per spindle of 14 400 yd, direct: 34.448 tex each
  yards_per_pound = 14,  ///< 496 054.65 / tex
  metres_per_100g = 15,  ///< 100 000 / tex
};

/// How fine a yarn is: the number of one single, and how many of them are twisted together. The shortening by twist is
/// not taken off: its amount differs from yarn to yarn.
struct YarnNumber {
  YarnSystem system = YarnSystem::tex;
  double number = 0;  ///< 1e-6..1e9
  int plies = 1;      ///< 1..100
  friend bool operator==(const YarnNumber&, const YarnNumber&) = default;
};

/// One class of the Craft Yarn Council's Standard Yarn Weight System (table as reproduced at 222handspun.com; the lower
/// needle of class 6 from memory). Guidelines only: classes 2 and 3 share 23 and 24 stitches, and lace is often worked
/// on larger needles.
struct YarnCategory {
  int number = 0;          ///< 0..7
  std::string name;        ///< "Light"
  int least_stitches = 0;  ///< of stockinette over 4 in, which the table takes for 10 cm
  int most_stitches = 0;
  double least_needle_mm = 0;  ///< of hand needles
  double most_needle_mm = 0;   ///< 0: no upper end
  friend bool operator==(const YarnCategory&, const YarnCategory&) = default;
};

/// Reads a yarn number. Names stand before or after it, in small letters or capitals:
///   20 tex   200 dtex   180 den   Nm 28   Ne 30   cotton 5/2   2/24 worsted   linen 20   spun silk 60
///   woollen cut 10   woollen run 5   YSW 20   Galashiels 24   West of England 30   jute 8
///   1000 yd/lb   250 m/100 g   50 g = 120 m   197 yd / 100 g     (a ball band; any units of quantity.hpp)
/// Plies: "Nm 28 x 2" and "20 tex x 2" are two plies of 28 and of 20. "28/2" and "2/28" both occur in the trade, as do
/// "28 x 2" and "2 x 28" before the name, so the number of plies is the one that can be it: 12 or less. Where both can,
/// the smaller is taken if it stands where the system has it by custom (cotton, spun silk and linen 5/2, worsted 2/10:
/// blog.yarn.com), else the text is refused as ambiguous: Nm 8/3, cotton 2/8, 2 x 8 tex. A ball band becomes
/// metres_per_100g, or yards_per_pound where both of its units are inch or pound units.
/// @throws Error with field and character: bad_syntax, bad_unit (no name, an unknown one), bad_value, bad_encoding,
/// too_large.
LATCHWORK_API YarnNumber read_yarn_number(std::string_view text, std::string_view field = {});
/// "Nm 28 x 2", "20 tex", "250 m/100 g": reads back to an equal number. @throws Error bad_argument (field "system",
/// "number", "plies").
LATCHWORK_API std::string yarn_number_text(const YarnNumber& yarn);

/// g per 1000 m of the whole yarn: plies times one single's, the nearest double. @throws Error bad_argument (field
/// "system", "number", "plies"); bad_value when it is out of 1e-6..1e9.
LATCHWORK_API double yarn_tex(const YarnNumber& yarn);
/// The whole yarn's number in another system, as one single. @throws Error bad_argument (field "system", "number",
/// "plies"); bad_value when it is out of 1e-6..1e9.
LATCHWORK_API YarnNumber yarn_number_in(const YarnNumber& yarn, YarnSystem system);
/// Yarns knitted or twisted together, as one of that many tex: tex add, counts of indirect systems add as reciprocals.
/// @throws Error bad_argument (field "yarns" for none, "yarns[1].number"); bad_value when it is out of 1e-6..1e9.
LATCHWORK_API YarnNumber yarns_together(std::span<const YarnNumber> yarns);
/// The number of a yarn of which this length has this weight. @throws Error bad_argument (field "mm", "g", "system")
/// for a length or weight of 0 too; bad_value when it is out of 1e-6..1e9.
LATCHWORK_API YarnNumber yarn_number_of(const Length& length, const Weight& weight, YarnSystem system);

/// What a length of yarn weighs. @throws Error bad_argument (field "system", "number", "plies", "mm"); bad_value when
/// the weight is out of range.
LATCHWORK_API Weight yarn_weight(const YarnNumber& yarn, const Length& length);
/// How long yarn of a weight is. @throws Error bad_argument (field "system", "number", "plies", "g"); bad_value when
/// the length is out of range.
LATCHWORK_API Length yarn_length(const YarnNumber& yarn, const Weight& weight);
/// Diameter of a yarn of that fibre density (g/cm3, 0.1..25; cotton 1.54): 0.0444 mm * sqrt(tex / density), the form of
/// GATE Textile Engineering 2008, Q72. A model of packed fibres, not what a ruler measures on a soft yarn.
/// @throws Error bad_argument (field "system", "number", "plies", "fibre_density"); bad_value as yarn_tex().
LATCHWORK_API double yarn_diameter_mm(const YarnNumber& yarn, double fibre_density);

/// All classes, 0 to 7.
LATCHWORK_API std::vector<YarnCategory> yarn_categories();
/// The classes that a gauge of stockinette falls in, taken over 4 in and rounded to whole stitches: none, one or two.
/// @throws Error bad_argument (field "counted", when rows were counted; "count", "length_mm"); bad_value, as
/// per_10cm().
LATCHWORK_API std::vector<YarnCategory> yarn_categories_at(const CountPerLength& gauge);

}  // namespace latchwork::inline v0
