// markup.h - HTML and SVG put together so that a book's own words cannot become elements: words()
// escapes, element() nests, and nothing else makes markup.
#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace pluckbook {

class Markup {
 public:
  Markup() = default;
  Markup& operator+=(const Markup& more) {
    text_ += more.text_;
    return *this;
  }
  friend Markup operator+(Markup a, const Markup& b) { return a += b; }
  bool empty() const { return text_.empty(); }
  const std::string& text() const { return text_; }

 private:
  explicit Markup(std::string text) : text_(std::move(text)) {}
  std::string text_;

  friend Markup words(std::string_view plain);
  friend Markup element(std::string_view, const std::vector<struct Attribute>&, const Markup&);
  friend Markup style_sheet(std::string_view css);
};

struct Attribute {
  std::string_view name;
  std::string value;
};

/// Plain text: markup signs escaped, control and direction characters spelled out.
Markup words(std::string_view plain);

/// <name attribute="value">content</name>; elements that HTML leaves empty (br, meta, ...) have no
/// end tag.
Markup element(std::string_view name, const std::vector<Attribute>& attributes,
               const Markup& content = {});
/// <name>content</name>
inline Markup tag(std::string_view name, const Markup& content) {
  return element(name, {}, content);
}

/// <style>: our own text only.
Markup style_sheet(std::string_view css);

}  // namespace pluckbook
