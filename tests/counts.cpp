// Linked in where lines are counted: the counts are written at the end of a run only where
// PLUCKBOOK_COUNTS names a folder. Without it no file is opened, so that a run whose system calls
// are watched, or made to fail, is the program's own.
#include <errno.h>

#include <cstdlib>
#include <string>

extern "C" {
int __llvm_profile_runtime = 0;  // stands in for the part of the runtime that always writes
void __llvm_profile_set_filename(const char* pattern);
int __llvm_profile_register_write_file_atexit();
}

namespace {

// One file a program, two at most to wait for: runs of it are added up there. The program's name
// stands in it since the runtime's own signature (%m) does not tell two that link the same floors.
const std::string pattern = [] {
  const char* folder = std::getenv("PLUCKBOOK_COUNTS");
  if (folder == nullptr) return std::string();
  return std::string(folder) + "/" + program_invocation_short_name + "-%2m.profraw";
}();

[[maybe_unused]] const bool counted = [] {
  if (pattern.empty()) return false;
  __llvm_profile_set_filename(pattern.c_str());
  return __llvm_profile_register_write_file_atexit() == 0;
}();

}  // namespace
