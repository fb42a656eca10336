#pragma once

#include "fingerturn/analysis.hpp"
#include "fingerturn/fraction.hpp"

#include <algorithm>
#include <array>
#include <concepts>
#include <cstddef>
#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <type_traits>

namespace fingerturn {

/// A word of ours, which needs no escaping.
struct Word {
  std::string_view text;
};

/// The name of a member, put together with what stands around it while compiling.
template <std::size_t Size>
struct MemberName {
  std::array<char, Size + 3> written{};  ///< `,"name":`

  // A name is written as it is, in quotes, which is an array of letters.
  // NOLINTNEXTLINE(google-explicit-constructor,*-avoid-c-arrays)
  consteval MemberName(const char (&name)[Size]) {
    written[0] = ',';
    written[1] = written[Size + 1] = '"';
    written[Size + 2] = ':';
    for (std::size_t i = 0; i + 1 < Size; ++i) written[i + 2] = name[i];
  }
};

/// Writes JSON straight into a text and sets the commas. What a user wrote is escaped by the JSON
/// library, all else is written by hand: each event has some fifty values, and a tree of them takes
/// about ten times as long (tests/bench). Nothing here throws.
///
///     JsonWriter json(out);
///     json.object([&] {
///       json.member<"title">("Lantern Street");
///       json.member<"bars">([&] { json.list(bars, [&](int bar) { json.value(bar); }); });
///     });
class JsonWriter {
 public:
  explicit JsonWriter(std::string& out) noexcept : out_(out) {}

  template <typename Write>
  void object(const Write& write) {
    begin('{');
    write();
    end('}');
  }
  /// A list in which `write` writes each element.
  template <typename List, typename Write>
  void list(const List& list, const Write& write) {
    begin('[');
    for (const auto& element : list) write(element);
    end(']');
  }
  /// The same, each element after a line break.
  template <typename List, typename Write>
  void list(const List& list, std::string_view line_break, const Write& write) {
    begin('[');
    for (const auto& element : list) {
      this->line_break(line_break);
      write(element);
    }
    end(']');
  }

  /// A member of an object: its name, and a value or what writes one.
  template <MemberName name, typename Value>
  void member(const Value& value) {
    // Either way a size that is known while compiling.
    if (fresh_) {
      out_.append(name.written.data() + 1, name.written.size() - 1);
    } else {
      out_.append(name.written.data(), name.written.size());
    }
    fresh_ = true;
    if constexpr (std::is_invocable_v<Value>) {
      value();
    } else {
      this->value(value);
    }
  }

  /// Goes on in another line before what comes next; an empty break goes on in the same.
  void line_break(std::string_view line_break) {
    if (line_break.empty()) return;
    comma();
    out_ += line_break;
    fresh_ = true;
  }

  void value(Word word) {
    comma();
    const std::size_t begin = out_.size();
    out_.resize(begin + word.text.size() + 2, '"');
    std::copy(word.text.begin(), word.text.end(), out_.data() + begin + 1);
  }
  /// A text that somebody wrote; bytes that are not UTF-8 become U+FFFD.
  void value(std::string_view text);
  void value(const std::string& text) { value(std::string_view(text)); }
  void value(const char* text) { value(std::string_view(text)); }
  template <std::integral Number>
  void value(Number number) {
    if constexpr (std::same_as<Number, bool>) {
      raw(number ? "true" : "false");
    } else {
      add_whole(static_cast<std::int64_t>(number));
    }
  }
  /// A number rounded to two decimals, "12.5" or "-3.0"; null where it is none.
  void value(double number);
  /// The same number in full.
  void exact(double number);
  /// "3/8", as a text.
  void value(const Fraction& fraction);
  template <typename Value>
  void value(const std::optional<Value>& value) {
    if (value) {
      this->value(*value);
    } else {
      raw("null");
    }
  }
  /// What is JSON already.
  void raw(std::string_view json) {
    comma();
    out_ += json;
  }
  /// A text of ours that `add` adds, without quotes or other letters that need escaping.
  template <typename Add>
  void own_text(const Add& add) {
    comma();
    out_ += '"';
    add(out_);
    out_ += '"';
  }

 private:
  void comma() {
    if (!fresh_) out_ += ',';
    fresh_ = false;
  }
  void begin(char bracket) {
    comma();
    out_ += bracket;
    fresh_ = true;
  }
  void end(char bracket) {
    out_ += bracket;
    fresh_ = false;
  }
  void add_whole(std::int64_t number);

  std::string& out_;
  bool fresh_ = true;  ///< nothing stands before in its object or list, or a key does
};

/// The name of something that has one among the words of the reports; none where there is nothing.
template <typename Named>
std::optional<Word> word_of(const std::optional<Named>& named) {
  if (!named) return std::nullopt;
  return Word{name_of(*named)};
}

}  // namespace fingerturn
