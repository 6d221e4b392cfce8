# Warnings live on a private target, so that no host inherits them.
add_library(latchwork_warnings INTERFACE)
if(LATCHWORK_WARNINGS AND CMAKE_CXX_COMPILER_ID MATCHES "GNU|Clang")
  target_compile_options(latchwork_warnings INTERFACE
    -Wall -Wextra -Wpedantic -Wshadow -Wconversion -Wsign-conversion -Wnon-virtual-dtor -Wold-style-cast
    -Woverloaded-virtual -Wdouble-promotion -Wformat=2 -Wimplicit-fallthrough)
  if(CMAKE_CXX_COMPILER_ID STREQUAL "GNU" AND CMAKE_CXX_COMPILER_VERSION VERSION_LESS 13)
    # At -O3 g++ 12 sees overlaps and unset members inside std::string and std::optional that are not there.
    target_compile_options(latchwork_warnings INTERFACE -Wno-restrict -Wno-maybe-uninitialized)
  endif()
  if(CMAKE_CXX_COMPILER_ID MATCHES "Clang")
    target_compile_options(latchwork_warnings INTERFACE -Wreserved-identifier)
  endif()
  if(LATCHWORK_WERROR)
    target_compile_options(latchwork_warnings INTERFACE -Werror)
  endif()
endif()
