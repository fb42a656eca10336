// Put before a program with LD_PRELOAD: from the start of its main function on, pieces of memory
// are counted that it asks the C library for.
//
//     REFUSED_FROM=N    refuse the Nth
//     REFUSED_TO=M      and those after it up to the Mth
//     REFUSED_COUNT=F   write how many there were into a file

#include <atomic>
#include <cerrno>
#include <cstddef>
#include <cstdio>
#include <cstdlib>

#include <dlfcn.h>

// The names are those of the C library, and what finds them knows no functions.
// NOLINTBEGIN(readability-identifier-naming, *-reinterpret-cast)

extern "C" {
void* __libc_malloc(std::size_t size);
void* __libc_calloc(std::size_t number, std::size_t size);
void* __libc_realloc(void* memory, std::size_t size);
}

namespace {

using Main = int (*)(int, char**, char**);

// NOLINTBEGIN(cppcoreguidelines-avoid-non-const-global-variables): who is called in the place of
// the C library is handed nothing.
std::atomic<bool> is_counting = false;
std::atomic<long> count = 0;
long refused_from = 0;
long refused_to = 0;
Main program = nullptr;
// NOLINTEND(cppcoreguidelines-avoid-non-const-global-variables)

bool is_refused() {
  if (!is_counting) return false;
  const long number = ++count;
  if (number < refused_from || number > refused_to) return false;
  errno = ENOMEM;
  return true;
}

long number_in(const char* name, long otherwise) {
  const char* value = std::getenv(name);
  return value == nullptr ? otherwise : std::atol(value);
}

void write_count() {
  is_counting = false;
  const char* path = std::getenv("REFUSED_COUNT");
  std::FILE* file = path == nullptr ? nullptr : std::fopen(path, "w");
  if (file == nullptr) return;
  std::fprintf(file, "%ld\n", count.load());
  std::fclose(file);
}

int counted(int words, char** word, char** environment) {
  std::atexit(write_count);
  refused_from = number_in("REFUSED_FROM", 0);
  refused_to = number_in("REFUSED_TO", refused_from);
  is_counting = true;
  return program(words, word, environment);
}

}  // namespace

extern "C" {

void* malloc(std::size_t size) { return is_refused() ? nullptr : __libc_malloc(size); }

void* calloc(std::size_t nmemb, std::size_t size) {
  return is_refused() ? nullptr : __libc_calloc(nmemb, size);
}

void* realloc(void* ptr, std::size_t size) {
  return is_refused() ? nullptr : __libc_realloc(ptr, size);
}

int __libc_start_main(Main main, int words, char** word, void (*begin)(), void (*end)(),
                      void (*unload)(), void* stack);
int __libc_start_main(Main main, int words, char** word, void (*begin)(), void (*end)(),
                      void (*unload)(), void* stack) {
  program = main;
  const auto start =
      reinterpret_cast<decltype(&__libc_start_main)>(::dlsym(RTLD_NEXT, "__libc_start_main"));
  return start(counted, words, word, begin, end, unload, stack);
}
}

// NOLINTEND(readability-identifier-naming, *-reinterpret-cast)
