#include <fmt/format.h>

#include "base/text.h"
#include "report/backtest_page.h"

namespace pluckbook {
namespace {

const char* const json_names[] = {"model", "last_value", "straight_line", "class_curve"};

std::string days_ahead(const LeadScores& lead) {
  return fmt::format("{} to {}", lead.first_day, lead.last_day);
}

int bags_in(const LeadScores& lead) {
  return lead.by_forecaster[0].bags;
}

Table table_of(const std::string& first, const std::string& second, bool with_band) {
  std::vector<Column> columns = {{first, Align::left}, {second},          {"model"},
                                 {"last value"},       {"straight line"}, {"usual season"}};
  if (with_band) columns.push_back({"band held"});
  return Table(std::move(columns));
}

Table errors_of(const NutrientBacktest& nutrient) {
  Table table = table_of("days ahead", "bags", true);
  for (const LeadScores& lead : nutrient.leads) {
    if (bags_in(lead) == 0) continue;
    std::vector<std::string> cells = {days_ahead(lead), std::to_string(bags_in(lead))};
    for (const ForecastScore& score : lead.by_forecaster)
      cells.push_back(fixed(score.rms_error, 1));
    cells.push_back(fmt::format("{} of {}", lead.held, bags_in(lead)));
    table.add(std::move(cells));
  }
  return table;
}

Table log_scores_of(const NutrientBacktest& nutrient) {
  Table table = table_of("days ahead", "bags", false);
  for (const LeadScores& lead : nutrient.leads) {
    if (bags_in(lead) == 0) continue;
    std::vector<std::string> cells = {days_ahead(lead), std::to_string(bags_in(lead))};
    for (const ForecastScore& score : lead.by_forecaster)
      cells.push_back(fixed(score.log_score, 2));
    table.add(std::move(cells));
  }
  return table;
}

Table dates_of(const Backtest& backtest) {
  Table table = table_of("nutrient", "dates", false);
  for (const NutrientBacktest& nutrient : backtest.nutrients) {
    if (nutrient.dates[0].dates == 0) continue;
    std::vector<std::string> cells = {in_words(nutrient.nutrient),
                                      std::to_string(nutrient.dates[0].dates)};
    for (const DateScore& score : nutrient.dates)
      cells.push_back(fixed(score.mean_absolute_days, 0));
    table.add(std::move(cells));
  }
  return table;
}

std::string finding(const Backtest& backtest) {
  std::string text;
  for (const NutrientBacktest& nutrient : backtest.nutrients) {
    int bags = 0, held = 0;
    for (const LeadScores& lead : nutrient.leads) {
      bags += bags_in(lead);
      held += lead.held;
    }
    if (bags == 0) continue;
    text += fmt::format("{}The {} range of 8 years in 10 held {} of {} later bags.",
                        text.empty() ? "" : " ", in_words(nutrient.nutrient), held, bags);
  }
  return text;
}

Json score_json(const ForecastScore& score) {
  if (score.bags == 0) return nullptr;
  return {{"rms_error", quantity(score.rms_error, "points of DM")},
          {"log_score", quantity(score.log_score, "nats")}};
}

Json lead_json(const LeadScores& lead) {
  Json json = {{"first_day", lead.first_day},
               {"last_day", lead.last_day},
               {"bags", bags_in(lead)},
               {"held_by_band", lead.held}};
  for (std::size_t i = 0; i < forecasters.size(); ++i)
    json[json_names[i]] = score_json(lead.by_forecaster[i]);
  return json;
}

Json dates_json(const NutrientBacktest& nutrient) {
  Json json = {{"dates", nutrient.dates[0].dates}};
  for (std::size_t i = 0; i < forecasters.size(); ++i) {
    const DateScore& score = nutrient.dates[i];
    json[json_names[i]] =
        score.dates == 0 ? Json(nullptr) : quantity(score.mean_absolute_days, "days");
  }
  return json;
}

}  // namespace

Page page_of(const Backtest& backtest, const Reader& /*shares need no units*/) {
  Page page;
  page.sentence(
      fmt::format("{} results of {} pasture{} replayed, each with only what was known on "
                  "the day it came. {}",
                  backtest.results, backtest.pastures.size(),
                  backtest.pastures.size() == 1 ? "" : "s", finding(backtest)));
  for (const NutrientBacktest& nutrient : backtest.nutrients) {
    page.heading(fmt::format("{}: error on later bags, points of dry matter (root mean square)",
                             in_words(nutrient.nutrient)));
    page.add(errors_of(nutrient));
    page.heading(
        fmt::format("{}: log score of later bags, higher is better", in_words(nutrient.nutrient)));
    page.add(log_scores_of(nutrient));
  }
  const Table dates = dates_of(backtest);
  if (dates.empty()) {
    page.space().sentence("no shortfall date could be judged");
  } else {
    page.heading("shortfall date against what all bags tell today, mean error in days");
    page.add(dates);
  }
  page.note(
      "days ahead count from the newest bag that was known; the band is meant to hold 8 bags "
      "of 10");
  page.note(
      "the rules beside the model have no band of their own: their log score uses the error "
      "they turned out to have, which flatters them");
  return page;
}

Json to_json(const Backtest& backtest, const Reader& /*shares need no units*/) {
  Json json = document("backtest");
  json["results"] = backtest.results;
  json["pastures"] = Json::array();
  for (const Pasture* pasture : backtest.pastures) json["pastures"].push_back(pasture->id);
  json["nutrients"] = Json::array();
  for (const NutrientBacktest& nutrient : backtest.nutrients) {
    Json rows = Json::array();
    for (const LeadScores& lead : nutrient.leads) rows.push_back(lead_json(lead));
    json["nutrients"].push_back({{"nutrient", json_name(nutrient.nutrient)},
                                 {"leads", rows},
                                 {"shortfall_dates", dates_json(nutrient)}});
  }
  return json;
}

}  // namespace pluckbook
