// records.h - one operation's records as they stand in the book, in the program's own units. No
// arithmetic here: a laboratory's figures keep the basis they were printed on until lib/forage
// puts them on one footing.
#pragma once

#include <map>
#include <optional>
#include <string>
#include <utility>
#include <vector>

#include "base/date.h"
#include "base/problem.h"
#include "base/units.h"

namespace pluckbook {

/// Where a record stands, so that a later floor can still point at it; its file as shown to people
/// ("samples/2026/north-breaks.yaml"), or none where the record was not read from one.
using Origin = Place;
inline std::optional<Place> place_of(const Origin& origin) {
  return origin.file.empty() ? std::nullopt : std::optional<Place>(origin);
}

enum class UnitSystem { us, metric };

struct Laboratory {
  std::string id, name;
  int days = 10;  // usual days from mailing to result
};

enum class Terrain { level, rolling, hilly };

struct Pasture {
  std::string id, name;
  std::string forage;  // id of a published forage class: "northern_mixed_grass"
  std::optional<double> area_ha;
  Terrain terrain = Terrain::level;
  std::optional<int> green_up_month, green_up_day;            // usual; the class's own where none
  std::optional<double> trip;                                 // money for one feeding trip
  std::optional<double> water_sulfate_ppm, water_solids_ppm;  // of what they drink
  std::vector<int> sampled_years = {};  // it has a file of bags in each, read or not
  Origin origin;
  bool operator==(const Pasture&) const = default;
};

enum class CowClass { mature_cow, first_calf_heifer, bred_heifer, growing, bull };

/// First day and the shares born in each 21 days from it; one share of 1 is a single date.
struct Calving {
  Date first;
  std::vector<double> share_by_21_days{1.0};
};

struct Herd {
  std::string id, name;
  int head = 0;
  CowClass cow_class = CowClass::mature_cow;
  KgBody weight;                        // of the animal as she stands, mature cows at condition 5
  std::optional<KgBody> mature_weight;  // heifers, growing cattle and bulls
  std::optional<KgPerDay> peak_milk;
  std::optional<KgPerDay> gain;  // growing cattle and bulls
  double condition = 5;
  std::string breed = "british";  // a name of published breeds()
  std::optional<Calving> calving;
  std::optional<Date> weaning;
  std::optional<double> intake_percent;  // the herd's own figure, % of body weight
  Origin origin;
};

struct Move {
  Date date;
  std::string herd, pasture;
  bool bare = false;  // grazing is short there: quality is not the trouble
  Origin origin;
  std::optional<Date> planned = std::nullopt;  // the day it was written down, ahead of its date
};

/// A price as the seller said it, kept to be shown again, and per kg as fed.
struct Quote {
  MoneyPerKgAsFed price;
  double amount = 0;       // 355
  std::string unit;        // "ton", "50 lb", "tonne": after the slash
  double kg_per_unit = 0;  // of that unit
  std::optional<Date> date;
  MoneyPerKgAsFed freight;             // per kg, loaded miles already divided by the load
  std::optional<double> load_kg = {};  // what the truck brings
  double a_truck = 0;                  // money for its way, where freight goes by the mile
};

/// Analysis on dry matter (dm itself: share of the feed as it lies). A missing figure is missing.
struct FeedAnalysis {
  std::optional<DmShare> dm;
  // by nutrient name: cp, tdn, rup (of CP), npn_cpe, ndf, adf, fat, ca, p, s, starch, k, mg, cu, se
  std::map<std::string, Share> nutrients;
};

struct Feed {
  std::string id, name;
  std::string like;                       // id of a published feed, or empty
  FeedAnalysis analysis;                  // own values; they win over `like`
  std::vector<Quote> quotes;              // as written; the newest known on a day is used
  double waste = 0;                       // share lost at feeding
  double shrink = 0;                      // share lost in storage
  std::vector<int> feedings_per_week{7};  // ways it may be fed
  bool self_fed = false;
  std::optional<KgAsFedPerDay> least, most;  // by the label
  Origin origin;
};

enum class Basis { dry_matter, as_received };

/// One page of a laboratory on one bag; figures as printed, on the basis said, except those that
/// are no part of it (lab_values.h: dm, a share of protein, an index). In the analyte's unit.
struct LabResult {
  Date received;
  std::string lab;  // id, may be empty
  Basis basis = Basis::dry_matter;
  std::map<std::string, double> values;  // cp, adf, ndf, tdn, dm, ash, fat, lignin, ca, p, ...
  std::string supersedes;                // received date of the result this one corrects, or empty
  std::string tdn_by;  // how the laboratory says it calculates energy, may be empty
  std::string note;
  Origin origin;
  bool operator==(const LabResult&) const = default;
};

enum class Method { hand_plucked, clipped };

struct Sent {
  Date date;
  std::string lab;
  bool operator==(const Sent&) const = default;
};

struct Bag {
  std::string id, pasture;
  Date plucked;
  Method method = Method::hand_plucked;
  std::optional<int> stops;
  std::optional<double> fill;  // percent of the bag
  std::optional<Date> dried;
  std::optional<Sent> sent;
  std::optional<Date> received;  // by the laboratory
  std::optional<Date> spoiled, lost;
  std::string note;
  std::vector<LabResult> results;
  Origin origin;
  bool operator==(const Bag&) const = default;
};

struct ConditionScore {
  Date date;
  std::string herd;
  double condition = 5;
  std::optional<KgBody> weight;
  std::optional<int> head;
  Origin origin;
};

enum class EventKind { green_up, frost, fire, rain };

/// What befell a pasture and changes its diet. Rain is one that brings regrowth.
struct Event {
  Date date;
  std::string pasture;
  EventKind kind = EventKind::rain;
  std::string note;
  Origin origin;
  bool operator==(const Event&) const = default;
};

enum class DecimalMark { point, comma };
enum class DateOrder { year_month_day, month_day_year, day_month_year };

/// Which column of a laboratory's CSV becomes what. Columns are known by their headers.
struct Layout {
  /// A column of figures: by the name they are typed with ("moisture"), and the unit of its header.
  struct Figures {
    std::string header, analyte, unit;
  };

