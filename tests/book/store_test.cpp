#include "book/store.h"

#include <fcntl.h>
#include <gtest/gtest.h>
#include <sys/stat.h>

#include <functional>
#include <map>
#include <memory>

#include "book/book_folder.h"

namespace pluckbook {
namespace {

// A disk in memory that forgets what was not flushed, and fails one call on demand. Names live in
// folders: a name is kept once its folder was flushed, bytes once their file was.
class ForgetfulDisk : public FileSystem {
 public:
  struct File {
    std::string bytes, kept;
    mode_t mode = 0;
  };
  using Names = std::map<std::string, std::shared_ptr<File>>;  // a null file is a folder

  int fail_at = 0;  // the call that fails, from 1; 0 for none
  int error = EIO;  // how
  int calls = 0;    // made so far
  int flushes_after_failure = 0;

  explicit ForgetfulDisk(const std::optional<std::string>& old) {
    now_["/book"] = nullptr;
    if (old) {
      now_["/book/samples"] = nullptr;
      now_["/book/samples/a.yaml"] = std::make_shared<File>(File{*old, *old, 0640});
    }
    kept_ = now_;
  }

  int open(const std::string& path, int flags, mode_t mode) override {
    if (fails()) return -1;
    const auto found = now_.find(path);
    if (found == now_.end() && (flags & O_CREAT) == 0) return no(ENOENT);
    if (found != now_.end() && (flags & O_EXCL) != 0) return no(EEXIST);
    if (found == now_.end()) now_[path] = std::make_shared<File>(File{"", "", mode});
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
    const std::string folder = open_[file] + "/";
    const auto inside = [&](const std::string& path) {
      return path.starts_with(folder) && path.find('/', folder.size()) == std::string::npos;
    };
    std::erase_if(kept_, [&](const auto& name) { return inside(name.first); });
    for (const auto& name : now_) {
      if (inside(name.first)) kept_.insert(name);
    }
    return 0;
  }
  int close(int) override { return fails() ? -1 : 0; }
  int rename(const std::string& from, const std::string& to) override {
    if (fails()) return -1;
    now_[to] = now_[from];
    now_.erase(from);
    return 0;
  }
  int remove(const std::string& path) override {
    if (fails()) return -1;
    return now_.erase(path) == 1 ? 0 : no(ENOENT);
  }
  int make_folder(const std::string& path) override {
    if (fails()) return -1;
    if (now_.contains(path)) return no(EEXIST);
    now_[path] = nullptr;
    return 0;
  }
  int mode_of(const std::string& path) override {
    if (fails()) return -1;
    const auto found = now_.find(path);
    if (found == now_.end()) return no(ENOENT);
    return static_cast<int>(found->second->mode);
  }
  std::vector<std::string> names_in(const std::string& folder) override {
    std::vector<std::string> names;
    for (const auto& [path, file] : now_) {
      if (path.starts_with(folder + "/")) names.push_back(path.substr(folder.size() + 1));
    }
    return names;
  }
  int lock(int) override { return 0; }

  std::optional<std::string> text_now(const std::string& path) const { return text(now_, path); }
  /// After a power cut that lost every name not flushed into its folder.
  std::optional<std::string> text_after_cut(const std::string& path) const {
    const auto found = kept_.find(path);
    if (found == kept_.end() || !reachable(path)) return std::nullopt;
    return found->second->kept;
  }
  /// After a power cut that kept the names but no bytes that were not flushed.
  std::optional<std::string> text_after_cut_with_names(const std::string& path) const {
    const auto found = now_.find(path);
    if (found == now_.end()) return std::nullopt;
    return found->second->kept;
  }
  void put(const std::string& path, const std::string& bytes) {
    now_[path] = std::make_shared<File>(File{bytes, bytes, 0600});
  }
  mode_t mode(const std::string& path) const { return now_.at(path)->mode; }
  std::size_t count() const { return now_.size(); }

