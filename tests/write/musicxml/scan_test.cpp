#include "write/musicxml/scan.hpp"

#include "catch.hpp"

#include <string>

/// Against XML 1.0 (fifth edition): 2.4 character data, 2.5 comments, 2.6 processing instructions,
/// 2.7 CDATA sections, 2.8 the document type declaration, 3.1 tags.
using namespace fingerturn;

namespace {

/// The tags as "<name", "</name" or "<name/" with their places, and "broken" at the end if it is.
std::string tags_of(std::string_view text) {
  std::string out;
  XmlScan scan(text);
  while (const std::optional<XmlTag> tag = scan.next()) {
    out += tag->kind == XmlTagKind::closing ? "</" : "<";
    out += std::string(tag->name) + (tag->kind == XmlTagKind::alone ? "/" : "");
    out += '@' + std::to_string(tag->begin) + '-' + std::to_string(tag->end) + ' ';
  }
  CHECK_FALSE(scan.next());
  return out + (scan.broken() ? "broken" : "");
}

struct Case {
  std::string_view text;
  std::string_view tags;
};

}  // namespace

TEST_CASE("tags of an XML text with their places") {
  const Case tested = GENERATE(values<Case>({
      {"", ""},
      {"no tag > at all", ""},
      {"<a>b</a>", "<a@0-3 </a@4-8 "},
      {"<a/>", "<a/@0-4 "},
      {"<a b='/>'/ >", "<a@0-12 "},
      {"<a b='c' />x", "<a/@0-11 "},
      {"<a b=\">'\">", "<a@0-10 "},
      {"<a\nb='<'>", "<a@0-9 "},
      {"</a\n>", "</a@0-5 "},
      {"<!-- <b> -- > --><a/>", "<a/@17-21 "},
      {"<a><![CDATA[<b>]]></a>", "<a@0-3 </a@18-22 "},
      {"<?xml version='1.0'?><a/>", "<a/@21-25 "},
      {"<?p <b> > ?><a/>", "<a/@12-16 "},
      {"<!DOCTYPE a><a/>", "<a/@12-16 "},
      {"<!DOCTYPE a PUBLIC \"<>\" '>'><a/>", "<a/@28-32 "},
      {"<!DOCTYPE a [<!ENTITY e \"]>\"><!-- ]> ' --><?p ]> ?>]><a/>", "<a/@53-57 "},
      {"<<a>", "broken"},
      {"<>", "broken"},
      {"</>", "broken"},
      {"< a>", "broken"},
      {"<a", "broken"},
      {"<a b='>", "broken"},
      {"<a <b>", "broken"},
      {"<a/><!-- ", "<a/@0-4 broken"},
      {"<a/><!-", "<a/@0-4 broken"},
      {"<a/><![CDATA[ ]]", "<a/@0-4 broken"},
      {"<a/><?p ", "<a/@0-4 broken"},
      {"<!DOCTYPE a [ > ", "broken"},
      {"<!DOCTYPE a ' >", "broken"},
      {"<!DOCTYPE a [<!-- ]>", "broken"},
  }));
  CAPTURE(tested.text);
  CHECK(tags_of(tested.text) == tested.tags);
}

TEST_CASE("attributes of a tag") {
  XmlScan scan("<a one='1' two=\"'2>\"  three = '' b:four='&lt;'/>");
  const std::optional<XmlTag> tag = scan.next();
  REQUIRE(tag);
  CHECK(attribute_of(*tag, "one") == "1");
  CHECK(attribute_of(*tag, "two") == "'2>");
  CHECK(attribute_of(*tag, "three") == "");
  CHECK(attribute_of(*tag, "b:four") == "&lt;");
  CHECK_FALSE(attribute_of(*tag, "four"));
  CHECK_FALSE(attribute_of(*tag, "1"));
  CHECK_FALSE(attribute_of(*tag, ""));
}

TEST_CASE("attributes that are none") {
  for (const char* const text : {"<a>", "<a one>", "<a one two='2'>", "<a one=two>", "<a =>"}) {
    CAPTURE(text);
    XmlScan scan(text);
    const std::optional<XmlTag> tag = scan.next();
    REQUIRE(tag);
    CHECK_FALSE(attribute_of(*tag, "two"));
  }
}

TEST_CASE("a long text is scanned in proportion to its length") {
  constexpr std::size_t kTags = 1000000;
  std::string text;
  for (std::size_t i = 0; i < kTags; ++i) text += "<a>";
  XmlScan scan(text);
  std::size_t tags = 0;
  while (scan.next()) ++tags;
  CHECK(tags == kTags);
  CHECK_FALSE(scan.broken());
}
