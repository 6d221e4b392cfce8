#include "article_fit/together.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cstddef>
#include <map>
#include <optional>
#include <tuple>
#include <utility>

#include "fit/ranking.hpp"
#include "fit/request.hpp"
#include "latchwork/error.hpp"
#include "text/utf8.hpp"
#include "text/words.hpp"

namespace latchwork::inline v0 {
namespace {

using Candidates = std::vector<FitCandidate>;

/// Pieces whose requests are alike, and what fits them.
struct Kind {
  std::size_t piece = 0;  ///< the first of them
  Candidates candidates{};
  bool all = false;  ///< nothing else fits
};

bool is_one_length(const FitRequest& a, const FitRequest& b) {
  const fitting::Target one = fitting::height_target(a);
  const fitting::Target other = fitting::height_target(b);
  return one.least == other.least && one.most == other.most;
}

bool is_one_width(const FitRequest& a, const FitRequest& b) {
  const fitting::Target one = fitting::width_target(a);
  const fitting::Target other = fitting::width_target(b);
  return one.least == other.least && one.most == other.most;
}

/// What pieces of one width have in common.
using Repeats = std::pair<int, std::vector<int>>;  // panels, times

/// A candidate for each of some kinds, in their order.
struct Choice {
  std::vector<const FitCandidate*> candidates;
  double greatest = 0;
  double sum = 0;

  void add(const FitCandidate& candidate) {
    candidates.push_back(&candidate);
    greatest = std::max(greatest, candidate.error);
    sum += candidate.error;
  }
};

bool is_better(const Choice& a, const Choice& b) {
  if (a.greatest != b.greatest) return a.greatest < b.greatest;
  if (a.sum != b.sum) return a.sum < b.sum;
  const FitCandidate& one = *a.candidates.front();
  const FitCandidate& other = *b.candidates.front();
  if (one.rows != other.rows) return one.rows < other.rows;
  return fitting::ranks_before(one, other);
}

/// The best candidate of a kind for each row count and repeats: candidates come ranked, so the first of each.
using ByRepeats = std::map<Repeats, const FitCandidate*>;
std::map<int, ByRepeats> by_rows(const Candidates& candidates) {
  std::map<int, ByRepeats> out;
  for (const FitCandidate& each : candidates) out[each.rows].emplace(Repeats(each.panels, each.times), &each);
  return out;
}

/// The best for kinds of one width under one row count.
std::optional<Choice> same_repeats(const std::vector<const ByRepeats*>& kinds) {
  std::optional<Choice> best;
  for (const auto& [repeats, first] : *kinds.front()) {
    Choice choice;
    for (const ByRepeats* kind : kinds) {
      const auto found = kind->find(repeats);
      if (found == kind->end()) break;
      choice.add(*found->second);
    }
    if (choice.candidates.size() == kinds.size() && (!best || is_better(choice, *best))) best = std::move(choice);
  }
  return best;
}

/// Kinds of one length, and how they go together.
class Together {
 public:
  /// What fits each piece by itself is looked at first.
  Together(const std::vector<FitRequest>& wanted, const std::vector<PieceFit>& pieces,
           const std::vector<std::size_t>& firsts)
      : wanted_(wanted), looked_at_(wanted[firsts.front()].most) {
    for (const std::size_t piece : firsts) {
      const auto width = std::find_if(widths_.begin(), widths_.end(), [&](const std::vector<std::size_t>& members) {
        return is_one_width(wanted[kinds_[members.front()].piece], wanted[piece]);
      });
      if (width == widths_.end()) {
        widths_.push_back({kinds_.size()});
      } else {
        width->push_back(kinds_.size());
      }
      const Candidates& known = pieces[piece].fit.candidates;
      kinds_.push_back({piece, known, known.size() < static_cast<std::size_t>(wanted[piece].most)});
      looked_at_ = std::min(looked_at_, wanted[piece].most);
    }
    weigh();
  }

  /// Looks at more and more candidates, until what is left cannot be chosen any more.
  void choose(const Swatch& swatch, const FitOptions& options, int most) {
    constexpr int at_first = 64;
    constexpr int times_more = 8;
    for (int next = at_first; !complete_ && looked_at_ < most; next *= times_more) {
      if (next <= looked_at_) continue;
      next = std::min(next, most);
      if (!look(swatch, options, next)) return;
      looked_at_ = next;
      weigh();
    }
  }

  bool complete() const { return complete_; }
  int looked_at() const { return looked_at_; }
  const std::vector<Kind>& kinds() const { return kinds_; }
  const std::vector<FitCandidate>& chosen() const { return best_; }

 private:
  void weigh() {
    best_ = best();
    complete_ = is_complete();
  }

  /// False where so many are too much work; those looked at before stay.
  bool look(const Swatch& swatch, const FitOptions& options, int most) {
    std::vector<Kind> more = kinds_;
    for (Kind& kind : more) {
      if (kind.all) continue;
      FitRequest request = wanted_[kind.piece];
      request.most = most;
      try {
        kind.candidates = fit(request, swatch, options).candidates;
      } catch (const Error& error) {
        if (error.code() != ErrorCode::too_large) throw;
        return false;
      }
      kind.all = kind.candidates.size() < static_cast<std::size_t>(most);
    }
    kinds_ = std::move(more);
    return true;
  }

  /// For each width its best under each row count, then the best row count.
  std::vector<FitCandidate> best() const {
    std::vector<std::map<int, ByRepeats>> sorted;
    sorted.reserve(kinds_.size());
    for (const Kind& kind : kinds_) sorted.push_back(by_rows(kind.candidates));
    std::optional<Choice> best;
    for (const auto& [rows, first] : sorted.front()) {
      Choice choice = of_rows(sorted, rows);
      if (!choice.candidates.empty() && (!best || is_better(choice, *best))) best = std::move(choice);
    }
    std::vector<FitCandidate> out;
    if (!best) return out;
    out.reserve(best->candidates.size());
    for (const FitCandidate* each : best->candidates) out.push_back(*each);
    return out;
  }

