#include "book/two_columns.h"

#include <gtest/gtest.h>

namespace pluckbook {
namespace {

BothColumns both(const char* name, const char* text) {
  const auto columns = both_columns(name, text);
  EXPECT_TRUE(columns && columns->ok()) << name << " = " << text;
  return columns && columns->ok() ? **columns : BothColumns{};
}

// 8 % protein as received in haylage of 40 % dry matter is 20 % of dry matter: Union County
// extension (read).
TEST(TwoColumns, TheSmallerFigureIsTheOneAsReceivedInEitherOrder) {
  for (const char* text : {"8/20", "20/8", "8.0 / 20.0", "8ar/20dm", "20 DM / 8 AR", "8 ar/20",
                           "8 / 20 %", "80 ar / 200 dm g/kg"}) {
    const BothColumns cp = both("protein", text);
    EXPECT_EQ(cp.analyte, "cp") << text;
    EXPECT_NEAR(cp.as_received, 8, 1e-9) << text;
    EXPECT_NEAR(cp.dry_matter, 20, 1e-9) << text;
  }
}

TEST(TwoColumns, AUnitOfBothStandsAtTheEnd) {
  const BothColumns nem = both("nem", "0.55/0.60 Mcal/lb");
  EXPECT_NEAR(nem.dry_matter, 0.60 / 0.45359237, 1e-9);
  EXPECT_NEAR(nem.as_received, 0.55 / 0.45359237, 1e-9);
}

TEST(TwoColumns, MoistureIsReadAsDryMatter) {
  EXPECT_NEAR(both("moisture", "8.5/0").as_received, 91.5, 1e-9);
}

TEST(TwoColumns, OneFigureWithAStrokeInItsUnitIsOne) {
  EXPECT_FALSE(both_columns("nem", "0.55 Mcal/lb"));
  EXPECT_FALSE(both_columns("cp", "104 g/kg"));
  EXPECT_FALSE(both_columns("cp", "10.4"));
  EXPECT_FALSE(both_columns("cp", "10.4/"));
}

TEST(TwoColumns, MarksThatContradictTheFiguresAreRefused) {
  const auto columns = both_columns("cp", "20 ar / 8 dm");
  ASSERT_TRUE(columns);
  ASSERT_FALSE(columns->ok());
  EXPECT_NE(columns->problems().front().what.find("never over"), std::string::npos);
}

TEST(TwoColumns, ANameNobodyKnowsIsRefusedAsEverywhere) {
  const auto columns = both_columns("proteni", "8/20");
  ASSERT_TRUE(columns);
  EXPECT_FALSE(columns->ok());
}

// 10.4 % of 91.5 % dry matter is 9.52 as received; a page prints 9.5 and is allowed its last digit.
TEST(TwoColumns, ThePartingIsHeldAgainstTheDryMatter) {
  EXPECT_FALSE(columns_disagree({"cp", 9.5, 10.4}, 91.5));
  EXPECT_FALSE(columns_disagree({"cp", 9.42, 10.4}, 91.5));
  EXPECT_TRUE(columns_disagree({"cp", 9.3, 10.4}, 91.5));
  EXPECT_TRUE(columns_disagree({"cp", 9.5, 10.4}, 85));
  EXPECT_FALSE(columns_disagree({"ndf", 60.0, 66.1}, 91.5));  // 1 % of 60.5
  EXPECT_TRUE(columns_disagree({"ndf", 59.8, 66.1}, 91.5));
  EXPECT_FALSE(columns_disagree({"p", 0.17, 0.18}, 91.5));
  EXPECT_TRUE(columns_disagree({"p", 0.15, 0.18}, 91.5));
}

}  // namespace
}  // namespace pluckbook
