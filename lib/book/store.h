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
#include <utility>
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
  /// 0 for a plain file; else -1: ENOENT where there is none, ELOOP for a link, EISDIR for a
  /// folder.
  virtual int find_file(const std::string& path) = 0;
  /// Gives an open file the mode of the one at `path`, and its owner where that is allowed.
  virtual int take_after(int file, const std::string& path) = 0;
  /// 0 when the open file is the one at `path`; -1 when another has its name, or none.
  virtual int is_at(int file, const std::string& path) = 0;
  virtual std::vector<std::string> names_in(const std::string& folder) = 0;
  virtual int lock(int file) = 0;  // flock, exclusive, at once: -1 with EWOULDBLOCK when held
};

/// The real one.
FileSystem& disk();

enum class Replaced {
  yes,                // the change is on disk
  changed_meanwhile,  // the file no longer held what was expected: it was left as it is
};

/// Makes `name` in `folder` hold `text`, when it still holds `expected` (none: no such file yet).
/// Missing folders between them are made. Mode and owner stay the old file's.
/// Requires: the book's lock is held; `folder` is no link.
/// Fails: Fault::system with the file's name, the cause, and that nothing was changed. A failed
///        flush is never tried again; where the rename was done and only the folder's flush
///        failed, the Problem says that the change may not outlast a power cut.
Result<Replaced> replace_file(FileSystem& files, const std::filesystem::path& folder,
                              const std::string& name, std::string_view text,
                              const std::optional<std::string>& expected);

/// Names below the book's folder of what changes cut short (a power cut, a kill) left beside the
/// files: ".0123456789abcdef.new". What is being written just now has such a name too.
std::vector<std::string> leftover_drafts(FileSystem& files, const std::filesystem::path& folder);

/// Removes them, and says which.
/// Requires: the book's lock is held, so that none of them is another writer's.
std::vector<std::string> clear_drafts(FileSystem& files, const std::filesystem::path& folder);

/// Holds the book for one writer until it goes out of scope: a lock (flock) on the file .lock,
/// which says who holds it and is gone afterwards. The system frees the lock of a process that was
/// killed; the file it left is then the next writer's.
class BookLock {
 public:
  BookLock(FileSystem& files, int file, std::string path)
      : files_(&files), file_(file), path_(std::move(path)) {}
  BookLock(BookLock&& other) noexcept
      : files_(other.files_), file_(other.file_), path_(std::move(other.path_)) {
    other.file_ = -1;
  }
  BookLock& operator=(BookLock&&) = delete;
  BookLock(const BookLock&) = delete;
  BookLock& operator=(const BookLock&) = delete;
  ~BookLock();

 private:
  FileSystem* files_;
  int file_;
  std::string path_;
};

/// Waits for the lock as long as it passes from one writer to the next, and up to `patience_ms`
/// for a single one that keeps it.
/// Fails: Fault::system, naming the holder and since when.
Result<BookLock> lock_book(FileSystem& files, const std::filesystem::path& folder,
                           int patience_ms = 2000);

}  // namespace pluckbook
