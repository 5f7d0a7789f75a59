// Text that would command a terminal or turn its reading direction, in every place a person can
// put it: none of it reaches the output as it came, on either stream, as text or as JSON.
#include <gtest/gtest.h>

#include <nlohmann/json.hpp>

#include "cli/run.h"

namespace pluckbook::testing {
namespace {

const std::vector<std::string>& payloads() {
  static const std::vector<std::string> all = {"\x1b[31mred",
                                               "\x1b]0;title\x07",
                                               "\x1b[2J\x1b[H",
                                               "a\rb",
                                               "a\bb",
                                               "\xc2\x9b"
                                               "31m",
                                               "\u202enetsil",
                                               "\u2066x\u2069",
                                               "\u200f\u061c",
                                               "\xef\xbb\xbf",
                                               "bad\xff\xfe utf"};
  return all;
}

// The first byte that must not be there, or npos. Line breaks may.
std::size_t raw_command_in(const std::string& text) {
  for (std::size_t i = 0; i < text.size(); ++i) {
    const auto byte = [&](std::size_t ahead) {
      return i + ahead < text.size() ? static_cast<unsigned char>(text[i + ahead]) : 0U;
    };
    const unsigned a = byte(0), b = byte(1), c = byte(2);
    const bool control = (a < 0x20 && a != '\n') || a == 0x7f || (a == 0xc2 && b < 0xa0);
    const bool direction = (a == 0xe2 && b == 0x80 && (c == 0x8e || c == 0x8f)) ||
                           (a == 0xe2 && b == 0x80 && c >= 0xa8 && c <= 0xae) ||
                           (a == 0xe2 && b == 0x81 && c >= 0xa6 && c <= 0xa9) ||
                           (a == 0xd8 && b == 0x9c) || (a == 0xef && b == 0xbb && c == 0xbf);
    if (control || direction || a == 0xff || a == 0xfe) return i;
  }
  return std::string::npos;
}

std::string quoted(const std::string& text) {
  return "'" + text + "'";
}

void expect_fit(const std::string& words, const Ran& ran) {
  SCOPED_TRACE(words);
  EXPECT_LE(ran.exit, 4);
  EXPECT_EQ(raw_command_in(ran.output), std::string::npos) << ::testing::PrintToString(ran.output);
}

TEST(Hostile, WordsOfTheCommandLineAreSpelledOut) {
  const FreshFolder folder("northern");
  const std::vector<std::string> lines = {"%",
                                          "--% x",
                                          "help %",
                                          "need %",
                                          "need --weight %",
                                          "need --class %",
                                          "outlook %",
                                          "outlook --as-of %",
                                          "outlook --units %",
                                          "price %",
                                          "price spring-cows --cover %",
                                          "diet %",
                                          "bags %",
                                          "check --book %",
                                          "bag %",
                                          "bag draws --id %",
                                          "bag draws --method %",
                                          "bag draws --date %",
                                          "mark % dried",
                                          "mark 26-draws-08 %",
                                          "mark 26-draws-08 sent --lab %",
                                          "result % cp=6",
                                          "result 26-draws-08 %",
                                          "result 26-draws-08 cp=%",
                                          "result 26-draws-08 %=6",
                                          "result 26-draws-08 cp=6 --basis %",
                                          "result 26-draws-08 cp=6 --note %",
                                          "move % meadow",
                                          "move spring-cows %",
                                          "score spring-cows %",
                                          "score % 5",
                                          "quote % '1 USD/lb'",
                                          "quote cube-20 %",
                                          "event % rain",
                                          "event draws %",
                                          "event draws rain --note %",
                                          "start x --scenario %",
                                          "start x --units %",
                                          "start x --currency %"};
  for (const std::string& payload : payloads()) {
    for (std::string words : lines) {
      words.replace(words.find('%'), 1, quoted(payload));
      expect_fit(words, run_in(folder.path(), words));
      if (long_run()) expect_fit(words, run_in(folder.path(), words + " --json"));
    }
  }
  EXPECT_EQ(run_in(folder.path(), "check").exit, 0) << "and none of it went into the book";
}

TEST(Hostile, NamesOfFoldersAndFilesAreSpelledOut) {
  for (const std::string& payload : payloads()) {
    const FreshFolder folder;
    const std::string name = quoted(payload);
    expect_fit("start", run_in(folder.path(), "start " + name + " --name N"));
    expect_fit("start", run_in(folder.path(), "start s" + name + " --scenario northern"));
    expect_fit("start", run_in(folder.path(), "start t" + name));
    const auto book = folder.path() / ("s" + payload);
    write_text(book / "samples/2026" / (payload + ".yaml"), "- bag: x\n");
    write_text(book / "samples/2026" / (payload + ".yml"), "- bag: x\n");
    write_text(book / "samples" / payload / "x.yaml", "- bag: x\n");
    for (const char* words : {"check", "check --json", "bags", "outlook --json"}) {
      expect_fit(words, run_in(folder.path(), std::string(words) + " --book s" + name));
    }
    const Ran json = run_in(folder.path(), "check --json --book s" + name, "2>/dev/null");
    EXPECT_FALSE(nlohmann::json::parse(json.output, nullptr, false).is_discarded());
  }
}

TEST(Hostile, TextOfTheBookIsRefusedOrSpelledOut) {
  for (const std::string& payload : payloads()) {
    const FreshFolder folder("northern");
    const std::string file = "pastures.yaml";
    std::string text = read_text(folder.path() / file);
    text.replace(text.find("North Draws"), 11, "\"" + payload + "\"");
    write_text(folder.path() / file, text);
    for (const char* words : {"check", "check --json", "diet draws", "outlook --json"}) {
      const Ran ran = run_in(folder.path(), words);
      EXPECT_EQ(ran.exit, 3);
      expect_fit(words, ran);
    }
  }
}

TEST(Hostile, IdsThatArePathsWriteNothingOutsideTheBook) {
  const FreshFolder above;
  std::filesystem::copy(std::filesystem::path(PLUCKBOOK_SOURCE) / "scenarios/northern",
                        above.path() / "book", std::filesystem::copy_options::recursive);
  const std::vector<std::string> paths = {"../x", "/tmp/pluckbook-x", "a/b",      "..", ".",
                                          "a\\b", "../../samples/x",  "x/../../y"};
  for (const std::string& path : paths) {
    for (const std::string& words :
         {"bag " + quoted(path), "bag draws --id " + quoted(path),
          "mark " + quoted(path) + " dried", "result " + quoted(path) + " cp=6",
          "diet " + quoted(path), "mark 26-draws-08 sent --lab " + quoted(path)}) {
      const Ran ran = run_in(above.path() / "book", words);
      EXPECT_TRUE(ran.exit == 2 || ran.exit == 3) << words << "\n" << ran.output;
    }
  }
  int entries = 0;
  for (const auto& entry : std::filesystem::directory_iterator(above.path())) {
    EXPECT_EQ(entry.path().filename(), "book");
    ++entries;
  }
  EXPECT_EQ(entries, 1);
  EXPECT_EQ(run_in(above.path() / "book", "check").exit, 0);
}

}  // namespace
}  // namespace pluckbook::testing
