#include <fmt/format.h>

#include <algorithm>

#include "report/figures.h"
#include "report/pages.h"

namespace pluckbook {
namespace {

/// Sources in the order they are first used; a line points at one by its number.
class SourceList {
 public:
  std::string mark(const std::string& source) {
    if (source.empty()) return "";
    auto at = std::find(sources_.begin(), sources_.end(), source);
    if (at == sources_.end()) at = sources_.insert(sources_.end(), source);
    return fmt::format(" [{}]", at - sources_.begin() + 1);
  }
  const std::vector<std::string>& all() const { return sources_; }

 private:
  std::vector<std::string> sources_;
};

Working working_of(const WorkingsLine& line, SourceList& sources, const Reader& reader) {
  const std::string result = figure_text(line.result, reader) + sources.mark(line.source);
  if (line.formula.empty()) return {line.quantity + ": " + result, ""};
  const std::string worked = numbers_text(line, reader) + " = " + result;
  if (line.words.empty()) return {line.quantity + ":", worked};
  return {line.quantity + ": " + line.words, "= " + worked};
}

}  // namespace

Page page_of(const Workings& workings, const Reader& reader) {
  Page page;
  SourceList sources;
  page.sentence(fmt::format("Workings of {} on {}, on {}, per head and day.", workings.herd,
                            to_iso(workings.date), workings.pasture));
  page.sentence(
      "A row's part is the parts of its columns multiplied. Figures with three decimals or more "
      "are rounded as shown, and go on unrounded.");
  if (reader.units == UnitSystem::metric)
    page.sentence("A row of a table is named as it is printed, in pounds.");
  for (const WorkingsSection& section : workings.sections) {
    page.heading(section.title);
    for (const WorkingsLine& line : section.lines) page.working(working_of(line, sources, reader));
    for (const std::string& note : section.notes) page.note(note);
  }
  page.heading("sources");
  for (std::size_t i = 0; i < sources.all().size(); ++i)
    page.working({fmt::format("[{}] {}", i + 1, sources.all()[i]), ""});
  return page;
}

}  // namespace pluckbook
