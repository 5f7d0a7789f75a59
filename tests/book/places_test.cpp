// One thing wrong in one known place, some hundreds of times: it is refused, at once, and the line
// and column said are the right ones. And the limits, one below, at and one above.
#include <gtest/gtest.h>

#include <ctime>
#include <map>

#include "book/mutations.h"
#include "book/spoilt_book.h"

namespace pluckbook::testing {
namespace {

std::vector<Mutation> all_mutations() {
  const BookFolder folder;
  std::vector<Mutation> all;
  for (const char* file : {"book.yaml", "pastures.yaml", "herds.yaml", "grazing.yaml", "feeds.yaml",
                           "samples/2026/north.yaml"}) {
    for (Mutation& one : Mutator(file, folder.text(file)).all()) all.push_back(std::move(one));
  }
  return all;
}

// The Problems of one file.
Problems problems_in(const BookFolder& folder, const std::string& file) {
  Problems problems = read_whole_book(folder.path()).problems;
  std::erase_if(problems, [&](const Problem& p) { return !p.place || p.place->file != file; });
  return problems;
}

const Problem* nearest(const Problems& problems, const Mutation& mutation) {
  const Problem* best = nullptr;
  for (const Problem& problem : problems) {
    if (problem.place->line != mutation.line) continue;
    const int column = problem.place->column;
    best = &problem;
    if (column >= mutation.column && column <= mutation.column + mutation.length) break;
  }
  return best;
}

TEST(Places, OfThreeHundredSlipsEveryLineAndNearlyEveryColumnIsRight) {
  std::map<std::string, int> right, wrong_column;
  const BookFolder folder;
  const std::vector<Mutation> all = all_mutations();
  EXPECT_GT(all.size(), 300U);
  double slowest = 0;
  for (const Mutation& mutation : all) {
    SCOPED_TRACE(mutation.name + "\n" + mutation.text);
    const std::string good = folder.text(mutation.file);
    folder.write(mutation.file, mutation.text);
    const std::clock_t begin = std::clock();
    const Problems problems = problems_in(folder, mutation.file);
    slowest = std::max(slowest, static_cast<double>(std::clock() - begin) / CLOCKS_PER_SEC);
    folder.write(mutation.file, good);

    const Problem* problem = nearest(problems, mutation);
    std::string said;
    for (const Problem& one : problems) said += to_text(one);
    EXPECT_NE(problem, nullptr) << "no Problem on line " << mutation.line << "\n" << said;
    if (problem == nullptr) continue;
    EXPECT_EQ(problem->severity, Severity::error);
    EXPECT_EQ(problem->fault, Fault::input);
    EXPECT_FALSE(problem->remedy.empty());
    EXPECT_TRUE(!mutation.sole || problems.size() == 1) << said;
    const int column = problem->place->column;
    const bool within = column >= mutation.column && column <= mutation.column + mutation.length;
    const std::string kind = mutation.name.substr(mutation.name.find(' ') + 1);
    ++(within ? right : wrong_column)[kind];
  }
  int wrong = 0;
  for (const auto& [kind, count] : wrong_column) {
    std::cout << "column outside the token: " << kind << " " << count << " of "
              << count + right[kind] << "\n";
    wrong += count;
  }
  std::cout << all.size() << " slips, every line right, " << wrong << " columns outside; slowest "
            << slowest << " s\n";
  EXPECT_LE(wrong * 20, static_cast<int>(all.size()));
  EXPECT_LT(slowest, 1);
}

TEST(Limits, AnIdHasFortyLetters) {
  for (const std::size_t length : {39U, 40U, 41U}) {
    const BookFolder folder;
    const std::string id(length, 'a');
    folder.write("samples/2026/north.yaml", "- bag: " + id + "\n  plucked: 2026-06-12\n");
    const std::string said = said_of(folder);
    EXPECT_EQ(said.find("bag is 41 letters long; at most 40") != std::string::npos, length > 40)
        << said;
    EXPECT_EQ(said.empty(), length <= 40) << said;
  }
}

TEST(Limits, ANoteHasTwoHundredCharacters) {
  for (const int length : {199, 200, 201}) {
    const BookFolder folder;
    std::string note;
    for (int i = 0; i < length; ++i) note += "\u00e9";
    folder.write("samples/2026/north.yaml", bag_with("  note: " + note));
    EXPECT_EQ(said_of(folder).empty(), length <= 200) << length;
  }
}

}  // namespace
}  // namespace pluckbook::testing
