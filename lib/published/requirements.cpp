#include "published/requirements.h"

#include "published/bundled.h"

namespace pluckbook {

namespace {

Bundled table_in(std::string_view topic, std::string_view id) {
  return Bundled::topic(topic).at("tables").with_id(id);
}

CowRow mature_cow_row(const BundledRow& cells) {
  CowRow row;
  row.mature_weight_lb = cells.number("mature_weight_lb");
  row.peak_milk_lb = cells.number("peak_milk_lb");
  row.month = static_cast<int>(cells.number("month_since_calving"));
  row.milking = cells.text("stage") == "milking";
  row.weight_lb = row.mature_weight_lb;
  row.milk_lb = cells.number("milk_lb");
  row.dmi_lb = cells.number("dmi_lb");
  row.tdn_percent = cells.number("tdn_pct");
  row.cp_percent = cells.number("cp_pct");
  row.ca_percent = cells.number("ca_pct");
  row.p_percent = cells.number("p_pct");
  row.nem_mcal = cells.number("nem_mcal");
  return row;
}

// The printed block gives neither energy nor minerals; its calves are weaned after month 6.
CowRow printed_cow_row(const BundledRow& cells) {
  CowRow row;
  row.mature_weight_lb = row.weight_lb = cells.number("mature_weight_lb");
  row.peak_milk_lb = cells.number("peak_milk_lb");
  row.month = static_cast<int>(cells.number("month_since_calving"));
  row.milking = row.month <= 6;
  row.dmi_lb = cells.number("dmi_lb");
  row.tdn_percent = cells.number("tdn_pct");
  row.cp_percent = cells.number("cp_pct");
  return row;
}

CowRow first_calf_row(const BundledRow& cells) {
  CowRow row;
  row.mature_weight_lb = cells.number("mature_weight_lb");
  row.peak_milk_lb = cells.number("mature_peak_milk_lb");
  row.month = static_cast<int>(cells.number("month_since_calving"));
  row.milking = cells.text("stage") == "milking";
  row.weight_lb = cells.number("weight_lb");
  row.milk_lb = cells.number("milk_lb");
  row.dmi_lb = cells.number("dmi_lb");
  row.tdn_percent = cells.number("tdn_pct");
  row.cp_percent = cells.number("cp_pct");
  row.ca_percent = cells.number("ca_pct");
  row.p_percent = cells.number("p_pct");
  row.nem_mcal = cells.number("nem_maintenance_milk_pregnancy_mcal");
  row.neg_mcal = cells.number("neg_mcal");
  return row;
}

BredHeiferRow bred_heifer_row(const BundledRow& cells) {
  BredHeiferRow row;
  row.mature_weight_lb = cells.number("mature_weight_lb");
  row.month_of_pregnancy = static_cast<int>(cells.number("month_of_pregnancy"));
  row.weight_lb = cells.number("weight_lb");
  row.gain_lb = cells.number("gain_lb");
  row.dmi_lb = cells.number("dmi_lb");
  row.tdn_percent = cells.number("tdn_pct");
  row.cp_percent = cells.number("cp_pct");
  row.ca_percent = cells.number("ca_pct");
  row.p_percent = cells.number("p_pct");
  row.nem_mcal = cells.number("nem_maintenance_pregnancy_mcal");
  row.neg_mcal = cells.number("neg_mcal");
  return row;
}

GrowingRow growing_row(const BundledRow& cells) {
  GrowingRow row;
  row.mature_weight_lb =
      cells.number(cells.has("mature_weight_lb") ? "mature_weight_lb" : "finished_weight_lb");
  row.weight_lb = cells.number("weight_lb");
  row.gain_lb = cells.number("gain_lb");
  row.dmi_lb = cells.number("dmi_lb");
  row.tdn_percent = cells.number("tdn_pct");
  row.cp_percent = cells.number("cp_pct");
  row.ca_percent = cells.number("ca_pct");
  row.p_percent = cells.number("p_pct");
  row.nem_mcal = cells.number("nem_maintenance_mcal");
  row.neg_mcal = cells.number("neg_mcal");
  return row;
}

// Printed growing rows: neither energy per day nor minerals; the bulls' chart names no mature
// weight.
GrowingRow printed_growing_row(const BundledRow& cells) {
  GrowingRow row;
  if (cells.has("finished_weight_lb")) row.mature_weight_lb = cells.number("finished_weight_lb");
  row.weight_lb = cells.number("weight_lb");
  row.gain_lb = cells.number("gain_lb");
  row.dmi_lb = cells.number("dmi_lb");
  row.tdn_percent = cells.number("tdn_pct");
  row.cp_percent = cells.number("cp_pct");
  return row;
}

}  // namespace

const RequirementTable<CowRow>& mature_cow_requirements() {
  static const auto table =
      table_of<CowRow>(table_in("requirements_mature_cows", "mature_cows"), mature_cow_row);
  return table;
}

const RequirementTable<CowRow>& mature_cow_requirements_printed() {
  static const auto table = table_of<CowRow>(
      table_in("requirements_mature_cows", "mature_cows_recalled"), printed_cow_row);
  return table;
}

const RequirementTable<CowRow>& first_calf_requirements() {
  static const auto table =
      table_of<CowRow>(table_in("requirements_first_calf", "first_calf_heifers"), first_calf_row);
  return table;
}

const RequirementTable<BredHeiferRow>& bred_heifer_requirements() {
  static const auto table = table_of<BredHeiferRow>(
      table_in("requirements_bred_heifers", "bred_heifers"), bred_heifer_row);
  return table;
}

const RequirementTable<GrowingRow>& growing_requirements() {
  static const auto table = table_of<GrowingRow>(
      table_in("requirements_growing", "growing_heifers_and_stockers"), growing_row);
  return table;
}

const RequirementTable<GrowingRow>& growing_requirements_printed() {
  static const auto table = table_of<GrowingRow>(
      table_in("requirements_growing", "growing_recalled"), printed_growing_row);
  return table;
}

const RequirementTable<GrowingRow>& bull_requirements() {
  static const auto table =
      table_of<GrowingRow>(table_in("requirements_bulls", "bulls"), growing_row);
  return table;
}

const RequirementTable<GrowingRow>& bull_requirements_printed() {
  static const auto table =
      table_of<GrowingRow>(table_in("requirements_bulls", "bulls_read"), printed_growing_row);
  return table;
}

}  // namespace pluckbook
