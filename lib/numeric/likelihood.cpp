#include "numeric/likelihood.h"

#include "numeric/gaussian_process.h"
#include "numeric/markov_process.h"

namespace pluckbook {
namespace {

/// Where the two routes take as long (gp_bench, a_step_of_a_fit).
constexpr std::size_t few = 90;

template <class Process>
Result<Likelihood> by_route(const Kernel& kernel, const std::vector<Observation>& seen) {
  const Result<Process> process = Process::condition(kernel, seen);
  if (!process) return process.problems();
  return Likelihood{process->log_likelihood(), process->log_likelihood_gradient()};
}

}  // namespace

Result<Likelihood> likelihood_of(const Kernel& kernel, const std::vector<Observation>& seen) {
  return seen.size() <= few ? by_route<GaussianProcess>(kernel, seen)
                            : by_route<MarkovProcess>(kernel, seen);
}

}  // namespace pluckbook
