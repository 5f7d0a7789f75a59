#include "book/store.h"

#include <fcntl.h>
#include <fmt/format.h>
#include <unistd.h>

#include <array>
#include <chrono>
#include <cstring>
#include <ctime>
#include <random>
#include <system_error>
#include <thread>
#include <vector>

#include "base/text.h"

namespace pluckbook {
namespace {

namespace fs = std::filesystem;

constexpr std::string_view unchanged = "nothing was changed";

std::string cause(int error) {
  return std::generic_category().message(error);
}

Problem cannot(std::string_view what, const std::string& name, int error,
               std::string_view aftermath = unchanged) {
  return system_problem(fmt::format("cannot {} {}: {}", what, shown(name, 200), cause(error)),
                        std::string(aftermath));
}

// A call that a signal broke off is made again; flushing is the one call that never is.
template <class Call>
auto uninterrupted(Call call) {
  for (;;) {
    const auto result = call();
    if (result >= 0 || errno != EINTR) return result;
  }
}

// A file that closes itself.
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
  // After an error of close() the descriptor is gone all the same: it is never closed twice.
  int close() {
    const int file = file_;
    file_ = -1;
    return files_.close(file);
  }

 private:
  FileSystem& files_;
  int file_;
};

bool write_all(FileSystem& files, int file, std::string_view text) {
  while (!text.empty()) {
    const ssize_t count =
        uninterrupted([&] { return files.write(file, text.data(), text.size()); });
    if (count < 0) return false;
    if (count == 0) {
      errno = ENOSPC;
      return false;
    }
    text.remove_prefix(static_cast<std::size_t>(count));
  }
  return true;
}

std::optional<std::string> read_all(FileSystem& files, const std::string& path) {
  const OpenFile file(files, path, O_RDONLY);
  if (!file.is_open()) return std::nullopt;
  std::string text;
  std::array<char, 65536> part{};
  for (;;) {
    const ssize_t count =
        uninterrupted([&] { return files.read(file.get(), part.data(), part.size()); });
    if (count < 0) return std::nullopt;
    if (count == 0) return text;
    text.append(part.data(), static_cast<std::size_t>(count));
  }
}

bool flush_folder(FileSystem& files, const fs::path& folder) {
  const OpenFile file(files, folder.string(), O_RDONLY | O_DIRECTORY);
  return file.is_open() && files.flush(file.get()) == 0;
}

// Makes the folders of a name below the book's own, each flushed into its parent.
std::optional<Problem> make_folders(FileSystem& files, const fs::path& folder,
                                    const std::string& name) {
  fs::path at = folder;
  for (const fs::path& part : fs::path(name).parent_path()) {
    const fs::path parent = at;
    at /= part;
    {
      const OpenFile there(files, at.string(), O_RDONLY | O_DIRECTORY);
      if (there.is_open()) continue;
      if (errno != ENOENT) return cannot("open the folder", at.string(), errno);
    }
    if (files.make_folder(at.string()) != 0 && errno != EEXIST) {
      return cannot("make the folder", at.string(), errno);
    }
    if (!flush_folder(files, parent)) return cannot("keep the folder", at.string(), errno);
  }
  return std::nullopt;
}

// Drafts are named .0123456789abcdef.new.
constexpr std::string_view draft_ending = ".new";
constexpr std::size_t draft_length = 1 + 16 + draft_ending.size();

std::string draft_name() {
  std::random_device chance;
  return fmt::format(".{:08x}{:08x}{}", chance(), chance(), draft_ending);
}

void remove_stale_drafts(FileSystem& files, const fs::path& folder) {
  for (const std::string& name : files.names_in(folder.string())) {
    const bool draft =
        name.size() == draft_length && name[0] == '.' && name.ends_with(draft_ending);
    if (draft) files.remove((folder / name).string());
  }
}

// What is written beside a file before it takes its place; removed unless it did.
class Draft {
 public:
  Draft(FileSystem& files, const fs::path& folder)
      : files_(files), path_((folder / draft_name()).string()) {}
  Draft(const Draft&) = delete;
  Draft& operator=(const Draft&) = delete;
  ~Draft() {
    if (written_) files_.remove(path_);
  }

