#include "advice/plan.h"

#include "base/text.h"
#include "cli/command.h"
#include "cli/in_form.h"
#include "cli/open_book.h"
#include "cli/progress.h"

namespace pluckbook::cli {
namespace {

// Enough that 90 % stands on 30 outcomes above it.

Result<double> percent_option(const Arguments& arguments, const std::string& name, double otherwise,
                              double low, double high) {
  Result<double> percent = arguments.number(name, otherwise);
  if (percent && (*percent < low || *percent > high)) {
    return arguments.beyond(name, shortest(low) + " to " + shortest(high) + " %",
                            "write a percent: --" + name + " " + shortest(otherwise));
  }
  return percent;
}

Result<OrderTerms> order_terms(const Arguments& arguments) {
  OrderTerms terms;
  const Result<double> late =
      percent_option(arguments, "late-costs", terms.bought_late * 100, 0.1, 500);
  if (!late) return late.problems();
  const Result<double> left =
      percent_option(arguments, "left-loses", terms.left_over * 100, 0.1, 100);
  if (!left) return left.problems();
  terms.bought_late = *late / 100;
  terms.left_over = *left / 100;
  terms.assumed = !arguments.has("late-costs") && !arguments.has("left-loses");
  return terms;
}

Result<PlanSettings> settings_of(const Arguments& arguments, const Opened& opened) {
  const Result<double> cover = percent_option(arguments, "cover", opened.known.cover * 100, 50, 99);
  if (!cover) return cover.problems();
  PlanSettings settings = usual_plan(opened.as_of, opened.until, *cover / 100);
  WindowSettings& windows = settings.schedule.windows;
  const Result<double> days = arguments.number("change-every", windows.change_every);
  if (!days) return days.problems();
  if (*days < 1 || *days > 180 || *days != static_cast<int>(*days)) {
    return arguments.beyond("change-every", "1 to 180 days",
                            "14 changes what is fed every two weeks");
  }
  Result<OrderTerms> terms = order_terms(arguments);
  if (!terms) return terms.problems();
  windows.change_every = static_cast<int>(*days);
  if (arguments.has("intake-recovers")) settings.schedule.fed = FedIntake::recovered;
  settings.order = *terms;
  return settings;
}

Result<Answer> run_plan(const Arguments& arguments) {
  Result<Opened> opened = open_book(arguments, pastures_of_herds(arguments));
  if (!opened) return opened.problems();
  Result<const Herd*> herd = herd_asked(opened->known, arguments);
  if (!herd) return herd.problems();
  Result<PlanSettings> settings = settings_of(arguments, *opened);
  if (!settings) return settings.problems();
  Progress progress("planning");
  settings->progress = [&](double share) { progress.at(share); };
  Result<Plan> plan = plan_for(opened->known, **herd, *settings);
  if (!plan) return plan.problems();
  Answer answer;
  answer.text = in_form_asked(arguments, *plan, opened->reader);
  answer.exit_status = plan->schedule.within_reach() ? 0 : 1;
  return answer;
}

}  // namespace

Command plan_command() {
  return {
      .name = "plan",
      .usage = "[HERD]",
      .purpose = "a season's feed: windows, tons, money, order",
      .group = "the season",
      .examples = {"pluckbook plan spring-cows", "pluckbook plan spring-cows --until 2027-03-01"},
      .options = {{"cover", "PERCENT", "share of outcomes to cover (the book's)"},
                  {"change-every", "DAYS", "amounts are changed no more often (14)"},
                  {"intake-recovers", "", "price on what she eats once protein is met"},
                  {"late-costs", "PERCENT", "what a ton bought late costs more (20, assumed)"},
                  {"left-loses", "PERCENT", "what a ton left over loses (10, assumed)"}},
      .most_words = 1,
      .run = run_plan,
      .rows = "windows/mix",
  };
}

}  // namespace pluckbook::cli
