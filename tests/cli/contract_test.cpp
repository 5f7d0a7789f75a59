// The JSON contract, and arithmetic that anyone can redo from the documents.
#include <gtest/gtest.h>

#include <nlohmann/json.hpp>

#include "cli/run.h"

namespace pluckbook::testing {
namespace {

using Json = nlohmann::json;

Json json_of(const FreshFolder& folder, const std::string& words) {
  const Ran ran = run_in(folder.path(), words + " --json", "2>/dev/null");
  EXPECT_LE(ran.exit, 1) << words << "\n" << ran.output;
  return Json::parse(ran.output, nullptr, false);
}

bool has_keys(const Json& json, std::initializer_list<const char*> keys) {
  for (const char* key : keys) {
    if (!json.contains(key)) {
      ADD_FAILURE() << "no '" << key << "' in " << json.dump().substr(0, 200);
      return false;
    }
  }
  return true;
}

const Json& nutrient(const Json& herd, const std::string& name) {
  for (const Json& one : herd["nutrients"]) {
    if (one["nutrient"] == name) return one;
  }
  throw std::runtime_error("no nutrient " + name);
}

TEST(Contract, NeedGivesThePublishedRowWithItsSource) {
  FreshFolder none;
  const Json json = json_of(none, "need --weight 1200 --milk 20 --month 2");
  EXPECT_EQ(json["schema"], "pluckbook/need/1");
  ASSERT_EQ(json["rows"].size(), 1U);
  const Json& row = json["rows"][0];
  // NRC 2000 appendix densities, 1200 lb, 20 lb milk, month 2 (computed block): DMI 27.8 lb,
  // TDN 59.9 %, CP 10.69 %, NEm 16.92 Mcal, Ca 0.31 %, P 0.20 %.
  EXPECT_EQ(row["month_since_calving"], 2);
  EXPECT_EQ(row["stage"], "milking");
  EXPECT_NEAR(row["dmi"]["value"].get<double>(), 27.8, 0.05);
  EXPECT_NEAR(row["tdn_share"]["value"].get<double>(), 59.9, 0.05);
  EXPECT_NEAR(row["crude_protein_share"]["value"].get<double>(), 10.69, 0.005);
  EXPECT_NEAR(row["nem_amount"]["value"].get<double>(), 16.92, 0.005);
  EXPECT_NEAR(row["calcium_share"]["value"].get<double>(), 0.31, 0.005);
  EXPECT_NEAR(row["phosphorus_share"]["value"].get<double>(), 0.20, 0.005);
  EXPECT_NE(row["source"].dump().find("Nutrient Requirements of Beef Cattle"), std::string::npos);
  has_keys(row, {"tdn_amount", "crude_protein_amount"});
}

TEST(Contract, MonthsSixAndSevenShowTheWeaningStep) {
  FreshFolder none;
  const Json six = json_of(none, "need --weight 1200 --milk 20 --month 6")["rows"][0];
  const Json seven = json_of(none, "need --weight 1200 --milk 20 --month 7")["rows"][0];
  // Same table: 53.4 % TDN and 7.90 % CP milking, 44.9 % and 5.99 % dry; under the rumen's 7 %
  // (Sprinkle, University of Arizona) the floor governs.
  EXPECT_EQ(six["stage"], "milking");
  EXPECT_EQ(seven["stage"], "dry");
  EXPECT_NEAR(six["tdn_share"]["value"].get<double>(), 53.4, 0.05);
  EXPECT_NEAR(seven["tdn_share"]["value"].get<double>(), 44.9, 0.05);
  EXPECT_NEAR(six["crude_protein_share"]["value"].get<double>(), 7.90, 0.005);
  EXPECT_NEAR(seven["crude_protein_share_table"]["value"].get<double>(), 5.99, 0.005);
  EXPECT_NEAR(seven["crude_protein_share"]["value"].get<double>(), 7.0, 1e-9);
  EXPECT_EQ(seven["rumen_floor_governs"], true);
}

TEST(Contract, OutlookHoldsEveryAgreedField) {
  FreshFolder book("northern");
  const Json json = json_of(book, "outlook spring-cows --as-of 2026-07-20");
  EXPECT_EQ(json["schema"], "pluckbook/outlook/1");
  ASSERT_EQ(json["herds"].size(), 1U);
  const Json& herd = json["herds"][0];
  has_keys(herd, {"herd", "head", "pasture", "nutrients"});
  for (const Json& one : herd["nutrients"]) {
    has_keys(one, {"nutrient", "diet_now", "need_now", "need_amount_now", "supply_now", "state",
                   "below_since", "falls_below", "falls_below_amount"});
    has_keys(one["diet_now"], {"median", "low", "high", "unit"});
    has_keys(one["supply_now"], {"value", "low", "high", "unit"});
    const bool below = one["state"] == "below";
    EXPECT_EQ(one["falls_below"].is_null(), below);
    if (!below) {
      has_keys(one["falls_below"], {"median", "low", "high", "probability_by_horizon"});
    }
  }
  has_keys(json, {"next_sample"});
}

TEST(Contract, DietHasARowADay) {
  FreshFolder book("northern");
  const Json json = json_of(book, "diet draws --as-of 2026-08-20 --until 2026-09-20");
  has_keys(json, {"schema", "pasture", "bags", "days"});
  ASSERT_GT(json["days"].size(), 31U);
  EXPECT_EQ(json["days"].back()["date"], "2026-09-20");
  for (const Json& day : json["days"]) {
    const Json& cp = day["crude_protein"];
    EXPECT_LT(cp["low"].get<double>(), cp["median"].get<double>());
    EXPECT_LT(cp["median"].get<double>(), cp["high"].get<double>());
  }
  for (const Json& bag : json["bags"])
    has_keys(bag, {"bag", "plucked", "used", "why_not", "nutrients"});
}

TEST(Contract, PriceIsProvenAndAddsUp) {
  FreshFolder book("northern");
  run_in(book.path(), "result 26-draws-08 dm=91.5 cp=6.4 adf=41.8 ndf=66 --as-of 2026-09-05");
  const Json json = json_of(book, "price spring-cows --as-of 2026-09-05");
  has_keys(json, {"herd", "date", "cover", "gaps", "mix", "cost_per_head_day", "binding",
                  "marginal_costs", "options", "unmet", "cautions", "certificate"});
  for (const char* part : {"primal_infeasibility", "dual_infeasibility", "gap"}) {
    EXPECT_LT(json["certificate"][part].get<double>(), 1e-9) << part;
  }
  ASSERT_FALSE(json["mix"].empty());
  double cost = 0;
  for (const Json& part : json["mix"]) {
    has_keys(part, {"feed", "as_fed", "dry_matter", "feedings_per_week", "cost"});
    cost += part["cost"]["value"].get<double>();
  }
  EXPECT_NEAR(cost, json["feed_cost_per_head_day"]["value"].get<double>(), 1e-8);
  for (const Json& gap : json["gaps"]) {
    const double need = gap["need"]["value"];
    const double supply = gap["supply"]["value"];
    EXPECT_NEAR(gap["gap"]["value"].get<double>(), std::max(0.0, need - supply), 1e-8);
  }
  for (const Json& option : json["options"]) {
    has_keys(option, {"feed", "feasible", "as_fed", "cost_per_head_day", "cost_per_unit_protein",
                      "break_even_quote", "why_not"});
    if (option["feasible"] == true) {
      EXPECT_GE(option["cost_per_head_day"]["value"].get<double>(),
                json["cost_per_head_day"]["value"].get<double>() - 1e-8)
          << "a feed alone cannot be cheaper than the cheapest mix: " << option["feed"];
    } else {
      EXPECT_FALSE(option["why_not"].is_null()) << option["feed"];
    }
  }
  EXPECT_FALSE(json["cautions"].empty());
}

TEST(Contract, AResultMovesTheShortfallAndIsOnDisk) {
  FreshFolder book("northern");
  const std::string ask = "outlook spring-cows --as-of 2026-09-05";
  const Json before = json_of(book, ask);
  const Ran ran =
      run_in(book.path(), "result 26-draws-08 dm=91.5 cp=6.4 adf=41.8 ndf=66 --as-of 2026-09-05");
  ASSERT_EQ(ran.exit, 0) << ran.output;
  const Json after = json_of(book, ask);
  const Json& old = nutrient(before["herds"][0], "crude_protein");
  const Json& now = nutrient(after["herds"][0], "crude_protein");
  EXPECT_LT(now["diet_now"]["median"].get<double>(), old["diet_now"]["median"].get<double>());
  EXPECT_NE(old["below_since"].dump() + old["falls_below"].dump(),
            now["below_since"].dump() + now["falls_below"].dump());
  EXPECT_NE(read_text(book.path() / "samples/2026/draws.yaml").find("cp: 6.4"), std::string::npos);
}

TEST(Contract, TheSameQuestionGivesTheSameBytes) {
  FreshFolder book("northern");
  for (const char* words : {"outlook --as-of 2026-08-20", "outlook --as-of 2026-08-20 --json",
                            "price spring-cows --as-of 2026-08-20 --json"}) {
    EXPECT_EQ(run_in(book.path(), words).output, run_in(book.path(), words).output) << words;
  }
}

// Oklahoma State University, M. Z. Johnson, "Money saved through cost effective feeding" (Western
// Livestock Journal; read): 38 % cube at $475/ton costs $0.625 a lb of CP, 20 % cube at $350/ton
// $0.875, both as fed. The published dry-matter figures are rounded (42.2 %), hence 0.001.
TEST(WorkedExample, CubesByCostOfProtein) {
  FreshFolder book("northern");
  write_text(book.path() / "feeds.yaml",
             "- {id: a38, name: cube 38, like: range cube 38, quote: {price: 475 USD/ton, date: "
             "2026-08-01}}\n"
             "- {id: b20, name: cube 20, like: range cube 20, quote: {price: 350 USD/ton, date: "
             "2026-08-01}}\n");
  const Json json = json_of(book, "price spring-cows --as-of 2026-09-05");
  ASSERT_EQ(json["options"].size(), 2U);
  EXPECT_EQ(json["options"][0]["cost_per_unit_protein"]["unit"], "USD/lb");
  EXPECT_NEAR(json["options"][0]["cost_per_unit_protein"]["value"].get<double>(), 0.625, 0.001);
  EXPECT_NEAR(json["options"][1]["cost_per_unit_protein"]["value"].get<double>(), 0.875, 0.001);
}

}  // namespace
}  // namespace pluckbook::testing
