// The same question has the same answer, byte for byte, in every language and time zone.
#include <gtest/gtest.h>

#include <algorithm>

#include "cli/run.h"

namespace pluckbook::testing {
namespace {

std::string all_answers(const std::string& environment, const std::string& day) {
  const FreshFolder folder("northern");
  std::string text;
  for (const std::string& words : std::vector<std::string>{
           "outlook spring-cows", "diet draws --json", "bags --all", "need spring-cows",
           "price spring-cows", "price spring-cows --json", "sources", "check",
           "mark 26-draws-08 lost", "bag meadow --stops 20 --fill 66.5",
           "result 26-draws-08 cp=6.45 dm=91.5"}) {
    const std::string as_of = words == "sources" || words.starts_with("check") ? "" : day;
    const Ran ran = run_line(folder.path(), "env " + environment + " pluckbook " + words +
                                                (as_of.empty() ? "" : " --as-of " + day) + " 2>&1");
    text += words + "\n" + ran.output + std::to_string(ran.exit) + "\n";
  }
  for (const char* file : {"samples/2026/draws.yaml", "samples/2026/meadow.yaml"}) {
    text += read_text(folder.path() / file);
  }
  return text;
}

// A locale compiled for this test; where that cannot be done the name alone is set.
std::string make_locale(const std::filesystem::path& folder, const std::string& name) {
  const std::string stem = name.substr(0, name.find('.'));
  shell("localedef -i " + stem + " -f UTF-8 '" + (folder / name).string() + "' 2>/dev/null");
  return "LOCPATH='" + folder.string() + "' LC_ALL=" + name;
}

TEST(Anywhere, DecimalCommasAndOtherAlphabetsChangeNothing) {
  const FreshFolder locales;
  const std::string here = all_answers("LC_ALL=C.UTF-8", "2026-09-05");
  EXPECT_NE(here.find("cp: 6.45"), std::string::npos);
  for (const char* name : {"de_DE.UTF-8", "fr_FR.UTF-8", "tr_TR.UTF-8"}) {
    if (name[0] != 'd' && !long_run()) break;
    EXPECT_EQ(all_answers(make_locale(locales.path(), name), "2026-09-05"), here) << name;
  }
}

// LC_ALL=C asks for a terminal of ASCII characters. Documents and saved files are the same bytes,
// and so is every line of words that holds no other character.
TEST(Anywhere, ALocaleOfAsciiChangesNoDocumentAndNoRecord) {
  const auto lines = [](const std::string& text) {
    std::vector<std::string> all;
    std::istringstream stream(text);
    for (std::string line; std::getline(stream, line);) all.push_back(line);
    return all;
  };
  const auto here = lines(all_answers("LC_ALL=C.UTF-8", "2026-09-05"));
  const auto there = lines(all_answers("LC_ALL=C", "2026-09-05"));
  ASSERT_EQ(there.size(), here.size());
  for (std::size_t i = 0; i < here.size(); ++i) {
    const bool ascii = std::all_of(here[i].begin(), here[i].end(), [](char c) { return c > 0; });
    EXPECT_TRUE(!ascii || there[i] == here[i]) << here[i] << "\n" << there[i];
  }
}

TEST(Anywhere, FarEastAndFarWestChangeNothing) {
  const std::vector<std::string> days = {"2026-09-05", "2024-02-29", "2026-12-31",
                                         "2026-03-08", "2026-11-01", "2027-01-01"};
  for (const std::string& day : days) {
    if (day != days.front() && !long_run()) continue;
    const std::string here = all_answers("TZ=UTC", day);
    for (const char* zone : {"Pacific/Kiritimati", "Pacific/Pago_Pago", "America/Denver",
                             "Asia/Kathmandu", "XXX+24YYY"}) {
      if (zone[0] != 'P' && !long_run()) break;
      EXPECT_EQ(all_answers(std::string("TZ=") + zone, day), here) << zone << " " << day;
    }
  }
}

}  // namespace
}  // namespace pluckbook::testing
