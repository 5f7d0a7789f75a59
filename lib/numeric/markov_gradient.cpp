// How the likelihood answers to the kernel, at the same cost as the likelihood: half the trace of
// (w w' - C^-1) dC, w = C^-1 residuals (Rasmussen and Williams 2006, equation 5.9), with C = X X'
// of the features and the wiggle's states, so that dC = dX X' + X dX'.
#include <Eigen/Cholesky>

#include "numeric/markov_process.h"

namespace pluckbook {
namespace {

using Eigen::Index;
using Eigen::MatrixXd;
using Eigen::VectorXd;

}  // namespace

// Woodbury's identity: with M the wiggle and the errors, C^-1 = M^-1 - halves' halves, where
// halves = L^-1 features' M^-1 and L L' is the precision of the features' numbers. So the
// gradient asks the smoothed states and `halves`, never a matrix of all pairs.
LikelihoodGradient MarkovProcess::log_likelihood_gradient() const {
  const Index p = layout_.count(), n = seen_.rows();
  if (n == 0) return {KernelVector::Zero(), VectorXd(0), VectorXd(0)};
  const Eigen::Matrix<double, 2, 4> rows = wiggle_rows(kernel_);
  const MatrixXd halves =
      factor_.triangularView<Eigen::Lower>().solve(freed_.leftCols(p).transpose());
  const MatrixXd features =
      factor_.triangularView<Eigen::Lower>().transpose().solve(halves).transpose();  // C^-1 them
  const VectorXd w = freed_.col(p) - freed_.leftCols(p) * weights_;

  LikelihoodGradient sorted{KernelVector::Zero(), w, VectorXd::Zero(n)};
  layout_.add_gradient(seen_.leftCols(p), w * weights_.transpose() - features, when_, sorted);
  KernelVector& sum = sorted.kernel;
  std::vector<WiggleStates> state_pulls;
  for (std::size_t d = 0; d < days_.size(); ++d) {
    const SeenDay& day = days_[d];
    const WiggleDay& wiggle = wiggle_.days[d];
    const auto features_today = features.middleRows(day.first, day.count);
    const Eigen::Vector4d state = wiggle.mean.col(p) - wiggle.mean.leftCols(p) * weights_;
    // By how each value of the day hangs on the day's state.
    const Eigen::Matrix<double, Eigen::Dynamic, 4> by_rows =
        w.segment(day.first, day.count) * state.transpose() +
        features_today * wiggle.mean.leftCols(p).transpose() -
        day.weights.transpose() * (rows * wiggle.covariance);
    WiggleStates pull = WiggleStates::Zero(4, p + 1);
    for (Index i = 0; i < day.count; ++i) {
      const Index at = day.first + i;
      const int series = when_[static_cast<std::size_t>(at)].series;
      const Eigen::RowVector2d own(rows(series, 0), rows(series, 2));
      const Eigen::RowVector2d by_own(by_rows(i, 0), by_rows(i, 2));
      sum(4 * series + 3) += by_own.dot(own);
      sum(10) += by_own.dot(mixed_by_correlation(kernel_, series, own));
      pull.col(p) += rows.row(series).transpose() * w(at);
      pull.leftCols(p) += rows.row(series).transpose() * halves.col(at).transpose();
    }
    state_pulls.push_back(std::move(pull));
  }
  sum(9) += wiggle_length_gradient(kernel_, evidence({}), state_pulls);

  LikelihoodGradient gradient{sum, VectorXd(n), VectorXd(n)};
  for (Index i = 0; i < n; ++i) {
    gradient.prior_mean(given_[static_cast<std::size_t>(i)]) = w(i);
    gradient.onset_slope(given_[static_cast<std::size_t>(i)]) = sorted.onset_slope(i);
  }
  return gradient;
}

}  // namespace pluckbook
