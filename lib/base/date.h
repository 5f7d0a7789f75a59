// date.h - calendar days. Dates are read and written 2026-07-06 and in no other way.
#pragma once

#include <boost/date_time/gregorian/gregorian_types.hpp>
#include <optional>
#include <string>
#include <string_view>

namespace pluckbook {

using Date = boost::gregorian::date;
using Days = boost::gregorian::days;

/// "2026-07-06" -> that day; nothing for any other text, an impossible day or a year outside
/// 1900 to 2200.
std::optional<Date> parse_date(std::string_view text);

/// 2026-07-06
std::string to_iso(Date date);

/// "6 Jul 2026": how dates are shown in sentences.
std::string in_words(Date date);

/// "6 Jul": the same where the year is plain from the text around it.
std::string in_words_without_year(Date date);

/// b - a in days.
inline long days_between(Date a, Date b) {
  return (b - a).days();
}

/// Month and day in a year; 29 February falls back to the 28th outside leap years.
Date day_in_year(int year, int month, int day);

/// Today by the machine's clock and time zone. Asked once, at the door of the program.
Date today();

}  // namespace pluckbook