  /// 0, or the error.
  int write(std::string_view text, mode_t mode) {
    OpenFile file(files_, path_, O_WRONLY | O_CREAT | O_EXCL, mode);
    if (!file.is_open()) return errno;
    written_ = true;
    if (!write_all(files_, file.get(), text)) return errno;
    if (files_.flush(file.get()) != 0) return errno;
    return file.close() == 0 ? 0 : errno;
  }
  int take_place_of(const std::string& path) {
    if (files_.rename(path_, path) != 0) return errno;
    written_ = false;
    return 0;
  }

 private:
  FileSystem& files_;
  std::string path_;
  bool written_ = false;
};

// The mode the new file gets, or why it may not be written.
Result<mode_t> mode_for(FileSystem& files, const std::string& path, const std::string& name,
                        const std::optional<std::string>& expected) {
  const int mode = files.mode_of(path);
  if (mode < 0 && errno != ENOENT) return cannot("write", name, errno);
  if (mode < 0 && !expected) return mode_t{0666};
  const std::optional<std::string> now = mode < 0 ? std::nullopt : read_all(files, path);
  if (mode >= 0 && !now) return cannot("read", name, errno);
  if (now != expected) {
    return system_problem(fmt::format("{} was changed by someone else meanwhile", name),
                          "nothing was written; run the command again");
  }
  return static_cast<mode_t>(mode);
}

bool leads_out(const std::string& name) {
  for (const fs::path& part : fs::path(name)) {
    if (part == "..") return true;
  }
  return fs::path(name).is_absolute() || name.empty();
}

// ---- the lock ----------------------------------------------------------------------------------

std::string holder_line() {
  const std::time_t now = std::time(nullptr);
  std::tm local{};
  localtime_r(&now, &local);
  std::array<char, 32> text{};
  std::strftime(text.data(), text.size(), "%Y-%m-%d %H:%M:%S", &local);
  return fmt::format("process {} since {}\n", ::getpid(), text.data());
}

}  // namespace

Result<Done> replace_file(FileSystem& files, const fs::path& folder, const std::string& name,
                          std::string_view text, const std::optional<std::string>& expected) {
  if (leads_out(name)) {
    return system_problem(fmt::format("'{}' is no file of the book", shown(name)),
                          std::string(unchanged));
  }
  if (auto problem = make_folders(files, folder, name)) return *std::move(problem);
  const fs::path path = folder / name;
  const Result<mode_t> mode = mode_for(files, path.string(), name, expected);
  if (!mode) return mode.problems();
  remove_stale_drafts(files, path.parent_path());
  Draft draft(files, path.parent_path());
  if (const int error = draft.write(text, *mode)) return cannot("write beside", name, error);
  if (const int error = draft.take_place_of(path.string())) {
    return cannot("put the new text in", name, error);
  }
  if (!flush_folder(files, path.parent_path())) {
    return cannot("flush the folder of", name, errno,
                  "the change is made but may not outlast a power cut: look at the disk");
  }
  return Done{};
}

Result<BookLock> lock_book(FileSystem& files, const fs::path& folder, int patience_ms) {
  const std::string path = (folder / ".lock").string();
  const int file =
      uninterrupted([&] { return files.open(path, O_RDWR | O_CREAT | O_NOFOLLOW, mode_t{0666}); });
  if (file < 0) return cannot("open", path, errno);
  BookLock lock(files, file);
  constexpr int step_ms = 50;
  for (int waited = 0; files.lock(file) != 0; waited += step_ms) {
    if (errno != EWOULDBLOCK && errno != EINTR) return cannot("lock", path, errno);
    if (waited >= patience_ms) {
      const std::optional<std::string> holder = read_all(files, path);
      return system_problem(
          fmt::format("the book is being changed by {}",
                      holder && !holder->empty() ? shown(trimmed(*holder)) : "another program"),
          "nothing was changed; run the command again when it is done");
    }
    std::this_thread::sleep_for(std::chrono::milliseconds(step_ms));
  }
  // Who holds it is a courtesy: the lock stands without it.
  const OpenFile note(files, path, O_WRONLY | O_TRUNC);
  if (note.is_open()) write_all(files, note.get(), holder_line());
  return lock;
}

}  // namespace pluckbook
