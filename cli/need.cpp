#include "cow/need.h"

#include <fmt/format.h>

#include "base/text.h"
#include "cli/command.h"
#include "cli/in_form.h"
#include "cli/need_animal.h"
#include "cli/open_book.h"
#include "cli/terminal.h"

namespace pluckbook::cli {
namespace {

/// One row for every point asked for.
Result<NeedAnswer> from_flags(const Arguments& arguments, const Reader& reader) {
  Result<AskedAnimal> asked = animal_asked(arguments, reader);
  if (!asked) return asked.problems();
  NeedAnswer answer;
  answer.title = asked->title;
  for (const AskedPoint& point : asked->points) {
    Result<Need> need = need_of(point.animal);
    if (!need) return need.problems();
    answer.rows.push_back({point.at, point.stage, *std::move(need), {}});
  }
  return answer;
}

std::string stage_words(const HerdNeed& need) {
  if (need.milking_share > 0.999) return "milking";
  if (need.slices.front().stage != Stage::milking && need.milking_share < 0.001) {
    return std::string(to_string(need.slices.front().stage));
  }
  return fmt::format("{:.0f} % milking", need.milking_share * 100);
}

Result<NeedAnswer> from_book(const Arguments& arguments, const Opened& opened) {
  Result<const Herd*> herd = herd_asked(opened.known, arguments);
  if (!herd) return herd.problems();
  const Date last = arguments.has("until") ? opened.until : opened.as_of + Days(365);
  NeedAnswer answer;
  answer.title = fmt::format("Need of {} ({} head), average over the herd, per head and day.",
                             (*herd)->id, (*herd)->head);
  for (Date day = opened.as_of; day <= last; day += Days(14)) {
    Result<HerdNeed> need = need_on(**herd, day);
    if (!need) return need.problems();
    answer.rows.push_back({day, stage_words(*need), need->average, need->hardest_quarter});
  }
  return answer;
}

Result<Answer> run_need(const Arguments& arguments) {
  Result<NeedAnswer> need = NeedAnswer{};
  Reader reader;
  const bool has_animal =
      arguments.has("weight") || arguments.has("mature-weight") || arguments.has("class");
  const bool has_book = !arguments.words.empty() || book_folder(arguments).ok();
  if (arguments.words.empty() && (has_animal || !has_book)) {
    Result<UnitSystem> units = units_of(arguments, UnitSystem::us);
    if (!units) return units.problems();
    reader.units = *units;
    reader.width = page_width();
    need = from_flags(arguments, reader);
  } else {
    Result<Opened> opened = open_book(arguments, no_pastures());
    if (!opened) return opened.problems();
    reader = opened->reader;
    need = from_book(arguments, *opened);
  }
  if (!need) return need.problems();
  Answer answer;
  answer.text = in_form_asked(arguments, *need, reader);
  return answer;
}

}  // namespace

Command need_command() {
  return {
      .name = "need",
      .usage = "[HERD]",
      .purpose = "the requirement through the year",
      .group = "the season",
      .examples = {"pluckbook need spring-cows", "pluckbook need --weight 1200 --milk 20 --month 2",
                   "pluckbook need --class bred-heifer --weight 1150 --days-pregnant 200",
                   "pluckbook need --class growing --weight 600 --mature-weight 1200 --gain 1.5"},
      .options = {{"class", "WORD", "mature-cow, first-calf-heifer, bred-heifer, growing, bull"},
                  {"weight", "WEIGHT", "without a book: mature weight (growing, bull: their own)"},
                  {"mature-weight", "W", "where --weight is not that (bull: 2000 lb)"},
                  {"milk", "AMOUNT", "peak milk a day of the mature cow (20 lb)"},
                  {"month", "N", "since calving 1 to 12, or pregnant 1 to 9 (all)"},
                  {"days-pregnant", "N", "bred-heifer, in place of --month"},
                  {"gain", "AMOUNT",
                   "growing, bull: gain a day, lb (growing: 0.5 to 2.5; bull: 0)"}},
      .most_words = 1,
      .uses_book = false,
      .run = run_need,
      .rows = "rows",
  };
}

}  // namespace pluckbook::cli
