#include "cow/energy_chain.h"

#include "published/rules.h"

namespace pluckbook {

namespace {

McalPerKgDm cubic(const double (&c)[4], McalPerKgDm me) {
  const double m = me.value();
  return McalPerKgDm(((c[2] * m + c[1]) * m + c[0]) * m + c[3]);
}

double me_per_tdn() {
  return energy_chain().de_per_tdn * energy_chain().me_per_de;
}

}  // namespace

McalPerKgDm me_of(Share tdn) {
  return McalPerKgDm(tdn.value() * me_per_tdn());
}

Share tdn_of(McalPerKgDm me) {
  return Share(me.value() / me_per_tdn());
}

McalPerKgDm nem_of_me(McalPerKgDm me) {
  return cubic(energy_chain().nem, me);
}

McalPerKgDm neg_of_me(McalPerKgDm me) {
  return cubic(energy_chain().neg, me);
}

McalPerKgDm nem_of(Share tdn) {
  return nem_of_me(me_of(tdn));
}

Share printed_tdn(Share chain_tdn) {
  return chain_tdn / energy_chain().printed_tdn_divisor;
}

}  // namespace pluckbook
