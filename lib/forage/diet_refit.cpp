#include "forage/diet_refit.h"

#include <limits>
#include <map>
#include <set>
#include <utility>

#include "numeric/gaussian_process.h"

namespace pluckbook {
namespace {

using Eigen::Index;
using Eigen::VectorXd;

constexpr int most_steps = 60;

// The parameters: the kernel's free ones, then level and depth of CP and of TDN.
constexpr Index level_at = kernel_parameters, depth_at = kernel_parameters + 2;
constexpr Index onset_at = kernel_parameters - 1;

VectorXd parameters_of(const DietModel& model) {
  VectorXd all(kernel_parameters + 4);
  all << free_parameters(model.kernel), model.level[0], model.level[1], model.depth[0],
      model.depth[1];
  return all;
}

DietModel model_at(const VectorXd& all) {
  DietModel model;
  model.kernel = kernel_of(all.head<kernel_parameters>());
  model.level = {all(level_at), all(level_at + 1)};
  model.depth = {all(depth_at), all(depth_at + 1)};
  return model;
}

/// How firmly each parameter is held to what was published.
VectorXd prior_sd() {
  const RefitRules& rules = refit_rules();
  VectorXd sd(kernel_parameters + 4);
  sd.head<8>().setConstant(rules.log_sd);
  sd.segment<4>(8) << rules.log_length, rules.log_length, rules.atanh_correlation, 1;
  sd.tail<4>() << rules.level[0], rules.level[1], rules.depth, rules.depth;
  return sd;
}

/// All that the likelihood of some bags hangs on.
std::vector<double> told_by(const std::vector<Observation>& seen) {
  std::vector<double> told;
  for (const Observation& one : seen) {
    told.insert(told.end(), {one.when.day, one.when.onset_slope, one.when.event_sd, one.value,
                             one.prior_mean, one.noise_variance});
    for (const SharedError& error : one.shared)
      told.insert(told.end(), {static_cast<double>(error.source), error.sd});
  }
  return told;
}

std::vector<BagReading> newest_used(std::vector<BagReading> bags) {
  std::erase_if(bags, [](const BagReading& bag) { return !bag.used; });
  const auto most = static_cast<std::size_t>(refit_rules().most_bags);
  if (bags.size() > most) bags.erase(bags.begin(), bags.end() - static_cast<std::ptrdiff_t>(most));
  return bags;
}

}  // namespace

DietModel model_of(const Book& book, const ForageClass& forage) {
  std::vector<const Pasture*> pastures;
  for (const Pasture& pasture : book.pastures)
    if (find_forage_class(pasture.forage) == &forage) pastures.push_back(&pasture);
  const DietRefit refit(book, pastures, forage);
  if (!refit.enough()) return published_model(forage);
  // One command asks for the same refit many times; what the bags told decides it alone.
  static std::map<std::vector<double>, DietModel> known;
  const std::vector<double> told = refit.told();
  const auto found = known.find(told);
  return found != known.end() ? found->second : known.emplace(told, refit.best()).first->second;
}

DietRefit::DietRefit(const Book& book, const std::vector<const Pasture*>& pastures,
                     const ForageClass& forage)
    : book_(&book), forage_(&forage) {
  std::set<int> seasons;
  for (const Pasture* pasture : pastures) {
    pastures_.push_back({pasture, newest_used(read_bags(book, *pasture))});
    counts_.bags += static_cast<int>(pastures_.back().bags.size());
    for (const BagReading& bag : pastures_.back().bags)
      seasons.insert(season_start(green_up_of(*pasture, forage), bag.bag->plucked).year());
  }
  counts_.seasons = static_cast<int>(seasons.size());
}

bool DietRefit::enough() const {
  return counts_.bags >= refit_rules().least_bags && counts_.seasons >= refit_rules().least_seasons;
}

std::vector<double> DietRefit::told() const {
  std::vector<double> all;
  for (const PastureBags& one : pastures_) {
    const DietPrior prior(*book_, *one.pasture, *forage_, published_model(*forage_));
    const std::vector<double> told = told_by(observations_of(one.bags, prior));
    all.push_back(static_cast<double>(told.size()));
    all.insert(all.end(), told.begin(), told.end());
  }
  return all;
}

VectorXd DietRefit::published() const {
  return parameters_of(published_model(*forage_));
}

/// Of one pasture's bags; adds the gradient to `gradient`.
double DietRefit::likelihood(const PastureBags& one, const DietModel& model,
                             VectorXd& gradient) const {
  const DietPrior prior(*book_, *one.pasture, *forage_, model);
  const std::vector<Observation> seen = observations_of(one.bags, prior);
  const auto process = GaussianProcess::condition(model.kernel, seen);
  if (!process) return -std::numeric_limits<double>::infinity();
  const auto slope = process->log_likelihood_gradient();
  gradient.head<kernel_parameters>() += slope.kernel;
  for (std::size_t i = 0; i < seen.size(); ++i) {
    const auto at = static_cast<Index>(i);
    const Expected expected = prior.on(nutrient_of(seen[i].when), date_of(seen[i].when));
    const int series = seen[i].when.series;
    gradient(level_at + series) += slope.prior_mean(at);
    gradient(depth_at + series) +=
        slope.prior_mean(at) * expected.swing + slope.onset_slope(at) * expected.slope;
  }
  return process->log_likelihood();
}

Slope DietRefit::at(const VectorXd& parameters) const {
  const VectorXd off = (parameters - published()).cwiseQuotient(prior_sd());
  Slope slope{-0.5 * off.squaredNorm(), -off.cwiseQuotient(prior_sd())};
  for (const PastureBags& one : pastures_)
    slope.value += likelihood(one, model_at(parameters), slope.gradient);
  slope.gradient(onset_at) = 0;
  return slope;
}

DietModel DietRefit::best() const {
  const auto slope = [this](const VectorXd& parameters) { return at(parameters); };
  DietModel model = model_at(climb(slope, published(), most_steps).at);
  model.refit = counts_;
  return model;
}

}  // namespace pluckbook
