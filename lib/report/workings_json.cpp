#include "report/figures.h"
#include "report/json.h"

namespace pluckbook {
namespace {

std::string json_unit(const Figure& figure, const Reader& reader) {
  std::string unit = unit_of(figure, reader);
  switch (figure.measure) {
    case Measure::mass_per_day:
    case Measure::kilograms_per_day:
    case Measure::energy:
      return unit + "/day";
    default:
      return unit;
  }
}

Json figure_json(const Figure& figure, const Reader& reader) {
  return quantity(in_reader_units(figure, reader), json_unit(figure, reader));
}

Json line_json(const WorkingsLine& line, const Reader& reader) {
  Json inputs = Json::array();
  for (const Figure& input : line.inputs) {
    Json one = {{"name", input.name}};
    one.update(figure_json(input, reader));
    inputs.push_back(one);
  }
  const bool worked = !line.formula.empty();
  return {{"quantity", line.quantity},
          {"formula", line.words.empty() ? Json(nullptr) : Json(line.words)},
          {"inputs", inputs},
          {"worked", worked ? Json(numbers_text(line, reader)) : Json(nullptr)},
          {"result", figure_json(line.result, reader)},
          {"source", line.source.empty() ? Json(nullptr) : Json(line.source)}};
}

}  // namespace

Json to_json(const Workings& workings, const Reader& reader) {
  Json json = document("workings");
  json["herd"] = workings.herd;
  json["pasture"] = workings.pasture;
  json["date"] = to_iso(workings.date);
  json["sections"] = Json::array();
  for (const WorkingsSection& section : workings.sections) {
    Json lines = Json::array();
    for (const WorkingsLine& line : section.lines) lines.push_back(line_json(line, reader));
    json["sections"].push_back(
        {{"title", section.title}, {"lines", lines}, {"notes", section.notes}});
  }
  return json;
}

}  // namespace pluckbook
