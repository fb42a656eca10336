#pragma once

#include <cstddef>
#include <string_view>

/// Addresses of the net as renderers of Markdown find them in a text and make links of them.
namespace fingerturn {

/// How many bytes at the beginning of a text can stand in an address.
std::size_t word_of_address(std::string_view text) noexcept;

/// Whether a word may be taken for an address: for its scheme, its "www.", its at sign, or as a
/// name of the net by itself. It need not be one.
///
///     is_like_address("a.example.org")  // true
///     is_like_address("J.S.Bach")       // false
bool is_like_address(std::string_view word) noexcept;

}  // namespace fingerturn
