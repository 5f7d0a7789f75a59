#include "base/date.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <boost/date_time/gregorian/greg_calendar.hpp>
#include <boost/date_time/gregorian/greg_date.hpp>
#include <boost/date_time/gregorian/gregorian_types.hpp>
#include <cctype>
#include <ctime>

namespace pluckbook {
namespace {

constexpr std::array<std::string_view, 12> month_names = {"Jan", "Feb", "Mar", "Apr", "May", "Jun",
                                                          "Jul", "Aug", "Sep", "Oct", "Nov", "Dec"};

std::string_view month_name(Date date) {
  return month_names[static_cast<std::size_t>(date.month().as_number() - 1)];
}

int digits(std::string_view text) {
  int value = 0;
  for (char c : text) value = value * 10 + (c - '0');
  return value;
}

int days_in_month(int year, int month) {
  return boost::gregorian::gregorian_calendar::end_of_month_day(static_cast<unsigned short>(year),
                                                                static_cast<unsigned short>(month));
}

Date make(int year, int month, int day) {
  return Date(static_cast<unsigned short>(year), static_cast<unsigned short>(month),
              static_cast<unsigned short>(day));
}

}  // namespace

std::optional<Date> parse_date(std::string_view text) {
  if (text.size() != 10 || text[4] != '-' || text[7] != '-') return std::nullopt;
  for (std::size_t i = 0; i < text.size(); ++i) {
    if (i != 4 && i != 7 && (text[i] < '0' || text[i] > '9')) return std::nullopt;
  }
  const int year = digits(text.substr(0, 4));
  const int month = digits(text.substr(5, 2));
  const int day = digits(text.substr(8, 2));
  if (year < 1900 || year > 2200 || month < 1 || month > 12) return std::nullopt;
  if (day < 1 || day > days_in_month(year, month)) return std::nullopt;
  return make(year, month, day);
}

std::string to_iso(Date date) {
  return fmt::format("{:04}-{:02}-{:02}", static_cast<int>(date.year()),
                     static_cast<int>(date.month().as_number()), static_cast<int>(date.day()));
}

std::string in_words_without_year(Date date) {
  return fmt::format("{} {}", static_cast<int>(date.day()), month_name(date));
}

std::string in_words(Date date) {
  return fmt::format("{} {}", in_words_without_year(date), static_cast<int>(date.year()));
}

Date day_in_year(int year, int month, int day) {
  return make(year, month, std::min(day, days_in_month(year, month)));
}

Date today() {
  const std::time_t now = std::time(nullptr);
  std::tm local{};
  localtime_r(&now, &local);
  return make(local.tm_year + 1900, local.tm_mon + 1, local.tm_mday);
}

}  // namespace pluckbook
