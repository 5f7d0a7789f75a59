#include "numeric/random.h"

#include "numeric/interpolation.h"

namespace pluckbook {

std::uint64_t Random::bits() {
  state_ += 0x9E3779B97F4A7C15U;
  std::uint64_t z = state_;
  z = (z ^ (z >> 30U)) * 0xBF58476D1CE4E5B9U;
  z = (z ^ (z >> 27U)) * 0x94D049BB133111EBU;
  return z ^ (z >> 31U);
}

double Random::uniform() {
  return (static_cast<double>(bits() >> 12U) + 0.5) * 0x1p-52;
}

double Random::normal() {
  return normal_quantile(uniform());
}

}  // namespace pluckbook
