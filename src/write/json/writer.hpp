#pragma once

#include "fingerturn/analysis.hpp"
#include "text/text_out.hpp"
#include "write/json/letters.hpp"

#include <array>
#include <cstddef>
#include <optional>
#include <string>
#include <string_view>
#include <type_traits>

namespace fingerturn {

/// The name of a member, put together with what stands around it while compiling.
template <std::size_t Size>
struct MemberName {
  std::array<char, Size + 2> written{};  ///< `"name":`

  // A name is written as it is, in quotes, which is an array of letters.
  // NOLINTNEXTLINE(google-explicit-constructor,*-avoid-c-arrays)
  consteval MemberName(const char (&name)[Size]) {
    written[0] = written[Size] = '"';
    written[Size + 1] = ':';
    for (std::size_t i = 0; i + 1 < Size; ++i) written[i + 1] = name[i];
  }
};

/// Writes JSON straight into a text and sets the commas: one after each value, which the closing
/// bracket takes away again, so that nothing has to be remembered. What a user wrote is escaped by
/// the JSON library, all else is written by hand: each event has some fifty values, and a tree of
/// them takes about ten times as long (tests/bench).
///
///     JsonWriter json(out);
///     json.document([&] {
///       json.member<"title">("Lantern Street");
///       json.member<"bars">([&] { json.list(bars, [&](int bar) { json.value(bar); }); });
///     });
class JsonWriter {
 public:
  explicit JsonWriter(TextOut& out) noexcept : out_(out) {}

  /// An object that is the whole of a document, and a line feed.
  template <typename Write>
  void document(const Write& write) {
    object(write);
    out_.take_back(',');
    out_.add('\n');
  }
  template <typename Write>
  void object(const Write& write) {
    out_.add('{');
    write();
    close('}');
  }
  /// A list in which `write` writes each element, after a line break or an empty one.
  template <typename List, typename Write>
  void list(const List& list, std::string_view line_break, const Write& write) {
    out_.add('[');
    for (const auto& element : list) {
      out_.add(line_break);
      write(element);
    }
    close(']');
  }
  template <typename List, typename Write>
  void list(const List& list, const Write& write) {
    this->list(list, {}, write);
  }

  /// A member of an object: its name, and a value or what writes one.
  template <MemberName name, typename Value>
  void member(const Value& value) {
    if constexpr (FewLetters<Value>) {
      char* at = out_.room_for(name.written.size() + most_letters(value) + 1);
      out_.ends_at(put_with_comma(put(at, name.written), value));
    } else if constexpr (std::is_invocable_v<Value>) {
      out_.add(name.written);
      value();
    } else {
      out_.add(name.written);
      this->value(value);
    }
  }

  /// Goes on in another line with what comes next; an empty break goes on in the same.
  void line_break(std::string_view line_break) { out_.add(line_break); }

  template <FewLetters Value>
  void value(const Value& value) {
    out_.ends_at(put_with_comma(out_.room_for(most_letters(value) + 1), value));
  }
  /// A text that somebody wrote. Bytes that are not UTF-8 become U+FFFD, and characters that act
  /// instead of being shown stand as \uXXXX.
  void value(std::string_view text);
  void value(const std::string& text) { value(std::string_view(text)); }
  void value(const char* text) { value(std::string_view(text)); }
  template <typename Text>
  void value(const std::optional<Text>& text) {
    if (text) {
      value(*text);
    } else {
      raw("null");
    }
  }
  /// A number in full.
  void exact(double number);
  /// What is JSON already.
  void raw(std::string_view json) {
    out_.add(json);
    out_.add(',');
  }
  /// A text of ours that `add` adds, without quotes or other letters that need escaping.
  template <typename Add>
  void own_text(const Add& add) {
    out_.add('"');
    text_.clear();
    add(text_);
    out_.add(text_);
    out_.add(kEndOfText);
  }

 private:
  /// Only a comma stands between the last of an object or a list and its end.
  void close(char bracket) {
    out_.take_back(',');
    out_.add(std::array{bracket, ','});
  }
  template <typename Value>
  static char* put_with_comma(char* at, const Value& value) {
    char* end = put(at, value);
    *end = ',';
    return end + 1;
  }

  static constexpr std::array kEndOfText{'"', ','};

  TextOut& out_;
  std::string text_;  ///< kept for its room
};

/// The name of something that has one among the words of the reports; none where there is nothing.
template <typename Named>
std::optional<Word> word_of(const std::optional<Named>& named) {
  if (!named) return std::nullopt;
  return Word{name_of(*named)};
}

}  // namespace fingerturn
