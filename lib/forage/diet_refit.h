// diet_refit.h - what a book's own bags say of how its pastures stray from the class curve.
#pragma once

#include <Eigen/Core>
#include <vector>

#include "book/records.h"
#include "forage/bag_reading.h"
#include "forage/diet_prior.h"
#include "numeric/maximum.h"

namespace pluckbook {

/// The published model of a class, or the one refitted on all pastures of that class in the book
/// when it holds enough bags of enough seasons (reference/seasonal_curves.yaml, refit).
DietModel model_of(const Book& book, const ForageClass& forage);

/// The search for the model that makes some pastures' bags, and what was published, most likely.
/// Moves the variances, the lengths, the correlation, and a level and a depth of the class curve;
/// the green-up's sd stays, since a few years say little of it.
class DietRefit {
 public:
  /// Requires: `book`, `pastures` and `forage` outlive the refit; the pastures are of that forage.
  DietRefit(const Book& book, const std::vector<const Pasture*>& pastures,
            const ForageClass& forage);

  /// Used bags, and the seasons they are of.
  const Refit& counts() const { return counts_; }
  bool enough() const;

  /// What the bags say, as numbers: equal where the refit is the same.
  std::vector<double> told() const;

  /// Log of likelihood and prior, and its gradient, at some parameters: the kernel's free ones, two
  /// levels, two depths.
  Slope at(const Eigen::VectorXd& parameters) const;
  Eigen::VectorXd published() const;
  DietModel best() const;

 private:
  struct PastureBags {
    const Pasture* pasture;
    std::vector<BagReading> bags;  // the newest used ones
  };
  double likelihood(const PastureBags& one, const DietModel& model,
                    Eigen::VectorXd& gradient) const;

  const Book* book_;
  const ForageClass* forage_;
  std::vector<PastureBags> pastures_;
  Refit counts_;
};

}  // namespace pluckbook
