// For schema_test.py, which needs no Python bindings that way.
//   file_samples write FOLDER    writes random values of every kind, as KIND-N.json
//   file_samples read FOLDER     reads every KIND-*.json there; prints a line for each: its name, and "read" or the
//   error's
//                                code and field
#include <algorithm>
#include <cstdint>
#include <filesystem>
#include <fstream>
#include <iostream>
#include <iterator>
#include <string>
#include <string_view>
#include <vector>

#include "latchwork/brief.hpp"
#include "random_article.hpp"
#include "random_values.hpp"

namespace {

using namespace latchwork_test;

void save(const std::filesystem::path& folder, const std::string& kind, std::uint64_t number, const std::string& text) {
  std::ofstream(folder / (kind + "-" + std::to_string(number) + ".json"), std::ios::binary) << text;
}

/// brief.json has no writer or reader of its own: it is one of the files of a brief's folder.
const std::filesystem::path& brief_folder() {
  static const std::filesystem::path folder = std::filesystem::temp_directory_path() / "latchwork-file-samples";
  return folder;
}

void save_brief(const std::filesystem::path& folder, std::uint64_t number, Random& random) {
  Brief brief{Panel("any", Strip{"any", "any", Grid(1, 1)}), Swatch(), Machine(), {}, {}, {}, {}, {}};
  if (!random.one_in(3)) brief.state = static_cast<ClothState>(random.between(0, 2));
  brief.session_ms = 60'000 + random.between(0, 86'340'000);
  if (random.one_in(2)) brief.rest_ms = random.one_in(3) ? 0 : 60'000 + random.between(0, 86'340'000);
  write_brief(brief, brief_folder().string());
  std::filesystem::copy_file(brief_folder() / "brief.json", folder / ("brief-" + std::to_string(number) + ".json"));
}

void read_brief_json(const std::string& text) {
  if (!std::filesystem::exists(brief_folder() / "panel.json")) {
    write_brief({Panel("any", Strip{"any", "any", Grid(1, 1)}), Swatch(), Machine(), {}, {}, {}, {}, {}},
                brief_folder().string());
  }
  std::ofstream(brief_folder() / "brief.json", std::ios::binary) << text;
  read_brief(brief_folder().string());
}

void write_all(const std::filesystem::path& folder) {
  for (std::uint64_t seed = 1; seed <= 60; ++seed) {
    Random random(seed);
    save(folder, "grid", seed, write(any_grid(random)));
    save(folder, "strip", seed, write(Strip{any_text(random), any_text(random), any_grid(random)}));
    save(folder, "panel", seed, write(any_panel(random)));
    save(folder, "machine", seed, write(any_machine(random)));
    save(folder, "plan", seed, write(any_plan(random)));
    save(folder, "certificate", seed, write(any_certificate(random)));
    save(folder, "article", seed, write(any_article(random)));
    save(folder, "article-choices", seed, write(any_article_request(random)));
    save(folder, "yarn", seed, write(any_yarn_request(random)));
    save_brief(folder, seed, random);
  }
}

void read_one(std::string_view kind, const std::string& text) {
  if (kind == "grid") read_grid(text);
  if (kind == "strip") read_strip(text);
  if (kind == "panel") read_panel(text);
  if (kind == "machine") read_machine(text);
  if (kind == "plan") read_plan(text);
  if (kind == "certificate") read_certificate(text);
  if (kind == "article") read_article(text);
  if (kind == "article-choices") read_article_request(text);
  if (kind == "yarn") read_yarn_request(text);
  if (kind == "brief") read_brief_json(text);
}

void read_all(const std::filesystem::path& folder) {
  std::vector<std::filesystem::path> files(std::filesystem::directory_iterator(folder), {});
  std::sort(files.begin(), files.end());
  for (const auto& file : files) {
    const std::string name = file.filename().string();
    std::ifstream in(file, std::ios::binary);
    const std::string text((std::istreambuf_iterator<char>(in)), {});
    std::cout << name << ' ';
    try {
      read_one(name.substr(0, name.find_first_of("0123456789") - 1), text);
      std::cout << "read\n";
    } catch (const Error& error) {
      std::cout << error_name(error.code()) << ' ' << error.place().field << '\n';
    }
  }
}

}  // namespace

int main(int count, char** arguments) {
  const std::vector<std::string> words(arguments, arguments + count);
  if (count == 3 && words[1] == "write") {
    write_all(words[2]);
    std::filesystem::remove_all(brief_folder());
  } else if (count == 3 && words[1] == "read") {
    read_all(words[2]);
    std::filesystem::remove_all(brief_folder());
  } else {
    std::cerr << "file_samples write|read FOLDER\n";
    return 2;
  }
}
