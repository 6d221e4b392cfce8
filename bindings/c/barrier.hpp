#pragma once

// What stands between C and C++: the handles, the barrier that no exception passes, and the checks of what C hands in.

#include <cstddef>
#include <cstdint>
#include <cstring>
#include <exception>
#include <functional>
#include <memory>
#include <new>
#include <optional>
#include <span>
#include <stdexcept>
#include <stop_token>
#include <string>
#include <string_view>
#include <type_traits>
#include <utility>
#include <vector>

#include "latchwork/latchwork.h"
#include "latchwork/latchwork.hpp"

// Each handle is a type of its own, so that the compiler tells strangers apart: no casts.
struct latchwork_grid {
  latchwork::Grid value;
};
struct latchwork_wales {
  latchwork::Wales value;
};
struct latchwork_strip {
  latchwork::Strip value;
};
struct latchwork_panel {
  latchwork::Panel value;
};
struct latchwork_findings {
  std::vector<latchwork::Finding> value;
};
struct latchwork_certificate {
  latchwork::Certificate value;
};
struct latchwork_plan {
  latchwork::Plan value;
};
struct latchwork_front {
  latchwork::Front value;
};
struct latchwork_fabric {
  latchwork::Fabric value;
};
struct latchwork_swatch {
  latchwork::Swatch value;
};
struct latchwork_timings {
  latchwork::Timings value;
};
struct latchwork_effort_fit {
  latchwork::EffortFit value;
};
struct latchwork_yarn_file {
  latchwork::YarnRequest value;
  // The same as C sees it: arrays that live as long as the handle.
  std::vector<latchwork_yarn> yarns;
  std::vector<latchwork_yarn_rows> rows;
  std::vector<latchwork_weighed_swatch> weighed;
  std::vector<latchwork_measured_loops> loops;
  std::vector<latchwork_substitute> substitutes;
};
struct latchwork_article_file {
  latchwork::Article value;
  latchwork_article view = LATCHWORK_ARTICLE_INIT;  // the same as C sees it
  std::vector<std::shared_ptr<const void>> kept;    // the view's arrays
};
struct latchwork_targets {
  latchwork::Targets value;
};
struct latchwork_article_request_file {
  latchwork::ArticleRequest value;
  // The same as C sees it; its texts and arrays live as long as the handle.
  latchwork_article_request view = LATCHWORK_ARTICLE_REQUEST_INIT;
  latchwork_article_choices choices = LATCHWORK_ARTICLE_CHOICES_INIT;
  latchwork_fit_request design = LATCHWORK_FIT_REQUEST_INIT;
  std::vector<latchwork_named_measure> measures;
  std::vector<latchwork_named_count> counts;
  std::vector<const char*> made;
  std::vector<latchwork_strip_run> groups;
  std::vector<latchwork_substitute> substitutes;
};
struct latchwork_article_fit {
  latchwork::ArticleFit value;
};
struct latchwork_article_job {
  latchwork::ArticleJob value;
};
struct latchwork_grading {
  latchwork::Grading value;
};
struct latchwork_yarn_need {
  latchwork::YarnNeed value;
};
struct latchwork_fit_result {
  latchwork::FitResult value;
};
struct latchwork_brief {
  latchwork::Brief value;
};
struct latchwork_job {
  latchwork::Job value;
  std::vector<latchwork_kept_rhythm> rhythms;  // the conditions', as C sees them
};

