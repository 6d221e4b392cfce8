// Strips and the motifs that make them.
#include "barrier.hpp"

using namespace latchwork;
using namespace latchwork::c;

namespace {

template <class Make>
latchwork_status derive(const latchwork_strip* strip, latchwork_strip** out, latchwork_error* error, Make&& make) {
  return guarded(error, [&] { fill(out, [&] { return make(given(strip, "strip").value); }); });
}

template <class Make>
latchwork_status motif(latchwork_strip** out, latchwork_error* error, Make&& make) {
  return guarded(error, [&] { fill(out, make); });
}

}  // namespace

latchwork_status latchwork_strip_create(const char* name, const char* texture, const latchwork_grid* grid,
                                        latchwork_strip** out, latchwork_error* error) {
  return guarded(error, [&] {
    fill(out, [&] {
      Strip strip{&given(name, "name"), &given(texture, "texture"), given(grid, "grid").value};
      // What is not UTF-8 a panel would refuse later, far from where it was handed in.
      [[maybe_unused]] const Panel trial({}, Strip{strip.name, strip.texture, Grid(1, 1)});
      return strip;
    });
  });
}

latchwork_status latchwork_strip_copy(const latchwork_strip* strip, latchwork_strip** out, latchwork_error* error) {
  return derive(strip, out, error, [](const Strip& value) { return value; });
}

latchwork_status latchwork_strip_equal(const latchwork_strip* strip, const latchwork_strip* other, int32_t* equal,
                                       latchwork_error* error) {
  return guarded(error,
                 [&] { given(equal, "equal") = given(strip, "strip").value == given(other, "other").value ? 1 : 0; });
}

void latchwork_strip_destroy(latchwork_strip* strip) {
  destroy(strip);
}

latchwork_status latchwork_strip_name(const latchwork_strip* strip, char* text, size_t capacity, size_t* needed,
                                      latchwork_error* error) {
  return guarded(error, [&] {
    TextRoom room(text, capacity, needed, "text");
    room.take_text(given(strip, "strip").value.name);
  });
}

latchwork_status latchwork_strip_texture(const latchwork_strip* strip, char* text, size_t capacity, size_t* needed,
                                         latchwork_error* error) {
  return guarded(error, [&] {
    TextRoom room(text, capacity, needed, "text");
    room.take_text(given(strip, "strip").value.texture);
  });
}

latchwork_status latchwork_strip_grid(const latchwork_strip* strip, latchwork_grid** out, latchwork_error* error) {
  return guarded(error, [&] { fill(out, [&] { return given(strip, "strip").value.grid; }); });
}

latchwork_status latchwork_strip_mirrored(const latchwork_strip* strip, latchwork_strip** out, latchwork_error* error) {
  return derive(strip, out, error, [](const Strip& value) { return value.mirrored(); });
}

latchwork_status latchwork_strip_repeated_across(const latchwork_strip* strip, int32_t times, latchwork_strip** out,
                                                 latchwork_error* error) {
  return derive(strip, out, error, [&](const Strip& value) { return value.repeated_across(times); });
}

latchwork_status latchwork_strip_repeated_up(const latchwork_strip* strip, int32_t times, latchwork_strip** out,
                                             latchwork_error* error) {
  return derive(strip, out, error, [&](const Strip& value) { return value.repeated_up(times); });
}

latchwork_status latchwork_strip_filled_up(const latchwork_strip* strip, int32_t rows, latchwork_strip** out,
                                           latchwork_error* error) {
  return derive(strip, out, error, [&](const Strip& value) { return value.filled_up(rows); });
}

latchwork_status latchwork_stockinette(int32_t columns, latchwork_strip** out, latchwork_error* error) {
  return motif(out, error, [&] { return stockinette(columns); });
}

latchwork_status latchwork_reverse(int32_t columns, latchwork_strip** out, latchwork_error* error) {
  return motif(out, error, [&] { return reverse(columns); });
}

latchwork_status latchwork_garter(int32_t knit_rows, int32_t purl_rows, int32_t columns, latchwork_strip** out,
                                  latchwork_error* error) {
  return motif(out, error, [&] { return garter(knit_rows, purl_rows, columns); });
}

latchwork_status latchwork_moss(int32_t columns, latchwork_strip** out, latchwork_error* error) {
  return motif(out, error, [&] { return moss(columns); });
}

latchwork_status latchwork_basket(int32_t block_columns, int32_t block_rows, latchwork_strip** out,
                                  latchwork_error* error) {
  return motif(out, error, [&] { return basket(block_columns, block_rows); });
}

latchwork_status latchwork_tuck_rib(int32_t height, latchwork_strip** out, latchwork_error* error) {
  return motif(out, error, [&] { return tuck_rib(height); });
}

latchwork_status latchwork_ladder(int32_t columns, latchwork_strip** out, latchwork_error* error) {
  return motif(out, error, [&] { return ladder(columns); });
}

latchwork_status latchwork_rope(int32_t front, int32_t back, int32_t interval, int32_t lean, latchwork_strip** out,
                                latchwork_error* error) {
  return motif(out, error, [&] { return rope(front, back, interval, enumerator(lean, Lean::right, "lean")); });
}

latchwork_status latchwork_plait(int32_t stitches, int32_t interval, int32_t lean, latchwork_strip** out,
                                 latchwork_error* error) {
  return motif(out, error, [&] { return plait(stitches, interval, enumerator(lean, Lean::right, "lean")); });
}

latchwork_status latchwork_wave(int32_t stitches, int32_t interval, int32_t lean, latchwork_strip** out,
                                latchwork_error* error) {
  return motif(out, error, [&] { return wave(stitches, interval, enumerator(lean, Lean::right, "lean")); });
}
