#include "book/read.h"

#include <gtest/gtest.h>

#include "book/book_folder.h"

namespace pluckbook {
namespace {

std::string all_text(const Problems& problems) {
  std::string text;
  for (const Problem& problem : problems) text += to_text(problem);
  return text;
}

// NIST Handbook 44, 2024, appendix C: 1 lb = 0.45359237 kg; 1 acre = 4046.8564224 m2.
constexpr double lb = 0.45359237;

TEST(Read, TheDemoBooksHoldNoProblem) {
  for (const std::string name : {"northern", "southern"}) {
    SCOPED_TRACE(name);
    const Reading reading =
        read_whole_book(std::filesystem::path(PLUCKBOOK_SOURCE) / "scenarios" / name);
    EXPECT_EQ(all_text(reading.problems), "");
    EXPECT_GE(reading.book.bags.size(), 20U);
    EXPECT_GE(reading.book.feeds.size(), 7U);
  }
}

TEST(Read, TheFrontOfTheBook) {
  const BookFolder folder;
  const Result<Book> book = read_book(folder.path());
  ASSERT_TRUE(book) << all_text(book.problems());
  EXPECT_EQ(book->name, "Alder Bench");
  EXPECT_EQ(book->units, UnitSystem::us);
  EXPECT_DOUBLE_EQ(book->cover, 0.80);
  EXPECT_DOUBLE_EQ(book->trip, 18);
  ASSERT_EQ(book->labs.size(), 1U);
  EXPECT_EQ(book->labs[0].name, "County Forage Lab");
}

TEST(Read, PasturesAndHerdsInTheProgramsOwnUnits) {
  const BookFolder folder;
  const Result<Book> book = read_book(folder.path());
  ASSERT_TRUE(book) << all_text(book.problems());
  const Pasture& north = book->pastures[0];
  EXPECT_EQ(north.forage, "northern_mixed_grass");
  EXPECT_DOUBLE_EQ(*north.area_ha, 640 * 0.40468564224);
  EXPECT_EQ(north.green_up_month, 4);
  EXPECT_EQ(north.green_up_day, 20);
  EXPECT_EQ(book->pastures[1].name, "meadow");

  const Herd& cows = book->herds[0];
  EXPECT_DOUBLE_EQ(cows.weight.value(), 1250 * lb);
  EXPECT_DOUBLE_EQ(cows.peak_milk->value(), 22 * lb);
  EXPECT_EQ(to_iso(cows.calving->first), "2026-03-10");
  ASSERT_EQ(cows.calving->share_by_21_days.size(), 4U);
  EXPECT_DOUBLE_EQ(cows.calving->share_by_21_days[0], 0.62);
  EXPECT_EQ(cows.origin.line, 1);
}

TEST(Read, BagsWithTheirResultsByPluckedDate) {
  const BookFolder folder;
  folder.write("samples/2025/meadow.yaml", "- {bag: 25-meadow-01, plucked: 2025-08-01}\n");
  folder.write("samples/2026/meadow.yaml", "- {bag: 26-meadow-01, plucked: 2026-05-01}\n");
  const Result<Book> book = read_book(folder.path());
  ASSERT_TRUE(book) << all_text(book.problems());
  ASSERT_EQ(book->bags.size(), 4U);
  EXPECT_EQ(book->bags[0].id, "25-meadow-01");
  EXPECT_EQ(book->bags[1].id, "26-meadow-01");
  const Bag& bag = book->bags[2];
  EXPECT_EQ(bag.pasture, "north");
  EXPECT_EQ(bag.origin.file, "samples/2026/north.yaml");
  EXPECT_EQ(bag.origin.line, 2);
  ASSERT_EQ(bag.results.size(), 1U);
  EXPECT_EQ(bag.results[0].values, (std::map<std::string, double>{
                                       {"adf", 36.2}, {"cp", 10.4}, {"dm", 92.1}, {"ndf", 61}}));
}

TEST(Read, AMissingOptionalFileIsAnEmptyListAndSoIsACommentOnlyOne) {
  const BookFolder folder;
  for (const char* name : {"grazing.yaml", "feeds.yaml", "samples"}) {
    std::filesystem::remove_all(folder.path() / name);
  }
  folder.write("condition.yaml", "# what was seen\n");
  const Result<Book> book = read_book(folder.path());
  ASSERT_TRUE(book) << all_text(book.problems());
  EXPECT_TRUE(book->moves.empty());
  EXPECT_TRUE(book->feeds.empty());
  EXPECT_TRUE(book->bags.empty());
  EXPECT_TRUE(book->scores.empty());
}

struct PriceCase {
  std::string quote;
  double price_per_kg, freight_per_kg;
};

TEST(Read, MarketsQuoteAsTheyLike) {
  const std::vector<PriceCase> cases = {
      {"{price: 355 USD/ton}", 355 / (2000 * lb), 0},
      {"{price: 355}", 355 / (2000 * lb), 0},
      {"{price: 14.20 USD/50 lb}", 14.20 / (50 * lb), 0},
      {"{price: 5.60 USD/56 lb}", 5.60 / (56 * lb), 0},
      {"{price: 105 USD/225 lb}", 105 / (225 * lb), 0},
      {"{price: 17.75 USD/cwt}", 17.75 / (100 * lb), 0},
      {"{price: 0.18 USD/lb}", 0.18 / lb, 0},
      {"{price: 0.40 USD/kg}", 0.40, 0},
      {"{price: 391 USD/tonne, freight: 12 USD/ton}", 0.391, 12 / (2000 * lb)},
      // 4.50 x 60 miles over 24 tons of 2000 lb
      {"{price: 0 USD/lb, freight: 4.50 USD/mile, miles: 60, load: 24 ton}", 0,
       4.50 * 60 / (24 * 2000 * lb)},
      {"{price: 0 USD/lb, freight: 2 USD/km, km: 100, load: 20 tonne}", 0, 0.01},
  };
  for (const PriceCase& c : cases) {
    SCOPED_TRACE(c.quote);
    const BookFolder folder;
    folder.write("feeds.yaml", "- {id: x, like: range cube 20, quote: " + c.quote + "}\n");
    const Result<Book> book = read_book(folder.path());
    ASSERT_TRUE(book) << all_text(book.problems());
    const Quote& quote = book->feeds[0].quotes.at(0);
    EXPECT_NEAR(quote.price.value(), c.price_per_kg, 1e-12);
    EXPECT_NEAR(quote.freight.value(), c.freight_per_kg, 1e-12);
    EXPECT_EQ(quote.a_truck > 0, c.quote.find("load") != std::string::npos);
    EXPECT_NEAR(quote.a_truck, quote.load_kg.value_or(0) * c.freight_per_kg, 1e-9);
  }
}

TEST(Read, AFeedKeepsItsQuotesLabelAndAnalysis) {
  const BookFolder folder;
  folder.write("feeds.yaml",
               "- id: tub\n"
               "  analysis: {dm: 96, cp: 30, npn_cpe: 12}\n"
               "  quote:\n"
               "    - {price: 105 USD/225 lb, date: 2026-06-01}\n"
               "    - {price: 109 USD/225 lb, date: 2026-08-01}\n"
               "  waste: 2 %\n"
               "  feedings_per_week: self\n"
               "  least: 0.5 lb/day\n"
               "  most: 1 lb/day\n");
  const Result<Book> book = read_book(folder.path());
  ASSERT_TRUE(book) << all_text(book.problems());
  const Feed& tub = book->feeds[0];
  EXPECT_DOUBLE_EQ(tub.analysis.dm->value(), 0.96);
  EXPECT_DOUBLE_EQ(tub.analysis.nutrients.at("npn_cpe").value(), 0.12);
  ASSERT_EQ(tub.quotes.size(), 2U);
  EXPECT_EQ(tub.quotes[1].unit, "225 lb");
  EXPECT_DOUBLE_EQ(tub.quotes[1].amount, 109);
  EXPECT_DOUBLE_EQ(tub.waste, 0.02);
  EXPECT_TRUE(tub.self_fed);
  EXPECT_DOUBLE_EQ(tub.least->value(), 0.5 * lb);
}

TEST(Read, AMetricBookTakesPlainNumbersAsKilogramsHectaresAndTonnes) {
  const BookFolder folder;
  folder.write("book.yaml",
               "name: Kwagga\ncurrency: ZAR\nunits: metric\npluckbook: 1\ntrip: 90 ZAR\n");
  folder.write("pastures.yaml", "- {id: north, forage: northern mixed-grass, area: 259}\n");
  folder.write("herds.yaml",
               "- {id: cows, head: 80, class: mature cow, weight: 520, peak_milk: 8,"
               " calving: 2026-09-01}\n"
               "- {id: others, head: 20, class: bull, weight: 1500 lb}\n");
  folder.write("grazing.yaml",
               "- {date: 2026-05-10, herd: cows, pasture: north, bare: yes}\n"
               "- {date: 2026-05-10, herd: others, pasture: north}\n");
  folder.write("feeds.yaml", "- {id: lick, analysis: {cp: 40}, quote: {price: 6000}, most: 0.5}\n");
  folder.write("samples/2026/north.yaml", "# none yet\n");
  const Result<Book> book = read_book(folder.path());
  ASSERT_TRUE(book) << all_text(book.problems());
  EXPECT_DOUBLE_EQ(*book->pastures[0].area_ha, 259);
  EXPECT_DOUBLE_EQ(book->herds[0].weight.value(), 520);
  EXPECT_DOUBLE_EQ(book->herds[0].peak_milk->value(), 8);
  EXPECT_EQ(book->herds[0].calving->share_by_21_days, std::vector<double>{1.0});
  EXPECT_DOUBLE_EQ(book->herds[1].weight.value(), 1500 * lb);
  EXPECT_TRUE(book->moves[0].bare);
  EXPECT_DOUBLE_EQ(book->feeds[0].quotes[0].price.value(), 6.0);
  EXPECT_EQ(book->feeds[0].quotes[0].unit, "tonne");
}

TEST(Read, ReadingWritesNothing) {
  const BookFolder folder;
  const auto listing = [&] {
    std::string text;
    for (const auto& entry : std::filesystem::recursive_directory_iterator(folder.path())) {
      text += entry.path().string() + " ";
    }
    return text;
  };
  const std::string before = listing();
  ASSERT_TRUE(read_book(folder.path()));
  EXPECT_EQ(listing(), before);
}

// ---- typed values ------------------------------------------------------------------------------

std::string typed(const std::string& text) {
  const Result<TypedValue> value = parse_lab_value(text);
  if (!value) return value.problems().front().what;
  return value->analyte + " " + std::to_string(value->percent);
}

TEST(TypedValues, NamesAndUnitsOfALaboratorysPage) {
  EXPECT_EQ(typed("cp=6.4"), "cp 6.400000");
  EXPECT_EQ(typed("Protein=6.4"), "cp 6.400000");
  EXPECT_EQ(typed("CP=64 g/kg"), "cp 6.400000");
  EXPECT_EQ(typed("p=800 ppm"), "p 0.080000");  // 0.08 % = 800 ppm
  EXPECT_EQ(typed("moisture=8.5 %"), "dm 91.500000");
  EXPECT_EQ(typed("no3_n=900"), "nitrate_n_ppm 900.000000");
  // NO3 x 0.226 = NO3-N: University of Nebraska, November 2016 (read)
  EXPECT_EQ(typed("no3_ppm=1000"), "nitrate_n_ppm 226.000000");
}

double figure(const std::string& text, const std::string& analyte) {
  const Result<TypedValue> value = parse_lab_value(text);
  EXPECT_TRUE(value) << text;
  if (!value) return -1;
  EXPECT_EQ(value->analyte, analyte) << text;
  return value->percent;
}

// CP = N x 6.25, worked: N 1.44 % gives 9.00 %. NDSU AS-1080, May 1994 (read).
TEST(TypedValues, NitrogenIsTakenTimesSixAndAQuarter) {
  EXPECT_NEAR(figure("nitrogen=1.44", "cp"), 9.00, 1e-12);
}

// ADICP % = ADIN % x 6.25 where both are of dry matter; ADIN of total N is ADICP of CP. NDSU
// AS-1080 and Anderson, Nebraska, "tobacco-brown hay" (read).
TEST(TypedValues, BoundProteinIsTakenOnItsThreeScales) {
  EXPECT_NEAR(figure("adicp=0.9", "adicp"), 0.9, 1e-12);
  EXPECT_NEAR(figure("adin=0.144", "adicp"), 0.9, 1e-12);
  EXPECT_NEAR(figure("adicp_of_cp=9", "adicp_of_cp"), 9, 1e-12);
  EXPECT_NEAR(figure("adin_of_n=9", "adicp_of_cp"), 9, 1e-12);
}

// NO3 = NO3-N x 4.43, NO3-N = NO3 x 0.226: Univ. of Nebraska, November 2016 (read). KNO3 = N x
// 7.2162: Virginia Tech SPES-201 (read).
TEST(TypedValues, EachFormOfNitrateComesToNitrateN) {
  EXPECT_NEAR(figure("no3n=2257", "nitrate_n_ppm"), 2257, 1e-9);
  EXPECT_NEAR(figure("no3=9999", "nitrate_n_ppm"), 2257, 5);  // 2257 x 4.43 = 9998.5
  EXPECT_NEAR(figure("kno3=5000", "nitrate_n_ppm"), 692.9, 0.05);
  EXPECT_NEAR(figure("no3=0.4 %", "nitrate_n_ppm"), 904, 1e-9);
}

// The published illustration: "3,000" read as NO3-N is nearly 50 % above the level of concern (from
// 2,000-2,300 ppm), read as NO3 under one third of it. Univ. of Nebraska, November 2016 (read).
TEST(TypedValues, ThreeThousandIsMuchOrLittleAsTheFormSays) {
  EXPECT_GT(figure("no3n=3000", "nitrate_n_ppm") / 2150, 1.3);
  EXPECT_LT(figure("no3=3000", "nitrate_n_ppm") / 2150, 1.0 / 3);
}

// 1 Mcal = 4.184 MJ, 1 kg = 2.20462 lb (standard).
TEST(TypedValues, EnergyComesFromTheUnitThePagePrints) {
  EXPECT_NEAR(figure("nem=0.594 Mcal/lb", "nem"), 1.310, 0.001);
  EXPECT_NEAR(figure("nem=59.4 Mcal/cwt", "nem"), 1.310, 0.001);
  EXPECT_NEAR(figure("nem=1.310 Mcal/kg", "nem"), 1.310, 1e-12);
  EXPECT_NEAR(figure("ME=9.08 MJ/kg", "me"), 9.08, 1e-12);
  EXPECT_NEAR(figure("me=2.169 Mcal/kg", "me"), 9.08, 0.01);
  EXPECT_NEAR(figure("de=11.07 MJ/kg", "de"), 2.645, 0.001);
}

// % x 10 = g/kg, % x 10 000 = ppm: P 0.08 % = 0.8 g/kg = 800 ppm (computed).
TEST(TypedValues, PartsComeToPercent) {
  EXPECT_NEAR(figure("p=0.08", "p"), 0.08, 1e-12);
  EXPECT_NEAR(figure("p=0.8 g/kg", "p"), 0.08, 1e-12);
  EXPECT_NEAR(figure("p=800 mg/kg", "p"), 0.08, 1e-12);
}

TEST(TypedValues, WhatSaysTooLittleIsRefusedWithWhatToWrite) {
  const auto remedy = [](const char* text) {
    return parse_lab_value(text).problems().front().remedy;
  };
  EXPECT_EQ(remedy("nitrate=3000"),
            "write no3n for NO3-N, no3 for NO3 or kno3 for KNO3, as the page says");
  EXPECT_EQ(remedy("no3=0.4"), "write '0.4 %' or '0.4 ppm', as the page says");
  EXPECT_EQ(remedy("nem=0.52"),
            "write '0.52 Mcal/lb', '0.52 Mcal/cwt', '0.52 Mcal/kg' or '0.52 MJ/kg', as the page "
            "says");
  EXPECT_EQ(remedy("rdp=62"), "write rdp_of_cp as percent of crude protein");
  EXPECT_EQ(remedy("ndfd=55"),
            "write ndfd48 for 48 hours, the only ones an equation was published for");
  EXPECT_EQ(typed("no3=0"), "nitrate_n_ppm 0.000000");
  EXPECT_EQ(typed("no3=10"), "nitrate_n_ppm 2.260000");
}

TEST(TypedValues, WhatCannotBeTakenSaysWhy) {
  EXPECT_EQ(typed("nitrate=900"),
            "'nitrate' may mean nitrate or the nitrogen in it, which differ 4.4-fold");
  EXPECT_EQ(typed("cpp=6.4"), "unknown analyte 'cpp'");
  EXPECT_EQ(typed("cp=6,4"), "crude protein '6,4' is not a number");
  EXPECT_EQ(typed("cp=nan"), "crude protein 'nan' is not a number");
  EXPECT_EQ(typed("cp=6 stone"), "crude protein cannot be in 'stone'");
  EXPECT_EQ(typed("cp"), "'cp' is not name=value");
  EXPECT_EQ(parse_lab_value("cpp=6.4").problems()[0].remedy, "did you mean 'cp'?");
  EXPECT_EQ(parse_lab_value("cp=6,4").problems()[0].fault, Fault::usage);
}

TEST(TypedValues, WeightAndMilkFromTheCommandLine) {
  EXPECT_DOUBLE_EQ(parse_weight("1250 lb", UnitSystem::metric)->value(), 1250 * lb);
  EXPECT_DOUBLE_EQ(parse_weight("565", UnitSystem::metric)->value(), 565);
  EXPECT_DOUBLE_EQ(parse_milk("20", UnitSystem::us)->value(), 20 * lb);
  EXPECT_EQ(parse_weight("12500", UnitSystem::us).problems()[0].what,
            "weight 12500 lb is outside 44.09 to 4409 lb");
}

// ---- as of a day -------------------------------------------------------------------------------

TEST(AsOf, LaterBagsMarksResultsQuotesMovesAndScoresAreNotKnown) {
  const BookFolder folder;
  folder.write("grazing.yaml",
               "- {date: 2026-05-10, herd: cows, pasture: north}\n"
               "- {date: 2026-06-20, herd: cows, pasture: meadow}\n");
  folder.write("condition.yaml", "- {date: 2026-06-20, herd: cows, condition: 5.2}\n");
  const Result<Book> book = read_book(folder.path());
  ASSERT_TRUE(book) << all_text(book.problems());
  const Book known = as_of(*book, *parse_date("2026-06-14"));
  ASSERT_EQ(known.bags.size(), 1U);
  EXPECT_FALSE(known.bags[0].sent);
  EXPECT_TRUE(known.bags[0].results.empty());
  EXPECT_TRUE(known.feeds[0].quotes.empty());
  EXPECT_TRUE(known.scores.empty());
  EXPECT_EQ(move_of(known, "cows", *parse_date("2026-12-01"))->pasture, "north");
  EXPECT_EQ(move_of(*book, "cows", *parse_date("2026-12-01"))->pasture, "meadow");
  EXPECT_EQ(move_of(*book, "cows", *parse_date("2026-05-09")), nullptr);
}

TEST(StandingResults, ACorrectionStandsForTheResultItSupersedes) {
  const BookFolder folder;
  folder.write(
      "samples/2026/north.yaml",
      "- bag: a\n"
      "  plucked: 2026-06-12\n"
      "  results:\n"
      "    - {received: 2026-06-25, basis: dry matter, cp: 10.4}\n"
      "    - {received: 2026-06-27, basis: dry matter, cp: 9.4, supersedes: 2026-06-25}\n");
  const Result<Book> book = read_book(folder.path());
  ASSERT_TRUE(book) << all_text(book.problems());
  EXPECT_EQ(book->bags[0].results.size(), 2U);
  const auto standing = standing_results(book->bags[0]);
  ASSERT_EQ(standing.size(), 1U);
  EXPECT_DOUBLE_EQ(standing[0]->values.at("cp"), 9.4);
  // Before the correction came, the first page was what was known.
  const Book earlier = as_of(*book, *parse_date("2026-06-26"));
  EXPECT_DOUBLE_EQ(standing_results(earlier.bags[0]).at(0)->values.at("cp"), 10.4);
}

// Two slips mended on one day: the last stands, not none.
TEST(Corrections, OfOneDayLeaveTheLastOneStanding) {
  Bag bag;
  const Date day = *parse_date("2026-09-05");
  for (const double cp : {4.6, 6.4, 6.3}) {
    LabResult result;
    result.received = day;
    result.values["cp"] = cp;
    if (!bag.results.empty()) result.supersedes = "2026-09-05";
    bag.results.push_back(result);
  }
  const std::vector<const LabResult*> standing = standing_results(bag);
  ASSERT_EQ(standing.size(), 1U);
  EXPECT_EQ(standing[0]->values.at("cp"), 6.3);
  EXPECT_EQ(correction_of(bag, bag.results[0]), &bag.results[1]);
  EXPECT_EQ(correction_of(bag, bag.results[2]), nullptr);
  EXPECT_EQ(corrected_by(bag, bag.results[2]), (std::vector<const LabResult*>{&bag.results[1]}));
}

// The date is not the only handle: a bag split between two laboratories may hear of both on a day.
TEST(Corrections, OfOneLaboratoryLeaveTheOthersResultStanding) {
  Bag bag;
  const auto add = [&](const std::string& lab, double cp, const std::string& supersedes) {
    LabResult result;
    result.received = *parse_date("2026-09-05");
    result.lab = lab;
    result.values["cp"] = cp;
    result.supersedes = supersedes;
    bag.results.push_back(result);
  };
  add("county", 4.6, "");
  add("state", 6.1, "");
  add("county", 6.4, "2026-09-05");
  const std::vector<const LabResult*> both = {&bag.results[1], &bag.results[2]};
  EXPECT_EQ(standing_results(bag), both);
  // One that names a laboratory without a result of that day corrects all of the day, as before.
  add("other", 6.3, "2026-09-05");
  const std::vector<const LabResult*> last = {&bag.results[3]};
  EXPECT_EQ(standing_results(bag), last);
}

}  // namespace
}  // namespace pluckbook
