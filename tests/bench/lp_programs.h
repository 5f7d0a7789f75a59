// lp_programs.h - the invented programs that are timed, the same for everyone who is.
#pragma once

#include <vector>

#include "numeric/lp_random.h"

namespace pluckbook {

inline constexpr unsigned bench_seed = 15;
inline constexpr size_t bench_programs = 32;

inline std::vector<LinearProgram> programs_of(int rows, int columns) {
  RandomPrograms random(bench_seed);
  std::vector<LinearProgram> all;
  for (size_t k = 0; k < bench_programs; ++k)
    all.push_back(random.program(rows, columns, LpShape::plain));
  return all;
}

}  // namespace pluckbook
