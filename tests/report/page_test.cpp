#include "report/page.h"

#include <gtest/gtest.h>

#include "report/page_html.h"

namespace pluckbook {
namespace {

Page a_page() {
  Table table({{"feed", Align::left}, {"lb/day"}});
  table.add({"cube", "2.06"});
  Page page;
  page.sentence("Feed cubes.").heading("the mix").add(table).note("step up over 10 days");
  return page.next("pluckbook price cows");
}

TEST(Page, AsTextEachBlockStandsInOrder) {
  EXPECT_EQ(text_of(a_page()),
            "Feed cubes.\n"
            "\n"
            "the mix\n"
            "feed  lb/day\n"
            "cube    2.06\n"
            "- step up over 10 days\n"
            "next: pluckbook price cows\n");
}

TEST(Page, OnAWiderTerminalSentencesRunOn) {
  Page page;
  page.sentence(std::string(70, 'a') + " " + std::string(20, 'b'));
  EXPECT_EQ(text_of(page, 80), std::string(70, 'a') + "\n" + std::string(20, 'b') + "\n");
  EXPECT_EQ(text_of(page, 100), std::string(70, 'a') + " " + std::string(20, 'b') + "\n");
}

TEST(Page, AsHtmlAHeadingBeforeATableIsItsCaption) {
  EXPECT_EQ(html_of(a_page(), 3, "x").text(),
            "<p class=\"sentence\">Feed cubes.</p>"
            "<div class=\"tables\"><div class=\"table\"><table><caption>the mix</caption>"
            "<thead><tr><th scope=\"col\" class=\"text\">feed</th>"
            "<th scope=\"col\" class=\"number\">lb/day</th></tr></thead>"
            "<tbody><tr><th scope=\"row\" class=\"text\">cube</th>"
            "<td class=\"number\" data-head=\"lb/day\">2.06</td></tr></tbody></table></div></div>"
            "<ul><li>step up over 10 days</li></ul>");
}

TEST(Page, AsHtmlAnyOtherHeadingStandsAtTheLevelAsked) {
  Page page;
  page.heading("cautions").note("salt");
  EXPECT_EQ(html_of(page, 4, "x").text(), "<h4>cautions</h4><ul><li>salt</li></ul>");
}

}  // namespace
}  // namespace pluckbook