namespace latchwork::c {

/// Above this a struct_size is taken for an uninitialised one: nothing is read or written past a struct that large.
inline constexpr std::uint32_t max_struct_size = 1 << 16;

/// Tells the caller what happened; nothing when `error` is not wanted. Allocates nothing.
latchwork_status report(latchwork_error* error, latchwork_status code, const Place& place,
                        std::string_view message) noexcept;

/// Runs `body` so that nothing is thrown at C.
template <class Body>
latchwork_status guarded(latchwork_error* error, Body&& body) noexcept {
  try {
    body();
    return report(error, LATCHWORK_OK, {}, {});
  } catch (const Error& e) {
    return report(error, static_cast<latchwork_status>(e.code()), e.place(), e.what());
  } catch (const std::bad_alloc&) {
    return report(error, LATCHWORK_E_NO_MEMORY, {}, "out of memory");
  } catch (const std::length_error&) {
    return report(error, LATCHWORK_E_TOO_LARGE, {}, "longer than any container may be");
  } catch (const std::exception& e) {
    return report(error, LATCHWORK_E_INTERNAL, {}, e.what());
  } catch (...) {
    return report(error, LATCHWORK_E_INTERNAL, {}, "unknown failure");
  }
}

/// @throws Error bad_argument at that field: "FIELD is WHAT".
[[noreturn]] void refuse(const std::string& field, std::string_view what);

/// What a pointer points at. @throws Error bad_argument when it is NULL.
template <class T>
T& given(T* pointer, const char* name) {
  if (pointer == nullptr) refuse(name, "NULL");
  return *pointer;
}

/// Puts a new handle with what `make` returns at *out, which is NULL if that fails.
template <class Handle, class Make>
void fill(Handle** out, Make&& make) {
  given(out, "out") = nullptr;
  *out = new Handle{make()};
}

/// Deletes and forgets: every destroy function. NULL is fine.
template <class Handle>
void destroy(Handle* handle) noexcept {
  delete handle;
}

/// A state of cloth from a number out of C; nothing for the most finished one. @throws Error bad_argument.
std::optional<ClothState> cloth_state_in(std::int32_t state, const char* field);
/// NULL: the defaults.
SizeOptions size_options_in(const latchwork_size_options* options);
/// @throws Error bad_argument (field "substitutes[1].use").
std::vector<Substitute> substitutes_in(const latchwork_substitute* substitutes, std::size_t count, const char* name);

/// An enumerator from a number out of C; `last` is the greatest. @throws Error bad_argument.
template <class Enum>
Enum enumerator(std::int32_t value, Enum last, const char* field) {
  if (value < 0 || value > static_cast<std::int32_t>(last)) {
    refuse(field, std::to_string(value) + "; it may be 0 to " + std::to_string(static_cast<std::int32_t>(last)));
  }
  return static_cast<Enum>(value);
}

/// 0 or 1. @throws Error bad_argument.
bool flag(std::int32_t value, const char* field);

/// The element at `index`. @throws Error bad_argument past the end.
template <class List>
const auto& element(const List& list, std::size_t index, const char* field) {
  if (index >= list.size()) {
    refuse(field, std::to_string(index) + "; there are " + std::to_string(list.size()));
  }
  return list[index];
}

/// A count as C has it. Never cuts: our own limits keep counts far below.
template <class List>
std::int32_t count_of(const List& list) {
  return static_cast<std::int32_t>(list.size());
}

// Text and arrays.

/// `size` bytes of text. @throws Error bad_argument for NULL, of no bytes too.
std::string_view text_in(const char* text, std::size_t size, const char* name = "text");

/// A text; NULL is none.
std::string text_or_none(const char* text);
/// The texts of an array. @throws Error bad_argument (field "notes[1]") for NULL in it.
std::vector<std::string> texts_in(const char* const* texts, std::size_t count, const std::string& name);

/// The elements of an array; NULL only for none. @throws Error bad_argument.
template <class T>
std::span<const T> array_in(const T* items, std::size_t count, const char* name) {
  if (items == nullptr && count > 0) refuse(name, "NULL");
  return {items, count};
}

/// Copies of the handles of an array. @throws Error bad_argument for NULL in it.
std::vector<Strip> strips_in(const latchwork_strip* const* strips, std::size_t count, const char* name);

/// As much of a text as an array of C's holds, cut between characters, closed by NUL.
void cut(char* to, std::size_t size, std::string_view text) noexcept;
template <std::size_t size>
void cut(char (&to)[size], std::string_view text) noexcept {
  cut(to, size, text);
}

/// Room of the caller's for a list of T. Made before the work, so that a bad buffer is told before a long call.
template <class T>
class Room {
 public:
  /// @throws Error bad_argument, when there is neither a buffer nor a place for its size.
  Room(T* items, std::size_t capacity, std::size_t* needed, const char* name)
      : items_(items), capacity_(capacity), needed_(needed) {
    if (needed_ != nullptr) *needed_ = 0;
    if (items == nullptr && (capacity > 0 || needed == nullptr)) refuse(name, "NULL");
    if constexpr (std::is_same_v<T, char>) {
      if (capacity > 0) items[0] = '\0';
    }
  }

