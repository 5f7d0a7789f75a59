#include "cow/need.h"

#include <algorithm>
#include <cmath>

#include "base/text.h"
#include "cow/equations.h"
#include "cow/rows.h"
#include "published/rules.h"

namespace pluckbook {

namespace {

constexpr double days_in_month = 30.5;  // the row of month m stands on day 30.5 m
constexpr double last_day = 12 * days_in_month;
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

/// What every row gives, summed over the rows around a point.
Need blended(std::vector<RowPart> rows, const Citation& citation) {
  Need need;
  for (const RowPart& row : rows) {
    need.intake += row.intake * row.weight;
    need.tdn += row.tdn * row.weight;
    need.crude_protein_table += row.crude_protein * row.weight;
    need.calcium += row.calcium * row.weight;
    need.phosphorus += row.phosphorus * row.weight;
    need.nem += row.nem * row.weight;
    need.neg += row.neg * row.weight;
    need.weight += row.body_weight * row.weight;
    need.milk += row.milk * row.weight;
  }
  need.rows = std::move(rows);
  need.citation = &citation;
  return need;
}

/// Adds so much of what the equations say of an animal whose mature weight is known.
void add_equations(BeyondTable& sum, const AnimalAt& animal, double share) {
  const EquationNeed need = need_of_state(state_of(animal, *animal.mature_weight));
  sum.intake += need.intake * share;
  sum.tdn += need.tdn * share;
  sum.crude_protein += need.crude_protein() * share;
  sum.calcium += need.calcium_share() * share;
  sum.phosphorus += need.phosphorus_share() * share;
  sum.nem += need.energy.nem() * share;
  sum.neg += need.energy.gain * share;
  sum.weight += need.state.weight * share;
  sum.milk += need.state.milk * share;
}

void add(Need& need, const BeyondTable& beyond) {
  need.intake += beyond.intake;
  need.tdn += beyond.tdn;
  need.crude_protein_table += beyond.crude_protein;
  need.calcium += beyond.calcium;
  need.phosphorus += beyond.phosphorus;
  need.nem += beyond.nem;
  need.neg += beyond.neg;
  need.weight += beyond.weight;
  need.milk += beyond.milk;
  need.beyond = beyond;
}

/// Where a point stands beyond a column; nothing within it.
std::optional<std::string> note_beyond(const ColumnStep& step) {
  if (step.at == step.held()) return std::nullopt;
  const bool above = step.at > step.high;
  const std::string edge = shortest(step.held()), unit = step.unit.empty() ? "" : " " + step.unit;
  if (step.column == "day")  // no day of hers in it: a year's answers would each say their own
    return above ? "after day " + edge + ", the last of her rows, the equations carry the need on"
                 : "before day " + edge + ", the first of her rows, the equations carry it back";
  return step.column + " " + shortest(std::round(step.at * 10) / 10) + unit + " is " +
         (above ? "above" : "below") + " the table: the equations carry its " +
         (above ? "last" : "first") + " rows (" + edge + unit + ") on";
}

void add_notes(Need& need, const std::vector<std::string>& notes) {
  for (const std::string& note : notes)
    if (std::find(need.notes.begin(), need.notes.end(), note) == need.notes.end())
      need.notes.push_back(note);
}

/// What the equations add to rows from the edge of the table on; each row's edge is the animal put
/// at the nearest place the table holds.
/// Requires: the animal's mature weight is set.
template <class Row>
BeyondTable beyond_table(const AnimalAt& animal, const std::vector<RowPart>& rows,
                         const std::vector<Axis<Row>>& axes) {
  BeyondTable beyond;
  add_equations(beyond, animal, 1);
  for (const RowPart& row : rows) {
    AnimalAt edge = animal;
    for (std::size_t i = 0; i < axes.size(); ++i) axes[i].put(edge, row.steps[i].held());
    add_equations(beyond, edge, -row.weight);
  }
  return beyond;
}

/// The need as the rows around a point have it, carried on by the equations where it lies beyond.
/// Requires: the animal's mature weight is set.
template <class Row>
Need need_from(const RequirementTable<Row>& table, const std::vector<const Row*>& rows,
               const std::vector<Axis<Row>>& axes, const AnimalAt& animal) {
  std::vector<RowPart> parts;
  for (WeightedRow<Row>& row : rows_around(rows, axes)) parts.push_back(row_part(std::move(row)));
  Need need = blended(std::move(parts), table.citation);
  for (const RowPart& part : need.rows)
    for (const ColumnStep& step : part.steps)
      if (const auto note = note_beyond(step)) add_notes(need, {*note});
  if (!need.notes.empty()) add(need, beyond_table(animal, need.rows, axes));
  return need;
}

void apply_rumen_floor(Need& need) {
  const Share floor = from_percent(intake_rules().cp_floor_percent);
  need.rumen_floor_governs = need.crude_protein_table < floor;
  need.crude_protein = std::max(need.crude_protein_table, floor);
}

void put_mature_weight(AnimalAt& animal, double lb) {
  animal.mature_weight = from_lb<KgBody>(lb);
}
void put_day(AnimalAt& animal, double day) {
  animal.days_since_calving = day;
}

template <class Row>
std::vector<const Row*> all_rows(const RequirementTable<Row>& table) {
  std::vector<const Row*> rows;
  for (const Row& row : table.rows) rows.push_back(&row);
  return rows;
}

template <class Row>
Axis<Row> mature_weight_axis(const AnimalAt& animal) {
  return {[](const Row& r) { return r.mature_weight_lb; }, put_mature_weight,
          pounds(*animal.mature_weight), "mature weight", "lb"};
}

Need cow_need(const RequirementTable<CowRow>& table, AnimalAt animal) {
  const bool before_rows = animal.milking && animal.days_since_calving < days_in_month;
  if (before_rows) animal.days_since_calving = days_in_month;
  animal.days_since_calving = std::min(animal.days_since_calving, last_day);
  auto rows = all_rows(table);
  std::erase_if(rows, [&](const CowRow* row) { return row->milking != animal.milking; });
  std::vector<Axis<CowRow>> axes{mature_weight_axis<CowRow>(animal),
                                 {[](const CowRow& r) { return r.month * days_in_month; }, put_day,
                                  animal.days_since_calving, "day", ""}};
  // Dry rows repeat over milk levels: only a milking cow's milk can lie outside the table.
  if (animal.milking)
    axes.push_back({[](const CowRow& r) { return r.peak_milk_lb; },
                    [](AnimalAt& a, double lb) { a.peak_milk = from_lb<KgPerDay>(lb); },
                    pounds(animal.peak_milk), "peak milk", "lb/day"});
  Need need = need_from(table, rows, axes, animal);
  if (before_rows) add_notes(need, {"the row of month 1 stands for the days before it"});
  return need;
}

Need bred_need(AnimalAt animal) {
  const bool open = animal.days_since_calving < 0;
  if (open) animal.days_since_calving = 0;
  const auto& table = bred_heifer_requirements();
  Need need = need_from<BredHeiferRow>(
      table, all_rows(table),
      {mature_weight_axis<BredHeiferRow>(animal),
       {[](const BredHeiferRow& r) { return r.month_of_pregnancy * days_in_month; }, put_day,
        animal.days_since_calving, "day", ""}},
      animal);
  if (open) add_notes(need, {"not yet bred: this is her need on the day of mating"});
  return need;
}

Need growing_need(const RequirementTable<GrowingRow>& table, const AnimalAt& animal) {
  Need need =
      need_from<GrowingRow>(table, all_rows(table),
                            {mature_weight_axis<GrowingRow>(animal),
                             {[](const GrowingRow& r) { return r.weight_lb; },
                              [](AnimalAt& a, double lb) { a.weight = from_lb<KgBody>(lb); },
                              pounds(animal.weight), "weight", "lb"},
                             {[](const GrowingRow& r) { return r.gain_lb; },
                              [](AnimalAt& a, double lb) { a.gain = from_lb<KgPerDay>(lb); },
                              pounds(animal.gain), "gain", "lb/day"}},
                            animal);
  need.weight = animal.weight;
  return need;
}

/// By the table of her class. Requires: the animal's mature weight is set.
Need table_need(const AnimalAt& animal) {
  switch (animal.cow_class) {
    case CowClass::mature_cow: {
      Need need = cow_need(mature_cow_requirements(), animal);
      need.weight = animal.weight;
      return need;
    }
    case CowClass::first_calf_heifer:
      return cow_need(first_calf_requirements(), animal);
    case CowClass::bred_heifer:
      return bred_need(animal);
    case CowClass::growing:
      return growing_need(growing_requirements(), animal);
    case CowClass::bull:
      break;
  }
  return growing_need(bull_requirements(), animal);
}

/// A heifer's weight is said once, as she stands at the herd's own class; her frame stays.
std::optional<KgBody> frame_of(const Herd& herd) {
  if (herd.cow_class == CowClass::first_calf_heifer) return herd.weight / first_calf_share;
  if (herd.cow_class == CowClass::bred_heifer) return herd.weight / bred_share;
  return std::nullopt;
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

// What is wrong with an animal is written in the line of its herd.
Problems at_herd(Problems problems, const Herd& herd) {
  for (Problem& problem : problems)
    if (!problem.place) problem.place = place_of(herd.origin);
  return problems;
}

}  // namespace

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

Result<Need> need_of(const AnimalAt& animal) {
  if (auto problem = impossible(animal)) return *std::move(problem);
  std::vector<std::string> notes;
  AnimalAt framed = animal;
  framed.mature_weight = mature_weight_of(animal, notes);
  Need need = table_need(framed);
  add_notes(need, notes);
  apply_rumen_floor(need);
  return need;
}

Result<HerdNeed> need_on(const Herd& herd, Date day) {
  auto slices = slices_on(herd, day);
  if (!slices) return slices.problems();
  if (herd.cow_class == CowClass::growing && !herd.gain)
    return input_problem("herd '" + herd.id + "' has no gain", "write gain: 1.5 lb/day",
                         place_of(herd.origin));
  HerdNeed out{day, *std::move(slices), {}, {}, {}, {}, 0};
  std::vector<SlicePart> all;
  for (const Slice& slice : out.slices) {
    all.push_back({all.size(), slice.share});
    auto need = need_of(animal_of(herd, slice));
    if (!need) return at_herd(need.problems(), herd);
    if (slice.stage == Stage::milking && !herd.peak_milk)
      add_notes(*need, {"peak milk was taken as 20 lb/day (9.1 kg)"});
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
