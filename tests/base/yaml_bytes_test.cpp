#include "base/yaml_bytes.h"

#include <gtest/gtest.h>

namespace pluckbook {
namespace {

std::string at_open_quote(std::string_view text) {
  const auto at = open_quote(text);
  return at ? std::string(text.substr(*at)) : "none";
}

TEST(OpenQuote, IsTheFirstThatItsLineDoesNotClose) {
  EXPECT_EQ(at_open_quote("k: [\"a\",\"b]\n"), "\"b]\n");
  EXPECT_EQ(at_open_quote("k: ['a','b']\nm: 'c\n"), "'c\n");
  EXPECT_EQ(at_open_quote("- \"x\n- \"y\"\n"), "\"x\n- \"y\"\n");
  EXPECT_EQ(at_open_quote("{a: 'it''s', b: 'it''}"), "'it''}");
  EXPECT_EQ(at_open_quote("a: 'it''"), "'it''");
  EXPECT_EQ(at_open_quote("\"a: 1\n"), "\"a: 1\n");
  EXPECT_EQ(at_open_quote("\xEF\xBB\xBF'a: 1\n"), "'a: 1\n");
  EXPECT_EQ(at_open_quote("a: 1\r\n\"b: 2\r\n"), "\"b: 2\r\n");
}

TEST(OpenQuote, IsNoneInsideAWordACommentOrAQuote) {
  EXPECT_EQ(at_open_quote("note: it's a cow's\n"), "none");
  EXPECT_EQ(at_open_quote("note: 5\" of rain\n"), "none");
  EXPECT_EQ(at_open_quote("# \"seen\na: 1 # 'twas\n"), "none");
  EXPECT_EQ(at_open_quote("a: \"say \\\"no\\\" to 'it\" # '\n"), "none");
  EXPECT_EQ(at_open_quote("#"), "none");
  EXPECT_EQ(at_open_quote(""), "none");
}

TEST(Places, CountLinesAndCharactersFromOne) {
  const std::string text =
      "\xEF\xBB\xBF"
      "a: 1\r\nPr\u00e9: x\n\n";
  const Place first = place_at("f", text, 3);
  EXPECT_EQ(first.line, 1);
  EXPECT_EQ(first.column, 1);
  EXPECT_EQ(first.line_text, "a: 1");
  const Place second = place_at("f", text, text.find('x'));
  EXPECT_EQ(second.line, 2);
  EXPECT_EQ(second.column, 6);
  EXPECT_EQ(second.line_text, "Pr\u00e9: x");
  EXPECT_EQ(second.length, 1);
  EXPECT_EQ(place_on_line(2, "f", text, text.find('x'), 4).length, 4);
  EXPECT_EQ(place_on_line(2, "f", text, text.find('x'), 0).length, 1);
  EXPECT_EQ(place_at("f", text, 1000).line, 4) << "past the end is at the end";
  EXPECT_EQ(characters("Pr\u00e9 \u96ea"), 5U);
}

TEST(Places, AVeryLongLineIsShownInPart) {
  const std::string line(1000, 'x');
  EXPECT_EQ(place_at("f", line, 10).line_text, std::string(240, 'x'));
  EXPECT_EQ(place_at("f", line, 239).column, 240);
  EXPECT_EQ(place_at("f", line, 239).line_text.size(), 240U);
  EXPECT_EQ(place_at("f", line, 240).line_text, "") << "the caret would stand beyond it";
  std::string accents;
  for (int i = 0; i < 300; ++i) accents += "\u00e9";
  EXPECT_EQ(characters(place_at("f", accents, 0).line_text), 240U);
}

}  // namespace
}  // namespace pluckbook
