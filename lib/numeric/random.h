// random.h - normal numbers from our own generator, so that a seed gives the same digits on every
// compiler and machine.
#pragma once

#include <cstdint>

namespace pluckbook {

/// SplitMix64. Source: Steele, Lea and Flood 2014, Fast splittable pseudorandom number generators,
/// OOPSLA (constants recalled; the test holds the first outputs).
class Random {
 public:
  explicit Random(std::uint64_t seed) : state_(seed) {}

  /// 64 random bits; good as the seed of another stream.
  std::uint64_t bits();
  /// Strictly inside (0, 1): the middles of 2^52 equal parts.
  double uniform();
  /// Standard normal, by the inverse of its distribution.
  double normal();

 private:
  std::uint64_t state_;
};

}  // namespace pluckbook
