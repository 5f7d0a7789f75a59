// What comes out of a text that is read.
#include <gtest/gtest.h>

#include <string>

#include "base/yaml_problem.h"

namespace pluckbook {
namespace {

using testing::problem_of;
using namespace std::string_literals;

TEST(Yaml, KeepsScalarsAsWrittenWithPlaceAndByteOffset) {
  const auto document =
      read_yaml("f.yaml", "a: 017\nb:\n  - {c: \"1.50\", d: ~}\n  - 2026-07-06\n");
  ASSERT_TRUE(document);
  const YamlNode& root = document->root;
  ASSERT_EQ(root.kind, YamlNode::Kind::map);
  EXPECT_EQ(root.find("a")->text, "017");
  EXPECT_EQ(root.find("z"), nullptr);
  const YamlNode& list = *root.find("b");
  ASSERT_EQ(list.items.size(), 2U);
  const YamlNode& c = *list.items[0].find("c");
  EXPECT_EQ(c.text, "1.50");
  EXPECT_TRUE(c.quoted);
  EXPECT_EQ(c.line, 3);
  EXPECT_EQ(c.column, 9);
  EXPECT_EQ(c.begin, 18U);
  EXPECT_EQ(list.items[0].find("d")->kind, YamlNode::Kind::null);
  EXPECT_FALSE(list.items[1].quoted);
  EXPECT_EQ(list.items[1].line, 4);
}

TEST(Yaml, ColumnsCountCharactersAndOffsetsCountBytes) {
  const auto document = read_yaml("f.yaml", "names: [Pâturé, \"é\", 牧場, Ost]\n");
  ASSERT_TRUE(document);
  const std::vector<YamlNode>& names = document->root.find("names")->items;
  ASSERT_EQ(names.size(), 4U);
  EXPECT_EQ(names[1].column, 17);
  EXPECT_EQ(names[1].begin, 18U);
  EXPECT_EQ(names[2].column, 22);
  EXPECT_EQ(names[3].column, 26);
  EXPECT_EQ(document->place_of(names[2]).length, 2);
  EXPECT_EQ(document->place_of(names[1]).length, 3);
  EXPECT_EQ(document->place_of(names[3]).line_text, "names: [Pâturé, \"é\", 牧場, Ost]");
}

TEST(Yaml, AByteOrderMarkAndCrLfMoveNoColumn) {
  const auto document = read_yaml("f.yaml",
                                  "\xEF\xBB\xBF"
                                  "a: x\r\nbé: [y, z]\r\n");
  ASSERT_TRUE(document);
  const YamlNode& a = *document->root.find("a");
  EXPECT_EQ(a.text, "x");
  EXPECT_EQ(a.column, 4);
  EXPECT_EQ(a.begin, 6U);
  EXPECT_EQ(document->place_of(a).line_text, "a: x");
  const YamlNode& z = document->root.find("bé")->items[1];
  EXPECT_EQ(z.text, "z");
  EXPECT_EQ(z.line, 2);
  EXPECT_EQ(z.column, 9);
  EXPECT_EQ(document->text[z.begin], 'z');
  EXPECT_EQ(document->place_of(z).line_text, "bé: [y, z]");
}

TEST(Yaml, AnEmptyTextGivesANullRoot) {
  for (const std::string& text : {""s, "\n\n"s, "# only a comment\n"s, "\xEF\xBB\xBF"s, "---\n"s}) {
    SCOPED_TRACE(text);
    const auto document = read_yaml("f.yaml", text);
    ASSERT_TRUE(document);
    EXPECT_EQ(document->root.kind, YamlNode::Kind::null);
  }
}

TEST(Yaml, OrdinaryBooksAreRead) {
  for (const std::string& text :
       {"a: it's fine # a \"comment\n"s, "a:\tx\n"s, "a: |\n  two\n  lines\n"s, "- a\n- b"s,
        "a: 'it''s'\n"s, "a: \"a \\\" b\"\n"s, "---\na: 1\n"s, "a: 1\n...\n"s, "\t\na: 1\n \t \n"s,
        "\"a b\": 1\n"s, "{a: 1, b: 2}\n"s, "a: R&D *x* <<\n"s, "a: \"&x\"\nb: '*x'\nc: '!x'\n"s,
        "'<<': x\n"s}) {
    SCOPED_TRACE(text);
    EXPECT_EQ(problem_of(text), "read");
  }
}

TEST(Yaml, AnAbsentValueStandsAtItsKey) {
  const auto document = read_yaml("f.yaml", "a: 1\nprice:\nb: 2\n");
  ASSERT_TRUE(document);
  const YamlNode& price = *document->root.find("price");
  EXPECT_EQ(price.kind, YamlNode::Kind::null);
  EXPECT_EQ(price.line, 2);
  EXPECT_EQ(price.column, 1);
}

}  // namespace
}  // namespace pluckbook
