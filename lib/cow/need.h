// need.h - what the animals need on a day, from the published tables. Rows are points in time: the
// value of month m stands on day 30.5 m after calving. Values are interpolated between days,
// weights and milks, never across calving or weaning. Amounts per head.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "base/date.h"
#include "base/problem.h"
#include "base/units.h"
#include "book/records.h"
#include "cow/animal.h"
#include "cow/row_part.h"
#include "published/requirements.h"

namespace pluckbook {

enum class Stage { milking, dry, bred_heifer, growing, bull };
std::string_view to_string(Stage stage);

/// One slice of a herd on a day: animals that calved together.
struct Slice {
  double share = 1;  // of the herd
  Stage stage = Stage::milking;
  double days_since_calving = 0;  // cows and first-calf heifers; from the last calving
  double days_to_calving = 0;
  CowClass cow_class = CowClass::mature_cow;  // whose rows serve: heifers move up as they calve
};

/// The stage of every slice of a herd on a day. Calving comes round every 365 days; the calf is
/// weaned on the herd's date (after day 183 where none is given). Those born within 21 days stand
/// at the middle of them. A bred heifer is a first-calf heifer once she has calved, and a cow a
/// year on. Fails: cows or heifers without a calving date; shares that add to nothing.
Result<std::vector<Slice>> slices_on(const Herd& herd, Date day);

/// What the equations add to the nearest rows for an animal that stands beyond them: their answer
/// for her less their answer at the edge of the table, so that need stays continuous there.
struct BeyondTable {
  KgDmPerDay intake;
  Share tdn, crude_protein, calcium, phosphorus;
  McalPerDay nem, neg;
  KgBody weight;
  KgPerDay milk;
};

/// A requirement on one day. Shares are of dry matter as the rows print them; amounts are the rows'
/// own share x intake.
struct Need {
  KgDmPerDay intake;  // the dry matter the row assumes
  Share tdn, crude_protein, calcium, phosphorus;
  Share crude_protein_table;  // before the rumen's floor
  bool rumen_floor_governs = false;
  McalPerDay nem, neg;
  KgPerDay milk;
  KgBody weight;
  std::vector<RowPart> rows;          // what one animal's need was read from; none for an average
  std::optional<BeyondTable> beyond;  // already in the figures above
  std::vector<std::string> notes;     // "weight 1650 lb is above the table ..."
  const Citation* citation = nullptr;

  KgPerDay tdn_amount() const { return intake * tdn; }
  /// The animal's own need as the table has it; the rumen's floor is a share of what she eats and
  /// is applied where the day's balance is drawn (cow/intake.h).
  KgPerDay crude_protein_amount() const { return intake * crude_protein_table; }
};

/// The first milking row stands for the days before 30.5: the published milk curve starts from
/// nothing, which no cow does. Beyond the rows in any other way (weight, milk, gain, still milking
/// after day 183, dry before 213.5) the equations carry the nearest rows on, and the notes say so.
/// A heifer's mature weight, where it is not given, is her weight / 0.86 (first calf) or / 0.70
/// (bred): the middle of the published targets; her peak milk is the mature figure.
/// Fails: weights, milk, gains or days no animal has; growing cattle without a mature weight.
Result<Need> need_of(const AnimalAt& animal);

/// An animal of a slice, as the tables and the equations are asked about it.
AnimalAt animal_of(const Herd& herd, const Slice& slice);

/// How much of a slice stands in some part of the herd.
struct SlicePart {
  std::size_t slice = 0;
  double share = 0;  // of the herd
};

/// The herd's need on a day: the average over its slices, and the hardest-pressed quarter by CP.
struct HerdNeed {
  Date date;
  std::vector<Slice> slices;
  std::vector<Need> slice_needs;
  Need average;
  std::vector<SlicePart> hardest_slices;  // those of the quarter, hardest first
  Need hardest_quarter;
  double milking_share = 0;  // of the herd
};
Result<HerdNeed> need_on(const Herd& herd, Date day);

}  // namespace pluckbook
