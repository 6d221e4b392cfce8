// One fuzzer for each target: CMakeLists.txt names it by LATCHWORK_FUZZ_TARGET.
#include <cstddef>
#include <cstdint>

#include "targets.hpp"

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  latchwork_fuzz::LATCHWORK_FUZZ_TARGET({reinterpret_cast<const char*>(data), size});
  return 0;
}
