#include "text/address.hpp"

#include "text/words.hpp"

#include <algorithm>
#include <array>

namespace fingerturn {
namespace {

constexpr std::size_t kNowhere = std::string_view::npos;

/// Endings of names that renderers know, beside those of countries.
constexpr std::array<std::string_view, 23> kEndings{
    "com",  "org",    "net",  "edu", "gov", "int",  "mil",         "info",
    "biz",  "name",   "pro",  "web", "xxx", "aero", "asia",        "cat",
    "coop", "museum", "shop", "app", "dev", "xyz",  "\u0440\u0444"};

/// The second letters of the endings of countries, by the first (ISO 3166-1, and a few more that
/// are in use). Roman numbers are among them, as in "No.VI", but not all.
constexpr std::array<std::string_view, 26> kCountries{"cdefgilmnoqrstuwxz",
                                                      "abdefghijlmnoqrstvwyz",
                                                      "acdfghiklmnoruvwxyz",
                                                      "ejkmoz",
                                                      "ceghrstu",
                                                      "ijkmor",
                                                      "abdefghilmnpqrstuwy",
                                                      "kmnrtu",
                                                      "delmnoqrst",
                                                      "emop",
                                                      "eghimnprwyz",
                                                      "abcikrstuvy",
                                                      "acdefghklmnopqrstuvwxyz",
                                                      "acefgilopruz",
                                                      "m",
                                                      "aefghklmnrstwy",
                                                      "a",
                                                      "eosuw",
                                                      "abcdeghijklmnorstuvxyz",
                                                      "cdfghjklmnortvwz",
                                                      "agkmsyz",
                                                      "aceginu",
                                                      "fs",
                                                      "",
                                                      "et",
                                                      "amw"};

/// A letter or a digit, or a part of one that is not ASCII.
bool is_letter_or_digit(char sign) noexcept {
  const bool letter = (sign >= 'a' && sign <= 'z') || (sign >= 'A' && sign <= 'Z');
  return letter || (sign >= '0' && sign <= '9') || static_cast<unsigned char>(sign) >= 0x80;
}

bool is_in_name(char sign) noexcept { return is_letter_or_digit(sign) || sign == '-'; }

bool is_country(std::string_view ending) noexcept {
  if (ending.size() != 2) return false;
  const char first = lower_case_of(ending.front());
  if (first < 'a' || first > 'z') return false;
  return kCountries.at(static_cast<std::size_t>(first - 'a')).find(lower_case_of(ending.back())) !=
         kNowhere;
}

bool is_known_ending(std::string_view ending) noexcept {
  constexpr std::string_view kEncoded = "xn--";
  return is_country(ending) || is_in_lower_case(ending.substr(0, kEncoded.size()), kEncoded) ||
         std::any_of(kEndings.begin(), kEndings.end(),
                     [ending](std::string_view known) { return is_in_lower_case(ending, known); });
}

/// The part of a name that begins here.
std::string_view part_of_name(std::string_view text) noexcept {
  std::size_t length = 0;
  while (length < text.size() && is_in_name(text[length])) ++length;
  return text.substr(0, length);
}

/// Whether a name ends behind this dot, and as names of the net end.
bool ends_name(std::string_view word, std::size_t dot) noexcept {
  constexpr std::string_view kOpening = ".:@/";
  // Before the word may stand a sign that is taken for a letter.
  if (dot > 0 && kOpening.find(word[dot - 1]) != kNowhere) return false;
  const std::string_view ending = part_of_name(word.substr(dot + 1));
  const std::string_view rest = word.substr(dot + 1 + ending.size());
  const bool goes_on = rest.size() > 1 && rest[0] == '.' && is_in_name(rest[1]);
  return !goes_on && is_known_ending(ending);
}

/// Whether a name such as "a.example.org" stands in the word, and not as the name of a file in a
/// folder.
bool has_name_of_the_net(std::string_view word) noexcept {
  std::size_t begin = 0;  // of the name
  for (std::size_t at = 0; at < word.size(); ++at) {
    const bool in_folder = begin > 0 && word[begin - 1] == '/';
    if (word[at] == '.') {
      if (!in_folder && ends_name(word, at)) return true;
    } else if (!is_in_name(word[at])) {
      begin = at + 1;
    }
  }
  return false;
}

bool has_www(std::string_view word) noexcept {
  constexpr std::string_view kWww = "www.";
  for (std::size_t dot = word.find('.'); dot != kNowhere; dot = word.find('.', dot + 1)) {
    if (ends_in_lower_case(word.substr(0, dot + 1), kWww)) return true;
  }
  return false;
}

/// Whether this stands in the word and something follows it.
bool leads_on(std::string_view word, std::string_view sign) noexcept {
  const std::size_t at = word.find(sign);
  return at != kNowhere && at + sign.size() < word.size();
}

}  // namespace

std::size_t word_of_address(std::string_view text) noexcept {
  constexpr std::string_view kSigns = ".:@/-_+~=$^";
  std::size_t length = 0;
  while (length < text.size() &&
         (is_letter_or_digit(text[length]) || kSigns.find(text[length]) != kNowhere)) {
    ++length;
  }
  return length;
}

bool is_like_address(std::string_view word) noexcept {
  return has_www(word) || word.find("://") != kNowhere || leads_on(word, "//") ||
         leads_on(word, "@") || has_name_of_the_net(word);
}

}  // namespace fingerturn