  /// Copies what `convert` makes of each element, if all fit. @throws Error bad_argument (capacity).
  template <class List, class Convert>
  void take(const List& list, Convert&& convert) {
    if (!ask(list.size())) return;
    std::size_t i = 0;
    for (const auto& element : list) items_[i++] = convert(element);
  }
  template <class List>
  void take(const List& list) {
    take(list, [](const auto& element) { return static_cast<T>(element); });
  }

  /// Copies a text and closes it. @throws Error bad_argument (capacity).
  void take_text(std::string_view text) {
    if (!ask(text.size() + 1)) return;
    std::memcpy(items_, text.data(), text.size());
    items_[text.size()] = '\0';
  }

 private:
  /// Whether there is a buffer to write to; it is large enough then.
  bool ask(std::size_t count) {
    if (needed_ != nullptr) *needed_ = count;
    if (items_ == nullptr) return false;
    if (capacity_ < count) {
      refuse("capacity", std::to_string(capacity_) + "; " + std::to_string(count) + " are needed");
    }
    return true;
  }

  T* items_;
  std::size_t capacity_;
  std::size_t* needed_;
};

using TextRoom = Room<char>;

// Structs that begin with struct_size.

/// @throws Error bad_argument for a size that cannot be one.
void check_struct_size(std::uint32_t size, const char* name);
/// @throws Error bad_argument where bytes that this library does not know are not zero.
void check_tail(const unsigned char* bytes, std::size_t from, std::size_t to, const char* name);

/// A struct of C's in full: what an older caller lacks is as in `defaults`; what a newer one has beyond must be zero.
template <class Struct>
Struct struct_in(const Struct* from, Struct defaults, const char* name) {
  static_assert(std::is_trivially_copyable_v<Struct> && offsetof(Struct, struct_size) == 0);
  const std::uint32_t size = given(from, name).struct_size;
  check_struct_size(size, name);
  const auto* bytes = reinterpret_cast<const unsigned char*>(from);
  if (size > sizeof(Struct)) check_tail(bytes, sizeof(Struct), size, name);
  std::memcpy(&defaults, bytes, size < sizeof(Struct) ? size : sizeof(Struct));
  defaults.struct_size = sizeof(Struct);
  return defaults;
}

/// What a later field may mean is not known here, so it must be 0. @throws Error bad_argument.
void require_zero(std::int32_t reserved, const std::string& field);

/// Room of the caller's for one struct. Made before the work.
template <class Struct>
class StructRoom {
 public:
  /// @throws Error bad_argument.
  StructRoom(Struct* to, const char* name) : to_(to) { check_struct_size(given(to, name).struct_size, name); }

  /// Writes the fields that the caller knows, and zeros where the caller knows more.
  void take(const Struct& value) noexcept {
    const std::uint32_t size = to_->struct_size;
    auto* bytes = reinterpret_cast<unsigned char*>(to_);
    std::memcpy(bytes, &value, size < sizeof(Struct) ? size : sizeof(Struct));
    if (size > sizeof(Struct)) std::memset(bytes + sizeof(Struct), 0, size - sizeof(Struct));
    to_->struct_size = size;
  }

