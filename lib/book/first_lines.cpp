#include "book/first_lines.h"

#include <fmt/format.h>

namespace pluckbook {

std::string pasture_line(std::string_view id) {
  return fmt::format("- {{id: {}, forage: northern mixed-grass, area: 640 acre, green_up: 04-20}}",
                     id);
}

std::string herd_line(std::string_view id) {
  return fmt::format(
      "- {{id: {}, head: 140, class: mature cow, weight: 1250 lb, peak_milk: 22 lb/day, "
      "calving: 2026-03-10}}",
      id);
}

std::string move_line(std::string_view date, std::string_view herd, std::string_view pasture) {
  return fmt::format("- {{date: {}, herd: {}, pasture: {}}}", date, herd, pasture);
}

std::string feed_line(std::string_view id, std::string_view currency) {
  return fmt::format(
      "- {{id: {}, like: range cube 20, quote: {{price: 355 {}/ton, date: 2026-08-01}}}}", id,
      currency);
}

std::string labs_line(std::string_view id) {
  return fmt::format("[{{id: {}, name: County Forage Lab, days: 10}}]", id);
}

std::string line_to_add(std::string_view kind, std::string_view id, std::string_view currency) {
  if (kind == "pasture") return "add to pastures.yaml:  " + pasture_line(id);
  if (kind == "herd") return "add to herds.yaml:  " + herd_line(id);
  if (kind == "laboratory") return "add to book.yaml:  labs: " + labs_line(id);
  if (kind != "feed") return "";
  return "add to feeds.yaml:  " + feed_line(id, currency) +
         "\nwhat a feed may be like:  pluckbook feeds";
}

}  // namespace pluckbook
