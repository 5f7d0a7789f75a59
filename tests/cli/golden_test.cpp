// The goldens say what they said: golden.h.
#include "cli/golden.h"

namespace pluckbook::testing {
namespace {

class Golden : public ::testing::TestWithParam<std::filesystem::path> {};

TEST_P(Golden, SaysWhatItSaid) {
  const std::string golden = read_text(GetParam());
  const std::string now = replayed(golden);
  const char* mode = std::getenv("PLUCKBOOK_GOLDEN");
  if (mode != nullptr && std::string(mode) == "write") write_text(GetParam(), now);
  EXPECT_EQ(now, golden);
}

INSTANTIATE_TEST_SUITE_P(Files, Golden, ::testing::ValuesIn(golden_files()), [](const auto& file) {
  return file.param.parent_path().filename().string() + "_" + file.param.stem().string();
});

}  // namespace
}  // namespace pluckbook::testing
