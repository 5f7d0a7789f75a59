// chain.h - the published chain ME -> NEm and NEg written out for the tests: NRC 2000 after Garrett
// 1980, recalled.
#pragma once

namespace pluckbook::test {

inline constexpr double lb = 0.45359237;

inline double cubic(double m, double a, double b, double c, double d) {
  return a * m + b * m * m + c * m * m * m + d;
}
inline double nem_of_me(double me) {
  return cubic(me, 1.37, -0.138, 0.0105, -1.12);
}
inline double neg_of_me(double me) {
  return cubic(me, 1.42, -0.174, 0.0122, -1.65);
}

}  // namespace pluckbook::test
