// One good book, its feeds and quotes spoilt one at a time: the whole text of what is said must be
// right.
#include "book/spoilt_book.h"

namespace pluckbook::testing {
namespace {

TEST(BadFeeds, AnalysisAndQuotes) {
  check_all({
      {"neither like nor protein", "feeds.yaml", "- {id: cube, analysis: {tdn: 76}}\n",
       "feeds.yaml:1:8: nothing says how much protein cube holds\n"
       "   1 | - {id: cube, analysis: {tdn: 76}}\n"
       "     |        ^~~~\n"
       "  add  like: range cube 20  or  analysis: {dm: 90, cp: 22.2, tdn: 76}\n"},
      {"unknown published feed", "feeds.yaml", "- {id: cube, like: rnage cube 20}\n",
       "feeds.yaml:1:20: no published feed is called 'rnage cube 20'\n"
       "   1 | - {id: cube, like: rnage cube 20}\n"
       "     |                    ^~~~~~~~~~~~~\n"
       "  did you mean 'range cube 20'?\n"},
      {"negative price", "feeds.yaml", feed_with("  quote: {price: -355 USD/ton}"),
       "feeds.yaml:3:18: price -355 is below 0\n"
       "   3 |   quote: {price: -355 USD/ton}\n"
       "     |                  ^~~~~~~~~~~~\n"
       "  write what is paid, 0 or more\n"},
      {"another currency", "feeds.yaml", feed_with("  quote: {price: 355 CAD/ton}"),
       "feeds.yaml:3:18: price is in 'CAD', but the book counts in USD\n"
       "   3 |   quote: {price: 355 CAD/ton}\n"
       "     |                  ^~~~~~~~~~~\n"
       "  convert it to USD, or change currency in book.yaml\n"},
      {"a price for nothing", "feeds.yaml", feed_with("  quote: {price: 355 USD}"),
       "feeds.yaml:3:18: price '355 USD' does not say for how much feed\n"
       "   3 |   quote: {price: 355 USD}\n"
       "     |                  ^~~~~~~\n"
       "  write it as  355 USD/ton\n"},
      {"a unit nobody sells by", "feeds.yaml", feed_with("  quote: {price: 355 USD/scoop}"),
       "feeds.yaml:3:18: 'scoop' is no unit feed is sold by\n"
       "   3 |   quote: {price: 355 USD/scoop}\n"
       "     |                  ^~~~~~~~~~~~~\n"
       "  write ton, cwt, lb, tonne, kg, or a stated weight: 50 lb bag, 56 lb bushel\n"},
      {"a bushel of no stated weight", "feeds.yaml", feed_with("  quote: {price: 355 USD/bushel}"),
       "feeds.yaml:3:18: 'bushel' does not say what a bushel weighs\n"
       "   3 |   quote: {price: 355 USD/bushel}\n"
       "     |                  ^~~~~~~~~~~~~~\n"
       "  write its weight before it: 56 lb bushel, 50 lb bag, 700 lb bale\n"},
      {"miles without a load", "feeds.yaml",
       feed_with("  quote: {price: 355, freight: 4.50 USD/mile, miles: 60}"),
       "feeds.yaml:3:32: freight by the mile needs 'miles' and 'load'\n"
       "   3 |   quote: {price: 355, freight: 4.50 USD/mile, miles: 60}\n"
       "     |                                ^~~~~~~~~~~~~\n"
       "  add  miles: 60, load: 24 ton\n"},
      {"a key of a quote", "feeds.yaml", feed_with("  quote:\n    price: 355\n    fright: 38"),
       "feeds.yaml:5:5: unknown key 'fright'\n"
       "   5 |     fright: 38\n"
       "     |     ^~~~~~\n"
       "  did you mean 'freight'?\n"},
      {"least above most", "feeds.yaml", feed_with("  least: 6 lb/day\n  most: 1 lb/day"),
       "feeds.yaml:3:10: 'least' is above 'most'\n"
       "   3 |   least: 6 lb/day\n"
       "     |          ^~~~~~~~\n"
       "  check the label\n"},
      {"fed too often", "feeds.yaml", feed_with("  feedings_per_week: [7, 70]"),
       "feeds.yaml:3:26: feedings_per_week 70 is outside 1 to 14\n"
       "   3 |   feedings_per_week: [7, 70]\n"
       "     |                          ^~\n"
       "  check the number and its unit\n"},
      {"ADF above NDF", "feeds.yaml", "- {id: hay, analysis: {cp: 10, adf: 60, ndf: 40}}\n",
       "feeds.yaml:1:37: ADF is not below NDF\n"
       "   1 | - {id: hay, analysis: {cp: 10, adf: 60, ndf: 40}}\n"
       "     |                                     ^~\n"
       "  ADF is a part of NDF: check whether they changed places\n"},
      {"urea above protein", "feeds.yaml", "- {id: tub, analysis: {cp: 30, npn_cpe: 40}}\n",
       "feeds.yaml:1:41: protein from non-protein nitrogen is more than all the protein\n"
       "   1 | - {id: tub, analysis: {cp: 30, npn_cpe: 40}}\n"
       "     |                                         ^~\n"
       "  npn_cpe is a part of cp, in percent of dry matter\n"},
  });
}

}  // namespace
}  // namespace pluckbook::testing
