#include <fmt/format.h>

#include "advice/outlook.h"
#include "base/text.h"
#include "book/read.h"
#include "book/write.h"
#include "cli/command.h"
#include "cli/open_book.h"
#include "cli/typed_page.h"
#include "forage/footing.h"
#include "forage/method_shift.h"
#include "report/json.h"
#include "report/pages.h"

namespace pluckbook::cli {
namespace {

constexpr int usual_stops = 20;  // common practice, where the bag does not say

/// What the options say of a result; its figures are still to come.
Result<LabResult> result_from(const Arguments& arguments, const OpenedToChange& opened,
                              const Bag& bag) {
  LabResult result;
  Result<Date> received = recorded_day(arguments, opened.as_of);
  if (!received) return received.problems();
  if (*received < bag.plucked) {
    return usage_problem(fmt::format("{} lies before the bag was plucked ({})", to_iso(*received),
                                     to_iso(bag.plucked)),
                         "correct --date: the day the page came");
  }
  result.received = *received;
  result.tdn_by = arguments.get("tdn-by");
  result.lab = arguments.get("lab", bag.sent ? bag.sent->lab : "");
  result.supersedes = arguments.get("supersedes");
  result.note = arguments.get("note");
  const auto standing = standing_results(bag);
  if (!standing.empty() && result.supersedes.empty() &&
      lab_of(bag, result) == lab_of(bag, *standing.back())) {
    return usage_problem(
        fmt::format("bag {} has a result of {} already", bag.id, to_iso(standing.back()->received)),
        fmt::format("a correction says --supersedes {}; a second laboratory says --lab ID",
                    to_iso(standing.back()->received)));
  }
  return result;
}

/// A warning is kept beside the answer; the result is kept too.
Problem doubt_of_basis(const LabResult& result, const std::string& bag) {
  Problem doubt = input_problem(
      fmt::format("crude protein {} % of dry matter from a bag of {} % dry matter is low",
                  shortest(result.values.at("cp")), shortest(result.values.at("dm"))),
      fmt::format("if it stands in the as-received column, correct it:\npluckbook result {} ... "
                  "--basis as-received --supersedes {}",
                  bag, to_iso(result.received)));
  doubt.severity = Severity::warning;
  return doubt;
}

/// Where the value sits against what the series expected before it came.
struct Surprise {
  DietPoint expected;
  Share value;
  double tail = 1;
};

Surprise surprise(const DietSeries& before, DietNutrient nutrient, const Bag& bag, Share value) {
  return {before.on(nutrient, bag.plucked), value,
          before.tail_probability(nutrient, bag.plucked, value, bag.stops.value_or(usual_stops))};
}

std::string in_a_sentence(DietNutrient nutrient, const Surprise& s) {
  std::string words =
      fmt::format("{} {}, expected {} ({} to {})", in_words(nutrient), percent(s.value),
                  percent(s.expected.median), percent(s.expected.low), percent(s.expected.high));
  if (s.tail < 0.05) {
    words += fmt::format(
        "; {} such bags would stray as far: kept and used, look at how it was plucked "
        "and dried",
        in_hundred(s.tail));
  }
  return words;
}

struct HerdChange {
  std::string herd;
  std::vector<NutrientOutlook> before, after;
};

Result<std::vector<HerdChange>> changes(const Book& before, const Book& after,
                                        const std::string& pasture,
                                        const OutlookSettings& settings) {
  std::vector<HerdChange> all;
  for (const Herd& herd : before.herds) {
    const Move* move = move_of(before, herd.id, settings.as_of);
    if (move == nullptr || move->pasture != pasture) continue;
    Result<HerdOutlook> old = outlook_of(before, herd, settings);
    if (!old) return old.problems();
    Result<HerdOutlook> now = outlook_of(after, *find_herd(after, herd.id), settings);
    if (!now) return now.problems();
    all.push_back({herd.id, std::move(old->nutrients), std::move(now->nutrients)});
  }
  return all;
}

std::string changes_text(const std::vector<HerdChange>& all, Date until) {
  std::string text;
  for (const HerdChange& change : all) {
    for (std::size_t i = 0; i < change.after.size(); ++i) {
      text += wrapped(fmt::format("{}: {} {}", change.herd, in_words(change.after[i].nutrient),
                                  finding(change.after[i], until)));
      text +=
          wrapped(fmt::format("  (before this result: {} {})", in_words(change.before[i].nutrient),
                              finding(change.before[i], until)),
                  80, 4);
    }
  }
  return text;
}

Json changes_json(const std::vector<HerdChange>& all) {
  const auto when = [](const NutrientOutlook& n) -> Json {
    if (n.below_now) {
      return {{"state", "below"},
              {"below_since", n.below_since ? Json(to_iso(*n.below_since)) : Json(nullptr)}};
    }
    return {{"state", "above"},
            {"falls_below",
             n.falls_below.median ? Json(to_iso(*n.falls_below.median)) : Json(nullptr)}};
  };
  Json json = Json::array();
  for (const HerdChange& change : all) {
    for (std::size_t i = 0; i < change.after.size(); ++i) {
      json.push_back({{"herd", change.herd},
                      {"nutrient", json_name(change.after[i].nutrient)},
                      {"before", when(change.before[i])},
                      {"after", when(change.after[i])}});
    }
  }
  return json;
}

/// What the page signals: nitrate first, since it can kill.
std::string signals_text(const FootedResult& footed) {
  std::string text;
  for (const std::string& caution : footed.cautions) text += wrapped("- " + caution, 80, 2);
  for (const std::string& note : footed.notes) text += wrapped("- " + note, 80, 2);
  return text.empty() ? text : text + "\n";
}

/// Where the bag's TDN was got another way than the pasture's usual one.
std::string shift_text(const DietSeries& after, const Bag& bag) {
  for (const MethodShift& shift : method_shifts(after.bags())) {
    if (shift.bags.back()->id == bag.id) return wrapped("- " + in_words(shift), 80, 2);
  }
  return "";
}

/// A correction stands for the whole page: what it does not repeat is no longer used.
std::string left_behind_text(Bag bag, const LabResult& kept) {
  bag.results.push_back(kept);
  const LabResult& correction = bag.results.back();
  std::vector<std::string> names;
  for (const LabResult* result : corrected_by(bag, correction)) {
    for (const auto& [name, value] : result->values) {
      if (!correction.values.contains(name)) names.push_back(name);
    }
  }
  if (names.empty()) return "";
  return wrapped(fmt::format("- the page it corrects also had {}: no longer used; where they still "
                             "hold, correct it once more with all its figures",
                             fmt::join(names, ", ")),
                 80, 2);
}

/// The price, where the book holds feeds; else the outlook says what to write.
std::string next_step(const Book& book, const HerdChange& change, const OutlookSettings& settings) {
  return fmt::format("pluckbook {} {} --as-of {}", book.feeds.empty() ? "outlook" : "price",
                     change.herd, to_iso(settings.as_of));
}

std::string first_step(const Book& book, const std::vector<HerdChange>& changed,
                       const OutlookSettings& settings) {
  return changed.empty() ? "pluckbook outlook" : next_step(book, changed.front(), settings);
}

std::string answer_text(const Bag& bag, const FootedResult& footed, const DietSeries& before,
                        const Written& written) {
  std::string text =
      fmt::format("result of bag {} kept\n{}:{}\n\n", bag.id, written.file, written.line);
  text += signals_text(footed);
  const auto line = [&](DietNutrient nutrient, const std::optional<FootedValue>& value) {
    if (!value) return;
    text += wrapped(in_a_sentence(nutrient, surprise(before, nutrient, bag, value->value)));
    if (value->how != "as printed") text += wrapped("  " + value->how, 80, 4);
  };
  line(DietNutrient::crude_protein, footed.crude_protein);
  line(DietNutrient::tdn, footed.tdn);
  return text;
}

Json answer_json(const std::string& bag, const LabResult& result, const FootedResult& footed,
                 const Written& written, const std::vector<HerdChange>& changed,
                 const std::string& next) {
  Json json = document("result");
  json["bag"] = bag;
  json["what"] = fmt::format("result of bag {} kept", bag);
  json["file"] = written.file;
  json["line"] = written.line;
  json["next"] = next;
  json["basis"] = result.basis == Basis::dry_matter ? "dry matter" : "as received";
  json["cautions"] = footed.cautions;
  json["notes"] = footed.notes;
  json["changes"] = changes_json(changed);
  return json;
}

Result<Answer> run_result(const Arguments& arguments) {
  Result<OpenedToChange> opened = open_to_change(arguments);
  if (!opened) return opened.problems();
  Result<const Bag*> bag = bag_named(opened->whole, arguments.words[0]);
  if (!bag) return bag.problems();
  Result<LabResult> result = result_from(arguments, *opened, **bag);
  if (!result) return result.problems();
  Result<LabResult> page = typed_page(arguments);
  if (!page) return page.problems();
  result->basis = page->basis;
  result->values = std::move(page->values);
  const Pasture& pasture = *find_pasture(opened->known, (*bag)->pasture);
  Result<FootedResult> footed = on_dry_matter(*result, energy_choice(pasture.forage));
  if (!footed) return footed.problems();
  Result<DietSeries> before = DietSeries::of(opened->known, pasture);
  if (!before) return before.problems();
  Result<Written> written = add_result(opened->whole, (*bag)->id, *result);
  if (!written) return written.problems();

  Result<Opened> reread = open_book(arguments, pastures_of_herds_on(pasture.id));
  if (!reread) return reread.problems();
  OutlookSettings settings;
  settings.as_of = opened->as_of;
  settings.until = opened->until;
  Result<std::vector<HerdChange>> changed =
      changes(opened->known, reread->known, (*bag)->pasture, settings);
  if (!changed) return changed.problems();
  Answer answer;
  answer.warnings = footed->warnings;
  answer.warnings.insert(answer.warnings.end(), written->warnings.begin(), written->warnings.end());
  if (looks_as_received(*result)) answer.warnings.push_back(doubt_of_basis(*result, (*bag)->id));
  if (arguments.has("json")) {
    const std::string next = first_step(reread->known, *changed, settings);
    answer.text = printed(answer_json((*bag)->id, *result, *footed, *written, *changed, next));
    return answer;
  }
  Result<DietSeries> after =
      DietSeries::of(reread->known, *find_pasture(reread->known, pasture.id));
  if (!after) return after.problems();
  answer.text = answer_text(**bag, *footed, *before, *written) + shift_text(*after, **bag) +
                left_behind_text(**bag, *result);
  if ((*bag)->method == Method::clipped) {
    answer.text += "clipped: kept and shown, not used as diet, since stock select better\n";
  }
  if (!changed->empty()) answer.text += "\n" + changes_text(*changed, settings.until);
  for (const HerdChange& change : *changed) {
    answer.text += "next: " + next_step(reread->known, change, settings) + "\n";
  }
  return answer;
}

}  // namespace

Command result_command() {
  return {
      .name = "result",
      .usage = "BAG [NAME=VALUE ... | -]",
      .purpose = "enters a lab result, says what it changes",
      .group = "the bag",
      .examples = {"pluckbook result 26-draws-08 dm=92.1 cp=10.4 adf=36.2 ndf=61 tdn=60.1",
                   "pluckbook result 26-draws-08                asks, on a terminal",
                   "pluckbook result 26-draws-08 - < page.txt   name=value lines from a pipe",
                   "pluckbook result 26-draws-08 dm=31 cp=3.1 adf=12 --basis as-received"},
      .options = {{"date", "DATE", "when it was received (as-of)"},
                  {"basis", "WORD", "dry-matter (default) or as-received"},
                  {"lab", "ID", "the laboratory (where it was sent)"},
                  {"supersedes", "DATE", "corrects the result received that day (its last)"},
                  {"tdn-by", "TEXT", "how the page says it calculates TDN"},
                  {"note", "TEXT", "kept with the result"}},
      .least_words = 1,
      .most_words = 64,
      .run = run_result,
  };
}

}  // namespace pluckbook::cli
