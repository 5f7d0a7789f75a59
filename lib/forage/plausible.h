// plausible.h - what the figures of a page say of the page itself: what cannot be, what is unusual,
// and what they signal of soil, heat and nitrate. Values are judged on dry matter.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "base/problem.h"
#include "book/records.h"
#include "forage/energy.h"

namespace pluckbook {

struct Findings {
  std::optional<Place> place;  // of the page, for its Problems
  Problems refused, warned;
  std::vector<std::string> notes, cautions;

  void refuse(std::string what, std::string remedy);
  void warn(std::string what, std::string remedy);
};

/// Holds each figure against its limits, the parts against their wholes, and the figures against
/// each other. Source: the limits are judgement, set outside what was seen (book/lab_values.h);
/// those of a rule of its own stand beside it.
void judge_figures(const Figures& figures, const EnergyChoice& choice, Findings& findings);

/// Figures of a page that no ration is made from: feed value, forage quality, digestible protein.
/// They are kept, and held against what they were made of.
void judge_indices(const Figures& figures, Findings& findings);

/// Dry matter that is neither of fresh grass nor of a dried bag.
void judge_dry_matter(const LabResult& result, Findings& findings);

/// The laboratory's TDN against the line on fibre, its NEm against its TDN.
void judge_energy(const Figures& figures, const std::vector<EnergyEstimate>& estimates,
                  const EnergyChoice& choice, Findings& findings);

}  // namespace pluckbook
