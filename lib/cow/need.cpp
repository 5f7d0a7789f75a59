#include "cow/need.h"

#include <algorithm>
#include <cmath>

#include "cow/rows.h"
#include "published/rules.h"

namespace pluckbook {

namespace {

constexpr double days_in_month = 30.5;  // the row of month m stands on day 30.5 m
constexpr double last_milking_day = 6 * days_in_month, first_dry_day = 7 * days_in_month;
constexpr double last_day = 12 * days_in_month, last_bred_day = 9 * days_in_month;
constexpr double gestation_days = 282;
/// A row in the program's own units, with its part in the reading.
template <class Row>
RowPart row_part(WeightedRow<Row> weighted) {
  const Row& row = *weighted.row;
  RowPart part{std::move(weighted.steps),
               weighted.weight,
               from_lb<KgDmPerDay>(row.dmi_lb),
               from_percent(row.tdn_percent),
               from_percent(row.cp_percent),
               from_percent(row.ca_percent),
               from_percent(row.p_percent),
               McalPerDay(row.nem_mcal),
               McalPerDay(row.neg_mcal),
               from_lb<KgBody>(row.weight_lb),
               KgPerDay(0)};
  if constexpr (requires { row.milk_lb; }) part.milk = from_lb<KgPerDay>(row.milk_lb);
  return part;
}

/// What every row gives, summed over the rows around a point. `size` scales intake and energy for a
/// weight outside the table.
Need blended(std::vector<RowPart> rows, double size, const Citation& citation) {
  Need need;
  for (const RowPart& row : rows) {
    need.intake += row.intake * (row.weight * size);
    need.tdn += row.tdn * row.weight;
    need.crude_protein_table += row.crude_protein * row.weight;
    need.calcium += row.calcium * row.weight;
    need.phosphorus += row.phosphorus * row.weight;
    need.nem += row.nem * (row.weight * size);
    need.neg += row.neg * (row.weight * size);
    need.weight += row.body_weight * (row.weight * std::pow(size, 4.0 / 3));
    need.milk += row.milk * row.weight;
  }
  need.rows = std::move(rows);
  need.size_beyond_table = size;
  need.citation = &citation;
  return need;
}

/// Size of an animal against the nearest weight of the table, metabolic: 1 inside it.
template <class Row>
double size_beyond(const std::vector<const Row*>& rows, const Axis<Row>& weight) {
  const Bracket bracket = bracket_of(rows, weight);
  if (!bracket.above && !bracket.below) return 1;
  return std::pow(weight.at / bracket.low, 0.75);
}

template <class Row>
Need need_from(const RequirementTable<Row>& table, const std::vector<const Row*>& rows,
               const std::vector<Axis<Row>>& axes, std::size_t weight_axis) {
  std::vector<std::string> notes;
  std::vector<RowPart> parts;
  for (WeightedRow<Row>& row : rows_around(rows, axes, notes))
    parts.push_back(row_part(std::move(row)));
  const double size = size_beyond(rows, axes[weight_axis]);
  Need need = blended(std::move(parts), size, table.citation);
  need.notes = std::move(notes);
  if (size != 1) need.notes.push_back("intake and energy were scaled by weight^0.75");
  return need;
}

void apply_rumen_floor(Need& need) {
  const Share floor = from_percent(intake_rules().cp_floor_percent);
  need.rumen_floor_governs = need.crude_protein_table < floor;
  need.crude_protein = std::max(need.crude_protein_table, floor);
}

/// The day to read cow rows at, with a note where she stands beyond them.
double day_in_rows(const AnimalAt& animal, std::vector<std::string>& notes) {
  const double day = animal.days_since_calving;
  if (!animal.milking) {
    if (day < last_milking_day)
      notes.push_back("weaned before day 183: the first dry row was used");
    return std::clamp(day, first_dry_day, last_day);
  }
  if (day < days_in_month) notes.push_back("the row of month 1 stands for the days before it");
  if (day > last_milking_day)
    notes.push_back("still milking after day 183: the last milking row was used");
  return std::clamp(day, days_in_month, last_milking_day);
}

Need cow_need(const RequirementTable<CowRow>& table, const AnimalAt& animal, KgBody mature) {
  std::vector<std::string> notes;
  const double day = day_in_rows(animal, notes);
  std::vector<const CowRow*> rows;
  for (const CowRow& row : table.rows)
    if (row.milking == animal.milking) rows.push_back(&row);
  std::vector<Axis<CowRow>> axes{
      {[](const CowRow& r) { return r.mature_weight_lb; }, pounds(mature), "mature weight", "lb"},
      {[](const CowRow& r) { return r.month * days_in_month; }, day, "day", ""}};
  // Dry rows repeat over milk levels: only a milking cow's milk can lie outside the table.
  if (animal.milking)
    axes.push_back({[](const CowRow& r) { return r.peak_milk_lb; }, pounds(animal.peak_milk),
                    "peak milk", "lb/day"});
  Need need = need_from(table, rows, axes, 0);
  need.notes.insert(need.notes.begin(), notes.begin(), notes.end());
  return need;
}

Need bred_need(const AnimalAt& animal, KgBody mature) {
  const auto& table = bred_heifer_requirements();
  const double day = std::clamp(animal.days_since_calving, days_in_month, last_bred_day);
  std::vector<const BredHeiferRow*> rows;
  for (const BredHeiferRow& row : table.rows) rows.push_back(&row);
  Need need = need_from<BredHeiferRow>(
      table, rows,
      {{[](const BredHeiferRow& r) { return r.mature_weight_lb; }, pounds(mature), "mature weight",
        "lb"},
       {[](const BredHeiferRow& r) { return r.month_of_pregnancy * days_in_month; }, day, "day",
        ""}},
      0);
  if (animal.days_since_calving < 0) need.notes.push_back("not yet bred: the first row was used");
  return need;
}

Need growing_need(const RequirementTable<GrowingRow>& table, const AnimalAt& animal,
                  KgBody mature) {
  std::vector<const GrowingRow*> rows;
  for (const GrowingRow& row : table.rows) rows.push_back(&row);
  Need need = need_from<GrowingRow>(
      table, rows,
      {{[](const GrowingRow& r) { return r.mature_weight_lb; }, pounds(mature), "mature weight",
        "lb"},
       {[](const GrowingRow& r) { return r.weight_lb; }, pounds(animal.weight), "weight", "lb"},
       {[](const GrowingRow& r) { return r.gain_lb; }, pounds(animal.gain), "gain", "lb/day"}},
      1);
  need.weight = animal.weight;
  return need;
}

/// Table, by class.
Need table_need(const AnimalAt& animal, KgBody mature) {
  switch (animal.cow_class) {
    case CowClass::mature_cow: {
      Need need = cow_need(mature_cow_requirements(), animal, mature);
      need.weight = animal.weight;
      return need;
    }
    case CowClass::first_calf_heifer:
      return cow_need(first_calf_requirements(), animal, mature);
    case CowClass::bred_heifer:
      return bred_need(animal, mature);
    case CowClass::growing:
      return growing_need(growing_requirements(), animal, mature);
    case CowClass::bull:
      break;
  }
  return growing_need(bull_requirements(), animal, mature);
}

/// A heifer's weight is said once, as she stands at the herd's own class; her frame stays.
std::optional<KgBody> frame_of(const Herd& herd) {
  if (herd.cow_class == CowClass::first_calf_heifer) return herd.weight / first_calf_share;
  if (herd.cow_class == CowClass::bred_heifer) return herd.weight / bred_share;
  return std::nullopt;
}

AnimalAt animal_of(const Herd& herd, const Slice& slice) {
  AnimalAt animal;
  animal.cow_class = slice.cow_class;
  animal.weight = herd.weight;
  animal.mature_weight = herd.mature_weight;
  animal.peak_milk = herd.peak_milk.value_or(from_lb<KgPerDay>(20));
  animal.gain = herd.gain.value_or(KgPerDay(0));
  animal.milking = slice.stage == Stage::milking;
  animal.days_since_calving = slice.stage == Stage::bred_heifer
                                  ? gestation_days - slice.days_to_calving
                                  : slice.days_since_calving;
  if (!animal.mature_weight) animal.mature_weight = frame_of(herd);
  if (herd.cow_class != slice.cow_class && slice.cow_class == CowClass::mature_cow)
    animal.weight = *animal.mature_weight;
  return animal;
}

void add_notes(Need& need, const std::vector<std::string>& notes) {
  for (const std::string& note : notes)
    if (std::find(need.notes.begin(), need.notes.end(), note) == need.notes.end())
      need.notes.push_back(note);
}

/// The need of some part of the herd: amounts averaged by share, shares by the matter eaten.
Need averaged(const HerdNeed& herd, const std::vector<SlicePart>& parts) {
  Need sum;
  double of_herd = 0;
  for (const auto& [slice, share] : parts) {
    of_herd += share;
    sum.intake += herd.slice_needs[slice].intake * share;
  }
  for (const auto& [slice, share] : parts) {
    const Need& need = herd.slice_needs[slice];
    const double eaten = need.intake * share / sum.intake;
    sum.tdn += need.tdn * eaten;
    sum.crude_protein += need.crude_protein * eaten;
    sum.crude_protein_table += need.crude_protein_table * eaten;
    sum.calcium += need.calcium * eaten;
    sum.phosphorus += need.phosphorus * eaten;
    sum.nem += need.nem * (share / of_herd);
    sum.neg += need.neg * (share / of_herd);
    sum.milk += need.milk * (share / of_herd);
    sum.weight += need.weight * (share / of_herd);
    sum.rumen_floor_governs = sum.rumen_floor_governs || need.rumen_floor_governs;
    if (sum.citation == nullptr) sum.citation = need.citation;
    add_notes(sum, need.notes);
  }
  sum.intake = sum.intake / of_herd;
  return sum;
}

/// The quarter of the herd whose diet must hold the most protein.
std::vector<SlicePart> hardest_slices_of(const HerdNeed& herd) {
  std::vector<std::size_t> order(herd.slices.size());
  for (std::size_t i = 0; i < order.size(); ++i) order[i] = i;
  std::stable_sort(order.begin(), order.end(), [&](std::size_t a, std::size_t b) {
    return herd.slice_needs[a].crude_protein > herd.slice_needs[b].crude_protein;
  });
  std::vector<SlicePart> parts;
  double open = 0.25;
  for (const std::size_t i : order) {
    if (open <= 0) break;
    parts.push_back({i, std::min(open, herd.slices[i].share)});
    open -= herd.slices[i].share;
  }
  return parts;
}

}  // namespace

Result<Need> need_of(const AnimalAt& animal) {
  if (auto problem = impossible(animal)) return *std::move(problem);
  std::vector<std::string> notes;
  const KgBody mature = mature_weight_of(animal, notes);
  Need need = table_need(animal, mature);
  add_notes(need, notes);
  apply_rumen_floor(need);
  return need;
}

Result<HerdNeed> need_on(const Herd& herd, Date day) {
  auto slices = slices_on(herd, day);
  if (!slices) return slices.problems();
  if (herd.cow_class == CowClass::growing && !herd.gain)
    return input_problem("herd '" + herd.id + "' has no gain", "write gain: 1.5 lb/day");
  HerdNeed out{day, *std::move(slices), {}, {}, {}, {}, 0};
  std::vector<SlicePart> all;
  for (const Slice& slice : out.slices) {
    all.push_back({all.size(), slice.share});
    auto need = need_of(animal_of(herd, slice));
    if (!need) return need.problems();
    if (slice.stage == Stage::milking && !herd.peak_milk)
      add_notes(*need, {"peak milk was taken as 20 lb/day"});
    if (!herd.mature_weight && frame_of(herd))
      add_notes(*need, {frame_note(herd.weight / *frame_of(herd))});
    out.slice_needs.push_back(*std::move(need));
    if (slice.stage == Stage::milking) out.milking_share += slice.share;
  }
  out.average = averaged(out, all);
  out.hardest_slices = hardest_slices_of(out);
  out.hardest_quarter = averaged(out, out.hardest_slices);
  return out;
}

}  // namespace pluckbook
