#pragma once

#include <string>
#include <vector>

#include "latchwork/article_fit.hpp"

namespace latchwork::inline v0 {

/// Gives the pieces of one length one row count, and those of one width too the same repeats, by the rule at
/// fit_article(): of each such piece's fit the candidate that is chosen comes first, or, where none go together, there
/// are no candidates. `wanted` are the pieces' requests. Of each fit at most `most` candidates are looked at, or those
/// that it has, if more. `options` are those of each fit that is made anew. Returns what is to be told; empty where all
/// is as it should be.
std::string choose_together(const std::vector<FitRequest>& wanted, std::vector<PieceFit>& pieces, const Swatch& swatch,
                            const FitOptions& options = {}, int most = FitRequest::max_candidates);

}  // namespace latchwork::inline v0
