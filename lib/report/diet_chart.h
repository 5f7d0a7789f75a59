// diet_chart.h - the chart of one nutrient from what `diet` knows of a pasture.
#pragma once

#include "report/answers.h"
#include "report/chart.h"

namespace pluckbook {

/// Bags of earlier years are moved by whole years to stand among this season's.
DietChart diet_chart(const DietAnswer& answer, DietNutrient nutrient);

}  // namespace pluckbook
