// json.h - the answers as documents: schema first, each measured number with its unit, unknown is
// null. Fields are added, never renamed within a schema number.
#pragma once

#include <nlohmann/json.hpp>
#include <optional>
#include <string>
#include <vector>

#include "advice/compare.h"
#include "advice/outlook.h"
#include "advice/plan.h"
#include "advice/price.h"
#include "advice/workings.h"
#include "published/feeds.h"
#include "report/answers.h"
#include "report/shown.h"

namespace pluckbook {

using Json = nlohmann::ordered_json;

/// {"schema": "pluckbook/COMMAND/1"}
Json document(const std::string& command);
/// {"value": 1.9, "unit": "lb/day"}; ten significant figures, so that the same answer gives the
/// same bytes on every compiler.
Json quantity(double value, const std::string& unit);

Json to_json(const OutlookAnswer& answer, const Reader& reader);
Json to_json(const PriceAnswer& answer, const Reader& reader);
Json to_json(const Plan& plan, const Reader& reader);
Json to_json(const Comparison& comparison, const Reader& reader);
Json to_json(const DietAnswer& answer, const Reader& reader);
Json to_json(const NeedAnswer& answer, const Reader& reader);
Json to_json(const Workings& workings, const Reader& reader);
Json feeds_json(const std::vector<const PublishedFeed*>& feeds);
Json sources_json();

/// The document as it is printed.
std::string printed(const Json& json);

}  // namespace pluckbook
