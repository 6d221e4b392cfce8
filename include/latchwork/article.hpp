#pragma once

#include <cstddef>
#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

#include "latchwork/export.hpp"

namespace latchwork::inline v0 {

// Things to make, as data: which pieces, seams and sizes a cushion cover or a blanket has. What the library brings
// along is what others have published, each list and rule under its source; none of it is a rule of the library's own.

/// What the measures of a size list are taken on. The values are in the C ABI.
enum class SizeOf : std::uint8_t {
  finished = 0,  ///< the finished article
  filling = 1,   ///< what goes into it: a cushion's insert. A rule tells the article's measures
  body = 2,      ///< the wearer's body, without ease
};

/// How an opening is closed. The values are in the C ABI.
enum class ClosureKind : std::uint8_t { open = 0, overlap = 1, seam = 2, buttons = 3 };

/// What becomes of an edge of a piece. The values are in the C ABI.
enum class EdgeUse : std::uint8_t {
  free = 0,     ///< seen: nothing is sewn to it
  seamed = 1,   ///< sewn to another edge, all of it or a part, so that a seam allowance is lost there
  closure = 2,  ///< at the opening: buttoned, lapped, or left open
};

/// How a figure or a statement is known. The values are in the C ABI.
enum class SourceMark : std::uint8_t {
  published = 0,    ///< its source prints it
  from_memory = 1,  ///< its source is said to, and was not at hand
  practice = 2,     ///< common practice, no source
};

/// A length that was measured or is to be met: from least_mm to greatest_mm, which may be equal.
struct NamedMeasure {
  std::string name;        ///< "width", "height", "chest", "ease": what terms refer to
  double least_mm = 0;     ///< 1..1e5 in a size; in choices as far as its input goes
  double greatest_mm = 0;  ///< least_mm..1e5
  std::string printed{};   ///< in a size as its source prints it, with its unit: "28-30 in"; not read in choices
  std::string of{};        ///< in a size: the input that it is, "wearer's height", with from least_mm to greatest_mm,
                           ///< -1e5..1e5, on top; empty: these alone. Not read in choices
  friend bool operator==(const NamedMeasure&, const NamedMeasure&) = default;
};

/// A size of a list.
struct ArticleSize {
  std::string name;  ///< "12 months", "18 in"; unlike the others of its list
  std::vector<NamedMeasure> measures;
  friend bool operator==(const ArticleSize&, const ArticleSize&) = default;
};

/// Sizes that one source prints.
struct SizeList {
  std::string name;  ///< unlike the other lists of the article
  std::string source;
  SourceMark mark = SourceMark::published;
  SizeOf of = SizeOf::finished;
  std::vector<ArticleSize> sizes;  ///< one or more
  friend bool operator==(const SizeList&, const SizeList&) = default;
};

/// `times` a measure.
struct LengthTerm {
  std::string of;    ///< a measure of the chosen size, an input, or "overlap", the closure's
  double times = 1;  ///< -100..100
  friend bool operator==(const LengthTerm&, const LengthTerm&) = default;
};

/// A length: the sum of its terms, and from least_mm to greatest_mm on top; all that over the product of the counts in
/// `over`. Without terms it is the range itself.
struct Extent {
  std::vector<LengthTerm> terms;
  double least_mm = 0;     ///< -1e5..1e5
  double greatest_mm = 0;  ///< least_mm..1e5
  std::vector<std::string> over;
  friend bool operator==(const Extent&, const Extent&) = default;
};

/// A point of a piece's shaping: its width at a height, changing evenly from the point before.
struct ShapePoint {
  Extent height;  ///< above the lower edge: no less than that of the point before, no more than the piece's length
  Extent width;   ///< 1..1e5 mm
  friend bool operator==(const ShapePoint&, const ShapePoint&) = default;
};

/// A piece of an article, knitted flat from its lower edge.
struct ArticlePiece {
  std::string name;
  int count = 1;                   ///< 1..1000; multiplied by the counts in `times`
  std::vector<std::string> times;  ///< names of the article's counts
  std::string across;              ///< a count: so many side by side, sewn to each other; empty: one
  std::string up;                  ///< a count: so many one above the other, sewn to each other; empty: one
  Extent width;                    ///< of one, between the seams, at its lower edge: what a seam takes is not in it
  Extent length;                   ///< of one, likewise
  EdgeUse left = EdgeUse::free;    ///< as seen from the right side; of several the outer edge of them all
  EdgeUse right = EdgeUse::free;
  EdgeUse lower = EdgeUse::free;
  EdgeUse upper = EdgeUse::free;
  std::vector<ShapePoint> shape;      ///< from below, the lower edge left out; empty: straight
  std::vector<std::string> closures;  ///< only with these closures; empty: with any
  friend bool operator==(const ArticlePiece&, const ArticlePiece&) = default;
};

/// Seams alike.
struct ArticleSeam {
  std::string name;
  int count = 1;                     ///< 1..1000
  std::vector<std::string> times;    ///< names of the article's counts: so often each
  std::vector<std::string> between;  ///< names of counts: once less than each, as seams between panels are
  Extent length;
  std::vector<std::string> closures;  ///< as ArticlePiece::closures
  friend bool operator==(const ArticleSeam&, const ArticleSeam&) = default;
};

/// A way to close the article.
struct Closure {
  std::string name;
  ClosureKind kind = ClosureKind::open;
  double overlap_least_mm = 0;                        ///< 0..1e4: how far one edge lies over the other; 0 for a seam
  double overlap_greatest_mm = 0;                     ///< overlap_least_mm..1e4
  std::string source = "common practice, no source";  ///< never empty
  SourceMark mark = SourceMark::practice;
  friend bool operator==(const Closure&, const Closure&) = default;
};

/// A filling of one size and the article that it goes into, along one side.
struct RulePair {
  double filling_mm = 0;   ///< 1..1e5
  double finished_mm = 0;  ///< 1..1e5
  friend bool operator==(const RulePair&, const RulePair&) = default;
};

/// How much larger the filling is than the finished article, along each side. A rule that its source has for squares is
/// not for oblongs, and the other way round: an article is square where all its measures are alike.
struct FillingRule {
  std::string name;
  std::string source;
  SourceMark mark = SourceMark::published;
  double larger_least_mm = 0;     ///< -1e4..1e4; 0 with pairs
  double larger_greatest_mm = 0;  ///< larger_least_mm..1e4; 0 with pairs
  std::vector<RulePair> pairs;    ///< a graded rule: it knows these sizes and no others
  bool squares_only = false;      ///< it is for squares
  bool oblongs_only = false;      ///< it is for what is not square; not both
  friend bool operator==(const FillingRule&, const FillingRule&) = default;
};

/// A length that no list gives, so the caller does: ease, the wearer's height. One that only sizes refer to is wanted
/// where the chosen size does.
struct ArticleInput {
  std::string name;
  std::string meaning;
  double least_mm = 0;     ///< -1e5..1e5: the least that makes sense
  double greatest_mm = 0;  ///< least_mm..1e5
  friend bool operator==(const ArticleInput&, const ArticleInput&) = default;
};

/// A number that the caller gives: panels across.
struct ArticleCount {
  std::string name;
  std::string meaning;
  int least = 1;     ///< 1..1000
  int greatest = 1;  ///< least..1000
  friend bool operator==(const ArticleCount&, const ArticleCount&) = default;
};

/// What may hurt someone, and what to defer to.
struct Caution {
  std::string text;
  std::string source;
  SourceMark mark = SourceMark::published;
  friend bool operator==(const Caution&, const Caution&) = default;
};

/// A thing to make, as data: hosts add their own by files.
struct Article {
  static constexpr std::size_t max_items = 1000;  ///< of each list

