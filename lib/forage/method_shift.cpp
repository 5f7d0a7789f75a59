#include "forage/method_shift.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <map>

#include "base/text.h"

namespace pluckbook {
namespace {

struct Use {
  const Bag* bag;
  const FootedResult* result;  // holds TDN
};

std::vector<Use> uses_in(const std::vector<BagReading>& bags) {
  std::vector<Use> uses;
  for (const BagReading& bag : bags) {
    if (!bag.used) continue;
    for (const FootedResult& result : bag.results)
      if (result.tdn) uses.push_back({bag.bag, &result});
  }
  return uses;
}

// The method of most pages; of two alike, the one met first.
std::string usual_method(const std::vector<Use>& uses) {
  std::map<std::string, int> count;
  for (const Use& use : uses) ++count[use.result->tdn->method];
  std::string usual;
  for (const Use& use : uses)
    if (count[use.result->tdn->method] > count[usual]) usual = use.result->tdn->method;
  return usual;
}

const FootedValue* by_method(const FootedResult& result, const std::string& method) {
  const auto found = std::find_if(result.energy.begin(), result.energy.end(),
                                  [&](const FootedValue& one) { return one.method == method; });
  return found == result.energy.end() ? nullptr : &*found;
}

void measure(MethodShift& shift, const std::vector<Use>& uses) {
  double sum = 0;
  for (const Use& use : uses) {
    const FootedValue* usual = by_method(*use.result, shift.usual);
    const FootedValue* other = by_method(*use.result, shift.other);
    if (usual == nullptr || other == nullptr) continue;
    sum += in_percent(other->value - usual->value);
    ++shift.pages;
  }
  if (shift.pages > 0) shift.points = sum / shift.pages;
}

std::string method_in_words(const std::string& method) {
  if (method.starts_with("laboratory")) return "the laboratory's figure" + method.substr(10);
  if (method == "E13") return "the full sum (E13)";
  if (method == "NDFD" || method == "E11" || method == "E12")
    return fmt::format("digested fibre ({})", method);
  if (method.starts_with("E")) return fmt::format("a line on fibre ({})", method);
  return "its " + method;
}

}  // namespace

std::vector<MethodShift> method_shifts(const std::vector<BagReading>& bags) {
  const std::vector<Use> uses = uses_in(bags);
  const std::string usual = usual_method(uses);
  std::vector<MethodShift> shifts;
  for (const Use& use : uses) {
    const std::string& method = use.result->tdn->method;
    if (method == usual) continue;
    auto shift = std::find_if(shifts.begin(), shifts.end(),
                              [&](const MethodShift& one) { return one.other == method; });
    if (shift == shifts.end()) {
      shift = shifts.insert(shifts.end(), {usual, method, {}, std::nullopt, 0});
      measure(*shift, uses);
    }
    shift->bags.push_back(use.bag);
  }
  return shifts;
}

std::string in_words(const MethodShift& shift) {
  const std::string which =
      shift.bags.size() == 1
          ? "bag " + shift.bags.front()->id
          : fmt::format("{} bags, {} the last,", shift.bags.size(), shift.bags.back()->id);
  std::string text = fmt::format("TDN of {} comes by {}, of most by {}", which,
                                 method_in_words(shift.other), method_in_words(shift.usual));
  if (!shift.points)
    return text + "; no page here allows both, so what that alone shifts is not known";
  return text + fmt::format(
                    "; on {} page{} with both it stands {} points {}, which is no change of "
                    "the grass",
                    shift.pages, shift.pages == 1 ? "" : "s", fixed(std::abs(*shift.points), 1),
                    *shift.points < 0 ? "lower" : "higher");
}

}  // namespace pluckbook
