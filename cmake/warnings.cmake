# Warnings live on a private target, so that no host inherits them.
add_library(latchwork_warnings INTERFACE)
if(PROJECT_IS_TOP_LEVEL AND CMAKE_CXX_COMPILER_ID MATCHES "GNU|Clang")
  target_compile_options(latchwork_warnings INTERFACE
    -Wall -Wextra -Wpedantic -Wshadow -Wconversion -Wsign-conversion -Wnon-virtual-dtor -Wold-style-cast
    -Woverloaded-virtual -Wdouble-promotion -Wformat=2 -Wimplicit-fallthrough)
  if(LATCHWORK_WERROR)
    target_compile_options(latchwork_warnings INTERFACE -Werror)
  endif()
endif()
