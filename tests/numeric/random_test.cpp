#include "numeric/random.h"

#include <gtest/gtest.h>

#include <cmath>

#include "numeric/interpolation.h"

namespace pluckbook {
namespace {

// First outputs of SplitMix64 for the seed 1234567: widely published test values (recalled).
TEST(Random, GivesThePublishedFirstOutputs) {
  Random bits(1234567);
  EXPECT_EQ(bits.bits(), 6457827717110365317U);
  EXPECT_EQ(bits.bits(), 3203168211198807973U);
  EXPECT_EQ(bits.bits(), 9817491932198370423U);
  Random normals(1234567);
  EXPECT_NEAR(normals.normal(), normal_quantile(6457827717110365317.0 * 0x1p-64), 1e-9);
}

TEST(Random, NormalsHaveMeanZeroAndVarianceOne) {
  SCOPED_TRACE("seed 99");
  Random random(99);
  constexpr int count = 100'000;
  double sum = 0, squares = 0;
  for (int i = 0; i < count; ++i) {
    const double x = random.normal();
    sum += x;
    squares += x * x;
  }
  EXPECT_NEAR(sum / count, 0, 5 / std::sqrt(count));
  EXPECT_NEAR(squares / count, 1, 5 * std::sqrt(2.0 / count));
}

}  // namespace
}  // namespace pluckbook
