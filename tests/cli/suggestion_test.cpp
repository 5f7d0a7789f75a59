// One slip of the finger in a word the program knows: the first suggestion is that word. A word
// that has nothing to do with any gets none.
#include <gtest/gtest.h>

#include <algorithm>
#include <random>
#include <set>
#include <vector>

#include "cli/run.h"

namespace pluckbook::testing {
namespace {

/// A place where a word of a list is typed, and how the program is brought to read it there.
struct Kind {
  const char* name;
  std::vector<std::string> words;  // three letters or more: "cp" is one slip from "ca"
  std::string (*command)(const std::string& word);
};

std::string quoted(const std::string& word) {
  return "'" + word + "'";
}

const std::vector<Kind>& kinds() {
  static const std::vector<Kind> all = {
      {"command",
       {"start", "check",   "bag",    "mark",     "result",   "import",  "bags",    "move",
        "score", "quote",   "event",  "feeds",    "diet",     "need",    "outlook", "price",
        "plan",  "compare", "report", "workings", "backtest", "sources", "manual",  "completion"},
       [](const std::string& word) { return "pluckbook " + quoted(word); }},
      {"option",
       {"--as-of", "--until", "--units", "--cover", "--json", "--csv", "--book", "--color",
        "--energy", "--intake-recovers", "--feeds", "--weight", "--month"},
       [](const std::string& word) { return "pluckbook price spring-cows " + quoted(word); }},
      {"key",
       {"like", "analysis", "quote", "waste", "shrink", "feedings_per_week", "least", "most",
        "name"},
       [](const std::string& word) {
         return "echo '- {id: x, like: urea, \"" + word + "\": 1}' > feeds.yaml; pluckbook check";
       }},
      {"herd",
       {"spring-cows", "first-calf"},
       [](const std::string& word) { return "pluckbook outlook " + quoted(word); }},
      {"pasture",
       {"draws", "stovepipe", "meadow"},
       [](const std::string& word) { return "pluckbook diet " + quoted(word); }},
      {"feed",
       {"range cube 20",
        "cottonseed meal",
        "soybean meal 44",
        "canola meal",
        "ddgs",
        "wdgs",
        "soybean hulls",
        "beet pulp dry",
        "wheat middlings",
        "corn cracked",
        "barley",
        "oats",
        "molasses cane",
        "urea",
        "prairie hay",
        "meadow hay",
        "corn silage",
        "wheat straw",
        "limestone",
        "alfalfa hay good",
        "distillers",
        "midds",
        "soy hulls",
        "cattle cake",
        "milo"},
       [](const std::string& word) {
         return "echo '- {id: x, like: \"" + word + "\"}' > feeds.yaml; pluckbook check";
       }},
      {"nutrient",
       {"protein", "adf", "ndf", "lignin", "ash", "starch", "sugar", "tdn", "calcium", "phosphorus",
        "magnesium", "potassium", "sulfur", "moisture", "nitrogen", "ndfd48", "adicp"},
       [](const std::string& word) {
         return "pluckbook result 26-draws-08 " + quoted(word + "=5");
       }},
  };
  return all;
}

/// What a trade name stands for, where the suggestion is not the word itself.
std::string meant_by(const std::string& word) {
  if (word == "distillers") return "ddgs";
  if (word == "midds") return "wheat middlings";
  if (word == "soy hulls") return "soybean hulls";
  if (word == "cattle cake") return "range cube 20";
  if (word == "milo") return "sorghum grain";
  return word;
}

/// One letter left out, put in, changed, or two swapped.
std::string with_a_slip(std::string word, std::mt19937& random) {
  const auto up_to = [&](std::size_t most) {
    return std::uniform_int_distribution<std::size_t>(0, most)(random);
  };
  const std::size_t first = word.starts_with("--") ? 2 : 0;
  const std::size_t at = first + up_to(word.size() - 2 - first);
  const char letter = static_cast<char>('a' + up_to(25));
  switch (up_to(3)) {
    case 0:
      return word.erase(at, 1);
    case 1:
      return word.insert(at, 1, letter);
    case 2:
      word[at] = letter;
      return word;
    default:
      std::swap(word[at], word[at + 1]);
      return word;
  }
}

/// The first word the program suggests for what was typed; "" where it suggests none.
std::string suggested(const Kind& kind, const std::string& typed) {
  const FreshFolder folder("northern");
  const std::string output =
      run_line(folder.path(), "{ " + kind.command(typed) + "; } 2>&1").output;
  for (const char* before : {"did you mean '", "which of these: '"}) {
    const std::size_t at = output.find(before);
    if (at == std::string::npos) continue;
    const std::size_t word = at + std::string(before).size();
    return output.substr(word, output.find('\'', word) - word);
  }
  return "";
}

TEST(Suggestion, IsTheWordMeantInNinetyFiveOfAHundredSlips) {
  constexpr unsigned seed = 1203;
  SCOPED_TRACE("seed " + std::to_string(seed));
  std::mt19937 random(seed);
  constexpr int slips = 210;
  int right = 0;
  std::string wrong;
  for (int i = 0; i < slips; ++i) {
    const Kind& kind = kinds()[static_cast<std::size_t>(i) % kinds().size()];
    const std::set<std::string> known(kind.words.begin(), kind.words.end());
    const std::size_t most = kind.words.size() - 1;
    const std::string word =
        kind.words[std::uniform_int_distribution<std::size_t>(0, most)(random)];
    std::string typed = with_a_slip(word, random);
    while (known.contains(typed)) typed = with_a_slip(word, random);
    const std::string said = suggested(kind, typed);
    right += said == meant_by(word) ? 1 : 0;
    if (said != meant_by(word)) {
      wrong += std::string(kind.name) + " " + word + ", typed " + typed + ": " + said + "\n";
    }
  }
  RecordProperty("right", right);
  EXPECT_GE(right * 100, slips * 95) << right << " of " << slips << "\n" << wrong;
}

TEST(Suggestion, IsNoneForWordsThatHaveNothingToDoWithIt) {
  const std::vector<std::string> words = {"saddle", "thunder", "fencepost", "volcano",
                                          "zebra",  "juniper", "xylem",     "kayak"};
  int tried = 0;
  for (const Kind& kind : kinds()) {
    for (const std::string& word : words) {
      const std::string typed = std::string(kind.name) == "option" ? "--" + word : word;
      EXPECT_EQ(suggested(kind, typed), "") << kind.name << " " << typed;
      ++tried;
    }
  }
  EXPECT_GE(tried, 50);
}

TEST(Suggestion, KnowsWhatFeedsAreCalledWhereTheyAreSold) {
  const auto feed = std::find_if(kinds().begin(), kinds().end(),
                                 [](const Kind& k) { return k.name == std::string("feed"); });
  const std::vector<std::pair<const char*, const char*>> names = {
      {"distillers", "ddgs"},
      {"distillers grains", "ddgs"},
      {"soybean meal", "soybean meal 44"},
      {"cake", "range cube 20"},
      {"cubes", "range cube 20"},
      {"SBM", "soybean meal 44"},
      {"soy hulls", "soybean hulls"},
      {"midds", "wheat middlings"},
      {"corn", "corn cracked"},
      {"milo", "sorghum grain"},
      {"alfalfa", "alfalfa hay good"},
      {"beet pulp", "beet pulp dry"},
      {"protein tub", "tub low moisture 30"},
      {"stalks", "corn stalks"}};
  for (const auto& [name, meant] : names) EXPECT_EQ(suggested(*feed, name), meant) << name;
}

}  // namespace
}  // namespace pluckbook::testing
