// cautions.cpp - what to say beside a feed. The words stand with the published ceilings
// (reference/safe_use.yaml); here is only which feed calls for which, most serious first.
#include <algorithm>
#include <functional>

#include "base/text.h"
#include "published/rules.h"
#include "supplement/least_cost.h"
#include "supplement/offer_traits.h"

namespace pluckbook {
namespace {

// Figures from which a caution is shown: well under what the whole diet may hold.
constexpr double fatty = 0.06, sulfurous = 0.004, starchy = 0.20;  // assumed

bool of_class(const FeedOffer& offer, std::initializer_list<const char*> classes) {
  return std::any_of(classes.begin(), classes.end(),
                     [&](const char* c) { return offer.feed_class == c; });
}

bool may_hold_ionophore(const FeedOffer& o) {
  return of_class(o, {"mixed_cube", "mixed_block", "npn_mix", "mineral"}) ||
         (o.feed_class.empty() && o.feed != nullptr);
}
bool may_hold_nitrate(const FeedOffer& o) {
  return of_class(o, {"small_grain_hay"}) || belongs_to(o, "sudangrass_hay");
}
bool is_distillers(const FeedOffer& o) {
  return of_class(o, {"distillers"});
}
bool is_sulfurous(const FeedOffer& o) {
  return of_class(o, {"distillers"}) || o.figure_or("s", 0) >= sulfurous;
}
bool is_starchy(const FeedOffer& o) {
  return is_grain(o) || o.figure_or("starch", 0) >= starchy;
}
bool is_fatty(const FeedOffer& o) {
  return of_class(o, {"distillers", "oilseed"}) || o.figure_or("fat", 0) >= fatty;
}
bool is_cottonseed(const FeedOffer& o) {
  return belongs_to(o, "whole_cottonseed") || belongs_to(o, "cottonseed_meal");
}
bool holds_trace_minerals(const FeedOffer& o) {
  return of_class(o, {"mixed_block", "npn_mix", "mineral"});
}
bool is_legume(const FeedOffer& o) {
  return of_class(o, {"legume_hay"});
}

struct Rule {
  std::function<bool(const FeedOffer&)> applies;
  std::string words;
};

const std::vector<Rule>& rules() {
  static const std::vector<Rule> all{
      {carries_npn, safe_use("npn_share_of_cp").caution},
      {carries_npn, safe_use("npn_share_of_supplement_rdp").caution},
      {may_hold_nitrate, safe_use("nitrate_n_ppm").caution},
      {may_hold_ionophore, "Read the tag for an ionophore; the book cannot know of one. " +
                               safe_use("ionophore_mg_day").caution},
      {is_sulfurous, safe_use("sulfur").caution},
      {is_distillers, safe_use("sulfur_cautious").caution},
      {is_starchy, safe_use("grain_percent_bw").caution},
      {is_cottonseed, safe_use("whole_cottonseed_percent_bw").caution},
      {holds_trace_minerals, safe_use("selenium_ppm").caution},
      {holds_trace_minerals, safe_use("copper_ppm").caution},
      {is_legume,
       "Alfalfa and clover can bloat hungry cattle: fill them with grass hay first and change "
       "over slowly (common practice, no source)."},
      {is_fatty, safe_use("fat").caution},
  };
  return all;
}

void add_once(std::vector<std::string>& cautions, const std::string& words) {
  if (words.empty() || std::find(cautions.begin(), cautions.end(), words) != cautions.end()) return;
  cautions.push_back(words);
}

/// What the grass and the water carry concerns every feed: it stands first.
void add_of_grass_and_water(std::vector<std::string>& cautions, const GrazingDay& day) {
  const auto over = [](const std::optional<double>& ppm, const char* rule) {
    return ppm && *ppm >= safe_use(rule).value;
  };
  const auto add = [&](const std::string& found, const std::optional<double>& ppm,
                       const char* rule) {
    if (over(ppm, rule))
      add_once(cautions, found + " " + fixed(*ppm, 0) + " ppm. " + safe_use(rule).caution);
  };
  if (over(day.nitrate_n_ppm, "nitrate_n_never_ppm"))
    add("The newest bag holds nitrate N of", day.nitrate_n_ppm, "nitrate_n_never_ppm");
  add("The newest bag holds nitrate N of", day.nitrate_n_ppm, "nitrate_n_ppm");
  add("The water holds sulfate of", day.water_sulfate_ppm, "water_sulfate_ppm");
  add("The water holds dissolved solids of", day.water_solids_ppm, "water_solids_ppm");
}

}  // namespace

std::vector<std::string> cautions_for(const GrazingDay& day, const std::vector<FeedOffer>& offers,
                                      const std::vector<std::size_t>& which) {
  std::vector<std::string> cautions;
  add_of_grass_and_water(cautions, day);
  const auto any = [&](const auto& applies) {
    return std::any_of(which.begin(), which.end(),
                       [&](std::size_t j) { return applies(offers[j]); });
  };
  for (const Rule& rule : rules())
    if (any(rule.applies)) add_once(cautions, rule.words);
  if (day.bull && any(is_cottonseed))
    add_once(cautions,
             "These are bulls: leave cottonseed out for young ones and for 60 to 90 days "
             "before turnout.");
  for (const FeedCeiling& ceiling : feed_ceilings())
    if (any([&](const FeedOffer& o) { return belongs_to(o, ceiling.feed); }))
      add_once(cautions, ceiling.caution);
  if (day.crude_protein.value() < safe_use("diet_cp_for_energy_feed").value / 100 && any(is_grain))
    add_once(cautions, safe_use("diet_cp_for_energy_feed").caution);
  cautions.push_back(
      "The label, a veterinarian or a qualified nutritionist, and local rules come before anything "
      "said here: ask before you feed.");
  return cautions;
}

}  // namespace pluckbook