 private:
  Struct* to_;
};

// Plain data, there and back.

Crossing crossing_in(const latchwork_crossing& crossing, const char* name);
latchwork_crossing crossing_out(const Crossing& crossing);
Machine machine_in(const latchwork_machine* machine, const char* name = "machine");
latchwork_machine machine_out(const Machine& machine);  ///< @throws Error too_large for what a struct cannot hold
YarnNumber yarn_number_in(const latchwork_yarn_number& yarn, const std::string& field);
latchwork_yarn_number yarn_number_out(const YarnNumber& yarn);
YarnRequest yarn_request_in(const latchwork_yarn_request* request);
Article article_in(const latchwork_article* article);
ArticleChoices article_choices_in(const latchwork_article_choices* choices);
latchwork_named_measure named_measure_out(const NamedMeasure& measure);  ///< with the measure's own texts
latchwork_caution caution_out(const Caution& caution);                   ///< with the caution's own texts
/// What C sees of an article: its texts are the article's, its arrays stand in `kept`. Both must outlive it.
latchwork_article article_out(const Article& article, std::vector<std::shared_ptr<const void>>& kept);

/// Puts a new handle at *out with what `make` returns, and with the arrays through which C sees it.
void fill_yarn_file(latchwork_yarn_file** out, const std::function<YarnRequest()>& make);
Effort effort_in(const latchwork_effort* effort, const char* name = "effort");  ///< NULL: the defaults
latchwork_effort effort_out(const Effort& effort);
latchwork_finding finding_out(const Finding& finding);
latchwork_verification verification_out(const Verification& verification);
latchwork_size size_out(const Size& size);
/// Index of the group that one is tied to; -1: none. @throws Error bad_argument (field + ".tied", ".as_group").
int as_group_in(std::int32_t tied, std::int32_t as_group, const std::string& field);
FitRequest fit_request_in(const latchwork_fit_request* request, const std::string& name);
/// All but what a request points at: groups, edge and substitutes.
latchwork_fit_request fit_request_out(const FitRequest& request);
FitCandidate fit_candidate_in(const latchwork_fit_candidate* candidate, const FitRequest& request);
/// NULL: the defaults.
ShapeOptions shape_options_in(const latchwork_shape_options* options);
GradeRequest grade_request_in(const latchwork_fit_request* design, const latchwork_grade_size* sizes, size_t count);
latchwork_row_span row_span_out(const RowSpan& span);
latchwork_target_piece target_piece_out(const TargetPiece& piece);  ///< with the piece's own name
ArticleRequest article_request_in(const latchwork_article_request* request);
latchwork_work_times work_times_out(const WorkTimes& from);
/// Puts a new handle at *out with what `make` returns, and with the arrays through which C sees it.
void fill_article_request_file(latchwork_article_request_file** out, const std::function<ArticleRequest()>& make);
void fill_article_file(latchwork_article_file** out, const std::function<Article()>& make);
latchwork_fit_candidate fit_candidate_out(const FitCandidate& candidate);
std::vector<latchwork_fit_give> fit_gives_out(const FitNearest& nearest);  ///< their words are the nearest's
std::vector<latchwork_strip_size> strip_sizes_out(const Size& size);
std::string lines_of(const std::vector<std::string>& lines);  ///< one a line, no line end after the last

/// The options of a long call, and what the caller's callback says: it lives as long as the call.
class Watch {
 public:
  Watch(latchwork_progress_call call, void* user_data);
  std::stop_token token() const noexcept { return source_.get_token(); }
  std::function<void(const Progress&)> progress();

 private:
  std::stop_source source_;
  latchwork_progress_call call_;
  void* user_data_;
};
latchwork_plan_options plan_options_in(const latchwork_plan_options* options);  ///< NULL: the defaults
Conditions conditions_in(const latchwork_conditions* conditions);               ///< NULL: none
PlanOptions plan_options_of(const latchwork_plan_options& from, Watch& watch);
latchwork_fit_options fit_options_in(const latchwork_fit_options* options);        ///< NULL: the defaults
latchwork_watch_options watch_options_in(const latchwork_watch_options* options);  ///< NULL: the defaults

}  // namespace latchwork::c
