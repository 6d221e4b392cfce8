# Dependencies, in this order: the host's own target, an installed package, a pinned download (never with
# LATCHWORK_FETCH=OFF). Floors are what Debian 12 ships.
include(FetchContent)

function(latchwork_require_fetch name)
  if(NOT LATCHWORK_FETCH)
    message(FATAL_ERROR
      "latchwork needs ${name}. Install it, or configure with -DLATCHWORK_FETCH=ON to download a pinned copy.")
  endif()
  message(STATUS "latchwork: ${name} is not installed; downloading a pinned copy")
endfunction()

if(NOT TARGET fmt::fmt)
  find_package(fmt 9 QUIET)
  if(NOT fmt_FOUND)
    latchwork_require_fetch(fmt)
    FetchContent_Declare(fmt GIT_REPOSITORY https://github.com/fmtlib/fmt.git GIT_TAG 10.2.1)
    set(FMT_INSTALL ON)  # a static latchwork names it in its own export set
    FetchContent_MakeAvailable(fmt)
  endif()
endif()

if(NOT TARGET nlohmann_json::nlohmann_json)
  find_package(nlohmann_json 3.11 QUIET)
  if(NOT nlohmann_json_FOUND)
    latchwork_require_fetch(nlohmann_json)
    FetchContent_Declare(nlohmann_json GIT_REPOSITORY https://github.com/nlohmann/json.git GIT_TAG v3.11.3)
    FetchContent_MakeAvailable(nlohmann_json)
  endif()
endif()

if(LATCHWORK_TESTS AND NOT TARGET Catch2::Catch2WithMain)
  find_package(Catch2 QUIET)  # 3.x brings Catch2WithMain; 2.13 is a header, its main stands in tests/support
  if(NOT Catch2_FOUND)
    latchwork_require_fetch(Catch2)
    FetchContent_Declare(Catch2 GIT_REPOSITORY https://github.com/catchorg/Catch2.git GIT_TAG v3.5.4)
    FetchContent_MakeAvailable(Catch2)
  endif()
endif()

if(LATCHWORK_PYTHON AND NOT COMMAND pybind11_add_module)
  find_package(Python 3.10 REQUIRED COMPONENTS Interpreter Development.Module)
  find_package(pybind11 2.10 QUIET CONFIG)
  if(NOT pybind11_FOUND)
    latchwork_require_fetch(pybind11)
    FetchContent_Declare(pybind11 GIT_REPOSITORY https://github.com/pybind/pybind11.git GIT_TAG v2.13.6)
    FetchContent_MakeAvailable(pybind11)
  endif()
endif()
