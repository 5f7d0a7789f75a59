#include "advice/workings.h"

#include "advice/workings_line.h"

namespace pluckbook {
namespace {

WorkingsSection given_section(const HerdDay& day) {
  WorkingsSection section{
      "the diet, as the pasture's bags and its published season give it", {}, {}};
  const std::string middle = "middle of the series of the pasture's bags (see diet)";
  section.lines.push_back(given(share("CP of the diet", day.diet.crude_protein), middle));
  section.lines.push_back(given(share("TDN of the diet", day.diet.tdn), middle));
  if (day.diet.ndf)
    section.lines.push_back(given(share("NDF of the diet", *day.diet.ndf), "the newest bag"));
  return section;
}

}  // namespace

Workings workings_of(const HerdDay& day) {
  Workings workings{day.herd->id, day.grazing.pasture->name, day.need.date, {given_section(day)}};
  for (auto part : {need_workings(day), intake_workings(day), balance_workings(day)})
    for (WorkingsSection& section : part) workings.sections.push_back(std::move(section));
  return workings;
}

}  // namespace pluckbook
