#include "base/csv.h"

#include <fmt/format.h>

#include <algorithm>
#include <optional>

#include "base/text.h"

namespace pluckbook {
namespace {

constexpr std::string_view separator_line = "sep=";
constexpr std::string_view delimiters = ",;\t|";

bool is_break(char c) {
  return c == '\n' || c == '\r';
}

// Past the break at `at`: LF, CR, or both as one.
std::size_t past_break(std::string_view text, std::size_t at) {
  return at + (text.substr(at).starts_with("\r\n") ? 2 : 1);
}

std::string_view without_mark(std::string_view text) {
  return text.substr(start_of_text(text));
}

std::string_view first_line(std::string_view text) {
  return text.substr(0, std::min(text.find_first_of("\r\n"), text.size()));
}

bool has_separator_line(std::string_view text) {
  const std::string_view line = first_line(text);
  return line.starts_with(separator_line) && line.size() == separator_line.size() + 1 &&
         delimiters.find(line.back()) != std::string_view::npos;
}

// ---- the rows ----------------------------------------------------------------------------------

class Scanner {
 public:
  Scanner(const std::string& file, std::string_view text, char delimiter, const CsvLimits& limits)
      : file_(file), text_(text), delimiter_(delimiter), limits_(limits) {}

  Result<std::vector<CsvRow>> rows() {
    std::vector<CsvRow> rows;
    if (has_separator_line(text_)) skip_line();
    while (at_ < text_.size() && !problem_) {
      CsvRow row = read_row();
      const bool blank = row.cells.size() == 1 && row.cells[0].empty();
      if (!blank) rows.push_back(std::move(row));
      if (rows.size() > limits_.rows) {
        refuse(line_start_, fmt::format("the file has more than {} rows", limits_.rows),
               "split it");
      }
    }
    if (problem_) return *std::move(problem_);
    return rows;
  }

 private:
  void refuse(std::size_t where, std::string what, std::string remedy) {
    if (problem_) return;
    const auto before = text_.substr(line_start_, where - line_start_);
    const int column = static_cast<int>(code_points(before).size()) + 1;
    problem_ = input_problem(
        std::move(what), std::move(remedy),
        Place{file_, line_, column, 1, std::string(first_line(text_.substr(line_start_)))});
  }

  void end_line() {
    at_ = past_break(text_, at_);
    ++line_;
    line_start_ = at_;
  }

  void skip_line() {
    at_ = first_line(text_).size();
    if (at_ < text_.size()) end_line();
  }

  CsvRow read_row() {
    CsvRow row;
    row.line = line_;
    for (;;) {
      row.cells.push_back(at_ < text_.size() && text_[first_of_cell()] == '"' ? quoted_cell()
                                                                              : plain_cell());
      if (row.cells.size() > limits_.cells) {
        refuse(at_, fmt::format("the row has more than {} cells", limits_.cells),
               "say which delimiter the file has");
      }
      if (problem_ || at_ >= text_.size() || text_[at_] != delimiter_) break;
      ++at_;
    }
    if (!problem_ && at_ < text_.size()) end_line();
    return row;
  }

  // Where the cell's text begins, or where the row ends before it does.
  std::size_t first_of_cell() const {
    std::size_t first = at_;
    while (first + 1 < text_.size() && text_[first] == ' ') ++first;
    return first;
  }

  std::string plain_cell() {
    const std::size_t begin = at_;
    while (at_ < text_.size() && text_[at_] != delimiter_ && !is_break(text_[at_])) ++at_;
    return fitting(std::string(trimmed(text_.substr(begin, at_ - begin))), begin);
  }

  std::string quoted_cell() {
    at_ = first_of_cell();
    const std::size_t begin = at_++;
    const int line = line_;
    const std::size_t start = line_start_;
    std::string cell;
    while (at_ < text_.size()) {
      if (text_[at_] == '"' && text_.substr(at_).starts_with("\"\"")) {
        cell += '"';
        at_ += 2;
      } else if (text_[at_] == '"') {
        return fitting(std::move(cell), past_quote());
      } else if (is_break(text_[at_])) {
        cell += '\n';
        end_line();
      } else {
        cell += text_[at_++];
      }
    }
    line_ = line;
    line_start_ = start;
    refuse(begin, "this quote does not close", "close it, or take it away; \"\" is a quote inside");
    return cell;
  }

