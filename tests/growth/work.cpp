#include "growth/work.hpp"

#include <algorithm>
#include <cstdlib>
#include <new>

#include <malloc.h>
#include <pugixml.hpp>

/// The counters, and in the place of functions of the C library ones that count what they go
/// through. The linker puts them before the library's also where a shared library calls them, so
/// that pugixml's search for a name counts a step for each name it compares. This file is compiled
/// without the compiler's knowledge of these functions, which would make each of them call itself.
namespace {

struct Counters {
  std::uint64_t steps = 0;
  std::size_t held = 0;
  std::size_t most_held = 0;
};
Counters& counted() {
  constinit static Counters counters;
  return counters;
}

void count(std::size_t steps) { counted().steps += steps; }

// NOLINTBEGIN(cppcoreguidelines-no-malloc): what manages memory stands on these
void* take_memory(std::size_t size) {
  void* const block = std::malloc(size);
  if (block == nullptr) return nullptr;
  Counters& counters = counted();
  counters.held += ::malloc_usable_size(block);
  counters.most_held = std::max(counters.most_held, counters.held);
  return block;
}

void give_back(void* block) {
  counted().held -= ::malloc_usable_size(block);
  std::free(block);
}
// NOLINTEND(cppcoreguidelines-no-malloc)

[[maybe_unused]] const bool kXmlIsCounted = [] {
  pugi::set_memory_management_functions(take_memory, give_back);
  return true;
}();

using Bytes = unsigned char*;
using ConstBytes = const unsigned char*;

}  // namespace

void* operator new(std::size_t size) {
  count(size);
  if (void* const block = take_memory(size)) return block;
  throw std::bad_alloc();
}
void operator delete(void* block) noexcept { give_back(block); }
void operator delete(void* block, std::size_t /*size*/) noexcept { give_back(block); }

extern "C" {

// NOLINTNEXTLINE(readability-identifier-naming): the compiler's name
void __sanitizer_cov_trace_pc();
void* memcpy(void* to, const void* from, std::size_t size) noexcept;
void* memmove(void* to, const void* from, std::size_t size) noexcept;
int memcmp(const void* left, const void* right, std::size_t size) noexcept;
int bcmp(const void* left, const void* right, std::size_t size) noexcept;
void* memchr(const void* text, int wanted, std::size_t size) noexcept;
std::size_t strlen(const char* text) noexcept;
int strcmp(const char* left, const char* right) noexcept;

/// Called by the compiler's coverage at the beginning of each block.
// NOLINTNEXTLINE(readability-identifier-naming)
void __sanitizer_cov_trace_pc() { count(1); }

void* memcpy(void* to, const void* from, std::size_t size) noexcept {
  count(size);
  for (std::size_t i = 0; i < size; ++i)
    static_cast<Bytes>(to)[i] = static_cast<ConstBytes>(from)[i];
  return to;
}

void* memmove(void* to, const void* from, std::size_t size) noexcept {
  if (to <= from) return memcpy(to, from, size);
  count(size);
  for (std::size_t i = size; i > 0; --i) {
    static_cast<Bytes>(to)[i - 1] = static_cast<ConstBytes>(from)[i - 1];
  }
  return to;
}

int memcmp(const void* left, const void* right, std::size_t size) noexcept {
  for (std::size_t i = 0; i < size; ++i) {
    count(1);
    const int difference = static_cast<ConstBytes>(left)[i] - static_cast<ConstBytes>(right)[i];
    if (difference != 0) return difference;
  }
  return 0;
}

/// What clang makes of a comparison that asks no more than whether two texts are equal.
int bcmp(const void* left, const void* right, std::size_t size) noexcept {
  return memcmp(left, right, size);
}

void* memchr(const void* text, int wanted, std::size_t size) noexcept {
  for (std::size_t i = 0; i < size; ++i) {
    count(1);
    ConstBytes at = static_cast<ConstBytes>(text) + i;
    // NOLINTNEXTLINE(cppcoreguidelines-pro-type-const-cast): so it is declared
    if (*at == static_cast<unsigned char>(wanted)) return const_cast<Bytes>(at);
  }
  return nullptr;
}

std::size_t strlen(const char* text) noexcept {
  std::size_t length = 0;
  while (text[length] != '\0') ++length;
  count(length);
  return length;
}

int strcmp(const char* left, const char* right) noexcept {
  for (std::size_t i = 0;; ++i) {
    count(1);
    const int difference =
        static_cast<unsigned char>(left[i]) - static_cast<unsigned char>(right[i]);
    if (difference != 0 || left[i] == '\0') return difference;
  }
}

}  // extern "C"

namespace fingerturn::tests {

Work work_of(const std::function<void()>& action) {
  const Counters before = counted();
  counted().most_held = before.held;
  action();
  return {counted().steps - before.steps, counted().most_held - before.held};
}

}  // namespace fingerturn::tests
