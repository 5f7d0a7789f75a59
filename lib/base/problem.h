// problem.h - a bad input is a value: what is wrong, where, and what to do about it. Functions
// that can meet one return Result<T>; no exception crosses a module.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <variant>
#include <vector>

namespace pluckbook {

/// Where a Problem stands. Lines and columns count from 1; columns count characters, not bytes.
struct Place {
  std::string file;
  int line = 0;
  int column = 0;
  int length = 1;              // characters under the caret
  std::string line_text = {};  // the line as it stands in the file
  bool operator==(const Place&) const = default;
};

/// What the caller should do next; decides the exit status of the program.
enum class Fault {
  usage,   // the command line is wrong: exit 2
  input,   // the book or another input file is bad: exit 3
  system,  // disk or lock failed: exit 4
};

enum class Severity { error, warning };

struct Problem {
  Fault fault = Fault::input;
  Severity severity = Severity::error;
  std::string what;    // one line, no full stop: "crude protein 84 % is outside 0.5 to 45 %"
  std::string remedy;  // a sentence or two; may hold several lines
  std::optional<Place> place;
};

using Problems = std::vector<Problem>;

inline Problem usage_problem(std::string what, std::string remedy) {
  return {Fault::usage, Severity::error, std::move(what), std::move(remedy), std::nullopt};
}
inline Problem input_problem(std::string what, std::string remedy,
                             std::optional<Place> place = std::nullopt) {
  return {Fault::input, Severity::error, std::move(what), std::move(remedy), std::move(place)};
}
inline Problem system_problem(std::string what, std::string remedy) {
  return {Fault::system, Severity::error, std::move(what), std::move(remedy), std::nullopt};
}

/// A value, or at least one Problem. Must be looked at.
template <class T>
class [[nodiscard]] Result {
 public:
  Result(T value) : content_(std::move(value)) {}
  Result(Problem problem) : content_(Problems{std::move(problem)}) {}
  Result(Problems problems) : content_(std::move(problems)) {}

  bool ok() const { return std::holds_alternative<T>(content_); }
  explicit operator bool() const { return ok(); }

  /// Requires: ok().
  const T& operator*() const& { return std::get<T>(content_); }
  T& operator*() & { return std::get<T>(content_); }
  T&& operator*() && { return std::get<T>(std::move(content_)); }
  const T* operator->() const { return &std::get<T>(content_); }
  T* operator->() { return &std::get<T>(content_); }

  /// Requires: !ok().
  const Problems& problems() const { return std::get<Problems>(content_); }

 private:
  std::variant<T, Problems> content_;
};

/// For functions that do something and return nothing.
struct Done {};

/// The Problem as people read it: place, line, caret, remedy. Ends with a newline.
///   feeds.yaml:12:5: unknown key 'fright'
///      12 |     fright: 38
///         |     ^~~~~~
///     did you mean 'freight'?
std::string to_text(const Problem& problem);

}  // namespace pluckbook
