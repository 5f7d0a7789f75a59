// The operation itself: book.yaml, pastures, herds, grazing and condition.
#include <algorithm>
#include <cmath>
#include <numeric>

#include "book/read_parts.h"
#include "published/energetics.h"
#include "published/forage_classes.h"

namespace pluckbook {
namespace {

// ---- book.yaml ---------------------------------------------------------------------------------

Value<std::string> currency_value() {
  return {"currency", "USD",
          [](const Dialect&, std::string_view, std::string_view text) -> Result<std::string> {
            const bool letters =
                std::all_of(text.begin(), text.end(), [](char c) { return c >= 'A' && c <= 'Z'; });
            if (letters && text.size() == 3) return std::string(text);
            return input_problem(fmt::format("'{}' is not the code of a currency", shown(text)),
                                 "write its three letters: USD");
          }};
}

const Keys<Laboratory>& laboratory_keys() {
  static const Keys<Laboratory> table = {
      "laboratory",
      {
          key("id", Need::required, id_value("county"), &Laboratory::id),
          key("name", Need::optional, text_value("County Forage Lab"), &Laboratory::name),
          key("days", Need::optional, whole_value("10", 0, 120), &Laboratory::days),
      }};
  return table;
}

void read_laboratories(FileReading& reading, const YamlNode::Entry& entry, Book& book) {
  for (const YamlNode& node : items_of(reading, entry.value, "laboratory")) {
    Laboratory lab;
    read_record(reading, node, laboratory_keys(), lab);
    const bool used = std::any_of(book.labs.begin(), book.labs.end(), [&](const Laboratory& other) {
      return same_id(other.id, lab.id);
    });
    if (used) {
      reading.error(at_key(node, "id"), fmt::format("laboratory '{}' is there already", lab.id),
                    "give one of them another id");
    }
    if (lab.name.empty()) lab.name = lab.id;
    book.labs.push_back(std::move(lab));
  }
}

const Keys<Book>& book_keys() {
  static const Keys<Book> table = {
      "book",
      {
          {"pluckbook", Need::required, "whole number", "1",
           [](FileReading&, const YamlNode::Entry&, Book&) {}},  // looked at before all else
          key("name", Need::required, text_value("Cottonwood Fork"), &Book::name),
          key("units", Need::required,
              choice_value<UnitSystem>("us",
                                       {{"us", UnitSystem::us}, {"metric", UnitSystem::metric}}),
              &Book::units),
          key("currency", Need::required, currency_value(), &Book::currency),
          key("cover", Need::optional, share_value("80", 50, 99), &Book::cover),
          key("trip", Need::optional, money_value("18.00"), &Book::trip),
          {"labs",
           Need::optional,
           "list",
           "[{id: county, name: County Forage Lab, days: 10}]",
           read_laboratories,
           {},
           facts_of(laboratory_keys())},
      }};
  return table;
}

// ---- pastures.yaml -----------------------------------------------------------------------------

Value<std::string> forage_value() {
  return {"forage class", "northern mixed-grass",
          [](const Dialect&, std::string_view, std::string_view text) -> Result<std::string> {
            if (const ForageClass* known = find_forage_class(text)) return known->id;
            return input_problem(
                fmt::format("no published forage class is called '{}'", shown(text)),
                suggestion(text, forage_class_names()));
          }};
}

void read_green_up(FileReading& reading, const YamlNode::Entry& entry, Pasture& pasture) {
  const auto day = read_value(reading, entry.key.text, entry.value, month_day_value("04-20"));
  if (!day) return;
  pasture.green_up_month = day->first;
  pasture.green_up_day = day->second;
}

const Keys<Pasture>& pasture_keys() {
  static const Keys<Pasture> table = {
      "pasture",
      {
          key("id", Need::required, id_value("north-breaks"), &Pasture::id),
          key("name", Need::optional, text_value("North Breaks"), &Pasture::name),
          key("forage", Need::required, forage_value(), &Pasture::forage),
          key("area", Need::optional, hectares_value("640 acre"), &Pasture::area_ha),
          key("terrain", Need::optional,
              choice_value<Terrain>("rolling", {{"level", Terrain::level},
                                                {"rolling", Terrain::rolling},
                                                {"hilly", Terrain::hilly}}),
              &Pasture::terrain),
          {"green_up", Need::optional, "month and day", "04-20", read_green_up},
          key("trip", Need::optional, money_value("25.00"), &Pasture::trip),
          key("water_sulfate", Need::optional, ppm_value("600 ppm", 0, 20000),
              &Pasture::water_sulfate_ppm),
          key("water_solids", Need::optional, ppm_value("1800 ppm", 0, 60000),
              &Pasture::water_solids_ppm),
      }};
  return table;
}

// ---- herds.yaml --------------------------------------------------------------------------------

// Shares are written in percent and may be rounded; they are kept as fractions that add to one.
void read_shares(FileReading& reading, const YamlNode::Entry& entry, Calving& calving) {
  std::vector<double> shares;
  for (const YamlNode& node : items_of(reading, entry.value, "share")) {
    const auto share = read_value(reading, "share", node, percent_value("62", 0, 100));
    if (!share) return;
    shares.push_back(*share);
  }
  const double sum = std::accumulate(shares.begin(), shares.end(), 0.0);
  if (std::abs(sum - 100) > 1) {
    reading.error(entry.value, fmt::format("the shares born add to {} %, not 100 %", said(sum)),
                  "write the percent of calves born in each 21 days from the first");
    return;
  }
  for (double& share : shares) share /= sum;
  calving.share_by_21_days = std::move(shares);
}

const Keys<Calving>& calving_keys() {
  static const Keys<Calving> table = {
      "calving",
      {
          key("first", Need::required, date_value("2026-03-10"), &Calving::first),
          {"share_by_21_days", Need::optional, "list of percent", "[62, 24, 10, 4]", read_shares},
      }};
  return table;
}

void read_calving(FileReading& reading, const YamlNode::Entry& entry, Herd& herd) {
  Calving calving;
  if (entry.value.kind == YamlNode::Kind::map) {
    read_record(reading, entry.value, calving_keys(), calving);
  } else if (auto day = read_value(reading, "calving", entry.value, date_value("2026-03-10"))) {
    calving.first = *day;
  }
  if (!calving.first.is_special()) herd.calving = std::move(calving);
}

Value<std::string> breed_value() {
  std::vector<std::pair<std::string, std::string>> known;
  for (const Breed& breed : breeds()) known.emplace_back(breed.name, breed.name);
  return choice_value<std::string>("british", std::move(known));
}

const Keys<Herd>& herd_keys() {
  static const Keys<Herd> table = {
      "herd",
      {
          key("id", Need::required, id_value("spring-cows"), &Herd::id),
          key("name", Need::optional, text_value("Spring cows"), &Herd::name),
          key("head", Need::required, whole_value("140", 1, 1'000'000), &Herd::head),
          key("class", Need::required,
              choice_value<CowClass>("mature cow",
                                     {{"mature cow", CowClass::mature_cow},
                                      {"first-calf heifer", CowClass::first_calf_heifer},
                                      {"bred heifer", CowClass::bred_heifer},
                                      {"growing", CowClass::growing},
                                      {"bull", CowClass::bull}}),
              &Herd::cow_class),
          key("weight", Need::required, weight_value("1250 lb"), &Herd::weight),
          key("mature_weight", Need::optional, weight_value("1250 lb"), &Herd::mature_weight),
          key("peak_milk", Need::optional, milk_value("22 lb/day"), &Herd::peak_milk),
          key("gain", Need::optional, gain_value("1.5 lb/day"), &Herd::gain),
          key("condition", Need::optional, number_value("5.0", 1, 9), &Herd::condition),
          key("breed", Need::optional, breed_value(), &Herd::breed),
          {"calving",
           Need::optional,
           "calving",
           "2026-03-10",
           read_calving,
           {},
           facts_of(calving_keys())},
          key("weaning", Need::optional, date_value("2026-10-15"), &Herd::weaning),
          key("intake", Need::optional, percent_value("2.2", 0.5, 5), &Herd::intake_percent),
      }};
  return table;
}

void check_herd(FileReading& reading, const YamlNode& node, const Herd& herd) {
  const bool calves = herd.cow_class == CowClass::mature_cow ||
                      herd.cow_class == CowClass::first_calf_heifer ||
                      herd.cow_class == CowClass::bred_heifer;
  if (calves && node.find("calving") == nullptr) {
    reading.error(node, "this herd has no 'calving', which sets what the cows need",
                  "add  calving: 2026-03-10");
  }
  if (!herd.weaning || !herd.calving) return;
  if (*herd.weaning <= herd.calving->first) {
    reading.error(at_key(node, "weaning"),
                  fmt::format("weaning on {} is before calving on {}", to_iso(*herd.weaning),
                              to_iso(herd.calving->first)),
                  "give the weaning of the calves born from that day");
  }
}

// ---- grazing.yaml and condition.yaml -----------------------------------------------------------

const Keys<Move>& move_keys() {
  static const Keys<Move> table = {
      "move",
      {
          key("date", Need::required, date_value("2026-05-10"), &Move::date),
          key("herd", Need::required, id_value("spring-cows"), &Move::herd),
          key("pasture", Need::required, id_value("north-breaks"), &Move::pasture),
          key("bare", Need::optional, yes_no_value(), &Move::bare),
          key("planned", Need::optional, date_value("2026-04-20"), &Move::planned),
      }};
  return table;
}

void check_move(FileReading& reading, const YamlNode& node, const Move& move, const Book& book) {
  if (!move.herd.empty()) {
    note_unknown_id(reading, at_key(node, "herd"), book.herds, move.herd, "herd", "herds.yaml");
  }
  if (!move.pasture.empty()) {
    note_unknown_id(reading, at_key(node, "pasture"), book.pastures, move.pasture, "pasture",
                    "pastures.yaml");
  }
  if (move.planned && *move.planned > move.date) {
    reading.error(at_key(node, "planned"),
                  fmt::format("planned on {}, after the move on {}", to_iso(*move.planned),
                              to_iso(move.date)),
                  "give the day the move was decided, or leave 'planned' out");
  }
  for (const Move& other : book.moves) {
    if (other.herd != move.herd || other.date != move.date || move.date.is_special()) continue;
    reading.error(at_key(node, "date"),
                  fmt::format("{} moves twice on {}; first on line {}", move.herd,
                              to_iso(move.date), other.origin.line),
                  "keep the pasture it stood in that night");
  }
}

const Keys<ConditionScore>& score_keys() {
  static const Keys<ConditionScore> table = {
      "score",
      {
          key("date", Need::required, date_value("2026-08-20"), &ConditionScore::date),
          key("herd", Need::required, id_value("spring-cows"), &ConditionScore::herd),
          key("condition", Need::required, number_value("5.2", 1, 9), &ConditionScore::condition),
          key("weight", Need::optional, weight_value("1265 lb"), &ConditionScore::weight),
          key("head", Need::optional, whole_value("40", 1, 1'000'000), &ConditionScore::head),
      }};
  return table;
}

}  // namespace

std::vector<KeyFact> book_facts() {
  return facts_of(book_keys());
}
std::vector<KeyFact> pasture_facts() {
  return facts_of(pasture_keys());
}
std::vector<KeyFact> herd_facts() {
  return facts_of(herd_keys());
}
std::vector<KeyFact> move_facts() {
  return facts_of(move_keys());
}
std::vector<KeyFact> score_facts() {
  return facts_of(score_keys());
}

void read_operation(FileReading& reading, const YamlNode& root, Book& book) {
  read_record(reading, root, book_keys(), book);
}

void read_pastures(FileReading& reading, const YamlNode& root, Book& book) {
  UsedIds used;
  for (const YamlNode& node : items_of(reading, root, "pasture")) {
    Pasture pasture;
    pasture.origin = reading.origin(node);
    read_record(reading, node, pasture_keys(), pasture);
    note_used_id(reading, node, used, pasture, "pasture");
    if (pasture.name.empty()) pasture.name = pasture.id;
    book.pastures.push_back(std::move(pasture));
  }
}

void read_herds(FileReading& reading, const YamlNode& root, Book& book) {
  UsedIds used;
  for (const YamlNode& node : items_of(reading, root, "herd")) {
    Herd herd;
    herd.origin = reading.origin(node);
    const std::size_t before = reading.problem_count();
    read_record(reading, node, herd_keys(), herd);
    note_used_id(reading, node, used, herd, "herd");
    if (reading.problem_count() == before) check_herd(reading, node, herd);
    if (herd.name.empty()) herd.name = herd.id;
    book.herds.push_back(std::move(herd));
  }
}

void read_grazing(FileReading& reading, const YamlNode& root, Book& book) {
  for (const YamlNode& node : items_of(reading, root, "move")) {
    Move move;
    move.origin = reading.origin(node);
    read_record(reading, node, move_keys(), move);
    check_move(reading, node, move, book);
    book.moves.push_back(std::move(move));
  }
}

void read_condition(FileReading& reading, const YamlNode& root, Book& book) {
  for (const YamlNode& node : items_of(reading, root, "score")) {
    ConditionScore score;
    score.origin = reading.origin(node);
    read_record(reading, node, score_keys(), score);
    if (!score.herd.empty()) {
      note_unknown_id(reading, at_key(node, "herd"), book.herds, score.herd, "herd", "herds.yaml");
    }
    book.scores.push_back(std::move(score));
  }
}

}  // namespace pluckbook
