// herd.h - the herd the tests of lib/cow share: 140 spring cows of an invented ranch.
#pragma once

#include "cow/need.h"

namespace pluckbook::test {

inline Date day(const char* iso) {
  return *parse_date(iso);
}

inline Herd spring_cows() {
  Herd herd;
  herd.id = "spring-cows";
  herd.head = 140;
  herd.weight = from_lb<KgBody>(1200);
  herd.peak_milk = from_lb<KgPerDay>(20);
  herd.calving = Calving{day("2026-03-10"), {1.0}};
  return herd;
}

}  // namespace pluckbook::test
