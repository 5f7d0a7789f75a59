// Words that a spreadsheet would compute and words that a browser would take for elements, in every
// place of the book that holds free text: no CSV and no page makes more of them than words.
#include <gtest/gtest.h>

#include "cli/run.h"

namespace pluckbook::testing {
namespace {

void put(const std::filesystem::path& file, const std::string& old, const std::string& now) {
  std::string text = read_text(file);
  const std::size_t at = text.find(old);
  ASSERT_NE(at, std::string::npos) << old << " in " << file;
  write_text(file, text.replace(at, old.size(), now));
}

/// A demo book in which all that has a name or a note has this one.
void name_everything(const std::filesystem::path& book, const std::string& words) {
  const std::string quoted = "'" + words + "'";
  put(book / "book.yaml", "Teakettle Coulee\nunits", quoted + "\nunits");
  put(book / "book.yaml", "County Forage Lab", quoted);
  put(book / "pastures.yaml", "North Draws", quoted);
  put(book / "herds.yaml", "- id: spring-cows\n", "- id: spring-cows\n  name: " + quoted + "\n");
  put(book / "feeds.yaml", "name: 20 % range cube", "name: " + quoted);
  const auto draws = book / "samples/2026/draws.yaml";
  put(draws, "basis: dry matter,",
      "basis: dry matter, tdn_by: " + quoted + ", note: " + quoted + ",");
  put(draws, "- bag: 26-draws-08\n", "- bag: 26-draws-08\n  note: " + quoted + "\n");
  put(book / "what-ifs.yaml", "name: as now", "name: " + quoted);
  write_text(book / "events.yaml",
             "- {date: 2026-08-01, pasture: draws, event: rain, note: " + quoted + "}\n");
}

struct Cell {
  std::string text;
  bool quoted = false;
};

std::vector<Cell> cells_of(const std::string& csv) {
  std::vector<Cell> cells(1);
  bool inside = false;
  for (const char c : csv) {
    if (c == '"') {
      inside = !inside;
      cells.back().quoted = true;
    } else if (!inside && (c == ',' || c == '\n')) {
      cells.emplace_back();
    } else if (inside || c != '\r') {
      cells.back().text += c;
    }
  }
  return cells;
}

bool is_number(const std::string& text) {
  char* end = nullptr;
  std::strtod(text.c_str(), &end);
  return !text.empty() && *end == '\0';
}

TEST(StrangeNames, NoCellOfAnyCsvIsComputed) {
  int texts = 0, numbers = 0;
  for (const char* formula :
       {"=1+1", "+1+1", "-1+1", "@SUM(A1)", "=HYPERLINK(\"x\")", "=cmd|x!A0"}) {
    if (formula[0] == '+' && !long_run()) break;  // all go through one door
    const FreshFolder book("northern");
    name_everything(book.path(), formula);
    for (const char* words : {"check", "bags --all", "diet draws", "need spring-cows", "outlook",
                              "price spring-cows", "plan spring-cows", "compare what-ifs.yaml",
                              "backtest", "sources", "workings spring-cows"}) {
      SCOPED_TRACE(std::string(words) + " with " + formula);
      const bool dated = std::string(words) != "check" && std::string(words) != "sources";
      const Ran ran =
          run_in(book.path(), std::string(words) + " --csv" + (dated ? " --as-of 2026-08-20" : ""),
                 "2>/dev/null");
      EXPECT_LE(ran.exit, 1) << ran.output;
      for (const Cell& cell : cells_of(ran.output)) {
        if (is_number(cell.text)) {
          ++numbers;
          EXPECT_FALSE(cell.quoted) << cell.text;
          continue;
        }
        ++texts;
        EXPECT_EQ(std::string("=+-@\t").find(cell.text.empty() ? 'x' : cell.text[0]),
                  std::string::npos)
            << cell.text;
      }
    }
  }
  EXPECT_GT(texts, 1000);
  EXPECT_GT(numbers, 1000);
}

/// The names of a page's elements, in their order.
std::string elements_of(const std::string& html) {
  std::string names;
  for (std::size_t at = html.find('<'); at != std::string::npos; at = html.find('<', at + 1)) {
    names += html.substr(at, html.find_first_of(" >\n", at) - at);
  }
  return names;
}

std::string report_with(const std::string& words) {
  const FreshFolder book("northern");
  name_everything(book.path(), words);
  const Ran ran = run_in(book.path(), "report --as-of 2026-08-20", "2>/dev/null");
  EXPECT_EQ(ran.exit, 0) << words;
  return ran.output;
}

TEST(StrangeNames, NoElementOfThePageIsBornOfThem) {
  const std::string plain = elements_of(report_with("Plain words"));
  EXPECT_GT(plain.size(), 1000U);
  for (const char* words :
       {"</title></style>--><script>alert(1)</script><img src=x onerror=alert(1)>\"><svg onload=x>",
        "<script>alert(1)</script>", "\"><b>", "<a href=javascript:alert(1)>x</a>",
        "&lt;script&gt;", "<!--"}) {
    if (words[1] == 's' && !long_run()) break;  // the first holds most of them
    EXPECT_EQ(elements_of(report_with(words)), plain) << words;
  }
}

}  // namespace
}  // namespace pluckbook::testing
