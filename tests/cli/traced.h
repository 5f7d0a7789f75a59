// traced.h - runs the real program under ptrace and shows each of its system calls to a watcher,
// which may have it killed or interrupted there. Any architecture (PTRACE_GET_SYSCALL_INFO,
// Linux 5.3).
#pragma once

#include <fcntl.h>
#include <gtest/gtest.h>
#include <signal.h>
#include <sys/ptrace.h>
#include <sys/syscall.h>
#include <sys/wait.h>
#include <unistd.h>

#include <cstdint>
#include <functional>
#include <string>

#include "cli/run.h"

namespace pluckbook::testing {

struct SystemCall {
  long number = 0;
  std::uint64_t arguments[6] = {};
};

/// Opens for writing, writes, flushes, locks, and whatever changes a name or a file's facts.
/// Writing to the standard streams changes no file of a book.
inline bool changes_files(const SystemCall& call) {
  constexpr std::uint64_t writing = O_WRONLY | O_RDWR | O_CREAT | O_TRUNC;
  switch (call.number) {
    case SYS_openat:
      return (call.arguments[2] & writing) != 0;
    case SYS_write:
    case SYS_writev:
    case SYS_pwrite64:
      return call.arguments[0] > 2;
#ifdef SYS_open  // the calls newer architectures have dropped
    case SYS_open:
      return (call.arguments[1] & writing) != 0;
    case SYS_rename:
    case SYS_unlink:
    case SYS_mkdir:
    case SYS_rmdir:
    case SYS_link:
    case SYS_symlink:
    case SYS_chmod:
#endif
    case SYS_renameat:
    case SYS_renameat2:
    case SYS_unlinkat:
    case SYS_mkdirat:
    case SYS_linkat:
    case SYS_symlinkat:
    case SYS_fchmod:
    case SYS_fchmodat:
    case SYS_fchown:
    case SYS_truncate:
    case SYS_ftruncate:
    case SYS_fsync:
    case SYS_fdatasync:
    case SYS_flock:
      return true;
    default:
      return false;
  }
}

inline bool opens_a_socket(const SystemCall& call) {
  return call.number == SYS_socket || call.number == SYS_connect;
}

enum class Then { go_on, interrupt, kill };

struct Traced {
  bool possible = true;  // false where ptrace is forbidden
  int signal = 0;        // that ended it
  int exit = -1;
  std::string output;
};

/// Runs `pluckbook WORDS` in a folder; `watch` sees each system call before it is made.
inline Traced run_traced(const std::filesystem::path& folder, const std::string& words,
                         const std::function<Then(const SystemCall&)>& watch) {
  const FreshFolder beside;
  const std::string said = (beside.path() / "said").string();
  const std::string line = "exec " PLUCKBOOK_PROGRAM " " + words + " >'" + said + "' 2>&1";
  const pid_t child = ::fork();
  if (child == 0) {
    // A leak checker cannot look while another traces.
    ::setenv("ASAN_OPTIONS", "detect_leaks=0", 1);
    ::unsetenv("PLUCKBOOK_COUNTS");  // writes no counts: they are calls of their own
    ::signal(SIGINT, SIG_DFL);       // a shell in the background has it ignored
    const bool ready = ::chdir(folder.c_str()) == 0 && ::ptrace(PTRACE_TRACEME, 0, 0, 0) == 0;
    if (ready) ::execl("/bin/sh", "sh", "-c", line.c_str(), nullptr);
    ::_exit(125);
  }
  Traced traced;
  int status = 0;
  ::waitpid(child, &status, 0);
  if (!WIFSTOPPED(status) ||
      ::ptrace(PTRACE_SETOPTIONS, child, 0,
               PTRACE_O_TRACESYSGOOD | PTRACE_O_TRACEEXEC | PTRACE_O_EXITKILL) != 0) {
    traced.possible = false;
    ::kill(child, SIGKILL);
    ::waitpid(child, &status, 0);
    return traced;
  }
  bool program = false;  // the shell has become the program
  for (int signal = 0;;) {
    ::ptrace(PTRACE_SYSCALL, child, 0, signal);
    ::waitpid(child, &status, 0);
    if (!WIFSTOPPED(status)) break;
    signal = 0;
    if (status >> 8 == (SIGTRAP | PTRACE_EVENT_EXEC << 8)) {
      program = true;
    } else if (WSTOPSIG(status) != (SIGTRAP | 0x80)) {
      signal = WSTOPSIG(status);
    } else if (program) {
      __ptrace_syscall_info info{};
      ::ptrace(PTRACE_GET_SYSCALL_INFO, child, sizeof info, &info);
      if (info.op != PTRACE_SYSCALL_INFO_ENTRY) continue;
      SystemCall call;
      call.number = static_cast<long>(info.entry.nr);
      for (int i = 0; i < 6; ++i) call.arguments[i] = info.entry.args[i];
      const Then then = watch(call);
      if (then != Then::go_on) ::kill(child, then == Then::kill ? SIGKILL : SIGINT);
    }
  }
  if (WIFSIGNALED(status)) traced.signal = WTERMSIG(status);
  if (WIFEXITED(status)) traced.exit = WEXITSTATUS(status);
  traced.output = read_text(said);
  return traced;
}

}  // namespace pluckbook::testing
