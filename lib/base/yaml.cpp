#include "base/yaml.h"

#include <fmt/format.h>
#include <yaml-cpp/eventhandler.h>
#include <yaml-cpp/exceptions.h>
#include <yaml-cpp/mark.h>
#include <yaml-cpp/parser.h>

#include <algorithm>
#include <array>
#include <new>
#include <optional>
#include <set>
#include <sstream>

#include "base/text.h"
#include "base/yaml_bytes.h"

namespace pluckbook {
namespace {

bool is_quote(char c) {
  return c == '"' || c == '\'';
}

struct Refused {  // thrown through yaml-cpp, caught in read_yaml
  Problem problem;
  bool of_structure = false;  // a quote left open may be the cause
};

Problem open_quote_problem(const std::string& file, std::string_view text, std::size_t at) {
  return input_problem(
      "this quote is not closed on its line",
      "close it where the text ends; for text of several lines use '|' and indent it",
      place_at(file, text, at));
}

// A quote or a bracket left open makes the parser stumble somewhere else: then that is what to say.
Problem likelier(const std::string& file, std::string_view text, Problem stumble) {
  if (const auto quote = open_quote(text)) return open_quote_problem(file, text, *quote);
  const auto bracket = open_bracket(text);
  if (!bracket) return stumble;
  const char open = text[*bracket];
  return input_problem(fmt::format("this '{}' is never closed", open),
                       fmt::format("close it with '{}'", open == '{' ? '}' : ']'),
                       place_at(file, text, *bracket));
}

// Builds the tree and refuses what a book has no use for.
class TreeBuilder : public YAML::EventHandler {
 public:
  TreeBuilder(const std::string& file, std::string_view text, const YamlLimits& limits)
      : file_(file), text_(text), limits_(limits) {}

  YamlNode take_root() { return std::move(root_); }

  void OnDocumentStart(const YAML::Mark& mark) override {
    if (!document_seen_) {
      document_seen_ = true;
      return;
    }
    const std::size_t at = offset(mark);
    const bool marked = text_.substr(at).starts_with("---");
    refuse(at, marked ? "a second part begins here" : "text stands after the end of the record",
           marked ? "a file of the book is one part: remove the '---'"
                  : "remove it, or check the brackets before it");
  }
  void OnDocumentEnd() override {}

  void OnAnchor(const YAML::Mark& mark, const std::string& name) override {
    refuse(offset(mark), "text cannot begin with '&'",
           fmt::format("put it in quotes, \"&{}\", or write the value out", shown(name)));
  }
  void OnAlias(const YAML::Mark& mark, YAML::anchor_t) override {
    refuse(offset(mark), "text cannot begin with '*'",
           "put it in quotes, or write out the value it stands for");
  }

  void OnNull(const YAML::Mark& mark, YAML::anchor_t) override {
    YamlNode node = begin(mark, YamlNode::Kind::null);
    if (!open_.empty() && open_.back().key) {
      const YamlNode& key = *open_.back().key;
      if (!colon_follows(key)) {
        refuse(key.begin, fmt::format("'{}' has no colon after it", shown(key.text)),
               "write  key: value");
      }
      // An absent value has no place of its own: the parser gives the next token's.
      node.line = key.line, node.column = key.column, node.begin = key.begin;
    }
    attach(std::move(node));
  }

  void OnScalar(const YAML::Mark& mark, const std::string&, YAML::anchor_t,
                const std::string& value) override {
    YamlNode node = begin(mark, YamlNode::Kind::scalar);
    const char first = node.begin < text_.size() ? text_[node.begin] : '\0';
    const bool block = first == '|' || first == '>';
    node.quoted = is_quote(first) || block;
    if (is_quote(first)) check_quotes(node.begin);
    check_text(node.begin, value, block);
    node.text = value;
    attach(std::move(node));
  }

  void OnSequenceStart(const YAML::Mark& mark, const std::string&, YAML::anchor_t,
                       YAML::EmitterStyle::value) override {
    open(begin(mark, YamlNode::Kind::list));
  }
  void OnSequenceEnd() override { close(); }
  void OnMapStart(const YAML::Mark& mark, const std::string&, YAML::anchor_t,
                  YAML::EmitterStyle::value) override {
    open(begin(mark, YamlNode::Kind::map));
  }
  void OnMapEnd() override { close(); }

 private:
  struct Open {
    YamlNode node;
    std::optional<YamlNode> key;
    std::set<std::string, std::less<>> keys;
  };