  std::string name;
  std::vector<std::string> measures;  ///< what a size must give: "width", "height"; none is called "overlap"
  std::vector<SizeList> lists;        ///< published sizes; may be empty
  std::vector<ArticleInput> inputs;
  std::vector<ArticleCount> counts;
  std::vector<Closure> closures;   ///< empty: nothing to close
  std::vector<FillingRule> rules;  ///< empty: nothing to fill
  std::vector<ArticlePiece> pieces;
  std::vector<ArticleSeam> seams;
  std::vector<Caution> cautions;
  friend bool operator==(const Article&, const Article&) = default;
};

/// A number under a name.
struct NamedCount {
  std::string name;
  int count = 1;
  friend bool operator==(const NamedCount&, const NamedCount&) = default;
};

/// What the caller chooses. Nothing is chosen for them: where sources disagree each is offered by its name.
struct ArticleChoices {
  std::string list;     ///< a name of Article::lists; empty, with `size`: every measure stands in `measures`
  std::string size;     ///< a name of that list
  std::string rule;     ///< a name of Article::rules; empty where there are none
  std::string closure;  ///< a name of Article::closures; empty where there are none
  /// Own measures of the finished article or body, where no list is chosen; every input that is wanted; and "overlap",
  /// 0..1e4 mm, for how far the edges lie over each other in place of the closure's own figures, but of a seam's. No
  /// overlap is more than a piece that ends in it has: its length where that is its lower or upper edge, else its
  /// width.
  std::vector<NamedMeasure> measures;
  std::vector<NamedCount> counts;    ///< every count
  bool measures_of_filling = false;  ///< own measures are of the filling that there is: the rule makes the article
  friend bool operator==(const ArticleChoices&, const ArticleChoices&) = default;
};

/// A point of a shape, in mm.
struct TargetPoint {
  double height_least_mm = 0;
  double height_greatest_mm = 0;
  double width_least_mm = 0;
  double width_greatest_mm = 0;
  friend bool operator==(const TargetPoint&, const TargetPoint&) = default;
};

/// A piece to be fitted. Of pieces sewn to each other those with other edges stand apart: "panel, lower left".
struct TargetPiece {
  std::string name;
  int count = 1;
  double width_least_mm = 0;
  double width_greatest_mm = 0;
  double length_least_mm = 0;
  double length_greatest_mm = 0;
  EdgeUse left = EdgeUse::free;
  EdgeUse right = EdgeUse::free;
  EdgeUse lower = EdgeUse::free;
  EdgeUse upper = EdgeUse::free;
  std::vector<TargetPoint> shape;
  friend bool operator==(const TargetPiece&, const TargetPiece&) = default;
};

/// Seams to be sewn.
struct TargetSeam {
  std::string name;
  int count = 1;
  double least_mm = 0;  ///< of one
  double greatest_mm = 0;
  friend bool operator==(const TargetSeam&, const TargetSeam&) = default;
};

/// What an article comes to under the choices made.
struct Targets {
  std::vector<TargetPiece> pieces;
  std::vector<TargetSeam> seams;
  std::vector<NamedMeasure> filling;  ///< by the article's measures; empty where nothing is filled
  std::vector<Caution> cautions;      ///< all of the article's
  std::vector<std::string> sources;   ///< for people: where list, rule and closure come from
  double seam_least_mm = 0;           ///< of all seams together
  double seam_greatest_mm = 0;
  friend bool operator==(const Targets&, const Targets&) = default;
};

/// Names of the articles that come with the library, in a fixed order: "cushion cover", "blanket of panels", "scarf",
/// "bag panel", "straight garment pieces".
LATCHWORK_API std::vector<std::string> article_names();

/// One of them. @throws Error bad_argument (field "name"), which names them all.
LATCHWORK_API Article built_in_article(std::string_view name);

/// Pieces with their sizes, seams, filling and cautions. Where the list is of fillings the rule makes the article's
/// measures of them; else the rule makes the filling. Ranges stay ranges: the least of a sum is the sum of what makes
/// it least. Linear in the article, but for looking names up.
/// @throws Error bad_argument for an article that contradicts itself or is out of its ranges (field
/// "pieces[0].width.terms[1].of"), and for a choice that is missing, unknown (both name what there is), out of its
/// range or not wanted (field "choices.list", "choices.measures[2].least_mm"): so too for a size that a graded rule
/// does not know, a square or oblong that a rule is not for, and where a piece comes out without a width and length
/// of 1..1e5 mm, a shape that does not rise within it, or a seam of less than 0 mm. bad_encoding (field) for a text of
/// the article that is not UTF-8.
LATCHWORK_API Targets targets(const Article& article, const ArticleChoices& choices);

// Files are as file.hpp tells; their schema is article.schema.json.

/// "latchwork-article", version 1: the members of Article by their names; what has a default may be left out, but for
/// names, sources, pieces and what else the schema lists as required.
/// @throws Error with line and field: too_large, bad_encoding, bad_syntax, wrong_format, newer_version, duplicate_key,
/// missing_field, unknown_field, bad_value; bad_argument for what targets() refuses in an article.
LATCHWORK_API Article read_article(std::string_view json);

/// The JSON that read_article() reads back to an equal article. What no reader takes is refused as file.hpp tells, with
/// its field: "pieces[0].width.terms[1].of".
LATCHWORK_API std::string write(const Article& article);

}  // namespace latchwork::inline v0
