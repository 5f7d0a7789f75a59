#include "published/reference_trees.h"

#include <gtest/gtest.h>

#include <filesystem>
#include <fstream>
#include <iterator>

namespace pluckbook::test {
namespace {

namespace fs = std::filesystem;

int nodes_compared = 0;

void expect_same(const ReferenceNode& compiled, const YamlNode& read, const std::string& file) {
  const ReferenceTrees& trees = reference_trees();
  const std::string place = file + ":" + std::to_string(read.line);
  ++nodes_compared;
  ASSERT_EQ(compiled.kind, read.kind) << place;
  ASSERT_EQ(trees.text_of(compiled), read.text) << place;
  ASSERT_EQ(compiled.line, static_cast<std::uint32_t>(read.line)) << place;
  ASSERT_EQ(compiled.count, read.items.size() + read.entries.size()) << place;
  std::size_t at = compiled.first;
  for (const YamlNode& item : read.items)
    ASSERT_NO_FATAL_FAILURE(expect_same(trees.nodes[at++], item, file));
  for (const YamlNode::Entry& entry : read.entries) {
    ASSERT_NO_FATAL_FAILURE(expect_same(trees.nodes[at++], entry.key, file));
    ASSERT_NO_FATAL_FAILURE(expect_same(trees.nodes[at++], entry.value, file));
  }
}

// What the program holds is what its own reader says of each file today, node by node.
TEST(ReferenceTrees, AreWhatTheReaderSaysOfTheFiles) {
  const ReferenceTrees& trees = reference_trees();
  std::size_t files = 0;
  nodes_compared = 0;
  for (const auto& entry : fs::directory_iterator(PLUCKBOOK_SOURCE "/reference")) {
    if (entry.path().extension() != ".yaml") continue;
    ++files;
    std::ifstream file(entry.path(), std::ios::binary);
    const auto read =
        read_yaml(entry.path().filename().string(), {std::istreambuf_iterator<char>(file), {}});
    ASSERT_TRUE(read) << to_text(read.problems().front());
    const auto compiled =
        std::find_if(trees.files.begin(), trees.files.end(),
                     [&](const ReferenceFile& f) { return f.topic == entry.path().stem(); });
    ASSERT_NE(compiled, trees.files.end()) << entry.path();
    ASSERT_NO_FATAL_FAILURE(expect_same(trees.nodes[compiled->root], read->root, read->file));
  }
  EXPECT_EQ(files, trees.files.size());
  EXPECT_EQ(static_cast<std::size_t>(nodes_compared), trees.nodes.size());
}

}  // namespace
}  // namespace pluckbook::test