  [[noreturn]] void refuse(std::size_t at, std::string what, std::string remedy) const {
    throw Refused{input_problem(std::move(what), std::move(remedy), place_at(file_, text_, at))};
  }

  // yaml-cpp's mark.pos counts bytes from behind the byte order mark; its column counts bytes too.
  std::size_t offset(const YAML::Mark& mark) const {
    return std::min(start_of_text(text_) + static_cast<std::size_t>(std::max(0, mark.pos)),
                    text_.size());
  }

  YamlNode begin(const YAML::Mark& mark, YamlNode::Kind kind) {
    YamlNode node;
    node.kind = kind;
    node.begin = offset(mark);
    node.line = mark.line + 1;
    node.column = column(node.begin);
    if (kind != YamlNode::Kind::null && text_.substr(node.begin).starts_with('!')) {
      refuse(node.begin, "text cannot begin with '!'", "put it in quotes, or take the '!' away");
    }
    if (++nodes_ > limits_.nodes) {
      refuse(node.begin, fmt::format("more than {} values in one file", limits_.nodes),
             "split the file");
    }
    return node;
  }

  // Nodes come in order, so the columns of a long line are counted once.
  int column(std::size_t at) {
    if (at < counted_at_ || at > line_.end) {
      line_ = line_around(text_, at);
      counted_at_ = line_.begin;
      counted_column_ = 1;
    }
    counted_column_ += static_cast<int>(characters(text_.substr(counted_at_, at - counted_at_)));
    counted_at_ = at;
    return counted_column_;
  }

  // yaml-cpp lets a forgotten quote swallow the lines below it, to the end of the file if need be.
  void check_quotes(std::size_t at) const {
    const std::size_t end = past_closing_quote(text_, at);
    if (end == std::string_view::npos || text_.substr(at, end - at).find('\n') < end) {
      throw Refused{open_quote_problem(file_, text_, at)};
    }
  }

  void check_text(std::size_t at, const std::string& value, bool block) const {
    if (value.size() <= limits_.text && std::all_of(value.begin(), value.end(), is_plain)) return;
    if (characters(value) > limits_.text) {
      refuse(at, fmt::format("this text is longer than {} characters", limits_.text), "shorten it");
    }
    for (char32_t code : code_points(value)) {
      if (!is_unsafe(code) || (block && code == '\n')) continue;
      refuse(at,
             fmt::format("this text holds a control or direction character (U+{:04X})",
                         static_cast<unsigned>(code)),
             "remove it, and any escape such as \\e or \\u that stands for it");
    }
  }

  bool colon_follows(const YamlNode& key) const {
    std::size_t end = key.begin + key.text.size();
    if (key.quoted) end = past_closing_quote(text_, key.begin);
    end = std::min(text_.find_first_not_of(" \t", std::min(end, text_.size())), text_.size());
    return end < text_.size() && text_[end] == ':';
  }

  void open(YamlNode node) {
    if (static_cast<int>(open_.size()) >= limits_.depth) {
      refuse(node.begin, fmt::format("brackets or indents nested more than {} deep", limits_.depth),
             "check the brackets and the indentation");
    }
    if (!open_.empty() && expects_key()) refuse_key(node.begin);
    open_.push_back({std::move(node), std::nullopt, {}});
  }

  void close() {
    YamlNode node = std::move(open_.back().node);
    open_.pop_back();
    attach(std::move(node));
  }

  bool expects_key() const {
    return open_.back().node.kind == YamlNode::Kind::map && !open_.back().key;
  }

  [[noreturn]] void refuse_key(std::size_t at) const {
    throw Refused{input_problem("a key must be a plain word", "write  key: value",
                                place_at(file_, text_, at)),
                  true};
  }

  void attach(YamlNode node) {
    if (open_.empty()) {
      root_ = std::move(node);
    } else if (open_.back().node.kind == YamlNode::Kind::list) {
      open_.back().node.items.push_back(std::move(node));
    } else if (expects_key()) {
      take_key(std::move(node));
    } else {
      Open& map = open_.back();
      map.node.entries.push_back({std::move(*map.key), std::move(node)});
      map.key.reset();
    }
  }

  void take_key(YamlNode key) {
    if (key.kind != YamlNode::Kind::scalar || key.text.empty()) refuse_key(key.begin);
    if (key.text == "<<" && !key.quoted) {
      refuse(key.begin, "'<<' is no key of a book", "write the keys out");
    }
    if (!open_.back().keys.insert(key.text).second) {
      const std::vector<YamlNode::Entry>& entries = open_.back().node.entries;
      const auto first = std::find_if(entries.begin(), entries.end(), [&](const auto& entry) {
        return entry.key.text == key.text;
      });
      refuse(key.begin,
             fmt::format("'{}' is given twice; first on line {}", shown(key.text), first->key.line),
             "keep one of them");
    }
    open_.back().key = std::move(key);
  }

