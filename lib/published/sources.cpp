#include "published/bundled.h"
#include "published/rules.h"

namespace pluckbook {

namespace {

constexpr std::string_view table_topics[] = {
    "requirements_mature_cows", "requirements_first_calf", "requirements_bred_heifers",
    "requirements_growing",     "requirements_bulls",      "condition",
};

void add_tables(std::vector<SourceInUse>& all) {
  for (const std::string_view topic : table_topics)
    for (const Bundled& table : Bundled::topic(topic).at("tables").items())
      all.push_back(
          {std::string(topic), table.text("table"), table.text("source"), table.text("status")});
}

void add_list(std::vector<SourceInUse>& all, std::string_view topic, const Bundled& list,
              std::string_view what) {
  for (const Bundled& entry : list.items())
    all.push_back(
        {std::string(topic), entry.text(what), entry.text("source"), entry.text("status")});
}

void add_equations(std::vector<SourceInUse>& all) {
  for (const std::string_view topic : {"condition", "surroundings", "protein", "energetics"})
    add_list(all, topic, Bundled::topic(topic).at("equations"), "id");
  const Citation breeds = citation_of(Bundled::topic("energetics").at("breeds"));
  all.push_back({"energetics", "breeds", breeds.source, breeds.status});
}

void add_rules(std::vector<SourceInUse>& all) {
  const Bundled intake = Bundled::topic("intake");
  add_list(all, "intake", intake.at("guidance"), "table");
  const Citation nrc = citation_of(intake.at("nrc_equation"));
  all.push_back({"intake", "dry matter intake of cows", nrc.source, nrc.status});
  add_list(all, "intake", intake.at("limits"), "id");
  const Bundled energy = Bundled::topic("energy");
  for (const std::string& step : energy.at("chain").keys()) {
    const Citation citation = citation_of(energy.at("chain").at(step));
    all.push_back({"energy", step, citation.source, citation.status});
  }
  add_list(all, "energy", energy.at("fibre_equations"), "forage");
  const Bundled forage = Bundled::topic("forage_energy");
  const Citation sum = citation_of(forage.at("summative"));
  all.push_back({"forage_energy", "full summative equation", sum.source, sum.status});
  add_list(all, "forage_energy", forage.at("digested_fibre"), "forage");
  add_list(all, "forage_energy", forage.at("digestibility"), "id");
  add_list(all, "nitrate", Bundled::topic("nitrate").at("guides"), "id");
  add_list(all, "rumen", Bundled::topic("rumen").at("figures"), "what");
  add_list(all, "sampling_error", Bundled::topic("sampling_error").at("figures"), "what");
  for (const SafeUse& limit : safe_use())
    all.push_back({"safe_use", limit.id, limit.source, limit.status});
}

// Feeds and curves name one publication for many figures; each publication is listed once.
void add_publications(std::vector<SourceInUse>& all, std::string_view topic,
                      std::string_view what) {
  const Bundled sources = Bundled::topic(topic).at("sources");
  for (const std::string& key : sources.keys())
    all.push_back({std::string(topic), std::string(what), sources.text(key), "see each figure"});
}

}  // namespace

std::vector<SourceInUse> sources_in_use() {
  std::vector<SourceInUse> all;
  add_tables(all);
  add_equations(all);
  add_rules(all);
  add_publications(all, "seasonal_curves", "usual course of the diet");
  add_publications(all, "feeds", "feed composition");
  return all;
}

}  // namespace pluckbook
