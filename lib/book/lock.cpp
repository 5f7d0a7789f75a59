// The book's lock: see store.h. The file is removed by its holder, so whoever gets a lock looks
// whether it is still the file of that name; if not, it locked one that its last holder removed.
#include <fcntl.h>
#include <fmt/format.h>
#include <unistd.h>

#include <array>
#include <chrono>
#include <ctime>
#include <thread>

#include "base/text.h"
#include "book/disk_calls.h"
#include "book/store.h"

namespace pluckbook {
namespace {

constexpr int step_ms = 20;

std::string holder_line() {
  const std::time_t now = std::time(nullptr);
  std::tm local{};
  localtime_r(&now, &local);
  std::array<char, 32> text{};
  std::strftime(text.data(), text.size(), "%Y-%m-%d %H:%M:%S", &local);
  return fmt::format("process {} since {}\n", ::getpid(), text.data());
}

Problem held_by(const std::string& holder) {
  return system_problem(fmt::format("the book is being changed by {}",
                                    holder.empty() ? "another program" : shown(trimmed(holder))),
                        "nothing was changed; run the command again when it is done");
}

}  // namespace

BookLock::~BookLock() {
  if (file_ < 0) return;
  files_->remove(path_);
  files_->close(file_);
}

Result<BookLock> lock_book(FileSystem& files, const std::filesystem::path& folder,
                           int patience_ms) {
  const std::string path = (folder / ".lock").string();
  std::string holder;
  for (int waited = 0;;) {
    OpenFile file(files, path, O_RDWR | O_CREAT, mode_t{0666});
    if (!file.is_open()) return cannot("lock the book with", path, errno);
    if (files.lock(file.get()) == 0) {
      if (files.is_at(file.get(), path) != 0) continue;
      BookLock lock(files, file.release(), path);
      // Who holds it is a courtesy: the lock stands without it.
      const OpenFile note(files, path, O_WRONLY | O_TRUNC);
      if (note.is_open()) write_all(files, note.get(), holder_line());
      return lock;
    }
    if (errno != EWOULDBLOCK && errno != EINTR) return cannot("lock", path, errno);
    const std::string now = read_all(files, path).value_or("");
    if (now != holder) waited = 0;
    holder = now;
    if (waited >= patience_ms) return held_by(holder);
    std::this_thread::sleep_for(std::chrono::milliseconds(step_ms));
    waited += step_ms;
  }
}

}  // namespace pluckbook
