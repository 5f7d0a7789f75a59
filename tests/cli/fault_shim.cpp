// A library to preload into the program, so that the machine fails it on demand:
//   PLUCKBOOK_FAULT=error:N:ERRNO  the N-th call that changes a file fails so (EINTR: is broken
//   off) PLUCKBOOK_FAULT=short          every write to a file takes half of its bytes
//   PLUCKBOOK_FAULT=edit:PATH      an editor adds a line to PATH at the first flush of a file
//   PLUCKBOOK_FAULT=memory:N       the N-th request for memory after main began fails, and all
//   later
// Plain C library only: what it stands in for may be called before anything else is set up.
#include <dlfcn.h>
#include <fcntl.h>
#include <sys/stat.h>
#include <unistd.h>

#include <cerrno>
#include <cstdarg>
#include <cstdio>
#include <cstdlib>
#include <cstring>

namespace {

template <class Function>
Function* next(const char* name) {
  return reinterpret_cast<Function*>(dlsym(RTLD_NEXT, name));
}

enum class Kind { none, error, half, edit, memory };

struct Fault {
  Kind kind = Kind::none;
  long at = 0;
  int error = 0;
  const char* path = "";
};

Fault read_fault() {
  const char* text = getenv("PLUCKBOOK_FAULT");
  Fault fault;
  if (text == nullptr) return fault;
  if (strncmp(text, "error:", 6) == 0) {
    fault.kind = Kind::error;
    fault.at = atol(text + 6);
    fault.error = atoi(strrchr(text, ':') + 1);
  } else if (strcmp(text, "short") == 0) {
    fault.kind = Kind::half;
  } else if (strncmp(text, "edit:", 5) == 0) {
    fault.kind = Kind::edit;
    fault.path = text + 5;
  } else if (strncmp(text, "memory:", 7) == 0) {
    fault.kind = Kind::memory;
    fault.at = atol(text + 7);
  }
  return fault;
}

const Fault& fault() {
  static const Fault asked = read_fault();
  return asked;
}

bool fails() {
  static long calls = 0;
  if (fault().kind != Kind::error || ++calls != fault().at) return false;
  errno = fault().error;
  return true;
}

bool for_writing(int flags) {
  return (flags & (O_WRONLY | O_RDWR | O_CREAT | O_TRUNC)) != 0;
}

bool in_main = false;
long requests = 0;

[[maybe_unused]] bool no_memory() {  // the sanitizers keep malloc for themselves
  return in_main && fault().kind == Kind::memory && ++requests >= fault().at;
}

}  // namespace

extern "C" {

int open(const char* path, int flags, ...) {
  va_list rest;
  va_start(rest, flags);
  const mode_t mode = va_arg(rest, mode_t);
  va_end(rest);
  if (for_writing(flags) && fails()) return -1;
  static auto* const real = next<int(const char*, int, ...)>("open");
  return real(path, flags, mode);
}

ssize_t write(int file, const void* bytes, size_t count) {
  static auto* const real = next<ssize_t(int, const void*, size_t)>("write");
  if (file <= 2) return real(file, bytes, count);
  if (fails()) return -1;
  if (fault().kind == Kind::half && count > 1) count /= 2;
  return real(file, bytes, count);
}

int fsync(int file) {
  if (fails()) return -1;
  static bool edited = false;
  if (fault().kind == Kind::edit && !edited) {
    edited = true;
    FILE* editor = fopen(fault().path, "a");
    fputs("# saved by an editor\n", editor);
    fclose(editor);
  }
  static auto* const real = next<int(int)>("fsync");
  return real(file);
}

int rename(const char* from, const char* to) {
  if (fails()) return -1;
  static auto* const real = next<int(const char*, const char*)>("rename");
  return real(from, to);
}

int unlink(const char* path) {
  if (fails()) return -1;
  static auto* const real = next<int(const char*)>("unlink");
  return real(path);
}

int mkdir(const char* path, mode_t mode) {
  if (fails()) return -1;
  static auto* const real = next<int(const char*, mode_t)>("mkdir");
  return real(path, mode);
}

int fchmod(int file, mode_t mode) {
  if (fails()) return -1;
  static auto* const real = next<int(int, mode_t)>("fchmod");
  return real(file, mode);
}

int flock(int file, int how) {
  if (fails()) return -1;
  static auto* const real = next<int(int, int)>("flock");
  return real(file, how);
}

// close() is counted only where a written file is closed: the others tell nothing.
int close(int file) {
  static auto* const real = next<int(int)>("close");
  if (file > 2 && for_writing(fcntl(file, F_GETFL)) && fails()) {
    const int error = errno;
    real(file);  // after an error the descriptor is gone all the same
    errno = error;
    return -1;
  }
  return real(file);
}

#ifndef PLUCKBOOK_SANITIZED
void* malloc(size_t size) {
  static auto* const real = next<void*(size_t)>("malloc");
  if (!no_memory()) return real(size);
  errno = ENOMEM;
  return nullptr;
}

// The program's own main, found through the call that starts it.
using Main = int (*)(int, char**, char**);
static Main real_main = nullptr;

static int counted_main(int argc, char** argv, char** environment) {
  fault();
  in_main = true;
  const int status = real_main(argc, argv, environment);
  in_main = false;
  return status;
}

int __libc_start_main(Main main, int argc, char** argv, void (*init)(), void (*fini)(),
                      void (*rtld_fini)(), void* stack_end) {
  real_main = main;
  static auto* const real =
      next<int(Main, int, char**, void (*)(), void (*)(), void (*)(), void*)>("__libc_start_main");
  return real(counted_main, argc, argv, init, fini, rtld_fini, stack_end);
}
#endif
}