  Choice of_rows(const std::vector<std::map<int, ByRepeats>>& sorted, int rows) const {
    std::vector<const FitCandidate*> of_kinds(kinds_.size());
    for (const std::vector<std::size_t>& members : widths_) {
      std::vector<const ByRepeats*> alike;
      alike.reserve(members.size());
      for (const std::size_t kind : members) {
        const auto found = sorted[kind].find(rows);
        if (found == sorted[kind].end()) return {};
        alike.push_back(&found->second);
      }
      const std::optional<Choice> choice = same_repeats(alike);
      if (!choice) return {};
      for (std::size_t i = 0; i < members.size(); ++i) of_kinds[members[i]] = choice->candidates[i];
    }
    Choice out;
    for (const FitCandidate* each : of_kinds) out.add(*each);
    return out;
  }

  /// What was not looked at ranks behind all that was; so nothing with it has a greatest error below these.
  bool is_complete() const {
    double greatest = 0;
    for (const FitCandidate& each : best_) greatest = std::max(greatest, each.error);
    return std::all_of(kinds_.begin(), kinds_.end(), [&](const Kind& kind) {
      return kind.all || (!best_.empty() && greatest < kind.candidates.back().error);
    });
  }

  const std::vector<FitRequest>& wanted_;
  std::vector<Kind> kinds_;
  std::vector<std::vector<std::size_t>> widths_;  ///< kinds of one width
  std::vector<FitCandidate> best_;                ///< one for each kind; empty where none go together
  int looked_at_ = 0;                             ///< of each kind, as many as there are
  bool complete_ = false;
};

/// What is to be said of one candidate, fit() says where nothing else is allowed.
std::vector<Finding> findings_of(FitRequest request, const FitCandidate& candidate, const Swatch& swatch) {
  for (std::size_t i = 0; i < request.groups.size(); ++i) {
    request.groups[i].least = request.groups[i].most = candidate.times[i];
  }
  request.edge_least = request.edge_most = candidate.edge_columns;
  request.panels_least = request.panels_most = candidate.panels;
  request.rows_step = Grid::max_side;
  request.rows_extra = candidate.rows;
  request.most = 1;
  return fit(request, swatch).findings;
}

void put_first(FitResult& result, const FitCandidate& chosen, const FitRequest& request, const Swatch& swatch) {
  Candidates& candidates = result.candidates;
  if (candidates.front() == chosen) return;
  const auto at = std::find(candidates.begin(), candidates.end(), chosen);
  if (at != candidates.end()) {
    candidates.erase(at);
  } else {
    candidates.pop_back();
  }
  candidates.insert(candidates.begin(), chosen);
  result.findings = findings_of(request, chosen, swatch);
}

/// "'panel, left' (786 rows), 'panel, middle' (738 rows)": the pieces with their own best.
std::string names_of(const std::vector<Kind>& kinds, const std::vector<PieceFit>& pieces) {
  std::vector<std::string> out;
  out.reserve(kinds.size());
  for (const Kind& kind : kinds) {
    const PieceFit& piece = pieces[kind.piece];
    out.push_back(fmt::format("'{}' (by itself {})", one_line(piece.target.name),
                              count_of(piece.fit.candidates.front().rows, "row")));
  }
  return joined(out);
}

}  // namespace

std::string choose_together(const std::vector<FitRequest>& wanted, std::vector<PieceFit>& pieces, const Swatch& swatch,
                            const FitOptions& options, int most) {
  std::vector<std::string> told;
  std::vector<bool> done(pieces.size(), false);
  for (std::size_t i = 0; i < pieces.size(); ++i) {
    if (done[i] || pieces[i].fit.candidates.empty()) continue;
    std::vector<std::size_t> firsts;  // of each kind
    std::vector<std::size_t> members;
    for (std::size_t j = i; j < pieces.size(); ++j) {
      if (pieces[j].fit.candidates.empty() || !is_one_length(wanted[i], wanted[j])) continue;
      done[j] = true;
      members.push_back(j);
      const bool known =
          std::any_of(firsts.begin(), firsts.end(), [&](std::size_t first) { return wanted[first] == wanted[j]; });
      if (!known) firsts.push_back(j);
    }
    if (firsts.size() < 2) continue;
    Together together(wanted, pieces, firsts);
    together.choose(swatch, options, most);
    const std::vector<FitCandidate>& chosen = together.chosen();
    const std::string among =
        together.complete() ? "" : fmt::format("; only the first {} of each were looked at", together.looked_at());
    if (chosen.empty()) {
      told.push_back(
          fmt::format("pieces of one length have one row count, those of one width too the same repeats, and "
                      "of what fits each of {} nothing goes together{}",
                      names_of(together.kinds(), pieces), among));
    } else if (!together.complete()) {
      told.push_back(fmt::format("a row count that suits {} better may not have been looked at{}",
                                 names_of(together.kinds(), pieces), among));
    }
    for (const std::size_t member : members) {
      const auto kind = std::find_if(firsts.begin(), firsts.end(),
                                     [&](std::size_t first) { return wanted[first] == wanted[member]; });
      FitResult& result = pieces[member].fit;
      if (chosen.empty()) {
        result.candidates.clear();
      } else {
        put_first(result, chosen[static_cast<std::size_t>(kind - firsts.begin())], wanted[member], swatch);
      }
    }
  }
  return joined(told, "; ");
}

}  // namespace latchwork::inline v0
