// A question about one herd opens only the files that tell of it. What it then says is what it says
// where all are read, on a past day too, when years that were still to come must not decide which.
#include <fmt/format.h>

#include <nlohmann/json.hpp>

#include "cli/run.h"

namespace pluckbook::testing {
namespace {

constexpr int grazed = 12;

/// The first six pastures were sampled to 2020, the others only from 2018 on; a herd on each.
void twelve_pastures(const std::filesystem::path& folder) {
  write_text(folder / "book.yaml", "pluckbook: 1\nname: Alder Bench\nunits: us\ncurrency: USD\n");
  std::string all, herds, moves;
  for (int p = 0; p < grazed; ++p) {
    all += fmt::format("- {{id: p{}, name: P{}, forage: northern mixed-grass}}\n", p, p);
    herds += fmt::format(
        "- {{id: h{}, head: 50, class: mature cow, weight: 1250 lb, peak_milk: 22 lb/day,\n"
        "   calving: {{first: 2020-03-10}}}}\n",
        p);
    moves += fmt::format("- {{date: 2020-05-10, herd: h{}, pasture: p{}}}\n", p, p);
    for (int year = p < 6 ? 2013 : 2018; year <= (p < 6 ? 2020 : 2026); ++year) {
      std::string bags;
      for (int i = 0; i < 3; ++i)
        bags += fmt::format(
            "- bag: {0}-{1}-{2}\n  plucked: {0}-{3:02}-10\n  stops: 20\n  results:\n"
            "    - {{received: {0}-{3:02}-20, basis: dry matter, cp: {4:.1f}, tdn: {5:.1f}}}\n",
            year, p, i, 6 + i, 13 - 2.2 * i + 0.3 * (p % 5) - 0.4 * (year % 4),
            64 - 3 * i + 0.5 * (p % 3));
      write_text(folder / fmt::format("samples/{}/p{}.yaml", year, p), bags);
    }
  }
  write_text(folder / "pastures.yaml", all);
  write_text(folder / "herds.yaml", herds);
  write_text(folder / "grazing.yaml", moves);
}

nlohmann::json herds_of(const std::filesystem::path& folder, const std::string& words) {
  const Ran ran = run_in(folder, "outlook " + words + " --as-of 2020-08-20 --json");
  EXPECT_EQ(ran.exit, 0) << ran.output;
  return nlohmann::json::parse(ran.output).at("herds");
}

TEST(AskedAlone, AHerdIsToldWhatItIsToldAmongAll) {
  const FreshFolder folder;
  twelve_pastures(folder.path());
  const nlohmann::json all = herds_of(folder.path(), "");
  ASSERT_EQ(all.size(), 12U);
  for (const std::size_t one : {0U, 7U, 11U})
    EXPECT_EQ(herds_of(folder.path(), fmt::format("h{}", one)).at(0), all.at(one)) << "h" << one;
}

TEST(AskedAlone, AHerdDoesNotMindAFileThatTellsNothingOfIt) {
  const FreshFolder folder;
  twelve_pastures(folder.path());
  const nlohmann::json before = herds_of(folder.path(), "h0");
  write_text(folder.path() / "samples/2026/p9.yaml", "- bag: [\n");
  EXPECT_EQ(herds_of(folder.path(), "h0"), before);
  EXPECT_EQ(run_in(folder.path(), "check").exit, 3);
}

}  // namespace
}  // namespace pluckbook::testing
