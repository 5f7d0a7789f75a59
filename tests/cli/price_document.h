// price_document.h - a price without a book, asked of the real program, as a document.
#pragma once

#include <nlohmann/json.hpp>
#include <string>

#include "cli/run.h"

namespace pluckbook::testing {

/// `pluckbook price WORDS --feeds FILE --json` on feeds written as in a book.
inline nlohmann::json price_document(const std::string& feeds, const std::string& words) {
  const FreshFolder folder;
  write_text(folder.path() / "feeds.yaml", feeds);
  const Ran ran =
      run_in(folder.path(), "price --feeds feeds.yaml --json --as-of 2026-09-01 " + words);
  const nlohmann::json document = nlohmann::json::parse(ran.output, nullptr, false);
  EXPECT_FALSE(document.is_discarded()) << ran.output;
  return document;
}

inline nlohmann::json option_of(const nlohmann::json& document, const std::string& feed) {
  for (const auto& option : document.at("options"))
    if (option.at("feed") == feed) return option;
  ADD_FAILURE() << feed << " is not among the options";
  return {};
}

/// Cost for a lb of one thing: "cost_per_unit_protein", "cost_per_unit_tdn", "fed_dry_matter", ...
inline double money(const nlohmann::json& document, const std::string& feed, const char* of) {
  return option_of(document, feed).at(of).at("value");
}

/// lb a day of a feed on its own.
inline double alone(const nlohmann::json& document, const std::string& feed) {
  const auto option = option_of(document, feed);
  return option.at("as_fed").is_null() ? -1 : option.at("as_fed").at("value").get<double>();
}

/// lb a day of a feed in the mix, 0 when it is not fed.
inline double fed(const nlohmann::json& document, const std::string& feed,
                  const char* of = "as_fed") {
  for (const auto& part : document.at("mix"))
    if (part.at("feed") == feed) return part.at(of).at("value");
  return 0;
}

inline double gap(const nlohmann::json& document, const std::string& nutrient) {
  for (const auto& one : document.at("gaps"))
    if (one.at("nutrient") == nutrient) return one.at("gap").at("value");
  return -1;
}

}  // namespace pluckbook::testing
