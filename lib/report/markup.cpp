#include "report/markup.h"

#include <algorithm>
#include <array>

#include "base/text.h"

namespace pluckbook {
namespace {

std::string escaped(std::string_view plain) {
  std::string out;
  for (const char c : shown(plain, std::string_view::npos)) {
    switch (c) {
      case '&':
        out += "&amp;";
        break;
      case '<':
        out += "&lt;";
        break;
      case '>':
        out += "&gt;";
        break;
      case '"':
        out += "&quot;";
        break;
      case '\'':
        out += "&#39;";
        break;
      default:
        out += c;
    }
  }
  return out;
}

bool is_void(std::string_view name) {
  static constexpr std::array<std::string_view, 4> names = {"meta", "br", "hr", "link"};
  return std::find(names.begin(), names.end(), name) != names.end();
}

}  // namespace

Markup words(std::string_view plain) {
  return Markup(escaped(plain));
}

Markup element(std::string_view name, const std::vector<Attribute>& attributes,
               const Markup& content) {
  std::string text = "<" + std::string(name);
  for (const Attribute& attribute : attributes) {
    text += " " + std::string(attribute.name) + "=\"" + escaped(attribute.value) + "\"";
  }
  text += ">" + content.text();
  if (!is_void(name)) text += "</" + std::string(name) + ">";
  return Markup(text);
}

Markup style_sheet(std::string_view css) {
  return Markup("<style>" + std::string(css) + "</style>");
}

}  // namespace pluckbook
