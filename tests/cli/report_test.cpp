// The HTML page as a file: it fetches nothing, runs nothing, and says what the commands say.
#include <fmt/format.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <map>
#include <nlohmann/json.hpp>
#include <regex>
#include <set>
#include <vector>

#include "cli/run.h"

namespace pluckbook::testing {
namespace {

struct DemoBook {
  const char* scenario;
  const char* as_of;
  std::vector<std::string> herds;
};
const DemoBook northern_book{"northern", "2026-08-20", {"spring-cows", "first-calf"}};
const DemoBook southern_book{"southern", "2026-11-10", {"fall-cows", "bred-heifers"}};

/// What stands between each `from` and the next `to`.
std::vector<std::string> between(const std::string& text, const std::string& from,
                                 const std::string& to) {
  std::vector<std::string> found;
  for (std::size_t at = text.find(from); at != std::string::npos; at = text.find(from, at)) {
    at += from.size();
    found.push_back(text.substr(at, text.find(to, at) - at));
  }
  return found;
}

/// Each tag taken for an empty space.
std::string without_tags(const std::string& html) {
  std::string text;
  bool inside = false;
  for (const char c : html) {
    if (c == '<') inside = true;
    if (!inside) text += c;
    if (c == '>') {
      inside = false;
      text += ' ';
    }
  }
  return text;
}

std::string trimmed_text(const std::string& text) {
  const std::size_t first = text.find_first_not_of(' ');
  return first == std::string::npos ? ""
                                    : text.substr(first, text.find_last_not_of(' ') - first + 1);
}

/// The cells of every table of the page, a row a line: "protein|8.4 %|9.0 %|...".
std::multiset<std::string> html_rows(const std::string& html) {
  std::multiset<std::string> rows;
  for (const std::string& row : between(html, "<tr>", "</tr>")) {
    std::string cells;
    for (const std::string& cell : between(row, "<t", "</t")) {
      cells += trimmed_text(without_tags("<t" + cell)) + "|";
    }
    rows.insert(cells);
  }
  return rows;
}

/// A line of a text table as its cells; columns stand two spaces or more apart.
std::string as_cells(const std::string& line) {
  return std::regex_replace(line, std::regex(" {2,}"), "|") + "|";
}

class Report : public ::testing::TestWithParam<DemoBook> {
 protected:
  void SetUp() override { html_ = run("report"); }
  /// What the command prints; printed once for all tests of the process: a report takes long.
  static std::string run(const std::string& words) {
    static std::map<std::string, std::string> printed;
    const DemoBook& book = GetParam();
    const std::string line = words + " --as-of " + book.as_of;
    const auto [entry, is_new] = printed.try_emplace(book.scenario + (": " + line));
    if (is_new) entry->second = run_in(FreshFolder(book.scenario).path(), line).output;
    return entry->second;
  }
  std::string html_;
};

TEST_P(Report, IsOneFileThatFetchesAndRunsNothing) {
  EXPECT_EQ(html_.rfind("<!doctype html>\n<html lang=\"en\">", 0), 0U);
  EXPECT_NE(html_.find("default-src &#39;none&#39;"), std::string::npos);
  for (const char* never : {"<script", "src=", "href=\"http", "url(", "@import", "javascript:"}) {
    EXPECT_EQ(html_.find(never), std::string::npos) << never;
  }
  EXPECT_LT(html_.size(), 500'000U);
}

TEST_P(Report, HasOneTitleAndEveryLinkLeadsSomewhere) {
  EXPECT_EQ(between(html_, "<h1", ">").size(), 1U);
  const std::vector<std::string> ids = between(html_, " id=\"", "\"");
  const std::set<std::string> known(ids.begin(), ids.end());
  EXPECT_EQ(known.size(), ids.size()) << "an id stands twice";
  const std::vector<std::string> links = between(html_, "href=\"#", "\"");
  EXPECT_GE(links.size(), 6U);
  for (const std::string& link : links) EXPECT_TRUE(known.contains(link)) << link;
}

TEST_P(Report, EveryChartHasATitleAndSaysItsFinding) {
  const auto charts = between(html_, "<svg ", "</svg>");
  EXPECT_EQ(charts.size(), 2 * GetParam().herds.size());
  for (const std::string& chart : charts) {
    EXPECT_EQ(chart.rfind("role=\"img\"", 0), 0U);
    EXPECT_EQ(between(chart, "<title", "</title>").size(), 1U);
    const auto finding = between(chart, "<desc", "</desc>");
    ASSERT_EQ(finding.size(), 1U);
    EXPECT_NE(finding[0].find("need"), std::string::npos) << finding[0];
    for (const char* series : {"diet", "need", "bags"}) {
      EXPECT_NE(chart.find("data-series=\"" + std::string(series) + "\""), std::string::npos);
    }
    EXPECT_NE(chart.find("data-band=\"80\""), std::string::npos);
  }
}

TEST_P(Report, FirstScreenAnswersInAtMost120Words) {
  const std::size_t end = html_.find("</section>");
  const std::size_t start = html_.find("<section");
  const std::string answers = without_tags(html_.substr(start, end - start));
  std::istringstream words(answers);
  int count = 0;
  for (std::string word; words >> word;) ++count;
  EXPECT_LE(count, 120) << answers;
  EXPECT_GE(count, 40) << answers;
}

TEST_P(Report, TablesSayWhatOutlookAndPriceSay) {
  const std::multiset<std::string> rows = html_rows(html_);
  int compared = 0;
  for (const std::string& herd : GetParam().herds) {
    for (const std::string& command : {"outlook " + herd, "price " + herd}) {
      std::istringstream lines(run(command));
      for (std::string line; std::getline(lines, line);) {
        const std::string cells = as_cells(line);
        const bool figures = std::count(cells.begin(), cells.end(), '|') >= 5 &&
                             std::regex_search(line, std::regex("\\d")) && line[0] != ' ' &&
                             line[0] != '-';
        if (!figures) continue;
        EXPECT_TRUE(rows.contains(cells)) << command << ": " << line;
        ++compared;
      }
    }
  }
  EXPECT_GE(compared, 25);
}

TEST_P(Report, TheOutlooksTextSaysWhatItsJsonSays) {
  for (const std::string& herd : GetParam().herds) {
    const std::string text = run("outlook " + herd);
    const auto json = nlohmann::json::parse(run("outlook " + herd + " --json"));
    for (const auto& nutrient : json.at("herds")[0].at("nutrients")) {
      const auto percent = [](const nlohmann::json& value) {
        return fmt::format("{:.1f}", value.get<double>());
      };
      const std::string name = nutrient.at("nutrient") == "tdn" ? "TDN" : "protein";
      const std::string row =
          fmt::format("\n{:<8}  +{}  +{} ", name, percent(nutrient.at("diet_now").at("median")),
                      percent(nutrient.at("need_now").at("value")));
      EXPECT_TRUE(std::regex_search(text, std::regex(row))) << row << "\n" << text;
    }
  }
}

TEST_P(Report, CautionsOnFeedsOfTheSeasonStandBeforeItsMoney) {
  const std::string page = std::regex_replace(html_, std::regex("&#39;"), "'");
  std::size_t compared = 0;
  for (const std::string& herd : GetParam().herds) {
    const auto plan = nlohmann::json::parse(run("plan " + herd + " --json"));
    const std::size_t begins = page.find("id=\"herd-" + herd + "\"");
    const std::size_t season = page.find("id=\"plan-" + herd + "\"");
    const std::size_t money = page.find(" USD", page.find("Doing nothing", season));
    ASSERT_LT(begins, season);
    ASSERT_LT(season, money);
    const std::string before = page.substr(begins, money - begins);
    for (const std::string caution : plan.at("cautions")) {
      EXPECT_NE(before.find(caution), std::string::npos) << herd << ": " << caution;
      ++compared;
    }
  }
  EXPECT_GE(compared, GetParam().herds.size());
}

INSTANTIATE_TEST_SUITE_P(Demo, Report, ::testing::Values(northern_book, southern_book),
                         [](const auto& book) { return std::string(book.param.scenario); });

TEST(ReportFile, HostileNamesStayWords) {
  FreshFolder folder("northern");
  const auto file = folder.path() / "pastures.yaml";
  std::string text = read_text(file);
  const std::string name = "North Draws";
  text.replace(text.find(name), name.size(), "'<script>alert(1)</script><img onerror=x>'");
  write_text(file, text);
  const Ran ran = run_in(folder.path(), "report --as-of 2026-08-20");
  EXPECT_EQ(ran.exit, 0);
  EXPECT_EQ(ran.output.find("<script"), std::string::npos);
  EXPECT_EQ(ran.output.find("<img"), std::string::npos);
  EXPECT_NE(ran.output.find("&lt;script&gt;alert(1)"), std::string::npos);
}

TEST(ReportFile, TakesThePlaceOfAnEarlierPageAndOfNothingElse) {
  FreshFolder folder("northern");
  const std::string report = "report --as-of 2026-08-20 --output ";
  EXPECT_EQ(run_in(folder.path(), report + "r.html").exit, 0);
  EXPECT_EQ(run_in(folder.path(), report + "r.html").exit, 0);
  const std::string herds = read_text(folder.path() / "herds.yaml");
  const Ran refused = run_in(folder.path(), report + "herds.yaml");
  EXPECT_EQ(refused.exit, 2);
  EXPECT_EQ(refused.output,
            "pluckbook: 'herds.yaml' is there and is no HTML page\n"
            "  choose another name for --output, such as report.html\n");
  EXPECT_EQ(read_text(folder.path() / "herds.yaml"), herds);
  EXPECT_EQ(run_in(folder.path(), report + "nowhere/r.html").exit, 2);
}

}  // namespace
}  // namespace pluckbook::testing
