// Figures of a page at their limits and a hair beyond. The limits are judgment (assumed), set
// outside what was published: unusual figures are kept with a doubt, impossible ones refused.
#include <gtest/gtest.h>

#include <cmath>

#include "book/parts.h"

namespace pluckbook {
namespace {

enum class Said { nothing, doubt, refusal };

Said said_of(const std::string& figures) {
  const Result<YamlDocument> document = read_yaml(
      "f.yaml",
      "- {bag: a, plucked: 2026-06-01, results: [{received: 2026-06-09, basis: dry matter, " +
          figures + "}]}\n");
  EXPECT_TRUE(document) << figures;
  if (!document) return Said::refusal;
  Book book;
  Problems problems;
  FileReading reading(*document, {}, problems);
  read_part(reading, document->root, "f.yaml", book);
  Said worst = Said::nothing;
  for (const Problem& problem : problems) {
    if (worst != Said::refusal) {
      worst = problem.severity == Severity::error ? Said::refusal : Said::doubt;
    }
  }
  return worst;
}

struct Limits {
  std::string name;
  double refuse_low, warn_low, warn_high, refuse_high;
  std::string unit = "";  // where a plain number may be mistaken
};

TEST(LabLimits, AFigureIsTakenAtItsLimitAndNotBeyond) {
  for (const Limits& of : std::vector<Limits>{{"cp", 0.5, 2, 30, 45},
                                              {"dm", 5, 12, 95, 100},
                                              {"adf", 8, 18, 55, 70},
                                              {"ndf", 15, 28, 80, 90},
                                              {"tdn", 25, 40, 80, 90},
                                              {"ash", 0, 4, 12, 40},
                                              {"fat", 0, 1, 6, 15},
                                              {"lignin", 0, 2, 14, 40},
                                              {"ca", 0.02, 0.15, 2.5, 5},
                                              {"p", 0.01, 0.04, 0.6, 1.5},
                                              {"s", 0.01, 0.05, 0.5, 1.5},
                                              {"nem", 0, 0.6, 1.95, 2.25, " Mcal/kg"},
                                              {"me", 3, 5, 13, 15, " MJ/kg"},
                                              {"nitrate_n_ppm", 0, 0, 700, 30000, " ppm"}}) {
    const auto said = [&](double value) {
      return said_of(of.name + ": " + shortest(std::round(value * 1e6) / 1e6) + of.unit);
    };
    constexpr double hair = 0.001;
    EXPECT_EQ(said(of.refuse_low - hair), Said::refusal) << of.name;
    EXPECT_EQ(said(of.refuse_high + hair), Said::refusal) << of.name;
    EXPECT_EQ(said(of.warn_low), Said::nothing) << of.name;
    EXPECT_EQ(said(of.warn_high), Said::nothing) << of.name;
    EXPECT_EQ(said(of.warn_high + hair), Said::doubt) << of.name;
    EXPECT_EQ(said(of.refuse_high), Said::doubt) << of.name;
    if (of.warn_low == of.refuse_low) continue;
    EXPECT_EQ(said(of.warn_low - hair), Said::doubt) << of.name;
    EXPECT_EQ(said(of.refuse_low), Said::doubt) << of.name;
  }
}

TEST(LabLimits, APartIsNotAboveItsWhole) {
  EXPECT_EQ(said_of("adf: 40, ndf: 40.1"), Said::nothing);
  EXPECT_EQ(said_of("adf: 40, ndf: 40"), Said::refusal);
  EXPECT_EQ(said_of("lignin: 8, adf: 8"), Said::refusal);
  EXPECT_EQ(said_of("adicp: 4, cp: 4"), Said::refusal);
}

TEST(LabLimits, GreenBagsWithTheProteinOfStrawAreDoubted) {
  EXPECT_EQ(said_of("dm: 59.9, cp: 5.9"), Said::doubt);
  EXPECT_EQ(said_of("dm: 60, cp: 5.9"), Said::nothing);
  EXPECT_EQ(said_of("dm: 59.9, cp: 6"), Said::nothing);
}

}  // namespace
}  // namespace pluckbook