  // Past the closing quote; what stands behind it is refused.
  std::size_t past_quote() {
    ++at_;
    while (at_ < text_.size() && text_[at_] == ' ') ++at_;
    const bool ends = at_ >= text_.size() || text_[at_] == delimiter_ || is_break(text_[at_]);
    if (!ends) refuse(at_, "text stands behind a closing quote", "write \"\" for a quote inside");
    return at_;
  }

  std::string fitting(std::string cell, std::size_t where) {
    if (cell.size() > limits_.text) {
      refuse(where, fmt::format("the cell is {} bytes long; at most {}", cell.size(), limits_.text),
             "shorten it, or say which delimiter the file has");
    }
    return cell;
  }

  const std::string& file_;
  std::string_view text_;
  char delimiter_;
  const CsvLimits& limits_;
  std::size_t at_ = 0, line_start_ = 0;
  int line_ = 1;
  std::optional<Problem> problem_;
};

std::optional<Problem> refuse_text(const std::string& file, std::string_view text,
                                   const CsvLimits& limits) {
  const Place whole{file, 0, 0, 1, ""};
  if (text.size() > limits.bytes) {
    return input_problem(
        fmt::format("the file is {} bytes long; at most {} are read", text.size(), limits.bytes),
        "split it, or check that this is the file you meant", whole);
  }
  if (!is_utf8(text)) {
    return input_problem("the file is not UTF-8 text", "save it again as CSV in UTF-8", whole);
  }
  const std::vector<char32_t> codes = code_points(text);
  const auto bad = std::find_if(codes.begin(), codes.end(), [](char32_t code) {
    return is_unsafe(code) && code != '\n' && code != '\r' && code != '\t';
  });
  if (bad == codes.end()) return std::nullopt;
  int line = 1;
  auto line_start = codes.begin();
  for (auto at = codes.begin(); at != bad; ++at) {
    const bool pair = *at == '\r' && std::next(at) != bad && *std::next(at) == '\n';
    if ((*at != '\n' && *at != '\r') || pair) continue;
    ++line;
    line_start = std::next(at);
  }
  std::string line_text;
  const auto is_break = [](char32_t code) { return code == '\n' || code == '\r'; };
  for (auto at = line_start; at != codes.end() && !is_break(*at); ++at) append_utf8(line_text, *at);
  return input_problem(
      fmt::format("a character that cannot be shown, \\u{:04x}", static_cast<unsigned>(*bad)),
      "remove it", Place{file, line, static_cast<int>(bad - line_start) + 1, 1, line_text});
}

// How many cells the rows that are as wide as the first one hold, were they parted by this; 0 for
// rows of one cell.
std::size_t even_cells(std::string_view text, char delimiter) {
  const CsvLimits limits;
  const Result<std::vector<CsvRow>> rows = Scanner("", text, delimiter, limits).rows();
  if (!rows || rows->empty()) return 0;
  const std::size_t width = rows->front().cells.size();
  const auto even = std::count_if(rows->begin(), rows->end(),
                                  [width](const CsvRow& row) { return row.cells.size() == width; });
  return width > 1 ? width * static_cast<std::size_t>(even) : 0;
}

}  // namespace

char csv_delimiter(std::string_view text) {
  text = without_mark(text);
  if (has_separator_line(text)) return first_line(text).back();
  char best = ',';
  std::size_t most = 0;
  for (const char delimiter : delimiters) {
    const std::size_t cells = even_cells(text, delimiter);
    if (cells <= most) continue;
    most = cells;
    best = delimiter;
  }
  return best;
}

Result<std::vector<CsvRow>> read_csv(const std::string& file, std::string_view text, char delimiter,
                                     const CsvLimits& limits) {
  text = without_mark(text);
  if (auto problem = refuse_text(file, text, limits)) return *std::move(problem);
  return Scanner(file, text, delimiter, limits).rows();
}

}  // namespace pluckbook
