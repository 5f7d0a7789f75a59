// forgetful_disk.h - a disk in memory that forgets what was not flushed, fails one call on demand,
// and can lose its power after any. Names live in folders: a change of a name is kept once its
// folder was flushed, bytes once their file was.
#pragma once

#include <fcntl.h>

#include <algorithm>
#include <functional>
#include <map>
#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "book/store.h"

namespace pluckbook {

class ForgetfulDisk : public FileSystem {
 public:
  struct File {
    std::string bytes, kept;
    mode_t mode = 0;
  };
  using Names = std::map<std::string, std::shared_ptr<File>>;  // a null file is a folder

  int fail_at = 0;  // the call that fails, from 1; 0 for none
  int error = EIO;  // how
  int cut_at = 0;   // the last call before the power is gone; 0 for never
  int calls = 0;    // made so far
  int flushes_after_failure = 0;

  explicit ForgetfulDisk(const std::optional<std::string>& old) {
    now_["/book"] = nullptr;
    if (old) {
      now_["/book/samples"] = nullptr;
      now_["/book/samples/a.yaml"] = std::make_shared<File>(File{*old, *old, 0664});
    }
    kept_ = now_;
  }

  int open(const std::string& path, int flags, mode_t mode) override {
    if (fails()) return -1;
    const auto found = now_.find(path);
    if (found == now_.end() && (flags & O_CREAT) == 0) return no(ENOENT);
    if (found != now_.end() && (flags & O_EXCL) != 0) return no(EEXIST);
    if (found == now_.end()) {
      const auto made = std::make_shared<File>(File{"", "", mode & ~mode_t{022}});
      change(path, [path, made](Names& names) { names[path] = made; });
    }
    open_[++last_] = path;
    read_to_[last_] = 0;
    handles_[last_] = now_[path];
    return last_;
  }
  ssize_t read(int file, char* to, std::size_t most) override {
    if (fails()) return -1;
    const std::string& bytes = handles_[file]->bytes;
    const std::size_t count = std::min<std::size_t>({most, 5, bytes.size() - read_to_[file]});
    bytes.copy(to, count, read_to_[file]);
    read_to_[file] += count;
    return static_cast<ssize_t>(count);
  }
  ssize_t write(int file, const char* bytes, std::size_t count) override {
    if (fails()) return -1;
    const std::size_t some = std::min<std::size_t>(count, 7);  // a short write
    handles_[file]->bytes.append(bytes, some);
    return static_cast<ssize_t>(some);
  }
  int flush(int file) override {
    if (failed_) ++flushes_after_failure;
    if (fails()) return -1;
    if (handles_[file]) {
      handles_[file]->kept = handles_[file]->bytes;
      return 0;
    }
    std::erase_if(pending_, [&](const Pending& pending) {
      if (pending.folder != open_[file]) return false;
      pending.apply(kept_);
      return true;
    });
    return 0;
  }
  int close(int) override { return fails() ? -1 : 0; }
  int rename(const std::string& from, const std::string& to) override {
    if (fails()) return -1;
    change(to, [from, to, file = now_[from]](Names& names) {
      names[to] = file;
      names.erase(from);
    });
    return 0;
  }
  int remove(const std::string& path) override {
    if (fails()) return -1;
    if (!now_.contains(path)) return no(ENOENT);
    change(path, [path](Names& names) { names.erase(path); });
    return 0;
  }
  int make_folder(const std::string& path) override {
    if (fails()) return -1;
    if (now_.contains(path)) return no(EEXIST);
    change(path, [path](Names& names) { names[path] = nullptr; });
    return 0;
  }
  int find_file(const std::string& path) override {
    if (fails()) return -1;
    const auto found = now_.find(path);
    if (found == now_.end()) return no(ENOENT);
    return found->second ? 0 : no(EISDIR);
  }
  int take_after(int file, const std::string& path) override {
    if (fails()) return -1;
    if (!now_.contains(path)) return no(ENOENT);
    handles_[file]->mode = now_[path]->mode;
    return 0;
  }
  int is_at(int, const std::string&) override { return fails() ? -1 : 0; }
  std::vector<std::string> names_in(const std::string& folder) override {
    std::vector<std::string> names;
    for (const auto& [path, file] : now_) {
      if (folder_of(path) == folder) names.push_back(path.substr(folder.size() + 1));
    }
    return names;
  }
  int lock(int) override { return 0; }

  std::optional<std::string> text_now(const std::string& path) const {
    const auto found = now_.find(path);
    if (found == now_.end()) return std::nullopt;
    return found->second->bytes;
  }

  /// Every text the file may have when the power goes: each change of a name that was not flushed
  /// may have reached the disk or not, and of bytes that were not flushed none, some or all.
  std::vector<std::optional<std::string>> texts_after_cut(const std::string& path) const {
    std::vector<std::optional<std::string>> texts;
    for (unsigned which = 0; which < 1U << pending_.size(); ++which) {
      Names names = kept_;
      for (std::size_t i = 0; i < pending_.size(); ++i) {
        if ((which >> i & 1U) != 0) pending_[i].apply(names);
      }
      if (!reachable(names, path)) {
        texts.emplace_back(std::nullopt);
        continue;
      }
      const File& file = *names.at(path);
      const std::size_t lost = file.bytes.size() - file.kept.size();
      texts.emplace_back(file.kept);
      texts.emplace_back(file.bytes.substr(0, file.kept.size() + lost / 2));
      texts.emplace_back(file.bytes);
    }
    return texts;
  }
  void put(const std::string& path, const std::string& bytes) {
    now_[path] = std::make_shared<File>(File{bytes, bytes, 0600});
  }
  mode_t mode(const std::string& path) const { return now_.at(path)->mode; }
  std::size_t count() const { return now_.size(); }

 private:
  struct Pending {  // a change of a name that its folder has not flushed
    std::string folder;
    std::function<void(Names&)> apply;
  };

  static std::string folder_of(const std::string& path) { return path.substr(0, path.rfind('/')); }

  void change(const std::string& path, std::function<void(Names&)> apply) {
    apply(now_);
    pending_.push_back({folder_of(path), std::move(apply)});
  }
  bool fails() {
    ++calls;
    const bool cut = cut_at > 0 && calls > cut_at;
    if (calls != fail_at && !cut) return false;
    failed_ = true;
    errno = error;
    return true;
  }
  static int no(int reason) {
    errno = reason;
    return -1;
  }
  static bool reachable(const Names& names, const std::string& path) {
    for (std::size_t at = path.find('/', 1); at != std::string::npos; at = path.find('/', at + 1)) {
      if (!names.contains(path.substr(0, at))) return false;
    }
    return names.contains(path);
  }

  Names now_, kept_;
  std::vector<Pending> pending_;
  std::map<int, std::string> open_;
  std::map<int, std::size_t> read_to_;
  std::map<int, std::shared_ptr<File>> handles_;
  int last_ = 2;
  bool failed_ = false;
};

}  // namespace pluckbook
