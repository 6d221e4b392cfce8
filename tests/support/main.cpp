// Catch2 2.13 is one header: its main is made once here. Catch2 3 brings its own.
#ifndef LATCHWORK_CATCH2_V3
#define CATCH_CONFIG_MAIN
#include <catch2/catch.hpp>
#else
namespace latchwork_test {
extern const int catch2_brings_main;
const int catch2_brings_main = 3;
}  // namespace latchwork_test
#endif
