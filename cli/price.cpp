#include "advice/price.h"

#include "cli/command.h"
#include "cli/in_form.h"
#include "cli/open_book.h"

namespace pluckbook::cli {

Result<Answer> run_price(const Arguments& arguments) {
  Result<Opened> opened = open_book(arguments);
  if (!opened) return opened.problems();
  Result<const Herd*> herd = herd_named(opened->known, arguments.words[0]);
  if (!herd) return herd.problems();
  Result<double> cover = arguments.number("cover", opened->known.cover * 100);
  if (!cover) return cover.problems();
  if (*cover < 50 || *cover > 99) {
    return usage_problem("--cover is outside 50 to 99 %",
                         "50 buys for the middle of what may happen, 80 or 90 for most of it");
  }
  const PriceSettings settings{opened->as_of, *cover / 100, arguments.has("intake-recovers")};
  Result<PriceAnswer> price = price_for(opened->known, **herd, settings);
  if (!price) return price.problems();
  Answer answer;
  answer.text = in_form_asked(arguments, *price, opened->reader);
  const bool good =
      price->mix.status == MixStatus::optimal || price->mix.status == MixStatus::none_needed;
  answer.exit_status = good ? 0 : 1;
  return answer;
}

}  // namespace pluckbook::cli
