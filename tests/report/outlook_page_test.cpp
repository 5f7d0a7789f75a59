#include <gtest/gtest.h>

#include "base/text.h"
#include "report/pages.h"

namespace pluckbook {
namespace {

Date on_day(const char* iso) {
  return *parse_date(iso);
}

const Date horizon = on_day("2027-02-16");

/// A diet of 55.6 % TDN against a need of 55.5 %, which never falls short.
NutrientOutlook enough_tdn() {
  NutrientOutlook n;
  n.nutrient = DietNutrient::tdn;
  n.diet_now.median = from_percent(55.6);
  n.need_now = from_percent(55.5);
  n.probability_below_now = 0.46;
  return n;
}

/// Protein that has been short since late July.
NutrientOutlook short_protein() {
  NutrientOutlook n;
  n.diet_now.median = from_percent(7.6);
  n.need_now = from_percent(9.0);
  n.below_now = true;
  n.below_since = on_day("2026-07-28");
  n.probability_below_now = 0.95;
  return n;
}

/// The tables down to the amounts a day.
std::string shares_of(const NutrientOutlook& nutrient) {
  static Herd herd;
  static Pasture pasture;
  herd.id = "cows";
  pasture.name = "North";
  HerdOutlook outlook;
  outlook.herd = &herd;
  outlook.pasture = &pasture;
  outlook.nutrients = {nutrient};
  const OutlookSettings settings{on_day("2026-08-20"), horizon};
  const std::string text = text_of(outlook_tables(outlook, settings, Reader{}));
  const std::size_t from = text.find("\n") + 1;
  return text.substr(from, text.find("\nper head") - from);
}

TEST(OutlookPage, ShortNowAndEnoughAgainLater) {
  NutrientOutlook n = short_protein();
  n.recovers = {on_day("2026-09-20"), on_day("2026-09-28"), on_day("2026-10-15"), 0.91};
  EXPECT_EQ(shares_of(n),
            "nutrient  diet  need     short now  chance it is short today\n"
            "protein    7.6   9.0  since 28 Jul                 95 in 100\n"
            "\n"
            "what changes by 16 Feb\n"
            "nutrient  what           about     8 years in 10  chance by 16 Feb\n"
            "protein   enough again  28 Sep  20 Sep to 15 Oct         91 in 100\n"
            "- enough again: for a week or longer, counted among the years that fall short\n");
}

TEST(OutlookPage, ShortNowAndLikelyStillShortAtTheHorizon) {
  NutrientOutlook n = short_protein();
  n.below_since = on_day("2026-08-20");
  n.recovers = {on_day("2026-10-15"), std::nullopt, std::nullopt, 0.3};
  EXPECT_EQ(shares_of(n),
            "nutrient  diet  need  short now  chance it is short today\n"
            "protein    7.6   9.0        yes                 95 in 100\n"
            "\n"
            "what changes by 16 Feb\n"
            "nutrient  what                  about           8 years in 10  chance by 16 Feb\n"
            "protein   enough again  not by 16 Feb  15 Oct to after 16 Feb         30 in 100\n"
            "- enough again: for a week or longer, counted among the years that fall short\n");
}

TEST(OutlookPage, ShortLaterAndEnoughAgainAfterThat) {
  NutrientOutlook n = enough_tdn();
  n.falls_below = {on_day("2026-08-20"), on_day("2026-08-22"), on_day("2027-01-28"), 0.94};
  n.recovers = {on_day("2026-10-15"), on_day("2026-10-15"), std::nullopt, 0.73};
  EXPECT_EQ(shares_of(n),
            "nutrient  diet  need  short now  chance it is short today\n"
            "TDN       55.6  55.5         no                 46 in 100\n"
            "\n"
            "what changes by 16 Feb\n"
            "nutrient  what           about           8 years in 10  chance by 16 Feb\n"
            "TDN       falls short   22 Aug        20 Aug to 28 Jan         94 in 100\n"
            "TDN       enough again  15 Oct  15 Oct to after 16 Feb         73 in 100\n"
            "- enough again: for a week or longer, counted among the years that fall short\n");
  EXPECT_EQ(finding(n, horizon), "falls below need about 22 Aug (20 Aug to 28 Jan, 8 years in 10)");
}

TEST(OutlookPage, NeverShort) {
  NutrientOutlook n = enough_tdn();
  n.probability_below_now = 0;
  EXPECT_EQ(shares_of(n),
            "nutrient  diet  need  short now  chance it is short today\n"
            "TDN       55.6  55.5         no            under 1 in 100\n"
            "\n"
            "what changes by 16 Feb\n"
            "nutrient  what                 about  8 years in 10  chance by 16 Feb\n"
            "TDN       falls short  not by 16 Feb  not by 16 Feb    under 1 in 100\n");
}

TEST(OutlookPage, TheWidestWordsFitEightyColumns) {
  NutrientOutlook n = short_protein();
  n.recovers = {on_day("2026-12-15"), std::nullopt, std::nullopt, 1};
  const std::string text = shares_of(n);
  for (const std::string_view line : split(text, '\n')) EXPECT_LE(display_width(line), 80) << line;
  EXPECT_EQ(text.find("left out"), std::string::npos);
}

}  // namespace
}  // namespace pluckbook
