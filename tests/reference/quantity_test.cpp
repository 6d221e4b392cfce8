#include "latchwork/quantity.hpp"

#include <string>

#include "catch.hpp"
#include "reference.hpp"

namespace quantity_test {

// Lengths and counts over lengths, from text. Every value is read from check_values.json by its id.

using namespace latchwork;
using latchwork_test::meets_reference;
using latchwork_test::reference;
using latchwork_test::reference_input;
using latchwork_test::reference_inputs;
using latchwork_test::reference_source;

TEST_CASE("SZ-11: what was counted over 4 in is not what was counted over 10 cm", "[reference][quantity]") {
  // 4 in = 10.16 cm. Derived.
  INFO(reference_source("SZ-11"));
  const std::string count = std::to_string(reference_input<int>("SZ-11", "sts_per_4in"));
  CHECK(meets_reference("SZ-11", per_10cm(read_count_per_length(count + " sts / 4 in"))));
  CHECK_THROWS_AS(read_count_per_length(count + " sts / 4 in / 10 cm"), Error);
}

TEST_CASE("SZ-14: the inch names of cushion sizes, in centimetres", "[reference][quantity]") {
  // UK cushion size list, britishwholesales.co.uk. Published.
  INFO(reference_source("SZ-14"));
  const nlohmann::json& inches = reference_inputs("SZ-14").at("inch_names");
  for (std::size_t i = 0; i < inches.size(); ++i) {
    const Length length = read_length(std::to_string(inches[i].get<int>()) + " in");
    CHECK(meets_reference("SZ-14", length_in(length, LengthUnit::cm),
                          reference("SZ-14").at("expected")[i].get<double>()));
  }
}

TEST_CASE("the exact definitions of the inch-pound units", "[reference][quantity]") {
  // NIST SP 811, appendix B.8, whose factors in bold are exact; the agreement is Federal Register 24 FR 5348, 1959.
  CHECK(read_length("1 in").mm == 25.4);
  CHECK(read_length("1 ft").mm == 304.8);
  CHECK(read_length("1 yd").mm == 914.4);
  CHECK(read_weight("1 oz").g == 28.349523125);
  CHECK(read_weight("1 lb").g == 453.59237);
  CHECK(read_weight("1 grain").g == 0.06479891);
}

}  // namespace quantity_test
