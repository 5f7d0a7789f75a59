#include "book/store.h"

#include <fcntl.h>
#include <fmt/format.h>

#include <algorithm>
#include <random>
#include <vector>

#include "base/text.h"
#include "book/disk_calls.h"

namespace pluckbook {
namespace {

namespace fs = std::filesystem;

/// 0, or the error.
int flush_folder(FileSystem& files, const fs::path& folder) {
  const OpenFile file(files, folder.string(), O_RDONLY | O_DIRECTORY);
  return file.is_open() && files.flush(file.get()) == 0 ? 0 : errno;
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
    if (const int error = flush_folder(files, parent)) {
      return cannot("keep the folder", at.string(), error);
    }
  }
  return std::nullopt;
}

// Drafts are named .0123456789abcdef.new.
constexpr std::string_view draft_ending = ".new";
constexpr std::size_t draft_digits = 16;

std::string draft_name() {
  std::random_device chance;
  return fmt::format(".{:08x}{:08x}{}", chance(), chance(), draft_ending);
}

bool is_draft_name(std::string_view name) {
  return name.size() == 1 + draft_digits + draft_ending.size() && name[0] == '.' &&
         name.ends_with(draft_ending) &&
         name.substr(1, draft_digits).find_first_not_of("0123456789abcdef") ==
             std::string_view::npos;
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

  /// Writes and flushes the text, for a file that is new or stands at `like`. 0, or the error.
  int write(std::string_view text, const std::optional<std::string>& like) {
    const mode_t mode = like ? 0600 : 0666;
    OpenFile file(files_, path_, O_WRONLY | O_CREAT | O_EXCL, mode);
    if (!file.is_open()) return errno;
    written_ = true;
    if (like && files_.take_after(file.get(), *like) != 0) return errno;
    if (!write_all(files_, file.get(), text)) return errno;
    if (files_.flush(file.get()) != 0) return errno;
    return file.close() == 0 ? 0 : errno;
  }
  /// 0, or the error.
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

Result<bool> holds(FileSystem& files, const std::string& path, const std::string& name,
                   const std::optional<std::string>& expected) {
  const std::optional<std::string> now = read_all(files, path);
  if (!now && errno != ENOENT) return cannot("read", name, errno);
  return now == expected;
}

bool leads_out(const std::string& name) {
  for (const fs::path& part : fs::path(name)) {
    if (part == "..") return true;
  }
  return fs::path(name).is_absolute() || name.empty();
}

// The folders of a book that hold its files: itself, samples, and one a year. No links.
std::vector<std::string> folders_with_files(FileSystem& files, const fs::path& folder) {
  const auto is_folder = [&](const std::string& name) {
    return files.find_file((folder / name).string()) != 0 && errno == EISDIR;
  };
  std::vector<std::string> names = {""};
  if (!is_folder("samples")) return names;
  names.emplace_back("samples");
  for (const std::string& year : files.names_in((folder / "samples").string())) {
    if (is_folder("samples/" + year)) names.push_back("samples/" + year);
  }
  return names;
}

}  // namespace

Result<Replaced> replace_file(FileSystem& files, const fs::path& folder, const std::string& name,
                              std::string_view text, const std::optional<std::string>& expected) {
  if (leads_out(name)) {
    return system_problem(fmt::format("'{}' is no file of the book", shown(name)),
                          "nothing was changed");
  }
  if (auto problem = make_folders(files, folder, name)) return *std::move(problem);
  const fs::path path = folder / name;
  const bool stands = files.find_file(path.string()) == 0;
  if (!stands && errno != ENOENT) return cannot("write", name, errno);
  Draft draft(files, path.parent_path());
  const auto like = stands ? std::optional(path.string()) : std::nullopt;
  if (const int error = draft.write(text, like)) return cannot("write beside", name, error);
  // Last, so that what an editor saves while the draft is flushed is seen.
  const Result<bool> unchanged = holds(files, path.string(), name, expected);
  if (!unchanged) return unchanged.problems();
  if (!*unchanged) return Replaced::changed_meanwhile;
  if (const int error = draft.take_place_of(path.string())) {
    return cannot("put the new text in", name, error);
  }
  if (const int error = flush_folder(files, path.parent_path())) {
    return cannot("flush the folder of", name, error,
                  "the change is made but may not outlast a power cut: look at the disk");
  }
  return Replaced::yes;
}

std::vector<std::string> leftover_drafts(FileSystem& files, const fs::path& folder) {
  std::vector<std::string> drafts;
  for (const std::string& below : folders_with_files(files, folder)) {
    const fs::path at = below.empty() ? folder : folder / below;
    for (const std::string& name : files.names_in(at.string())) {
      if (is_draft_name(name)) drafts.push_back((fs::path(below) / name).string());
    }
  }
  std::sort(drafts.begin(), drafts.end());
  return drafts;
}

std::vector<std::string> clear_drafts(FileSystem& files, const fs::path& folder) {
  std::vector<std::string> drafts = leftover_drafts(files, folder);
  std::erase_if(
      drafts, [&](const std::string& name) { return files.remove((folder / name).string()) != 0; });
  return drafts;
}

}  // namespace pluckbook
