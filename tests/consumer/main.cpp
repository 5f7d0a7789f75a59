// The requirement of one cow through the installed library.
#include <cstdio>

#include <pluckbook/cow.h>

int main() {
  using namespace pluckbook;
  AnimalAt cow;
  cow.weight = from_lb<KgBody>(1200);
  cow.peak_milk = from_lb<KgPerDay>(20);
  cow.milking = true;
  cow.days_since_calving = 61;  // the row of month 2
  const Result<Need> need = need_of(cow);
  if (!need) {
    std::puts(to_text(need.problems().front()).c_str());
    return 1;
  }
  std::printf("CP %.1f %%, TDN %.1f %% of dry matter\n", 100 * need->crude_protein.value(),
              100 * need->tdn.value());
}
