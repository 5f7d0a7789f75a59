// requirements.h - published nutrient requirements, row by row as printed or computed, in the
// units of print (lb, percent, Mcal). Interpolation is lib/cow's business.
#pragma once

#include <string>
#include <vector>

namespace pluckbook {

/// What a published block says of itself.
struct Citation {
  std::string source;  // full publication
  std::string table;
  std::string status;  // read | recalled | computed | assumed
};

/// A mature cow or first-calf heifer at the END of a month since calving (day 30.5 x month).
struct CowRow {
  double mature_weight_lb = 0, peak_milk_lb = 0;
  int month = 0;  // 1 to 12
  bool milking = false;
  double weight_lb = 0, milk_lb = 0, dmi_lb = 0;
  double tdn_percent = 0, cp_percent = 0, ca_percent = 0, p_percent = 0;
  double nem_mcal = 0;  // per day, maintenance + milk + pregnancy
  double neg_mcal = 0;  // per day, first-calf heifers
};

struct BredHeiferRow {
  double mature_weight_lb = 0;
  int month_of_pregnancy = 0;  // 1 to 9
  double weight_lb = 0, gain_lb = 0, dmi_lb = 0;
  double tdn_percent = 0, cp_percent = 0, ca_percent = 0, p_percent = 0;
  double nem_mcal = 0, neg_mcal = 0;
};

/// Growing heifers and stockers (finished_weight) or bulls (mature weight).
struct GrowingRow {
  double mature_weight_lb = 0, weight_lb = 0, gain_lb = 0, dmi_lb = 0;
  double tdn_percent = 0, cp_percent = 0, ca_percent = 0, p_percent = 0;
  double nem_mcal = 0, neg_mcal = 0;
};

template <class Row>
struct RequirementTable {
  Citation citation;
  std::vector<Row> rows;
};

const RequirementTable<CowRow>& mature_cow_requirements();          // computed block, 180 rows
const RequirementTable<CowRow>& mature_cow_requirements_printed();  // recalled block, 48 rows
const RequirementTable<CowRow>& first_calf_requirements();
const RequirementTable<BredHeiferRow>& bred_heifer_requirements();
const RequirementTable<GrowingRow>& growing_requirements();
const RequirementTable<GrowingRow>& growing_requirements_printed();  // recalled, 5 rows
const RequirementTable<GrowingRow>& bull_requirements();
const RequirementTable<GrowingRow>& bull_requirements_printed();  // read; no mature weight

}  // namespace pluckbook
