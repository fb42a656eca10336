#include "fuzz/xml_mutation.hpp"

#include "catch.hpp"
#include "fuzz/well_formed.hpp"

#include <cstdint>
#include <random>
#include <set>
#include <string>

using fingerturn::properties::is_xml;
using fingerturn::tests::change_xml;

namespace {

constexpr std::uint64_t kSeeds = 2000;

std::string changed(const std::string& text, std::uint64_t seed) {
  std::mt19937_64 engine(seed);
  return change_xml(text, engine).value_or("");
}

}  // namespace

TEST_CASE("every kind of change is made of a document, and nothing but a change") {
  const std::string text = R"(<r><a x="1"/><b x="2"/><c>3</c><d>4</d></r>)";
  std::set<std::string> all;
  for (std::uint64_t seed = 0; seed < kSeeds; ++seed) all.insert(changed(text, seed));
  for (const char* expected : {
           R"(<r><a x="1"/><b x="2"/><d>4</d></r>)",                  // lost
           R"(<r><a x="1"/><b x="2"/><c>3</c><c>3</c><d>4</d></r>)",  // doubled
           R"(<r><d>4</d><a x="1"/><b x="2"/><c>3</c></r>)",          // moved
           R"(<r><d>4</d><b x="2"/><c>3</c><a x="1"/></r>)",          // exchanged
           R"(<r><a x="2"/><b x="2"/><c>3</c><d>4</d></r>)",          // another's attribute
           R"(<r><a x="1"/><b x="2"/><c>4</c><d>4</d></r>)",          // another's text
       }) {
    CHECK(all.contains(expected));
  }
  CHECK_FALSE(all.contains(text));
}

TEST_CASE("well-formed XML stays well-formed however often it is changed") {
  const std::string first =
      R"(<?xml version="1.0" encoding="UTF-8"?><!DOCTYPE r PUBLIC "-//A//B" "c.dtd">)"
      R"(<!-- a --><r k="&lt;&quot;'"><?p q?><a><b>1 &lt; 2 &amp; 3</b><c l="é"/></a>)"
      R"(<![CDATA[<]]>d<a><b><b>4</b></b>&#9835;</a></r>)";
  std::string text = first;
  std::set<std::string> seen;
  for (std::uint64_t seed = 0; seed < kSeeds; ++seed) {
    const std::string next = changed(text, seed);
    CHECK(next == changed(text, seed));
    REQUIRE((next.empty() || is_xml(next)));
    seen.insert(next);
    text = next.size() > first.size() / 2 && next.size() < first.size() * 2 ? next : first;
  }
  CHECK(seen.size() > kSeeds / 10);
}

TEST_CASE("what is no XML, and a root alone, is not changed") {
  for (const char* text : {"", "RH: 1/4 C4:1", "<r><a></r>", "<r/>"}) {
    for (std::uint64_t seed = 0; seed < 100; ++seed) CHECK(changed(text, seed).empty());
  }
}
