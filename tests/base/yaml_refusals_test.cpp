// What is refused, in whole texts.
#include <gtest/gtest.h>

#include <string>
#include <vector>

#include "base/yaml_problem.h"

namespace pluckbook {
namespace {

using testing::problem_of;
using namespace std::string_literals;

struct Case {
  std::string name, yaml, expected;
};

void check_all(const std::vector<Case>& cases) {
  for (const Case& c : cases) {
    SCOPED_TRACE(c.name);
    EXPECT_EQ(problem_of(c.yaml), c.expected);
  }
}

TEST(Yaml, RefusesBytesThatAreNotText) {
  const std::string not_text =
      "  save the file as UTF-8 text; a spreadsheet or word-processor file cannot be read\n";
  check_all({
      {"NUL", "a: 1\nb: \0x\n"s,
       "f.yaml:2:4: bytes that are not UTF-8 text stand here\n"
       "   2 | b: \\x00\n"
       "     |    ^\n" +
           not_text},
      {"UTF-16", "\xFF\xFE\x61\x00"s,
       "f.yaml:1:4: bytes that are not UTF-8 text stand here\n" + not_text},
      {"overlong", "a: \xC0\xAF\n",
       "f.yaml:1:4: bytes that are not UTF-8 text stand here\n"
       "   1 | a: \\xc0\n"
       "     |    ^\n" +
           not_text},
      {"Latin-1", "a: 1\nb: 2\nc: Pr\xE9\n",
       "f.yaml:3:6: bytes that are not UTF-8 text stand here\n"
       "   3 | c: Pr\\xe9\n"
       "     |      ^\n" +
           not_text},
  });
}

TEST(Yaml, RefusesControlAndDirectionCharacters) {
  const std::string remedy = "  delete it; it cannot be seen in most editors: retype the line\n";
  check_all({
      {"0x04 at the start of a line, where yaml-cpp drops the rest", "a: 1\n\x04\nb: 2\n",
       "f.yaml:2:1: a control or direction character (U+0004) stands here\n"
       "   2 | \\u0004\n"
       "     | ^~~~~~\n" +
           remedy},
      {"escape", "é: \x1b[31m\n",
       "f.yaml:1:4: a control or direction character (U+001B) stands here\n"
       "   1 | é: \\u001b[31m\n"
       "     |    ^~~~~~\n" +
           remedy},
      {"right-to-left override", "a: x\xE2\x80\xAEy\n",
       "f.yaml:1:5: a control or direction character (U+202E) stands here\n"
       "   1 | a: x\\u202ey\n"
       "     |     ^~~~~~\n" +
           remedy},
      {"a byte order mark inside",
       "a: 1\n\xEF\xBB\xBF"
       "b: 2\n",
       "f.yaml:2:1: a control or direction character (U+FEFF) stands here\n"
       "   2 | \\ufeffb: 2\n"
       "     | ^~~~~~\n" +
           remedy},
      {"a lone carriage return", "a: 1\rb: 2\n",
       "f.yaml:1:5: a control or direction character (U+000D) stands here\n"
       "   1 | a: 1\\u000db: 2\n"
       "     |     ^~~~~~\n" +
           remedy},
      {"through an escape", "a: \"\\e[31m\"\n",
       "f.yaml:1:4: this text holds a control or direction character (U+001B)\n"
       "   1 | a: \"\\e[31m\"\n"
       "     |    ^\n"
       "  remove it, and any escape such as \\e or \\u that stands for it\n"},
      {"a direction mark through an escape, in a key", "\"\\u202e\": 1\n",
       "f.yaml:1:1: this text holds a control or direction character (U+202E)\n"
       "   1 | \"\\u202e\": 1\n"
       "     | ^\n"
       "  remove it, and any escape such as \\e or \\u that stands for it\n"},
  });
}

TEST(Yaml, RefusesATabInTheIndentation) {
  check_all({
      {"first", "a:\n\tb: 1\n",
       "f.yaml:2:1: a tab stands in the indentation\n"
       "   2 |  b: 1\n"
       "     | ^\n"
       "  indent with spaces\n"},
      {"after spaces", "a:\n  \tb: 1\n",
       "f.yaml:2:3: a tab stands in the indentation\n"
       "   2 |    b: 1\n"
       "     |   ^\n"
       "  indent with spaces\n"},
  });
}

TEST(Yaml, RefusesAQuoteThatSwallowsTheLinesBelow) {
  const std::string remedy =
      "  close it where the text ends; for text of several lines use '|' and indent it\n";
  check_all({
      {"to the end of the file", "a: \"open\nb: 2\n",
       "f.yaml:1:4: this quote is not closed on its line\n"
       "   1 | a: \"open\n"
       "     |    ^\n" +
           remedy},
      {"single", "x: 1\na: 'open\nb: 2\n",
       "f.yaml:2:4: this quote is not closed on its line\n"
       "   2 | a: 'open\n"
       "     |    ^\n" +
           remedy},
      {"to the next quote", "a: \"open\nb: \"\nc: 2\n",
       "f.yaml:1:4: this quote is not closed on its line\n"
       "   1 | a: \"open\n"
       "     |    ^\n" +
           remedy},
      {"an escaped quote closes nothing", "a: \"open\\\"\n",
       "f.yaml:1:4: this quote is not closed on its line\n"
       "   1 | a: \"open\\\"\n"
       "     |    ^\n" +
           remedy},
  });
}

TEST(Yaml, RefusesAnchorsAliasesTagsAndMergeKeys) {
  check_all({
      {"cyclic anchor", "&x [*x]\n",
       "f.yaml:1:1: text cannot begin with '&'\n"
       "   1 | &x [*x]\n"
       "     | ^\n"
       "  put it in quotes, \"&x\", or write the value out\n"},
      {"alias", "a: 1\nb: *x\n",
       "f.yaml:2:4: text cannot begin with '*'\n"
       "   2 | b: *x\n"
       "     |    ^\n"
       "  put it in quotes, or write out the value it stands for\n"},
      {"tag", "a: !!binary x\n",
       "f.yaml:1:4: text cannot begin with '!'\n"
       "   1 | a: !!binary x\n"
       "     |    ^\n"
       "  put it in quotes, or take the '!' away\n"},
      {"tag on a list", "é: !x [1]\n",
       "f.yaml:1:4: text cannot begin with '!'\n"
       "   1 | é: !x [1]\n"
       "     |    ^\n"
       "  put it in quotes, or take the '!' away\n"},
      {"merge key", "<<: {a: 1}\n",
       "f.yaml:1:1: '<<' is no key of a book\n"
       "   1 | <<: {a: 1}\n"
       "     | ^\n"
       "  write the keys out\n"},
  });
}

TEST(Yaml, RefusesKeysThatAreDoubleOrNoWords) {
  check_all({
      {"twice", "a: 1\nb: 2\na: 3\n",
       "f.yaml:3:1: 'a' is given twice; first on line 1\n"
       "   3 | a: 3\n"
       "     | ^\n"
       "  keep one of them\n"},
      {"twice in brackets, once quoted", "{a: 1, 'a': 2}\n",
       "f.yaml:1:8: 'a' is given twice; first on line 1\n"
       "   1 | {a: 1, 'a': 2}\n"
       "     |        ^\n"
       "  keep one of them\n"},
      {"a list", "? [a]\n: b\n",
       "f.yaml:1:3: a key must be a plain word\n"
       "   1 | ? [a]\n"
       "     |   ^\n"
       "  write  key: value\n"},
      {"nothing", ": b\n",
       "f.yaml:1:1: a key must be a plain word\n"
       "   1 | : b\n"
       "     | ^\n"
       "  write  key: value\n"},
      {"no colon", "a: 1\nhead 140\n",
       "f.yaml:2:1: 'head 140' has no colon after it\n"
       "   2 | head 140\n"
       "     | ^\n"
       "  write  key: value\n"},
  });
}

TEST(Yaml, RefusesWhatStandsAfterTheDocument) {
  check_all({
      {"a second document", "a: 1\n---\nb: 2\n",
       "f.yaml:2:1: a second part begins here\n"
       "   2 | ---\n"
       "     | ^\n"
       "  a file of the book is one part: remove the '---'\n"},
      {"after a closed bracket", "{a: 1} b\n",
       "f.yaml:1:8: text stands after the end of the record\n"
       "   1 | {a: 1} b\n"
       "     |        ^\n"
       "  remove it, or check the brackets before it\n"},
      {"after dots", "a: 1\n...\nb: 2\n",
       "f.yaml:3:1: text stands after the end of the record\n"
       "   3 | b: 2\n"
       "     | ^\n"
       "  remove it, or check the brackets before it\n"},
      {"a lone comma, which LoadAll repeats for ever", ",",
       "f.yaml:1:1: text stands after the end of the record\n"
       "   1 | ,\n"
       "     | ^\n"
       "  remove it, or check the brackets before it\n"},
  });
}

TEST(Yaml, SaysWhatIsBrokenInTheWordsOfSomeoneWhoWritesABook) {
  check_all({
      {"indent", "a: 1\n b: 2\n",
       "f.yaml:2:3: a ':' stands where no value can begin\n"
       "   2 |  b: 2\n"
       "     |   ^\n"
       "  look for a ':' missing on the line above; put text that holds ': ' in quotes\n"},
      {"list indent", "a:\n  - b\n -c\n",
       "f.yaml:3:2: this line does not fit the lines above it\n"
       "   3 |  -c\n"
       "     |  ^\n"
       "  give each key its own line, as far in as its neighbours;\n"
       "  put text that holds quotes in quotes as a whole\n"},
      {"open bracket", "a: [1, 2\nb: 3\n",
       "f.yaml:1:4: this '[' is never closed\n"
       "   1 | a: [1, 2\n"
       "     |    ^\n"
       "  close it with ']'\n"},
      {"open brace", "a: {b: 1\n",
       "f.yaml:1:4: this '{' is never closed\n"
       "   1 | a: {b: 1\n"
       "     |    ^\n"
       "  close it with '}'\n"},
      {"stray bracket", "b: ]\n",
       "f.yaml:1:4: a bracket is closed that was never opened\n"
       "   1 | b: ]\n"
       "     |    ^\n"
       "  remove it, or put the text in quotes\n"},
      {"colon in text", "a: b: c\n",
       "f.yaml:1:5: a ':' stands where no value can begin\n"
       "   1 | a: b: c\n"
       "     |     ^\n"
       "  look for a ':' missing on the line above; put text that holds ': ' in quotes\n"},
      {"at sign", "a: @x\n",
       "f.yaml:1:4: text cannot begin with this character\n"
       "   1 | a: @x\n"
       "     |    ^\n"
       "  put the text in quotes\n"},
      {"text after a quote", "a: \"x\" y\n",
       "f.yaml:1:8: this line does not fit the lines above it\n"
       "   1 | a: \"x\" y\n"
       "     |        ^\n"
       "  give each key its own line, as far in as its neighbours;\n"
       "  put text that holds quotes in quotes as a whole\n"},
      {"list after a key", "a: - b\n",
       "f.yaml:1:4: a list cannot begin here\n"
       "   1 | a: - b\n"
       "     |    ^\n"
       "  begin it on the next line\n"},
      {"unknown escape", "a: \"\\q\"\n",
       "f.yaml:1:7: this '\\' begins an escape that does not exist\n"
       "   1 | a: \"\\q\"\n"
       "     |       ^\n"
       "  write '\\\\' for one '\\', or use single quotes\n"},
      {"directive", "%YAML 1.2\n---\na: 1\n",
       "f.yaml:1:1: a line cannot begin with '%'\n"
       "   1 | %YAML 1.2\n"
       "     | ^\n"
       "  put the text in quotes, or remove the line\n"},
  });
}

}  // namespace
}  // namespace pluckbook
