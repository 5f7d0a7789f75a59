#include "report/report.h"

#include <fmt/format.h>

#include <filesystem>
#include <fstream>
#include <iterator>

#include "base/text.h"
#include "book/store.h"
#include "cli/command.h"
#include "cli/open_book.h"
#include "cli/progress.h"

namespace pluckbook::cli {
namespace {

std::optional<std::string> what_stands_in(const std::filesystem::path& path) {
  std::ifstream in(path, std::ios::binary);
  if (!in) return std::nullopt;
  return std::string(std::istreambuf_iterator<char>(in), {});
}

/// Writes the page whole or not at all; takes the place of an earlier page, of nothing else.
Result<Done> keep_page(const std::string& output, const std::string& html) {
  const std::filesystem::path path(output);
  const std::optional<std::string> old = what_stands_in(path);
  if (old && !old->starts_with("<!doctype html>")) {
    return usage_problem(fmt::format("'{}' is there and is no HTML page", shown(output)),
                         "choose another name for --output, such as report.html");
  }
  std::error_code error;
  const std::filesystem::path folder =
      std::filesystem::canonical(path.has_parent_path() ? path.parent_path() : ".", error);
  if (error) {
    return usage_problem(fmt::format("no folder '{}'", shown(path.parent_path().string())),
                         "make the folder first, or write the page somewhere else");
  }
  Result<Replaced> done = replace_file(disk(), folder, path.filename().string(), html, old);
  if (!done) return done.problems();
  if (*done == Replaced::yes) return Done{};
  return system_problem(fmt::format("'{}' was changed by someone else meanwhile", shown(output)),
                        "it was left as it is; say the same again");
}

Result<Answer> run_report(const Arguments& arguments) {
  Result<Opened> opened = open_book(arguments, pastures_of_herds(arguments));
  if (!opened) return opened.problems();
  Result<std::vector<const Herd*>> herds = herds_named(opened->known, arguments.words);
  if (!herds) return herds.problems();
  OutlookSettings settings;
  settings.as_of = opened->as_of;
  settings.until = opened->until;
  Progress progress("report");
  Result<ReportAnswer> report =
      report_of(opened->known, *herds, settings, [&](double share) { progress.at(share); });
  if (!report) return report.problems();
  const bool card = arguments.has("feeding-card");
  Answer answer;
  if (!arguments.has("output")) {
    if (!card) answer.kind = Answer::Kind::data;
    answer.text = card ? text_of(feeding_card(*report, opened->reader), opened->reader.width)
                       : report_html(*report, opened->reader);
    return answer;
  }
  Result<Done> kept =
      keep_page(arguments.get("output"), card ? feeding_card_html(*report, opened->reader)
                                              : report_html(*report, opened->reader));
  if (!kept) return kept.problems();
  answer.text = fmt::format("page kept: {}\nnext: open it in a browser, or print it\n",
                            shown(arguments.get("output")));
  return answer;
}

}  // namespace

Command report_command() {
  return {
      .name = "report",
      .usage = "[HERD ...]",
      .purpose = "the whole answer as one HTML page",
      .group = "the season",
      .examples = {"pluckbook report --output report.html",
                   "pluckbook report spring-cows --feeding-card"},
      .options = {{"output", "FILE", "where to keep the page (standard output)"},
                  {"feeding-card", "", "what to feed, for the truck, and no more"}},
      .most_words = 64,
      .run = run_report,
  };
}

}  // namespace pluckbook::cli
