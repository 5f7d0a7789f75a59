// bisection.h - where a rising function passes zero.
#pragma once

namespace pluckbook {

/// The last point of [low, high], to the last bit of its scale, at which `rising` is still below
/// zero; `low` when it is nowhere below. T: a number or a strong unit.
template <class T, class Rising>
T zero_of(const Rising& rising, T low, T high) {
  constexpr int halvings = 60;
  for (int i = 0; i < halvings; ++i) {
    const T middle = (low + high) / 2;
    (rising(middle) < 0 ? low : high) = middle;
  }
  return low;
}

}  // namespace pluckbook
