// Characters: their bytes, their width, and whether they may be shown.
#include <gtest/gtest.h>

#include <algorithm>
#include <vector>

#include "base/text.h"

namespace pluckbook {
namespace {

struct Block {
  char32_t first, last;
};

bool in(const std::vector<Block>& blocks, char32_t code) {
  return std::any_of(blocks.begin(), blocks.end(), [code](const Block& block) {
    return code >= block.first && code <= block.last;
  });
}

std::string bytes_of(char32_t code) {
  std::string bytes;
  append_utf8(bytes, code);
  return bytes;
}

const std::vector<Block> surrogates = {{0xD800, 0xDFFF}};

// The whole first plane; beyond it the edges of blocks, and one in 64 of the rest.
std::vector<char32_t> characters_to_try() {
  const std::vector<Block> edges = {{0x1F2F0, 0x1FA10}, {0x1FFF0, 0x20010}, {0x3FFF0, 0x40010}};
  std::vector<char32_t> codes;
  for (char32_t code = 0; code <= 0x10FFFF; ++code) {
    if (code < 0x10100 || code % 64 == 63 || in(edges, code)) codes.push_back(code);
  }
  return codes;
}

// Unicode 15.0, table 3-7: a surrogate has no bytes of its own.
TEST(Characters, EveryOneComesBackFromItsBytes) {
  for (const char32_t code : characters_to_try()) {
    const std::string bytes = bytes_of(code);
    const bool good = !in(surrogates, code);
    ASSERT_EQ(is_utf8(bytes), good) << std::hex << static_cast<unsigned>(code);
    if (!good) continue;
    ASSERT_EQ(code_points(bytes), std::vector<char32_t>{code});
    ASSERT_EQ(utf8_bytes(bytes.substr(0, bytes.size() - 1)), 0U)
        << "cut short: " << std::hex << static_cast<unsigned>(code);
  }
  EXPECT_EQ(bytes_of(0x7F).size(), 1U);
  EXPECT_EQ(bytes_of(0x80).size(), 2U);
  EXPECT_EQ(bytes_of(0x7FF).size(), 2U);
  EXPECT_EQ(bytes_of(0x800).size(), 3U);
  EXPECT_EQ(bytes_of(0xFFFF).size(), 3U);
  EXPECT_EQ(bytes_of(0x10000).size(), 4U);
}

TEST(Characters, NoOtherBytesAreOne) {
  for (const char* bytes : {"\x80",
                            "\xBF",
                            "\xC0\x80",
                            "\xC1\xBF",
                            "\xC2",
                            "\xC2\x7F",
                            "\xC2\xC0",
                            "\xE0\x9F\xBF",
                            "\xE1\x80",
                            "\xE1\x80\x7F",
                            "\xE1\x80\xC0",
                            "\xED\xA0\x80",
                            "\xEF\xBF",
                            "\xF0\x8F\xBF\xBF",
                            "\xF1\x80\x80",
                            "\xF1\x80\x80\x7F",
                            "\xF1\x80\x7F\x80",
                            "\xF4\x90\x80\x80",
                            "\xF5\x80\x80\x80",
                            "\xFF"}) {
    EXPECT_FALSE(is_utf8(bytes)) << shown(bytes);
    EXPECT_EQ(utf8_bytes("a\u00e9" + std::string(bytes)), 3U) << shown(bytes);
  }
}

// Widths by blocks: Unicode 15.0, annex 11 (East Asian Wide and Fullwidth), and the blocks of
// combining marks and variation selectors.
TEST(Characters, AreOneColumnWideOrTwoOrNone) {
  const std::vector<Block> wide = {{0x1100, 0x115F},   {0x2E80, 0x303E},  {0x3041, 0xA4CF},
                                   {0xAC00, 0xD7A3},   {0xF900, 0xFAFF},  {0xFE30, 0xFE6F},
                                   {0xFF00, 0xFF60},   {0xFFE0, 0xFFE6},  {0x1F300, 0x1F64F},
                                   {0x1F900, 0x1F9FF}, {0x20000, 0x3FFFD}};
  const std::vector<Block> none = {{0x0300, 0x036F}, {0x0483, 0x0489}, {0x0591, 0x05BD},
                                   {0x0610, 0x061A}, {0x064B, 0x065F}, {0x1AB0, 0x1AFF},
                                   {0x1DC0, 0x1DFF}, {0x20D0, 0x20FF}, {0x200D, 0x200D},
                                   {0xFE00, 0xFE0F}, {0xFE20, 0xFE2F}};
  for (const char32_t code : characters_to_try()) {
    if (in(surrogates, code)) continue;
    ASSERT_EQ(display_width(bytes_of(code)), in(none, code)   ? 0
                                             : in(wide, code) ? 2
                                                              : 1)
        << std::hex << static_cast<unsigned>(code);
  }
}

// Controls, marks of direction and of lines, the byte order mark, annotations.
TEST(Characters, ThatCommandATerminalAreSpelledOut) {
  const std::vector<Block> unsafe = {{0x00, 0x1F},     {0x7F, 0x9F},     {0x061C, 0x061C},
                                     {0x200E, 0x200F}, {0x2028, 0x202E}, {0x2066, 0x2069},
                                     {0xFEFF, 0xFEFF}, {0xFFF9, 0xFFFB}};
  for (const char32_t code : characters_to_try()) {
    if (in(surrogates, code)) continue;
    ASSERT_EQ(is_unsafe(code), in(unsafe, code)) << std::hex << static_cast<unsigned>(code);
    ASSERT_EQ(shown(bytes_of(code)) == bytes_of(code), !in(unsafe, code))
        << std::hex << static_cast<unsigned>(code);
  }
  EXPECT_EQ(shown("a\x1b[2J"), "a\\u001b[2J");
  EXPECT_EQ(shown("a\xff"), "a\\xff");
}

}  // namespace
}  // namespace pluckbook
