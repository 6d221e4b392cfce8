#include "text/csv.hpp"

#include <fmt/format.h>

#include "latchwork/error.hpp"

namespace latchwork::inline v0 {
namespace {

constexpr std::size_t most_fields = 1000;  // else a line of commas takes many times its length

constexpr bool blank(char c) {
  return c == ' ' || c == '\t';
}

[[noreturn]] void refuse(int line, const std::string& message) {
  Place place;
  place.line = line;
  throw Error(ErrorCode::bad_syntax, place, fmt::format("line {}: {}", line, message));
}

}  // namespace

bool CsvReader::next(CsvRecord& record) {
  record.fields.clear();
  record.lines.clear();
  pass_over_lines();
  if (at_ == text_.size()) return false;
  record.line = line_;
  while (true) {
    pass_over_blanks();
    if (record.fields.size() == most_fields) {
      refuse(line_, fmt::format("a record of more than {} fields", most_fields));
    }
    record.lines.push_back(line_);
    record.fields.push_back(field());
    if (at_ == text_.size() || text_[at_] != ',') break;
    ++at_;
  }
  end_line();
  return true;
}

// Comments and lines of nothing but blanks.
void CsvReader::pass_over_lines() {
  while (at_ < text_.size()) {
    const std::size_t newline = text_.find('\n', at_);
    const std::size_t end = newline == std::string_view::npos ? text_.size() : newline;
    std::string_view line = text_.substr(at_, end - at_);
    if (!line.empty() && line.back() == '\r') line.remove_suffix(1);
    if (!line.starts_with('#') && line.find_first_not_of(" \t") != std::string_view::npos) return;
    at_ = end;
    if (newline != std::string_view::npos) {
      ++at_;
      ++line_;
    }
  }
}

std::string CsvReader::field() {
  return at_ < text_.size() && text_[at_] == '"' ? quoted() : unquoted();
}

std::string CsvReader::quoted() {
  const int opened = line_;
  std::string out;
  for (++at_; at_ < text_.size(); ++at_) {
    const char c = text_[at_];
    if (c == '"') {
      ++at_;
      if (at_ < text_.size() && text_[at_] == '"') {
        out += '"';
        continue;
      }
      pass_over_blanks();
      if (at_ < text_.size() && text_[at_] != ',' && !at_line_end()) {
        refuse(line_, "only a comma or the line's end may follow a closing quote; a quote inside is written twice");
      }
      return out;
    }
    if (c == '\n') ++line_;
    out += c;
  }
  refuse(opened, "the quote that opens here is never closed");
}

std::string CsvReader::unquoted() {
  const std::size_t begin = at_;
  while (at_ < text_.size() && text_[at_] != ',' && !at_line_end()) {
    if (text_[at_] == '"') refuse(line_, "a field with a quote in it must stand in quotes, the quote itself twice");
    if (text_[at_] == '\r') refuse(line_, "a carriage return without a line feed; lines end with LF or CRLF");
    ++at_;
  }
  std::string_view out = text_.substr(begin, at_ - begin);
  while (!out.empty() && blank(out.back())) out.remove_suffix(1);
  return std::string(out);
}

void CsvReader::pass_over_blanks() {
  while (at_ < text_.size() && blank(text_[at_])) ++at_;
}

bool CsvReader::at_line_end() const {
  return text_[at_] == '\n' || text_.substr(at_).starts_with("\r\n");
}

void CsvReader::end_line() {
  if (at_ == text_.size()) return;
  at_ += text_[at_] == '\r' ? 2U : 1U;
  ++line_;
}

std::string csv_field(std::string_view text) {
  const bool plain = text.find_first_of(",\"\r\n") == std::string_view::npos && !text.starts_with('#') &&
                     (text.empty() || (!blank(text.front()) && !blank(text.back())));
  if (plain) return std::string(text);
  std::string out = "\"";
  for (const char c : text) {
    if (c == '"') out += '"';
    out += c;
  }
  out += '"';
  return out;
}

}  // namespace latchwork::inline v0
