// store.h - how a change reaches the disk: beside the file, flushed, renamed over it, the folder
// flushed. A power cut leaves the old file or the new one, whole. One writer at a time.
#pragma once

#include <sys/types.h>

#include <cerrno>
#include <filesystem>
#include <memory>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "base/problem.h"

namespace pluckbook {

/// The few calls the store makes, so that a test can fail each one. All return -1 and set errno
/// when they fail, as the system's own do.
class FileSystem {
 public:
  virtual ~FileSystem() = default;
  virtual int open(const std::string& path, int flags, mode_t mode) = 0;
  virtual ssize_t read(int file, char* to, std::size_t most) = 0;
  virtual ssize_t write(int file, const char* bytes, std::size_t count) = 0;
  virtual int flush(int file) = 0;  // fsync
  virtual int close(int file) = 0;
  virtual int rename(const std::string& from, const std::string& to) = 0;
  virtual int remove(const std::string& path) = 0;
  virtual int make_folder(const std::string& path) = 0;
  /// Permission bits of a file; -1 with ENOENT where there is none; -1 with ELOOP for a link.
  virtual int mode_of(const std::string& path) = 0;
  virtual std::vector<std::string> names_in(const std::string& folder) = 0;
  virtual int lock(int file) = 0;  // flock, exclusive, at once: -1 with EWOULDBLOCK when held
};

/// The real one.
FileSystem& disk();

/// Makes `name` in `folder` hold `text`, when it still holds `expected` (none: no such file yet).
/// Missing folders between them are made; drafts a power cut left beside the file are removed.
/// Returns only when the change is on disk.
/// Requires: the book's lock is held; `folder` is no link.
/// Fails: Fault::system with the file's name, the cause, and that nothing was changed. A failed
///        flush is never tried again; where the rename was done and only the folder's flush
///        failed, the Problem says that the change may not outlast a power cut.
Result<Done> replace_file(FileSystem& files, const std::filesystem::path& folder,
                          const std::string& name, std::string_view text,
                          const std::optional<std::string>& expected);

/// Holds the book for one writer until it goes out of scope.
class BookLock {
 public:
  BookLock(FileSystem& files, int file) : files_(&files), file_(file) {}
  BookLock(BookLock&& other) noexcept : files_(other.files_), file_(other.file_) {
    other.file_ = -1;
  }
  BookLock& operator=(BookLock&&) = delete;
  BookLock(const BookLock&) = delete;
  BookLock& operator=(const BookLock&) = delete;
  ~BookLock() {
    if (file_ >= 0) files_->close(file_);
  }

 private:
  FileSystem* files_;
  int file_;
};

/// Waits up to `patience_ms` for the lock; the file .lock in the book says who holds it.
/// Fails: Fault::system, naming the holder.
Result<BookLock> lock_book(FileSystem& files, const std::filesystem::path& folder,
                           int patience_ms = 2000);

}  // namespace pluckbook
