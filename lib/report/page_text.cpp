#include "base/text.h"
#include "report/page.h"

namespace pluckbook {
namespace {

/// Whole lines moved to the right.
std::string indented(const std::string& lines, int columns) {
  const std::string margin(static_cast<std::size_t>(columns), ' ');
  std::string out;
  for (std::size_t at = 0; at < lines.size();) {
    const std::size_t end = lines.find('\n', at) + 1;
    out += margin + lines.substr(at, end - at);
    at = end;
  }
  return out;
}

/// Prints one block after another; an empty line stands before a heading and before a chart.
class TextPrinter {
 public:
  explicit TextPrinter(int width) : width_(width) {}

  void operator()(const Space&) { space(); }
  void operator()(const Heading& heading) {
    space();
    text_ += wrapped(heading.words, width_);
  }
  void operator()(const Sentence& sentence) { text_ += wrapped(sentence.words, width_); }
  void operator()(const Note& note) { text_ += wrapped("- " + note.words, width_, 2); }
  void operator()(const Line& line) { text_ += line.words + "\n"; }
  void operator()(const Working& working) {
    const std::string on_one_line =
        working.what + (working.worked.empty() ? "" : " " + working.worked);
    if (working.worked.empty() || display_width(on_one_line) <= width_) {
      text_ += wrapped(on_one_line, width_, 4);
      return;
    }
    text_ += wrapped(working.what, width_, 4);
    text_ += indented(wrapped(working.worked, width_ - 4, 2), 4);
  }
  void operator()(const Table& table) { text_ += table.text(width_); }
  void operator()(const DietChart& chart) {
    space();
    text_ += chart_text(chart);
  }
  void operator()(const Next& next) { text_ += "next: " + next.command + "\n"; }

  std::string text() && { return std::move(text_); }

 private:
  void space() {
    if (!text_.empty()) text_ += "\n";
  }

  int width_;
  std::string text_;
};

}  // namespace

std::string text_of(const Page& page, int width) {
  TextPrinter printer(width);
  for (const Block& block : page.blocks()) std::visit(printer, block);
  return std::move(printer).text();
}

}  // namespace pluckbook
