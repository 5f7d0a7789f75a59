#include "advice/price.h"

#include <fmt/format.h>

#include <array>

#include "base/text.h"
#include "book/read.h"
#include "book/values.h"
#include "cli/command.h"
#include "cli/in_form.h"
#include "cli/need_animal.h"
#include "cli/open_book.h"

namespace pluckbook::cli {
namespace {

template <class Choice>
Result<Choice> chosen(const Arguments& arguments, const char* option,
                      std::array<std::pair<const char*, Choice>, 2> words) {
  const std::string word = arguments.get(option, words[0].first);
  for (const auto& [known, choice] : words)
    if (word == known) return choice;
  return usage_problem(fmt::format("--{} cannot be '{}'", option, shown(word)),
                       fmt::format("write {} or {}", words[0].first, words[1].first));
}

Result<PriceSettings> settings_of(const Arguments& arguments, Date day, double usual_cover) {
  Result<double> cover = arguments.number("cover", usual_cover * 100);
  if (!cover) return cover.problems();
  if (*cover < 50 || *cover > 99) {
    return arguments.beyond("cover", "50 to 99 %",
                            "50 buys for the middle of what may happen, 80 or 90 for most of it");
  }
  const auto energy = chosen<EnergyMeasure>(
      arguments, "energy", {{{"tdn", EnergyMeasure::tdn}, {"nem", EnergyMeasure::nem}}});
  if (!energy) return energy.problems();
  const auto protein = chosen<ProteinMeasure>(
      arguments, "protein",
      {{{"cp", ProteinMeasure::crude}, {"mp", ProteinMeasure::metabolizable}}});
  if (!protein) return protein.problems();
  return PriceSettings{day, *cover / 100, arguments.has("intake-recovers"), *energy, *protein};
}

Answer answer_of(const Arguments& arguments, const PriceAnswer& price, const Reader& reader) {
  Answer answer;
  answer.text = in_form_asked(arguments, price, reader);
  const bool good =
      price.mix.status == MixStatus::optimal || price.mix.status == MixStatus::none_needed;
  answer.exit_status = good ? 0 : 1;
  return answer;
}

// ---- without a book ----------------------------------------------------------------------------

/// The laboratory's figures on the command line, put on one footing as a result in a book is.
Result<FootedResult> forage_from(const Arguments& arguments) {
  if (!arguments.has("cp") || !(arguments.has("tdn") || arguments.has("adf"))) {
    return usage_problem("the diet's --cp is wanted, and its --tdn (or --adf)",
                         "for example: --cp 5.5 --tdn 51, percent of dry matter");
  }
  LabResult result;
  for (const char* analyte : {"cp", "tdn", "adf", "ndf", "ca", "p"}) {
    if (!arguments.has(analyte)) continue;
    Result<double> percent = arguments.number(analyte, 0);
    if (!percent) return percent.problems();
    result.values[analyte] = *percent;
  }
  return on_dry_matter(result);
}

/// An amount a day in the reader's unit, or with its own: "3.6", "3.6 lb/day"; none where not
/// given.
Result<std::optional<double>> daily(const Arguments& arguments, const char* option,
                                    UnitSystem units) {
  if (!arguments.has(option)) return std::optional<double>();
  const auto amount = as_fed_value("3.6 lb/day")
                          .parse({units, ""}, fmt::format("--{}", option), arguments.get(option));
  if (!amount) return amount.problems();
  return std::optional(amount->value());
}

template <class Kind>
std::optional<Kind> as(const std::optional<double>& kilograms) {
  return kilograms ? std::optional(Kind(*kilograms)) : std::nullopt;
}

Result<LoneDay> lone_day(const Arguments& arguments, UnitSystem units) {
  LoneDay lone;
  Result<AskedAnimal> asked = animal_asked(arguments, {units});
  if (!asked) return asked.problems();
  if (asked->points.size() != 1) {
    return usage_problem("a price is of one day of her year, or of one gain",
                         "say which: --month N, or --gain AMOUNT of growing cattle");
  }
  lone.animal = asked->points.front().animal;
  Result<FootedResult> forage = forage_from(arguments);
  if (!forage) return forage.problems();
  lone.forage = std::move(*forage);
  Result<double> head = arguments.number("head", 1), trip = arguments.number("trip", 0);
  if (!head || !trip) return (head ? trip : head).problems();
  if (*head < 1 || *head > 100000)
    return arguments.beyond("head", "1 to 100000", "leave it out for one cow");
  if (*trip < 0) return arguments.beyond("trip", "0 and more", "what one feeding trip costs");
  lone.head = static_cast<int>(*head);
  lone.trip = *trip;
  const auto intake = daily(arguments, "intake", units);
  const auto cp = daily(arguments, "need-cp", units), tdn = daily(arguments, "need-tdn", units);
  for (const auto* amount : {&intake, &cp, &tdn})
    if (!*amount) return amount->problems();
  lone.intake = as<KgDmPerDay>(*intake);
  lone.need_crude_protein = as<KgPerDay>(*cp);
  lone.need_tdn = as<KgPerDay>(*tdn);
  return lone;
}

/// True where the animal or the diet is told on the command line.
bool asks_without_book(const Arguments& arguments) {
  return arguments.words.empty() && (arguments.has("feeds") || arguments.has("cp") ||
                                     arguments.has("weight") || arguments.has("class"));
}

Result<Answer> price_without_book(const Arguments& arguments) {
  if (!arguments.has("feeds")) {
    return usage_problem("a price without a herd of the book wants --feeds FILE",
                         "a file like the book's feeds.yaml; or name a herd: pluckbook price HERD");
  }
  Result<UnitSystem> units = units_of(arguments, UnitSystem::us);
  if (!units) return units.problems();
  Result<Date> day = as_of_day(arguments);
  if (!day) return day.problems();
  Result<PriceSettings> settings = settings_of(arguments, *day, 0.5);
  if (!settings) return settings.problems();
  Result<LoneDay> lone = lone_day(arguments, *units);
  if (!lone) return lone.problems();
  const Reader reader{*units, arguments.get("currency", "USD")};
  Result<Book> feeds = read_feeds_file(arguments.get("feeds"), *units, reader.currency);
  if (!feeds) return feeds.problems();
  const Herd herd = herd_of(*lone);
  Result<PriceAnswer> price = price_alone(*lone, herd, *feeds, *settings);
  if (!price) return price.problems();
  Answer answer = answer_of(arguments, *price, reader);
  answer.warnings = lone->forage.warnings;
  return answer;
}

Result<Answer> run_price(const Arguments& arguments) {
  if (asks_without_book(arguments)) return price_without_book(arguments);
  Result<Opened> opened = open_book(arguments, pastures_of_herds(arguments));
  if (!opened) return opened.problems();
  Result<const Herd*> herd = herd_asked(opened->known, arguments);
  if (!herd) return herd.problems();
  Result<PriceSettings> settings = settings_of(arguments, opened->as_of, opened->known.cover);
  if (!settings) return settings.problems();
  Result<PriceAnswer> price = price_for(opened->known, **herd, *settings);
  if (!price) return price.problems();
  return answer_of(arguments, *price, opened->reader);
}

}  // namespace

Command price_command() {
  return {
      .name = "price",
      .usage = "[HERD]",
      .purpose = "least-cost supplement and every option",
      .group = "the season",
      .examples = {"pluckbook price spring-cows --cover 90",
                   "pluckbook price --cp 5.5 --tdn 51 --weight 1200 --month 8 --feeds feeds.yaml"},
      .options = {{"cover", "PERCENT", "share of outcomes to cover (the book's)"},
                  {"intake-recovers", "", "price on what she eats once protein is met"},
                  {"energy", "WORD", "tdn (default) or nem"},
                  {"protein", "WORD", "cp (default), or mp: metabolizable and degradable"},
                  {"feeds", "FILE", "without a book: a file like the book's feeds.yaml"},
                  {"cp", "PERCENT", "without a book: the diet, % of dry matter"},
                  {"tdn", "PERCENT", "its TDN (or --adf, to predict it)"},
                  {"adf", "PERCENT", "its ADF"},
                  {"ndf", "PERCENT", "its NDF, which limits intake"},
                  {"ca", "PERCENT", "its calcium"},
                  {"p", "PERCENT", "its phosphorus"},
                  {"weight", "WEIGHT", "the animal's mature weight, lb (or '545 kg')"},
                  {"month", "N", "months since calving, milking to 6; heifers: bred"},
                  {"milk", "AMOUNT", "peak milk a day, lb (20)"},
                  {"class", "WORD", "mature-cow (default), as with need"},
                  {"mature-weight", "WEIGHT", "as with need"},
                  {"days-pregnant", "N", "as with need"},
                  {"gain", "AMOUNT", "as with need"},
                  {"head", "N", "how many like her (1)"},
                  {"intake", "AMOUNT", "dry matter she eats a day, if known, lb; 0: none"},
                  {"need-cp", "AMOUNT", "her protein need a day, lb (the table's)"},
                  {"need-tdn", "AMOUNT", "her TDN need a day, lb (the table's)"},
                  {"trip", "MONEY", "what one feeding trip costs (0)"},
                  {"currency", "CODE", "money of the quotes (USD)"}},
      .most_words = 1,
      .uses_book = false,
      .run = run_price,
      .rows = "options",
  };
}

}  // namespace pluckbook::cli
