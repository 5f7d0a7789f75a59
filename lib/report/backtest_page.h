// backtest_page.h - how past projections did, as a page and as JSON.
#pragma once

#include "advice/backtest.h"
#include "report/json.h"
#include "report/page.h"
#include "report/shown.h"

namespace pluckbook {

Page page_of(const Backtest& backtest, const Reader& reader);
Json to_json(const Backtest& backtest, const Reader& reader);

}  // namespace pluckbook
