// diet_refit.h - what a book's own bags say of how its pastures stray from the class curve.
#pragma once

#include <Eigen/Core>
#include <map>
#include <string>
#include <vector>

#include "book/records.h"
#include "forage/bag_reading.h"
#include "forage/diet_prior.h"
#include "numeric/maximum.h"

namespace pluckbook {

/// The pastures of a class that a refit listens to: those with bags in most years, in the order of
/// the book, up to a number (reference/seasonal_curves.yaml, refit). The same whether or not the
/// files of other pastures were read.
std::vector<const Pasture*> pastures_refitted_on(const Book& book, const ForageClass& forage);

/// Whose bags have a say in the series of some pastures, and from which year on: their own from the
/// first, and what a refit hears.
std::map<std::string, int> pastures_that_tell_of(const Book& book,
                                                 const std::vector<const Pasture*>& asked);

/// The published model of a class, or the one refitted on the book's own bags when it holds enough
/// of them, of enough seasons.
DietModel model_of(const Book& book, const ForageClass& forage);

/// The search for the model that makes some pastures' bags, and what was published, most likely.
/// Moves the variances, the lengths, the correlation, and a level and a depth of the class curve;
/// the green-up's sd stays, since a few years say little of it.
class DietRefit {
 public:
  /// Requires: `book`, `pastures` and `forage` outlive the refit; the pastures are of that forage.
  DietRefit(const Book& book, const std::vector<const Pasture*>& pastures,
            const ForageClass& forage);

  /// The bags that are heard, and the seasons they are of.
  const Refit& counts() const { return counts_; }
  bool enough() const;

  /// Log of likelihood and prior, and its gradient, at some parameters: the kernel's free ones, two
  /// levels, two depths.
  Slope at(const Eigen::VectorXd& parameters) const;
  Eigen::VectorXd published() const;
  DietModel best() const;

 private:
  struct PastureBags {
    const Pasture* pasture;
    std::vector<BagReading> bags;  // used ones
  };
  double likelihood(const PastureBags& one, const DietModel& model,
                    Eigen::VectorXd& gradient) const;

  const Book* book_;
  const ForageClass* forage_;
  std::vector<PastureBags> pastures_;
  Refit counts_;
};

}  // namespace pluckbook
