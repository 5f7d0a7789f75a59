#include "forage/diet_refit.h"

#include <algorithm>
#include <limits>
#include <map>
#include <mutex>
#include <set>
#include <utility>

#include "numeric/likelihood.h"

namespace pluckbook {
namespace {

using Eigen::Index;
using Eigen::VectorXd;

constexpr std::size_t most_known = 16;          // a replay asks for one after the other
constexpr ClimbRules climb_rules = {60, 1e-3};  // a thousandth of a unit of log likelihood

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

/// The years a pasture has bags in: as its files are named, so that it does not matter which of
/// them were read; in a book that was not read from files, as its bags were plucked.
std::set<int> years_of(const Pasture& pasture, const std::set<int>& plucked) {
  const std::vector<int>& named = pasture.sampled_years;
  return named.empty() ? plucked : std::set<int>(named.begin(), named.end());
}

/// The same of all pastures, by their ids.
std::map<std::string, std::set<int>> years_of_pastures(const Book& book) {
  std::map<std::string, std::set<int>> years;
  for (const Bag& bag : book.bags) years[bag.pasture].insert(bag.plucked.year());
  for (const Pasture& pasture : book.pastures)
    years[pasture.id] = years_of(pasture, years[pasture.id]);
  return years;
}

/// The first of the newest years, those a refit hears.
int first_heard(const std::set<int>& years) {
  const auto most = static_cast<std::size_t>(refit_rules().most_years);
  if (years.empty()) return 0;
  return years.size() <= most ? *years.begin() : *std::prev(years.end(), refit_rules().most_years);
}

/// The bags of a pasture that may have something to say: at most so many, spread evenly.
std::vector<const Bag*> heard_of(const Book& book, const Pasture& pasture, std::size_t most) {
  std::vector<const Bag*> bags = bags_of(book, pasture);
  std::set<int> plucked;
  for (const Bag* bag : bags) plucked.insert(bag->plucked.year());
  const int first = first_heard(years_of(pasture, plucked));
  std::erase_if(bags, [&](const Bag* bag) {
    return bag->plucked.year() < first || bag->results.empty() || bag->spoiled ||
           bag->method == Method::clipped;
  });
  if (bags.size() <= most) return bags;
  std::vector<const Bag*> some;
  for (std::size_t i = 0; i < most; ++i) some.push_back(bags[i * bags.size() / most]);
  return some;
}

/// How many bags of each pasture are heard, so many pastures being heard.
std::size_t most_of_each(std::size_t pastures) {
  const RefitRules& rules = refit_rules();
  const int each = rules.most_bags / std::max(1, static_cast<int>(pastures));
  return static_cast<std::size_t>(std::min(rules.most_bags_of_a_pasture, each));
}

/// All that a refit hangs on.
struct Heard {
  const ForageClass* forage = nullptr;
  std::vector<Pasture> pastures;
  std::vector<Bag> bags;
  std::vector<Event> events;
  bool operator==(const Heard&) const = default;
};

}  // namespace

std::vector<const Pasture*> pastures_refitted_on(const Book& book, const ForageClass& forage) {
  std::map<std::string, std::set<int>> years = years_of_pastures(book);
  std::vector<const Pasture*> pastures;
  for (const Pasture& pasture : book.pastures)
    if (find_forage_class(pasture.forage) == &forage && !years[pasture.id].empty())
      pastures.push_back(&pasture);
  std::stable_sort(pastures.begin(), pastures.end(), [&](const Pasture* a, const Pasture* b) {
    return years[a->id].size() > years[b->id].size();
  });
  const auto most = static_cast<std::size_t>(refit_rules().most_pastures);
  if (pastures.size() > most) pastures.resize(most);
  return pastures;
}

std::map<std::string, int> pastures_that_tell_of(const Book& book,
                                                 const std::vector<const Pasture*>& asked) {
  std::set<const ForageClass*> classes;
  for (const Pasture* pasture : asked) classes.insert(find_forage_class(pasture->forage));
  classes.erase(nullptr);
  std::map<std::string, std::set<int>> years = years_of_pastures(book);
  std::map<std::string, int> first_years;
  for (const ForageClass* forage : classes)
    for (const Pasture* pasture : pastures_refitted_on(book, *forage))
      first_years[pasture->id] = first_heard(years[pasture->id]);
  for (const Pasture* pasture : asked) first_years[pasture->id] = 0;
  return first_years;
}

DietModel model_of(const Book& book, const ForageClass& forage) {
  const std::vector<const Pasture*> pastures = pastures_refitted_on(book, forage);
  Heard heard;
  heard.forage = &forage;
  for (const Pasture* pasture : pastures) {
    heard.pastures.push_back(*pasture);
    for (const Bag* bag : heard_of(book, *pasture, most_of_each(pastures.size())))
      heard.bags.push_back(*bag);
  }
  heard.events = book.events;
  // One command asks for the same refit many times.
  static std::mutex guard;
  static std::vector<std::pair<Heard, DietModel>> known;
  const std::lock_guard<std::mutex> held(guard);
  const auto found = std::find_if(known.begin(), known.end(),
                                  [&](const auto& entry) { return entry.first == heard; });
  if (found != known.end()) return found->second;
  if (known.size() == most_known) known.erase(known.begin());
  const DietRefit refit(book, pastures, forage);
  const DietModel model = refit.enough() ? refit.best() : published_model(forage);
  return known.emplace_back(std::move(heard), model).second;
}

DietRefit::DietRefit(const Book& book, const std::vector<const Pasture*>& pastures,
                     const ForageClass& forage)
    : book_(&book), forage_(&forage) {
  std::set<int> seasons;
  for (const Pasture* pasture : pastures) {
    std::vector<BagReading> bags =
        read_bags(heard_of(book, *pasture, most_of_each(pastures.size())), *pasture);
    std::erase_if(bags, [](const BagReading& bag) { return !bag.used; });
    counts_.bags += static_cast<int>(bags.size());
    for (const BagReading& bag : bags)
      seasons.insert(season_start(green_up_of(*pasture, forage), bag.bag->plucked).year());
    pastures_.push_back({pasture, std::move(bags)});
  }
  counts_.seasons = static_cast<int>(seasons.size());
}

bool DietRefit::enough() const {
  return counts_.bags >= refit_rules().least_bags && counts_.seasons >= refit_rules().least_seasons;
}

VectorXd DietRefit::published() const {
  return parameters_of(published_model(*forage_));
}

/// Of one pasture's bags; adds the gradient to `gradient`.
double DietRefit::likelihood(const PastureBags& one, const DietModel& model,
                             VectorXd& gradient) const {
  const DietPrior prior(*book_, *one.pasture, *forage_, model);
  const std::vector<Observation> seen = observations_of(one.bags, prior);
  const Result<Likelihood> told = likelihood_of(model.kernel, seen);
  if (!told) return -std::numeric_limits<double>::infinity();
  const LikelihoodGradient& slope = told->gradient;
  gradient.head<kernel_parameters>() += slope.kernel;
  for (std::size_t i = 0; i < seen.size(); ++i) {
    const auto at = static_cast<Index>(i);
    const Expected expected = prior.on(nutrient_of(seen[i].when), date_of(seen[i].when));
    const int series = seen[i].when.series;
    gradient(level_at + series) += slope.prior_mean(at);
    gradient(depth_at + series) +=
        slope.prior_mean(at) * expected.swing + slope.onset_slope(at) * expected.slope;
  }
  return told->log;
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
  // In steps of what was published as spread, all parameters weigh alike.
  const VectorXd centre = published(), spread = prior_sd();
  const auto parameters = [&](const VectorXd& steps) {
    return VectorXd(centre + steps.cwiseProduct(spread));
  };
  const auto slope = [&](const VectorXd& steps) {
    Slope there = at(parameters(steps));
    there.gradient = there.gradient.cwiseProduct(spread);
    return there;
  };
  const VectorXd none = VectorXd::Zero(centre.size());
  DietModel model = model_at(parameters(climb(slope, none, climb_rules).at));
  model.refit = counts_;
  return model;
}

}  // namespace pluckbook
