// disk_calls.h - calls of the store's FileSystem as its writers need them: made again where a
// signal broke them off, to the end, and closed. Used by store.cpp and lock.cpp only.
#pragma once

#include <fcntl.h>

#include <cerrno>
#include <optional>
#include <string>
#include <string_view>

#include "book/store.h"

namespace pluckbook {

/// "cannot WHAT NAME: CAUSE", and what became of the book.
Problem cannot(std::string_view what, const std::string& name, int error,
               std::string_view aftermath = "nothing was changed");

/// A call that a signal broke off is made again; flushing is the one call that never is.
template <class Call>
auto uninterrupted(Call call) {
  for (;;) {
    const auto result = call();
    if (result >= 0 || errno != EINTR) return result;
  }
}

/// A file that closes itself. Links are not followed.
class OpenFile {
 public:
  OpenFile(FileSystem& files, const std::string& path, int flags, mode_t mode = 0)
      : files_(files),
        file_(uninterrupted([&] { return files.open(path, flags | O_NOFOLLOW, mode); })) {}
  OpenFile(const OpenFile&) = delete;
  OpenFile& operator=(const OpenFile&) = delete;
  ~OpenFile() {
    if (file_ >= 0) files_.close(file_);
  }
  bool is_open() const { return file_ >= 0; }
  int get() const { return file_; }
  /// After an error of close() the descriptor is gone all the same: it is never closed twice.
  int close() { return files_.close(release()); }
  /// The file without its closing.
  int release() {
    const int file = file_;
    file_ = -1;
    return file;
  }

 private:
  FileSystem& files_;
  int file_;
};

/// All of it, or false with errno.
bool write_all(FileSystem& files, int file, std::string_view text);

/// The bytes of a file, or nothing with errno.
std::optional<std::string> read_all(FileSystem& files, const std::string& path);

}  // namespace pluckbook
