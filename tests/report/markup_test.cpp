#include "report/markup.h"

#include <gtest/gtest.h>

namespace pluckbook {
namespace {

TEST(Markup, ABooksWordsNeverBecomeElements) {
  EXPECT_EQ(words("<b onclick=\"x\">&'</b>").text(),
            "&lt;b onclick=&quot;x&quot;&gt;&amp;&#39;&lt;/b&gt;");
}

TEST(Markup, ControlAndDirectionSignsAreSpelledOut) {
  EXPECT_EQ(words("a\x1b[31m\u202e").text(), "a\\u001b[31m\\u202e");
}

TEST(Markup, AttributesAreEscapedAsWell) {
  EXPECT_EQ(element("a", {{"href", "#\"><script>"}}, words("x")).text(),
            "<a href=\"#&quot;&gt;&lt;script&gt;\">x</a>");
}

TEST(Markup, EmptyElementsHaveNoEndTag) {
  EXPECT_EQ(element("meta", {{"charset", "utf-8"}}).text(), "<meta charset=\"utf-8\">");
  EXPECT_EQ(tag("p", words("")).text(), "<p></p>");
}

}  // namespace
}  // namespace pluckbook