  std::string id;
  std::string lab;  // id, may be empty
  char delimiter = ',';
  DecimalMark decimal = DecimalMark::point;
  DateOrder dates = DateOrder::year_month_day;
  std::string bag;       // header of the bags' ids
  std::string reported;  // header of the pages' dates; empty where there is none
  Basis basis = Basis::dry_matter;
  std::vector<Figures> columns;
  Origin origin;
};

struct Book {
  std::string folder;
  std::string name;
  UnitSystem units = UnitSystem::us;
  std::string currency = "USD";
  double cover = 0.8;  // share of outcomes a supplement should cover
  double trip = 0;     // money for one feeding trip where the pasture does not say
  std::vector<Laboratory> labs;
  std::vector<Pasture> pastures;
  std::vector<Herd> herds;
  std::vector<Move> moves;
  std::vector<Feed> feeds;
  std::vector<Bag> bags;  // by plucked date
  std::vector<ConditionScore> scores;
  std::vector<Event> events;
  std::vector<Layout> layouts;
};

const Pasture* find_pasture(const Book& book, const std::string& id);
const Herd* find_herd(const Book& book, const std::string& id);
const Bag* find_bag(const Book& book, const std::string& id);
const Laboratory* find_laboratory(const Book& book, const std::string& id);

/// The events by the words they are written with, and the word of one: "green-up".
const std::vector<std::pair<std::string, EventKind>>& event_words();
const std::string& word_of(EventKind kind);

/// The move that holds for a herd on a day: the last one on or before it.
const Move* move_of(const Book& book, const std::string& herd, Date on);

/// The book as it was known at the end of a day: later bags, marks, results, quotes, scores and
/// events are taken out. A later move stays when it was planned by then; where none is, the herd is
/// taken to stay where it stands.
Book as_of(Book book, Date day);

/// The same for the day the book is read on: every move written ahead in it is a plan by now.
Book as_of_today(Book book, Date today);

/// The result further down that corrects this one; nullptr when none does. Two corrections made on
/// one day carry the same date as what they correct: only what stands above is corrected. Of two
/// laboratories' results of one day, a correction is of its own laboratory's where there is one.
/// Requires: `result` is one of the bag's own.
const LabResult* correction_of(const Bag& bag, const LabResult& result);
/// What that result corrects: none for one that supersedes nothing. Requires: as correction_of.
std::vector<const LabResult*> corrected_by(const Bag& bag, const LabResult& correction);

/// The results of a bag that count: those that no other result supersedes.
std::vector<const LabResult*> standing_results(const Bag& bag);

/// A result that names no laboratory is of the one the bag was sent to.
std::string lab_of(const Bag& bag, const LabResult& result);

}  // namespace pluckbook
