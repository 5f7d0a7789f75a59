// One good book, one file of it spoilt at a time: the whole text of what is said must be right.
#include "book/spoilt_book.h"

namespace pluckbook::testing {
namespace {

TEST(BadBooks, Files) {
  check_all({
      {"a newer format", "book.yaml", "pluckbook: 2\nname: A\nfuture: x\n",
       "book.yaml:1:12: this book is in format 2; this pluckbook reads format 1\n"
       "   1 | pluckbook: 2\n"
       "     |            ^\n"
       "  use a newer pluckbook; nothing was read\n"},
      {"a format of words", "book.yaml", "pluckbook: one\nname: A\nunits: us\ncurrency: USD\n",
       "book.yaml:1:12: this book is in format one; this pluckbook reads format 1\n"
       "   1 | pluckbook: one\n"
       "     |            ^~~\n"
       "  write  pluckbook: 1\n"},
      {"no format", "book.yaml", "name: A\nunits: us\ncurrency: USD\nlabs: [{id: county}]\n",
       "book.yaml:1:1: this book has no 'pluckbook'\n"
       "   1 | name: A\n"
       "     | ^\n"
       "  add  pluckbook: 1\n"},
      {"empty", "feeds.yaml", "",
       "feeds.yaml: the file is empty\n"
       "  restore it, or write one comment line if nothing belongs in it\n"},
      {"binary", "feeds.yaml", std::string("PK\3\4\0\0", 6),
       "feeds.yaml:1:5: bytes that are not UTF-8 text stand here\n"
       "   1 | PK\\u0003\\u0004\\x00\n"
       "     |               ^\n"
       "  save the file as UTF-8 text; a spreadsheet or word-processor file cannot be read\n"},
      {"not UTF-8", "feeds.yaml", "- id: caf\xE9\n",
       "feeds.yaml:1:10: bytes that are not UTF-8 text stand here\n"
       "   1 | - id: caf\\xe9\n"
       "     |          ^\n"
       "  save the file as UTF-8 text; a spreadsheet or word-processor file cannot be read\n"},
      {"a list where keys belong", "book.yaml", "- a\n- b\n",
       "book.yaml:1:1: a book is written as keys with values\n"
       "   1 | - a\n"
       "     | ^\n"
       "  write  pluckbook: 1\n"},
      {"keys where a list belongs", "grazing.yaml",
       "date: 2026-05-10\nherd: cows\npasture: north\n",
       "grazing.yaml:1:1: a list belongs here, one move an item\n"
       "   1 | date: 2026-05-10\n"
       "     | ^\n"
       "  begin each with '- '\n"},
      {"words where keys belong", "feeds.yaml", "- cube\n",
       "feeds.yaml:1:3: a feed is written as keys with values\n"
       "   1 | - cube\n"
       "     |   ^~~~\n"
       "  write  id: cube-20\n"},
      {"samples of no pasture", "samples/2026/nroth.yaml", "# none\n",
       "samples/2026/nroth.yaml: there is no pasture 'nroth'\n"
       "  did you mean 'north'?\n"},
      {"samples outside a year", "samples/north.yaml", "# none\n",
       "samples/north.yaml: warning: samples are kept in one folder a year, named for it\n"
       "  move it to, for one,  samples/2026/PASTURE.yaml\n"},
      {"another ending", "samples/2026/north.yml", "# none\n",
       "samples/2026/north.yml: files of the book end in .yaml\n"
       "  rename it to north.yaml\n"},
  });
}

TEST(BadBooks, Values) {
  check_all({
      {"unknown key", "herds.yaml", herd_with("  waening: 2026-10-15"),
       "herds.yaml:6:3: unknown key 'waening'\n"
       "   6 |   waening: 2026-10-15\n"
       "     |   ^~~~~~~\n"
       "  did you mean 'weaning'?\n"},
      {"no value", "herds.yaml", herd_with("  weaning:"),
       "herds.yaml:6:3: 'weaning' has no value\n"
       "   6 |   weaning:\n"
       "     |   ^\n"
       "  write one, or remove the key\n"},
      {"several values", "herds.yaml", herd_with("  weaning: [2026-10-15]"),
       "herds.yaml:6:12: 'weaning' takes one value, not several\n"
       "   6 |   weaning: [2026-10-15]\n"
       "     |            ^\n"
       "  remove the brackets, or the lines indented below it\n"},
      {"impossible day", "herds.yaml", herd_with("  weaning: 2026-06-31"),
       "herds.yaml:6:12: weaning '2026-06-31' is not a date\n"
       "   6 |   weaning: 2026-06-31\n"
       "     |            ^~~~~~~~~~\n"
       "  there is no such day between 1900 and 2200\n"},
      {"date without dashes", "herds.yaml", herd_with("  weaning: 20260631"),
       "herds.yaml:6:12: weaning '20260631' is not a date\n"
       "   6 |   weaning: 20260631\n"
       "     |            ^~~~~~~~\n"
       "  write year, month, day: 2026-07-06\n"},
      {"American date", "herds.yaml", herd_with("  weaning: 6/12/2026"),
       "herds.yaml:6:12: weaning '6/12/2026' is not a date\n"
       "   6 |   weaning: 6/12/2026\n"
       "     |            ^~~~~~~~~\n"
       "  write year, month, day: 2026-07-06\n"},
      {"decimal comma", "pastures.yaml",
       "- {id: north, forage: northern mixed-grass, area: '640,5'}\n",
       "pastures.yaml:1:51: area '640,5' is not a number\n"
       "   1 | - {id: north, forage: northern mixed-grass, area: '640,5'}\n"
       "     |                                                   ^~~~~~~\n"
       "  write a point for the decimals: 640.5\n"},
      {"thousands comma", "herds.yaml", herd_with("  mature_weight: 1,250 lb"),
       "herds.yaml:6:18: mature_weight '1,250 lb' is not a number\n"
       "   6 |   mature_weight: 1,250 lb\n"
       "     |                  ^~~~~~~~\n"
       "  no commas: write 1250 or 1.250\n"},
      {"not a number", "herds.yaml", herd_with("  condition: .nan"),
       "herds.yaml:6:14: condition '.nan' is not a number\n"
       "   6 |   condition: .nan\n"
       "     |              ^~~~\n"
       "  write a plain number, such as 640.5\n"},
      {"infinity", "herds.yaml", herd_with("  condition: .inf"),
       "herds.yaml:6:14: condition '.inf' is not a number\n"
       "   6 |   condition: .inf\n"
       "     |              ^~~~\n"
       "  write a plain number, such as 640.5\n"},
      {"leading zero", "herds.yaml", herd_with("  condition: 05"),
       "herds.yaml:6:14: condition '05' is not a number\n"
       "   6 |   condition: 05\n"
       "     |              ^~\n"
       "  write a plain number, such as 640.5\n"},
      {"weight no cow has", "herds.yaml", herd_with("  mature_weight: 12500 lb"),
       "herds.yaml:6:18: mature_weight 12500 lb is outside 44.09 to 4409 lb\n"
       "   6 |   mature_weight: 12500 lb\n"
       "     |                  ^~~~~~~~\n"
       "  check the number and its unit\n"},
      {"unit of another kind", "herds.yaml", herd_with("  peak_milk: 3 gallons"),
       "herds.yaml:6:14: peak_milk cannot be in 'gallons'\n"
       "   6 |   peak_milk: 3 gallons\n"
       "     |              ^~~~~~~~~\n"
       "  write 3 lb/day or 3 kg/day\n"},
      {"milk by the pound alone is a day's", "herds.yaml", herd_with("  peak_milk: 22 lb"), ""},
      {"not one of the words", "book.yaml",
       "pluckbook: 1\nname: A\nunits: uk\ncurrency: USD\nlabs: [{id: county}]\n",
       "book.yaml:3:8: units cannot be 'uk'\n"
       "   3 | units: uk\n"
       "     |        ^~\n"
       "  did you mean 'us'?\n"},
      {"half a cow", "condition.yaml",
       "- {date: 2026-08-20, herd: cows, condition: 5, head: 40.5}\n",
       "condition.yaml:1:54: head 40.5 is not a whole number\n"
       "   1 | - {date: 2026-08-20, herd: cows, condition: 5, head: 40.5}\n"
       "     |                                                      ^~~~\n"
       "  write a whole number\n"},
      {"not a currency", "book.yaml",
       "pluckbook: 1\nname: A\nunits: us\ncurrency: dollars\nlabs: [{id: county}]\n",
       "book.yaml:4:11: 'dollars' is not the code of a currency\n"
       "   4 | currency: dollars\n"
       "     |           ^~~~~~~\n"
       "  write its three letters: USD\n"},
      {"cover in fractions", "book.yaml", book_with("cover: 0.8"),
       "book.yaml:6:8: cover 0.8 % is outside 50 to 99 %\n"
       "   6 | cover: 0.8\n"
       "     |        ^~~\n"
       "  check the number and its unit\n"},
      {"29 February", "pastures.yaml",
       "- {id: north, forage: northern mixed-grass, green_up: 02-29}\n",
       "pastures.yaml:1:55: green_up '02-29' is not a day of every year\n"
       "   1 | - {id: north, forage: northern mixed-grass, green_up: 02-29}\n"
       "     |                                                       ^~~~~\n"
       "  write month and day: 04-20\n"},
      {"path-like id", "herds.yaml", "- {id: ../cows, head: 1, class: bull, weight: 1900}\n",
       "herds.yaml:1:8: '../cows' cannot be an id\n"
       "   1 | - {id: ../cows, head: 1, class: bull, weight: 1900}\n"
       "     |        ^~~~~~~\n"
       "  use letters a to z, digits, '-' and '_'; begin with a letter or digit\n"},
      {"over-long id", "samples/2026/north.yaml",
       "- {bag: 26-north-breaks-a-very-long-way-from-the-road-01, plucked: 2026-06-12}\n",
       "samples/2026/north.yaml:1:9: bag is 48 letters long; at most 40\n"
       "   1 | - {bag: 26-north-breaks-a-very-long-way-from-the-road-01, plucked: 2026-06-12}\n"
       "     |         ^~~~~~~~~~~~~~~~~~~~~~~~~~~~~~~~~~~~~~~~~~~~~~~~\n"
       "  shorten it\n"},
      {"escape in a name", "herds.yaml", herd_with("  name: \"a\\u001b[31m\""),
       "herds.yaml:6:9: this text holds a control or direction character (U+001B)\n"
       "   6 |   name: \"a\\u001b[31m\"\n"
       "     |         ^\n"
       "  remove it, and any escape such as \\e or \\u that stands for it\n"},
  });
}

TEST(BadBooks, Records) {
  check_all({
      {"missing keys", "herds.yaml", "- {id: cows, head: 140}\n",
       "herds.yaml:1:3: this herd has no 'class'\n"
       "   1 | - {id: cows, head: 140}\n"
       "     |   ^\n"
       "  add  class: mature cow\n"
       "herds.yaml:1:3: this herd has no 'weight'\n"
       "   1 | - {id: cows, head: 140}\n"
       "     |   ^\n"
       "  add  weight: 1250 lb\n"},
      {"duplicate id", "pastures.yaml",
       "- {id: north, forage: northern mixed-grass}\n- {id: North, forage: northern mixed-grass}\n",
       "pastures.yaml:2:8: pasture 'north' is already at pastures.yaml:1\n"
       "   2 | - {id: North, forage: northern mixed-grass}\n"
       "     |        ^~~~~\n"
       "  give one of them another id\n"},
      {"duplicate laboratory", "book.yaml",
       "pluckbook: 1\nname: A\nunits: us\ncurrency: USD\nlabs: [{id: county}, {id: county}]\n",
       "book.yaml:5:27: laboratory 'county' is there already\n"
       "   5 | labs: [{id: county}, {id: county}]\n"
       "     |                           ^~~~~~\n"
       "  give one of them another id\n"},
      {"unknown forage", "pastures.yaml", "- {id: north, forage: northern mixedgrass}\n",
       "pastures.yaml:1:23: no published forage class is called 'northern mixedgrass'\n"
       "   1 | - {id: north, forage: northern mixedgrass}\n"
       "     |                       ^~~~~~~~~~~~~~~~~~~\n"
       "  did you mean 'northern mixed grass'?\n"},
      {"unknown breed", "herds.yaml",
       "- {id: cows, head: 9, class: bull, weight: 1900, breed: angsu}\n",
       "herds.yaml:1:57: breed cannot be 'angsu'\n"
       "   1 | - {id: cows, head: 9, class: bull, weight: 1900, breed: angsu}\n"
       "     |                                                         ^~~~~\n"
       "  did you mean 'angus'?\n"},
      {"weaning before calving", "herds.yaml", herd_with("  weaning: 2026-01-15"),
       "herds.yaml:6:12: weaning on 2026-01-15 is before calving on 2026-03-10\n"
       "   6 |   weaning: 2026-01-15\n"
       "     |            ^~~~~~~~~~\n"
       "  give the weaning of the calves born from that day\n"},
      {"shares not adding up", "herds.yaml",
       "- {id: cows, head: 9, class: mature cow, weight: 1250,\n   calving: {first: 2026-03-10, "
       "share_by_21_days: [62, 24]}}\n",
       "herds.yaml:2:51: the shares born add to 86 %, not 100 %\n"
       "   2 |    calving: {first: 2026-03-10, share_by_21_days: [62, 24]}}\n"
       "     |                                                   ^\n"
       "  write the percent of calves born in each 21 days from the first\n"},
      {"a cow without calving", "herds.yaml",
       "- {id: cows, head: 9, class: mature cow, weight: 1250}\n",
       "herds.yaml:1:3: this herd has no 'calving', which sets what the cows need\n"
       "   1 | - {id: cows, head: 9, class: mature cow, weight: 1250}\n"
       "     |   ^\n"
       "  add  calving: 2026-03-10\n"},
      {"a herd in no pasture", "grazing.yaml", "# none\n",
       "herds.yaml:1:7: warning: herd 'cows' stands in no pasture\n"
       "   1 | - id: cows\n"
       "     |       ^~~~\n"
       "  say where it is:  pluckbook move cows PASTURE\n"},
      {"two moves on a day", "grazing.yaml",
       "- {date: 2026-05-10, herd: cows, pasture: north}\n- {date: 2026-05-10, herd: cows, "
       "pasture: meadow}\n",
       "grazing.yaml:2:10: cows moves twice on 2026-05-10; first on line 1\n"
       "   2 | - {date: 2026-05-10, herd: cows, pasture: meadow}\n"
       "     |          ^~~~~~~~~~\n"
       "  keep the pasture it stood in that night\n"},
      {"an unknown herd", "grazing.yaml",
       "- {date: 2026-05-10, herd: cow, pasture: north}\n- {date: 2026-05-10, herd: cows, pasture: "
       "north}\n",
       "grazing.yaml:1:28: there is no herd 'cow'\n"
       "   1 | - {date: 2026-05-10, herd: cow, pasture: north}\n"
       "     |                            ^~~\n"
       "  did you mean 'cows'?\n"},
      {"a score out of scale", "condition.yaml",
       "- {date: 2026-08-20, herd: cows, condition: 12}\n",
       "condition.yaml:1:45: condition 12 is outside 1 to 9\n"
       "   1 | - {date: 2026-08-20, herd: cows, condition: 12}\n"
       "     |                                             ^~\n"
       "  check the number and its unit\n"},
  });
}

TEST(BadBooks, AFolderWithoutABookIsOneError) {
  const BookFolder folder;
  std::filesystem::remove(folder.path() / "book.yaml");
  const Reading reading = read_whole_book(folder.path());
  ASSERT_EQ(reading.problems.size(), 1U);
  EXPECT_EQ(reading.problems[0].what, "there is no book in " + folder.path().string());
  EXPECT_TRUE(reading.has_errors());
}

TEST(BadBooks, AMissingFileThatEveryBookHas) {
  const BookFolder folder;
  std::filesystem::remove(folder.path() / "herds.yaml");
  std::filesystem::remove(folder.path() / "grazing.yaml");
  EXPECT_EQ(said_of(folder),
            "herds.yaml: this file of the book is missing\n"
            "  restore it, or make one that holds only a comment line\n");
}

TEST(BadBooks, WhatIsNoPlainFileOrLeadsOutIsNotOpened) {
  const BookFolder folder;
  std::filesystem::remove(folder.path() / "feeds.yaml");
  std::filesystem::create_directory(folder.path() / "feeds.yaml");
  const BookFolder other;
  std::filesystem::remove(folder.path() / "grazing.yaml");
  std::filesystem::create_symlink(other.path() / "grazing.yaml", folder.path() / "grazing.yaml");
  EXPECT_EQ(said_of(folder),
            "feeds.yaml: this is not a plain file\n"
            "  put the book's own file in its place\n"
            "grazing.yaml: this link leads out of the book's folder\n"
            "  put the file itself in its place\n");
}

TEST(BadBooks, EveryProblemIsListedAtOnceByFileAndLine) {
  const BookFolder folder;
  folder.write("pastures.yaml", "- {id: north, forage: northern mixed-grass, area: x}\n");
  folder.write("grazing.yaml", "- {date: 2026-05-10, herd: cows, pasture: nrth}\n");
  folder.write("feeds.yaml", "- {id: a, like: range cube 20, fright: 1}\n");
  EXPECT_EQ(said_of(folder),
            "feeds.yaml:1:32: unknown key 'fright'\n"
            "   1 | - {id: a, like: range cube 20, fright: 1}\n"
            "     |                                ^~~~~~\n"
            "  known here: id, name, like, analysis, quote, waste, shrink,\n"
            "    feedings_per_week, least, most\n"
            "grazing.yaml:1:43: there is no pasture 'nrth'\n"
            "   1 | - {date: 2026-05-10, herd: cows, pasture: nrth}\n"
            "     |                                           ^~~~\n"
            "  did you mean 'north'?\n"
            "pastures.yaml:1:51: area 'x' is not a number\n"
            "   1 | - {id: north, forage: northern mixed-grass, area: x}\n"
            "     |                                                   ^\n"
            "  write a plain number, such as 640.5\n");
}

TEST(BadBooks, WarningsDoNotStopTheOtherCommands) {
  const BookFolder folder;
  std::filesystem::remove(folder.path() / "grazing.yaml");
  const Reading reading = read_whole_book(folder.path());
  EXPECT_FALSE(reading.has_errors());
  EXPECT_EQ(reading.problems.size(), 1U);
  EXPECT_TRUE(read_book(folder.path()));
}

TEST(BadBooks, OnlyErrorsAreHandedToTheOtherCommands) {
  const BookFolder folder;
  folder.write("grazing.yaml", "# none\n");
  folder.write("condition.yaml", "- {date: 2026-08-20, herd: cows, condition: 12}\n");
  const Result<Book> book = read_book(folder.path());
  ASSERT_FALSE(book);
  ASSERT_EQ(book.problems().size(), 1U);
  EXPECT_EQ(book.problems()[0].what, "condition 12 is outside 1 to 9");
}

}  // namespace
}  // namespace pluckbook::testing
