// likelihood.h - what a fit asks at each step: how likely the observations are, and how that
// answers to the kernel. By the dense route where observations are few, by the linear-time one
// where many.
#pragma once

#include <vector>

#include "base/problem.h"
#include "numeric/kernel.h"

namespace pluckbook {

struct Likelihood {
  double log = 0;
  LikelihoodGradient gradient;
};

/// Both routes give the same number to rounding.
/// Fails: as GaussianProcess::condition and MarkovProcess::condition do.
Result<Likelihood> likelihood_of(const Kernel& kernel, const std::vector<Observation>& seen);

}  // namespace pluckbook
