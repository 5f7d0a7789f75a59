// The system's own calls behind the store's FileSystem.
#include <fcntl.h>
#include <sys/file.h>
#include <sys/stat.h>
#include <unistd.h>

#include <cstdio>
#include <system_error>

#include "book/store.h"

namespace pluckbook {
namespace {

class Disk : public FileSystem {
 public:
  int open(const std::string& path, int flags, mode_t mode) override {
    return ::open(path.c_str(), flags | O_CLOEXEC, mode);
  }
  ssize_t read(int file, char* to, std::size_t most) override { return ::read(file, to, most); }
  ssize_t write(int file, const char* bytes, std::size_t count) override {
    return ::write(file, bytes, count);
  }
  int flush(int file) override { return ::fsync(file); }
  int close(int file) override { return ::close(file); }
  int rename(const std::string& from, const std::string& to) override {
    return std::rename(from.c_str(), to.c_str());
  }
  int remove(const std::string& path) override { return ::unlink(path.c_str()); }
  int make_folder(const std::string& path) override { return ::mkdir(path.c_str(), 0777); }
  int find_file(const std::string& path) override {
    struct stat facts {};
    if (::lstat(path.c_str(), &facts) != 0) return -1;
    if (S_ISREG(facts.st_mode)) return 0;
    errno = S_ISLNK(facts.st_mode) ? ELOOP : S_ISDIR(facts.st_mode) ? EISDIR : EINVAL;
    return -1;
  }
  int take_after(int file, const std::string& path) override {
    struct stat facts {};
    if (::lstat(path.c_str(), &facts) != 0) return -1;
    // Only root may give a file away; a change of owner may clear bits of the mode, so it is first.
    if (::fchown(file, facts.st_uid, facts.st_gid) != 0 && errno != EPERM) return -1;
    return ::fchmod(file, facts.st_mode & 0777U);
  }
  int is_at(int file, const std::string& path) override {
    struct stat ours {
    }, there{};
    if (::fstat(file, &ours) != 0 || ::lstat(path.c_str(), &there) != 0) return -1;
    return ours.st_dev == there.st_dev && ours.st_ino == there.st_ino ? 0 : -1;
  }
  std::vector<std::string> names_in(const std::string& folder) override {
    std::vector<std::string> names;
    std::error_code error;
    for (std::filesystem::directory_iterator at(folder, error), end; !error && at != end;
         at.increment(error)) {
      names.push_back(at->path().filename().string());
    }
    return names;
  }
  int lock(int file) override { return ::flock(file, LOCK_EX | LOCK_NB); }
};

}  // namespace

FileSystem& disk() {
  static Disk real;
  return real;
}

}  // namespace pluckbook
