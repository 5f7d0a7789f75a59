// Books written, read and written again are the same bytes; files styled by hand keep every byte
// that was theirs. The seeds are fixed and shown.
#include <gtest/gtest.h>

#include <algorithm>
#include <bit>
#include <random>

#include "base/text.h"
#include "base/yaml.h"
#include "book/edit.h"
#include "book/lab_values.h"
#include "book/random_records.h"
#include "book/read_parts.h"

namespace pluckbook {
namespace {

// The file the program makes of these bags, one command after the other.
std::string written(const std::vector<Bag>& bags) {
  const Book book = book_with_labs();
  std::string text = "# North, 2026\n";
  const auto take = [&](const Result<Spliced>& spliced) {
    ASSERT_TRUE(spliced) << to_text(spliced.problems()[0]) << text;
    text = spliced->text;
  };
  for (const Bag& bag : bags) {
    Bag plucked = bag;
    plucked.dried.reset(), plucked.sent.reset(), plucked.lost.reset(), plucked.results.clear();
    take(with_bag(book, "north.yaml", text, plucked));
    const auto mark = [&](Mark::What what, Date date, const std::string& lab) {
      take(with_mark(book, "north.yaml", text, bag.id, {what, date, lab}));
    };
    if (bag.dried) mark(Mark::What::dried, *bag.dried, "");
    if (bag.sent) mark(Mark::What::sent, bag.sent->date, bag.sent->lab);
    if (bag.lost) mark(Mark::What::lost, *bag.lost, "");
    for (const LabResult& result : bag.results) {
      take(with_result(book, "north.yaml", text, bag.id, result));
    }
  }
  return text;
}

std::vector<Bag> bags_in(const std::string& text) {
  const Result<YamlDocument> document = read_yaml("north.yaml", text);
  EXPECT_TRUE(document) << text;
  if (!document) return {};
  Problems problems;
  FileReading reading(*document, {}, problems);
  std::vector<Bag> bags = read_samples(reading, document->root, "north", book_with_labs());
  for (const Problem& problem : problems) {
    EXPECT_EQ(problem.severity, Severity::warning) << to_text(problem);
  }
  return bags;
}

TEST(RoundTrip, AThousandRandomBooksAreTheSameBytesAgain) {
  std::size_t bags = 0, results = 0;
  for (unsigned seed = 1; seed <= 1000; ++seed) {
    SCOPED_TRACE("seed " + std::to_string(seed));
    Chance chance(seed);
    std::vector<Bag> some;
    for (int i = chance.below(3) + 1; i > 0; --i) some.push_back(random_bag(chance, 9 - i));
    std::stable_sort(some.begin(), some.end(),
                     [](const Bag& a, const Bag& b) { return a.plucked < b.plucked; });
    const std::string text = written(some);
    const std::vector<Bag> read = bags_in(text);
    ASSERT_EQ(read.size(), some.size());
    ASSERT_EQ(written(read), text);
    for (std::size_t i = 0; i < some.size(); ++i) {
      EXPECT_EQ(read[i].note, some[i].note);
      ASSERT_EQ(read[i].results.size(), some[i].results.size());
      for (std::size_t j = 0; j < some[i].results.size(); ++j, ++results) {
        EXPECT_EQ(read[i].results[j].values, some[i].results[j].values) << text;
      }
    }
    bags += some.size();
  }
  EXPECT_GT(bags, 1500U);
  EXPECT_GT(results, 1000U);
}

TEST(RoundTrip, AMillionNumbersThroughTextAreBitIdentical) {
  std::mt19937_64 chance(20261125);
  SCOPED_TRACE("seed 20261125");
  for (int i = 0; i < 1'000'000; ++i) {
    const double number = std::bit_cast<double>(chance());
    if (!std::isfinite(number)) continue;
    const auto back = parse_number(shortest(number));
    ASSERT_TRUE(back) << number;
    ASSERT_EQ(std::bit_cast<std::uint64_t>(*back), std::bit_cast<std::uint64_t>(number)) << number;
  }
}

// ---- files styled by hand ----------------------------------------------------------------------

// A file of samples as some hand would lay it out.
class Styled {
 public:
  explicit Styled(unsigned seed) : chance_(seed) {
    indent_ = std::string(static_cast<std::size_t>(chance_.below(3)), ' ');
    inner_ = std::string(static_cast<std::size_t>(1 + chance_.below(3)), ' ');
    if (chance_.one_in(5)) text_ += "\xEF\xBB\xBF";
    comment("");
    count_ = 1 + chance_.below(4);
    for (int i = 0; i < count_; ++i) bag(i);
    if (chance_.one_in(3)) line(comment_of());
    if (chance_.one_in(4)) text_.pop_back();
    if (chance_.one_in(3)) use_windows_line_ends();
  }
  const std::string& text() const { return text_; }
  const std::vector<std::string>& comments() const { return comments_; }
  std::string some_bag() { return id(chance_.below(count_)); }