 private:
  bool fails() {
    if (++calls != fail_at) return false;
    failed_ = true;
    errno = error;
    return true;
  }
  static int no(int reason) {
    errno = reason;
    return -1;
  }
  bool reachable(const std::string& path) const {
    for (std::size_t at = path.find('/', 1); at != std::string::npos; at = path.find('/', at + 1)) {
      if (!kept_.contains(path.substr(0, at))) return false;
    }
    return true;
  }
  static std::optional<std::string> text(const Names& names, const std::string& path) {
    const auto found = names.find(path);
    if (found == names.end()) return std::nullopt;
    return found->second->bytes;
  }

  Names now_, kept_;
  std::map<int, std::string> open_;
  std::map<int, std::size_t> read_to_;
  std::map<int, std::shared_ptr<File>> handles_;
  int last_ = 2;
  bool failed_ = false;
};

const std::string path = "/book/samples/a.yaml";
const std::string old_text = "- bag: one\n  plucked: 2026-06-12\n";
const std::string new_text = old_text + "- bag: two\n  plucked: 2026-07-06\n";

Result<Done> replace(ForgetfulDisk& disk_, const std::optional<std::string>& expected) {
  return replace_file(disk_, "/book", "samples/a.yaml", new_text, expected);
}

TEST(Store, SuccessMeansTheChangeOutlastsAPowerCut) {
  for (const std::optional<std::string>& old : {std::optional<std::string>(), {old_text}}) {
    ForgetfulDisk files(old);
    ASSERT_TRUE(replace(files, old));
    EXPECT_EQ(files.text_after_cut(path), new_text);
    EXPECT_EQ(files.text_after_cut_with_names(path), new_text);
    EXPECT_EQ(files.count(), 3U) << "no draft is left beside the file";
  }
}

TEST(Store, WhicheverCallFailsTheOldOrTheNewFileIsWhole) {
  for (const std::optional<std::string>& old : {std::optional<std::string>(), {old_text}}) {
    ForgetfulDisk whole(old);
    ASSERT_TRUE(replace(whole, old));
    ASSERT_GT(whole.calls, 10);
    for (int n = 1; n <= whole.calls; ++n) {
      SCOPED_TRACE("call " + std::to_string(n) + (old ? " over an old file" : " for a new file"));
      ForgetfulDisk files(old);
      files.fail_at = n;
      const Result<Done> done = replace(files, old);
      for (const auto& text : {files.text_after_cut(path), files.text_after_cut_with_names(path)}) {
        EXPECT_TRUE(text == old || text == new_text) << text.value_or("no file");
        EXPECT_TRUE(!done || text == new_text);
      }
      if (done) continue;
      const Problem& problem = done.problems().front();
      EXPECT_EQ(problem.fault, Fault::system);
      const bool renamed = problem.remedy != "nothing was changed";
      EXPECT_EQ(files.text_now(path), renamed ? new_text : old);
    }
  }
}

TEST(Store, AFailedFlushIsNeverTriedAgain) {
  ForgetfulDisk whole(old_text);
  ASSERT_TRUE(replace(whole, old_text));
  int failed = 0;
  for (int n = 1; n <= whole.calls; ++n) {
    ForgetfulDisk files(old_text);
    files.fail_at = n;
    if (replace(files, old_text)) continue;
    ++failed;
    EXPECT_EQ(files.flushes_after_failure, 0) << "call " << n;
  }
  EXPECT_GT(failed, 10);
}

TEST(Store, ACallBrokenOffByASignalIsMadeAgain) {
  ForgetfulDisk whole(old_text);
  ASSERT_TRUE(replace(whole, old_text));
  int made_again = 0;
  for (int n = 1; n <= whole.calls; ++n) {
    ForgetfulDisk files(old_text);
    files.fail_at = n;
    files.error = EINTR;
    if (!replace(files, old_text)) continue;
    EXPECT_EQ(files.text_after_cut(path), new_text) << "call " << n;
    made_again += files.calls > whole.calls ? 1 : 0;
  }
  EXPECT_GT(made_again, 10);  // opens, reads and writes
}

TEST(Store, AFileChangedMeanwhileIsKeptAsItIs) {
  ForgetfulDisk files(old_text + "# a note by hand\n");
  const Result<Done> done = replace(files, old_text);
  ASSERT_FALSE(done);
  EXPECT_EQ(to_text(done.problems()[0]),
            "pluckbook: samples/a.yaml was changed by someone else meanwhile\n"
            "  nothing was written; run the command again\n");
  EXPECT_EQ(files.text_now(path), old_text + "# a note by hand\n");

  ForgetfulDisk appeared(old_text);
  EXPECT_FALSE(replace(appeared, std::nullopt));
  ForgetfulDisk vanished(std::nullopt);
  EXPECT_FALSE(replace(vanished, old_text));
}

TEST(Store, TheModeOfTheOldFileIsKept) {
  ForgetfulDisk files(old_text);
  ASSERT_TRUE(replace(files, old_text));
  EXPECT_EQ(files.mode(path), mode_t{0640});
}

TEST(Store, DraftsOfAPowerCutAreClearedAtTheNextWrite) {
  ForgetfulDisk files(old_text);
  files.put("/book/samples/.0123456789abcdef.new", "half a fi");
  files.put("/book/samples/.hidden", "someone's own");
  ASSERT_TRUE(replace(files, old_text));
  EXPECT_FALSE(files.text_now("/book/samples/.0123456789abcdef.new"));
  EXPECT_TRUE(files.text_now("/book/samples/.hidden"));
}

TEST(Store, AFullDiskIsSaidInPlainWords) {
  for (int n = 1; n < 100; ++n) {
    ForgetfulDisk files(old_text);
    files.error = ENOSPC;
    files.fail_at = n;
    const Result<Done> done = replace(files, old_text);
    if (done || done.problems()[0].what.find("write beside") == std::string::npos) continue;
    EXPECT_EQ(to_text(done.problems()[0]),
              "pluckbook: cannot write beside samples/a.yaml: No space left on device\n"
              "  nothing was changed\n");
    return;
  }
  FAIL() << "no call failed while the draft was written";
}

// ---- the real disk -----------------------------------------------------------------------------

TEST(Store, OnTheRealDiskModeAndTextAreRight) {
  const BookFolder folder;
  const std::string file = (folder.path() / "feeds.yaml").string();
  ASSERT_EQ(::chmod(file.c_str(), 0640), 0);
  const std::string old = folder.text("feeds.yaml");
  ASSERT_TRUE(replace_file(disk(), folder.path(), "feeds.yaml", old + "# more\n", old));
  EXPECT_EQ(folder.text("feeds.yaml"), old + "# more\n");
  struct stat facts {};
  ASSERT_EQ(::stat(file.c_str(), &facts), 0);
  EXPECT_EQ(facts.st_mode & 0777U, 0640U);
}

TEST(Store, ALinkIsNeverFollowedOutOfTheBook) {
  const BookFolder folder, other;
  const std::string outside = other.text("grazing.yaml");
  std::filesystem::remove(folder.path() / "grazing.yaml");
  std::filesystem::create_symlink(other.path() / "grazing.yaml", folder.path() / "grazing.yaml");
  EXPECT_FALSE(replace_file(disk(), folder.path(), "grazing.yaml", "x\n", outside));

  std::filesystem::remove_all(folder.path() / "samples");
  std::filesystem::create_directory_symlink(other.path() / "samples", folder.path() / "samples");
  EXPECT_FALSE(replace_file(disk(), folder.path(), "samples/2026/new.yaml", "x\n", std::nullopt));
  EXPECT_FALSE(std::filesystem::exists(other.path() / "samples/2026/new.yaml"));
  EXPECT_EQ(other.text("grazing.yaml"), outside);
  EXPECT_FALSE(replace_file(disk(), folder.path(), "../x.yaml", "x\n", std::nullopt));
}

TEST(Lock, ASecondWriterWaitsThenSaysWhoHoldsTheBook) {
  const BookFolder folder;
  {
    const Result<BookLock> first = lock_book(disk(), folder.path());
    ASSERT_TRUE(first);
    const Result<BookLock> second = lock_book(disk(), folder.path(), 100);
    ASSERT_FALSE(second);
    const Problem& problem = second.problems()[0];
    EXPECT_EQ(problem.fault, Fault::system);
    EXPECT_EQ(problem.what.substr(0, problem.what.find(" since")),
              "the book is being changed by process " + std::to_string(::getpid()));
  }
  EXPECT_TRUE(lock_book(disk(), folder.path(), 0));
}

}  // namespace
}  // namespace pluckbook
