// page.h - an answer as a person reads it, before it is text or HTML: sentences, headings, tables,
// notes, charts and the commands to type next, in order. Written once, printed on a terminal
// (page_text.cpp) and on the HTML page (page_html.cpp), so that the two cannot disagree.
#pragma once

#include <string>
#include <variant>
#include <vector>

#include "report/chart.h"
#include "report/table.h"

namespace pluckbook {

struct Heading {
  std::string words;
};
struct Sentence {
  std::string words;
};
/// One point of a list.
struct Note {
  std::string words;
};
/// Lines that are never broken: arithmetic, and a command to type next.
struct Line {
  std::string words;
};
/// A line of working on paper: "CP the diet gives: intake x CP of the diet", and below it, or
/// beside it where there is room, "= 24.057 lb x 8.388 % = 2.018 lb [4]"; without the second part,
/// a figure that is given.
struct Working {
  std::string what, worked;
};
/// "next: pluckbook price spring-cows"
struct Next {
  std::string command;
};

/// An empty line in text; on the HTML page its style sees to that.
struct Space {};

using Block = std::variant<Space, Heading, Sentence, Note, Line, Working, Table, DietChart, Next>;

class Page {
 public:
  Page& space() { return add(Space{}); }
  Page& heading(std::string words) { return add(Heading{std::move(words)}); }
  Page& sentence(std::string words) { return add(Sentence{std::move(words)}); }
  Page& note(std::string words) { return add(Note{std::move(words)}); }
  Page& line(std::string words) { return add(Line{std::move(words)}); }
  Page& working(Working working) { return add(std::move(working)); }
  Page& next(std::string command) { return add(Next{std::move(command)}); }
  Page& add(Block block) {
    blocks_.push_back(std::move(block));
    return *this;
  }
  Page& append(const Page& other) {
    blocks_.insert(blocks_.end(), other.blocks_.begin(), other.blocks_.end());
    return *this;
  }
  const std::vector<Block>& blocks() const { return blocks_; }

 private:
  std::vector<Block> blocks_;
};

/// The page on a terminal or in a file: no line wider than `width` but for an unbroken Line.
std::string text_of(const Page& page, int width = 80);

}  // namespace pluckbook