 private:
  static std::string id(int number) { return "bag-" + std::to_string(number); }
  std::string comment_of() {
    static const std::vector<std::string> said = {
        "seen: {x} ",      "it's \"cured\"", "- bag: not-one",    "results:",
        "Pr\u00e9 \u96ea", "#### 2026 ####", "? [maybe] & *all*", "   "};
    comments_.push_back("# " + chance_.of(said) + std::to_string(comments_.size()));
    return comments_.back();
  }
  void line(const std::string& text) { text_ += text + "\n"; }
  void comment(const std::string& margin) {
    if (chance_.one_in(3)) line(margin + comment_of());
    if (chance_.one_in(4)) line(chance_.one_in(2) ? "" : "   ");
  }
  std::string at_end() { return chance_.one_in(3) ? "   " + comment_of() : ""; }
  std::string quoted(const std::string& word) {
    const int how = chance_.below(3);
    return how == 0 ? word : how == 1 ? "'" + word + "'" : "\"" + word + "\"";
  }
  void bag(int number) {
    if (chance_.one_in(4)) return flow_bag(number);
    const std::string margin = indent_ + " " + inner_;
    line(indent_ + "-" + inner_ + "bag: " + quoted(id(number)) + at_end());
    comment(margin);
    line(margin + "plucked:  " + quoted("2026-06-12") + at_end());
    if (chance_.one_in(2)) line(margin + "note: 'a # b: ''c'' {d}'" + at_end());
    comment(margin);
    if (chance_.one_in(2)) results(margin);
    comment(margin);
  }
  void results(const std::string& margin) {
    const std::string one = "{received: 2026-06-25, basis: dry matter, cp: 10.4}";
    switch (chance_.below(4)) {
      case 0:
        return line(margin + "results: [" + one + "]" + at_end());
      case 1:
        return line(margin + "results: [ ]" + at_end());
      case 2:
        line(margin + "results:" + at_end());
        comment(margin);
        return line(margin + "- " + one + at_end());
      default:
        line(margin + "results:");
        line(margin + "  -   received: 2026-06-25" + at_end());
        line(margin + "      basis: dry matter");
        comment(margin);
        return line(margin + "      cp: 10.4" + at_end());
    }
  }
  void flow_bag(int number) {
    line(indent_ + "-" + inner_ + "{bag: " + id(number) + ", plucked: 2026-06-12," + at_end());
    line(indent_ + "    note: \"} ] # '\"" + (chance_.one_in(2) ? " }" : "}") + at_end());
  }
  void use_windows_line_ends() {
    for (std::size_t at = 0; (at = text_.find('\n', at)) != std::string::npos; at += 2) {
      text_.replace(at, 1, "\r\n");
    }
  }

  Chance chance_;
  std::string indent_, inner_, text_;
  std::vector<std::string> comments_;
  int count_ = 0;
};

// What was put in, when the new text is the old one with one piece put in.
std::optional<std::string> piece_added(const std::string& before, const std::string& after) {
  if (after.size() <= before.size()) return std::nullopt;
  const auto at = static_cast<std::size_t>(
      std::mismatch(before.begin(), before.end(), after.begin()).first - before.begin());
  if (after.substr(at + after.size() - before.size()) != before.substr(at)) return std::nullopt;
  return after.substr(at, after.size() - before.size());
}

TEST(HandStyled, TwoHundredFilesKeepEveryByteAndComment) {
  const Book book = book_with_labs();
  LabResult result;
  result.received = Date(2026, 9, 20);
  result.lab = "state";
  result.values = {{"cp", 6.4}};
  Bag bag;
  bag.id = "one-more";
  bag.plucked = Date(2026, 8, 1);
  int windows = 0;
  for (unsigned seed = 1; seed <= 200; ++seed) {
    Styled hand(seed);
    const std::string& text = hand.text();
    SCOPED_TRACE("seed " + std::to_string(seed) + "\n" + text);
    const std::string some = hand.some_bag();
    const Mark lost = {Mark::What::lost, Date(2026, 9, 21), ""};
    for (const Result<Spliced>& spliced :
         {with_bag(book, "f.yaml", text, bag), with_mark(book, "f.yaml", text, some, lost),
          with_result(book, "f.yaml", text, some, result)}) {
      ASSERT_TRUE(spliced) << to_text(spliced.problems()[0]);
      const auto piece = piece_added(text, spliced->text);
      ASSERT_TRUE(piece) << spliced->text;
      if (text.find("\r\n") != std::string::npos) {
        ++windows;
        EXPECT_EQ(std::count(piece->begin(), piece->end(), '\n'),
                  std::count(piece->begin(), piece->end(), '\r'));
      }
      for (const std::string& comment : hand.comments()) {
        EXPECT_NE(spliced->text.find(std::string(trimmed(comment))), std::string::npos);
      }
    }
  }
  EXPECT_GT(windows, 50);
}

}  // namespace
}  // namespace pluckbook
