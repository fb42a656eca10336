#include "catch.hpp"
#include "fingerturn/diagnostic_code.hpp"
#include "fingerturn/report.hpp"
#include "score/file_reading.hpp"
#include "text/utf8.hpp"

#include <string>

/// Messages of the readers in words, for the terminal and as a page.
using namespace fingerturn;
using namespace fingerturn::tests;

TEST_CASE("a message tells how severe it is, what it means, what to do, and an example") {
  const DiagnosticCode both{.id = "an-id",
                            .in_notation = Severity::error,
                            .in_musicxml = Severity::warning,
                            .title = "A title",
                            .meaning = "Something is wrong with this.",
                            .cure = "Write it anew.",
                            .example = "C4:1 |\nD4:2"};
  CHECK(write_message(both, 40) ==
        "A title (an-id)\n"
        "\n"
        "  An error in a passage, a warning in a\n"
        "  score. Something is wrong with this.\n"
        "\n"
        "  For instance:\n"
        "    C4:1 |\n"
        "    D4:2\n"
        "\n"
        "  What to do: Write it anew.\n");
  const DiagnosticCode one{.id = "id",
                           .in_musicxml = Severity::warning,
                           .title = "A title",
                           .meaning = "It is wrong.",
                           .cure = "Write it anew."};
  CHECK(write_message(one, 40) ==
        "A title (id)\n"
        "\n"
        "  A warning in a score. It is wrong.\n"
        "\n"
        "  What to do: Write it anew.\n");
}

TEST_CASE("a message that is as severe in a passage as in a score says so once") {
  const DiagnosticCode alike{.id = "id",
                             .in_notation = Severity::warning,
                             .in_musicxml = Severity::warning,
                             .title = "A title",
                             .meaning = "It is wrong.",
                             .cure = "Write it anew."};
  CHECK(write_message(alike, 80).find("  A warning in a passage and in a score. It is wrong.\n") !=
        std::string::npos);
}

TEST_CASE("the list of messages has a line for each") {
  const std::string list = write_message_list(80);
  std::size_t begin = 0;
  for (const DiagnosticCode& code : diagnostic_codes()) {
    const std::size_t end = list.find('\n', begin);
    REQUIRE(end != std::string::npos);
    const std::string line = list.substr(begin, end - begin);
    CHECK(line.starts_with(std::string(code.id) + ' '));
    CHECK(line.ends_with(code.title));
    CHECK(count_code_points(line) <= 80);
    begin = end + 1;
  }
  CHECK(begin == list.size());
}

TEST_CASE("docs/messages.md is the page that the messages make") {
  // Made with: fingerturn explain --messages --markdown > docs/messages.md
  CHECK(text_of_file(FINGERTURN_SOURCE_DIR "/docs/messages.md") == write_messages_page());
}
