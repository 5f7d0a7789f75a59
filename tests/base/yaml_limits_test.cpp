// Each limit at n - 1, n and n + 1.
#include <gtest/gtest.h>

#include <string>

#include "base/yaml_problem.h"

namespace pluckbook {
namespace {

using testing::problem_of;

void check_limit(const YamlLimits& limits, const std::string& below, const std::string& at,
                 const std::string& above, const std::string& expected) {
  EXPECT_EQ(problem_of(below, limits), "read");
  EXPECT_EQ(problem_of(at, limits), "read");
  EXPECT_EQ(problem_of(above, limits).substr(0, expected.size()), expected);
}

TEST(YamlLimits, Bytes) {
  YamlLimits limits;
  limits.bytes = 6;
  check_limit(limits, "a: 12", "a: 123", "a: 1234",
              "f.yaml: the file is 7 bytes long; at most 6 are read\n"
              "  split it, or check that this is the file you meant\n");
}

TEST(YamlLimits, BytesByDefault) {
  const std::size_t most = YamlLimits().bytes;
  const auto comment = [](std::size_t bytes) {
    std::string text;
    while (text.size() < bytes) text += "# " + std::string(60, 'x') + "\n";
    return text.substr(0, bytes);
  };
  check_limit({}, comment(most - 1), comment(most), comment(most + 1),
              "f.yaml: the file is 4194305 bytes long; at most 4194304 are read\n");
}

TEST(YamlLimits, Depth) {
  const auto nested = [](int depth) {
    return std::string(static_cast<std::size_t>(depth), '[') +
           std::string(static_cast<std::size_t>(depth), ']');
  };
  const int most = YamlLimits().depth;
  check_limit({}, nested(most - 1), nested(most), nested(most + 1),
              "f.yaml:1:17: brackets or indents nested more than 16 deep\n"
              "   1 | [[[[[[[[[[[[[[[[[]]]]]]]]]]]]]]]]]\n"
              "     |                 ^\n"
              "  check the brackets and the indentation\n");
}

TEST(YamlLimits, AMillionBracketsAreRefusedAtOnce) {
  std::string text;
  for (int i = 0; i < 1'000'000; ++i) text += "[\n";
  for (int i = 0; i < 1'000'000; ++i) text += "]\n";
  EXPECT_EQ(problem_of(text),
            "f.yaml:17:1: brackets or indents nested more than 16 deep\n"
            "  17 | [\n"
            "     | ^\n"
            "  check the brackets and the indentation\n");
}

TEST(YamlLimits, Nodes) {
  const auto list = [](int items) {
    std::string text;
    for (int i = 0; i < items; ++i) text += "- x\n";
    return text;
  };
  const int most = YamlLimits().nodes;  // the list itself is one
  check_limit({}, list(most - 2), list(most - 1), list(most),
              "f.yaml:200000:3: more than 200000 values in one file\n"
              "200000 | - x\n");
}

TEST(YamlLimits, TextCountsCharacters) {
  const auto name = [](std::size_t length) {
    std::string text = "name: ";
    for (std::size_t i = 0; i < length; ++i) text += "é";
    return text;
  };
  const std::size_t most = YamlLimits().text;
  check_limit({}, name(most - 1), name(most), name(most + 1),
              "f.yaml:1:7: this text is longer than 4000 characters\n");
}

TEST(YamlLimits, LineCountsBytes) {
  const auto line = [](std::size_t bytes) { return "#" + std::string(bytes - 1, ' ') + "\r\n"; };
  const std::size_t most = YamlLimits().line;
  check_limit({}, line(most - 1), line(most), line(most + 1),
              "f.yaml:1:1: this line is 65537 bytes long; at most 65536 are read\n");
}

}  // namespace
}  // namespace pluckbook
