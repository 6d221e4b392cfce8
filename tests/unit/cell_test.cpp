#include "latchwork/cell.hpp"

#include <array>
#include <string>

#include "catch.hpp"

namespace cell_test {

using namespace latchwork;

namespace {

// The table of cell.hpp, written out once more: numbers and letters are in files, and never change.
struct Row {
  int number;
  Cell cell;
  char letter;
};
constexpr std::array table = {Row{0, Cell::knit, 'k'}, Row{1, Cell::purl, 'p'}, Row{2, Cell::tuck, 't'},
                              Row{3, Cell::slip, 's'}, Row{4, Cell::none, '.'}};

}  // namespace

TEST_CASE("each cell has the number and the letter of the table", "[cell]") {
  for (const Row& row : table) {
    CHECK(static_cast<int>(row.cell) == row.number);
    CHECK(cell_letter(row.cell) == row.letter);
    CHECK(cell_of(row.letter) == row.cell);
  }
}

TEST_CASE("no other byte is a letter: capitals, digits and bytes past ASCII are not", "[cell][error]") {
  const std::string letters = "kpts.";
  for (int byte = 0; byte < 256; ++byte) {
    const char letter = static_cast<char>(static_cast<unsigned char>(byte));
    CHECK(cell_of(letter).has_value() == (letters.find(letter) != std::string::npos));
  }
}

TEST_CASE("a number that is no cell has no letter of the table", "[cell][error]") {
  CHECK(cell_letter(static_cast<Cell>(5)) == '\0');
  CHECK(cell_letter(static_cast<Cell>(255)) == '\0');
}

}  // namespace cell_test