  const std::string& file_;
  std::string_view text_;
  const YamlLimits& limits_;
  std::vector<Open> open_;
  YamlNode root_;
  int nodes_ = 0;
  bool document_seen_ = false;
  LineSpan line_ = {1, 0};      // the line last counted in; none yet
  std::size_t counted_at_ = 0;  // the byte up to which its columns are counted
  int counted_column_ = 1;
};

// What the parser's words mean to someone writing a book.
Problem parser_problem(const std::string& file, std::string_view text,
                       const YAML::ParserException& error) {
  struct Meaning {
    std::string_view said, what, remedy;
  };
  static constexpr std::array<Meaning, 9> meanings = {{
      {"end of map not found", "this line does not fit the lines above it",
       "give each key its own line, as far in as its neighbours;\n"
       "put text that holds quotes in quotes as a whole"},
      {"end of sequence not found", "this line does not fit the list above it",
       "begin it with '- ', as far in as the other items"},
      {"illegal flow end", "a bracket is closed that was never opened",
       "remove it, or put the text in quotes"},
      {"illegal map value", "a ':' stands where no value can begin",
       "look for a ':' missing on the line above; put text that holds ': ' in quotes"},
      {"the referenced anchor", "text cannot begin with '*'",
       "put it in quotes, or write out the value it stands for"},
      {"alias not found", "text cannot begin with '*'",
       "put it in quotes, or write out the value it stands for"},
      {"unknown escape character", "this '\\' begins an escape that does not exist",
       "write '\\\\' for one '\\', or use single quotes"},
      {"unknown token", "text cannot begin with this character", "put the text in quotes"},
      {"illegal block entry", "a list cannot begin here", "begin it on the next line"},
  }};
  const std::size_t at =
      start_of_text(text) + static_cast<std::size_t>(std::max(0, error.mark.pos));
  Place place = place_at(file, text, at);
  for (const Meaning& meaning : meanings) {
    if (error.msg.starts_with(meaning.said)) {
      return input_problem(std::string(meaning.what), std::string(meaning.remedy),
                           std::move(place));
    }
  }
  return input_problem("this cannot be read as a file of the book",
                       "look at this line and the one above it; put text with signs such as\n"
                       "'|', '>', '*' or '&' in quotes",
                       std::move(place));
}

}  // namespace

const YamlNode* YamlNode::find(std::string_view key) const {
  const auto entry = std::find_if(entries.begin(), entries.end(),
                                  [&](const Entry& e) { return e.key.text == key; });
  return entry == entries.end() ? nullptr : &entry->value;
}

Place YamlDocument::place_of(const YamlNode& node) const {
  const std::string_view rest = std::string_view(text).substr(std::min(node.begin, text.size()));
  std::size_t length = 1;
  if (!rest.empty() && is_quote(rest[0])) {
    const std::size_t end = past_closing_quote(rest, 0);
    if (end != std::string_view::npos) length = characters(rest.substr(0, end));
  } else if (node.kind == YamlNode::Kind::scalar && rest.starts_with(node.text)) {
    length = characters(node.text);
  }
  return place_on_line(node.line, file, text, node.begin, length);
}

Result<YamlDocument> read_yaml(std::string file, std::string text, const YamlLimits& limits) {
  if (auto problem = refuse_bytes(file, text, limits)) return *std::move(problem);
  YamlDocument document{std::move(file), std::move(text), {}};
  try {
    std::istringstream stream(document.text.substr(start_of_text(document.text)));
    YAML::Parser parser(stream);
    TreeBuilder builder(document.file, document.text, limits);
    // The second call is there to refuse what stands after the first document.
    if (parser.HandleNextDocument(builder)) parser.HandleNextDocument(builder);
    document.root = builder.take_root();
    return document;
  } catch (Refused& refused) {
    if (!refused.of_structure) return std::move(refused.problem);
    return likelier(document.file, document.text, std::move(refused.problem));
  } catch (const YAML::ParserException& error) {
    return likelier(document.file, document.text,
                    parser_problem(document.file, document.text, error));
  } catch (const std::bad_alloc&) {
    throw;  // no fault of the file
  } catch (const std::exception&) {
    return input_problem("the file cannot be read as a file of the book",
                         "check that it is the file you meant", Place{document.file, 0, 0, 1, ""});
  }
}

}  // namespace pluckbook
