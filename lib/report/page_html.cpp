#include "report/page_html.h"

#include <fmt/format.h>

namespace pluckbook {
namespace {

Markup cell(const Column& column, const std::string& text, bool heads_row) {
  const std::string side = column.align == Align::right ? "number" : "text";
  if (heads_row) return element("th", {{"scope", "row"}, {"class", side}}, words(text));
  // On a telephone each cell stands on a line of its own, behind its column's name.
  return element("td", {{"class", side}, {"data-head", column.header}}, words(text));
}

class HtmlPrinter {
 public:
  HtmlPrinter(int level, std::string prefix) : level_(level), prefix_(std::move(prefix)) {}

  void operator()(const Space&) {}
  void operator()(const Heading& heading) {
    close_list();
    keep_heading();
    caption_ = heading.words;
  }
  void operator()(const Sentence& sentence) { paragraph(sentence.words, "sentence"); }
  void operator()(const Line& line) { paragraph(line.words, "line"); }
  void operator()(const Working& working) {
    paragraph(working.what + (working.worked.empty() ? "" : " " + working.worked), "working");
  }
  void operator()(const Note& note) {
    close_tables();
    keep_heading();
    list_ += tag("li", words(note.words));
  }
  void operator()(const Table& table) {
    close_list();
    tables_ += html_table(table, caption_);
    caption_.clear();
  }
  void operator()(const DietChart& chart) {
    close();
    const Markup drawn = chart_svg(chart, fmt::format("{}-{}", prefix_, ++charts_));
    html_ += tag("figure", element("p", {{"class", "chart-title"}}, words(chart.title)) + drawn +
                               tag("figcaption", words(chart.finding)));
  }
  void operator()(const Next&) {}

  Markup all() && {
    close();
    return std::move(html_);
  }

 private:
  void paragraph(const std::string& text, const std::string& kind) {
    close();
    html_ += element("p", {{"class", kind}}, words(text));
  }
  void close() {
    close_list();
    close_tables();
    keep_heading();
  }
  /// A heading that no table has taken for its caption.
  void keep_heading() {
    if (caption_.empty()) return;
    close_tables();
    html_ += tag(fmt::format("h{}", level_), words(caption_));
    caption_.clear();
  }
  /// Tables that follow each other stand side by side where there is room.
  void close_tables() {
    if (tables_.empty()) return;
    html_ += element("div", {{"class", "tables"}}, tables_);
    tables_ = {};
  }
  void close_list() {
    if (list_.empty()) return;
    html_ += tag("ul", list_);
    list_ = {};
  }

  int level_;
  std::string prefix_;
  std::string caption_;
  int charts_ = 0;
  Markup list_, tables_, html_;
};

}  // namespace

Markup html_table(const Table& table, const std::string& caption) {
  Markup head;
  for (const Column& column : table.columns()) {
    head += element("th",
                    {{"scope", "col"}, {"class", column.align == Align::right ? "number" : "text"}},
                    words(column.header));
  }
  Markup body;
  for (const auto& row : table.rows()) {
    Markup cells;
    for (std::size_t i = 0; i < row.size(); ++i) {
      cells += cell(table.columns()[i], row[i], i == 0);
    }
    body += tag("tr", cells);
  }
  Markup all;
  if (!caption.empty()) all += tag("caption", words(caption));
  all += tag("thead", tag("tr", head)) + tag("tbody", body);
  return element("div", {{"class", "table"}}, tag("table", all));
}

Markup html_of(const Page& page, int level, const std::string& prefix) {
  HtmlPrinter printer(level, prefix);
  for (const Block& block : page.blocks()) std::visit(printer, block);
  return std::move(printer).all();
}

}  // namespace pluckbook
