// One good book, its bags and results spoilt one at a time: the whole text of what is said must be
// right.
#include "book/spoilt_book.h"

namespace pluckbook::testing {
namespace {

TEST(BadSamples, LaboratoryFigures) {
  check_all({
      {"g/kg taken for percent", "samples/2026/north.yaml", result_with("cp: 84"),
       "samples/2026/north.yaml:4:53: crude protein 84 % is outside 0.5 to 45 % of dry matter\n"
       "   4 |     - {received: 2026-06-25, basis: dry matter, cp: 84}\n"
       "     |                                                     ^~\n"
       "  if the laboratory printed 8.4, write 8.4; if it printed g/kg, write \"84 g/kg\"\n"},
      {"a fraction", "samples/2026/north.yaml", result_with("cp: 0.084"),
       "samples/2026/north.yaml:4:53: crude protein 0.084 % is outside 0.5 to 45 % of dry matter\n"
       "   4 |     - {received: 2026-06-25, basis: dry matter, cp: 0.084}\n"
       "     |                                                     ^~~~~\n"
       "  if 0.084 is a fraction, write 8.4\n"},
      {"g/kg said is fine", "samples/2026/north.yaml", result_with("cp: 84 g/kg"), ""},
      {"unusual", "samples/2026/north.yaml", result_with("tdn: 35"),
       "samples/2026/north.yaml:4:54: warning: TDN 35 % is unusual: outside 40 to 80 % of dry "
       "matter\n"
       "   4 |     - {received: 2026-06-25, basis: dry matter, tdn: 35}\n"
       "     |                                                      ^~\n"
       "  keep it if the page says so\n"},
      {"ADF not below NDF", "samples/2026/north.yaml", result_with("adf: 61, ndf: 36.2"),
       "samples/2026/north.yaml:4:54: warning: ADF 61 % is unusual: outside 18 to 55 % of dry "
       "matter\n"
       "   4 |     - {received: 2026-06-25, basis: dry matter, adf: 61, ndf: 36.2}\n"
       "     |                                                      ^~\n"
       "  keep it if the page says so\n"
       "samples/2026/north.yaml:4:54: ADF 61 % is not below NDF 36.2 %\n"
       "   4 |     - {received: 2026-06-25, basis: dry matter, adf: 61, ndf: 36.2}\n"
       "     |                                                      ^~\n"
       "  ADF is a part of NDF: check whether they changed places\n"},
      {"a bare nitrate", "samples/2026/north.yaml", result_with("nitrate: 900"),
       "samples/2026/north.yaml:4:58: 'nitrate' may mean nitrate or the nitrogen in it, which "
       "differ 4.4-fold\n"
       "   4 |     - {received: 2026-06-25, basis: dry matter, nitrate: 900}\n"
       "     |                                                          ^~~\n"
       "  write no3n for NO3-N, no3 for NO3 or kno3 for KNO3, as the page says\n"},
      {"nitrate N above safe", "samples/2026/north.yaml",
       result_with("cp: 10, nitrate_n_ppm: 1800"),
       "samples/2026/north.yaml:4:72: warning: nitrate N 1800 ppm is unusual: outside 0 to 700 "
       "ppm of dry matter\n"
       "   4 |     - {received: 2026-06-25, basis: dry matter, cp: 10, nitrate_n_ppm: 1800}\n"
       "     |                                                                        ^~~~\n"
       "  nitrate can kill, pregnant cows lose calves first: ask a veterinarian before grazing\n"},
      {"dry matter and moisture that disagree", "samples/2026/north.yaml",
       result_with("dm: 92, moisture: 9, cp: 8"),
       "samples/2026/north.yaml:4:67: dry matter is given as 92 % and as 91 %\n"
       "   4 |     - {received: 2026-06-25, basis: dry matter, dm: 92, moisture: 9, cp: 8}\n"
       "     |                                                                   ^\n"
       "  look at the laboratory's page again and write the figure once\n"},
      {"dry matter and moisture that agree", "samples/2026/north.yaml",
       result_with("dm: 92, moisture: 8, cp: 8"), ""},
      {"an energy without its unit", "samples/2026/north.yaml", result_with("nem: 0.52"),
       "samples/2026/north.yaml:4:54: NEm 0.52 may be per pound or per kilogram\n"
       "   4 |     - {received: 2026-06-25, basis: dry matter, nem: 0.52}\n"
       "     |                                                      ^~~~\n"
       "  write '0.52 Mcal/lb', '0.52 Mcal/cwt', '0.52 Mcal/kg' or '0.52 MJ/kg', as the page "
       "says\n"},
      {"an energy with its unit", "samples/2026/north.yaml", result_with("nem: 0.52 Mcal/lb"), ""},
      {"unknown figure", "samples/2026/north.yaml", result_with("cpp: 8"),
       "samples/2026/north.yaml:4:49: unknown key 'cpp'\n"
       "   4 |     - {received: 2026-06-25, basis: dry matter, cpp: 8}\n"
       "     |                                                 ^~~\n"
       "  did you mean 'cp'?\n"},
      {"no figure", "samples/2026/north.yaml", result_with("lab: county"),
       "samples/2026/north.yaml:4:7: this result holds no figure\n"
       "   4 |     - {received: 2026-06-25, basis: dry matter, lab: county}\n"
       "     |       ^\n"
       "  add what was printed:  cp: 10.4\n"},
      {"no basis", "samples/2026/north.yaml",
       bag_with("  results:\n    - {received: 2026-06-25, cp: 8}"),
       "samples/2026/north.yaml:4:7: warning: this result does not say its basis; taken as dry "
       "matter\n"
       "   4 |     - {received: 2026-06-25, cp: 8}\n"
       "     |       ^\n"
       "  add  basis: dry matter  or  basis: as received, as the page says\n"},
      {"as received without dry matter", "samples/2026/north.yaml",
       bag_with("  results:\n    - {received: 2026-06-25, basis: as received, cp: 8}"),
       "samples/2026/north.yaml:4:37: a result as received needs the dry matter\n"
       "   4 |     - {received: 2026-06-25, basis: as received, cp: 8}\n"
       "     |                                     ^~~~~~~~~~~\n"
       "  add  dm: 92.1  (100 less the moisture)\n"},
      {"as received is judged on dry matter", "samples/2026/north.yaml",
       bag_with("  results:\n    - {received: 2026-06-25, basis: as received, dm: 20, cp: 12}"),
       "samples/2026/north.yaml:4:62: crude protein 60 % of dry matter is outside 0.5 to 45 %\n"
       "   4 |     - {received: 2026-06-25, basis: as received, dm: 20, cp: 12}\n"
       "     |                                                              ^~\n"
       "  if the laboratory printed 6, write 6; if it printed g/kg, write \"60 g/kg\"\n"},
      {"a green bag with the protein of straw", "samples/2026/north.yaml",
       result_with("dm: 28, cp: 4.1"),
       "samples/2026/north.yaml:4:61: warning: crude protein 4.1 % of dry matter from a bag of 28 "
       "% dry matter is low\n"
       "   4 |     - {received: 2026-06-25, basis: dry matter, dm: 28, cp: 4.1}\n"
       "     |                                                             ^~~\n"
       "  if it stands in the as received column, write  basis: as received\n"},
  });
}

TEST(BadSamples, BagsInTime) {
  check_all({
      {"bag id twice", "samples/2026/meadow.yaml", "- {bag: 26-north-01, plucked: 2026-06-12}\n",
       "samples/2026/north.yaml:2:8: bag '26-north-01' is already at samples/2026/meadow.yaml:1\n"
       "   2 | - bag: 26-north-01\n"
       "     |        ^~~~~~~~~~~\n"
       "  give one of them another id\n"},
      {"sent before plucked", "samples/2026/north.yaml",
       bag_with("  sent: {date: 2026-06-10, lab: county}"),
       "samples/2026/north.yaml:3:9: sent 2026-06-10 is before it was plucked, 2026-06-12\n"
       "   3 |   sent: {date: 2026-06-10, lab: county}\n"
       "     |         ^\n"
       "  one of the two dates is wrong\n"},
      {"received before sent", "samples/2026/north.yaml",
       bag_with("  sent: 2026-06-15\n  results:\n    - {received: 2026-06-14, basis: dry matter, "
                "cp: 8}"),
       "samples/2026/north.yaml:5:18: received 2026-06-14 is before it was sent, 2026-06-15\n"
       "   5 |     - {received: 2026-06-14, basis: dry matter, cp: 8}\n"
       "     |                  ^~~~~~~~~~\n"
       "  one of the two dates is wrong\n"},
      {"unknown laboratory", "samples/2026/north.yaml",
       bag_with("  sent: {date: 2026-06-15, lab: conuty}"),
       "samples/2026/north.yaml:3:33: there is no laboratory 'conuty'\n"
       "   3 |   sent: {date: 2026-06-15, lab: conuty}\n"
       "     |                                 ^~~~~~\n"
       "  did you mean 'county'?\n"},
      {"superseding nothing", "samples/2026/north.yaml",
       result_with("cp: 8, supersedes: 2026-06-20"),
       "samples/2026/north.yaml:4:68: no result above was received on 2026-06-20\n"
       "   4 |     - {received: 2026-06-25, basis: dry matter, cp: 8, supersedes: 2026-06-20}\n"
       "     |                                                                    ^~~~~~~~~~\n"
       "  write the received date of the result this one corrects\n"},
      {"in the wrong year", "samples/2025/north.yaml", "- {bag: n0, plucked: 2026-01-02}\n",
       "samples/2025/north.yaml:1:22: warning: a bag plucked on 2026-01-02 stands among those of "
       "2025\n"
       "   1 | - {bag: n0, plucked: 2026-01-02}\n"
       "     |                      ^~~~~~~~~~\n"
       "  move it to samples/2026/north.yaml\n"},
  });
}

}  // namespace
}  // namespace pluckbook::testing
