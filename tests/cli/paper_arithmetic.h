// paper_arithmetic.h - does a printed line of arithmetic over again, knowing how far each printed
// number may be from the one behind it. Shares nothing with the program but the way it prints: a
// number with all the decimals of its kind is rounded (3; 4 of Mcal/kg; 5 of a bare number), one
// with fewer is exact.
#pragma once

#include <algorithm>
#include <cmath>
#include <optional>
#include <stdexcept>
#include <string>
#include <vector>

namespace pluckbook::testing {

struct Approximate {
  double value = 0, error = 0;
};

inline Approximate operator+(Approximate a, Approximate b) {
  return {a.value + b.value, a.error + b.error};
}
inline Approximate operator-(Approximate a, Approximate b) {
  return {a.value - b.value, a.error + b.error};
}
inline Approximate operator*(Approximate a, Approximate b) {
  return {a.value * b.value,
          std::abs(a.value) * b.error + std::abs(b.value) * a.error + a.error * b.error};
}
inline Approximate operator/(Approximate a, Approximate b) {
  const double quotient = a.value / b.value;
  return {quotient, (a.error + std::abs(quotient) * b.error) / (std::abs(b.value) - b.error)};
}
inline Approximate power(Approximate a, double n) {
  return {std::pow(a.value, n), std::abs(n * std::pow(a.value, n - 1)) * a.error};
}

/// Sums, products, powers, brackets, "the larger of A and B", "the smaller of A and B"; % is a
/// hundredth, other units are read over. Throws on anything else.
class PaperArithmetic {
 public:
  static Approximate of(const std::string& text) {
    PaperArithmetic paper(text);
    const Approximate value = paper.sum();
    if (paper.at_ != paper.tokens_.size()) throw std::runtime_error("left over: " + paper.next());
    return value;
  }

 private:
  explicit PaperArithmetic(const std::string& text) {
    std::string token;
    const auto end = [&] {
      if (!token.empty()) tokens_.push_back(token);
      token.clear();
    };
    for (const char c : text) {
      if (c == ' ' || c == '(' || c == ')') end();
      if (c == '(' || c == ')') tokens_.emplace_back(1, c);
      if (c != ' ' && c != '(' && c != ')') token += c;
    }
    end();
  }

  std::string next() const { return at_ < tokens_.size() ? tokens_[at_] : ""; }
  bool take(const std::string& token) {
    if (next() != token) return false;
    ++at_;
    return true;
  }
  void expect(const std::string& token) {
    if (!take(token)) throw std::runtime_error("expected " + token + ", found " + next());
  }

  Approximate sum() {
    Approximate value = product();
    for (;;) {
      if (take("+")) {
        value = value + product();
      } else if (take("-")) {
        value = value - product();
      } else {
        return value;
      }
    }
  }

  Approximate product() {
    Approximate value = raised();
    for (;;) {
      if (take("x")) {
        value = value * raised();
      } else if (take("/")) {
        value = value / raised();
      } else {
        return value;
      }
    }
  }

  Approximate raised() {
    const Approximate value = one();
    return take("^") ? power(value, number().value) : value;
  }

  Approximate one() {
    if (take("(")) {
      const Approximate value = sum();
      expect(")");
      return value;
    }
    if (take("the")) {
      const bool larger = take("larger");
      if (!larger) expect("smaller");
      expect("of");
      const Approximate a = sum();
      expect("and");
      const Approximate b = sum();
      return {larger ? std::max(a.value, b.value) : std::min(a.value, b.value),
              std::max(a.error, b.error)};
    }
    return number();
  }

  Approximate number() {
    const std::string digits = next();
    std::size_t used = 0;
    const double value = std::stod(digits, &used);
    if (used != digits.size()) throw std::runtime_error("no number: " + digits);
    ++at_;
    const std::size_t point = digits.find('.');
    const std::size_t decimals = point == std::string::npos ? 0 : digits.size() - point - 1;
    const std::string unit = take_unit();
    const std::size_t full = unit.empty() ? 5 : unit == "Mcal/kg" ? 4 : 3;
    const double error = decimals < full ? 0 : 0.5 * std::pow(10, -static_cast<double>(decimals));
    return unit == "%" ? Approximate{value / 100, error / 100} : Approximate{value, error};
  }

  std::string take_unit() {
    for (const char* unit : {"%", "lb", "kg", "lb/day", "kg/day", "Mcal", "Mcal/kg"})
      if (take(unit)) return unit;
    return "";
  }

  std::vector<std::string> tokens_;
  std::size_t at_ = 0;
};

/// A printed line: "quantity: words = numbers = result [3]", or without the words.
struct PrintedLine {
  std::string text, numbers, result;
};

/// Nothing where the text holds no arithmetic: a note ("- ...") and a source ("[3] ...") do not.
inline std::optional<PrintedLine> printed_line(const std::string& text) {
  if (text.rfind("- ", 0) == 0 || text.rfind("[", 0) == 0) return std::nullopt;
  const std::size_t last = text.rfind(" = ");
  if (last == std::string::npos || text.find(": ") == std::string::npos) return std::nullopt;
  const std::size_t before = text.rfind(" = ", last - 1);
  const std::size_t from = before == std::string::npos ? text.find(": ") + 2 : before + 3;
  const std::string result = text.substr(last + 3, text.find(" [", last) - last - 3);
  return PrintedLine{text, text.substr(from, last - from), result};
}

/// The lines of arithmetic of an answer; a line that goes on is indented.
inline std::vector<PrintedLine> printed_lines(const std::string& answer) {
  std::vector<std::string> entries;
  std::size_t at = 0;
  while (at < answer.size()) {
    const std::size_t end = std::min(answer.find('\n', at), answer.size());
    std::string row = answer.substr(at, end - at);
    at = end + 1;
    if (row.rfind("    ", 0) == 0 && !entries.empty()) {
      entries.back() += " " + row.substr(row.find_first_not_of(' '));
    } else {
      entries.push_back(std::move(row));
    }
  }
  std::vector<PrintedLine> lines;
  for (const std::string& entry : entries)
    if (auto line = printed_line(entry)) lines.push_back(std::move(*line));
  return lines;
}

/// How far the printed result is from the numbers before it, and how far rounding allows.
struct Difference {
  double off = 0, allowed = 0;
  bool within_rounding() const { return off <= allowed + 1e-9; }
};
inline Difference difference_of(const PrintedLine& line) {
  const Approximate worked = PaperArithmetic::of(line.numbers);
  const Approximate printed = PaperArithmetic::of(line.result);
  return {std::abs(worked.value - printed.value), worked.error + printed.error};
}

}  // namespace pluckbook::testing
