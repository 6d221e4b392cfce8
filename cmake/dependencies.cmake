# Dependencies, in this order: the host's own target, an installed package, a pinned download (never with
# LATCHWORK_FETCH=OFF). Floors are what Debian 12 ships. A download is pinned by the SHA-256 of the release's archive, since
# a tag can be moved: an archive of another hash ends the configure. Each hash stands in two independent public recipes
# or more (that of Catch2 in Conan Center's and Spack's; of fmt, json and pybind11 in several distributions' and in
# Bazel rules of other projects).
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
    FetchContent_Declare(fmt URL https://github.com/fmtlib/fmt/archive/refs/tags/10.2.1.tar.gz
      URL_HASH SHA256=1250e4cc58bf06ee631567523f48848dc4596133e163f02615c97f78bab6c811)
    set(FMT_INSTALL ${LATCHWORK_INSTALL})  # a static latchwork names it in its own export set
    FetchContent_MakeAvailable(fmt)
    set_target_properties(fmt PROPERTIES POSITION_INDEPENDENT_CODE ON)  # it goes into shared libraries: C's, Python's
  endif()
endif()

if(NOT TARGET nlohmann_json::nlohmann_json)
  find_package(nlohmann_json 3.11 QUIET)
  if(NOT nlohmann_json_FOUND)
    latchwork_require_fetch(nlohmann_json)
    FetchContent_Declare(nlohmann_json URL https://github.com/nlohmann/json/archive/refs/tags/v3.11.3.tar.gz
      URL_HASH SHA256=0d8ef5af7f9794e3263480193c491549b2ba6cc74bb018906202ada498a79406)
    FetchContent_MakeAvailable(nlohmann_json)
  endif()
endif()

if(LATCHWORK_TESTS AND NOT TARGET Catch2::Catch2WithMain)
  # 3.x brings Catch2WithMain; 2.13 is a header, its main stands in tests/support. No number is asked for, since either would
  # be refused as another major version.
  find_package(Catch2 QUIET)
  if(NOT Catch2_FOUND OR Catch2_VERSION VERSION_LESS 2.13)
    latchwork_require_fetch(Catch2)
    FetchContent_Declare(Catch2 URL https://github.com/catchorg/Catch2/archive/refs/tags/v3.5.4.tar.gz
      URL_HASH SHA256=b7754b711242c167d8f60b890695347f90a1ebc95949a045385114165d606dbb)
    FetchContent_MakeAvailable(Catch2)
  endif()
endif()

if(LATCHWORK_PYTHON AND NOT COMMAND pybind11_add_module)
  find_package(Python 3.10 REQUIRED COMPONENTS Interpreter Development.Module)
  find_package(pybind11 2.10 QUIET CONFIG)
  if(NOT pybind11_FOUND)
    latchwork_require_fetch(pybind11)
    FetchContent_Declare(pybind11 URL https://github.com/pybind/pybind11/archive/refs/tags/v2.13.6.tar.gz
      URL_HASH SHA256=e08cb87f4773da97fa7b5f035de8763abc656d87d5773e62f6da0587d1f0ec20)
    FetchContent_MakeAvailable(pybind11)
  endif()
endif()
